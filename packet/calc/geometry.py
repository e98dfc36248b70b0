"""Shape of a roof plane as taped: corners and true lengths of its sides.

On a plane u runs along the lowest edge from its left end, as seen facing the plane from outside, and v up the
slope. Everything is in feet.
"""

import math
from dataclasses import dataclass
from typing import Literal

from packet.calc.domain import OutOfRange, above_zero, zero_or_more
from packet.calc.polygon import Outline
from packet.calc.slope import slope_factor
from packet.figure import Number

LEFT_SIDE_LENGTH = "sqrt(upper_starts_ft ** 2 + run_ft ** 2 * (1 + (rise / 12) ** 2))"
RIGHT_SIDE_LENGTH = (
    "sqrt((upper_starts_ft + upper_ft - lower_ft) ** 2 + run_ft ** 2 * (1 + (rise / 12) ** 2))"
)

LENGTH_ON_SLOPE = "sqrt((u2 - u1) ** 2 + (run2 - run1) ** 2 * (1 + (rise / 12) ** 2))"
LENGTH_AS_TAPED = "sqrt((u2 - u1) ** 2 + (v2 - v1) ** 2)"

Side = Literal["lower", "right", "upper", "left"]
SIDES: tuple[Side, ...] = ("lower", "right", "upper", "left")


@dataclass(frozen=True)
class Shape:
    """A plane's shape as taped: a trapezoid, of which rectangle and triangle are cases.

    Attributes:
        lower_ft: Length of the lowest edge [ft].
        upper_ft: Length of the top edge [ft]; 0 for a triangle.
        upper_starts_ft: Where the top edge starts, along the lowest edge from its left end [ft].
        run_ft: Level run from lowest edge to top [ft].
        rise: Rise in 12 [in].
    """

    lower_ft: Number
    upper_ft: Number
    upper_starts_ft: Number
    run_ft: Number
    rise: Number

    def __post_init__(self) -> None:
        above_zero(lower_ft=self.lower_ft, run_ft=self.run_ft)
        zero_or_more(upper_ft=self.upper_ft, rise=self.rise)
        if not math.isfinite(self.upper_starts_ft):
            message = f"upper_starts_ft is {self.upper_starts_ft}"
            raise OutOfRange(message)


def rectangle(lower_ft: Number, run_ft: Number, rise: Number) -> Shape:
    """Return the shape of a plane of equal width all the way up.

    Source: house rule; a trapezoid with both edges alike.

    Args:
        lower_ft: Length of the lowest edge [ft], above 0.
        run_ft: Level run [ft], above 0.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        The shape [ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> rectangle(10, 8, 3).upper_ft
        10
    """
    return Shape(lower_ft, lower_ft, 0, run_ft, rise)


def triangle(lower_ft: Number, top_at_ft: Number, run_ft: Number, rise: Number) -> Shape:
    """Return the shape of a hip end.

    Source: house rule; a trapezoid whose top edge has no length.

    Args:
        lower_ft: Length of the lowest edge [ft], above 0.
        top_at_ft: Where the top stands, along the lowest edge from its left end [ft].
        run_ft: Level run [ft], above 0.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        The shape [ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> triangle(24, 12, 12, 6).upper_ft
        0
    """
    return Shape(lower_ft, 0, top_at_ft, run_ft, rise)


def level_outline(shape: Shape) -> Outline:
    """Return the plane's corners seen from straight above: u along the lowest edge, level run across it.

    Source: house rule; corners counterclockwise from the left end of the lowest edge.

    Args:
        shape: The plane's shape [ft].

    Returns:
        Four corners, three for a triangle [ft], exact as taped.

    Example:
        >>> level_outline(triangle(24, 12, 12, 6))
        ((0, 0), (24, 0), (12, 12))
    """
    starts, run = shape.upper_starts_ft, shape.run_ft
    top = ((starts + shape.upper_ft, run), (starts, run)) if shape.upper_ft else ((starts, run),)
    return ((0, 0), (shape.lower_ft, 0), *top)


def slope_outline(level: Outline, rise: Number) -> Outline:
    """Return a plane's corners on the slope, u along the lowest edge and v up the slope.

    Source: house rule; level run times slope factor.

    Args:
        level: Corners seen from above: along the lowest edge, then level run [ft].
        rise: Rise in 12 [in], 0 or more.

    Returns:
        The same corners on the slope [ft].

    Raises:
        OutOfRange: ``rise`` is below 0.

    Example:
        >>> slope_outline(level_outline(rectangle(10, 8, 9)), 9)
        ((0, 0.0), (10, 0.0), (10, 10.0), (0, 10.0))
    """
    factor = slope_factor(rise)
    return tuple((u, float(run) * factor) for u, run in level)


def level_from_slope(outline: Outline, rise: Number) -> Outline:
    """Return corners taped on the slope as seen from straight above.

    Source: house rule; distance up the slope over slope factor is level run.

    Args:
        outline: Corners along the lowest edge, then up the slope [ft].
        rise: Rise in 12 [in], 0 or more.

    Returns:
        The same corners: along the lowest edge, then level run [ft].

    Raises:
        OutOfRange: ``rise`` is below 0.

    Example:
        >>> level_from_slope(((0, 0), (10, 0), (10, 10)), 9)
        ((0, 0.0), (10, 0.0), (10, 8.0))
    """
    factor = slope_factor(rise)
    return tuple((u, float(v) / factor) for u, v in outline)


def length_on_slope(u1: Number, run1: Number, u2: Number, run2: Number, rise: Number) -> float:
    """Return the true length between two points of a plane, given by level distances.

    Source: house rule; Pythagoras on the slope, which also holds for unequal pitches.

    Args:
        u1: One point along the lowest edge [ft].
        run1: Its level run from there [ft].
        u2: The other point along the lowest edge [ft].
        run2: Its level run from there [ft].
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Length [ft].

    Raises:
        OutOfRange: ``rise`` is below 0.

    Example:
        >>> length_on_slope(0, 0, 12, 12, 6)
        18.0
    """
    return math.hypot(float(u2 - u1), float(run2 - run1) * slope_factor(rise))


def length_as_taped(u1: Number, v1: Number, u2: Number, v2: Number) -> float:
    """Return the length between two points taped on the slope.

    Source: house rule; Pythagoras.

    Args:
        u1: One point along the lowest edge [ft].
        v1: Its distance up the slope [ft].
        u2: The other point along the lowest edge [ft].
        v2: Its distance up the slope [ft].

    Returns:
        Length [ft].

    Example:
        >>> length_as_taped(0, 0, 3, 4)
        5.0
    """
    return math.hypot(float(u2 - u1), float(v2 - v1))


def left_side_length(upper_starts_ft: Number, run_ft: Number, rise: Number) -> float:
    """Return the true length of a plane's left side: rake, hip or valley.

    Source: house rule; Pythagoras on the slope, which also holds for unequal pitches.

    Args:
        upper_starts_ft: Where the top edge starts, from the left end of the lowest edge [ft].
        run_ft: Level run [ft], above 0.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Length [ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> left_side_length(-12, 12, 6)
        18.0
    """
    above_zero(run_ft=run_ft)
    return math.hypot(float(upper_starts_ft), float(run_ft) * slope_factor(rise))


def right_side_length(
    lower_ft: Number, upper_ft: Number, upper_starts_ft: Number, run_ft: Number, rise: Number
) -> float:
    """Return the true length of a plane's right side: rake, hip or valley.

    Source: house rule; Pythagoras on the slope, which also holds for unequal pitches.

    Args:
        lower_ft: Length of the lowest edge [ft], above 0.
        upper_ft: Length of the top edge [ft], 0 or more.
        upper_starts_ft: Where the top edge starts, from the left end of the lowest edge [ft].
        run_ft: Level run [ft], above 0.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Length [ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> right_side_length(20, 32, 0, 12, 6)
        18.0
    """
    above_zero(lower_ft=lower_ft, run_ft=run_ft)
    zero_or_more(upper_ft=upper_ft)
    offset = float(upper_starts_ft) + float(upper_ft) - float(lower_ft)
    return math.hypot(offset, float(run_ft) * slope_factor(rise))


def side_lengths(shape: Shape) -> dict[Side, float]:
    """Return the true length of each side of a plane.

    Source: house rule; level edges as taped, the others by Pythagoras on the slope.

    Args:
        shape: The plane's shape [ft].

    Returns:
        Length by side [ft]; the upper side of a triangle is 0.

    Example:
        >>> side_lengths(Shape(20, 32, 0, 12, 6))["right"]
        18.0
    """
    return {
        "lower": float(shape.lower_ft),
        "right": right_side_length(
            shape.lower_ft, shape.upper_ft, shape.upper_starts_ft, shape.run_ft, shape.rise
        ),
        "upper": float(shape.upper_ft),
        "left": left_side_length(shape.upper_starts_ft, shape.run_ft, shape.rise),
    }
