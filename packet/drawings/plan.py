"""The roof on the sheet: geometry of a packet's copy read into typed parts, in px, y down."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from packet.drawings.flat import (
    Polygon,
    Segment,
    along,
    bounds,
    direction,
    is_inside,
    middle,
    moved,
    sides,
    surface,
    to_segment,
    touches,
)
from packet.drawings.svg import Point

_DIAGONAL = math.sqrt(0.5)

#: Way down the slope on a sheet with north up, y down.
DOWN_SLOPE: Mapping[str, Point] = {
    "north": (0, -1),
    "north-east": (_DIAGONAL, -_DIAGONAL),
    "east": (1, 0),
    "south-east": (_DIAGONAL, _DIAGONAL),
    "south": (0, 1),
    "south-west": (-_DIAGONAL, _DIAGONAL),
    "west": (-1, 0),
    "north-west": (-_DIAGONAL, -_DIAGONAL),
}

#: Ends this near each other are the same end: taped lengths meet within an inch or so [ft].
SAME_PLACE_FT = 0.1


@dataclass(frozen=True)
class Plane:
    """A plane; ``level`` counts the planes it stands on, ``area`` is the id of an area that is all of it."""

    id: str
    title: str
    down: Point
    pitch: str
    outline: tuple[Point, ...]
    touched: bool
    level: int
    area: str = ""


@dataclass(frozen=True)
class Edge:
    """An edge; ``level`` is that of the plane it bounds, ``inner`` the way square to it into that plane."""

    id: str
    kind: str
    line: Segment
    length_ft: float
    level: int
    inner: Point | None = None


@dataclass(frozen=True)
class Patch:
    """A worked area or an opening in a plane; ``whole`` when it is the whole plane."""

    id: str
    plane: str
    outline: tuple[Point, ...]
    whole: bool = False


@dataclass(frozen=True)
class Mark:
    """A place named in the key."""

    id: str
    label: str
    at: Point


@dataclass(frozen=True)
class Plan:
    """All of it at one scale; the north-west corner of the roof is the origin."""

    planes: tuple[Plane, ...]
    edges: tuple[Edge, ...]
    areas: tuple[Patch, ...]
    openings: tuple[Patch, ...]
    marks: tuple[Mark, ...]
    px_per_ft: float
    width_px: float
    height_px: float

    def above(self, plane: Plane) -> list[Plane]:
        """Return the planes that stand on a plane."""
        if plane.level == self.top_level:
            return []
        return [
            other
            for other in self.planes
            if other.level > plane.level and touches(other.outline, plane.outline)
        ]

    @property
    def top_level(self) -> int:
        """The highest level of a plane."""
        return max(plane.level for plane in self.planes)

    def at_scale(self, px_per_ft: float) -> "Plan":
        """Return the plan at another scale [px/ft]."""
        by = px_per_ft / self.px_per_ft

        def line(ends: Segment) -> Segment:
            return scaled(ends[0], by), scaled(ends[1], by)

        def patches(some: Sequence[Patch]) -> tuple[Patch, ...]:
            return tuple(replace(one, outline=_scaled_all(one.outline, by)) for one in some)

        return Plan(
            planes=tuple(replace(one, outline=_scaled_all(one.outline, by)) for one in self.planes),
            edges=tuple(replace(one, line=line(one.line)) for one in self.edges),
            areas=patches(self.areas),
            openings=patches(self.openings),
            marks=tuple(replace(one, at=scaled(one.at, by)) for one in self.marks),
            px_per_ft=px_per_ft,
            width_px=self.width_px * by,
            height_px=self.height_px * by,
        )


def scaled(point: Point, by: float) -> Point:
    """Return a point at another scale."""
    return point[0] * by, point[1] * by


def _scaled_all(points: Sequence[Point], by: float) -> tuple[Point, ...]:
    return tuple((x * by, y * by) for x, y in points)


def size_ft(geometry: Mapping[str, Any]) -> tuple[float, float]:
    """Return width and depth of all planes [ft].

    Raises:
        ValueError: There is no plane, so nothing to draw.
    """
    if not geometry["planes"]:
        message = "a roof plan needs at least one plane"
        raise ValueError(message)
    west, south, east, north = bounds(
        point for plane in geometry["planes"] for point in _points(plane["outline"])
    )
    return east - west, north - south


def read_plan(geometry: Mapping[str, Any], px_per_ft: float) -> Plan:
    """Return the plan at a scale [px/ft]."""
    width, height = size_ft(geometry)
    west, _, _, north = bounds(point for plane in geometry["planes"] for point in _points(plane["outline"]))

    def on_sheet(points: Sequence[Sequence[float]]) -> tuple[Point, ...]:
        return tuple(((x - west) * px_per_ft, (north - y) * px_per_ft) for x, y in _points(points))

    outlines = [on_sheet(plane["outline"]) for plane in geometry["planes"]]
    levels = _levels(outlines)
    near = SAME_PLACE_FT * px_per_ft
    by_id = {plane["id"]: outline for plane, outline in zip(geometry["planes"], outlines, strict=True)}
    areas = []
    for area in geometry["areas"]:
        outline = on_sheet(area["outline"])
        whole = _is_same_outline(outline, by_id.get(area["plane"], ()), near)
        areas.append(Patch(area["id"], area["plane"], outline, whole))
    whole_areas = {area.plane: area.id for area in areas if area.whole}
    planes = tuple(
        Plane(
            id=plane["id"],
            title=plane["title"],
            down=DOWN_SLOPE[plane["facing"]],
            pitch=plane["pitch"],
            outline=outline,
            touched=plane["worked"] or plane["part_worked"],
            level=level,
            area=whole_areas.get(plane["id"], ""),
        )
        for plane, outline, level in zip(geometry["planes"], outlines, levels, strict=True)
    )
    known = [(bounds(plane.outline), plane) for plane in planes]
    edges = []
    for edge in geometry["edges"]:
        start, end = on_sheet(edge["line"])
        own = min(_bounded((start, end), known, near), key=lambda plane: plane.level, default=None)
        level, inner = (own.level, _into(own, (start, end), near)) if own else (0, None)
        edges.append(Edge(edge["id"], edge["kind"], (start, end), edge["length_ft"], level, inner))
    return Plan(
        planes=planes,
        edges=tuple(edges),
        areas=tuple(areas),
        openings=tuple(Patch(o["id"], o["plane"], on_sheet(o["outline"])) for o in geometry["openings"]),
        marks=tuple(Mark(m["id"], m["label"], on_sheet([m["at"]])[0]) for m in geometry["marks"]),
        px_per_ft=px_per_ft,
        width_px=width * px_per_ft,
        height_px=height * px_per_ft,
    )


def _points(points: Sequence[Sequence[float]]) -> list[Point]:
    return [(float(x), float(y)) for x, y in points]


def _levels(outlines: Sequence[Polygon]) -> list[int]:
    """Return how many larger planes each stands on: its middle and most of its ground lie over them."""
    sizes = [surface(outline) for outline in outlines]
    around = [bounds(outline) for outline in outlines]
    levels = []
    for own, size, (left, top, right, low) in zip(outlines, sizes, around, strict=True):
        centre = middle(own)
        probes = [centre, *(along(centre, corner, 0.9) for corner in own)]
        levels.append(
            sum(
                sum(is_inside(probe, other) for probe in probes) * 2 > len(probes)
                for other, other_size, (a, b, c, d) in zip(outlines, sizes, around, strict=True)
                if other_size > size and a < right and left < c and b < low and top < d
            )
        )
    return levels


def _bounded(
    line: Segment, planes: Sequence[tuple[tuple[float, float, float, float], Plane]], near: float
) -> Iterator[Plane]:
    """Yield the planes, given with their bounds, that have this very side."""
    (ax, ay), (bx, by) = line
    for (left, top, right, low), plane in planes:
        if min(ax, bx) > right + near or max(ax, bx) < left - near:
            continue
        if min(ay, by) > low + near or max(ay, by) < top - near:
            continue
        if any(_is_same_line(line, side, near) for side in sides(plane.outline)):
            yield plane


def _into(plane: Plane, line: Segment, near: float) -> Point:
    """Return the way square to a side of a plane into it."""
    way = direction(*line)
    normal = (-way[1], way[0])
    is_inner = is_inside(moved(along(*line, 0.5), normal, near), plane.outline)
    return normal if is_inner else (-normal[0], -normal[1])


def _is_same_line(line: Segment, side: Segment, near: float) -> bool:
    return all(min(math.dist(end, corner) for corner in side) <= near for end in line) and all(
        to_segment(end, line) <= near for end in side
    )


def _is_same_outline(first: Polygon, second: Polygon, near: float) -> bool:
    """Return whether each corner of either outline is one of the other, within a distance."""
    return bool(second) and all(
        min(math.dist(corner, other) for other in others) <= near
        for corners, others in ((first, second), (second, first))
        for corner in corners
    )
