"""Photo of nail heads in low light: what stands up throws a shadow, what was driven too deep holds one."""

import math

from PIL import Image

from .. import materials as m
from ..camera import Colour, shaded
from ..flat import Flat
from ..garden import reduce
from ..opened import rule
from ..tools import finish
from ..views_near import looked_down

HEAD: Colour = (196, 192, 182)


def flush_heads() -> Image.Image:
    """New deck nails in low light from the left: heads level with the face, a ruler's edge across them."""
    flat = Flat((-8, -8, 9, 10), 170)
    flat.picture = shaded(m.plywood(flat, "low light", patches=2), 0.86)
    flat.line([(0.5, -8), (0.5, 10)], m.CHALK, 0.1, 130, 0.04)
    for k in range(-2, 3):
        _head(flat, 0.52 + (k % 2) * 0.05, k * 4.0)
    for x, y in ((-0.9, -6.2), (6.9, 2.6)):  # splinters of the face, which the low light shows
        flat.line([(x, y), (x + 0.9, y + 0.1)], (96, 66, 40), 0.06, 190)
        flat.line([(x + 0.06, y - 0.06), (x + 0.96, y + 0.04)], (250, 232, 196), 0.05, 150)
    flat.chalk("S1", -1.9, 1.9, 1.1, m.CHALK, 2)
    flat.put(rule(170, 9.5), 1.1, 0.4, 90, 0.04)
    shot = looked_down(flat, (0.7, 0.4), 8.6, lean_deg=36, turn_deg=-14)
    picture = reduce(shot)
    lamp = Image.linear_gradient("L").rotate(90).resize(picture.size)  # light to the left
    share = lamp.point([max(0, min(235, round((v - 40) * 1.05))) for v in range(256)])
    lit = shaded(picture, 1.22, (1.1, 1.0, 0.84))
    lit.paste(shaded(picture, 0.34, (1.0, 0.94, 0.88)), (0, 0), share)
    return finish(lit, focus=(0.14, 0.88), seed="low light", vignette=0.3)


def _head(flat: Flat, x: float, y: float) -> None:
    """Draw a head level with the wood: a thin bright rim to the light, no shadow beyond it."""
    flat.disc(x, y, 0.155, (88, 64, 42))
    flat.disc(x, y, 0.141, HEAD)
    rim = [(x + 0.132 * math.cos(a / 10), y + 0.132 * math.sin(a / 10)) for a in range(20, 43)]
    flat.line(rim, (250, 244, 226), 0.022)
    for k in range(-2, 3):
        flat.line([(x + k * 0.045, y - 0.08), (x + k * 0.045, y + 0.08)], (150, 146, 136), 0.012, 150)
