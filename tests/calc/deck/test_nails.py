"""Nails placed to a schedule, against counts worked by hand."""

import math
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.calc.deck.framing import framing_lines
from packet.calc.deck.nails import EDGE_DISTANCE_FT, Row, Schedule, Strip, nail_rows

HALF_RAFTER_FT = Fraction(3, 4) / 12
SHEET = ((0, 0), (8, 0), (8, 4), (0, 4))


def count(rows: tuple[Row, ...]) -> int:
    return sum(len(row.nails) for row in rows)


def lines(spacing_in: int, high_ft: int = 8) -> tuple[Fraction | int | float, ...]:
    return framing_lines(0, spacing_in, 0, high_ft)


@pytest.mark.parametrize(
    ("spacing_in", "edge_in", "field_in", "nails"),
    [
        # 24 in: 5 supports; an end row of 48 in takes 9 nails at 6 in, 13 at 4 in; a field row 5 at 12 in
        (24, 6, 12, 2 * 9 + 3 * 5),
        (24, 6, 6, 5 * 9),
        (24, 4, 4, 5 * 13),
        # 16 in: 7 supports
        (16, 6, 12, 2 * 9 + 5 * 5),
        (16, 6, 6, 7 * 9),
        (16, 4, 4, 7 * 13),
    ],
)
def test_a_whole_sheet_takes_the_nails_counted_by_hand(
    spacing_in: int, edge_in: int, field_in: int, nails: int
) -> None:
    assert count(nail_rows(SHEET, lines(spacing_in), HALF_RAFTER_FT, Schedule(edge_in, field_in))) == nails


def test_two_sheets_that_meet_on_a_rafter_have_a_row_each() -> None:
    beside = ((8, 0), (16, 0), (16, 4), (8, 4))
    schedule, rafters = Schedule(6, 12), lines(24, 16)
    left, right = (nail_rows(sheet, rafters, HALF_RAFTER_FT, schedule) for sheet in (SHEET, beside))
    on_joint = [row for row in (*left, *right) if abs(row.nails[0][0] - 8) < HALF_RAFTER_FT]
    assert [row.kind for row in on_joint] == ["end", "end"]
    assert [row.nails[0][0] < 8 for row in on_joint] == [True, False]
    assert [len(row.nails) for row in on_joint] == [9, 9]


def test_an_end_that_hangs_between_rafters_gets_no_end_row() -> None:
    short = ((0, 0), (7, 0), (7, 4), (0, 4))
    rows = nail_rows(short, lines(24), HALF_RAFTER_FT, Schedule(6, 12))
    assert [(round(row.nails[0][0], 3), row.kind, len(row.nails)) for row in rows] == [
        (0.031, "end", 9),
        (2.0, "field", 5),
        (4.0, "field", 5),
        (6.0, "field", 5),
    ]


def test_a_cut_along_a_valley_has_a_row_of_its_own() -> None:
    # 45 degrees: from (4, 0) to (8, 4), 5.657 ft less 3/8 in at each corner: 67.1 in takes 12 spaces at 6 in
    cut = ((0, 0), (4, 0), (8, 4), (0, 4))
    rows = nail_rows(cut, lines(24), HALF_RAFTER_FT, Schedule(6, 12))
    along = [row for row in rows if row.kind == "cut edge"]
    assert [len(row.nails) for row in along] == [13]
    for x, y in along[0].nails:
        assert math.isclose((x - 4 - y) / math.sqrt(2), -EDGE_DISTANCE_FT, abs_tol=1e-9)


def test_rows_stand_closer_in_a_strip_and_only_there() -> None:
    # along the eave, 2 ft deep: at 4 in there, at 12 in above
    strip = Strip(((0, 0), (8, 0), (8, 2), (0, 2)), 4)
    rows = nail_rows(SHEET, lines(24), HALF_RAFTER_FT, Schedule(4, 12, (strip,)))
    middle = [row for row in rows if abs(row.nails[0][0] - 4) < 0.01]
    assert [row.kind for row in middle] == ["closer", "field"]
    nails = [nail for row in middle for nail in row.nails]
    gaps = [round(12 * (high[1] - low[1]), 2) for low, high in pairwise(nails)]
    # 23.625 in in the strip: 6 spaces; 23.625 in above it: 2 spaces
    assert gaps == [3.94] * 6 + [11.81] * 2


def test_a_row_stops_short_of_the_row_along_a_cut() -> None:
    cut = ((0, 0), (4, 0), (8, 4), (0, 4))
    rows = nail_rows(cut, lines(24), HALF_RAFTER_FT, Schedule(6, 12))
    along = [nail for row in rows if row.kind == "cut edge" for nail in row.nails]
    others = [nail for row in rows if row.kind != "cut edge" for nail in row.nails]
    assert min(math.dist(nail, other) for nail in along for other in others) > 1 / 12


def test_wood_along_the_eave_takes_a_row_at_the_edge_spacing() -> None:
    rows = nail_rows(SHEET, lines(24), HALF_RAFTER_FT, Schedule(6, 12), level_wood=(0,))
    # 96 in less 3/8 in at each corner: 95.25 in takes 16 spaces
    assert [len(row.nails) for row in rows if row.nails[0][1] == row.nails[-1][1]] == [17]


SIZES = st.integers(24, 192).map(lambda inches: Fraction(inches, 12))
SPACINGS = st.sampled_from([3, 4, 6, 8, 12])


@given(SIZES, SIZES, SPACINGS, SPACINGS, st.sampled_from([12, 16, 24, Fraction(96, 5)]))
def test_no_gap_in_a_row_is_wider_than_the_schedule(
    along: Fraction, up: Fraction, edge_in: int, field_in: int, spacing_in: int | Fraction
) -> None:
    sheet = ((0, 0), (along, 0), (along, up), (0, up))
    rafters = framing_lines(0, spacing_in, 0, along)
    for row in nail_rows(sheet, rafters, HALF_RAFTER_FT, Schedule(edge_in, field_in)):
        most = edge_in if row.kind == "end" else field_in
        gaps = [12 * (high[1] - low[1]) for low, high in pairwise(row.nails)]
        assert max(gaps) <= most + 1e-9
        # one nail fewer would leave a wider gap
        assert len(row.nails) == 2 or sum(gaps) / (len(gaps) - 1) > most - 1e-9
        assert math.isclose(row.nails[0][1], EDGE_DISTANCE_FT)
        assert math.isclose(row.nails[-1][1], float(up) - EDGE_DISTANCE_FT)


@given(SIZES, SIZES, SPACINGS)
def test_every_nail_stands_on_its_piece_off_the_edge(along: Fraction, up: Fraction, edge_in: int) -> None:
    cut = ((0, 0), (along, 0), (along + up, up), (0, up))
    for row in nail_rows(cut, framing_lines(0, 16, 0, along + up), HALF_RAFTER_FT, Schedule(edge_in, 12)):
        for x, y in row.nails:
            assert EDGE_DISTANCE_FT - 1e-9 <= y <= float(up) - EDGE_DISTANCE_FT / 2
            assert -1e-9 <= x <= float(along) + y


def test_no_nail_stands_in_a_hole() -> None:
    hole = ((3, 1), (5, 1), (5, 3), (3, 3))
    rows = nail_rows(SHEET, lines(24), HALF_RAFTER_FT, Schedule(6, 6), holes=[hole])
    assert not [nail for row in rows for nail in row.nails if 3 < nail[0] < 5 and 1 < nail[1] < 3]
    # the row on the rafter at 4 ft is parted: from 3/8 in to 11-5/8 in, twice, takes 3 nails each
    parted = [len(row.nails) for row in rows if abs(row.nails[0][0] - 4) < 0.01]
    assert parted == [3, 3]
