"""The finished roof: air, planes, underside, clean-up, and the papers that end a job."""

from packet.record.job import JobRecord
from packet.review.answers import (
    attic_to_vents,
    final_passed,
    kept_where,
    listed,
    measured_paid,
    papers_of,
    swept,
)
from packet.review.applies import always, when_left, when_permit, when_vents, worked_planes
from packet.review.catalogue.who import ADJUSTER, HOMEOWNER, INSPECTOR, MORE_THAN_A_PATCH, OFFICE, PATCH
from packet.review.model import NEVER_HIDDEN, Question, Requirement


def _worked(record: JobRecord) -> str:
    return "" if worked_planes(record) else "nothing_covered"


FINISH: tuple[Requirement, ...] = (
    Requirement(
        id="attic-ventilation",
        questions=(Question("ventilation.ratio", attic_to_vents),),
        shown_at="deck",
        hidden_by=NEVER_HIDDEN,
        asked_by=(INSPECTOR, HOMEOWNER),
        applies=when_vents,
        kinds=MORE_THAN_A_PATCH,
    ),
    Requirement(
        id="finished-planes",
        questions=(Question("finished.plane", listed, present=True),),
        shown_at="done",
        hidden_by=NEVER_HIDDEN,
        asked_by=(ADJUSTER, HOMEOWNER),
        applies=_worked,
        kinds=MORE_THAN_A_PATCH,
        subjects=worked_planes,
        by_plane=True,
    ),
    Requirement(
        id="underside",
        questions=(Question("finished.underside", listed, present=True),),
        shown_at="covering",
        hidden_by=NEVER_HIDDEN,
        asked_by=(INSPECTOR, OFFICE),
        applies=always,
    ),
    Requirement(
        id="clean-up",
        questions=(Question("finished.clean", swept, present=True),),
        shown_at="done",
        hidden_by=NEVER_HIDDEN,
        asked_by=(HOMEOWNER,),
        applies=always,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
    ),
    Requirement(
        id="permit-closed",
        questions=(Question("papers.permit_closed", final_passed, present=True),),
        shown_at="done",
        hidden_by=NEVER_HIDDEN,
        asked_by=(INSPECTOR, HOMEOWNER),
        applies=when_permit,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
        papers=True,
    ),
    Requirement(
        id="left-with-owner",
        questions=(Question("papers.left", kept_where, present=True),),
        shown_at="done",
        hidden_by=NEVER_HIDDEN,
        asked_by=(HOMEOWNER, OFFICE),
        applies=when_left,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
    ),
    Requirement(
        id="paid",
        questions=(Question("papers.paid", measured_paid, present=True),),
        shown_at="done",
        hidden_by=NEVER_HIDDEN,
        asked_by=(OFFICE,),
        applies=always,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
        papers=True,
        office_only=True,
    ),
    Requirement(
        id="releases",
        questions=(Question("papers.releases", papers_of("waiver"), present=True),),
        shown_at="done",
        hidden_by=NEVER_HIDDEN,
        asked_by=(HOMEOWNER, OFFICE),
        applies=always,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
        papers=True,
    ),
)
