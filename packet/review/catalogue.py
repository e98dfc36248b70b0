"""The catalogue: what each kind of work is asked, at which stage it shows, and what hides it.

Limits are not here: rules are rows in ``shared/codes/``, found by the words in ``asks``. To add a
requirement, add an entry, its title in ``shared/words/en.yaml`` under ``requirements``, rows where a rule
limits it, and a test.
"""

from packet.record.job import JobRecord
from packet.review.answers import (
    at,
    attic_to_vents,
    barrier_reach,
    board_nails,
    count,
    edges_held_by,
    listed,
    listed_once,
    maker_nails,
    measure,
    nail,
    nail_in_deck,
    of_new_details,
    when_covered,
    when_new,
    when_old_deck_bare,
    when_panels,
    when_panels_at_a_rake,
    when_panels_near_an_edge,
    when_recorded,
    when_vents,
    when_wood,
    wind_class,
    words,
)
from packet.review.model import NEVER_HIDDEN, Question, Requirement

INSPECTOR, ADJUSTER, HOMEOWNER = "inspector", "adjuster", "homeowner"

#: A patch is asked for a dozen things, not for everything.
MORE_THAN_A_PATCH = frozenset({"section", "re-roof", "recover"})
TIED_INTO_OLD = frozenset({"patch", "section"})

#: What a whole new covering lays bare, and a patch does not.
OLD_DECK_BARE = frozenset({"section", "re-roof"})

_new_metal = when_recorded("drip_edge", "no_new_edge_metal")


def _new_deck(record: JobRecord) -> tuple[str, ...]:
    """Return the sheets and the boards of new deck; each wants a photo of its own."""
    if record.deck is None:
        return ()
    return (*(sheet.id for sheet in record.deck.sheets), *(board.id for board in record.deck.boards))


#: Each way of sealing shows until the next layer: tape until the underlayment, sheets until the shingles.
_SEALING_STAGES = {
    "tape on the joints": ("deck", "dried-in"),
    "self-adhered sheet": ("dried-in", "covering"),
    "two layers of underlayment": ("dried-in", "covering"),
}


def _sealing_stages(record: JobRecord) -> tuple[str, str]:
    return _SEALING_STAGES.get(at(record, "dry_in.sealed_deck.way"), ("deck", "covering"))


#: Details with a requirement of their own; a kick-out is seen with its wall.
ASKED_BY_KIND = frozenset({"valley", "sidewall", "kick-out"})


def _other_details(record: JobRecord) -> tuple[str, ...]:
    """Return the new details that no requirement of their own asks for."""
    return tuple(d.id for d in record.details if d.state == "new" and d.kind not in ASKED_BY_KIND)


CATALOGUE: tuple[Requirement, ...] = (
    Requirement(
        id="deck-sheets",
        questions=(Question("deck.sheets", listed, present=True),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(ADJUSTER, HOMEOWNER),
        applies=when_wood,
        subjects=_new_deck,
    ),
    Requirement(
        id="deck-panel",
        questions=(Question("deck.panel.thickness", measure("deck.panel.thickness")),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_panels,
        kinds=MORE_THAN_A_PATCH,
    ),
    Requirement(
        id="deck-nail",
        questions=(Question("deck.nail", nail("deck.nail")),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR,),
        applies=when_panels,
    ),
    Requirement(
        id="deck-nail-edge-spacing",
        questions=(Question("deck.nail.edge_spacing", measure("deck.edge_spacing")),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_panels,
    ),
    Requirement(
        id="deck-nail-field-spacing",
        questions=(Question("deck.nail.field_spacing", measure("deck.field_spacing")),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_panels,
    ),
    Requirement(
        id="deck-nail-gable-spacing",
        questions=(Question("deck.nail.gable_spacing", measure("deck.gable_spacing")),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_panels_at_a_rake,
        if_ruled=True,
    ),
    Requirement(
        id="deck-nail-near-edges-spacing",
        questions=(Question("deck.nail.near_edges_spacing", measure("deck.near_edges_spacing")),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_panels_near_an_edge,
        if_ruled=True,
    ),
    Requirement(
        id="deck-panel-gap",
        questions=(Question("deck.panel.gap", measure("deck.gap")),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR,),
        applies=when_panels,
        kinds=MORE_THAN_A_PATCH,
        if_ruled=True,
    ),
    Requirement(
        id="deck-edge-support",
        questions=(
            Question("deck.panel.edge_support", edges_held_by),
            Question("deck.panel.clips_each_space", count("deck.clips.each_space")),
        ),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR,),
        applies=when_panels,
        kinds=MORE_THAN_A_PATCH,
        if_ruled=True,
    ),
    Requirement(
        id="deck-board-nails",
        questions=(Question("deck.board.nails_each_bearing", board_nails),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR,),
        applies=when_recorded("deck.boards", "no_boards_laid"),
        kinds=MORE_THAN_A_PATCH,
    ),
    Requirement(
        id="renailed-way",
        questions=(
            Question("renailed.needed", listed_once("deck.renailed")),
            Question("renailed.way", words("deck.renailed.way")),
        ),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_old_deck_bare,
        kinds=OLD_DECK_BARE,
        if_ruled=True,
    ),
    Requirement(
        id="renailed-nail",
        questions=(Question("renailed.nail", nail("deck.renailed.nail")),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_recorded("deck.renailed", "no_deck_renailed"),
        kinds=OLD_DECK_BARE,
    ),
    Requirement(
        id="renailed-spacing",
        questions=(
            Question("renailed.edge_spacing", measure("deck.renailed.edge_spacing")),
            Question("renailed.field_spacing", measure("deck.renailed.field_spacing")),
        ),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=when_recorded("deck.renailed", "no_deck_renailed"),
        kinds=OLD_DECK_BARE,
    ),
    Requirement(
        id="sealed-deck",
        questions=(Question("sealed_deck.way", words("dry_in.sealed_deck.way")),),
        shown_at="deck",
        hidden_by="covering",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=lambda record: "",
        kinds=OLD_DECK_BARE,
        if_ruled=True,
        stages=_sealing_stages,
    ),
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
        id="valley-lining",
        questions=(Question("valley_lining.width", of_new_details("valley", "lining_width")),),
        shown_at="dried-in",
        hidden_by="covering",
        asked_by=(INSPECTOR, ADJUSTER, HOMEOWNER),
        applies=when_new("valley", "no_new_valley"),
    ),
    Requirement(
        id="new-details",
        questions=(Question("details", listed, present=True),),
        shown_at="edges",
        hidden_by=NEVER_HIDDEN,
        asked_by=(ADJUSTER, HOMEOWNER),
        applies=lambda record: "" if _other_details(record) else "no_new_details",
        subjects=_other_details,
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
        id="hand-seal",
        questions=(Question("hand_seal.spots", count("tie_in.spots_each")),),
        shown_at="covering",
        hidden_by="done",
        asked_by=(ADJUSTER, HOMEOWNER),
        applies=when_recorded("tie_in", "no_tie_in"),
        kinds=TIED_INTO_OLD,
    ),
    Requirement(
        id="attic-ventilation",
        questions=(Question("ventilation.ratio", attic_to_vents),),
        shown_at="deck",
        hidden_by=NEVER_HIDDEN,
        asked_by=(INSPECTOR, HOMEOWNER),
        applies=when_vents,
        kinds=MORE_THAN_A_PATCH,
    ),
)

BY_ID = {requirement.id: requirement for requirement in CATALOGUE}
