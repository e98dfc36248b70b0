"""Parser events → values and spots, with every refusal of this reader; one pass, no recursion."""

import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any, cast

import yaml

from packet.problems import Problem
from packet.snippet import FORBIDDEN
from packet.yamlread.document import MOST_DEEP, Place, Spot
from packet.yamlread.faults import in_quotes

#: Keys, scalars, lists and mappings of one file; a record of a large house has about 4,000.
MOST_NODES = 200_000

#: Problems of one file that are gathered before reading stops; far more than anybody mends in one go.
MOST_PROBLEMS = 1000

#: Plain words that stand for "no value".
_NULLS = frozenset({"", "~", "null", "Null", "NULL"})

#: A comment glued to its first word where a value was expected, behind a key and behind a hyphen.
_HASH_AFTER_KEY = re.compile(r"[ \t]*:[ \t]+(#[^\s#][^\r\n]*)")
_HASH_AFTER_HYPHEN = re.compile(r"[ \t]+(#[^\s#][^\r\n]*)")

#: A node's anchor and tag as typed.
_ANCHOR = re.compile(r"&\S+")
_TAG = re.compile(r"(?:&\S+\s+)?(!\S*)")


class _Open:
    """A list or mapping whose entries are still coming.

    Attributes:
        awaits_key: True while a mapping waits for a key.
        key: The key that waits for its value; None when it was refused, so that its value is dropped.
        key_event: The waiting key as parsed, refused or not; None when it is no scalar.
    """

    __slots__ = ("awaits_key", "key", "key_event", "spot", "value")

    def __init__(self, value: dict[str, Any] | list[Any], spot: Spot) -> None:
        self.value = value
        self.spot = spot
        self.awaits_key = isinstance(value, dict)
        self.key: str | None = None
        self.key_event: yaml.ScalarEvent | None = None


class Tree:
    """Builds one document; read ``value``, ``root`` and ``problems`` after ``read``."""

    def __init__(self, path: Path, text: str) -> None:
        self.path = path
        self.problems: list[Problem] = []
        self.value: Any = None
        self.root: Spot | None = None
        self._text = text
        self._open: list[_Open] = []
        self._nodes = 0
        self._documents = 0
        self._anchors: set[str] = set()

    def read(self, events: Iterable[yaml.Event]) -> None:
        """Take events until the end, or until reading on makes no sense.

        Raises:
            yaml.YAMLError: The text is not YAML.
        """
        for event in events:
            if type(event) is yaml.ScalarEvent:  # nine of ten
                self._scalar(event)
            elif isinstance(event, yaml.CollectionStartEvent):
                self._begin(event)
            elif isinstance(event, yaml.CollectionEndEvent):
                ended = self._open.pop()
                self._attach(ended.value, ended.spot)
            elif isinstance(event, yaml.AliasEvent):
                self._refuse("aliases-refused", event, f"*{event.anchor}")
                if event.anchor in self._anchors:
                    self._keep_first("aliases-refused")
                    return  # the file is built of copies, which may be without number
                self._drop(event)
            elif isinstance(event, yaml.DocumentStartEvent):
                self._documents += 1
                if self._documents > 1:
                    self._refuse("several-documents", event)
                    return
            if self._too_much(event):
                return

    def _too_much(self, event: yaml.Event) -> bool:
        if len(self.problems) >= MOST_PROBLEMS:
            return True
        if len(self._open) > MOST_DEEP:
            self._refuse("too-deep", event, most=str(MOST_DEEP))
        elif self._nodes > MOST_NODES:
            self._refuse("too-many-nodes", event, most=f"{MOST_NODES:,}")
        else:
            return False
        return True

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        self._nodes += 1
        if event.anchor is not None or event.tag is not None:
            self._properties(event)
        text, style = event.value, event.style
        if style == '"' and (hidden := FORBIDDEN.search(text)):
            self._refuse("control-character", event, f"U+{ord(hidden[0]):04X}")
        if self._open and self._open[-1].awaits_key:
            self._key(event, text, not style)
            return
        empty = not style and text in _NULLS
        if empty and not text:
            self._hash(event)
        self._attach(None if empty else text, Spot(_place(event), text))

    def _key(self, event: yaml.ScalarEvent, text: str, plain: bool) -> None:
        parent = self._open[-1]
        parent.key_event = event
        parent.awaits_key = False
        if plain and text == "<<":
            self._refuse("merge-refused", event, text)
        elif plain and text in _NULLS:
            self._refuse("bad-key", event, text)
        elif text in parent.spot.keys:
            first = parent.spot.keys[text][0]
            self._refuse("duplicate-key", event, text, first=str(first))
        else:
            parent.key = text
            parent.spot.keys[text] = _place(event)

    def _begin(self, event: yaml.CollectionStartEvent) -> None:
        self._nodes += 1
        self._properties(event)
        if self._open and self._open[-1].awaits_key:
            self._refuse("bad-key", event)
            self._open[-1].key_event = None
        mapping = isinstance(event, yaml.MappingStartEvent)
        self._open.append(_Open({} if mapping else [], Spot(_place(event))))

    def _drop(self, event: yaml.Event) -> None:
        """Stand in for a refused node, so that its neighbours are still read."""
        self._nodes += 1
        self._attach(None, Spot(_place(event)))

    def _attach(self, value: Any, spot: Spot) -> None:
        if not self._open:
            self.value, self.root = value, spot
            return
        parent = self._open[-1]
        entries = parent.value
        if isinstance(entries, list):
            parent.spot.parts[len(entries)] = spot
            entries.append(value)
        elif parent.awaits_key:
            parent.awaits_key = False  # a list or mapping as a key, refused as it began
        else:
            if parent.key is not None:
                entries[parent.key] = value
                parent.spot.parts[parent.key] = spot
            parent.key, parent.key_event, parent.awaits_key = None, None, True

    def _properties(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent) -> None:
        start = _mark(event.start_mark).index
        if event.anchor is not None:
            self._anchors.add(event.anchor)
            typed = _ANCHOR.search(self._text, start)
            self._refuse("aliases-refused", event, typed[0] if typed else f"&{event.anchor}")
        if event.tag is not None:
            typed = _TAG.match(self._text, start)
            self._refuse("tags-refused", event, typed[1] if typed else str(event.tag))

    def _hash(self, event: yaml.ScalarEvent) -> None:
        """Refuse ``felt: #30``: YAML drops the rest of the line, the writer meant a value."""
        parent = self._open[-1] if self._open else None
        if parent is None or (isinstance(parent.value, dict) and parent.key_event is None):
            return
        if isinstance(parent.value, dict):
            key = cast(yaml.ScalarEvent, parent.key_event)
            before, pattern, lead = _mark(key.end_mark), _HASH_AFTER_KEY, f"{key.value}: "
        else:
            before, pattern, lead = _mark(event.start_mark), _HASH_AFTER_HYPHEN, "- "
        match = pattern.match(self._text, before.index)
        if match:
            words = match[1].rstrip()
            column = before.column + match.start(1) - before.index + 1
            values = {"instead": lead + in_quotes(words)}
            self.problems.append(
                Problem("hash-starts-comment", self.path, before.line + 1, column, self._at(), words, values)
            )

    def _refuse(self, code: str, event: yaml.Event, found: str = "", **values: str) -> None:
        line, column = _place(event)
        self.problems.append(Problem(code, self.path, line, column, self._at(), found, values))

    def _keep_first(self, code: str) -> None:
        """Keep the first problem with a code; it stands for those that follow."""
        first = next(problem for problem in self.problems if problem.code == code)
        self.problems = [problem for problem in self.problems if problem.code != code or problem is first]

    def _at(self) -> str:
        """Return the path of the node that is coming now."""
        steps = []
        for opened in self._open:
            if isinstance(opened.value, list):
                steps.append(f"[{len(opened.value)}]")
            elif opened.key_event is not None:
                steps.append(f".{opened.key_event.value}")
        return "".join(steps).removeprefix(".")


def _mark(mark: Any) -> yaml.Mark:
    """Return a mark of a parsed event; events made by a parser always carry both."""
    return cast(yaml.Mark, mark)


def _place(event: yaml.Event) -> Place:
    mark: Any = event.start_mark
    return mark.line + 1, mark.column + 1
