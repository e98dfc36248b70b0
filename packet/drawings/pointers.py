"""Labels that stand beside their place with a leader: ringed letters of marks, and ids that found no room."""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from packet.drawings.flat import (
    Polygon,
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
from packet.drawings.taken import Taken

#: Radius of a ring with one letter, of the dot at its place [px].
RING_PX, DOT_PX = 8.5, 1.9
#: Distances tried for a label from its place [px], and ways, in degrees from east, clockwise on the sheet.
_DISTANCES = (18, 23, 28, 34, 41, 50, 60, 75, 95, 120, 150, 190, 240, 300, 380)
_WAYS = tuple(315 - 15 * number for number in range(24))
_LETTERS = "abcdefghjkmnpqrstuvwxyz"  # Without i, l and o, which read as digits.
#: Space between a label and a line of the roof [px].
_OFF_LINE = 2.5
#: A label stands no farther outside the roof's bounds; step of the rows under a crowded roof [px].
_BESIDE_ROOF, _ROWS = 30.0, 24.0
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
    width, height = width_px(label.text, label.style) + 2, label.style.size_px * LINE_HEIGHT
    if ring_px:
        width = height = 2 * ring_px
    return rectangle(label.at, width + 2 * more, height + 2 * more)


def point_to(
    at: Point,
    text: str,
    style: Style,
    taken: Taken,
    hatched: Sequence[Polygon],
    extent: tuple[float, float, float, float],
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
        extent: Bounds of the roof [px].
        ring_px: Radius of a ring around the label, or 0.
    """
    label = Lettered(text, style, at)
    # A leader may leave the dots it starts from, but crosses no other.
    dot = dot_box(at)
    others = Taken([box for box in taken.boxes if not touches(box, dot)], [], taken.leaders)
    best: tuple[float, int, Pointer] | None = None
    for distance in _DISTANCES:
        if best is not None and best[0] <= distance:
            break
        for order, degrees in enumerate(_WAYS):
            way = (math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
            pointer = _toward(at, way, distance, label, ring_px)
            if not _is_within(pointer.box, extent):
                continue
            cost = _cost(pointer, distance, taken, others, hatched)
            if cost is not None and (best is None or (cost, order) < best[:2]):
                best = (cost, order, pointer)
    found = best[2] if best else _under_roof(at, label, ring_px, taken, extent)
    taken.add([found.box])
    taken.leaders.append(found.leader)
    return found


def _is_within(box: Polygon, extent: tuple[float, float, float, float]) -> bool:
    left, top, right, low = bounds(box)
    return (
        left >= extent[0] - _BESIDE_ROOF
        and right <= extent[2] + _BESIDE_ROOF
        and top >= extent[1] - _BESIDE_ROOF
        and low <= extent[3] + _BESIDE_ROOF
    )


def _toward(at: Point, way: Point, distance: float, label: Lettered, ring_px: float) -> Pointer:
    centre = moved(
        at, way, distance + (0.0 if ring_px else width_px(label.text, label.style) / 2 * abs(way[0]))
    )
    reach = ring_px or _half_extent(label, way)
    end = moved(centre, direction(centre, at), reach)
    return Pointer(at, replace(label, at=centre), (moved(at, way, DOT_PX), end), ring_px)


def _half_extent(label: Lettered, way: Point) -> float:
    half_width = width_px(label.text, label.style) / 2 + 2
    half_height = label.style.size_px * LINE_HEIGHT / 2
    return min(
        half_width / abs(way[0]) if abs(way[0]) > 0.01 else math.inf,
        half_height / abs(way[1]) if abs(way[1]) > 0.01 else math.inf,
    )


def _cost(
    pointer: Pointer, distance: float, taken: Taken, others: Taken, hatched: Sequence[Polygon]
) -> float | None:
    if not taken.is_free(pointer.box, over_lines=True) or not others.is_clear(pointer.leader):
        return None
    cost = float(distance)
    around = _box(pointer.label, pointer.ring_px, _OFF_LINE)
    if not taken.is_free(around, gap=0.0):
        cost += _ON_LINE
    if any(touches(pointer.box, outline) for outline in hatched):
        cost += _ON_HATCH
    if any(all(to_segment(end, other) < _ALONG for end in pointer.leader) for other in taken.lines):
        cost += _ON_LINE
    crossed = sum(meeting(pointer.leader, other) is not None for other in taken.lines)
    return round(cost + _CROSSING * crossed, 3)


def _under_roof(
    at: Point, label: Lettered, ring_px: float, taken: Taken, extent: tuple[float, float, float, float]
) -> Pointer:
    """Return the label in the first free place of the rows under the roof; its leader may cross others."""
    left, _, right, low = extent
    labels = Taken(taken.boxes)
    columns = max(1, int((right - left) / _ROWS))
    for number in itertools.count():
        row, column = divmod(number, columns)
        centre = (left + _ROWS * (column + 0.5), low + _ROWS * (row + 1))
        placed = replace(label, at=centre)
        if labels.is_free(_box(placed, ring_px), over_lines=True):
            break
    way = direction(at, centre)
    reach = ring_px or _half_extent(label, way)
    return Pointer(at, placed, (moved(at, way, DOT_PX), moved(centre, way, -reach)), ring_px)
