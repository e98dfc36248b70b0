"""Photos of the old roof opened: its layers, its deck, a nail of it, and the bad sheets close up."""

import math
import random

from PIL import Image

from .. import materials as m
from ..camera import Colour, shaded
from ..flat import Flat
from ..garden import reduce
from ..opened import BACK_IN, FRONT_IN, HALF_IN, cut_edge, drawn_nail
from ..tools import finish, lay_tape
from ..views_near import looked_down
from . import stuff

#: Plies of the old 1/2 in deck, from its foot, with their grain light or dark.
OLD_PLIES: tuple[Colour, ...] = ((150, 116, 80), (104, 76, 50), (142, 108, 72), (98, 70, 46), (146, 112, 76))


def layers() -> Image.Image:
    """The old covering cut open: one felt and one layer of three-tab on the deck, ruler beside it."""
    floor = Flat((-HALF_IN, -FRONT_IN, HALF_IN, 0), 170)
    floor.picture = m.plywood(floor, "layers deck", m.OLD_PLY, patches=2)
    floor.chalk("1 layer", -0.9, -0.95, 0.42, m.WHITE_CHALK, 3)
    face = Flat((-HALF_IN, 0, HALF_IN, 0.46), 400, (36, 34, 33))
    face.poly([(-HALF_IN, 0), (HALF_IN, 0), (HALF_IN, 0.06), (-HALF_IN, 0.06)], (18, 17, 17))
    rng = random.Random("cut tabs")
    # the cut runs through the lower end of one course and the upper part of the one below: two thicknesses
    for low, high, tone in ((0.07, 0.24, (74, 66, 60)), (0.26, 0.46, (92, 80, 70))):
        wave = [(-HALF_IN + k * 0.35, high + rng.uniform(-0.02, 0.0)) for k in range(53)]
        face.poly([(-HALF_IN, low), *wave, (HALF_IN, low)], tone)
        face.line([(-HALF_IN, low), (HALF_IN, low)], (22, 20, 19), 0.02)
        for _ in range(900):
            x, y = rng.uniform(-HALF_IN, HALF_IN), rng.uniform(low + 0.02, high - 0.02)
            light = rng.randint(60, 150)
            face.disc(x, y, 0.014, (light, round(light * 0.92), round(light * 0.84)))
    top = stuff.three_tab(Flat((-HALF_IN, -1.2, HALF_IN, BACK_IN - 1.2), 120))
    return cut_edge(floor.picture, face, top, ruler_at=0.9, seed="hip layers")


def deck_edge() -> Image.Image:
    """The cut edge of the old deck on a truss: 1/2 in on the ruler."""
    floor = Flat((-HALF_IN, -FRONT_IN, HALF_IN, 0), 150, (20, 16, 13))
    chord = m.wood(floor.size, 150, "edge chord", m.OLD_FIR, upright=True)
    floor.skin([(0.6, -FRONT_IN), (2.1, -FRONT_IN), (2.1, 0), (0.6, 0)], chord)
    for x in (0.6, 2.1):
        floor.line([(x, -FRONT_IN), (x, 0)], (14, 10, 8), 0.08)
    high = 0.5
    face = Flat((-HALF_IN, 0, HALF_IN, high), 400, OLD_PLIES[0])
    for k, tone in enumerate(OLD_PLIES):
        low, upper = high * k / 5, high * (k + 1) / 5
        face.poly([(-HALF_IN, low), (HALF_IN, low), (HALF_IN, upper), (-HALF_IN, upper)], tone)
        face.line([(-HALF_IN, upper), (HALF_IN, upper)], (70, 50, 34), 0.012)
    face.speckle("old plies", 0.03, 18)
    deck = Flat((-HALF_IN, 0, HALF_IN, BACK_IN), 120)
    deck.picture = m.plywood(deck, "edge deck", m.OLD_PLY, patches=3)
    deck.chalk("HS", -1.4, 1.5, 0.8, m.WHITE_CHALK, -2)
    return cut_edge(floor.picture, face, deck.picture, ruler_at=0.7, seed="hip deck edge")


def old_nail() -> Image.Image:
    """A nail drawn out of the old deck: smooth, 2-1/2 in on the ruler."""
    bench = Flat((-4.4, -6, 7.6, 7), 230)
    bench.picture = m.plywood(bench, "hip nail bench", m.OLD_PLY, patches=2)
    note, ink = "old", m.WHITE_CHALK
    return drawn_nail(bench, 2.5, 0.131, note=note, ink=ink, portrait=True, seed="hip old nail")


def _rot(
    name: str, spots: list[tuple[float, float, float]], *, pipe: bool = False, turn_deg: float
) -> Image.Image:
    """Return rot in one sheet, its mark in chalk, a tape below it; spots are x, y and half width [in]."""
    flat = Flat((-24, -20, 26, 24), 62)
    flat.picture = m.plywood(flat, f"{name} close", m.OLD_PLY, patches=3)
    for k, (x, y, radius) in enumerate(spots):
        blot = [
            (
                x + radius * (1 + 0.16 * math.sin(3 * a + x) + 0.08 * math.sin(7 * a)) * math.cos(a),
                y + radius * 0.7 * (1 + 0.12 * math.sin(4 * a + y)) * math.sin(a),
            )
            for a in (step * math.pi / 20 for step in range(40))
        ]
        flat.picture = m.rotten(flat.picture, flat.mask(blot, 255, 1.2), f"{name} rot {k}", flat.ppi * 0.4)
    rng = random.Random(f"{name} peel")
    for x, y, radius in spots:
        for _ in range(9):  # the face ply lifts off in splinters
            a, long = rng.uniform(-0.16, 0.16), rng.uniform(1.0, 3.2)
            px, py = x + rng.uniform(-radius, radius) * 0.8, y + rng.uniform(-radius, radius) * 0.5
            tip = (px + long * math.cos(a), py + long * math.sin(a) * 0.4)
            tone = rng.randint(70, 118)
            flat.line([(px, py - 0.1), (tip[0], tip[1] - 0.1)], (10, 8, 7), 0.2, 150, 0.06)
            flat.poly([(px, py - 0.1), (px, py + 0.12), tip], (tone, round(tone * 0.76), round(tone * 0.54)))
    if pipe:
        flat.disc(0.4, 0.6, 2.5, (14, 11, 9))
        flat.disc(0.4, 0.6, 1.75, (206, 206, 200))
        flat.disc(0.4, 0.6, 1.45, (38, 36, 36))
    flat.chalk(name, -8.6, 7.2, 3.0, m.WHITE_CHALK, 4)
    lay_tape(flat, -9, -6.6, 24, side=1, wide_in=1.0, finest=8, shadow=0.12)
    shot = looked_down(flat, (1.0, 0.6), 27, lean_deg=26, turn_deg=turn_deg)
    return finish(shaded(reduce(shot), 1.06), focus=(0.12, 0.9), seed=f"{name} close")


def rot_s1() -> Image.Image:
    """Rot in sheet S1, close."""
    return _rot("S1", [(3.0, 1.6, 7.6), (-5.4, -1.6, 4.2)], turn_deg=-6)


def rot_s2() -> Image.Image:
    """Rot in sheet S2, close."""
    return _rot("S2", [(-1.6, 0.4, 5.6), (7.4, 2.6, 4.6), (4.2, -3.0, 2.6)], turn_deg=5)


def rot_s3() -> Image.Image:
    """Rot in sheet S3 around the pipe, close."""
    return _rot("S3", [(0.8, 0.2, 6.4), (8.6, -1.4, 3.4)], pipe=True, turn_deg=-3)
