"""Edges of a whole roof: which planes meet in them, their kind, and where they lie."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from packet.calc.forms import Block, Face, FormPlane
from packet.calc.polygon import Point, distance

Kind = Literal["eave", "rake", "ridge", "hip", "valley"]

#: Shares of a line at which one looks to which side a plane lies.
_BESIDE = (0.5, 0.4, 0.25)

#: Lines and points this near each other are the same; rounding of crossings is far below it [ft].
_SAME_FT = 1e-5


@dataclass(frozen=True)
class FormEdge:
    """An edge of a whole roof, counted once.

    Attributes:
        kind: Kind of edge.
        sides: The planes that meet in it, or the one plane it bounds, each with both ends on it: along its
            lowest edge, then level run [ft]; the first end is the left one as seen from outside the first
            plane.
    """

    kind: Kind
    sides: tuple[tuple[str, tuple[Point, Point]], ...]

    @property
    def planes(self) -> tuple[str, ...]:
        """The planes that meet in it."""
        return tuple(plane for plane, _ in self.sides)


@dataclass(frozen=True)
class _Stretch:
    """A side of a plane on a line, from one distance along it to another."""

    plane: int
    start: float
    end: float
    ends: tuple[Point, Point]


class _Line:
    """A line in plan, and the sides of planes that lie on it."""

    def __init__(self, start: Point, end: Point) -> None:
        length = distance(start, end)
        self.x, self.y = float(start[0]), float(start[1])
        self.dx, self.dy = float(end[0] - start[0]) / length, float(end[1] - start[1]) / length
        self.stretches: list[_Stretch] = []

    def holds(self, point: Point) -> bool:
        """Tell whether a point lies on the line."""
        return abs((float(point[0]) - self.x) * self.dy - (float(point[1]) - self.y) * self.dx) < _SAME_FT

    def along(self, point: Point) -> float:
        """Return the distance of a point along the line [ft]."""
        return (float(point[0]) - self.x) * self.dx + (float(point[1]) - self.y) * self.dy

    def add(self, plane: int, start: Point, end: Point) -> None:
        """Add a side of a plane."""
        ends = (start, end) if self.along(start) < self.along(end) else (end, start)
        self.stretches.append(_Stretch(plane, self.along(ends[0]), self.along(ends[1]), ends))


def edges(planes: Sequence[FormPlane], blocks: Sequence[Block]) -> tuple[FormEdge, ...]:
    """Return every edge of a roof once.

    Source: house rule; planes that slope away from a shared line make a ridge or hip, planes that slope
    toward it a valley; a side with no neighbour is an eave at eave height, else a rake, or a ridge where it
    is level.

    Args:
        planes: Planes of the roof, in order [ft].
        blocks: Blocks they come from [ft].

    Returns:
        Edges plane by plane, each from the left as seen from outside its first plane [ft].

    Example:
        >>> from fractions import Fraction
        >>> from packet.calc.forms import block, planes as of
        >>> six = Fraction(6)
        >>> ids = {"front": "A", "back": "B"}
        >>> gable = block(Fraction(40), Fraction(24), {"front": six, "back": six}, ids)
        >>> sorted(edge.kind for edge in edges(of([gable]), [gable]))
        ['eave', 'eave', 'rake', 'rake', 'rake', 'rake', 'ridge']
    """
    faces = {face.id: face for block in blocks for face in block.faces}
    sides = [(number, start, end) for number, plane in enumerate(planes) for start, end in _sides(plane)]
    lines: list[_Line] = []
    # The longest sides come first: they say best where a line runs.
    for number, start, end in sorted(sides, key=lambda side: -distance(*side[1:])):
        line = next((line for line in lines if line.holds(start) and line.holds(end)), None)
        if line is None:
            line = _Line(start, end)
            lines.append(line)
        line.add(number, start, end)
    found = [edge for line in lines for edge in _on_line(line.stretches, planes, faces)]
    order = {plane.id: number for number, plane in enumerate(planes)}
    return tuple(sorted(found, key=lambda edge: (order[edge.planes[0]], *_height_and_place(edge))))


def _sides(plane: FormPlane) -> Iterator[tuple[Point, Point]]:
    return pairwise([*plane.outline, plane.outline[0]])


def _on_line(
    stretches: Sequence[_Stretch], planes: Sequence[FormPlane], faces: dict[str, Face]
) -> Iterator[FormEdge]:
    """Yield the edges on one line: from mark to mark, by the planes that have a side there."""
    marks: list[tuple[float, Point]] = []
    for stretch in stretches:
        for place, point in zip((stretch.start, stretch.end), stretch.ends, strict=True):
            if all(abs(place - other) > _SAME_FT for other, _ in marks):
                marks.append((place, point))
    marks.sort(key=lambda mark: mark[0])
    for (low, start), (high, end) in pairwise(marks):
        middle = (low + high) / 2
        own = sorted({s.plane for s in stretches if s.start < middle < s.end})
        if own:
            yield _edge([planes[number] for number in own], start, end, faces)


def _edge(own: Sequence[FormPlane], start: Point, end: Point, faces: dict[str, Face]) -> FormEdge:
    first = faces[own[0].id]
    heights = [float(first.height(point)) for point in (start, end)]
    is_level = abs(heights[0] - heights[1]) < _SAME_FT
    kind: Kind
    if len(own) == 1:
        kind = "rake" if not is_level else "eave" if heights[0] < _SAME_FT else "ridge"
    else:
        kind = "valley" if _is_hollow(own, start, end, faces) else "ridge" if is_level else "hip"
    ends = (start, end) if first.along(start) <= first.along(end) else (end, start)
    return FormEdge(kind, tuple((plane.id, _on_plane(plane, faces[plane.id], ends)) for plane in own))


def _on_plane(plane: FormPlane, face: Face, ends: tuple[Point, Point]) -> tuple[Point, Point]:
    left = face.along(plane.origin)
    start, end = ((face.along(point) - left, face.run(point)) for point in ends)
    return start, end


def _is_hollow(own: Sequence[FormPlane], start: Point, end: Point, faces: dict[str, Face]) -> bool:
    """Tell whether two planes rise away from their shared line: a point inside one lies above the other."""
    first, second = (faces[plane.id] for plane in own[:2])
    dx, dy = float(end[0] - start[0]), float(end[1] - start[1])
    length = math.hypot(dx, dy)
    # where a wing just reaches a ridge, its point is a corner of the plane on the line: look beside it
    places = ((float(start[0]) + share * dx, float(start[1]) + share * dy) for share in _BESIDE)
    corners = [(float(u), float(v)) for u, v in own[0].outline]
    x, y = max(places, key=lambda place: min(math.dist(place, corner) for corner in corners))
    side = _inside(own[0], (x, y), (-dy / length, dx / length))
    probe = (x + side[0], y + side[1])
    return float(first.height(probe)) > float(second.height(probe))


def _inside(plane: FormPlane, at: tuple[float, float], normal: tuple[float, float]) -> tuple[float, float]:
    """Return the normal turned to the side on which a plane lies beside a point of its outline."""
    for (ax, ay), (bx, by) in _sides(plane):
        dx, dy = float(bx - ax), float(by - ay)
        length = math.hypot(dx, dy)
        across = (at[0] - float(ax)) * dy / length - (at[1] - float(ay)) * dx / length
        along = (at[0] - float(ax)) * dx / length + (at[1] - float(ay)) * dy / length
        if abs(across) < _SAME_FT and -_SAME_FT <= along <= length + _SAME_FT:
            # corners run counterclockwise, so the plane lies to the left of each side
            left = (-dy / length, dx / length)
            return normal if left[0] * normal[0] + left[1] * normal[1] > 0 else (-normal[0], -normal[1])
    return normal


def _height_and_place(edge: FormEdge) -> tuple[float, float]:
    """Return where an edge comes in the round of its plane: lowest first, then from the left."""
    (u, run), (other_u, other_run) = edge.sides[0][1]
    return (float(run + other_run), float(u + other_u))
