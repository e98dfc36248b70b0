"""Underlayment, ice barrier, and the caps that hold the underlayment."""

from collections.abc import Sequence
from fractions import Fraction

from packet.calc.fasteners import CAP_NAILS, cap_nails
from packet.calc.ice_barrier import BARRIER_LENGTH, BARRIER_ROWS, barrier_length, barrier_rows
from packet.calc.slope import RAKE_LENGTH, rake_length
from packet.calc.takeoff import (
    LOW_SLOPE_SHEET_AREA,
    OVER_RIDGE_AREA,
    SHEET_AREA,
    UP_WALL_AREA,
    low_slope_sheet_area,
    over_ridge_area,
    sheet_area,
    up_wall_area,
)
from packet.figure import Term, term
from packet.figures.shapes import PlacedPlane, RoofEdge, outline_ft
from packet.figures.takeoff.ground import Ground
from packet.record.layers import WorkedArea
from packet.record.planes import Outlined

OPEN_AREA = "area_sq_ft - eave_ft * depth_in / 12"
ABOVE_BARRIER = "max(0, height_ft - depth_in / 12)"
HEIGHT_TAPED = "v2 - v1"
MEAN_RUN = "area_sq_ft / height_ft"


def underlayment(ground: Ground) -> str:
    """Return the sheet that goes on the work, laps in it: plane by plane, over hips and ridges, up walls.

    Below an ice barrier there is none: it starts at the barrier's upper edge.
    """
    areas = ground.shingled
    if not areas:
        return ""
    if not ground.record.dry_in:
        ground.missing.append("dry_in")
        return ""
    width = ground.gives("underlayment", "width_in", "roll_width_in")
    planes = list(dict.fromkeys(area.plane for area in areas))
    if width is None or not _laps_fit(ground, planes, width):
        return ""
    parts = [_sheet(ground, plane, width) for plane in planes]
    over = ground.lap("over a hip or ridge from each side", "over_in")
    for edge in ground.edges("hip", "ridge", planes=planes):
        length = ground.worked("length_ft", edge)
        value = over_ridge_area(length.value, over.value)
        id = f"takeoff.underlayment.{edge.id}"
        parts.append(ground.computed(id, value, "sq_ft", OVER_RIDGE_AREA, [length, over], decimals=1))
    up = ground.lap("up a wall", "up_in")
    for edge in ground.edges("sidewall", "headwall", planes=planes):
        length = ground.worked("length_ft", edge)
        id, value = f"takeoff.underlayment.{edge.id}", up_wall_area(length.value, up.value)
        parts.append(ground.computed(id, value, "sq_ft", UP_WALL_AREA, [length, up], decimals=1))
    return ground.add_up("takeoff.underlayment.net", "sq_ft", parts, decimals=1)


def _sheet(ground: Ground, plane_id: str, width: Term) -> str:
    """Return the sheet on the work of one plane, single, or double where the slope is low.

    Its areas are taken together: the strip along an eave, and what a barrier covers, are there once.
    """
    plane, id = ground.shape.planes[plane_id], f"takeoff.underlayment.{plane_id}"
    covered = ground.figures.as_term("area_sq_ft", _above_barrier(ground, plane_id))
    dry_in = ground.record.dry_in
    lap = _head_lap(ground, plane)
    if ground.low_slope(plane):
        strip = ground.lap("starter strip below 4 in 12", "strip_width_in")
        eaves = [ground.worked("eave_ft", edge) for edge in ground.edges("eave", planes=[plane.id])]
        eave = (
            _sum_term(ground, f"{id}.eave", eaves) if eaves else term("eave_ft", 0, "ft", "shape", plane.id)
        )
        value = low_slope_sheet_area(covered.value, eave.value, width.value, lap.value, strip.value)
        terms = [covered, width, lap, eave, strip]
        return ground.computed(id, value, "sq_ft", LOW_SLOPE_SHEET_AREA, terms, decimals=1)
    value = sheet_area(covered.value, width.value, lap.value)
    if dry_in and dry_in.layers and dry_in.layers > 1:
        layers = ground.figures.as_term("layers", "dry_in.layers")
        formula, terms = f"layers * {SHEET_AREA}", [layers, covered, width, lap]
        return ground.computed(id, layers.value * value, "sq_ft", formula, terms, decimals=1)
    return ground.computed(id, value, "sq_ft", SHEET_AREA, [covered, width, lap], decimals=1)


def _laps_fit(ground: Ground, planes: Sequence[str], width: Term) -> bool:
    """Tell whether the head lap leaves some of the sheet on every plane."""
    return all(ground.leaves_some(_head_lap(ground, ground.shape.planes[id]), width) for id in planes)


def _head_lap(ground: Ground, plane: PlacedPlane) -> Term:
    """Return the head lap on a plane: as measured, else as published.

    A lap measured on the other planes of a roof is not that of a low slope, where the sheets lie double.
    """
    low, dry_in = ground.low_slope(plane), ground.record.dry_in
    measured = dry_in.head_lap if dry_in else None
    where = "head lap below 4 in 12" if low else "head lap from 4 in 12"
    published = ground.lap(where, "head_lap_in") if low or not measured else None
    if measured and (published is None or measured.inches >= published.value):
        return ground.figures.as_term("head_lap_in", "dry_in.head_lap", measured.inches, "in")
    assert published is not None  # noqa: S101 - it was looked up, for nothing was measured or too little
    return published


def _above_barrier(ground: Ground, plane_id: str) -> str:
    """Return the area of the work of a plane above an ice barrier; all of it where there is none."""
    figures, id = ground.figures, f"takeoff.underlayment.{plane_id}.open"
    areas = [f"area.{area.id}.area" for area in ground.shingled if area.plane == plane_id]
    whole = areas[0] if len(areas) == 1 else ground.add_up(f"{id}.whole", "sq_ft", areas, decimals=1)
    depth = _depth(ground)
    eaves = _barrier_edges(ground, [plane_id]) if depth else []
    if not depth or not eaves:
        return whole
    terms = [ground.worked(f"part_{number}", edge) for number, edge in enumerate(eaves, 1)]
    eave = _sum_term(ground, f"{id}.eave", terms)
    covered = figures.as_term("area_sq_ft", whole)
    value = max(0, covered.value - eave.value * depth.value / 12)
    formula = f"max(0, {OPEN_AREA})"
    return ground.computed(id, value, "sq_ft", formula, [covered, eave, depth], decimals=1)


def _barrier_edges(ground: Ground, planes: Sequence[str]) -> list[RoofEdge]:
    """Return the edges of planes along which an ice barrier lies: those recorded, else their eaves.

    A pitch break belongs to the plane above it, the first of its sides.
    """
    barrier = ground.record.dry_in.ice_barrier if ground.record.dry_in else None
    if barrier is None or not barrier.edges:
        return ground.edges("eave", planes=planes)
    kinds = {edge.kind for edge in ground.shape.edges if edge.id in barrier.edges}
    found = ground.edges(*kinds, planes=planes)
    return [edge for edge in found if edge.id in barrier.edges and edge.sides[0][0] in planes]


def _sum_term(ground: Ground, id: str, terms: list[Term]) -> Term:
    """Return the sum of lengths as one term, through a figure of its own where there are several."""
    if len(terms) == 1:
        only = terms[0]
        return Term("eave_ft", only.value, only.unit, only.origin)
    parts = [Term(f"part_{n}", item.value, item.unit, item.origin) for n, item in enumerate(terms, 1)]
    formula = " + ".join(item.symbol for item in parts)
    ground.computed(id, sum(item.value for item in parts), "ft_in", formula, parts)
    return ground.figures.as_term("eave_ft", id)


def _depth(ground: Ground) -> Term | None:
    """Return the depth of the ice barrier up the slope: as taped, else as the rules ask it."""
    barrier = ground.record.dry_in.ice_barrier if ground.record.dry_in else None
    if barrier is None:
        return None
    if barrier.up_slope:
        return ground.figures.as_term(
            "depth_in", "dry_in.ice_barrier.up_slope", barrier.up_slope.inches, "in"
        )
    needed = ground.figures.get("ice_barrier.needed")
    return ground.figures.as_term("depth_in", needed.id) if needed else None


def ice_barrier(ground: Ground) -> str:
    """Return the length of sheet along the eaves of the work, course by course."""
    depth = _depth(ground)
    planes = [area.plane for area in ground.shingled]
    eaves = _barrier_edges(ground, planes) if planes else []
    barrier = ground.record.dry_in.ice_barrier if ground.record.dry_in else None
    if depth is None or not eaves or barrier is None:
        return ""
    width = ground.gives("ice barrier", "width_in", "sheet_width_in")
    if barrier.lap is None:
        ground.missing.append("lap")
    if width is None or barrier.lap is None:
        return ""
    lap = ground.figures.as_term("lap_in", "dry_in.ice_barrier.lap", barrier.lap.inches, "in")
    if not ground.leaves_some(lap, width):
        return ""
    rows = barrier_rows(depth.value, width.value, lap.value)
    courses = ground.computed("takeoff.ice-barrier.courses", rows, "sheet", BARRIER_ROWS, [depth, lap, width])
    parts = []
    for edge in eaves:
        terms = [ground.worked("eave_ft", edge), ground.figures.as_term("rows", courses)]
        value = barrier_length(terms[0].value, rows)
        parts.append(ground.computed(f"takeoff.ice-barrier.{edge.id}", value, "ft_in", BARRIER_LENGTH, terms))
    return ground.add_up("takeoff.ice-barrier.net", "ft_in", parts)


def cap_nail_count(ground: Ground) -> str:
    """Return the caps that hold the underlayment, on the spacing recorded, area by area."""
    dry_in = ground.record.dry_in
    caps = dry_in.fasteners if dry_in else None
    if caps is None or dry_in is None or not ground.shingled:
        return ""
    width = ground.gives("underlayment", "width_in", "sheet_width_in")
    if width is None:
        ground.missing[-1] = "underlayment_width"  # not a figure of the caps' own wrapper
        return ""
    if not _laps_fit(ground, [area.plane for area in ground.shingled], width):
        return ""
    at = "dry_in.fasteners"
    spacing = [
        ground.figures.as_term("lap_spacing_in", f"{at}.at_laps", caps.at_laps.inches, "in"),
        ground.figures.as_term("field_spacing_in", f"{at}.between", caps.between.inches, "in"),
    ]
    parts = [part for area in ground.shingled if (part := _caps_on(ground, area, width, spacing))]
    if not parts:
        return ""
    return ground.add_up("takeoff.cap-nails.net", "nail", parts)


def _caps_on(ground: Ground, area: WorkedArea, width: Term, spacing: list[Term]) -> str:
    """Return the caps on one area, course by course; "" where an ice barrier covers all of it."""
    id, figures, lap = f"takeoff.cap-nails.{area.id}", ground.figures, _head_lap(ground, ground.plane(area))
    height_id = _height(ground, area, f"{id}.height")
    height, size = (
        figures.as_term("height_ft", height_id),
        figures.as_term("area_sq_ft", f"area.{area.id}.area"),
    )
    ground.computed(f"{id}.run", size.value / height.value, "ft_in", MEAN_RUN, [size, height])
    covered = _height_above_barrier(ground, area, height, f"{id}.above")
    if not covered.value:
        return ""
    depth = figures.as_term("depth_in", covered.origin.ref, covered.value * 12, "in")
    rows = barrier_rows(depth.value, width.value, lap.value)
    terms = [depth, Term("lap_in", lap.value, "in", lap.origin), width]
    ground.computed(f"{id}.courses", rows, "sheet", BARRIER_ROWS, terms)
    run = figures.as_term("run_ft", f"{id}.run")
    count = cap_nails(
        run.value,
        rows,
        sheet_width_in=width.value,
        head_lap_in=lap.value,
        lap_spacing_in=spacing[0].value,
        field_spacing_in=spacing[1].value,
    )
    terms = [figures.as_term("sheets", f"{id}.courses"), run, width, lap, *spacing]
    return ground.computed(id, count, "nail", CAP_NAILS, terms)


def _height_above_barrier(ground: Ground, area: WorkedArea, height: Term, id: str) -> Term:
    """Return the height of an area above the ice barrier, where one lies at its foot."""
    depth = _depth(ground)
    at_foot = area.outline is None or min(v for _, v in outline_ft(area.outline)) <= 0
    if depth is None or not at_foot or not _barrier_edges(ground, [area.plane]):
        return height
    value = max(0, height.value - depth.value / 12)
    return ground.figures.as_term(
        "height_ft", ground.computed(id, value, "ft_in", ABOVE_BARRIER, [height, depth])
    )


def _height(ground: Ground, area: WorkedArea, id: str) -> str:
    """Return the height of an area up the slope."""
    plane, figures = ground.plane(area), ground.figures
    taped = plane.taped
    points = area.outline or (taped.outline if isinstance(taped, Outlined) else None)
    if points:
        heights = [v for _, v in outline_ft(points)]
        at = f"covering.areas.{area.id}" if area.outline else f"roof.planes.{plane.id}"
        ends = [(max(heights), 2), (min(heights), 1)]
        terms = [figures.as_term(f"v{n}", f"{at}.outline.{heights.index(v)}.1", v, "ft") for v, n in ends]
        value: Fraction | float = max(heights) - min(heights)
        return ground.computed(id, value, "ft_in", HEIGHT_TAPED, terms)
    run = max(run for _, run in plane.level)
    if taped is None:
        level = term("run_ft", run, "ft", "form", plane.form)
    else:
        level = figures.as_term("run_ft", f"roof.planes.{plane.id}.run", run, "ft")
    terms = [level, figures.as_term("rise", plane.pitch)]
    return ground.computed(id, rake_length(run, plane.rise), "ft_in", RAKE_LENGTH, terms)
