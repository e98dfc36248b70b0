"""The deck: sheets, boards, their nails and edges, old deck nailed again, joints sealed."""

from packet.record.job import JobRecord
from packet.review.answers import (
    at,
    board_nails,
    count,
    edges_held_by,
    listed,
    listed_once,
    measure,
    nail,
    words,
)
from packet.review.applies import (
    always,
    new_deck,
    when_boards_nailed,
    when_old_deck_bare,
    when_panels,
    when_panels_at_a_rake,
    when_panels_near_an_edge,
    when_panels_renailed,
    when_recorded,
    when_wood,
)
from packet.review.catalogue.who import ADJUSTER, HOMEOWNER, INSPECTOR, MORE_THAN_A_PATCH, OLD_DECK_BARE
from packet.review.model import Question, Requirement

#: Each way of sealing shows until the next layer: tape until the underlayment, sheets until the shingles.
_SEALING_STAGES = {
    "tape on the joints": ("deck", "dried-in"),
    "self-adhered sheet": ("dried-in", "covering"),
    "two layers of underlayment": ("dried-in", "covering"),
}


def _sealing_stages(record: JobRecord) -> tuple[str, str]:
    return _SEALING_STAGES.get(at(record, "dry_in.sealed_deck.way"), ("deck", "covering"))


DECK: tuple[Requirement, ...] = (
    Requirement(
        id="deck-sheets",
        questions=(Question("deck.sheets", listed, present=True),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(ADJUSTER, HOMEOWNER),
        applies=when_wood,
        subjects=new_deck,
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
        id="deck-heads-flush",
        questions=(Question("deck.nail.heads", words("deck.heads")),),
        shown_at="deck",
        hidden_by="dried-in",
        asked_by=(INSPECTOR,),
        applies=when_panels,
        kinds=MORE_THAN_A_PATCH,
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
        applies=when_boards_nailed,
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
        applies=when_panels_renailed,
        kinds=OLD_DECK_BARE,
    ),
    Requirement(
        id="sealed-deck",
        questions=(Question("sealed_deck.way", words("dry_in.sealed_deck.way")),),
        shown_at="deck",
        hidden_by="covering",
        asked_by=(INSPECTOR, ADJUSTER),
        applies=always,
        kinds=OLD_DECK_BARE,
        if_ruled=True,
        stages=_sealing_stages,
    ),
)
