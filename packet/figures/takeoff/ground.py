"""What every line of the takeoff stands on: the work, its edges, and what one unit of the goods gives."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from packet.figure import FigureSet, Number, Source, Term, term
from packet.figures.rules import code_ids, facts, shingled_planes
from packet.figures.shapes import PlacedPlane, RoofEdge, RoofShape, roof_shape
from packet.record.goods import Bought
from packet.record.job import JobRecord
from packet.record.layers import WorkedArea
from packet.reference import Library
from packet.uses import Use

#: Field of a bought line that holds a wrapper's figure, by the name that product sheets give it.
WRAPPER = {
    "cover_sq_ft": "cover_each",
    "length_ft": "length_each",
    "width_in": "width_each",
    "pieces_each": "pieces_each",
    "nails_a_pound": "nails_a_pound",
}
UNITS = {
    "cover_sq_ft": "sq_ft",
    "length_ft": "ft",
    "width_in": "in",
    "exposure_in": "in",
    "pieces_each": "piece",
    "nails_a_pound": "per_lb",
    "spots_each": "spot",
}


@dataclass
class Ground:
    """The job as the takeoff sees it.

    Attributes:
        missing: What the line now computed lacks, as keys of words.
        sources: Product sheets the line now computed was read from.
    """

    record: JobRecord
    library: Library
    figures: FigureSet
    missing: list[str] = field(default_factory=list)
    sources: list[Source] = field(default_factory=list)

    @property
    def shape(self) -> RoofShape:
        """Planes and edges; a roof without planes has none."""
        return roof_shape(self.record.roof) if self.record.roof else RoofShape({}, ())

    @property
    def areas(self) -> tuple[WorkedArea, ...]:
        """Areas worked on."""
        return self.record.covering.areas if self.record.covering else ()

    @property
    def shingled(self) -> tuple[WorkedArea, ...]:
        """Areas worked on that get shingles."""
        covering = self.record.covering
        low = {entry.plane for entry in covering.low_slope} if covering else set()
        return tuple(area for area in self.areas if area.plane not in low)

    def plane(self, area: WorkedArea) -> PlacedPlane:
        """Return the plane of an area."""
        return self.shape.planes[area.plane]

    def edges(self, *kinds: str, planes: Sequence[str] = ()) -> list[RoofEdge]:
        """Return the edges of some kinds that lie along the work, those of the planes when some are given."""
        return [
            edge
            for edge in self.shape.edges
            if edge.kind in kinds
            and self.figures.get(f"edge.{edge.id}.worked")
            and (not planes or any(plane in planes for plane, _ in edge.sides))
        ]

    def worked(self, symbol: str, edge: RoofEdge) -> Term:
        """Return how much of an edge lies along the work [ft]."""
        return self.figures.as_term(symbol, f"edge.{edge.id}.worked")

    def goods(self, use: Use) -> tuple[Bought, ...]:
        """Return the lines bought for a use."""
        return tuple(line for line in self.record.bought if line.use == use)

    def gives(self, use: Use, name: str, symbol: str = "") -> Term | None:
        """Return what one unit of the goods for a use gives, from the wrapper, else from the product sheet.

        Where lines differ, or one does not say it, nobody could tell which went where, and there is no such
        figure.
        """
        lines = self.goods(use)
        found = [one for line in lines if (one := self._of_line(line, name, symbol or name))]
        if not found or len(found) < len(lines):
            self.missing.append(name if lines else "no_goods")
            return None
        if len({item.value for item, _ in found}) > 1:
            self.missing.append("one_kind")
            return None
        item, source = found[0]
        if source and source not in self.sources:
            self.sources.append(source)
        return item

    def stated(self, use: Use, name: str) -> bool:
        """Tell whether any line bought for a use gives a figure."""
        return any(states(line, name, self.library) for line in self.goods(use))

    def _of_line(self, line: Bought, name: str, symbol: str) -> tuple[Term, Source | None] | None:
        key = WRAPPER.get(name)
        printed = getattr(line, key) if key else None
        if printed is not None:
            figure = f"bought.{line.id}.{key}"
            value: Number = self.figures.by_id[figure].value
            if name == "length_ft":
                value = printed.inches / 12
            elif name == "width_in":
                value = printed.inches
            return self.figures.as_term(symbol, figure, value, UNITS[name]), None
        read = self.library.product(line.product).figures.get(name) if line.product else None
        if read is None or read.value is None:
            return None
        ref = f"{line.product}.{name}"
        return term(symbol, read.value, UNITS[name], "product", ref), read.source

    def lap(self, where: str, symbol: str) -> Term:
        """Return a published lap of underlayment [in]."""
        row = self.library.table("underlayment_laps").lookup(where=where)
        if row.source not in self.sources:
            self.sources.append(row.source)
        return term(symbol, row.number("lap_in"), "in", "table", "underlayment_laps")

    def leaves_some(self, lap: Term, piece: Term) -> bool:
        """Tell whether a lap leaves some of a piece, both in one unit; else nothing is counted."""
        if lap.value < piece.value:
            return True
        self.missing.append("lap_too_large")
        return False

    def by_rule(self, asks: str, symbol: str, unit: str) -> Term | None:
        """Return the largest value that rules of this job ask at least, among those that may decide."""
        known = facts(self.record, self.figures, self.library)
        rows = self.library.rows(code_ids(self.record), asks, known)
        rows = [row for row in rows if row.may_decide and isinstance(row.value, Fraction)]
        if not rows:
            return None
        row = max(rows, key=lambda row: row.value)  # type: ignore[arg-type, return-value]
        self.sources.append(self.library.source(row))
        return term(symbol, row.value, unit, "rule", row.id)  # type: ignore[arg-type]

    def add_up(self, id: str, unit: str, parts: Sequence[str], *, decimals: int = 0) -> str:
        """Add the sum of figures and return its id."""
        terms = [self.figures.as_term(f"part_{number}", part) for number, part in enumerate(parts, 1)]
        formula = " + ".join(item.symbol for item in terms)
        self.computed(id, sum(item.value for item in terms), unit, formula, terms, decimals=decimals)
        return id

    def computed(
        self, id: str, value: Number, unit: str, formula: str, terms: Sequence[Term], *, decimals: int = 0
    ) -> str:
        """Add a figure that rests on the sources of this line, and return its id."""
        self.figures.computed(id, value, unit, formula, terms, decimals=decimals, sources=self.sources)
        return id

    def low_slope(self, plane: PlacedPlane) -> bool:
        """Tell whether underlayment goes double on a plane under shingles: below 4 in 12."""
        return plane.rise < 4 and plane.id in {item.id for item in shingled_planes(self.record)}


def states(line: Bought, name: str, library: Library) -> bool:
    """Tell whether the wrapper or the product sheet of a line gives a figure."""
    key = WRAPPER.get(name)
    if key and getattr(line, key) is not None:
        return True
    return line.product is not None and name in library.product(line.product).figures
