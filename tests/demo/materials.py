"""Surfaces of the demo roof as flat pictures: shingles, plywood, lumber, felt, metal, siding, grass."""

import math
import random
from collections.abc import Sequence

from PIL import Image, ImageChops, ImageDraw, ImageFilter

from .camera import Colour, shaded
from .flat import Flat, grain, mixed, speckled

EXPOSURE_IN = 5.625
SHINGLE_IN = 39.375
NEW_GRAYS: tuple[Colour, ...] = (
    (108, 108, 106),
    (123, 122, 118),
    (97, 97, 97),
    (135, 132, 125),
    (104, 102, 98),
)
OLD_GRAYS: tuple[Colour, ...] = (
    (140, 130, 115),
    (150, 139, 122),
    (129, 121, 109),
    (156, 146, 129),
    (135, 125, 110),
)
NEW_PLY: tuple[Colour, Colour] = ((205, 164, 108), (232, 200, 150))
OLD_PLY: tuple[Colour, Colour] = ((112, 88, 64), (146, 119, 88))
FIR: tuple[Colour, Colour] = ((196, 152, 96), (226, 190, 136))
OLD_FIR: tuple[Colour, Colour] = ((118, 90, 62), (150, 118, 82))
CHALK: Colour = (38, 84, 150)
WHITE_CHALK: Colour = (226, 228, 226)


def shingles(flat: Flat, *, worn: bool, courses_from: float = 0.0) -> Image.Image:
    """Return laminated shingles for a flat's window; the same place gets the same shingles every time."""
    grays, seed = (OLD_GRAYS, "old") if worn else (NEW_GRAYS, "new")
    sheet = Flat((flat.left, flat.bottom, flat.right, flat.top), flat.ppi, grays[0])
    first = math.floor((flat.bottom - courses_from) / EXPOSURE_IN) - 1
    last = math.ceil((flat.top - courses_from) / EXPOSURE_IN)
    for course in range(last, first - 1, -1):
        low = courses_from + course * EXPOSURE_IN
        rng = random.Random(f"{seed} course {course}")
        x = -420.0 + course % 7 * 5.6
        raised = rng.random() < 0.5
        while x < flat.right:
            wide = rng.uniform(3.2, 8.5) if raised else rng.uniform(2.6, 7.0)
            base = rng.choice(grays)
            fade = rng.uniform(0.94, 1.06) if raised else rng.uniform(0.78, 0.9)
            if x + wide > flat.left:
                colour = (round(base[0] * fade), round(base[1] * fade), round(base[2] * fade))
                sheet.poly(
                    [(x, low), (x + wide, low), (x + wide, low + EXPOSURE_IN), (x, low + EXPOSURE_IN)], colour
                )
                if not raised:
                    band = rng.uniform(0.9, 1.5)
                    dark = (round(colour[0] * 0.74), round(colour[1] * 0.74), round(colour[2] * 0.74))
                    top = low + EXPOSURE_IN
                    sheet.poly([(x, top - band), (x + wide, top - band), (x + wide, top), (x, top)], dark)
                    sheet.line([(x + 0.1, low), (x + 0.1, top)], dark, 0.22)
                    sheet.line([(x + wide, low), (x + wide, top)], (176, 171, 162), 0.08)
                butt = 0.42 if raised else 0.2
                sheet.poly([(x, low - butt), (x + wide, low - butt), (x + wide, low), (x, low)], (47, 44, 42))
            x += wide
            raised = not raised
        offset = (course * 11.0) % SHINGLE_IN
        joint = offset - 12 * SHINGLE_IN
        while joint < flat.right:
            if joint > flat.left:
                sheet.line([(joint, low), (joint, low + EXPOSURE_IN)], (52, 49, 46), 0.12)
            joint += SHINGLE_IN
    picture = sheet.picture
    near = min(1.0, flat.ppi / 30)
    picture = picture.filter(ImageFilter.GaussianBlur(0.035 * flat.ppi))
    cell = max(1.0, flat.ppi * 0.07)
    picture = speckled(picture, grain(f"{seed} granules", picture.size, (cell, cell)), 5 + 9 * near)
    blots = grain(f"{seed} blots", picture.size, (flat.ppi * 26, flat.ppi * 40))
    picture = speckled(picture, blots, 13 if worn else 6)
    if worn:
        streaks = grain("old streaks", picture.size, (flat.ppi * 3.5, flat.ppi * 60))
        picture = speckled(picture, streaks, 9)
    return picture


def wood(
    size: tuple[int, int],
    ppi: float,
    seed: str,
    colours: tuple[Colour, Colour],
    *,
    upright: bool = False,
    rings: float = 9,
) -> Image.Image:
    """Return wood whose grain runs to the right, or up."""
    if upright:
        return wood((size[1], size[0]), ppi, seed, colours, rings=rings).transpose(Image.Transpose.ROTATE_90)
    field = grain(seed, size, (ppi * 34, ppi * 2.6))
    wave = grain(seed + " wave", size, (ppi * 9, ppi * 1.1))
    field = Image.blend(field, wave, 0.16).filter(ImageFilter.GaussianBlur(max(1.0, ppi * 0.03)))
    bands = field.point(
        [
            round(127 + 110 * math.sin(v / 255 * 2 * math.pi * rings) * (0.55 + 0.45 * math.sin(v / 19)))
            for v in range(256)
        ]
    )
    bands = bands.filter(ImageFilter.GaussianBlur(max(0.6, ppi * 0.02)))
    fibre = grain(seed + " fibre", size, (max(2.0, ppi * 2.2), max(1.0, ppi * 0.035)))
    tone = grain(seed + " tone", size, (ppi * 30, ppi * 14))
    share = Image.blend(Image.blend(bands, fibre, 0.34), tone, 0.3)
    low, high = colours
    return mixed(low, high, share.point([max(0, min(255, (v - 128) * 1.7 + 128)) for v in range(256)]))


def plywood(flat: Flat, seed: str, colours: tuple[Colour, Colour] = NEW_PLY, patches: int = 6) -> Image.Image:
    """Return the face of a plywood sheet with its boat patches and knots, as large as the flat."""
    sheet = Flat(
        (flat.left, flat.bottom, flat.right, flat.top),
        flat.ppi,
        wood(flat.size, flat.ppi, seed, colours, rings=10),
    )
    rng = random.Random(seed)
    low, high = colours
    for _ in range(patches):
        x, y = rng.uniform(flat.left, flat.right), rng.uniform(flat.bottom, flat.top)
        long, wide = rng.uniform(1.3, 1.8), rng.uniform(0.36, 0.5)
        boat = [
            (x + long * math.cos(a) * 0.95, y + wide * math.sin(a) * abs(math.sin(a)) ** 0.4)
            for a in _turn(28)
        ]
        sheet.poly(boat, high, 120)
        sheet.line([*boat, boat[0]], (low[0] - 46, low[1] - 44, low[2] - 36), 0.05, 170)
    for _ in range(patches // 2):
        x, y = rng.uniform(flat.left, flat.right), rng.uniform(flat.bottom, flat.top)
        knot(sheet, x, y, rng.uniform(0.2, 0.4))
    return sheet.picture


def knot(flat: Flat, x: float, y: float, radius: float) -> None:
    """Draw a knot in wood."""
    for share, colour in (
        (1.7, (176, 128, 78)),
        (1.25, (140, 90, 50)),
        (1.0, (104, 62, 34)),
        (0.6, (78, 44, 24)),
    ):
        ring = [(x + 1.5 * radius * share * math.cos(a), y + radius * share * math.sin(a)) for a in _turn(32)]
        flat.poly(ring, colour, 150, 0.04)


def _turn(steps: int) -> list[float]:
    return [k * 2 * math.pi / steps for k in range(steps)]


def rotten(picture: Image.Image, where: Image.Image, seed: str, ppi: float) -> Image.Image:
    """Return wood with rot where the mask is light: wet brown, black at the heart, crumbling."""
    blots = Image.blend(
        grain(seed, picture.size, (ppi * 11, ppi * 8)),
        grain(seed + " fine", picture.size, (ppi * 2.6, ppi * 0.5)),
        0.42,
    )
    depth = ImageChops.multiply(where, blots.point([max(0, min(255, (v - 92) * 3.6)) for v in range(256)]))
    wet = Image.composite(
        shaded(picture, 0.6, (1, 0.9, 0.8)), picture, where.filter(ImageFilter.GaussianBlur(ppi * 2.2))
    )
    crumbs = mixed((24, 17, 13), (78, 48, 30), grain(seed + " crumbs", picture.size, (ppi * 0.9, ppi * 0.28)))
    out = Image.composite(crumbs, wet, depth)
    heart = ImageChops.multiply(depth, blots.point([max(0, min(255, (v - 150) * 5)) for v in range(256)]))
    out = Image.composite(Image.new("RGB", out.size, (15, 12, 11)), out, heart)
    mould = grain(seed + " mould", picture.size, (ppi * 2.6, ppi * 2.2)).point(
        [max(0, min(255, (v - 196) * 9)) for v in range(256)]
    )
    mould = ImageChops.multiply(mould.filter(ImageFilter.GaussianBlur(ppi * 0.5)), where).point(
        [v * 0.3 for v in range(256)]
    )
    out.paste((170, 164, 146), (0, 0), mould)
    return out


def felt(flat: Flat, seed: str = "felt") -> Image.Image:
    """Return No. 30 felt: near black, matt, slightly waved."""
    picture = Image.new("RGB", flat.size, (54, 53, 53))
    picture = speckled(picture, grain(seed, flat.size, (flat.ppi * 22, flat.ppi * 3.2)), 9)
    picture = speckled(picture, grain(seed + " wave", flat.size, (flat.ppi * 7, flat.ppi * 15)), 7)
    cell = max(1.0, flat.ppi * 0.09)
    return speckled(picture, grain(seed + " nap", flat.size, (cell, cell)), 8)


def membrane(flat: Flat, seed: str = "membrane") -> Image.Image:
    """Return the self-adhered sheet: blue-grey film with a printed net of fine lines."""
    sheet = Flat((flat.left, flat.bottom, flat.right, flat.top), flat.ppi, (92, 98, 106))
    step = 3.0
    for slope in (1, -1):
        offset = sheet.left - (sheet.top - sheet.bottom) - step
        while offset < sheet.right + (sheet.top - sheet.bottom):
            x = math.floor(offset / step) * step
            high = sheet.top - sheet.bottom
            ends = (
                [(x, sheet.bottom), (x + high, sheet.top)]
                if slope > 0
                else [(x + high, sheet.bottom), (x, sheet.top)]
            )
            sheet.line(ends, (104, 110, 119), 0.1)
            offset += step
    picture = speckled(sheet.picture, grain(seed, flat.size, (flat.ppi * 9, flat.ppi * 4)), 12)
    cell = max(1.0, flat.ppi * 0.1)
    return speckled(picture, grain(seed + " grit", flat.size, (cell, cell)), 6)


def metal(
    size: tuple[int, int], seed: str, *, upright: bool = False, tone: Colour = (198, 202, 205)
) -> Image.Image:
    """Return mill aluminum with its rolling marks and a soft reflection."""
    if upright:
        return metal((size[1], size[0]), seed, tone=tone).transpose(Image.Transpose.ROTATE_90)
    picture = Image.new("RGB", size, tone)
    picture = speckled(picture, grain(seed, size, (size[0] * 0.8, max(1.0, size[1] / 90))), 7)
    return speckled(picture, grain(seed + " sheen", size, (size[0] * 0.45, size[1] * 0.6)), 24)


def siding(flat: Flat, colour: Colour = (203, 208, 196), lap_in: float = 7.0) -> Image.Image:
    """Return painted lap siding."""
    sheet = Flat((flat.left, flat.bottom, flat.right, flat.top), flat.ppi, colour)
    low = math.floor(flat.bottom / lap_in) * lap_in
    while low < flat.top:
        for part in range(12):
            fade = 0.93 + 0.08 * part / 11
            a, b = low + lap_in * part / 12, low + lap_in * (part + 1) / 12
            sheet.poly(
                [(flat.left, a), (flat.right, a), (flat.right, b), (flat.left, b)],
                (round(colour[0] * fade), round(colour[1] * fade), round(colour[2] * fade)),
            )
        sheet.line([(flat.left, low), (flat.right, low)], (104, 108, 100), 0.4)
        sheet.line([(flat.left, low - 0.45), (flat.right, low - 0.45)], (142, 147, 138), 0.6)
        low += lap_in
    return speckled(sheet.picture, grain("siding", flat.size, (flat.ppi * 14, flat.ppi * 0.6)), 4)


def grass(size: tuple[int, int], seed: str, blade_px: float) -> Image.Image:
    """Return mown lawn seen from above."""
    share = Image.blend(
        grain(seed, size, (blade_px, blade_px * 1.6)),
        grain(seed + " tufts", size, (blade_px * 9, blade_px * 7)),
        0.5,
    )
    picture = mixed((82, 98, 56), (136, 148, 92), share)
    return speckled(picture, grain(seed + " lawn", size, (blade_px * 60, blade_px * 40)), 12)


def sky(size: tuple[int, int], horizon: int, seed: str = "sky") -> Image.Image:
    """Return a spring sky with thin clouds and a row of trees at the horizon."""
    column = Image.new("RGB", (1, size[1]))
    for y in range(size[1]):
        share = min(1.0, y / max(1, horizon))
        column.putpixel((0, y), (round(118 + 94 * share), round(160 + 62 * share), round(205 + 22 * share)))
    picture = column.resize(size)
    clouds = Image.blend(
        grain(seed, size, (size[0] / 3, size[1] / 9)),
        grain(seed + " wisps", size, (size[0] / 9, size[1] / 30)),
        0.35,
    ).point([max(0, min(210, (v - 120) * 2.4)) for v in range(256)])
    picture.paste((244, 245, 244), (0, 0), clouds.filter(ImageFilter.GaussianBlur(size[0] / 160)))
    rng = random.Random(seed)
    trees = Image.new("L", size)
    pen = ImageDraw.Draw(trees)
    x = -60.0
    while x < size[0] + 60:
        high = size[1] * rng.uniform(0.1, 0.24)
        wide = size[0] * rng.uniform(0.025, 0.06)
        for _ in range(170):
            cx, cy = rng.gauss(x, wide * 0.5), horizon - rng.uniform(0, high)
            r = wide * rng.uniform(0.05, 0.15) * (1.1 - (horizon - cy) / high * 0.5)
            pen.ellipse((cx - r, cy - r, cx + r, cy + r), fill=255)
        x += wide * 0.8
    pen.rectangle((0, horizon - size[1] * 0.04, size[0], max(0, horizon) + 4), fill=255)
    leaves = mixed(
        (58, 78, 58), (104, 124, 88), grain(seed + " leaves", size, (size[0] / 130, size[1] / 100))
    )
    picture.paste(leaves, (0, 0), trees.filter(ImageFilter.GaussianBlur(size[0] / 900)))
    if horizon < size[1]:
        picture.paste((112, 124, 76), (0, max(0, horizon), *size))
    return picture


def plain(
    size: tuple[int, int], colour: Colour, seed: str, cells: Sequence[tuple[float, float]]
) -> Image.Image:
    """Return one colour with soft uneven light, for plaster, paper, cardboard and concrete."""
    picture = Image.new("RGB", size, colour)
    for cell_x, cell_y in cells:
        picture = speckled(picture, grain(f"{seed} {cell_x}", size, (cell_x, cell_y)), 7)
    return picture


def wool(size: tuple[int, int], cell_px: float) -> Image.Image:
    """Return blown insulation as it lies between joists."""
    share = Image.blend(
        grain("wool", size, (cell_px, cell_px)), grain("wool lumps", size, (cell_px * 4, cell_px * 3)), 0.5
    )
    share = share.point([max(0, min(255, (v - 128) * 1.9 + 128)) for v in range(256)])
    return speckled(
        mixed((96, 84, 70), (182, 168, 148), share),
        grain("wool beds", size, (cell_px * 40, cell_px * 30)),
        16,
    )
