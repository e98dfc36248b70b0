"""Text that is no YAML → one problem that names the likely slip of the pen, not the parser's state.

The slip is read off the text around the parser's two marks, never off the wording of its message.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import yaml

from packet.problems import Problem
from packet.snippet import LINE_BREAK
from packet.yamlread.document import MOST_DEEP

#: What may stand on a line before a value: hyphens of a list, a key with its colon.
_LEAD = r"\s*(?:-[ ]+)*(?:[^\s:#][^:#]*:[ ]+)?"

#: A key glued to its value: YAML wants a space behind the colon.
_GLUED_KEY = re.compile(r"^[ ]*(?:-[ ]+)*[A-Za-z_]\w*:(?=[^\s:/\d])")

#: A value in quotation marks inside brackets that ends the text so far.
_CLOSED_IN_BRACKETS = re.compile(r"""(?:[:,\[]|^)[ ]*(?:"[^"]*"|'[^']*')[ ]*$""")

#: A value in quotation marks that ends the text so far: words behind it are the fault.
_CLOSED_QUOTE = re.compile(rf"""^{_LEAD}(?:"[^"]*"|'[^']*')[ ]*$""")

_LINE = re.compile(rf"^({_LEAD})(.*?)(?:\s+#.*)?\s*$")

#: Patterns of lines look no further than this many characters, so that no line can make them slow.
_LONGEST_LINE = 400

#: A backslash and the start of what the parser takes for a character's number.
_ESCAPE = re.compile(r"\\.?[0-9A-Fa-f]{0,8}.?$")


def in_quotes(words: str) -> str:
    """Return words as a YAML scalar in quotation marks, with as few backslashes as may be."""
    if '"' not in words and "\\" not in words:
        return f'"{words}"'
    if "'" not in words:
        return f"'{words}'"
    escaped = words.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


@dataclass(frozen=True)
class _Stop:
    """Where the parser stopped, and where the construct that it was reading began.

    Attributes:
        text: The whole file.
        index: Position of the stop in the text.
        began: Position of the construct's start; the stop itself when the parser names none.
    """

    text: str
    index: int
    began: int

    @property
    def here(self) -> str:
        return self.text[self.index : self.index + 1]

    @property
    def start(self) -> str:
        """The construct's first character, empty when the parser names no construct."""
        return self.text[self.began : self.began + 1] if self.began < self.index else ""

    @property
    def line(self) -> str:
        return line_at(self.text, self.index)

    @property
    def line_so_far(self) -> str:
        return self.text[_line_start(self.text, self.index) : self.index]

    @property
    def above(self) -> tuple[int, str]:
        """The nearest line above that holds more than a comment, with the position of its first word."""
        start = _line_start(self.text, self.index)
        while start > 0:
            end = start - 1
            start = _line_start(self.text, end)
            line = self.text[start:end]
            if _code(line):
                return start + _indent(line), line.rstrip()
        return 0, ""


def line_at(text: str, index: int) -> str:
    """Return the whole line that holds the character at ``index``."""
    end = LINE_BREAK.search(text, index)
    return text[_line_start(text, index) : end.start() if end else len(text)]


def _line_start(text: str, index: int) -> int:
    return max(text.rfind("\n", 0, index), text.rfind("\r", 0, index)) + 1


def _code(line: str) -> str:
    return line.split("#", 1)[0].strip()


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def _has_key(line: str) -> bool:
    return bool(re.search(r":(\s|$)", line)) or _code(line).startswith("-")


def _tab_indents(stop: _Stop) -> bool:
    return "\t" in stop.line[: len(stop.line) - len(stop.line.lstrip())]


def _escape_unknown(stop: _Stop) -> bool:
    return stop.start == '"' and bool(_ESCAPE.search(stop.text[stop.began : stop.index + 1]))


def _quote_closed(stop: _Stop) -> bool:
    so_far = stop.line_so_far
    return len(so_far) <= _LONGEST_LINE and bool(_CLOSED_QUOTE.search(so_far))


def _quote_closed_in_brackets(stop: _Stop) -> bool:
    so_far = stop.line_so_far[-_LONGEST_LINE:]
    return (
        stop.start in ("[", "{")
        and stop.here not in ("", "\n", "\r")
        and bool(_CLOSED_IN_BRACKETS.search(so_far))
    )


def _names_a_copy(stop: _Stop) -> bool:
    return stop.start in ("*", "&")


def _glued_above(stop: _Stop) -> bool:
    return bool(_GLUED_KEY.match(stop.above[1][:_LONGEST_LINE]))


def _starts_value(stop: _Stop) -> bool:
    return stop.here in tuple("*&!]},|>") and bool(re.search(r"(^|:\s+|-\s+)$", stop.line_so_far))


def _indent_unfit(stop: _Stop) -> bool:
    above = stop.above[1]
    deeper = stop.here == ":" and bool(above) and _indent(stop.line) > _indent(above)
    return deeper or (bool(stop.line_so_far) and not stop.line_so_far.strip())


def _colon_missing_above(stop: _Stop) -> bool:
    above = stop.above[1]
    return stop.here == ":" and bool(above) and not _has_key(above)


def _colon_missing_at_start(stop: _Stop) -> bool:
    return bool(stop.start) and not _has_key(line_at(stop.text, stop.began))


def _at_stop(stop: _Stop) -> int:
    return stop.index


def _at_start(stop: _Stop) -> int:
    return stop.began


def _at_line_above(stop: _Stop) -> int:
    return stop.above[0]


def _at_word(stop: _Stop) -> int:
    """Return the position of the line's first word."""
    return stop.index - len(stop.line_so_far) + _indent(stop.line)


def _brackets_too_deep(stop: _Stop) -> bool:
    """Tell whether the parser itself gave up on brackets; it does so long after this reader would."""
    before = stop.text[: stop.index]
    opened = sum(map(before.count, "[{")) - sum(map(before.count, "]}"))
    return stop.here in ("[", "{") and opened > MOST_DEEP


#: The slips, most particular first: code, how to tell, and the character to point at.
_SLIPS: tuple[tuple[str, Callable[[_Stop], bool], Callable[[_Stop], int]], ...] = (
    ("too-deep", _brackets_too_deep, _at_stop),
    ("tab-indent", _tab_indents, _at_stop),
    ("bad-escape", _escape_unknown, _at_start),
    ("quote-left-open", lambda stop: stop.start in ("'", '"'), _at_start),
    ("quote-needed", lambda stop: stop.start == "%", _at_start),
    ("quote-needed", lambda stop: stop.here in ("@", "`", "%"), _at_stop),
    ("quote-needed", _starts_value, _at_stop),
    ("quote-needed", _names_a_copy, _at_start),
    ("quote-in-brackets", _quote_closed_in_brackets, _at_stop),
    ("bracket-left-open", lambda stop: stop.start in ("[", "{"), _at_start),
    ("text-after-quote", _quote_closed, _at_stop),
    ("colon-in-text", lambda stop: stop.here == ":" and ": " in stop.line_so_far, _at_stop),
    ("space-missing", _glued_above, _at_line_above),
    ("bad-indent", _indent_unfit, _at_word),
    ("colon-missing", _colon_missing_above, _at_line_above),
    ("colon-missing", _colon_missing_at_start, _at_start),
)


def fault(error: yaml.YAMLError, text: str, path: Path) -> Problem:
    """Return the problem for text that the parser refused."""
    stop = _stop(error, text)
    code, index = "bad-yaml", stop.index
    for slip, applies, points_at in _SLIPS:
        if applies(stop):
            code, index = slip, points_at(stop)
            break
    # At the end of the file there is nothing to see: point at the last thing written.
    index = min(index, max(len(text.rstrip()) - 1, 0))
    before = LINE_BREAK.split(text[:index])
    found = LINE_BREAK.split(text[index : index + _LONGEST_LINE], maxsplit=1)[0].strip()
    line = line_at(text, index)
    instead = _GLUED_KEY.sub(r"\g<0> ", line).strip() if code == "space-missing" else _instead(line)
    values = {"reason": _reason(error), "instead": instead, "most": str(MOST_DEEP)}
    return Problem(code, path, len(before), len(before[-1]) + 1, found=found, values=values)


def _instead(line: str) -> str:
    """Return a line with its whole value in quotation marks, without the marks that were tried."""
    match = _LINE.match(line if len(line) <= _LONGEST_LINE else f"{line[:_LONGEST_LINE]}…")
    if not match:
        return ""
    words = match[2]
    if len(words) > 1 and words[0] == words[-1] and words[0] in "'\"":
        words = words[1:-1]
    return match[1].lstrip() + in_quotes(words)


def _stop(error: yaml.YAMLError, text: str) -> _Stop:
    marks = [getattr(error, name, None) for name in ("problem_mark", "context_mark")]
    at, began = (mark.index if mark is not None else None for mark in marks)
    if at is None:
        at = began if began is not None else int(getattr(error, "position", 0) or 0)
    return _Stop(text, min(at, len(text)), min(at if began is None else began, len(text)))


def _reason(error: yaml.YAMLError) -> str:
    return str(getattr(error, "problem", None) or getattr(error, "reason", None) or "")
