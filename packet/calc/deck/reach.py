"""How far a deck nail reaches: into the framing, or past the underside where no framing is."""

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number

PENETRATION = "max(0, length_in - above_in)"
RINGED_PENETRATION = "min(ring_in, max(0, length_in - above_in))"
LEAST_DECK_NAIL = "above_in + least_in"
PAST_UNDERSIDE = "max(0, length_in - above_in - deck_in)"


def penetration(length_in: Number, above_in: Number) -> Number:
    """Return how far a nail reaches into the framing.

    Source: National Design Specification, as course slides state it: the length of the nail less everything
    above the framing. A nail that ends above it reaches in by nothing.

    Args:
        length_in: Length under the head [in], above 0.
        above_in: Panel, and boards under it, above the framing [in], 0 or more.

    Returns:
        Penetration [in], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> from fractions import Fraction
        >>> penetration(Fraction(19, 8), Fraction(15, 32))
        Fraction(61, 32)
    """
    above_zero(length_in=length_in)
    zero_or_more(above_in=above_in)
    return max(0, length_in - above_in)


def ringed_penetration(length_in: Number, above_in: Number, ring_in: Number) -> Number:
    """Return how much of the ringed length lies in the framing.

    Source: National Design Specification 2018, Table 12.2E, as course slides state it: for ring shank nails
    only the ringed length counts. The rings are taken to start at the point.

    Args:
        length_in: Length under the head [in], above 0.
        above_in: Panel, and boards under it, above the framing [in], 0 or more.
        ring_in: Length of the rings [in], above 0.

    Returns:
        Ringed penetration [in], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> from fractions import Fraction
        >>> ringed_penetration(Fraction(19, 8), Fraction(15, 32), Fraction(3, 2))
        Fraction(3, 2)
    """
    above_zero(ring_in=ring_in)
    return min(ring_in, penetration(length_in, above_in))


def least_deck_nail(above_in: Number, least_in: Number) -> Number:
    """Return the least nail that reaches far enough into the framing.

    Source: house rule; what lies above the framing and the least penetration. How much that is, APA E30V
    (2011) Table 38 gives for common nails in a deck that stiffens the house; for nails that only hold against
    uplift no published figure was read.

    Args:
        above_in: Panel, and boards under it, above the framing [in], 0 or more.
        least_in: Least penetration [in], above 0.

    Returns:
        Length under the head [in], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> from fractions import Fraction
        >>> least_deck_nail(Fraction(15, 32), Fraction(11, 8))
        Fraction(59, 32)
    """
    zero_or_more(above_in=above_in)
    above_zero(least_in=least_in)
    return above_in + least_in


def past_underside(length_in: Number, above_in: Number, deck_in: Number) -> Number:
    """Return how far a nail's point shows below the deck, where it meets no framing.

    Source: house rule; the length less what it goes through. Over an open soffit the point is seen from
    below.

    Args:
        length_in: Length under the head [in], above 0.
        above_in: Shingles, underlayment and metal above the deck [in], 0 or more.
        deck_in: Thickness of the deck [in], above 0.

    Returns:
        Length of the point that shows [in]; 0 when it ends in the deck.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> from fractions import Fraction
        >>> past_underside(Fraction(5, 4), Fraction(3, 8), Fraction(3, 4))
        Fraction(1, 8)
    """
    above_zero(length_in=length_in, deck_in=deck_in)
    zero_or_more(above_in=above_in)
    return max(0, length_in - above_in - deck_in)
