"""Numbers as a page shows them: feet and inches with real marks, decimals rounded half away from zero."""

from fractions import Fraction

from packet.units.rounding import Number, round_half_away

_PRIME, _DOUBLE_PRIME, _MINUS = "\u2032", "\u2033", "\u2212"


def feet_and_inches(inches: Fraction, *, denominator: int = 16) -> str:
    """Return a length with prime marks and fractions, rounded to the nearest part of an inch.

    Args:
        inches: Length [in].
        denominator: Parts an inch is divided into, 1 or more.

    Raises:
        ValueError: The length is not finite or the denominator is below 1.

    Example:
        >>> feet_and_inches(Fraction(301, 2))
        '12′ 6 1/2″'
    """
    if denominator < 1:
        message = "an inch is divided into at least one part"
        raise ValueError(message)
    rounded = round_half_away(inches, Fraction(1, denominator))
    feet, rest = divmod(abs(rounded), 12)
    whole, part = divmod(rest, 1)
    words = [f"{feet}{_PRIME}"] if feet else []
    if rest or not feet:
        words.append(_mixed(whole, part) + _DOUBLE_PRIME)
    return (_MINUS if rounded < 0 else "") + " ".join(words)


def tape_text(inches: Number) -> str:
    """Return inches as a tape shows them when they fall on a 64th, else as a decimal (a nail's 0.113).

    Args:
        inches: Length [in].

    Raises:
        ValueError: The length is not finite.

    Example:
        >>> tape_text(Fraction(45, 8)), tape_text(0.113), tape_text(Fraction(1, 2))
        ('5 5/8', '0.113', '1/2')
    """
    exact = Fraction(inches)
    sign = _MINUS if exact < 0 else ""
    if 64 % exact.denominator == 0:
        whole, part = divmod(abs(exact), 1)
        return sign + _mixed(whole, part)
    return sign + decimal_text(abs(exact), 4).rstrip("0")


def _mixed(whole: int, part: Fraction) -> str:
    # A plain slash between full-size figures: raised figures, and the broken slash that some typefaces set
    # between them, can't be read on a phone in the sun.
    pieces = [str(whole)] * bool(whole or not part) + [f"{part.numerator}/{part.denominator}"] * bool(part)
    return " ".join(pieces)


def decimal_text(value: Number, decimals: int) -> str:
    """Return the value with so many decimals, exact, half away from zero; zero has no sign.

    Args:
        value: Number to write.
        decimals: Places behind the point, 0 to 12.

    Raises:
        ValueError: The value is not finite or the places are out of range.

    Example:
        >>> decimal_text(Fraction(5, 2), 0), decimal_text(Fraction(-1, 8), 2), decimal_text(-0.001, 1)
        ('3', '-0.13', '0.0')
    """
    if not 0 <= decimals <= 12:
        message = "decimals must be 0 to 12"
        raise ValueError(message)
    scaled = int(round_half_away(value, Fraction(1, 10**decimals)) * 10**decimals)
    digits = str(abs(scaled)).rjust(decimals + 1, "0")
    sign = "-" if scaled < 0 else ""
    return sign + (f"{digits[:-decimals]}.{digits[-decimals:]}" if decimals else digits)


def fraction_text(value: Fraction | int) -> str:
    """Return an exact number as it would be typed; ``parse_quantity`` reads it back.

    Args:
        value: Number to write.

    Example:
        >>> fraction_text(Fraction(13, 2)), fraction_text(Fraction(3, 8)), fraction_text(4)
        ('6-1/2', '3/8', '4')
    """
    sign = "-" if value < 0 else ""
    whole, part = divmod(abs(Fraction(value)), 1)
    return sign + ("-".join(str(piece) for piece in (whole, part) if piece) or "0")
