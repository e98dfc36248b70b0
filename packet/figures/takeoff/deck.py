"""Deck panels and the nails of new sheets and of an old deck nailed again, by the schedule as measured."""

from collections.abc import Sequence

from packet.calc.fasteners import ROOFING_NAILS, SHEET_NAILS, roofing_nails, sheet_nails
from packet.calc.takeoff import DECK_SHEETS, deck_sheets
from packet.figure import Term
from packet.figures.roof import net_area_id
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
    """Return the nails of whole sheets on regular framing, at the spacing measured with the tape.

    Sheets cut at hips and valleys, rows closer at gable ends and nails beside old ones are not in it.
    """
    deck, roof = ground.record.deck, ground.record.roof
    if deck is None or roof is None or not (deck.sheets or deck.renailed):
        return ""
    wanted = {"panel": deck.panel, "framing": roof.framing}
    ground.missing += [name for name, part in wanted.items() if part is None]
    if deck.panel is None or roof.framing is None:
        return ""
    spacing = roof.framing.spacing.inches
    sheet = [
        ground.figures.as_term("sheet_length_ft", "deck.panel.length", feet(deck.panel.length), "ft"),
        ground.figures.as_term("sheet_width_ft", "deck.panel.width", feet(deck.panel.width), "ft"),
        ground.figures.as_term("frame_spacing_in", "roof.framing.spacing", spacing, "in"),
    ]
    parts = []
    if ground.figures.get("deck.nails"):
        parts.append("deck.nails")
    elif deck.sheets:
        parts.append(_nails(ground, "new", "deck.area", sheet, "deck", deck.edge_spacing, deck.field_spacing))
    if deck.renailed:
        old = deck.renailed
        area, at = _old_area(ground, deck, old.planes), "deck.renailed"
        parts.append(_nails(ground, "old", area, sheet, at, old.edge_spacing, old.field_spacing))
    if not all(parts):
        return ""
    return ground.add_up("takeoff.deck-nails.net", "nail", parts)


def _old_area(ground: Ground, deck: Deck, planes: Sequence[str]) -> str:
    """Return the old deck nailed again: its planes, less the new sheets in them, which are counted as new."""
    figures = ground.figures
    plus = [
        figures.as_term(f"part_{n}", net_area_id(plane, figures))
        for n, plane in enumerate(dict.fromkeys(planes), 1)
    ]
    new = [f"sheet.{sheet.id}.area" for sheet in deck.sheets if sheet.plane in planes]
    minus = [figures.as_term(f"new_{n}", sheet) for n, sheet in enumerate(new, 1)]
    formula = " + ".join(item.symbol for item in plus) + "".join(f" - {item.symbol}" for item in minus)
    value = max(0, sum(item.value for item in plus) - sum(item.value for item in minus))
    id = "takeoff.deck-nails.old.area"
    return ground.computed(id, value, "sq_ft", f"max(0, {formula})", [*plus, *minus], decimals=1)


def _nails(
    ground: Ground,
    which: str,
    area: str,
    sheet: list[Term],
    at: str,
    edge: Length | None,
    between: Length | None,
) -> str:
    """Return the nails of as many whole sheets as an area takes; "" while a spacing is not known."""
    if edge is None or between is None:
        ground.missing.append("spacing")
        return ""
    figures, id = ground.figures, f"takeoff.deck-nails.{which}"
    length, width, frame = sheet
    size = figures.as_term("area_sq_ft", area)
    count = deck_sheets(size.value, width.value, length.value)
    ground.computed(f"{id}.sheets", count, "sheet", DECK_SHEETS, [size, width, length])
    terms = [
        *sheet,
        figures.as_term("edge_spacing_in", f"{at}.edge_spacing", edge.inches, "in"),
        figures.as_term("field_spacing_in", f"{at}.field_spacing", between.inches, "in"),
    ]
    each = sheet_nails(
        length.value, width.value, frame.value, edge_spacing_in=edge.inches, field_spacing_in=between.inches
    )
    ground.computed(f"{id}.each", each, "nail", SHEET_NAILS, terms)
    terms = [figures.as_term("pieces", f"{id}.sheets"), figures.as_term("nails_each", f"{id}.each")]
    return ground.computed(id, roofing_nails(count, each), "nail", ROOFING_NAILS, terms)
