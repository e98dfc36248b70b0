"""The roof on the sheet: geometry of a packet's copy read into typed parts, in px, y down."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from packet.drawings.flat import (
    Polygon,
    Segment,
    along,
    bounds,
    is_inside,
    middle,
    sides,
    surface,
    to_segment,
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
    """A plane; ``level`` counts the planes it stands on."""

    id: str
    title: str
    down: Point
    pitch: str
    outline: tuple[Point, ...]
    touched: bool
    level: int


@dataclass(frozen=True)
class Edge:
    """An edge; ``level`` is that of the plane it bounds."""

    id: str
    kind: str
    line: Segment
    length_ft: float
    level: int


@dataclass(frozen=True)
class Patch:
    """A worked area or an opening in a plane."""

    id: str
    plane: str
    outline: tuple[Point, ...]


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
        return [other for other in self.planes if other.level > plane.level]


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
    levels = [_level(number, outlines) for number in range(len(outlines))]
    planes = tuple(
        Plane(
            id=plane["id"],
            title=plane["title"],
            down=DOWN_SLOPE[plane["facing"]],
            pitch=plane["pitch"],
            outline=outline,
            touched=plane["worked"] or plane["part_worked"],
            level=level,
        )
        for plane, outline, level in zip(geometry["planes"], outlines, levels, strict=True)
    )
    near = SAME_PLACE_FT * px_per_ft
    edges = []
    for edge in geometry["edges"]:
        start, end = on_sheet(edge["line"])
        level = _edge_level((start, end), planes, near)
        edges.append(Edge(edge["id"], edge["kind"], (start, end), edge["length_ft"], level))
    return Plan(
        planes=planes,
        edges=tuple(edges),
        areas=tuple(Patch(a["id"], a["plane"], on_sheet(a["outline"])) for a in geometry["areas"]),
        openings=tuple(Patch(o["id"], o["plane"], on_sheet(o["outline"])) for o in geometry["openings"]),
        marks=tuple(Mark(m["id"], m["label"], on_sheet([m["at"]])[0]) for m in geometry["marks"]),
        px_per_ft=px_per_ft,
        width_px=width * px_per_ft,
        height_px=height * px_per_ft,
    )


def _points(points: Sequence[Sequence[float]]) -> list[Point]:
    return [(float(x), float(y)) for x, y in points]


def _level(number: int, outlines: Sequence[Polygon]) -> int:
    """Return how many larger planes a plane stands on: its middle and most of its ground lie over them."""
    own = outlines[number]
    probes = [middle(own), *(along(middle(own), corner, 0.9) for corner in own)]
    size = surface(own)
    return sum(
        sum(is_inside(probe, other) for probe in probes) * 2 > len(probes)
        for other in outlines
        if surface(other) > size
    )


def _edge_level(line: Segment, planes: Sequence[Plane], near: float) -> int:
    """Return the level of the plane that has this very side, else the ground level."""
    own = [
        plane.level
        for plane in planes
        for side in sides(plane.outline)
        if all(min(math.dist(end, a) for a in side) <= near for end in line)
        and all(to_segment(end, line) <= near for end in side)
    ]
    return min(own, default=0)
