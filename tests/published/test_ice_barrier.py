"""Depth of an ice barrier, each with the wall face it is measured from."""

from fractions import Fraction

import pytest

from packet.calc.ice_barrier import (
    barrier_length,
    barrier_rows,
    depth_from_inside_face,
    depth_from_outside_face,
    reach_past_outside_face,
)
from packet.calc.takeoff import to_buy

#: 2x6 wall with its sheathing: 5-1/2 in of stud and 1/2 in.
WALL_IN = 6


def test_depth_from_the_inside_face_matches_the_worked_example() -> None:
    """Ice-Dam Protection, trade journal (seen): 6:12, 12 in overhang, 2x6 wall: 47 in."""
    assert depth_from_inside_face(12, WALL_IN, 24, 6) == pytest.approx(47, abs=0.5)
    assert depth_from_inside_face(12, WALL_IN, 24, 6) == pytest.approx(46.96, abs=0.005)


def test_depth_from_the_outside_face_of_the_same_roof_is_less() -> None:
    """IRC R905.1.2 by the same article and a code officials' forum (seen): 24 in past the exterior line."""
    assert depth_from_outside_face(12, 24, 6) == pytest.approx(40.2, abs=0.05)


def test_the_distance_is_level_not_up_the_slope() -> None:
    """36 in level is 36 in only on a flat roof; at 12:12 it is 50.9 in up the slope."""
    assert depth_from_outside_face(12, 24, 0) == 36
    assert depth_from_outside_face(12, 24, 12) == pytest.approx(50.91, abs=0.005)


def test_a_steep_roof_without_overhang_takes_the_36_inch_rule() -> None:
    """2015 to 2021 IRC, 8:12 and steeper: also 36 in up the slope (seen, forum); gone in the 2024 edition."""
    assert depth_from_outside_face(0, 24, 8) == pytest.approx(28.84, abs=0.005)
    assert depth_from_outside_face(0, 24, 8, least_in=36) == 36
    assert depth_from_outside_face(24, 24, 8, least_in=36) == pytest.approx(57.69, abs=0.005)


def test_one_sheet_seldom_reaches() -> None:
    """36 in sheet: one course covers 36 in, the worked example takes two."""
    assert barrier_rows(36, 36, 3) == 1
    assert barrier_rows(depth_from_inside_face(12, WALL_IN, 24, 6), 36, 3) == 2
    assert barrier_rows(69, 36, 3) == 2
    assert barrier_rows(69.1, 36, 3) == 3


@pytest.mark.parametrize(
    ("inside_in", "least_in", "depth_in"),
    [
        (
            24,
            0,
            46.96,
        ),  # ARMA, ice dams; NRCA April 2008; MIL-HDBK-1001/5A: 24 in inside the inner face (seen)
        (12, 0, 33.54),  # NAVEDTRA 14044, p. 112: 12 to 24 in inside the wall line, lower end (seen)
        (
            12,
            30,
            33.54,
        ),  # Wisconsin SPS 321.28: 30 in up the slope and 12 in past the inner face (seen, weight C)
    ],
)
def test_rules_that_start_from_the_inside_face(inside_in: int, least_in: int, depth_in: float) -> None:
    """One roof, 6:12 with 12 in overhang and a 6 in wall, by the rules that measure from the inner face.

    The code measures from the outer one (40.2 in). The datum is the record's choice and printed beside it.
    """
    assert depth_from_inside_face(12, WALL_IN, inside_in, 6, least_in) == pytest.approx(depth_in, abs=0.005)


def test_the_30_in_of_wisconsin_count_where_the_eave_is_short() -> None:
    """Wisconsin SPS 321.28 (seen, weight C): at 3:12 without overhang 18 in level are 18.6 up the slope."""
    assert depth_from_inside_face(0, WALL_IN, 12, 3) == pytest.approx(18.55, abs=0.005)
    assert depth_from_inside_face(0, WALL_IN, 12, 3, 30) == 30


def test_the_worked_sheet_reaches_24_in_past_the_inner_face_and_30_past_the_outer() -> None:
    """Ice-Dam Protection (seen), the other way round: 46.96 in at 6:12 with 12 in of overhang."""
    assert reach_past_outside_face(Fraction(4696, 100), 12, 6) == pytest.approx(24 + WALL_IN, abs=0.005)


def test_sheet_for_an_eave_is_rows_times_its_length() -> None:
    """Derived: two courses along 40 ft, from rolls of 66 ft 8 in and of 75 ft (roll sizes seen, weight C)."""
    rows = barrier_rows(depth_from_inside_face(12, WALL_IN, 24, 6), 36, 3)
    assert barrier_length(40, rows) == 80
    assert to_buy(barrier_length(40, rows), Fraction(200, 3)) == 2
    assert to_buy(barrier_length(37, rows), 75) == 1
