"""Findings of deck boards: gaps on purpose under shingles, and old boards too far apart under panels."""

from collections.abc import Iterator

from packet.figure import FigureSet
from packet.figures.rules import shingled_planes
from packet.record.job import JobRecord
from packet.record.wood import Deck
from packet.reference import Library
from packet.review.model import Finding


def board_findings(record: JobRecord, library: Library, figures: FigureSet) -> Iterator[Finding]:
    """Yield every finding of boards. A wide gap between boards spaced on purpose is none by itself."""
    deck = record.deck
    if deck is None:
        return
    if record.covering and record.covering.shingle:
        shingled = {plane.id for plane in shingled_planes(record)}
        panels = {sheet.plane for sheet in deck.sheets}
        for board in deck.boards:
            if board.laid == "spaced" and board.plane in shingled - panels:
                shown = f"deck.boards.{board.id}.gap"
                yield Finding("boards-bare", board.id, (shown,) if figures.get(shown) else ())
    yield from _under_panels(deck, library, figures)


def _under_panels(deck: Deck, library: Library, figures: FigureSet) -> Iterator[Finding]:
    """Yield what of panels over spaced boards goes beyond the one published text on them."""
    if deck.over_boards is None or deck.over_boards.laid != "spaced":
        return
    table = library.table("deck_distances")
    for code, what, shown, most in (
        ("boards-too-far-apart", "spaced boards on center at most", "over_boards.apart", True),
        ("panel-thin-over-boards", "panel over spaced boards at least", "deck.panel.thickness", False),
    ):
        figure, row = figures.get(shown), table.lookup(what=what)
        limit = row.number("distance_in")
        if figure and (figure.value > limit if most else figure.value < limit):
            id = f"limit.{code}"
            figures.measured(id, limit, "in", "table.deck_distances", sources=[row.source])
            yield Finding(code, "DECK", (shown, id))
