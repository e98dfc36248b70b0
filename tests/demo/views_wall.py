"""Photos of the dormer's east wall: its foot before the work, the kick-out, and step flashing in its courses."""

import math

from PIL import Image

from . import materials as m
from .camera import Shot, shaded
from .dormer import east_wall
from .flat import Flat, Point, grain, speckled
from .garden import reduce
from .house import CHEEK_V_FT, EAVE_FT, SLOPE, Plane, slope
from .tools import finish, tape
from .views_roof import Window, closer, settle

WALL_IN, FOOT_IN = 288.0, CHEEK_V_FT * 12  # where the wall stands on the front slope [in]
PIECE_IN, LEG_IN = 8.0, 4.0
LIP_IN = 0.45  # a piece ends this far above the edge of the shingle that covers it
FIRST = 9  # course the wall's foot stands in; the first piece lies on it, lapped over the kick-out
SMOOTH = (92, 92, 92)


def wall_foot_before() -> Image.Image:
    """P04: the step flashing cut short above the valley."""
    shot = Shot((28.3, 1.9, 14.5), (24.3, 5.0, 11.75), 33, portrait=True)
    flats = closer(shot, "before", {"MS": (21.5, 2, 29, 9.5), "WW": (-8, 1.5, 1.5, 9.5)}, 20)
    flats["WW"].line([(-48, 53), (-38, 42), (-25, 28)], (46, 38, 30), 7, 120, 2)
    cheek = east_wall(30, flashed=False)
    _old_flashing(cheek)
    settle(shot, flats, cheek=shaded(cheek.picture, 0.95))
    return finish(reduce(shot), focus=(0.28, 0.9), blur_px=4)


def _old_flashing(cheek: Flat) -> None:
    cut = 17.0
    for k in range(16, -1, -1):
        x = cut + k * 5.03
        low = x / 2
        cheek.poly(
            [(x, low - 0.5), (x + 7.2, low + 3.1), (x + 5.6, low + 6.3), (x - 1.6, low + 2.7)],
            (148, 146, 140),
        )
        cheek.line([(x, low - 0.5), (x - 1.6, low + 2.7)], (84, 80, 74), 0.3)
    cheek.poly([(2, 1), (cut - 0.6, cut / 2 - 0.4), (cut - 2.2, cut / 2 + 2.8), (2, 5.2)], (34, 27, 22))
    cheek.skin(
        [(2, 1), (cut - 0.6, cut / 2 - 0.4), (cut - 2.2, cut / 2 + 2.8), (2, 5.2)],
        m.wood(cheek.size, cheek.ppi, "wet sheathing", ((30, 22, 17), (74, 52, 36))),
    )
    cheek.line([(0, 5.4), (cut - 1.5, cut / 2 + 3.6)], (226, 226, 218), 0.5)
    for k in range(9):
        x = 1.5 + k * 1.9
        cheek.line([(x, x / 2 + 4), (x + 0.2, x / 2 + 5.6 + k % 3)], (66, 54, 44), 0.9, 90, 0.5)
    cheek.line([(cut - 0.4, cut / 2 - 0.6), (cut - 2.1, cut / 2 + 2.9)], (216, 214, 206), 0.35)


def _onto(s_in: float, up_in: float) -> Point:
    """Return a point of the wall's picture: ``s_in`` up the slope from its foot, ``up_in`` square off the roof."""
    return s_in / SLOPE - up_in * 0.447, s_in * 0.447 + up_in * 0.894


def _wall(last: int, *, kick_out: bool, tape_at: float | None = None) -> Image.Image:
    """Return the east wall with a piece on every course up to ``last``, each lapped over the one below."""
    wall = east_wall(40, flashed=False, back_in=9.5)
    starts = [(course + 1) * m.EXPOSURE_IN + LIP_IN - FOOT_IN for course in range(FIRST, last + 1)]
    if kick_out:
        starts.insert(0, -1.0)
    for number, s in enumerate(starts):
        corners = [_onto(s, 0), _onto(s + PIECE_IN, 0), _onto(s + PIECE_IN, LEG_IN), _onto(s, LEG_IN)]
        wall.line([corners[3], corners[0]], (30, 30, 34), 0.7, 130, 0.18)
        tone = 194 + number * 37 % 19
        wall.poly(corners, (tone, tone + 3, tone + 6))
        wall.line([*corners, corners[0]], (126, 130, 134), 0.1)
        wall.line([_onto(s + 0.15, 0.2), _onto(s + 0.15, LEG_IN - 0.1)], (240, 243, 245), 0.18)
        wall.disc(*_onto(s + PIECE_IN - 1.0, LEG_IN - 0.6), 0.16, (112, 116, 120))
    if tape_at is not None:
        strip = tape(wall.ppi, 0, 7.2)
        wall.put(strip, *_onto(tape_at, 3.6), 90 + 26.565, 0.1)
    return speckled(wall.picture, grain("metal wall", wall.size, (200, 200)), 7)


def _from_the_wing(flat: Flat, top_in: float) -> None:
    """Lay the wing's shingles across the valley onto the front slope, where the cut courses will cover them."""
    half = max(flat.right - flat.left, flat.top - flat.bottom)
    wide = Flat((-half, -half, half, half), flat.ppi)
    # Unfolded, a course of the wing runs 83.6 degrees across those of the front slope.
    turned = m.shingles(wide, worn=False).rotate(-83.6)
    left, top = (turned.width - flat.size[0]) // 2, (turned.height - flat.size[1]) // 2
    over = turned.crop((left, top, left + flat.size[0], top + flat.size[1]))
    reach = 12 * math.sqrt(1 + 1 / SLOPE**2)
    strip: list[Point] = [
        (240 - reach, 0),
        (240, 0),
        (240 + top_in / SLOPE, top_in),
        (240 + top_in / SLOPE - reach, top_in),
    ]
    clear = [(max(x, WALL_IN) if y > FOOT_IN else x, y) for x, y in strip]
    flat.line([strip[0], strip[3]], (8, 8, 8), 1.0, 170, 0.3)
    flat.skin([*clear[:3], (max(clear[3][0], WALL_IN), top_in)], over)


def _courses(flat: Flat, last: int) -> None:
    """Lay the front slope's courses up to ``last``, cut beside the valley; its own piece lies open on it."""
    done = m.shingles(flat, worn=False)
    back = 2 * math.sqrt(1 + 1 / SLOPE**2)
    top = (last + 1) * m.EXPOSURE_IN
    head = top + 13.25 - m.EXPOSURE_IN

    def cut(v: float) -> Point:
        return 240 + v / SLOPE - back, v

    flat.line([(WALL_IN, head), cut(head)], (8, 8, 8), 0.6, 160, 0.2)
    smooth = m.plain(flat.size, SMOOTH, "headlap", [(4, 4), (200, 90)])
    flat.skin([(WALL_IN, top), cut(top), cut(head), (WALL_IN, head)], smooth)
    flat.line([cut(FOOT_IN), cut(head)], (16, 15, 15), 0.5, 190, 0.15)
    flat.skin(
        [(flat.left, 0), cut(0), cut(top), (WALL_IN, top), (WALL_IN, FOOT_IN), (flat.left, FOOT_IN)], done
    )
    for course in range(FIRST + 1, last + 1):
        v = course * m.EXPOSURE_IN
        flat.line([(WALL_IN, v - 0.25), cut(v - 0.25)], (18, 17, 17), 0.4, 210, 0.06)
    low, out = top + LIP_IN, WALL_IN + LEG_IN
    flange: list[Point] = [(WALL_IN, low), (out, low), (out, low + PIECE_IN), (WALL_IN, low + PIECE_IN)]
    flat.poly([(x + 0.35, y - 0.35) for x, y in flange], (8, 8, 8), 150, 0.25)
    flat.poly(flange, (192, 196, 199))
    flat.line([*flange, flange[0]], (104, 108, 112), 0.1)
    flat.line([(WALL_IN + 0.7, low), (WALL_IN + 0.7, low + PIECE_IN)], (226, 229, 231), 0.6, 150, 0.25)


def _woven(shot: Shot, windows: dict[Plane, Window], last: int, wall: Image.Image, ppi: float = 24) -> None:
    """Draw the roof while the front slope is shingled up the wall: the wing is done, felt waits above."""
    flats = closer(shot, "felt", windows, ppi)
    flats["WW"] = slope("WW", "done", windows["WW"], ppi)
    _from_the_wing(flats["MS"], 108)
    _courses(flats["MS"], last)
    settle(shot, flats, cheek=wall)


def step_flashing() -> Image.Image:
    """P24: step flashing woven with the shingles; the tape stands on the piece that is still open."""
    shot = Shot((28.0, 3.3, 15.2), (24.15, 5.75, 12.1), 27)
    wall = _wall(13, kick_out=False, tape_at=14 * m.EXPOSURE_IN + LIP_IN - FOOT_IN + 4.6)
    _woven(shot, {"MS": (22.5, 4, 30, 10.5), "WW": (-10, 4, -1, 11)}, 13, wall)
    return finish(reduce(shot), focus=(0.25, 0.85), blur_px=4)


def kick_out() -> Image.Image:
    """P23: the kick-out at the foot of the wall, on the first courses."""
    shot = Shot((27.2, 1.7, 13.9), (24.25, 4.35, 11.5), 28, portrait=True)
    _woven(shot, {"MS": (20.5, 1.5, 29, 9.5), "WW": (-8, 1.5, 2, 9.5)}, FIRST, _wall(FIRST, kick_out=True))
    foot = EAVE_FT + 2.0
    bend_low, bend_high = (24.02, 4.28, foot + 0.14), (24.02, 4.13, foot + 0.46)
    tip_low, tip_high = (24.3, 3.66, foot + 0.16), (24.33, 3.6, foot + 0.52)
    pan = [bend_low, tip_low, (24.56, 3.92, foot + 0.29), (24.36, 4.5, foot + 0.26)]
    shot.fill([bend_low, (24.36, 3.54, foot + 0.17), (24.7, 3.9, foot + 0.34), pan[3]], (12, 12, 14), 130, 14)
    shot.fill(pan, (176, 181, 185))
    shot.fill([bend_low, tip_low, tip_high, bend_high], (222, 226, 229))
    shot.stroke([bend_high, tip_high, tip_low], (120, 124, 128), 4)
    shot.stroke([bend_low, tip_low, pan[2], pan[3]], (110, 114, 118), 3)
    shot.stroke([bend_low, bend_high], (150, 154, 158), 3)
    return finish(reduce(shot), focus=(0.25, 0.88), blur_px=4)
