"""The roof: areas of planes, totals of sections and the whole, and heights."""

from collections.abc import Mapping, Sequence

from packet.calc import areas
from packet.calc.polygon import Outline, polygon_area, polygon_area_formula
from packet.calc.slope import (
    MEAN_ROOF_HEIGHT,
    RIDGE_HEIGHT,
    mean_roof_height,
    ridge_height,
    slope_factor,
)
from packet.calc.takeoff import SQUARES, squares
from packet.figure import FigureSet, Number, Term, term
from packet.figures.edges import edge_figures
from packet.figures.shapes import PlacedPlane, feet, roof_shape, taped_shape
from packet.record.job import JobRecord
from packet.record.planes import Outlined, Trapezoid
from packet.record.roof import Opening, Roof
from packet.reference import Library

_FORMULAS: Mapping[str, tuple[str, str]] = {
    "rectangle": (areas.RECTANGLE_SLOPE_AREA, areas.RECTANGLE_PLAN_AREA),
    "trapezoid": (areas.TRAPEZOID_SLOPE_AREA, areas.TRAPEZOID_PLAN_AREA),
    "triangle": (areas.TRIANGLE_SLOPE_AREA, areas.TRIANGLE_PLAN_AREA),
}
ON_SLOPE, IN_PLAN = " * sqrt(1 + (rise / 12) ** 2)", " / sqrt(1 + (rise / 12) ** 2)"
RUN_OF_HEIGHT_ON_SLOPE = "v_ft / sqrt(1 + (rise / 12) ** 2)"


def roof_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add areas of planes and openings, lengths of edges, totals and heights."""
    roof = record.roof
    if roof is None:
        return
    shape = roof_shape(roof)
    for plane in shape.planes.values():
        _plane_area(plane, figures)
    for opening in roof.openings:
        _opening_area(opening, figures)
    for plane in shape.planes.values():
        _net_area(plane, roof, library, figures)
    rule = library.table("openings").lookup(what="opening")
    least = rule.number("deducted_from_sq_ft")
    figures.measured("openings.deducted_from", least, "sq_ft", "table.openings", sources=[rule.source])
    _totals(roof, tuple(shape.planes), figures)
    edge_figures(roof, shape, figures)
    _heights(roof, shape.planes, figures)


def net_area_id(plane_id: str, figures: FigureSet) -> str:
    """Return the id of a plane's net area, which is its area when nothing large stands in it."""
    net = f"plane.{plane_id}.net_area"
    return net if figures.get(net) else f"plane.{plane_id}.area"


def add_up(figures: FigureSet, id: str, unit: str, parts: Sequence[str], *, decimals: int = 1) -> None:
    """Add the sum of other figures."""
    terms = [figures.as_term(f"part_{number}", part) for number, part in enumerate(parts, 1)]
    formula = " + ".join(item.symbol for item in terms)
    figures.computed(id, sum(item.value for item in terms), unit, formula, terms, decimals=decimals)


def add_squares(figures: FigureSet, id: str, area_id: str) -> None:
    """Add an area in squares of 100 sq ft."""
    area = figures.as_term("area_sq_ft", area_id)
    figures.computed(id, squares(area.value), "square", SQUARES, [area], decimals=2)


def corner_terms(figures: FigureSet, path: str, outline: Outline) -> list[Term]:
    """Return the corners of an outline of the record as terms u1, v1, u2 …, counterclockwise."""
    order = range(len(outline))
    if _runs_clockwise(outline):
        order = range(len(outline) - 1, -1, -1)
    return [
        figures.as_term(f"{name}{number}", f"{path}.{index}.{axis}", outline[index][axis], "ft")
        for number, index in enumerate(order, 1)
        for axis, name in enumerate("uv")
    ]


def _runs_clockwise(outline: Outline) -> bool:
    pairs = zip(outline, (*outline[1:], outline[0]), strict=True)
    return sum(x * next_y - next_x * y for (x, y), (next_x, next_y) in pairs) < 0


def _plane_area(plane: PlacedPlane, figures: FigureSet) -> None:
    """Add a plane's area on the slope and in plan, each in the way its shape is known."""
    on_slope, in_plan = f"plane.{plane.id}.area", f"plane.{plane.id}.plan_area"
    rise = figures.as_term("rise", plane.pitch)
    trapezoid = _as_trapezoid(plane)
    if trapezoid:
        lower, upper, run = trapezoid
        level = [
            term(name, value, "ft", "form", plane.form)
            for name, value in (("lower_ft", lower), ("upper_ft", upper), ("run_ft", run))
        ]
        seen = areas.trapezoid_plan_area(lower, upper, run)
        area = areas.trapezoid_slope_area(lower, upper, run, plane.rise)
        figures.computed(in_plan, seen, "sq_ft", areas.TRAPEZOID_PLAN_AREA, level, decimals=1)
        terms = [*level, rise]
        figures.computed(on_slope, area, "sq_ft", areas.TRAPEZOID_SLOPE_AREA, terms, decimals=1)
    elif plane.taped is None:
        terms = [
            term(f"{name}{number}", corner[axis], "ft", "form", plane.form)
            for number, corner in enumerate(plane.level, 1)
            for axis, name in enumerate("uv")
        ]
        formula, seen = polygon_area_formula(len(plane.level)), polygon_area(plane.level)
        figures.computed(in_plan, seen, "sq_ft", formula, terms, decimals=1)
        area = float(seen) * slope_factor(plane.rise)
        figures.computed(on_slope, area, "sq_ft", formula + ON_SLOPE, [*terms, rise], decimals=1)
    elif isinstance(plane.taped, Outlined):
        terms = corner_terms(figures, f"roof.planes.{plane.id}.outline", plane.slope)
        formula, taped = polygon_area_formula(len(plane.slope)), polygon_area(plane.slope)
        figures.computed(on_slope, taped, "sq_ft", formula, terms, decimals=1)
        seen = float(taped) / slope_factor(plane.rise)
        figures.computed(in_plan, seen, "sq_ft", formula + IN_PLAN, [*terms, rise], decimals=1)
    else:
        shape, at = taped_shape(plane.taped), f"roof.planes.{plane.id}"
        level = [figures.as_term("lower_ft", f"{at}.lower", shape.lower_ft, "ft")]
        if isinstance(plane.taped, Trapezoid):
            level.append(figures.as_term("upper_ft", f"{at}.upper", shape.upper_ft, "ft"))
        level.append(figures.as_term("run_ft", f"{at}.run", shape.run_ft, "ft"))
        formula, flat = _FORMULAS[plane.taped.shape]
        area = areas.trapezoid_slope_area(shape.lower_ft, shape.upper_ft, shape.run_ft, shape.rise)
        seen = areas.trapezoid_plan_area(shape.lower_ft, shape.upper_ft, shape.run_ft)
        figures.computed(on_slope, area, "sq_ft", formula, [*level, rise], decimals=1)
        figures.computed(in_plan, seen, "sq_ft", flat, level, decimals=1)


def _as_trapezoid(plane: PlacedPlane) -> tuple[Number, Number, Number] | None:
    """Return lower and upper edge and run of a form's plane that is a trapezoid or triangle on its eave."""
    level = plane.level
    if plane.taped is not None or len(level) not in (3, 4) or level[0][1] or level[1][1]:
        return None
    top = level[2:]
    if len({run for _, run in top}) > 1:
        return None
    return level[1][0] - level[0][0], top[0][0] - top[-1][0], top[0][1]


def _opening_area(opening: Opening, figures: FigureSet) -> None:
    at = f"roof.openings.{opening.id}"
    along, up = feet(opening.along), feet(opening.up)
    terms = [
        figures.as_term("along_ft", f"{at}.along", along, "ft"),
        figures.as_term("up_ft", f"{at}.up", up, "ft"),
    ]
    figures.computed(f"opening.{opening.id}.area", along * up, "sq_ft", "along_ft * up_ft", terms, decimals=1)


def _net_area(plane: PlacedPlane, roof: Roof, library: Library, figures: FigureSet) -> None:
    mine = [f"opening.{opening.id}.area" for opening in roof.openings if opening.plane == plane.id]
    rule = library.table("openings").lookup(what="opening")
    large = [id for id in mine if figures.by_id[id].value >= rule.number("deducted_from_sq_ft")]
    if not large:
        return
    terms = [figures.as_term("gross_sq_ft", f"plane.{plane.id}.area")]
    terms += [figures.as_term(f"opening_{number}", id) for number, id in enumerate(large, 1)]
    value = terms[0].value - sum(item.value for item in terms[1:])
    formula = " - ".join(item.symbol for item in terms)
    net = f"plane.{plane.id}.net_area"
    figures.computed(net, value, "sq_ft", formula, terms, decimals=1, sources=[rule.source])


def _totals(roof: Roof, planes: Sequence[str], figures: FigureSet) -> None:
    """Add gross, net and plan area of the roof and of each section, in squares too."""
    for id, of in (("roof", planes), *((f"section.{item.id}", item.planes) for item in roof.sections)):
        add_up(figures, f"{id}.plan_area", "sq_ft", [f"plane.{plane}.plan_area" for plane in of])
        add_up(figures, f"{id}.gross_area", "sq_ft", [f"plane.{plane}.area" for plane in of])
        add_squares(figures, f"{id}.gross_squares", f"{id}.gross_area")
        add_up(figures, f"{id}.area", "sq_ft", [net_area_id(plane, figures) for plane in of])
        add_squares(figures, f"{id}.squares", f"{id}.area")


def _heights(roof: Roof, planes: Mapping[str, PlacedPlane], figures: FigureSet) -> None:
    """Add the height of the highest plane's top, and the mean roof height wind is taken at."""

    def eave(plane: PlacedPlane) -> Term:
        own = f"roof.planes.{plane.id}.eave_height" if plane.eave_height else "roof.eave_height"
        return figures.as_term("eave_height_ft", own, feet(plane.eave_height or roof.eave_height), "ft")

    def top_ft(plane: PlacedPlane) -> float:
        run = max(run for _, run in plane.level)
        return float(ridge_height(eave(plane).value, run, plane.rise))

    highest = max(planes.values(), key=top_ft)
    run, rise = _run(highest, figures), figures.as_term("rise", highest.pitch)
    top = ridge_height(eave(highest).value, run.value, rise.value)
    terms = [eave(highest), run, rise]
    figures.computed("roof.ridge_height", top, "ft", RIDGE_HEIGHT, terms, decimals=1)
    ridge = figures.as_term("ridge_height_ft", "roof.ridge_height")
    ground = figures.as_term("eave_height_ft", "roof.eave_height", feet(roof.eave_height), "ft")
    mean = mean_roof_height(ground.value, ridge.value)
    figures.computed("roof.mean_height", mean, "ft", MEAN_ROOF_HEIGHT, [ground, ridge], decimals=1)


def _run(plane: PlacedPlane, figures: FigureSet) -> Term:
    """Return the level run from a plane's lowest edge to its top."""
    if plane.taped is None:
        return term("run_ft", max(run for _, run in plane.level), "ft", "form", plane.form)
    if not isinstance(plane.taped, Outlined):
        return figures.as_term("run_ft", f"roof.planes.{plane.id}.run", feet(plane.taped.run), "ft")
    index, height = max(enumerate(v for _, v in plane.slope), key=lambda item: item[1])
    at = f"roof.planes.{plane.id}.outline.{index}.1"
    terms = [figures.as_term("v_ft", at, height, "ft"), figures.as_term("rise", plane.pitch)]
    run = float(height) / slope_factor(plane.rise)
    figures.computed(f"plane.{plane.id}.run", run, "ft", RUN_OF_HEIGHT_ON_SLOPE, terms, decimals=2)
    return figures.as_term("run_ft", f"plane.{plane.id}.run")
