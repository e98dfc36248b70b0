"""Wind speed of one basis in terms of the other; limits of shingle classes stand in the reference tables."""

import math

from packet.calc.domain import above_zero
from packet.figure import Number

NOMINAL_SPEED = "ultimate_mph * sqrt(0.6)"


def nominal_speed(ultimate_mph: Number) -> float:
    """Return the nominal (allowable-stress) design speed for an ultimate one.

    Source: IBC 2018, 1609.3.1, Equation 16-33. Its Table 1609.3.1 prints whole mph, and 78 for 100 mph where
    the equation gives 77.5.

    Args:
        ultimate_mph: Ultimate design wind speed, 3-second gust [mph], above 0.

    Returns:
        Nominal design wind speed [mph], not rounded.

    Raises:
        OutOfRange: The speed is not above 0.

    Example:
        >>> round(nominal_speed(130))
        101
    """
    above_zero(ultimate_mph=ultimate_mph)
    return float(ultimate_mph) * math.sqrt(0.6)
