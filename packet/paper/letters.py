"""Letters our fonts have: a character they lack would leave a hole on paper, which archives refuse."""

import re
import unicodedata
from collections.abc import Callable
from pathlib import Path
from typing import Any

#: Lies beside the fonts: a character or a run of them a line, in hexadecimal.
COVERAGE_NAME = "coverage.txt"

#: All but line breaks and what every font has.
_TO_CHECK = re.compile(r"[^\n\x20-\x7e]")


def printable(fonts: Path) -> Callable[[str], str]:
    """Return the function that writes text with the letters of these fonts.

    A character they lack is written by its number, ``[U+4E2D]``, so that nothing is lost; ``packet.json``,
    which is attached, holds it as typed.

    Args:
        fonts: Folder of the fonts.
    """
    known = covered(fonts)

    def letter(match: re.Match[str]) -> str:
        return match[0] if ord(match[0]) in known else f"[U+{ord(match[0]):04X}]"

    return lambda text: _TO_CHECK.sub(letter, unicodedata.normalize("NFC", text))


def covered(fonts: Path) -> frozenset[int]:
    """Return the code points that the fonts in a folder have."""
    lines = (fonts / COVERAGE_NAME).read_text(encoding="utf-8").splitlines()
    runs = (line.split("-") for line in lines if line and not line.startswith("#"))
    return frozenset(point for run in runs for point in range(int(run[0], 16), int(run[-1], 16) + 1))


def rewritten(value: Any, write: Callable[[str], str]) -> Any:
    """Return plain data with every text in it, keys left alone, written by a function."""
    if isinstance(value, str):
        return write(value)
    if isinstance(value, dict):
        return {key: rewritten(item, write) for key, item in value.items()}
    if isinstance(value, list):
        return [rewritten(item, write) for item in value]
    return value
