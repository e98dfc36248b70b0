"""The edges of a plane on its own slope: the roof plan's edges, turned back onto the plane."""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from packet.drawings.flat import Segment, sides, to_segment
from packet.drawings.plan import SAME_PLACE_FT
from packet.drawings.svg import Point

#: Corners this near a line do not fix a plane; the cross product of its sides [sq ft].
_FLAT = 1e-6


@dataclass(frozen=True)
class Edge:
    """One edge, or a part of the outline that no edge of the record names; then ``kind`` is "" [ft]."""

    id: str
    kind: str
    line: Segment


def plane_edges(plane: Mapping[str, Any], geometry: Mapping[str, Any] | None) -> list[Edge]:
    """Return the edges around a plane, and the rest of its outline [ft].

    Args:
        plane: A plane of the deck plan, on the slope.
        geometry: The roof in plan; its planes have the same corners in the same order.
    """
    outline = [(float(u), float(v)) for u, v in plane["outline"]]
    own = next((one for one in (geometry or {"planes": []})["planes"] if one["id"] == plane["id"]), None)
    turned = _turn([tuple(corner) for corner in own["outline"]], outline) if own else None
    named: list[Edge] = []
    if geometry and own and turned:
        around = sides([tuple(corner) for corner in own["outline"]])
        for edge in geometry["edges"]:
            line = tuple(tuple(end) for end in edge["line"])
            if any(all(to_segment(end, side) <= SAME_PLACE_FT for end in line) for side in around):
                named.append(Edge(edge["id"], edge["kind"], (turned(line[0]), turned(line[1]))))
    return named + [Edge("", "", rest) for side in sides(outline) for rest in _rest(side, named)]


def _turn(plan: Sequence[Point], slope: Sequence[Point]) -> Callable[[Point], Point] | None:
    """Return the map from the plan of a plane to its slope, by three corners that are not on one line."""
    if len(plan) != len(slope):
        return None
    (ox, oy), (su, sv) = plan[0], slope[0]
    for number in range(1, len(plan) - 1):
        (ax, ay), (bx, by) = plan[number], plan[number + 1]
        cross = (ax - ox) * (by - oy) - (bx - ox) * (ay - oy)
        if abs(cross) > _FLAT:
            break
    else:
        return None
    (au, av), (bu, bv) = slope[number], slope[number + 1]

    def turned(point: Point) -> Point:
        x, y = point[0] - ox, point[1] - oy
        a = (x * (by - oy) - (bx - ox) * y) / cross
        b = ((ax - ox) * y - x * (ay - oy)) / cross
        return su + a * (au - su) + b * (bu - su), sv + a * (av - sv) + b * (bv - sv)

    return turned


def _rest(side: Segment, named: Sequence[Edge]) -> list[Segment]:
    """Return the parts of a side on which no named edge lies."""
    length = math.dist(*side)
    if length < SAME_PLACE_FT:
        return []
    (ax, ay), (bx, by) = side
    covered = []
    for edge in named:
        if all(to_segment(end, side) <= SAME_PLACE_FT for end in edge.line):
            ends = (((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length**2 for x, y in edge.line)
            covered.append(sorted(ends))
    found, at = [], 0.0
    for start, end in [*sorted(covered), [1.0, 1.0]]:
        if (start - at) * length > SAME_PLACE_FT:
            found.append((at, start))
        at = max(at, end)
    return [
        ((ax + (bx - ax) * start, ay + (by - ay) * start), (ax + (bx - ax) * end, ay + (by - ay) * end))
        for start, end in found
    ]
