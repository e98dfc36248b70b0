"""Nails placed to a schedule: where each one goes on a piece of deck. They are drawn, not counted."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from shapely import union_all
from shapely.geometry.polygon import orient

from packet.calc.domain import above_zero
from packet.calc.fasteners import nails_in_row
from packet.calc.polygon import Outline, Point, distance, holds_point, polygon
from packet.figure import Number

RowKind = Literal["end", "cut edge", "field", "closer"]

#: A nail stands this far from the panel's edge: APA text on panels, 3/8 in [ft].
EDGE_DISTANCE_FT = 3 / 8 / 12

#: A row on a rafter stops this short of the row along a cut edge, so that no two nails stand together [ft].
CLEAR_OF_CUT_FT = 1.5 / 12


@dataclass(frozen=True)
class Strip:
    """A part of the plane where rows on supports stand closer.

    Attributes:
        outline: Corners of the strip [ft].
        spacing_in: Most distance of nails there [in].
    """

    outline: Outline
    spacing_in: Number


@dataclass(frozen=True)
class Schedule:
    """How far apart nails stand.

    Attributes:
        edge_in: On supported panel edges [in].
        field_in: On supports between [in].
        strips: Where they stand closer.
    """

    edge_in: Number
    field_in: Number
    strips: tuple[Strip, ...] = ()


@dataclass(frozen=True)
class Row:
    """Nails in one line, evenly apart.

    Attributes:
        kind: What the row is.
        start: Where it starts [ft].
        end: Where it ends, at its last nail [ft].
        spacing_in: Most distance of nails in it [in].
        opens: Whether a nail stands at its start; where a row goes on in another spacing, that nail is the
            last one of the part before.
    """

    kind: RowKind
    start: Point
    end: Point
    spacing_in: Number
    opens: bool = True

    @property
    def length_ft(self) -> float:
        """Length from start to end [ft]."""
        return distance(self.start, self.end)

    @property
    def count(self) -> int:
        """Nails in it."""
        return nails_in_row(self.length_ft, self.spacing_in) - (not self.opens)

    @property
    def nails(self) -> tuple[Point, ...]:
        """Place of each nail [ft]."""
        spaces = self.count - self.opens
        (x, y), (to_x, to_y) = self.start, self.end
        shares = (number / spaces for number in range(1 - self.opens, spaces + 1))
        return tuple(
            (float(x) + share * float(to_x - x), float(y) + share * float(to_y - y)) for share in shares
        )


def nail_rows(
    outline: Outline,
    lines: Sequence[Number],
    half_width_ft: Number,
    schedule: Schedule,
    level_wood: Sequence[Number] = (),
    holes: Sequence[Outline] = (),
) -> tuple[Row, ...]:
    """Return the rows of one piece of deck: on its ends, along its cut edges, on every support between.

    A panel that ends over a member has a row of its own there, beside the neighbour's; so has its edge along
    an opening. Where that row would miss the member, nothing is nailed. Long edges between members have no
    wood below, and so no nails but those of the rows that end there.

    Source: house rule; a row from edge distance to edge distance is divided evenly into spaces no larger than
    the schedule's.

    Args:
        outline: Corners of the piece, counterclockwise [ft].
        lines: Centers of the framing [ft].
        half_width_ft: Half the width of a member [ft], 0 or more.
        schedule: Spacing [in].
        level_wood: Where wood runs along the eave under a panel edge: sub-fascia, ridge board, blocking,
            by its place up the slope [ft].
        holes: Corners of openings wholly inside the piece [ft].

    Returns:
        Rows, each with its nails [ft].

    Raises:
        OutOfRange: A spacing is not above 0.

    Example:
        >>> sheet = ((0, 0), (8, 0), (8, 4), (0, 4))
        >>> rows = nail_rows(sheet, [0, 2, 4, 6, 8], 0.0625, Schedule(6, 12))
        >>> sum(len(row.nails) for row in rows)
        33
    """
    above_zero(edge_in=schedule.edge_in, field_in=schedule.field_in)
    inner = _inset(outline, holes)
    sides = [side for rings in inner for ring in rings for side in pairwise([*ring, ring[0]])]
    slanting = [side for side in sides if _slants(*side)]
    level = [side for side in sides if _has_wood(*side, level_wood)]
    placed = [Row("cut edge", start, end, schedule.edge_in) for start, end in slanting]
    placed += [Row("end", start, end, schedule.edge_in) for start, end in level]
    reach, ends = float(half_width_ft), {side.nails_at for side in _uprights(outline)}
    beside = [side for hole in holes for side in _uprights(tuple(reversed(hole)))]
    for center in map(float, lines):
        on_ends = sorted(at for at in ends if _on_member(at, center, reach))
        for at in on_ends:
            for low, high in _within(inner, at):
                placed += _rows(at, low, high, "end", schedule)
        if not on_ends:
            here = [side for side in beside if _on_member(side.nails_at, center, reach)]
            placed += _past_openings(center, _within(inner, center), here, schedule)
    return tuple(placed)


@dataclass(frozen=True)
class _Upright:
    """An upright side of a piece, on its outline or along an opening."""

    nails_at: float
    low: float
    high: float


def _uprights(ring: Outline) -> Iterator[_Upright]:
    """Yield the upright sides of a ring with the piece to its left, and where nails stand beside each."""
    for (x, y), (next_x, next_y) in pairwise([*ring, ring[0]]):
        if x == next_x:
            inward = 1 if next_y < y else -1
            yield _Upright(
                float(x) + inward * EDGE_DISTANCE_FT,
                float(min(y, next_y)) - EDGE_DISTANCE_FT,
                float(max(y, next_y)) + EDGE_DISTANCE_FT,
            )


def _on_member(at: float, center: float, half_width_ft: float) -> bool:
    """Tell whether nails that stand there are driven into a member, to the thickness of a line."""
    return abs(at - center) <= half_width_ft + EDGE_DISTANCE_FT / 100


def _within(inner: Sequence[Sequence[Outline]], at: float) -> list[tuple[float, float]]:
    """Return the stretches of an upright line inside the parts of a piece, clear of slants."""
    return [stretch for rings in inner for stretch in _inside(rings, at, CLEAR_OF_CUT_FT)]


def _past_openings(
    center: float, stretches: Sequence[tuple[float, float]], beside: Sequence[_Upright], schedule: Schedule
) -> Iterator[Row]:
    """Yield the rows of one member: on its center, and along the edge of each opening that lies on it.

    Where one row goes on in the other, they share a nail.
    """
    left = list(stretches)
    for side in beside:
        left = [
            part
            for low, high in left
            for part in ((low, min(high, side.low)), (max(low, side.high), high))
            if part[1] - part[0] > EDGE_DISTANCE_FT
        ]
    for low, high in left:
        yield from _rows(
            center, low, high, "field", schedule, opens=low not in {side.high for side in beside}
        )
    for side in beside:
        opens = side.low not in {high for _, high in left}
        yield from _rows(side.nails_at, side.low, side.high, "end", schedule, opens=opens)


def _inside(rings: Sequence[Outline], at: float, clear_ft: float = 0) -> Iterator[tuple[float, float]]:
    """Yield the stretches of an upright line inside an outline, outside its holes, clear of slants.

    A line on an upright side counts as inside.
    """
    near, places = EDGE_DISTANCE_FT / 100, [float(x) for x, _ in rings[0]]
    if min(places) - near < at < max(places) + near:
        at = min(max(at, min(places) + near), max(places) - near)
    crossings = []
    for (x, y), (next_x, next_y) in (side for ring in rings for side in pairwise([*ring, ring[0]])):
        ax, ay, bx, by = float(x), float(y), float(next_x), float(next_y)
        if (ax > at) != (bx > at):
            slants = abs(by - ay) > EDGE_DISTANCE_FT
            crossings.append((ay + (at - ax) / (bx - ax) * (by - ay), clear_ft if slants else 0.0))
    crossings.sort()
    for (low, above), (high, below) in zip(crossings[::2], crossings[1::2], strict=True):
        if high - below - low - above > EDGE_DISTANCE_FT:
            yield low + above, high - below


def _rows(
    at: float,
    low: float,
    high: float,
    kind: Literal["end", "field"],
    schedule: Schedule,
    *,
    opens: bool = True,
) -> Iterator[Row]:
    """Yield a row on a member, in parts where it passes a strip in which nails stand closer."""
    usual = schedule.edge_in if kind == "end" else schedule.field_in
    cuts = {cut for strip in schedule.strips for cut in _crossing(strip, at, low, high)}
    for number, (start, end) in enumerate(pairwise(sorted({low, high, *cuts}))):
        middle = (at, (start + end) / 2)
        closer = [strip.spacing_in for strip in schedule.strips if holds_point(strip.outline, middle)]
        spacing = min([usual, *closer])
        named: RowKind = "closer" if spacing < usual and kind == "field" else kind
        yield Row(named, (at, start), (at, end), spacing, opens=opens and number == 0)


def _crossing(strip: Strip, at: float, low: float, high: float) -> list[float]:
    """Return where an upright line enters and leaves a strip."""
    return [
        cut
        for stretch in _inside([strip.outline], at)
        for cut in stretch
        if low + EDGE_DISTANCE_FT < cut < high - EDGE_DISTANCE_FT
    ]


def _inset(outline: Outline, holes: Sequence[Outline]) -> list[list[Outline]]:
    """Return the line on which edge nails stand: the piece, smaller by the edge distance all round.

    Each part is its outer line, then the lines around its holes.
    """
    whole = polygon(outline).difference(union_all([polygon(hole) for hole in holes]))
    inner = whole.buffer(-EDGE_DISTANCE_FT, join_style="mitre")
    parts = [orient(part) for part in getattr(inner, "geoms", [inner]) if not part.is_empty]
    return [
        [tuple((x, y) for x, y in ring.coords[:-1]) for ring in (part.exterior, *part.interiors)]
        for part in parts
    ]


def _slants(start: Point, end: Point) -> bool:
    """Tell whether a side slants: there a hip or valley rafter stands under the cut."""
    return min(abs(float(start[axis] - end[axis])) for axis in (0, 1)) > EDGE_DISTANCE_FT


def _has_wood(start: Point, end: Point, wood: Sequence[Number]) -> bool:
    """Tell whether a side is level and has wood below."""
    reach = 2 * EDGE_DISTANCE_FT
    level = abs(float(start[1] - end[1])) < reach / 100
    return level and any(abs(float(start[1]) - float(at)) < reach for at in wood)
