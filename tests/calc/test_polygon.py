import math
import random
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.calc.polygon import (
    Outline,
    counterclockwise,
    holds_outline,
    holds_point,
    is_simple,
    lies_along,
    lies_on_a_line,
    overlapping,
    polygon_area,
    rectangle_at,
)

PLANE: Outline = ((0, 0), (20, 0), (32, 12), (0, 12))
#: A plane with a notch cut in from the eave: what is on both sides of the notch is not inside it.
NOTCHED: Outline = ((0, 0), (8, 0), (8, 6), (12, 6), (12, 0), (20, 0), (20, 12), (0, 12))

coordinates = st.integers(-320, 320).map(lambda n: Fraction(n, 16))


@pytest.mark.parametrize(
    ("point", "inside"),
    [
        ((10, 6), True),
        ((0, 0), True),
        ((26, 6), True),
        ((26.5, 6), False),
        ((26.03, 6), True),
        ((-0.05, 6), False),
        ((32, 12.02), True),
        ((5, 12), True),
        ((40, 12), False),
        ((-3, 12), False),
    ],
)
def test_points_on_the_line_are_inside_within_half_an_inch(point: tuple[float, float], inside: bool) -> None:
    assert holds_point(PLANE, point) is inside


def test_the_tolerance_can_be_chosen() -> None:
    assert holds_point(PLANE, (-0.5, 6), tolerance_ft=0.5)
    assert not holds_point(PLANE, (-0.01, 6), tolerance_ft=0.001)


@pytest.mark.parametrize(
    ("inner", "inside"),
    [
        (PLANE, True),
        (rectangle_at(14, 4, 8, 8), True),
        (rectangle_at(14, 4, 12, 8), False),
        (rectangle_at(0, 0, 20, 12), True),
        (rectangle_at(-1, 0, 5, 5), False),
        (rectangle_at(40, 0, 2, 2), False),
        (((0, 0), (20, 0), (32, 12)), True),
    ],
)
def test_an_outline_inside_a_plane(inner: Outline, inside: bool) -> None:
    assert holds_outline(PLANE, inner) is inside
    assert holds_outline(PLANE, tuple(reversed(inner))) is inside


def test_an_outline_across_a_notch_is_not_inside() -> None:
    across = rectangle_at(6, 2, 8, 2)
    assert all(holds_point(NOTCHED, corner) for corner in across)
    assert not holds_outline(NOTCHED, across)
    assert holds_outline(NOTCHED, rectangle_at(6, 6, 8, 2))
    assert holds_outline(NOTCHED, rectangle_at(2, 2, 6, 4))
    assert holds_outline(NOTCHED, NOTCHED)


@given(st.lists(st.tuples(coordinates, coordinates), min_size=3, max_size=12))
def test_area_knows_no_first_corner_and_no_direction(corners: list[tuple[Fraction, Fraction]]) -> None:
    area = polygon_area(corners)
    assert area == polygon_area(corners[1:] + corners[:1]) == polygon_area(corners[::-1])
    assert polygon_area(counterclockwise(corners)) == area


@given(coordinates, coordinates, st.integers(1, 320), st.integers(1, 320), st.integers(1, 15))
def test_two_halves_of_a_sheet_make_the_sheet(u: Fraction, v: Fraction, w: int, h: int, part: int) -> None:
    along, up = Fraction(w, 16), Fraction(h, 16)
    cut = along * part / 16
    left, right = rectangle_at(u, v, cut, up), rectangle_at(u + cut, v, along - cut, up)
    whole = rectangle_at(u, v, along, up)
    assert polygon_area(left) + polygon_area(right) == polygon_area(whole) == along * up
    assert holds_outline(whole, left)
    assert holds_outline(whole, right)


@pytest.mark.parametrize(
    ("outline", "simple"),
    [
        (PLANE, True),
        (NOTCHED, True),
        (((0, 0), (4, 0), (2, 3)), True),
        (((0, 0), (8, 4), (8, 0), (0, 4)), False),
        (((0, 0), (8, 0), (4, 0), (4, 4)), False),
        (((0, 0), (8, 0), (4, 0)), False),
        (((0, 0), (8, 0), (8, 4), (6, 0), (2, 0), (0, 4)), False),
        (((0, 0), (4, 0), (4, 4), (2, -1), (0, 4)), False),
        (((0, 0), (4, 0), (4, 4), (2, 4), (2, 5), (2, 4), (0, 4)), False),
    ],
)
def test_an_outline_that_crosses_itself_is_found(outline: Outline, simple: bool) -> None:
    assert is_simple(outline) is simple


@pytest.mark.parametrize(
    ("outline", "on_a_line"),
    [
        (((0, 0), (8, 0), (4, 0)), True),
        (((1, 1), (9, 7), (5, 4), (13, 10)), True),
        (((3, 2), (3, 2), (3, 2)), True),
        (((0, 0), (8, 0), (4, 1 / 48)), True),
        (((0, 0), (8, 0), (4, 1 / 6)), False),
        (((0, 0), (8, 4), (8, 0), (0, 4)), False),
    ],
)
def test_corners_on_one_line_are_told_from_sides_that_cross(outline: Outline, on_a_line: bool) -> None:
    """A quarter of an inch beside the line is the error of the tape, two inches are not."""
    assert lies_on_a_line(outline) is on_a_line


@pytest.mark.parametrize(("below_ft", "simple"), [(-1, True), (0, True), (1 / 48, True), (1 / 12, False)])
def test_a_corner_on_another_side_may_miss_it_by_the_error_of_the_tape(below_ft: float, simple: bool) -> None:
    """A dormer's corner on the valley: touching it leaves the area right, an inch past it does not."""
    assert is_simple(((0, 0), (4, 0), (4, 4), (2, -below_ft), (0, 4))) is simple


def test_an_outline_whose_sides_just_cross_is_still_held_by_its_plane() -> None:
    pinched = ((0, 0), (4, 0), (4, 4), (2, -1 / 48), (0, 4))
    assert holds_outline(PLANE, pinched)
    assert not holds_outline(rectangle_at(0, 0, 3, 5), pinched)
    assert [pair[:2] for pair in overlapping([pinched, PLANE], [], 0.25)] == [(0, 1)]


@pytest.mark.parametrize(
    ("second", "holes", "shared_sq_ft"),
    [
        (rectangle_at(6, 1, 8, 4), [], 2 * 3),
        (rectangle_at(8, 0, 8, 4), [], None),
        (rectangle_at(7.6, 0, 8, 4), [], None),
        (rectangle_at(7.4, 0, 8, 4), [], 0.6 * 4),
        (rectangle_at(2, 1, 4, 2), [rectangle_at(2, 1, 4, 2)], None),
        (rectangle_at(2, 1, 4, 2), [rectangle_at(2.2, 1.2, 3.6, 1.6)], None),
        (rectangle_at(2, 1, 4, 2), [rectangle_at(2, 1, 2, 2)], 1.75 * 2),
    ],
)
def test_outlines_over_each_other_are_found_past_the_error_of_two_tapes(
    second: Outline, holes: list[Outline], shared_sq_ft: float | None
) -> None:
    """Against 8 by 4 ft: strips under half a foot wide and what lies in a hole do not count."""
    found = overlapping([rectangle_at(0, 0, 8, 4), second, rectangle_at(0, 20, 8, 4)], holes, 0.25)
    assert found == ([] if shared_sq_ft is None else [(0, 1, pytest.approx(shared_sq_ft))])


@pytest.mark.parametrize(
    ("start", "end", "on_it"),
    [
        ((4, 3), (8, 6), True),
        ((8, 6), (4, 3), True),
        ((0, 0), (16, 12), True),
        ((4, 3), (20, 15), False),
        ((4, 3), (8, 6.04), True),
        ((4, 3), (8, 6.06), False),
        ((4, 3), (4.05, 3.04), False),
        ((4, 6), (8, 3), False),
    ],
)
def test_a_line_lies_along_another_when_both_ends_are_on_it(
    start: tuple[float, float], end: tuple[float, float], on_it: bool
) -> None:
    """Against a line of 20 ft from (0, 0) to (16, 12); 0.05 ft above it is 0.04 ft from it."""
    assert lies_along(start, end, (0, 0), (16, 12)) is on_it


@given(st.lists(st.integers(4, 400), min_size=3, max_size=14), st.integers(0, 359), st.randoms())
def test_corners_in_order_round_a_point_are_simple_and_two_exchanged_are_not(
    radii: list[int], turn: int, chance: random.Random
) -> None:
    step = 2 * math.pi / len(radii)
    angles = [math.radians(turn) + step * n for n in range(len(radii))]
    star = [(r * math.cos(a), r * math.sin(a)) for r, a in zip(radii, angles, strict=True)]
    assert is_simple(star)
    assert is_simple(star[::-1])
    round_one = [(100 * math.cos(a), 100 * math.sin(a)) for a in angles]
    if len(round_one) > 3:
        n = chance.randrange(len(round_one) - 1)
        round_one[n], round_one[n + 1] = round_one[n + 1], round_one[n]
        assert not is_simple(round_one)


@given(st.integers(3, 14), st.integers(0, 359), st.floats(0.05, 0.95), st.floats(1.01, 3))
def test_a_smaller_copy_is_inside_and_a_larger_is_not(n: int, turn: int, small: float, large: float) -> None:
    angles = [math.radians(turn) + 2 * math.pi * k / n for k in range(n)]
    outer, inner, wide = (
        [(100 * size * math.cos(a), 100 * size * math.sin(a)) for a in angles] for size in (1, small, large)
    )
    assert holds_outline(outer, inner)
    assert not holds_outline(outer, wide)
    assert not holds_outline(inner, outer)
