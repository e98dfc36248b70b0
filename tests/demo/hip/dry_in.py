"""Photos of the metal at the eave and of the felt, taken close up."""

import math

from PIL import Image, ImageDraw, ImageFilter

from .. import materials as m
from ..camera import Colour, shaded
from ..flat import Flat
from ..garden import reduce
from ..tools import INK, RED, cap, finish, lay_tape, nail_head
from ..views_near import looked_down
from . import stuff

PENCIL: Colour = (52, 50, 48)
GREEN: Colour = (34, 92, 70)
PAPER: Colour = (240, 237, 226)
WHITE: Colour = (244, 244, 240)


def eave(window: tuple[float, float, float, float], ppi: float, seed: str) -> Flat:
    """Return the edge of the deck at the eave: ground below, deck above, the edge of the deck at zero."""
    flat = Flat(window, ppi)
    flat.picture = m.plywood(flat, seed, m.OLD_PLY, patches=2)
    low, left, right = window[1], window[0], window[2]
    ground = m.grass(flat.size, f"{seed} ground", 14).filter(ImageFilter.GaussianBlur(ppi / 9))
    flat.skin([(left, low), (right, low), (right, -0.2), (left, -0.2)], ground)
    return flat


def metal(flat: Flat, left: float, right: float, seed: str, high: float = 2.2) -> None:
    """Lay a piece of drip edge along the eave."""
    piece = m.metal(flat.size, seed, tone=(214, 217, 219))
    flat.line([(left, high), (right, high)], (26, 20, 14), 0.22, 140, 0.08)
    flat.skin([(left, -0.3), (right, -0.3), (right, high), (left, high)], piece)
    flat.poly([(left, -0.3), (right, -0.3), (right, 0.05), (left, 0.05)], (255, 255, 255), 130, 0.08)
    flat.poly([(left, -0.75), (right, -0.75), (right, -0.3), (left, -0.3)], (128, 132, 134))


def drip_lap() -> Image.Image:
    """The lap of two pieces of drip edge, 3 in, marked in pencil."""
    flat = eave((-9, -5, 11, 12), 130, "hip eave")
    metal(flat, -9, 3.0, "hip drip low")
    flat.line([(0, -0.7), (0, 2.2)], (20, 20, 22), 0.2, 170, 0.08)
    metal(flat, 0, 11, "hip drip high")
    flat.line([(0.02, -0.3), (0.02, 2.2)], (250, 251, 252), 0.05)
    flat.line([(3, 0.3), (3, 2.2)], PENCIL, 0.05)
    flat.text("lap", 1.5, 1.75, 0.3, PENCIL, bold=0.02)
    for x in (-6.5, -2.5, 1.5, 5.5, 9.5):
        nail_head(flat, x, 1.05, 0.17)
    lay_tape(flat, 0, 3.5, 9, side=1, shadow=0.08)
    shot = looked_down(flat, (1.6, 1.9), 9.6, lean_deg=22, turn_deg=7, portrait=True)
    return finish(reduce(shot), focus=(0.15, 0.85), seed="hip lap")


def drip_nails() -> Image.Image:
    """Nails of the drip edge, 4 in apart on the tape."""
    flat = eave((-8, -8, 25, 16), 98, "hip eave nails")
    metal(flat, -8, 25, "hip drip nails")
    for k in range(-2, 7):
        nail_head(flat, k * 4.0, 1.35 + (k % 3 - 1) * 0.08, 0.18)
    lay_tape(flat, 0, 3.35, 21, side=1, shadow=0.1)
    stuff_tape = Image.new("RGB", flat.size, stuff.TAPE)
    flat.skin([(9, 2.3), (13, 2.3), (13, 16), (9, 16)], stuff_tape)
    lay_tape(flat, 0, 3.35, 21, side=1, shadow=0.1)
    shot = looked_down(flat, (8.2, 1.5), 21.5, lean_deg=32, turn_deg=-4)
    return finish(reduce(shot), focus=(0.15, 0.88), seed="hip drip nails")


def felt_over_metal() -> Image.Image:
    """The felt over the metal at the eave, its corner turned back: the metal runs on under it to the deck."""
    flat = eave((-10, -7, 16, 14), 112, "order eave")
    metal(flat, -10, 16, "order metal")
    for x in (-7.5, -3.5, 0.5, 4.5, 8.5, 12.5):
        nail_head(flat, x, 1.35, 0.18)
    paper = m.felt(flat, "order felt")
    flat.line([(-10, 0.1), (4.6, 0.1), (9.4, 14)], (8, 8, 8), 0.9, 180, 0.25)
    flat.skin([(-10, 0.3), (4.4, 0.3), (9.2, 14), (-10, 14)], paper)
    flat.line([(-10, 0.32), (4.4, 0.32), (9.2, 14)], (116, 114, 111), 0.08)
    fold = [(4.4, 0.3), (9.2, 14.0), (5.4, 14.0), (1.9, 3.6)]
    flat.poly([(x - 0.3, y - 0.3) for x, y in fold], (6, 6, 6), 150, 0.3)
    flat.skin(fold, shaded(m.felt(flat, "order felt back"), 1.5))
    flat.line([*fold, fold[0]], (132, 130, 126), 0.07)
    for x in (-8.2, -2.2):
        cap(flat, x, 2.0)
    for x in (-5.2,):
        cap(flat, x, 11.0)
    flat.text("felt", -4.6, 5.4, 0.9, (212, 212, 206), bold=0.03)
    flat.text("metal", 12.2, 0.75, 0.5, PENCIL, bold=0.03)
    shot = looked_down(flat, (2.6, 3.4), 19, lean_deg=30, turn_deg=6)
    return finish(reduce(shot), focus=(0.14, 0.9), light=1.06, seed="order")


def felt_label() -> Image.Image:
    """The band on the roll of felt: No. 30, ASTM D226 Type II."""
    flat = Flat((-14, -12, 30, 22), 74)
    flat.picture = m.felt(flat, "label felt")
    flat.line([(-14, 13), (30, 13)], (150, 150, 146), 0.16, 110)
    for x in (-8, 4, 16, 28):
        cap(flat, float(x), 15.5)
    high, wide = round(9 * 74), round(34 * 74)
    roll = Image.new("RGBA", (wide, high))
    pen = ImageDraw.Draw(roll)
    for row in range(high):
        tone = round(22 + 66 * math.sin(math.pi * (row + 1) / (high + 1)) ** 1.4)
        pen.line([(0, row), (wide, row)], fill=(tone, tone, tone, 255))
    band = Flat((0, 0, 19, 9), 74, PAPER)
    band.poly([(0, 6.6), (19, 6.6), (19, 9), (0, 9)], GREEN)
    band.text("ROOFING FELT No. 30", 9.5, 7.7, 1.0, WHITE, bold=0.06)
    band.text("ASTM D226", 9.5, 5.2, 1.25, INK, bold=0.06)
    band.text("TYPE II", 9.5, 3.1, 1.35, RED, bold=0.08)
    band.text("36 in x 72 ft   216 sq ft", 9.5, 1.2, 0.72, INK, bold=0.04)
    shade = (
        Image.linear_gradient("L")
        .resize((band.size[0], band.size[1]))
        .point([round(150 * abs(v / 255 - 0.42) ** 1.5) for v in range(256)])
    )
    band.picture.paste((10, 10, 10), (0, 0), shade)
    roll.paste(band.picture, (round(6.5 * 74), 0))
    flat.put(roll, 9.5, 3.2, 4, 0.7)
    return finish(reduce(looked_down(flat, (8.8, 3.6), 29, lean_deg=18)), focus=(0.1, 0.9), seed="felt label")


def head_lap() -> Image.Image:
    """Head lap of the felt, 4 in on the tape, its lower edge folded back."""
    flat = Flat((-14, -10, 15, 16), 98)
    flat.picture = m.felt(flat, "hip lower felt")
    flat.line([(-14, 4.0), (15, 4.0)], (104, 102, 100), 0.08)
    under = m.plywood(flat, "under the lap", m.OLD_PLY, patches=1)
    flat.skin([(-14, 4.0), (15, 4.0), (15, 16), (-14, 16)], under)
    flat.line([(-14, 4.0), (15, 4.0)], (24, 18, 14), 0.2, 150, 0.08)
    upper = shaded(m.felt(flat, "hip upper felt"), 1.16)
    flat.line([(-14, -0.15), (2.2, -0.15), (6.2, 16)], (6, 6, 6), 1.0, 190, 0.28)
    flat.skin([(-14, 0), (2.2, 0), (6.2, 16), (-14, 16)], upper)
    flat.line([(-14, 0.02), (2.2, 0.02), (6.2, 16)], (122, 120, 117), 0.09)
    flat.poly([(2.2, 0), (6.2, 16), (9.4, 16), (4.4, 2.0)], (84, 82, 80))
    flat.line([(2.2, 0), (4.4, 2.0), (9.4, 16)], (130, 128, 125), 0.08)
    for x in (-12.4, -6.4, -0.4):
        cap(flat, x, 1.7)
    for x in (-9.4, 2.6):
        cap(flat, x, -8.2)
    lay_tape(flat, 9.9, 0, 6.4, angle_deg=90, side=1, shadow=0.12)
    flat.line([(4.6, 0.0), (9.9, 0.0)], m.WHITE_CHALK, 0.08, 200)
    return finish(
        reduce(looked_down(flat, (1.5, 1.6), 20, turn_deg=4)),
        focus=(0.14, 0.88),
        light=1.1,
        seed="hip head lap",
    )


def end_lap() -> Image.Image:
    """End lap of the felt, 6 in on the tape, cap nails along it."""
    flat = Flat((-12, -14, 16, 14), 92)
    flat.picture = m.felt(flat, "end under")
    flat.line([(0.0, -14), (0.0, 14)], (6, 6, 6), 1.0, 200, 0.3)
    over = shaded(m.felt(flat, "end over"), 1.2)
    flat.skin([(0, -14), (16, -14), (16, 14), (0, 14)], over)
    flat.line([(0.03, -14), (0.03, 14)], (128, 126, 122), 0.1)
    flat.line([(6, -14), (6, 14)], m.WHITE_CHALK, 0.1, 210)
    flat.text("end", 7.6, 5.4, 0.8, (222, 222, 216), bold=0.03)
    for y in (-11.5, -5.5, 0.5, 6.5, 12.5):
        cap(flat, 1.6, y)
    for y in (-8.5, 3.5):
        cap(flat, 12.5, y)
    lay_tape(flat, 0, -1.0, 9.2, side=1, shadow=0.12)
    shot = looked_down(flat, (3.2, -0.2), 17, lean_deg=18, turn_deg=-6, portrait=True)
    return finish(reduce(shot), focus=(0.1, 0.9), light=1.1, seed="end lap")


def cap_grid() -> Image.Image:
    """The grid of cap nails: 6 in along the lap on one tape, 12 in between on the other."""
    flat = Flat((-12, -12, 46, 42), 50)
    flat.picture = m.felt(flat, "grid felt")
    flat.line([(-12, -1.4), (46, -1.4)], (6, 6, 6), 1.0, 190, 0.3)
    flat.line([(-12, -1.0), (46, -1.0)], (124, 122, 119), 0.16)
    flat.line([(-12, 16), (46, 16)], (150, 150, 146), 0.2, 110)
    for k in range(-2, 8):
        cap(flat, k * 6.0, 0.6)
    for k in range(-1, 4):
        for row in (12.6, 24.6):
            cap(flat, k * 12.0, row)
            cap(flat, k * 12.0, row)
    lay_tape(flat, 0, -0.3, 31, side=1, wide_in=1.3, finest=4, shadow=0.15)
    lay_tape(flat, 24.8, 0.6, 29, angle_deg=90, side=1, wide_in=1.3, finest=4, shadow=0.15)
    shot = looked_down(flat, (14.5, 11.2), 46, lean_deg=22, turn_deg=2)
    return finish(reduce(shot), focus=(0.06, 0.94), light=1.12, seed="grid")
