"""The snow-country house in space, seen from its back: north slope, porch roof, walls and yard.

East is x, north is y, in feet, with the south-west corner of the eaves at the origin. From the back the east end
is to the left. ``u`` runs along the north slope from its east end, so the porch covers 0 to 14 ft.
"""

import math
import random
from typing import Literal

from PIL import Image, ImageDraw, ImageFilter

from .. import materials as m
from ..camera import Colour, Shot, Vector, plus, shaded, toned
from ..flat import Flat, Point, grain, speckled
from ..house import board, window
from ..tools import cap
from . import goods
from .goods import rect

State = Literal["before", "stripped", "boards", "barrier", "felt", "snow"]

EAVE_FT, PORCH_EAVE_FT = 10.0, 10 - 7 / 6
SLOPE_FT, PORCH_FT = 16.25, 7 * math.sqrt(1 + 1 / 36)
NORTH: tuple[Vector, Vector, Vector] = ((34, 26, EAVE_FT), (-1, 0, 0), (0, -0.8, 0.6))
PORCH: tuple[Vector, Vector, Vector] = (
    (34, 33, PORCH_EAVE_FT),
    (-1, 0, 0),
    (0, -7 / PORCH_FT, (7 / 6) / PORCH_FT),
)
RIDGE_FT = EAVE_FT + 9.75
SIDING: Colour = (158, 170, 176)
#: Ice barrier, porch sheet and felt on the north slope [in].
BARRIER_IN, BASE_UP_IN, FELT_IN = 72.0, 24.0, 32.0
B1 = rect(24, 0, 144, 6 * goods.COURSE_IN)
B2 = rect(168, 0, 264, 5 * goods.COURSE_IN)
B3 = rect(264, 16 * goods.COURSE_IN, 312, 18 * goods.COURSE_IN)
PIPE_IN = (300.0, 96.0)


def on(slope: tuple[Vector, Vector, Vector], u_ft: float, v_ft: float, lift_ft: float = 0.0) -> Vector:
    """Return the place in space of a point on a slope."""
    place, along, upward = slope
    return plus(plus(plus(place, along, u_ft), upward, v_ft), (0, 0, lift_ft))


def north(
    state: State, window_ft: tuple[float, float, float, float], ppi: float, *, marks: bool = False
) -> Flat:
    """Return the north slope in a state of the work, for a window in feet."""
    left, bottom, right, top = window_ft
    flat = Flat((left * 12, bottom * 12, right * 12, top * 12), ppi)
    if state == "snow":
        flat.picture = goods.snow(flat.size, "roof snow", ppi * 5)
        return flat
    if state == "before":
        flat.picture = m.shingles(flat, worn=True)
        flat.poly(rect(0, 0, 408, 30), (50, 46, 40), 80, 14)
        _pipe(flat)
        return flat
    flat.picture = goods.boards(flat, "back deck", goods.OLD_PINE, joints_in=(72, 96, 192, 216, 312, 336))
    if state == "stripped":
        _rot(flat, marks)
    else:
        for name, shape in (("B1", B1), ("B2", B2), ("B3", B3)):
            flat.skin(shape, goods.boards(flat, f"new {name}", goods.NEW_PINE))
            flat.line([*shape, shape[0]], (60, 42, 26), 0.3)
            if marks:
                x, y = (shape[0][0] + shape[2][0]) / 2, (shape[0][1] + shape[2][1]) / 2
                flat.chalk(name, x - (6 if name == "B3" else 0), y, 6 if name == "B3" else 13, m.CHALK, 2)
    if state in ("barrier", "felt"):
        _barrier(flat)
    if state == "felt":
        _felt(flat)
    _pipe(flat)
    return flat


def _rot(flat: Flat, marks: bool) -> None:
    line = flat.mask(rect(-20, -20, 430, 36), 255, 5)
    flat.picture = goods.wet(flat.picture, line)
    for name, shape in (("B1", rect(32, -2, 134, 30)), ("B2", rect(172, -2, 250, 24))):
        mask = flat.mask(shape, 255, 4)
        flat.picture = m.rotten(flat.picture, mask, f"{name} rot", flat.ppi * 0.5)
    if marks:
        flat.chalk("B1", 84, 45, 12, m.WHITE_CHALK, 3)
        flat.chalk("B2", 214, 43, 12, m.WHITE_CHALK, -3)
    flat.line([(-10, 37), (420, 35)], m.WHITE_CHALK, 0.7, 120, 0.15)


def _barrier(flat: Flat) -> None:
    flat.line([(-20, BARRIER_IN + 0.6), (440, BARRIER_IN + 0.6)], (12, 10, 9), 1.4, 150, 0.5)
    flat.skin(rect(-20, -20, 440, BARRIER_IN), m.membrane(flat, "ice barrier"))
    for y in (BARRIER_IN, 36.1):
        flat.line([(-20, y), (440, y)], (136, 144, 154), 0.3)
        flat.line([(-20, y - 0.5), (440, y - 0.5)], (58, 62, 70), 0.5, 140)
    flat.line([(-20, 39.6), (440, 39.6)], (118, 126, 136), 0.15, 130)


def _felt(flat: Flat) -> None:
    low = BARRIER_IN - 4
    paper = m.felt(flat, "north felt")
    flat.line([(-20, low - 0.6), (440, low - 0.6)], (10, 10, 10), 1.6, 170, 0.5)
    flat.skin(rect(-20, low, 440, 300), paper)
    for row in range(4):
        y = low + row * FELT_IN
        flat.line([(-20, y - 0.4), (440, y - 0.4)], (8, 8, 8), 1.1, 170, 0.35)
        flat.line([(-20, y + 0.2), (440, y + 0.2)], (98, 96, 94), 0.25)
        for mark in (3, 17):
            flat.line([(-20, y + mark), (440, y + mark)], (150, 150, 146), 0.2, 80)
        for k in range(40):
            x = k * 11.0 + 4 + row % 2 * 3
            if flat.left - 2 < x < flat.right + 2:
                cap(flat, x, y + 1.8)
                if k % 2 == 0:
                    cap(flat, x + 6, y + 14)


def _pipe(flat: Flat) -> None:
    """Draw the vent pipe as seen against the slope; it stands up the slope a little."""
    x, y = PIPE_IN
    flat.line([(x + 2, y), (x - 3, y + 12)], (20, 18, 18), 4.0, 110, 1.2)
    flat.line([(x, y), (x, y + 11)], (206, 204, 196), 3.4)
    flat.line([(x - 1.1, y), (x - 1.1, y + 11)], (236, 234, 228), 0.6, 170)
    flat.disc(x, y + 11, 1.7, (40, 38, 38))


def lay(shot: Shot, slope: tuple[Vector, Vector, Vector], flat: Flat, light: float = 1.0) -> None:
    """Lay a slope's picture into space, cut at the slope's own outline."""
    wide, high = (34.0, SLOPE_FT) if slope is NORTH else (14.0, PORCH_FT)
    left, right = max(0.0, flat.left / 12), min(wide, flat.right / 12)
    low, top = max(0.0, flat.bottom / 12), min(high, flat.top / 12)
    corner = on(slope, flat.left / 12, flat.bottom / 12)
    edge = rect(left - flat.left / 12, low - flat.bottom / 12, right - flat.left / 12, top - flat.bottom / 12)
    shot.lay(shaded(flat.picture, light), corner, slope[1], slope[2], flat.ppi * 12, edge)


def porch(kind: Literal["before", "base", "tarp", "snow"], ppi: float) -> Flat:
    """Return the porch roof; its own window is the whole of it and a little over."""
    flat = Flat((-6, -3, 174, PORCH_FT * 12 + 3), ppi)
    if kind == "snow":
        flat.picture = goods.snow(flat.size, "porch snow", ppi * 5)
    elif kind == "tarp":
        flat.picture = goods.tarp(flat, "porch tarp")
        for y in (2.5,):
            _batten(flat, [(0, y), (168, y)])
        for x in (2.5, 165.5):
            _batten(flat, [(x, 3), (x, 82)])
    elif kind == "base":
        flat.picture = goods.base_sheet(flat)
        for row in range(1, 3):
            y = row * 33.0
            flat.line([(-6, y), (174, y)], (44, 42, 40), 0.6, 190)
            flat.line([(-6, y + 3), (174, y + 3)], (150, 148, 140), 0.15, 120)
        for k in range(22):
            for row in range(3):
                flat.disc(k * 8 + 3, row * 33 + 1.5, 0.6, (176, 178, 176))
    else:
        flat.picture = shaded(goods.base_sheet(flat, "old roll roofing"), 1.22, (0.98, 1.02, 0.96))
        for y in (36.0, 70.0):
            flat.line([(-6, y), (174, y)], (50, 52, 48), 0.5, 170)
        flat.poly(rect(-6, 62, 174, 90), (60, 52, 42), 110, 8)
    return flat


def _batten(flat: Flat, line: list[Point]) -> None:
    flat.line([(x + 0.6, y - 0.8) for x, y in line], (10, 14, 20), 2.4, 150, 0.5)
    flat.line(line, (208, 174, 122), 1.8)
    flat.line(line, (230, 202, 156), 0.5, 180)
    (ax, ay), (bx, by) = line
    steps = max(2, round(math.dist(line[0], line[1]) / 16))
    for k in range(steps):
        share = (k + 0.5) / steps
        flat.disc(ax + (bx - ax) * share, ay + (by - ay) * share, 0.35, (90, 92, 96))


def outdoors(shot: Shot, *, winter: bool = False, near: Vector | None = None) -> None:
    """Fill the picture with sky, mountains, hemlocks and the yard."""
    far = plus(shot.eye, (shot.ahead[0] * 4000, shot.ahead[1] * 4000, 0))
    wide, high = shot.width // 2, shot.height // 2
    horizon = round(shot.at(far)[1]) // 2
    sky = Image.new("RGB", (1, high))
    top, low = ((168, 178, 190), (214, 219, 224)) if winter else ((112, 150, 190), (206, 218, 222))
    for y in range(high):
        share = min(1.0, max(0.0, y / max(1, horizon)))
        sky.putpixel((0, y), tuple(round(a + (b - a) * share) for a, b in zip(top, low, strict=True)))
    back = sky.resize((wide, high))
    cloud = grain("mountain cloud", (wide, high), (wide / 4, high / 10)).point(
        [max(0, min(190, (v - 110) * 2.2)) for v in range(256)]
    )
    back.paste((230, 233, 235), (0, 0), cloud.filter(ImageFilter.GaussianBlur(wide / 120)))
    rng = random.Random("mountains")
    for layer, (rise, tone) in enumerate(((0.2, (142, 156, 172)), (0.13, (104, 120, 132)))):
        tint = toned(tone, 1.22, 20) if winter else tone
        waves = [(k, rng.uniform(0, 6.3), rng.uniform(0.3, 1) / k) for k in range(1, 9)]
        line = [
            (
                x,
                horizon
                - high * rise * (0.66 + 0.34 * sum(s * math.sin(k * x / wide * 5 + p) for k, p, s in waves)),
            )
            for x in range(-4, wide + 8, 4)
        ]
        mask = Image.new("L", (wide, high))
        ImageDraw.Draw(mask).polygon([(-4, horizon + 4), *line, (wide + 8, horizon + 4)], fill=255)
        face = Image.new("RGB", (wide, high), tint)
        back.paste(speckled(face, grain(f"ridge {layer}", (wide, high), (14, 8)), 8), (0, 0), mask)
    _hemlocks(back, horizon, winter)
    if horizon < high:
        back.paste((232, 237, 243) if winter else (116, 122, 80), (0, max(0, horizon), wide, high))
    shot.picture.paste(back.resize(shot.picture.size, Image.Resampling.BILINEAR), (0, 0))
    yard = (
        goods.snow((1500, 1500), "yard", 6)
        if winter
        else shaded(m.grass((1800, 1800), "yard", 1.4), 0.95, (1.06, 0.98, 0.86))
    )
    shot.lay(yard, (-120, -100, 0), (1, 0, 0), (0, 1, 0), yard.width / 270)
    if near:
        close = (
            goods.snow((1200, 1200), "near yard", 9)
            if winter
            else shaded(m.grass((1500, 1500), "near yard", 2.4), 0.95, (1.06, 0.98, 0.86))
        )
        fade = (
            Image.radial_gradient("L")
            .resize(close.size)
            .point([max(0, min(255, (190 - v) * 4)) for v in range(256)])
        )
        close.putalpha(fade)
        shot.lay(close, (near[0] - 25, near[1] - 25, 0), (1, 0, 0), (0, 1, 0), close.width / 50)


def _hemlocks(back: Image.Image, horizon: int, winter: bool) -> None:
    wide, high = back.size
    rng = random.Random("hemlocks")
    pen = ImageDraw.Draw(back)
    x = -20.0
    while x < wide + 30:
        tall, half = high * rng.uniform(0.12, 0.27), wide * rng.uniform(0.012, 0.024)
        tone = toned((44, 62, 52), rng.uniform(0.8, 1.2))
        pen.line([(x, horizon + 3), (x, horizon - tall)], fill=toned(tone, 0.6), width=3)
        steps = 15
        for k in range(steps):
            y = horizon - tall * k / steps
            reach = half * (1 - k / steps) ** 0.85 * rng.uniform(0.8, 1.15) + 1.5
            drop = tall / steps * 1.35
            branch = [
                (x, y - drop),
                (x + reach, y),
                (x + reach * 0.4, y - drop * 0.12),
                (x, y + 1),
                (x - reach, y),
            ]
            pen.polygon(branch, fill=toned(tone, 0.85 + 0.3 * (k % 2)))
            if winter:
                pen.line([(x - reach, y), (x, y - drop * 0.8), (x + reach, y)], fill=(226, 232, 238), width=2)
        x += wide * rng.uniform(0.018, 0.06)


def wall(
    shot: Shot,
    corner: Vector,
    along: Vector,
    size_ft: tuple[float, float],
    light: float,
    windows: list[tuple[float, float, float, float]],
    *,
    edge: list[Point] | None = None,
    door_ft: float | None = None,
    louver: tuple[float, float] | None = None,
    ppi: float = 5,
) -> None:
    """Stand a wall of lap siding with windows, a door and a louver."""
    flat = Flat((0, 0, size_ft[0] * 12, size_ft[1] * 12), ppi)
    flat.picture = m.siding(flat, SIDING, 6.0)
    for x, y, w, h in windows:
        window(flat, x * 12, y * 12, w * 12, h * 12)
    if door_ft is not None:
        x = door_ft * 12
        flat.poly(rect(x - 4, 12, x + 38, 98), (240, 240, 234))
        flat.poly(rect(x, 12, x + 34, 94), (112, 62, 48))
        window(flat, x + 7, 56, 20, 30)
    if louver:
        draw_louver(flat, louver[0] * 12, louver[1] * 12)
    flat.poly(rect(0, 0, size_ft[0] * 12, 12), (128, 124, 118))
    picture = speckled(flat.picture, grain("back wall", flat.size, (300, 200)), 6)
    shot.lay(shaded(picture, light), corner, along, (0, 0, 1), ppi * 12, edge)


def draw_louver(flat: Flat, x: float, y: float, wide: float = 14, high: float = 18) -> None:
    """Draw a gable louver with its lower left corner at a point [in]."""
    flat.poly(rect(x - 2.5, y - 2.5, x + wide + 2.5, y + high + 2.5), (238, 238, 232))
    flat.poly(rect(x, y, x + wide, y + high), (36, 34, 34))
    slats = 7
    for k in range(slats):
        low = y + k * high / slats
        flat.poly(rect(x, low, x + wide, low + high / slats * 0.62), (222, 222, 216))
        flat.poly(rect(x, low, x + wide, low + high / slats * 0.14), (150, 150, 146))


def house(
    shot: Shot, state: State, porch_kind: Literal["before", "base", "tarp", "snow"], *, ppi: float = 6
) -> None:
    """Draw the house from the back, from the ground or from above, camera north and west of it."""
    winter = state == "snow"
    dark: Colour = (150, 160, 176) if winter else (34, 40, 24)
    shot.fill([(1, 1, 0), (1, 25, 0), (20, 34, 0), (36, 34, 0), (36, 25, 0)], dark, 120, 24)
    gable: list[Point] = [(0, 0), (24, 0), (24, 10.1), (12, 19.1), (0, 10.1)]
    wall(
        shot,
        (1, 25, 0),
        (0, -1, 0),
        (24, 20),
        0.92,
        [(3.4, 3, 3, 4.6), (14, 3, 3, 4.6), (10.2, 11, 3.6, 4)],
        edge=gable,
        louver=(11.4, 16.4),
        ppi=7,
    )
    wall(
        shot,
        (33, 25, 0),
        (-1, 0, 0),
        (32, 10.2),
        0.78,
        [(2.2, 3.4, 3.4, 4), (16, 3.2, 2.6, 4.4), (25, 3.2, 3, 4.4)],
        door_ft=7.6,
    )
    _porch_floor(shot)
    shot.fill([(20, 26, 9.5), (0, 26, 9.5), (0, 25, 9.5), (20, 25, 9.5)], (160, 162, 162))
    for y0, y1 in ((26, 13), (0, 13)):
        rake = [(0, y0, 9.9), (0, y1, 19.65), (1, y1, 19.65), (1, y0, 9.9)]
        shot.fill([plus(p, (0, 0, -0.45)) for p in rake], (126, 128, 128))
    chimney(shot)
    lay(shot, NORTH, north(state, (-0.5, -0.3, 34.5, SLOPE_FT + 0.3), ppi), 0.95 if winter else 0.9)
    board(shot, (0, 26, EAVE_FT), (0, 13, RIDGE_FT), 0.55, 0.98)
    shot.stroke(
        [on(NORTH, 0, SLOPE_FT), on(NORTH, 34, SLOPE_FT)],
        (236, 240, 246) if winter else (96, 90, 84),
        12 if winter else 8,
    )
    if not winter:
        board(shot, (20, 26, EAVE_FT), (0, 26, EAVE_FT), 0.62, 0.8)
    lay(shot, PORCH, porch(porch_kind, ppi), 1.0)
    board(shot, (34, 33, PORCH_EAVE_FT), (20, 33, PORCH_EAVE_FT), 0.6, 0.86)
    board(shot, (20, 33, PORCH_EAVE_FT), (20, 26, EAVE_FT), 0.5, 0.95)


def _porch_floor(shot: Shot) -> None:
    planks = goods.boards(
        Flat((0, 0, 168, 84), 5), "porch floor", ((120, 122, 122), (150, 150, 146)), nails=False
    )
    shot.fill([(20, 33, 0), (34, 33, 0), (34, 33, 1.2), (20, 33, 1.2)], (74, 70, 66))
    shot.fill([(20, 33, 0), (20, 25, 0), (20, 25, 1.2), (20, 33, 1.2)], (88, 84, 80))
    shot.lay(planks, (34, 32.9, 1.2), (-1, 0, 0), (0, -1, 0), 60)
    porch_rail(shot)


def porch_rail(shot: Shot) -> None:
    """Stand the posts and the rail of the porch."""
    for x, y in ((33.6, 32.6), (27.1, 32.6), (20.3, 32.6)):
        for a, b, tone in ((0.0, 0.36, 236), (0.36, 0.5, 190)):
            foot = [(x - a + 0.18, y, 1.2), (x - b + 0.18, y, 1.2)]
            shot.fill([*foot, plus(foot[1], (0, 0, 7.2)), plus(foot[0], (0, 0, 7.2))], (tone, tone, tone - 6))
    for z in (2.0, 4.1):
        shot.stroke([(33.6, 32.6, z), (20.3, 32.6, z)], (226, 226, 220), 7)
    for k in range(1, 26):
        x = 20.3 + k * 13.3 / 26
        shot.stroke([(x, 32.6, 2.0), (x, 32.6, 4.1)], (214, 214, 208), 3)


def chimney(shot: Shot) -> None:
    """Stand the chimney on the south slope below the ridge; only its upper part shows from the back."""
    skin = goods.bricks(Flat((0, 0, 30, 64), 8), "stack").copy()
    shot.box((23.2, 10.4, 17.6), ((2.33, 0, 0), (0, 2.0, 0), (0, 0, 4.6)), skin, 96)
    shot.box(
        (23.05, 10.25, 22.2),
        ((2.63, 0, 0), (0, 2.3, 0), (0, 0, 0.25)),
        m.plain((260, 260), (170, 166, 158), "crown", [(6, 6)]),
        96,
    )


def gutter(shot: Shot, *, cable: bool = True) -> None:
    """Hang the gutter on the eave beside the porch, and zigzag its heat cable over the shingles."""
    z = EAVE_FT - 0.12
    shot.fill([(20, 26.42, z), (0, 26.42, z), (0, 26.42, z - 0.42), (20, 26.42, z - 0.42)], (232, 233, 230))
    shot.fill([(0, 26.42, z), (0, 26.0, z), (0, 26.0, z - 0.42), (0, 26.42, z - 0.42)], (206, 207, 204))
    shot.stroke([(20, 26.42, z), (0, 26.42, z)], (250, 250, 248), 5)
    shot.stroke([(0.5, 26.3, z - 0.4), (0.6, 25.1, z - 1.6), (0.6, 25.1, 0.6)], (226, 227, 224), 15)
    if cable:
        points = []
        for k in range(22):
            points.append(on(NORTH, 14.2 + k * 0.92, 0.1 if k % 2 == 0 else 2.0, 0.05))
        shot.stroke(points, (30, 30, 32), 4)
