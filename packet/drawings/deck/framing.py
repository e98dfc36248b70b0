"""Framing under the deck: each member, and wood along the eave, as the two lines of its faces."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from packet.drawings.deck.view import View
from packet.drawings.flat import Polygon, Segment, bounds, crossings
from packet.drawings.svg import Point

#: Centers this near are the same member; spacings this near are the same spacing [ft].
SAME_FT = 1 / 96

#: A shorter stretch of a member is left out [ft].
_SPECK_FT = 1 / 6


@dataclass(frozen=True)
class Member:
    """A rafter or truss.

    Attributes:
        at: Its center, along the lowest edge [ft].
        faces: Stretches of its two faces that the view shows [px].
        sound: Whether it can carry the edge of a panel.
    """

    at: float
    faces: tuple[tuple[Point, Point], ...]
    sound: bool

    @property
    def corners(self) -> list[Point]:
        """Corners around what is shown [px]."""
        left, top, right, low = bounds(point for face in self.faces for point in face)
        return [(left, top), (right, top), (right, low), (left, low)]


def members(plane: Mapping[str, Any], view: View) -> list[Member]:
    """Return the members in view, cut off at the plane's outline and at openings."""
    half = plane["member_ft"] / 2
    outline = [(u, v) for u, v in plane["outline"]]
    openings = [[(u, v) for u, v in opening] for opening in plane["openings"]]
    found = []
    for center in plane["lines"]:
        if not view.left - half <= center <= view.right + half:
            continue
        faces = [
            (view.point((face, low)), view.point((face, high)))
            for face, start, end in _faces(center, half, outline, openings)
            if (high := min(end, view.high)) - (low := max(start, view.low)) > _SPECK_FT
        ]
        if faces:
            unsound = any(abs(center - at) < SAME_FT for at in plane["unsound"])
            found.append(Member(center, tuple(faces), not unsound))
    return found


def level_wood(plane: Mapping[str, Any], view: View) -> list[Segment]:
    """Return the faces of wood along the eave under panel edges, as far as the view shows them [px].

    Its width is not recorded; it is drawn as wide as a member.
    """
    half = plane["member_ft"] / 2
    outline = [(v, u) for u, v in plane["outline"]]
    openings = [[(v, u) for u, v in opening] for opening in plane["openings"]]
    return [
        (view.point((left, face)), view.point((right, face)))
        for center in plane["level_wood"]
        if view.low - half <= center <= view.high + half
        for face, start, end in _faces(center, half, outline, openings)
        if (right := min(end, view.right)) - (left := max(start, view.left)) > _SPECK_FT
    ]


def regular_in(lines: Sequence[float]) -> float | None:
    """Return the spacing of members that stand evenly apart [in]; None when they do not."""
    spacings = [high - low for low, high in pairwise(lines)]
    if not spacings or max(spacings) - min(spacings) > SAME_FT:
        return None
    return spacings[0] * 12


def _faces(
    center: float, half: float, outline: Polygon, openings: Sequence[Polygon]
) -> Iterator[tuple[float, float, float]]:
    """Yield stretches of both faces of upright wood: where a face stands, where it starts and ends [ft]."""
    for face in (center - half, center + half):
        # The face of wood over a plane's edge stands outside the plane; it is as long as the plane there.
        stretches = _inside(outline, face) or _inside(outline, 2 * center - face)
        for opening in openings:
            if _is_within(opening, center, half):
                stretches = [rest for one in stretches for rest in _without(one, _inside(opening, center))]
        yield from ((face, start, end) for start, end in stretches)


def _inside(outline: Polygon, at: float) -> list[tuple[float, float]]:
    """Return from where to where an upright line runs inside an outline [ft]."""
    _, low, _, high = bounds(outline)
    low, high = low - 1, high + 1
    line = ((at, low), (at, high))
    return [(low + (high - low) * a, low + (high - low) * b) for a, b in crossings(line, outline)]


def _is_within(opening: Polygon, at: float, half: float) -> bool:
    left, _, right, _ = bounds(opening)
    return left + half < at < right - half


def _without(stretch: tuple[float, float], holes: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    start, end = stretch
    kept = []
    for low, high in holes:
        if low > start:
            kept.append((start, min(low, end)))
        start = max(start, high)
    if start < end:
        kept.append((start, end))
    return [(a, b) for a, b in kept if b > a]
