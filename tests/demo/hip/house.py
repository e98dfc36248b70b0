"""The hip house in space: four slopes in every state of the work, walls, eaves and what grows around it."""

import math
from collections.abc import Callable
from typing import Literal

from PIL import Image, ImageDraw, ImageFilter

from .. import materials as m
from ..camera import Colour, Shot, Vector, plus, shaded, toned
from ..flat import Flat, Point, grain, mixed
from ..garden import outdoors
from ..house import board, faces, inches, window
from . import stuff

Plane = Literal["HS", "HE", "HN", "HW"]
State = Literal["old", "stripped", "renailed", "taped", "felt", "new", "tarp"]
Window = tuple[float, float, float, float]
States = dict[Plane, State]

LONG_FT, WIDE_FT, EAVE_FT, RUN_FT = 48.0, 28.0, 9.0, 14.0
UP, RISE = 12 / 13, 5 / 13  # level and plumb for one foot up a 5:12 slope
TOP_FT = RUN_FT / UP
TOP_Z = EAVE_FT + RUN_FT * 5 / 12
PLANES: dict[Plane, tuple[Vector, Vector, Vector]] = {
    "HS": ((0, 0, EAVE_FT), (1, 0, 0), (0, UP, RISE)),
    "HE": ((LONG_FT, 0, EAVE_FT), (0, 1, 0), (-UP, 0, RISE)),
    "HN": ((LONG_FT, WIDE_FT, EAVE_FT), (-1, 0, 0), (0, -UP, RISE)),
    "HW": ((0, WIDE_FT, EAVE_FT), (0, -1, 0), (UP, 0, RISE)),
}
OUT: dict[Plane, Vector] = {"HS": (0, -1, 2.4), "HE": (1, 0, 2.4), "HN": (0, 1, 2.4), "HW": (-1, 0, 2.4)}
LONG_SIDES: frozenset[Plane] = frozenset({"HS", "HN"})
LIGHT: dict[Plane, float] = {"HS": 1.06, "HE": 0.94, "HN": 0.86, "HW": 0.8}
#: New sheets on each slope, as the record has them [ft].
SHEETS: dict[Plane, dict[str, list[Point]]] = {
    "HS": {},
    "HE": {
        "S1": [(0, 0), (8, 0), (8, 4), (4 * UP, 4)],
        "S2": [(4 * UP, 4), (12, 4), (12, 8), (8 * UP, 8)],
    },
    "HN": {"S3": [(16, 4), (24, 4), (24, 8), (16, 8)]},
    "HW": {},
}
#: Pipes and hoods through the back slope: u, v [ft] and what stands there.
THROUGH: tuple[tuple[float, float, str], ...] = (
    (12.0, 5.0, "pipe"),
    (20.0, 6.0, "pipe"),
    (30.0, 4.0, "pipe"),
    (24.5, 9.0, "hood"),
)


def outline(plane: Plane) -> list[Point]:
    """Return a slope's corners [ft]."""
    if plane in LONG_SIDES:
        return [(0, 0), (LONG_FT, 0), (LONG_FT - RUN_FT, TOP_FT), (RUN_FT, TOP_FT)]
    return [(0, 0), (WIDE_FT, 0), (RUN_FT, TOP_FT)]


def on_roof(plane: Plane, u_ft: float, v_ft: float, lift_ft: float = 0.0) -> Vector:
    """Return the place in space of a point on a slope."""
    place, along, upward = PLANES[plane]
    return plus(plus(plus(place, along, u_ft), upward, v_ft), (0, 0, lift_ft))


def hips(plane: Plane) -> tuple[list[Point], list[Point]]:
    """Return the left and the right hip of a slope [in], as seen from outside."""
    wide = LONG_FT if plane in LONG_SIDES else WIDE_FT
    top = TOP_FT * 12
    return [(0, 0), (RUN_FT * 12, top)], [(wide * 12, 0), ((wide - RUN_FT) * 12, top)]


def slope(plane: Plane, state: State, part: Window | None, ppi: float, marks: str = "") -> Flat:
    """Return one slope in a state of the work.

    Args:
        plane: Which slope.
        state: State of the work.
        part: Left, bottom, right and top on the slope [ft]; the whole slope when None.
        ppi: Pixels for one inch.
        marks: ``chalk`` or ``crayon`` writes the sheets' marks.
    """
    wide = LONG_FT if plane in LONG_SIDES else WIDE_FT
    left, bottom, right, top = part or (0.0, 0.0, wide, TOP_FT)
    flat = Flat((left * 12, bottom * 12, right * 12, top * 12), ppi)
    if state == "old":
        flat.picture = stuff.three_tab(flat)
        _caps(flat, plane, (104, 88, 74), 5.0)
        if plane == "HE":
            _creases(flat)
    elif state == "new":
        flat.picture = stuff.slate(flat)
        _caps(flat, plane, (112, 120, 130), 5.625)
    elif state == "felt":
        stuff.felt(flat, plane)
        for line in hips(plane):
            flat.line(line, (46, 46, 46), 14, 200, 0.3)
    elif state == "tarp":
        _tarp(flat)
    else:
        _deck(flat, plane, state, marks)
    return flat


def _caps(flat: Flat, plane: Plane, tone: Colour, exposure_in: float) -> None:
    lines = list(hips(plane))
    if plane in LONG_SIDES:
        high = TOP_FT * 12
        lines.append([(RUN_FT * 12, high), ((LONG_FT - RUN_FT) * 12, high)])
    for (ax, ay), (bx, by) in lines:
        flat.line([(ax, ay - 0.8), (bx, by - 0.8)], (26, 24, 24), 12.6, 130, 0.5)
        flat.line([(ax, ay), (bx, by)], tone, 11.5)
        long = math.hypot(bx - ax, by - ay)
        for step in range(int(long / exposure_in) + 1):
            share = step * exposure_in / long
            x, y = ax + (bx - ax) * share, ay + (by - ay) * share
            nx, ny = -(by - ay) / long, (bx - ax) / long
            fade = 0.88 + 0.24 * ((step * 7919) % 11) / 10
            flat.line([(x - nx * 5.7, y - ny * 5.7), (x + nx * 5.7, y + ny * 5.7)], toned(tone, 0.42), 0.5)
            flat.line(
                [(x, y), (ax + (bx - ax) * (share + 4.6 / long), ay + (by - ay) * (share + 4.6 / long))],
                toned(tone, fade),
                11.0,
                110,
            )


def _creases(flat: Flat) -> None:
    """Crease and tear the old tabs beside the south-east hip."""
    for course in range(3, 34):
        y = course * 5.0
        edge = y * UP
        for k in range(3):
            x = math.floor((edge + 10) / 12) * 12 + k * 12 + (6 if course % 2 else 0)
            number = (course * 31 + k * 17) % 10
            if number < 4:
                flat.line([(x + 0.4, y + 3.4), (x + 11.6, y + 3.2)], (36, 30, 26), 0.5)
                flat.line([(x + 0.4, y + 3.0), (x + 11.6, y + 2.8)], (196, 180, 158), 0.35, 190)
            elif number == 4:
                flat.poly([(x, y), (x + 12, y), (x + 12, y + 5), (x, y + 5)], (34, 31, 30))
                flat.poly([(x, y - 1), (x + 12, y - 1), (x + 12, y + 0.5), (x, y + 0.5)], (60, 54, 48))


def _deck(flat: Flat, plane: Plane, state: State, marks: str) -> None:
    renailed = state in ("renailed", "taped")
    flat.picture = stuff.old_deck(flat, plane, renailed=renailed)
    if state == "stripped":
        for name, shape in SHEETS[plane].items():
            points = inches(shape)
            middle = (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))
            inner = [
                (middle[0] + (x - middle[0]) * 0.7, middle[1] + (y - middle[1]) * 0.7) for x, y in points
            ]
            soft = flat.mask(inner, 255, 6)
            flat.picture = m.rotten(flat.picture, soft, f"{name} rot", flat.ppi)
    else:
        for name, shape in SHEETS[plane].items():
            points = inches(shape)
            flat.skin(points, m.plywood(flat, f"new {name}"))
            flat.line([*points, points[0]], (92, 66, 40), 0.4)
            low, left, right = points[0][1], min(x for x, _ in points), max(x for x, _ in points)
            for truss in range(math.ceil(left / 24), math.floor(right / 24) + 1):
                x = truss * 24.0
                ends = (-stuff.END_IN, stuff.END_IN) if x in (left, right) else (0.0,)
                for step in range(13):
                    y = low + step * 4.0 - (0.7 if step == 12 else -0.7 if step == 0 else 0)
                    if x >= y * UP or plane not in ("HE",):
                        for side in ends:
                            flat.disc(x + side, y, 0.3, stuff.HEAD)
    if state == "taped":
        stuff.joint_tape(flat)
        for line in hips(plane):
            flat.line(line, stuff.TAPE, 4.5)
    if marks:
        for name, shape in SHEETS[plane].items():
            points = inches(shape)
            x = sum(x for x, _ in points) / len(points)
            y = sum(y for _, y in points) / len(points)
            colour = m.WHITE_CHALK if marks == "chalk" else m.CHALK
            flat.chalk(name, x - (26 if plane == "HN" else 0), y + 3, 16, colour, 3)
    if plane == "HN":
        for u, v, kind in THROUGH:
            flat.disc(u * 12, v * 12, 2.3 if kind == "pipe" else 4.5, (12, 10, 9))


def _tarp(flat: Flat) -> None:
    flat.picture = m.plain(flat.size, (44, 84, 142), "tarp", [(flat.ppi * 30, flat.ppi * 60)])
    cell = max(1.0, flat.ppi * 0.4)
    flat.speckle("tarp weave", 0.4, 8 if cell > 1 else 5)
    folds = grain("tarp folds", flat.size, (flat.ppi * 16, flat.ppi * 90)).point(
        [max(0, min(150, (v - 120) * 3)) for v in range(256)]
    )
    flat.picture.paste((26, 52, 96), (0, 0), folds.filter(ImageFilter.GaussianBlur(flat.ppi * 1.4)))
    step = 72.0
    x = math.ceil(flat.left / step) * step
    while x < flat.right:
        flat.line([(x, flat.bottom), (x, flat.top)], (20, 38, 70), 1.4, 150, 0.4)
        x += step
    for y in (6.0, 84.0):
        flat.line([(flat.left, y - 1.6), (flat.right, y - 1.6)], (16, 24, 40), 3.6, 150, 0.6)
        flat.line([(flat.left, y), (flat.right, y)], (204, 176, 132), 3.4)
        k = math.ceil(flat.left / 24)
        while k * 24 < flat.right:
            flat.disc(k * 24.0, y, 0.7, (120, 120, 116))
            k += 1


def lay_slope(shot: Shot, plane: Plane, flat: Flat, light: float = 1.0) -> None:
    """Lay a slope into the picture, cut at its own outline."""
    place, along, upward = PLANES[plane]
    if not faces(shot, place, OUT[plane]):
        return
    corner = plus(plus(place, along, flat.left / 12), upward, flat.bottom / 12)
    edge = clip(outline(plane), (flat.left / 12, flat.bottom / 12, flat.right / 12, flat.top / 12))
    edge = [(x - flat.left / 12, y - flat.bottom / 12) for x, y in edge]
    shot.lay(shaded(flat.picture, LIGHT[plane] * light), corner, along, upward, flat.ppi * 12, edge)


def clip(points: list[Point], box: Window) -> list[Point]:
    """Return a polygon cut at a box."""
    for axis, bound, sign in ((0, box[0], 1), (0, box[2], -1), (1, box[1], 1), (1, box[3], -1)):
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


def _wall(
    shot: Shot,
    corner: Vector,
    along: Vector,
    wide_ft: float,
    light: float,
    openings: list[Window],
    door: float,
) -> None:
    flat = Flat((0, 0, wide_ft * 12, 8.5 * 12), 4.5)
    flat.picture = m.siding(flat, (198, 206, 208))
    for x, y, w, h in openings:
        window(flat, x * 12, y * 12, w * 12, h * 12)
    if door:
        x, w = door * 12, 36.0
        flat.poly([(x - 5, 0), (x + w + 5, 0), (x + w + 5, 88), (x - 5, 88)], (240, 240, 234))
        flat.poly([(x, 0), (x + w, 0), (x + w, 82), (x, 82)], (132, 62, 48))
        for py, ph in ((8, 26), (42, 32)):
            for px in (x + 5, x + w / 2 + 2):
                flat.poly([(px, py), (px + 11, py), (px + 11, py + ph), (px, py + ph)], (112, 50, 38))
        flat.disc(x + w - 4, 38, 1.6, (206, 180, 96))
    flat.poly([(0, 0), (wide_ft * 12, 0), (wide_ft * 12, 12), (0, 12)], (152, 124, 108))
    for x in (1.5, wide_ft * 12 - 1.5):
        flat.line([(x, 0), (x, 102)], (240, 240, 235), 4)
    flat.poly([(0, 92), (wide_ft * 12, 92), (wide_ft * 12, 102), (0, 102)], (30, 34, 36), 110, 3)
    shot.lay(shaded(flat.picture, light), corner, along, (0, 0, 1), flat.ppi * 12)


_WINDOWS_LONG: list[Window] = [(4, 2.8, 5, 4.4), (13, 2.8, 3, 4.4), (27, 2.8, 5, 4.4), (38, 2.8, 5, 4.4)]
_WINDOWS_END: list[Window] = [(5, 2.8, 3, 4.4), (17.5, 2.8, 3, 4.4)]


def house(
    shot: Shot,
    states: States,
    *,
    ppi: float = 5.0,
    gutters: bool = True,
    fascia: bool = True,
    beyond: Callable[[Shot], None] | None = None,
) -> None:
    """Draw the whole house, from the ground or from above.

    Args:
        shot: The picture being taken.
        states: State of each slope.
        ppi: Pixels for one inch on the slopes.
        gutters: False while the gutters are off.
        fascia: False leaves the eave boards out, for shots of one slope only.
        beyond: Draws what stands on slopes that face away; the slopes in front then hide its foot.
    """
    shot.fill([(-1, -2, 0.02), (49, -2, 0.02), (51, 29, 0.02), (0, 31, 0.02)], (26, 36, 20), 110, 26)
    sides: list[tuple[Plane, Vector, Vector, float, float, float]] = [
        ("HS", (1, 1, 0), (1, 0, 0), 46, 0.97, 20.5),
        ("HE", (47, 1, 0), (0, 1, 0), 26, 0.8, 0.0),
        ("HN", (47, 27, 0), (-1, 0, 0), 46, 0.72, 19.0),
        ("HW", (1, 27, 0), (0, -1, 0), 26, 0.66, 0.0),
    ]
    for plane, corner, along, wide, light, door in sides:
        normal = OUT[plane]
        if faces(shot, corner, (normal[0], normal[1], 0)):
            _wall(shot, corner, along, wide, light, _WINDOWS_LONG if wide > 30 else _WINDOWS_END, door)
    low = EAVE_FT - 0.5
    ring = [(0.0, 0.0), (LONG_FT, 0.0), (LONG_FT, WIDE_FT), (0.0, WIDE_FT)]
    inner = [(1.0, 1.0), (47.0, 1.0), (47.0, 27.0), (1.0, 27.0)]
    if shot.eye[2] < low:
        for index in range(4):
            a, b = ring[index], ring[(index + 1) % 4]
            c, d = inner[(index + 1) % 4], inner[index]
            shot.fill([(*a, low), (*b, low), (*c, low), (*d, low)], (186, 188, 184))
    if beyond:
        beyond(shot)
    for plane in PLANES:
        lay_slope(shot, plane, slope(plane, states[plane], None, ppi))
    if fascia:
        for index, plane in enumerate(PLANES):
            normal = OUT[plane]
            start, end = (*ring[index], EAVE_FT), (*ring[(index + 1) % 4], EAVE_FT)
            if faces(shot, start, (normal[0], normal[1], 0)):
                light = 1.02 if plane == "HS" else 0.82
                board(shot, start, end, 0.5, light)
                if gutters and plane in LONG_SIDES:
                    gutter(shot, start, end, normal, light)
    back = "HS" if shot.eye[1] < 14 else "HN"
    if states["HN"] in ("old", "new", "felt") and back == "HN":
        for u, v, kind in THROUGH:
            if kind == "pipe" or states["HN"] != "old":  # the hood of the bath fan is new
                through(shot, u, v, kind)


def gutter(shot: Shot, start: Vector, end: Vector, out: Vector, light: float) -> None:
    """Hang a white gutter in front of a fascia."""
    step = (out[0] * 0.36, out[1] * 0.36, 0.0)
    a, b = plus(start, step), plus(end, step)
    face = [plus(a, (0, 0, -0.06)), plus(b, (0, 0, -0.06)), plus(b, (0, 0, -0.42)), plus(a, (0, 0, -0.42))]
    if shot.eye[2] > start[2]:
        shot.fill([start, end, plus(b, (0, 0, -0.06)), plus(a, (0, 0, -0.06))], (70, 74, 74))
    shot.fill(face, toned((236, 238, 236), light))
    shot.stroke([plus(a, (0, 0, -0.06)), plus(b, (0, 0, -0.06))], (250, 250, 248), 5)
    shot.stroke([plus(a, (0, 0, -0.42)), plus(b, (0, 0, -0.42))], (120, 124, 122), 4)


def through(shot: Shot, u: float, v: float, kind: str) -> None:
    """Stand a pipe or a hood on the back slope."""
    foot = on_roof("HN", u, v)
    if kind == "pipe":
        x, y = shot.at(foot)
        tx, ty = shot.at(plus(foot, (0, 0, 1.1)))
        ImageDraw.Draw(shot.picture).line(
            [(x, y), (tx, ty)], fill=(228, 228, 222), width=max(4, round((y - ty) / 4))
        )
        return
    size = (0.9, 0.9, 0.45)
    skin = m.plain((80, 80), (88, 92, 96), "hood", [(30, 30)])
    shot.box(plus(foot, (-0.45, -0.45, -0.1)), ((size[0], 0, 0), (0, size[1], 0), (0, 0, size[2])), skin, 60)


def garden(shot: Shot, *, near: Vector | None = None, marsh: bool = False) -> None:
    """Fill the picture with what stands around the house; the marsh lies to the east."""
    outdoors(shot, near=near)
    if marsh:
        marsh_back(shot)


def marsh_back(shot: Shot) -> None:
    """Lay open marsh and water behind the lawn, out to the horizon."""
    far = plus(shot.eye, (shot.ahead[0] * 4000, shot.ahead[1] * 4000, 0))
    horizon = round(shot.at(far)[1])
    sky = m.sky((shot.width // 2, shot.height // 2), 2 * shot.height, "marsh sky")
    shot.picture.paste(sky.resize(shot.picture.size), (0, 0), _above(shot, horizon))
    reeds(shot, horizon)


def _above(shot: Shot, horizon: int) -> Image.Image:
    mask = Image.new("L", shot.picture.size)
    ImageDraw.Draw(mask).rectangle((0, 0, shot.width, max(0, horizon)), fill=255)
    return mask


def reeds(shot: Shot, horizon: int) -> None:
    """Draw a far tree line, water and marsh grass below a horizon [px]."""
    pen = ImageDraw.Draw(shot.picture)
    deep = shot.height * 0.07
    far = mixed((86, 104, 104), (112, 128, 120), grain("far trees", (shot.width, round(deep)), (60, 30)))
    mask = Image.new("L", far.size)
    tool = ImageDraw.Draw(mask)
    noise = grain("far line", (far.width, 1), (90, 1))
    for x in range(0, far.width, 4):
        top = far.height * (0.6 - 0.25 * noise.getpixel((x, 0)) / 255)  # type: ignore[operator]
        tool.rectangle((x, top, x + 4, far.height), fill=255)
    shot.picture.paste(far, (0, horizon - far.height), mask.filter(ImageFilter.GaussianBlur(3)))
    pen.rectangle((0, horizon, shot.width, horizon + deep * 0.5), fill=(150, 172, 184))  # water
    grass = mixed(
        (112, 112, 68), (162, 156, 108), grain("marsh grass", (shot.width, round(deep * 3.4)), (5, 44))
    )
    top = round(horizon + deep * 0.35)
    edge = Image.new("L", grass.size, 255)
    tool = ImageDraw.Draw(edge)
    waves = grain("marsh edge", (grass.width, 1), (160, 1))
    for x in range(0, grass.width, 3):
        tool.rectangle((x, 0, x + 3, grass.height * 0.22 * waves.getpixel((x, 0)) / 255), fill=0)  # type: ignore[operator]
    shot.picture.paste(grass, (0, top), edge.filter(ImageFilter.GaussianBlur(2)))
