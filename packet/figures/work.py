"""What was worked: areas stripped and covered again, sheets of new deck, nails and spots."""

from packet.calc.fasteners import ROOFING_NAILS, SEAL_SPOTS, roofing_nails, seal_spots
from packet.calc.polygon import counterclockwise, polygon_area, polygon_area_formula
from packet.calc.takeoff import BUNDLES, DECK_SHEETS, SHINGLES, bundles, deck_sheets, shingles
from packet.figure import FigureSet, term
from packet.figures.roof import add_squares, add_up
from packet.figures.shapes import feet, outline_ft
from packet.record.job import JobRecord
from packet.record.layers import Covering, TieIn, WorkedArea
from packet.record.wood import Deck
from packet.reference import Library

DEPTH_IN_DECK = "length_in - above_deck_in"
SHARE = "100 * worked_sq_ft / roof_sq_ft"
BOARDS = "length_ft * width_in / 12"


def work_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add areas worked, deck replaced, shingles and nails by rule."""
    if record.covering:
        _covering(record, record.covering, figures)
        _nail_depth(record, figures)
    if record.deck:
        _deck(record.deck, figures)
        _boards(record.deck, figures)
    if record.tie_in:
        _tie_in(record.tie_in, figures)


def _worked_area(area: WorkedArea, figures: FigureSet) -> None:
    """Add an outline's area by the shoelace sum, corners counterclockwise."""
    corners = outline_ft(area.outline)
    at = f"covering.areas.{area.id}.outline"
    order = range(len(corners)) if counterclockwise(corners) == corners else range(len(corners) - 1, -1, -1)
    terms = []
    for number, index in enumerate(order, 1):
        for axis, name in enumerate("uv"):
            value = corners[index][axis]
            terms.append(figures.as_term(f"{name}{number}", f"{at}.{index}.{axis}", value, "ft"))
    formula = polygon_area_formula(len(corners))
    figures.computed(f"area.{area.id}.area", polygon_area(corners), "sq_ft", formula, terms, decimals=1)


def _covering(record: JobRecord, covering: Covering, figures: FigureSet) -> None:
    for area in covering.areas:
        _worked_area(area, figures)
    if not covering.areas:
        return
    add_up(figures, "work.area", "sq_ft", [f"area.{area.id}.area" for area in covering.areas])
    add_squares(figures, "work.squares", "work.area")
    worked, roof = figures.as_term("worked_sq_ft", "work.area"), figures.get("roof.area")
    if roof:
        terms = [worked, figures.as_term("roof_sq_ft", roof.id)]
        figures.computed("work.share", 100 * worked.value / roof.value, "percent", SHARE, terms, decimals=1)
    shingled = shingled_area(record)
    if shingled == "work.shingled_area":
        add_up(figures, shingled, "sq_ft", [f"area.{area.id}.area" for area in _shingled(covering)])
    shingle = covering.shingle
    if not shingle or not shingle.width or not shingled:
        return
    width, exposure = shingle.width.inches, shingle.exposure.inches
    count = shingles(figures.by_id[shingled].value, width, exposure)
    terms = [
        figures.as_term("area_sq_ft", shingled),
        figures.as_term("width_in", "covering.shingle.width", width, "in"),
        figures.as_term("exposure_in", "covering.shingle.exposure", exposure, "in"),
    ]
    figures.computed("work.shingles", count, "piece", SHINGLES, terms)
    if covering.nails_each:
        nails = [
            figures.as_term("pieces", "work.shingles"),
            figures.as_term("nails_each", "covering.nails_each"),
        ]
        figures.computed(
            "work.nails", roofing_nails(count, covering.nails_each), "nail", ROOFING_NAILS, nails
        )


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


def _boards(deck: Deck, figures: FigureSet) -> None:
    """Add the running feet of new boards and the area they cover."""
    for board in deck.boards:
        at = f"deck.boards.{board.id}"
        length, width = feet(board.length), board.width.inches
        terms = [
            figures.as_term("length_ft", f"{at}.length", length, "ft"),
            figures.as_term("width_in", f"{at}.width", width, "in"),
        ]
        area = length * width / 12
        figures.computed(f"board.{board.id}.area", area, "sq_ft", BOARDS, terms, decimals=1)
    if not deck.boards:
        return
    lengths = [
        figures.as_term(f"part_{number}", f"deck.boards.{board.id}.length", feet(board.length), "ft")
        for number, board in enumerate(deck.boards, 1)
    ]
    formula = " + ".join(part.symbol for part in lengths)
    running = sum(part.value for part in lengths)
    figures.computed("boards.length", running, "ft", formula, lengths, decimals=1)
    add_up(figures, "boards.area", "sq_ft", [f"board.{board.id}.area" for board in deck.boards])


def _tie_in(tie_in: TieIn, figures: FigureSet) -> None:
    if tie_in.shingles_sealed and tie_in.spots_each:
        terms = [
            figures.as_term("pieces", "tie_in.shingles_sealed"),
            figures.as_term("spots_each", "tie_in.spots_each"),
        ]
        spots = seal_spots(tie_in.shingles_sealed, tie_in.spots_each)
        figures.computed("tie_in.spots", spots, "spot", SEAL_SPOTS, terms)


def bundles_needed(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add the bundles the shingled area needs, by the cover on the wrapper.

    Lots of one shingle share it; where wrappers differ nobody could say which bundle went where, and there is
    no such figure.
    """
    lines = [line for line in record.bought if line.unit == "bundle" and line.cover_each]
    covers = {line.cover_each.square_feet for line in lines if line.cover_each}
    shingled = shingled_area(record)
    if len(covers) != 1 or not shingled:
        return
    area = figures.as_term("area_sq_ft", shingled)
    cover = figures.as_term("cover_sq_ft", f"bought.{lines[0].id}.cover_each")
    figures.computed("work.bundles", bundles(area.value, cover.value), "bundle", BUNDLES, [area, cover])
