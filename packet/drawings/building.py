"""The outline of the whole building, and plane sides that no edge of the record names."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from packet.drawings.flat import (
    Polygon,
    Segment,
    along,
    bounds,
    direction,
    is_inside,
    meeting,
    moved,
    sides,
    to_segment,
)
from packet.drawings.plan import SAME_PLACE_FT, Plan, scaled
from packet.drawings.svg import Point
from packet.drawings.taken import Index

#: Side of a cell in which planes are looked up [ft].
_CELL_FT = 12.0


@dataclass(frozen=True)
class Building:
    """Lines derived from the planes.

    Attributes:
        outline: Pieces of the line around all planes [px].
        seams: Pieces of plane sides inside it that no edge covers, with their level [px].
        planes: Outlines of all planes [px].
        extent: Least x, least y, greatest x, greatest y of all planes [px].
    """

    outline: tuple[Segment, ...]
    seams: tuple[tuple[Segment, int], ...]
    planes: tuple[tuple[Point, ...], ...]
    extent: tuple[float, float, float, float]

    def is_on_roof(self, point: Point) -> bool:
        """Return whether a point lies on any plane."""
        return any(is_inside(point, plane) for plane in self._index.near((*point, *point)))

    @cached_property
    def _index(self) -> Index[tuple[Point, ...]]:
        return Index(self.planes)

    def at_scale(self, plan: Plan, by: float) -> "Building":
        """Return the building of a plan that was brought to another scale."""
        return Building(
            tuple((scaled(start, by), scaled(end, by)) for start, end in self.outline),
            tuple(((scaled(start, by), scaled(end, by)), level) for (start, end), level in self.seams),
            tuple(plane.outline for plane in plan.planes),
            (*scaled(self.extent[:2], by), *scaled(self.extent[2:], by)),
        )


def building(plan: Plan) -> Building:
    """Return the building's outline: plane sides with roof on one side only."""
    near = SAME_PLACE_FT * plan.px_per_ft
    cell = _CELL_FT * plan.px_per_ft
    outlines = Index((plane.outline for plane in plan.planes), cell)
    edges = Index((edge.line for edge in plan.edges), cell)
    known = Index[Segment]((), cell)
    outer: list[Segment] = []
    seams: list[tuple[Segment, int]] = []
    for plane in plan.planes:
        for side in sides(plane.outline):
            for piece in _pieces(side, outlines.near(bounds(side), near), near):
                around = bounds(piece)
                if any(_is_same(piece, other, near) for other in known.near(around, near)):
                    continue
                if _is_outer(piece, outlines.near(around, near), near):
                    outer.append(piece)
                elif not any(lies_on(piece, line, near) for line in edges.near(around, near)):
                    seams.append((piece, plane.level))
                else:
                    continue
                known.add(piece)
    extent = bounds(corner for outline in outlines.all for corner in outline)
    return Building(tuple(outer), tuple(seams), tuple(outlines.all), extent)


def loops(pieces: Sequence[Segment], near: float) -> list[tuple[list[Point], bool]]:
    """Return pieces joined end to end into runs; the flag tells a closed run."""
    left = list(pieces)
    runs: list[tuple[list[Point], bool]] = []
    while left:
        run = list(left.pop(0))
        while (following := _next(run[-1], left, near)) is not None:
            number, end = following
            left.pop(number)
            run.append(end)
        closed = len(run) > 3 and math.dist(run[0], run[-1]) <= near
        runs.append((run[:-1] if closed else run, closed))
    return runs


def _next(end: Point, pieces: Sequence[Segment], near: float) -> tuple[int, Point] | None:
    for number, (start, stop) in enumerate(pieces):
        if math.dist(end, start) <= near:
            return number, stop
        if math.dist(end, stop) <= near:
            return number, start
    return None


def _pieces(side: Segment, outlines: Sequence[Polygon], near: float) -> list[Segment]:
    """Return a side cut where other planes' sides or corners meet it."""
    length = math.dist(*side)
    if length <= near:
        return []
    cuts = [0.0, 1.0]
    for outline in outlines:
        cuts += [share for other in sides(outline) if (share := meeting(side, other)) is not None]
        cuts += [
            math.dist(side[0], corner) / length for corner in outline if to_segment(corner, side) <= near / 10
        ]
    kept = [0.0]
    for cut in sorted(cuts):
        if (cut - kept[-1]) * length > near and (1 - cut) * length > near:
            kept.append(cut)
    kept.append(1.0)
    return [(along(*side, start), along(*side, end)) for start, end in zip(kept, kept[1:], strict=False)]


def _is_outer(piece: Segment, outlines: Sequence[Polygon], near: float) -> bool:
    way = direction(*piece)
    normal = (-way[1], way[0])
    centre = along(*piece, 0.5)
    both = [
        any(is_inside(moved(centre, normal, by), outline) for outline in outlines) for by in (near, -near)
    ]
    return both[0] != both[1]


def _is_same(first: Segment, second: Segment, near: float) -> bool:
    return lies_on(first, second, near) and lies_on(second, first, near)


def lies_on(piece: Segment, line: Segment, near: float) -> bool:
    """Return whether both ends of a piece lie on a line, within a distance."""
    return all(to_segment(end, line) <= near for end in piece)
