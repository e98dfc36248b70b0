"""Dry-in and edges: underlayment, ice barrier, valley lining, drip edge, flashing, details."""

from packet.record.job import JobRecord
from packet.review.answers import barrier_reach, listed, measure, of_new_details, words
from packet.review.applies import has_edge, other_details, when_covered, when_new, when_recorded
from packet.review.catalogue.who import ADJUSTER, HOMEOWNER, INSPECTOR, MORE_THAN_A_PATCH, PATCH
from packet.review.model import NEVER_HIDDEN, Question, Requirement

_new_metal = when_recorded("drip_edge", "no_new_edge_metal")


def _details_left(record: JobRecord) -> str:
    return "" if other_details(record) else "no_new_details"


DRY_IN: tuple[Requirement, ...] = (
    Requirement(
        id="ice-barrier",
        questions=(
            Question("ice_barrier.inside_wall", barrier_reach),
            Question("ice_barrier.up_slope", measure("dry_in.ice_barrier.up_slope")),
        ),
        shown_at="dried-in",
        hidden_by="covering",
        asked_by=(INSPECTOR, HOMEOWNER),
        applies=when_recorded("dry_in.ice_barrier", "no_ice_barrier"),
        kinds=MORE_THAN_A_PATCH,
    ),
    Requirement(
        id="underlayment-type",
        questions=(Question("underlayment.type", words("dry_in.standard")),),
        shown_at="dried-in",
        hidden_by="covering",
        asked_by=(INSPECTOR,),
        applies=when_covered,
        kinds=MORE_THAN_A_PATCH,
    ),
    Requirement(
        id="underlayment-laps",
        questions=(
            Question("underlayment.head_lap", measure("dry_in.head_lap")),
            Question("underlayment.end_lap", measure("dry_in.end_lap")),
        ),
        shown_at="dried-in",
        hidden_by="covering",
        asked_by=(INSPECTOR,),
        applies=when_covered,
    ),
    Requirement(
        id="underlayment-fastening",
        questions=(
            Question("underlayment.fastening.at_laps", measure("dry_in.fasteners.at_laps")),
            Question("underlayment.fastening.between", measure("dry_in.fasteners.between")),
        ),
        shown_at="dried-in",
        hidden_by="covering",
        asked_by=(INSPECTOR,),
        applies=when_covered,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
    ),
    Requirement(
        id="valley-lining",
        questions=(Question("valley_lining.width", of_new_details("valley", "lining_width")),),
        shown_at="dried-in",
        hidden_by="covering",
        asked_by=(INSPECTOR, ADJUSTER, HOMEOWNER),
        applies=when_new("valley", "no_new_valley"),
    ),
    Requirement(
        id="drip-edge-lap",
        questions=(Question("drip_edge.lap", measure("drip_edge.lap")),),
        shown_at="edges",
        hidden_by="covering",
        asked_by=(INSPECTOR,),
        applies=_new_metal,
        kinds=MORE_THAN_A_PATCH,
    ),
    Requirement(
        id="drip-edge-fastening",
        questions=(Question("drip_edge.fastener_spacing", measure("drip_edge.fastener_spacing")),),
        shown_at="edges",
        hidden_by="covering",
        asked_by=(INSPECTOR,),
        applies=_new_metal,
        kinds=MORE_THAN_A_PATCH,
        if_answered=PATCH,
    ),
    Requirement(
        id="drip-edge-order",
        questions=(
            Question("drip_edge.order_eave", words("drip_edge.order_eave"), when=has_edge("eave")),
            Question("drip_edge.order_rake", words("drip_edge.order_rake"), when=has_edge("rake")),
        ),
        shown_at="edges",
        hidden_by="covering",
        asked_by=(INSPECTOR,),
        applies=_new_metal,
        kinds=MORE_THAN_A_PATCH,
        if_ruled=True,
    ),
    Requirement(
        id="sidewall-flashing",
        questions=(
            Question("sidewall_flashing.height", of_new_details("sidewall", "flashing_height")),
            Question("sidewall_flashing.width", of_new_details("sidewall", "flashing_width")),
        ),
        shown_at="edges",
        hidden_by="covering",
        asked_by=(INSPECTOR, ADJUSTER, HOMEOWNER),
        applies=when_new("sidewall", "no_new_sidewall_flashing"),
    ),
    Requirement(
        id="new-details",
        questions=(Question("details", listed, present=True),),
        shown_at="edges",
        hidden_by=NEVER_HIDDEN,
        asked_by=(ADJUSTER, HOMEOWNER),
        applies=_details_left,
        subjects=other_details,
    ),
)
