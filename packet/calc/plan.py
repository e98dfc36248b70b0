"""Where planes lie in plan: x is east, y is north, in feet; and whether neighbours share an edge."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from packet.calc.domain import OutOfRange
from packet.calc.geometry import length_on_slope
from packet.calc.polygon import Outline, Point, distance
from packet.calc.slope import slope_factor
from packet.figure import Number

PlanPoint = tuple[float, float]

#: Way a plane looks, as a bearing clockwise from north [degrees].
BEARINGS: Mapping[str, int] = {
    "north": 0,
    "north-east": 45,
    "east": 90,
    "south-east": 135,
    "south": 180,
    "south-west": 225,
    "west": 270,
    "north-west": 315,
}

#: The same bearings as words.
WORDS: Mapping[int, str] = {degrees: word for word, degrees in BEARINGS.items()}

#: Exact sines of the four bearings most roofs have, so that a square plan stays square.
_SQUARE_SINES = {0: 0.0, 90: 1.0, 180: 0.0, 270: -1.0}

#: Two sides this near each other are one edge: an inch, two taped ends' worth of error [ft].
SHARED_SIDE_TOLERANCE_FT = 1 / 12


@dataclass(frozen=True)
class Place:
    """Where a plane lies in plan.

    Attributes:
        at: Plan position of the left end of the lowest edge, east and north [ft].
        bearing_deg: Way the plane looks, clockwise from north [degrees].
    """

    at: Point
    bearing_deg: float


@dataclass(frozen=True)
class PlacedSide:
    """One side of a plane in plan, with its true length.

    Attributes:
        line: Both ends in plan [ft].
        length_ft: Length along the roof [ft].
    """

    line: tuple[PlanPoint, PlanPoint]
    length_ft: float


@dataclass(frozen=True)
class SharedSide:
    """Two sides that should be one edge.

    Attributes:
        gap_ft: Greatest distance in plan between ends that should meet [ft].
        difference_ft: Difference of the two true lengths [ft].
        shared: Whether both are within the tolerance.
    """

    gap_ft: float
    difference_ft: float
    shared: bool


def bearing(facing: str | Number) -> float:
    """Return the way a plane looks as a bearing.

    Source: house rule; clockwise from north, as on a compass.

    Args:
        facing: One of the eight compass words, or a bearing [degrees].

    Returns:
        Bearing from 0 to below 360 [degrees].

    Raises:
        OutOfRange: The word is not a compass word, or the bearing is not finite.

    Example:
        >>> bearing("south"), bearing(-90)
        (180.0, 270.0)
    """
    degrees = BEARINGS.get(facing) if isinstance(facing, str) else facing
    if degrees is None or not math.isfinite(degrees):
        message = f"{facing!r} is not a way a plane can look; known words: {', '.join(BEARINGS)}"
        raise OutOfRange(message)
    return float(degrees) % 360


def place(at: Point, facing: str | Number) -> Place:
    """Return where a plane lies in plan.

    Source: house rule; the left end of the lowest edge and the way the plane looks fix it.

    Args:
        at: Plan position of the left end of the lowest edge, east and north [ft].
        facing: Compass word or bearing [degrees].

    Returns:
        The place [ft, degrees].

    Raises:
        OutOfRange: ``facing`` is no direction.

    Example:
        >>> place((20, 0), "west")
        Place(at=(20, 0), bearing_deg=270.0)
    """
    return Place(at, bearing(facing))


def level_to_plan(place: Place, u_ft: Number, run_ft: Number) -> PlanPoint:
    """Return where a point of a plane lies in plan, from level distances.

    Source: house rule; u runs to the right of one who looks at the plane, run goes away from him.

    Args:
        place: Where the plane lies [ft, degrees].
        u_ft: Distance along the lowest edge [ft].
        run_ft: Level distance from the lowest edge [ft].

    Returns:
        East and north [ft].

    Example:
        >>> level_to_plan(place((20, 0), "west"), -12, 12)
        (32.0, 12.0)
    """
    sine, cosine = _sine(place.bearing_deg), _sine((place.bearing_deg + 90) % 360)
    u, run = float(u_ft), float(run_ft)
    east = float(place.at[0]) - u * cosine - run * sine
    north = float(place.at[1]) + u * sine - run * cosine
    return (east, north)


def _sine(degrees: float) -> float:
    return _SQUARE_SINES.get(int(degrees), 0.0) if degrees % 90 == 0 else math.sin(math.radians(degrees))


def slope_to_plan(place: Place, rise: Number, point: Point) -> PlanPoint:
    """Return where a point on the slope lies in plan.

    Source: house rule; distance up the slope over slope factor is level run.

    Args:
        place: Where the plane lies [ft, degrees].
        rise: Rise in 12 of the plane [in], 0 or more.
        point: Distance along the lowest edge, and up the slope [ft].

    Returns:
        East and north [ft].

    Raises:
        OutOfRange: ``rise`` is below 0.

    Example:
        >>> slope_to_plan(place((0, 0), "south"), 9, (14, 5))
        (14.0, 4.0)
    """
    return level_to_plan(place, point[0], float(point[1]) / slope_factor(rise))


def plan_outline(level: Outline, place: Place) -> tuple[PlanPoint, ...]:
    """Return the plane's corners in plan.

    Source: house rule; the level outline turned to the plane's bearing.

    Args:
        level: Corners seen from above: along the lowest edge, then level run [ft].
        place: Where the plane lies [ft, degrees].

    Returns:
        The same corners, east and north [ft].

    Example:
        >>> plan_outline(((0, 0), (10, 0), (10, 8)), place((14, 4), "south"))
        ((14.0, 4.0), (24.0, 4.0), (24.0, 12.0))
    """
    return tuple(level_to_plan(place, u, run) for u, run in level)


def placed_side(start: Point, end: Point, place: Place, rise: Number) -> PlacedSide:
    """Return one side of a plane in plan, with its true length.

    Source: house rule; Pythagoras on the slope.

    Args:
        start: One end: along the lowest edge, then level run [ft].
        end: The other end [ft].
        place: Where the plane lies [ft, degrees].
        rise: Rise in 12 of the plane [in], 0 or more.

    Returns:
        Ends in plan and length along the roof [ft].

    Raises:
        OutOfRange: ``rise`` is below 0.

    Example:
        >>> placed_side((20, 0), (32, 12), place((0, 0), "south"), 6)
        PlacedSide(line=((20.0, 0.0), (32.0, 12.0)), length_ft=18.0)
    """
    line = (level_to_plan(place, *start), level_to_plan(place, *end))
    return PlacedSide(line, length_on_slope(*start, *end, rise))


def compare_sides(
    first: PlacedSide, second: PlacedSide, tolerance_ft: float = SHARED_SIDE_TOLERANCE_FT
) -> SharedSide:
    """Return how well two sides of neighbouring planes make one edge.

    Source: house rule; planes that meet have the same ends in plan and the same length along the roof.

    Args:
        first: Side of one plane [ft].
        second: Side of the other [ft].
        tolerance_ft: Most that ends and lengths may differ [ft].

    Returns:
        Gap and difference [ft], and whether they are one edge.

    Example:
        >>> valley = placed_side((20, 0), (32, 12), place((0, 0), "south"), 6)
        >>> wing = placed_side((-12, 12), (0, 0), place((20, 0), "west"), 6)
        >>> compare_sides(valley, wing)
        SharedSide(gap_ft=0.0, difference_ft=0.0, shared=True)
    """
    (a, b), (c, d) = first.line, second.line
    same, turned = max(distance(a, c), distance(b, d)), max(distance(a, d), distance(b, c))
    gap, difference = min(same, turned), abs(first.length_ft - second.length_ft)
    return SharedSide(gap, difference, gap <= tolerance_ft and difference <= tolerance_ft)
