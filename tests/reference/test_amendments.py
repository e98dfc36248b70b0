"""A local amendment: one file that adds to an edition, tightens it, or loosens it by a named authority."""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packet.located import read_catalogue
from packet.problems import Problem, Refused, message
from packet.reference import Library
from packet.reference.amendments import amendment_problems, chain
from packet.workspace import packaged

Write = Callable[[str, str], Path]
Load = Callable[[], Library]
Problems = Callable[[], list[Problem]]

SENTENCES = read_catalogue(packaged("shared") / "words" / "problems.yaml")
FIELD, EDGE, NAIL = "deck.nail.field_spacing", "deck.nail.edge_spacing", "deck.nail"
#: Panels of 1/2 in: the edition of 2021 asks 6 in in the field and at edges there.
HALF_INCH = {"panel_thickness_in": Fraction(1, 2)}
WHO = "Town of Pellam Reach, building office"
SAYS = f"Pellam Reach building ordinance, 2026, Section 3, {WHO}"

HEAD = """\
code: pellam-2026
title: Pellam Reach building ordinance
edition: "2026"
whose: law
amends: irc-2021
"""


def row(value: str, more: str = "", *, asks: str = FIELD, kind: str = "at_most", unit: str = "in") -> str:
    """Return an amendment with one row; its value stands on line 10."""
    return (
        f"{HEAD}rows:\n  pellam-2026-deck:\n    asks: {asks}\n    kind: {kind}\n    value: {value}\n"
        + (f"    unit: {unit}\n" if unit else "")
        + f"    locator: Section 3\n    checked: seen\n{more}"
    )


AUTHORITY = f"    authority: {WHO}\n"


def said(problem: Problem) -> str:
    return " ".join(message(problem, SENTENCES))


def test_one_file_is_enough_and_is_cited_as_the_document(write: Write, load: Load) -> None:
    write("codes/pellam-2026.yaml", row("4"))
    library = load()
    found = library.rows(["pellam-2026"], FIELD, HALF_INCH)
    source = library.source(found[0])
    assert (source.document, source.edition, source.locator) == (
        "Pellam Reach building ordinance",
        "2026",
        "Section 3",
    )


def test_a_tighter_row_holds_beside_the_editions_own(write: Write, load: Load) -> None:
    write("codes/pellam-2026.yaml", row("4"))
    found = load().rows(["pellam-2026"], FIELD, HALF_INCH)
    assert [(r.id, r.value, r.may_decide) for r in found] == [
        ("pellam-2026-deck", 4, True),
        ("irc-2021-deck-field", 6, True),
    ]


def test_a_looser_row_without_authority_is_refused_at_its_line(write: Write, problems: Problems) -> None:
    path = write("codes/pellam-2026.yaml", row("8"))
    (problem,) = problems()
    assert (problem.code, problem.file, problem.line, problem.column) == ("amendment-loosens", path, 10, 12)
    assert said(problem) == (
        "the value 8 asks less than the edition, whose row irc-2021-deck-field asks at_most 6 in "
        'Name who adopted it, "authority: " and the office, with its section under "locator"; '
        "or keep to at_most 6 in."
    )


def test_a_looser_row_of_a_named_authority_governs_and_the_editions_own_says_by_whom(
    write: Write, load: Load
) -> None:
    write("codes/pellam-2026.yaml", row("8", AUTHORITY))
    ours, edition = load().rows(["pellam-2026"], FIELD, HALF_INCH)
    assert (ours.value, ours.may_decide, ours.authority) == (8, True, WHO)
    assert (edition.id, edition.may_decide, edition.superseded) == ("irc-2021-deck-field", False, SAYS)
    assert Library.load([packaged("shared")]).row("irc-2021-deck-field").superseded == ""


def test_the_edition_stands_for_a_job_that_does_not_name_the_amendment(write: Write, load: Load) -> None:
    write("codes/pellam-2026.yaml", row("8", AUTHORITY))
    (edition,) = load().rows(["irc-2021"], FIELD, HALF_INCH)
    assert (edition.value, edition.may_decide, edition.superseded) == (6, True, "")


@pytest.mark.parametrize(
    ("wind", "decides", "in_doubt"), [(100, False, False), (140, True, False), (None, True, True)]
)
def test_it_takes_the_place_only_where_it_applies(
    write: Write, load: Load, wind: int | None, decides: bool, in_doubt: bool
) -> None:
    """Where the wind is not known the edition's row may still be kept, and can't be held against the work."""
    write("codes/pellam-2026.yaml", row("8", f"{AUTHORITY}    when: {{wind_ultimate_mph: {{below: 120}}}}\n"))
    facts = {**HALF_INCH, "wind_ultimate_mph": wind}
    edition = {r.id: r for r in load().rows(["pellam-2026"], FIELD, facts)}["irc-2021-deck-field"]
    assert (edition.may_decide, edition.in_doubt) == (decides, in_doubt)


def test_a_looser_row_from_memory_leaves_the_editions_own_in_doubt(write: Write, load: Load) -> None:
    write("codes/pellam-2026.yaml", row("8", AUTHORITY).replace("checked: seen", "checked: memory"))
    ours, edition = load().rows(["pellam-2026"], FIELD, HALF_INCH)
    assert (ours.may_decide, edition.may_decide, edition.in_doubt) == (False, True, True)


def test_other_rows_of_the_edition_stay_as_they_are(write: Write, load: Load) -> None:
    write("codes/pellam-2026.yaml", row("8", AUTHORITY))
    changed = {r.id for r in load().all_rows(["pellam-2026"]) if r.amended_by}
    assert changed == {"irc-2021-deck-field"}, "the row for thick panels asks 12 in, which is no tighter"


def test_a_reading_of_the_edition_is_what_an_amendment_is_held_against(write: Write, load: Load) -> None:
    """The adopted text, as the office read it, asks 8 in: then 8 in here loosens nothing."""
    write("codes/pellam-2026.yaml", row("8"))
    write(
        "readings/field.yaml",
        "row: irc-2021-deck-field\nvalue: 8\nsection: R602.3\nauthority: the county\nread_by: Tam Oduya\n"
        "read_on: 2026-02-11\n",
    )
    assert load().row("pellam-2026-deck").value == 8


RING, SMOOTH = (
    "{length_in: 2-3/8, shank_in: 0.113, shank: ring}",
    "{length_in: 2-1/2, shank_in: 0.131, shank: smooth}",
)
SHORT = "{length_in: 2, shank_in: 0.113, shank: ring}"
LONG = "{length_in: 2-1/2, shank_in: 0.120, shank: ring}"


@pytest.mark.parametrize(
    ("asks", "kind", "unit", "value", "looser_than"),
    [
        # The 2021 edition: 8d common or the ring shank nail RSRS-01 for panels up to 1 in.
        (NAIL, "one_of", "", f"[{RING}]", None),
        (NAIL, "one_of", "", f"[{LONG}]", None),
        (NAIL, "one_of", "", f"[{RING}, {SHORT}]", "irc-2021-deck-nail"),
        # Class G or H of one test up to 155 mph.
        ("shingle.wind_class", "one_of", "", "['ASTM  d7158 class g']", None),
        ("shingle.wind_class", "one_of", "", "[ASTM D7158 Class D]", "irc-2021-wind-class-155"),
        # Lap of drip edge, at least 2 in.
        ("drip_edge.lap", "at_least", "in", "3", None),
        ("drip_edge.lap", "at_least", "in", "1", "irc-2021-drip-lap"),
        # What is limited from the other side adds; it can't loosen.
        (FIELD, "at_least", "in", "3", None),
    ],
)
def test_words_nails_and_least_measures_are_compared_too(
    write: Write, load: Load, asks: str, kind: str, unit: str, value: str, looser_than: str | None
) -> None:
    when = "    when: {panel_thickness_in: {at_most: 1}, wind_ultimate_mph: {is: 150}}\n"
    write("codes/pellam-2026.yaml", row(value, when, asks=asks, kind=kind, unit=unit))
    if looser_than is None:
        load()
        return
    with pytest.raises(Refused) as refused:
        load()
    assert [(p.code, p.values["row"]) for p in refused.value.problems] == [("amendment-loosens", looser_than)]


# Rows that no longer hold


def dropped(name: str, more: str = "") -> str:
    return f"{HEAD}rows: {{}}\ndrops:\n  {name}: {{locator: Section 9{more}}}\n"


def test_a_dropped_row_decides_nothing_and_says_by_whom(write: Write, load: Load) -> None:
    write("codes/pellam-2026.yaml", dropped("irc-2021-deck-field", f', authority: "{WHO}"'))
    (edition,) = load().rows(["pellam-2026"], FIELD, HALF_INCH)
    assert (edition.may_decide, edition.superseded) == (False, SAYS.replace("Section 3", "Section 9"))
    assert load().rows(["irc-2021"], FIELD, HALF_INCH)[0].may_decide


def test_a_row_dropped_without_authority_is_refused_at_its_line(write: Write, problems: Problems) -> None:
    path = write("codes/pellam-2026.yaml", dropped("irc-2021-deck-field"))
    (problem,) = problems()
    assert (problem.code, problem.file, problem.line) == ("amendment-drops", path, 8)
    assert "asks at_most 6 in" in said(problem)


def test_a_dropped_row_that_is_none_of_the_editions_is_answered_with_the_nearest(
    write: Write, problems: Problems
) -> None:
    write("codes/pellam-2026.yaml", dropped("irc-2021-deck-feild"))
    (problem,) = problems()
    assert (problem.code, problem.line) == ("unknown-row", 8)
    assert 'Did you mean "irc-2021-deck-field"?' in said(problem)


def test_a_row_whose_easing_is_dropped_stands_in_full(write: Write, load: Load) -> None:
    """Attic vents: 1/150, eased to 1/300 in a cold place. The easing dropped, 1/150 may accuse again."""
    facts = {"climate_zone": 6, "vapor_retarder": "class II", "vent_high_share_percent": 45,
             "vent_high_below_top_ft": 1, "vent_high_above_eaves_ft": 4}  # fmt: skip
    eased = load().rows(["irc-2021"], "ventilation.ratio", facts)
    assert {r.value for r in eased} == {300}
    text = "".join(
        f'  irc-2021-vents-{name}: {{locator: Section 9, authority: "{WHO}"}}\n' for name in ("cold", "mild")
    )
    write("codes/pellam-2026.yaml", f"{HEAD}rows: {{}}\ndrops:\n{text}")
    standing = [
        r for r in load().rows(["pellam-2026"], "ventilation.ratio", facts) if r.may_decide and not r.in_doubt
    ]
    assert [(r.value, r.superseded) for r in standing] == [(150, "")]


# What an amendment may amend


def test_an_unknown_edition_is_answered_with_the_nearest(write: Write, problems: Problems) -> None:
    write("codes/pellam-2026.yaml", row("8").replace("amends: irc-2021", "amends: icr-2021"))
    (problem,) = problems()
    assert (problem.code, problem.line, problem.found) == ("unknown-code", 5, "icr-2021")
    assert 'Did you mean "irc-2021"?' in said(problem)


def test_an_amendment_of_law_is_law(write: Write, problems: Problems) -> None:
    write("codes/pellam-2026.yaml", row("4").replace("whose: law", "whose: practice"))
    (problem,) = problems()
    assert (problem.code, problem.line, problem.found) == ("amendment-whose", 4, "practice")
    assert 'Write "whose: law"' in said(problem)


def file(code: str, amends: str) -> str:
    return row("4").replace("pellam-2026", code).replace("amends: irc-2021", f"amends: {amends}")


def test_amendments_that_come_round_are_told_once(write: Write, problems: Problems) -> None:
    write("codes/b-2026.yaml", file("b-2026", "c-2026"))
    write("codes/c-2026.yaml", file("c-2026", "d-2026"))
    write("codes/d-2026.yaml", file("d-2026", "b-2026"))
    write("codes/a-2026.yaml", file("a-2026", "b-2026"))
    (problem,) = problems()
    assert (problem.code, problem.file.name, problem.line) == ("amendment-round", "b-2026.yaml", 5)


def test_an_amendment_of_itself_is_told(write: Write, problems: Problems) -> None:
    write("codes/b-2026.yaml", file("b-2026", "b-2026"))
    assert [(p.code, p.line, p.found) for p in problems()] == [("amendment-round", 5, "b-2026")]


def test_an_amendment_of_an_amendment_is_held_against_both(write: Write, problems: Problems) -> None:
    write("codes/county-2026.yaml", file("county-2026", "irc-2021"))
    write("codes/town-2026.yaml", file("town-2026", "county-2026").replace("value: 4", "value: 5"))
    (problem,) = problems()
    assert (problem.code, problem.values["row"]) == ("amendment-loosens", "county-2026-deck")


def test_every_problem_of_an_amendment_comes_at_once(write: Write, problems: Problems) -> None:
    two = row("8") + row("9", asks=EDGE).partition("rows:\n")[2].replace("2026-deck", "2026-edge")
    write("codes/pellam-2026.yaml", f"{two}drops:\n  irc-2021-deck-nail: {{locator: Section 9}}\n")
    assert sorted((p.code, p.line) for p in problems()) == [
        ("amendment-drops", 22),
        ("amendment-loosens", 10),
        ("amendment-loosens", 17),
    ]


def test_no_packaged_code_loosens_the_one_it_brings_along(library: Library) -> None:
    amending = [code for code in library.code_ids() if library.code(code).amends]
    assert len(amending) > 3
    for code in amending:
        below = chain(code, lambda id: library.code(id).amends)
        assert list(amendment_problems(code, {id: library._code(id) for id in (code, *below)})) == []


# Any value and any conditions

EDITION = Fraction(6)
VALUES = st.fractions(min_value=Fraction(1, 8), max_value=24, max_denominator=16)
#: The edition's row is for panels of 3/8 to 1 in; conditions here meet that range, miss it, or say nothing.
MEETS = st.sampled_from(["", "{at_least: 1/2}", "{at_most: 3/8}", "{is: 1}", "{above: 1/4, below: 7/16}"])
MISSES = st.sampled_from(["{below: 3/8}", "{above: 1, below: 1-1/8}", "{is: 1/4}"])


def refused(value: Fraction, when: str, more: str = "") -> list[str]:
    condition = f"    when: {{panel_thickness_in: {when}}}\n" if when else ""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "codes" / "pellam-2026.yaml"
        path.parent.mkdir()
        number = f"{value.numerator}/{value.denominator}"
        path.write_text(row(number, condition + more), encoding="utf-8")
        try:
            Library.load([packaged("shared"), Path(folder)])
        except Refused as problems:
            return [problem.code for problem in problems.problems]
    return []


@settings(max_examples=40, deadline=None)
@given(VALUES, MEETS)
def test_looser_without_authority_is_always_refused_and_tighter_never(value: Fraction, when: str) -> None:
    assert refused(value, when) == (["amendment-loosens"] if value > EDITION else [])


@settings(max_examples=20, deadline=None)
@given(VALUES, st.one_of(MEETS, MISSES))
def test_with_authority_nothing_is_refused(value: Fraction, when: str) -> None:
    assert refused(value, when, AUTHORITY) == []


@settings(max_examples=20, deadline=None)
@given(VALUES, MISSES)
def test_where_the_edition_asks_nothing_any_value_may_be_asked(value: Fraction, when: str) -> None:
    assert refused(value, when) == []
