"""One optional value after another taken out of a record, as if nobody had written it down."""

from collections.abc import Iterator
from typing import Any

from pydantic import BaseModel


def removals(record: BaseModel) -> Iterator[tuple[str, Any]]:
    """Yield the place of every value that may be left out and is there, and the record without it.

    An entry of a list is named by its id where it has one, else by its place from 0. Values that a record has
    to have are not taken out: such a record would be refused.
    """
    yield from _of_model(record, "")


def _of_model(model: BaseModel, path: str) -> Iterator[tuple[str, Any]]:
    for name, info in type(model).model_fields.items():
        value = getattr(model, name)
        at = f"{path}.{name}" if path else name
        if not info.is_required() and value != info.get_default(call_default_factory=True):
            yield at, model.model_copy(update={name: info.get_default(call_default_factory=True)})
        for below, changed in _of_value(value, at):
            yield below, model.model_copy(update={name: changed})


def _of_value(value: Any, path: str) -> Iterator[tuple[str, Any]]:
    if isinstance(value, BaseModel):
        yield from _of_model(value, path)
    elif isinstance(value, dict):
        for key in value:
            yield f"{path}.{key}", {other: item for other, item in value.items() if other != key}
    elif isinstance(value, tuple) and value and isinstance(value[0], BaseModel):
        for n, entry in enumerate(value):
            at = f"{path}.{getattr(entry, 'id', n)}"
            yield at, (*value[:n], *value[n + 1 :])
            for below, changed in _of_model(entry, at):
                yield below, (*value[:n], changed, *value[n + 1 :])
