"""How far the new panel spans on this framing, with its long edges bare and held."""

from dataclasses import dataclass
from fractions import Fraction

from packet.calc.deck.edge_support import edge_support_needed
from packet.calc.domain import OutOfRange
from packet.figure import DECIDING_MARKS, Source
from packet.record.job import JobRecord
from packet.reference import Library, NotInTable

TABLE = "deck_panels"


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


def edges_want_support(record: JobRecord, span: PanelSpan | None) -> bool | None:
    """Return whether the long edges of the panels want support on this framing; None where nobody can tell.

    Panels over old boards lie on those. Framing wider than the panel may span at all is a finding of its own,
    and edge support does not mend it.
    """
    if record.deck and record.deck.over_boards:
        return False
    framing = record.roof.framing if record.roof else None
    if framing is None or span is None:
        return None
    try:
        return edge_support_needed(framing.spacing.inches, span.bare_in, span.held_in)
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
