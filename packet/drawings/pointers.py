"""Labels that stand beside their place with a leader: ringed letters of marks, and ids that found no room."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from packet.drawings.flat import Polygon, Segment, direction, meeting, moved, rectangle, touches
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
    at: Point, text: str, style: Style, taken: Taken, hatched: Sequence[Polygon], *, ring_px: float = 0.0
) -> Pointer:
    """Return a label beside its place, where it covers nothing, and take that room.

    Near and off the lines first. A label always finds a place: the last ones stand outside the roof.
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
            cost = _cost(pointer, distance, taken, others, hatched)
            if cost is not None and (best is None or (cost, order) < best[:2]):
                best = (cost, order, pointer)
    if best is None:
        best = (0.0, 0, _beyond(at, label, ring_px, taken))
    found = best[2]
    taken.add([found.box])
    taken.leaders.append(found.leader)
    return found


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
    crossed = sum(meeting(pointer.leader, other) is not None for other in taken.lines)
    return round(cost + _CROSSING * crossed, 3)


def _beyond(at: Point, label: Lettered, ring_px: float, taken: Taken) -> Pointer:
    """Return the label west of everything taken, one under another."""
    left = min([x for box in taken.boxes for x, _ in box] + [at[0]])
    centre = (left - 30.0, at[1])
    while not taken.is_free(_box(replace(label, at=centre), ring_px), over_lines=True):
        centre = (centre[0], centre[1] + 4.0)
    way = direction(centre, at)
    reach = ring_px or _half_extent(label, way)
    return Pointer(
        at, replace(label, at=centre), (moved(at, way, -DOT_PX), moved(centre, way, reach)), ring_px
    )
