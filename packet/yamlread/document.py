"""A read YAML file: its value, and where each part of it stands."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

#: Lists and mappings inside one another; a record needs about eight.
MOST_DEEP = 40

#: Line and column of a part [1-based, characters].
Place = tuple[int, int]

#: A path into the value: keys and list positions from 0.
Loc = Sequence[str | int]


class Spot:
    """Where one part of a file stands, beside the value itself.

    Attributes:
        place: Line and column of its first character.
        text: A scalar's words as typed, without quotation marks; empty for a list or a mapping.
        parts: Spots of its entries, by key or by position.
        keys: Places of a mapping's keys.
    """

    __slots__ = ("keys", "parts", "place", "text")

    def __init__(self, place: Place, text: str | None = None) -> None:
        """Make the spot of a scalar from its words, else that of a list or mapping, to be filled."""
        self.place = place
        self.text = text or ""
        self.parts: dict[str | int, Spot] = {} if text is None else _NO_PARTS
        self.keys: dict[str | int, Place] = {} if text is None else _NO_KEYS


#: What scalars share, which are most of a file; nothing is ever put in.
_NO_PARTS: dict[str | int, Spot] = {}
_NO_KEYS: dict[str | int, Place] = {}


@dataclass(frozen=True)
class Document:
    """A file's value with the place of every part.

    Attributes:
        path: The file.
        value: Dicts, lists, text and None; a scalar is always text, an empty one or ``null`` is None.
    """

    path: Path
    value: Any
    root: Spot = field(repr=False, compare=False)

    def resolve(self, loc: Loc) -> tuple[str | int, ...]:
        """Return the part of a path that exists in the file.

        A step that does not exist is passed over: pydantic puts a union's tag into its paths.
        """
        return tuple(step for step, _, _ in self._walk(loc))

    def place(self, loc: Loc, *, key: bool = False) -> Place:
        """Return line and column of a value, or of its nearest existing ancestor.

        Args:
            loc: Path to the value.
            key: Return the place of the value's key instead; an entry of a list starts at its own place.
        """
        found = self.root.place
        for _, spot, key_place in self._walk(loc):
            found = key_place if key else spot.place
        return found

    def words(self, loc: Loc) -> str:
        """Return a scalar's words as typed, without quotation marks; empty when the path leads to none."""
        steps = list(self._walk(loc))
        return steps[-1][1].text if steps and len(steps) == len(loc) else ""

    def at(self, loc: Loc) -> Any:
        """Return the value at the existing part of a path."""
        value = self.value
        for step in self.resolve(loc):
            value = value[step]
        return value

    def _walk(self, loc: Loc) -> Iterator[tuple[str | int, Spot, Place]]:
        spot = self.root
        for step in loc:
            below = spot.parts.get(step)
            if below is not None:
                yield step, below, spot.keys.get(step, below.place)
                spot = below
