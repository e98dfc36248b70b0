"""The one rounding up of the program, and rounding for show."""

import math
from fractions import Fraction
from typing import overload

Number = int | float | Fraction

#: A value less than this part of a step above a whole step is floating noise, not a further piece.
ROUND_UP_TOLERANCE = Fraction(1, 1_000_000_000)


def _exact(value: Number) -> Fraction:
    if not math.isfinite(value):
        message = f"{value} cannot be rounded"
        raise ValueError(message)
    return Fraction(value)


@overload
def round_up(value: Number, step: int = 1, *, tolerance: Fraction = ROUND_UP_TOLERANCE) -> int: ...
@overload
def round_up(
    value: Number, step: int | Fraction, *, tolerance: Fraction = ROUND_UP_TOLERANCE
) -> int | Fraction: ...


def round_up(
    value: Number, step: int | Fraction = 1, *, tolerance: Fraction = ROUND_UP_TOLERANCE
) -> int | Fraction:
    """Return the least multiple of ``step`` that is not below ``value``, noise aside.

    Args:
        value: Number to round [the unit of ``step``].
        step: Size of one piece [same unit], above 0.
        tolerance: Part of a step that counts as noise [-], 0 or more and below 1.

    Returns:
        An int when ``step`` is an int, else an exact fraction.

    Raises:
        ValueError: ``value`` is not finite, or ``step`` or ``tolerance`` is out of range.

    Example:
        >>> round_up(Fraction(127, 3) * 3), round_up(127.00000000000001), round_up(127.01)
        (127, 127, 128)
    """
    if step <= 0 or not 0 <= tolerance < 1:
        message = "round_up needs a step above 0 and a tolerance from 0 to below 1"
        raise ValueError(message)
    return math.ceil(_exact(value) / step - tolerance) * step


def round_half_away(value: Number, step: Fraction) -> Fraction:
    """Return the multiple of ``step`` nearest to ``value``; a tie goes away from zero.

    Args:
        value: Number to round [the unit of ``step``].
        step: Size of one step [same unit], above 0.

    Raises:
        ValueError: ``value`` is not finite or ``step`` is not above 0.

    Example:
        >>> round_half_away(Fraction(5, 2), Fraction(1)), round_half_away(-2.5, Fraction(1))
        (Fraction(3, 1), Fraction(-3, 1))
    """
    if step <= 0:
        message = "the step must be above 0"
        raise ValueError(message)
    exact = _exact(value) / step
    steps = math.floor(abs(exact) + Fraction(1, 2))
    return (steps if exact >= 0 else -steps) * step
