"""Why a rule answers as it does: each fact it looked at, and what it asks of it."""

from collections.abc import Iterator, Mapping
from datetime import date
from fractions import Fraction

from packet.figure import FigureSet
from packet.reference import CodeRow, Library
from packet.reference.when import Bounds, Choice, Facts, RowWhen, When, plain
from packet.review.duties.facts import Known
from packet.review.duties.model import Bound, Reason

#: Units of facts that are numbers.
_UNITS: Mapping[str, str] = {
    "worked_area_sq_ft": "sq_ft",
    "job_share_percent": "percent",
    "year_share_percent": "percent",
    "house_built": "year",
}

#: Facts that are of one roof section.
_OF_SECTION = frozenset({"job_share_percent", "year_share_percent"})

_ENDS = ("at_least", "at_most", "above", "below")


def reasons_of(row: CodeRow, known: Known, library: Library, figures: FigureSet) -> Iterator[Reason]:
    """Yield the known facts that a row looked at, in the order it names them.

    Of several ways, one of which is enough, only those that hold are named; where none does, all are.
    """
    facts = plain(known.values)
    for when in _ways(row.when, facts):
        for fact, condition in when.conditions.items():
            value = facts.get(fact)
            if value is not None:
                yield Reason(
                    fact=fact,
                    figure=known.figures.get(fact, "") if isinstance(value, Fraction) else "",
                    day=value if isinstance(value, date) else None,
                    word=value if isinstance(value, str) else "",
                    subject=known.subject if fact in _OF_SECTION else "",
                    bounds=tuple(_bounds(row, fact, condition, library, figures)),
                )


def _ways(when: When, facts: Facts) -> Iterator[When]:
    yield when
    ways = when.any_of if isinstance(when, RowWhen) else ()
    holding = [way for way in ways if way.judge(facts)[0]]
    yield from holding or ways


def _bounds(
    row: CodeRow,
    fact: str,
    condition: "Bounds[Fraction] | Bounds[date] | Choice[str]",
    library: Library,
    figures: FigureSet,
) -> Iterator[Bound]:
    if isinstance(condition, Choice):
        yield Bound("is", words=(condition.is_,) if condition.is_ else condition.one_of)
        return
    for end in _ENDS:
        value = getattr(condition, end)
        if isinstance(value, date):
            yield Bound(end, day=value)
        elif value is not None:
            id = f"rule.{row.id}.{fact}.{end}"
            if not figures.get(id):
                source = library.source(row)
                figures.measured(id, value, _UNITS[fact], f"rule.{row.id}", sources=[source])
            yield Bound(end, figure=id)
