"""The roof in plan, in feet, x east and y north: what a drawing is made from."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from packet.calc.plan import placed_side, plan_outline, slope_to_plan
from packet.calc.polygon import Outline
from packet.figure import FigureSet
from packet.figures.roof import net_area_id
from packet.figures.shapes import PlacedPlane, opening_outline_ft, outline_ft, placed_planes
from packet.record.job import JobRecord
from packet.record.roof import Edge

PlanPoint = tuple[float, float]

#: A plane counts as worked whole from this share of its area on; outlines are taped, not exact.
WHOLE_SHARE = 0.99


@dataclass(frozen=True)
class PlanPlane:
    """One plane seen from above."""

    id: str
    title: str
    facing: str
    pitch: str
    outline: tuple[PlanPoint, ...]
    worked: bool
    part_worked: bool


@dataclass(frozen=True)
class PlanEdge:
    """One edge seen from above; ``length_ft`` is its true length on the slope [ft]."""

    id: str
    kind: str
    line: tuple[PlanPoint, PlanPoint]
    length_ft: float


@dataclass(frozen=True)
class PlanArea:
    """A worked area or an opening seen from above."""

    id: str
    plane: str
    outline: tuple[PlanPoint, ...]


@dataclass(frozen=True)
class PlanMark:
    """A detail's place seen from above."""

    id: str
    label: str
    at: PlanPoint


@dataclass(frozen=True)
class Geometry:
    """All of it."""

    planes: tuple[PlanPlane, ...] = ()
    edges: tuple[PlanEdge, ...] = ()
    areas: tuple[PlanArea, ...] = ()
    openings: tuple[PlanArea, ...] = ()
    marks: tuple[PlanMark, ...] = ()


def plan(record: JobRecord, figures: FigureSet) -> Geometry | None:
    """Return the roof in plan, or None when the record has no planes."""
    roof = record.roof
    if roof is None:
        return None
    known = placed_planes(roof)
    areas = record.covering.areas if record.covering else ()
    worked: dict[str, float] = {}
    for area in areas:
        worked[area.plane] = worked.get(area.plane, 0.0) + float(figures.by_id[f"area.{area.id}.area"].value)
    marks = [(d.id, d.kind, known[d.plane], d.at) for d in record.details if d.plane and d.at]
    return Geometry(
        planes=tuple(_plane(item, worked.get(id, 0.0), figures) for id, item in known.items()),
        edges=tuple(_edge(edge, known) for edge in roof.edges),
        areas=tuple(PlanArea(a.id, a.plane, _seen(known[a.plane], outline_ft(a.outline))) for a in areas),
        openings=tuple(
            PlanArea(o.id, o.plane, _seen(known[o.plane], opening_outline_ft(o))) for o in roof.openings
        ),
        marks=tuple(PlanMark(id, kind, _seen(item, outline_ft((at,)))[0]) for id, kind, item, at in marks),
    )


def _plane(item: PlacedPlane, worked_sq_ft: float, figures: FigureSet) -> PlanPlane:
    plane = item.plane
    whole = float(figures.by_id[net_area_id(plane.id, figures)].value)
    full = worked_sq_ft >= WHOLE_SHARE * whole
    pitch = f"{float(plane.pitch.rise_in_12):g}:12"
    outline = _floats(plan_outline(item.shape, item.place))
    return PlanPlane(plane.id, plane.title, plane.facing, pitch, outline, full, worked_sq_ft > 0 and not full)


def _edge(edge: Edge, known: Mapping[str, PlacedPlane]) -> PlanEdge:
    plane, _, side = edge.sides[0].partition(".")
    placed = placed_side(known[plane].shape, known[plane].place, side)  # type: ignore[arg-type]
    start, end = _floats(placed.line)
    return PlanEdge(edge.id, edge.kind, (start, end), placed.length_ft)


def _seen(item: PlacedPlane, points: Outline) -> tuple[PlanPoint, ...]:
    return _floats([slope_to_plan(item.place, item.shape.rise, point) for point in points])


def _floats(points: Sequence[tuple[object, object]]) -> tuple[PlanPoint, ...]:
    return tuple((float(x), float(y)) for x, y in points)  # type: ignore[arg-type]
