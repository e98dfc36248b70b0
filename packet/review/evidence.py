"""What proves a requirement: papers, and photos of its stage from before its layer was covered.

Whether it was covered is asked of the work area a photo shows, never of the job as a whole.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from packet.photos.taken import TakenPhoto
from packet.record.job import JobRecord
from packet.reference.models import Stage
from packet.review.model import NEVER_HIDDEN, Missed, Requirement, View
from packet.review.windows import Span, areas_of, areas_shown, missed

#: The first stage that shows new work.
FIRST_OF_THE_WORK = "deck"


@dataclass(frozen=True)
class Evidence:
    """What stands behind one result.

    Attributes:
        photos: Ids of the photos that prove it.
        late: Ids of those that name it but were taken too early or too late.
        stated: Ids of ``photos`` whose time rests on what somebody said.
        papers: Ids of the documents that prove it.
        timeless: Ids of those of ``late`` that are of the right stage and whose time nobody knows.
        missing_views: Views that are wanted and not among ``photos``.
        missed: What those of ``late`` missed that are of the right stage and have a time.
    """

    photos: tuple[str, ...] = ()
    late: tuple[str, ...] = ()
    stated: tuple[str, ...] = ()
    papers: tuple[str, ...] = ()
    timeless: tuple[str, ...] = ()
    missing_views: tuple[View, ...] = ()
    missed: tuple[Missed, ...] = ()

    @property
    def proves(self) -> bool:
        """Whether it is proven: a paper does, or photos with every view that is wanted."""
        return bool(self.papers or (self.photos and not self.missing_views))


def evidence(
    requirement: Requirement,
    subject: str,
    record: JobRecord,
    photos: Sequence[TakenPhoto],
    stages: Sequence[Stage],
) -> Evidence:
    """Return what proves a requirement for one subject.

    Args:
        requirement: The requirement, with the stages that hold for this record.
        subject: Sheet, board, detail or plane; "" for the whole job.
        record: The job record.
        photos: Its photos.
        stages: Stages in the order of the work.
    """
    order = [stage.id for stage in stages]
    first = order.index(requirement.shown_at)
    hidden_by = requirement.hidden_by
    last = len(order) if hidden_by == NEVER_HIDDEN else order.index(hidden_by)
    proof: list[TakenPhoto] = []
    late: list[str] = []
    timeless: list[str] = []
    misses: list[Missed] = []
    for photo in photos:
        if not _names(photo, requirement, subject):
            continue
        place = order.index(photo.entry.stage)
        in_stage = first <= place < last
        taken = photo.span(record.property.time_zone)
        miss = _missed(photo, stages[place], subject, record, taken) if taken and in_stage else None
        if taken and in_stage and miss is None:
            proof.append(photo)
        elif not subject or requirement.by_plane or min(first, place) >= order.index(FIRST_OF_THE_WORK):
            # before that a sheet or a detail is shown as it was found: that is no late proof
            late.append(photo.entry.id)
            misses += [miss] if miss else []
            timeless += [photo.entry.id] if in_stage and taken is None else []
    seen = {photo.entry.view for photo in proof}
    return Evidence(
        photos=tuple(photo.entry.id for photo in proof),
        late=tuple(late),
        timeless=tuple(timeless),
        missed=tuple(misses),
        stated=tuple(photo.entry.id for photo in proof if photo.is_stated(record.property.time_zone)),
        papers=_papers(requirement, subject, record) if requirement.papers else (),
        missing_views=tuple(view for view in requirement.views if view not in seen),
    )


def _names(photo: TakenPhoto, requirement: Requirement, subject: str) -> bool:
    """Return whether a photo was logged for this: by the requirement's id, or by the sheet's or detail's."""
    if requirement.by_plane:
        return requirement.id in photo.entry.proves and photo.entry.plane == subject
    return (subject or requirement.id) in photo.entry.proves


def _missed(photo: TakenPhoto, stage: Stage, subject: str, record: JobRecord, taken: Span) -> Missed | None:
    """Return what a photo missed in the area it shows, or in the one where the subject lies."""
    miss = missed(stage, areas_shown(photo, record), record, photo, taken)
    lies_in = areas_of(subject, record) if subject else ()
    return miss or (missed(stage, lies_in, record, photo, taken) if lies_in else None)


def _papers(requirement: Requirement, subject: str, record: JobRecord) -> tuple[str, ...]:
    return tuple(paper.id for paper in record.documents if (subject or requirement.id) in paper.proves)
