"""Photos of the covering taken close up: starter, wrappers, shingles, pipes, vents and caps."""

import math

from PIL import Image, ImageDraw

from .. import materials as m
from ..camera import Colour, Shot, plus, shaded
from ..flat import Flat, grain, speckled
from ..garden import outdoors, reduce
from ..tools import INK, RED, finish, lay_tape, nail, nail_head, paper_label, tape
from ..views_framing import rod
from ..views_near import looked_down
from . import stuff
from .dry_in import eave, metal

PENCIL: Colour = (52, 50, 48)
GREEN: Colour = (34, 92, 70)
PAPER: Colour = (240, 237, 226)
WHITE: Colour = (244, 244, 240)


def starter() -> Image.Image:
    """Starter along the eave: seal strip at the eave, 1/2 in past the metal on the tape."""
    flat = eave((-12, -7, 22, 18), 92, "starter eave")
    flat.skin([(-12, 0), (22, 0), (22, 18), (-12, 18)], m.felt(flat, "starter felt"))
    metal(flat, -12, 22, "starter metal", high=0.4)
    strip = m.plain(flat.size, (84, 90, 98), "starter strip", [(3, 3), (200, 90)])
    flat.line([(-12, -0.9), (22, -0.9)], (6, 6, 6), 0.6, 170, 0.2)
    flat.skin([(-12, -0.8), (22, -0.8), (22, 6.2), (-12, 6.2)], strip)
    flat.line([(-12, 6.2), (22, 6.2)], (30, 30, 30), 0.12)
    flat.line([(-12, 0.1), (22, 0.1)], (22, 22, 24), 0.75, 220, 0.05)
    for bead in range(-12, 22):
        flat.line([(bead, 0.1), (bead + 0.55, 0.1)], (50, 52, 56), 0.5, 200, 0.05)
    flat.line([(9.0, -0.8), (9.0, 6.2)], (24, 24, 26), 0.12)
    for x in (-9.0, -3.5, 2.0, 7.6, 10.6, 16.0):
        nail_head(flat, x, 2.0, 0.19)
    first = stuff.slate(flat)
    flat.line([(-12, 5.0), (1.6, 5.0), (1.6, -1.0)], (8, 8, 8), 0.6, 150, 0.2)
    flat.skin([(-12, -1.05), (1.6, -1.05), (1.6, 12.2), (-12, 12.2)], first)
    flat.skin([(-12, 5.6), (1.6, 5.6), (1.6, 12.2), (-12, 12.2)], strip)
    for y in (5.9, 6.9):
        flat.line([(-12, y), (1.6, y)], (214, 214, 206), 0.1)
    shot = looked_down(flat, (5.5, 2.4), 22, lean_deg=30, turn_deg=-8)
    return finish(reduce(shot), focus=(0.12, 0.88), seed="starter")


def wrap(lot: str, ppi: float, head: Colour = GREEN) -> Flat:
    """Return the printed wrapper of a bundle of one lot."""
    paper = Flat((0, 0, 26, 13), ppi, PAPER)
    paper.poly([(0, 9.4), (26, 9.4), (26, 13), (0, 13)], head)
    paper.text("Marshgate Roofing Mill", 13, 11.75, 1.05, WHITE, bold=0.05)
    paper.text("laminated shingles   harbor slate", 13, 10.15, 0.62, (226, 232, 222), bold=0.03)
    paper.text("CLASS H", 6.6, 7.4, 1.5, RED, bold=0.08)
    paper.text("ASTM D7158", 6.6, 5.4, 0.85, INK, bold=0.04)
    paper.text("HIGH WIND", 19.3, 7.7, 0.8, INK, bold=0.05)
    paper.text("6 nails each shingle", 19.3, 6.3, 0.75, INK, bold=0.04)
    paper.text("covers 32.8 sq ft", 19.3, 4.9, 0.75, INK, bold=0.04)
    paper.line([(13.2, 4.2), (13.2, 8.7)], (150, 146, 136), 0.07)
    paper.line([(0.6, 3.6), (25.4, 3.6)], (120, 116, 106), 0.07)
    paper.text(f"LOT {lot}", 13, 1.8, 1.25, (40, 44, 60), bold=0.06)
    paper.picture = speckled(paper.picture, grain(f"folds {lot}", paper.size, (520, 90)), 12)
    paper.picture = speckled(paper.picture, grain(f"creases {lot}", paper.size, (60, 600)), 8)
    return paper


def wrapper() -> Image.Image:
    """The wrapper of a bundle: maker, class, nails for high wind, lot."""
    flat = Flat((-6, -6, 36, 26), 76)
    flat.picture = m.felt(flat, "wrapper felt")
    flat.poly([(1.2, -1.6), (30, 0.2), (29.6, 15.2), (0.6, 13.4)], (10, 10, 10), 170, 0.5)
    flat.put(wrap("M-06C-1127", 76).picture.convert("RGBA"), 14.6, 8, 3, 0.3)
    return finish(
        reduce(looked_down(flat, (14.6, 8.2), 30, lean_deg=16)), focus=(0.08, 0.92), seed="hip wrapper"
    )


def two_lots() -> Image.Image:
    """Bundles of both lots on the drive, the lots on their ends."""
    shot = Shot((17, -76, 40), (19, 6, 11), 58, sky=(120, 124, 128))
    shot.lay(
        m.plain((2200, 1900), (168, 164, 156), "lot drive", [(3, 3), (90, 70), (400, 300)]),
        (-120, -90, 0),
        (1, 0, 0),
        (0, 1, 0),
        9,
    )
    shot.lay(m.grass((2400, 900), "lot lawn", 5), (-120, 90, 0), (1, 0, 0), (0, 1, 0), 9)
    pallet = m.wood((700, 120), 14, "pallet", m.OLD_FIR)
    for side, lot, rows, colour in ((-24.0, "M-06C-1127", 7, GREEN), (22.0, "M-06C-1131", 5, (36, 74, 118))):
        shot.fill(
            [(side - 3, -3, 0.1), (side + 41, -3, 0.1), (side + 41, 18, 0.1), (side - 3, 18, 0.1)],
            (30, 30, 30),
            150,
            18,
        )
        for y in (0.0, 6.0, 12.0):
            shot.box((side, y, 0), ((38, 0, 0), (0, 3, 0), (0, 0, 4)), pallet, 14)
        for row in range(rows):
            z = 4.0 + row * 3.1
            jog = ((row * 37) % 5 - 2) * 0.25
            face = Flat((0, 0, 38, 3), 40, PAPER)
            face.poly([(0, 0), (7, 0), (7, 3), (0, 3)], colour)
            face.text("LOT " + lot, 21.5, 1.5, 1.35, INK, bold=0.06)
            face.text("H", 3.5, 1.5, 1.6, WHITE, bold=0.08)
            face.speckle(f"bundle {lot} {row}", 1.4, 8)
            top = Flat((0, 0, 38, 13), 20, PAPER)
            top.poly([(0, 8), (38, 8), (38, 13), (0, 13)], colour)
            top.text("Marshgate Roofing Mill", 19, 10.4, 1.5, WHITE, bold=0.05)
            top.speckle(f"top {lot}", 2.2, 8)
            shot.box(
                (side + jog, 0, z),
                ((38, 0, 0), (0, 13, 0), (0, 0, 2.9)),
                m.plain((800, 300), PAPER, "bundle side", [(60, 40)]),
                20,
            )
            shot.lay(shaded(face.picture, 0.9), (side + jog, -0.03, z), (1, 0, 0), (0, 0, 1), 40)
            if row == rows - 1:
                shot.lay(top.picture, (side + jog, 0, z + 2.92), (1, 0, 0), (0, 1, 0), 20)
    return finish(reduce(shot), seed="two lots")


def six_nails() -> Image.Image:
    """Six nails in the nail line of one shingle, numbered, a tape along it."""
    flat = Flat((-12, -20, 52, 28), 52)
    e = m.EXPOSURE_IN
    flat.picture = m.felt(flat, "hip open felt")
    course = stuff.slate(flat)
    high = 13.25
    flat.skin([(-12, -20), (52, -20), (52, 0), (-12, 0)], course)
    flat.line([(-12, high), (52, high)], (8, 8, 8), 0.6, 150, 0.2)
    head = m.plain(flat.size, (76, 82, 90), "hip headlap", [(4, 4), (200, 90)])
    flat.skin([(-12, 0), (52, 0), (52, high), (-12, high)], head)
    flat.skin([(-12, 0), (52, 0), (52, e), (-12, e)], course)
    flat.poly([(-12, e + 0.15), (52, e + 0.15), (52, e + 1.2), (-12, e + 1.2)], (112, 118, 126))
    for y in (e + 0.15, e + 1.2):
        flat.line([(-12, y), (52, y)], (224, 222, 206), 0.12)
    spots = (1.0, 8.4, 15.9, 23.4, 30.9, 38.375)
    for x in (0.0, 39.375):
        flat.line([(x, 0), (x, high)], (18, 18, 20), 0.2)
    for k, x in enumerate(spots, 1):
        nail_head(flat, x, e + 0.68, 0.28)
        flat.line([(x, e + 1.6), (x - 0.25, e + 2.2)], (236, 206, 92), 0.1)
        flat.chalk(str(k), x, e + 3.4, 1.7, (236, 206, 92))
    for x in (-1.0, -8.4, 40.4, 47.8):
        nail_head(flat, x, e + 0.68, 0.28)
    lay_tape(flat, 0, e - 0.6, 44, side=1, wide_in=1.2, finest=4, shadow=0.12)
    shot = looked_down(flat, (19.7, 4.2), 44, lean_deg=20, turn_deg=3)
    return finish(reduce(shot), focus=(0.26, 0.74), light=1.06, seed="hip six")


def roofing_nail() -> Image.Image:
    """The shingle nail on the tape: 1-1/2 in long, head 3/8 in; the carton above."""
    flat = Flat((-3.6, -3.6, 6, 7), 290)
    flat.picture = shaded(stuff.slate(flat), 1.1)
    carton = paper_label(
        (6.4, 2.6),
        290,
        [
            ("ROOFING NAILS 1-1/2", 1.75, 0.42, GREEN),
            ("shank .120   head 3/8", 1.0, 0.36, INK),
            ("hot-dip galvanized", 0.38, 0.22, INK),
        ],
        paper=(222, 200, 158),
    )
    flat.put(carton.picture.convert("RGBA"), 1.3, 2.9, 2, 0.16)
    lay_tape(flat, 0, -0.3, 5.2, shadow=0.05)
    flat.put(nail(290, 1.5, 0.120, ring=False, head_in=0.375), 0.75, 0.0, 0, 0.05)
    flat.disc(3.3, 0.75, 0.2, (16, 14, 14), 150, 0.06)
    flat.disc(3.3, 0.8, 0.1875, (170, 174, 176))
    flat.disc(3.26, 0.84, 0.1, (206, 208, 210), 180, 0.03)
    flat.put(nail(290, 1.5, 0.120, ring=False, head_in=0.375), 0.2, 1.2, 24, 0.05)
    return finish(
        reduce(looked_down(flat, (1.35, 1.4), 7.6, lean_deg=10)), focus=(0.08, 0.92), seed="roofing nail"
    )


def pipe_boot() -> Image.Image:
    """New boot on a pipe, the shingles cut around it, its lower edge over the course below."""
    flat = Flat((-34, -24, 34, 62), 38)
    flat.picture = stuff.slate(flat)
    base = (96, 100, 104)
    flat.poly([(-5.5, -6.6), (5.8, -6.6), (5.8, 6), (-5.5, 6)], (6, 6, 8), 170, 0.5)
    flat.poly([(-5.5, -6), (5.5, -6), (5.5, 6), (-5.5, 6)], base)
    flat.line([(-5.5, -6), (5.5, -6)], (170, 174, 176), 0.2)
    over = stuff.slate(flat)
    cut = [(-34, 0.0), (-3.6, 0.0)]
    arc = [(3.6 * math.cos(a / 12), 3.6 * math.sin(a / 12)) for a in range(38, -1, -1)]
    cut += [*arc, (34, 0.0), (34, 62), (-34, 62)]
    flat.line([(-34, -0.2), (-3.6, -0.2), *arc, (34, -0.2)], (8, 8, 8), 0.5, 160, 0.15)
    flat.skin(cut, over)
    shot = looked_down(flat, (0.5, 1.6), 21, lean_deg=36, turn_deg=12, portrait=True)
    tilt = (0.0, -5 / 13, 12 / 13)
    foot = (0.0, 0.0, 0.0)
    for low, high, thin, thick, tone in (
        (0.0, 0.7, 5.4, 4.6, (60, 62, 64)),
        (0.7, 2.6, 4.6, 2.5, (50, 52, 54)),
        (2.6, 3.1, 2.9, 2.9, (64, 66, 68)),
        (3.0, 11.0, 2.0, 2.0, (232, 232, 226)),
    ):
        a, b = plus(foot, tilt, low), plus(foot, tilt, high)
        scale = shot.focal / 23
        rod(shot, shot.at(a), shot.at(b), thin * scale, thick * scale, tone)
    x, y = shot.at(plus(foot, tilt, 11.0))
    scale = shot.focal / 19
    pen = ImageDraw.Draw(shot.picture)
    pen.ellipse((x - scale, y - scale * 0.42, x + scale, y + scale * 0.42), fill=(240, 240, 236))
    pen.ellipse((x - scale * 0.78, y - scale * 0.3, x + scale * 0.78, y + scale * 0.3), fill=(34, 34, 36))
    return finish(reduce(shot), focus=(0.1, 0.92), seed="boot")


def bath_hood() -> Image.Image:
    """New hood of the bath fan, its flange under the upper courses."""
    flat = Flat((-52, -26, 52, 64), 30)
    flat.picture = stuff.slate(flat)
    flat.poly([(-7.5, -8.4), (7.8, -8.4), (7.8, 8), (-7.5, 8)], (6, 6, 8), 170, 0.5)
    flat.poly([(-7.5, -8), (7.5, -8), (7.5, 8), (-7.5, 8)], (72, 76, 82))
    flat.line([(-7.5, -8), (7.5, -8)], (150, 154, 158), 0.2)
    over = stuff.slate(flat)
    cut = [
        (-52.0, 0.0),
        (-5.2, 0.0),
        (-5.2, 5.8),
        (5.2, 5.8),
        (5.2, 0.0),
        (52.0, 0.0),
        (52.0, 64.0),
        (-52.0, 64.0),
    ]
    flat.line(cut[:6], (8, 8, 8), 0.5, 160, 0.15)
    flat.skin(cut, over)
    shot = looked_down(flat, (1.5, 0.6), 36, lean_deg=46, turn_deg=-24)
    skin = m.plain((500, 300), (78, 84, 92), "bath hood", [(60, 60)])
    shot.fill(
        [(-4.6, -5.4, 0.05), (5.2, -5.4, 0.05), (5.6, 4.6, 0.05), (-4.0, 4.6, 0.05)], (6, 6, 8), 170, 14
    )
    shot.box((-4.5, -4.6, 0), ((9, 0, 0), (0, 9, 0), (0, 0, 4.2)), skin, 30)
    shot.fill([(-4.3, -4.63, 0.2), (4.3, -4.63, 0.2), (4.3, -4.63, 3.6), (-4.3, -4.63, 3.6)], (20, 22, 24))
    for k in range(13):
        x = -4.0 + k * 0.667
        shot.stroke([(x, -4.66, 0.2), (x, -4.66, 3.6)], (120, 126, 132), 4)
    shot.fill([(-5.0, -5.6, 3.9), (5.0, -5.6, 3.9), (4.6, 4.6, 4.35), (-4.6, 4.6, 4.35)], (104, 110, 118))
    shot.stroke([(-5.0, -5.6, 3.9), (5.0, -5.6, 3.9)], (160, 166, 172), 6)
    return finish(reduce(shot), focus=(0.1, 0.9), seed="hood")


def ridge_vent() -> Image.Image:
    """The slot along the ridge, the vent going on, its carton: 18 sq in a foot."""
    shot = Shot((11, -38, 32), (15, 0.0, -3.0), 54, sky=(140, 170, 200))
    outdoors(shot)
    ppi = 22
    for side in (1, -1):
        flat = Flat((-60, 0, 90, 70), ppi)
        flat.picture = shaded(stuff.slate(flat), 1.04 if side == 1 else 0.8)
        flat.poly([(-60, 69.0), (90, 69.0), (90, 70), (-60, 70)], (8, 8, 8))
        start = (-60.0, -70 * 12 / 13 * side, -70 * 5 / 13)
        up = (0.0, 12 / 13 * side, 5 / 13)
        shot.lay(flat.picture, start, (1, 0, 0), up, ppi)
    shot.fill([(-60, -0.9, -0.35), (90, -0.9, -0.35), (90, 0.9, -0.35), (-60, 0.9, -0.35)], (8, 7, 7))
    for x in range(-52, 90, 24):
        shot.fill(
            [(x, -0.8, -0.3), (x + 1.5, -0.8, -0.3), (x + 1.5, 0.8, -0.3), (x, 0.8, -0.3)], (150, 116, 76)
        )
    for near in (1, -1):
        edge = near * -5.6
        low = -abs(edge) * 5 / 12
        a = [(12, edge, low + 0.1), (90, edge, low + 0.1), (90, 0, 1.1), (12, 0, 1.1)]
        shot.fill(a, (58, 62, 66) if near == 1 else (44, 47, 50))
        if near == 1:
            shot.fill(
                [
                    (12, edge, low - 0.05),
                    (90, edge, low - 0.05),
                    (90, edge, low + 0.85),
                    (12, edge, low + 0.85),
                ],
                (34, 36, 38),
            )
            for k in range(150):
                rib = 12 + k * 0.52
                shot.stroke([(rib, edge - 0.02, low), (rib, edge - 0.02, low + 0.75)], (86, 90, 94), 3)
            shot.fill(
                [(12, edge, low + 0.85), (90, edge, low + 0.85), (90, 0, 1.7), (12, 0, 1.7)], (62, 66, 70)
            )
            for k in range(7):
                x = 16 + k * 12
                shot.fill(
                    [(x, -4.6, -0.7), (x + 0.5, -4.6, -0.7), (x + 0.5, -4.2, -0.55), (x, -4.2, -0.55)],
                    (176, 180, 182),
                )
    carton = Flat((0, 0, 26, 9), 40, (204, 176, 130))
    carton.text("RIDGE VENT  4 ft", 13, 6.9, 1.2, INK, bold=0.06)
    carton.text("net free area", 13, 4.7, 0.8, INK, bold=0.04)
    carton.text("18 sq in per foot", 13, 2.6, 1.35, RED, bold=0.06)
    carton.speckle("vent carton", 0.5, 6)
    corner = (-7.0, -12.5, -5.0)
    plain = m.plain((1040, 360), (204, 176, 130), "carton side", [(60, 40)])
    shot.box(corner, ((26, 0, 0), (0, 3, 1.25), (0, -1.2, 9)), plain, 40)
    shot.lay(carton.picture, plus(corner, (0, -0.05, 0)), (1, 0, 0), (0, -1.2 / 9, 1.0), 40)
    return finish(reduce(shot), seed="ridge vent")


def hip_caps() -> Image.Image:
    """Caps up a hip: each over the one below, 5-5/8 in to the weather on the tape."""
    shot = Shot((-8.5, -17, 13), (0.2, 4.0, -1.0), 46, portrait=True)
    outdoors(shot)
    ppi = 30
    for side in (-1, 1):
        flat = Flat((0, -30, 60, 60), ppi)
        flat.picture = shaded(stuff.slate(flat), 1.05 if side < 0 else 0.84)
        shot.lay(flat.picture, (0, -30, 0), (side * 0.94, 0, -0.34), (0, 1, 0), ppi)
    e = m.EXPOSURE_IN
    for k in range(9, -6, -1):
        y = k * e
        tone = 0.84 + 0.34 * ((k * 37) % 7) / 6
        for side in (-1, 1):
            light = (1.14 if side < 0 else 0.86) * tone
            flat = Flat((0, 0, 6, 12), 40)
            flat.picture = shaded(stuff.slate(Flat((0, k * 17.0, 6, k * 17.0 + 12), 40)), light)
            flat.line([(0, 0.15), (6, 0.15)], (14, 14, 16), 0.5)
            shot.fill(
                [
                    (0, y - 0.3, 0.1),
                    (side * 5.9, y - 0.3, -2.0),
                    (side * 5.9, y + 0.3, -2.0),
                    (0, y + 0.3, 0.1),
                ],
                (10, 10, 12),
                150,
                6,
            )
            shot.lay(flat.picture, (0, y, 0.42), (side * 0.94, 0, -0.34), (0, 0.999, -0.034), 40)
    strip = tape(60, 0, 13, wide_in=1.1, finest=8)
    shot.lay(strip, (-2.0, 0.0, -0.1), (0, 1, 0), (-0.94, 0, -0.34), 60)
    return finish(reduce(shot), seed="caps", focus=(0.06, 0.94))


def soffit_strip() -> Image.Image:
    """The strip in the soffit: 9 sq in a foot on its label."""
    shot = Shot((10, -30, -26), (14, 6.0, -3.4), 56, sky=(150, 176, 204))
    wall = Flat((-60, -60, 100, 0), 14)
    wall.picture = m.siding(wall, (198, 206, 208))
    wall.poly([(-60, -9), (100, -9), (100, 0), (-60, 0)], (30, 34, 36), 110, 3)
    shot.lay(shaded(wall.picture, 0.8), (-60, 12, -60), (1, 0, 0), (0, 0, 1), 14)
    soffit = Flat((-60, 0, 100, 12), 30)
    soffit.picture = m.plain(soffit.size, (222, 224, 220), "soffit", [(4, 4), (300, 60)])
    soffit.poly([(-60, 3.2), (100, 3.2), (100, 6.4), (-60, 6.4)], (236, 238, 236))
    for row in (3.9, 4.5, 5.1, 5.7):
        for k in range(200):
            x = -60 + k * 0.8
            soffit.line([(x, row), (x + 0.55, row)], (46, 48, 50), 0.18)
    soffit.line([(-60, 3.2), (100, 3.2)], (150, 152, 150), 0.14)
    soffit.line([(-60, 6.4), (100, 6.4)], (150, 152, 150), 0.14)
    soffit.line([(38, 3.2), (38, 6.4)], (120, 122, 120), 0.12)
    for k in range(12):
        for y in (3.5, 6.1):
            soffit.disc(-58 + k * 12, y, 0.14, (150, 154, 156))
    shot.lay(
        shaded(soffit.picture, 0.9).transpose(Image.Transpose.FLIP_TOP_BOTTOM),
        (-60, 12, 0),
        (1, 0, 0),
        (0, -1, 0),
        30,
    )
    shot.fill([(-60, 0, 0), (100, 0, 0), (100, 0, 6), (-60, 0, 6)], (238, 240, 238))
    shot.stroke([(-60, 0, 0), (100, 0, 0)], (120, 122, 120), 6)
    label = paper_label(
        (13, 5.2),
        60,
        [
            ("SOFFIT STRIP", 3.9, 0.95, INK),
            ("net free area", 2.5, 0.6, INK),
            ("9 sq in per foot", 1.15, 0.95, RED),
        ],
    )
    shot.lay(label.picture, (8, 11.9, -12.5), (1, 0, 0), (0, 0, 1), 60)
    return finish(reduce(shot), seed="soffit strip")
