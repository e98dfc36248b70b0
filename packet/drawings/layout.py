"""Everything on the roof in its place, at one scale: what has one place first, then what can move."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from packet.drawings.building import Building, building, lies_on
from packet.drawings.dimensions import Dimension, dimensions
from packet.drawings.edges import ALWAYS_NAMED, edge_name, edge_names
from packet.drawings.flat import Segment, along, bounds, middle, sides, touches
from packet.drawings.lettering import STYLES, Lettered
from packet.drawings.names import Block, Name, best_place, lettered, names
from packet.drawings.plan import SAME_PLACE_FT, Edge, Patch, Plan
from packet.drawings.pointers import Pointer, dot_box, letter, point_to, ring_radius
from packet.drawings.sheet import Sheet
from packet.drawings.svg import Point
from packet.drawings.taken import Taken

#: Least clear space around an area's id [px]; its hatching is cut there anyway.
_AREA_MARGIN = 2.5


@dataclass(frozen=True)
class Layout:
    """What stands where [px].

    Attributes:
        words: Names along edges.
        names: Names inside planes.
        areas: Ids inside worked areas.
        pointers: Ids and names that stand outside their place.
        rings: Ringed letters, one for each mark in order.
        clear: Boxes hatching must not run through.
    """

    plan: Plan
    building: Building
    dimensions: tuple[Dimension, ...]
    words: tuple[tuple[Edge, Lettered], ...]
    names: tuple[Name, ...]
    areas: tuple[tuple[Patch, Block], ...]
    pointers: tuple[Pointer, ...]
    rings: tuple[Pointer, ...]
    clear: tuple[tuple[Point, ...], ...]

    def in_key(self) -> list[str]:
        """Return ids of planes whose title the key must give."""
        full = {name.plane.id for name in self.names if not name.in_key}
        return [plane.id for plane in self.plan.planes if plane.id not in full]

    def bounds(self) -> tuple[float, float, float, float]:
        """Return the room of the roof and all that belongs to it."""
        corners = [point for outline in self.building.planes for point in outline]
        corners += [point for box in self.clear for point in box]
        for dimension in self.dimensions:
            corners += [point for line in (dimension.line, *dimension.extensions) for point in line]
        return bounds(corners)


def lay_out(plan: Plan, sheet: Sheet, words: Mapping[str, str]) -> Layout:
    """Return everything in its place."""
    around = building(plan)
    taken = Taken(lines=list(_roof_lines(plan, around)))
    hatched = [area.outline for area in plan.areas]
    taken.add(dot_box(mark.at) for mark in plan.marks)
    measured = dimensions(plan, around, taken, words, few=sheet.few_dimensions)
    by_length = sorted(plan.edges, key=lambda edge: (edge.length_ft, edge.id))
    always = [edge for edge in by_length if edge.kind in ALWAYS_NAMED]
    along_edges = edge_names(always, plan, around, taken, words)
    # A name along an edge may break an area's border, as it breaks the hatching; no other label may.
    taken.lines += [side for area in plan.areas for side in sides(area.outline)]
    inside = names(plan, taken, words)
    areas = list(_area_ids(plan, taken))
    rings = tuple(
        point_to(
            mark.at,
            letter(number),
            STYLES["letter"],
            taken,
            hatched,
            around.extent,
            ring_px=ring_radius(letter(number)),
        )
        for number, mark in enumerate(plan.marks)
    )
    pointers = list(_pointers(plan, around, always, along_edges, inside, areas, taken, words))
    if not sheet.few_dimensions:
        named = {dimension.edge.id for dimension in measured}
        others = [edge for edge in by_length if edge.kind not in ALWAYS_NAMED and edge.id not in named]
        others = [edge for edge in others if not _is_on_another(edge, plan)]
        along_edges += edge_names(others, plan, around, taken, words)
    return Layout(
        plan,
        around,
        tuple(measured),
        tuple(along_edges),
        tuple(inside),
        tuple(areas),
        tuple(pointers),
        rings,
        clear=tuple(taken.boxes),
    )


def _roof_lines(plan: Plan, around: Building) -> Iterator[Segment]:
    yield from around.outline
    yield from (seam for seam, _ in around.seams)
    yield from (edge.line for edge in plan.edges)
    for opening in plan.openings:
        yield from sides(opening.outline)


def _is_on_another(edge: Edge, plan: Plan) -> bool:
    """Return whether an edge lies on a longer one, so that two names would stand at one line."""
    near = SAME_PLACE_FT * plan.px_per_ft
    return any(
        other.length_ft > edge.length_ft and lies_on(edge.line, other.line, near) for other in plan.edges
    )


def _area_ids(plan: Plan, taken: Taken) -> Iterator[tuple[Patch, Block]]:
    """Yield ids of worked areas where they fit inside, and take that room."""
    for area in plan.areas:
        own = next((plane for plane in plan.planes if plane.id == area.plane), None)
        above = [] if own is None else [p.outline for p in plan.above(own) if touches(p.outline, own.outline)]
        block = lettered(area.id, "area-id")
        found = best_place(block, area.outline, above, taken, margin=_AREA_MARGIN)
        if found is not None:
            placed = block.at(found)
            taken.add(placed.boxes)
            yield area, placed


def _pointers(
    plan: Plan,
    around: Building,
    edges: Iterable[Edge],
    along_edges: Iterable[tuple[Edge, Lettered]],
    inside: Iterable[Name],
    areas: Iterable[tuple[Patch, Block]],
    taken: Taken,
    words: Mapping[str, str],
) -> Iterator[Pointer]:
    """Yield labels with a leader for all that found no room in place."""
    placed_planes = {name.plane.id for name in inside}
    placed_areas = {area.id for area, _ in areas}
    placed_edges = {edge.id for edge, _ in along_edges}
    for plane in plan.planes:
        if plane.id not in placed_planes:
            yield point_to(middle(plane.outline), plane.id, STYLES["name"], taken, [], around.extent)
    for area in plan.areas:
        if area.id not in placed_areas:
            yield point_to(_inside(area), area.id, STYLES["area-id"], taken, [], around.extent)
    for edge in edges:
        if edge.id not in placed_edges:
            text = edge_name(edge.kind, words)
            yield point_to(along(*edge.line, 0.5), text, STYLES["word"], taken, [], around.extent)


def _inside(area: Patch) -> Point:
    """Return a point just inside an area: a bent outline's middle may lie outside it."""
    centre = middle(area.outline)
    if touches([centre, centre, centre], area.outline):
        return centre
    start, end = sides(area.outline)[0]
    return along(along(start, end, 0.5), centre, 0.05)
