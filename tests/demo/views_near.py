"""Photos taken close up: rafters, nails, stamps, tape readings, laps and shingles."""

import math
import random

from PIL import Image

from . import materials as m
from .camera import Colour, Shot, shaded
from .flat import Flat, grain, speckled
from .garden import reduce
from .tools import INK, RED, cap, finish, lay_tape, nail, nail_head, paper_label, tape_case

PENCIL: Colour = (52, 50, 48)


def looked_down(
    flat: Flat,
    middle: tuple[float, float],
    span_in: float,
    *,
    lean_deg: float = 22,
    portrait: bool = False,
    turn_deg: float = 3,
) -> Shot:
    """Return a shot of a flat picture from above.

    Args:
        flat: The picture; it should reach well beyond what is seen.
        middle: Point in the middle of the shot [in].
        span_in: Width that is seen there [in].
        lean_deg: How far the camera leans back from straight down.
        portrait: True for a picture higher than wide.
        turn_deg: How far it is turned about the vertical.
    """
    away = span_in / 2 / math.tan(math.radians(26))
    lean, turn = math.radians(lean_deg), math.radians(turn_deg)
    x, y = middle
    back = away * math.sin(lean)
    eye = (x - back * math.sin(turn), y - back * math.cos(turn), away * math.cos(lean))
    shot = Shot(eye, (x, y, 0), 52, portrait=portrait, sky=(58, 52, 46))
    shot.lay(flat.picture, (flat.left, flat.bottom, 0), (1, 0, 0), (0, 1, 0), flat.ppi)
    return shot


def old_nail() -> Image.Image:
    """P09: an old deck nail, 2-1/2 in, smooth."""
    flat = Flat((-4.6, -4.6, 7.8, 6), 260)
    flat.picture = m.plywood(flat, "nail bench", m.OLD_PLY, patches=1)
    lay_tape(flat, 0, -0.2, 7.8, shadow=0.06)
    flat.put(nail(260, 2.5, 0.131, ring=False, old=True), 1.25, 0.1, 0, 0.06)
    flat.put(nail(260, 2.5, 0.131, ring=False, old=True), 1.9, 1.7, -24, 0.06)
    return finish(reduce(looked_down(flat, (1.7, 0.35), 7.2)), focus=(0.2, 0.8))


def ring_nail() -> Image.Image:
    """P16: a new ring shank nail, 2-3/8 in, and the label of its box."""
    flat = Flat((-3.8, -5.6, 6.6, 9), 250)
    flat.picture = m.plywood(flat, "ring bench", patches=2)
    box = paper_label(
        (5.6, 2.9),
        250,
        [("2-3/8 x .113", 1.95, 0.56, RED), ("RING", 1.05, 0.5, INK), ("hot-dip galvanized", 0.4, 0.22, INK)],
        paper=(226, 206, 168),
    )
    box.line([(0.12, 0.12), (5.48, 0.12), (5.48, 2.78), (0.12, 2.78), (0.12, 0.12)], RED, 0.05)
    flat.put(box.picture.convert("RGBA"), 1.45, 2.9, 3, 0.16)
    lay_tape(flat, 0, -0.55, 6.6, shadow=0.06)
    flat.put(nail(250, 2.375, 0.113, ring=True), 1.1875, -0.25, 0, 0.06)
    flat.put(nail(250, 2.375, 0.113, ring=True), 0.4, -2.6, 31, 0.06)
    flat.put(nail(250, 2.375, 0.113, ring=True), 3.1, -2.9, -17, 0.06)
    return finish(reduce(looked_down(flat, (1.45, 0.55), 6.5, portrait=True, lean_deg=14)), focus=(0.12, 0.9))


def grade_stamp() -> Image.Image:
    """P15: the stamp on the panel."""
    flat = Flat((-2.5, -2, 17.5, 15), 170)
    flat.picture = m.plywood(flat, "stamped sheet", patches=1)
    stamp = Flat((0, 0, 8, 5), 170)
    blue: Colour = (40, 46, 92)
    mark = Flat((0, 0, 8, 5), 170, (0, 0, 0))
    white: Colour = (255, 255, 255)
    mark.line([(0.2, 0.2), (7.8, 0.2), (7.8, 4.8), (0.2, 4.8), (0.2, 0.2)], white, 0.09)
    mark.line([(0.2, 3.55), (7.8, 3.55)], white, 0.06)
    mark.line([(0.2, 1.45), (7.8, 1.45)], white, 0.06)
    mark.line([(4, 1.45), (4, 3.55)], white, 0.06)
    mark.text("PLYWOOD", 4, 4.15, 0.5, white, bold=0.04)
    mark.text("32/16", 2.1, 2.72, 0.8, white, bold=0.05)
    mark.text("span", 2.1, 1.85, 0.28, white, bold=0.04)
    mark.text("15/32", 5.9, 2.72, 0.8, white, bold=0.05)
    mark.text("inch", 5.9, 1.85, 0.28, white, bold=0.04)
    mark.text("EXPOSURE 1", 4, 0.82, 0.62, white, bold=0.05)
    worn = grain("stamp ink", mark.size, (5, 4)).point([min(255, 165 + v) for v in range(256)])
    share = Image.composite(mark.picture.convert("L"), Image.new("L", mark.size), worn).point(
        [v * 0.82 for v in range(256)]
    )
    sprite = Image.new("RGBA", stamp.size, (*blue, 0))
    sprite.putalpha(share)
    flat.put(sprite, 7.4, 6.4, 3)
    return finish(reduce(looked_down(flat, (7.4, 6.3), 11.4)), focus=(0.15, 0.85))


def edge_nails() -> Image.Image:
    """P17: the ends of two panels over a rafter, nail heads 6 in apart on either side of the joint."""
    flat = Flat((-9, -13, 27, 16), 95)
    flat.picture = m.wood(flat.size, 95, "old end", m.OLD_PLY, upright=True, rings=10)
    fresh = m.wood(flat.size, 95, "new end", m.NEW_PLY, upright=True, rings=10)
    flat.skin([(-9, -13), (27, -13), (27, 0), (-9, 0)], fresh)
    flat.line([(-9, 0.03), (27, 0.03)], (26, 18, 12), 0.14)
    flat.line([(-9, -0.08), (27, -0.08)], (244, 220, 178), 0.06)
    for x in (-6, 0, 6, 12, 18, 24):
        nail_head(flat, x, 0.44, 0.16)
        nail_head(flat, x + 0.08, -0.42, 0.16)
    for x in (-4.3, 8.2, 20.6):  # the holes of the old nails
        flat.disc(x, 0.5, 0.09, (30, 20, 13), 220, 0.02)
    flat.chalk("S3", 6.4, -4.6, 2.2, m.CHALK, -3)
    lay_tape(flat, 0, 1.95, 27, side=1, shadow=0.1)
    return finish(reduce(looked_down(flat, (9, -0.6), 23, lean_deg=26)), focus=(0.2, 0.85))


def field_nails() -> Image.Image:
    """P18: nail heads 6 in apart along a rafter line."""
    flat = Flat((-9, -13, 27, 16), 95)
    flat.picture = m.wood(flat.size, 95, "field panel", m.NEW_PLY, upright=True, rings=10)
    line = [(-9.0, 0.62), (27.0, 0.62)]
    flat.line(line, m.CHALK, 0.1, 130, 0.04)
    flat.line(line, m.CHALK, 0.05, 150)
    for x in (-6, 0, 6, 12, 18, 24):
        nail_head(flat, x, 0.5 + (x % 4) * 0.03, 0.16)
    lay_tape(flat, 0, 0.1, 27, side=1, shadow=0.1)
    flat.chalk("rafter", 9.2, 4.4, 1.0, m.CHALK, 2)
    return finish(reduce(looked_down(flat, (9, 0.8), 23, lean_deg=26, turn_deg=-5)), focus=(0.25, 0.85))


def felt_lap() -> Image.Image:
    """P20: the head lap of the felt, 4 in, with cap nails."""
    flat = Flat((-16, -12, 15, 15), 95)
    flat.picture = m.plywood(flat, "under felt")
    lower, upper = m.felt(flat, "lower felt"), m.felt(flat, "upper felt")
    flat.line([(-16, 4.05), (15, 4.05)], (40, 26, 14), 0.22, 130, 0.08)
    flat.skin([(-16, -12), (15, -12), (15, 4), (-16, 4)], lower)
    flat.line([(-16, 3.97), (15, 3.97)], (98, 96, 94), 0.06)
    flat.line([(-16, -3.4), (15, -3.4)], (166, 166, 160), 0.1, 150)
    end = [(3.0, -0.02), (3.0, 15.0)]
    flat.line([(-16, -0.12), (3.1, -0.12), (3.1, 15)], (6, 6, 6), 0.9, 190, 0.25)
    flat.skin([(-16, 0), (3, 0), (3.0, 15), (-16, 15)], shaded(upper, 1.14))
    flat.line([(-16, 0.02), (3, 0.02)], (118, 116, 113), 0.08)
    flat.line(end, (112, 110, 107), 0.08)
    flat.line([(-16, 8.6), (3, 8.6)], (166, 166, 160), 0.1, 150)
    for x in (-14.2, -8.2, -2.2):
        cap(flat, x, 1.7)
    cap(flat, 9.4, -6.6)
    cap(flat, -6.0, -8.4)
    lay_tape(flat, 4.55, 0, 7.2, angle_deg=90, side=1, shadow=0.12)
    flat.put(tape_case(flat.ppi), 5.4, 8.3, 90, 0.25)
    return finish(reduce(looked_down(flat, (-0.5, 1.4), 18, turn_deg=-4)), focus=(0.2, 0.85), light=1.08)


def drip_edge() -> Image.Image:
    """P22: the lap of the drip edge, 2-1/2 in, on the bare deck; the felt came after it."""
    flat = Flat((-9, -6, 11, 9.5), 140)
    flat.picture = m.plywood(flat, "eave panel")
    below, above = m.metal(flat.size, "drip low"), m.metal(flat.size, "drip high", tone=(210, 214, 217))
    flat.line([(-9, 2.0), (9, 2.0)], (50, 32, 18), 0.25, 130, 0.1)
    flat.skin([(-9, -2.2), (9, -2.2), (9, 2.0), (-9, 2.0)], below)
    flat.line([(0, -2.2), (0, 2.0)], (20, 20, 22), 0.22, 170, 0.08)
    flat.skin([(0, -2.2), (9, -2.2), (9, 2.0), (0, 2.0)], above)
    flat.line([(0.02, -2.2), (0.02, 2.0)], (250, 251, 252), 0.05)
    flat.poly([(-9, -2.2), (9, -2.2), (9, -1.75), (-9, -1.75)], (255, 255, 255), 120, 0.12)
    flat.poly([(-9, -5.2), (9, -5.2), (9, -2.2), (-9, -2.2)], (58, 66, 52))
    flat.skin([(-9, -5.2), (9, -5.2), (9, -2.2), (-9, -2.2)], m.grass(flat.size, "below eave", 14), 150)
    flat.poly([(-9, -2.6), (9, -2.6), (9, -2.2), (-9, -2.2)], (120, 124, 126))
    flat.line([(2.5, 0.72), (2.5, 2.0)], PENCIL, 0.045)
    flat.line([(0.08, 1.5), (2.5, 1.5)], PENCIL, 0.035)
    for x, way in ((0.08, 1), (2.5, -1)):
        flat.line([(x + 0.22 * way, 1.62), (x, 1.5), (x + 0.22 * way, 1.38)], PENCIL, 0.035)
    flat.text("2-1/2", 1.28, 1.76, 0.26, PENCIL, bold=0.02)
    lay_tape(flat, 0, 0.66, 11, side=1, shadow=0.08)
    return finish(reduce(looked_down(flat, (1.4, 1.0), 11)), focus=(0.18, 0.85))


def wrapper() -> Image.Image:
    """P25: the printed wrapper of a bundle."""
    flat = Flat((-7, -4, 37, 28), 80)
    flat.picture = shaded(m.shingles(flat, worn=False), 0.8)
    paper = paper_label(
        (23, 14),
        80,
        [
            ("LAMINATED SHINGLES", 12.0, 1.15, (246, 244, 236)),
            ("wet slate", 9.5, 0.85, INK),
            ("CLASS H", 7.2, 1.75, RED),
            ("wind tested to ASTM D7158", 5.1, 0.85, INK),
            ("covers 32.8 sq ft", 3.2, 0.85, INK),
            ("LOT  L-27F-0318", 1.35, 0.85, (40, 44, 60)),
        ],
    )
    head = paper.mask([(0, 10.8), (23, 10.8), (23, 14), (0, 14)])
    blue = Image.new("RGB", paper.size, (44, 70, 96))
    title = paper_label(
        (23, 14), 80, [("LAMINATED SHINGLES", 12.4, 1.15, (246, 244, 236))], paper=(44, 70, 96)
    )
    paper.picture.paste(blue, (0, 0), head)
    paper.picture.paste(title.picture, (0, 0), head)
    paper.line([(0.5, 2.25), (22.5, 2.25)], (120, 116, 106), 0.06)
    paper.picture = speckled(paper.picture, grain("wrapper folds", paper.size, (520, 90)), 12)
    paper.picture = speckled(paper.picture, grain("wrapper creases", paper.size, (60, 700)), 7)
    flat.put(paper.picture.convert("RGBA"), 15, 11, -3, 0.25)
    return finish(reduce(looked_down(flat, (15, 10.8), 27)), focus=(0.1, 0.9))


def delivery_ticket() -> Image.Image:
    """P33: the supplier's ticket on the tailgate, with its prices."""
    flat = Flat((-5, -4, 17, 16), 110)
    flat.picture = m.metal(flat.size, "tailgate", tone=(92, 98, 104))
    for y in (-2.0, 14.0):
        flat.line([(-5, y), (17, y)], (44, 48, 52), 0.3, 170, 0.1)
    lines = (
        ("7", "bundle", "laminated shingle, L-27F-0318", "41.50"),
        ("4", "sheet", "plywood 15/32, 32/16", "33.80"),
        ("1", "roll", "No. 30 felt", "38.00"),
        ("1", "roll", "self-adhered sheet", "112.00"),
        ("20", "piece", "step flashing", "1.15"),
        ("3", "tube", "roof cement", "6.40"),
    )
    paper = Flat((0, 0, 8.5, 11), 110, (240, 237, 228))
    paper.speckle("ticket", 0.3, 4)
    paper.text("DELIVERY TICKET", 4.25, 10.1, 0.42, INK, bold=0.05)
    paper.text("26-041   18 Heron Lane   March 16, 2026", 4.25, 9.3, 0.22, INK)
    for row, (count, unit, item, price) in enumerate(lines):
        y = 8.2 - row * 0.95
        for text, x in ((count, 0.75), (unit, 1.9), (item, 4.75), (price, 7.6)):
            paper.text(text, x, y, 0.2, INK, bold=0.02)
        paper.line([(0.4, y - 0.42), (8.1, y - 0.42)], (150, 148, 142), 0.02)
        paper.line([(0.28, y - 0.02), (0.4, y - 0.14), (0.58, y + 0.14)], PENCIL, 0.045)
    paper.text("each, USD", 7.4, 8.75, 0.16, (110, 108, 104))
    paper.text("received  D. Marrick", 5.6, 1.5, 0.26, (40, 60, 120), 4)
    paper.line([(3.6, 1.15), (7.9, 1.15)], (120, 118, 112), 0.02)
    paper.picture = speckled(paper.picture, grain("ticket folds", paper.size, (900, 330)), 12)
    flat.put(paper.picture.convert("RGBA"), 6, 6, -4, 0.15)
    return finish(reduce(looked_down(flat, (6, 6.1), 15.5, lean_deg=14)), focus=(0.1, 0.9))


def six_nails() -> Image.Image:
    """P26: six nails in one open shingle."""
    flat = Flat((-16, -22, 56, 30), 50)
    e = m.EXPOSURE_IN
    flat.picture = m.felt(flat, "open course felt")
    course = m.shingles(flat, worn=False)
    flat.skin([(-16, -22), (56, -22), (56, 0), (-16, 0)], course)
    high = 13.25
    flat.line([(-16, high), (56, high)], (8, 8, 8), 0.6, 150, 0.2)
    smooth = m.plain(flat.size, (92, 92, 92), "headlap", [(4, 4), (200, 90)])
    flat.skin([(-16, 0), (56, 0), (56, high), (-16, high)], smooth)
    flat.skin([(-16, 0), (56, 0), (56, e), (-16, e)], course)
    flat.line([(-16, e + 0.05), (56, e + 0.05)], (60, 60, 60), 0.16, 120, 0.08)
    flat.poly([(-16, e + 0.2), (56, e + 0.2), (56, e + 1.25), (-16, e + 1.25)], (126, 126, 124))
    for y in (e + 0.2, e + 1.25):
        flat.line([(-16, y), (56, y)], (214, 214, 206), 0.1)
    for x in (0.0, 39.375):
        flat.line([(x, 0), (x, high)], (24, 24, 24), 0.16)
    for x in (1.0, 8.5, 16.0, 23.4, 30.9, 38.375, -1.0, 40.4, -8.5, 47.9):
        nail_head(flat, x, e + 0.72, 0.3)
    for x in (1.0, 8.5, 16.0, 23.4, 30.9, 38.375):
        ring = [(x + 0.75 * math.cos(a / 10), e + 0.72 + 0.75 * math.sin(a / 10)) for a in range(64)]
        flat.line(ring, m.WHITE_CHALK, 0.1, 190, 0.03)
    for k, x in enumerate((1.0, 8.5, 16.0, 23.4, 30.9, 38.375), 1):
        flat.chalk(str(k), x, e + 2.6, 1.25, m.WHITE_CHALK)
    lay_tape(flat, 0, -0.4, 56, side=1, wide_in=1.25, finest=4, shadow=0.12)
    return finish(reduce(looked_down(flat, (19.7, 1.6), 46, turn_deg=0)), focus=(0.15, 0.85), light=1.06)


def hand_seal() -> Image.Image:
    """P27: four spots of cement under a lifted shingle."""
    flat = Flat((-18, -22, 58, 32), 50)
    flat.picture = m.shingles(flat, worn=True, courses_from=0.4)
    spots = (4.0, 14.5, 25.0, 35.5)
    rng = random.Random("cement")
    flat.poly([(-1, 0.2), (40.4, 0.2), (40.4, 7.2), (-1, 7.2)], (44, 40, 36), 120, 0.7)
    for x in spots:
        blob = [
            (
                x + (0.74 + rng.uniform(-0.08, 0.12)) * math.cos(k / 4),
                2.4 + (0.66 + rng.uniform(-0.06, 0.1)) * math.sin(k / 4),
            )
            for k in range(25)
        ]
        flat.poly([(bx + 0.1, by - 0.14) for bx, by in blob], (10, 10, 10), 150, 0.12)
        flat.poly(blob, (17, 16, 17))
        flat.poly(
            [(x - 0.3, 2.62), (x + 0.1, 2.72), (x + 0.16, 2.56), (x - 0.26, 2.44)], (150, 152, 158), 190, 0.06
        )
    shot = looked_down(flat, (19.7, 2.6), 46, lean_deg=34)
    under = Flat((0, 0, 39.375, 6.6), 64)
    under.picture = m.plain(under.size, (62, 60, 58), "underside", [(3, 3), (160, 60)])
    under.line([(0, 1.1), (39.4, 1.1)], (30, 30, 32), 0.5, 170, 0.05)
    for x in range(2, 39, 3):
        under.line([(x, 1.1), (x + 1.6, 1.1)], (20, 20, 22), 0.45)
    shot.fill([(-0.4, 4.2, 0.05), (40, 4.2, 0.05), (40, 7.4, 0.05), (-0.4, 7.4, 0.05)], (8, 8, 8), 200, 24)
    for part in range(8):
        a, b = part / 8, (part + 1) / 8
        low = _lift(1 - a)
        up = _lift(1 - b)
        strip = under.picture.crop(
            (0, round(part * under.size[1] / 8), under.size[0], round((part + 1) * under.size[1] / 8))
        )
        step = (0.0, (low[0] - up[0]) * 64 / strip.height, (low[1] - up[1]) * 64 / strip.height)
        shot.lay(shaded(strip, 0.75 + 0.45 * (1 - a)), (0, up[0], up[1]), (1, 0, 0), step, 64)
    rim_low, rim_high = _lift(1.0), (_lift(1.0)[0] - 0.02, _lift(1.0)[1] + 0.3)
    shot.fill([(0, *rim_low), (39.375, *rim_low), (39.375, *rim_high), (0, *rim_high)], (128, 120, 106))
    wedge = m.wood((300, 200), 40, "wedge", m.FIR)
    for x in (9.0, 30.0):
        shot.box((x, 5.4, 0), ((1.3, 0, 0), (0, 1.2, 0), (0, 0, 2.5)), wedge, 40)
    return finish(reduce(shot), focus=(0.25, 0.88))


def _lift(share: float) -> tuple[float, float]:
    """Return how far up the roof and how high a point of the lifted shingle is [in]; 1 is its free edge."""
    return 7.0 - 0.9 * math.sin(share * math.pi * 0.9), 5.8 * share**1.15
