"""How far the new panel spans, with its long edges bare and held, and how far apart the framing stands."""

from dataclasses import dataclass
from fractions import Fraction

from packet.calc.deck.edge_support import edge_support_needed
from packet.calc.deck.framing import widest_space
from packet.calc.domain import OutOfRange
from packet.figure import DECIDING_MARKS, FigureSet, Number, Source, term
from packet.figures.shapes import feet
from packet.record.job import JobRecord
from packet.record.roof import Framing
from packet.record.wood import Sheet
from packet.reference import Library, NotInTable

TABLE = "deck_panels"
SPACE_BETWEEN = "12 * (to_ft - from_ft)"

#: Width of nominal 2 in framing as dressed, where the record gives none [ft].
MEMBER_WIDTH_FT = Fraction(3, 2) / 12


@dataclass(frozen=True)
class PanelSpan:
    """How far a panel spans by its stamp.

    Attributes:
        bare_in: Widest framing with bare edges [in].
        held_in: Widest framing with held edges [in].
        source: Where both were read.
    """

    bare_in: Fraction
    held_in: Fraction
    source: Source

    @property
    def may_decide(self) -> bool:
        """Whether the table was read well enough to decide."""
        return self.source.checked in DECIDING_MARKS


def panel_span(record: JobRecord, library: Library) -> PanelSpan | None:
    """Return how far the panel spans; None where the table has no such stamp, or none is recorded."""
    panel = record.deck.panel if record.deck else None
    if panel is None or not panel.span_rating:
        return None
    try:
        row = library.table(TABLE).lookup(span_rating="".join(panel.span_rating.split()))
    except NotInTable:
        return None
    held = row.number("with_edge_support_in")
    from_in = row.cells["bare_as_held_from_in"]
    thick = isinstance(from_in, Fraction) and panel.thickness.inches >= from_in
    return PanelSpan(held if thick else row.number("without_edge_support_in"), held, row.source)


def half_width_ft(framing: Framing | None) -> Fraction:
    """Return half the width of a member [ft]: as recorded, else of nominal 2 in framing."""
    return (feet(framing.width) if framing and framing.width else MEMBER_WIDTH_FT) / 2


def spaces_measured(record: JobRecord) -> dict[str, tuple[Number, Number]]:
    """Return the widest space under each new sheet whose members were measured one by one, by sheet [ft]."""
    framing = record.roof.framing if record.roof else None
    if framing is None or record.deck is None:
        return {}
    measured = {item.plane: sorted(feet(at) for at in item.at) for item in framing.lines if item.at}
    half = half_width_ft(framing)
    found = {
        sheet.id: _under(sheet, measured[sheet.plane], half)
        for sheet in record.deck.sheets
        if sheet.plane in measured
    }
    return {id: space for id, space in found.items() if space}


def _under(sheet: Sheet, lines: list[Fraction], half: Fraction) -> tuple[Number, Number] | None:
    left = feet(sheet.at[0])
    return widest_space(lines, left, left + feet(sheet.along), half)


def space_figures(record: JobRecord, figures: FigureSet) -> None:
    """Add the widest space under each new sheet whose members were measured one by one."""
    for id, (start, end) in spaces_measured(record).items():
        terms = [term("to_ft", end, "ft", "shape", id), term("from_ft", start, "ft", "shape", id)]
        figures.computed(f"sheet.{id}.widest_space", 12 * (end - start), "in", SPACE_BETWEEN, terms)


def widest_spacing(record: JobRecord) -> tuple[str, Fraction] | None:
    """Return the widest distance on center that new panels span, as its figure and in inches.

    Where members were measured one by one, the spaces under the sheets tell, and elsewhere the usual spacing;
    without new panels, that of the framing.
    """
    framing = record.roof.framing if record.roof else None
    if framing is None:
        return None
    spaces = spaces_measured(record)
    wide = [(12 * Fraction(end - start), f"sheet.{id}.widest_space") for id, (start, end) in spaces.items()]
    sheets = record.deck.sheets if record.deck else ()
    if not wide or any(sheet.id not in spaces for sheet in sheets):
        wide.append((framing.spacing.inches, "roof.framing.spacing"))
    widest, id = max(wide)
    return id, widest


def edges_want_support(record: JobRecord, span: PanelSpan | None) -> bool | None:
    """Return whether the long edges of the panels want support on this framing; None where nobody can tell.

    Panels over old boards lie on those. Framing wider than the panel may span at all is a finding of its own,
    and edge support does not mend it.
    """
    if record.deck and record.deck.over_boards:
        return False
    spacing = widest_spacing(record)
    if spacing is None or span is None:
        return None
    try:
        return edge_support_needed(spacing[1], span.bare_in, span.held_in)
    except OutOfRange:
        return None


def edge_facts(record: JobRecord, library: Library) -> dict[str, object]:
    """Return what rules on panel edges ask; a table that may not decide leaves the need unknown."""
    deck, span = record.deck, panel_span(record, library)
    needed = edges_want_support(record, span if span and span.may_decide else None)
    return {
        "edge_support": deck.edges_held_by if deck else None,
        "edges_want_support": None if needed is None else "yes" if needed else "no",
    }
