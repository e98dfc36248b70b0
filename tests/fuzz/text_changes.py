"""Changes to the text and the bytes of a file, as an editor, a mail program or a bad disk would make them."""

import re
from collections.abc import Callable
from random import Random

from tests.fuzz.words import MARKS, TOKENS, measure, spoiled

TextChange = Callable[[str, Random], str]
BytesChange = Callable[[bytes, Random], bytes]

_VALUE = re.compile(r"^([ ]*(?:- )*[\w-]+:[ ]|[ ]*- )(\S.*)$", re.MULTILINE)


def _lines(change: Callable[[list[str], Random], None]) -> TextChange:
    """Return a change of a text from a change of its lines, in place."""

    def changed(text: str, dice: Random) -> str:
        rows = text.split("\n")
        change(rows, dice)
        return "\n".join(rows)

    return changed


def _drop_lines(rows: list[str], dice: Random) -> None:
    at = dice.randrange(len(rows))
    del rows[at : at + dice.choice((1, 1, 2, 5))]


def _double_lines(rows: list[str], dice: Random) -> None:
    at = dice.randrange(len(rows))
    rows[at:at] = rows[at : at + dice.choice((1, 1, 3, 20))] * dice.choice((1, 1, 2, 300))


def _swap_lines(rows: list[str], dice: Random) -> None:
    one, other = dice.randrange(len(rows)), dice.randrange(len(rows))
    rows[one], rows[other] = rows[other], rows[one]


def _shift_line(rows: list[str], dice: Random) -> None:
    at = dice.randrange(len(rows))
    by = dice.choice((-2, -1, 1, 2, 4))
    rows[at] = " " * by + rows[at] if by > 0 else rows[at][-by:]


def _tab_line(rows: list[str], dice: Random) -> None:
    at = dice.randrange(len(rows))
    rows[at] = dice.choice(("\t", "  \t", " \t ")) + rows[at].lstrip()


def _join_lines(rows: list[str], dice: Random) -> None:
    at = dice.randrange(len(rows))
    rows[at : at + 2] = [" ".join(rows[at : at + 2])]


def _other_value(text: str, dice: Random) -> str:
    """Put a word that hurts, or a measure, in the place of a value as it stands in the file."""
    found = list(_VALUE.finditer(text))
    if not found:
        return text
    match = dice.choice(found)
    word = dice.choice((dice.choice(TOKENS), measure(dice), spoiled(match[2], dice)))
    return f"{text[: match.start(2)]}{word}{text[match.end(2) :]}"


def _mark_in(text: str, dice: Random) -> str:
    at = dice.randrange(len(text) + 1)
    return text[:at] + dice.choice((dice.choice(MARKS), dice.choice(TOKENS))) + text[at:]


def _span_out(text: str, dice: Random) -> str:
    at = dice.randrange(len(text) + 1)
    return text[:at] + text[at + dice.choice((1, 2, 10, 200)) :]


def _cut(text: str, dice: Random) -> str:
    return text[: dice.randrange(len(text) + 1)]


def _anchor(text: str, dice: Random) -> str:
    """Name a value and put copies of it in the place of others."""
    text = _VALUE.sub(lambda m: f"{m[1]}&a {m[2]}" if dice.random() < 0.02 else m[0], text)
    return _VALUE.sub(lambda m: f"{m[1]}*a" if dice.random() < 0.02 else m[0], text)


def _deep(text: str, dice: Random) -> str:
    depth = dice.choice((3, 38, 39, 40, 41, 42, 200, 5000))
    opened, closed = dice.choice((("[", "]"), ("{a: ", "}"), ("- ", ""), ("? ", ""), ("a:\n", "")))
    at = dice.choice([match.start(2) for match in _VALUE.finditer(text)] or [0])
    return text[:at] + opened * depth + dice.choice(("x", "")) + closed * dice.choice((depth, 0)) + text[at:]


def _line_ends(text: str, dice: Random) -> str:
    return text.replace("\n", dice.choice(("\r\n", "\r", "\n\r", "\x85", "\u2028")))


TEXT_CHANGES: tuple[TextChange, ...] = (
    *map(_lines, (_drop_lines, _double_lines, _swap_lines, _shift_line, _tab_line, _join_lines)),
    _other_value, _other_value, _other_value, _other_value, _mark_in, _mark_in, _span_out, _cut, _anchor, _deep, _line_ends,
)  # fmt: skip


def _flip(data: bytes, dice: Random) -> bytes:
    changed = bytearray(data or b"\0")
    for _ in range(dice.choice((1, 1, 3, 20))):
        changed[dice.randrange(len(changed))] ^= 1 << dice.randrange(8)
    return bytes(changed)


def _bytes_in(data: bytes, dice: Random) -> bytes:
    at = dice.randrange(len(data) + 1)
    return data[:at] + dice.randbytes(dice.choice((1, 2, 4, 64))) + data[at:]


def _bytes_out(data: bytes, dice: Random) -> bytes:
    at = dice.randrange(len(data) + 1)
    return data[:at] + data[at + dice.choice((1, 2, 16, 1000)) :]


def _short(data: bytes, dice: Random) -> bytes:
    return data[: dice.randrange(len(data) + 1)]


def _moved(data: bytes, dice: Random) -> bytes:
    """Copy a piece of the file over another piece of it."""
    one, other = dice.randrange(len(data) + 1), dice.randrange(len(data) + 1)
    piece = data[one : one + dice.choice((2, 8, 64, 512))]
    return data[:other] + piece + data[other + len(piece) :]


#: Changes that fit any file, pictures too.
BYTES_CHANGES: tuple[BytesChange, ...] = (_flip, _flip, _bytes_in, _bytes_out, _short, _moved)


def _encoded(data: bytes, dice: Random) -> bytes:
    text = data.decode("utf-8", errors="replace")
    return text.encode(
        dice.choice(("utf-16", "utf-16-le", "utf-32", "latin-1", "cp1252", "utf-8-sig")), "replace"
    )


ENCODINGS: tuple[BytesChange, ...] = (_encoded, lambda data, dice: b"\xef\xbb\xbf" * 2 + data)
