"""What is left of a file when its refused parts are taken out, so that the rest can still be held together.

A person mends a record once: what one field says wrongly must not hide what two others say.
"""

import copy
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any, Generic, TypeVar

from pydantic import BaseModel, ValidationError

from packet.yamlread import Document
from packet.yamlread.document import Loc

M = TypeVar("M", bound=BaseModel)

#: Rounds of taking out; a part goes when a part of it went that it can't do without.
_MOST_ROUNDS = 12


@dataclass
class _Rest:
    """A value losing parts; lists remember which of their entries are left."""

    value: Any
    left: dict[tuple[str | int, ...], list[int]] = field(default_factory=dict)

    def take_out(self, steps: Sequence[str | int]) -> None:
        """Take out the part at a path of the value as it is now."""
        holder = self.value
        for step in steps[:-1]:
            holder = holder[step]
        if isinstance(holder, list):
            self.left.setdefault(self.original(steps[:-1]), list(range(len(holder)))).pop(steps[-1])  # type: ignore[arg-type]
        del holder[steps[-1]]

    def original(self, loc: Loc) -> tuple[str | int, ...]:
        """Return the path in the file of a path in what is left."""
        path: tuple[str | int, ...] = ()
        for step in loc:
            entries = self.left.get(path)
            path = (*path, entries[step] if entries is not None and isinstance(step, int) else step)
        return path

    def existing(self, loc: Loc) -> list[str | int]:
        """Return the part of a path that leads somewhere; a union's tag is passed over."""
        steps: list[str | int] = []
        value = self.value
        for step in loc:
            fits = isinstance(value, dict) and step in value
            fits |= isinstance(value, list) and isinstance(step, int) and step < len(value)
            if fits:
                steps.append(step)
                value = value[step]
        return steps


@dataclass(frozen=True)
class Partial(Generic[M]):
    """A model without the parts that were refused.

    Attributes:
        value: What is left.
        ids: Every id that was typed in the file, in refused parts too.
    """

    value: M
    ids: frozenset[str]
    _rest: _Rest = field(repr=False)

    def original(self, loc: Loc) -> tuple[str | int, ...]:
        """Return the path in the file of a path in the value."""
        return self._rest.original(loc)


def partial_model(document: Document, model: type[M]) -> Partial[M] | None:
    """Return a file's model without its refused parts, or None when nothing of it stands alone."""
    rest = _Rest(copy.deepcopy(document.value))
    for _ in range(_MOST_ROUNDS):
        try:
            return Partial(model.model_validate(rest.value), frozenset(_ids(document.value)), rest)
        except ValidationError as error:
            places = {tuple(rest.existing(detail["loc"])) for detail in error.errors(include_url=False)}
        if () in places:
            return None
        # from the back, so that the places of list entries in front stay right; a part inside another follows
        for steps in sorted(places, key=_order, reverse=True):
            if tuple(rest.existing(steps)) == steps:
                rest.take_out(steps)
    return None


def _order(steps: tuple[str | int, ...]) -> tuple[tuple[int, str], ...]:
    return tuple((step, "") if isinstance(step, int) else (-1, step) for step in steps)


def _ids(value: Any) -> set[str]:
    if isinstance(value, dict):
        own = {value["id"]} if isinstance(value.get("id"), str) else set()
        return own.union(*(_ids(part) for part in value.values()))
    if isinstance(value, list):
        return set().union(*(_ids(part) for part in value))
    return set()
