"""Photos of the back slope and of the west hip before the work, and of the west hip after it."""

import math

from PIL import Image, ImageDraw

from .. import materials as m
from ..camera import Shot, plus
from ..flat import Flat
from ..garden import reduce
from ..tools import finish
from ..views_framing import rod
from . import masts
from .house import THROUGH, State, States, garden, house, lay_slope, on_roof, slope
from .wide import bushes

#: Old vents near the top of the west hip [ft]; they came off with the old roof.
OLD_VENTS: tuple[tuple[float, float], ...] = ((10.4, 9.2), (12.8, 9.2), (15.2, 9.2), (17.6, 9.2))


def _all(state: State) -> States:
    return {"HS": state, "HE": state, "HN": state, "HW": state}


def back_before() -> Image.Image:
    """The back slope under its old shingles, three pipes with old boots, seen as it is seen after the work."""
    shot = Shot((26.6, 43.0, 20.5), (27.0, 22.4, 10.9), 56)
    garden(shot)
    house(shot, _all("old"), ppi=4)
    flat = slope("HN", "old", (6, 0, 38, 15.17), 11)
    _boots(flat)
    lay_slope(shot, "HN", flat)
    for u, v, kind in THROUGH:
        if kind != "pipe":  # the hood of the bath fan is new
            continue
        foot, top = on_roof("HN", u, v), on_roof("HN", u, v, 1.0)
        scale = shot.focal / math.dist(shot.eye, foot)
        rod(shot, shot.at(foot), shot.at(on_roof("HN", u, v, 0.3)), scale * 0.6, scale * 0.36, (84, 80, 74))
        rod(shot, shot.at(on_roof("HN", u, v, 0.26)), shot.at(top), scale * 0.3, scale * 0.3, (212, 210, 200))
        x, y = shot.at(top)
        wide = scale * 0.15
        ImageDraw.Draw(shot.picture).ellipse(
            (x - wide, y - wide / 2, x + wide, y + wide / 2), fill=(40, 40, 42)
        )
    return finish(reduce(shot), warm=(1.02, 1.0, 0.96), seed="back before")


def _boots(flat: Flat) -> None:
    """Draw the flanges of the old boots, with the stain that runs down from the middle one."""
    for u, v, kind in THROUGH:
        if kind != "pipe":
            continue
        x, y = u * 12, v * 12
        flat.poly([(x - 6, y - 8), (x + 6, y - 8), (x + 6, y + 3), (x - 6, y + 3)], (104, 98, 90))
        flat.line([(x - 6, y - 8), (x + 6, y - 8)], (52, 48, 44), 0.7)
        if u == 20.0:
            flat.poly(
                [(x - 7, y - 8), (x + 8, y - 8), (x + 5, y - 46), (x - 3, y - 50)], (44, 36, 30), 120, 3
            )


def _west(state: State) -> Image.Image:
    shot = Shot((-25, 45, 6.6), (4.0, 19.0, 10.4), 40)
    garden(shot, near=(-10, 32, 0))
    house(shot, _all(state), ppi=7)
    if state == "old":
        for u, v in OLD_VENTS:
            _vent(shot, u, v)
    masts.antenna(shot)
    masts.service(shot)
    bushes(shot, [(-0.6, 4), (-0.6, 17), (-0.6, 24), (8, 29.2), (14, 29.2)])
    warm = (1.02, 1.0, 0.96) if state == "old" else (1.0, 1.0, 1.0)
    return finish(reduce(shot), warm=warm, seed=f"west {state}")


def _vent(shot: Shot, u: float, v: float) -> None:
    """Stand a low square vent on the west hip."""
    foot = on_roof("HW", u, v)
    skin = m.plain((90, 90), (98, 92, 84), "old vent", [(30, 30)])
    shot.box(plus(foot, (-0.5, -0.5, -0.2)), ((1.0, 0, 0), (0, 1.0, 0), (0, 0, 0.62)), skin, 60)


def west_before() -> Image.Image:
    """The west hip under its old roof, the service mast, the antenna mast and four old vents on it."""
    return _west("old")


def west_after() -> Image.Image:
    """The west hip from the same place after the work."""
    return _west("new")
