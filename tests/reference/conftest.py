"""An office folder to write files into, beside the packaged library."""

from collections.abc import Callable
from pathlib import Path

import pytest

from packet.problems import Problem, Refused
from packet.reference import Library
from packet.workspace import packaged


@pytest.fixture
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.fixture
def office(tmp_path: Path) -> Path:
    folder = tmp_path / "shared"
    folder.mkdir()
    return folder


@pytest.fixture
def write(office: Path) -> Callable[[str, str], Path]:
    """Write a file of the office and return its path."""

    def file(name: str, text: str) -> Path:
        path = office / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
        return path

    return file


@pytest.fixture
def load(office: Path) -> Callable[[], Library]:
    return lambda: Library.load([packaged("shared"), office])


@pytest.fixture
def problems(load: Callable[[], Library]) -> Callable[[], list[Problem]]:
    """Load and return the problems; the test fails when there are none."""

    def found() -> list[Problem]:
        with pytest.raises(Refused) as refused:
            load()
        return list(refused.value.problems)

    return found


TOWN = """\
code: pellam-2026
title: Pellam Reach building ordinance
edition: "2026"
whose: law
source: pellam-ordinance
amends: irc-2021
rows:
  pellam-2026-deck-field:
    asks: deck.nail.field_spacing
    kind: at_most
    value: 4
    unit: in
    when: {wind_ultimate_mph: {at_least: 120}}
    locator: Section 3
    checked: seen
"""
TOWN_SOURCES = """\
pellam-ordinance:
  document: Building ordinance of Pellam Reach
  edition: "2026"
"""
TABLE = """\
table: gutter_spans
title: Hanger spacing of gutters
source: {id: common-practice, locator: "a made-up page"}
checked: memory
units: {width_in: in, spacing_in: in}
keys: {width_in: next_above}
rows:
  - {width_in: 5, spacing_in: 32}
  - {width_in: 6, spacing_in: 24}
invariants: [spacing_in falls with width_in]
sums: {width_in: 11, spacing_in: 56}
"""
