"""Typed text to exact numbers: one spelling of every mark, then plain, decimal, fraction or mixed numbers."""

import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from packet.units.kinds import NotAMeasure
from packet.units.writing import fraction_text

#: No measure needs more; a longer text is refused before anything reads it.
LONGEST_TEXT = 60

#: One number: 12, 1,200, 0.131, .131, 3/8, 6-1/2, 6 1/2. Every repeat is bounded, so matching stays quick.
NUMBER = (
    r"(?:[0-9]{1,9}(?: ?- ?| )[0-9]{1,4}/[0-9]{1,4}"
    r"|[0-9]{1,4}/[0-9]{1,4}"
    r"|(?:[0-9]{1,3}(?:,[0-9]{3}){1,2}|[0-9]{1,9})(?:\.[0-9]{1,9})?"
    r"|\.[0-9]{1,9})"
)

_SAME = str.maketrans(
    {
        **dict.fromkeys("\u2032\u2018\u2019\u00b4\u02b9", "'"),
        **dict.fromkeys("\u2033\u201c\u201d\u02ba", '"'),
        **dict.fromkeys("\u2010\u2011\u2012\u2013\u2212", "-"),
        **dict.fromkeys("\u2044\u2215", "/"),
        "\u00d7": "x",
        "\u00b2": "2",
    }
)
_VULGAR = re.compile("[\u00bc-\u00be\u2150-\u215e]")
_NOT_PLAIN = re.compile(r"[0-9.]e[+-]?[0-9]|(?<![a-z])(?:nan|inf|infinity)(?![a-z])")


@dataclass(frozen=True)
class Kind:
    """A kind of measure: how it is refused.

    Attributes:
        bad: Code for a text that is no measure of this kind.
        forms: Forms to write instead.
    """

    bad: str
    forms: tuple[str, ...]

    def refusal(self, text: str, *, code: str = "", accepted: str = "") -> NotAMeasure:
        """Return the refusal of a text, by default as one of the wrong kind."""
        return NotAMeasure(code or self.bad, text, (accepted,) if accepted else self.forms)

    def bare(self, same: str, text: str) -> NotAMeasure:
        """Return the refusal of a text that matched no form: a number without its unit, or something else."""
        return self.refusal(text, code="no-unit" if re.fullmatch(NUMBER, same) else self.bad)


COUNT = Kind("bad-count", ("4", "1988"))
QUANTITY = Kind("bad-quantity", ("5", "3-1/2", "0.5"))


def _vulgar(match: re.Match[str]) -> str:
    value = Fraction(unicodedata.numeric(match[0])).limit_denominator(10)
    after_digit = match.start() > 0 and match.string[match.start() - 1] in "0123456789"
    return f"{' ' if after_digit else ''}{value.numerator}/{value.denominator}"


def normal(text: str, kind: Kind) -> str:
    """Return the text with one spelling of primes, quotes, dashes, fractions, spaces and case.

    Raises:
        NotAMeasure: The text is empty, too long, or holds an exponent, ``nan`` or ``inf``.
    """
    if len(text) > LONGEST_TEXT:
        raise kind.refusal(text[:LONGEST_TEXT] + "\u2026", code="too-long")
    same = _VULGAR.sub(_vulgar, text.translate(_SAME)).replace("''", '"').lower()
    same = " ".join(same.split())
    if _NOT_PLAIN.search(same):
        raise kind.refusal(text, code="not-plain-number")
    if not same:
        raise kind.refusal(text)
    return same


def split_sign(same: str, text: str, kind: Kind, *, below_zero: bool = False) -> tuple[int, str]:
    """Return the sign and the normal text behind it.

    Args:
        same: Text from ``normal``.
        text: The text as typed.
        kind: Kind of measure.
        below_zero: Whether the declared range reaches below zero.

    Raises:
        NotAMeasure: A minus sign where the range does not reach below zero.
    """
    if not re.match(r"- ?[0-9.]", same):
        return 1, same
    if not below_zero:
        raise kind.refusal(text, code="negative")
    return -1, same[1:].lstrip()


def unsigned(text: str, kind: Kind) -> str:
    """Return the normal text of a measure that is never below zero.

    Raises:
        NotAMeasure: As ``normal``, or the text has a minus sign.
    """
    return split_sign(normal(text, kind), text, kind)[1]


def number(digits: str, text: str, kind: Kind) -> Fraction:
    """Return the exact value of a text that ``NUMBER`` matched.

    Raises:
        NotAMeasure: A denominator is zero, or the fraction behind a whole number is 1 or more.
    """
    whole, part = 0, digits.replace(",", "")
    mixed = re.fullmatch(r"([0-9]+)(?: ?- ?| )([0-9]+/[0-9]+)", part)
    if mixed:
        whole, part = int(mixed[1]), mixed[2]
    if re.search(r"/0+$", part):
        raise kind.refusal(text, code="zero-denominator")
    value = Fraction(part)
    if mixed and value >= 1:
        raise kind.refusal(text, accepted="a fraction below 1 behind a whole number, for example 6-1/2")
    return whole + value


def within(
    value: Fraction,
    least: Fraction | int,
    most: Fraction | int,
    text: str,
    written: Callable[[Fraction], str],
) -> Fraction:
    """Return the value when it lies in the declared range, both ends included.

    Args:
        value: Value to judge.
        least: Least accepted value [same unit].
        most: Most accepted value [same unit].
        text: The text as typed.
        written: Writes an end of the range with its unit.

    Raises:
        NotAMeasure: The value is outside.
    """
    if least <= value <= most:
        return value
    accepted = f"from {written(Fraction(least))} to {written(Fraction(most))}"
    raise NotAMeasure(code="out-of-range", found=text, accepted=(accepted,))


def parse_count(text: str, *, least: int = 0, most: int = 1_000_000) -> int:
    """Return a whole number of things.

    Args:
        text: The text as typed.
        least: Least accepted count.
        most: Most accepted count.

    Raises:
        NotAMeasure: ``bad-count``, or one of the codes every measure shares.

    Example:
        >>> parse_count("1,200")
        1200
    """
    same = unsigned(text, COUNT)
    if not re.fullmatch(r"[0-9]{1,9}|[0-9]{1,3}(?:,[0-9]{3}){1,2}", same):
        raise COUNT.refusal(text)
    return int(within(Fraction(same.replace(",", "")), least, most, text, fraction_text))


def parse_quantity(text: str, *, least: Fraction | int = 0, most: Fraction | int = 1_000_000) -> Fraction:
    """Return an exact amount of things that come in parts: bundles, rolls, boxes.

    Args:
        text: The text as typed.
        least: Least accepted amount.
        most: Most accepted amount.

    Raises:
        NotAMeasure: ``bad-quantity``, or one of the codes every measure shares.

    Example:
        >>> parse_quantity("3-1/2")
        Fraction(7, 2)
    """
    same = unsigned(text, QUANTITY)
    if not re.fullmatch(NUMBER, same):
        raise QUANTITY.refusal(text)
    return within(number(same, text, QUANTITY), least, most, text, fraction_text)
