"""Photos of the look at the house in April, before the work."""

import math
import random

from PIL import Image, ImageDraw, ImageFilter

from .. import materials as m
from ..camera import Colour, Shot, Vector, shaded, toned
from ..flat import Flat, grain, speckled
from ..garden import reduce
from ..tools import INK, finish, lay_tape, tape, tape_case
from . import goods, place
from .goods import rect
from .views_wood import torch


def back_view() -> Image.Image:
    """P03: the back of the house in April."""
    shot = Shot((-9, 66, 5.6), (16.5, 26, 9.2), 46)
    place.outdoors(shot, near=(2, 48, 0))
    place.house(shot, "before", "before")
    place.gutter(shot)
    return finish(reduce(shot))


def bend_test() -> Image.Image:
    """P05: an old shingle bent upright, cracked across at the bend; a thermometer reads 46."""
    flat = Flat((-30, -22, 60, 44), 40)
    flat.picture = m.shingles(flat, worn=True, courses_from=0.4)
    _thermometer(flat, 4.6, -3.6)
    shot = Shot((13.5, -21, 27), (14.5, 3.2, 1.0), 54)
    shot.lay(flat.picture, (flat.left, flat.bottom, 0), (1, 0, 0), (0, 1, 0), flat.ppi)
    under = Flat((0, 0, 27, 9.2), 50)
    under.picture = m.plain(under.size, (116, 108, 98), "sanded back", [(3, 3), (240, 90)])
    for k in range(9):
        under.line([(1 + k * 3, 7.6), (2.8 + k * 3, 7.6)], (30, 28, 28), 0.5, 220, 0.04)
    rng = random.Random("crack")
    crack = [(x / 2, 3.2 + rng.uniform(-0.42, 0.42)) for x in range(-1, 48)]
    under.line([(x, y + 0.18) for x, y in crack], (170, 160, 146), 0.3, 230)
    under.line(crack, (10, 9, 9), 0.34)
    for k in (8, 19, 27, 38):
        under.line(
            [crack[k], (crack[k][0] + 1.1, crack[k][1] + 1.5), (crack[k][0] + 0.8, crack[k][1] + 2.5)],
            (14, 12, 12),
            0.16,
        )
    shot.fill([(0.6, 0.4, 0.05), (28.6, 0.4, 0.05), (28.6, 9.5, 0.05), (0.6, 9.5, 0.05)], (10, 9, 9), 200, 26)
    arc = [(9 - 3 * math.sin(k * math.pi / 24), 3 - 3 * math.cos(k * math.pi / 24)) for k in range(13)]
    points = [*arc, *((6.0, 3 + k * 0.9) for k in range(1, 6))]
    lengths = [0.0]
    for (y0, z0), (y1, z1) in zip(points, points[1:], strict=False):
        lengths.append(lengths[-1] + math.hypot(y1 - y0, z1 - z0))
    for k in range(len(points) - 1):
        (y0, z0), (y1, z1) = points[k], points[k + 1]
        high = under.size[1]
        low, top = round(high - lengths[k] * 50), round(high - lengths[k + 1] * 50)
        strip = under.picture.crop((0, max(0, top - 1), under.size[0], low))
        step = ((y1 - y0) / strip.height * 50, (z1 - z0) / strip.height * 50)
        shot.lay(shaded(strip, 0.5 + 0.6 * min(1, k / 11)), (1.0, y0, z0), (1, 0, 0), (0, *step), 50)
    edge = points[-1]
    shot.fill(
        [(1, *edge), (28, *edge), (28, edge[0] + 0.3, edge[1]), (1, edge[0] + 0.3, edge[1])], (150, 140, 124)
    )
    _glove(shot, (25.4, 5.6, 7.2))
    return finish(reduce(shot), focus=(0.1, 0.95))


def _thermometer(flat: Flat, x: float, y: float) -> None:
    """Lay a dial thermometer on the roof; its hand points at 46."""
    flat.disc(x + 0.5, y - 0.6, 4.6, (8, 8, 8), 170, 0.7)
    flat.disc(x, y, 4.5, (150, 154, 158))
    flat.disc(x, y, 4.1, (246, 245, 238))

    def turned(value: float) -> float:
        return math.radians(225 - (value - 20) / 80 * 270)

    for value in range(20, 101, 2):
        a, deep = turned(value), 0.7 if value % 10 == 0 else 0.35
        flat.line(
            [
                (x + 3.9 * math.cos(a), y + 3.9 * math.sin(a)),
                (x + (3.9 - deep) * math.cos(a), y + (3.9 - deep) * math.sin(a)),
            ],
            INK,
            0.09,
        )
        if value % 10 == 0:
            flat.text(str(value), x + 2.6 * math.cos(a), y + 2.6 * math.sin(a), 0.62, INK, bold=0.05)
    a = turned(46)
    flat.line(
        [(x - 0.8 * math.cos(a), y - 0.8 * math.sin(a)), (x + 3.5 * math.cos(a), y + 3.5 * math.sin(a))],
        (196, 34, 26),
        0.22,
    )
    flat.disc(x, y, 0.34, INK)
    flat.text("deg F", x, y - 1.7, 0.55, INK, bold=0.04)


def _glove(shot: Shot, at: Vector) -> None:
    """Draw the gloved thumb and fingers that hold the shingle at its right edge."""
    pen = ImageDraw.Draw(shot.picture)
    x, y = shot.at(at)
    skin: Colour = (176, 132, 78)
    for k in range(4):
        fx, fy = x + 46 + k * 4, y - 120 + k * 76
        pen.rounded_rectangle(
            (fx - 130, fy, fx + 330, fy + 72),
            36,
            fill=toned(skin, 0.92 - 0.05 * k),
            outline=(96, 66, 36),
            width=5,
        )
    pen.rounded_rectangle((x + 130, y - 150, x + 900, y + 210), 80, fill=toned(skin, 0.8))
    pen.rounded_rectangle((x + 520, y - 160, x + 660, y + 220), 30, fill=(64, 74, 84))


def pitch_square() -> Image.Image:
    """P06: a framing square on the rake, 12 in level and 9 in down, so 9 in 12."""
    flat = Flat((-5, -6.2, 21, 13.3), 123)
    back = Image.new("RGB", flat.size)
    for y in range(flat.size[1]):
        share = y / flat.size[1]
        ImageDraw.Draw(back).line(
            [(0, y), (flat.size[0], y)],
            fill=(round(132 + 70 * share), round(160 + 50 * share), round(190 + 28 * share)),
        )
    flat.picture = speckled(back, grain("soft hills", back.size, (700, 160)), 14)

    def rake(x: float) -> float:
        return 0.75 * x - 4.0

    boarding = m.wood(flat.size, 123, "snow rake", ((206, 204, 196), (234, 232, 226)))
    flat.skin([(-5, rake(-5)), (21, rake(21)), (21, -7), (-5, -7)], shaded(boarding, 0.9))
    wall = m.siding(flat, place.SIDING, 4.0)
    flat.skin([(-5, rake(-5) - 7), (21, rake(21) - 7), (21, -7), (-5, -7)], shaded(wall, 0.72))
    flat.line([(-5, rake(-5) - 7), (21, rake(21) - 7)], (52, 54, 56), 0.6, 160, 0.2)
    rng = random.Random("rake butts")
    for course in range(8, -2, -1):
        x = -6.5 + course * 4.5
        a, b = (x, rake(x) + 0.1), (x + 5.6, rake(x + 5.6) + 0.1)
        flat.poly(
            [(a[0], a[1] - 0.2), (b[0], b[1] - 0.2), (b[0] - 0.1, b[1] + 0.16), (a[0] - 0.24, a[1] + 0.36)],
            rng.choice(m.OLD_GRAYS),
        )
        flat.line([(a[0] - 0.24, a[1] + 0.36), (a[0], a[1] - 0.2)], (50, 45, 40), 0.1)
    steel: Colour = (198, 202, 206)
    corner = (2.6, rake(14.6) + 0.46)
    flat.poly(
        [
            (corner[0] - 0.1 + 0.2, corner[1] - 0.2),
            (corner[0] + 17, corner[1] - 0.2),
            (corner[0] + 17, corner[1] + 1.7),
            (corner[0], corner[1] + 1.7),
        ],
        (10, 10, 12),
        110,
        0.25,
    )
    flat.poly(rect(corner[0], corner[1], corner[0] + 17, corner[1] + 2.0), steel)
    flat.poly(rect(corner[0], corner[1] - 13.5, corner[0] + 1.5, corner[1] + 2.0), toned(steel, 0.95))
    flat.line(
        [(corner[0], corner[1]), (corner[0], corner[1] + 2), (corner[0] + 17, corner[1] + 2)],
        (240, 242, 244),
        0.07,
    )
    for k in range(1, 137):
        inch = k / 8
        reach = 0.62 if k % 8 == 0 else 0.34 if k % 4 == 0 else 0.2
        flat.line([(corner[0] + inch, corner[1]), (corner[0] + inch, corner[1] + reach)], INK, 0.035)
        if k % 8 == 0:
            big = k == 96
            flat.text(
                str(k // 8),
                corner[0] + inch,
                corner[1] + 1.1,
                0.62 if big else 0.42,
                (178, 34, 28) if big else INK,
                bold=0.05,
            )
        if k <= 104:
            flat.line([(corner[0], corner[1] - inch), (corner[0] + reach, corner[1] - inch)], INK, 0.035)
            if k % 8 == 0:
                big = k == 72
                flat.text(
                    str(k // 8),
                    corner[0] + 1.02,
                    corner[1] - inch,
                    0.6 if big else 0.4,
                    (178, 34, 28) if big else INK,
                    bold=0.05,
                )
    bubble = Flat((0, 0, 5.2, 1.1), 123, (206, 54, 40))
    bubble.poly(rect(1.5, 0.2, 3.7, 0.9), (206, 226, 92))
    bubble.poly(rect(2.2, 0.3, 3.0, 0.8), (238, 248, 176))
    for x in (2.1, 3.1):
        bubble.line([(x, 0.2), (x, 0.9)], (30, 34, 20), 0.06)
    flat.put(bubble.picture.convert("RGBA"), corner[0] + 8.4, corner[1] + 2.6, 0, 0.1)
    return finish(flat.picture.resize((1600, 1200), Image.Resampling.LANCZOS))


def chimney_foot() -> Image.Image:
    """P07: the chimney from the ridge; lead off its joint, a tape along its uphill side."""
    shot = Shot((19, 27, 46), (14.4, 1, 2.6), 48, sky=(198, 208, 216))
    slope = Flat((-130, -90, 160, 60), 14)
    slope.picture = m.shingles(slope, worn=True)
    up = (0.0, 0.8, 0.6)
    shot.lay(shaded(slope.picture, 0.98), (-130, -72, -54), (1, 0, 0), up, 14)
    skin = goods.bricks(Flat((0, 0, 40, 60), 20), "chimney near")
    shot.fill([(-2, 0, 0), (30, 0, 0), (30, 5, 3.75), (-2, 5, 3.75)], (14, 13, 12), 150, 40)
    shot.fill([(0, 1, 0.75), (-14, -2, -1.5), (-14, -26, -19), (0, -26, -19)], (14, 13, 12), 120, 40)
    shot.box((0, -24, 0), ((28, 0, 0), (0, 24, 0), (0, 0, 40)), skin, 20, light=(0.3, 0.55, 0.7))
    lead = m.metal((900, 160), "lead", tone=(116, 122, 128))
    shot.lay(lead, (28, 0.05, 0), (-1, 0, 0), (0, 0, 1), 32, [(0, 0), (28, 0), (28, 5), (0, 5)])
    shot.fill([(28, 0.1, 7.2), (0, 0.1, 7.2), (0, 0.1, 6.6), (28, 0.1, 6.6)], (18, 16, 16), 240, 4)
    bent = [(28.3, 0.2, 7.0), (21, 0.2, 6.9), (14, 1.6, 6.6), (7, 2.6, 6.3), (-0.3, 2.2, 6.1)]
    low = [(28.4, 0.5, 3.2), (21, 0.8, 3.1), (14, 2.2, 2.9), (7, 3.2, 3.0), (-0.4, 2.9, 3.0)]
    shot.fill([(21, 0.15, 6.6), (14, 0.15, 6.6), (0, 0.15, 6.6), *reversed(bent[1:])], (10, 10, 10), 235, 3)
    for k in range(4):
        shot.fill([bent[k], bent[k + 1], low[k + 1], low[k]], toned((150, 156, 162), 0.86 + 0.09 * k))
    shot.stroke(bent, (214, 218, 222), 6)
    strip = tape(60, 0, 34, wide_in=1.25, finest=8)
    shot.lay(strip, (28, 5.6, 4.26), (-1, 0, 0), (0, -0.8, -0.6), 60)
    return finish(reduce(shot), focus=(0.1, 0.95))


def attic_bays() -> Image.Image:
    """P08: the back eave from inside the attic; four bays stuffed, numbered in chalk."""
    shot = Shot((61, -92, 38), (61, 8, 9), 68, sky=(10, 8, 7))
    ppi = 10
    floor = m.wool((2400, 1300), 6)
    shot.lay(shaded(floor, 0.6), (-60, -100, 0), (1, 0, 0), (0, 1, 0), ppi)
    deck = Flat((-60, 0, 190, 150), ppi)
    deck.picture = shaded(goods.boards(deck, "attic underside", goods.OLD_PINE, nails=False), 0.62)
    step = (0.0, -0.8, 0.6)
    shot.lay(deck.picture, (-60, 28, 2), (1, 0, 0), step, ppi)
    lumps = m.wool((400, 360), 7)
    for bay, x in enumerate(range(-24, 150, 24)):
        stuffed = bay in (1, 2, 4, 5)
        if stuffed:
            rng = random.Random(f"bay {bay}")
            skin = shaded(lumps, 0.86, (1.06, 1.0, 0.94))
            top = [(22.5 - 22.5 * k / 12, 26 + rng.uniform(-3, 4)) for k in range(13)]
            shot.lay(
                skin,
                (x + 1.5, 15, 0),
                (1, 0, 0),
                (0, -0.15, 0.98),
                16,
                [(0, 0), (22.5, 0), *[(a, min(b, 21.5)) for a, b in top]],
            )
        else:
            gap = Flat((0, 0, 22.5, 7), 12, (196, 206, 210))
            gap.poly(rect(0, 0, 22.5, 2.6), (120, 126, 124))
            shot.lay(
                gap.picture,
                (x + 1.5, 26, 0.3),
                (1, 0, 0),
                (0, 0, 1),
                12,
                [(0, 0), (22.5, 0), (22.5, 2.6), (0, 2.6)],
            )
    wood = m.wood((1400, 60), ppi, "bay rafter", m.OLD_FIR)
    for x in range(-48, 192, 24):
        for face in (0.0, 1.5):
            if (shot.eye[0] > x + face) == (face > 0):
                shot.lay(
                    shaded(wood, 0.66),
                    (x + face, 29, -3.6),
                    (0, -0.8, 0.6),
                    (0, 0.6 * 0.999, 0.8),
                    ppi,
                    [(0, 0), (130, 0), (130, 5.5), (0, 5.5)],
                )
        shot.lay(
            shaded(wood, 0.9),
            (x, 29, -3.6),
            (0, -0.8, 0.6),
            (1, 0, 0),
            ppi,
            [(0, 0), (130, 0), (130, 1.5), (0, 1.5)],
        )
    for number, bay in enumerate((1, 2, 4, 5), 1):
        mark = Flat((0, 0, 12, 12), 20)
        mark.chalk(str(number), 6, 6, 8, m.WHITE_CHALK)
        shot.lay(_on_nothing(mark.picture), (-24 + bay * 24 + 7, 2, 22.5), (1, 0, 0), (0, -0.8, 0.6), 20)
    return torch(reduce(shot), 0.52)


def _on_nothing(picture: Image.Image) -> Image.Image:
    """Return a picture drawn on black with the black taken away."""
    out = picture.convert("RGBA")
    out.putalpha(picture.convert("L").point([min(255, v * 2) for v in range(256)]))
    return out


def louver() -> Image.Image:
    """P09: the west gable louver with a tape across it, 14 in."""
    flat = Flat((-44, -36, 60, 50), 60)
    flat.picture = shaded(m.siding(flat, place.SIDING, 6.0), 0.95)
    flat.poly(rect(-3, -3.6, 17.6, 20), (20, 22, 24), 120, 0.8)
    place.draw_louver(flat, 0, 0)
    flat.speckle("louver paint", 0.3, 5)
    for k in range(7):
        y = k * 18 / 7
        flat.line([(0, y + 1.62), (14, y + 1.62)], (20, 18, 18), 0.5, 170, 0.15)
    lay_tape(flat, 0, -0.6, 19, side=1, wide_in=1.25, finest=8)
    flat.put(tape_case(60), 19.6, -0.3, 0, 0.3)
    shot = Shot((1, -24, 46), (7.2, 8.4, 0), 50, up=(0, 1, 0))
    shot.lay(flat.picture, (flat.left, flat.bottom, 0), (1, 0, 0), (0, 1, 0), 60)
    return finish(reduce(shot).filter(ImageFilter.GaussianBlur(0.4)), focus=(0.05, 0.95))
