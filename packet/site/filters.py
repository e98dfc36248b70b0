"""Filters of the page templates: numbers, days and workings in the words of the packet's language."""

import re
from collections.abc import Callable, Mapping
from datetime import date, datetime
from fractions import Fraction
from typing import Any

from packet import text, units

_TOKEN = re.compile(r"\*\*|[A-Za-z_][A-Za-z0-9_]*|\d+(?:\.\d+)?|[-+*/(),]")
_NUMBERED = re.compile(r"(.*?)_?(\d*)")
_FUNCTIONS = frozenset({"sqrt", "ceil", "floor", "min", "max"})
_MOST_DECIMALS = 4


def make_filters(words: Mapping[str, Any]) -> dict[str, Callable[..., str]]:
    """Return the filters by the names templates use.

    Args:
        words: The text catalogue.
    """

    def day(value: str) -> str:
        if "T" in value:  # a time at the house
            return text.moment_text(datetime.fromisoformat(value), None, words)
        return text.day_text(date.fromisoformat(value), words)

    def moment(photo: Mapping[str, Any]) -> str:
        if not photo.get("taken_at"):
            return ""
        return text.moment_text(datetime.fromisoformat(photo["taken_at"]), photo.get("offset"), words)

    def corrected(photo: Mapping[str, Any]) -> str:
        return moment({"taken_at": photo["clock"]["corrected_at"], "offset": photo.get("offset")})

    def term_words(term: Mapping[str, Any]) -> str:
        return _symbol(term["symbol"], words)

    def unit_words(figure: Mapping[str, Any]) -> str:
        return text.unit_text(figure, words)

    def sum_words(working: Mapping[str, Any]) -> str:
        return _written(working["formula"], lambda symbol: _symbol(symbol, words), words)

    def sum_numbers(working: Mapping[str, Any]) -> str:
        values = {term["symbol"]: term_number(term) for term in working["terms"]}
        return _written(working["formula"], values.__getitem__, words)

    return {
        "number": text.figure_number,
        "term_number": term_number,
        "unit_words": unit_words,
        "term_words": term_words,
        "day": day,
        "moment": moment,
        "corrected": corrected,
        "dialed": dialed,
        "sum_words": sum_words,
        "sum_numbers": sum_numbers,
    }


def dialed(phone: str) -> str:
    """Return what of a telephone number is dialed: its digits, and a plus in front.

    Example:
        >>> dialed("+1 (843) 555-0142")
        '+18435550142'
    """
    return ("+" if phone.lstrip().startswith("+") else "") + re.sub("[^0-9]", "", phone)


def term_number(term: Mapping[str, Any]) -> str:
    """Return the number of a term without its unit."""
    value = term["value"]
    if term["unit"] == "ft_in":
        return units.feet_and_inches(Fraction(value) * 12)
    if term["unit"] == "in":
        return units.tape_text(value)
    number = text.decimal(value, 0 if Fraction(value).denominator == 1 else _MOST_DECIMALS)
    return number.rstrip("0").rstrip(".") if "." in number else number


def _symbol(symbol: str, words: Mapping[str, Any]) -> str:
    """Return a symbol in words; a numbered one (``part_2``, ``u3``) keeps its number."""
    name, number = _NUMBERED.fullmatch(symbol).groups()  # type: ignore[union-attr]
    found: str = words["symbols." + name]
    return f"{found} {number}" if number and len(found) > 1 else found + number


def _written(formula: str, symbol: Callable[[str], str], words: Mapping[str, Any]) -> str:
    """Return a formula with its symbols, signs and functions written for a reader."""
    signs = words["arithmetic.signs"]
    parts: list[str] = []
    for token in _TOKEN.findall(formula):
        if token in _FUNCTIONS:
            parts.append(words["arithmetic." + token])
        elif token in signs:
            parts.append(signs[token])
        else:
            parts.append(symbol(token) if token[0].isalpha() or token[0] == "_" else token)
    return "".join(parts).replace(signs["**"] + "2", words["arithmetic.squared"])
