"""A problem of a record by its place in it, before the file's lines are known."""

from dataclasses import dataclass, field

Loc = tuple[str | int, ...]


@dataclass(frozen=True)
class Fault:
    """A problem by its place in the record, before the file's lines are known."""

    code: str
    loc: Loc
    found: str
    values: dict[str, str] = field(default_factory=dict)
