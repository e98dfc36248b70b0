"""Roofing nails by count and by weight."""

from fractions import Fraction

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number

ROOFING_NAILS = "pieces * nails_each"
POUNDS = "nails / nails_a_pound"


def roofing_nails(pieces: int, nails_each: int) -> int:
    """Return the nails in a number of shingles.

    Source: house rule; pieces times nails each. It is a count to the schedule, not of nails driven.

    Args:
        pieces: Shingles laid [piece], 0 or more.
        nails_each: Nails a shingle [nail/piece], above 0.

    Returns:
        Nails [nail].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> roofing_nails(80, 6)
        480
    """
    zero_or_more(pieces=pieces)
    above_zero(nails_each=nails_each)
    return pieces * nails_each


def pounds(nails: Number, nails_a_pound: Number) -> Number:
    """Return the weight of a number of nails.

    Source: house rule; nails over the box's own count, because published counts differ by 5 to 15 percent.

    Args:
        nails: Nails [nail], 0 or more.
        nails_a_pound: Nails to a pound, from the box [nail/lb], above 0.

    Returns:
        Weight [lb], exact when the count is.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> pounds(372, 186)
        Fraction(2, 1)
    """
    zero_or_more(nails=nails)
    above_zero(nails_a_pound=nails_a_pound)
    return Fraction(nails) / nails_a_pound
