"""Findings of deck and framing: what was built does not fit what carries it, or what a rule led to."""

from collections.abc import Iterator

from packet.calc.deck.edge_support import span_rating
from packet.calc.deck.reach import penetration
from packet.calc.domain import OutOfRange
from packet.figures.deck_parts import DeckPlan
from packet.problems import nearest
from packet.record.job import JobRecord
from packet.reference import Library
from packet.review.model import Finding

#: A cut-out may fall short of the one a rule leads to by this [ft]: half an inch, as tapes and saws go.
SHORT_FT = 1 / 24


def wood_findings(record: JobRecord, deck_plan: DeckPlan | None, library: Library) -> Iterator[Finding]:
    """Yield every finding of framing and deck."""
    yield from _framing(record, library)
    yield from _span(record)
    yield from _nail(record, library)
    for plane in deck_plan.planes if deck_plan else ():
        for item in plane.cut_outs:
            (left, low), (right, high) = item.asked
            made = item.made
            if made and any(
                short > SHORT_FT
                for short in (made[0][0] - left, made[0][1] - low, right - made[1][0], high - made[1][1])
            ):
                yield Finding("cut-out-short", item.id, tuple(step.added for step in item.steps))
        for piece in plane.pieces:
            if plane.lines and piece.bearings < 2:
                yield Finding("sheet-without-bearing", piece.id, (), {"plane": plane.id})


def _framing(record: JobRecord, library: Library) -> Iterator[Finding]:
    framing = record.roof.framing if record.roof else None
    if framing is None:
        return
    if framing.kind == "trusses" and framing.damage:
        yield Finding("truss-damaged", "FRAMING", (), {"what": framing.damage})
    known = library.table("specific_gravity").words("species")
    if framing.species and framing.species not in known:
        near = nearest(framing.species, known) or ""
        yield Finding("species-unknown", "FRAMING", (), {"found": framing.species, "near": near})


def _span(record: JobRecord) -> Iterator[Finding]:
    """Framing wider apart than the first number of the panel's span rating, which is for roofs."""
    framing, panel = record.roof.framing if record.roof else None, record.deck.panel if record.deck else None
    if framing is None or panel is None or not panel.span_rating:
        return
    try:
        rated = span_rating(panel.span_rating)
    except OutOfRange:
        return  # a floor panel's stamp has no roof span
    if framing.spacing.inches > rated.roof_in:
        yield Finding("framing-too-wide", "PANEL", ("roof.framing.spacing",), {"rating": panel.span_rating})


def _nail(record: JobRecord, library: Library) -> Iterator[Finding]:
    """A deck nail that hardly reaches into the framing below the panel."""
    deck = record.deck
    if deck and deck.panel and deck.nail:
        below = penetration(deck.nail.size.length_in, deck.panel.thickness.inches)
        least = library.table("deck_nail_reach").lookup(what="below the panel").number("least_in")
        if below < least:
            yield Finding("nail-too-short", "DECK", ("deck.nail.size.length", "deck.panel.thickness"))
