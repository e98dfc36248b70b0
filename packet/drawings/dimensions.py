"""Dimensions of eaves and ridges: both are level, so a plan shows their true length."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise

from packet.drawings.building import Building
from packet.drawings.edges import edge_name
from packet.drawings.flat import (
    Segment,
    along,
    between,
    bounds,
    crosses,
    direction,
    meeting,
    moved,
    rectangle,
)
from packet.drawings.lettering import STYLES, Lettered
from packet.drawings.plan import Edge, Plan
from packet.drawings.svg import Element, Point, element, line
from packet.drawings.taken import Box, Index, Taken
from packet.units import feet_and_inches

DIMENSIONED = ("eave", "ridge")

#: First distance of a dimension line from its edge, step to the next try, least distance from the roof [px].
_FIRST, _STEP, _CLEAR = 24.0, 6.0, 20.0
#: Gap before an extension line, its end beyond the dimension line, half a tick [px].
_EXTENSION_GAP, _BEYOND, _HALF_TICK = 4.0, 4.0, 3.6
#: Height of the text's middle above its line; half the strip a dimension line keeps free [px].
_TEXT_ABOVE, _STRIP = 9.0, 5.0
#: An extension line this near the outline runs along it [px].
_ALONG_OUTLINE = 1.0
#: Shortest line that can hold ticks [px]; a plan length may differ from the true one by a tape's error [ft].
_SHORTEST, _TAPE_FT = 14.0, 1 / 12


@dataclass(frozen=True)
class Dimension:
    """A dimension in its place."""

    edge: Edge
    line: Segment
    extensions: tuple[Segment, ...]
    text: Lettered

    def draw(self) -> Element:
        """Return the dimension: extension lines, line, ticks, text."""
        parts = [*dimension_lines(self.line, self.extensions, self.line), self.text.draw()]
        return element("g", parts, class_="dimension", data_edge=self.edge.id)


def dimension_lines(
    dimension_line: Segment, extensions: Sequence[Segment], ticked: Sequence[Point]
) -> list[Element]:
    """Return extension lines, the dimension line and a tick at each of the points given."""
    way = direction(*dimension_line)
    slash = direction((0, 0), (way[0] + way[1], way[1] - way[0]))
    ticks = [
        line(moved(end, slash, -_HALF_TICK), moved(end, slash, _HALF_TICK), class_="tick") for end in ticked
    ]
    drawn = [line(*extension, class_="extension") for extension in extensions]
    return [*drawn, line(*dimension_line, class_="dim-line"), *ticks]


def dimensions(
    plan: Plan, building: Building, taken: Taken, words: Mapping[str, str], *, few: bool
) -> list[Dimension]:
    """Return the dimensions that find room, and take that room.

    A span that another dimension already shows is not repeated.

    Args:
        plan: The roof [px].
        building: Its outline [px].
        taken: Room taken so far; added to.
        words: Words of drawings.
        few: Only the longest eave each way, for a small sheet.
    """
    placed: list[Dimension] = []
    known = _Placed()
    for edge in _wanted(plan, few=few):
        tries = [
            found
            for normal in _normals(edge, building)
            if (found := _first_fit(edge, normal, plan, building, taken, known, words)) is not None
        ]
        if not tries:
            continue
        best = min(tries, key=lambda one: round(between(one.line, edge.line), 3))
        placed.append(best)
        known.lines.add(_shortened(best.line))
        known.texts.add(best.text.box)
        taken.add([best.text.box, _strip(best.line)])
        taken.add_lines([best.line, *best.extensions])
    return placed


@dataclass
class _Placed:
    """Lines and texts of dimensions placed so far: extension lines of others cross neither."""

    lines: Index[Segment] = field(default_factory=Index)
    texts: Index[Box] = field(default_factory=Index)


def _wanted(plan: Plan, *, few: bool) -> list[Edge]:
    ground = [
        edge
        for edge in plan.edges
        if edge.kind in DIMENSIONED
        and edge.level == 0
        and math.dist(*edge.line) >= _SHORTEST
        and abs(math.dist(*edge.line) / plan.px_per_ft - edge.length_ft) <= _TAPE_FT
    ]
    ordered = sorted(ground, key=lambda edge: (DIMENSIONED.index(edge.kind), -edge.length_ft))
    kept: list[Edge] = []
    for edge in ordered:
        same_way = [other for other in kept if _is_parallel(edge.line, other.line)]
        if few and (edge.kind != "eave" or same_way):
            continue
        if not any(_is_same_span(edge.line, other.line, plan.px_per_ft * _TAPE_FT) for other in same_way):
            kept.append(edge)
    return sorted(kept, key=lambda edge: (edge.length_ft, edge.id))


def _is_parallel(first: Segment, second: Segment) -> bool:
    a, b = direction(*first), direction(*second)
    return abs(a[0] * b[1] - a[1] * b[0]) < 0.01


def _is_same_span(first: Segment, second: Segment, near: float) -> bool:
    way = direction(*first)
    spans = [sorted(x * way[0] + y * way[1] for x, y in one) for one in (first, second)]
    return all(abs(a - b) <= near for a, b in zip(*spans, strict=True))


def _normals(edge: Edge, building: Building) -> list[Point]:
    """Return the ways to pull a dimension out: an eave's outer side, both sides of a ridge."""
    way, centre = direction(*edge.line), along(*edge.line, 0.5)
    both = [(-way[1], way[0]), (way[1], -way[0])]
    outer = [normal for normal in both if not building.is_on_roof(moved(centre, normal, 1.0))]
    return outer if len(outer) == 1 else both


def _first_fit(
    edge: Edge,
    normal: Point,
    plan: Plan,
    building: Building,
    taken: Taken,
    placed: _Placed,
    words: Mapping[str, str],
) -> Dimension | None:
    reach = math.hypot(plan.width_px, plan.height_px) + 8 * _FIRST
    on_roof = tuple(_spans_on_roof(point, normal, building) for point in edge.line)
    blocked, centre = _too_near(edge, normal, building), along(*edge.line, 0.5)
    past_roof = max((end for spans in on_roof for _, end in spans), default=0.0)
    text = _text(edge, words)
    for number in range(int((reach - _FIRST) / _STEP)):
        off = _FIRST + number * _STEP
        if any(start < off < end for start, end in blocked):
            continue
        if building.is_on_roof(moved(centre, normal, off)):
            continue
        dimension_line = _shifted(edge.line, normal, off)
        extensions = tuple(
            _extension(point, normal, off, spans) for point, spans in zip(edge.line, on_roof, strict=True)
        )
        if _crosses_another(extensions, placed):
            if off > past_roof:  # from here on extension lines only grow
                return None
            continue
        found = Dimension(edge, dimension_line, extensions, _above(dimension_line, text))
        if taken.is_free(found.text.box) and taken.is_free(_strip(dimension_line)):
            return found
    return None


def _shifted(edge_line: Segment, normal: Point, off: float) -> Segment:
    """Return the dimension line, from left to right, or upward when it is upright."""
    start, end = (moved(point, normal, off) for point in edge_line)
    is_upright = abs(direction(start, end)[0]) < 0.01
    turned = end[1] > start[1] if is_upright else end[0] < start[0]
    return (end, start) if turned else (start, end)


def _text(edge: Edge, words: Mapping[str, str]) -> str:
    length = feet_and_inches(Fraction(edge.length_ft) * 12)
    return words["dimension"].format(edge=edge_name(edge.kind, words), length=length)


def _above(dimension_line: Segment, text: str) -> Lettered:
    """Return a dimension's text in its place, on the upper or left side of its line."""
    way = direction(*dimension_line)
    centre = moved(along(*dimension_line, 0.5), (way[1], -way[0]), _TEXT_ABOVE)
    return Lettered(text, STYLES["dim"], centre, math.degrees(math.atan2(way[1], way[0])))


def _across(piece: Segment, start: Point, way: Point) -> Segment:
    """Return a piece as seen along a way from a point: how far along, how far beside."""
    (ax, ay), (bx, by) = piece
    (x, y), (ux, uy) = start, way
    ax, ay, bx, by = ax - x, ay - y, bx - x, by - y
    return (ax * ux + ay * uy, ay * ux - ax * uy), (bx * ux + by * uy, by * ux - bx * uy)


def _within(piece: Segment, low: float, high: float) -> tuple[float, float] | None:
    """Return from where to where along the way a piece lies between two lines beside it."""
    (a, beside_a), (b, beside_b) = piece
    if beside_a > beside_b:
        a, beside_a, b, beside_b = b, beside_b, a, beside_a
    if beside_b < low or beside_a > high:
        return None
    if beside_b - beside_a > 1e-9:
        slope = (b - a) / (beside_b - beside_a)
        a, b = (
            a + (max(beside_a, low) - beside_a) * slope,
            a + (min(beside_b, high) - beside_a) * slope,
        )
    return (a, b) if a <= b else (b, a)


def _spans_on_roof(point: Point, normal: Point, building: Building) -> list[tuple[float, float]]:
    """Return from where to where an extension line from a point would run over roof or along its edge."""
    spans = [
        span
        for piece in building.outline
        if (span := _within(_across(piece, point, normal), -_ALONG_OUTLINE, _ALONG_OUTLINE)) and span[1] >= 0
    ]
    spans.sort()
    between_them = [
        (end, start)
        for (_, end), (start, _) in pairwise([(0.0, 0.0), *spans])
        if start > end and building.is_on_roof(moved(point, normal, (start + end) / 2))
    ]
    return spans + between_them


def _too_near(edge: Edge, normal: Point, building: Building) -> list[tuple[float, float]]:
    """Return from where to where a dimension line, pulled out, would be too near the building's outline."""
    beside = [at for _, at in _across(edge.line, edge.line[0], normal)]
    low, high = min(beside) - _CLEAR, max(beside) + _CLEAR
    seen = (_within(_across(piece, edge.line[0], normal), low, high) for piece in building.outline)
    return [(span[0] - _CLEAR, span[1] + _CLEAR) for span in seen if span]


def _extension(point: Point, normal: Point, off: float, on_roof: Sequence[tuple[float, float]]) -> Segment:
    """Return an extension line from where the roof ends to beyond the dimension line."""
    last = max((min(end, off) for start, end in on_roof if start < off), default=0.0)
    return moved(point, normal, min(last + _EXTENSION_GAP, off)), moved(point, normal, off + _BEYOND)


def _crosses_another(extensions: Sequence[Segment], placed: _Placed) -> bool:
    """Return whether an extension line would cross another dimension."""
    return any(
        any(meeting(extension, line) is not None for line in placed.lines.near(bounds(extension)))
        or any(crosses(text, extension) for text in placed.texts.near(bounds(extension)))
        for extension in extensions
    )


def _shortened(dimension_line: Segment) -> Segment:
    """Return a line without its ends: an extension line may pass through a tick."""
    way = direction(*dimension_line)
    return moved(dimension_line[0], way, _HALF_TICK), moved(dimension_line[1], way, -_HALF_TICK)


def _strip(dimension_line: Segment) -> tuple[Point, ...]:
    way = direction(*dimension_line)
    angle = math.degrees(math.atan2(way[1], way[0]))
    return rectangle(along(*dimension_line, 0.5), math.dist(*dimension_line), 2 * _STRIP, angle)
