"""Everything on the roof in its place, at one scale: what has one place first, then what can move."""

import json
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Any

from packet.drawings.building import Building, building, lies_on
from packet.drawings.dimensions import Dimension, dimensions
from packet.drawings.edges import ALWAYS_NAMED, Ground, edge_name, edge_names, inner_line
from packet.drawings.flat import Polygon, Segment, along, bounds, is_inside, middle, sides
from packet.drawings.lettering import STYLES, Lettered
from packet.drawings.names import Block, Name, lettered, names
from packet.drawings.plan import SAME_PLACE_FT, Edge, Patch, Plan, read_plan
from packet.drawings.pointers import BESIDE_ROOF_PX, DOT_PX, Pointer, dot_box, letter, point_to, ring_radius
from packet.drawings.room import Room
from packet.drawings.sheet import Sheet
from packet.drawings.svg import Point
from packet.drawings.taken import Bounds, Box, Index, Taken

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
    clear: Index[Box]

    def in_key(self) -> set[str]:
        """Return ids of planes whose title the key must give."""
        full = {name.plane.id for name in self.names if not name.in_key}
        return {plane.id for plane in self.plan.planes if plane.id not in full}

    @cached_property
    def edges(self) -> Index[Segment]:
        """Lines of all edges by place."""
        return Index(edge.line for edge in self.plan.edges)

    def bounds(self) -> tuple[float, float, float, float]:
        """Return the room of the roof and all that belongs to it."""
        corners = [point for outline in self.building.planes for point in outline]
        corners += [point for box in self.clear.all for point in box]
        for dimension in self.dimensions:
            corners += [point for line in (dimension.line, *dimension.extensions) for point in line]
        return bounds(corners)


@lru_cache(maxsize=2)
def site(geometry: str) -> "Site":
    """Return the bare roof of a geometry, given as JSON: the wide and the narrow sheet share it."""
    return Site(json.loads(geometry))


class Site:
    """The bare roof at a pixel a foot, brought to the scale of each try.

    Attributes:
        plan: The roof.
        width_ft: Width of all planes [ft].
        depth_ft: Their depth [ft].
    """

    def __init__(self, geometry: Mapping[str, Any]) -> None:
        self.plan = read_plan(geometry, 1.0)
        self._building = building(self.plan)
        self.width_ft, self.depth_ft = self.plan.width_px, self.plan.height_px

    def at_scale(self, px_per_ft: float) -> tuple[Plan, Building]:
        """Return the roof and its outline at a scale [px/ft]."""
        plan = self.plan.at_scale(px_per_ft)
        return plan, self._building.at_scale(plan, px_per_ft)


class Measured:
    """A roof with its dimensions at one scale: they have one place, and tell most of the room it takes."""

    def __init__(self, plan: Plan, around: Building, sheet: Sheet, words: Mapping[str, str]) -> None:
        self.plan, self.building, self.sheet = plan, around, sheet
        self.taken = Taken()
        self.taken.add_lines(_roof_lines(plan, around))
        self.taken.add(dot_box(mark.at) for mark in plan.marks)
        self.dimensions = dimensions(plan, around, self.taken, words, few=sheet.few_dimensions)

    def bounds(self) -> tuple[float, float, float, float]:
        """Return the room of the roof and its dimensions."""
        corners = [point for outline in self.building.planes for point in outline]
        for dimension in self.dimensions:
            corners += [point for line in (dimension.line, *dimension.extensions) for point in line]
            corners += dimension.text.box
        return bounds(corners)

    def limits(self) -> Bounds:
        """Return where labels may stand beside the roof without making the sheet larger."""
        sheet, (left, top, right, low) = self.sheet, self.bounds()
        beside = max(sheet.width - 2 * sheet.margin - (right - left), 0.0) / 2
        over = max(sheet.most_height - (low - top), 0.0) / 2
        roof_left, roof_top, roof_right, roof_low = self.building.extent
        return (
            max(left - beside, roof_left - BESIDE_ROOF_PX),
            max(top - over, roof_top - BESIDE_ROOF_PX),
            min(right + beside, roof_right + BESIDE_ROOF_PX),
            min(low + over, roof_low + BESIDE_ROOF_PX),
        )


def lay_out(measured: Measured, words: Mapping[str, str]) -> Layout:
    """Return everything in its place; takes the room of what is already there."""
    plan, around, taken = measured.plan, measured.building, measured.taken
    limits = measured.limits()
    ground, hatched = Ground(plan, around), Index(area.outline for area in plan.areas)
    by_length = sorted(plan.edges, key=lambda edge: (edge.length_ft, edge.id))
    always = [edge for edge in by_length if edge.kind in ALWAYS_NAMED]
    along_edges = edge_names(always, ground, taken, words)
    # A name along an edge may break an area's border, as it breaks the hatching; no other label may.
    taken.add_lines(side for area in plan.areas if not area.whole for side in sides(area.outline))
    inside = names(plan, taken, words)
    areas = list(_area_ids(plan, taken))
    rings = tuple(
        point_to(
            mark.at,
            letter(number),
            STYLES["letter"],
            taken,
            hatched,
            limits,
            ring_px=ring_radius(letter(number)),
        )
        for number, mark in enumerate(plan.marks)
    )
    pointers = list(_pointers(plan, limits, always, along_edges, inside, areas, taken, words))
    if not measured.sheet.few_dimensions:
        named = {dimension.edge.id for dimension in measured.dimensions}
        others = [edge for edge in by_length if edge.kind not in ALWAYS_NAMED and edge.id not in named]
        along_edges += edge_names(_each_line_once(others, plan), ground, taken, words)
    return Layout(
        plan,
        around,
        tuple(measured.dimensions),
        tuple(along_edges),
        tuple(inside),
        tuple(areas),
        tuple(pointers),
        rings,
        clear=taken.boxes,
    )


def _roof_lines(plan: Plan, around: Building) -> Iterator[Segment]:
    yield from around.outline
    yield from (seam for seam, _ in around.seams)
    yield from (edge.line for edge in plan.edges)
    yield from (inner for edge in plan.edges if (inner := inner_line(edge)))
    for opening in plan.openings:
        yield from sides(opening.outline)


def _each_line_once(edges: Sequence[Edge], plan: Plan) -> Iterator[Edge]:
    """Yield edges that do not lie on a longer one, so that no two names stand at one line."""
    near = SAME_PLACE_FT * plan.px_per_ft
    known = Index(edge.line for edge in plan.edges)
    for edge in edges:
        length = math.dist(*edge.line)
        others = known.near(bounds(edge.line), near)
        if not any(math.dist(*other) > length + near and lies_on(edge.line, other, near) for other in others):
            yield edge


def _area_ids(plan: Plan, taken: Taken) -> Iterator[tuple[Patch, Block]]:
    """Yield ids of worked areas where they fit inside, and take that room."""
    planes = {plane.id: plane for plane in plan.planes}
    for area in plan.areas:
        if area.whole:
            continue
        above = [plane.outline for plane in plan.above(planes[area.plane])] if area.plane in planes else []
        block = lettered(area.id, "area-id")
        found = Room(area.outline, above, taken).best(block.width, block.height, _AREA_MARGIN)
        if found is not None:
            placed = block.at(found)
            taken.add(placed.boxes)
            yield area, placed


def _pointers(
    plan: Plan,
    limits: Bounds,
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
    nothing = Index[Box]()
    for plane in plan.planes:
        if plane.id not in placed_planes:
            at = _spot(plane.outline, [other.outline for other in plan.above(plane)], taken)
            yield point_to(at, plane.id, STYLES["name"], taken, nothing, limits)
    for area in plan.areas:
        if area.id not in placed_areas and not area.whole:
            at = _spot(area.outline, (), taken)
            yield point_to(at, area.id, STYLES["area-id"], taken, nothing, limits)
    kinds = {edge.kind for edge, _ in along_edges}
    for edge in edges:
        # One name for a kind is enough on a full sheet: the key has its line.
        if edge.id not in placed_edges and edge.kind not in kinds:
            kinds.add(edge.kind)
            text = edge_name(edge.kind, words)
            yield point_to(along(*edge.line, 0.5), text, STYLES["word"], taken, nothing, limits)


def _spot(outline: Polygon, above: Sequence[Polygon], taken: Taken) -> Point:
    """Return where a leader's dot may stand inside an outline, clear of labels where there is room."""
    found = Room(outline, above, taken).best(2 * DOT_PX, 2 * DOT_PX, _AREA_MARGIN)
    if found is not None:
        return found
    centre = middle(outline)
    if is_inside(centre, outline):
        return centre
    start, end = sides(outline)[0]  # a bent outline's middle may lie outside it
    return along(along(start, end, 0.5), centre, 0.05)
