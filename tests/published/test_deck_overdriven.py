"""Overdriven nails: every row of the published remedy, from counts to nails added."""

import pytest

from packet.calc.deck.overdriven import Counted, Remedy, finding_of, remedy, staples_instead
from packet.reference import Library
from packet.workspace import packaged


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


def by_table(library: Library, counted: Counted, spacing_in: int) -> Remedy:
    table = library.table("overdriven_remedy")
    most = table.lookup(finding="one-fifth-or-fewer").number("share_percent")
    row = table.lookup(finding=finding_of(counted, most))
    close = library.table("deck_distances").lookup(what="more nails can split at or under")
    return remedy(
        counted,
        spacing_in,
        most_percent=most,
        added_for_each_two=int(row.number("added_for_each_two")),
        may_split_at_in=close.number("distance_in"),
    )


@pytest.mark.parametrize(
    ("driven", "sixteenth", "eighth", "finding", "added"),
    [
        (45, 0, 0, "sixteenth-or-less", 0),  # all 1/16 in or less, dry: nothing
        (45, 9, 0, "one-fifth-or-fewer", 0),  # a fifth beyond 1/16, none beyond 1/8: nothing
        (45, 10, 0, "more-than-one-fifth", 5),  # one for every two
        (45, 2, 1, "beyond-an-eighth", 1),  # any beyond 1/8
    ],
)
def test_remedy_by_counts(
    library: Library, driven: int, sixteenth: int, eighth: int, finding: str, added: int
) -> None:
    """APA TT-012 as restated, 6 in spacing: seen (secondary)."""
    expected = Remedy(finding, added, ask=False)  # type: ignore[arg-type]
    assert by_table(library, Counted(driven, sixteenth, eighth), 6) == expected


@pytest.mark.parametrize(("spacing_in", "ask"), [(3, True), (4, True), (6, False), (12, False)])
def test_at_4_in_and_closer_the_answer_is_to_ask(library: Library, spacing_in: int, ask: bool) -> None:
    """An engineer's note: at 4 in or less, more nails can do more harm than good: seen."""
    assert by_table(library, Counted(45, 20, 0), spacing_in).ask is ask


def test_three_staples_stand_for_a_nail(library: Library) -> None:
    """APA TT-012 as restated: where added nails would stand too close: seen (secondary)."""
    table = library.table("overdriven_remedy")
    for finding in ("more-than-one-fifth", "beyond-an-eighth"):
        each = int(table.lookup(finding=finding).number("staples_each"))
        assert staples_instead(5, each) == 15


def test_the_coast_has_no_such_way_out(library: Library) -> None:
    """FEMA P-499 sheet 7.1 (December 2010), p. 2: no staples: seen."""
    assert library.row("fema-coastal-no-staples").value == ("nails",)


def test_findings_of_the_table_are_those_of_the_calculator(library: Library) -> None:
    """The four rows, no more: seen (secondary)."""
    rows = library.table("overdriven_remedy").rows
    assert {row.word("finding") for row in rows} == {
        finding_of(Counted(10, *counts), 20) for counts in ((0, 0), (2, 0), (3, 0), (1, 1))
    }
    assert {row.source.checked for row in rows} == {"seen_secondary"}
