"""Bytes of a file → a document, or every problem that one pass can find."""

import os
import stat
from pathlib import Path

import yaml

from packet.problems import Problem, Refused
from packet.snippet import FORBIDDEN, LINE_BREAK
from packet.yamlread.document import Document, Spot
from packet.yamlread.faults import fault
from packet.yamlread.tree import Tree

#: The largest file read, in bytes.
LIMIT_BYTES = 2_000_000

#: Forbidden characters reported one by one; a file with more is not a text file.
_MOST_CHARACTERS = 20

_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def read_yaml(path: Path, *, limit_bytes: int = LIMIT_BYTES) -> Document:
    """Return a YAML file's value with the place of each part.

    Args:
        path: The file.
        limit_bytes: Largest size that is read [bytes].

    Raises:
        Refused: The file can't be read, is no plain YAML, or uses a part of YAML that records do not.
    """
    return parse_yaml(read_bytes(path, limit_bytes=limit_bytes), path, limit_bytes=limit_bytes)


def parse_yaml(data: bytes, path: Path, *, limit_bytes: int = LIMIT_BYTES) -> Document:
    """Return the value of YAML bytes; ``path`` is the file that problems name.

    Raises:
        Refused: As for ``read_yaml``.
    """
    if len(data) > limit_bytes:
        raise Refused(_too_large(path, len(data), limit_bytes))
    text = _text(data, path)
    tree = Tree(path, text)
    try:
        tree.read(yaml.parse(text, Loader=_LOADER))
    except yaml.YAMLError as error:
        raise Refused([*tree.problems, fault(error, text, path)]) from None
    if tree.problems:
        raise Refused(tree.problems)
    if tree.value is None:
        raise Refused(Problem("empty-file", path))
    return Document(path, tree.value, tree.root or Spot((1, 1)))


def read_bytes(path: Path, *, limit_bytes: int = LIMIT_BYTES) -> bytes:
    """Return a regular file's bytes; a pipe or a device is never opened, a huge file never read."""
    try:
        status = path.stat()
        if not stat.S_ISREG(status.st_mode):
            raise Refused(Problem("file-unreadable", path, values={"reason": "it is not a file"}))
        if status.st_size > limit_bytes:
            raise Refused(_too_large(path, status.st_size, limit_bytes))
        with path.open("rb") as file:
            return file.read(limit_bytes + 1)
    except FileNotFoundError:
        raise Refused(Problem("file-missing", path)) from None
    except (OSError, ValueError) as error:
        number = error.errno if isinstance(error, OSError) else None
        reason = os.strerror(number).lower() if number else "its name can't be used"
        raise Refused(Problem("file-unreadable", path, values={"reason": reason})) from None


def _too_large(path: Path, size_bytes: int, limit_bytes: int) -> Problem:
    return Problem(
        "too-large",
        path,
        found=_size(size_bytes),
        values={"size": _size(size_bytes), "most": _size(limit_bytes)},
    )


def _size(size_bytes: int) -> str:
    return f"{size_bytes / 1_000_000:,.1f} MB" if size_bytes >= 100_000 else f"{size_bytes:,} bytes"


def _text(data: bytes, path: Path) -> str:
    body = data.removeprefix(b"\xef\xbb\xbf")
    try:
        text = body.decode("utf-8")
    except UnicodeDecodeError as error:
        line, column = _line_column(body[: error.start].decode("utf-8", errors="replace"))
        found = f"0x{body[error.start]:02X}"
        raise Refused(Problem("not-utf8", path, line, column, found=found)) from None
    hidden = list(_forbidden(text, path))
    if hidden:
        raise Refused(hidden)
    return text


def _forbidden(text: str, path: Path) -> list[Problem]:
    problems = []
    for match in FORBIDDEN.finditer(text):
        line, column = _line_column(text[: match.start()])
        code = "nul-byte" if match[0] == "\0" else "control-character"
        problems.append(Problem(code, path, line, column, found=f"U+{ord(match[0]):04X}"))
        if code == "nul-byte" or len(problems) == _MOST_CHARACTERS:
            break  # after a zero byte nothing is text
    return problems


def _line_column(before: str) -> tuple[int, int]:
    """Return the place of the character that follows ``before``."""
    lines = LINE_BREAK.split(before)
    return len(lines), len(lines[-1]) + 1
