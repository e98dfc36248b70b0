"""Lookups that tests of published rules share: exactly one row, or exactly one of which it can't be told."""

from packet.figure import Mark
from packet.reference import CodeRow, Library
from packet.reference.vocabulary import Nail


def one(library: Library, code: str, asks: str, **facts: object) -> CodeRow:
    """Return the one row that applies."""
    rows = library.rows([code], asks, facts)
    assert len(rows) == 1, [row.id for row in rows]
    return rows[0]


def applies(library: Library, code: str, asks: str, **facts: object) -> bool | None:
    """Return whether a thing is asked: True, False, or None when it can't be told."""
    match = library.match([code], asks, facts)
    return True if match.rows else None if match.cannot_tell else False


def nails(row: CodeRow) -> set[tuple[float, float, str]]:
    """Return the nails of a row as length, shank and kind."""
    found = row.value if isinstance(row.value, tuple) else ()
    return {
        (float(nail.length_in), float(nail.shank_in), nail.shank) for nail in found if isinstance(nail, Nail)
    }


def told(row: CodeRow) -> tuple[object, Mark, bool]:
    """Return what a row says, its mark, and whether it decides."""
    return row.value, row.checked, row.may_decide
