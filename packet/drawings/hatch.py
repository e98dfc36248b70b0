"""Hatching as drawn lines, cut at labels: it prints the same everywhere and never runs through a word."""

import math
from collections.abc import Sequence

from packet.drawings.flat import Polygon, Segment, along, bounds, crossings
from packet.drawings.svg import Point

SPACING_PX = 6.0

#: Angles in turn, so that two areas side by side are told apart [degrees].
_ANGLES = (45.0, 135.0)

#: A line shorter than this is a speck [px].
_SHORTEST = 1.5


def hatch(
    outline: Polygon, turn: int, holes: Sequence[Polygon] = ()
) -> list[tuple[tuple[Point, Point], bool]]:
    """Return open runs of hatching for a path.

    Args:
        outline: Area to fill [px].
        turn: Number of the area; neighbours in the record lean the other way.
        holes: Convex boxes to leave clear, for example labels [px].
    """
    angle = math.radians(_ANGLES[turn % len(_ANGLES)])
    way, normal = (math.cos(angle), math.sin(angle)), (-math.sin(angle), math.cos(angle))
    across = [x * normal[0] + y * normal[1] for x, y in outline]
    long = [x * way[0] + y * way[1] for x, y in outline]
    first, last = math.ceil(min(across) / SPACING_PX), math.floor(max(across) / SPACING_PX)
    runs: list[Segment] = []
    for number in range(first, last + 1):
        off = number * SPACING_PX
        whole = tuple(
            (normal[0] * off + way[0] * at, normal[1] * off + way[1] * at)
            for at in (min(long) - 1, max(long) + 1)
        )
        for start, end in crossings((whole[0], whole[1]), outline):
            piece = (along(whole[0], whole[1], start), along(whole[0], whole[1], end))
            runs += without(piece, holes)
    return [(run, False) for run in runs]


def without(piece: Segment, holes: Sequence[Polygon]) -> list[Segment]:
    """Return a line without what lies in convex boxes."""
    pieces = [piece]
    for hole in holes:
        left, top, right, low = bounds(hole)
        kept: list[Segment] = []
        for one in pieces:
            a, b, c, d = bounds(one)
            covered = crossings(one, hole) if a < right and c > left and b < low and d > top else []
            at = 0.0
            for start, end in covered:
                kept.append((along(*one, at), along(*one, start)))
                at = end
            kept.append((along(*one, at), along(*one, 1.0)))
        pieces = kept
    return [one for one in pieces if math.dist(*one) >= _SHORTEST]
