"""Photos of the leak: February's ice on the back of the house, the kitchen below it."""

import math
import random

from PIL import Image, ImageDraw

from .. import materials as m
from ..camera import Shot, Vector, plus, shaded, toned
from ..flat import Flat, Point
from ..garden import reduce
from ..tools import finish
from . import goods, place
from .goods import rect


def ice_dam() -> Image.Image:
    """P01: the back in February, ice along the eave and on the porch roof."""
    shot = Shot((1, 57, 5.6), (20.5, 28, 9.4), 52)
    place.outdoors(shot, winter=True, near=(8, 42, 0))
    place.house(shot, "snow", "snow", ppi=5)
    _snow_edge(shot, (20, 26.1, 10.0), (0, 26.1, 10.0), 0.95, "eave snow")
    _snow_edge(shot, (34, 33.05, 8.85), (20, 33.05, 8.85), 0.8, "porch snow")
    _snow_edge(shot, (20, 33.05, 8.85), (20, 26.1, 10.0), 0.7, "porch side snow")
    _dam(shot)
    _icicles(shot, (20, 26.2, 9.7), (0, 26.2, 9.7), 0.5, 2.9, "eave")
    _icicles(shot, (34, 33.1, 8.6), (20, 33.1, 8.6), 0.3, 1.4, "porch")
    return finish(reduce(shot), warm=(0.98, 1.0, 1.04), light=0.97, vignette=0.16)


def _snow_edge(shot: Shot, start: Vector, end: Vector, high: float, seed: str) -> None:
    """Draw the cut face of the snow along an edge, uneven at its top."""
    rng = random.Random(seed)
    tops = [
        plus(plus(start, plus(end, start, -1), k / 40), (0, 0, high * rng.uniform(0.75, 1.05)))
        for k in range(41)
    ]
    shot.fill([start, *tops, end], (224, 230, 240))
    shot.fill(
        [plus(start, (0, 0, high * 0.42)), *tops, plus(end, (0, 0, high * 0.42))], (240, 244, 249), 210, 10
    )


def _dam(shot: Shot) -> None:
    """Draw the ridge of ice where the steep roof meets the porch, with the ponded strip behind it."""
    texture = goods.ice((1400, 200), "dam", 14)
    rng = random.Random("dam")
    bulge = [(k * 0.35, 0.9 + rng.uniform(-0.22, 0.3)) for k in range(41)]
    shot.lay(
        shaded(goods.ice((1400, 160), "pond", 20), 0.78),
        place.on(place.NORTH, 0, 0.9, 0.1),
        (-1, 0, 0),
        (0, -0.8, 0.6),
        100,
    )
    edge = [(0.0, 0.0), (14.0, 0.0), *[(14 - x, y) for x, y in bulge]]
    shot.lay(texture, (34, 26.6, 10.0), (-1, 0, 0), (0, -0.25, 0.97), 100, edge)
    edge = [(0.0, 0.0), (20.0, 0.0), *[(20 - x * 1.43, y * 0.55) for x, y in bulge]]
    shot.lay(goods.ice((2000, 160), "eave ice", 14), (20, 26.3, 9.75), (-1, 0, 0), (0, -0.1, 0.99), 100, edge)


def _icicles(shot: Shot, start: Vector, end: Vector, short: float, long: float, seed: str) -> None:
    rng = random.Random(seed)
    pen = ImageDraw.Draw(shot.picture)
    step = plus(end, start, -1)
    for k in range(58):
        foot = plus(start, step, (k + rng.uniform(0.1, 0.9)) / 58)
        drop = short + (long - short) * rng.random() ** 2.4
        x, y = shot.at(foot)
        tip = shot.at(plus(foot, (0, 0, -drop)))
        half = max(4.0, (tip[1] - y) * 0.075)
        pen.polygon([(x - half, y), (x + half, y), (tip[0], tip[1])], fill=(186, 206, 222))
        pen.polygon([(x - half * 0.5, y), (x + half * 0.1, y), (tip[0], tip[1])], fill=(236, 244, 250))
        pen.line([(x + half * 0.7, y), tip], fill=(134, 160, 184), width=2)


def _kitchen(shot: Shot) -> None:
    paint = m.plain((1600, 1200), (214, 208, 178), "kitchen wall", [(3, 3), (300, 260)])
    shot.lay(shaded(paint, 0.86), (-6, 4, 0), (1, 0, 0), (0, 0, 1), 100)
    shot.lay(shaded(paint, 0.7), (8, 4, 0), (0, -1, 0), (0, 0, 1), 100)
    cabinet = m.plain((800, 300), (236, 234, 226), "cabinet", [(5, 5), (200, 120)])
    for k in range(3):
        x = -3.2 + k * 2.3
        shot.lay(cabinet.crop((0, 0, 224, 230)), (x, 3.2, 5.0), (1, 0, 0), (0, 0, 1), 100)
        shot.stroke(
            [(x, 3.2, 5.0), (x + 2.24, 3.2, 5.0), (x + 2.24, 3.2, 7.3), (x, 3.2, 7.3), (x, 3.2, 5.0)],
            (176, 174, 166),
            5,
        )
        shot.fill(
            [(x + 1.9, 3.18, 5.3), (x + 2.02, 3.18, 5.3), (x + 2.02, 3.18, 5.7), (x + 1.9, 3.18, 5.7)],
            (140, 140, 142),
        )


def _stain(flat: Flat, x: float, y: float, *, wet: bool) -> None:
    """Draw the stain on the ceiling: running across the joints of the plaster board, wet or dried."""
    rng = random.Random("kitchen stain")
    waves = [(k, rng.uniform(0, 6.3), rng.uniform(0.4, 1) / k) for k in range(2, 10)]

    def blot(radius: float) -> list[Point]:
        return [
            (
                x
                + radius
                * 1.7
                * (1 + 0.17 * sum(s * math.sin(k * a / 20 + p) for k, p, s in waves))
                * math.cos(a / 20),
                y
                + radius
                * 0.72
                * (1 + 0.17 * sum(s * math.sin(k * a / 20 + p) for k, p, s in waves))
                * math.sin(a / 20),
            )
            for a in range(126)
        ]

    for radius, colour, alpha, blur in (
        (17, (190, 156, 104), 80, 3.0),
        (14.4, (118, 78, 38), 220, 0.35),
        (13.5, (200, 170, 122), 255, 0.7),
        (9.6, (138, 96, 50), 200, 0.5),
        (8.9, (206, 178, 134), 255, 0.9),
        (4.6, (150, 108, 62), 150, 0.7),
    ):
        flat.poly(blot(radius), toned(colour, 0.82 if wet else 1.0), alpha, blur)
    flat.line([(x - 46, y + 2), (x + 46, y - 1)], (150, 130, 100), 0.22, 170)
    if wet:
        flat.poly(blot(7.4), (120, 98, 70), 130, 1.4)


def ceiling_drips() -> Image.Image:
    """P02: water dripping from the kitchen ceiling into a pot."""
    shot = Shot((1.2, -6.2, 4.6), (1.6, 2.0, 4.9), 58, portrait=True, sky=(200, 196, 180))
    _kitchen(shot)
    floor = m.wood((1400, 1300), 9, "kitchen floor", ((128, 92, 58), (168, 126, 84)))
    shot.lay(shaded(floor, 0.62), (-6, -9, 0), (1, 0, 0), (0, 1, 0), 100)
    ceiling = Flat((-72, -108, 96, 48), 12)
    ceiling.picture = m.plain(ceiling.size, (232, 229, 218), "kitchen ceiling", [(2, 2), (500, 400)])
    _stain(ceiling, 20, 4, wet=True)
    shot.lay(shaded(ceiling.picture, 0.94), (-6, -9, 8), (1 / 12, 0, 0), (0, 1 / 12, 0), 12)
    top = m.plain((600, 300), (96, 78, 60), "table", [(4, 4), (140, 60)])
    shot.lay(top, (-0.6, -0.8, 2.5), (1, 0, 0), (0, 1, 0), 130)
    shot.fill([(-0.6, -0.8, 2.5), (4.0, -0.8, 2.5), (4.0, -0.8, 2.38), (-0.6, -0.8, 2.38)], (58, 44, 32))
    for x in (-0.4, 3.7):
        shot.fill([(x, -0.7, 2.4), (x + 0.18, -0.7, 2.4), (x + 0.18, -0.7, 0), (x, -0.7, 0)], (66, 50, 36))
    _pot(shot, (1.66, 0.35, 2.52))
    rng = random.Random("drops")
    for x, y in ((1.5, 0.2), (1.78, 0.45), (2.3, 0.1)):
        z = 7.96
        shot.stroke([(x, y, z), (x, y, z - 0.12)], (110, 120, 128), 10)
        while z > 3.4:
            z -= rng.uniform(0.5, 1.3)
            shot.stroke([(x, y, z), (x, y, z - rng.uniform(0.1, 0.2))], (226, 234, 240), 6)
            shot.stroke([(x + 0.012, y, z), (x + 0.012, y, z - 0.1)], (120, 136, 148), 3)
    return finish(reduce(shot), warm=(1.06, 1.0, 0.86), vignette=0.4, light=0.92)


def _pot(shot: Shot, middle: Vector) -> None:
    ring = [(math.cos(a / 10), math.sin(a / 10)) for a in range(63)]
    x, y, z = middle
    low = [(x + 0.46 * c, y + 0.46 * s, z) for c, s in ring]
    rim = [(x + 0.5 * c, y + 0.5 * s, z + 0.62) for c, s in ring]
    shot.fill([plus(p, (0.1, 0.12, -0.01)) for p in low], (20, 14, 10), 150, 16)
    for k in range(32, 63):
        tone = 0.45 + 0.6 * math.sin((k - 31) / 31 * math.pi)
        shot.fill([low[k - 1], low[k], rim[k], rim[k - 1]], toned((176, 182, 188), tone))
    shot.fill(rim, (208, 212, 216))
    shot.fill([(x + 0.45 * c, y + 0.45 * s, z + 0.6) for c, s in ring], (84, 88, 92))
    shot.fill([(x + 0.42 * c, y + 0.42 * s, z + 0.4) for c, s in ring], (116, 130, 138))
    shot.stroke([(x + 0.5, y, z + 0.5), (x + 1.3, y - 0.3, z + 0.55)], (40, 40, 42), 22)


def ceiling_meter() -> Image.Image:
    """P04: the dried stain on the kitchen ceiling and a moisture meter."""
    flat = Flat((-40, -30, 40, 32), 40)
    flat.picture = m.plain(flat.size, (230, 227, 216), "kitchen ceiling near", [(3, 3), (500, 400)])
    _stain(flat, 0, 4, wet=False)
    flat.line([(-40, 16), (40, 15.4)], (196, 188, 170), 0.3, 150)
    meter = Flat((0, 0, 6.4, 13), 40, (226, 176, 40))
    meter.poly(rect(0.5, 6.6, 5.9, 12.4), (44, 46, 50))
    meter.poly(rect(1.0, 8.6, 5.4, 11.8), (176, 190, 168))
    meter.text("19 %", 3.2, 10.2, 1.15, (26, 32, 28), bold=0.05)
    meter.text("wood and plaster", 3.2, 7.5, 0.46, (214, 214, 206), bold=0.04)
    meter.disc(3.2, 4.1, 1.25, (60, 62, 66))
    meter.disc(3.2, 4.1, 0.95, (180, 44, 34))
    for x in (2.4, 4.0):
        flat.line([(x - 0.8, 2.6), (x - 0.8, 5.4)], (140, 144, 148), 0.28)
    flat.put(meter.picture.convert("RGBA"), 2.4, -4.2, 0, 0.5)
    shot = Shot((0, -21, -36), (1, 1.4, 0), 50, up=(0, 1, 0))
    shot.lay(flat.picture.transpose(Image.Transpose.FLIP_LEFT_RIGHT), (40, -30, 0), (-1, 0, 0), (0, 1, 0), 40)
    picture = reduce(shot).transpose(Image.Transpose.FLIP_LEFT_RIGHT)
    return finish(picture, warm=(1.04, 1.0, 0.9), vignette=0.34)
