"""What a parser makes of a text: its value, or its refusal as a value."""

from collections.abc import Callable
from typing import TypeVar

from packet.units import NotAMeasure

T = TypeVar("T")


def outcome(parse: Callable[[str], T], text: str) -> T | NotAMeasure:
    """Return what was read, or the refusal; any other error passes through and fails the test."""
    try:
        return parse(text)
    except NotAMeasure as refused:
        return refused
