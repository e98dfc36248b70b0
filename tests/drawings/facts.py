"""What several tests read back from drawings."""

import math
import re
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from tests.drawings.reading import Drawing
from tests.drawings.roofs import ROOFS, Geometry

Draw = Callable[..., str]

FACINGS = ("north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west")

ALL = [pytest.param(roof, narrow, id=f"{name}-{'narrow' if narrow else 'wide'}")
       for name, roof in ROOFS.items() for narrow in (False, True)]  # fmt: skip
every_sheet = pytest.mark.parametrize(("roof", "narrow"), ALL)


def arrow_way(head: list[tuple[float, float]]) -> tuple[float, float]:
    """Return the way an arrow's head points; its tip comes first."""
    tip, left, right = head
    base = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)
    return ((tip[0] - base[0]) / math.dist(tip, base), (tip[1] - base[1]) / math.dist(tip, base))


def down_slope(facing: str) -> tuple[float, float]:
    """Return the way a plane looks on a sheet with north up, from its compass bearing."""
    bearing = math.radians(45 * FACINGS.index(facing))
    return (math.sin(bearing), -math.cos(bearing))


def ids_in(text: str) -> list[str]:
    return re.findall(r' id="([^"]*)"', text)


def scale_of(roof: Geometry, drawing: Drawing) -> float:
    first, drawn = roof["planes"][0], drawing.of("plane")
    points = next(part.points for part in drawn if part.get("data-plane") == first["id"])
    return math.dist(points[0], points[1]) / math.dist(*first["outline"][:2])


def placed_on(roof: Geometry, drawing: Drawing) -> Callable[[Any], tuple[float, float]]:
    first, scale = roof["planes"][0], scale_of(roof, drawing)
    corner = next(part.points[0] for part in drawing.of("plane") if part.get("data-plane") == first["id"])
    west, south = first["outline"][0]
    return lambda point: (corner[0] + (point[0] - west) * scale, corner[1] - (point[1] - south) * scale)


def area_inside(points: Any) -> float:
    return (
        abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, [*points[1:], points[0]], strict=True))) / 2
    )


def inches_of(text: str | None) -> float:
    return float(sum(Fraction(piece) for piece in (text or "").split()))


def group_of_mark(drawing: Drawing, mark: str) -> list[Any]:
    return [
        part for part in drawing.within("key-entry") if any(g.get("data-mark") == mark for g in part.inside)
    ]
