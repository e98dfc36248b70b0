"""Measures: whatever is typed is read exactly or refused with a reason, and what is written back reads the same."""

import traceback
from collections.abc import Callable
from fractions import Fraction
from random import Random
from typing import Any

from packet import units
from tests.fuzz.judge import Fault
from tests.fuzz.words import TOKENS, measure, spoiled

PARSERS: dict[str, Callable[[str], Any]] = {
    "length": units.parse_length,
    "pitch": units.parse_pitch,
    "area": units.parse_area,
    "speed": units.parse_speed,
    "nail": units.parse_nail_size,
    "count": units.parse_count,
    "quantity": units.parse_quantity,
}


def judged(kind: str, text: str) -> Fault | None:
    """Return what one parser does wrong with one text, or None."""
    try:
        value = PARSERS[kind](text)
    except units.NotAMeasure as refused:
        whole = refused.code and refused.accepted and all(refused.accepted)
        return None if whole else Fault("measure", f"{kind}: a refusal without a reason", repr(text))
    except Exception:
        return Fault(
            "measure",
            f"{kind}: {traceback.format_exc().splitlines()[-1]}",
            f"{text!r}\n{traceback.format_exc()}",
        )
    for again in _written_back(kind, value):
        if PARSERS[kind](again) != value:
            return Fault("measure", f"{kind}: written back as another", f"{text!r} → {value!r} → {again!r}")
    exact = value.inches if kind == "length" else 0
    if not isinstance(exact, Fraction | int):
        return Fault("measure", f"{kind}: not exact", f"{text!r} → {value!r}")
    return None


def _written_back(kind: str, value: Any) -> list[str]:
    """Return the ways a value is written for a person."""
    if kind == "length":
        return [units.plain_length(value.inches)] if _plain(value.inches) else []
    if kind == "pitch":
        return [f"{units.fraction_text(value.rise_in_12)}:12"] if _plain(value.rise_in_12) else []
    if kind == "count":
        return [f"{value}", f"{value:,}"]
    if kind == "quantity":
        return [units.fraction_text(value)] if _plain(value) else []
    return []


def _plain(value: Fraction) -> bool:
    """Tell whether a person would write the value as a fraction; finer ones are decimals."""
    return value.denominator <= 9999 and abs(value.numerator % value.denominator) <= 9999


def words(dice: Random) -> str:
    """Return a text to read as a measure."""
    roll = dice.random()
    if roll < 0.75:
        return measure(dice)
    return dice.choice(TOKENS) if roll < 0.85 else spoiled(dice.choice(TOKENS), dice)
