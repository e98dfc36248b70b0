"""Changing any measured value of the demo record changes a number that a reader sees."""

import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest

from packet.closeout.assemble import assemble
from packet.closeout.redact import redact
from packet.drawings.roof_plan import roof_plan
from packet.site.pages import make_pages
from packet.text import Words, load_words
from packet.workspace import Workspace
from tests.build_job.pages import Event, events
from tests.figures.test_measured_inputs import LEAVES
from tests.support.office import ROOT, Office, demo_text

#: Elements that hold numbers: the values of figures, sums with numbers put in, and measures as typed.
NUMBERS = frozenset({"value", "sum", "typed"})

#: Counts that stand in a sentence and not in an element of their own.
IN_SENTENCES = frozenset({"dd", "td", "th", "p", "div"})

#: Measured values that no page shows yet; an entry goes as soon as a page shows it.
UNSHOWN: frozenset[str] = frozenset()

#: Places on the roof, which the drawing shows and no sentence.
DRAWN = re.compile(r"(roof\.planes|roof\.openings|details)\.\w+\.at\.[01]")

#: One of each kind, so that a look at this list tells what is held.
KINDS = (
    "roof.planes.MS.lower", "roof.planes.WW.pitch", "roof.openings.O1.along", "roof.edges.E1.measured",
    "deck.sheets.S1.along", "deck.edge_spacing", "deck.nail.size.length", "deck.nail.size.shank",
    "dry_in.head_lap", "covering.shingle.exposure", "covering.nails_each", "covering.areas.A1.outline.2.0",
    "bought.SHINGLES.cover_each", "bought.SHINGLES.delivered", "bought.SHINGLES.scrap", "tie_in.spots_each",
    "basis.wind_speed", "roof.eave_height",
)  # fmt: skip


@cache
def words() -> Words:
    return load_words(Workspace(ROOT).shared_folders())


def copy_of(office: Office) -> dict[str, Any]:
    """Return the copy for others."""
    return redact(assemble(office.workspace, office.job)[0], "outside")


def pages_of(copy: Mapping[str, Any]) -> dict[str, str]:
    """Return the pages of a copy as templates make them, without MkDocs."""
    made = make_pages(copy, Workspace(ROOT).template_folders(), words())
    return {page.name: page.body for page in made}


def numbers(pages: Mapping[str, str]) -> list[str]:
    """Return the texts of all elements that hold numbers, and sentences that hold a digit, page by page."""
    found = []
    for name, body in pages.items():
        classes: list[tuple[str, str]] = []
        for kind, text, pairs in events(body):
            classes = _entered(classes, (kind, text, pairs))
            if kind == "text" and any(char.isnumeric() for char in text):
                around = {word for _, names in classes for word in names.split()}
                if around & NUMBERS or (classes and classes[-1][0] in IN_SENTENCES):
                    found.append(f"{name}: {text.strip()}")
    return found


def _entered(open_: list[tuple[str, str]], event: Event) -> list[tuple[str, str]]:
    kind, tag, pairs = event
    if kind == "start" and tag not in ("img", "source", "br", "input", "link", "meta"):
        return [*open_, (tag, dict(pairs).get("class", ""))]
    if kind == "end" and any(name == tag for name, _ in open_):
        while open_.pop()[0] != tag:
            pass
    return open_


@cache
def before() -> tuple[dict[str, Any], list[str]]:
    """Return the demo's copy, and the numbers on its pages."""
    with TemporaryDirectory() as folder:
        copy = copy_of(Office(Path(folder) / "office", demo_text()))
    return copy, numbers(pages_of(copy))


def test_the_list_of_kinds_names_measures_of_the_demo() -> None:
    names = {name for name, _, _ in LEAVES}
    assert names >= {*KINDS, *UNSHOWN}
    assert not UNSHOWN & {*KINDS}
    assert len(before()[1]) > 300


@pytest.mark.parametrize(("name", "path", "text"), LEAVES, ids=[name for name, _, _ in LEAVES])
def test_changing_a_measured_value_changes_a_number_on_a_page(
    job_office: Office, name: str, path: str, text: str
) -> None:
    copy = copy_of(job_office.changed(path, text))
    if DRAWN.fullmatch(name):
        assert copy["geometry"] != before()[0]["geometry"]
    elif name in UNSHOWN:
        assert numbers(pages_of(copy)) == before()[1], f"{name} is on a page now: take it off the list"
    else:
        assert numbers(pages_of(copy)) != before()[1]


@pytest.mark.parametrize("path", ["roof.planes.DR.at.0", "roof.openings.O1.at.0", "details.B1.at.1"])
def test_changing_a_place_changes_the_drawing(job_office: Office, path: str) -> None:
    text = next(text for name, _, text in LEAVES if name == path)
    copy = copy_of(job_office.changed(path, text))
    assert roof_plan(copy["geometry"], words()["drawing"]) != roof_plan(
        before()[0]["geometry"], words()["drawing"]
    )
