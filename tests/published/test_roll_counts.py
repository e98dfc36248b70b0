"""Rolls and deck sheets against printed covers."""

from fractions import Fraction

import pytest

from packet.calc.takeoff import deck_sheets, roll_cover, rolls

F = Fraction


@pytest.mark.parametrize(
    ("roll_length_ft", "gross_sq_ft", "squares", "squares_half_lapped"),
    [(144, 432, 4, 2), (72, 216, 2, 1)],
    ids=["No. 15 felt", "No. 30 felt"],
)
def test_felt_covers_what_the_field_guide_prints(
    roll_length_ft: int, gross_sq_ft: int, squares: int, squares_half_lapped: int
) -> None:
    """Asphalt Shingles Field Guide, trade journal (seen): whole squares, laps taken off."""
    assert roll_cover(roll_length_ft, 36, 0) == gross_sq_ft
    assert roll_cover(roll_length_ft, 36, 2) // 100 == squares
    assert roll_cover(roll_length_ft, 36, 19) // 100 == squares_half_lapped


def test_rolls_of_an_ordinary_roof() -> None:
    """By the printed four squares a roll: 20 squares take 5 rolls, and one square foot more takes a sixth."""
    assert rolls(2000, 400) == 5
    assert rolls(2001, 400) == 6


def test_no_30_felt_with_a_four_inch_head_lap() -> None:
    """72 ft by 32 in showing is 192 sq ft; 400 sq ft take three rolls, not the two of the printed cover."""
    assert roll_cover(72, 36, 4) == 192
    assert rolls(400, 192) == 3
    assert rolls(400, 200) == 2


def test_synthetic_underlayment_covers_ten_squares() -> None:
    """Trade article, underlayment weights and measurements (seen, weight C): 1,000 sq ft a roll."""
    assert rolls(2650, 1000) == 3


@pytest.mark.parametrize(("roll_length_ft", "gross_sq_ft"), [(F(200, 3), 200), (75, 225)])
def test_self_adhered_sheet_covers_its_length_by_three_feet(
    roll_length_ft: Fraction, gross_sq_ft: int
) -> None:
    """Article on self-adhered membrane (seen, weight C): 36 in by 66.7 or 75 ft, less laps."""
    assert roll_cover(roll_length_ft, 36, 0) == gross_sq_ft


@pytest.mark.parametrize(("area_sq_ft", "sheets"), [(32, 1), (32.01, 2), (128, 4), (1000, 32)])
def test_a_deck_sheet_covers_32_square_feet(area_sq_ft: float, sheets: int) -> None:
    """Trade text (seen): 4 by 8 ft."""
    assert deck_sheets(area_sq_ft) == sheets


def test_another_sheet_covers_its_own_area() -> None:
    assert deck_sheets(160, 4, 10) == 4
