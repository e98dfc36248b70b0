"""Nails that nailing an old deck again adds: by old sheets or boards, over the area of each plane."""

from dataclasses import dataclass

from packet.calc.deck.added import ADDED_IN_SHEET, NAILS_ON_AREA, added_in_sheet, nails_on_area
from packet.calc.deck.boards import BOARD_NAILS_ON_AREA, board_nails_on_area
from packet.calc.fasteners import SHEET_NAILS, sheet_nails
from packet.figure import FigureSet, Term
from packet.figures.roof import add_up, net_area_id
from packet.figures.shapes import feet
from packet.record.job import JobRecord
from packet.record.wood import Deck, OldBoards, Renailed


@dataclass(frozen=True)
class Sheet:
    """How one old sheet is nailed again.

    Attributes:
        between: New nails stand between the old ones, which count; else the sheet is nailed as a new one.
        edge: Figure of the spacing at panel edges; "" where there is none.
        field: Figure of the spacing on supports between.
    """

    between: bool
    edge: str
    field: str


def lacks(record: JobRecord, sheet: Sheet) -> tuple[str, ...]:
    """Return what a count of the nails lacks, as keys of ``takeoff.missing``."""
    deck, framing = record.deck, record.roof.framing if record.roof else None
    old = deck.renailed if deck else None
    if old and old.boards:
        there = {"framing": framing is not None, "board_nails": bool(old.boards.nails_each_bearing)}
        return tuple(name for name, has in there.items() if not has)
    sized = deck and (deck.panel or (old and old.sheet_length and old.sheet_width))
    has = {
        "old_panel": bool(sized),
        "framing": framing is not None,
        "spacing": bool(sheet.edge and sheet.field),
        "old_spacing": not sheet.between or bool(old and old.old_edge_spacing and old.old_field_spacing),
    }
    return tuple(name for name, there in has.items() if not there)


def count_nails(record: JobRecord, figures: FigureSet, sheet: Sheet) -> tuple[tuple[str, str], ...]:
    """Add the nails of each plane and of all, and of one old sheet; return the planes with their figures.

    The record has to hold what ``lacks`` asks for.
    """
    deck, roof = record.deck, record.roof
    assert deck and deck.renailed and roof and roof.framing  # noqa: S101, PT018 - lacks() asked
    spacing = roof.framing.spacing.inches
    frame = figures.as_term("frame_spacing_in", "roof.framing.spacing", spacing, "in")
    size = [] if deck.renailed.boards else _size(deck, deck.renailed, figures)
    if size:
        _each(deck.renailed, figures, sheet, [*size, frame])
    counted = []
    for plane in dict.fromkeys(deck.renailed.planes):
        _area(plane, record, deck, figures)
        area = figures.as_term("area_sq_ft", f"renailed.{plane}.area")
        if deck.renailed.boards:
            _on_boards(plane, deck.renailed.boards, area, frame, figures)
        else:
            _on_sheets(plane, area, size, figures)
        counted.append((plane, f"renailed.{plane}.nails"))
    add_up(figures, "renailed.area", "sq_ft", [f"renailed.{plane}.area" for plane, _ in counted])
    add_up(figures, "renailed.nails", "nail", [nails for _, nails in counted], decimals=0)
    return tuple(counted)


def _on_sheets(plane: str, area: Term, size: list[Term], figures: FigureSet) -> None:
    """Add the nails of a plane of panels, by those of one old sheet."""
    each = figures.as_term("nails_a_sheet", "renailed.each")
    length, width = size
    value = nails_on_area(area.value, int(each.value), width.value, length.value)
    figures.computed(f"renailed.{plane}.nails", value, "nail", NAILS_ON_AREA, [area, length, width, each])


def _on_boards(plane: str, boards: OldBoards, area: Term, frame: Term, figures: FigureSet) -> None:
    """Add the nails of a plane of boards, at the number recorded at each rafter."""
    at = "deck.renailed.boards"
    apart = figures.as_term("apart_in", f"{at}.apart", boards.apart.inches, "in")
    each = figures.as_term("nails_each", f"{at}.nails_each_bearing")
    value = board_nails_on_area(area.value, apart.value, frame.value, boards.nails_each_bearing)
    terms = [area, apart, frame, each]
    figures.computed(f"renailed.{plane}.nails", value, "nail", BOARD_NAILS_ON_AREA, terms)


def _size(deck: Deck, old: Renailed, figures: FigureSet) -> list[Term]:
    """Return length and width of an old sheet: as recorded, else those of the new panel."""
    found = []
    for name in ("length", "width"):
        own = getattr(old, f"sheet_{name}")
        length = own or getattr(deck.panel, name)
        at = f"deck.renailed.sheet_{name}" if own else f"deck.panel.{name}"
        found.append(figures.as_term(f"sheet_{name}_ft", at, feet(length), "ft"))
    return found


def _each(old: Renailed, figures: FigureSet, sheet: Sheet, terms: list[Term]) -> None:
    """Add the nails of a whole old sheet: as a new one's, or those that go between the old ones."""
    length, width, frame = (item.value for item in terms)
    edge, field = figures.by_id[sheet.edge], figures.by_id[sheet.field]
    sources = tuple(dict.fromkeys((*edge.sources, *field.sources)))
    if not sheet.between:
        value = sheet_nails(length, width, frame, edge_spacing_in=edge.value, field_spacing_in=field.value)
        spacings = [
            figures.as_term("edge_spacing_in", edge.id),
            figures.as_term("field_spacing_in", field.id),
        ]
        figures.computed("renailed.each", value, "nail", SHEET_NAILS, [*terms, *spacings], sources=sources)
        return
    was = [
        figures.as_term(f"old_{name}_in", f"deck.renailed.old_{name}_spacing", spacing.inches, "in")
        for name, spacing in (("edge", old.old_edge_spacing), ("field", old.old_field_spacing))
        if spacing
    ]
    value = added_in_sheet(
        length,
        width,
        frame,
        old_edge_in=was[0].value,
        old_field_in=was[1].value,
        most_edge_in=edge.value,
        most_field_in=field.value,
    )
    most = [figures.as_term("most_edge_in", edge.id), figures.as_term("most_field_in", field.id)]
    figures.computed("renailed.each", value, "nail", ADDED_IN_SHEET, [*terms, *was, *most], sources=sources)


def _area(plane: str, record: JobRecord, deck: Deck, figures: FigureSet) -> None:
    """Add the old deck of a plane: its areas worked on, else the whole of it, less the new deck in it.

    Where every area of a plane has an outline, the rest of the plane kept its covering.
    """
    worked = [area for area in record.covering.areas if area.plane == plane] if record.covering else []
    if worked and all(area.outline for area in worked):
        plus = [f"area.{area.id}.area" for area in worked]
    else:
        plus = [net_area_id(plane, figures)]
    laid = [f"sheet.{sheet.id}.laid" for sheet in deck.sheets if sheet.plane == plane]
    minus = [id if figures.get(id) else id.removesuffix("laid") + "area" for id in laid]
    minus += [
        id for board in deck.boards if board.plane == plane and figures.get(id := f"board.{board.id}.area")
    ]
    old = [figures.as_term(f"part_{number}", id) for number, id in enumerate(plus, 1)]
    new = [figures.as_term(f"new_{number}", id) for number, id in enumerate(minus, 1)]
    formula = " + ".join(item.symbol for item in old) + "".join(f" - {item.symbol}" for item in new)
    value = max(0, sum(item.value for item in old) - sum(item.value for item in new))
    formula = f"max(0, {formula})" if new else formula
    figures.computed(f"renailed.{plane}.area", value, "sq_ft", formula, [*old, *new], decimals=1)
