"""Hatching as drawn lines, cut at labels: it prints the same everywhere and never runs through a word."""

import math
from collections.abc import Iterable, Iterator, Sequence

from packet.drawings.flat import Polygon, Segment, along, bounds, crossings, sides
from packet.drawings.svg import Point

SPACING_PX = 6.0

#: Angles in turn, so that two areas side by side are told apart [degrees].
_ANGLES = (45.0, 135.0)

#: A line shorter than this is a speck [px].
_SHORTEST = 1.5


def hatch(
    outline: Polygon, turn: int, holes: Iterable[Polygon] = ()
) -> list[tuple[tuple[Point, Point], bool]]:
    """Return open runs of hatching for a path.

    Args:
        outline: Area to fill [px].
        turn: Number of the area; neighbours in the record lean the other way.
        holes: Convex boxes to leave clear, for example labels [px].
    """
    angle = math.radians(_ANGLES[turn % len(_ANGLES)])
    cosine, sine = math.cos(angle), math.sin(angle)
    filled = dict(_spans(outline, cosine, sine))
    clear: dict[int, list[tuple[float, float]]] = {}
    for hole in holes:
        for number, shares in _spans(hole, cosine, sine):
            if number in filled:
                clear.setdefault(number, []).append((shares[0], shares[-1]))
    runs = []
    for number, shares in sorted(filled.items()):
        off = number * SPACING_PX
        for span in zip(shares[::2], shares[1::2], strict=False):
            for start, end in _left(span, clear.get(number, ())):
                if end - start >= _SHORTEST:
                    ends = [(cosine * at - sine * off, sine * at + cosine * off) for at in (start, end)]
                    runs.append(((ends[0], ends[1]), False))
    return runs


def _spans(outline: Polygon, cosine: float, sine: float) -> Iterator[tuple[int, list[float]]]:
    """Yield the number of each hatching line that meets an outline, and where it does, along the line."""
    turned = [(x * cosine + y * sine, y * cosine - x * sine) for x, y in outline]
    found: dict[int, list[float]] = {}
    for (a, off_a), (b, off_b) in sides(turned):
        if off_a == off_b:
            continue
        slope = (b - a) / (off_b - off_a)
        low, high = min(off_a, off_b), max(off_a, off_b)
        # A corner on a line belongs to the side above it alone, so that crossings come in pairs.
        for number in range(math.ceil(low / SPACING_PX), math.ceil(high / SPACING_PX)):
            found.setdefault(number, []).append(a + (number * SPACING_PX - off_a) * slope)
    for number, shares in found.items():
        yield number, sorted(shares)


def _left(span: tuple[float, float], holes: Sequence[tuple[float, float]]) -> Iterator[tuple[float, float]]:
    """Yield what holes leave of a span."""
    at, last = span
    for start, end in sorted(holes):
        if start >= last:
            break
        if start > at:
            yield at, start
        at = max(at, end)
    if at < last:
        yield at, last


def without(piece: Segment, holes: Iterable[Polygon]) -> list[Segment]:
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
