"""Sheets cut to the lines of the roof."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.calc.deck.pieces import piece
from packet.calc.polygon import rectangle_at

PLANE = ((0, 0), (20, 0), (32, 12), (0, 12))


def test_a_sheet_inside_its_plane_is_laid_whole() -> None:
    whole = piece(rectangle_at(4, 4, 8, 4), PLANE, [])
    assert (whole.area_sq_ft, whole.cuts) == (32, ())


def test_a_sheet_at_the_valley_is_cut_along_it() -> None:
    # the valley runs from (20, 0) at 45 degrees, so the sheet from 16 to 24 loses a triangle of 4 by 4 ft
    cut = piece(rectangle_at(16, 0, 8, 4), PLANE, [])
    assert cut.area_sq_ft == pytest.approx(32 - 8)
    assert [(float(c.start[0]), float(c.start[1]), float(c.end[0]), float(c.end[1])) for c in cut.cuts] == [
        (4, 0, 8, 4)
    ]


def test_a_sheet_is_notched_around_an_opening() -> None:
    notched = piece(rectangle_at(0, 0, 8, 4), PLANE, [rectangle_at(6, 2, 6, 6)])
    assert notched.area_sq_ft == 32 - 4
    assert len(notched.cuts) == 2


def test_an_opening_across_a_sheet_leaves_two_parts() -> None:
    parted = piece(rectangle_at(0, 0, 8, 4), PLANE, [rectangle_at(3, 0, 2, 6)])
    assert sorted(round(float(max(u for u, _ in outline))) for outline in parted.outlines) == [3, 8]


def test_a_sheet_off_its_plane_leaves_nothing() -> None:
    assert piece(rectangle_at(-9, 0, 8, 4), PLANE, []).outlines == ()


@given(st.integers(0, 30), st.integers(0, 11), st.integers(1, 8), st.integers(1, 4))
def test_pieces_of_a_divided_sheet_make_the_sheet(left: int, low: int, along: int, up: int) -> None:
    whole = piece(rectangle_at(left, low, along, up), PLANE, []).area_sq_ft
    half = Fraction(along, 2)
    parts = [piece(rectangle_at(left + start, low, half, up), PLANE, []).area_sq_ft for start in (0, half)]
    assert sum(parts) == pytest.approx(whole, abs=1e-6)


def test_an_opening_inside_a_sheet_is_a_hole_in_it() -> None:
    holed = piece(rectangle_at(0, 0, 8, 4), PLANE, [rectangle_at(3, 1, 2, 2)])
    assert holed.area_sq_ft == 32 - 4
    assert [len(hole) for hole in holed.holes] == [4]
    assert len(holed.cuts) == 4
