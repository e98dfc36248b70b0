"""Where a cut begins and ends on a sheet, against places read off a sketch."""

from fractions import Fraction

import pytest

from packet.calc.deck.marks import corners_kept, place_on_sheet
from packet.calc.domain import OutOfRange

SHEET = ((16, 0), (24, 0), (24, 4), (16, 4))


@pytest.mark.parametrize(
    ("along", "up", "place"),
    [
        (4, 0, "lower"),
        (7.5777, 4, "upper"),
        (0, 1.5, "left"),
        (8, 1.5, "right"),
        (0, 0, "lower left"),
        (8, 0, "lower right"),
        (0, 4, "upper left"),
        (8, 4, "upper right"),
        (2, Fraction(1, 2), "inside"),
        (Fraction(1, 96), 4 - 1 / 96, "upper left"),
        (Fraction(1, 24), 0, "lower"),
    ],
)
def test_a_mark_is_told_by_the_edge_it_lies_on(along: float, up: float, place: str) -> None:
    assert place_on_sheet(along, up, 8, 4) == place


def test_a_sheet_has_a_size() -> None:
    with pytest.raises(OutOfRange, match="height_ft"):
        place_on_sheet(1, 1, 8, 0)


def test_the_corners_of_a_whole_sheet_are_kept_all_four() -> None:
    assert corners_kept(SHEET, [SHEET]) == ("lower left", "lower right", "upper right", "upper left")


def test_a_sheet_cut_to_a_valley_keeps_the_side_that_lies_on_the_plane() -> None:
    assert corners_kept(SHEET, [((16, 0), (20, 0), (23.58, 4), (16, 4))]) == ("lower left", "upper left")


def test_a_sheet_parted_by_an_opening_keeps_corners_of_both_parts() -> None:
    parts = [((16, 0), (18, 0), (18, 4), (16, 4)), ((22, 0), (24, 0), (22, 4))]
    assert corners_kept(SHEET, parts) == ("lower left", "lower right", "upper left")
