"""Each kind of nail row where the schedule wants it: take one from the layout and a test here fails."""

from fractions import Fraction

import pytest

from packet.calc.deck.framing import framing_lines
from packet.calc.deck.nails import Row, Schedule, Strip, nail_rows
from packet.calc.polygon import Outline

HALF_RAFTER_FT = Fraction(3, 4) / 12
SHEET = ((0, 0), (8, 0), (8, 4), (0, 4))
RAFTERS = framing_lines(0, 24, 0, 8)


def told(rows: tuple[Row, ...]) -> list[tuple[str, float, int]]:
    """Return kind, place along and nails of each upright row, left to right and up."""
    upright = [row for row in rows if row.start[0] == row.end[0]]
    placed = sorted(upright, key=lambda row: (row.start[0], row.start[1]))
    return [(row.kind, round(float(row.start[0]), 3), len(row.nails)) for row in placed]


def test_each_support_under_a_sheet_has_its_row() -> None:
    assert told(nail_rows(SHEET, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12))) == [
        ("end", 0.031, 9),
        ("field", 2, 5),
        ("field", 4, 5),
        ("field", 6, 5),
        ("end", 7.969, 9),
    ]


@pytest.mark.parametrize(
    ("end", "kind", "at", "nails"),
    [
        # half an inch short of the center: 3/8 in further in is 7/8 in off it, past the face of the rafter
        (Fraction(95, 24), None, 0, 0),
        # a sixteenth short, as a joint with its 1/8 in gap lies
        (4 - Fraction(1, 192), "end", 3.964, 9),
        # to the far face of the rafter, beside a nailer
        (Fraction(65, 16), "end", 4.031, 9),
        # a quarter past it: the row still hits the rafter
        (Fraction(49, 12), "end", 4.052, 9),
        # three inches past it: the rafter is a support between
        (Fraction(17, 4), "field", 4, 5),
        # at the near face nothing carries the end, and a nail would stand in the air
        (Fraction(63, 16), None, 0, 0),
    ],
)
def test_an_end_row_stands_where_it_hits_the_rafter(
    end: Fraction, kind: str | None, at: float, nails: int
) -> None:
    piece = ((0, 0), (end, 0), (end, 4), (0, 4))
    rows = told(nail_rows(piece, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12)))
    assert rows[2:] == ([(kind, at, nails)] if kind else [])


def opening(left: Fraction, right: Fraction) -> Outline:
    return ((left, 1), (right, 1), (right, 3), (left, 3))


def test_the_edge_along_an_opening_takes_the_edge_spacing_on_its_rafters() -> None:
    """An opening between the faces of two rafters, from 1 ft to 3 ft: panel edges with wood below."""
    hole = opening(4 + HALF_RAFTER_FT, 6 - HALF_RAFTER_FT)
    rows = nail_rows(SHEET, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12), holes=[hole])
    # 3/8 in past both corners is 24-3/4 in: 5 spaces at 6 in; its first nail is the last of the row below.
    # 11-1/4 in below takes 2 nails at 12 in, and as much above one more
    assert told(rows)[2:8] == [
        ("field", 4, 2),
        ("field", 4, 1),
        ("end", 4.031, 5),
        ("end", 5.969, 5),
        ("field", 6, 2),
        ("field", 6, 1),
    ]


def test_an_opening_cut_on_the_center_of_its_rafters_is_nailed_beside_the_cut() -> None:
    rows = nail_rows(
        SHEET, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12), holes=[opening(Fraction(4), Fraction(6))]
    )
    assert [(at, nails) for kind, at, nails in told(rows) if kind == "end"] == [
        (0.031, 9),
        (3.969, 5),
        (6.031, 5),
        (7.969, 9),
    ]


def test_openings_on_both_sides_of_a_rafter_leave_a_row_for_each() -> None:
    holes = [
        opening(2 + HALF_RAFTER_FT, 4 - HALF_RAFTER_FT),
        opening(4 + HALF_RAFTER_FT, 6 - HALF_RAFTER_FT),
    ]
    rows = nail_rows(SHEET, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12), holes=holes)
    assert [(at, nails) for kind, at, nails in told(rows) if kind == "end" and 3 < at < 5] == [
        (3.969, 5),
        (4.031, 5),
    ]


def test_an_opening_away_from_rafters_has_no_wood_to_nail_to() -> None:
    rows = nail_rows(
        SHEET, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12), holes=[opening(Fraction(9, 2), Fraction(11, 2))]
    )
    assert [row for row in told(rows) if 3 < row[1] < 7] == [("field", 4, 5), ("field", 6, 5)]


def test_blocking_below_an_opening_takes_a_row() -> None:
    """Level wood at 1 ft, where an opening of 2 ft starts: its edge is nailed, and no other level edge."""
    hole = opening(Fraction(9, 2), Fraction(13, 2))
    rows = nail_rows(SHEET, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12), level_wood=(1,), holes=[hole])
    # 24 in and 3/8 in past both corners: 5 spaces at 6 in
    assert [len(row.nails) for row in rows if row.start[1] == row.end[1]] == [6]


def test_wood_half_a_foot_from_an_edge_takes_no_row() -> None:
    rows = nail_rows(SHEET, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12), level_wood=(Fraction(1, 2),))
    assert not [row for row in rows if row.start[1] == row.end[1]]


def test_rows_change_their_spacing_at_each_strip_they_pass() -> None:
    """Strips of 12 in along the eave and along the ridge, at 4 in; 24 in between them at 12 in."""
    eave = Strip(((0, 0), (8, 0), (8, 1), (0, 1)), 4)
    ridge = Strip(((0, 3), (8, 3), (8, 4), (0, 4)), 4)
    rows = nail_rows(SHEET, RAFTERS, HALF_RAFTER_FT, Schedule(4, 12, (eave, ridge)))
    on_one = [row for row in rows if row.start[0] == 4]
    # 11-5/8 in at 4 in: 3 spaces; 24 in at 12 in: 2 more nails; 11-5/8 in: 3 more
    assert [(row.kind, len(row.nails)) for row in on_one] == [("closer", 4), ("field", 2), ("closer", 3)]


def test_both_parts_of_a_piece_that_a_hip_almost_parts_are_nailed() -> None:
    """Two squares that hang together by a neck of half an inch, too narrow for a nail."""
    neck = Fraction(1, 48)
    piece = (
        *((0, 0), (4, 0), (4, 2 - neck), (Fraction(17, 4), 2 - neck), (Fraction(17, 4), 0), (8, 0)),
        *((8, 4), (Fraction(17, 4), 4), (Fraction(17, 4), 2 + neck), (4, 2 + neck), (4, 4), (0, 4)),
    )
    rows = told(nail_rows(piece, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12)))
    # the notches end at 4 ft on the rafter; the right square has its left edge in the air
    assert [(kind, at) for kind, at, _ in rows] == [
        ("end", 0.031),
        ("field", 2),
        ("end", 3.969),
        ("field", 6),
        ("end", 7.969),
    ]


def test_a_row_stops_an_inch_and_a_half_short_of_the_row_along_a_cut() -> None:
    # 45 degrees from (4, 0): on the rafter at 6 ft the cut stands at 2 ft, its row 3/8 in along the normal above
    cut = ((0, 0), (4, 0), (8, 4), (0, 4))
    row = next(row for row in nail_rows(cut, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12)) if row.start[0] == 6)
    assert 12 * float(row.start[1]) == pytest.approx(24 + 0.375 * 2**0.5 + 1.5)


def test_a_row_along_a_cut_and_one_on_level_wood_stand_at_the_edge_spacing() -> None:
    cut = ((0, 0), (4, 0), (8, 4), (0, 4))
    rows = nail_rows(cut, RAFTERS, HALF_RAFTER_FT, Schedule(6, 12), level_wood=(4,))
    # the cut: 67.1 in, 12 spaces; the upper edge: 96 in less 3/8 in and 0.905 in at its sharp corner, 16 spaces
    assert [len(row.nails) for row in rows if row.start[0] != row.end[0]] == [13, 17]
