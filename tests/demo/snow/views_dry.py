"""Photos of the roof being closed: ice barrier, edge metal, felt, the porch and its tarp."""

import math

from PIL import Image, ImageDraw

from .. import materials as m
from ..camera import Colour, Shot, Vector, plus, shaded, toned
from ..flat import Flat, grain, speckled
from ..garden import reduce
from ..house import board
from ..tools import RED, finish, lay_tape
from ..views_near import PENCIL, looked_down
from . import goods, place
from .goods import rect


def ice_barrier() -> Image.Image:
    """P23: the ice barrier along the eave, a tape from the eave edge up the slope."""
    shot = Shot((9.6, 30.2, 15.6), (12.4, 22.6, 12.6), 58, portrait=True)
    place.outdoors(shot, near=(8, 36, 0))
    place.house(shot, "barrier", "before", ppi=6)
    flat = place.north("barrier", (12, 0, 32, 12), 18)
    lay_tape(flat, 20.6 * 12, 0, 80, angle_deg=90, wide_in=1.8, finest=2)
    place.lay(shot, place.NORTH, flat, 0.98)
    return finish(reduce(shot))


def barrier_top() -> Image.Image:
    """P24: the upper edge of the ice barrier at 72 in on the tape, which is 6 ft."""
    flat = Flat((-14, 58, 16, 86), 80)
    flat.picture = goods.boards(flat, "barrier top deck", goods.OLD_PINE)
    flat.line([(-14, 72.05), (16, 72.05)], (10, 8, 8), 0.4, 170, 0.12)
    flat.skin(rect(-14, 50, 16, 72), m.membrane(flat, "barrier top"))
    flat.line([(-14, 71.96), (16, 71.96)], (146, 154, 164), 0.08)
    flat.line([(-14, 70.4), (16, 70.4)], (206, 208, 206), 0.1, 160)
    lay_tape(flat, -1.2, 58, 28, angle_deg=90, from_in=58, side=1, wide_in=1.25, finest=8, shadow=0.12)
    flat.chalk("6 ft", -6.4, 73.6, 1.7, m.WHITE_CHALK, 2)
    flat.line([(-5.0, 72.0), (-1.5, 72.0)], m.WHITE_CHALK, 0.16, 210, 0.03)
    shot = looked_down(flat, (-0.6, 71.6), 17, lean_deg=20, turn_deg=4)
    return finish(reduce(shot), focus=(0.12, 0.9))


def drip_edge() -> Image.Image:
    """P25: lap of the drip edge over the ice barrier, 3 in."""
    flat = Flat((-9, -8, 12, 9), 130)
    flat.picture = m.membrane(flat, "eave barrier")
    flat.picture = speckled(flat.picture, grain("barrier sheen", flat.size, (500, 180)), 10)
    face = m.wood(flat.size, 130, "new fascia", ((214, 212, 204), (240, 238, 232)), rings=4)
    flat.skin(rect(-9, -8, 12, -1.6), shaded(face, 0.92))
    flat.poly(rect(-9, -3.0, 12, -1.6), (30, 30, 30), 110, 0.5)
    low, top = (
        m.metal(flat.size, "snow drip low", tone=(206, 200, 188)),
        m.metal(flat.size, "snow drip high", tone=(222, 216, 204)),
    )
    for skin, left, right in ((low, -9.0, 3.0), (top, 0.0, 12.0)):
        if skin is top:
            flat.line([(left, -2.0), (left, 2.4)], (14, 14, 14), 0.3, 190, 0.1)
        flat.line([(left, 2.42), (right, 2.42)], (20, 20, 22), 0.2, 120, 0.08)
        flat.skin(rect(left, -1.9, right, 2.4), shaded(skin, 0.97))
        flat.skin(rect(left, -1.9, right, -0.2), shaded(skin, 0.78))
        flat.line([(left, -0.2), (right, -0.2)], (250, 248, 240), 0.09)
        flat.poly(rect(left, -2.15, right, -1.85), (150, 146, 136))
    flat.line([(0.02, -1.9), (0.02, 2.4)], (250, 250, 246), 0.05)
    flat.line([(3.0, 0.5), (3.0, 2.4)], PENCIL, 0.05)
    flat.line([(0.1, 1.9), (2.95, 1.9)], PENCIL, 0.04)
    for x, way in ((0.1, 1), (2.95, -1)):
        flat.line([(x + 0.24 * way, 2.04), (x, 1.9), (x + 0.24 * way, 1.76)], PENCIL, 0.04)
    flat.text("3", 1.5, 2.14, 0.26, PENCIL, bold=0.03)
    lay_tape(flat, 0, 1.36, 12, side=1, shadow=0.08)
    for x in (-5.6, 7.8):
        flat.disc(x, 2.0, 0.19, (176, 180, 182))
        flat.disc(x - 0.04, 2.05, 0.09, (226, 228, 230))
    return finish(reduce(looked_down(flat, (1.6, 0.4), 13.5, lean_deg=20, turn_deg=-2)), focus=(0.1, 0.9))


def felt_on() -> Image.Image:
    """P26: the back slope under ice barrier and felt, with the roll that is left."""
    shot = Shot((5.4, 39.4, 19.6), (16.6, 21.4, 12.2), 58)
    place.outdoors(shot)
    place.house(shot, "felt", "base", ppi=9)
    flat = place.north("felt", (-0.5, -0.3, 34.5, place.SLOPE_FT + 0.3), 12)
    _roll(flat, 250, 72 + 30)
    place.lay(shot, place.NORTH, flat, 0.95)
    board(shot, (0, 26, place.EAVE_FT), (0, 13, place.RIDGE_FT), 0.55, 0.98)
    board(shot, (20, 26, place.EAVE_FT), (0, 26, place.EAVE_FT), 0.62, 0.8)
    place.lay(shot, place.PORCH, place.porch("base", 12), 1.0)
    board(shot, (20, 33, place.PORCH_EAVE_FT), (20, 26, place.EAVE_FT), 0.5, 0.95)
    return finish(reduce(shot))


def _roll(flat: Flat, x: float, y: float) -> None:
    ppi = flat.ppi
    high, wide = round(9 * ppi), round(36 * ppi)
    roll = Image.new("RGBA", (wide, high))
    pen = ImageDraw.Draw(roll)
    for row in range(high):
        tone = round(26 + 62 * math.sin(math.pi * (row + 1) / (high + 1)) ** 1.4)
        pen.line([(0, row), (wide, row)], fill=(tone, tone, tone, 255))
    band = Flat((0, 0, 30, 8), ppi, (232, 226, 206))
    band.text("D226 TYPE II", 15, 4.0, 3.2, RED, bold=0.08)
    roll.paste(band.picture, (round(3 * ppi), round(0.5 * ppi)))
    flat.put(roll, x, y, 0, 1.2)


def porch_tie_in() -> Image.Image:
    """P22: the base sheet of the porch running 24 in up the back slope on the tape."""
    shot = Shot((26.2, 29.6, 12.9), (26.6, 25.3, 10.35), 56, portrait=True)
    place.outdoors(shot)
    flat = place.north("boards", (3, 0, 13, 6), 34)
    flat.line([(-20, 24.3), (440, 24.3)], (12, 10, 9), 0.8, 160, 0.3)
    flat.skin(rect(-20, -20, 440, 24), goods.base_sheet(flat, "base up"))
    flat.line([(-20, 23.9), (440, 23.9)], (150, 146, 138), 0.2)
    for k in range(30):
        flat.disc(20 + k * 8, 22.6, 0.55, (176, 178, 176))
    lay_tape(flat, 89, 0, 31, angle_deg=90, wide_in=1.4, finest=4, shadow=0.2)
    place.lay(shot, place.NORTH, flat, 1.02)
    under = place.porch("base", 26)
    place.lay(shot, place.PORCH, under, 1.08)
    line = [place.on(place.NORTH, u, 0.0, 0.01) for u in (2.0, 14.0)]
    shot.stroke(line, (46, 44, 42), 4)
    chalk = Flat((0, 0, 24, 5), 24, (0, 0, 0))
    chalk.chalk("bend of the roof", 12, 2.5, 2.4, m.WHITE_CHALK)
    ink = chalk.picture.convert("RGBA")
    ink.putalpha(chalk.picture.convert("L"))
    shot.lay(ink, place.on(place.PORCH, 6.4, 6.45, 0.01), place.PORCH[1], place.PORCH[2], 24 * 12)
    return finish(reduce(shot), focus=(0.08, 0.95))


def pipe_collar() -> Image.Image:
    """P27: the vent pipe with its collar of self-adhered sheet, the felt above lapped over the collar."""
    ppi = 30
    flat = Flat((-60, -30, 60, 70), ppi)
    felt = m.felt(flat, "pipe felt")
    flat.picture = felt.copy()
    _felt_edge(flat, -26.0)
    flat.poly(rect(-8.4, -9.6, 9.0, 9.4), (8, 8, 8), 170, 0.5)
    flat.skin(rect(-8.5, -9, 8.5, 12.0), shaded(m.membrane(flat, "collar"), 1.05))
    flat.line([(-8.5, 6), (-8.5, -9), (8.5, -9), (8.5, 6)], (140, 148, 158), 0.12)
    flat.skin(rect(-60, 6, 60, 70), felt)
    flat.poly(rect(-8.6, 6.2, 8.6, 12.0), (120, 124, 130), 26, 0.5)  # the collar raises the felt a little
    for y in (6.0, 38.0):
        _felt_edge(flat, y)
    shot = Shot((4, -26, 30), (0.4, 2.4, 3.2), 54)
    shot.lay(flat.picture, (-60, -30, 0), (1, 0, 0), (0, 1, 0), ppi)
    lean = (0.0, 0.6, 0.8)  # plumb, on a slope that lies flat here
    shot.fill([(-1.8, 0, 0), (1.8, 0, 0), (10, 22, 0), (6, 24, 0)], (6, 6, 6), 150, 30)
    for wide, low, high, colour in ((2.15, 0.0, 3.4, (98, 104, 112)), (1.75, 3.2, 15.0, (226, 224, 216))):
        _tube(shot, lean, wide, low, high, colour)
    shot.stroke([plus((-2.2, 0, 0), lean, 3.3), plus((2.2, 0, 0), lean, 3.3)], (30, 30, 32), 5)
    return finish(reduce(shot), focus=(0.06, 0.95))


def _felt_edge(flat: Flat, y: float) -> None:
    """Draw the lower edge of a course of felt."""
    flat.line([(flat.left, y - 0.3), (flat.right, y - 0.3)], (8, 8, 8), 0.8, 170, 0.25)
    flat.line([(flat.left, y), (flat.right, y)], (100, 98, 96), 0.14)


def _tube(shot: Shot, lean: Vector, radius: float, low: float, high: float, colour: Colour) -> None:
    strips = 26
    side = (0.0, 0.8, -0.6)

    def rim(a: float, at: float) -> Vector:
        return plus(
            plus(plus((0, 0, 0), lean, at), (1, 0, 0), radius * math.cos(a)), side, -radius * math.sin(a)
        )

    for k in range(strips):
        a, b = math.pi * k / strips, math.pi * (k + 1) / strips
        tone = 0.5 + 0.62 * max(0.0, math.cos(a - 2.1))
        shot.fill([rim(a, low), rim(b, low), rim(b, high), rim(a, high)], toned(colour, tone))
    shot.fill([rim(2 * math.pi * k / 40, high) for k in range(40)], toned(colour, 0.9))
    if radius < 2:
        inner = [
            plus(
                plus(plus((0, 0, 0), lean, high + 0.01), (1, 0, 0), 1.45 * math.cos(a)),
                side,
                1.45 * math.sin(a),
            )
            for a in (2 * math.pi * k / 40 for k in range(40))
        ]
        shot.fill(inner, (26, 24, 24))


def porch_tarp() -> Image.Image:
    """P29: the tarp on the porch, battens along its four edges."""
    shot = Shot((13.5, 44, 15.6), (24.5, 28, 9.6), 54)
    place.outdoors(shot, near=(14, 40, 0))
    place.house(shot, "felt", "tarp", ppi=9)
    over = Flat((-6, -4, 176, 20), 10)
    over.picture = goods.tarp(over, "tarp over the break")
    over.line([(0, 12.6), (168, 12.6)], (10, 14, 20), 2.2, 150, 0.5)
    over.line([(0, 13.4), (168, 13.4)], (208, 174, 122), 1.8)
    place_edge = rect(0.5, 0.33, 14.5, 1.62)
    shot.lay(
        shaded(over.picture, 0.9),
        place.on(place.NORTH, -0.5, -0.33, 0.03),
        place.NORTH[1],
        place.NORTH[2],
        120,
        place_edge,
    )
    return finish(reduce(shot), warm=(1.06, 0.98, 0.9), light=0.9, vignette=0.3)


def untimed_boards() -> Image.Image:
    """P21: B3 beside the vent pipe, laid; a photo that has lost its time."""
    shot = Shot((10.4, 24.2, 20.4), (9.3, 19.4, 15.4), 52)
    place.outdoors(shot)
    flat = place.north("boards", (19, 3, 31, 13), 20, marks=True)
    place.lay(shot, place.NORTH, flat, 1.0)
    return finish(reduce(shot), warm=(1.0, 1.0, 1.02))


def gutter_stored() -> Image.Image:
    """P28: the gutter on the porch on blocks, bent hangers beside it, the heat cable coiled."""
    shot = Shot((17.6, 38.5, 5.4), (25.6, 29.5, 1.4), 58)
    place.outdoors(shot, near=(18, 36, 0))
    place.house(shot, "felt", "base", ppi=5)
    block = m.wood((300, 120), 40, "block", m.OLD_FIR)
    for x in (21.4, 26.6, 31.6):
        shot.box((x, 29.8, 1.22), ((0.5, 0, 0), (0, 1.4, 0), (0, 0, 0.36)), block, 100)
    metal = m.metal((1800, 60), "gutter", tone=(230, 231, 228))
    for y, z, tone in ((30.6, 1.62, 1.0), (30.0, 1.62, 0.86)):
        shot.box(
            (20.6, y, z),
            ((12.4, 0, 0), (0, 0.42, 0), (0, 0, 0.36)),
            shaded(metal, tone),
            100,
            light=(-0.5, 0.6, 0.62),
        )
        shot.fill(
            [
                (20.7, y + 0.06, z + 0.365),
                (32.9, y + 0.06, z + 0.365),
                (32.9, y + 0.36, z + 0.365),
                (20.7, y + 0.36, z + 0.365),
            ],
            (120, 122, 120),
        )
    coil: list[Vector] = [
        (
            22.3 + (0.5 + k * 0.0021) * math.cos(k / 6),
            31.75 + (0.34 + k * 0.0014) * math.sin(k / 6),
            1.26 + k * 0.0009,
        )
        for k in range(230)
    ]
    shot.stroke(coil, (34, 34, 36), 9)
    shot.stroke([plus(p, (0, 0, 0.02)) for p in coil[::2]], (96, 98, 104), 2)
    for k in range(3):
        x = 24.2 + k * 0.7
        bent = [
            (x, 31.7, 1.24),
            (x + 0.12, 31.9, 1.3),
            (x + 0.34, 31.95, 1.26),
            (x + 0.4, 31.6 - 0.1 * k, 1.24),
        ]
        shot.stroke(bent, (196, 198, 196), 9)
    place.porch_rail(shot)
    return finish(reduce(shot))
