"""Outlines: corners in order, in one flat coordinate system, in feet."""

import math
from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from shapely import MultiPoint, Polygon, STRtree, get_parts, make_valid, union_all
from shapely.geometry.base import BaseGeometry

from packet.calc.domain import OutOfRange, above_zero
from packet.figure import Number

Point = tuple[Number, Number]
Outline = tuple[Point, ...]

#: A point this near a line counts as on it: half an inch, about what a tape on a slope is good for [ft].
ON_LINE_TOLERANCE_FT = 1 / 24

#: Floating noise of a distance that is zero [ft].
_NO_DISTANCE_FT = 1e-9


def _sides(outline: Sequence[Point]) -> list[tuple[Point, Point]]:
    return list(pairwise([*outline, outline[0]]))


def _signed_area(outline: Sequence[Point]) -> Number:
    if len(outline) < 3:
        message = f"an outline has three corners or more, not {len(outline)}"
        raise OutOfRange(message)
    terms: list[Number] = [x * next_y - next_x * y for (x, y), (next_x, next_y) in _sides(outline)]
    return sum(terms, start=Fraction(0)) / 2


def polygon_area(outline: Sequence[Point]) -> Number:
    """Return the area inside an outline, whichever way round its corners run.

    Source: house rule; the shoelace sum, exact for any simple polygon.

    Args:
        outline: Three corners or more in order [ft]; sides must not cross (``is_simple``).

    Returns:
        Area [sq ft], exact when the corners are fractions.

    Raises:
        OutOfRange: There are fewer than three corners.

    Example:
        >>> polygon_area([(0, 0), (8, 0), (8, 4), (0, 4)])
        Fraction(32, 1)
    """
    area = _signed_area(outline)
    return area if area >= 0 else -area


def counterclockwise(outline: Sequence[Point]) -> Outline:
    """Return the corners in the order in which ``polygon_area_formula`` gives an area above zero.

    Source: house rule; the shoelace sum is positive for corners that run counterclockwise.

    Args:
        outline: Three corners or more in order [ft].

    Returns:
        The same corners, turned round when they ran clockwise [ft].

    Raises:
        OutOfRange: There are fewer than three corners.

    Example:
        >>> counterclockwise([(0, 4), (8, 4), (8, 0)])
        ((8, 0), (8, 4), (0, 4))
    """
    return tuple(outline) if _signed_area(outline) >= 0 else tuple(reversed(outline))


def polygon_area_formula(corners: int, first: int = 1) -> str:
    """Return the shoelace sum of an outline, in the symbols u1, v1, u2, v2 and so on.

    Source: house rule; the shoelace sum written out, corners counterclockwise.

    Args:
        corners: Number of corners [-], 3 or more.
        first: Number of the first corner [-].

    Returns:
        Arithmetic in the corners' coordinates [sq ft].

    Raises:
        OutOfRange: There are fewer than three corners.

    Example:
        >>> polygon_area_formula(3)
        '(u1 * v2 - u2 * v1 + u2 * v3 - u3 * v2 + u3 * v1 - u1 * v3) / 2'
    """
    if corners < 3:
        message = f"an outline has three corners or more, not {corners}"
        raise OutOfRange(message)
    pairs = [(first + number, first + (number + 1) % corners) for number in range(corners)]
    return "(" + " + ".join(f"u{a} * v{b} - u{b} * v{a}" for a, b in pairs) + ") / 2"


def rectangle_at(u_ft: Number, v_ft: Number, along_ft: Number, up_ft: Number) -> Outline:
    """Return the outline of a sheet or opening from its lower left corner.

    Source: house rule; sheets and openings lie square to the eave.

    Args:
        u_ft: Place of the lower left corner along the lowest edge [ft].
        v_ft: Place of that corner up the slope [ft].
        along_ft: Size along the eave [ft], above 0.
        up_ft: Size up the slope [ft], above 0.

    Returns:
        Four corners, counterclockwise [ft].

    Raises:
        OutOfRange: A size is not above 0.

    Example:
        >>> rectangle_at(14, 4, 8, 4)
        ((14, 4), (22, 4), (22, 8), (14, 8))
    """
    above_zero(along_ft=along_ft, up_ft=up_ft)
    right, top = u_ft + along_ft, v_ft + up_ft
    return ((u_ft, v_ft), (right, v_ft), (right, top), (u_ft, top))


def distance(first: Point, second: Point) -> float:
    """Return the distance between two points.

    Source: house rule; Pythagoras.

    Args:
        first: One point [ft].
        second: The other point [ft].

    Returns:
        Distance [ft].

    Example:
        >>> distance((0, 0), (3, 4))
        5.0
    """
    return math.hypot(float(second[0] - first[0]), float(second[1] - first[1]))


def _distance_to_side(point: Point, start: Point, end: Point) -> float:
    px, py, ax, ay, bx, by = (float(value) for value in (*point, *start, *end))
    length_squared = (bx - ax) ** 2 + (by - ay) ** 2
    if length_squared == 0:
        return math.hypot(px - ax, py - ay)
    along = ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / length_squared
    along = min(1.0, max(0.0, along))
    return math.hypot(px - ax - along * (bx - ax), py - ay - along * (by - ay))


def lies_along(
    start: Point, end: Point, edge_start: Point, edge_end: Point, tolerance_ft: float = ON_LINE_TOLERANCE_FT
) -> bool:
    """Return whether a line lies on another, both of its ends included.

    Source: house rule; both ends no farther from the other line than the tolerance.

    Args:
        start: One end [ft].
        end: The other end [ft].
        edge_start: One end of the line it may lie on [ft].
        edge_end: The other end of that line [ft].
        tolerance_ft: Distance that still counts as on it [ft].

    Returns:
        True for a line on the other [-].

    Example:
        >>> lies_along((4, 0), (8, 0), (0, 0), (20, 0)), lies_along((4, 0), (4, 8), (0, 0), (20, 0))
        (True, False)
    """
    return (
        all(_distance_to_side(point, edge_start, edge_end) <= tolerance_ft for point in (start, end))
        and distance(start, end) > 2 * tolerance_ft
    )


def holds_point(outline: Sequence[Point], point: Point, tolerance_ft: float = ON_LINE_TOLERANCE_FT) -> bool:
    """Return whether a point lies inside an outline or on its line.

    Source: house rule; the count of sides passed on the way out is odd inside.

    Args:
        outline: Corners in order [ft].
        point: Point in the same coordinates [ft].
        tolerance_ft: Distance outside the line that still counts as on it [ft].

    Returns:
        True inside and on the line [-].

    Example:
        >>> square = [(0, 0), (8, 0), (8, 4), (0, 4)]
        >>> holds_point(square, (8, 2)), holds_point(square, (8.5, 2))
        (True, False)
    """
    sides = _sides(outline)
    if any(_distance_to_side(point, start, end) <= tolerance_ft for start, end in sides):
        return True
    x, y = float(point[0]), float(point[1])
    inside = False
    for start, end in sides:
        ax, ay, bx, by = float(start[0]), float(start[1]), float(end[0]), float(end[1])
        if (ay > y) != (by > y) and x < ax + (y - ay) / (by - ay) * (bx - ax):
            inside = not inside
    return inside


def holds_outline(
    outer: Sequence[Point], inner: Sequence[Point], tolerance_ft: float = ON_LINE_TOLERANCE_FT
) -> bool:
    """Return whether one outline lies wholly inside another, touching allowed.

    Source: house rule; the outer outline, wider by the tolerance, covers the inner one.

    Args:
        outer: Corners of the outer outline in order [ft].
        inner: Corners of the inner outline in the same coordinates [ft].
        tolerance_ft: Distance outside the line that still counts as on it [ft].

    Returns:
        True when no part of the inner outline is outside [-].

    Example:
        >>> plane = [(0, 0), (20, 0), (32, 13.4), (0, 13.4)]
        >>> dormer, sheet = rectangle_at(14, 4.5, 10, 8.9), rectangle_at(18, 0, 4, 4)
        >>> holds_outline(plane, dormer), holds_outline(plane, sheet)
        (True, False)
    """
    wider = _mended(outer).buffer(tolerance_ft + _NO_DISTANCE_FT, join_style="mitre")
    return bool(wider.covers(_mended(inner)))


def is_simple(outline: Sequence[Point], tolerance_ft: float = ON_LINE_TOLERANCE_FT) -> bool:
    """Return whether an outline encloses one area, none of its sides crossing another.

    Source: house rule; the shoelace sum is an area only then. Two taped sides that should just meet, as at
    a dormer's corner on the valley, may cross by the error of the tape.

    Args:
        outline: Three corners or more in order [ft].
        tolerance_ft: Side of a square that a crossing may cut off [ft].

    Returns:
        True when the corners are in an order that encloses one area [-].

    Raises:
        OutOfRange: There are fewer than three corners.

    Example:
        >>> is_simple([(0, 0), (8, 0), (8, 4), (0, 4)]), is_simple([(0, 0), (8, 4), (8, 0), (0, 4)])
        (True, False)
    """
    area = float(polygon_area(outline))
    if len(set(outline)) < len(outline):
        return False
    mended = _mended(outline)
    spikes = [part for part in get_parts(mended) if part.area == 0 and part.length > tolerance_ft]
    return not spikes and abs(float(mended.area) - area) < tolerance_ft**2


def lies_on_a_line(outline: Sequence[Point], tolerance_ft: float = ON_LINE_TOLERANCE_FT) -> bool:
    """Return whether all corners lie on one line, so that no order of them encloses an area.

    Source: house rule; no circle as wide as the tolerance fits between them.

    Args:
        outline: Corners [ft].
        tolerance_ft: Width that still counts as none [ft].

    Returns:
        True for corners on a line [-].

    Example:
        >>> lies_on_a_line([(0, 0), (4, 4), (8, 8)]), lies_on_a_line([(0, 0), (4, 4), (8, 0)])
        (True, False)
    """
    hull = MultiPoint([(float(x), float(y)) for x, y in outline]).convex_hull
    return bool(hull.buffer(-tolerance_ft / 2).is_empty)


def overlapping(
    outlines: Sequence[Sequence[Point]], holes: Sequence[Sequence[Point]], depth_ft: float
) -> list[tuple[int, int, float]]:
    """Return the pairs of outlines that lie over each other, holes taken out.

    Source: house rule; an overlap narrower than twice the depth is the error of two tapes.

    Args:
        outlines: Corners of each outline in order [ft].
        holes: Outlines in which others may lie [ft].
        depth_ft: Depth from which an overlap counts [ft].

    Returns:
        Numbers of both outlines and the area they share [sq ft].

    Example:
        >>> overlapping([rectangle_at(0, 0, 8, 4), rectangle_at(6, 0, 8, 4)], [], 0.25)
        [(0, 1, 8.0)]
    """
    shapes = [_mended(outline) for outline in outlines]
    left_out = union_all([_mended(hole).buffer(depth_ft, join_style="mitre") for hole in holes])
    pairs = zip(*STRtree(shapes).query(shapes, predicate="intersects"), strict=True)
    found = []
    for first, second in sorted((int(a), int(b)) for a, b in pairs if a < b):
        shared = shapes[first].intersection(shapes[second]).difference(left_out)
        if not shared.buffer(-depth_ft).is_empty:
            found.append((first, second, float(shared.area)))
    return found


def polygon(outline: Sequence[Point]) -> Polygon:
    """Return an outline as a shape of the geometry library.

    Source: house rule; the library works in floating point.

    Args:
        outline: Three corners or more in order [ft].

    Returns:
        The polygon [ft].

    Example:
        >>> polygon([(0, 0), (8, 0), (8, 4), (0, 4)]).area
        32.0
    """
    return Polygon([(float(x), float(y)) for x, y in outline])


def _mended(outline: Sequence[Point]) -> BaseGeometry:
    """Return an outline as a shape that the library can work with, though two of its sides just cross."""
    shape = polygon(outline)
    return shape if shape.is_valid else make_valid(shape)
