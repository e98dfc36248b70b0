"""The shed dormer of the demo house, whose east wall meets the valley."""

import math

from PIL import Image

from . import materials as m
from .camera import Shot, shaded
from .flat import Flat
from .house import EAVE_FT, board, faces, window


def dormer(shot: Shot, *, ppi: float = 6, cheek: Image.Image | None = None, flashed: bool = True) -> None:
    """Stand the shed dormer on the front slope; ``cheek`` replaces the picture of its east wall."""
    foot, top = EAVE_FT + 2.0, EAVE_FT + 4.0
    edge = [(0.0, 0.0), (8.0, 4.0), (0.0, 2.0)]
    if faces(shot, (24, 4, foot), (1, 0, 0)):
        if cheek is not None:
            shot.lay(cheek, (24, 4, foot), (0, 1, 0), (0, 0, 1), cheek.width / 8, edge)
        else:
            shot.lay(
                shaded(east_wall(ppi, flashed=flashed).picture, 0.94),
                (24, 4, foot),
                (0, 1, 0),
                (0, 0, 1),
                ppi * 12,
                edge,
            )
    if faces(shot, (14, 4, foot), (-1, 0, 0)):
        flat = Flat((0, 0, 96, 48), ppi)
        flat.picture = m.siding(flat)
        shot.lay(shaded(flat.picture, 0.7), (14, 4, foot), (0, 1, 0), (0, 0, 1), ppi * 12, edge)
    front = Flat((0, 0, 120, 24), ppi)
    front.picture = m.siding(front)
    for x in (22, 68):
        window(front, x, 6, 30, 12)
    front.poly([(0, 0), (120, 0), (120, 2.6), (0, 2.6)], (176, 180, 182))
    front.line([(0, 2.6), (120, 2.6)], (110, 112, 112), 0.4)
    for x in (2, 118):
        front.line([(x, 2.6), (x, 24)], (242, 242, 237), 4)
    front.poly([(0, 20), (120, 20), (120, 24), (0, 24)], (60, 62, 58), 120, 1.5)
    shot.lay(front.picture, (14, 4, foot), (1, 0, 0), (0, 0, 1), ppi * 12)
    over = 0.18
    low, high = top - over * 0.25, top + 2.0
    if faces(shot, (14, 4, top), (0, -0.25, 1)):
        roof = Flat((0, 0, 124.3, 101.2), ppi)
        roof.picture = m.shingles(roof, worn=True)
        step = (0.0, 1 / math.sqrt(1.0625), 0.25 / math.sqrt(1.0625))
        shot.lay(shaded(roof.picture, 1.1), (14 - over, 4 - over, low), (1, 0, 0), step, ppi * 12)
    for x, outward in ((14 - over, (-1.0, 0.0, 0.0)), (24 + over, (1.0, 0.0, 0.0))):
        if faces(shot, (x, 4, top), outward):
            board(shot, (x, 4 - over, low), (x, 12, high), 0.28, 0.9 if x > 20 else 0.72)
    board(shot, (14 - over, 4 - over, low), (24 + over, 4 - over, low), 0.36, 1.0)


def east_wall(ppi: float, *, flashed: bool = True, back_in: float = 0) -> Flat:
    """Return the dormer's east wall, seen from the east: north is to the right, the roof rises below it.

    Args:
        ppi: Pixels for one inch.
        flashed: True for whole step flashing; False for the old one, cut short above the valley.
        back_in: Height of siding taken off above the roof [in].
    """
    flat = Flat((0, 0, 96, 48), ppi)
    flat.picture = m.siding(flat)
    flat.line([(2, 0), (2, 48)], (240, 240, 235), 4)
    if back_in:
        flat.poly([(0, -2), (96, 46), (96, 46 + back_in * 1.118), (0, back_in * 1.118)], (92, 98, 106))
        flat.line([(0, back_in * 1.118), (96, 48 + back_in * 1.118)], (70, 66, 60), 0.5)
    if flashed:
        flat.line([(0, 2.2), (96, 50.2)], (188, 192, 195), 4)
        for k in range(18):
            x = k * 5.03
            flat.line([(x, x / 2), (x - 2, x / 2 + 4.3)], (120, 124, 128), 0.25)
    flat.line([(0, 0), (96, 48)], (26, 26, 26), 2.5, 120, 0.8)
    return flat
