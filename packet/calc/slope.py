"""What a pitch does to lengths, and the height at which wind is taken."""

import math

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number

SLOPE_FACTOR = "sqrt(1 + (rise / 12) ** 2)"
HIP_FACTOR = "sqrt(2 + (rise / 12) ** 2)"
RAKE_LENGTH = "run_ft * sqrt(1 + (rise / 12) ** 2)"
HIP_LENGTH = "run_ft * sqrt(2 + (rise / 12) ** 2)"
RIDGE_HEIGHT = "eave_height_ft + run_ft * rise / 12"
MEAN_ROOF_HEIGHT = "(eave_height_ft + ridge_height_ft) / 2"

#: Below this roof angle the eave height stands for the mean roof height [degrees].
EAVE_HEIGHT_BELOW_DEG = 10


def slope_factor(rise: Number) -> float:
    """Return the length on the slope for each foot of level run; also roof area over plan area.

    Source: house rule; a right triangle with legs 12 and ``rise``. Printed slope-factor tables agree.

    Args:
        rise: Rise in 12 in of level run [in], 0 or more.

    Returns:
        Factor [-], 1 or more.

    Raises:
        OutOfRange: ``rise`` is below 0.

    Example:
        >>> round(slope_factor(6), 5)
        1.11803
    """
    zero_or_more(rise=rise)
    return math.sqrt(1 + (float(rise) / 12) ** 2)


def hip_factor(rise: Number) -> float:
    """Return the length of a hip or valley for each foot of level run of its planes.

    Source: house rule; the diagonal of a square of run, raised by ``rise``. Printed hip and valley tables
    agree. It holds where both planes have the same pitch and meet at a square corner in plan.

    Args:
        rise: Rise in 12 in of level run of the planes [in], 0 or more.

    Returns:
        Factor [-], above 1.41.

    Raises:
        OutOfRange: ``rise`` is below 0.

    Example:
        >>> hip_factor(6)
        1.5
    """
    zero_or_more(rise=rise)
    return math.sqrt(2 + (float(rise) / 12) ** 2)


def rake_length(run_ft: Number, rise: Number) -> float:
    """Return the length of a rake, or of any line straight up the slope.

    Source: house rule; level run times slope factor.

    Args:
        run_ft: Level run [ft], 0 or more.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Length [ft].

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> round(rake_length(12, 6), 3)
        13.416
    """
    zero_or_more(run_ft=run_ft)
    return float(run_ft) * slope_factor(rise)


def hip_length(run_ft: Number, rise: Number) -> float:
    """Return the length of a hip or valley between planes of equal pitch at a square corner.

    Source: house rule; level run of the planes times hip factor.

    Args:
        run_ft: Level run of the planes, square to their eaves [ft], 0 or more.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Length [ft].

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> hip_length(12, 6)
        18.0
    """
    zero_or_more(run_ft=run_ft)
    return float(run_ft) * hip_factor(rise)


def ridge_height(eave_height_ft: Number, run_ft: Number, rise: Number) -> Number:
    """Return the height of a plane's top above the ground.

    Source: house rule; eave height plus rise over the run.

    Args:
        eave_height_ft: Height of the eave above the ground [ft], above 0.
        run_ft: Level run from eave to top [ft], 0 or more.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Height [ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> ridge_height(10, 12, 6)
        16.0
    """
    above_zero(eave_height_ft=eave_height_ft)
    zero_or_more(run_ft=run_ft, rise=rise)
    return eave_height_ft + run_ft * rise / 12


def mean_roof_height(eave_height_ft: Number, ridge_height_ft: Number) -> Number:
    """Return the height at which wind pressure on the roof is taken.

    Source: ASCE 7 (2010, 2016, 2022), components and cladding: mean of eave height and highest point of the
    roof. On roofs for which ``eave_height_governs`` the eave height is taken instead.

    Args:
        eave_height_ft: Height of the eave above the ground [ft], above 0.
        ridge_height_ft: Height of the highest point [ft], not below the eave.

    Returns:
        Height [ft].

    Raises:
        OutOfRange: A height is out of range.

    Example:
        >>> mean_roof_height(10, 16)
        13.0
    """
    above_zero(eave_height_ft=eave_height_ft)
    zero_or_more(ridge_above_eave_ft=ridge_height_ft - eave_height_ft)
    return (eave_height_ft + ridge_height_ft) / 2


def eave_height_governs(rise: Number) -> bool:
    """Return whether the eave height stands for the mean roof height.

    Source: ASCE 7 (2010, 2016, 2022), components and cladding: eave height where the roof angle is below
    10 degrees.

    Args:
        rise: Rise in 12 [in], 0 or more.

    Returns:
        True below 10 degrees, which is about 2.1 in 12 [-].

    Raises:
        OutOfRange: ``rise`` is below 0.

    Example:
        >>> eave_height_governs(2), eave_height_governs(3)
        (True, False)
    """
    zero_or_more(rise=rise)
    return math.degrees(math.atan2(float(rise), 12)) < EAVE_HEIGHT_BELOW_DEG
