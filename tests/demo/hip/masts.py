"""What stands on the west hip: the electric service mast with its line, and the antenna mast."""

import math

from PIL import Image, ImageDraw

from ..camera import Colour, Shot, Vector, plus
from ..garden import reduce
from ..tools import finish
from ..views_framing import rod
from .house import garden, house, lay_slope, on_roof, slope

#: Where they stand on the west hip [ft], as the record has the service mast.
SERVICE_FT, ANTENNA_FT = (13.0, 3.0), (7.0, 6.0)
SERVICE_HIGH_FT, ANTENNA_HIGH_FT = 4.2, 6.2
GALVANIZED: Colour = (158, 162, 164)


def _scale(shot: Shot, point: Vector) -> float:
    """Return the pixels of one foot at a point."""
    return shot.focal / math.dist(shot.eye, point)


def service(shot: Shot, *, line: bool = True) -> None:
    """Stand the service mast on the west hip, its line leading off to the pole in the west."""
    foot = on_roof("HW", *SERVICE_FT)
    top = plus(foot, (0, 0, SERVICE_HIGH_FT))
    wide = _scale(shot, foot) * 0.24
    rod(
        shot,
        shot.at(plus(foot, (0, 0, -0.1))),
        shot.at(plus(foot, (0, 0, 0.4))),
        wide * 2,
        wide,
        (60, 62, 64),
    )
    rod(shot, shot.at(plus(foot, (0, 0, 0.3))), shot.at(top), wide, wide, GALVANIZED)
    x, y = shot.at(top)
    pen = ImageDraw.Draw(shot.picture)
    pen.ellipse((x - wide, y - wide * 0.8, x + wide, y + wide * 0.8), fill=(84, 88, 92))
    if line:
        sag = [plus(top, (-t * 5.0, -t * 0.6, t * 0.5 - 1.4 * t * (12 - t) / 36)) for t in range(13)]
        shot.stroke(sag, (34, 34, 36), max(4, round(wide * 0.3)))


def antenna(shot: Shot) -> None:
    """Stand the antenna mast on the west hip."""
    foot = on_roof("HW", *ANTENNA_FT)
    top = plus(foot, (0, 0, ANTENNA_HIGH_FT))
    wide = _scale(shot, foot) * 0.12
    rod(shot, shot.at(foot), shot.at(top), wide * 1.3, wide * 1.3, (104, 106, 108))
    for k, half in enumerate((1.3, 1.1, 0.9, 0.7)):
        y = 0.9 - k * 0.6
        at = plus(top, (0, y, -0.15))
        shot.stroke(
            [plus(at, (-half, 0, 0)), plus(at, (half, 0, 0))], (92, 94, 96), max(4, round(wide * 0.7))
        )
    shot.stroke(
        [plus(top, (0, -1.1, -0.15)), plus(top, (0, 1.1, -0.15))], (104, 106, 108), max(4, round(wide))
    )


def both(shot: Shot) -> None:
    """Stand both masts on the west hip, the line on its mast."""
    antenna(shot)
    service(shot)


def boot() -> Image.Image:
    """The service mast without its line; its boot's flange lies under the courses above."""
    shot = Shot((4.4, 21.4, 15.0), (1.9, 14.6, 12.4), 50, portrait=True)
    garden(shot)
    house(shot, {"HS": "new", "HE": "new", "HN": "new", "HW": "new"}, ppi=4, gutters=False)
    flat = slope("HW", "new", (8, 0, 22, 9), 18)
    over = flat.picture.copy()
    u, v = SERVICE_FT[0] * 12, SERVICE_FT[1] * 12
    cut = 6 * 5.625  # a course starts here, a little below the mast
    low, half = v - 10.0, 9.0
    flat.poly(
        [(u - half, low - 0.8), (u + half + 0.5, low - 0.8), (u + half, v), (u - half, v)],
        (6, 6, 8),
        170,
        0.6,
    )
    flat.poly([(u - half, low), (u + half, low), (u + half, v + 10), (u - half, v + 10)], (172, 176, 178))
    flat.line([(u - half, low), (u + half, low)], (222, 224, 226), 0.3)
    arc = [
        (u + 5.4 * math.cos(a), v + 0.4 + 5.4 * math.sin(a))
        for a in (k * math.pi / 24 for k in range(24, -1, -1))
    ]
    edge = [(u - half - 1, cut), (u - 5.4, cut), *arc, (u + 5.4, cut), (u + half + 1, cut)]
    flat.line([(x, y - 0.3) for x, y in edge], (8, 8, 8), 0.9, 170, 0.25)
    flat.skin([*edge, (u + half + 1, v + 14), (u - half - 1, v + 14)], over)
    lay_slope(shot, "HW", flat)
    foot = on_roof("HW", *SERVICE_FT)
    rod(shot, shot.at(plus(foot, (0, 0, -0.02))), shot.at(plus(foot, (0, 0, 0.5))), 330, 200, (52, 54, 56))
    top = plus(foot, (0, 0, SERVICE_HIGH_FT))
    rod(shot, shot.at(plus(foot, (0, 0, 0.4))), shot.at(top), 150, 132, GALVANIZED)
    x, y = shot.at(top)
    pen = ImageDraw.Draw(shot.picture)
    pen.ellipse((x - 110, y - 70, x + 120, y + 90), fill=(84, 88, 92))
    pen.ellipse((x - 90, y - 60, x + 60, y + 20), fill=(122, 126, 130))
    for k in range(3):  # the ends of the mast's own wires, taped and bent up
        path = [(x - 70 + k * 30, y + 50), (x - 110 + k * 26, y + 120), (x - 128 + k * 26, y + 96 - k * 14)]
        pen.line(path, fill=(24, 24, 26), width=15, joint="curve")
    return finish(reduce(shot), seed="mast", focus=(0.1, 0.9))
