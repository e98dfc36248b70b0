"""Before the work, and the old roof while it can be seen: which house, what was there, what was wrong."""

from packet.record.job import JobRecord
from packet.review.answers import count, listed, measure, old_fastener, roof_measured
from packet.review.applies import always, new_deck, when_recorded, when_wood, worked_planes
from packet.review.catalogue.who import (
    ADJUSTER,
    HOMEOWNER,
    INSPECTOR,
    MORE_THAN_A_PATCH,
    OFFICE,
    OLD_DECK_BARE,
    PATCH,
)
from packet.review.model import NEVER_HIDDEN, Question, Requirement


def _worked(record: JobRecord) -> str:
    return "" if worked_planes(record) else "nothing_covered"


BEFORE: tuple[Requirement, ...] = (
    Requirement(
        id="house-number",
        questions=(Question("before.house_number", listed, present=True),),
        shown_at="before",
        hidden_by=NEVER_HIDDEN,
        asked_by=(INSPECTOR, ADJUSTER),
        applies=always,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
    ),
    Requirement(
        id="before-planes",
        questions=(Question("before.plane", listed, present=True),),
        shown_at="before",
        hidden_by="stripped",
        asked_by=(ADJUSTER, HOMEOWNER, OFFICE),
        applies=_worked,
        kinds=MORE_THAN_A_PATCH,
        subjects=worked_planes,
        by_plane=True,
    ),
    Requirement(
        id="damage-as-found",
        questions=(Question("before.damage", listed, present=True),),
        shown_at="before",
        hidden_by="deck",
        asked_by=(ADJUSTER,),
        applies=always,
        views=("wide", "close"),
    ),
    Requirement(
        id="pitch-and-size",
        questions=(Question("before.size", roof_measured, present=True),),
        shown_at="before",
        hidden_by=NEVER_HIDDEN,
        asked_by=(ADJUSTER, INSPECTOR),
        applies=always,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
    ),
    Requirement(
        id="old-layers",
        questions=(Question("old.layers", count("roof.old.layers"), present=True),),
        shown_at="before",
        hidden_by="deck",
        asked_by=(ADJUSTER, INSPECTOR),
        applies=_worked,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
    ),
    Requirement(
        id="old-deck-fastener",
        questions=(Question("old.fastener", old_fastener, present=True),),
        shown_at="stripped",
        hidden_by="deck",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=_worked,
        kinds=OLD_DECK_BARE,
        if_answered=PATCH,
    ),
    Requirement(
        id="old-deck-thickness",
        questions=(Question("old.deck_thickness", measure("roof.old.deck_thickness"), present=True),),
        shown_at="stripped",
        hidden_by="dried-in",
        asked_by=(INSPECTOR,),
        applies=_worked,
        kinds=OLD_DECK_BARE,
        if_answered=PATCH,
    ),
    Requirement(
        id="bad-sheets",
        questions=(Question("old.bad_sheet", listed, present=True),),
        shown_at="stripped",
        hidden_by="deck",
        asked_by=(ADJUSTER, HOMEOWNER, INSPECTOR),
        applies=when_wood,
        kinds=OLD_DECK_BARE,
        subjects=new_deck,
        views=("wide", "close"),
    ),
    Requirement(
        id="framing-spacing",
        questions=(Question("framing.spacing", measure("roof.framing.spacing"), present=True),),
        shown_at="stripped",
        hidden_by="dried-in",
        asked_by=(INSPECTOR,),
        applies=_worked,
        kinds=OLD_DECK_BARE,
        if_answered=PATCH,
    ),
    Requirement(
        id="roof-to-wall-ties",
        questions=(Question("framing.ties", listed, present=True),),
        shown_at="stripped",
        hidden_by="dried-in",
        asked_by=(INSPECTOR,),
        applies=when_recorded("roof.ties", "no_ties_seen"),
    ),
)
