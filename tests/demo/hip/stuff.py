"""Surfaces of the hip house: old three-tab shingles, old deck nailed again, joint tape, felt, new shingles."""

import math
import random

from PIL import Image

from .. import materials as m
from ..camera import Colour, shaded
from ..flat import Flat, grain, speckled
from ..tools import cap, nail_head

TAB_IN, THREE_TAB_COURSE_IN = 12.0, 5.0
OLD_BROWNS: tuple[Colour, ...] = ((126, 106, 88), (134, 113, 93), (118, 99, 83), (139, 119, 100))
SHEET_LONG_IN, SHEET_HIGH_IN = 96.0, 48.0
TRUSS_IN = 24.0
TAPE: Colour = (74, 78, 82)
RUST: Colour = (92, 58, 38)
HEAD: Colour = (188, 190, 190)
#: From the end of a sheet to its nails.
END_IN = 0.6
SLATE: tuple[float, float, float] = (0.86, 0.95, 1.1)


def three_tab(flat: Flat) -> Image.Image:
    """Return old three-tab shingles for a flat's window: even tabs, slots set off by half a tab."""
    sheet = Flat((flat.left, flat.bottom, flat.right, flat.top), flat.ppi, OLD_BROWNS[0])
    first = math.floor(flat.bottom / THREE_TAB_COURSE_IN) - 1
    last = math.ceil(flat.top / THREE_TAB_COURSE_IN)
    for course in range(last, first - 1, -1):
        rng = random.Random(f"three-tab {course}")
        low, high = course * THREE_TAB_COURSE_IN, (course + 1) * THREE_TAB_COURSE_IN
        x = math.floor(flat.left / TAB_IN - 1) * TAB_IN + (6.0 if course % 2 else 0.0)
        while x < flat.right:
            base = rng.choice(OLD_BROWNS)
            fade = rng.uniform(0.95, 1.05)
            tone = (round(base[0] * fade), round(base[1] * fade), round(base[2] * fade))
            sheet.poly([(x, low), (x + TAB_IN, low), (x + TAB_IN, high), (x, high)], tone)
            sheet.line([(x, low), (x, high)], (44, 36, 30), 0.34)
            x += TAB_IN
        sheet.line([(flat.left, low), (flat.right, low)], (48, 40, 34), 0.3)
        sheet.line([(flat.left, low - 0.3), (flat.right, low - 0.3)], (70, 58, 48), 0.3, 120)
    picture = sheet.picture
    cell = max(1.0, flat.ppi * 0.08)
    picture = speckled(picture, grain("three-tab grit", picture.size, (cell, cell)), 9)
    streaks = grain("three-tab streaks", picture.size, (flat.ppi * 5, flat.ppi * 70))
    return speckled(picture, streaks, 12)


def slate(flat: Flat) -> Image.Image:
    """Return the new laminated shingles in their color."""
    return shaded(m.shingles(flat, worn=False), 0.98, SLATE)


def joints(flat: Flat) -> tuple[list[float], list[tuple[float, float]]]:
    """Return the deck's joints in a window: heights of the level ones, and (u, row) of the upright ones."""
    rows = [row * SHEET_HIGH_IN for row in range(1, 4)]
    upright = [
        (column * SHEET_LONG_IN + (SHEET_HIGH_IN if row % 2 else 0.0), row * SHEET_HIGH_IN)
        for row in range(4)
        for column in range(-1, 8)
    ]
    return rows, [(u, low) for u, low in upright if flat.left - 8 < u < flat.right + 8]


def old_deck(flat: Flat, name: str, *, renailed: bool = False) -> Image.Image:
    """Return the old plywood deck with its joints and nails; renailed, bright heads stand 4 in apart.

    Nails stand on trusses only: two rows where sheets end, none along the joints between trusses.
    """
    sheet = Flat((flat.left, flat.bottom, flat.right, flat.top), flat.ppi)
    sheet.picture = m.plywood(sheet, f"{name} deck", m.OLD_PLY, patches=40)
    rows, upright = joints(sheet)
    for y in rows:
        sheet.line([(sheet.left, y), (sheet.right, y)], (34, 25, 18), 0.5)
    for u, low in upright:
        sheet.line([(u, low), (u, low + SHEET_HIGH_IN)], (34, 25, 18), 0.5)
    apart, across, tone = (4.0, 0.3, HEAD) if renailed else (12.0, 0.22, RUST)
    ends = set(upright)
    u = math.floor(sheet.left / TRUSS_IN) * TRUSS_IN
    while u < sheet.right:
        for row in range(4):
            low = row * SHEET_HIGH_IN
            sides = (-END_IN, END_IN) if (u, low) in ends else (0.0,)
            step = apart if renailed or len(sides) == 1 else 6.0
            for k in range(round(SHEET_HIGH_IN / step)):
                for side in sides:
                    sheet.disc(u + side, low + k * step + 0.9, across, tone)
        u += TRUSS_IN
    return sheet.picture


def joint_tape(flat: Flat) -> None:
    """Lay 4 in tape over every joint of the deck."""
    rows, upright = joints(flat)
    for y in rows:
        _strip(flat, (flat.left, y), (flat.right, y))
    for u, low in upright:
        _strip(flat, (u, low), (u, low + SHEET_HIGH_IN))


def _strip(flat: Flat, start: tuple[float, float], end: tuple[float, float]) -> None:
    flat.line([start, end], (18, 16, 14), 4.5, 110, 0.2)
    flat.line([start, end], TAPE, 4.0)
    flat.line([start, end], (92, 97, 101), 0.4, 150)


def felt(flat: Flat, name: str) -> None:
    """Cover a slope with No. 30 felt, 32 in to the weather, cap nails 6 in at laps and 12 in between."""
    flat.picture = m.felt(flat, f"{name} felt")
    start = math.floor(flat.left / 12) * 12
    for row in range(7):
        y = row * 32.0
        flat.line([(flat.left, y - 0.5), (flat.right, y - 0.5)], (8, 8, 8), 1.3, 180, 0.4)
        flat.line([(flat.left, y + 0.2), (flat.right, y + 0.2)], (98, 96, 94), 0.3)
        flat.line([(flat.left, y + 17), (flat.right, y + 17)], (150, 150, 146), 0.24, 90)
        u = start
        while u < flat.right:
            cap(flat, u + 2, y + 1.8)
            cap(flat, u + 8, y + 1.8)
            cap(flat, u + 8, y + 12)
            cap(flat, u + 2, y + 22)
            u += 12


def heads(
    flat: Flat, spots: list[tuple[float, float]], *, bright: bool = True, radius_in: float = 0.15
) -> None:
    """Draw driven nail heads."""
    for x, y in spots:
        nail_head(flat, x, y, radius_in, bright=bright)
