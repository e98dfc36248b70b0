"""No text we ship that a reader sees reads a policy, argues for payment or promises what weather will not do."""

import html
import re
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from jinja2 import Environment
from pydantic import BaseModel

from packet.closeout.assemble import assemble
from packet.closeout.redact import redact
from packet.fields import is_quoted
from packet.readers import READERS
from packet.reference import Library
from packet.reference.avoid import AVOID_FILE, avoided_in
from packet.site.pages import make_pages
from packet.text import load_words
from packet.workspace import Workspace, packaged
from packet.yamlread import read_yaml
from tests.support.office import ROOT

SHARED, TEMPLATES = packaged("shared"), packaged("templates")
FILES = Library.load([SHARED]).avoided()
DEMO = sorted(path.name for path in (ROOT / "jobs").iterdir() if path.is_dir())

#: Files of the reference room that hold texts, the list of avoided words left out.
YAML = sorted(path for path in SHARED.rglob("*.yaml") if path.relative_to(SHARED) != AVOID_FILE)

#: Stands where a template puts a value in, so that words around it are not read together.
VALUE = " § "


def texts(value: Any) -> Iterator[str]:
    """Yield every text of plain data; keys are ids and not seen."""
    if isinstance(value, Mapping):
        for item in value.values():
            yield from texts(item)
    elif isinstance(value, list):
        for item in value:
            yield from texts(item)
    elif value is not None:
        yield str(value)


def text_of_template(source: str) -> str:
    """Return what a Jinja template says: its data, and the texts its expressions hold, tags left out."""
    said = []
    for _, kind, token in Environment(autoescape=True).lex(source):
        if kind == "data":
            said.append(token)
        elif kind == "string":
            said.append(f"{VALUE}{token[1:-1]}{VALUE}")
        elif kind == "variable_begin":
            said.append(VALUE)
    return read(re.sub(r"</?(?:b|i|em|strong|a|span)\b[^>]*>", "", "".join(said)))


def text_of_typst(source: str) -> str:
    """Return what a Typst template says: all but its comments; its code says no sentence."""
    return re.sub(r"^\s*//.*$", "", source, flags=re.MULTILINE)


def read(markup: str) -> str:
    return html.unescape(re.sub(r"<[^>]+>", VALUE, markup))


def said_in(path: Path) -> str:
    source = path.read_text(encoding="utf-8")
    return text_of_typst(source) if path.suffix == ".typ" else text_of_template(source)


def avoided(text: str) -> list[str]:
    return [hit.written for hit in avoided_in(text, FILES)]


SOURCES = sorted(
    path for path in TEMPLATES.rglob("*") if path.suffix in (".j2", ".typ", ".html") and path.is_file()
)


@pytest.mark.parametrize("path", SOURCES, ids=[path.relative_to(TEMPLATES).as_posix() for path in SOURCES])
def test_a_template_says_nothing_of_it(path: Path) -> None:
    assert avoided(said_in(path)) == []


@pytest.mark.parametrize("path", YAML, ids=[path.relative_to(SHARED).as_posix() for path in YAML])
def test_words_care_notes_and_reference_say_nothing_of_it(path: Path) -> None:
    assert [hit for text in texts(read_yaml(path).value) for hit in avoided(text)] == []


def quoted(value: Any, is_one: bool = False) -> Iterator[str]:
    """Yield the texts of a record that repeat somebody else's words, such as what a warranty promises."""
    if isinstance(value, BaseModel):
        for name, info in type(value).model_fields.items():
            yield from quoted(getattr(value, name), is_quoted(info))
    elif isinstance(value, tuple):
        for entry in value:
            yield from quoted(entry, is_one)
    elif is_one and isinstance(value, str):
        yield value


def without(text: str, left_out: Iterable[str]) -> str:
    for said in left_out:
        text = text.replace(said, VALUE) if " " in said else text
    return text


@cache
def pages_of(job: str, reader: Any) -> Mapping[str, str]:
    workspace = Workspace(ROOT)
    closeout, _ = assemble(workspace, ROOT / "jobs" / job)
    made = make_pages(redact(closeout, reader), workspace.template_folders(), load_words([SHARED]))
    theirs = list(quoted(closeout.record))
    return {page.name: without(read(page.body), theirs) for page in made}


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("job", DEMO)
def test_no_page_of_a_demo_packet_says_anything_of_it(job: str, reader: str) -> None:
    pages = pages_of(job, reader)
    assert len(pages) > 8
    assert {name: found for name, text in pages.items() if (found := avoided(text))} == {}


# What is looked at is what is there


def test_the_texts_are_found() -> None:
    assert len(SOURCES) > 60
    assert {"en.yaml", "es.yaml", "problems.yaml", "irc-2021.yaml", "stages.yaml"} <= {p.name for p in YAML}
    assert DEMO == ["26-041", "26-052", "26-067"]
    pages = said_in(TEMPLATES / "pages" / "adjuster.md.j2")
    assert "This packet says nothing about what a policy covers or pays." in pages
    assert "Was the house kept dry meanwhile?" in pages, "texts of expressions are read too"
    paper = said_in(TEMPLATES / "paper" / "sections" / "sources.typ")
    assert "It is no reading of an insurance policy" in paper
    assert "seen before it was covered" in pages_of("26-041", "outside")["index"]
    theirs = list(quoted(assemble(Workspace(ROOT), ROOT / "jobs" / "26-041")[0].record))
    assert sum("will not leak through a fault" in text for text in theirs) == 1, "what the warranty promises"


@pytest.mark.parametrize(
    "source",
    [
        "{% trans %}The deck is covered by your policy.{% endtrans %}",
        "<p>{{ words.x }} The deck is <b>covered</b> by your policy.</p>",
        '{{ gettext("covered by your policy") }}',
        "{% set note = 'covered by your policy' %}",
        "{% call answer(\"a\", gettext('Is it covered by your policy?')) %}{% endcall %}",
    ],
)
def test_a_template_that_said_it_would_be_found(source: str) -> None:
    assert avoided(text_of_template(source)) == ["covered by your policy"]


@pytest.mark.parametrize(
    "source",
    [
        "{# never covered by your policy #}",
        "covered {{ by }} your policy",
        "<p>It is covered</p><p>by your policy it is not said</p>",
    ],
)
def test_what_no_reader_sees_is_not_looked_at(source: str) -> None:
    assert avoided(text_of_template(source)) == []


def test_a_typst_template_that_said_it_would_be_found() -> None:
    source = "// covered by your policy\n#lead[The deck is covered by your policy.]"
    assert avoided(text_of_typst(source)) == ["covered by your policy"]


def test_words_that_said_it_would_be_found_at_any_depth() -> None:
    tree = {"pages": {"a": ["b", {"c": "The roof withstands 150 mph."}]}, "covered by your policy": None}
    assert [hit for text in texts(tree) for hit in avoided(text)] == ["withstands 150 mph"]
