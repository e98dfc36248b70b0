"""How long a roofing nail must be for what lies above the deck and for the deck itself."""

from fractions import Fraction

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number

NAIL_LENGTH_THICK_DECK = "above_in + 3 / 4"
NAIL_LENGTH_THIN_DECK = "above_in + deck_in + 1 / 8"

#: Deck at least this thick holds the point; through a thinner one the nail must pass [in].
THICK_DECK_IN = Fraction(3, 4)


def nail_length_thick_deck(above_in: Number) -> Number:
    """Return the least roofing nail for a deck of 3/4 in or more.

    Source: IBC 1507.2.5 (same text as IRC R905.2.5): through the roofing and 3/4 in into the deck.

    Args:
        above_in: Shingles, underlayment and metal above the deck [in], 0 or more.

    Returns:
        Length under the head [in].

    Raises:
        OutOfRange: The value is below 0.

    Example:
        >>> nail_length_thick_deck(Fraction(3, 8))
        Fraction(9, 8)
    """
    zero_or_more(above_in=above_in)
    return above_in + THICK_DECK_IN


def nail_length_thin_deck(above_in: Number, deck_in: Number) -> Number:
    """Return the least roofing nail for a deck under 3/4 in.

    Source: IBC 1507.2.5: through the deck; ARMA, nail application: 1/8 in or more past its underside.

    Args:
        above_in: Shingles, underlayment and metal above the deck [in], 0 or more.
        deck_in: Thickness of the deck [in], above 0 and below 3/4.

    Returns:
        Length under the head [in].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> nail_length_thin_deck(Fraction(3, 8), Fraction(15, 32))
        Fraction(31, 32)
    """
    zero_or_more(above_in=above_in)
    above_zero(deck_in=deck_in, below_thick_in=THICK_DECK_IN - deck_in)
    return above_in + deck_in + Fraction(1, 8)


def least_nail_length(above_in: Number, deck_in: Number) -> Number:
    """Return the least roofing nail for a deck of any thickness.

    Source: IBC 1507.2.5 and ARMA, nail application, as in the two rules beside this one.

    Args:
        above_in: Shingles, underlayment and metal above the deck [in], 0 or more.
        deck_in: Thickness of the deck [in], above 0.

    Returns:
        Length under the head [in].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> least_nail_length(Fraction(3, 8), Fraction(15, 32)), least_nail_length(Fraction(3, 8), 1)
        (Fraction(31, 32), Fraction(9, 8))
    """
    above_zero(deck_in=deck_in)
    if deck_in >= THICK_DECK_IN:
        return nail_length_thick_deck(above_in)
    return nail_length_thin_deck(above_in, deck_in)


def least_nail_length_formula(deck_in: Number) -> str:
    """Return the formula that ``least_nail_length`` takes for a deck.

    Source: IBC 1507.2.5 and ARMA, nail application.

    Args:
        deck_in: Thickness of the deck [in], above 0.

    Returns:
        Arithmetic in ``above_in`` and, for a thin deck, ``deck_in`` [in].

    Raises:
        OutOfRange: The value is not above 0.

    Example:
        >>> least_nail_length_formula(Fraction(15, 32))
        'above_in + deck_in + 1 / 8'
    """
    above_zero(deck_in=deck_in)
    return NAIL_LENGTH_THICK_DECK if deck_in >= THICK_DECK_IN else NAIL_LENGTH_THIN_DECK
