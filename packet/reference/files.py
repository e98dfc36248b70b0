"""Reading one file of ``shared/``: bytes, digest, strict model, problems with their place."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from hashlib import sha256
from pathlib import Path
from typing import Any, TypeVar

from pydantic import ValidationError

from packet.fields import Strict
from packet.located import from_validation, locate
from packet.problems import Problem, Refused, path_text
from packet.yamlread import Document, parse_yaml, read_yaml

M = TypeVar("M", bound=Strict)

#: Parsed files kept in one process; a file is parsed again only when its bytes differ.
_MOST_KEPT = 512


@dataclass(frozen=True)
class ReadFile:
    """A file with its parsed value, where its parts stand, and its digest."""

    path: Path
    value: Any
    document: Document = field(repr=False)
    digest: str

    def problem(self, code: str, loc: tuple[str | int, ...], found: str = "", **values: str) -> Problem:
        """Return a problem at a value of this file."""
        return locate(self.document, code, loc, found, values)

    def problem_of_key(self, code: str, loc: tuple[str | int, ...], **values: str) -> Problem:
        """Return a problem of a key itself, at the key."""
        line, column = self.document.place(loc, key=True)
        return Problem(code, self.path, line, column, path_text(loc), str(loc[-1]), values)


def read_model(path: Path, model: type[M], *, under: str = "") -> ReadFile:
    """Return a file validated against its model.

    Args:
        path: The file.
        model: Strict model of the file.
        under: Key to put a file's bare mapping under, so that its ids are values of a model's field.

    Raises:
        Refused: The file can't be read, or does not fit the model.
    """
    if not path.is_file():
        read_yaml(path)  # raises, naming why
    data = path.read_bytes()
    return _read(path, data, sha256(data).hexdigest(), model, under)


@lru_cache(maxsize=_MOST_KEPT)
def _read(path: Path, data: bytes, digest: str, model: type[M], under: str) -> ReadFile:
    document = parse_yaml(data, path)
    body = {under: document.value} if under else document.value
    try:
        value = model.model_validate(body)
    except ValidationError as error:
        raise Refused(from_validation(error, document, model)) from None
    return ReadFile(path, value, document, digest)


def yaml_files(folder: Path) -> tuple[Path, ...]:
    """Return the YAML files of a folder in order of name; none when there is no such folder."""
    return tuple(sorted(path for path in folder.glob("*.yaml") if path.is_file()))


def misnamed(folder: Path) -> Iterator[Problem]:
    """Return a problem for each file that ends in ``.yml`` and would be passed over in silence."""
    for path in sorted(folder.glob("*.yml")):
        yield Problem("wrong-suffix", path, found=path.name, values={"accepted": f"{path.stem}.yaml"})
