"""Photos of the hip house from the ground, from the ladder and from the roof."""

import math
import random

from PIL import Image, ImageDraw

from .. import materials as m
from ..camera import Shot, Vector, shaded
from ..garden import mailbox, number_plate, reduce, shrub, street
from ..tools import finish, lay_tape
from ..views_framing import rod
from . import masts
from .house import (
    TOP_Z,
    Plane,
    State,
    States,
    Window,
    garden,
    house,
    lay_slope,
    on_roof,
    slope,
)


def _all(state: State, **others: State) -> States:
    states: States = {"HS": state, "HE": state, "HN": state, "HW": state}
    for plane, other in others.items():
        states[plane] = other  # type: ignore[index]
    return states


def bushes(shot: Shot, spots: list[tuple[float, float]]) -> None:
    """Plant round shrubs."""
    for index, (x, y) in enumerate(spots):
        shrub(shot, (x, y, 0), 3.4, 2.5, f"hip shrub {index}")


def _street(state: State) -> Image.Image:
    shot = Shot((9, -58, 5.8), (24.5, 6, 7.6), 52)
    garden(shot, near=(20, -30, 0))
    street(shot)
    house(shot, _all(state), beyond=masts.both)
    number_plate(shot, (24.9, 0.95, 5.2), 1.3, 1.1, "7")
    bushes(shot, [(4, -1.2), (9, -1.2), (14, -1.2), (29, -1.2), (34, -1.2), (40, -1.2), (45, -1.2)])
    mailbox(shot, (12.5, -46.8, 0), "7")
    warm = (1.02, 1.0, 0.96) if state == "old" else (1.0, 1.0, 1.0)
    return finish(reduce(shot), warm=warm, seed=f"street {state}")


def street_before() -> Image.Image:
    """The front from the street, old roof."""
    return _street("old")


def street_after() -> Image.Image:
    """The front from the street, new roof."""
    return _street("new")


def _east(state: State) -> Image.Image:
    shot = Shot((73, -19, 6.2), (43.5, 9.5, 9.6), 40)
    garden(shot, near=(58, -4, 0))
    house(shot, _all(state), ppi=7)
    _yard_light(shot)
    bushes(shot, [(48.6, 4), (48.6, 11), (48.6, 24), (40, -1.2), (45, -1.2)])
    return finish(reduce(shot), seed=f"east {state}")


def _yard_light(shot: Shot) -> None:
    """Hang the yard light on the east wall, beside the north-east corner."""
    shot.fill([(47.02, 25.9, 6.9), (47.02, 26.3, 6.9), (47.02, 26.3, 7.7), (47.02, 25.9, 7.7)], (70, 74, 78))
    shot.stroke([(47.05, 26.1, 7.6), (47.6, 26.1, 7.7)], (70, 74, 78), 9)
    shot.fill([(47.3, 25.8, 7.25), (48.0, 26.4, 7.25), (47.8, 26.2, 7.8), (47.5, 26.0, 7.8)], (54, 58, 62))
    shot.fill(
        [(47.4, 25.9, 6.95), (47.9, 26.3, 6.95), (48.0, 26.4, 7.25), (47.3, 25.8, 7.25)], (246, 240, 206)
    )


def east_before() -> Image.Image:
    """The east hip from the yard, creased tabs along its south edge."""
    return _east("old")


def east_after() -> Image.Image:
    """The east hip from the same place."""
    return _east("new")


def marsh() -> Image.Image:
    """Open marsh to the east, over the old ridge."""
    shot = Shot((26.5, 14.2, TOP_Z + 4.8), (70, 15.5, TOP_Z - 2.5), 60)
    garden(shot, marsh=True)
    states = _all("old")
    for plane in ("HN", "HS", "HE"):
        named: Plane = plane
        lay_slope(shot, named, slope(named, states[named], None, 7))
    for k in range(48):
        x = 26.0 + k * 5 / 12
        if x > 34:
            break
        tone = 100 + (k * 53) % 22
        left, right, high = 13.55, 14.45, TOP_Z - 0.16
        shot.fill(
            [(x, left, high), (x + 0.42, left, high), (x + 0.42, 14, high + 0.2), (x, 14, high + 0.2)],
            (tone, tone - 16, tone - 30),
        )
        shot.fill(
            [(x, right, high), (x + 0.42, right, high), (x + 0.42, 14, high + 0.2), (x, 14, high + 0.2)],
            (tone - 12, tone - 26, tone - 40),
        )
        shot.stroke([(x, left, high), (x, 14, high + 0.2), (x, right, high)], (44, 36, 30), 5)
    return finish(reduce(shot), seed="marsh", vignette=0.15)


def _from_above(states: States, *, gutters: bool = False, ppi: float = 5.5) -> Shot:
    shot = Shot((68, -25, 27), (34.5, 9.5, 9.2), 52)
    garden(shot, near=(50, -10, 0))
    house(shot, states, ppi=ppi, gutters=gutters, beyond=masts.both)
    return shot


def stripped() -> Image.Image:
    """South slope and east hip stripped to the deck, the back still under old shingles."""
    shot = _from_above(_all("old", HS="stripped", HE="stripped"))
    _heap(shot, (38, -9, 0))
    return finish(reduce(shot), seed="stripped", focus=(0.34, 0.9))


def _heap(shot: Shot, middle: Vector) -> None:
    """Draw torn-off shingles on a ground sheet."""
    x, y, _ = middle
    shot.fill(
        [(x - 9, y - 3.5, 0.05), (x + 9, y - 3.5, 0.05), (x + 9, y + 3.5, 0.05), (x - 9, y + 3.5, 0.05)],
        (56, 92, 72),
    )
    rng = random.Random("heap")
    for _ in range(150):
        px, py = rng.gauss(x, 3.6), rng.gauss(y, 1.3)
        z = max(0.1, 1.3 - math.hypot((px - x) / 4, (py - y) / 1.6) * 0.8)
        a = rng.uniform(0, 3.14)
        dx, dy = math.cos(a) * 1.3, math.sin(a) * 1.3
        tone = rng.randint(62, 128)
        shot.fill(
            [
                (px, py, z),
                (px + dx, py + dy, z),
                (px + dx - dy * 0.4, py + dy + dx * 0.4, z + 0.1),
                (px - dy * 0.4, py + dx * 0.4, z + 0.1),
            ],
            (tone, round(tone * 0.86), round(tone * 0.74)),
        )


def taped() -> Image.Image:
    """Every joint of the south slope and the east hip under tape."""
    shot = _from_above(_all("old", HS="taped", HE="taped"), ppi=7)
    return finish(reduce(shot), seed="taped", focus=(0.34, 0.86))


def tarp() -> Image.Image:
    """Tarp over the south slope and the east hip at dusk."""
    shot = _from_above(_all("old", HS="tarp", HE="tarp"))
    for v in (0.5, 7.0):
        for start, end in ((on_roof("HS", 0.6 + v * 0.9, v, 0.05), on_roof("HS", 47.4 - v * 0.9, v, 0.05)),):
            shot.stroke([start, end], (206, 180, 138), 9)
    picture = reduce(shot)
    dusk = shaded(picture, 0.5, (0.86, 0.86, 1.12))
    glow = Image.linear_gradient("L").resize(picture.size).point([max(0, 120 - v) for v in range(256)])
    dusk.paste((236, 150, 92), (0, 0), glow.point([v * 0.9 for v in range(256)]))
    return finish(dusk, warm=(1.03, 0.98, 0.98), seed="dusk", vignette=0.36)


def felt_all() -> Image.Image:
    """The whole roof under felt, from the north-west: the service mast without its line, no antenna mast."""
    shot = Shot((-19, 53, 27), (16.5, 18, 9.4), 52)
    garden(shot, near=(0, 40, 0))
    house(shot, _all("felt"), gutters=False, ppi=7)
    masts.service(shot, line=False)
    return finish(reduce(shot), seed="felt all", focus=(0.34, 0.82))


def _north(state: State, marks: str) -> Image.Image:
    shot = Shot((26.5, 37.5, 18.5), (27.6, 21.5, 11.2), 52)
    garden(shot)
    house(shot, _all(state, HS="taped", HE="taped"), ppi=4, gutters=False)
    part: Window = (10, 0, 34, 12)
    flat = slope("HN", state, part, 13, marks)
    if state == "stripped":
        lay_tape(flat, 16 * 12, 4 * 12 - 2, 96, wide_in=1.6, finest=2)
    lay_slope(shot, "HN", flat)
    for u, v, kind in ((20.0, 6.0, "pipe"), (12.0, 5.0, "pipe"), (30.0, 4.0, "pipe")):
        if kind == "pipe":
            foot, top = on_roof("HN", u, v), on_roof("HN", u, v, 1.0)
            rod(shot, shot.at(foot), shot.at(top), 62, 60, (226, 226, 220))
            x, y = shot.at(top)
            ImageDraw.Draw(shot.picture).ellipse((x - 30, y - 12, x + 30, y + 12), fill=(40, 40, 42))
    return finish(reduce(shot), seed=f"north {state}")


def north_rot() -> Image.Image:
    """Rot around the old pipe boot, sheet S3 chalked."""
    return _north("stripped", "chalk")


def north_sheet() -> Image.Image:
    """New sheet S3 cut around the pipe."""
    return _north("renailed", "crayon")


def _foot(state: State, marks: str) -> Image.Image:
    shot = Shot((59.2, -2.2, 18.2), (46.1, 5.6, 10.4), 50)
    garden(shot, near=(52, 0, 0))
    house(
        shot,
        _all("old", HS="stripped" if state == "stripped" else "renailed", HE=state),
        ppi=4,
        gutters=False,
    )
    part: Window = (0, 0, 18, 11)
    flat = slope("HE", state, part, 14, marks)
    if state == "stripped":
        lay_tape(flat, 1.0 * 12, 0.7 * 12, 84, wide_in=1.5, finest=2)
    lay_slope(shot, "HE", flat)
    return finish(reduce(shot), seed=f"foot {state}", focus=(0.2, 0.68))


def east_rot() -> Image.Image:
    """Rot at the foot of the hip, S1 and S2 chalked."""
    return _foot("stripped", "chalk")


def east_sheets() -> Image.Image:
    """New sheets S1 and S2."""
    return _foot("renailed", "crayon")


def gutter_reset() -> Image.Image:
    """The north gutter hung again, water running to its outlet."""
    shot = Shot((8.6, 30.9, 11.3), (6.0, 28.3, 8.7), 54)
    garden(shot, near=(4, 30, 0))
    house(shot, _all("new"), ppi=5, gutters=False)
    lay_slope(shot, "HN", slope("HN", "new", (32, 0, 48, 7), 16))
    shot.fill([(20, 28.0, 8.97), (-0.1, 28.0, 8.97), (-0.1, 28.42, 8.9), (20, 28.42, 8.9)], (58, 62, 62))
    shot.fill(
        [(20, 28.06, 8.72), (-0.1, 28.06, 8.72), (-0.1, 28.38, 8.72), (20, 28.38, 8.72)], (120, 146, 162)
    )
    rng = random.Random("gutter water")
    for _ in range(70):
        x, y = rng.uniform(0, 12), rng.uniform(28.1, 28.34)
        shot.stroke([(x, y, 8.73), (x + rng.uniform(0.15, 0.5), y, 8.73)], (206, 222, 232), 4)
    shot.fill([(20, 28.0, 9.0), (-0.1, 28.0, 9.0), (-0.1, 28.07, 8.86), (20, 28.07, 8.86)], (226, 228, 226))
    front = [(20, 28.42, 8.93), (-0.1, 28.42, 8.93), (-0.1, 28.42, 8.5), (20, 28.42, 8.5)]
    shot.fill(front, (238, 240, 238))
    shot.fill(
        [(20, 28.42, 8.93), (-0.1, 28.42, 8.93), (-0.1, 28.46, 8.86), (20, 28.46, 8.86)], (252, 252, 250)
    )
    for k in range(9):
        x = 0.6 + k * 2.0
        shot.fill(
            [(x, 28.02, 8.95), (x + 0.1, 28.02, 8.95), (x + 0.1, 28.44, 8.95), (x, 28.44, 8.95)],
            (196, 200, 202),
        )
        shot.stroke([(x, 28.02, 8.95), (x, 28.44, 8.95)], (110, 114, 116), 3)
    shot.stroke([(20, 28.42, 8.5), (-0.1, 28.42, 8.5)], (150, 154, 152), 5)
    return finish(reduce(shot), seed="gutter", focus=(0.15, 0.85), blur_px=4)


def magnet() -> Image.Image:
    """The magnet rolled over the drive beside the house."""
    shot = Shot((54.5, -21, 5.6), (53.0, -8, 1.1), 54)
    garden(shot, near=(54, -10, 0))
    drive = m.plain((900, 1800), (172, 168, 160), "drive", [(3, 3), (80, 60), (300, 500)])
    shot.lay(drive, (50, -40, 0.02), (1, 0, 0), (0, 1, 0), 60)
    for y in (-16.0, -8.0, 0.0):
        shot.stroke([(50, y, 0.03), (65, y, 0.03)], (120, 116, 110), 8)
    house(shot, _all("new"))
    bushes(shot, [(40, -1.2), (45, -1.2)])
    x, y = 51.7, -13.6
    shot.fill(
        [
            (x - 0.2, y - 0.5, 0.03),
            (x + 2.9, y - 0.5, 0.03),
            (x + 2.8, y + 0.7, 0.03),
            (x - 0.4, y + 0.7, 0.03),
        ],
        (40, 38, 36),
        160,
        12,
    )
    bar = m.metal((400, 120), "bar", tone=(196, 112, 44))
    shot.box((x, y, 0.2), ((2.6, 0, 0), (0, 0.36, 0), (0, 0, 0.3)), bar, 100)
    for wheel in (x - 0.14, x + 2.74):
        ring = [(wheel, y + 0.18 + 0.3 * math.cos(a / 12), 0.3 + 0.3 * math.sin(a / 12)) for a in range(76)]
        shot.fill(ring, (36, 36, 38))
        hub = [
            (wheel - 0.02, y + 0.18 + 0.1 * math.cos(a / 12), 0.3 + 0.1 * math.sin(a / 12)) for a in range(76)
        ]
        shot.fill(hub, (180, 182, 184))
    rod(shot, shot.at((x + 1.3, y + 0.18, 0.45)), shot.at((x + 1.0, y - 2.0, 3.0)), 18, 28, (70, 72, 76))
    rng = random.Random("drive nails")
    for _ in range(40):
        px = rng.uniform(x + 0.05, x + 2.5)
        end = (px + rng.uniform(-0.1, 0.1), y - 0.06, rng.uniform(0.06, 0.16))
        shot.stroke([(px, y - 0.02, 0.22), end], (112, 92, 74), 5)
    return finish(reduce(shot), seed="drive magnet")
