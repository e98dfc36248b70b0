"""The demo house in space: its slopes in every state of the work, its walls and its boards."""

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
        "S1": [(16, 0), (20, 0), (20 + 4 / SLOPE, 4), (16, 4)],
        "S2": [
            (22, 4),
            (20 + 4 / SLOPE, 4),
            (20 + 8 / SLOPE, 8),
            (24, 8),
            (24, CHEEK_V_FT),
            (22, CHEEK_V_FT),
        ],
    },
    "WW": {
        "S3": [(0, 0), (4.5, 0), (4.5, 4), (-4 / SLOPE, 4)],
        "S4": [(-4 / SLOPE, 4), (0.5, 4), (0.5, 8), (-8 / SLOPE, 8)],
    },
}
MARKS: dict[str, tuple[float, float, float]] = {  # middle of the mark [ft] and height of the letters [in]
    "S1": (18.2, 2.4, 15),
    "S2": (24.95, 6.9, 9),
    "S3": (1.6, 2.2, 15),
    "S4": (-3.1, 6.2, 15),
}
#: The rafters of a slope stand 24 in on center from here [in].
FIRST_RAFTER_IN: dict[Plane, float] = {"MS": 0.0, "WW": 6.0}
#: How far the rot goes: to each side of the valley, and up it [in]. All of it lies on the sheets that came out.
ROT_OUT_IN, ROT_UP_IN = 13.0, 84.0
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


def _rotten_strip(plane: Plane) -> list[Point]:
    """Return where the deck beside the valley is rotten [in]."""
    side, start = (-1, 240.0) if plane == "MS" else (1, 0.0)
    foot = start - side * ROT_UP_IN / SLOPE
    out = side * ROT_OUT_IN * math.sqrt(1 + 1 / SLOPE**2)
    return [
        (start - 2 * side, -6),
        (foot - 2 * side, ROT_UP_IN),
        (foot + out / 2, ROT_UP_IN),
        (start + out, -6),
    ]


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
    for row in range(2):
        for column in range(-6, 8):
            x = column * 96 + 48 + 48 * row + FIRST_RAFTER_IN[plane]
            flat_mask_line(flat, work, [(x, row * 48), (x, row * 48 + 48)], (38, 28, 20), 0.5)
    if state == "stripped":
        mask = flat.mask(_rotten_strip(plane), 255, 3.0)
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
                _nails(flat, shape, plane)
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


def _nails(flat: Flat, shape: list[Point], plane: Plane) -> None:
    """Drive nails where the sheet lies on a rafter or on the valley rafter; nothing bears it elsewhere."""
    low, left, right = min(y for _, y in shape), min(x for x, _ in shape), max(x for x, _ in shape)
    for rafter in range(-5, 16):
        x = rafter * 24.0 + FIRST_RAFTER_IN[plane]
        x += 0.5 if abs(x - left) < 1 else -0.5 if abs(x - right) < 1 else 0.0
        for step in range(9):
            spot = (x, low + 0.6 + step * 5.85)
            if _inside(spot, shape):
                nail_head(flat, *spot, 0.24)
    (ax, ay), (bx, by) = valley(plane, 0.8)
    for step in range(40):
        share = (step * 6 + 1.5) / math.hypot(bx - ax, by - ay)
        spot = (ax + (bx - ax) * share, ay + (by - ay) * share)
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
