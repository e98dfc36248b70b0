"""The catalogue as a list: what stands behind each requirement, and what was shown that nobody asked."""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from packet.closeout.model import Closeout
from packet.figure import Source
from packet.record.house import JobHead
from packet.record.job import JobRecord
from packet.reference import Library
from packet.reference.models import RequirementNote, Whose
from packet.review.catalogue import BY_ID, CATALOGUE
from packet.review.model import Requirement


@dataclass(frozen=True)
class Listed:
    """One requirement of the catalogue with what stands behind it.

    Attributes:
        requirement: The requirement.
        note: What its photo has in frame.
        source: Where the need for it was read.
        falls_away: Key of the reason why it does not apply to a record that has nothing yet, by kind of work.
        rows: How many rows of all codes limit each of its questions, by whose they are.
    """

    requirement: Requirement
    note: RequirementNote
    source: Source
    falls_away: Mapping[str, str]
    rows: Mapping[str, Mapping[Whose, int]]


def catalogue(library: Library) -> tuple[Listed, ...]:
    """Return every requirement, by the stage that shows it and then in the order of the work."""
    order = [stage.id for stage in library.stages()]
    notes = library.requirement_notes()
    rows = Counter((row.asks, row.whose) for row in library.all_rows(library.code_ids()))
    found = [
        Listed(
            requirement=requirement,
            note=notes[requirement.id],
            source=library.requirement_source(notes[requirement.id]),
            falls_away=dict(_falls_away(requirement)),
            rows={
                question.asks: {
                    whose: count for (asks, whose), count in rows.items() if asks == question.asks
                }
                for question in requirement.questions
            },
        )
        for requirement in CATALOGUE
    ]
    return tuple(sorted(found, key=lambda item: order.index(item.requirement.shown_at)))


def _falls_away(requirement: Requirement) -> Iterator[tuple[str, str]]:
    """Yield why it does not apply to a bare record of each kind of work that asks or judges it."""
    for kind in sorted(requirement.kinds | requirement.if_answered):
        head: dict[str, Any] = {"kind": kind, "status": "planned"}
        reason = requirement.applies(JobRecord.model_construct(job=JobHead.model_construct(**head)))
        if reason:
            yield kind, reason


def not_asked(closeout: Closeout) -> tuple[str, ...]:
    """Return the requirements that this kind of work is not asked, and that nothing was judged for."""
    judged = {result.requirement for result in closeout.results}
    return tuple(id for id in BY_ID if id not in judged)


def shown_unasked(closeout: Closeout) -> dict[str, tuple[str, ...]]:
    """Return the photos and papers that name a requirement which this job is not asked, by requirement."""
    shown: dict[str, list[str]] = {id: [] for id in not_asked(closeout)}
    named = [(photo.id, photo.proves) for photo in closeout.photos]
    named += [(paper.id, paper.proves) for paper in closeout.record.documents]
    for proof, names in named:
        for name in names:
            if name in shown:
                shown[name].append(proof)
    return {id: tuple(items) for id, items in shown.items() if items}
