"""Deck panels, the nails of new sheets and of an old deck nailed again as measured, and panel clips."""

from packet.calc.fasteners import ROOFING_NAILS, SHEET_NAILS, roofing_nails, sheet_nails
from packet.calc.takeoff import DECK_SHEETS, deck_sheets
from packet.figure import Term
from packet.figures.renailing import renailing
from packet.figures.shapes import feet
from packet.figures.takeoff.ground import Ground
from packet.record.wood import Deck
from packet.units import Length


def deck_panels(ground: Ground) -> str:
    """Return the area of new deck sheets, before they are cut."""
    area = ground.figures.get("deck.area")
    if area is None:
        return ""
    whole = ground.figures.as_term("area_sq_ft", area.id)
    return ground.computed("takeoff.deck-panels.net", whole.value, "sq_ft", whole.symbol, [whole], decimals=1)


def deck_nails(ground: Ground) -> str:
    """Return the nails of new sheets, new boards and an old deck nailed again, by the schedule.

    Nails of different sizes are bought apart, so they make no one need.
    """
    deck = ground.record.deck
    if deck is None or ground.record.roof is None:
        return ""
    counts = {_new_sheets: deck.sheets, _boards: deck.boards, _old_deck: deck.renailed}
    parts = [count(ground, deck) for count, there in counts.items() if there]
    nails = [deck.nail if deck.sheets else None, deck.renailed.nail if deck.renailed else None]
    nails += [board.nail for board in deck.boards]
    if len({(nail.size.length_in, nail.size.shank_in, nail.shank) for nail in nails if nail}) > 1:
        ground.missing.append("one_nail")
        return ""
    if not parts or not all(parts):
        return ""
    return ground.add_up("takeoff.deck-nails.net", "nail", parts)


def deck_clips(ground: Ground) -> str:
    """Return the clips on the joints of the new sheets, by the layout."""
    clips = ground.figures.get("deck.edges.clips")
    if clips is None:
        return ""
    whole = ground.figures.as_term("clips", clips.id)
    return ground.computed("takeoff.deck-clips.net", whole.value, "clip", whole.symbol, [whole])


def _new_sheets(ground: Ground, deck: Deck) -> str:
    """Return the nails of new sheets: those laid out, else of whole sheets on regular framing.

    In whole sheets, cuts at hips and valleys and rows closer at gable ends are not counted.
    """
    if ground.figures.get("deck.nails"):
        return "deck.nails"
    framing = ground.record.roof.framing if ground.record.roof else None
    wanted = {"panel": deck.panel, "framing": framing}
    ground.missing += [name for name, part in wanted.items() if part is None]
    if deck.panel is None or framing is None:
        return ""
    spacing = framing.spacing.inches
    sheet = [
        ground.figures.as_term("sheet_length_ft", "deck.panel.length", feet(deck.panel.length), "ft"),
        ground.figures.as_term("sheet_width_ft", "deck.panel.width", feet(deck.panel.width), "ft"),
        ground.figures.as_term("frame_spacing_in", "roof.framing.spacing", spacing, "in"),
    ]
    return _nails(ground, sheet, deck.edge_spacing, deck.field_spacing)


def _boards(ground: Ground, deck: Deck) -> str:
    """Return the nails of new boards, at the number recorded at each rafter."""
    if ground.figures.get("boards.nails"):
        return "boards.nails"
    framing = ground.record.roof.framing if ground.record.roof else None
    wanted = {"framing": framing, "board_nails": all(board.nails_each_bearing for board in deck.boards)}
    ground.missing += [name for name, there in wanted.items() if not there]
    return ""


def _old_deck(ground: Ground, deck: Deck) -> str:
    """Return the nails added to an old deck."""
    if not ground.figures.get("renailed.nails"):
        again = renailing(ground.record, ground.library, ground.figures)
        ground.missing += again.missing if again else ()
        return again.nails if again else ""
    return "renailed.nails"


def _nails(ground: Ground, sheet: list[Term], edge: Length | None, between: Length | None) -> str:
    """Return the nails of as many whole sheets as the new deck takes; "" while a spacing is not known."""
    if edge is None or between is None:
        ground.missing.append("spacing")
        return ""
    figures, id = ground.figures, "takeoff.deck-nails.new"
    length, width, frame = sheet
    size = figures.as_term("area_sq_ft", "deck.area")
    count = deck_sheets(size.value, width.value, length.value)
    ground.computed(f"{id}.sheets", count, "sheet", DECK_SHEETS, [size, width, length])
    terms = [
        *sheet,
        figures.as_term("edge_spacing_in", "deck.edge_spacing", edge.inches, "in"),
        figures.as_term("field_spacing_in", "deck.field_spacing", between.inches, "in"),
    ]
    each = sheet_nails(
        length.value, width.value, frame.value, edge_spacing_in=edge.inches, field_spacing_in=between.inches
    )
    ground.computed(f"{id}.each", each, "nail", SHEET_NAILS, terms)
    terms = [figures.as_term("pieces", f"{id}.sheets"), figures.as_term("nails_each", f"{id}.each")]
    return ground.computed(id, roofing_nails(count, each), "nail", ROOFING_NAILS, terms)
