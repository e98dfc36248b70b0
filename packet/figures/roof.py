"""The roof: areas of planes, lengths of edges, totals and heights."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from packet.calc import areas
from packet.calc.geometry import LEFT_SIDE_LENGTH, RIGHT_SIDE_LENGTH, side_lengths
from packet.calc.slope import MEAN_ROOF_HEIGHT, RIDGE_HEIGHT, mean_roof_height, ridge_height
from packet.calc.takeoff import SQUARES, squares
from packet.figure import FigureSet, Term, term
from packet.figures.shapes import PlacedPlane, feet, placed_planes
from packet.record.job import JobRecord
from packet.record.roof import AnyPlane, Edge, Opening, Roof, Trapezoid, Triangle
from packet.reference import Library

_FORMULAS: Mapping[str, tuple[str, str]] = {
    "rectangle": (areas.RECTANGLE_SLOPE_AREA, areas.RECTANGLE_PLAN_AREA),
    "trapezoid": (areas.TRAPEZOID_SLOPE_AREA, areas.TRAPEZOID_PLAN_AREA),
    "triangle": (areas.TRIANGLE_SLOPE_AREA, areas.TRIANGLE_PLAN_AREA),
}


def roof_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add areas of planes and openings, lengths of edges, totals and heights."""
    roof = record.roof
    if roof is None:
        return
    known = placed_planes(roof)
    for item in known.values():
        _plane_area(item, figures)
    for opening in roof.openings:
        _opening_area(opening, figures)
    for plane in roof.planes:
        _net_area(plane, roof, library, figures)
    add_up(figures, "roof.area", "sq_ft", [net_area_id(plane.id, figures) for plane in roof.planes])
    add_squares(figures, "roof.squares", "roof.area")
    for edge in roof.edges:
        _edge_length(edge, known, figures)
    _edge_totals(roof, figures)
    _heights(roof, figures)


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


def _plane_area(item: PlacedPlane, figures: FigureSet) -> None:
    plane, shape = item.plane, item.shape
    at = f"roof.planes.{plane.id}"
    level = [figures.as_term("lower_ft", f"{at}.lower", shape.lower_ft, "ft")]
    if isinstance(plane, Trapezoid):
        level.append(figures.as_term("upper_ft", f"{at}.upper", shape.upper_ft, "ft"))
    level.append(figures.as_term("run_ft", f"{at}.run", shape.run_ft, "ft"))
    rise = figures.as_term("rise", f"{at}.pitch")
    on_slope, in_plan = _FORMULAS[plane.shape]
    area = areas.trapezoid_slope_area(shape.lower_ft, shape.upper_ft, shape.run_ft, shape.rise)
    seen = areas.trapezoid_plan_area(shape.lower_ft, shape.upper_ft, shape.run_ft)
    figures.computed(f"plane.{plane.id}.area", area, "sq_ft", on_slope, [*level, rise], decimals=1)
    figures.computed(f"plane.{plane.id}.plan_area", seen, "sq_ft", in_plan, level, decimals=1)


def _opening_area(opening: Opening, figures: FigureSet) -> None:
    at = f"roof.openings.{opening.id}"
    along, up = feet(opening.along), feet(opening.up)
    terms = [
        figures.as_term("along_ft", f"{at}.along", along, "ft"),
        figures.as_term("up_ft", f"{at}.up", up, "ft"),
    ]
    figures.computed(f"opening.{opening.id}.area", along * up, "sq_ft", "along_ft * up_ft", terms, decimals=1)


def _net_area(plane: AnyPlane, roof: Roof, library: Library, figures: FigureSet) -> None:
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


def _edge_length(edge: Edge, known: Mapping[str, PlacedPlane], figures: FigureSet) -> None:
    plane_id, _, side = edge.sides[0].partition(".")
    item = known[plane_id]
    formula, terms = _side(item, side, figures)
    length = side_lengths(item.shape)[side]  # type: ignore[index]
    figures.computed(f"edge.{edge.id}.length", length, "ft_in", formula, terms)


def _side(item: PlacedPlane, side: str, figures: FigureSet) -> tuple[str, list[Term]]:
    """Return formula and terms of a side's length; a shape's missing measure is a number of its shape."""
    plane, shape = item.plane, item.shape
    at = f"roof.planes.{plane.id}"

    def measured(symbol: str, field: str, value_ft: object) -> Term:
        return figures.as_term(symbol, f"{at}.{field}", value_ft, "ft")  # type: ignore[arg-type]

    lower = measured("lower_ft", "lower", shape.lower_ft)
    upper = measured("upper_ft", "upper" if isinstance(plane, Trapezoid) else "lower", shape.upper_ft)
    if isinstance(plane, Triangle):
        upper = term("upper_ft", shape.upper_ft, "ft", "shape", plane.shape)
    if side in ("lower", "upper"):
        level = upper if side == "upper" else lower
        return level.symbol, [level]
    if isinstance(plane, Trapezoid):
        starts = measured("upper_starts_ft", "upper_starts", shape.upper_starts_ft)
    elif isinstance(plane, Triangle):
        starts = measured("upper_starts_ft", "top_at", shape.upper_starts_ft)
    else:
        starts = term("upper_starts_ft", shape.upper_starts_ft, "ft", "shape", plane.shape)
    slope = [measured("run_ft", "run", shape.run_ft), figures.as_term("rise", f"{at}.pitch")]
    if side == "left":
        return LEFT_SIDE_LENGTH, [starts, *slope]
    return RIGHT_SIDE_LENGTH, [starts, upper, lower, *slope]


def _edge_totals(roof: Roof, figures: FigureSet) -> None:
    by_kind: dict[str, list[str]] = defaultdict(list)
    for edge in roof.edges:
        by_kind[edge.kind.replace(" ", "_")].append(f"edge.{edge.id}.length")
    for kind, ids in by_kind.items():
        add_up(figures, f"edges.{kind}.length", "ft_in", ids)


def _heights(roof: Roof, figures: FigureSet) -> None:
    """Add the height of the highest plane's top, and the mean roof height wind is taken at."""
    highest = max(roof.planes, key=lambda plane: plane.run.inches * plane.pitch.rise_in_12)
    at = f"roof.planes.{highest.id}"
    eave = figures.as_term("eave_height_ft", "roof.eave_height", feet(roof.eave_height), "ft")
    run, rise = (
        figures.as_term("run_ft", f"{at}.run", feet(highest.run), "ft"),
        figures.as_term("rise", f"{at}.pitch"),
    )
    top = ridge_height(eave.value, run.value, rise.value)
    figures.computed("roof.ridge_height", top, "ft", RIDGE_HEIGHT, [eave, run, rise], decimals=1)
    ridge = figures.as_term("ridge_height_ft", "roof.ridge_height")
    mean = mean_roof_height(eave.value, ridge.value)
    figures.computed("roof.mean_height", mean, "ft", MEAN_ROOF_HEIGHT, [eave, ridge], decimals=1)
