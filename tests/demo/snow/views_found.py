"""Photos of the slopes before the work, and of the old back slope opened: layers, boards, a nail, bad places."""

import math
import random

from PIL import Image

from .. import materials as m
from ..camera import Shot, shaded
from ..flat import Flat
from ..garden import number_plate, reduce
from ..house import board
from ..opened import BACK_IN, FRONT_IN, HALF_IN, cut_edge, drawn_nail
from ..tools import finish, lay_tape
from ..views_near import looked_down
from . import goods, place
from .goods import rect


def number() -> Image.Image:
    """The number of the house, 112, on the wall beside the front door."""
    shot = Shot((4.6, -9.5, 5.6), (5.4, 0, 5.7), 44)
    flat = Flat((0, 0, 180, 132), 12)
    flat.picture = m.siding(flat, place.SIDING, 6.0)
    flat.poly(rect(96, 0, 146, 100), (240, 240, 234))
    flat.poly(rect(101, 0, 141, 95), (74, 96, 84))
    for low, high in ((8, 40), (48, 86)):
        for x in (106, 123):
            flat.poly(rect(x, low, x + 13, high), (60, 80, 70))
            flat.line([(x, low), (x, high), (x + 13, high)], (42, 58, 50), 0.6)
    flat.disc(137, 44, 1.9, (196, 176, 110))
    flat.poly(rect(0, 124, 180, 132), (30, 32, 34), 130, 4)
    shot.lay(shaded(flat.picture, 1.02), (-1.5, 0, 0), (1, 0, 0), (0, 0, 1), 144)
    shot.fill(
        [(3.15, -0.02, 5.0), (5.75, -0.02, 5.0), (5.75, -0.02, 5.95), (3.15, -0.02, 5.95)],
        (10, 12, 14),
        120,
        14,
    )
    number_plate(shot, (3.2, -0.06, 5.1), 2.5, 1.0, "112")
    return finish(reduce(shot))


def above_porch() -> Image.Image:
    """The slope above the porch in April, from the yard."""
    shot = Shot((20.5, 61, 9.6), (27.2, 24, 13.2), 30)
    place.outdoors(shot, near=(22, 46, 0))
    place.house(shot, "before", "before", ppi=9)
    place.gutter(shot)
    return finish(reduce(shot))


def porch_before() -> Image.Image:
    """The porch roof under its old roll roofing, from the ladder at the eave."""
    shot = Shot((13.5, 44, 15.6), (24.5, 28, 9.6), 54)
    place.outdoors(shot, near=(14, 40, 0))
    place.house(shot, "before", "before", ppi=9)
    place.gutter(shot)
    return finish(reduce(shot))


def layers() -> Image.Image:
    """The old covering cut open: one felt and one layer of shingles on the boards, ruler beside it."""
    floor = Flat((-HALF_IN, -FRONT_IN, HALF_IN, 0), 150)
    floor.picture = goods.boards(floor, "layers boards", goods.OLD_PINE, from_in=-5.9, nails=False)
    floor.chalk("1 layer", -0.8, -1.0, 0.42, m.WHITE_CHALK, -3)
    face = Flat((-HALF_IN, 0, HALF_IN, 0.4), 400, (34, 33, 32))
    rng = random.Random("cut laminated")
    # felt, then the shingle, which is double where its upper sheet lies
    face.poly(rect(-HALF_IN, 0, HALF_IN, 0.05), (20, 20, 20))
    x = -HALF_IN
    while x < HALF_IN:
        wide, high = rng.uniform(2.2, 4.4), rng.choice((0.22, 0.38))
        face.poly(rect(x, 0.06, x + wide, high), (84, 80, 74))
        face.line([(x, 0.21), (x + wide, 0.21)], (30, 29, 28), 0.014)
        if high < 0.3:
            face.poly(rect(x, high, x + wide, 0.4), (60, 56, 52))
        x += wide
    for _ in range(900):
        px, py, light = rng.uniform(-HALF_IN, HALF_IN), rng.uniform(0.07, 0.38), rng.randint(56, 140)
        face.disc(px, py, 0.013, (light, round(light * 0.96), round(light * 0.9)))
    top = m.shingles(Flat((-HALF_IN, -1.4, HALF_IN, BACK_IN - 1.4), 120), worn=True)
    return cut_edge(floor.picture, face, top, ruler_at=-2.1, seed="snow layers")


def board_edge() -> Image.Image:
    """The edge of an old board on a rafter: 3/4 in on the ruler."""
    floor = Flat((-HALF_IN, -FRONT_IN, HALF_IN, 0), 150, (20, 17, 14))
    top_of_rafter = m.wood(floor.size, 150, "edge rafter", m.OLD_FIR, upright=True)
    floor.skin(rect(-1.9, -FRONT_IN, -0.3, 0), top_of_rafter)
    face = Flat((-HALF_IN, 0, HALF_IN, 0.75), 400)
    face.picture = shaded(m.wood(face.size, 400, "old board side", goods.OLD_PINE, rings=3), 0.8)
    face.line([(-HALF_IN, 0.74), (HALF_IN, 0.74)], (176, 146, 110), 0.02)
    deck = Flat((-HALF_IN, 0, HALF_IN, BACK_IN), 120)
    deck.picture = goods.boards(deck, "edge boards", goods.OLD_PINE, nails=False)
    deck.chalk("GN", 0.9, 1.9, 0.8, m.WHITE_CHALK, 2)
    return cut_edge(floor.picture, face, deck.picture, ruler_at=-1.7, seed="snow board edge")


def old_nail() -> Image.Image:
    """A nail drawn out of an old board: smooth, 2-1/2 in on the ruler."""
    bench = Flat((-5.4, -6, 8.6, 7), 210)
    bench.picture = goods.boards(bench, "snow nail bench", goods.OLD_PINE, from_in=-2.4, nails=False)
    note, ink = "old", m.WHITE_CHALK
    return drawn_nail(bench, 2.5, 0.131, note=note, ink=ink, portrait=False, seed="snow old nail")


def three_places() -> Image.Image:
    """The stripped back slope with the three bad places chalked, B1 above the porch, B2 at the eave, B3 at the pipe."""
    shot = Shot((7.5, 43, 20.5), (20.0, 22.0, 12.0), 58)
    place.outdoors(shot)
    place.house(shot, "stripped", "before", ppi=6)
    flat = place.north("stripped", (-0.5, -0.3, 34.5, place.SLOPE_FT + 0.3), 11, marks=True)
    flat.chalk("B3", 268, 112, 12, m.WHITE_CHALK, 2)
    _splits(flat, place.PIPE_IN[0], place.PIPE_IN[1], 16)
    place.lay(shot, place.NORTH, flat, 0.9)
    board(shot, (0, 26, place.EAVE_FT), (0, 13, place.RIDGE_FT), 0.55, 0.98)
    place.lay(shot, place.PORCH, place.porch("before", 9), 1.0)
    board(shot, (20, 33, place.PORCH_EAVE_FT), (20, 26, place.EAVE_FT), 0.5, 0.95)
    return finish(reduce(shot))


def _splits(flat: Flat, x: float, y: float, long_in: float) -> None:
    """Split the boards to both sides of the pipe, along the grain."""
    rng = random.Random("splits")
    for side in (-1, 1):
        for up in (-2.2, 0.4, 2.6):
            reach = long_in * rng.uniform(0.6, 1.0)
            line = [(x + side * reach * k / 8, y + up + rng.uniform(-0.14, 0.14)) for k in range(9)]
            flat.line(line, (14, 11, 9), 0.26)
            flat.line([(px, py - 0.2) for px, py in line], (166, 138, 104), 0.1, 150)


def rot_b2() -> Image.Image:
    """Rot in the boards of place B2 at the eave, close."""
    flat = Flat((-26, -20, 30, 26), 58)
    flat.picture = goods.boards(flat, "B2 close", goods.OLD_PINE, from_in=-0.6, joints_in=(-9.0, 12.0))
    flat.picture = goods.wet(flat.picture, flat.mask(rect(-30, -24, 34, 7), 255, 4), 0.5)
    for k, (x, y, wide, high) in enumerate(
        ((-8.0, -3.0, 9.0, 3.2), (7.0, 0.8, 8.0, 2.8), (14.0, -6.0, 7.0, 2.6))
    ):
        spot = [(x + wide * math.cos(a / 6), y + high * math.sin(a / 6)) for a in range(38)]
        flat.picture = m.rotten(flat.picture, flat.mask(spot, 255, 1.0), f"B2 soft {k}", flat.ppi * 0.4)
    flat.chalk("B2", -8.6, 9.6, 3.2, m.WHITE_CHALK, -4)
    lay_tape(flat, -8, -8.2, 30, side=1, wide_in=1.1, finest=8, shadow=0.12)
    shot = looked_down(flat, (2.0, -0.6), 29, lean_deg=28, turn_deg=5)
    return finish(shaded(reduce(shot), 1.1), focus=(0.1, 0.92))


def split_b3() -> Image.Image:
    """Boards split to both sides of the vent pipe, place B3, close."""
    flat = Flat((-24, -20, 28, 24), 60)
    flat.picture = goods.boards(flat, "B3 close", goods.OLD_PINE, from_in=-3.1)
    _splits(flat, 0.0, 0.2, 11)
    flat.disc(0.0, 0.0, 2.7, (14, 11, 9))
    flat.disc(0.0, 0.0, 1.8, (210, 208, 200))
    flat.disc(0.0, 0.0, 1.5, (36, 34, 34))
    flat.chalk("B3", -7.6, 7.4, 3.2, m.WHITE_CHALK, 3)
    lay_tape(flat, -7, -6.4, 24, side=1, wide_in=1.1, finest=8, shadow=0.12)
    shot = looked_down(flat, (1.6, 0.6), 25, lean_deg=26, turn_deg=-4)
    return finish(reduce(shot), focus=(0.1, 0.92))
