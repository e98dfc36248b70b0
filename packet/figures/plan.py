"""The roof in plan, in feet, x east and y north: what a drawing is made from."""

from collections.abc import Sequence
from dataclasses import dataclass

from packet.calc.plan import plan_outline, slope_to_plan
from packet.calc.polygon import Outline
from packet.figure import FigureSet
from packet.figures.roof import net_area_id
from packet.figures.shapes import (
    PlacedPlane,
    RoofEdge,
    RoofShape,
    opening_outline_ft,
    outline_ft,
    roof_shape,
)
from packet.record.job import JobRecord
from packet.record.layers import WorkedArea

PlanPoint = tuple[float, float]

#: A plane counts as worked whole from this share of its area on; outlines are taped, not exact.
WHOLE_SHARE = 0.99


@dataclass(frozen=True)
class PlanPlane:
    """One plane seen from above; ``pitch_figure`` is the figure of its pitch."""

    id: str
    title: str
    facing: str
    pitch: str
    pitch_figure: str
    outline: tuple[PlanPoint, ...]
    worked: bool
    part_worked: bool


@dataclass(frozen=True)
class PlanEdge:
    """One edge seen from above.

    Attributes:
        length_ft: True length on the slope [ft].
        taped: Figure of its length as taped; "" when it was not.
    """

    id: str
    kind: str
    line: tuple[PlanPoint, PlanPoint]
    length_ft: float
    taped: str = ""


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
    shape = roof_shape(roof)
    known = shape.planes
    areas = record.covering.areas if record.covering else ()
    worked: dict[str, float] = {}
    for area in areas:
        worked[area.plane] = worked.get(area.plane, 0.0) + float(figures.by_id[f"area.{area.id}.area"].value)
    marks = [(d.id, d.kind, known[d.plane], d.at) for d in record.details if d.plane and d.at]
    return Geometry(
        planes=tuple(_plane(item, worked.get(id, 0.0), figures) for id, item in known.items()),
        edges=tuple(_edge(edge, shape) for edge in shape.edges),
        areas=tuple(PlanArea(a.id, a.plane, _worked(known[a.plane], a)) for a in areas),
        openings=tuple(
            PlanArea(o.id, o.plane, _seen(known[o.plane], opening_outline_ft(o))) for o in roof.openings
        ),
        marks=tuple(PlanMark(id, kind, _seen(item, outline_ft((at,)))[0]) for id, kind, item, at in marks),
    )


def _plane(item: PlacedPlane, worked_sq_ft: float, figures: FigureSet) -> PlanPlane:
    whole = float(figures.by_id[net_area_id(item.id, figures)].value)
    full = worked_sq_ft >= WHOLE_SHARE * whole
    pitch = f"{float(item.rise):g}:12"
    outline = _floats(plan_outline(item.level, item.place))
    part = worked_sq_ft > 0 and not full
    return PlanPlane(item.id, item.title, item.facing, pitch, item.pitch, outline, full, part)


def _edge(edge: RoofEdge, shape: RoofShape) -> PlanEdge:
    placed = shape.placed(edge)
    start, end = _floats(placed.line)
    return PlanEdge(edge.id, edge.kind, (start, end), placed.length_ft, edge.measured)


def _worked(item: PlacedPlane, area: WorkedArea) -> tuple[PlanPoint, ...]:
    if area.outline is None:
        return _floats(plan_outline(item.level, item.place))
    return _seen(item, outline_ft(area.outline))


def _seen(item: PlacedPlane, points: Outline) -> tuple[PlanPoint, ...]:
    return _floats([slope_to_plan(item.place, item.rise, point) for point in points])


def _floats(points: Sequence[tuple[object, object]]) -> tuple[PlanPoint, ...]:
    return tuple((float(x), float(y)) for x, y in points)  # type: ignore[arg-type]
