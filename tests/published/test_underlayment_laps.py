"""Underlayment: single and double layers, their laps, and what runs over ridges and up walls."""

from fractions import Fraction

import pytest

from packet.calc.takeoff import (
    half_sheet_lap,
    low_slope_sheet_area,
    over_ridge_area,
    roll_cover,
    rolls,
    sheet_area,
    to_buy,
    up_wall_area,
)

F = Fraction


def test_a_single_layer_laps_2_in_and_its_ends_4() -> None:
    """St. Peter handout, NAVEDTRA 14044 and IBC 1507.1.1 (seen): 2 in head lap, 4 in end lap.

    Of 144 ft by 36 in there show 143 ft 8 in by 34 in, 407.06 sq ft: the four squares the field guide prints.
    """
    assert roll_cover(144, 36, 2, 4) == F(7327, 18)
    assert int(roll_cover(144, 36, 2, 4)) == 407
    assert roll_cover(72, 36, 2, 4) // 100 == 2


def test_the_end_lap_can_cost_a_roll() -> None:
    """The same laps: ten rolls cover 4,080 sq ft without end laps, eleven are needed with them."""
    assert rolls(4080, roll_cover(144, 36, 2)) == 10
    assert rolls(4080, roll_cover(144, 36, 2, 4)) == 11


def test_a_double_layer_shows_17_in_of_36() -> None:
    """St. Peter handout and NAVEDTRA 14045 (seen): 19 in laps on a 36 in sheet, 17 in exposed.

    510 sq ft is 30 ft of eave by twelve courses of 17 in: twelve sheets of 30 by 3 ft.
    """
    assert sheet_area(510, 36, 19) == 12 * 30 * 3
    assert roll_cover(72, 36, 19) == 72 * F(17, 12) == 102


@pytest.mark.parametrize(("strip_width_in", "sheet_sq_ft"), [(19, F(2255, 2)), (18, 1125)])
def test_the_starter_of_a_double_layer_is_half_a_sheet_wide(
    strip_width_in: int, sheet_sq_ft: Fraction
) -> None:
    """IBC 1507.1.1 and NAVEDTRA 14045 (seen): 19 in by one, 18 in by the other; a full sheet goes over it.

    30 ft of 19 in is 47.5 sq ft, of 18 in 45 sq ft. The strip is the record's; 19 in is taken where it is silent,
    as the code prints it, and is never short.
    """
    assert low_slope_sheet_area(510, 30, strip_width_in=strip_width_in) == sheet_sq_ft
    assert low_slope_sheet_area(510, 30) == F(2255, 2)


def test_no_30_felt_on_a_low_slope_takes_a_roll_a_square_as_printed() -> None:
    """Asphalt Shingles Field Guide (seen): one square half-lapped. 216 sq ft of sheet to the roll.

    1,000 sq ft over 40 ft of eave is 2,117.6 sq ft of sheet and a strip of 63.3: 10.1 rolls, so eleven, where
    the printed cover alone says ten and leaves out the strip.
    """
    sheet = low_slope_sheet_area(1000, 40)
    assert float(sheet) == pytest.approx(2180.98, abs=0.005)
    assert rolls(sheet, roll_cover(72, 36, 0)) == 11
    assert rolls(1000, 100) == 10


def test_half_a_sheet_and_an_inch_is_the_code_s_19_in_on_a_36_in_sheet() -> None:
    """ARMA, lower sloped roofs (seen): half the sheet + 1 in, the first lap + 2 in; the code: 19 in (seen).

    On 36 in they agree. On a wide sheet they do not: 19 in laps would leave 29 of 48 in showing and part of
    the deck under one layer, so there the lap of the makers' association is taken.
    """
    assert half_sheet_lap(36) == 19
    assert half_sheet_lap(36, 2) == 20
    assert half_sheet_lap(48) == 25
    assert half_sheet_lap(F(79, 2)) == F(83, 4)
    assert 48 - 19 > 48 / 2 > 48 - half_sheet_lap(48)


def test_sheets_run_6_in_over_a_ridge_or_hip_from_both_sides() -> None:
    """NAVEDTRA 14044 and 14045 (seen): 6 in from both sides, so a foot of sheet to the foot of ridge."""
    assert over_ridge_area(40, 6) == 40
    assert over_ridge_area(18, 6) == 18


def test_sheets_turn_4_in_up_a_wall() -> None:
    """NAVEDTRA 14045 (seen)."""
    assert up_wall_area(12, 4) == 4


def test_a_whole_roof_in_one_layer() -> None:
    """The same rules on a gable of 24 squares with 40 ft of ridge and 12 ft of wall.

    2,400 + 40 + 4 sq ft over 407.06 a roll is 6.004: the last four feet take a seventh roll, which the roof's
    area alone would not show.
    """
    need = 2400 + over_ridge_area(40, 6) + up_wall_area(12, 4)
    assert need == 2444
    assert to_buy(need, roll_cover(144, 36, 2, 4)) == 7
    assert to_buy(2400, roll_cover(144, 36, 2, 4)) == 6
