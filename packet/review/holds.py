"""Hold points: what has to be shown before the next layer goes on, in the order of the work."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from packet.record.job import JobRecord
from packet.reference.models import RequirementNote, Stage
from packet.review.catalogue import BY_ID
from packet.review.judge import NOT_ASKED_HERE, is_due
from packet.review.model import NEVER_HIDDEN, Result, View

State = Literal["met", "waiting", "missed"]

#: What comes after the last stage: the job is closed.
CLOSING = "closing"


@dataclass(frozen=True)
class HoldItem:
    """One thing to measure or photograph.

    Attributes:
        requirement: Id in the catalogue; its title and what to photograph are words under that id.
        subject: Sheet, board, detail or plane; "" for the whole job.
        shown_at: Stage that shows it.
        hidden_by: Stage that hides it, or ``nothing``.
        views: Views that are both wanted.
        in_frame: What the picture should have in it.
        only_if: "" or the key of the reason why it does not apply as the record stands; that may change.
        state: Met, waiting, or missed: hidden before it was shown.
        lacks_value: The record has no answer yet.
    """

    requirement: str
    subject: str
    shown_at: str
    hidden_by: str
    views: tuple[View, ...] = ()
    in_frame: tuple[str, ...] = ()
    only_if: str = ""
    state: State = "waiting"
    lacks_value: bool = False


@dataclass(frozen=True)
class HoldPoint:
    """The stage that may not begin before its items are shown.

    Attributes:
        before: Stage that may not begin; ``closing`` for what has time until the job is closed.
        items: What is to be shown, in the order of the catalogue.
    """

    before: str
    items: tuple[HoldItem, ...]

    @property
    def unmet(self) -> tuple[HoldItem, ...]:
        """Items that wait to be shown and are asked as the record stands."""
        return tuple(item for item in self.items if item.state == "waiting" and not item.only_if)


def hold_points(
    record: JobRecord,
    results: Sequence[Result],
    stages: Sequence[Stage],
    notes: Mapping[str, RequirementNote],
) -> tuple[HoldPoint, ...]:
    """Return the hold points of a job in the order of the work.

    Args:
        record: The job record.
        results: Its results.
        stages: Stages in the order of the work.
        notes: What each photo has in frame, by requirement.
    """
    places = {id: place for place, id in enumerate(BY_ID)}
    items = [_item(result, record, stages, notes) for result in results if _belongs(result, record, stages)]
    order = [stage.id for stage in stages]
    found: dict[str, list[HoldItem]] = {id: [] for id in (*order, CLOSING)}
    for item in sorted(items, key=lambda item: places[item.requirement]):
        found[_held_before(item, record, stages)].append(item)
    return tuple(HoldPoint(before, tuple(of)) for before, of in found.items() if of)


def _held_before(item: HoldItem, record: JobRecord, stages: Sequence[Stage]) -> str:
    """Return the stage that waits for an item; what nothing hides waits for the closing.

    What a house shows before the work is best taken then, though nothing hides it later.
    """
    if item.hidden_by != NEVER_HIDDEN:
        return item.hidden_by
    first, second = (stage.id for stage in stages[:2])
    return second if item.shown_at == first and not is_due(first, record, stages) else CLOSING


def next_hold(points: Sequence[HoldPoint]) -> HoldPoint | None:
    """Return the first hold point with something that waits to be shown."""
    return next((point for point in points if point.unmet), None)


def _belongs(result: Result, record: JobRecord, stages: Sequence[Stage]) -> bool:
    """Return whether a result is a thing to show, or may become one while its layer still lies open."""
    if result.word != "does_not_apply":
        return True
    if result.reason == NOT_ASKED_HERE:
        return False
    asked = record.job.kind in BY_ID[result.requirement].kinds
    return asked and record.job.status != "closed" and not is_due(result.shown_at, record, stages)


def _item(
    result: Result, record: JobRecord, stages: Sequence[Stage], notes: Mapping[str, RequirementNote]
) -> HoldItem:
    requirement = BY_ID[result.requirement]
    return HoldItem(
        requirement=result.requirement,
        subject=result.subject,
        shown_at=result.shown_at,
        hidden_by=result.hidden_by,
        views=requirement.views,
        in_frame=notes[result.requirement].in_frame,
        only_if=result.reason if result.word == "does_not_apply" else "",
        state=_state(result),
        lacks_value=any(part.answer.value is None for part in result.parts),
    )


def _state(result: Result) -> State:
    if result.word in ("meets", "not_verified") or (result.word == "differs" and _shown(result)):
        return "met"
    return "missed" if result.due else "waiting"


def _shown(result: Result) -> bool:
    return bool(result.evidence or result.papers)
