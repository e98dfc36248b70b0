"""Findings of deck and framing: what was built does not fit what carries it, or what a rule led to."""

from collections.abc import Iterator

from packet.calc.deck.edge_support import FLOOR_RATING, SpanRating, span_rating
from packet.calc.deck.joints import end_joints, ends_in_line, strength_up_the_slope
from packet.calc.deck.reach import penetration
from packet.calc.domain import OutOfRange
from packet.figure import FigureSet, term
from packet.figures.deck import DIFFERENCE
from packet.figures.deck_parts import DeckCutOut, DeckPlan, DeckPlane
from packet.figures.shapes import feet
from packet.problems import nearest
from packet.record.job import JobRecord
from packet.reference import Library
from packet.review.model import Finding

#: A cut-out may fall short of the one a rule leads to by this [ft]: half an inch, as tapes and saws go.
SHORT_FT = 1 / 24


#: Figure of how far apart a guide wants the end joints of neighboring courses.
ENDS_APART = "deck.ends_apart"


def wood_findings(
    record: JobRecord, deck_plan: DeckPlan | None, library: Library, figures: FigureSet
) -> Iterator[Finding]:
    """Yield every finding of framing and deck, and add the figure that end joints are held against."""
    yield from _framing(record, library)
    yield from _span(record)
    yield from _spaces(record, figures)
    yield from _nail(record, library)
    yield from _strength(record)
    for plane in deck_plan.planes if deck_plan else ():
        yield from _ends(plane, library, figures)
        for item in plane.cut_outs:
            yield from _cut_short(item, figures)
        for piece in plane.pieces:
            if plane.lines and piece.bearings < 2:
                yield Finding("sheet-without-bearing", piece.id, (), {"plane": plane.id})


def _cut_short(item: DeckCutOut, figures: FigureSet) -> Iterator[Finding]:
    """Yield the sides on which less was cut out than the rule leads to, each with a figure of how far."""
    if item.made is None:
        return
    (left, lower), (right, upper) = item.asked
    made = item.made
    ends = {
        "left": (left, made[0][0]),
        "right": (made[1][0], right),
        "lower": (lower, made[0][1]),
        "upper": (made[1][1], upper),
    }
    short = {side: pair for side, pair in ends.items() if pair[1] - pair[0] > SHORT_FT}
    for side, (start, end) in short.items():
        terms = [term("to_ft", end, "ft", "shape", item.id), term("from_ft", start, "ft", "shape", item.id)]
        figures.computed(f"cut_out.{item.id}.short_{side}", end - start, "ft_in", DIFFERENCE, terms)
    if short:
        shown = tuple(f"cut_out.{item.id}.short_{side}" for side in short)
        yield Finding("cut-out-short", item.id, shown, {"sides": ", ".join(short)})


def _framing(record: JobRecord, library: Library) -> Iterator[Finding]:
    framing = record.roof.framing if record.roof else None
    if framing is None:
        return
    if framing.kind == "trusses" and framing.damage:
        yield Finding("truss-damaged", "FRAMING", (), {"what": framing.damage})
    known = library.table("specific_gravity").words("species")
    if framing.species and framing.species not in known:
        near = nearest(framing.species, known) or ", ".join(known)
        yield Finding("species-unknown", "FRAMING", (), {"found": framing.species, "near": near})


def _span(record: JobRecord) -> Iterator[Finding]:
    """Framing wider apart than the first number of the panel's span rating, which is for roofs."""
    framing, panel = record.roof.framing if record.roof else None, record.deck.panel if record.deck else None
    if framing is None or panel is None or not panel.span_rating:
        return
    if record.deck and record.deck.over_boards:
        return  # boards carry the panel between the framing
    rated = _rated(panel.span_rating)
    if rated is None:
        if not FLOOR_RATING.fullmatch(panel.span_rating):  # a floor panel's stamp has no roof span
            yield Finding("span-rating-unread", "PANEL", (), {"found": panel.span_rating})
        return
    if framing.spacing.inches > rated.roof_in:
        yield Finding("framing-too-wide", "PANEL", ("roof.framing.spacing",), {"rating": panel.span_rating})


def _rated(text: str) -> SpanRating | None:
    try:
        return span_rating(text)
    except OutOfRange:
        return None


def _spaces(record: JobRecord, figures: FigureSet) -> Iterator[Finding]:
    """Yield the sheets over a space, measured between two members, that the panel is not rated for."""
    deck = record.deck
    if deck is None or deck.panel is None or not deck.panel.span_rating or deck.over_boards:
        return
    rated = _rated(deck.panel.span_rating)
    for sheet in deck.sheets:
        space = figures.get(f"sheet.{sheet.id}.widest_space")
        if rated and space and space.value > rated.roof_in:
            yield Finding("space-too-wide", sheet.id, (space.id,), {"rating": deck.panel.span_rating})


def _nail(record: JobRecord, library: Library) -> Iterator[Finding]:
    """A deck nail that hardly reaches into the framing below the panel."""
    deck = record.deck
    if deck and deck.panel and deck.nail:
        boards = deck.over_boards.thickness if deck.over_boards else None
        above = deck.panel.thickness.inches + (boards.inches if boards else 0)
        below = penetration(deck.nail.size.length_in, above)
        least = library.table("deck_nail_reach").lookup(what="below the panel").number("least_in")
        if below < least:
            shown = ["deck.nail.size.length", "deck.panel.thickness"]
            shown += ["deck.over_boards.thickness"] if boards else []
            yield Finding("nail-too-short", "DECK", tuple(shown))


def _strength(record: JobRecord) -> Iterator[Finding]:
    """Sheets whose strength axis surely runs along the rafters."""
    deck = record.deck
    if deck is None or deck.panel is None or deck.over_boards:
        return
    for sheet in deck.sheets:
        if strength_up_the_slope(feet(sheet.along), feet(sheet.up), feet(deck.panel.width)):
            at = f"deck.sheets.{sheet.id}"
            yield Finding("strength-along-rafters", sheet.id, (f"{at}.along", f"{at}.up", "deck.panel.width"))


def _ends(plane: DeckPlane, library: Library, figures: FigureSet) -> Iterator[Finding]:
    """End joints of courses that touch, on one member of a plane; one finding a plane."""
    ends = end_joints([(piece.id, piece.outlines) for piece in plane.pieces])
    pairs = ends_in_line(ends, plane.member_ft)
    if not pairs:
        return
    if not figures.get(ENDS_APART):
        row = library.table("deck_end_joints").lookup(what="neighboring courses")
        apart = row.number("supports_apart")
        figures.measured(ENDS_APART, apart, "support", "table.deck_end_joints", sources=[row.source])
    # the place of a joint is where the sheet to its right was taped to start
    places = dict.fromkeys(f"deck.sheets.{low.after[0]}.at.0" for low, _ in pairs)
    sheets = dict.fromkeys("/".join((*joint.before, *joint.after)) for pair in pairs for joint in pair)
    yield Finding("ends-in-line", plane.id, (*places, ENDS_APART), {"sheets": ", ".join(sheets)})
