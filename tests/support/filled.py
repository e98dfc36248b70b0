"""Files with every key filled, each free text with a word of its own, and who may read that word."""

import types
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from packet.fields import Money, Parsed
from packet.readers import READERS

Path = tuple[str | int, ...]
Readers = frozenset[str]
EVERYONE: Readers = frozenset(READERS)
OFFICE: Readers = frozenset({"office"})


@dataclass
class Filler:
    """Fills models with YAML-ready text.

    Attributes:
        fixed: What to write where a value must name something, by the keys of its path (``basis.code``).
        readers_of: Who may read each canary, worked out from the fields' declarations alone.
        ids: How many ids were given.
    """

    fixed: Mapping[str, Any]
    readers_of: dict[str, Readers] = field(default_factory=dict)
    ids: int = 0

    def canary(self, readers: Readers) -> str:
        word = f"canary{len(self.readers_of):04}bird"
        self.readers_of[word] = readers
        return word

    def money(self, readers: Readers) -> str:
        amount = f"USD 77{len(self.readers_of):04}.13"
        self.readers_of[amount] = readers
        return amount

    def model(
        self, model: type[BaseModel], path: Path, readers: Readers, own: Readers | None
    ) -> dict[str, Any]:
        """Return a filled mapping; ``own`` are the readers the entry names itself."""
        seen_by = readers if own is None else readers & own
        filled = {"readers": sorted(own)} if own is not None else {}
        for name, info in model.model_fields.items():
            value = self._field(info, (*path, name), seen_by & declared(info)) if name != "readers" else None
            if value is not None:
                filled[name] = value
        return filled

    def _field(self, info: FieldInfo, path: Path, readers: Readers) -> Any:
        given = self.fixed.get(".".join(step for step in path if isinstance(step, str)))
        if given is not None:
            return given(self, path, readers) if callable(given) else given
        kind, marks = bare(info.annotation, tuple(info.metadata))
        return self._value(kind, marks, info, path, readers)

    def _value(self, kind: Any, marks: tuple[Any, ...], info: FieldInfo, path: Path, readers: Readers) -> Any:
        members = list(models(kind))
        if members:
            return self.model(members[0], path, readers, None)
        if get_origin(kind) is tuple:
            return self._entries(get_args(kind), info, path, readers)
        if get_origin(kind) is Literal:
            return get_args(kind)[0]
        if kind is Money:
            return self.money(readers)
        if path[-1] == "id":
            self.ids += 1
            return f"ID-{self.ids}"
        if any(getattr(mark, "pattern", None) for mark in marks):
            return None  # a digest; left out
        if kind is str and not any(isinstance(mark, Parsed) for mark in marks):
            return self.canary(readers)
        own = [mark.examples[0] for mark in marks if isinstance(mark, Parsed)]
        return str(((info.examples or []) + own + ["2026-03-16"])[0])

    def _entries(self, args: tuple[Any, ...], info: FieldInfo, path: Path, readers: Readers) -> list[Any]:
        """Return the entries of a list: one of each shape, and one for each circle of readers."""
        made: list[Any] = []
        for model in models(args[0]):
            for own in (EVERYONE, OFFICE) if "readers" in model.model_fields else (None,):
                made.append(self.model(model, (*path, len(made)), readers, own))
        if not made:
            kind, marks = bare(args[0], ())
            without = FieldInfo(annotation=kind)
            for _ in args if args[-1] is not Ellipsis else (0, 1):
                made.append(self._value(kind, marks, without, (*path, len(made)), readers))
        return made


Given = Callable[[Filler, Path, Readers], Any]


def declared(info: FieldInfo) -> Readers:
    """Return who may read a field: whom it declares, else the office alone."""
    extra = info.json_schema_extra
    given = extra.get("readers") if isinstance(extra, dict) else None
    return frozenset(str(reader) for reader in given) if isinstance(given, list) else OFFICE


def bare(kind: Any, marks: tuple[Any, ...]) -> tuple[Any, tuple[Any, ...]]:
    """Return the type behind an optional and its annotations, and those annotations."""
    while get_origin(kind) in (Annotated, Union, types.UnionType):
        if len(list(models(kind))) > 1:
            break
        if get_origin(kind) is Annotated:
            kind, *more = get_args(kind)
            marks = (*marks, *more)
        else:
            kind = next(member for member in get_args(kind) if member is not type(None))
    return kind, marks


def models(kind: Any) -> Iterator[type[BaseModel]]:
    """Yield the models that a type stands for."""
    if get_origin(kind) is Annotated:
        yield from models(get_args(kind)[0])
    elif get_origin(kind) in (Union, types.UnionType):
        for member in get_args(kind):
            yield from models(member)
    elif isinstance(kind, type) and issubclass(kind, BaseModel):
        yield kind
