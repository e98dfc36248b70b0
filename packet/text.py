"""The words a reader sees, by key, and how numbers, days and times are written in them.

Sentences and labels live in ``shared/words/<language>.yaml`` and in ``templates/``; this module only looks
them up and writes values beside their units.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime
from fractions import Fraction
from pathlib import Path
from typing import Any, get_args

from packet.units import Number, decimal_text, feet_and_inches, tape_text
from packet.uses import PurchaseUnit
from packet.yamlread import read_yaml

MINUS = "\N{MINUS SIGN}"

#: Units of goods; a part of one is written as a crew says it: 4 1/2 bundles, 1/4 roll.
GOODS_UNITS: frozenset[str] = frozenset(get_args(PurchaseUnit))
_PARTS = 8

#: Name of a file of words of a language; others in the folder are no language.
_LANGUAGE = re.compile("[a-z]{2}")


class Words(Mapping[str, Any]):
    """A tree of words read by dotted key; a missing key is an error, never an empty label."""

    def __init__(self, tree: Mapping[str, Any], at: str = "") -> None:
        self._tree, self._at = tree, at

    def __getitem__(self, key: str) -> Any:
        """Return the text or subtree at a key or dotted key.

        Raises:
            KeyError: No such words; the message holds the whole key.
        """
        found: Any = self._tree
        for part in key.split("."):
            if not isinstance(found, Mapping) or part not in found:
                raise KeyError(f"{self._at}{key}")
            found = found[part]
        return Words(found, f"{self._at}{key}.") if isinstance(found, Mapping) else found

    def __iter__(self) -> Iterator[str]:
        """Iterate over the keys of this level."""
        return iter(self._tree)

    def __len__(self) -> int:
        """Return how many keys this level has."""
        return len(self._tree)


def merged(base: Mapping[str, Any], over: Mapping[str, Any]) -> dict[str, Any]:
    """Return a tree of words in which an office's own words stand over the packaged ones."""
    tree = dict(base)
    for key, value in over.items():
        below = tree.get(key)
        tree[key] = (
            merged(below, value) if isinstance(below, Mapping) and isinstance(value, Mapping) else value
        )
    return tree


def decimal(value: Number, decimals: int) -> str:
    """Return a number with its places, thousands parted by commas and a real minus sign."""
    whole, point, places = decimal_text(value, decimals).partition(".")
    return (
        f"{int(whole):,}{point}{places}".replace("-", MINUS) if whole != "-0" else f"{MINUS}0{point}{places}"
    )


def figure_number(figure: Mapping[str, Any]) -> str:
    """Return the number of a figure of ``packet.json`` without its unit."""
    value, unit = figure["value"], figure["unit"]
    if unit == "ft_in":
        return feet_and_inches(Fraction(value) * 12)
    if unit == "in" and not figure["decimals"]:
        return tape_text(value)
    if unit == "year":
        return str(int(value))
    if unit in GOODS_UNITS:
        return goods_number(value, figure["decimals"])
    return decimal(value, figure["decimals"])


def goods_number(value: Number, decimals: int) -> str:
    """Return an amount of goods: halves, quarters and eighths as such, any other part as a short decimal.

    Example:
        >>> goods_number(45.5, 2), goods_number(0.625, 2), goods_number(0.6, 2), goods_number(3150, 0)
        ('45 1/2', '5/8', '0.6', '3,150')
    """
    whole, part = divmod(abs(Fraction(value)), 1)
    if part and _PARTS % part.denominator == 0:
        return (MINUS if value < 0 else "") + (f"{whole:,} {part}" if whole else str(part))
    number = decimal(value, decimals)
    return number.rstrip("0").rstrip(".") if "." in number else number


def unit_text(figure: Mapping[str, Any], words: Mapping[str, Any]) -> str:
    """Return the unit of a figure or a term: one bundle, half a bundle, two bundles, one bundle less.

    It is "" where there is none.
    """
    value, unit = figure["value"], figure["unit"]
    size = abs(value)
    single = size == 1 or (unit in GOODS_UNITS and 0 < size < 1)
    text: str = (words["units_one"] if single and unit in words["units_one"] else words["units"])[unit]
    return text


def day_text(value: date, words: Mapping[str, Any]) -> str:
    """Return a day as words write it: March 16, 2026."""
    months = words["dates.months"]
    pattern: str = words["dates.day"]
    return pattern.format(day=value.day, month=months[str(value.month)], year=value.year)


def moment_text(value: datetime, offset: str | None, words: Mapping[str, Any]) -> str:
    """Return a time with its offset from UTC: March 16, 2026, 8:12 (UTC−04:00)."""
    pattern: str = words["dates.moment" if offset else "dates.moment_without_offset"]
    clock = f"{value.hour}:{value.minute:02}"
    return pattern.format(
        day=day_text(value.date(), words), clock=clock, offset=(offset or "").replace("-", MINUS)
    )


def figure_text(figure: Mapping[str, Any], words: Mapping[str, Any]) -> str:
    """Return a figure of ``packet.json`` as words write it: number, then unit."""
    number, name = figure_number(figure), unit_text(figure, words)
    return f"{number} {name}" if name else number


def load_words(folders: Sequence[Path], language: str = "en") -> Words:
    """Return the words of a language: the packaged ones, with an office's own over them.

    Under ``translations`` stand the same words with those of each other language over them, by its two
    letters: a language may bring the words of one paper, such as the crew's card, and leave the rest.

    Args:
        folders: ``shared/`` folders, the packaged one first.
        language: Language of the file in ``words/``.

    Raises:
        Refused: A file can't be read.
    """
    tree = _tree(folders, language)
    found = (path.stem for folder in folders for path in (folder / "words").glob("*.yaml"))
    others = sorted({name for name in found if _LANGUAGE.fullmatch(name) and name != language})
    return Words({**tree, "translations": {other: merged(tree, _tree(folders, other)) for other in others}})


def _tree(folders: Sequence[Path], language: str) -> dict[str, Any]:
    tree: dict[str, Any] = {}
    for folder in folders:
        path = folder / "words" / f"{language}.yaml"
        if path.is_file():
            tree = merged(tree, read_yaml(path).value)
    return tree
