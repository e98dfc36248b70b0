"""An office adds codes, tables, notes and readings; it never changes a packaged file by stealth."""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from packet.problems import Problem
from packet.reference import Library
from packet.workspace import packaged
from tests.reference.conftest import TABLE, TOWN, TOWN_SOURCES

Write = Callable[[str, str], Path]
Load = Callable[[], Library]
Problems = Callable[[], list[Problem]]


def test_an_office_code_stands_beside_the_one_it_amends(write: Write, load: Load) -> None:
    write("sources.yaml", TOWN_SOURCES)
    write("codes/pellam-2026.yaml", TOWN)
    library = load()
    facts = {"wind_ultimate_mph": 130, "panel_thickness_in": 0.46875}
    rows = library.rows(["pellam-2026"], "deck.nail.field_spacing", facts)
    assert [(row.code, row.value) for row in rows] == [("pellam-2026", 4), ("irc-2021", 6)]
    assert library.source(rows[0]).document == "Building ordinance of Pellam Reach"
    assert {name for name in library.digests() if name.startswith("office/")} == {
        "office/sources.yaml",
        "office/codes/pellam-2026.yaml",
    }


def test_an_office_file_that_is_not_used_is_not_in_the_digests(write: Write, load: Load) -> None:
    write("sources.yaml", TOWN_SOURCES)
    write("codes/pellam-2026.yaml", TOWN)
    assert "office/codes/pellam-2026.yaml" not in load().digests()


@pytest.mark.parametrize("name", ["codes/irc-2021.yaml", "tables/wind_classes.yaml"])
def test_a_file_that_shadows_a_packaged_one_is_refused(write: Write, problems: Problems, name: str) -> None:
    path = write(name, (packaged("shared") / name).read_text(encoding="utf-8"))
    assert [(p.code, p.file, p.found) for p in problems()] == [("shadows-packaged", path, path.stem)]


def test_a_source_or_a_note_that_takes_a_packaged_id_is_refused(write: Write, problems: Problems) -> None:
    write("sources.yaml", "irc-2021:\n  document: Ours\n  edition: now\n")
    write(
        "care/en.yaml",
        "language: en\nnotes:\n  gutters:\n    kind: care\n    when: always\n    says: Leave them be.\n"
        "    source: own-advice\n    locator: ours\n    checked: memory\n",
    )
    assert [(p.code, p.file.name, p.found) for p in problems()] == [
        ("shadows-packaged", "sources.yaml", "irc-2021"),
        ("shadows-packaged", "en.yaml", "gutters"),
    ]


@pytest.mark.parametrize(
    ("old", "new", "code", "line", "found"),
    [
        ("    locator: Section 3", "    locater: Section 3", "unknown-key", 14, "locater"),
        ("whose: law", "whose: lawyer", "not-one-of", 4, "lawyer"),
        ("deck.nail.field_spacing", "deck.nail.feild_spacing", "not-one-of", 9, "deck.nail.feild_spacing"),
        ("    kind: at_most", "    kind: one_of", "not-one-of", 10, "one_of"),
        ("    unit: in", "    unit: ft", "not-one-of", 12, "ft"),
        ("wind_ultimate_mph", "wind_ultimate", "unknown-key", 13, "wind_ultimate"),
        ("{at_least: 120}", "{at_leest: 120}", "unknown-key", 13, "at_leest"),
        ("{at_least: 120}", "{at_least: fast}", "bad-quantity", 13, "fast"),
        ("{at_least: 120}", "{}", "empty-condition", 13, ""),
        ("checked: seen", "checked: sene", "not-one-of", 15, "sene"),
        ("    value: 4", "    value: [4]", "wrong-kind", 11, ""),
        ("    value: 4", "    value: null", "reason-missing", 9, ""),
        ("    value: 4", "    value: four", "bad-quantity", 11, "four"),
        ("source: pellam-ordinance", "source: pellam-ordnance", "unknown-source", 5, "pellam-ordnance"),
        ("amends: irc-2021", "amends: irc-2020", "unknown-code", 6, "irc-2020"),
        ("code: pellam-2026", "code: pellam-2027", "name-mismatch", 1, "pellam-2027"),
        ("  pellam-2026-deck", "  irc-2021-deck", "row-id", 8, "irc-2021-deck-field"),
        ("checked: seen", "checked: common_practice", "practice-unmarked", 15, "common_practice"),
    ],
)
def test_a_mistake_in_a_code_is_refused_at_its_line(
    write: Write, problems: Problems, old: str, new: str, code: str, line: int, found: str
) -> None:
    assert old in TOWN
    write("sources.yaml", TOWN_SOURCES)
    path = write("codes/pellam-2026.yaml", TOWN.replace(old, new))
    first = problems()[0]
    assert (first.code, first.file, first.found) == (code, path, found)
    assert first.line == line


def test_every_problem_of_every_file_comes_in_one_pass(write: Write, problems: Problems) -> None:
    write("sources.yaml", TOWN_SOURCES)
    write(
        "codes/pellam-2026.yaml",
        TOWN.replace("whose: law", "whose: lawyer").replace("checked: seen", "checked: no"),
    )
    write("tables/gutter_spans.yaml", TABLE.replace("spacing_in: 56", "spacing_in: 57"))
    write(
        "readings/field.yaml",
        "row: irc-2021-nothing\nvalue: 6\nsection: x\nauthority: y\nread_by: z\nread_on: 2026-01-02\n",
    )
    assert sorted(p.code for p in problems()) == ["not-one-of", "not-one-of", "table-sum", "unknown-row"]


def test_a_yml_file_is_not_passed_over_in_silence(write: Write, problems: Problems) -> None:
    write("codes/pellam-2026.yml", TOWN)
    assert [p.code for p in problems()] == ["wrong-suffix"]


def test_a_duplicate_row_and_a_slope_like_scalar_are_read_as_typed(write: Write, problems: Problems) -> None:
    write("sources.yaml", TOWN_SOURCES)
    twice = TOWN + TOWN[TOWN.index("  pellam-2026-deck-field") :]
    write("codes/pellam-2026.yaml", twice)
    assert [p.code for p in problems()] == ["duplicate-key"]


READING = """\
row: irc-2021-deck-field
value: 6
section: Table R602.3(1), item 31, second printing
authority: Town of Pellam Reach, building office
read_by: Tam Oduya
read_on: 2026-02-11
"""


def test_a_reading_lifts_its_row_to_the_mark_office(write: Write, load: Load) -> None:
    write("readings/deck-field.yaml", READING.replace("value: 6", "value: 5-1/2"))
    library = load()
    row = library.row("irc-2021-deck-field")
    assert (row.checked, row.value, row.may_decide, row.caution) == ("office", Fraction(11, 2), True, False)
    assert row.reading is not None
    assert row.reading.authority == "Town of Pellam Reach, building office"
    source = library.source(row)
    assert (source.checked, source.locator) == ("office", "Table R602.3(1), item 31, second printing")
    assert library.rows(["irc-2021"], "deck.nail.field_spacing", {"panel_thickness_in": 0.5})[
        0
    ].value == Fraction(11, 2)
    assert "office/readings/deck-field.yaml" in library.digests()
    assert library.row("irc-2021-deck-edge").checked == "seen_secondary", "its neighbour stays as it was"


def test_a_reading_gives_a_row_without_value_its_value(write: Write, load: Load, library: Library) -> None:
    row = "irc-2021-underlayment-between"
    assert (library.row(row).value, library.row(row).may_decide) == (None, False)
    write(
        "readings/cap-nails.yaml",
        READING.replace("irc-2021-deck-field", row).replace("value: 6", "value: 12"),
    )
    lifted = load().row(row)
    assert (lifted.value, lifted.may_decide, lifted.reason) == (12, True, "")


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("irc-2021-deck-field", "irc-2021-deck-feild", "unknown-row"),
        ("irc-2021-deck-field", "irc-2009-felt-36", "reading-not-liftable"),
        ("irc-2021-deck-field", "trade-practice-gable", "reading-not-liftable"),
        ("value: 6", "value: [six]", "reading-value"),
        ("value: 6\n", "", "reading-value"),
        ("read_by: Tam Oduya\n", "", "missing"),
        ("read_on: 2026-02-11", "read_on: yesterday", "bad-date"),
        ("section", "page", "unknown-key"),
    ],
)
def test_a_reading_that_does_not_hold_is_refused(
    write: Write, problems: Problems, old: str, new: str, code: str
) -> None:
    write("readings/one.yaml", READING.replace(old, new))
    assert code in {p.code for p in problems()}


def test_two_readings_of_one_row_are_refused(write: Write, problems: Problems) -> None:
    write("readings/a.yaml", READING)
    write("readings/b.yaml", READING.replace("value: 6", "value: 12"))
    assert [(p.code, p.file.name, p.values["other"]) for p in problems()] == [
        ("reading-twice", "b.yaml", "a.yaml")
    ]


def test_readings_of_the_packaged_folder_are_not_read(tmp_path: Path) -> None:
    """Only an office reads; a packaged reading would lift rows for everybody."""
    import shutil

    copy = tmp_path / "shared"
    shutil.copytree(packaged("shared"), copy)
    (copy / "readings").mkdir()
    (copy / "readings" / "deck-field.yaml").write_text(READING, encoding="utf-8")
    assert Library.load([copy]).row("irc-2021-deck-field").checked == "seen_secondary"
