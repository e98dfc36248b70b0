"""What stands around the demo roof: sky, lawn, street, walls, shrubs; and the whole house from the ground."""

import math
import random

from PIL import Image, ImageDraw, ImageFilter

from . import materials as m
from .camera import OVERSAMPLE, Shot, Vector, plus, shaded
from .dormer import dormer
from .flat import Flat, grain, mixed, words
from .house import EAVE_FT, TOP_FT, Plane, State, board, lay_slope, slope, wall


def outdoors(shot: Shot, *, near: Vector | None = None) -> None:
    """Fill the picture with sky, trees and lawn as seen from the shot's camera."""
    far = plus(shot.eye, (shot.ahead[0] * 4000, shot.ahead[1] * 4000, 0))
    horizon = round(shot.at(far)[1])
    small = (shot.width // 2, shot.height // 2)
    backdrop = m.sky(small, max(-small[1] // 3, min(horizon // 2, small[1])))
    shot.picture.paste(backdrop.resize(shot.picture.size, Image.Resampling.BILINEAR), (0, 0))
    lawn = m.grass((1800, 1800), "lawn", 1.4)
    shot.lay(lawn, (-130, -130, 0), (1, 0, 0), (0, 1, 0), 6)
    if near:
        close = m.grass((1500, 1500), "near lawn", 2.4)
        fade = (
            Image.radial_gradient("L")
            .resize(close.size)
            .point([max(0, min(255, (190 - v) * 4)) for v in range(256)])
        )
        close.putalpha(fade)
        shot.lay(close, (near[0] - 25, near[1] - 25, 0), (1, 0, 0), (0, 1, 0), 30)


def shrub(shot: Shot, foot: Vector, wide_ft: float, high_ft: float, seed: str) -> None:
    """Draw a round shrub standing on the ground."""
    x, y = shot.at(foot)
    scale = shot.focal / sum(a * b for a, b in zip(plus(foot, shot.eye, -1), shot.ahead, strict=True))
    w, h = wide_ft * scale, high_ft * scale
    rng = random.Random(seed)
    size = (round(w * 1.5), round(h * 1.5))
    mask = Image.new("L", size)
    pen = ImageDraw.Draw(mask)
    for _ in range(420):
        turn, out = rng.uniform(0, 3.1416), rng.random() ** 0.5
        cx, cy = (
            size[0] / 2 + math.cos(turn) * out * w * 0.46,
            size[1] - h * 0.04 - math.sin(turn) * out * h * 0.86,
        )
        r = w * rng.uniform(0.022, 0.06)
        pen.ellipse((cx - r, cy - r, cx + r, cy + r), fill=255)
    share = Image.blend(
        grain(seed, size, (w / 30, w / 30)),
        Image.linear_gradient("L").resize(size).transpose(Image.Transpose.FLIP_TOP_BOTTOM),
        0.5,
    )
    leaves = mixed((34, 56, 34), (112, 138, 76), share)
    dark = Image.new("L", shot.picture.size)
    ImageDraw.Draw(dark).ellipse((x - w * 0.7, y - h * 0.1, x + w * 0.6, y + h * 0.12), fill=140)
    shot.picture.paste((30, 38, 22), (0, 0), dark.filter(ImageFilter.GaussianBlur(w * 0.06)))
    shot.picture.paste(
        leaves, (round(x - size[0] / 2), round(y - size[1])), mask.filter(ImageFilter.GaussianBlur(1.4))
    )


def house(shot: Shot, state: State, *, ppi: float = 5.5) -> None:
    """Draw the whole house as seen from the south-west, on the ground or on the roof."""
    shot.fill([(1, 1, 0), (-16, 12, 0), (4, 30, 0), (44, 26, 0), (21, -2, 0)], (26, 36, 20), 110, 30)
    shot.fill([(20, -15.5, 0), (14, -12, 0), (14, 1, 0), (21, 1, 0)], (26, 36, 20), 150, 16)
    wall(
        shot,
        (1, 1, 0),
        (1, 0, 0),
        20,
        8.8,
        0.9,
        [(2.6, 2.8, 3.2, 4.6), (8.2, 2.8, 5.2, 4.6)],
        door=(15.4, 3.0),
    )
    wall(shot, (21, 1, 0), (0, -1, 0), 16, 8.8, 0.66, [(4, 2.8, 3, 4.6), (9.6, 2.8, 3, 4.6)])
    gable = [(0.0, 0.0), (22.0, 0.0), (22.0, 9.4), (11.0, 14.9), (0.0, 9.4)]
    wall(
        shot,
        (21, -15, 0),
        (1, 0, 0),
        22,
        15,
        1.0,
        [(4.2, 2.6, 3, 4.8), (7.8, 2.6, 3, 4.8), (11.4, 2.6, 3, 4.8)],
        gable,
    )
    soffit = EAVE_FT - 0.5
    for x in (20.0, 44.0):
        under = [(x, -16, soffit), (32, -16, soffit + 6), (32, -15, soffit + 6), (x, -15, soffit)]
        shot.fill([plus(point, (0, 0, 0.06)) for point in under], (150, 152, 146))
        shot.fill(
            [plus(point, (0, 0.1, -0.5 if point[1] > -16 else 0)) for point in under], (40, 42, 40), 90, 8
        )
    shot.fill([(1, 1, 8.8), (21, 1, 8.8), (21, 1, 7.6), (1, 1, 7.9)], (30, 32, 30), 110, 8)
    shot.fill([(21, 1, 8.8), (21, -15, 8.8), (21, -15, 7.6), (21, 1, 7.6)], (30, 32, 30), 120, 8)
    shot.fill([(0, 0, soffit), (20, 0, soffit), (21, 1, soffit), (0, 1, soffit)], (176, 176, 170))
    shot.fill([(20, 0, soffit), (20, -16, soffit), (21, -16, soffit), (21, 1, soffit)], (150, 150, 146))
    for plane, window in (("MS", (0, 0, 32.5, TOP_FT)), ("WW", (-12.5, 0, 16, TOP_FT))):
        named: Plane = "MS" if plane == "MS" else "WW"
        lay_slope(shot, named, slope(named, state, window, ppi, "crayon" if state == "deck" else "chalk"))
    board(shot, (0, 0, EAVE_FT), (20, 0, EAVE_FT), 0.5, 1.0)
    board(shot, (20, 0, EAVE_FT), (20, -16, EAVE_FT), 0.5, 0.78)
    board(shot, (20, -16, EAVE_FT), (32, -16, EAVE_FT + 6), 0.6, 1.02)
    board(shot, (32, -16, EAVE_FT + 6), (44, -16, EAVE_FT), 0.6, 1.02)
    shot.stroke([(0, 12, EAVE_FT + 6), (32, 12, EAVE_FT + 6)], (92, 88, 82), 7)
    dormer(shot)
    shot.stroke([(32, 12, EAVE_FT + 6), (32, -16, EAVE_FT + 6)], (92, 88, 82), 7)


def number_plate(shot: Shot, corner: Vector, wide_ft: float, high_ft: float, text: str) -> None:
    """Hang a plate with the house number on a wall that faces south."""
    flat = Flat((0, 0, wide_ft * 12, high_ft * 12), 24, (52, 66, 78))
    flat.line(
        [
            (0.4, 0.4),
            (wide_ft * 12 - 0.4, 0.4),
            (wide_ft * 12 - 0.4, high_ft * 12 - 0.4),
            (0.4, high_ft * 12 - 0.4),
            (0.4, 0.4),
        ],
        (206, 186, 120),
        0.4,
    )
    flat.put(words(text, high_ft * 12 * 24 * 0.56, (246, 242, 226), 0.05), wide_ft * 6, high_ft * 6)
    shot.lay(flat.picture, corner, (1, 0, 0), (0, 0, 1), 24 * 12)


def street(shot: Shot) -> None:
    """Draw the street, the kerb, the drive and the path."""
    asphalt = m.plain((2200, 300), (104, 104, 106), "street", [(3, 3), (90, 40), (400, 120)])
    shot.lay(asphalt, (-90, -72, 0.02), (1, 0, 0), (0, 1, 0), 12)
    for y, deep, tone in ((-47, 0.6, 182), (-46.4, 4.4, 170)):
        walk = m.plain(
            (2200, max(10, round(deep * 12))), (tone, tone - 3, tone - 10), f"walk {y}", [(4, 4), (120, 40)]
        )
        shot.lay(walk, (-90, y, 0.03), (1, 0, 0), (0, 1, 0), 12)
    path = m.plain((60, 520), (186, 180, 168), "path", [(4, 4), (30, 60)])
    shot.lay(path, (15.2, -42, 0.03), (1, 0, 0), (0, 1, 0), 12)


def mailbox(shot: Shot, foot: Vector, text: str) -> None:
    """Stand a mailbox with the house number by the street."""
    x, y, _ = foot
    post = m.wood((400, 400), 20, "post", (m.OLD_FIR[0], m.FIR[0]), upright=True)
    shot.box((x - 0.17, y, 0), ((0, 0, 3.6), (0.34, 0, 0), (0, 0.34, 0)), shaded(post.rotate(90), 0.9), 30)
    body = m.plain((300, 300), (58, 74, 86), "box", [(40, 40)])
    shot.box((x - 0.75, y - 0.6, 3.5), ((1.5, 0, 0), (0, 1.6, 0), (0, 0, 0.95)), body, 60)
    plate = Flat((0, 0, 15, 9), 24, (62, 80, 92))
    plate.text(text, 7.5, 4.6, 6.2, (246, 242, 226), bold=0.06)
    shot.lay(plate.picture, (x - 0.62, y - 0.62, 3.6), (1, 0, 0), (0, 0, 1), 24 * 12)


def reduce(shot: Shot) -> Image.Image:
    """Return the picture at its real size, edges softened a little as a small lens does."""
    return shot.finished().filter(ImageFilter.GaussianBlur(0.35 * OVERSAMPLE / 2))
