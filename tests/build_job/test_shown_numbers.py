"""Every number on a page is in that copy's ``packet.json``; nothing is worked out in a template."""

import json
import re
from collections.abc import Iterator
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any, get_args

import pytest

from packet import __version__
from packet.closeout.model import Closeout
from packet.closeout.redact import redact
from packet.readers import READERS
from packet.site.filters import make_filters, term_number
from packet.site.pages import make_pages
from packet.text import Words, figure_number, load_words
from packet.uses import PurchaseUnit
from packet.workspace import Workspace
from tests.build_job.pages import all_strings, events
from tests.support.office import ROOT

NUMBER = re.compile(r"\d+(?:[.,/-]\d+)*")

#: Counts of things a page lists or leaves out: open items, other limits, photos elsewhere, its own sheet.
COUNTED = r"(\d+ items? (is|are) open|\d+ other limits?|\d+ in the office's copy|Sheet\s*\d+ of \d+)"


@cache
def words() -> Words:
    return load_words(Workspace(ROOT).shared_folders())


@pytest.fixture(scope="module", params=READERS)
def copy(request: pytest.FixtureRequest, demo: Closeout) -> dict[str, Any]:
    """The demo's copy for each reader, as it stands in ``packet.json``."""
    made: dict[str, Any] = json.loads(json.dumps(redact(demo, request.param)))
    return made


@pytest.fixture(scope="module")
def pages(copy: dict[str, Any]) -> dict[str, str]:
    return {page.name: page.body for page in make_pages(copy, Workspace(ROOT).template_folders(), words())}


def parts(body: str, name: str) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Yield the text of each element of a class, and the classes around it."""
    stack: list[tuple[str, tuple[str, ...], list[str]]] = []
    for kind, text, pairs in events(body):
        if kind == "start" and text not in ("img", "source", "br"):
            stack.append((text, tuple(dict(pairs).get("class", "").split()), []))
        elif kind == "text":
            for _, _, held in stack:
                held.append(text)
        elif kind == "end" and stack:
            _, classes, held = stack.pop()
            if name in classes:
                yield "".join(held), tuple(one for _, around, _ in stack for one in around)


def terms(copy: dict[str, Any]) -> list[dict[str, Any]]:
    return [
        term
        for figure in copy["figures"].values()
        if figure["working"]
        for term in figure["working"]["terms"]
    ]


def unit(figure: dict[str, Any], said: Words | None = None) -> str:
    """Return the unit as English has it: one bundle, half a bundle, two bundles; half a foot is 0.5 ft."""
    said = said or words()
    key, value, one = figure["unit"], figure["value"], said["units_one"]
    single = value == 1 or (key in get_args(PurchaseUnit) and 0 < value < 1)
    return str(one[key] if single and key in one else said["units"][key])


def test_every_measure_is_a_figure_with_its_unit(copy: dict[str, Any], pages: dict[str, str]) -> None:
    languages = (words(), *words()["translations"].values())
    known = {
        " ".join(f"{figure_number(figure)} {unit(figure, said)}".split())
        for figure in copy["figures"].values()
        for said in languages
    }
    shown = [" ".join(text.split()) for body in pages.values() for text, _ in parts(body, "measure")]
    assert len(shown) > 150
    assert [text for text in shown if text not in known] == []


def test_every_number_of_a_working_is_a_term_or_its_figure(
    copy: dict[str, Any], pages: dict[str, str]
) -> None:
    in_sheets = [
        text
        for body in pages.values()
        for text, around in parts(body, "value")
        if "working-sheet" in around and "measure" not in around
    ]
    assert len(in_sheets) > 200
    known = {term_number(term) for term in terms(copy)}
    assert [text for text in in_sheets if text not in known] == []


def test_every_sum_is_that_of_a_figure(copy: dict[str, Any], pages: dict[str, str]) -> None:
    put_in, equals = make_filters(words())["sum_numbers"], words()["working.equals"]
    known = {
        " ".join(f"{put_in(figure['working'])} {equals} {figure_number(figure)} {unit(figure)}".split())
        for figure in copy["figures"].values()
        if figure["working"]
    }
    shown = {" ".join(text.split()) for body in pages.values() for text, _ in parts(body, "sum")}
    assert shown == known, "each working is shown, and nothing else"


def test_values_that_are_no_figure_stand_in_the_record_as_typed(
    copy: dict[str, Any], pages: dict[str, str]
) -> None:
    typed = (
        set(all_strings(copy["record"])) | set(all_strings(copy["office"])) | set(all_strings(copy["packet"]))
    )
    typed |= (
        set(all_strings(copy["geometry"]))
        | set(copy["figures"])
        | {term["origin"]["ref"] for term in terms(copy)}
    )
    shown = [
        text
        for body in pages.values()
        for name in ("value", "typed")
        for text, around in parts(body, name)
        if not {"measure", "working-sheet"} & set(around)
    ]
    shown += [
        text for body in pages.values() for text, around in parts(body, "typed") if "working-sheet" in around
    ]
    missing = words()["not_recorded"]
    alone = {part for text in shown for part in text.split(" × ")}
    assert len(alone) > 30
    assert sorted(alone - typed - {missing}) == []


def test_no_digit_of_a_page_comes_from_nowhere(copy: dict[str, Any], pages: dict[str, str]) -> None:
    """Hold the sum of all pages against all data, dates as words write them, and the fixed texts."""
    filters = make_filters(words())
    texts = [
        *all_strings(copy),
        *map(figure_number, copy["figures"].values()),
        *map(term_number, terms(copy)),
    ]
    texts += [filters["day"](text) for text in all_strings(copy) if re.fullmatch(r"\d{4}-\d\d-\d\d", text)]
    texts += [filters["moment"](photo) for photo in copy["photos"]]
    for figure in copy["figures"].values():
        if figure["working"]:
            texts += [
                filters["sum_words"](figure["working"]),
                *map(filters["term_words"], figure["working"]["terms"]),
            ]
    texts += _fixed()
    known = {number for text in texts for number in NUMBER.findall(text)}
    for name, body in pages.items():
        seen = " ".join(
            text for kind, text, _ in events(re.sub(r"(?s)\A.*?(?=<p class=)", "", body)) if kind == "text"
        )
        seen = re.sub(COUNTED, " ", " ".join(seen.split()))
        assert sorted({number for number in NUMBER.findall(seen)} - known) == [], name


def _fixed() -> list[str]:
    """Return the sentences of words and templates, without what templates fill in."""
    folders = Workspace(ROOT).template_folders()
    sources = [path.read_text(encoding="utf-8") for folder in folders for path in Path(folder).rglob("*.j2")]
    sentences = [re.sub(r"\{[{%#].*?[#%}]\}|<[^>]*>", " ", source, flags=re.S) for source in sources]
    return [*sentences, *_said(words())]


def _said(tree: Any) -> Iterator[str]:
    for key in tree:
        value = tree[key]
        if isinstance(value, str):
            yield value
        else:
            yield from _said(value)


def test_the_data_says_what_made_it(copy: dict[str, Any]) -> None:
    head = copy["packet"]
    assert (head["format"], head["version"], head["program"]) == ("roof-closeout-packet", 1, __version__)
    digests = {
        f"packaged/{path.relative_to(ROOT / 'shared').as_posix()}": sha256(path.read_bytes()).hexdigest()
        for path in sorted((ROOT / "shared").rglob("*.yaml"))
    }
    assert head["reference"].items() <= digests.items()
    basis = copy["record"]["basis"]
    rested_on = {f"packaged/codes/{id}.yaml" for id in (basis["code"], *basis["practices"])}
    assert head["reference"].keys() >= {*rested_on, "packaged/sources.yaml", "packaged/stages.yaml"}
