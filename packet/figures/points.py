"""Points of shingle nails over an open soffit: how far they show below the deck."""

from packet.calc.deck.reach import PAST_UNDERSIDE, past_underside
from packet.figure import FigureSet
from packet.record.job import JobRecord
from packet.reference import Library

#: Where the thickness of the deck stands in the record: new panels, then the old deck that stayed.
_THICKNESS = ("deck.panel.thickness", "roof.old.deck_thickness")


def point_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add how far a shingle nail shows below the thinnest deck recorded, where the soffit is open."""
    decks = [figure for id in _THICKNESS if (figure := figures.get(id))]
    decks += [figure for id, figure in figures.by_id.items() if _of_a_board(id)]
    covering = record.covering
    open_below = record.roof is not None and record.roof.soffit == "open"
    if not (open_below and decks and covering and covering.nail and covering.above_deck):
        return
    thinnest = min(decks, key=lambda figure: figure.value)
    terms = [
        figures.as_term("length_in", "covering.nail.length"),
        figures.as_term("above_in", "covering.above_deck"),
        figures.as_term("deck_in", thinnest.id),
    ]
    value = past_underside(*(item.value for item in terms))
    figures.computed("soffit.points_below", value, "in", PAST_UNDERSIDE, terms)


def _of_a_board(id: str) -> bool:
    return id.startswith("deck.boards.") and id.endswith(".thickness")
