"""Local amendments: rows that add to an edition, tighten it or, where their authority is named, loosen it.

A row that is no looser holds beside the edition's own, and the tighter one governs. A row that asks less
takes the place of the edition's wherever it applies, and a row that is dropped decides nothing any more; both
have to say who adopted that, so that no edition is loosened in silence.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

from packet.problems import Problem, nearest
from packet.reading import ReadFile
from packet.reference.match import CodeRow, InPlace
from packet.reference.models import CodeFile
from packet.reference.vocabulary import Kind, Nail
from packet.units import fraction_text

Codes = Mapping[str, tuple[CodeFile, tuple[CodeRow, ...]]]


def loosens(row: CodeRow, edition: CodeRow) -> bool:
    """Return whether a row surely asks less than one of the edition, somewhere both may apply.

    Rows that can't be compared are kept side by side: then nothing is loosened.
    """
    if row.asks != edition.asks or row.kind != edition.kind or row.added_to != edition.added_to:
        return False
    if row.value is None or edition.value is None or edition.superseded or row.when.apart(edition.when):
        return False
    return _ASKS_LESS[row.kind](row.value, edition.value)


def _accepts_more(here: Sequence[Any], there: Sequence[Any]) -> bool:
    """Return whether a list accepts something that another does not."""
    return not all(_accepted(item, there) for item in here)


def _accepted(item: str | Nail, accepted: Sequence[Any]) -> bool:
    if isinstance(item, Nail):
        return any(
            item.shank == nail.shank and item.length_in >= nail.length_in and item.shank_in >= nail.shank_in
            for nail in accepted
        )
    return _plain(item) in map(_plain, accepted)


def _plain(words: str) -> str:
    return " ".join(words.split()).casefold()


_ASKS_LESS: Mapping[Kind, Callable[[Any, Any], bool]] = {
    "at_most": lambda here, there: here > there,
    "at_least": lambda here, there: here < there,
    "one_of": _accepts_more,
    "present": lambda here, there: False,
}


def chain(code: str, amends: Callable[[str], str | None]) -> tuple[str, ...]:
    """Return the codes that a code amends, the nearest first; one that comes round to itself ends with it."""
    found: list[str] = []
    while (below := amends(found[-1] if found else code)) is not None:
        if below in found:
            break
        found.append(below)
        if below == code:
            break
    return tuple(found)


def amended(codes: Codes) -> tuple[CodeRow, ...]:
    """Return the rows of codes: those an amendment drops superseded, those it loosens with what does so.

    Args:
        codes: Codes and every code they amend, by id.
    """
    says: dict[str, str] = {}
    changes: dict[str, list[InPlace]] = {}
    for id, (code, rows) in codes.items():
        below = chain(id, lambda id: codes[id][0].amends)
        for name, dropped in code.drops.items():
            says[name] = _words(code, dropped.locator, dropped.authority or "")
        for row in (row for row in rows if row.adopted_by):
            for edition in (item for name in below for item in codes[name][1] if loosens(row, item)):
                words = _words(code, row.locator, row.adopted_by)
                changes.setdefault(edition.id, []).append(InPlace(row.id, words))
    return tuple(
        replace(
            row,
            superseded=row.superseded or says.get(row.id, ""),
            amended_by=tuple(changes.get(row.id, ())),
        )
        if row.id in says or row.id in changes
        else row
        for _, rows in codes.values()
        for row in rows
    )


def _words(code: CodeFile, locator: str, authority: str) -> str:
    """Return whose amendment it is, and where it stands."""
    return ", ".join(filter(None, (code.title, code.edition, locator, authority)))


def amendment_problems(
    id: str, codes: Mapping[str, tuple[ReadFile[Any], tuple[CodeRow, ...]]]
) -> Iterator[Problem]:
    """Return what is wrong with an amendment beside the edition it amends.

    Args:
        id: Id of the amendment.
        codes: Its file and rows, then those of the codes it amends, the nearest first.
    """
    read, rows = codes[id]
    code: CodeFile = read.value
    files = {name: file.value for name, (file, _) in codes.items()}
    round_ = chain(id, lambda name: files[name].amends if files[name].amends in files else None)
    if id in round_:
        # One problem for all of them, at the first by name.
        if id == min(round_):
            yield read.problem("amendment-round", ("amends",), round_[0])
        return
    editions = {row.id: row for name, (_, rows) in codes.items() if name != id for row in rows}
    other = next((file for file in files.values() if file.whose != code.whose), None)
    if other is not None:
        yield read.problem(
            "amendment-whose", ("whose",), code.whose, accepted=other.whose, amended=other.code
        )
    for row in rows:
        loosened = next((item for item in editions.values() if loosens(row, item)), None)
        if loosened and not row.adopted_by:
            words = {"row": loosened.id, "asked": _asked(loosened)}
            yield read.problem("amendment-loosens", ("rows", row.id, "value"), value_text(row), **words)
    for name, dropped in code.drops.items():
        if name not in editions:
            near = nearest(name, editions) or ""
            yield read.problem_of_key("unknown-row", ("drops", name), nearest=near)
        elif dropped.authority is None:
            yield read.problem_of_key("amendment-drops", ("drops", name), asked=_asked(editions[name]))


def _asked(row: CodeRow) -> str:
    """Return what a row asks with the words of its file: at_most 6 in."""
    return " ".join(filter(None, (row.kind, value_text(row), row.unit)))


def value_text(row: CodeRow) -> str:
    """Return the value of a row as it is typed: a number, words, or nails by length and shank."""
    if isinstance(row.value, Fraction):
        return fraction_text(row.value)
    return "; ".join(
        f"{fraction_text(item.length_in)} x {fraction_text(item.shank_in)} in {item.shank}"
        if isinstance(item, Nail)
        else item
        for item in row.value or ()
    )
