"""The covering: starter, shingles, their nails and label, the joint with what stayed."""

from packet.review.answers import (
    count,
    label,
    listed,
    listed_once,
    maker_nails,
    measure,
    nail_in_deck,
    wind_class,
)
from packet.review.applies import when_covered, when_recorded
from packet.review.catalogue.who import (
    ADJUSTER,
    HOMEOWNER,
    INSPECTOR,
    MORE_THAN_A_PATCH,
    OFFICE,
    PATCH,
    TIED_INTO_OLD,
)
from packet.review.model import NEVER_HIDDEN, Question, Requirement

COVERING: tuple[Requirement, ...] = (
    Requirement(
        id="starter",
        questions=(Question("starter.there", listed_once("covering.starter"), present=True),),
        shown_at="edges",
        hidden_by="done",
        asked_by=(OFFICE, INSPECTOR),
        applies=when_covered,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
    ),
    Requirement(
        id="shingle-nails",
        questions=(Question("shingle.nails", count("covering.nails_each"), maker=maker_nails),),
        shown_at="covering",
        hidden_by="done",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_covered,
    ),
    Requirement(
        id="shingle-nail",
        questions=(
            Question("shingle_nail.shank", measure("covering.nail.shank")),
            Question("shingle_nail.head", measure("covering.nail.head")),
            Question("shingle_nail.penetration", nail_in_deck),
        ),
        shown_at="covering",
        hidden_by="done",
        asked_by=(INSPECTOR,),
        applies=when_covered,
        kinds=MORE_THAN_A_PATCH,
    ),
    Requirement(
        id="shingle-wind-class",
        questions=(Question("shingle.wind_class", wind_class),),
        shown_at="covering",
        hidden_by="done",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_covered,
    ),
    Requirement(
        id="shingle-label",
        questions=(Question("shingle.label", label, present=True),),
        shown_at="covering",
        hidden_by="done",
        asked_by=(HOMEOWNER, ADJUSTER, OFFICE),
        applies=when_covered,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
    ),
    Requirement(
        id="hand-seal",
        questions=(Question("hand_seal.spots", count("tie_in.spots_each")),),
        shown_at="covering",
        hidden_by="done",
        asked_by=(ADJUSTER, HOMEOWNER),
        applies=when_recorded("tie_in", "no_tie_in"),
        kinds=TIED_INTO_OLD,
    ),
    Requirement(
        id="new-beside-old",
        questions=(Question("tie_in.beside", listed, present=True),),
        shown_at="covering",
        hidden_by=NEVER_HIDDEN,
        asked_by=(ADJUSTER, HOMEOWNER),
        applies=when_recorded("tie_in", "no_tie_in"),
        kinds=TIED_INTO_OLD - PATCH,
        if_answered=PATCH,
    ),
)
