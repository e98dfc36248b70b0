"""Photos of the opened back slope: rotten boards and tail, and the new wood in their place."""

import random

from PIL import Image, ImageDraw

from .. import materials as m
from ..camera import Shot, Vector, plus, shaded, toned
from ..flat import Flat
from ..garden import reduce
from ..tools import INK, RED, finish, lay_tape, nail, nail_head, paper_label, tape
from ..views_framing import rod
from ..views_near import looked_down
from . import goods, place
from .goods import rect


def stripped() -> Image.Image:
    """P10: the stripped back slope, boards black along the eave and above the porch."""
    shot = Shot((3, 42, 18.5), (18.5, 22, 11.6), 62)
    place.outdoors(shot)
    place.house(shot, "stripped", "before", ppi=9)
    return finish(reduce(shot))


def rotten_boards() -> Image.Image:
    """P11: rot above the porch, B1 in chalk, a probe in the wood, a tape along it."""
    shot = Shot((28.0, 29.6, 14.4), (27.7, 24.5, 11.0), 66)
    place.outdoors(shot)
    flat = place.north("stripped", (0, 0, 17, 9), 18, marks=True)
    lay_tape(flat, 24, 34, 120, wide_in=1.8, finest=1)
    place.lay(shot, place.NORTH, flat, 0.98)
    place.lay(shot, place.PORCH, place.porch("before", 12), 1.0)
    tip = place.on(place.NORTH, 5.3, 1.1)
    shot.fill(
        [
            plus(tip, (-0.16, -0.1, 0.01)),
            plus(tip, (0.1, -0.1, 0.01)),
            plus(tip, (0.1, 0.06, 0.01)),
            plus(tip, (-0.16, 0.06, 0.01)),
        ],
        (6, 5, 4),
        230,
        8,
    )
    collar, end = plus(tip, (0.03, 0.1, 0.26)), plus(tip, (0.1, 0.36, 0.72))
    rod(shot, shot.at(tip), shot.at(collar), 14, 24, (172, 176, 180))
    rod(shot, shot.at(collar), shot.at(end), 62, 84, (40, 120, 70))
    return finish(reduce(shot))


def _eave(shot: Shot, *, renewed: bool) -> None:
    """Draw the open eave in inches: x runs west along it, y goes out of the house, z up; tails 24 in apart."""
    ppi = 24
    wall = Flat((-60, -60, 120, -9), 12)
    wall.picture = m.siding(wall, place.SIDING, 6.0)
    shot.lay(shaded(wall.picture, 0.62), (120, -12, -60), (-1, 0, 0), (0, 0, 1), 12)
    plate = m.wood((2200, 110), 12, "plate", m.OLD_FIR)
    shot.box((-60, -16, -9), ((180, 0, 0), (0, 4.4, 0), (0, 0, 3.2)), shaded(plate, 0.7), 12)
    for number, x in enumerate((72, 48, 24, 0, -24, -48)):
        bad = x == 24
        side = Flat((0, 0, 60, 5.5), ppi)
        side.picture = m.wood(side.size, ppi, f"tail {number}", m.OLD_FIR)
        top = m.wood((1500, 40), ppi, f"tail top {number}", m.OLD_FIR)
        length = 60.0
        if bad and not renewed:
            edge = [(30.0, 6.0), (36, 3.4), (44, 1.2), (50, -1), (61, -1), (61, 6.0)]
            side.picture = m.rotten(side.picture, side.mask(edge, 255, 0.8), "tail rot", ppi * 0.5)
            low = Image.new("L", top.size)
            low.paste(235, (ppi * 30, 0, top.width, top.height))
            top = m.rotten(top, low, "tail rot top", ppi * 0.5)
        if bad and renewed:
            length = 42.0
        rafter(shot, (x, -48, 36), side.picture, top, ppi, length)
        if bad and renewed:
            fresh = Flat((0, 0, 54, 5.5), ppi)
            fresh.picture = m.wood(fresh.size, ppi, "new tail", m.FIR)
            fresh.text("2x6 SOUTHERN PINE", 38, 3.0, 0.8, (70, 52, 110), bold=0.03)
            for k in range(5):
                for row in (1.4, 4.1):
                    nail_head(fresh, 4 + k * 6, row, 0.2)
            rafter(
                shot,
                (x - 1.5, -43.2, 32.4),
                fresh.picture,
                m.wood((1400, 40), ppi, "new tail top", m.FIR),
                ppi,
                54.0,
            )
    if renewed:
        board = Flat((0, 0, 96, 5.5), ppi)
        board.picture = shaded(m.wood(board.size, ppi, "sub-fascia", m.FIR), 0.95, (0.94, 1.0, 0.86))
        for k in range(5):
            for row in (1.1, 2.75, 4.4):
                nail_head(board, 1.5 + k * 24, row, 0.26)
        shot.lay(board.picture, (73, 0.4, -5.2), (-1, 0, 0), (0, 0, 1), ppi)
        shot.lay(
            shaded(m.wood((2304, 36), ppi, "sub-fascia top", m.FIR), 1.05, (0.96, 1, 0.9)),
            (73, 0.4, 0.3),
            (-1, 0, 0),
            (0, -1, 0.1),
            ppi,
        )


def rafter(shot: Shot, start: Vector, side: Image.Image, top: Image.Image, ppi: int, length: float) -> None:
    """Draw one tail running down and out from a point at its upper edge; the viewer is west of it and outside."""
    down = (0.0, 0.8, -0.6)
    deep = (0.0, 0.6, 0.8)
    low = plus(start, deep, -5.5)
    edge = rect(0, 0, length, 5.5)
    shot.lay(
        shaded(side.transpose(Image.Transpose.FLIP_LEFT_RIGHT), 0.72),
        plus(plus(low, down, side.width / ppi), (1.5, 0, 0)),
        (0, -0.8, 0.6),
        deep,
        ppi,
        [(side.width / ppi - x, y) for x, y in edge],
    )
    shot.lay(shaded(top, 1.0), plus(start, (1.5, 0, 0)), down, (-1, 0, 0), ppi, rect(0, 0, length, 1.5))
    tip = plus(low, down, length)
    end = [tip, plus(tip, (1.5, 0, 0)), plus(plus(tip, (1.5, 0, 0)), deep, 5.5), plus(tip, deep, 5.5)]
    grain_end = (
        side.crop((side.width - 4, side.height // 2, side.width, side.height // 2 + 4))
        .resize((1, 1))
        .getpixel((0, 0))
    )
    if isinstance(grain_end, tuple):
        shot.fill(end, toned((grain_end[0], grain_end[1], grain_end[2]), 0.8))
        shot.stroke([*end, end[0]], (40, 28, 20), 2)


def rotten_tail() -> Image.Image:
    """P12: the rotten rafter tail at the corner of the porch."""
    shot = Shot((66, 44, 27), (24, -10, 2), 50, sky=(24, 20, 17))
    _eave(shot, renewed=False)
    sign = Flat((0, 0, 10, 4), 30, (0, 0, 0))
    sign.chalk("R1", 5, 2, 2.8, m.WHITE_CHALK)
    ink = sign.picture.convert("RGBA")
    ink.putalpha(sign.picture.convert("L"))
    shot.lay(ink, (25.6, -22.0, 12.6), (0, 0.8, -0.6), (0, 0.6, 0.8), 30)
    return finish(reduce(shot), focus=(0.12, 0.92))


def new_tail() -> Image.Image:
    """P15: the new tail beside the cut-off rafter, and the new sub-fascia across the tails."""
    shot = Shot((60, 34, 36), (22, -12, 3), 54, sky=(24, 20, 17))
    _eave(shot, renewed=True)
    return finish(reduce(shot), focus=(0.12, 0.92))


def night_tarp() -> Image.Image:
    """P13: the tarp in the rain, by the light of a headlamp."""
    shot = Shot((-4, 56, 5.8), (16, 27, 10.2), 50)
    place.outdoors(shot, near=(4, 44, 0))
    place.house(shot, "stripped", "before", ppi=5)
    flat = Flat((-14, -26, 430, 200), 5)
    flat.picture = goods.tarp(flat, "night tarp")
    for x in (4.0, 404.0):
        flat.line([(x, 0), (x, 195)], (206, 172, 120), 3.0)
    flat.line([(0, 188), (408, 188)], (206, 172, 120), 3.0)
    shot.lay(
        shaded(flat.picture, 0.9),
        place.on(place.NORTH, -14 / 12, -26 / 12, 0.12),
        (-1, 0, 0),
        (0, -0.8, 0.6),
        60,
    )
    for k in range(5):
        x, y = shot.at(place.on(place.PORCH, 1.6 + k * 2.7, 5.2, 0.1))
        pen = ImageDraw.Draw(shot.picture)
        pen.ellipse((x - 66, y - 40, x + 66, y + 26), fill=(172, 150, 112), outline=(92, 76, 52), width=4)
    day = reduce(shot)
    night = shaded(day, 0.1, (0.7, 0.85, 1.2))
    lamp = Image.radial_gradient("L").resize((1500, 1180))
    light = Image.new("L", day.size)
    light.paste(lamp.point([max(0, 255 - round(v * 1.45)) for v in range(256)]), (80, -120))
    lit = Image.composite(shaded(day, 0.82, (1.04, 1, 0.9)), night, light)
    rain = Image.new("L", day.size)
    pen = ImageDraw.Draw(rain)
    rng = random.Random("rain")
    for _ in range(520):
        x, y, far = rng.uniform(-50, 1650), rng.uniform(-60, 1200), rng.random()
        long = 16 + 60 * far**2
        pen.line(
            [(x, y), (x - long * 0.14, y + long)], fill=round(60 + 130 * far), width=1 if far < 0.7 else 2
        )
    lit.paste((214, 222, 232), (0, 0), rain.point([round(v * 0.7) for v in range(256)]))
    return finish(lit, vignette=0.5, warm=(1, 1, 1))


def attic_morning() -> Image.Image:
    """P14: the attic the morning after: boards dry, no drip on the paper laid on the floor."""
    shot = Shot((66, -88, 44), (70, 10, 12), 66, sky=(10, 8, 7))
    ppi = 10
    floor = m.wood((2200, 1300), 10, "attic floor", m.OLD_FIR)
    shot.lay(shaded(floor, 0.5), (-40, -90, 0), (1, 0, 0), (0, 1, 0), ppi)
    paper = Flat((0, 0, 80, 46), 12, (128, 112, 84))
    paper.speckle("kraft", 5, 8)
    paper.line([(0, 23), (80, 23)], (104, 90, 66), 0.4)
    paper.chalk("DRY 7:00", 40, 24, 9, (24, 28, 52))
    shot.lay(paper.picture, (30, -36, 0.4), (1, 0, 0), (0, 1, 0), 12)
    deck = Flat((-40, 0, 190, 150), ppi)
    deck.picture = shaded(goods.boards(deck, "attic underside", goods.OLD_PINE, nails=False), 0.7)
    stain = deck.mask(rect(-60, -10, 210, 30), 255, 6)
    deck.picture = Image.composite(shaded(deck.picture, 0.7), deck.picture, stain)
    shot.lay(deck.picture, (-40, 34, 2), (1, 0, 0), (0, -0.8, 0.6), ppi)
    wood = m.wood((1600, 60), ppi, "bay rafter", m.OLD_FIR)
    for x in range(-24, 192, 24):
        for face in (0.0, 1.5):
            if (shot.eye[0] > x + face) == (face > 0):
                shot.lay(
                    shaded(wood, 0.62),
                    (x + face, 35, -3.6),
                    (0, -0.8, 0.6),
                    (0, 0.6, 0.8),
                    ppi,
                    rect(0, 0, 150, 5.5),
                )
        shot.lay(shaded(wood, 0.88), (x, 35, -3.6), (0, -0.8, 0.6), (1, 0, 0), ppi, rect(0, 0, 150, 1.5))
    return torch(reduce(shot), 0.55)


def torch(picture: Image.Image, down: float) -> Image.Image:
    """Return a dark room lit by a lamp in the middle."""
    wide, high = picture.size
    beam = Image.radial_gradient("L").resize((round(wide * 1.7), round(high * 2)))
    light = Image.new("L", picture.size, 255)
    light.paste(beam, (round(wide * 0.5 - beam.width / 2), round(high * down - beam.height / 2)))
    shade = light.point([min(226, max(0, (v - 70) * 1.5)) for v in range(256)])
    out = shaded(picture, 1.2, (1.04, 1, 0.9))
    out.paste((12, 9, 7), (0, 0), shade)
    return finish(out, vignette=0.12)


def new_boards() -> Image.Image:
    """P18: B1 laid above the porch."""
    shot = Shot((25.6, 31.6, 16.2), (26.6, 24.2, 11.2), 62)
    place.outdoors(shot)
    flat = place.north("boards", (0, 0, 17, 10), 16)
    flat.chalk("B1", 84, 17, 12, m.CHALK, 2)
    flat.chalk("60 ft", 116, 17, 5, m.CHALK, 2)
    place.lay(shot, place.NORTH, flat, 1.0)
    place.lay(shot, place.PORCH, place.porch("before", 12), 1.0)
    return finish(reduce(shot))


def board_gap() -> Image.Image:
    """P19: the gap between two new boards, from 3 to 3-1/8 in on the tape."""
    flat = Flat((-9, -7.6, 9, 8), 180)
    flat.picture = m.wood(flat.size, 180, "gap left", goods.NEW_PINE, upright=True, rings=6)
    other = shaded(m.wood(flat.size, 180, "gap right", goods.NEW_PINE, upright=True, rings=5), 0.97)
    flat.skin(rect(0.125, -8, 5.625, 9), other)
    far = m.wood(flat.size, 180, "gap far", goods.NEW_PINE, upright=True)
    flat.skin(rect(5.75, -8, 10, 9), far)
    for x in (0.0, 5.625):
        flat.poly(rect(x, -8, x + 0.125, 9), (18, 13, 9))
        flat.line([(x - 0.015, -8), (x - 0.015, 9)], (250, 230, 190), 0.03, 180)
        flat.line([(x + 0.15, -8), (x + 0.15, 9)], (120, 86, 52), 0.05, 180)
    for y in (-5.9, 5.6):
        for x in (-1.3, 1.4, 4.3, 7.0, -4.2):
            nail_head(flat, x, y, 0.14)
    lay_tape(flat, -3, 0.6, 12.4, side=1, shadow=0.07)
    return finish(reduce(looked_down(flat, (0.6, 0.4), 9.6, lean_deg=16, turn_deg=2)), focus=(0.15, 0.88))


def board_nails() -> Image.Image:
    """P20: two nails in each board at each rafter; rafters 24 in apart on the tape."""
    flat = Flat((-12, -16, 42, 22), 62)
    flat.picture = goods.boards(flat, "nailed boards", goods.NEW_PINE, from_in=-16.6, nails=False)
    for x in (0.0, 24.0):
        flat.line([(x, -16), (x, 22)], m.CHALK, 0.12, 130, 0.05)
        low = -16.6
        while low < 22:
            for up, off in ((1.25, -0.3), (4.2, 0.35)):
                nail_head(flat, x + off, low + up, 0.17)
                ring = [
                    (x + off + dx, low + up + dy)
                    for dx, dy in ((-0.8, 0), (0, 0.8), (0.8, 0), (0, -0.8), (-0.8, 0))
                ]
                flat.line(ring, m.CHALK, 0.08, 110, 0.05)
            low += goods.COURSE_IN
    for k in (1, 2):
        flat.chalk(str(k), 2.2, -5.35 + (1.25 if k == 1 else 4.2), 1.5, m.CHALK)
        flat.chalk(str(k), 26.2, -5.35 + (1.25 if k == 1 else 4.2), 1.5, m.CHALK)
    flat.chalk("rafter", -4.6, 9.3, 1.5, m.CHALK, 88)
    lay_tape(flat, 0, 5.2, 38, side=1, wide_in=1.25, finest=8, shadow=0.12)
    return finish(reduce(looked_down(flat, (12.6, 1.4), 34, lean_deg=24, turn_deg=-3)), focus=(0.12, 0.9))


def board_nail() -> Image.Image:
    """P16: the board nail on the tape, 2-1/2 in, and the label of its box."""
    flat = Flat((-4.6, -5.6, 8.4, 7.4), 230)
    flat.picture = m.wood(flat.size, 230, "nail board", goods.NEW_PINE, rings=5)
    box = paper_label(
        (6.2, 2.7),
        230,
        [
            ("2-1/2 x .131", 1.82, 0.58, (28, 66, 120)),
            ("SMOOTH SHANK", 1.0, 0.4, INK),
            ("hot-dip galvanized", 0.36, 0.22, INK),
        ],
        paper=(216, 222, 224),
    )
    box.line([(0.1, 0.1), (6.1, 0.1), (6.1, 2.6), (0.1, 2.6), (0.1, 0.1)], RED, 0.05)
    flat.put(box.picture.convert("RGBA"), 2.0, 2.75, -2, 0.16)
    lay_tape(flat, 0, -0.62, 7.4, shadow=0.06)
    flat.put(nail(230, 2.5, 0.131, ring=False), 1.25, -0.3, 0, 0.06)
    for x, y, turn in ((5.2, 0.1, 62), (0.4, -2.9, -20), (3.4, -3.1, 8)):
        flat.put(nail(230, 2.5, 0.131, ring=False), x, y, turn, 0.06)
    return finish(reduce(looked_down(flat, (1.9, 0.5), 8.2, lean_deg=14)), focus=(0.1, 0.92))


def board_end() -> Image.Image:
    """P17: the end of a board: 5-1/2 in wide on one tape, 3/4 in thick on the other."""
    flat = Flat((-2.8, -2.6, 8.4, 5.8), 240)
    flat.picture = m.plain(flat.size, (92, 96, 92), "porch rail", [(6, 6), (800, 90)])
    plank = m.wood(flat.size, 240, "board end", ((196, 150, 92), (230, 194, 138)), rings=3)
    flat.poly(rect(-0.1, -0.2, 5.7, 0.8), (12, 12, 12), 170, 0.18)
    flat.skin(rect(0, 0, 5.5, 0.75), plank)
    for k in range(16):
        x = 0.2 + k * 0.34
        flat.line([(x, 0.03), (x + 0.22, 0.4), (x + 0.14, 0.72)], (160, 112, 62), 0.045, 170)
    flat.line([*rect(0, 0, 5.5, 0.75), (0, 0)], (112, 78, 44), 0.03)
    face = m.wood(flat.size, 240, "board face", goods.NEW_PINE, rings=6)
    flat.skin([(0, 0.75), (5.5, 0.75), (4.9, 7), (0.6, 7)], shaded(face, 1.04))
    m.knot(flat, 3.7, 3.3, 0.3)
    lay_tape(flat, 0, -0.05, 8.4, side=1, wide_in=0.9, shadow=0.06)
    strip = tape(240, 0, 4.2, wide_in=0.9)
    flat.put(strip, -0.5, 2.1, 90, 0.08)
    flat.line([(-0.95, 0.75), (0.4, 0.75)], RED, 0.035)
    return finish(flat.picture.resize((1600, 1200), Image.Resampling.LANCZOS), focus=(0.1, 0.95))


def underside() -> Image.Image:
    """P30: B2 from the attic: new boards between old rafters, points of the nails beside the tails."""
    shot = Shot((34, -62, 16), (46, 10, 14), 62, sky=(10, 8, 7))
    ppi = 16
    deck = Flat((-40, 0, 120, 100), ppi)
    deck.picture = shaded(goods.boards(deck, "attic underside", goods.OLD_PINE, nails=False), 0.66)
    fresh = shaded(goods.boards(deck, "under B2", goods.NEW_PINE, nails=False), 0.92)
    deck.skin(rect(0.75, 0, 96.75, 28.1), fresh)
    deck.line([(97, 0), (97, 28)], (40, 28, 18), 0.3)
    shot.lay(deck.picture, (-40, 30, 2), (1, 0, 0), (0, -0.8, 0.6), ppi)
    wood = m.wood((1700, 90), ppi, "bay rafter near", m.OLD_FIR)
    new = m.wood((1700, 90), ppi, "tail underside", m.FIR)
    for x in (-24, 0, 24, 48, 72, 96, 120):
        for face in (0.0, 1.5):
            if (shot.eye[0] > x + face) == (face > 0):
                shot.lay(
                    shaded(wood, 0.62),
                    (x + face, 31, -3.6),
                    (0, -0.8, 0.6),
                    (0, 0.6, 0.8),
                    ppi,
                    rect(0, 0, 105, 5.5),
                )
        shot.lay(shaded(wood, 0.88), (x, 31, -3.6), (0, -0.8, 0.6), (1, 0, 0), ppi, rect(0, 0, 105, 1.5))
    shot.lay(shaded(new, 0.95), (49.5, 31, -3.6), (0, -0.8, 0.6), (1, 0, 0), ppi, rect(0, 0, 36, 1.5))
    shot.lay(shaded(m.wool((2600, 900), 8), 0.6), (-60, -70, -3), (1, 0, 0), (0, 1, 0), 9)
    return torch(reduce(shot), 0.5)
