"""What part of a plane is drawn, and where on the sheet: along the eave to the right, up the slope up."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from packet.drawings.flat import Polygon, Segment, along, bounds, direction, sides
from packet.drawings.svg import Point

#: Where so little of the plane is left beside the view, the view goes on to its edge [ft].
_TO_THE_EDGE_FT = 1.5

#: Floating noise.
_NOISE = 1e-6


@dataclass(frozen=True)
class View:
    """A part of a plane at a scale; its upper left corner is the origin of the sheet.

    Attributes:
        left: Left end on the plane [ft].
        low: Lower end [ft].
        right: Right end [ft].
        high: Upper end [ft].
        px_per_ft: Scale.
    """

    left: float
    low: float
    right: float
    high: float
    px_per_ft: float

    @property
    def size_px(self) -> Point:
        """Width and height [px]."""
        return (self.right - self.left) * self.px_per_ft, (self.high - self.low) * self.px_per_ft

    def point(self, at: Sequence[float]) -> Point:
        """Return a place on the plane on the sheet [px]."""
        return (at[0] - self.left) * self.px_per_ft, (self.high - at[1]) * self.px_per_ft

    def points(self, corners: Iterable[Sequence[float]]) -> tuple[Point, ...]:
        """Return places on the plane on the sheet [px]."""
        return tuple(self.point(corner) for corner in corners)

    def at_scale(self, px_per_ft: float) -> "View":
        """Return the same part at another scale."""
        return View(self.left, self.low, self.right, self.high, px_per_ft)

    def clipped(self, line: Segment) -> Segment | None:
        """Return what the view shows of a line on the sheet [px]; None when it shows nothing of it."""
        width, height = self.size_px
        (ax, ay), (bx, by) = line
        first, last = 0.0, 1.0
        for start, way, most in ((ax, bx - ax, width), (ay, by - ay, height)):
            if abs(way) < _NOISE:
                if not -_NOISE <= start <= most + _NOISE:
                    return None
                continue
            shares = sorted((-start / way, (most - start) / way))
            first, last = max(first, shares[0]), min(last, shares[1])
        return (along(*line, first), along(*line, last)) if last - first > _NOISE else None


def view_of(plane: Mapping[str, Any], room_ft: float) -> View:
    """Return the part of a plane that holds its pieces and cut-outs with some room around, at 1 px/ft."""
    left, low, right, high = bounds(_work(plane))
    u_left, v_low, u_right, v_high = bounds(tuple(corner) for corner in plane["outline"])
    return View(
        min(left, _beyond(left, u_left, room_ft, -1)),
        min(low, _beyond(low, v_low, room_ft, -1)),
        max(right, _beyond(right, u_right, room_ft, 1)),
        max(high, _beyond(high, v_high, room_ft, 1)),
        1.0,
    )


def _work(plane: Mapping[str, Any]) -> list[Point]:
    found = [(u, v) for piece in plane["pieces"] for outline in piece["outlines"] for u, v in outline]
    for cut in plane["cut_outs"]:
        found += [(u, v) for name in ("rot", "asked", "made") for u, v in cut[name] or ()]
    return found or [(u, v) for u, v in plane["outline"]]


def _beyond(end: float, edge: float, room_ft: float, way: int) -> float:
    """Return where the view ends on one side: the room beyond the work, or the plane's edge."""
    return edge if (edge - end) * way <= room_ft + _TO_THE_EDGE_FT else end + room_ft * way


def box(corners: Sequence[Sequence[float]]) -> Polygon:
    """Return the outline of a rectangle given by its lower left and upper right corner."""
    (left, low), (right, high) = corners
    return [(left, low), (right, low), (right, high), (left, high)]


def within(outline: Polygon, rectangle: Polygon) -> list[Point]:
    """Return what of an outline lies inside a rectangle that is not turned; [] when nothing does."""
    left, low, right, high = bounds(rectangle)
    kept = list(outline)
    for axis, limit, way in ((0, left, 1), (0, right, -1), (1, low, 1), (1, high, -1)):
        found: list[Point] = []
        for start, end in pairwise([*kept, kept[0]]) if kept else ():
            first, second = (start[axis] - limit) * way, (end[axis] - limit) * way
            if first >= 0:
                found.append(start)
            if first * second < 0:
                found.append(along(start, end, first / (first - second)))
        kept = found
    return kept


def inset(outline: Polygon, by: float) -> list[Point]:
    """Return an outline that runs inside another at a distance; for outlines without narrow places."""
    turn = 1.0 if sum(ax * by_ - bx * ay for (ax, ay), (bx, by_) in sides(outline)) > 0 else -1.0
    found = []
    for number, corner in enumerate(outline):
        before = direction(outline[number - 1], corner)
        after = direction(corner, outline[(number + 1) % len(outline)])
        (ax, ay), (bx, by_) = (-before[1] * turn, before[0] * turn), (-after[1] * turn, after[0] * turn)
        share = 1 + ax * bx + ay * by_
        if share > _NOISE:
            found.append((corner[0] + by * (ax + bx) / share, corner[1] + by * (ay + by_) / share))
    return found


def on_plane(corners: Sequence[Sequence[float]], plane: Mapping[str, Any], view: View) -> list[Point]:
    """Return what of a rectangle lies on the plane [px]; all of it when nothing does."""
    outline = [(float(u), float(v)) for u, v in plane["outline"]]
    return list(view.points(within(outline, box(corners)) or box(corners)))
