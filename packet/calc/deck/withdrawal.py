"""What a smooth nail holds against being drawn out. For comparing nails; never a verdict on a roof."""

import math

from packet.calc.domain import above_zero
from packet.figure import Number

SMOOTH_WITHDRAWAL = "1380 * specific_gravity ** 2.5 * shank_in"
ULTIMATE_WITHDRAWAL = "6900 * specific_gravity ** 2.5 * shank_in"


def smooth_withdrawal(specific_gravity: Number, shank_in: Number) -> float:
    """Return the reference value of a smooth nail in side grain, before any factor.

    Source: National Design Specification 2018, Eq. 12.2-3, read in an open program that cites it. The
    equation for ring shank nails was not read and is not here.

    Args:
        specific_gravity: Specific gravity of the framing [-], above 0.
        shank_in: Diameter of the shank [in], above 0.

    Returns:
        Withdrawal [lb per in of penetration].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> round(smooth_withdrawal(0.50, 0.131), 1)
        32.0
    """
    above_zero(specific_gravity=specific_gravity, shank_in=shank_in)
    return 1380 * math.pow(specific_gravity, 2.5) * float(shank_in)


def ultimate_withdrawal(specific_gravity: Number, shank_in: Number) -> float:
    """Return the load at which a smooth nail in side grain comes out, on average.

    Source: USDA Forest Products Laboratory, technical note 236: five times the reference value.

    Args:
        specific_gravity: Specific gravity of the framing [-], above 0.
        shank_in: Diameter of the shank [in], above 0.

    Returns:
        Withdrawal [lb per in of penetration].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> round(ultimate_withdrawal(0.50, 0.131), 1)
        159.8
    """
    above_zero(specific_gravity=specific_gravity, shank_in=shank_in)
    return 6900 * math.pow(specific_gravity, 2.5) * float(shank_in)
