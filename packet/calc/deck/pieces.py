"""Sheets cut to the lines of the roof: what is left of each, and where the cuts run on the sheet."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from packet.calc.polygon import Outline, Point, polygon, polygon_area
from packet.figure import Number

#: Cuts shorter than this are the rounding of taped lines [ft]; areas below its square are nothing.
_NO_CUT_FT = 1 / 48


@dataclass(frozen=True)
class Cut:
    """One straight cut across a sheet, both ends from the sheet's lower left corner.

    Attributes:
        start: Along the eave, then up the slope [ft].
        end: The other end [ft].
    """

    start: Point
    end: Point


@dataclass(frozen=True)
class Piece:
    """What is laid of a sheet.

    Attributes:
        outlines: Corners of each part, counterclockwise [ft]; more than one where an opening parts it.
        holes: Corners of each opening that lies wholly inside it, counterclockwise [ft].
        area_sq_ft: Area laid [sq ft].
        cuts: Cuts made on the sheet.
    """

    outlines: tuple[Outline, ...]
    holes: tuple[Outline, ...]
    area_sq_ft: float
    cuts: tuple[Cut, ...]


def piece(sheet: Outline, plane: Outline, openings: Sequence[Outline]) -> Piece:
    """Return what is left of a sheet inside its plane, openings left out.

    Source: house rule; a sheet is cut where it meets a hip, a valley, a rake or an opening.

    Args:
        sheet: Corners of the whole sheet, counterclockwise from its lower left [ft].
        plane: Corners of the plane [ft].
        openings: Corners of each opening [ft].

    Returns:
        The piece [ft].

    Example:
        >>> sheet = ((16, 0), (24, 0), (24, 4), (16, 4))
        >>> round(piece(sheet, ((0, 0), (20, 0), (32, 13.4164), (0, 13.4164)), []).area_sq_ft, 2)
        23.16
    """
    left = polygon(sheet).intersection(polygon(plane))
    for opening in openings:
        left = left.difference(polygon(opening))
    parts = [part for part in getattr(left, "geoms", [left]) if part.area > _NO_CUT_FT**2]
    outlines = tuple(_corners(part.exterior.coords[:-1]) for part in parts)
    holes = tuple(_corners(ring.coords[:-1]) for part in parts for ring in part.interiors)
    cuts = tuple(cut for outline in (*outlines, *holes) for cut in _cuts(outline, sheet))
    area = sum(polygon_area(outline) for outline in outlines) - sum(polygon_area(hole) for hole in holes)
    return Piece(outlines, holes, float(area), cuts)


def _corners(points: Sequence[tuple[float, ...]]) -> Outline:
    """Return corners counterclockwise, those on a straight line left out, taped numbers exact again."""
    exact = [(_near(x), _near(y)) for x, y, *_ in points]
    kept = []
    for number, (x, y) in enumerate(exact):
        (ax, ay), (bx, by) = exact[number - 1], exact[(number + 1) % len(exact)]
        if abs(float((x - ax) * (by - ay) - (y - ay) * (bx - ax))) > _NO_CUT_FT**3:
            kept.append((x, y))
    area = sum(x * next_y - next_x * y for (x, y), (next_x, next_y) in pairwise([*kept, kept[0]]))
    return tuple(kept) if area > 0 else tuple(reversed(kept))


def _near(value: float) -> Number:
    exact = Fraction(value).limit_denominator(768)
    return exact if abs(float(exact) - value) < 1e-9 else value


def _cuts(outline: Outline, sheet: Outline) -> list[Cut]:
    """Return the sides of a piece that are not sides of the sheet."""
    left, low = sheet[0]
    right, high = sheet[2]
    found = []
    for start, end in pairwise([*outline, outline[0]]):
        on_edge = any(
            abs(float(start[axis] - at)) < _NO_CUT_FT and abs(float(end[axis] - at)) < _NO_CUT_FT
            for axis, at in ((0, left), (0, right), (1, low), (1, high))
        )
        if not on_edge:
            found.append(Cut((start[0] - left, start[1] - low), (end[0] - left, end[1] - low)))
    return found
