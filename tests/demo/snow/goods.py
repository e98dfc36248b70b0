"""Surfaces of the snow-country house as flat pictures: boards, snow, ice, tarp, base sheet, brick."""

import math
import random
from collections.abc import Sequence

from PIL import Image, ImageFilter

from .. import materials as m
from ..camera import Colour, shaded, toned
from ..flat import Flat, Point, grain, mixed, speckled
from ..tools import nail_head

Wood = tuple[Colour, Colour]

#: A 1x6 with the gap beside it [in].
BOARD_IN, GAP_IN = 5.5, 0.125
COURSE_IN = BOARD_IN + GAP_IN
OLD_PINE: Wood = ((104, 80, 58), (146, 118, 86))
NEW_PINE: Wood = ((214, 176, 118), (238, 208, 156))
BLUE: Colour = (38, 92, 156)


def boards(
    flat: Flat,
    seed: str,
    colours: Wood,
    *,
    from_in: float = 0.0,
    gap_in: float = GAP_IN,
    joints_in: Sequence[float] = (),
    nails: bool = True,
) -> Image.Image:
    """Return a board deck over a flat's window, rafters 24 in apart under it.

    Args:
        flat: Gives window and scale.
        seed: Names the wood.
        colours: Dark and light of the wood.
        from_in: Where the lowest board starts [in].
        gap_in: Gap between boards [in].
        joints_in: Where boards end [in]; every other course ends at every other of them.
        nails: Draw two nails in each board on each rafter.
    """
    sheet = Flat((flat.left, flat.bottom, flat.right, flat.top), flat.ppi, (22, 17, 13))
    ppi, step = flat.ppi, 5.5 + gap_in
    wide = sheet.size[0]
    spare = max(8, round(14 * ppi))
    high = max(4, round(5.5 * ppi))
    source = m.wood((wide + spare, high * 5), ppi, seed, colours, rings=6)
    first = math.floor((flat.bottom - from_in) / step) - 1
    last = math.ceil((flat.top - from_in) / step)
    for course in range(first, last + 1):
        rng = random.Random(f"{seed} board {course}")
        shift, row = rng.randrange(spare), rng.randrange(max(1, high * 4))
        strip = source.crop((shift, row, shift + wide, row + high))
        low = from_in + course * step
        sheet.picture.paste(shaded(strip, rng.uniform(0.86, 1.08)), (0, round((flat.top - low - 5.5) * ppi)))
        for x in joints_in[course % 2 :: 2]:
            sheet.line([(x, low), (x, low + 5.5)], (24, 17, 12), max(0.12, 1.1 / ppi))
        sheet.line([(flat.left, low + 0.1), (flat.right, low + 0.1)], (30, 20, 12), 0.18, 90)
        for _ in range(round((flat.right - flat.left) / 40)):
            if nails and ppi >= 4:
                m.knot(sheet, rng.uniform(flat.left, flat.right), low + rng.uniform(1.2, 4.2), 0.34)
        if nails and ppi >= 4:
            for rafter in range(math.floor(flat.left / 24), math.ceil(flat.right / 24) + 1):
                for up in (1.3, 4.2):
                    _nail(sheet, rafter * 24 + 0.5 + rng.uniform(-0.3, 0.3), low + up, colours is NEW_PINE)
    return sheet.picture


def _nail(flat: Flat, x: float, y: float, bright: bool) -> None:
    if flat.ppi < 12:
        flat.disc(x, y, 0.2, (150, 152, 152) if bright else (52, 40, 30))
    else:
        nail_head(flat, x, y, 0.15, bright=bright)


def snow(size: tuple[int, int], seed: str, lump_px: float) -> Image.Image:
    """Return settled snow in the shade of a winter morning."""
    share = Image.blend(
        grain(seed, size, (lump_px, lump_px * 0.7)),
        grain(seed + " far", size, (lump_px * 7, lump_px * 5)),
        0.55,
    )
    picture = mixed((206, 216, 230), (248, 250, 253), share)
    return speckled(picture, grain(seed + " grit", size, (1.5, 1.5)), 4)


def ice(size: tuple[int, int], seed: str, cell_px: float) -> Image.Image:
    """Return grey-blue ice with white inclusions and dark depths."""
    share = Image.blend(
        grain(seed, size, (cell_px, cell_px * 1.7)),
        grain(seed + " deep", size, (cell_px * 5, cell_px * 4)),
        0.5,
    )
    picture = mixed(
        (122, 148, 172), (226, 238, 246), share.point([max(0, min(255, (v - 80) * 1.8)) for v in range(256)])
    )
    return speckled(picture, grain(seed + " gleam", size, (cell_px * 0.3, cell_px * 2)), 12)


def tarp(flat: Flat, seed: str = "tarp") -> Image.Image:
    """Return a woven blue tarp with its folds and the crossed creases of the packet it came in."""
    sheet = Flat((flat.left, flat.bottom, flat.right, flat.top), flat.ppi, BLUE)
    for k in range(-60, 120):
        sheet.line([(k * 9, flat.bottom), (k * 9, flat.top)], toned(BLUE, 0.9), 0.3, 110)
        sheet.line([(flat.left, k * 9), (flat.right, k * 9)], toned(BLUE, 1.08), 0.3, 70)
    for k in range(-6, 12):
        sheet.line([(k * 48, flat.bottom), (k * 48 + 2, flat.top)], toned(BLUE, 1.34), 0.7, 150, 0.4)
        sheet.line([(k * 48 + 1.2, flat.bottom), (k * 48 + 3.2, flat.top)], toned(BLUE, 0.62), 0.9, 140, 0.5)
        sheet.line([(flat.left, k * 40), (flat.right, k * 40 + 2)], toned(BLUE, 1.26), 0.6, 130, 0.4)
    folds = grain(seed, flat.size, (flat.ppi * 15, flat.ppi * 46))
    picture = speckled(sheet.picture, folds, 34)
    return speckled(picture, grain(seed + " fine", flat.size, (flat.ppi * 4, flat.ppi * 14)), 14)


def base_sheet(flat: Flat, seed: str = "base") -> Image.Image:
    """Return a smooth-faced base sheet: dark brown-grey, sanded."""
    picture = Image.new("RGB", flat.size, (84, 80, 78))
    picture = speckled(picture, grain(seed, flat.size, (flat.ppi * 16, flat.ppi * 5)), 9)
    cell = max(1.0, flat.ppi * 0.12)
    return speckled(picture, grain(seed + " sand", flat.size, (cell, cell)), 8)


def bricks(flat: Flat, seed: str = "brick") -> Image.Image:
    """Return weathered brick in running bond."""
    sheet = Flat((flat.left, flat.bottom, flat.right, flat.top), flat.ppi, (166, 158, 148))
    rng = random.Random(seed)
    row, y = 0, math.floor(flat.bottom / 2.67) * 2.67
    while y < flat.top:
        x = flat.left - 8 - row % 2 * 4.0
        while x < flat.right:
            tone = rng.choice(((136, 66, 50), (150, 76, 56), (122, 58, 46), (142, 84, 66), (110, 62, 52)))
            sheet.poly([(x, y), (x + 7.6, y), (x + 7.6, y + 2.25), (x, y + 2.25)], tone)
            sheet.line([(x, y + 0.05), (x + 7.6, y + 0.05)], (70, 46, 40), 0.12, 130)
            x += 8.0
        y, row = y + 2.67, row + 1
    picture = speckled(sheet.picture, grain(seed, flat.size, (flat.ppi * 5, flat.ppi * 7)), 14)
    cell = max(1.0, flat.ppi * 0.12)
    return speckled(picture, grain(seed + " pores", flat.size, (cell, cell)), 12)


def wet(picture: Image.Image, mask: Image.Image, depth: float = 0.42) -> Image.Image:
    """Return wood darkened by water where the mask is light, with an uneven rim."""
    uneven = grain("wet rim", picture.size, (picture.width / 34, picture.height / 12))
    share = Image.blend(mask, uneven, 0.28).point([max(0, min(255, (v - 74) * 2.0)) for v in range(256)])
    return Image.composite(
        shaded(picture, depth, (1, 0.95, 0.9)), picture, share.filter(ImageFilter.GaussianBlur(2))
    )


def rect(left: float, bottom: float, right: float, top: float) -> list[Point]:
    """Return the corners of a rectangle."""
    return [(left, bottom), (right, bottom), (right, top), (left, top)]
