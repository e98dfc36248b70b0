"""Photos of the old roof and of the attic: creases, lost seals, the bend test, stains, the pitch, nail points."""

import math
import random

from PIL import Image, ImageDraw

from .. import materials as m
from ..camera import Shot, shaded
from ..flat import Flat, Point
from ..garden import outdoors, reduce
from ..tools import INK, finish, paper_label, tape
from ..views_framing import rod
from ..views_near import looked_down
from . import stuff


def creased() -> Image.Image:
    """Creased and torn tabs beside the hip, chalked."""
    flat = Flat((-8, -14, 60, 44), 44)
    flat.picture = stuff.three_tab(flat)
    for x, y, torn in (
        (12, 5, False),
        (24, 5, False),
        (18, 10, True),
        (30, 10, False),
        (12, 15, False),
        (36, 15, True),
        (30, 0, False),
        (42, 20, False),
    ):
        if torn:
            flat.poly([(x + 0.3, y), (x + 11.7, y), (x + 11.7, y + 5), (x + 0.3, y + 5)], (36, 33, 31))
            rng = random.Random(f"torn {x}")
            edge = [(x + 0.3 + k * 0.95, y + 4.1 + rng.uniform(-0.5, 0.6)) for k in range(13)]
            flat.poly([(x + 0.3, y + 5), *edge, (x + 11.7, y + 5)], (112, 94, 78))
            flat.line(edge, (18, 16, 15), 0.18)
            for k in range(5):
                flat.disc(x + 1.6 + k * 2.2, y + 0.9, 0.35, (70, 64, 58))
        else:
            wave = [(x + 0.4 + k * 0.8, y + 3.7 + 0.16 * math.sin(k * 1.3 + x)) for k in range(15)]
            flat.poly([(x + 0.4, y), (x + 11.6, y), *reversed(wave)], (168, 150, 130), 60, 0.3)
            flat.line(wave, (30, 25, 22), 0.34)
            flat.line([(px, py - 0.3) for px, py in wave], (206, 192, 170), 0.26, 210)
            flat.line([(px, py + 0.3) for px, py in wave], (84, 70, 58), 0.3, 160, 0.1)
    for mid_x, mid_y in ((18, 7.6), (24, 12.5), (42, 17.5)):
        ring = [(mid_x + 8.4 * math.cos(a / 14), mid_y + 4.6 * math.sin(a / 14)) for a in range(90)]
        flat.line(ring, m.WHITE_CHALK, 0.4, 170, 0.06)
    line = ((-10.0, 20.0), (26.0, 46.0))
    flat.line(
        [(line[0][0] - 1, line[0][1] - 1), (line[1][0] - 1, line[1][1] - 1)], (20, 18, 16), 12.5, 150, 0.5
    )
    flat.line(list(line), (118, 99, 83), 11.5)
    for k in range(11):
        cap_x, cap_y = line[0][0] + k * 4.05, line[0][1] + k * 2.93
        flat.line([(cap_x - 3.3, cap_y + 4.6), (cap_x + 3.3, cap_y - 4.6)], (50, 42, 36), 0.5)
    return finish(
        reduce(looked_down(flat, (24, 11), 46, lean_deg=26, turn_deg=5)), focus=(0.08, 0.92), seed="creased"
    )


def unsealed() -> Image.Image:
    """A tab lifts on the blade: the old seal strip below it is dusty and holds nothing."""
    flat = Flat((-14, -14, 26, 22), 90)
    flat.picture = stuff.three_tab(flat)
    flat.poly([(0.2, 0.2), (11.8, 0.2), (11.8, 5.2), (0.2, 5.2)], (52, 46, 42))
    for k in range(6):
        x = 0.7 + k * 1.9
        flat.poly([(x, 1.3), (x + 1.3, 1.3), (x + 1.3, 1.9), (x, 1.9)], (104, 96, 86))
        flat.line([(x + 0.1, 1.7), (x + 1.2, 1.5)], (150, 140, 126), 0.12, 150, 0.05)
    flat.speckle("dust", 0.12, 9)
    shot = looked_down(flat, (6, 2.2), 20, lean_deg=40, turn_deg=-9)
    under = Flat((0, 0, 11.6, 5.2), 90)
    under.picture = m.plain(under.size, (64, 60, 56), "tab underside", [(3, 3), (120, 50)])
    for k in range(6):
        x = 0.5 + k * 1.9
        under.poly([(x, 0.9), (x + 1.3, 0.9), (x + 1.3, 1.5), (x, 1.5)], (34, 32, 32))
    shot.fill([(0, 3.0, 0.03), (11.9, 3.0, 0.03), (11.9, 5.6, 0.03), (0, 5.6, 0.03)], (6, 6, 6), 200, 18)
    parts = 8
    for part in range(parts):
        low, high = part / parts, (part + 1) / parts
        near, far = _curl(1 - low), _curl(1 - high)
        strip = under.picture.crop(
            (0, round(low * under.size[1]), under.size[0], round(high * under.size[1]))
        )
        step = (0.0, (near[0] - far[0]) * 90 / strip.height, (near[1] - far[1]) * 90 / strip.height)
        shot.lay(shaded(strip, 0.7 + 0.5 * (1 - low)), (0.2, far[0], far[1]), (1, 0, 0), step, 90)
    tip, collar, end = (5.0, 3.8, 0.35), (2.6, -2.4, 1.2), (-0.6, -9.0, 2.6)
    shot.fill([(3.6, 4.4, 0.3), (6.6, 4.2, 0.3), (3.3, -2.6, 1.1), (1.9, -2.3, 1.1)], (178, 184, 188))
    shot.stroke([(3.6, 4.4, 0.32), (1.9, -2.3, 1.12)], (236, 238, 240), 5)
    rod(shot, shot.at(collar), shot.at(end), 120, 190, (38, 84, 66))
    shot.stroke([tip, tip], (0, 0, 0), 1)
    return finish(reduce(shot), focus=(0.12, 0.9), seed="unsealed")


def _curl(share: float) -> tuple[float, float]:
    """Return how far up the roof and how high a point of the lifted tab is [in]; 1 is its free edge."""
    return 5.0 - 1.6 * math.sin(share * math.pi * 0.8), 4.4 * share**1.2


def bend_test() -> Image.Image:
    """A shingle bent over the ridge board by hand: it cracks; the thermometer reads 58 F."""
    flat = Flat((-22, -18, 26, 26), 56)
    flat.picture = m.plywood(flat, "bend bench", m.OLD_PLY, patches=2)
    shot = looked_down(flat, (3.2, 1.0), 32, lean_deg=46, turn_deg=6)
    shot.fill([(-9, -5, 0.02), (10, -5, 0.02), (10, 6, 0.02), (-9, 6, 0.02)], (8, 6, 5), 170, 26)
    board = m.wood((900, 200), 40, "bend board", m.FIR)
    shot.box((-12, -0.75, 0), ((24, 0, 0), (0, 1.5, 0), (0, 0, 3.0)), board, 40)
    face = stuff.three_tab(Flat((0, 0, 18, 12), 60))
    parts = 14
    for part in list(range(parts // 2)) + list(range(parts - 1, parts // 2 - 1, -1)):
        a, b = part / parts, (part + 1) / parts
        low, high = _bent(a), _bent(b)
        strip = face.crop((0, round((1 - b) * face.height), face.width, round((1 - a) * face.height)))
        step = (0.0, (high[0] - low[0]) * 60 / strip.height, (high[1] - low[1]) * 60 / strip.height)
        light = 1.16 if part >= parts // 2 else 0.86
        shot.lay(
            shaded(strip, light if 5 <= part <= 8 else light * 0.92),
            (-8.6, low[0], low[1]),
            (1, 0, 0),
            step,
            60,
        )
    rng = random.Random("bend crack")
    top = _bent(0.5)
    crack = [(-8.6 + k * 0.6, top[0] - 0.15 + rng.uniform(-0.28, 0.28), top[1] + 0.12) for k in range(31)]
    pen = ImageDraw.Draw(shot.picture)
    seen = [shot.at(point) for point in crack]
    pen.line([(x, y + 8) for x, y in seen], fill=(196, 176, 150), width=10, joint="curve")
    pen.line(seen, fill=(10, 9, 9), width=20, joint="curve")
    for x, y in seen[::3]:
        pen.line([(x, y), (x + rng.uniform(-20, 20), y + rng.uniform(26, 74))], fill=(16, 14, 13), width=6)
    dial = _thermometer(60)
    shot.fill(
        [(10.0, -8.2, 0.02), (15.9, -8.2, 0.02), (15.9, -2.4, 0.02), (10.0, -2.4, 0.02)], (6, 5, 4), 150, 18
    )
    shot.lay(dial, (9.7, -8.0, 0.1), (1, 0, 0), (0, 1, 0), 60)
    return finish(reduce(shot), focus=(0.1, 0.92), seed="bend")


def _bent(share: float) -> tuple[float, float]:
    """Return y and height of the shingle laid over the board, from its lower edge to its upper one [in]."""
    y = (share - 0.5) * 9.6
    return y, 3.35 - (abs(y) / 4.8) ** 1.35 * 3.0


def _thermometer(ppi: int) -> Image.Image:
    size = 6 * ppi
    picture = Image.new("RGBA", (size, size))
    flat = Flat((-3, -3, 3, 3), ppi, (240, 238, 230))
    for degrees in range(0, 121, 10):
        a = math.radians(225 - degrees / 120 * 270)
        long = 0.4 if degrees % 20 == 0 else 0.24
        flat.line(
            [
                (2.5 * math.cos(a), 2.5 * math.sin(a)),
                ((2.5 - long) * math.cos(a), (2.5 - long) * math.sin(a)),
            ],
            INK,
            0.06,
        )
        if degrees % 20 == 0:
            flat.text(str(degrees), 1.72 * math.cos(a), 1.72 * math.sin(a), 0.34, INK, bold=0.05)
    a = math.radians(225 - 58 / 120 * 270)
    flat.line(
        [(-0.5 * math.cos(a), -0.5 * math.sin(a)), (2.2 * math.cos(a), 2.2 * math.sin(a))],
        (186, 36, 28),
        0.12,
    )
    flat.disc(0, 0, 0.22, (60, 60, 62))
    flat.text("58 F", 0, -1.5, 0.62, (30, 30, 32), bold=0.06)
    mask = Image.new("L", (size, size))
    ImageDraw.Draw(mask).ellipse((4, 4, size - 5, size - 5), fill=255)
    picture.paste(flat.picture, (0, 0), mask)
    ImageDraw.Draw(picture).ellipse((4, 4, size - 5, size - 5), outline=(70, 74, 78, 255), width=14)
    return picture


def pitch() -> Image.Image:
    """A level laid out 12 in from the roof and a tape down to it: 5 in."""
    shot = Shot((-24, -6.5, 12.0), (0.2, 0.6, 3.2), 52)
    outdoors(shot)
    flat = Flat((-60, -40, 60, 60), 20)
    flat.picture = stuff.three_tab(flat)
    up = (0.0, 12 / 13, 5 / 13)
    shot.lay(flat.picture, (-60, -40 * 12 / 13, -40 * 5 / 13), (1, 0, 0), up, 20)
    shot.fill([(0.2, -12, -4.9), (2.4, -12, -4.9), (2.8, 12, 5.1), (0.6, 12, 5.1)], (12, 10, 8), 150, 30)
    strip = tape(90, 0, 8.2, wide_in=1.0, finest=8)
    z = 5.0
    body = Flat((0, 0, 24, 2.2), 50, (182, 44, 36))
    body.poly([(0, 0), (24, 0), (24, 0.5), (0, 0.5)], (226, 218, 200))
    for inch in range(1, 24):
        body.line([(inch, 0), (inch, 0.5 if inch == 12 else 0.26)], INK, 0.05)
        body.text(str(inch), inch - 0.3, 0.28, 0.26, INK, bold=0.04)
    for x in (6.5, 18.0):
        body.poly([(x - 1.6, 0.75), (x + 1.6, 0.75), (x + 1.6, 1.95), (x - 1.6, 1.95)], (196, 220, 72))
        body.poly([(x - 0.45, 0.9), (x + 0.45, 0.9), (x + 0.45, 1.8), (x - 0.45, 1.8)], (234, 246, 160))
    red = m.plain((300, 120), (182, 44, 36), "level", [(60, 60)])
    shot.box((0.0, -12.0, z), ((1.1, 0, 0), (0, 24, 0), (0, 0, 2.2)), red, 50)
    shot.lay(body.picture, (-0.02, 12.0, z), (0, -1, 0), (0, 0, 1), 50)
    shot.lay(strip.rotate(90, expand=True), (-0.14, 0.5, 0.1), (0, -1, 0), (0, 0, 1), 90)
    return finish(reduce(shot), seed="hip pitch", focus=(0.05, 0.95))


def _attic(
    deck: Flat,
    *,
    eye: tuple[float, float, float],
    target: tuple[float, float, float],
    fov: float,
    torch: Point,
) -> Image.Image:
    """Return the attic under a slope: x along the eave [in], the deck rises away from the eye."""
    shot = Shot(eye, target, fov, sky=(10, 8, 7))
    wool = shaded(m.wool((1700, 1500), 6), 0.5)
    shot.lay(wool, (-170, -60, -30), (1, 0, 0), (0, 1, 0), 5)
    up = (0.0, 12 / 13, 5 / 13)
    at = (deck.left, deck.bottom * 12 / 13, deck.bottom * 5 / 13)
    shot.lay(deck.picture, at, (1, 0, 0), up, deck.ppi)
    chord = m.wood((1400, 60), 8, "attic chord", m.OLD_FIR)
    for x in sorted(range(-144, 145, 24), key=lambda v: -abs(v - eye[0])):
        low = (x - 0.75, -60 * 12 / 13, -60 * 5 / 13 - 3.8)
        face = x + 0.75 if eye[0] > x else x - 0.75
        shot.lay(shaded(chord, 0.62), (face, low[1], low[2]), up, (0, 0, 1), 8)
        shot.lay(shaded(chord, 0.9), low, up, (1.5 / 7.5, 0, 0), 8)
    picture = reduce(shot)
    wide, high = picture.size
    beam = Image.radial_gradient("L").resize((round(wide * 1.5), round(wide * 1.5)))
    light = Image.new("L", picture.size, 255)
    light.paste(beam, (round(wide * torch[0] - beam.width / 2), round(high * torch[1] - beam.height / 2)))
    out = shaded(picture, 1.2, (1.04, 1, 0.9))
    out.paste((12, 9, 7), (0, 0), light.point([min(225, max(0, (v - 52) * 1.4)) for v in range(256)]))
    return out


def attic_stain() -> Image.Image:
    """Stains and drip marks on the underside beside the hip."""
    deck = Flat((-150, -60, 150, 150), 9)
    deck.picture = shaded(m.wood(deck.size, 9, "stained underside", m.OLD_PLY), 0.86)
    for y in (0.0, 48.0, 96.0):
        deck.line([(-150, y), (150, y)], (34, 24, 16), 0.6)
    rng = random.Random("attic stain")
    for x, y, radius in ((-6, 30, 17), (26, 52, 13), (-30, 4, 12), (14, 14, 9), (40, 78, 8)):
        blot = []
        for k in range(48):
            a = k * math.pi / 24
            r = radius * (1 + 0.2 * math.sin(3 * a + x) + 0.1 * math.sin(7 * a + y))
            blot.append((x + r * math.cos(a), y + r * 1.2 * math.sin(a)))
        deck.poly(blot, (40, 28, 20), 210, 0.9)
        inner = [(x + (px - x) * 0.86, y + (py - y) * 0.86) for px, py in blot]
        deck.poly(inner, (84, 60, 42), 255, 1.6)
        deck.poly([(x + (px - x) * 0.5, y + (py - y) * 0.5) for px, py in blot], (38, 28, 22), 190, 2.4)
        for _ in range(5):
            px = x + rng.uniform(-radius, radius) * 0.7
            deck.line(
                [(px, y), (px + rng.uniform(-2, 2), y - radius * rng.uniform(1.2, 2.2))],
                (44, 32, 24),
                1.1,
                170,
                0.4,
            )
    for _ in range(26):
        deck.disc(
            rng.uniform(-50, 60), rng.uniform(-20, 90), rng.uniform(0.4, 1.0), (206, 204, 192), 120, 0.3
        )
    picture = _attic(deck, eye=(10, -30, -32), target=(2, 26, 8), fov=74, torch=(0.5, 0.45))
    return finish(picture, seed="attic stain", vignette=0.15)


def attic_points() -> Image.Image:
    """Points of the shingle nails through the deck, in rows a course apart."""
    deck = Flat((-80, -40, 80, 110), 16)
    deck.picture = shaded(m.wood(deck.size, 16, "pointed underside", m.OLD_PLY), 0.95)
    for y in (0.0, 48.0, 96.0):
        deck.line([(-80, y), (80, y)], (34, 24, 16), 0.5)
        deck.line([(-80, y), (80, y)], (96, 98, 100), 0.3, 160)
    rng = random.Random("points")
    row = -38.0
    while row < 108:
        x = -80.0 + rng.uniform(0, 6)
        while x < 80:
            y = row + rng.uniform(-0.3, 0.3)
            deck.line([(x, y), (x + 0.9, y - 1.5)], (20, 14, 10), 0.36, 150, 0.1)
            deck.line([(x, y), (x + 0.2, y - 0.9)], (214, 217, 218), 0.34)
            deck.disc(x, y, 0.34, (60, 44, 30), 180, 0.1)
            x += 7.5 + rng.uniform(-0.4, 0.4)
        row += m.EXPOSURE_IN
    picture = _attic(deck, eye=(3, -22, -26), target=(9, 12, 4), fov=66, torch=(0.52, 0.45))
    return finish(picture, seed="attic points", vignette=0.15)


def drain_pan() -> Image.Image:
    """The call in August: the drain pan under the air handler is full, the deck above it dry."""
    shot = Shot((-26, -62, 34), (4, 8, 8), 54, sky=(14, 11, 9))
    shot.lay(shaded(m.wool((1700, 1500), 6), 0.55), (-150, -100, -4), (1, 0, 0), (0, 1, 0), 5)
    deck = Flat((-150, 0, 150, 110), 9)
    deck.picture = shaded(m.wood(deck.size, 9, "pan underside", m.OLD_PLY), 0.8)
    for x in range(-144, 150, 24):
        deck.line([(x, 0), (x, 110)], (92, 70, 48), 3)
        deck.line([(x + 1.7, 0), (x + 1.7, 110)], (30, 22, 15), 0.7)
    shot.lay(deck.picture, (-150, 92, -6), (1, 0, 0), (0, -12 / 13, 10 / 13), 9)
    for y in (-26.0, 30.0):
        shot.box(
            (-60, y, -3),
            ((130, 0, 0), (0, 1.5, 0), (0, 0, 3)),
            m.wood((1300, 60), 10, "platform", m.OLD_FIR),
            10,
        )
    pan = m.metal((700, 400), "pan", tone=(178, 182, 186))
    shot.box((-34, -18, 0), ((72, 0, 0), (0, 40, 0), (0, 0, 3)), pan, 10)
    shot.fill([(-33, -17, 2.9), (37, -17, 2.9), (37, 21, 2.9), (-33, 21, 2.9)], (92, 112, 122))
    rng = random.Random("pan water")
    for _ in range(60):
        at_x, at_y = rng.uniform(-32, 34), rng.uniform(-16.5, 20)
        shot.stroke([(at_x, at_y, 2.95), (at_x + rng.uniform(1, 5), at_y, 2.95)], (168, 188, 198), 5)
    unit = m.plain((700, 400), (196, 200, 202), "unit", [(200, 120)])
    shot.box((-24, -8, 3), ((52, 0, 0), (0, 22, 0), (0, 0, 21)), unit, 12)
    plate = Flat((0, 0, 50, 20), 14, (204, 208, 210))
    for left in (2.0, 27.0):
        right = left + 21
        plate.line(
            [(left, 1.5), (right, 1.5), (right, 18.5), (left, 18.5), (left, 1.5)], (120, 124, 128), 0.4
        )
    plate.text("AIR HANDLER", 12.6, 13, 1.7, (60, 66, 72), bold=0.05)
    shot.lay(shaded(plate.picture, 0.92), (-23, -8.05, 3.4), (1, 0, 0), (0, 0, 1), 14)
    pipe = [(-33.5, -10, 1.6), (-48, -10, 1.0), (-70, -9, -1)]
    rod(shot, shot.at(pipe[0]), shot.at(pipe[2]), 54, 60, (236, 236, 230))
    tag = paper_label((13, 4.6), 40, [("drain plugged", 2.9, 1.2, INK), ("August 11, 2026", 1.1, 0.9, INK)])
    shot.lay(tag.picture, (-24, -18.6, 0.4), (1, 0, 0), (0, -0.2, 0.98), 40)
    picture = reduce(shot)
    lit = shaded(picture, 1.1, (1.03, 1.0, 0.93))
    fall = Image.radial_gradient("L").resize((2500, 2100)).crop((480, 380, 2080, 1580))
    lit.paste((12, 10, 8), (0, 0), fall.point([max(0, min(215, round((v - 60) * 1.3))) for v in range(256)]))
    return finish(lit, seed="pan", vignette=0.15)
