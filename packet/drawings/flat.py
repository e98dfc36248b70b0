"""Flat geometry of a drawing, in floats; a tolerance is a distance a reader can't see."""

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

from packet.drawings.svg import Point

Polygon = Sequence[Point]
Segment = tuple[Point, Point]

#: Floating noise.
_NOISE = 1e-9


def sides(outline: Polygon) -> list[Segment]:
    """Return the sides of a closed outline."""
    return list(pairwise([*outline, outline[0]]))


def along(start: Point, end: Point, share: float) -> Point:
    """Return the point at a share of the way from start to end."""
    return (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)


def moved(point: Point, direction: Point, by: float) -> Point:
    """Return a point moved along a unit direction."""
    return (point[0] + direction[0] * by, point[1] + direction[1] * by)


def direction(start: Point, end: Point) -> Point:
    """Return the unit direction from start to end; (1, 0) when they coincide."""
    length = math.dist(start, end)
    return ((end[0] - start[0]) / length, (end[1] - start[1]) / length) if length > _NOISE else (1.0, 0.0)


def to_segment(point: Point, segment: Segment) -> float:
    """Return the distance of a point from a segment."""
    (ax, ay), (bx, by) = segment
    dx, dy = bx - ax, by - ay
    square = dx * dx + dy * dy
    share = ((point[0] - ax) * dx + (point[1] - ay) * dy) / square if square > _NOISE else 0.0
    share = min(1.0, max(0.0, share))
    return math.hypot(point[0] - ax - dx * share, point[1] - ay - dy * share)


def is_inside(point: Point, outline: Polygon) -> bool:
    """Return whether a point lies inside an outline (even-odd)."""
    x, y = point
    inside = False
    ax, ay = outline[-1]
    for bx, by in outline:
        if (ay > y) != (by > y) and x < ax + (y - ay) / (by - ay) * (bx - ax):
            inside = not inside
        ax, ay = bx, by
    return inside


def meeting(first: Segment, second: Segment) -> float | None:
    """Return the share of ``first`` at which ``second`` meets it, or None; parallels never meet."""
    (ax, ay), (bx, by) = first
    (cx, cy), (dx, dy) = second
    cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if abs(cross) < _NOISE:
        return None
    share = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / cross
    other = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / cross
    inside = -_NOISE <= share <= 1 + _NOISE and -_NOISE <= other <= 1 + _NOISE
    return share if inside else None


def between(first: Segment, second: Segment) -> float:
    """Return the least distance between two segments."""
    if meeting(first, second) is not None:
        return 0.0
    ends = [(p, second) for p in first] + [(p, first) for p in second]
    return min(to_segment(point, segment) for point, segment in ends)


def rectangle(centre: Point, width: float, height: float, angle_deg: float = 0.0) -> tuple[Point, ...]:
    """Return the corners of a turned rectangle; the angle is clockwise on the sheet, as in SVG."""
    if not angle_deg:
        (x, y), right, low = centre, width / 2, height / 2
        return (x - right, y - low), (x + right, y - low), (x + right, y + low), (x - right, y + low)
    cosine, sine = math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))
    half = (
        (-width / 2, -height / 2),
        (width / 2, -height / 2),
        (width / 2, height / 2),
        (-width / 2, height / 2),
    )
    return tuple((centre[0] + x * cosine - y * sine, centre[1] + x * sine + y * cosine) for x, y in half)


def do_overlap(first: Polygon, second: Polygon, gap: float = 0.0) -> bool:
    """Return whether two turned rectangles overlap or come nearer than ``gap``, by separating axes."""
    for a, b, c, _ in (first, second):
        for start, end in ((a, b), (b, c)):
            way_x, way_y = direction(start, end)
            one = [x * way_x + y * way_y for x, y in first]
            two = [x * way_x + y * way_y for x, y in second]
            if max(one) + gap <= min(two) + _NOISE or max(two) + gap <= min(one) + _NOISE:
                return False
    return True


def touches(box: Polygon, outline: Polygon) -> bool:
    """Return whether a convex box and any simple outline share ground."""
    left, top, right, low = bounds(box)
    other_left, other_top, other_right, other_low = bounds(outline)
    if other_left > right or other_right < left or other_top > low or other_low < top:
        return False
    return (
        any(is_inside(corner, outline) for corner in box)
        or any(is_inside(corner, box) for corner in outline)
        or any(meeting(a, b) is not None for a in sides(box) for b in sides(outline))
    )


def crosses(box: Polygon, line: Segment) -> bool:
    """Return whether a line runs through a turned rectangle, by separating axes."""
    (ax, ay), (bx, by) = line
    beside = [(bx - ax) * (y - ay) - (by - ay) * (x - ax) for x, y in box]
    if min(beside) > 0 or max(beside) < 0:
        return False
    first, second, third, _ = box
    for (px, py), (qx, qy) in ((first, second), (second, third)):
        way_x, way_y = qx - px, qy - py
        start, end = px * way_x + py * way_y, qx * way_x + qy * way_y
        one, two = ax * way_x + ay * way_y, bx * way_x + by * way_y
        if max(one, two) < start or min(one, two) > end:
            return False
    return True


def bounds(points: Iterable[Point]) -> tuple[float, float, float, float]:
    """Return least x, least y, greatest x, greatest y."""
    listed = list(points)
    xs, ys = [x for x, _ in listed], [y for _, y in listed]
    return min(xs), min(ys), max(xs), max(ys)


def crossings(segment: Segment, outline: Polygon) -> list[tuple[float, float]]:
    """Return the parts of a segment inside an outline, as shares from and to."""
    shares = {0.0, 1.0}
    shares |= {share for side in sides(outline) if (share := meeting(segment, side)) is not None}
    ordered = sorted(min(1.0, max(0.0, share)) for share in shares)
    return [
        (a, b)
        for a, b in pairwise(ordered)
        if b - a > _NOISE and is_inside(along(*segment, (a + b) / 2), outline)
    ]


def surface(outline: Polygon) -> float:
    """Return the area inside an outline."""
    return abs(sum(ax * by - bx * ay for (ax, ay), (bx, by) in sides(outline))) / 2


def middle(outline: Polygon) -> Point:
    """Return the centroid of an outline; the mean corner when it has no area."""
    terms = [(ax * by - bx * ay, ax + bx, ay + by) for (ax, ay), (bx, by) in sides(outline)]
    twice = sum(cross for cross, _, _ in terms)
    if abs(twice) < _NOISE:
        return (sum(x for x, _ in outline) / len(outline), sum(y for _, y in outline) / len(outline))
    return (sum(c * x for c, x, _ in terms) / (3 * twice), sum(c * y for c, _, y in terms) / (3 * twice))
