"""Free area of attic vents: what they give, what a rule asks, and how high and low share it."""

from fractions import Fraction

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number

FREE_AREA_OF_PIECES = "pieces * each_sq_in"
FREE_AREA_OF_RUN = "length_ft * foot_sq_in"
REQUIRED_FREE_AREA = "attic_sq_ft * 144 / ratio"
ATTIC_TO_VENTS = "attic_sq_ft * 144 / vents_sq_in"
SHARE_OF_AREA = "100 * high_sq_in / all_sq_in"
HEIGHT_ABOVE_EAVES = "ridge_height_ft - eave_height_ft - below_top_ft"


def free_area_of_pieces(pieces: int, each_sq_in: Number) -> Fraction | float:
    """Return the free area of vents that come in pieces.

    Source: definition; the maker prints the free area of one piece.

    Args:
        pieces: Vents [piece], 0 or more.
        each_sq_in: Net free area of one [sq in], 0 or more.

    Returns:
        Net free area [sq in].

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> float(free_area_of_pieces(6, 50))
        300.0
    """
    zero_or_more(pieces=pieces, each_sq_in=each_sq_in)
    return Fraction(1) * pieces * each_sq_in


def free_area_of_run(length_ft: Number, foot_sq_in: Number) -> Fraction | float:
    """Return the free area of vents that run along a ridge or an eave.

    Source: definition; the maker prints the free area of one running foot.

    Args:
        length_ft: Length of the run [ft], 0 or more.
        foot_sq_in: Net free area of one foot [sq in], 0 or more.

    Returns:
        Net free area [sq in].

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> float(free_area_of_run(32, 18))
        576.0
    """
    zero_or_more(length_ft=length_ft, foot_sq_in=foot_sq_in)
    return Fraction(1) * length_ft * foot_sq_in


def required_free_area(attic_sq_ft: Number, ratio: Number) -> Fraction | float:
    """Return the free area a rule asks, 1 of vents to so many of attic.

    Source: IRC R806.2: 1/150 of the vented area, 1/300 where its conditions hold; 144 sq in a square foot.

    Args:
        attic_sq_ft: Area of the vented attic [sq ft], 0 or more.
        ratio: Attic for each of vents [-], above 0: 150 or 300.

    Returns:
        Net free area [sq in].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> float(required_free_area(1500, 150)), float(required_free_area(1500, 300))
        (1440.0, 720.0)
    """
    zero_or_more(attic_sq_ft=attic_sq_ft)
    above_zero(ratio=ratio)
    return Fraction(1) * attic_sq_ft * 144 / ratio


def attic_to_vents(attic_sq_ft: Number, vents_sq_in: Number) -> Fraction | float:
    """Return how much attic there is for each of free vent area.

    Source: definition; IRC R806.2 limits this number, 150 to 1 or 300 to 1.

    Args:
        attic_sq_ft: Area of the vented attic [sq ft], 0 or more.
        vents_sq_in: Net free area of all open vents [sq in], above 0.

    Returns:
        Attic for each of vents [-].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> float(attic_to_vents(1500, 1440))
        150.0
    """
    zero_or_more(attic_sq_ft=attic_sq_ft)
    above_zero(vents_sq_in=vents_sq_in)
    return Fraction(1) * attic_sq_ft * 144 / vents_sq_in


def share_of_area(high_sq_in: Number, all_sq_in: Number) -> Fraction | float:
    """Return the share of an area that the high vents give.

    Source: IRC R806.2 takes it of the area required at 1/300; of the area provided it only describes.

    Args:
        high_sq_in: Net free area of the high vents [sq in], 0 or more.
        all_sq_in: Area it is a share of [sq in], above 0.

    Returns:
        Share [percent]; above 100 where the high vents alone give more.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> float(share_of_area(360, 720))
        50.0
    """
    zero_or_more(high_sq_in=high_sq_in)
    above_zero(all_sq_in=all_sq_in)
    return Fraction(100) * high_sq_in / all_sq_in


def height_above_eaves(ridge_height_ft: Number, eave_height_ft: Number, below_top_ft: Number) -> Number:
    """Return how far a high vent stands above the vents at the eaves.

    Source: house rule; vents at the eaves stand at the height of the eave, and the ridge is the attic's top.

    Args:
        ridge_height_ft: Height of the ridge above the ground [ft].
        eave_height_ft: Height of the eave above the ground [ft].
        below_top_ft: Depth of the vent below the ridge [ft], 0 or more.

    Returns:
        Height above the eave [ft]; below 0 for a vent lower than the eave.

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> height_above_eaves(15, 9, 1)
        5
    """
    zero_or_more(ridge_height_ft=ridge_height_ft, eave_height_ft=eave_height_ft, below_top_ft=below_top_ft)
    return ridge_height_ft - eave_height_ft - below_top_ft
