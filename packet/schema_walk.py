"""A path of pydantic → the models, fields and words that are accepted there."""

import types
from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

Loc = Sequence[str | int]


def keys_at(model: type[BaseModel], loc: Loc) -> tuple[str, ...]:
    """Return the keys that the model accepts at a path, in the order of its fields."""
    names = (name for kind in _kinds_at(model, loc) if _is_model(kind) for name in _fields(kind))
    return tuple(dict.fromkeys(names))


def field_at(model: type[BaseModel], loc: Loc) -> FieldInfo | None:
    """Return the field that a path ends at, or None when it ends at an entry of a list or at no field."""
    if not loc:
        return None
    for kind in _kinds_at(model, loc[:-1]):
        if _is_model(kind) and loc[-1] in _fields(kind):
            return _fields(kind)[str(loc[-1])]
    return None


def literals_at(model: type[BaseModel], loc: Loc) -> tuple[str, ...]:
    """Return the words that are accepted at a path, when only certain words are."""
    literals = (
        word for kind in _kinds_at(model, loc) if get_origin(kind) is Literal for word in get_args(kind)
    )
    return tuple(dict.fromkeys(str(word) for word in literals))


def _kinds_at(model: type[BaseModel], loc: Loc) -> tuple[Any, ...]:
    """Return every type that may stand at a path; a step that leads nowhere is passed over."""
    kinds = tuple(_members(model))
    for step in loc:
        below = tuple(member for kind in kinds for member in _below(kind, step))
        kinds = below or kinds
    return kinds


def _below(kind: Any, step: str | int) -> Iterator[Any]:
    origin, args = get_origin(kind), get_args(kind)
    if _is_model(kind):
        fields = _fields(kind)
        if step in fields:
            yield from _members(fields[str(step)].annotation)
        elif any(step in _literal(field.annotation) for field in fields.values()):
            yield kind  # the step is a union's tag, and this is the member that carries it
    elif origin is tuple and isinstance(step, int):
        variadic = len(args) == 2 and args[1] is Ellipsis
        yield from _members(args[0] if variadic else args[min(step, len(args) - 1)])
    elif isinstance(origin, type) and issubclass(origin, Mapping):
        yield from _members(args[1])
    elif (
        isinstance(origin, type) and issubclass(origin, Sequence | set | frozenset) and isinstance(step, int)
    ):
        yield from _members(args[0])


def _members(annotation: Any) -> Iterator[Any]:
    """Return the types behind annotations, aliases and unions."""
    origin = get_origin(annotation)
    if origin is Annotated:
        yield from _members(get_args(annotation)[0])
    elif origin in (Union, types.UnionType):
        for member in get_args(annotation):
            yield from _members(member)
    elif hasattr(annotation, "__value__"):
        yield from _members(annotation.__value__)
    elif annotation is not type(None):
        yield annotation


def _literal(annotation: Any) -> tuple[Any, ...]:
    return get_args(annotation) if get_origin(annotation) is Literal else ()


def _is_model(kind: Any) -> bool:
    return isinstance(kind, type) and issubclass(kind, BaseModel)


def _fields(kind: type[BaseModel]) -> dict[str, FieldInfo]:
    return {info.alias or name: info for name, info in kind.model_fields.items()}
