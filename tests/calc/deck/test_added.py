"""Nails added to an old deck, by hand and against the count of a new one."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.calc.deck.added import added_in_row, added_in_sheet, nails_on_area
from packet.calc.domain import OutOfRange
from packet.calc.fasteners import nails_in_row, sheet_nails


@pytest.mark.parametrize(
    ("row_ft", "old_in", "most_in", "added"),
    [
        (4, 12, 6, 4),  # four spaces of 12 in, one nail in each
        (4, 12, 4, 8),  # two in each
        (4, 8, 6, 6),  # 8 in is parted once: 4 in
        (4, 7, 6, 7),  # the last space is short, and is parted too
        (4, 6, 6, 0),
        (4, 4, 6, 0),
        (4, 24, 6, 6),
    ],
)
def test_nails_between_the_old_ones_of_a_row(row_ft: int, old_in: int, most_in: int, added: int) -> None:
    assert added_in_row(row_ft, old_in, most_in) == added


@given(st.integers(1, 40), st.integers(2, 30), st.integers(2, 30))
def test_no_gap_is_left_wider_than_the_limit_and_one_nail_fewer_would_leave_one(
    spaces: int, old_in: int, most_in: int
) -> None:
    added = added_in_row(Fraction(spaces * old_in, 12), old_in, most_in)
    in_each = added // spaces
    assert added == in_each * spaces
    assert Fraction(old_in, in_each + 1) <= most_in
    assert not in_each or Fraction(old_in, in_each) > most_in


@pytest.mark.parametrize(
    ("frame_in", "old", "most", "added"),
    [
        (24, (6, 12), (6, 6), 3 * 4),  # the usual old deck brought to 6 in: field rows alone
        (16, (6, 12), (6, 6), 5 * 4),
        (24, (6, 12), (4, 4), 2 * 8 + 3 * 8),
        (24, (12, 12), (6, 6), 5 * 4),
        (24, (6, 6), (6, 6), 0),
    ],
)
def test_nails_added_to_a_sheet(
    frame_in: int, old: tuple[int, int], most: tuple[int, int], added: int
) -> None:
    found = added_in_sheet(
        8,
        4,
        frame_in,
        old_edge_in=old[0],
        old_field_in=old[1],
        most_edge_in=most[0],
        most_field_in=most[1],
    )
    assert found == added


SPACINGS = st.sampled_from([3, 4, 6, 12])


@given(st.sampled_from([12, 16, 24]), SPACINGS, SPACINGS, SPACINGS, SPACINGS)
def test_old_and_added_nails_together_are_those_of_a_new_sheet_where_the_spaces_part_evenly(
    frame_in: int, old_edge: int, old_field: int, edge: int, field: int
) -> None:
    old = sheet_nails(8, 4, frame_in, edge_spacing_in=old_edge, field_spacing_in=old_field)
    new = sheet_nails(8, 4, frame_in, edge_spacing_in=edge, field_spacing_in=field)
    added = added_in_sheet(
        8,
        4,
        frame_in,
        old_edge_in=old_edge,
        old_field_in=old_field,
        most_edge_in=edge,
        most_field_in=field,
    )
    parts_evenly = all(was <= now or was % now == 0 for was, now in ((old_edge, edge), (old_field, field)))
    closer = old_edge < edge or old_field < field
    if parts_evenly and not closer:
        assert old + added == new
    assert old + added >= new


def test_a_complete_new_nailing_counts_as_a_new_row() -> None:
    # none of the old ones count: a row of 4 ft at 6 in has nine, where adding between old ones at 12 in takes four
    assert (nails_in_row(4, 6), added_in_row(4, 12, 6)) == (9, 4)


def test_nails_of_a_whole_deck_by_area() -> None:
    assert nails_on_area(1600, 33) == 50 * 33
    assert nails_on_area(1600, 12) == 600
    assert nails_on_area(48, 33) == 50  # a sheet and a half
    assert nails_on_area(0, 33) == 0
    assert nails_on_area(90, 10, 3, 10) == 30


@pytest.mark.parametrize(
    "call",
    [
        lambda: added_in_row(0, 6, 6),
        lambda: added_in_row(4, 0, 6),
        lambda: added_in_row(4, 6, 0),
        lambda: added_in_sheet(8, 4, 0, old_edge_in=6, old_field_in=6, most_edge_in=6, most_field_in=6),
        lambda: nails_on_area(-1, 33),
        lambda: nails_on_area(100, 33, 0),
        lambda: nails_on_area(100, -1),
    ],
)
def test_nonsense_is_refused(call) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(OutOfRange):
        call()
