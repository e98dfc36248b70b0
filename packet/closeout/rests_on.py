"""The rows a job rests on: what each asks, whether it decides, and what to do about it."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import chain
from typing import Literal, get_args

from packet.closeout.model import Closeout
from packet.figure import Figure, FigureSet, Mark, Source
from packet.figures.rules import Limit, Value, code_ids, facts
from packet.reference import CodeRow, Library
from packet.reference.models import Reading, Whose
from packet.reference.vocabulary import Form, Kind, Nail
from packet.reference.when import Facts

Step = Literal["nothing", "confirm", "tell", "read", "superseded", "practice", "in_doubt", "not_here"]

#: Four places rules come from, in the order they are shown.
ORDER: tuple[Whose, ...] = get_args(Whose)

#: The requirement whose nails are laid out in a strip along eaves, ridges and rakes.
NEAR_EDGES = "deck-nail-near-edges-spacing"


@dataclass(frozen=True)
class Rested:
    """One row a job rests on.

    Attributes:
        row: Id of the row, or the record's path for what the maker printed.
        whose: Law, maker, program or practice.
        asks: What it limits.
        kind: At most, at least, one of, present.
        form: Whether it limits numbers, words or nails.
        value: Number in ``unit``, words or nails; None when it was not read, or only has to be there.
        unit: Unit of a number; "" otherwise.
        document: The document whose rule it is; for the maker's number, where that is printed.
        edition: Its edition.
        source: Where it was read: the document itself, or a restatement.
        decides: It may decide here: well enough read, in force, and it surely applies.
        governs: It is the one that decides a result.
        missing: Facts without which it can't be told whether it applies.
        superseded: What took its place; "" when it stands.
        authority: Who adopted it, where an amendment names them; "" otherwise.
        notes: Reason why there is no value, and the plain note.
        reading: The office's own reading, when it lifted the row.
        used_by: Requirements that ask it, and figures it was put into.
        steps: What to do about it, in order.
    """

    row: str
    whose: Whose
    asks: str
    kind: Kind
    form: Form
    value: Value
    unit: str
    document: str
    edition: str
    source: Source
    decides: bool
    governs: bool
    missing: tuple[str, ...]
    superseded: str
    notes: tuple[str, ...]
    reading: Reading | None
    used_by: tuple[str, ...]
    steps: tuple[Step, ...]
    authority: str = ""

    @property
    def mark(self) -> Mark:
        """How well the row was read."""
        return self.source.checked


def rests_on(closeout: Closeout, library: Library) -> tuple[Rested, ...]:
    """Return every row a job rests on, each once, by whose rule and then in the order of the work.

    Args:
        closeout: The job's whole closeout.
        library: Published rules, the office's readings applied.
    """
    found: dict[str, Rested] = {}
    for item in chain(
        _of_results(closeout, library), _of_layout(closeout, library), _of_duties(closeout, library)
    ):
        earlier = found.get(item.row)
        found[item.row] = _both(earlier, item) if earlier else item
    for item in _of_figures(closeout, library):
        # A result has said whether the row decides; a figure only adds where its value went.
        earlier = found.get(item.row)
        found[item.row] = replace(earlier, used_by=(*earlier.used_by, *item.used_by)) if earlier else item
    return tuple(sorted(found.values(), key=lambda item: ORDER.index(item.whose)))


def liftable(item: Rested) -> bool:
    """Return whether the office lifts the row by reading the adopted text itself."""
    return "read" in item.steps


def _of_results(closeout: Closeout, library: Library) -> Iterator[Rested]:
    for result in closeout.results:
        for part in result.parts:
            for limit in part.limits:
                yield _of_limit(limit, part.asks, result.requirement, part.governing == limit.row, library)


def _of_layout(closeout: Closeout, library: Library) -> Iterator[Rested]:
    """Yield the rows that say how wide the strip is in which deck nails are laid out closer.

    No requirement asks the width: nails are measured, the strip is not.
    """
    if not any(
        result.requirement == NEAR_EDGES and result.word != "does_not_apply" for result in closeout.results
    ):
        return
    known = facts(closeout.record, FigureSet(dict(closeout.figures)), library)
    match = library.match(code_ids(closeout.record), "deck.nail.near_edges_width", known)
    for row in match.rows:
        yield _of_row(row, library, (), NEAR_EDGES, governs=False)
    for item in match.cannot_tell:
        yield _of_row(item.row, library, item.missing, NEAR_EDGES, governs=False)


def _of_duties(closeout: Closeout, library: Library) -> Iterator[Rested]:
    """Yield the rows on inspections and certificates that hold here."""
    for duty in closeout.duties:
        for rule in (rule for rule in duty.rules if rule.applies):
            yield _of_row(library.row(rule.row), library, (), duty.id, governs=rule.decides)


def _of_limit(limit: Limit, asks: str, requirement: str, governs: bool, library: Library) -> Rested:
    if limit.whose == "maker":
        return Rested(
            row=limit.row,
            whose=limit.whose,
            asks=asks,
            kind=limit.kind,
            form="number",
            value=limit.value,
            unit="each",
            document=limit.source.document,
            edition="",
            source=limit.source,
            decides=limit.decides,
            governs=governs,
            missing=(),
            superseded="",
            notes=(),
            reading=None,
            used_by=(requirement,),
            steps=("nothing",),
        )
    row = replace(library.row(limit.row), superseded=limit.superseded)
    found = _of_row(row, library, limit.missing, requirement, governs=governs)
    steps: tuple[Step, ...] = found.steps
    if not limit.may_accuse:
        steps = (*_without_nothing(steps), "in_doubt")
    return replace(found, value=limit.value, steps=steps, decides=limit.decides)


def _of_figures(closeout: Closeout, library: Library) -> Iterator[Rested]:
    """Yield the rows whose value was put into a working: takeoff, eaves, vents."""
    known = facts(closeout.record, FigureSet(dict(closeout.figures)), library)
    for figure in closeout.figures.values():
        for id in _rules_in(figure):
            # The limit's own figure, where a value is added to the deck's thickness, is no use of it.
            if figure.id != f"rule.{id}":
                yield _of_figure(library.row(id), figure.id, known, library)


def _of_figure(row: CodeRow, figure: str, known: Facts, library: Library) -> Rested:
    """Return a row by its place in a working; one worked out for comparison alone does not apply."""
    match = library.match([row.code], row.asks, known)
    missing = next((item.missing for item in match.cannot_tell if item.row.id == row.id), ())
    found = _of_row(row, library, missing, figure, governs=False)
    if missing or any(item.id == row.id for item in match.rows):
        return found
    return replace(found, decides=False, steps=("not_here",))


def _rules_in(figure: Figure) -> Iterator[str]:
    terms = figure.working.terms if figure.working else ()
    return (term.origin.ref for term in terms if term.origin.kind == "rule")


def _of_row(
    row: CodeRow, library: Library, missing: tuple[str, ...], used_by: str, *, governs: bool
) -> Rested:
    code = library.code(row.code)
    return Rested(
        row=row.id,
        whose=row.whose,
        asks=row.asks,
        kind=row.kind,
        form=row.form,
        value=row.value,
        unit=row.unit,
        document=code.title,
        edition=code.edition,
        source=library.source(row),
        decides=row.may_decide and not missing,
        governs=governs,
        missing=missing,
        superseded=row.superseded,
        notes=tuple(part for part in (row.reason, row.note) if part),
        reading=row.reading,
        used_by=(used_by,),
        steps=_steps(row, missing),
        authority=row.authority,
    )


def _steps(row: CodeRow, missing: tuple[str, ...]) -> tuple[Step, ...]:
    """Return what to do about a row: what is lacking in the record first, then in the reading."""
    if row.superseded:
        return ("superseded",)
    if row.checked == "common_practice":
        return ("practice",)
    told: tuple[Step, ...] = ("tell",) if missing else ()
    if not row.may_decide:
        return (*told, "read")
    return (*told, "confirm") if row.caution else told or ("nothing",)


def _without_nothing(steps: Iterable[Step]) -> tuple[Step, ...]:
    return tuple(step for step in steps if step != "nothing")


def _both(first: Rested, second: Rested) -> Rested:
    """Return one row met twice: it decides, and governs, if it does so anywhere."""
    return replace(
        first,
        decides=first.decides or second.decides,
        governs=first.governs or second.governs,
        used_by=tuple(dict.fromkeys((*first.used_by, *second.used_by))),
    )


def nails_of(item: Rested) -> tuple[Nail, ...]:
    """Return the nails a row accepts; none when it limits something else."""
    value = item.value if isinstance(item.value, tuple) else ()
    return tuple(nail for nail in value if isinstance(nail, Nail))


def words_of(item: Rested) -> tuple[str, ...]:
    """Return the words a row accepts; none when it limits something else."""
    value = item.value if isinstance(item.value, tuple) else ()
    return tuple(word for word in value if isinstance(word, str))


def number_of(item: Rested) -> Fraction | None:
    """Return the number a row limits; None when it limits something else or was not read."""
    return item.value if isinstance(item.value, Fraction) else None
