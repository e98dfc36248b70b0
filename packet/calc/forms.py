"""Whole roofs from a few measures: the corners of every plane and every edge between them.

Each part of a roof is a block: a rectangle in plan, and the planes that rise inward from its eaves. Over its
rectangle a block is as high as the lowest of its planes; the roof is as high as its highest block. x runs
along the front eave of the main block from its left end, y level into the house, in feet; all eaves are at
one height.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations
from typing import Literal

from shapely import union_all
from shapely.geometry.base import BaseGeometry

from packet.calc.domain import OutOfRange, above_zero
from packet.calc.polygon import Outline, Point, polygon
from packet.figure import Number

Side = Literal["front", "right", "back", "left"]

#: Inward normal of an eave, seen in plan.
NORMALS: Mapping[Side, tuple[int, int]] = {
    "front": (0, 1),
    "right": (-1, 0),
    "back": (0, -1),
    "left": (1, 0),
}
#: Turn of a plane against the front [degrees clockwise].
TURNS: Mapping[Side, int] = {"front": 0, "left": 90, "back": 180, "right": 270}

#: Slivers below this are rounding of crossings, not roof [sq ft]; crossings agree to this [ft].
_NO_AREA_SQ_FT, _NO_LENGTH_FT = 1e-6, 1e-7

#: Crossings of taped lines are fractions with no larger denominator; rounding is taken off them.
_MOST_DENOMINATOR = 10**6


class NotAForm(OutOfRange):
    """Measures that do not make a roof.

    Attributes:
        code: Key in ``shared/words/problems.yaml``.
        subject: Plane or side it is about.
        values: What else the sentence names.
    """

    def __init__(self, code: str, subject: str, **values: str) -> None:
        self.code, self.subject, self.values = code, subject, values
        super().__init__(code, subject)


@dataclass(frozen=True)
class Face:
    """A plane that rises inward from an eave line.

    Attributes:
        id: Plane it belongs to.
        side: Way its eave looks, against the front of the main block.
        eave_ft: Where the eave line lies: y of front and back, x of left and right [ft].
        rise: Rise in 12 [in].
    """

    id: str
    side: Side
    eave_ft: Fraction
    rise: Fraction

    def run(self, point: Point) -> Number:
        """Return the level distance from the eave line inward [ft]."""
        normal_x, normal_y = NORMALS[self.side]
        return normal_x * point[0] + normal_y * point[1] - (normal_x + normal_y) * self.eave_ft

    def along(self, point: Point) -> Number:
        """Return the distance along the eave line, to the right of one who looks at the plane [ft]."""
        normal_x, normal_y = NORMALS[self.side]
        return normal_y * point[0] - normal_x * point[1]

    def height(self, point: Point) -> Number:
        """Return the height above the eaves [ft]."""
        return self.run(point) * self.rise / 12

    def is_level_with(self, other: "Face") -> bool:
        """Tell whether two faces are one plane."""
        return (self.side, self.eave_ft, self.rise) == (other.side, other.eave_ft, other.rise)


@dataclass(frozen=True)
class Block:
    """A rectangle in plan with the planes over it.

    Attributes:
        low: Corner with the least x and y [ft].
        high: Corner with the greatest x and y [ft].
        faces: Planes over it.
    """

    low: tuple[Fraction, Fraction]
    high: tuple[Fraction, Fraction]
    faces: tuple[Face, ...]

    def height(self, point: Point) -> Number:
        """Return the height over a point of the rectangle [ft]."""
        return min(face.height(point) for face in self.faces)

    @property
    def corners(self) -> Outline:
        """The rectangle, counterclockwise [ft]."""
        (west, south), (east, north) = self.low, self.high
        return ((west, south), (east, south), (east, north), (west, north))


@dataclass(frozen=True)
class FormPlane:
    """A plane of a whole roof.

    Attributes:
        id: Plane.
        side: Way it looks, against the front.
        rise: Rise in 12 [in].
        origin: Left end of its lowest edge, at the eave line, x and y [ft].
        level: Corners, counterclockwise from there: along the eave, then level run [ft].
        outline: The same corners, x and y [ft].
    """

    id: str
    side: Side
    rise: Fraction
    origin: Point
    level: Outline
    outline: Outline


def block(
    length_ft: Fraction,
    depth_ft: Fraction,
    rises: Mapping[Side, Fraction],
    ids: Mapping[Side, str],
) -> Block:
    """Return a gable, hip or shed roof: a plane rises from each side that has a pitch, the others are gables.

    Source: house rule; planes of a roof rise from level eaves at their pitch.

    Args:
        length_ft: Along the front eave [ft], above 0.
        depth_ft: From the front eave to the back [ft], above 0.
        rises: Rise in 12 by side with an eave [in].
        ids: Plane by side [-].

    Returns:
        The block [ft].

    Raises:
        OutOfRange: A measure is not above 0.

    Example:
        >>> roof = block(Fraction(40), Fraction(24), {"front": Fraction(6), "back": Fraction(6)},
        ...              {"front": "A", "back": "B"})
        >>> roof.height((20, 12))
        Fraction(6, 1)
    """
    above_zero(length_ft=length_ft, depth_ft=depth_ft, **{f"{side}_rise": r for side, r in rises.items()})
    eaves: dict[Side, Fraction] = {
        "front": Fraction(0),
        "right": length_ft,
        "back": depth_ft,
        "left": Fraction(0),
    }
    faces = tuple(Face(ids[side], side, eaves[side], rise) for side, rise in rises.items())
    return Block((Fraction(0), Fraction(0)), (length_ft, depth_ft), faces)


#: Side of the main block that a wing's own left, right and end look to, by the side the wing stands on.
_WING_SIDES: Mapping[Side, Mapping[str, Side]] = {
    "front": {"left": "left", "right": "right", "end": "front"},
    "right": {"left": "front", "right": "back", "end": "right"},
    "back": {"left": "right", "right": "left", "end": "back"},
    "left": {"left": "back", "right": "front", "end": "left"},
}


def wing(
    main: Block,
    side: Side,
    starts_ft: Fraction,
    width_ft: Fraction,
    out_ft: Fraction,
    rise: Fraction,
    ids: Mapping[str, str],
) -> Block:
    """Return a wing that stands out from an eave of a block and runs into it as far as its ridge reaches.

    Source: house rule; a wing's ridge ends where it meets the plane it dies into.

    Args:
        main: Block it joins [ft].
        side: Eave of that block [-].
        starts_ft: From the left end of that eave, seen from outside, to the wing [ft].
        width_ft: Width of the wing [ft], above 0.
        out_ft: How far it stands out [ft], above 0.
        rise: Rise in 12 [in], above 0.
        ids: Plane by ``left``, ``right`` and, for a hip end, ``end``, seen from outside the end [-].

    Returns:
        The block [ft].

    Raises:
        NotAForm: There is no eave on that side, the wing reaches past it, or stands higher than the block.
        OutOfRange: A measure is not above 0.

    Example:
        >>> six = Fraction(6)
        >>> ids = {"front": "A", "back": "B"}
        >>> main = block(Fraction(40), Fraction(24), {"front": six, "back": six}, ids)
        >>> own = {"left": "C", "right": "D"}
        >>> wing(main, "front", Fraction(10), Fraction(16), Fraction(8), six, own).high
        (Fraction(26, 1), Fraction(12, 1))
    """
    above_zero(width_ft=width_ft, out_ft=out_ft, rise=rise)
    face = next((face for face in main.faces if face.side == side), None)
    if face is None:
        raise NotAForm("wing-side", side, accepted=", ".join(item.side for item in main.faces))
    (west, south), (east, north) = main.low, main.high
    across = east - west if side in ("front", "back") else north - south
    if starts_ft < 0 or starts_ft + width_ft > across:
        raise NotAForm("wing-past-eave", side)
    deep = north - south if side in ("front", "back") else east - west
    opposite = any(NORMALS[item.side] == tuple(-n for n in NORMALS[side]) for item in main.faces)
    reach = deep / 2 if opposite else deep
    local = [(starts_ft, -out_ft), (starts_ft + width_ft, reach)]
    (ax, ay), (bx, by) = (_from_side(main, side, *corner) for corner in local)
    low, high = (min(ax, bx), min(ay, by)), (max(ax, bx), max(ay, by))
    faces = []
    for name, id in ids.items():
        looks = _WING_SIDES[side][name]
        eave = {"front": low[1], "right": high[0], "back": high[1], "left": low[0]}[looks]
        faces.append(Face(id, looks, eave, rise))
    made = Block(low, high, tuple(faces))
    # Between these points the wing is straight and the main roof bulges, so that nothing sticks out there.
    half = min(width_ft / 2, out_ft + reach) if "end" in ids else width_ft / 2
    marks = (starts_ft + half, starts_ft + width_ft / 2, starts_ft + width_ft - half)
    inner = [_from_side(main, side, mark, reach) for mark in marks]
    if any(made.height(point) > main.height(point) for point in inner):
        raise NotAForm("wing-too-high", side)
    return made


def _from_side(main: Block, side: Side, along: Fraction, inward: Fraction) -> tuple[Fraction, Fraction]:
    """Return a point given along an eave, from its left end seen from outside, and inward."""
    (west, south), (east, north) = main.low, main.high
    return {
        "front": (west + along, south + inward),
        "right": (east - inward, south + along),
        "back": (east - along, north - inward),
        "left": (west + inward, north - along),
    }[side]


def planes(blocks: Sequence[Block]) -> tuple[FormPlane, ...]:
    """Return the planes of a roof of one or more blocks, in the order in which the blocks name them.

    Source: house rule; where blocks overlap in plan the higher one is the roof.

    Args:
        blocks: Blocks with their eaves at one height [ft].

    Returns:
        Planes that together cover the blocks' plan once [ft].

    Raises:
        NotAForm: A plane is hidden under others or falls into pieces; planes of one id do not lie in one
            plane, or planes of two ids do.

    Example:
        >>> six = Fraction(6)
        >>> ids = {"front": "A", "back": "B"}
        >>> gable = block(Fraction(40), Fraction(24), {"front": six, "back": six}, ids)
        >>> [plane.level[2] for plane in planes([gable])]
        [(Fraction(40, 1), Fraction(12, 1)), (Fraction(40, 1), Fraction(12, 1))]
    """
    faces: dict[str, Face] = {}
    pieces: dict[str, list[Outline]] = {}
    cuts: dict[str, list[BaseGeometry]] = {}
    for own in blocks:
        for face in own.faces:
            twin = faces.setdefault(face.id, face)
            if not twin.is_level_with(face):
                raise NotAForm("not-one-plane", face.id)
            seen = _held(own.corners, [(face, other) for other in own.faces if other is not face])
            if len(seen) < 3:
                raise NotAForm("plane-hidden", face.id)
            pieces.setdefault(face.id, []).append(seen)
            cuts.setdefault(face.id, []).extend(_higher(face, own, blocks))
    found = tuple(_plane(faces[id], pieces[id], cuts[id]) for id in faces)
    for first, second in combinations(found, 2):
        if faces[first.id].is_level_with(faces[second.id]) and _touching(first, second):
            raise NotAForm("planes-are-one", second.id, accepted=first.id)
    return found


def _higher(face: Face, own: Block, blocks: Sequence[Block]) -> list[BaseGeometry]:
    """Return the parts of the plan where another block is higher than a face."""
    found: list[BaseGeometry] = []
    for other in blocks:
        if other is own:
            continue
        has_it = any(item.is_level_with(face) for item in other.faces)
        above = () if has_it else _held(other.corners, [(face, item) for item in other.faces])
        if len(above) >= 3:
            found.append(polygon(above))
    return found


def _touching(first: FormPlane, second: FormPlane) -> bool:
    """Tell whether two planes have more than a point in common."""
    return bool(polygon(first.outline).intersection(polygon(second.outline)).length > _NO_LENGTH_FT)


def _held(corners: Outline, pairs: Sequence[tuple[Face, Face]]) -> Outline:
    """Return the part of a convex outline where, of each pair, the first face is not the higher one."""
    kept = list(corners)
    for lower, upper in pairs:
        rest: list[Point] = []
        over = [upper.height(point) - lower.height(point) for point in kept]
        for number, point in enumerate(kept):
            here, last, before = over[number], over[number - 1], kept[number - 1]
            if here * last < 0:
                share = Fraction(last) / (last - here)
                rest.append(
                    (
                        before[0] + share * (point[0] - before[0]),
                        before[1] + share * (point[1] - before[1]),
                    )
                )
            if here >= 0:
                rest.append(point)
        kept = rest
    return tuple(dict.fromkeys(kept))


def _plane(face: Face, pieces: Sequence[Outline], cuts: Sequence[BaseGeometry]) -> FormPlane:
    if len(pieces) == 1 and not cuts:
        return _seen(face, pieces[0])
    whole = union_all([polygon(piece) for piece in pieces])
    left = whole.difference(union_all(list(cuts))) if cuts else whole
    parts = [part for part in getattr(left, "geoms", [left]) if part.area > _NO_AREA_SQ_FT]
    if not parts:
        raise NotAForm("plane-hidden", face.id)
    if any(len(part.interiors) for part in parts):
        raise NotAForm("plane-in-pieces", face.id)
    rings = [[(_exact(x), _exact(y)) for x, y in part.exterior.coords[:-1]] for part in parts]
    joined = _joined(rings)
    if joined is None:
        raise NotAForm("plane-in-pieces", face.id)
    return _seen(face, _clean(joined))


def _joined(rings: Sequence[list[Point]]) -> list[Point] | None:
    """Return parts that touch in corners as one ring; None where they do not touch.

    A wing as wide and as steep as the roof it joins reaches the ridge in a point, and parts the plane there.
    """
    ring, left = list(rings[0]), list(rings[1:])
    while left:
        shared = next(((n, part) for n, at in enumerate(ring) for part in left if at in part), None)
        if shared is None:
            return None
        number, part = shared
        left.remove(part)
        start = part.index(ring[number])
        ring[number:number] = [*part[start:], *part[:start]]
    return ring


def _exact(value: float) -> Number:
    near = Fraction(value).limit_denominator(_MOST_DENOMINATOR)
    return near if abs(float(near) - value) < _NO_LENGTH_FT else value


def _clean(corners: Sequence[Point]) -> Outline:
    """Return an outline without corners that lie on a straight line between their neighbours."""
    kept: list[Point] = []
    for number, (x, y) in enumerate(corners):
        (ax, ay), (bx, by) = corners[number - 1], corners[(number + 1) % len(corners)]
        if abs(float((x - ax) * (by - ay) - (y - ay) * (bx - ax))) > _NO_LENGTH_FT:
            kept.append((x, y))
    return tuple(kept)


def _seen(face: Face, outline: Outline) -> FormPlane:
    """Return a plane with its corners as one sees them who looks at it from outside."""
    places = [(face.along(point), face.run(point), point) for point in outline]
    low = min(run for _, run, _ in places)
    at_foot = (n for n, (_, run, _) in enumerate(places) if abs(float(run - low)) < _NO_LENGTH_FT)
    first = min(at_foot, key=lambda number: places[number][0])
    start, lowest, _ = places[first]
    turned = [*places[first:], *places[:first]]
    level: Outline = tuple((along - start, run) for along, run, _ in turned)
    area = sum(
        (level[n - 1][0] * level[n][1] - level[n][0] * level[n - 1][1] for n in range(len(level))),
        start=Fraction(0),
    )
    corners = tuple(point for _, _, point in turned)
    if area < 0:
        level, corners = (level[0], *reversed(level[1:])), (corners[0], *reversed(corners[1:]))
    at = corners[0]
    normal_x, normal_y = NORMALS[face.side]
    origin = (at[0] - normal_x * lowest, at[1] - normal_y * lowest)
    return FormPlane(face.id, face.side, face.rise, origin, level, corners)
