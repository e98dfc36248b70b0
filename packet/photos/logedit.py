"""New entries at the end of a photo log, every byte that stands there kept.

A log is written by hand: its remarks, quotation marks, line ends and blank lines are its writer's. So the
file is never written anew from its value; text is put behind it, and the sum is read back before it is used.
Only the brackets of an empty list, ``photos: []``, make room for the first entry.
"""

import io
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML
from ruamel.yaml.comments import CommentedMap, CommentedSeq
from ruamel.yaml.scalarstring import DoubleQuotedScalarString

from packet.photos.log import MOST_PHOTOS, LoggedPhoto, PhotoLog
from packet.problems import Problem, Refused
from packet.reading import ReadFile, read_model
from packet.yamlread import parse_yaml, read_bytes

#: Keys written as typed words of a time, and in quotation marks.
_MOMENTS, _QUOTED = frozenset({"taken_at"}), frozenset({"offset"})


@dataclass(frozen=True)
class OldLog:
    """A photo log as it stands.

    Attributes:
        path: The file; it need not exist.
        data: Its bytes.
        values: Its entries as typed.
        entries: Its entries.
        has_key: Whether the key of its list stands there.
        place: Line and column of its list [1-based].
        others: Its other keys as typed: notes on clocks.
        next_line: Line of the key behind its list [1-based]; 0 when the list is the last.
    """

    path: Path
    data: bytes = b""
    values: tuple[Any, ...] = ()
    entries: tuple[LoggedPhoto, ...] = ()
    has_key: bool = False
    place: tuple[int, int] = (1, 1)
    others: Mapping[str, Any] = field(default_factory=dict)
    next_line: int = 0


@dataclass(frozen=True)
class NewEntry:
    """An entry to be added: its keys with their values, and the remark that stands above it."""

    values: Mapping[str, Any]
    remark: str = ""


@dataclass(frozen=True)
class NewLog:
    """The bytes of a log with its new entries, and the line of the first of them [1-based]."""

    data: bytes
    first_line: int


def read_log(path: Path) -> OldLog:
    """Return a log; it may be missing, empty, or hold nothing but remarks.

    Raises:
        Refused: It can't be read or does not fit.
    """
    if not path.exists():
        return OldLog(path)
    data = read_bytes(path)
    try:
        document = parse_yaml(data, path)
    except Refused as refused:
        if [problem.code for problem in refused.problems] == ["empty-file"]:
            return OldLog(path, data)
        raise
    if document.value == {"photos": None}:
        return OldLog(path, data, has_key=True)
    log: ReadFile[PhotoLog] = read_model(path, PhotoLog)
    listed = document.value.get("photos")
    others = {key: value for key, value in document.value.items() if key != "photos"}
    own_line = document.place(("photos",), key=True)[0]
    behind = [line for key in others if (line := document.place((key,), key=True)[0]) > own_line]
    return OldLog(
        path,
        data,
        tuple(listed or ()),
        log.value.photos,
        has_key=listed is not None,
        place=document.place(("photos",)),
        others=others,
        next_line=min(behind, default=0) if listed is not None else 0,
    )


def with_entries(old: OldLog, entries: Sequence[NewEntry]) -> NewLog:
    """Return a log with new entries behind the old ones.

    Raises:
        Refused: There would be too many (``photo-log-full``), or what stands there can't be added to, such as
            a list in square brackets (``photo-log-shape``).
    """
    if len(old.values) + len(entries) > MOST_PHOTOS:
        values = {"most": f"{MOST_PHOTOS:,}"}
        raise Refused(Problem("photo-log-full", old.path, *old.place, "photos", values=values))
    indent = " " * (old.place[1] - 1 if old.values else 2)
    lines = [f"{indent}{line}" for line in _written(entries).splitlines()]
    line_end = _line_end(old.data)
    # an empty list stands in brackets, as in a new job's log, and its two brackets are all that ever goes
    head, tail = _parted(_without_brackets(old), old.next_line)
    before = "" if not head or head.endswith((b"\n", b"\r")) else line_end
    key = "" if old.has_key else f"photos:{line_end}"
    added = before + key + "".join(f"{line}{line_end}" for line in lines)
    data = head + added.encode() + tail
    wanted = [*old.values, *({name: _as_typed(v) for name, v in e.values.items()} for e in entries)]
    shape = Problem("photo-log-shape", old.path, *old.place, "photos")
    try:
        document = parse_yaml(data, old.path)
    except Refused as refused:
        if any(problem.code == "too-large" for problem in refused.problems):
            raise
        raise Refused(shape) from None
    if document.value != {**old.others, "photos": wanted}:
        raise Refused(shape)
    PhotoLog.model_validate(document.value)
    return NewLog(data, document.place(("photos", len(old.values)))[0])


def _parted(data: bytes, next_line: int) -> tuple[bytes, bytes]:
    """Return a log up to the end of its list, and what follows: another key with the remarks above it."""
    if not next_line:
        return data, b""
    lines = re.split(rb"(?<=\n)|(?<=\r)(?!\n)", data)
    end = next_line - 1
    while end and re.match(rb"[ \t]*[\r\n]|#", lines[end - 1]):
        end -= 1
    return b"".join(lines[:end]), b"".join(lines[end:])


def _without_brackets(old: OldLog) -> bytes:
    """Return the bytes of a log, those of an empty list's brackets left out."""
    if old.values or not old.has_key:
        return old.data
    brackets = rb"((?:^|\A\xef\xbb\xbf)photos:)[ \t]*\[[ \t]*\]"
    return re.sub(brackets, rb"\1", old.data, count=1, flags=re.MULTILINE)


def _line_end(data: bytes) -> str:
    """Return the line end most lines of a file have."""
    if b"\n" not in data:
        return "\r" if b"\r" in data else "\n"
    return "\r\n" if 2 * data.count(b"\r\n") > data.count(b"\n") else "\n"


def _as_typed(value: Any) -> Any:
    """Return a value as the reader of records gives it: scalars are text."""
    return [str(item) for item in value] if isinstance(value, tuple) else value


def _written(entries: Sequence[NewEntry]) -> str:
    """Return entries as YAML, one key a line, hyphens in the first column."""
    yaml = YAML()
    yaml.width = 100_000  # a value never goes on in a second line
    rows = CommentedSeq()
    for entry in entries:
        rows.append(CommentedMap((name, _node(yaml, name, v)) for name, v in entry.values.items()))
        if entry.remark:
            rows.yaml_set_comment_before_after_key(len(rows) - 1, before=entry.remark)
    out = io.StringIO()
    yaml.dump(rows, out)
    return out.getvalue()


def _node(yaml: YAML, name: str, value: Any) -> Any:
    if name in _MOMENTS:
        return yaml.load(value)  # keeps the T of a time, without quotation marks
    if name in _QUOTED:
        return DoubleQuotedScalarString(value)
    if isinstance(value, tuple):
        row = CommentedSeq(value)
        row.fa.set_flow_style()
        return row
    return value
