import math
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from packet.calc import areas, polygon
from packet.calc.domain import OutOfRange
from packet.calc.geometry import (
    SIDES,
    Shape,
    Side,
    length_as_taped,
    length_on_slope,
    level_from_slope,
    level_outline,
    rectangle,
    side_lengths,
    slope_outline,
    triangle,
)
from packet.calc.plan import (
    Place,
    PlacedSide,
    bearing,
    compare_sides,
    place,
    placed_side,
    plan_outline,
    slope_to_plan,
)
from packet.calc.slope import eave_height_governs, hip_factor, slope_factor

F = Fraction

#: An L plan with a dormer: main block 44 by 24, wing 24 by 16, 6:12 all round, dormer 3:12.
SHAPES = {
    "MS": Shape(20, 32, 0, 12, 6),
    "MN": Shape(44, 32, 12, 12, 6),
    "WW": Shape(16, 28, -12, 12, 6),
    "WE": Shape(40, 28, 0, 12, 6),
}
PLACES = {
    "MS": place((0, 0), "south"),
    "MN": place((44, 24), "north"),
    "WW": place((20, 0), "west"),
    "WE": place((44, -16), "east"),
}

lengths = st.integers(1, 960).map(lambda n: F(n, 16))
offsets = st.integers(-960, 960).map(lambda n: F(n, 16))
rises = st.integers(0, 384).map(lambda n: F(n, 16))
shapes = st.builds(Shape, lengths, st.one_of(st.just(0), lengths), offsets, lengths, rises)
places = st.builds(place, st.tuples(offsets, offsets), st.floats(0, 359.999))


def seen(name: str) -> tuple[tuple[float, float], ...]:
    return plan_outline(level_outline(SHAPES[name]), PLACES[name])


def side_of(shape: Shape, where: Place, side: Side) -> PlacedSide:
    """Return a side of a trapezoid in plan; the upper side of a triangle is not asked for."""
    corners, number = level_outline(shape), SIDES.index(side)
    return placed_side(corners[number], corners[(number + 1) % len(corners)], where, shape.rise)


def test_planes_of_an_l_plan_close_over_it() -> None:
    covered = sum(polygon.polygon_area(seen(name)) for name in SHAPES)
    assert covered == 44 * 24 + 24 * 16
    assert seen("MS") == ((0, 0), (20, 0), (32, 12), (0, 12))
    assert seen("MN") == ((44, 24), (0, 24), (0, 12), (32, 12))
    assert seen("WW") == ((20, 0), (20, -16), (32, -16), (32, 12))
    assert seen("WE") == ((44, -16), (44, 24), (32, 12), (32, -16))


@pytest.mark.parametrize(
    ("first", "second", "length_ft"),
    [
        (("MS", "right"), ("WW", "left"), 18),
        (("MN", "left"), ("WE", "right"), 18),
        (("MS", "upper"), ("MN", "upper"), 32),
        (("WW", "upper"), ("WE", "upper"), 28),
    ],
)
def test_neighbours_share_an_edge(
    first: tuple[str, Side], second: tuple[str, Side], length_ft: float
) -> None:
    one, other = (side_of(SHAPES[name], PLACES[name], side) for name, side in (first, second))
    assert compare_sides(one, other).shared
    assert one.length_ft == other.length_ft == length_ft


def test_sides_that_miss_by_more_than_an_inch_are_not_one_edge() -> None:
    valley = side_of(SHAPES["MS"], PLACES["MS"], "right")
    near = side_of(Shape(16, 28, -12, 12, 6), place((20 + F(1, 16), 0), "west"), "left")
    far = side_of(Shape(16, 28, -12, 12, 6), place((20 + F(1, 4), 0), "west"), "left")
    steeper = side_of(Shape(16, 28, -12, 12, 8), PLACES["WW"], "left")
    assert compare_sides(valley, near).shared
    assert not compare_sides(valley, far).shared
    assert compare_sides(valley, far).gap_ft == 0.25
    assert not compare_sides(valley, steeper).shared
    assert compare_sides(valley, steeper).gap_ft == 0


def test_a_triangle_has_three_corners_and_no_upper_side() -> None:
    hip_end = triangle(24, 12, 12, 6)
    assert level_outline(hip_end) == ((0, 0), (24, 0), (12, 12))
    assert side_lengths(hip_end) == {"lower": 24, "right": 18, "upper": 0, "left": 18}


@pytest.mark.parametrize("word", ["up", "", "South", "south east"])
def test_a_word_off_the_compass_is_refused(word: str) -> None:
    with pytest.raises(OutOfRange, match="not a way"):
        bearing(word)


def test_bearings_between_the_four_are_turned_too() -> None:
    outline = plan_outline(level_outline(rectangle(10, 5, 0)), place((0, 0), "south-east"))
    assert outline[0] == (0, 0)
    assert outline[1] == pytest.approx((math.sqrt(50), math.sqrt(50)))


@given(lengths, lengths, st.one_of(st.just(0), lengths), offsets, rises)
def test_closed_forms_agree_with_the_shoelace(
    lower: Fraction, run: Fraction, upper: Fraction, starts: Fraction, rise: Fraction
) -> None:
    shape = Shape(lower, upper, starts, run, rise)
    assert polygon.polygon_area(level_outline(shape)) == areas.trapezoid_plan_area(lower, upper, run)
    on_slope = float(polygon.polygon_area(slope_outline(level_outline(shape), rise)))
    assert on_slope == pytest.approx(areas.trapezoid_slope_area(lower, upper, run, rise), rel=1e-9)


@given(lengths, lengths, rises)
def test_rectangle_and_triangle_are_cases_of_the_trapezoid(
    lower: Fraction, run: Fraction, rise: Fraction
) -> None:
    assert areas.rectangle_slope_area(lower, run, rise) == pytest.approx(
        areas.trapezoid_slope_area(lower, lower, run, rise)
    )
    assert areas.triangle_slope_area(lower, run, rise) * 2 == pytest.approx(
        areas.rectangle_slope_area(lower, run, rise)
    )


@given(shapes, places)
def test_turning_a_plane_in_plan_changes_no_area_or_level_side(shape: Shape, where: Place) -> None:
    level = level_outline(shape)
    turned = plan_outline(level, where)
    assert float(polygon.polygon_area(turned)) == pytest.approx(float(polygon.polygon_area(level)), rel=1e-6)
    assert polygon.distance(turned[0], turned[1]) == pytest.approx(float(shape.lower_ft), rel=1e-9)


@given(shapes)
def test_plan_area_times_slope_factor_is_slope_area(shape: Shape) -> None:
    plan = float(areas.trapezoid_plan_area(shape.lower_ft, shape.upper_ft, shape.run_ft))
    slope = areas.trapezoid_slope_area(shape.lower_ft, shape.upper_ft, shape.run_ft, shape.rise)
    assert plan * slope_factor(shape.rise) == pytest.approx(slope, rel=1e-12)


@given(shapes)
def test_side_lengths_are_the_distances_between_corners(shape: Shape) -> None:
    assume(shape.upper_ft)
    a, b, c, d = slope_outline(level_outline(shape), shape.rise)
    sides = side_lengths(shape)
    assert sides["right"] == pytest.approx(polygon.distance(b, c), rel=1e-9)
    assert sides["left"] == pytest.approx(polygon.distance(d, a), rel=1e-9)
    assert sides["upper"] == pytest.approx(polygon.distance(c, d), rel=1e-9)


@given(shapes, st.fractions(0, 1, max_denominator=64))
def test_splitting_a_plane_across_changes_no_total(shape: Shape, part: Fraction) -> None:
    assume(0 < part < 1)
    width = shape.lower_ft + (shape.upper_ft - shape.lower_ft) * part
    start = shape.upper_starts_ft * part
    low = Shape(shape.lower_ft, width, start, shape.run_ft * part, shape.rise)
    high = Shape(width, shape.upper_ft, shape.upper_starts_ft - start, shape.run_ft * (1 - part), shape.rise)
    whole = polygon.polygon_area(level_outline(shape))
    assert sum(polygon.polygon_area(level_outline(piece)) for piece in (low, high)) == whole
    sides: tuple[Side, ...] = ("left", "right")
    for side in sides:
        lengths = [side_lengths(piece)[side] for piece in (low, high)]
        assert sum(lengths) == pytest.approx(side_lengths(shape)[side], rel=1e-9)


@given(lengths, lengths, rises, st.fractions(0, 1, max_denominator=64))
def test_splitting_a_plane_up_the_slope_changes_no_total(
    lower: Fraction, run: Fraction, rise: Fraction, part: Fraction
) -> None:
    assume(0 < part < 1)
    pieces = [areas.rectangle_slope_area(lower * share, run, rise) for share in (part, 1 - part)]
    assert sum(pieces) == pytest.approx(areas.rectangle_slope_area(lower, run, rise), rel=1e-12)


@given(lengths, rises)
def test_a_hip_is_the_diagonal_of_its_run(run: Fraction, rise: Fraction) -> None:
    hip_end = triangle(run * 2, run, run, rise)
    assert side_lengths(hip_end)["left"] == pytest.approx(float(run) * hip_factor(rise), rel=1e-12)


@given(shapes, places, lengths, lengths)
def test_a_point_on_the_slope_keeps_its_distance_along_the_eave(
    shape: Shape, where: Place, u: Fraction, v: Fraction
) -> None:
    at = slope_to_plan(where, shape.rise, (u, v))
    foot = slope_to_plan(where, shape.rise, (u, 0))
    assert polygon.distance(at, foot) * slope_factor(shape.rise) == pytest.approx(float(v), rel=1e-9)


def test_low_slopes_take_the_eave_height() -> None:
    assert eave_height_governs(F(21, 10))
    assert not eave_height_governs(F(22, 10))


@given(shapes)
def test_level_run_and_distance_up_the_slope_are_turned_into_each_other(shape: Shape) -> None:
    level = level_outline(shape)
    again = level_from_slope(slope_outline(level, shape.rise), shape.rise)
    for (u, run), (same_u, same_run) in zip(level, again, strict=True):
        assert u == same_u
        assert float(same_run) == pytest.approx(float(run), rel=1e-12)


@given(offsets, offsets, offsets, offsets, rises)
def test_a_line_has_one_length_whichever_way_it_was_taped(
    u1: Fraction, run1: Fraction, u2: Fraction, run2: Fraction, rise: Fraction
) -> None:
    climb = (float(run2) - float(run1)) * float(rise) / 12
    by_hand = math.sqrt(float(u2 - u1) ** 2 + float(run2 - run1) ** 2 + climb**2)
    assert length_on_slope(u1, run1, u2, run2, rise) == pytest.approx(by_hand, rel=1e-9, abs=1e-9)
    start, end = slope_outline(((u1, run1), (u2, run2)), rise)
    assert length_as_taped(*start, *end) == pytest.approx(by_hand, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(
    ("rise", "run_ft", "up_ft"), [(0, 8, 8), (5, 12, 13), (9, 8, 10), (16, 9, 15), (F(7, 2), 24, 25)]
)
def test_whole_numbers_up_a_slope(rise: Fraction, run_ft: int, up_ft: int) -> None:
    """Right triangles of whole numbers: 5-12-13, 3-4-5, 4-3-5 and 7-24-25."""
    assert slope_outline(((3, run_ft),), rise) == ((3, pytest.approx(up_ft, rel=1e-15)),)
    assert level_from_slope(((3, up_ft),), rise) == ((3, pytest.approx(run_ft, rel=1e-15)),)
    assert length_on_slope(3, 0, 3, run_ft, rise) == pytest.approx(up_ft, rel=1e-15)
