"""Requirement by requirement: limits, answer, evidence, result."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from packet.figure import FigureSet
from packet.figures.rules import code_ids, facts, limits
from packet.photos.taken import TakenPhoto
from packet.record.house import Dates
from packet.record.job import JobRecord
from packet.reference import Library
from packet.reference.models import Stage
from packet.review.catalogue import CATALOGUE
from packet.review.compare import fair, governing, word
from packet.review.evidence import Evidence, evidence
from packet.review.model import NEVER_HIDDEN, WORST_FIRST, Part, Question, Requirement, Result
from packet.review.windows import areas_of, areas_worked, is_past

#: Key of the reason why something that only some rules ask does not apply.
NOT_ASKED_HERE = "no_rule_asks_it"


@dataclass(frozen=True)
class _Job:
    """What every requirement is judged with."""

    record: JobRecord
    photos: Sequence[TakenPhoto]
    library: Library
    figures: FigureSet
    codes: tuple[str, ...]
    known: Mapping[str, object]
    stages: tuple[Stage, ...]


def review(
    record: JobRecord, photos: Sequence[TakenPhoto], library: Library, figures: FigureSet
) -> tuple[Result, ...]:
    """Return the results of every requirement this kind of work asks, in the order of the work.

    Args:
        record: The job record.
        photos: Its photos.
        library: Published rules.
        figures: The record's figures; takes the figures of the limits.
    """
    known = facts(record, figures, library)
    job = _Job(record, photos, library, figures, code_ids(record), known, library.stages())
    asked = (item for item in CATALOGUE if record.job.kind in item.kinds | item.if_answered)
    return tuple(result for requirement in asked for result in _results(requirement, job))


def _results(requirement: Requirement, job: _Job) -> list[Result]:
    reason = requirement.applies(job.record)
    if reason:
        asked = job.record.job.kind in requirement.kinds
        return [_does_not_apply(requirement, reason)] if asked else []
    if requirement.stages:
        shown, hidden = requirement.stages(job.record)
        requirement = replace(requirement, shown_at=shown, hidden_by=hidden)
    subjects = requirement.subjects(job.record) if requirement.subjects else ("",)
    results = [_result(requirement, subject, job) for subject in subjects]
    if requirement.if_ruled and not any(_asked_or_answered(result) for result in results):
        return [_does_not_apply(requirement, NOT_ASKED_HERE)]
    if job.record.job.kind in requirement.if_answered:
        return [result for result in results if _told(requirement, result)]
    return results


def _told(requirement: Requirement, result: Result) -> bool:
    """Return whether a value that rules limit was typed, or something was shown: only then is it judged."""
    limited = any(not question.present for question in requirement.questions)
    typed = limited and any(part.answer.value is not None for part in result.parts)
    return typed or bool(result.evidence or result.late or result.papers)


def _asked_or_answered(result: Result) -> bool:
    return any(part.limits or part.answer.value is not None for part in result.parts)


def _does_not_apply(requirement: Requirement, reason: str) -> Result:
    return Result(
        requirement=requirement.id,
        subject="",
        word="does_not_apply",
        parts=(),
        evidence=(),
        late=(),
        due=False,
        open=False,
        shown_at=requirement.shown_at,
        hidden_by=requirement.hidden_by,
        asked_by=requirement.asked_by,
        reason=reason,
    )


def _result(requirement: Requirement, subject: str, job: _Job) -> Result:
    shown = evidence(requirement, subject, job.record, job.photos, job.stages)
    parts = _parts(requirement, job, proven=shown.proves)
    worst = min((part.word for part in parts), key=WORST_FIRST.index)
    names = (f"{requirement.id}:{subject}", requirement.id) if subject else (requirement.id,)
    ways = [number for number, way in enumerate(job.record.ways_out) if way.requirement in names]
    way_out = ways[0] if ways and worst == "differs" else None
    due = _is_due(requirement, subject, job)
    return Result(
        requirement=requirement.id,
        subject=subject,
        word=worst,
        parts=parts,
        evidence=shown.photos,
        late=shown.late,
        due=due,
        open=due and worst in ("differs", "not_recorded") and way_out is None,
        shown_at=requirement.shown_at,
        hidden_by=requirement.hidden_by,
        asked_by=requirement.asked_by,
        reason=next((job.record.not_recorded[name] for name in names if name in job.record.not_recorded), ""),
        why_not_proven=_why_not_proven(requirement, parts, shown) if worst == "not_recorded" else "",
        way_out=way_out,
        papers=shown.papers,
        stated=shown.stated,
        missed=shown.missed,
    )


def _why_not_proven(requirement: Requirement, parts: Sequence[Part], shown: Evidence) -> str:
    if any(part.answer.value is None for part in parts):
        return "no_value"
    if shown.photos and shown.missing_views:
        return f"no_{shown.missing_views[0]}_photo"
    if requirement.papers:
        return "no_paper"
    if shown.late and shown.late == shown.timeless:
        return "photo_without_time"
    if shown.late:
        return "photo_from_another_time"
    return "no_photo_at_all" if requirement.hidden_by == NEVER_HIDDEN else "no_photo"


def _parts(requirement: Requirement, job: _Job, *, proven: bool) -> tuple[Part, ...]:
    """Return the questions of a requirement; one that no rule limits drops out when another is limited."""
    questions = [q for q in requirement.questions if q.when is None or q.when(job.record)]
    parts = [_part(question, job, proven=proven) for question in questions]
    limited = [
        part for part, question in zip(parts, questions, strict=True) if part.limits or question.present
    ]
    return tuple(limited or parts)


def _part(question: Question, job: _Job, *, proven: bool) -> Part:
    answer = question.answer(job.record)
    asked = () if question.present else limits(question.asks, job.codes, job.known, job.library, job.figures)
    printed = question.maker(job.record) if question.maker else None
    if printed:
        asked = (*asked, printed)
    asked = fair(asked, answer)
    governs = governing(asked, answer)
    result = word(answer, asked, present=question.present, proven=proven)
    return Part(question.asks, asked, governs.row if governs else "", answer, result)


def _is_due(requirement: Requirement, subject: str, job: _Job) -> bool:
    """Return whether it should be recorded by now; what nothing hides has time until the job is closed.

    What lies in one area is due when that area was covered, though the rest of the roof still lies open.
    """
    record = job.record
    if requirement.hidden_by == NEVER_HIDDEN:
        return record.job.status == "closed"
    if is_due(requirement.shown_at, record, job.stages):
        return True
    stage = next(stage for stage in job.stages if stage.id == requirement.shown_at)
    areas = areas_of(subject, record) if subject else areas_worked(record)
    return record.job.status == "under way" and is_past(stage, areas)


def is_due(stage_id: str, record: JobRecord, stages: Sequence[Stage]) -> bool:
    """Return whether the job has passed the stage that hides what is shown at ``stage_id``."""
    if record.job.status == "closed":
        return True
    stage = next(stage for stage in stages if stage.id == stage_id)
    days: Dates = record.dates
    return record.job.status == "under way" and bool(stage.latest and getattr(days, stage.latest))
