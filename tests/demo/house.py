"""The demo house in space: its slopes in every state of the work, its walls, its dormer and its garden."""

import math
from typing import Literal

from PIL import Image

from . import materials as m
from .camera import Colour, Shot, Vector, dot, plus, shaded, toned
from .flat import Flat, Point, grain, speckled
from .tools import cap, nail_head

State = Literal["before", "stripped", "deck", "membrane", "felt", "done"]
Plane = Literal["MS", "WW"]

EAVE_FT = 9 + 2 / 12
SLOPE = math.sqrt(1.25)  # length along a 6:12 slope for one foot of run
RISE = 0.5 / SLOPE
#: Place of u = 0, v = 0; step in space for one foot along u; for one foot along v.
PLANES: dict[Plane, tuple[Vector, Vector, Vector]] = {
    "MS": ((0, 0, EAVE_FT), (1, 0, 0), (0, 1 / SLOPE, RISE)),
    "WW": ((20, 0, EAVE_FT), (0, -1, 0), (1 / SLOPE, 0, RISE)),
}
TOP_FT = 12 * SLOPE
OUTLINES: dict[Plane, list[Point]] = {
    "MS": [(0, 0), (20, 0), (32, TOP_FT), (0, TOP_FT)],
    "WW": [(0, 0), (16, 0), (16, TOP_FT), (-12, TOP_FT)],
}
CHEEK_V_FT = 4 * SLOPE
WORKED: dict[Plane, list[Point]] = {
    "MS": [(16, 0), (20, 0), (20 + 9 / SLOPE, 9), (24, 9), (24, CHEEK_V_FT), (16, CHEEK_V_FT)],
    "WW": [(0, 0), (5, 0), (5, 4), (0.4, 8.2), (-3, 9), (-9 / SLOPE, 9)],
}
SHEETS: dict[Plane, dict[str, list[Point]]] = {
    "MS": {
        "S1": [(16, 0), (20, 0), (22, 2 * SLOPE), (22, 4), (16, 4)],
        "S2": [(24, CHEEK_V_FT), (20 + (CHEEK_V_FT + 4) / SLOPE, CHEEK_V_FT + 4), (24, CHEEK_V_FT + 4)],
    },
    "WW": {
        "S3": [(0, 0), (4.5, 0), (4.5, 4), (-3.5, 4), (-3.5, 3.5 * SLOPE)],
        "S4": [(-4 / SLOPE, 4), (0, 4), (0, 8), (-7, 8), (-7, 7 * SLOPE)],
    },
}
MARKS: dict[str, tuple[float, float, float]] = {  # middle of the mark [ft] and height of the letters [in]
    "S1": (18.2, 2.4, 15),
    "S2": (24.95, 6.9, 9),
    "S3": (1.6, 2.2, 15),
    "S4": (-3.1, 6.2, 15),
}
LIGHT: dict[Plane, float] = {"MS": 1.06, "WW": 0.86}


def inches(points: list[Point]) -> list[Point]:
    """Return points in inches."""
    return [(x * 12, y * 12) for x, y in points]


def valley(plane: Plane, out_in: float = 0.0) -> list[Point]:
    """Return the valley on a plane [in], or a line beside it on the plane's own side."""
    shift = -out_in * math.sqrt(1 + 1 / SLOPE**2) if plane == "MS" else out_in * math.sqrt(1 + 1 / SLOPE**2)
    start, step = (240.0, 1 / SLOPE) if plane == "MS" else (0.0, -1 / SLOPE)
    high = TOP_FT * 12
    return [(start + shift - 12 * step, -12), (start + shift + high * step, high)]


def _beside(plane: Plane, near_in: float, far_in: float) -> list[Point]:
    return [*valley(plane, near_in), *reversed(valley(plane, far_in))]


def slope(
    plane: Plane, state: State, window_ft: tuple[float, float, float, float], ppi: float, marks: str = ""
) -> Flat:
    """Return one roof slope in a state of the work, drawn for a window in feet.

    Args:
        plane: Which slope.
        state: State of the work.
        window_ft: Left, bottom, right and top on the slope.
        ppi: Pixels for one inch.
        marks: ``chalk`` for sheet marks as on the old deck, ``crayon`` as on the new one.
    """
    left, bottom, right, top = window_ft
    flat = Flat((left * 12, bottom * 12, right * 12, top * 12), ppi)
    flat.picture = m.shingles(flat, worn=True)
    work = inches(WORKED[plane])
    if state == "before":
        flat.line(valley(plane, 2.5), (70, 66, 60), 0.5)
        flat.line(valley(plane, 0), (60, 54, 46), 16, 90, 4)
    elif state == "done":
        fresh = m.shingles(flat, worn=False)
        for strip in _woven_in(plane, work):
            flat.skin(strip, fresh)
        if plane == "MS":
            flat.line(valley(plane, 2.0), (40, 38, 36), 0.45)
    else:
        _opened(flat, plane, state)
    if state in ("stripped", "deck") and marks:
        for name in SHEETS[plane]:
            u, v, high = MARKS[name]
            colour = m.WHITE_CHALK if marks == "chalk" else m.CHALK
            flat.chalk(name, u * 12, v * 12, high, colour, 4 if plane == "MS" else -5)
    flat.line(valley(plane, 1.0), (20, 18, 18), 5, 90, 2.2)
    return flat


def _opened(flat: Flat, plane: Plane, state: State) -> None:
    work = inches(WORKED[plane])
    flat.line([*work, work[0]], (22, 20, 19), 2.2, 150, 0.6)
    flat.skin(work, m.plywood(flat, f"{plane} old deck", m.OLD_PLY))
    for row in range(1, 3):
        flat_mask_line(flat, work, [(-200, row * 48), (500, row * 48)], (38, 28, 20), 0.5)
    for column in range(-6, 16):
        flat_mask_line(flat, work, [(column * 96 + 48, 0), (column * 96 + 48, 48)], (38, 28, 20), 0.5)
    if state == "stripped":
        mask = flat.mask(_beside(plane, -2, 21), 255, 3.5)
        inside = flat.mask(work)
        part = Image.new("L", flat.size)
        part.paste(mask, (0, 0), inside)
        flat.picture = m.rotten(flat.picture, part, f"{plane} rot", flat.ppi)
    if state in ("deck", "membrane", "felt"):
        for name, outline in SHEETS[plane].items():
            shape = inches(outline)
            flat.skin(shape, m.plywood(flat, f"new {name}"))
            flat.line([*shape, shape[0]], (92, 66, 40), 0.3)
            if flat.ppi >= 5:
                _nails(flat, shape)
    if state in ("membrane", "felt"):
        strip = m.membrane(flat, f"{plane} membrane")
        flat.line(valley(plane, 18), (20, 20, 22), 1.2, 130, 0.4)
        flat.skin(_clip(work, plane, 18), strip)
        if plane == "MS":
            flat.line([(288, CHEEK_V_FT * 12), (288, 108)], (84, 90, 98), 12)
            flat.line([(294, CHEEK_V_FT * 12), (294, 108)], (50, 52, 58), 0.3)
    if state == "felt":
        _felt(flat, plane, work)


def _woven_in(plane: Plane, work: list[Point]) -> list[list[Point]]:
    """Return the worked area course by course, with the ends staggered where new shingles meet old ones."""
    strips = []
    for course in range(20):
        low, high = course * m.EXPOSURE_IN, (course + 1) * m.EXPOSURE_IN
        middle = (low + high) / 2
        ends = sorted(
            ax + (bx - ax) * (middle - ay) / (by - ay)
            for (ax, ay), (bx, by) in zip(work, [*work[1:], work[0]], strict=True)
            if (ay > middle) != (by > middle)
        )
        if len(ends) < 2:
            break
        left, right, more = ends[0], ends[-1], course * 11 % 19 - 4.0
        lean = m.EXPOSURE_IN / 2 / SLOPE
        if plane == "MS":
            left -= more if middle < CHEEK_V_FT * 12 else 0
            strips.append([(left, low), (right - lean, low), (right + lean, high), (left, high)])
        else:
            right += more
            strips.append([(left + lean, low), (right, low), (right, high), (left - lean, high)])
    return strips


def flat_mask_line(
    flat: Flat, inside: list[Point], line: list[Point], colour: Colour, width_in: float
) -> None:
    """Draw a line only where it lies inside a polygon."""
    layer = flat.picture.copy()
    flat.line(line, colour, width_in)
    drawn = flat.picture
    flat.picture = layer
    flat.skin(inside, drawn)


def _clip(work: list[Point], plane: Plane, reach_in: float) -> list[Point]:
    """Return the strip of the worked area beside the valley."""
    low, high = (240.0, work[2]) if plane == "MS" else (0.0, work[-1])
    shift = reach_in * math.sqrt(1 + 1 / SLOPE**2) * (-1 if plane == "MS" else 1)
    if plane == "MS":
        return [
            (low, 0),
            high,
            (288, high[1]),
            (288, CHEEK_V_FT * 12),
            (288 + shift, CHEEK_V_FT * 12),
            (low + shift, 0),
        ]
    return [(low, 0), high, (high[0] + shift, high[1]), (low + shift, 0)]


def _inside(point: Point, polygon: list[Point]) -> bool:
    x, y = point
    odd = False
    for index, (bx, by) in enumerate(polygon):
        ax, ay = polygon[index - 1]
        if (ay > y) != (by > y) and x < (bx - ax) * (y - ay) / (by - ay) + ax:
            odd = not odd
    return odd


def _nails(flat: Flat, shape: list[Point]) -> None:
    low = min(y for _, y in shape)
    for rafter in range(-5, 16):
        for step in range(9):
            spot = (rafter * 24.0 + 0.4, low + 0.6 + step * 5.85)
            if _inside(spot, shape):
                nail_head(flat, *spot, 0.24)


def _felt(flat: Flat, plane: Plane, work: list[Point]) -> None:
    low_edge = _beside(plane, 9, 400)
    before = flat.picture
    flat.picture = m.felt(flat, f"{plane} felt")
    for row in range(5):
        y = row * 32.0
        for mark in (3, 17):
            flat.line([(-300, y + mark), (600, y + mark)], (150, 150, 146), 0.22, 90)
        flat.line([(-300, y - 0.5), (600, y - 0.5)], (10, 10, 10), 1.2, 170, 0.4)
        flat.line([(-300, y + 0.2), (600, y + 0.2)], (92, 90, 88), 0.25)
        for k in range(-40, 80):
            if flat.left - 2 < k * 6 < flat.right + 2:
                cap(flat, k * 6 + 2, y + 1.6)
            if k % 2 == 0 and flat.left - 2 < k * 6 < flat.right + 2:
                cap(flat, k * 6 + 5, y + 12)
                cap(flat, k * 6 + 11, y + 23)
    both = flat.mask(work)
    part = Image.new("L", flat.size)
    part.paste(flat.mask(low_edge), (0, 0), both)
    done = flat.picture
    flat.picture = before
    flat.picture.paste(done, (0, 0), part)


def lay_slope(shot: Shot, plane: Plane, flat: Flat, light: float = 1.0) -> None:
    """Lay a slope into the picture, cut at the plane's own outline."""
    place, along, upward = PLANES[plane]
    corner = plus(plus(place, along, flat.left / 12), upward, flat.bottom / 12)
    edge = [(x - flat.left / 12, y - flat.bottom / 12) for x, y in OUTLINES[plane]]
    edge = _cut(edge, (flat.right - flat.left) / 12, (flat.top - flat.bottom) / 12)
    shot.lay(shaded(flat.picture, LIGHT[plane] * light), corner, along, upward, flat.ppi * 12, edge)


def _cut(points: list[Point], wide: float, high: float) -> list[Point]:
    for axis, bound, sign in ((0, 0.0, 1), (0, wide, -1), (1, 0.0, 1), (1, high, -1)):
        kept: list[Point] = []
        for index, point in enumerate(points):
            before = points[index - 1]
            a, b = (before[axis] - bound) * sign, (point[axis] - bound) * sign
            if (a >= 0) != (b >= 0):
                share = a / (a - b)
                kept.append(
                    (before[0] + (point[0] - before[0]) * share, before[1] + (point[1] - before[1]) * share)
                )
            if b >= 0:
                kept.append(point)
        points = kept
    return points


def wall(
    shot: Shot,
    corner: Vector,
    along: Vector,
    wide_ft: float,
    high_ft: float,
    light: float,
    windows: list[tuple[float, float, float, float]] | None = None,
    edge: list[Point] | None = None,
    ppi: float = 4,
    door: tuple[float, float] | None = None,
) -> None:
    """Stand a wall of lap siding with its windows (left, bottom, width, height [ft])."""
    flat = Flat((0, 0, wide_ft * 12, high_ft * 12), ppi)
    flat.picture = m.siding(flat)
    for x, y, w, h in windows or []:
        window(flat, x * 12, y * 12, w * 12, h * 12)
    if door:
        x, w = door[0] * 12, door[1] * 12
        flat.poly([(x - 5, 0), (x + w + 5, 0), (x + w + 5, 88), (x - 5, 88)], (240, 240, 234))
        flat.poly([(x, 0), (x + w, 0), (x + w, 82), (x, 82)], (72, 92, 104))
        for px in (x + 5, x + w / 2 + 2):
            for py, ph in ((8, 28), (42, 32)):
                flat.poly(
                    [(px, py), (px + w / 2 - 7, py), (px + w / 2 - 7, py + ph), (px, py + ph)], (60, 78, 90)
                )
        flat.disc(x + w - 4, 38, 1.6, (206, 180, 96))
    flat.poly([(0, 0), (wide_ft * 12, 0), (wide_ft * 12, 14), (0, 14)], (146, 140, 132))
    picture = speckled(flat.picture, grain("wall", flat.size, (300, 200)), 6)
    shot.lay(shaded(picture, light), corner, along, (0, 0, 1), ppi * 12, edge)


def window(flat: Flat, x: float, y: float, w: float, h: float) -> None:
    """Draw a double-hung window with its casing [in]."""
    flat.poly(
        [(x - 5, y - 6), (x + w + 5, y - 6), (x + w + 5, y + h + 5), (x - 5, y + h + 5)], (243, 243, 238)
    )
    flat.poly([(x, y), (x + w, y), (x + w, y + h), (x, y + h)], (66, 82, 94))
    flat.poly(
        [(x, y + h * 0.35), (x + w, y + h * 0.8), (x + w, y + h), (x, y + h)], (128, 150, 166), 200, 1.5
    )
    flat.poly([(x, y), (x + w, y), (x + w, y + h * 0.12), (x, y + h * 0.3)], (40, 52, 60), 200, 2)
    flat.line([(x, y + h / 2), (x + w, y + h / 2)], (243, 243, 238), 2)
    flat.line([(x, y), (x + w, y), (x + w, y + h), (x, y + h), (x, y)], (226, 226, 220), 1.4)


def faces(shot: Shot, point: Vector, outward: Vector) -> bool:
    """Tell whether a surface shows its outer side to the camera."""
    return dot(outward, plus(shot.eye, point, -1)) > 0


def board(
    shot: Shot, start: Vector, end: Vector, high_ft: float, light: float, colour: Colour = (240, 240, 235)
) -> None:
    """Draw a white board (fascia, rake or corner) hanging from a line."""
    hanging = [start, end, plus(end, (0, 0, -high_ft)), plus(start, (0, 0, -high_ft))]
    shot.fill(hanging, toned(colour, light))
    shot.stroke([start, end], (66, 64, 62), 5)


def dormer(shot: Shot, *, ppi: float = 6, cheek: Image.Image | None = None, flashed: bool = True) -> None:
    """Stand the shed dormer on the front slope; ``cheek`` replaces the picture of its east wall."""
    foot, top = EAVE_FT + 2.0, EAVE_FT + 4.0
    edge = [(0.0, 0.0), (8.0, 4.0), (0.0, 2.0)]
    if faces(shot, (24, 4, foot), (1, 0, 0)):
        if cheek is not None:
            shot.lay(cheek, (24, 4, foot), (0, 1, 0), (0, 0, 1), cheek.width / 8, edge)
        else:
            shot.lay(
                shaded(east_wall(ppi, flashed=flashed).picture, 0.94),
                (24, 4, foot),
                (0, 1, 0),
                (0, 0, 1),
                ppi * 12,
                edge,
            )
    if faces(shot, (14, 4, foot), (-1, 0, 0)):
        flat = Flat((0, 0, 96, 48), ppi)
        flat.picture = m.siding(flat)
        shot.lay(shaded(flat.picture, 0.7), (14, 4, foot), (0, 1, 0), (0, 0, 1), ppi * 12, edge)
    front = Flat((0, 0, 120, 24), ppi)
    front.picture = m.siding(front)
    for x in (22, 68):
        window(front, x, 6, 30, 12)
    front.poly([(0, 0), (120, 0), (120, 2.6), (0, 2.6)], (176, 180, 182))
    front.line([(0, 2.6), (120, 2.6)], (110, 112, 112), 0.4)
    for x in (2, 118):
        front.line([(x, 2.6), (x, 24)], (242, 242, 237), 4)
    front.poly([(0, 20), (120, 20), (120, 24), (0, 24)], (60, 62, 58), 120, 1.5)
    shot.lay(front.picture, (14, 4, foot), (1, 0, 0), (0, 0, 1), ppi * 12)
    over = 0.18
    low, high = top - over * 0.25, top + 2.0
    if faces(shot, (14, 4, top), (0, -0.25, 1)):
        roof = Flat((0, 0, 124.3, 101.2), ppi)
        roof.picture = m.shingles(roof, worn=True)
        step = (0.0, 1 / math.sqrt(1.0625), 0.25 / math.sqrt(1.0625))
        shot.lay(shaded(roof.picture, 1.1), (14 - over, 4 - over, low), (1, 0, 0), step, ppi * 12)
    for x, outward in ((14 - over, (-1.0, 0.0, 0.0)), (24 + over, (1.0, 0.0, 0.0))):
        if faces(shot, (x, 4, top), outward):
            board(shot, (x, 4 - over, low), (x, 12, high), 0.28, 0.9 if x > 20 else 0.72)
    board(shot, (14 - over, 4 - over, low), (24 + over, 4 - over, low), 0.36, 1.0)


def east_wall(ppi: float, *, flashed: bool = True, back_in: float = 0) -> Flat:
    """Return the dormer's east wall, seen from the east: north is to the right, the roof rises below it.

    Args:
        ppi: Pixels for one inch.
        flashed: True for whole step flashing; False for the old one, cut short above the valley.
        back_in: Height of siding taken off above the roof [in].
    """
    flat = Flat((0, 0, 96, 48), ppi)
    flat.picture = m.siding(flat)
    flat.line([(2, 0), (2, 48)], (240, 240, 235), 4)
    if back_in:
        flat.poly([(0, -2), (96, 46), (96, 46 + back_in * 1.118), (0, back_in * 1.118)], (92, 98, 106))
        flat.line([(0, back_in * 1.118), (96, 48 + back_in * 1.118)], (70, 66, 60), 0.5)
    if flashed:
        flat.line([(0, 2.2), (96, 50.2)], (188, 192, 195), 4)
        for k in range(18):
            x = k * 5.03
            flat.line([(x, x / 2), (x - 2, x / 2 + 4.3)], (120, 124, 128), 0.25)
    flat.line([(0, 0), (96, 48)], (26, 26, 26), 2.5, 120, 0.8)
    return flat
