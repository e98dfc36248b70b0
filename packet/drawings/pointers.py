"""Labels that stand beside their place with a leader: ringed letters of marks, and ids that found no room."""

import itertools
import math
from dataclasses import dataclass, replace

from packet.drawings.flat import (
    Segment,
    bounds,
    direction,
    meeting,
    moved,
    rectangle,
    to_segment,
    touches,
)
from packet.drawings.lettering import LINE_HEIGHT, STYLES, Lettered, Style, width_px
from packet.drawings.svg import Element, Point, element, line
from packet.drawings.taken import Bounds, Box, Index, Taken

#: Radius of a ring with one letter, of the dot at its place [px].
RING_PX, DOT_PX = 8.5, 1.9
#: Distances tried for a label from its place [px], and ways, in degrees from east, clockwise on the sheet.
_DISTANCES = (18, 24, 32, 42, 55, 72, 94, 122, 160, 215, 300)
_WAYS = tuple(
    (math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
    for degrees in (315 - 15 * number for number in range(24))
)
_LETTERS = "abcdefghjkmnpqrstuvwxyz"  # Without i, l and o, which read as digits.
#: Space between a label and a line of the roof [px].
_OFF_LINE = 2.5
#: A label stands no farther outside the roof's bounds; step of the rows under a crowded roof [px].
BESIDE_ROOF_PX, _ROWS = 30.0, 24.0
#: A leader this near a line at both ends runs along it and would be taken for it [px].
_ALONG = 3.0
#: Extra cost of a label on a line of the roof, on hatching, and of a leader that crosses a line [px].
_ON_LINE, _ON_HATCH, _CROSSING = 110.0, 15.0, 3.0


@dataclass(frozen=True)
class Pointer:
    """A label with its leader; ``ring_px`` is 0 for a label without a ring."""

    at: Point
    label: Lettered
    leader: Segment
    ring_px: float = 0.0

    @property
    def box(self) -> tuple[Point, ...]:
        """The room the label takes, its ring included."""
        return _box(self.label, self.ring_px)

    def draw(self) -> list[Element]:
        """Return dot, leader, ring and label."""
        x, y = self.at
        parts = [element("circle", class_="dot", cx=x, cy=y, r=DOT_PX), line(*self.leader, class_="leader")]
        if self.ring_px:
            parts.append(
                element("circle", class_="ring", cx=self.label.at[0], cy=self.label.at[1], r=self.ring_px)
            )
        return [*parts, self.label.draw()]


def letter(number: int) -> str:
    """Return the letter of a mark, counted from 0: a to z, then aa, ab."""
    base = len(_LETTERS)
    return (letter(number // base - 1) if number >= base else "") + _LETTERS[number % base]


def ring_radius(text: str) -> float:
    """Return the radius of a ring around a letter or two [px]."""
    return max(RING_PX, width_px(text, STYLES["letter"]) / 2 + 3.5)


def dot_box(at: Point) -> tuple[Point, ...]:
    """Return the room a dot takes."""
    return rectangle(at, 2 * DOT_PX + 1, 2 * DOT_PX + 1)


def _box(label: Lettered, ring_px: float, more: float = 0.0) -> tuple[Point, ...]:
    half_width, half_height = _half_size(label.text, label.style, ring_px)
    return rectangle(label.at, 2 * (half_width + more), 2 * (half_height + more))


def point_to(
    at: Point,
    text: str,
    style: Style,
    taken: Taken,
    hatched: Index[Box],
    limits: Bounds,
    *,
    ring_px: float = 0.0,
) -> Pointer:
    """Return a label beside its place, where it covers no other label, and take that room.

    Near and off the lines first; when the roof is full, in rows under it.

    Args:
        at: What the label points to [px].
        text: The label.
        style: Its lettering.
        taken: Room taken so far; added to.
        hatched: Outlines it should rather not stand on [px].
        limits: Where labels may stand [px].
        ring_px: Radius of a ring around the label, or 0.
    """
    label = Lettered(text, style, at)
    dot, half = dot_box(at), _half_size(text, style, ring_px)
    best: tuple[float, int, Pointer] | None = None
    for distance in _DISTANCES:
        if best is not None and best[0] <= distance:
            break
        for order, way in enumerate(_WAYS):
            centre = moved(at, way, distance + (0.0 if ring_px else (half[0] - 1) * abs(way[0])))
            box = rectangle(centre, 2 * half[0], 2 * half[1])
            if not _is_within(box, limits) or not taken.is_free(box, over_lines=True):
                continue
            end = moved(centre, way, -(ring_px or _reach(half, way)))
            pointer = Pointer(at, replace(label, at=centre), (moved(at, way, DOT_PX), end), ring_px)
            most = best[0] if best else math.inf
            cost = _cost(pointer, distance, taken, dot, hatched, most)
            if cost is not None and (best is None or (cost, order) < best[:2]):
                best = (cost, order, pointer)
    found = best[2] if best else _under_roof(at, label, ring_px, taken, limits)
    taken.add([dot, found.box])
    taken.leaders.add(found.leader)
    return found


def _is_within(box: Box, limits: Bounds) -> bool:
    (left, top), _, (right, low), _ = box
    return left >= limits[0] and top >= limits[1] and right <= limits[2] and low <= limits[3]


def _half_size(text: str, style: Style, ring_px: float) -> Point:
    """Return half the width and height of a label, its ring included."""
    if ring_px:
        return ring_px, ring_px
    return width_px(text, style) / 2 + 1, style.size_px * LINE_HEIGHT / 2


def _reach(half: Point, way: Point) -> float:
    """Return how far a label reaches from its middle along a way, with a little room before its letters."""
    return min(
        (half[0] + 1) / abs(way[0]) if abs(way[0]) > 0.01 else math.inf,
        half[1] / abs(way[1]) if abs(way[1]) > 0.01 else math.inf,
    )


def _cost(
    pointer: Pointer, distance: float, taken: Taken, dot: Box, hatched: Index[Box], most: float
) -> float | None:
    """Return what a pointer costs whose label stands free; None above the most or with no way to it."""
    cost = float(distance)
    around = _box(pointer.label, pointer.ring_px, _OFF_LINE)
    if not taken.is_free(around, gap=0.0):
        cost += _ON_LINE
        if cost > most:
            return None
    # A leader may leave the dots it starts from, but crosses no other.
    if not taken.is_clear(pointer.leader, but=dot):
        return None
    if any(touches(pointer.box, outline) for outline in hatched.near(bounds(pointer.box))):
        cost += _ON_HATCH
    near = taken.lines.near(bounds(pointer.leader), _ALONG)
    if any(all(to_segment(end, other) < _ALONG for end in pointer.leader) for other in near):
        cost += _ON_LINE
    crossed = sum(meeting(pointer.leader, other) is not None for other in near)
    return round(cost + _CROSSING * crossed, 3)


def _under_roof(at: Point, label: Lettered, ring_px: float, taken: Taken, limits: Bounds) -> Pointer:
    """Return the label in the nearest free place of the rows under the roof; its leader may cross others."""
    left, _, right, low = limits
    half = _half_size(label.text, label.style, ring_px)
    labels = Taken(taken.boxes)
    count = max(1, int((right - left - 2 * half[0]) / _ROWS))
    columns = sorted(
        (left + half[0] + _ROWS * number for number in range(count)), key=lambda x: abs(x - at[0])
    )
    for row, x in ((row, x) for row in itertools.count() for x in columns):
        centre = (x, low + _ROWS * row)
        placed = replace(label, at=centre)
        if labels.is_free(_box(placed, ring_px), over_lines=True):
            break
    way = direction(at, centre)
    reach = ring_px or _reach(half, way)
    return Pointer(at, placed, (moved(at, way, DOT_PX), moved(centre, way, -reach)), ring_px)
