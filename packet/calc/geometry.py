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


def slope_outline(shape: Shape) -> Outline:
    """Return the plane's corners on the slope, u along the lowest edge and v up the slope.

    Source: house rule; level run times slope factor.

    Args:
        shape: The plane's shape [ft].

    Returns:
        Four corners, three for a triangle, counterclockwise [ft].

    Example:
        >>> slope_outline(rectangle(10, 8, 9))
        ((0, 0.0), (10, 0.0), (10, 10.0), (0, 10.0))
    """
    factor = slope_factor(shape.rise)
    return tuple((u, float(run) * factor) for u, run in level_outline(shape))


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
