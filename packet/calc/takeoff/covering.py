"""Shingles: squares, pieces and bundles of an area, starter along an edge, caps along a line."""

from fractions import Fraction

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number
from packet.units import round_up

SQUARES = "area_sq_ft / 100"
BUNDLES = "ceil(area_sq_ft / cover_sq_ft)"
BUNDLES_BY_SQUARE = "ceil(area_sq_ft / 100 * bundles_a_square)"
PIECES_A_SQUARE = "14400 / (width_in * exposure_in)"
TOP_LAP = "height_in - exposure_in"
SHINGLES = "ceil(area_sq_ft * 144 / (width_in * exposure_in))"
STARTER_STRIPS = "ceil(length_ft / strip_ft)"
CAPS = "ceil(12 * length_ft / exposure_in) + 1"
STRIPS_FOR_CAPS = "ceil(caps / caps_a_strip)"


def squares(area_sq_ft: Number) -> Number:
    """Return an area in roofing squares.

    Source: US Army subcourse EN5156, part C: a square is 100 sq ft.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.

    Returns:
        Squares [square], exact when the area is.

    Raises:
        OutOfRange: The area is below 0.

    Example:
        >>> squares(350)
        Fraction(7, 2)
    """
    zero_or_more(area_sq_ft=area_sq_ft)
    return area_sq_ft * Fraction(1, 100)


def bundles(area_sq_ft: Number, cover_sq_ft: Number) -> int:
    """Return the bundles that cover an area, by the cover printed on the wrapper.

    Source: house rule; whole bundles, and the wrapper's own cover because bundles differ (20 to 33.3 sq ft in
    Estimating in Building Construction, ch. 14). No waste is in it.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.
        cover_sq_ft: Area one bundle covers [sq ft], above 0.

    Returns:
        Whole bundles [bundle].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> bundles(Fraction(12700, 3), Fraction(328, 10))
        130
    """
    zero_or_more(area_sq_ft=area_sq_ft)
    above_zero(cover_sq_ft=cover_sq_ft)
    return round_up(Fraction(1) * area_sq_ft / cover_sq_ft)


def bundles_by_square(area_sq_ft: Number, bundles_a_square: Number) -> int:
    """Return the bundles that cover an area, by the number of bundles to a square.

    Source: house rule; whole bundles. Three to five bundles make a square by the trade journal article
    Estimating Asphalt Shingles. No waste is in it.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.
        bundles_a_square: Bundles to 100 sq ft [bundle/square], above 0.

    Returns:
        Whole bundles [bundle].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> bundles_by_square(Fraction(12700, 3), 3)
        127
    """
    above_zero(bundles_a_square=bundles_a_square)
    return round_up(squares(area_sq_ft) * bundles_a_square)


def pieces_a_square(width_in: Number, exposure_in: Number) -> Number:
    """Return how many shingles make a square.

    Source: house rule; 14,400 sq in over the area one shingle shows.

    Args:
        width_in: Length of a shingle along the course [in], above 0.
        exposure_in: Exposure [in], above 0.

    Returns:
        Shingles to 100 sq ft [piece/square], exact when the inputs are.

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> pieces_a_square(36, 5)
        Fraction(80, 1)
    """
    above_zero(width_in=width_in, exposure_in=exposure_in)
    return Fraction(14_400) / (width_in * exposure_in)


def shingles(area_sq_ft: Number, width_in: Number, exposure_in: Number) -> int:
    """Return how many shingles cover an area.

    Source: house rule; area over the area one shingle shows, whole shingles. Starter and caps are not in it.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.
        width_in: Length of a shingle along the course [in], above 0.
        exposure_in: Exposure [in], above 0.

    Returns:
        Whole shingles [piece].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> shingles(250, 36, 5)
        200
    """
    return round_up(squares(area_sq_ft) * pieces_a_square(width_in, exposure_in))


def top_lap(height_in: Number, exposure_in: Number) -> Number:
    """Return how much of a shingle the course above covers.

    Source: US Army subcourse EN5156, part C: height less exposure.

    Args:
        height_in: Height of the shingle up the slope [in], not below the exposure.
        exposure_in: Exposure [in], above 0.

    Returns:
        Top lap [in], exact when the inputs are.

    Raises:
        OutOfRange: The exposure is not above 0, or more than the height.

    Example:
        >>> top_lap(12, 5)
        7
    """
    above_zero(exposure_in=exposure_in)
    zero_or_more(top_lap_in=height_in - exposure_in)
    return height_in - exposure_in


def starter_strips(length_ft: Number, strip_ft: Number) -> int:
    """Return the starter strips along one eave or rake.

    Source: house rule; whole strips end to end. A 36 in shingle gives a 3 ft strip.

    Args:
        length_ft: Length of the edge [ft], 0 or more.
        strip_ft: Length of a strip [ft], above 0.

    Returns:
        Whole strips [piece].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> starter_strips(20, 3)
        7
    """
    zero_or_more(length_ft=length_ft)
    above_zero(strip_ft=strip_ft)
    return round_up(Fraction(1) * length_ft / strip_ft)


def caps(length_ft: Number, exposure_in: Number) -> int:
    """Return the cap pieces on one ridge or hip.

    Source: house rule; one piece an exposure and one to finish on. No published text was read for the last.

    Args:
        length_ft: Length of the ridge or hip [ft], above 0.
        exposure_in: Exposure of a cap [in], above 0.

    Returns:
        Whole pieces [piece].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> caps(32, Fraction(45, 8))
        70
    """
    above_zero(length_ft=length_ft, exposure_in=exposure_in)
    return round_up(Fraction(12) * length_ft / exposure_in) + 1


def strips_for_caps(caps: int, caps_a_strip: int = 3) -> int:
    """Return the strip shingles that a number of caps is cut from.

    Source: house rule; three caps from a three-tab strip, as roofers count.

    Args:
        caps: Cap pieces [piece], 0 or more.
        caps_a_strip: Caps cut from one strip [piece], above 0.

    Returns:
        Whole strips [piece].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> strips_for_caps(70)
        24
    """
    zero_or_more(caps=caps)
    above_zero(caps_a_strip=caps_a_strip)
    return round_up(Fraction(caps, caps_a_strip))
