"""The line of a file that a problem points at, with a caret, safe to print on any terminal."""

import re
import unicodedata
from collections.abc import Sequence
from pathlib import Path

#: Characters that a record may not hold: control characters and marks that turn or hide text.
#: Tab, line feed and carriage return are the only controls allowed.
FORBIDDEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff"
    "\ud800-\udfff\ufff9-\ufffb\ufffe\uffff]"
)

#: The same breaks as YAML's, so that line numbers agree with the parser's.
LINE_BREAK = re.compile(r"\r\n|\n|\r")

#: Bytes of a file read for snippets.
_MOST_READ_BYTES = 2_500_000

#: Columns of a long line shown around the caret.
_WIDTH = 100


def visible(text: str) -> str:
    """Return text on one line with every forbidden character spelled out as ``U+001B``."""
    spelled = FORBIDDEN.sub(lambda match: f"U+{ord(match[0]):04X}", text)
    return re.sub(r"\s*[\r\n]+\s*", " ", spelled).replace("\t", " ")


def read_lines(path: Path) -> list[str]:
    """Return the lines of a text file; none when it can't be read, and undecodable bytes replaced."""
    try:
        if not path.is_file():
            return []
        with path.open("rb") as file:
            data = file.read(_MOST_READ_BYTES)
    except (OSError, ValueError):
        return []
    return LINE_BREAK.split(data.decode("utf-8", errors="replace").removeprefix("\ufeff"))


def snippet(lines: Sequence[str], line: int, column: int, found: str) -> list[str]:
    """Return the numbered line and, below it, a caret under the words found; nothing for an absent line.

    Args:
        lines: Lines of the file.
        line: Line to show [1-based].
        column: Where the caret starts [1-based, characters].
        found: The words to underline when they stand there; one caret otherwise.
    """
    if not 0 < line <= len(lines) or not lines[line - 1].strip():
        return []
    raw, start = lines[line - 1], max(column - 1, 0)
    marked = _marked(raw[start:], found)
    left = max(0, start - _WIDTH // 2) if len(raw) > _WIDTH else 0
    before, after = _plain(raw[left:start]), _plain(raw[start : left + _WIDTH])
    lead, tail = "…" if left else "", "…" if left + _WIDTH < len(raw) else ""
    gap = " " * (_columns(before) + len(lead))
    carets = "^" * max(1, _columns(after[:marked]))
    number = f"{line:>5}"
    return [f"{number} | {lead}{before}{after}{tail}".rstrip(), f"{' ' * len(number)} | {gap}{carets}"]


def _marked(rest: str, found: str) -> int:
    for words in (found, f'"{found}"', f"'{found}'"):
        if found and rest.startswith(words):
            return len(words)
    return 1


def _plain(text: str) -> str:
    """Return text with one printable character for each of its characters."""
    return FORBIDDEN.sub("\N{REPLACEMENT CHARACTER}", text).replace("\t", " ")


def _columns(text: str) -> int:
    """Return how many columns of a terminal the text takes."""
    wide = sum(unicodedata.east_asian_width(letter) in "WF" for letter in text)
    return len(text) + wide - sum(bool(unicodedata.combining(letter)) for letter in text)
