"""Photos that are not taken on the roof's face: the stain, the pitch, the attic, the lawn."""

import math
import random

from PIL import Image, ImageDraw, ImageFilter

from . import materials as m
from .camera import Shot, Vector, plus, shaded, toned
from .flat import Flat, Point, words
from .garden import outdoors, reduce, shrub
from .house import wall
from .tools import finish, tape, tape_case
from .views_framing import rod


def _blot(x: float, y: float, radius: float, seed: str, squash: float = 0.8) -> list[Point]:
    rng = random.Random(seed)
    waves = [(k, rng.uniform(0, 6.3), rng.uniform(0.3, 1) / k) for k in range(2, 9)]
    points = []
    for step in range(120):
        a = step * math.pi / 60
        r = radius * (1 + 0.16 * sum(size * math.sin(k * a + phase) for k, phase, size in waves))
        points.append((x + r * math.cos(a), y + r * math.sin(a) * squash))
    return points


def ceiling_stain() -> Image.Image:
    """P03: the brown ring on the dining-room ceiling."""
    shot = Shot((2.2, -5.4, 4.9), (3.6, 0.3, 7.5), 62, sky=(190, 184, 172))
    paint = m.plain((1800, 1400), (222, 214, 196), "paint", [(3, 3), (400, 300)])
    shot.lay(shaded(paint, 0.86), (-6, 4, 0), (1, 0, 0), (0, 0, 1), 100)
    shot.lay(shaded(paint, 0.7), (8, 4, 0), (0, -1, 0), (0, 0, 1), 100)
    glass = Flat((0, 0, 40, 54), 14)
    glass.picture = m.plain(glass.size, (226, 236, 240), "daylight", [(60, 60)])
    for x in (0.0, 20.0, 40.0):
        glass.line([(x, 0), (x, 54)], (246, 244, 238), 3 if x % 40 else 6)
    for y in (0.0, 27.0, 54.0):
        glass.line([(0, y), (40, y)], (246, 244, 238), 3 if y % 54 else 6)
    shot.lay(glass.picture, (-2.6, 3.98, 2.6), (1 / 12, 0, 0), (0, 0, 1 / 12), 14)
    ceiling = Flat((-72, -108, 96, 48), 18)
    ceiling.picture = m.plain(ceiling.size, (238, 235, 227), "ceiling", [(2, 2), (700, 500)])
    x, y = 46.0, 6.0
    for radius, colour, alpha, blur in (
        (19, (196, 160, 106), 70, 3.0),
        (16.2, (128, 82, 36), 230, 0.35),
        (15.2, (206, 172, 120), 255, 0.7),
        (12.6, (214, 186, 138), 255, 1.2),
        (8.6, (140, 94, 46), 190, 0.6),
        (8.0, (208, 178, 130), 255, 0.8),
        (5.2, (222, 200, 160), 200, 1.6),
    ):
        ceiling.poly(_blot(x, y, radius, "stain"), colour, alpha, blur)
    ceiling.poly(_blot(x + 17, y - 13, 4.6, "drip"), (156, 112, 60), 150, 0.4)
    ceiling.poly(_blot(x + 17, y - 13, 4.0, "drip"), (216, 188, 142), 255, 0.6)
    ceiling.line([(x - 21, y + 5), (x - 4, y + 2), (x + 9, y - 2), (x + 24, y - 4)], (120, 92, 60), 0.18, 150)
    shot.lay(shaded(ceiling.picture, 0.97), (-6, -9, 8), (1 / 12, 0, 0), (0, 1 / 12, 0), 18)
    for high, tone in ((0.34, 0.96), (0.1, 0.8)):
        shot.fill(
            [(-6, 3.96, 8), (8, 3.96, 8), (8, 3.96, 8 - high), (-6, 3.96, 8 - high)],
            toned((244, 244, 244), tone),
        )
        shot.fill(
            [(7.96, 4, 8), (7.96, -8, 8), (7.96, -8, 8 - high), (7.96, 4, 8 - high)],
            toned((214, 214, 214), tone),
        )
    return finish(reduce(shot), warm=(1.03, 1.0, 0.93), vignette=0.3)


def pitch() -> Image.Image:
    """P05: a level 12 in out and a tape 6 in down to the slope."""
    backdrop = m.sky((1600, 1200), 980, "pitch sky").filter(ImageFilter.GaussianBlur(7))
    flat = Flat((-6, -6, 20, 13.5), 123.08, backdrop.resize((3200, 2400)))

    def slope_at(x: float) -> float:
        return (x + 4) / 2 - 4.0

    board = m.wood(flat.size, 123, "rake", ((214, 212, 204), (238, 237, 231)))
    low = [(-6.0, slope_at(-6)), (20.0, slope_at(20))]
    flat.skin([low[0], low[1], (20, -6), (-6, -6)], shaded(board, 0.92))
    side = m.siding(flat, lap_in=4.5)
    flat.skin([(-6, slope_at(-6) - 5.2), (20, slope_at(20) - 5.2), (20, -6), (-6, -6)], shaded(side, 0.72))
    flat.line([(-6, slope_at(-6) - 5.3), (20, slope_at(20) - 5.3)], (60, 60, 56), 0.6, 150, 0.2)
    flat.line([(-6, slope_at(-6) - 0.5), (20, slope_at(20) - 0.5)], (188, 192, 195), 0.8)
    rng = random.Random("butts")
    for course in range(7, -1, -1):
        x = -9 + course * 5.03
        tone = rng.choice(m.OLD_GRAYS)
        a, b = (x, slope_at(x)), (x + 6.2, slope_at(x + 6.2))
        flat.poly(
            [
                (a[0], a[1] - 0.12),
                (b[0], b[1] - 0.12),
                (b[0] - 0.06, b[1] + 0.12),
                (a[0] - 0.16, a[1] + 0.34),
            ],
            tone,
        )
        flat.line([(a[0] - 0.16, a[1] + 0.34), (a[0], a[1] - 0.12)], (54, 48, 42), 0.1)
    meet, out = 12.0, 12.0
    under = slope_at(meet) + 0.36
    strip = tape(flat.ppi, 0, 8.4)
    flat.put(strip, meet - out + 0.5, under - 6 + 4.2, 90, 0.12)
    flat.put(tape_case(flat.ppi), meet - out - 0.35, under - 6 + 9.4, 90, 0.2)
    level = _level(flat.ppi, out)
    flat.put(level.picture.convert("RGBA"), meet - 12, under + 0.95, 0, 0.14)
    return finish(flat.picture.resize((1600, 1200), Image.Resampling.LANCZOS))


def _level(ppi: float, out_in: float) -> Flat:
    """Return a 24 in level whose right end is zero; its lower edge carries inch marks."""
    level = Flat((-24, 0, 0, 1.9), ppi, (170, 40, 34))
    for y0, y1, tone in (
        (0.0, 0.46, (222, 214, 196)),
        (1.62, 1.9, (226, 96, 80)),
        (0.46, 0.54, (112, 22, 18)),
    ):
        level.poly([(-24, y0), (0, y0), (0, y1), (-24, y1)], tone)
    for inch in range(1, 20):
        level.line([(-inch, 0), (-inch, 0.46 if inch == out_in else 0.2)], (30, 28, 26), 0.035)
        level.text(str(inch), -inch + 0.26, 0.25, 0.24, (30, 28, 26), bold=0.04)
    level.text("12 in", -out_in, 1.1, 0.42, (246, 240, 226), bold=0.06)
    for x, wide in ((-7.0, 3.0), (-16.0, 2.0)):
        level.poly(
            [
                (x - wide / 2 - 0.2, 0.62),
                (x + wide / 2 + 0.2, 0.62),
                (x + wide / 2 + 0.2, 1.6),
                (x - wide / 2 - 0.2, 1.6),
            ],
            (30, 30, 32),
        )
        level.poly(
            [(x - wide / 2, 0.74), (x + wide / 2, 0.74), (x + wide / 2, 1.48), (x - wide / 2, 1.48)],
            (196, 220, 72),
        )
        level.poly(
            [(x - 0.42, 0.86), (x + 0.42, 0.86), (x + 0.42, 1.4), (x - 0.42, 1.4)], (234, 246, 160), 255, 0.05
        )
        for mark in (-0.5, 0.5):
            level.line([(x + mark, 0.74), (x + mark, 1.48)], (24, 26, 20), 0.06)
    return level


def attic(*, wide: bool = True) -> Image.Image:
    """P30: the underside of the new deck, dry; also the ground of the inset of P31."""
    shot = Shot((0.9, -1.8, 0.7), (0.6, 6.2, 5.0), 76, portrait=not wide, sky=(10, 8, 7))
    ppi = 14
    roof_z = 3.4
    shot.lay(shaded(m.wool((1500, 1700), 3), 0.55), (-12, -10, -1.2), (1, 0, 0), (0, 1, 0), 48)
    deck = Flat((-120, -120, 120, 161), ppi)
    deck.picture = shaded(m.wood(deck.size, ppi, "old underside", m.OLD_PLY), 0.62)
    new = m.plywood(deck, "new underside", patches=12)
    for sheet in ([(-70, 10), (26, 10), (26, 58), (-70, 58)], [(-46, 58), (50, 58), (50, 106), (-46, 106)]):
        deck.skin([(float(x), float(y)) for x, y in sheet], new)
        deck.line([(float(x), float(y)) for x, y in [*sheet, sheet[0]]], (50, 34, 20), 0.5)
    for text, v in (("32/16   15/32", 33), ("EXPOSURE 1", 37)):
        stamp = words(text, 1.9 * ppi, (64, 60, 110), 0.04)
        deck.put(stamp.transpose(Image.Transpose.FLIP_TOP_BOTTOM), 13.0, v)
    step = (0.0, 2 / math.sqrt(5) / 12, 1 / math.sqrt(5) / 12)
    shot.lay(deck.picture, (-10, -10 * 0.894, roof_z - 10 * 0.447), (1 / 12, 0, 0), step, ppi)
    far = shaded(m.wood((4200, 966), 6, "far slope", m.OLD_PLY), 0.42)
    down = (0.0, -2 / math.sqrt(5) / 12, 1 / math.sqrt(5) / 12)
    shot.lay(far, (-29, 24, roof_z), (1 / 12, 0, 0), down, 6)
    for x in range(-28, 30, 2):
        shot.fill(
            [
                (x, 24, roof_z - 0.5),
                (x + 0.125, 24, roof_z - 0.5),
                (x + 0.125, 12, roof_z + 5.5),
                (x, 12, roof_z + 5.5),
            ],
            (70, 52, 36),
        )
    _nail_points(shot, (0, 0, roof_z))
    wood = m.wood((2600, 112), ppi, "attic rafter", m.OLD_FIR)
    fresh = m.wood((2600, 112), ppi, "attic new rafter", m.FIR)
    along = (0.0, 22 * 0.894, 22 * 0.447)
    deep = (0.0, 0.27, -0.54)
    for x in (-8, 8, -6, 6, -4, 4, -2, 2, 0):
        skin = fresh if x == 2 else wood
        for face in range(2):
            edge_x = x + (0.125 if face == 0 else 0)
            if (shot.eye[0] > edge_x) == (face == 0):
                shot.lay(
                    shaded(skin, 0.72),
                    plus((edge_x, -8.94, roof_z - 4.47), deep),
                    (0, 0.894 / 12, 0.447 / 12),
                    (0, -0.447 / 12 * 0.98, 0.894 / 12 * 0.98),
                    ppi,
                )
        bottom = plus((x, -8.94, roof_z - 4.47), deep)
        shot.lay(shaded(skin, 0.95), bottom, (0, 0.894 / 12, 0.447 / 12), (0.125 / 8, 0, 0), ppi)
        shot.stroke([plus(bottom, (0, 4, 2)), plus(bottom, along)], (36, 24, 16), 3)
    picture = reduce(shot)
    return _torch(picture, (0.5, 0.4))


def _nail_points(shot: Shot, eave: Vector) -> None:
    """Let the points of the shingle nails stand through the deck, one row for each course."""
    rng = random.Random("points")
    along, square = (0.894, 0.447), (0.447, -0.894)  # up the slope; square off its underside
    for course in range(-6, 28):
        v = course * m.EXPOSURE_IN / 12
        u = -9.6 + rng.uniform(0, 0.5)
        while u < 9.6:
            at = v + rng.uniform(-0.03, 0.03)
            root = plus(eave, (u, at * along[0], at * along[1]))
            # 1-1/2 in less 3/8 in of covering and 15/32 in of deck leaves 21/32 in below it
            tip = plus(root, (0.0, square[0], square[1]), 0.656 / 12)
            new = -70 < u * 12 < 26 and 10 < v * 12 < 58 or -46 < u * 12 < 50 and 58 < v * 12 < 106
            away = math.dist(root, shot.eye)
            if away < 16 and root[1] + root[2] - shot.eye[1] - shot.eye[2] > 1.5:
                wide = max(2, round(24 / away))
                shot.stroke([root, plus(root, (0.05, 0.04, 0.02))], (38, 28, 19), wide)
                shot.stroke([root, tip], (138, 141, 144) if new else (88, 66, 48), wide)
            u += 0.55 + rng.uniform(-0.06, 0.06)


def _torch(picture: Image.Image, at: tuple[float, float]) -> Image.Image:
    wide, high = picture.size
    beam = Image.radial_gradient("L").resize((round(wide * 1.5), round(wide * 1.5)))
    light = Image.new("L", picture.size, 255)
    light.paste(beam, (round(wide * at[0] - beam.width / 2), round(high * at[1] - beam.height / 2)))
    shade = light.point([min(232, max(0, (v - 48) * 1.45)) for v in range(256)])
    out = shaded(picture, 1.16, (1.04, 1, 0.9))
    out.paste((12, 9, 7), (0, 0), shade)
    return out


def attic_dry() -> Image.Image:
    """P30: the underside of the new deck."""
    return finish(attic(), vignette=0.15, warm=(1.0, 1.0, 0.98))


def attic_inset() -> Image.Image:
    """The helper under the deck, for the inset of P31."""
    picture = attic(wide=False).resize((420, 560), Image.Resampling.LANCZOS)
    big = picture.resize((1680, 2240))
    pen = ImageDraw.Draw(big)
    dark = (24, 26, 32)
    beam = Image.new("L", big.size)
    ImageDraw.Draw(beam).polygon([(1010, 1330), (330, 560), (1120, 380)], fill=105)
    big.paste((255, 240, 196), (0, 0), beam.filter(ImageFilter.GaussianBlur(50)))
    pen.polygon(
        [(700, 2240), (760, 1790), (860, 1640), (1190, 1640), (1320, 1790), (1400, 2240)], fill=(44, 56, 74)
    )
    pen.ellipse((880, 1330, 1150, 1650), fill=(64, 50, 42))
    pen.pieslice((850, 1270, 1180, 1580), 180, 360, fill=(206, 172, 60))
    pen.rectangle((830, 1412, 1200, 1440), fill=(176, 144, 44))
    pen.line([(860, 1760), (700, 1620), (900, 1400)], fill=(38, 48, 64), width=104, joint="curve")
    pen.ellipse((880, 1330, 970, 1420), fill=(150, 112, 88))
    pen.line([(900, 1400), (1010, 1330)], fill=dark, width=46)
    return big.resize((420, 560), Image.Resampling.LANCZOS)


def lawn() -> Image.Image:
    """P32: the magnet roller on the swept lawn."""
    shot = Shot((9, -22, 5.4), (11.2, -9, 1.6), 56)
    outdoors(shot, near=(10, -14, 0))
    wall(
        shot,
        (1, 1, 0),
        (1, 0, 0),
        20,
        8.8,
        0.9,
        [(2.6, 2.8, 3.2, 4.6), (8.2, 2.8, 5.2, 4.6)],
        door=(15.4, 3.0),
        ppi=6,
    )
    wall(shot, (21, 1, 0), (0, -1, 0), 16, 8.8, 0.66, [(4, 2.8, 3, 4.6), (9.6, 2.8, 3, 4.6)], ppi=6)
    shot.fill([(0, 0, 8.7), (20, 0, 8.7), (21, 1, 8.7), (0, 1, 8.7)], (176, 176, 170))
    shot.fill([(0, 0, 9.17), (20, 0, 9.17), (20, 0, 8.67), (0, 0, 8.67)], (240, 240, 235))
    for index, (x, y) in enumerate([(3, -0.6), (7.6, -0.6), (12, -0.6)]):
        shrub(shot, (x, y, 0), 3.6, 2.7, f"shrub {index}")
    for k in range(5):
        x = 6.6 + k * 1.5
        shot.fill(
            [(x, -19, 0.02), (x + 0.75, -19, 0.02), (x + 0.75, -3, 0.02), (x, -3, 0.02)],
            (206, 214, 150),
            34,
            8,
        )
    x, y = 10.4, -14.2
    shot.fill(
        [
            (x - 0.2, y - 0.4, 0.02),
            (x + 3.3, y - 0.4, 0.02),
            (x + 3.1, y + 0.7, 0.02),
            (x - 0.4, y + 0.7, 0.02),
        ],
        (20, 26, 12),
        170,
        14,
    )
    bar = m.metal((400, 120), "magnet", tone=(150, 154, 158))
    shot.box((x, y, 0.22), ((3.0, 0, 0), (0, 0.4, 0), (0, 0, 0.34)), bar, 100)
    label = Flat((0, 0, 20, 4), 20, (206, 52, 40))
    label.text("MAGNET", 10, 2, 2.2, (248, 244, 232), bold=0.08)
    shot.lay(label.picture, (x + 0.66, y - 0.01, 0.225), (1 / 12, 0, 0), (0, 0, 1 / 12), 20)
    for wheel in (x - 0.16, x + 3.16):
        ring = [
            (wheel, y + 0.2 + 0.36 * math.cos(a / 12), 0.36 + 0.36 * math.sin(a / 12)) for a in range(0, 76)
        ]
        shot.fill([plus(point, (-0.09, 0, 0)) for point in ring], (28, 28, 30))
        shot.fill([plus(point, (0.05, 0, 0)) for point in ring], (46, 46, 48))
        hub = [
            (wheel - 0.1, y + 0.2 + 0.12 * math.cos(a / 12), 0.36 + 0.12 * math.sin(a / 12))
            for a in range(0, 76)
        ]
        shot.fill(hub, (196, 160, 60))
    rod(shot, shot.at((x + 1.5, y + 0.2, 0.5)), shot.at((x + 1.9, y - 2.2, 3.0)), 20, 30, (60, 64, 70))
    rod(shot, shot.at((x + 1.5, y - 2.24, 3.0)), shot.at((x + 2.3, y - 2.24, 3.0)), 40, 40, (40, 40, 42))
    rng = random.Random("picked up")
    for _ in range(26):
        px = rng.uniform(x + 0.1, x + 2.9)
        shot.stroke([(px, y - 0.02, 0.24), (px + rng.uniform(-0.07, 0.07), y - 0.05, 0.1)], (120, 96, 76), 4)
    return finish(reduce(shot))
