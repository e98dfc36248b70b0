"""Photos of the deck taken close up: old nails, new nails, the stamp, tape on joints."""

import math
import random

from PIL import Image, ImageDraw

from .. import materials as m
from ..camera import Colour, Shot, shaded
from ..flat import Flat, Point, grain
from ..garden import reduce
from ..tools import INK, RED, finish, lay_tape, nail, nail_head, paper_label, tape
from ..views_near import looked_down
from . import stuff

BLUE: Colour = (38, 70, 128)


def _ply(window: tuple[float, float, float, float], ppi: float, seed: str, *, old: bool = True) -> Flat:
    flat = Flat(window, ppi)
    flat.picture = m.plywood(flat, seed, m.OLD_PLY if old else m.NEW_PLY, patches=3)
    return flat


def _joint(flat: Flat) -> None:
    """Draw a joint along the eave, with the grain: nothing stands under it between the trusses."""
    flat.line([(flat.left, 0), (flat.right, 0)], (22, 15, 10), 0.15)
    flat.line([(flat.left, -0.3), (flat.right, -0.3)], (40, 28, 18), 0.28, 100, 0.14)


def _end_joint(flat: Flat) -> None:
    """Draw the joint of two sheet ends, which stands over a truss and crosses the grain."""
    flat.line([(0, flat.bottom), (0, flat.top)], (22, 15, 10), 0.15)
    flat.line([(0.3, flat.bottom), (0.3, flat.top)], (40, 28, 18), 0.28, 100, 0.14)


def old_spacing() -> Image.Image:
    """Old nails: 6 in apart along an end joint, 12 in apart on the next truss, on two tapes."""
    flat = _ply((-12, -12, 38, 30), 64, "old spacing")
    _end_joint(flat)
    for y in (-6.0, 0.0, 6.0, 12.0, 18.0, 24.0):
        nail_head(flat, -0.55, y, 0.17, bright=False)
        nail_head(flat, 0.55, y + 0.6, 0.17, bright=False)
    for y in (0.0, 12.0, 24.0):
        nail_head(flat, 24.2, y, 0.17, bright=False)
    lay_tape(flat, 1.5, 0, 21, angle_deg=90, side=1, wide_in=1.0, finest=8)
    lay_tape(flat, 25.2, 0, 21, angle_deg=90, side=1, wide_in=1.0, finest=8)
    for y in (0.0, 6.0, 12.0, 18.0):
        _ring(flat, -0.55, y)
    for y in (0.0, 12.0):
        _ring(flat, 24.2, y)
    flat.chalk("end joint", -3.2, 9.0, 1.7, m.WHITE_CHALK, 88)
    flat.chalk("truss", 20.6, 9.0, 1.7, m.WHITE_CHALK, 88)
    return finish(reduce(looked_down(flat, (10.8, 8.0), 36, lean_deg=14, turn_deg=2)), seed="old spacing")


def _ring(flat: Flat, x: float, y: float, colour: Colour = m.WHITE_CHALK, radius: float = 0.62) -> None:
    flat.line(
        [(x + radius * math.cos(a / 8), y + radius * math.sin(a / 8)) for a in range(52)],
        colour,
        0.1,
        200,
        0.03,
    )


def missed() -> Image.Image:
    """From the attic: three old joint nails beside the truss, 1/2 in off on the tape."""
    shot = Shot((4.6, -3.2, -5.6), (0.75, 5.2, -0.7), 50, sky=(12, 9, 7))
    ppi = 40
    deck = Flat((-34, -10, 36, 50), ppi)
    deck.picture = shaded(m.wood(deck.size, ppi, "attic side", m.OLD_PLY), 0.92)
    deck.line([(0.6, -10), (0.6, 50)], (26, 18, 12), 0.22)
    shot.lay(deck.picture, (-34, -10, 0), (1, 0, 0), (0, 1, 0), ppi)
    chord = m.wood((2400, 150), ppi, "chord", m.OLD_FIR)
    for x in (-24.0, 24.0):
        shot.box(
            (x - 0.75, -10, -3.5),
            ((0, 60, 0), (1.5, 0, 0), (0, 0, 3.5)),
            shaded(chord, 0.8),
            ppi,
            light=(0.3, -0.6, -0.6),
        )
    shot.box((-1.75, -10, -3.5), ((0, 60, 0), (1.5, 0, 0), (0, 0, 3.5)), chord, ppi, light=(0.5, -0.5, -0.7))
    for k in reversed(range(1, 5)):
        y = -2.0 + k * 6.0
        top, tip = (0.26 + 0.02 * (k % 2), y, -0.02), (0.28, y + 0.05, -1.95)
        shot.fill(
            [(0.05, y - 0.1, -0.01), (0.7, y - 0.1, -0.01), (0.9, y + 0.5, -0.01), (0.2, y + 0.5, -0.01)],
            (8, 6, 5),
            130,
            8,
        )
        a, b = shot.at(top), shot.at(tip)
        pen = ImageDraw.Draw(shot.picture)
        wide = max(6.0, 0.131 * shot.focal / (12 + k * 5))
        pen.line([a, b], fill=(128, 92, 66), width=round(wide * 1.5))
        pen.line(
            [(a[0] - wide * 0.2, a[1]), (b[0] - wide * 0.2, b[1])],
            fill=(214, 186, 156),
            width=round(wide * 0.5),
        )
    strip = tape(120, 0, 3.4, wide_in=0.9, finest=16)
    shot.lay(strip, (-0.25, 3.8, -2.5), (1, 0, 0), (0, 0, 1), 120)
    picture = reduce(shot)
    lit = shaded(picture, 1.12, (1.05, 1.0, 0.9))
    shade = Image.radial_gradient("L").resize((2300, 1900)).crop((350, 250, 1950, 1450))
    lit.paste((10, 8, 6), (0, 0), shade.point([max(0, min(210, round((v - 70) * 1.4))) for v in range(256)]))
    return finish(lit, seed="missed")


def trusses() -> Image.Image:
    """Open trusses 24 in on center, a new 2x4 nailer beside one chord."""
    shot = Shot((36.0, -22, 22), (17.0, 3.0, -3), 56, sky=(20, 16, 13))
    shot.lay(shaded(m.wool((1800, 1800), 9), 0.46), (-80, -70, -40), (1, 0, 0), (0, 1, 0), 12)
    ppi = 16
    for x in (-24.0, 48.0, 0.0, 24.0):
        chord = m.wood((1700, 80), ppi, f"top chord {x}", m.OLD_FIR)
        if x == 24.0:
            nailer = Flat((0, 0, 60, 3.5), ppi)
            nailer.picture = m.wood(nailer.size, ppi, "nailer", m.FIR)
            shot.box((x + 1.5, -12, -3.5), ((0, 60, 0), (1.5, 0, 0), (0, 0, 3.5)), nailer.picture, ppi)
            for k in range(5):
                shot.box(
                    (x + 2.1, -6 + k * 10, 0),
                    ((0.3, 0, 0), (0, 0.3, 0), (0, 0, 0.05)),
                    m.plain((20, 20), (170, 174, 176), "head", [(8, 8)]),
                    40,
                )
        shot.box((x, -40, -3.5), ((0, 100, 0), (1.5, 0, 0), (0, 0, 3.5)), chord, ppi, light=(0.1, -0.2, 0.95))
        shot.lay(m.metal((160, 100), f"plate {x}"), (x + 1.52, 26, -3.2), (0, 1, 0), (0, 0, 1), 32)
    deck = Flat((-40, 30, 76, 60), 14)
    deck.picture = m.plywood(deck, "above the truss", m.OLD_PLY)
    deck.line([(-40, 30.2), (76, 30.2)], (64, 46, 30), 0.5)
    shot.fill([(-40, 28, -3), (76, 28, -3), (76, 44, -3), (-40, 44, -3)], (8, 6, 5), 200, 20)
    shot.lay(deck.picture, (-40, 30, 0.5), (1, 0, 0), (0, 1, 0), 14)
    shot.lay(tape(60, 0, 28.0, wide_in=1.25, finest=8), (0, 8.0, 0.06), (1, 0, 0), (0, 1, 0), 60)
    case = m.plain((300, 300), (52, 54, 58), "hip case", [(60, 60)])
    shot.box((28.0, 7.6, -0.4), ((2.9, 0, 0), (0, 1.7, 0), (0, 0, 2.7)), case, 60)
    name = Flat((0, 0, 12, 3.3), 40, (228, 190, 132))
    name.picture = m.wood(name.size, 40, "nailer face", m.FIR)
    name.chalk("R1", 6, 1.6, 2.4, m.CHALK)
    shot.lay(name.picture, (27.01, -6, -3.4), (0, 1, 0), (0, 0, 1), 40)
    return finish(reduce(shot), focus=(0.1, 0.92), seed="trusses")


def stamp() -> Image.Image:
    """The stamp on the new panel and its edge on the tape, 15/32 in."""
    flat = _ply((-3, -3.2, 17, 13), 165, "hip stamped", old=False)
    mark = Flat((0, 0, 9, 4.2), 165, (0, 0, 0))
    white: Colour = (255, 255, 255)
    mark.line([(4.5, 0.15), (8.8, 2.1), (4.5, 4.05), (0.2, 2.1), (4.5, 0.15)], white, 0.09)
    mark.text("15/32", 4.5, 2.95, 0.52, white, bold=0.05)
    mark.text("32/16  EXPOSURE 1", 4.5, 2.1, 0.5, white, bold=0.05)
    mark.text("PLYWOOD", 4.5, 1.25, 0.46, white, bold=0.05)
    worn = grain("hip stamp ink", mark.size, (6, 4)).point([min(255, 150 + v) for v in range(256)])
    share = Image.composite(mark.picture.convert("L"), Image.new("L", mark.size), worn)
    sprite = Image.new("RGBA", mark.size, (122, 34, 40, 0))
    sprite.putalpha(share.point([v * 0.85 for v in range(256)]))
    flat.put(sprite, 6.9, 6.6, -4)
    flat.poly([(-3, -3.2), (17, -3.2), (17, 1.4), (-3, 1.4)], (54, 48, 42))
    shot = looked_down(flat, (6.9, 4.4), 12.5, lean_deg=30, turn_deg=-3)
    edge = Flat((0, 0, 20, 0.47), 165)
    for k in range(4):
        tone = (214, 176, 122) if k % 2 == 0 else (150, 108, 66)
        edge.poly([(0, k * 0.1175), (20, k * 0.1175), (20, (k + 1) * 0.1175), (0, (k + 1) * 0.1175)], tone)
    edge.speckle("plies", 0.05, 16)
    shot.lay(shaded(edge.picture, 0.86), (-3, 1.4, -0.47), (1, 0, 0), (0, 0, 1), 165)
    return finish(reduce(shot), focus=(0.08, 0.9), seed="hip stamp")


def ring_nail() -> Image.Image:
    """A ring shank nail on the tape, 2-3/8 in, out of the coil; the carton's label above."""
    flat = _ply((-4.4, -4.4, 9, 9), 220, "coil bench")
    carton = paper_label(
        (8.2, 3.6),
        220,
        [
            ("RING SHANK", 2.75, 0.55, BLUE),
            ("2-3/8 x .113", 1.65, 0.72, RED),
            ("hot-dip galvanized  wire coil", 0.6, 0.27, INK),
        ],
        paper=(214, 190, 148),
    )
    flat.put(carton.picture.convert("RGBA"), 2.0, 5.0, -2, 0.2)
    lay_tape(flat, 0, -0.15, 6.4, shadow=0.06)
    flat.put(nail(220, 2.375, 0.113, ring=True), 1.1875, 0.17, 0, 0.06)
    for k in range(13):
        flat.put(nail(220, 2.375, 0.113, ring=True), 5.6 + k * 0.02, 2.55 - k * 0.3, 180 - 4, 0.05)
    for x in (5.2, 6.2):
        flat.line([(x, 2.7), (x + 0.25, -1.2)], (186, 140, 70), 0.05)
    return finish(
        reduce(looked_down(flat, (2.3, 2.1), 12.2, lean_deg=14, turn_deg=-4)), focus=(0.1, 0.92), seed="coil"
    )


def edge_four() -> Image.Image:
    """The end of new sheet S1 over a truss: nails 4 in apart along both edges of the joint."""
    flat = _ply((-13, -9, 13, 24), 105, "hip edge")
    new = Flat((-13, -9, 13, 24), 105)
    new.picture = m.plywood(new, "hip end", patches=2)
    flat.skin([(-13, -9), (0, -9), (0, 24), (-13, 24)], new.picture)
    _end_joint(flat)
    for y in (-4.4, 1.6, 7.6, 13.6, 19.6):
        nail_head(flat, 0.85, y, 0.17, bright=False)
    for k in range(-2, 7):
        nail_head(flat, -0.46, k * 4.0, 0.15)
        nail_head(flat, 0.5, k * 4.0 + 0.2, 0.15)
    lay_tape(flat, 1.5, 0, 19.2, angle_deg=90, side=1, shadow=0.1)
    flat.chalk("S1", -5.0, 9.0, 2.4, m.CHALK, 3)
    flat.chalk("old", 6.4, 8.6, 1.7, m.WHITE_CHALK, -2)
    shot = looked_down(flat, (0.6, 8.2), 17, lean_deg=20, portrait=True, turn_deg=2)
    return finish(reduce(shot), focus=(0.08, 0.92), seed="edge four")


def field_four() -> Image.Image:
    """New sheet: nails 4 in apart on a truss line, tape up the slope."""
    flat = _ply((-12, -8, 13, 24), 105, "hip field", old=False)
    flat.line([(0.55, -8), (0.55, 24)], m.CHALK, 0.1, 130, 0.04)
    for k in range(-1, 6):
        nail_head(flat, 0.5 + (k % 2) * 0.06, k * 4.0, 0.15)
    lay_tape(flat, 1.0, 0, 19.2, angle_deg=90, side=1, shadow=0.1)
    flat.chalk("truss", -4.2, 12.5, 1.5, m.CHALK, 84)
    shot = looked_down(flat, (1.0, 8.2), 17, lean_deg=20, portrait=True, turn_deg=-2)
    return finish(reduce(shot), focus=(0.08, 0.92), seed="field four")


def renail_edge() -> Image.Image:
    """Old deck nailed again: bright heads 4 in apart at an end joint over a truss, old rusty ones between."""
    flat = _ply((-13, -9, 13, 24), 100, "renail edge")
    _end_joint(flat)
    for y in range(-6, 24, 6):
        nail_head(flat, -0.9, y + 1.4, 0.17, bright=False)
        nail_head(flat, 0.82, y + 2.2, 0.17, bright=False)
    for k in range(-2, 7):
        nail_head(flat, -0.46, k * 4.0, 0.15)
        nail_head(flat, 0.42, k * 4.0 + 0.3, 0.15)
        _ring(flat, -0.46, k * 4.0, m.WHITE_CHALK, 0.5)
    lay_tape(flat, 1.5, 0, 19.0, angle_deg=90, side=1, shadow=0.1)
    flat.chalk("HN", -5.2, 11.4, 1.9, m.WHITE_CHALK, 3)
    flat.chalk("end joint", -4.3, 8.4, 1.05, m.WHITE_CHALK, 3)
    shot = looked_down(flat, (0.0, 8.2), 17, lean_deg=22, portrait=True, turn_deg=-3)
    return finish(reduce(shot), focus=(0.1, 0.9), seed="renail edge")


def renail_field() -> Image.Image:
    """Old deck nailed again: bright heads 4 in apart on a truss line, old ones 12 in apart beside."""
    flat = _ply((-13, -9, 13, 27), 92, "renail field")
    flat.line([(0.5, -9), (0.5, 27)], m.WHITE_CHALK, 0.12, 150, 0.05)
    for y in (-10.4, 1.6, 13.6, 25.6):
        nail_head(flat, 0.0, y, 0.17, bright=False)
    for k in range(-2, 7):
        nail_head(flat, 0.5 + (k % 3 - 1) * 0.03, k * 4.0, 0.15)
    lay_tape(flat, 1.1, 0, 21.0, angle_deg=90, side=1, shadow=0.1)
    flat.chalk("HS", -5.0, 9.6, 1.9, m.WHITE_CHALK, 2)
    flat.chalk("field", -5.0, 6.8, 1.5, m.WHITE_CHALK, 2)
    flat.chalk("old", -1.7, 13.6, 0.8, m.WHITE_CHALK, 0)
    shot = looked_down(flat, (0.4, 8.6), 18, lean_deg=20, portrait=True, turn_deg=4)
    return finish(reduce(shot), focus=(0.1, 0.9), seed="renail field")


def renail_nail() -> Image.Image:
    """A nail drawn out of the old deck for the photo: ring shank, 2-3/8 in."""
    flat = _ply((-5, -6, 6, 9), 240, "drawn nail")
    for x, y in ((-1.5, 3.6), (2.2, 3.9)):
        nail_head(flat, x, y, 0.15)
    flat.disc(0.3, 3.75, 0.09, (16, 10, 8))
    flat.poly(
        [(0.3 + 0.3 * math.cos(k), 3.75 + 0.2 * math.sin(k)) for k in range(7)], (92, 68, 46), 120, 0.05
    )
    nail_head(flat, 3.9, 3.2, 0.17, bright=False)
    lay_tape(flat, -0.4, 0.3, 5.8, shadow=0.06)
    flat.put(nail(240, 2.375, 0.113, ring=True), -0.4 + 1.1875, 0.62, 0, 0.06)
    flat.chalk("HN", -1.6, -3.4, 1.2, m.WHITE_CHALK, 4)
    shot = looked_down(flat, (1.1, 0.9), 6.4, lean_deg=18, portrait=True, turn_deg=5)
    return finish(reduce(shot), focus=(0.12, 0.88), seed="drawn nail")


def joint_tape() -> Image.Image:
    """The tape over a long joint, which has no nails, 4 in wide on the steel tape; its roll beside it."""
    flat = _ply((-15, -11, 17, 13), 100, "taped joint")
    _joint(flat)
    flat.line([(-15, 0), (17, 0)], (18, 14, 12), 4.4, 120, 0.16)
    strip = Image.new("RGB", flat.size, stuff.TAPE)
    film = m.membrane(flat, "joint film")
    flat.skin([(-15, -2), (17, -2), (17, 2), (-15, 2)], Image.blend(film, strip, 0.45))
    for y in (-1.98, 1.98):
        flat.line([(-15, y), (17, y)], (120, 125, 129), 0.06)
    lay_tape(flat, -4.5, -2.0, 6.4, angle_deg=90, side=1, wide_in=1.0, shadow=0.1)
    _roll(flat, 8.2, 5.2)
    return finish(
        reduce(looked_down(flat, (0.4, 1.6), 21, lean_deg=20, turn_deg=-3)),
        focus=(0.1, 0.9),
        seed="joint tape",
    )


def _roll(flat: Flat, x: float, y: float) -> None:
    def ring(radius: float) -> list[Point]:
        return [(x + radius * math.cos(k / 8), y + radius * math.sin(k / 8)) for k in range(51)]

    flat.poly([(px + 0.4, py - 0.5) for px, py in ring(3.6)], (8, 8, 8), 160, 0.3)
    flat.poly(ring(3.6), (58, 62, 66))
    rng = random.Random("roll")
    for k in range(26):
        tone = rng.randint(44, 88)
        flat.line(ring(3.55 - k * 0.07), (tone, tone + 3, tone + 6), 0.03)
    flat.poly(ring(1.75), (206, 178, 128))
    flat.poly(ring(1.5), (46, 34, 26))
    label = paper_label(
        (5.6, 2.2), flat.ppi, [("FLASHING TAPE", 1.55, 0.46, BLUE), ("4 in   ASTM D1970", 0.65, 0.42, INK)]
    )
    flat.put(label.picture.convert("RGBA"), x, y + 2.0, 8, 0.05)
