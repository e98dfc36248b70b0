"""Photos of the second lot beside the first, of the finished back slope and of the bundle left with the owner."""

import math

from PIL import Image, ImageDraw

from .. import materials as m
from ..camera import Shot, shaded
from ..flat import Flat
from ..garden import reduce
from ..tools import INK, finish
from ..views_framing import rod
from ..views_near import looked_down
from . import stuff
from .covering import wrap
from .house import THROUGH, garden, house, lay_slope, on_roof, slope, through

COURSE_IN = 5.625


def _flanges(flat: Flat) -> None:
    """Lay a flange around each pipe and under the hood, its upper half under the courses above."""
    over = flat.picture.copy()
    for u, v, kind in THROUGH:
        x, y = u * 12, v * 12
        cut = math.floor(y / COURSE_IN) * COURSE_IN
        half, round_in = (6.5, 4.0) if kind == "pipe" else (9.0, 6.0)
        flat.poly([(x - half, y - 9), (x + half, y - 9), (x + half, y), (x - half, y)], (6, 6, 8), 190, 0.8)
        flat.poly(
            [(x - half, y - 8), (x + half, y - 8), (x + half, y + 7), (x - half, y + 7)], (118, 122, 126)
        )
        flat.line([(x - half, y - 8), (x + half, y - 8)], (190, 194, 196), 0.5)
        arc = [
            (x + round_in * math.cos(k * math.pi / 16), y + round_in * math.sin(k * math.pi / 16))
            for k in range(16, -1, -1)
        ]
        edge = [(x - half - 1, cut), (x - round_in, cut), *arc, (x + round_in, cut), (x + half + 1, cut)]
        flat.line(edge, (8, 8, 8), 0.9, 170, 0.3)
        flat.skin([*edge, (x + half + 1, y + 12), (x - half - 1, y + 12)], over)


def back_slope() -> Image.Image:
    """The back slope after the work: a boot on each of the three pipes, and the hood."""
    shot = Shot((26.6, 43.0, 20.5), (27.0, 22.4, 10.9), 56)
    garden(shot)
    house(shot, {"HS": "new", "HE": "new", "HN": "new", "HW": "new"}, ppi=4)
    flat = slope("HN", "new", (6, 0, 38, 15.17), 11)
    _flanges(flat)
    lay_slope(shot, "HN", flat)
    for u, v, kind in THROUGH:
        if kind == "hood":
            through(shot, u, v, kind)
            continue
        foot, top = on_roof("HN", u, v), on_roof("HN", u, v, 1.0)
        scale = shot.focal / math.dist(shot.eye, foot)
        rod(shot, shot.at(foot), shot.at(on_roof("HN", u, v, 0.28)), scale * 0.55, scale * 0.34, (52, 54, 56))
        rod(shot, shot.at(on_roof("HN", u, v, 0.24)), shot.at(top), scale * 0.3, scale * 0.3, (230, 230, 224))
        x, y = shot.at(top)
        wide = scale * 0.15
        ImageDraw.Draw(shot.picture).ellipse(
            (x - wide, y - wide / 2, x + wide, y + wide / 2), fill=(40, 40, 42)
        )
    return finish(reduce(shot), seed="back slope")


def second_wrapper() -> Image.Image:
    """The wrapper of the second lot on laid shingles of the first, one shingle of it beside it."""
    flat = Flat((-8, -8, 40, 32), 64)
    flat.picture = shaded(stuff.slate(flat), 1.02)
    flat.poly([(4.4, -3.2), (31, -1.8), (30.6, 12.6), (4.0, 11.2)], (8, 8, 8), 170, 0.5)
    flat.put(wrap("M-06C-1131", 64, (36, 74, 118)).picture.convert("RGBA"), 17.2, 4.9, 2, 0.3)
    one = Flat((0, 34, 30, 34 + 2 * COURSE_IN), 64)
    one.picture = stuff.slate(one)
    flat.put(one.picture.convert("RGBA"), 17.6, 19.2, -3, 0.35)
    shot = looked_down(flat, (17.0, 9.6), 36, lean_deg=16, turn_deg=2)
    return finish(reduce(shot), focus=(0.06, 0.94), light=1.08, seed="second wrapper")


def left_bundle() -> Image.Image:
    """The bundle left with the owner, on the beam over the garage door."""
    shot = Shot((4, -92, -24), (6, 0, 4), 52, sky=(60, 58, 54))
    wall = m.plain((1500, 700), (206, 204, 196), "garage wall", [(400, 300)])
    shot.lay(shaded(wall, 0.72), (-75, 22, -30), (1, 0, 0), (0, 0, 1), 10)
    shot.fill([(-75, 21.8, -60), (75, 21.8, -60), (75, 21.8, -13), (-75, 21.8, -13)], (168, 170, 168))
    for z in (-26.0, -42.0):
        shot.stroke([(-75, 21.6, z), (75, 21.6, z)], (120, 122, 122), 8)
    joist = m.wood((400, 60), 8, "garage joist", m.OLD_FIR)
    for x in range(-72, 80, 24):
        shot.box((x, -40, 26), ((1.5, 0, 0), (0, 62, 0), (0, 0, 5.5)), joist, 8)
    beam = m.wood((1500, 120), 10, "garage beam", m.FIR)
    side = m.plain((400, 140), (240, 237, 226), "left bundle", [(60, 40)])
    shot.box((-12, 0.4, 0), ((39, 0, 0), (0, 13.2, 0), (0, 0, 3.0)), side, 10)
    face = Flat((0, 0, 39, 3), 30, (240, 237, 226))
    face.poly([(0, 0), (7, 0), (7, 3), (0, 3)], (36, 74, 118))
    face.text("H", 3.5, 1.5, 1.6, (244, 244, 240), bold=0.08)
    face.text("LOT M-06C-1131", 22, 1.5, 1.35, INK, bold=0.06)
    shot.lay(face.picture, (-12, 0.36, 0), (1, 0, 0), (0, 0, 1), 30)
    shot.box((-75, 0, -9), ((150, 0, 0), (0, 14, 0), (0, 0, 9)), shaded(beam, 0.86), 10)
    return finish(reduce(shot), seed="left bundle", vignette=0.3, light=0.95)
