"""Words on the deck: pieces, cut-outs, edges, unsound members, each where it covers no nail and no word."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Any

from packet.drawings.deck.edges import Edge
from packet.drawings.deck.framing import Member
from packet.drawings.deck.view import View
from packet.drawings.edges import edge_name
from packet.drawings.flat import (
    Polygon,
    Segment,
    along,
    bounds,
    crosses,
    direction,
    is_inside,
    moved,
    rectangle,
    sides,
)
from packet.drawings.lettering import LINE_HEIGHT, STYLES, Lettered, width_px
from packet.drawings.names import Block, lettered, stack
from packet.drawings.svg import Point
from packet.drawings.taken import Index, Taken

#: Clear space around a block, where there is little room, and step at which places for it are tried [px].
_MARGIN, _TIGHT, _STEP = 2.0, 0.4, 6.0
#: Space between an id and what is said of it in one line [px].
_BETWEEN = 6.0
#: Clear space between an edge and its name; shares of the edge where it may stand, best first.
_OFF_LINE, _SHARES = 4.0, (0.5, 0.38, 0.62, 0.26, 0.74, 0.15, 0.85)


@dataclass(frozen=True)
class PieceWords:
    """What is to be said in a piece: its id, its size in one line or two, its nails."""

    id: str
    size: tuple[str, ...]
    halves: tuple[str, ...]
    nails: str

    def layouts(self) -> Iterator[tuple[Block, tuple[str, ...]]]:
        """Yield ways to say it, from full to bare, each with what it leaves to the key."""
        id = lettered(self.id, "name")
        sizes = [[lettered(text, "note") for text in lines] for lines in (self.size, self.halves)]
        nails = [lettered(self.nails, "note")] if self.nails else []
        for size in sizes:
            yield stack([id, *size, *nails]), ()
        if nails:
            for size in sizes:
                yield stack([id, *size]), (self.nails,)
        for said, left in ((self.whole, ()), (self.whole[:1], self.whole[1:])):
            yield _turned(self.id, ", ".join(said)), left
        yield id, self.whole

    def least(self) -> Block:
        """Return the id alone, upward."""
        return _turned(self.id, "")

    @property
    def whole(self) -> tuple[str, ...]:
        """All but the id: size, and nails where there are any."""
        return (" ".join(self.size), *([self.nails] if self.nails else []))


class Places:
    """Room on the deck: between rows of nails, and apart from all words placed so far."""

    def __init__(self, rows: Sequence[Segment], faces: Sequence[Segment], taken: Taken) -> None:
        self._nailed = [(*bounds(row), row) for row in rows]
        self._all = [*self._nailed, *((*bounds(face), face) for face in faces)]
        self.taken = taken

    @cached_property
    def off_nails(self) -> Taken:
        """The same room with rows of nails among its lines; what is added to it is taken in both."""
        lines = Index([*self.taken.lines.all, *(row[-1] for row in self._nailed)])
        return Taken(self.taken.boxes, lines, self.taken.leaders)

    def inside(self, block: Block, outline: Polygon, *, tight: bool = False) -> Block | None:
        """Return a block in the free place nearest to an outline's middle, and take it; None if none is.

        Args:
            block: What to place.
            outline: Where it must lie [px].
            tight: With less space around, and over the faces of framing; never over nails.
        """
        margin = _TIGHT if tight else _MARGIN
        left, top, right, low = bounds(outline)
        wide, high = block.width + 2 * margin, block.height + 2 * margin
        if right - left < wide or low - top < high:
            return None
        centre = ((left + right) / 2, (top + low) / 2)
        rows = self._nailed if tight else self._all
        near = [row for row in rows if row[0] < right and row[2] > left and row[1] < low and row[3] > top]
        ys = _ticks(top + high / 2, low - high / 2)
        tried = []
        upright = sorted(row[0] for row in near if row[0] == row[2])
        bays = [(one + other) / 2 for one, other in pairwise(upright) if other - one >= wide]
        for x in bays or _ticks(left + wide / 2, right - wide / 2):
            here = [row for row in near if row[0] <= x + wide / 2 and row[2] >= x - wide / 2]
            # Rows on framing mostly go all the way up a piece: then no place on them is worth a look.
            if not any(row[0] == row[2] and row[1] - top < high and low - row[3] < high for row in here):
                tried += [(math.dist((x, y), centre), x, y, here) for y in ys]
        for _, x, y, here in sorted(tried, key=lambda one: one[:3]):
            edge = (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            if any(_touches(row, edge) for row in here):
                continue
            grown = rectangle((x, y), wide, high)
            if _holds(outline, grown) and self.taken.is_free(grown):
                placed = block.at((x, y))
                self.taken.add([grown])
                return placed
        return None


def _holds(outline: Polygon, box: Polygon) -> bool:
    """Return whether a box lies inside an outline."""
    return all(is_inside(corner, outline) for corner in box) and not any(
        crosses(box, side) for side in sides(outline)
    )


def _turned(id: str, text: str) -> Block:
    """Return an id and what is said of it in one line upward, for the narrow space between two members."""
    name, note = STYLES["name"], STYLES["note"]
    wide, beside = width_px(id, name), width_px(text, note)
    whole = wide + (_BETWEEN + beside if text else 0.0)
    letters = [Lettered(id, name, (0.0, (whole - wide) / 2), -90.0)]
    if text:
        letters.append(Lettered(text, note, (0.0, (beside - whole) / 2), -90.0))
    return Block(name.size_px * LINE_HEIGHT, whole, tuple(letters))


def _ticks(low: float, high: float) -> list[float]:
    count = max(1, math.ceil((high - low) / _STEP))
    return [low + (high - low) * number / count for number in range(count + 1)]


def _touches(
    row: tuple[float, float, float, float, Segment], edge: tuple[float, float, float, float]
) -> bool:
    """Return whether a row of nails runs through a rectangle that is not turned."""
    left, top, right, low, ((ax, ay), (bx, by)) = row
    if right < edge[0] or left > edge[2] or low < edge[1] or top > edge[3]:
        return False
    first, last = 0.0, 1.0
    for start, way, least, most in ((ax, bx - ax, edge[0], edge[2]), (ay, by - ay, edge[1], edge[3])):
        if abs(way) > 1e-9:
            shares = sorted(((least - start) / way, (most - start) / way))
            first, last = max(first, shares[0]), min(last, shares[1])
    return first <= last


def named_edges(
    edges: Iterable[tuple[Edge, Segment]], inner: Point, taken: Taken, words: Mapping[str, str]
) -> Iterator[Lettered]:
    """Yield the names of edges along what is shown of them, outside the plane first."""
    for edge, shown in sorted(edges, key=lambda pair: -math.dist(*pair[1])):
        if not edge.kind:
            continue
        text = edge_name(edge.kind, words)
        long = math.dist(*shown)
        style = STYLES["word"]
        if width_px(text, style) > long:
            continue
        place = next(_beside(text, shown, inner, taken), None)
        if place is not None:
            taken.add([place.box])
            yield place


def _beside(text: str, shown: Segment, inner: Point, taken: Taken) -> Iterator[Lettered]:
    style = STYLES["word"]
    way = direction(*shown)
    if way[0] < -1e-6 or (abs(way[0]) <= 1e-6 and way[1] > 0):
        way = (-way[0], -way[1])
    normal = (way[1], -way[0])
    centre = along(*shown, 0.5)
    towards = (inner[0] - centre[0]) * normal[0] + (inner[1] - centre[1]) * normal[1]
    outward = -1.0 if towards > 0 else 1.0
    off = _OFF_LINE + style.size_px * LINE_HEIGHT / 2
    angle = math.degrees(math.atan2(way[1], way[0]))
    for side in (outward, -outward):
        for share in _SHARES:
            word = Lettered(text, style, moved(along(*shown, share), normal, off * side), angle)
            if taken.is_free(word.box):
                yield word


def unsound_words(members: Sequence[Member], taken: Taken, words: Mapping[str, str]) -> Iterator[Lettered]:
    """Yield the word beside each member that cannot carry a panel's edge."""
    style = STYLES["word"]
    for member in members:
        if member.sound:
            continue
        left, top, right, low = bounds(member.corners)
        off = _OFF_LINE + style.size_px * LINE_HEIGHT / 2
        for x in (right + off, left - off):
            tries = (
                Lettered(words["deck_unsound"], style, (x, top + (low - top) * share), -90.0)
                for share in _SHARES
            )
            word = next((one for one in tries if taken.is_free(one.box)), None)
            if word is not None:
                taken.add([word.box])
                yield word
                break


def piece_outlines(piece: Mapping[str, Any], view: View) -> list[tuple[Point, ...]]:
    """Return the parts of a piece on the sheet, the largest first [px]."""
    found = [view.points(outline) for outline in piece["outlines"]]
    return sorted(found, key=lambda outline: -_surface(outline))


def _surface(outline: Polygon) -> float:
    left, top, right, low = bounds(outline)
    return (right - left) * (low - top)
