"""The free room inside an outline: where in it a block may stand, for all places of a grid at once."""

import math
from collections.abc import Iterable, Sequence

import numpy as np
from numpy.typing import NDArray

from packet.drawings.flat import Polygon, bounds, direction, middle, sides
from packet.drawings.svg import Point
from packet.drawings.taken import GAP_PX, Taken

#: Step of the tries for a place [px], and the least and most steps across an outline.
_GRID, _LEAST_CELLS, _MOST_CELLS = 5.0, 8, 40

#: Clear margin that is worth moving a block for, and how far a pixel of it is worth moving [px].
ENOUGH_PX, _WORTH = 12.0, 6.0

Numbers = NDArray[np.float64]
Flags = NDArray[np.bool_]


class Room:
    """An outline with all that stands in it.

    Labels and lines are turned rectangles (a line has no height); a block fits where some axis parts it from
    each of them. What does not depend on the block is worked out once for all places.
    """

    def __init__(self, outline: Polygon, kept_free: Sequence[Polygon], taken: Taken) -> None:
        """Read what lies near.

        Args:
            outline: Where blocks must lie [px].
            kept_free: Outlines they must not touch [px].
            taken: Room taken so far.
        """
        around = left, top, right, low = bounds(outline)
        self._size = (right - left, low - top)
        self._xs, self._ys = xs, ys = _ticks(left, right), _ticks(top, low)
        self._inside = _is_inside(xs, ys, outline)
        for other in kept_free:
            self._inside &= ~_is_inside(xs, ys, other)
        centre = middle(outline)
        self._away = np.round(np.hypot(xs[:, None] - centre[0], ys[None, :] - centre[1]), 3)
        lines = [*taken.lines.near(around), *taken.leaders.near(around), *sides(outline)]
        lines += [side for other in kept_free for side in sides(other)]
        rows = [_line(start, end) for start, end in lines]
        rows += [_box(box) for box in taken.boxes.near(around, GAP_PX)]
        table = np.array(rows).T
        level = np.abs(table[4] * table[5]) < 1e-9
        self._read_level(table[:, level])
        self._read_oblique(table[:, ~level])

    def _read_level(self, table: Numbers) -> None:
        """Keep how far each place is from what stands level or upright, less its own extent."""
        x, y, _, _, _, _, reach_x, reach_y, gap = table[:, :, None]
        self._level_x = np.abs(self._xs - x) - (reach_x + gap)
        self._level_y = np.abs(self._ys - y) - (reach_y + gap)

    def _read_oblique(self, table: Numbers) -> None:
        """Keep the same for what stands oblique, along its own two axes too."""
        x, y, long, high, ux, uy, reach_x, reach_y, gap = table[:, :, None, None]
        dx, dy = self._xs[None, :, None] - x, self._ys[None, None, :] - y
        self._ux, self._uy = np.abs(ux), np.abs(uy)
        self._oblique_x, self._oblique_y = np.abs(dx) - (reach_x + gap), np.abs(dy) - (reach_y + gap)
        self._oblique_long = np.abs(dx * ux + dy * uy) - (long + gap)
        self._oblique_high = np.abs(dy * ux - dx * uy) - (high + gap)

    def best(self, width: float, height: float, margin: float) -> Point | None:
        """Return where a block's middle may stand, near the outline's middle, or None.

        Args:
            width: Width of the block [px].
            height: Its height [px].
            margin: Least clear space around it [px].
        """
        if width > self._size[0] or height > self._size[1]:
            return None
        fits = self._inside & self._is_clear(width / 2 + margin, height / 2 + margin)
        if not fits.any():
            return None
        roomy = fits & self._is_clear(width / 2 + ENOUGH_PX, height / 2 + ENOUGH_PX)
        # All places with the most room are alike but for their distance; so are all others.
        cost = np.where(fits, self._away - _WORTH * margin, math.inf)
        cost[roomy] -= _WORTH * (ENOUGH_PX - margin)
        column, row = divmod(int(cost.argmin()), len(self._ys))
        return float(self._xs[column]), float(self._ys[row])

    def _is_clear(self, half_width: float, half_height: float) -> Flags:
        """Return at which places a block covers no label and no line, by separating axes."""
        covers_x, covers_y = self._level_x < half_width, self._level_y < half_height
        covered: Flags = (covers_x[:, :, None] & covers_y[:, None, :]).any(axis=0)
        if len(self._ux):
            over = self._oblique_long < half_width * self._ux + half_height * self._uy
            over &= self._oblique_high < half_width * self._uy + half_height * self._ux
            over &= self._oblique_x < half_width
            over &= self._oblique_y < half_height
            covered |= over.any(axis=0)
        return ~covered


def _ticks(low: float, high: float) -> Numbers:
    count = min(_MOST_CELLS, max(_LEAST_CELLS, round((high - low) / _GRID)))
    return low + (high - low) * np.arange(count + 1) / count


def _line(start: Point, end: Point) -> tuple[float, ...]:
    """Return a line as a turned rectangle: middle, half sides, way, half extents, gap."""
    ux, uy = direction(start, end)
    x, y, half = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2, math.dist(start, end) / 2
    return x, y, half, 0.0, ux, uy, half * abs(ux), half * abs(uy), 0.0


def _box(box: Sequence[Point]) -> tuple[float, ...]:
    first, second, third, _ = box
    ux, uy = direction(first, second)
    x, y = (first[0] + third[0]) / 2, (first[1] + third[1]) / 2
    long, high = math.dist(first, second) / 2, math.dist(second, third) / 2
    reach_x, reach_y = long * abs(ux) + high * abs(uy), long * abs(uy) + high * abs(ux)
    return x, y, long, high, ux, uy, reach_x, reach_y, GAP_PX


def _is_inside(xs: Numbers, ys: Numbers, outline: Polygon) -> Flags:
    """Return which places lie inside an outline (even-odd)."""
    inside = np.zeros((len(xs), len(ys)), dtype=bool)
    for (ax, ay), (bx, by) in _upright(outline):
        across = (ay > ys) != (by > ys)
        inside ^= across & (xs[:, None] < ax + (ys - ay) * ((bx - ax) / (by - ay)))
    return inside


def _upright(outline: Polygon) -> Iterable[tuple[Point, Point]]:
    """Yield the sides that are not level: only they part left from right."""
    return ((a, b) for a, b in sides(outline) if abs(a[1] - b[1]) > 1e-9)
