"""Photos of the opened roof: rafters on center, the rotten one, and the new one beside it."""

import math

from PIL import Image, ImageDraw

from . import materials as m
from .camera import Colour, Shot, shaded
from .flat import Flat
from .garden import reduce
from .tools import INK, finish, nail_head, tape


def _rafter_scene(
    eye: tuple[float, float, float], target: tuple[float, float, float], fov: float, *, portrait: bool = False
) -> Shot:
    shot = Shot(eye, target, fov, portrait=portrait, sky=(22, 18, 15))
    shot.lay(shaded(m.wool((2000, 2000), 9), 0.5), (-80, -70, -26), (1, 0, 0), (0, 1, 0), 12)
    joist = m.wood((1700, 60), 10, "joist", m.OLD_FIR)
    for y in (-8, 16, 40, 64):
        shot.box((-80, y, -27), ((160, 0, 0), (0, 1.5, 0), (0, 0, 2.6)), shaded(joist, 0.6), 10)
    return shot


def open_rafters() -> Image.Image:
    """P10: open rafters, 24 in on center."""
    shot = _rafter_scene((12.6, -19, 33), (12.9, 9.5, -3), 58)
    for x in (-24, 48, 0, 24):
        texture = m.wood((1400, 240), 14, f"rafter {x}", m.OLD_FIR)
        shot.box(
            (x, -40, -7.25), ((0, 100, 0), (1.5, 0, 0), (0, 0, 7.25)), texture, 14, light=(0.1, -0.2, 0.95)
        )
        for y in (-20, -8, 4, 16, 28):
            hole = Flat((0, 0, 1, 1), 30, (40, 28, 18))
            shot.lay(hole.picture, (x + 0.7, y, 0.02), (0.16, 0, 0), (0, 0.16, 0), 30)
    deck = Flat((-40, 27, 70, 60), 14)
    deck.picture = m.plywood(deck, "upper deck", m.OLD_PLY)
    deck.line([(-40, 27.2), (70, 27.2)], (64, 46, 30), 0.5)
    covered = m.shingles(deck, worn=True, courses_from=36)
    deck.skin([(-40, 36), (70, 36), (70, 60), (-40, 60)], covered)
    shot.fill([(-40, 25, -7), (70, 25, -7), (70, 40, -7), (-40, 40, -7)], (8, 6, 5), 200, 20)
    shot.lay(deck.picture, (-40, 27, 0.5), (1, 0, 0), (0, 1, 0), 14)
    strip = tape(60, 0, 28.5, wide_in=1.25, finest=8)
    for x in (0, 24):
        shot.fill(
            [(x, 7.0, 0.02), (x + 1.5, 7.0, 0.02), (x + 1.5, 8.3, 0.02), (x, 8.3, 0.02)], (10, 8, 6), 130, 8
        )
    shot.lay(strip, (0, 7.2, 0.04), (1, 0, 0), (0, 1, 0), 60)
    _tape_case(shot, (28.3, 6.9, -0.5))
    return finish(reduce(shot), focus=(0.1, 0.9))


def _tape_case(shot: Shot, corner: tuple[float, float, float]) -> None:
    """Draw the case of the steel tape."""
    shell = m.plain((300, 300), (52, 54, 58), "case", [(60, 60)])
    x, y, z = corner
    shot.fill(
        [(x - 0.4, y - 1.2, z), (x + 3.4, y - 1.2, z), (x + 3.4, y + 1.4, z), (x - 0.4, y + 1.4, z)],
        (8, 6, 5),
        150,
        14,
    )
    shot.box((x, y, z), ((2.9, 0, 0), (0, 1.7, 0), (0, 0, 2.7)), shell, 60)
    badge = Flat((0, 0, 2.2, 2.0), 60, (232, 190, 46))
    badge.text("25 ft", 1.1, 1.0, 0.55, INK, bold=0.06)
    shot.lay(badge.picture, (x + 0.35, y - 0.01, z + 0.35), (1, 0, 0), (0, 0, 1), 60)


def _rotten_top(length: int, ppi: int) -> Image.Image:
    flat = Flat((0, 0, length, 1.5), ppi)
    flat.picture = m.wood(flat.size, ppi, "jack", m.OLD_FIR)
    mask = flat.mask([(11, -1), (33, -1), (29, 2.5), (14, 2.5)], 255, 2.0)
    return m.rotten(flat.picture, mask, "jack rot", ppi)


def rotten_rafter() -> Image.Image:
    """P11: rot in the top edge of a jack rafter, with a probe stuck in."""
    shot = _rafter_scene((11.5, -10, 16.5), (1.0, 7.5, -1.8), 42, portrait=True)
    ppi = 40
    for x in (-24, 24):
        shot.box(
            (x, -20, -7.25),
            ((0, 90, 0), (1.5, 0, 0), (0, 0, 7.25)),
            m.wood((3600, 300), ppi, f"by {x}", m.OLD_FIR),
            ppi,
        )
    side = Flat((0, 0, 60, 7.25), ppi)
    side.picture = m.wood(side.size, ppi, "jack side", m.OLD_FIR)
    edge = [(11.0, 8.0), (12.5, 6.4), (16, 5.2), (20, 4.5), (25, 4.9), (29, 5.8), (33.5, 8.0)]
    side.picture = m.rotten(side.picture, side.mask(edge, 255, 0.5), "jack side rot", ppi)
    shot.box(
        (0, -14, -7.25), ((0, 60, 0), (1.5, 0, 0), (0, 0, 7.25)), side.picture, ppi, top=_rotten_top(60, ppi)
    )
    shot.lay(shaded(side.picture, 0.8), (1.5, -14, -7.25), (0, 1, 0), (0, 0, 1), ppi)
    tip, collar, end = (0.8, 8.0, -0.7), (1.9, 7.0, 3.0), (3.35, 5.7, 7.6)
    shot.fill([(0.3, 8.4, 0.01), (1.3, 8.4, 0.01), (1.2, 7.5, 0.01), (0.3, 7.5, 0.01)], (6, 5, 4), 220, 8)
    rod(shot, shot.at(tip), shot.at(collar), 12, 22, (172, 176, 180))
    rod(shot, shot.at(collar), shot.at(end), 76, 104, (176, 46, 34))
    middle = tuple((a * 0.86 + b * 0.14) for a, b in zip(collar, end, strict=True))
    rod(shot, shot.at(collar), shot.at((middle[0], middle[1], middle[2])), 60, 70, (216, 186, 70))
    return finish(reduce(shot), focus=(0.25, 0.8))


def rod(
    shot: Shot,
    start: tuple[float, float],
    end: tuple[float, float],
    thin: float,
    thick: float,
    colour: Colour,
) -> None:
    """Draw a round rod between two points of the picture [px], thinner at its start."""
    pen = ImageDraw.Draw(shot.picture)
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = math.hypot(dx, dy)
    nx, ny = -dy / length, dx / length
    strips = 22
    for k in range(strips):
        a, b = (k / strips - 0.5), ((k + 1) / strips - 0.5)
        tone = 0.4 + 0.78 * max(0.0, math.cos(((a + b) / 2 - 0.14) * 2.9))
        fill = tuple(min(255, round(c * tone)) for c in colour)
        pen.polygon(
            [
                (start[0] + nx * thin * a, start[1] + ny * thin * a),
                (start[0] + nx * thin * b, start[1] + ny * thin * b),
                (end[0] + nx * thick * b, end[1] + ny * thick * b),
                (end[0] + nx * thick * a, end[1] + ny * thick * a),
            ],
            fill=fill,
        )


def sistered() -> Image.Image:
    """P12: the new rafter beside the old one, two rows of nails."""
    shot = _rafter_scene((25, -13, 12.5), (3.2, 22, -3.6), 46)
    ppi = 30
    valley = m.wood((7900, 230), ppi, "valley rafter", m.OLD_FIR)
    shot.box((-183, 31.7, -7.25), ((253, 62.3, 0), (-0.4, 1.45, 0), (0, 0, 7.25)), shaded(valley, 0.85), ppi)
    for x in (-24,):
        shot.box(
            (x, -20, -7.25),
            ((0, 88, 0), (1.5, 0, 0), (0, 0, 7.25)),
            m.wood((3300, 230), ppi, f"by {x}", m.OLD_FIR),
            ppi,
        )
    old = m.wood((2700, 230), ppi, "old jack", m.OLD_FIR)
    shot.box((0, -10, -7.25), ((0, 84, 0), (1.5, 0, 0), (0, 0, 5.9)), shaded(old, 0.85), ppi)
    for y, deep in ((-10, 18), (34, 40)):
        shot.box((0, y, -1.4), ((0, deep, 0), (1.5, 0, 0), (0, 0, 1.4)), old, ppi)
    side = Flat((0, 0, 72, 7.25), ppi)
    side.picture = m.wood(side.size, ppi, "new jack", m.FIR)
    m.knot(side, 31, 2.6, 0.4)
    m.knot(side, 58, 5.0, 0.3)
    for k in range(6):
        for row in (1.6, 5.6):
            nail_head(side, 5 + 12 * k + (0 if row < 3 else 0.4), row, 0.2)
    side.text("2x8  SOUTHERN PINE", 47, 3.6, 0.75, (70, 52, 110), bold=0.03)
    shot.box(
        (1.5, -6, -7.25),
        ((0, 72, 0), (1.5, 0, 0), (0, 0, 7.25)),
        m.wood((2200, 230), ppi, "new top", m.FIR),
        ppi,
    )
    shot.lay(shaded(side.picture, 0.84), (3.0, -6, -7.25), (0, 1, 0), (0, 0, 1), ppi)
    return finish(reduce(shot), focus=(0.2, 0.86))
