"""Depth of an ice barrier, each with the wall face it is measured from."""

import pytest

from packet.calc.ice_barrier import barrier_rows, depth_from_inside_face, depth_from_outside_face

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
