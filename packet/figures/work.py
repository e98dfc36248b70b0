"""What was worked: areas stripped and covered again, sheets and boards of new deck."""

from packet.calc.polygon import polygon_area, polygon_area_formula
from packet.calc.takeoff import DECK_SHEETS, deck_sheets
from packet.figure import FigureSet, term
from packet.figures.boards import board_figures
from packet.figures.edges import worked_edges
from packet.figures.roof import add_squares, add_up, corner_terms, net_area_id
from packet.figures.shapes import feet, outline_ft, roof_shape
from packet.record.job import JobRecord
from packet.record.layers import Covering, WorkedArea
from packet.record.wood import Deck
from packet.reference import Library

DEPTH_IN_DECK = "length_in - above_deck_in"
SHARE = "100 * worked_sq_ft / roof_sq_ft"


def work_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add areas worked, deck replaced, and how far the shingle nail stands in the deck."""
    if record.property.salt_water == "within 3,000 ft":
        row = library.table("salt_water").lookup(shore_ft=3000)
        shore = row.number("shore_ft")
        figures.measured("salt_water.within", shore, "ft", "table.salt_water", sources=[row.source])
    if record.covering:
        _covering(record, record.covering, figures)
        _nail_depth(record, figures)
    if record.deck:
        _deck(record.deck, figures)
        board_figures(record.deck, record.roof.framing if record.roof else None, figures)


def _worked_area(area: WorkedArea, figures: FigureSet) -> None:
    """Add the area of a whole plane, or of an outline by the shoelace sum."""
    id = f"area.{area.id}.area"
    if area.outline is None:
        whole = figures.as_term("area_sq_ft", net_area_id(area.plane, figures))
        figures.computed(id, whole.value, "sq_ft", whole.symbol, [whole], decimals=1)
        return
    corners = outline_ft(area.outline)
    terms = corner_terms(figures, f"covering.areas.{area.id}.outline", corners)
    formula = polygon_area_formula(len(corners))
    figures.computed(id, polygon_area(corners), "sq_ft", formula, terms, decimals=1)


def _covering(record: JobRecord, covering: Covering, figures: FigureSet) -> None:
    for area in covering.areas:
        _worked_area(area, figures)
    if not covering.areas:
        return
    if record.roof:
        worked_edges(covering.areas, roof_shape(record.roof), figures)
    add_up(figures, "work.area", "sq_ft", [f"area.{area.id}.area" for area in covering.areas])
    add_squares(figures, "work.squares", "work.area")
    worked, roof = figures.as_term("worked_sq_ft", "work.area"), figures.get("roof.area")
    if roof:
        terms = [worked, figures.as_term("roof_sq_ft", roof.id)]
        figures.computed("work.share", 100 * worked.value / roof.value, "percent", SHARE, terms, decimals=1)
    shingled = shingled_area(record)
    if shingled == "work.shingled_area":
        add_up(figures, shingled, "sq_ft", [f"area.{area.id}.area" for area in _shingled(covering)])


def shingled_area(record: JobRecord) -> str:
    """Return the id of the area shingles cover: all of the work, less what carries a low-slope covering.

    It is "" where no shingles are laid.
    """
    covering = record.covering
    shingled = _shingled(covering) if covering else []
    if not covering or not shingled:
        return ""
    return "work.area" if len(shingled) == len(covering.areas) else "work.shingled_area"


def _shingled(covering: Covering) -> list[WorkedArea]:
    low = {entry.plane for entry in covering.low_slope}
    return [area for area in covering.areas if area.plane not in low]


def _nail_depth(record: JobRecord, figures: FigureSet) -> None:
    """Add how far the shingle nail stands in the deck, and how far past its underside."""
    covering = record.covering
    if not covering or not covering.nail or not covering.above_deck:
        return
    length, above = covering.nail.length.inches, covering.above_deck.inches
    terms = [
        figures.as_term("length_in", "covering.nail.length", length, "in"),
        figures.as_term("above_deck_in", "covering.above_deck", above, "in"),
    ]
    figures.computed("covering.nail.in_deck", length - above, "in", DEPTH_IN_DECK, terms)


def _deck(deck: Deck, figures: FigureSet) -> None:
    for sheet in deck.sheets:
        at = f"deck.sheets.{sheet.id}"
        along, up = feet(sheet.along), feet(sheet.up)
        terms = [
            figures.as_term("along_ft", f"{at}.along", along, "ft"),
            figures.as_term("up_ft", f"{at}.up", up, "ft"),
        ]
        figures.computed(f"sheet.{sheet.id}.area", along * up, "sq_ft", "along_ft * up_ft", terms, decimals=1)
    if not deck.sheets:
        return
    add_up(figures, "deck.area", "sq_ft", [f"sheet.{sheet.id}.area" for sheet in deck.sheets])
    pieces = [
        term(f"piece_{number}", 1, "piece", "record", f"deck.sheets.{sheet.id}")
        for number, sheet in enumerate(deck.sheets, 1)
    ]
    formula = " + ".join(piece.symbol for piece in pieces)
    figures.computed("deck.pieces", len(pieces), "piece", formula, pieces)
    if not deck.panel:
        return
    width, length = feet(deck.panel.width), feet(deck.panel.length)
    area = figures.as_term("area_sq_ft", "deck.area")
    terms = [
        area,
        figures.as_term("sheet_width_ft", "deck.panel.width", width, "ft"),
        figures.as_term("sheet_length_ft", "deck.panel.length", length, "ft"),
    ]
    figures.computed(
        "deck.sheets_by_area", deck_sheets(area.value, width, length), "sheet", DECK_SHEETS, terms
    )
