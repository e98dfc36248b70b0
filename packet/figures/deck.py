"""New deck on its framing: pieces cut to the roof's lines, nails to the schedule, cut-outs."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from packet.calc.deck.cutout import Box, CutOut, CutRule, cut_out
from packet.calc.deck.framing import framing_lines, supports
from packet.calc.deck.marks import Place, corners_kept, place_on_sheet
from packet.calc.deck.nails import Row, Schedule, Strip, nail_rows
from packet.calc.deck.pieces import Cut, Piece, piece
from packet.calc.domain import OutOfRange
from packet.calc.fasteners import NAILS_IN_ROW
from packet.calc.polygon import Outline, distance, polygon_area_formula, rectangle_at
from packet.figure import FigureSet, Number, term
from packet.figures.deck_edges import deck_edges
from packet.figures.deck_parts import UV, DeckCutOut, DeckPiece, DeckPlan, DeckPlane, DeckRow, DeckStep
from packet.figures.panel_span import half_width_ft, space_figures
from packet.figures.rules import Limit, code_ids, facts, limits
from packet.figures.shapes import PlacedPlane, RoofShape, feet, opening_outline_ft, outline_ft, roof_shape
from packet.record.job import JobRecord
from packet.record.roof import Framing, FramingLines
from packet.record.wood import CutOut as CutOutRecord
from packet.record.wood import Patch, Sheet
from packet.reference import Library

#: A strip along a rake takes the framing of the gable end and nothing beside it [ft].
GABLE_STRIP_FT = 3 / 12

DIFFERENCE = "to_ft - from_ft"


def deck_plan(record: JobRecord, library: Library, figures: FigureSet) -> DeckPlan | None:
    """Return the new deck laid out, and add its figures; None where there are no new sheets."""
    deck, roof = record.deck, record.roof
    if deck is None or roof is None or not (deck.sheets or deck.cut_outs):
        return None
    shape = roof_shape(roof)
    space_figures(record, figures)
    edge, by_rule = _spacing("edge_spacing", record, library, figures)
    field, _ = _spacing("field_spacing", record, library, figures)
    gable, _ = _spacing("gable_spacing", record, library, figures)
    planes = dict.fromkeys([*(sheet.plane for sheet in deck.sheets), *(cut.plane for cut in deck.cut_outs)])
    near, _ = _spacing("near_edges_spacing", record, library, figures)
    width = _widest("near_edges_width", record, library, figures)
    layout = _Layout(record, figures, shape, edge, field, gable, near, width)
    found = tuple(layout.plane(shape.planes[id]) for id in planes)
    layout.totals()
    return DeckPlan(edge, field, gable, by_rule, found, deck_edges(record, library, figures, found))


def _spacing(name: str, record: JobRecord, library: Library, figures: FigureSet) -> tuple[str, bool]:
    """Return the figure of a spacing: the tightest rule's that may decide, else the one measured."""
    asked = limits(f"deck.nail.{name}", code_ids(record), facts(record, figures, library), library, figures)
    governing = tightest(asked)
    if governing:
        return governing.figures[0], True
    measured = f"deck.{name}"
    return (measured, False) if figures.get(measured) else ("", False)


def _widest(name: str, record: JobRecord, library: Library, figures: FigureSet) -> str:
    """Return the figure of the largest width that rules which may decide ask at least."""
    known = facts(record, figures, library)
    asked = limits(f"deck.nail.{name}", code_ids(record), known, library, figures)
    deciding = [limit for limit in asked if limit.decides and limit.kind == "at_least" and limit.figures]
    widest = max(deciding, key=lambda limit: limit.value, default=None)  # type: ignore[arg-type, return-value]
    return widest.figures[0] if widest else ""


def beside(start: UV, end: UV, wide_ft: float) -> Outline:
    """Return the strip on both sides of an edge; what lies off the plane holds no nails."""
    length = distance(start, end)
    across = (-(end[1] - start[1]) / length * wide_ft, (end[0] - start[0]) / length * wide_ft)
    return (
        (start[0] - across[0], start[1] - across[1]),
        (end[0] - across[0], end[1] - across[1]),
        (end[0] + across[0], end[1] + across[1]),
        (start[0] + across[0], start[1] + across[1]),
    )


def tightest(asked: Sequence[Limit]) -> Limit | None:
    """Return the limit that asks for the least, among those at most a number that may decide."""
    deciding = [limit for limit in asked if limit.decides and limit.kind == "at_most" and limit.figures]
    return min(deciding, key=lambda limit: limit.value, default=None)  # type: ignore[arg-type, return-value]


@dataclass(frozen=True)
class _Layout:
    record: JobRecord
    figures: FigureSet
    shape: RoofShape
    edge: str
    field: str
    gable: str
    near: str
    near_width: str

    def plane(self, plane: PlacedPlane) -> DeckPlane:
        roof, deck = self.record.roof, self.record.deck
        assert roof is not None and deck is not None  # noqa: S101, PT018 - deck_plan asked
        openings = [opening_outline_ft(item) for item in roof.openings if item.plane == plane.id]
        lines, unsound, wood = self.framing(plane)
        strips = self.strips(plane)
        sheets = [sheet for sheet in deck.sheets if sheet.plane == plane.id]
        pieces = []
        for sheet in sheets:
            left, low = outline_ft((sheet.at,))[0]
            whole = rectangle_at(left, low, feet(sheet.along), feet(sheet.up))
            laid = piece(whole, plane.slope, openings)
            pieces.append(self.piece(sheet, whole, laid, lines, wood, strips))
        cuts = tuple(
            self.cut_out(item, plane, lines, unsound) for item in deck.cut_outs if item.plane == plane.id
        )
        return DeckPlane(
            id=plane.id,
            title=plane.title,
            outline=_floats(plane.slope),
            openings=tuple(_floats(opening) for opening in openings),
            lines=tuple(float(line) for line in lines),
            unsound=tuple(float(line) for line in unsound),
            member_ft=float(2 * self.half_width),
            strips=tuple(_floats(strip.outline) for strip in strips),
            pieces=tuple(pieces),
            cut_outs=cuts,
            level_wood=tuple(float(at) for at in wood),
        )

    @property
    def half_width(self) -> Fraction:
        return half_width_ft(self.record.roof.framing if self.record.roof else None)

    def framing(
        self, plane: PlacedPlane
    ) -> tuple[tuple[Number, ...], tuple[Number, ...], tuple[Number, ...]]:
        """Return centers of members, of unsound ones, and places of wood along the eave."""
        framing = self.record.roof.framing if self.record.roof else None
        if framing is None:
            return (), (), ()
        own = next((item for item in framing.lines if item.plane == plane.id), None)
        return (*_lines(framing, own, plane), tuple(feet(at) for at in own.level_wood) if own else ())

    def strips(self, plane: PlacedPlane) -> tuple[Strip, ...]:
        """Return the strips of a plane where rows stand closer: on gable-end framing, and near its edges."""
        return (*self.gable_strips(plane), *self.edge_strips(plane))

    def edge_strips(self, plane: PlacedPlane) -> list[Strip]:
        """Return the strips along eaves, ridges and rakes in which a rule asks closer nails."""
        if not self.near or not self.near_width:
            return []
        spacing, wide = (self.figures.by_id[id].value for id in (self.near, self.near_width))
        found = []
        for edge in self.shape.edges:
            for plane_id, ends in edge.sides:
                if edge.kind in ("eave", "ridge", "rake") and plane_id == plane.id:
                    start, end = (_float(plane.on_slope(end)) for end in ends)
                    found.append(Strip(beside(start, end, float(wide) / 12), spacing))
        return found

    def gable_strips(self, plane: PlacedPlane) -> list[Strip]:
        """Return the strips along the rakes of a plane, as wide as the framing of the gable end."""
        if not self.gable:
            return []
        spacing = self.figures.by_id[self.gable].value
        found = []
        for edge in self.shape.edges:
            for plane_id, ends in edge.sides:
                if edge.kind == "rake" and plane_id == plane.id:
                    (u, v), (to_u, to_v) = (plane.on_slope(end) for end in ends)
                    if u == to_u:
                        low = min(float(v), float(to_v))
                        height = abs(float(to_v) - float(v))
                        outline = rectangle_at(float(u) - GABLE_STRIP_FT, low, 2 * GABLE_STRIP_FT, height)
                        found.append(Strip(outline, spacing))
        return found

    def piece(
        self,
        sheet: Sheet,
        whole: Outline,
        laid: Piece,
        lines: Sequence[Number],
        wood: Sequence[Number],
        strips: Sequence[Strip],
    ) -> DeckPiece:
        rows: list[Row] = []
        if self.edge and self.field:
            edge_in, field_in = (self.figures.by_id[name].value for name in (self.edge, self.field))
            schedule = Schedule(edge_in, field_in, tuple(strips))
            for outline in laid.outlines:
                rows += nail_rows(outline, lines, self.half_width, schedule, wood, laid.holes)
        id, left, right = sheet.id, whole[0][0], whole[1][0]
        marks = tuple((_mark(whole, cut.start), _mark(whole, cut.end)) for cut in laid.cuts)
        return DeckPiece(
            id=id,
            outlines=tuple(_floats(outline) for outline in laid.outlines),
            cuts=tuple(self.cut(id, number, cut) for number, cut in enumerate(laid.cuts, 1)),
            rows=tuple(
                DeckRow(row.kind, _float(row.start), _float(row.end), row.count, row.opens) for row in rows
            ),
            laid=self.laid(id, laid),
            nails=self.nails(id, rows),
            bearings=supports(lines, left, right, self.half_width),
            marks=marks,
            corners=tuple(
                corner
                for corner in corners_kept(whole, laid.outlines)
                if not any(corner in ends for ends in marks)
            ),
            trimmed=self.trimmed(sheet),
        )

    def trimmed(self, sheet: Sheet) -> bool:
        """Return whether a piece was cut to its size before it was laid; a panel may be turned."""
        panel = self.record.deck.panel if self.record.deck else None
        if sheet.cut_from or panel is None:
            return bool(sheet.cut_from)
        return sorted((feet(sheet.along), feet(sheet.up))) != sorted((feet(panel.width), feet(panel.length)))

    def laid(self, id: str, laid: Piece) -> str:
        """Add the area of a piece after cutting by the shoelace sum: its parts, less the holes in them."""
        name, formula, terms, first = f"sheet.{id}.laid", "", [], 1
        signs = [*(" + " for _ in laid.outlines), *(" - " for _ in laid.holes)]
        for sign, outline in zip(signs, (*laid.outlines, *laid.holes), strict=True):
            formula += (sign if formula else "") + polygon_area_formula(len(outline), first)
            terms += [
                term(f"{axis}{number}", corner[place], "ft", "shape", id)
                for number, corner in enumerate(outline, first)
                for place, axis in enumerate("uv")
            ]
            first += len(outline)
        if not formula:
            return ""
        self.figures.computed(name, laid.area_sq_ft, "sq_ft", formula, terms, decimals=1)
        return name

    def cut(self, id: str, number: int, cut: Cut) -> tuple[str, str, str, str]:
        """Add both ends of a cut, each along and up from the sheet's lower left corner."""
        names = []
        for place, value in zip(
            ("from_along", "from_up", "to_along", "to_up"), (*cut.start, *cut.end), strict=True
        ):
            name = f"sheet.{id}.cut_{number}.{place}"
            self.figures.computed(
                name, value, "ft_in", "mark_ft", [term("mark_ft", value, "ft", "shape", id)]
            )
            names.append(name)
        return tuple(names)  # type: ignore[return-value]

    def nails(self, id: str, rows: Sequence[Row]) -> str:
        """Add the nails of a piece, row by row."""
        if not rows:
            return ""
        formulas, terms = [], []
        spacing = {
            self.figures.by_id[name].value: (symbol, name)
            for symbol, name in (
                ("near_in", self.near),
                ("closer_in", self.gable),
                ("field_in", self.field),
                ("edge_in", self.edge),
            )
            if name
        }
        used: dict[str, str] = {}
        for number, row in enumerate(rows, 1):
            symbol, figure = spacing[row.spacing_in]
            used[symbol] = figure
            formula = NAILS_IN_ROW.replace("row_ft", f"row_{number}").replace("spacing_in", symbol)
            formulas.append(formula if row.opens else formula.removesuffix(" + 1"))
            terms.append(term(f"row_{number}", row.length_ft, "ft", "shape", id))
        terms += [self.figures.as_term(symbol, figure) for symbol, figure in used.items()]
        name = f"sheet.{id}.nails"
        self.figures.computed(name, sum(row.count for row in rows), "nail", " + ".join(formulas), terms)
        return name

    def cut_out(
        self, item: CutOutRecord, plane: PlacedPlane, lines: Sequence[Number], unsound: Sequence[Number]
    ) -> DeckCutOut:
        """Return a cut-out with what the rule leads to; without framing, the rot itself."""
        us, vs = [u for u, _ in plane.slope], [v for _, v in plane.slope]
        around = Box(min(us), max(us), min(vs), max(vs))
        rot = _box(item.rot)
        try:
            asked = cut_out(rot, around, lines, unsound, item.edges, self.half_width, CutRule())
        except OutOfRange:
            asked = CutOut(rot, ())
        steps = []
        for number, step in enumerate(asked.steps, 1):
            name, ends = f"cut_out.{item.id}.step_{number}", sorted((step.start, step.end))
            terms = [
                term("to_ft", ends[1], "ft", "shape", item.id),
                term("from_ft", ends[0], "ft", "shape", item.id),
            ]
            self.figures.computed(name, ends[1] - ends[0], "ft_in", DIFFERENCE, terms)
            steps.append(DeckStep(step.side, step.reason, name))
        made = _corners(_box(item.cut)) if item.cut else None
        return DeckCutOut(item.id, _corners(rot), _corners(asked.box), made, tuple(steps), item.edges)

    def totals(self) -> None:
        """Add area laid and nails of all pieces."""
        deck = self.record.deck
        for name, unit, total in (("laid", "sq_ft", "deck.laid_area"), ("nails", "nail", "deck.nails")):
            ids = [f"sheet.{sheet.id}.{name}" for sheet in deck.sheets] if deck else []
            if ids and all(self.figures.get(id) for id in ids):
                terms = [self.figures.as_term(f"part_{number}", id) for number, id in enumerate(ids, 1)]
                formula = " + ".join(item.symbol for item in terms)
                value = sum(item.value for item in terms)
                self.figures.computed(
                    total, value, unit, formula, terms, decimals=1 if unit == "sq_ft" else 0
                )


def _lines(
    framing: Framing, own: FramingLines | None, plane: PlacedPlane
) -> tuple[tuple[Number, ...], tuple[Number, ...]]:
    """Return centers of members across a plane, and those that are unsound."""
    unsound = tuple(feet(at) for at in own.unsound) if own else ()
    if own and own.at:
        return tuple(sorted(feet(at) for at in own.at)), unsound
    us = [u for u, _ in plane.slope]
    first = feet(own.first) if own and own.first else 0
    return framing_lines(first, framing.spacing.inches, min(us), max(us)), unsound


def _box(patch: Patch) -> Box:
    left, low = outline_ft((patch.at,))[0]
    return Box(left, left + feet(patch.along), low, low + feet(patch.up))


def _corners(box: Box) -> tuple[UV, UV]:
    return ((float(box.left), float(box.lower)), (float(box.right), float(box.upper)))


def _mark(sheet: Outline, at: tuple[Number, Number]) -> Place:
    (left, low), (right, high) = sheet[0], sheet[2]
    return place_on_sheet(*at, right - left, high - low)


def _float(point: tuple[Number, Number]) -> UV:
    return (float(point[0]), float(point[1]))


def _floats(points: Outline) -> tuple[UV, ...]:
    return tuple(_float(point) for point in points)
