"""Areas of roof planes, in plan and on the slope."""

from packet.calc.domain import above_zero, zero_or_more
from packet.calc.slope import slope_factor
from packet.figure import Number

RECTANGLE_PLAN_AREA = "lower_ft * run_ft"
TRAPEZOID_PLAN_AREA = "(lower_ft + upper_ft) / 2 * run_ft"
TRIANGLE_PLAN_AREA = "lower_ft / 2 * run_ft"
RECTANGLE_SLOPE_AREA = "lower_ft * run_ft * sqrt(1 + (rise / 12) ** 2)"
TRAPEZOID_SLOPE_AREA = "(lower_ft + upper_ft) / 2 * run_ft * sqrt(1 + (rise / 12) ** 2)"
TRIANGLE_SLOPE_AREA = "lower_ft / 2 * run_ft * sqrt(1 + (rise / 12) ** 2)"


def rectangle_plan_area(lower_ft: Number, run_ft: Number) -> Number:
    """Return the area a rectangular plane covers in plan.

    Source: house rule; width times run.

    Args:
        lower_ft: Length of the lowest edge [ft], above 0.
        run_ft: Level run [ft], above 0.

    Returns:
        Area [sq ft].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> rectangle_plan_area(10, 8)
        80
    """
    above_zero(lower_ft=lower_ft, run_ft=run_ft)
    return lower_ft * run_ft


def trapezoid_plan_area(lower_ft: Number, upper_ft: Number, run_ft: Number) -> Number:
    """Return the area a trapezoid plane covers in plan.

    Source: house rule; mean width times run.

    Args:
        lower_ft: Length of the lowest edge [ft], above 0.
        upper_ft: Length of the top edge [ft], 0 or more.
        run_ft: Level run [ft], above 0.

    Returns:
        Area [sq ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> trapezoid_plan_area(20, 32, 12)
        312.0
    """
    above_zero(lower_ft=lower_ft, run_ft=run_ft)
    zero_or_more(upper_ft=upper_ft)
    return (lower_ft + upper_ft) / 2 * run_ft


def triangle_plan_area(lower_ft: Number, run_ft: Number) -> Number:
    """Return the area a hip end covers in plan.

    Source: house rule; half the width times run, wherever the top stands.

    Args:
        lower_ft: Length of the lowest edge [ft], above 0.
        run_ft: Level run [ft], above 0.

    Returns:
        Area [sq ft].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> triangle_plan_area(24, 12)
        144.0
    """
    return trapezoid_plan_area(lower_ft, 0, run_ft)


def rectangle_slope_area(lower_ft: Number, run_ft: Number, rise: Number) -> float:
    """Return the roof area of a rectangular plane.

    Source: house rule; plan area times slope factor.

    Args:
        lower_ft: Length of the lowest edge [ft], above 0.
        run_ft: Level run [ft], above 0.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Area [sq ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> rectangle_slope_area(10, 8, 9)
        100.0
    """
    return float(rectangle_plan_area(lower_ft, run_ft)) * slope_factor(rise)


def trapezoid_slope_area(lower_ft: Number, upper_ft: Number, run_ft: Number, rise: Number) -> float:
    """Return the roof area of a trapezoid plane.

    Source: house rule; plan area times slope factor.

    Args:
        lower_ft: Length of the lowest edge [ft], above 0.
        upper_ft: Length of the top edge [ft], 0 or more.
        run_ft: Level run [ft], above 0.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Area [sq ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> round(trapezoid_slope_area(20, 32, 12, 6), 2)
        348.83
    """
    return float(trapezoid_plan_area(lower_ft, upper_ft, run_ft)) * slope_factor(rise)


def triangle_slope_area(lower_ft: Number, run_ft: Number, rise: Number) -> float:
    """Return the roof area of a hip end.

    Source: house rule; plan area times slope factor.

    Args:
        lower_ft: Length of the lowest edge [ft], above 0.
        run_ft: Level run [ft], above 0.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Area [sq ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> triangle_slope_area(24, 12, 9)
        180.0
    """
    return float(triangle_plan_area(lower_ft, run_ft)) * slope_factor(rise)
