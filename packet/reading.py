"""A YAML file read into its model: the value, where its parts stand, and its digest."""

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import lru_cache
from hashlib import sha256
from pathlib import Path
from typing import Generic, TypeVar

from pydantic import BaseModel, ValidationError

from packet.located import from_validation, locate
from packet.partial import partial_model
from packet.problems import Problem, Refused, path_text
from packet.yamlread import Document, parse_yaml, read_bytes
from packet.yamlread.document import Loc

M = TypeVar("M", bound=BaseModel)

#: Parsed files kept in one process, the shared ones and those of a job; a file is parsed again only when its
#: bytes differ.
_MOST_KEPT = 256


@dataclass(frozen=True)
class ReadFile(Generic[M]):
    """A file with its parsed value, where its parts stand, and its digest.

    Attributes:
        original: Path in the file of a path in the value; they differ where refused entries were left out.
        ids_typed: Of a file with refused parts, every id in it; empty when nothing was refused.
    """

    path: Path
    value: M
    document: Document = field(repr=False)
    digest: str
    original: Callable[[Loc], tuple[str | int, ...]] = field(default=tuple, repr=False, compare=False)
    ids_typed: frozenset[str] = frozenset()

    def problem(self, code: str, loc: tuple[str | int, ...], found: str = "", **values: str) -> Problem:
        """Return a problem at a place of this file."""
        return locate(self.document, code, self.original(loc), found, values)

    def problem_of_key(self, code: str, loc: tuple[str | int, ...], **values: str) -> Problem:
        """Return a problem of a key itself, at the key."""
        loc = self.original(loc)
        line, column = self.document.place(loc, key=True)
        return Problem(code, self.path, line, column, path_text(loc), str(loc[-1]), values)


def read_model(path: Path, model: type[M], *, under: str = "") -> ReadFile[M]:
    """Return a file validated against its model.

    Args:
        path: The file.
        model: Strict model of the file.
        under: Key to put a file's bare mapping under, so that its ids are values of a model's field.

    Raises:
        Refused: The file can't be read, or does not fit the model.
    """
    data = read_bytes(path)
    return _read(path, data, sha256(data).hexdigest(), model, under)


def read_what_holds(path: Path, model: type[M]) -> tuple[ReadFile[M] | None, tuple[Problem, ...]]:
    """Return a file without its refused parts, and the problems of those.

    What is left can be held against other parts and files, so that all problems show at once. A name that a
    refused part carries is not unknown: ``ids_typed`` holds every id typed in the file.
    """
    try:
        return read_model(path, model), ()
    except Refused as refused:
        problems = refused.problems
    try:
        data = read_bytes(path)
        document = parse_yaml(data, path)
    except Refused:
        return None, problems
    left = partial_model(document, model)
    if left is None:
        return None, problems
    digest = sha256(data).hexdigest()
    return ReadFile(path, left.value, document, digest, left.original, left.ids), problems


@lru_cache(maxsize=_MOST_KEPT)
def _read(path: Path, data: bytes, digest: str, model: type[M], under: str) -> ReadFile[M]:
    document = parse_yaml(data, path)
    body = {under: document.value} if under else document.value
    try:
        value = model.model_validate(body)
    except ValidationError as error:
        raise Refused(from_validation(error, document, model)) from None
    return ReadFile(path, value, document, digest)
