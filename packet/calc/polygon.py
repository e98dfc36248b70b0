"""Outlines: corners in order, in one flat coordinate system, in feet."""

import math
from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

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


def polygon_area_formula(corners: int) -> str:
    """Return the shoelace sum of an outline, in the symbols u1, v1, u2, v2 and so on.

    Source: house rule; the shoelace sum written out, corners counterclockwise.

    Args:
        corners: Number of corners [-], 3 or more.

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
    pairs = [(number, number % corners + 1) for number in range(1, corners + 1)]
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


def _meeting(start: Point, end: Point, other_start: Point, other_end: Point) -> float | None:
    """Return how far along the first side the second meets it, 0 to 1; None for a miss or parallel sides."""
    ax, ay, bx, by = (float(value) for value in (*start, *end))
    cx, cy, dx, dy = (float(value) for value in (*other_start, *other_end))
    cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if cross == 0:
        return None
    along = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / cross
    other = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / cross
    return along if 0 <= along <= 1 and 0 <= other <= 1 else None


def holds_outline(
    outer: Sequence[Point], inner: Sequence[Point], tolerance_ft: float = ON_LINE_TOLERANCE_FT
) -> bool:
    """Return whether one outline lies wholly inside another, touching allowed.

    Source: house rule; each side of the inner outline, cut where it meets the outer one, must stay inside.

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
    for (ax, ay), (bx, by) in _sides(inner):
        meetings = (_meeting((ax, ay), (bx, by), start, end) for start, end in _sides(outer))
        cuts = sorted({0.0, 1.0, *(place for place in meetings if place is not None)})
        places = [*cuts, *((low + high) / 2 for low, high in pairwise(cuts))]
        points = [(float(ax) + p * float(bx - ax), float(ay) + p * float(by - ay)) for p in places]
        if not all(holds_point(outer, point, tolerance_ft) for point in points):
            return False
    return True


def is_simple(outline: Sequence[Point]) -> bool:
    """Return whether no side of an outline crosses or touches another that is not its neighbour.

    Source: house rule; the shoelace sum is an area only then.

    Args:
        outline: Three corners or more in order [ft].

    Returns:
        True when the corners are in an order that encloses one area [-].

    Example:
        >>> is_simple([(0, 0), (8, 0), (8, 4), (0, 4)]), is_simple([(0, 0), (8, 4), (8, 0), (0, 4)])
        (True, False)
    """
    sides = _sides(outline)
    last = len(sides) - 1
    # A corner on a side that is not its own touches it or doubles back, along parallel sides too.
    for corner in outline:
        for start, end in sides:
            if corner not in (start, end) and _distance_to_side(corner, start, end) < _NO_DISTANCE_FT:
                return False
    return len(set(outline)) == len(outline) and all(
        _meeting(*sides[first], *sides[second]) is None
        for first in range(len(sides))
        for second in range(first + 2, len(sides))
        if (first, second) != (0, last)
    )
