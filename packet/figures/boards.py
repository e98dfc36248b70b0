"""Deck boards: running feet, the roof they make, nails at the rafters; boards that lie under new panels."""

from packet.calc.deck.boards import (
    BEARINGS,
    BOARD_NAILS,
    BOARDS_APART,
    BOARDS_COVER,
    bearings,
    board_nails,
    boards_apart,
    boards_cover,
)
from packet.calc.deck.reach import PENETRATION, penetration
from packet.figure import FigureSet
from packet.figures.roof import add_up
from packet.figures.shapes import feet
from packet.record.roof import Framing
from packet.record.wood import Board, Deck
from packet.units import Length

SIDE_BY_SIDE = "length_ft * width_in / 12"


def board_figures(deck: Deck, framing: Framing | None, figures: FigureSet) -> None:
    """Add what new boards come to, and how deep a nail goes through panel and old boards."""
    for board in deck.boards:
        _cover(board, figures)
        _nails(board, framing, figures)
    if deck.boards:
        _totals(deck, figures)
    _below(deck, figures)


def _cover(board: Board, figures: FigureSet) -> None:
    """Add the deck that boards make: side by side their own width, spaced on purpose with the gap beside it.

    Spaced boards whose gap nobody wrote down make an area that can't be told.
    """
    at, id = f"deck.boards.{board.id}", f"board.{board.id}"
    length, width = feet(board.length), board.width.inches
    terms = [
        figures.as_term("length_ft", f"{at}.length", length, "ft"),
        figures.as_term("width_in", f"{at}.width", width, "in"),
    ]
    if board.laid != "spaced":
        figures.computed(f"{id}.area", length * width / 12, "sq_ft", SIDE_BY_SIDE, terms, decimals=1)
    elif board.gap is not None:
        gap = figures.as_term("gap_in", f"{at}.gap", board.gap.inches, "in")
        value = boards_cover(length, width, board.gap.inches)
        figures.computed(f"{id}.area", value, "sq_ft", BOARDS_COVER, [*terms, gap], decimals=1)
        _apart(f"{id}.apart", at, board.width, board.gap, figures)


def _apart(id: str, at: str, width: Length, gap: Length, figures: FigureSet) -> None:
    """Add how far spaced boards stand apart, center to center."""
    terms = [
        figures.as_term("width_in", f"{at}.width", width.inches, "in"),
        figures.as_term("gap_in", f"{at}.gap", gap.inches, "in"),
    ]
    figures.computed(id, boards_apart(width.inches, gap.inches), "in", BOARDS_APART, terms)


def _nails(board: Board, framing: Framing | None, figures: FigureSet) -> None:
    """Add the nails of boards on regular framing, at the number recorded at each rafter."""
    if framing is None or board.nails_each_bearing is None or not board.pieces:
        return
    at, id = f"deck.boards.{board.id}", f"board.{board.id}"
    length, spacing = feet(board.length), framing.spacing.inches
    terms = [
        figures.as_term("length_ft", f"{at}.length", length, "ft"),
        figures.as_term("frame_spacing_in", "roof.framing.spacing", spacing, "in"),
        figures.as_term("pieces", f"{at}.pieces"),
    ]
    figures.computed(f"{id}.bearings", bearings(length, spacing, board.pieces), "bearing", BEARINGS, terms)
    terms = [
        figures.as_term("bearings", f"{id}.bearings"),
        figures.as_term("nails_each", f"{at}.nails_each_bearing"),
    ]
    count = board_nails(int(terms[0].value), board.nails_each_bearing)
    figures.computed(f"{id}.nails", count, "nail", BOARD_NAILS, terms)


def _totals(deck: Deck, figures: FigureSet) -> None:
    """Add running feet of all boards, and their area and nails where each of them has one."""
    lengths = [
        figures.as_term(f"part_{number}", f"deck.boards.{board.id}.length", feet(board.length), "ft")
        for number, board in enumerate(deck.boards, 1)
    ]
    formula = " + ".join(part.symbol for part in lengths)
    running = sum(part.value for part in lengths)
    figures.computed("boards.length", running, "ft", formula, lengths, decimals=1)
    for name, unit, decimals in (("area", "sq_ft", 1), ("nails", "nail", 0)):
        parts = [f"board.{board.id}.{name}" for board in deck.boards]
        if all(figures.get(id) for id in parts):
            add_up(figures, f"boards.{name}", unit, parts, decimals=decimals)


def _below(deck: Deck, figures: FigureSet) -> None:
    """Add how far apart old boards under new panels stand, and how far the nail goes into the rafter."""
    below = deck.over_boards
    if below is None:
        return
    if below.laid == "spaced" and below.width is not None and below.gap is not None:
        _apart("over_boards.apart", "deck.over_boards", below.width, below.gap, figures)
    if deck.panel is None or deck.nail is None:
        return
    add_up(
        figures,
        "over_boards.above_framing",
        "in",
        ["deck.panel.thickness", "deck.over_boards.thickness"],
        decimals=0,
    )
    terms = [
        figures.as_term("length_in", "deck.nail.size.length"),
        figures.as_term("above_in", "over_boards.above_framing"),
    ]
    value = penetration(terms[0].value, terms[1].value)
    figures.computed("over_boards.nail_in_framing", value, "in", PENETRATION, terms)
