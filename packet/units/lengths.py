"""Lengths: feet, inches and spacings in trade spellings."""

import re
from fractions import Fraction

from packet.units.kinds import Length
from packet.units.numbers import NUMBER, Kind, normal, number, split_sign, within
from packet.units.writing import fraction_text

#: What to write instead of a length that can't be read, where a field knows nothing nearer.
LENGTH_FORMS = ("12 ft 6 in", "12' 6-1/2\"", "12.5 ft", "6-1/2 in", "16 in oc")

LENGTH = Kind("bad-length", LENGTH_FORMS)

#: Widest range of any length; a field that only goes one way declares its own.
MOST_LENGTH_IN = Fraction(10_000 * 12)

_FOOT = r"(?:'|feet|foot|ft\.?)"
_INCH = r'(?:"|inches|inch|in\.?)'
_ON_CENTER = r" ?(?:o\.c\.?|oc|on[ -]cent(?:er|re)s?)"
_FEET = re.compile(rf"({NUMBER}) ?{_FOOT}(?:(?: ?- ?| ?)({NUMBER}) ?{_INCH})?(?:{_ON_CENTER})?")
_INCHES = re.compile(rf"({NUMBER})(?: ?{_INCH}(?:{_ON_CENTER})?|{_ON_CENTER})")
_NO_UNIT = re.compile(rf"(?:{NUMBER} ?{_FOOT}(?: ?- ?| ?))?{NUMBER}")


def parse_length(
    text: str, *, least_in: Fraction = -MOST_LENGTH_IN, most_in: Fraction = MOST_LENGTH_IN
) -> Length:
    r"""Return a length; ``16 oc`` is a spacing in inches.

    Args:
        text: The text as typed.
        least_in: Least accepted length [in]; a minus sign is read only when this is below 0.
        most_in: Most accepted length [in].

    Raises:
        NotAMeasure: ``no-unit``, ``bad-length``, or one of the codes every measure shares.

    Example:
        >>> parse_length("12' 6-1/2\"").inches
        Fraction(301, 2)
    """
    sign, same = split_sign(normal(text, LENGTH), text, LENGTH, below_zero=least_in < 0)
    inches = sign * _unsigned(same, text)
    return Length(within(inches, least_in, most_in, text, plain_length), text)


def _unsigned(same: str, text: str) -> Fraction:
    if match := _INCHES.fullmatch(same):
        return number(match[1], text, LENGTH)
    if match := _FEET.fullmatch(same):
        feet = number(match[1], text, LENGTH)
        inches = number(match[2], text, LENGTH) if match[2] else None
        if inches is not None and (feet.denominator != 1 or inches >= 12):
            raise LENGTH.refusal(text, accepted="whole feet, then less than 12 in, for example 13 ft 2 in")
        return feet * 12 + (inches or 0)
    raise LENGTH.refusal(text, code="no-unit" if _NO_UNIT.fullmatch(same) else "")


def plain_length(inches: Fraction) -> str:
    """Return the length as a person would type it, exact, for messages.

    Args:
        inches: Length [in].

    Example:
        >>> plain_length(Fraction(301, 2)), plain_length(Fraction(-24))
        ('12 ft 6-1/2 in', '-2 ft')
    """
    sign, size = ("-" if inches < 0 else ""), abs(inches)
    feet, rest = divmod(size, 12) if size >= 24 else (0, size)
    words = ([f"{feet} ft"] if feet else []) + ([f"{fraction_text(rest)} in"] if rest or not feet else [])
    return sign + " ".join(words)
