"""Whole roofs worked out by hand: heights by the least of the planes, lengths by Pythagoras, areas by the shoelace.

Nothing here is taken from the program but the values it is asked about.
"""

import math
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from hypothesis import strategies as st

from packet.calc.form_edges import FormEdge
from packet.calc.forms import Block, FormPlane, block, wing

F = Fraction
Point3 = tuple[float, float, float]

#: Along the eave to the right of one who looks at a plane, and inward, by the side it looks to; x and y.
ALONG = {"front": (1, 0), "right": (0, 1), "back": (-1, 0), "left": (0, -1)}
INWARD = {"front": (0, 1), "right": (-1, 0), "back": (0, -1), "left": (1, 0)}

#: The way the left and right planes of a wing look, by the side of the main roof it stands on.
LOOKS = {
    "front": ("left", "right"),
    "right": ("front", "back"),
    "back": ("right", "left"),
    "left": ("back", "front"),
}

IDS = {"front": "S", "right": "E", "back": "N", "left": "W"}


def sixteenths(least_ft: int, most_ft: int) -> st.SearchStrategy[Fraction]:
    """Lengths in feet that a tape reads: whole sixteenths of an inch."""
    return st.integers(least_ft * 192, most_ft * 192).map(lambda n: F(n, 192))


LENGTHS = sixteenths(2, 80)
RISES = st.integers(8, 384).map(lambda n: F(n, 16))


def factor(rise: Fraction) -> float:
    """Length up the slope for a foot of level run."""
    return math.sqrt(1 + float(rise / 12) ** 2)


def main_roof(length: Fraction, depth: Fraction, **rises: Fraction) -> Block:
    """Return a block whose planes are named after the compass, the front looking south."""
    return block(length, depth, rises, {side: IDS[side] for side in rises})  # type: ignore[arg-type,misc]


def hip(length: Fraction, depth: Fraction, rise: Fraction, end_rise: Fraction | None = None) -> Block:
    """Return a hip roof with four planes."""
    ends = end_rise or rise
    return main_roof(length, depth, front=rise, right=ends, back=rise, left=ends)


def gable(length: Fraction, depth: Fraction, rise: Fraction) -> Block:
    """Return a gable roof with two planes."""
    return main_roof(length, depth, front=rise, back=rise)


def tee(main: Block, starts: Fraction, width: Fraction, out: Fraction, rise: Fraction) -> list[Block]:
    """Return a roof with a gabled wing in front, of the planes WL and WR."""
    return [main, wing(main, "front", starts, width, out, rise, {"left": "WL", "right": "WR"})]


@dataclass(frozen=True)
class ByHand:
    """A rectangle in plan with the rises of the sides that have an eave."""

    west: Fraction
    south: Fraction
    east: Fraction
    north: Fraction
    rises: Mapping[str, Fraction]

    def height(self, x: float, y: float) -> float:
        """Return the height over a point; none outside."""
        if not (self.west <= x <= self.east and self.south <= y <= self.north):
            return -math.inf
        runs = {
            "front": y - self.south,
            "right": self.east - x,
            "back": self.north - y,
            "left": x - self.west,
        }
        return min(float(runs[side]) * float(rise) / 12 for side, rise in self.rises.items())


def area(outline: Sequence[tuple[Fraction | int | float, Fraction | int | float]]) -> Fraction | float:
    """Return the area inside an outline; below 0 when it runs clockwise."""
    pairs = zip(outline, (*outline[1:], outline[0]), strict=True)
    return sum((x * next_y - next_x * y for (x, y), (next_x, next_y) in pairs), start=F(0)) / 2


def inside(outline: Sequence[tuple[float, float]], x: float, y: float) -> bool:
    """Tell whether a point is inside, by the sides passed on the way east."""
    passed = 0
    for (ax, ay), (bx, by) in zip(outline, (*outline[1:], outline[0]), strict=True):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            passed += 1
    return passed % 2 == 1


def in_space(plane: FormPlane, point: tuple[Fraction | float, Fraction | float]) -> Point3:
    """Return a point of a plane, along its eave and level run, as x, y and height."""
    (ax, ay), (ix, iy) = ALONG[plane.side], INWARD[plane.side]
    u, run = float(point[0]), float(point[1])
    x, y = float(plane.origin[0]), float(plane.origin[1])
    return (x + u * ax + run * ix, y + u * ay + run * iy, run * float(plane.rise) / 12)


def slope_area(planes: Sequence[FormPlane], *ids: str) -> float:
    """Return the area on the slope of some planes, or of all of them."""
    return sum(float(area(p.level)) * factor(p.rise) for p in planes if not ids or p.id in ids)


def length(edge: FormEdge, planes: Sequence[FormPlane], side: int = 0) -> float:
    """Return the length of an edge between its ends in space."""
    id, (start, end) = edge.sides[side]
    plane = next(plane for plane in planes if plane.id == id)
    return math.dist(in_space(plane, start), in_space(plane, end))


def lengths(edges: Sequence[FormEdge], planes: Sequence[FormPlane]) -> dict[str, list[float]]:
    """Return the length of every edge by kind, the shortest first."""
    found: dict[str, list[float]] = defaultdict(list)
    for edge in edges:
        found[edge.kind].append(length(edge, planes))
    return {kind: sorted(each) for kind, each in found.items()}


def totals(edges: Sequence[FormEdge], planes: Sequence[FormPlane]) -> dict[str, float]:
    """Return the length of each kind of edge together."""
    return {kind: sum(each) for kind, each in lengths(edges, planes).items()}
