"""Edges of the roof: their lengths, totals by kind, and how much of each lies along the work."""

from collections import defaultdict
from collections.abc import Sequence

from packet.calc.geometry import (
    LEFT_SIDE_LENGTH,
    LENGTH_AS_TAPED,
    LENGTH_ON_SLOPE,
    RIGHT_SIDE_LENGTH,
    length_as_taped,
    length_on_slope,
)
from packet.calc.polygon import Point, lies_along
from packet.figure import FigureSet, Term, term
from packet.figures.shapes import PlacedPlane, RoofEdge, RoofShape, outline_ft, taped_shape
from packet.record.layers import WorkedArea
from packet.record.planes import Outlined, Trapezoid, Triangle
from packet.record.roof import Roof

WORKED_WHOLE, LONGER_SIDE = "edge_ft", "max(side_1, side_2)"


def edge_figures(roof: Roof, shape: RoofShape, figures: FigureSet) -> None:
    """Add the true length of each edge, and the total of each kind."""
    by_kind: dict[str, list[str]] = defaultdict(list)
    for edge in shape.edges:
        _length(edge, shape, figures)
        by_kind[edge.kind.replace(" ", "_")].append(f"edge.{edge.id}.length")
    for kind, ids in by_kind.items():
        _sum(figures, f"edges.{kind}.length", ids)


def _sum(figures: FigureSet, id: str, parts: Sequence[str]) -> None:
    terms = [figures.as_term(f"part_{number}", part) for number, part in enumerate(parts, 1)]
    formula = " + ".join(item.symbol for item in terms)
    figures.computed(id, sum(item.value for item in terms), "ft_in", formula, terms, decimals=1)


def _length(edge: RoofEdge, shape: RoofShape, figures: FigureSet) -> None:
    plane_id, (start, end) = edge.sides[0]
    plane = shape.planes[plane_id]
    if plane.taped is None:
        ends = ((start, 1), (end, 2))
        terms = [
            term(f"{name}{number}", corner[axis], "ft", "form", plane.form)
            for corner, number in ends
            for axis, name in enumerate(("u", "run"))
        ]
        terms.append(figures.as_term("rise", plane.pitch))
        formula, length = LENGTH_ON_SLOPE, length_on_slope(*start, *end, plane.rise)
    elif isinstance(plane.taped, Outlined):
        first = plane.side_names()[edge.names[0].partition(".")[2]]
        at = f"roof.planes.{plane.id}.outline"
        terms, formula = _taped_ends(figures, at, plane.slope, first), LENGTH_AS_TAPED
        length = length_as_taped(*plane.slope[first], *plane.slope[(first + 1) % len(plane.slope)])
    else:
        formula, terms = _side(plane, edge.names[0].partition(".")[2], figures)
        length = length_on_slope(*start, *end, plane.rise)
    figures.computed(f"edge.{edge.id}.length", length, "ft_in", formula, terms)


def _taped_ends(figures: FigureSet, at: str, corners: Sequence[Point], first: int) -> list[Term]:
    """Return both ends of a side of an outline of the record, as u1, v1, u2, v2."""
    ends = ((first, 1), ((first + 1) % len(corners), 2))
    return [
        figures.as_term(f"{name}{number}", f"{at}.{index}.{axis}", corners[index][axis], "ft")
        for index, number in ends
        for axis, name in enumerate("uv")
    ]


def _side(plane: PlacedPlane, side: str, figures: FigureSet) -> tuple[str, list[Term]]:
    """Return formula and terms of a side's length; a shape's missing measure is a number of its shape."""
    taped = plane.taped
    assert taped is not None  # noqa: S101 - the caller asks for taped planes alone
    shape, at = taped_shape(taped), f"roof.planes.{plane.id}"

    def measured(symbol: str, field: str, value_ft: object) -> Term:
        return figures.as_term(symbol, f"{at}.{field}", value_ft, "ft")  # type: ignore[arg-type]

    lower = measured("lower_ft", "lower", shape.lower_ft)
    if isinstance(taped, Triangle):
        upper = term("upper_ft", shape.upper_ft, "ft", "shape", taped.shape)
    else:
        upper = measured("upper_ft", "upper" if isinstance(taped, Trapezoid) else "lower", shape.upper_ft)
    if side in ("lower", "upper"):
        level = upper if side == "upper" else lower
        return level.symbol, [level]
    if isinstance(taped, Trapezoid):
        starts = measured("upper_starts_ft", "upper_starts", shape.upper_starts_ft)
    elif isinstance(taped, Triangle):
        starts = measured("upper_starts_ft", "top_at", shape.upper_starts_ft)
    else:
        starts = term("upper_starts_ft", shape.upper_starts_ft, "ft", "shape", taped.shape)
    slope = [measured("run_ft", "run", shape.run_ft), figures.as_term("rise", plane.pitch)]
    if side == "left":
        return LEFT_SIDE_LENGTH, [starts, *slope]
    return RIGHT_SIDE_LENGTH, [starts, upper, lower, *slope]


def worked_edges(areas: Sequence[WorkedArea], shape: RoofShape, figures: FigureSet) -> None:
    """Add how much of each edge lies along the work; of its two planes, the longer stretch.

    An area without an outline is its whole plane. Of an outline, the sides that lie on the edge count.
    """
    by_plane: dict[str, list[WorkedArea]] = defaultdict(list)
    for area in areas:
        by_plane[area.plane].append(area)
    for edge in shape.edges:
        parts = [_worked_side(edge, number, by_plane, shape, figures) for number in range(len(edge.sides))]
        sides = [part for part in parts if part]
        id = f"edge.{edge.id}.worked"
        if len(sides) == 1:
            figures.computed(id, *sides[0])
        elif sides:
            for number, side in enumerate(sides, 1):
                figures.computed(f"{id}.{number}", *side)
            terms = [figures.as_term(f"side_{n}", f"{id}.{n}") for n in (1, 2)]
            figures.computed(id, max(item.value for item in terms), "ft_in", LONGER_SIDE, terms)


def _worked_side(
    edge: RoofEdge,
    number: int,
    by_plane: dict[str, list[WorkedArea]],
    shape: RoofShape,
    figures: FigureSet,
) -> tuple[float, str, str, list[Term]] | None:
    """Return length, unit, formula and terms of what the areas of one plane have of an edge."""
    plane_id, ends = edge.sides[number]
    areas = by_plane.get(plane_id, [])
    if any(area.outline is None for area in areas):
        whole = figures.as_term("edge_ft", f"edge.{edge.id}.length")
        return float(whole.value), "ft_in", WORKED_WHOLE, [whole]
    plane = shape.planes[plane_id]
    start, end = (plane.on_slope(corner) for corner in ends)
    formulas: list[str] = []
    terms: list[Term] = []
    length = 0.0
    for area in areas:
        corners = outline_ft(area.outline or ())
        for index, corner in enumerate(corners):
            after = corners[(index + 1) % len(corners)]
            if lies_along(corner, after, start, end):
                first = 2 * len(formulas) + 1
                formulas.append(f"sqrt((u{first + 1} - u{first}) ** 2 + (v{first + 1} - v{first}) ** 2)")
                for at, place in ((index, first), ((index + 1) % len(corners), first + 1)):
                    terms += [
                        figures.as_term(
                            f"{name}{place}",
                            f"covering.areas.{area.id}.outline.{at}.{axis}",
                            corners[at][axis],
                            "ft",
                        )
                        for axis, name in enumerate("uv")
                    ]
                length += length_as_taped(*corner, *after)
    return (length, "ft_in", " + ".join(formulas), terms) if formulas else None
