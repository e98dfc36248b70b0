"""What an old roof shows once it is cut open: the edge of its layers or of its deck, and a nail drawn out."""

import math
from fractions import Fraction

from PIL import Image, ImageDraw

from .camera import Colour, Shot, shaded
from .flat import Flat, font
from .garden import reduce
from .tools import INK, STEEL, finish, nail
from .views_near import looked_down

#: How far the cut is seen to each side of its middle, and in front of it and behind it [in].
HALF_IN, FRONT_IN, BACK_IN = 9.0, 4.4, 30.0


def rule(ppi: float, length_in: float, *, wide_in: float = 0.9) -> Image.Image:
    """Return a steel ruler, its zero at the left end, sixteenths along its upper edge."""
    high = round(wide_in * ppi)
    picture = Image.new("RGBA", (round(length_in * ppi), high))
    pen = ImageDraw.Draw(picture)
    for y in range(high):
        tone = 0.9 + 0.16 * math.sin(math.pi * y / high)
        pen.line([(0, y), (picture.width, y)], fill=(*(round(c * tone) for c in STEEL), 255))
    for part in range(math.floor(length_in * 16) + 1):
        reach = {1: 0.62, 2: 0.46, 4: 0.34, 8: 0.25, 16: 0.16}[Fraction(part, 16).denominator]
        x = part / 16 * ppi
        pen.line([(x, 0), (x, high * reach)], fill=INK, width=max(1, round(ppi * 0.016)))
        if part and part % 16 == 0:
            label = str(part // 16)
            face = font(high * 0.5)
            left, top, right, bottom = face.getbbox(label, stroke_width=max(1, high // 50))
            where = (x - (right - left) - high * 0.1 - left, high * 0.62 - (top + bottom) / 2)
            pen.text(where, label, font=face, fill=INK, stroke_width=max(1, high // 50), stroke_fill=INK)
    pen.rectangle((0, 0, picture.width - 1, high - 1), outline=(104, 108, 112), width=max(1, high // 40))
    return picture


def cut_edge(floor: Image.Image, face: Flat, top: Image.Image, *, ruler_at: float, seed: str) -> Image.Image:
    """Return a cut seen from in front, a ruler standing against it with its zero at the foot of the cut.

    Args:
        floor: What lies in front of the cut.
        face: The cut itself, from its foot at zero; 18 in wide.
        top: What lies on top, behind the cut.
        ruler_at: Where the ruler stands along the cut [in].
        seed: Names the noise.
    """
    high = face.top
    shot = Shot((0.5, -4.2, 2.6), (0.1, 0.5, 0.42), 56, sky=(26, 22, 18))
    shot.lay(floor, (-HALF_IN, -FRONT_IN, 0), (1, 0, 0), (0, 1, 0), floor.width / (2 * HALF_IN))
    shot.lay(top, (-HALF_IN, 0, high), (1, 0, 0), (0, 1, 0), top.width / (2 * HALF_IN))
    shade = [(-HALF_IN, -0.9, 0.01), (HALF_IN, -0.9, 0.01), (HALF_IN, 0, 0.01), (-HALF_IN, 0, 0.01)]
    shot.fill(shade, (8, 6, 5), 150, 16)
    shot.lay(face.picture, (-HALF_IN, 0, 0), (1, 0, 0), (0, 0, 1), face.ppi)
    strip = rule(400, 1.9)
    foot = [(ruler_at + 0.1, -0.14, 0.02), (ruler_at + 1.1, -0.14, 0.02)]
    shot.fill([*foot, (ruler_at + 1.15, 0, high), (ruler_at + 0.2, 0, high)], (6, 5, 4), 130, 10)
    # turned upright its zero stands on the floor
    upright = strip.transpose(Image.Transpose.ROTATE_90)
    shot.lay(upright, (ruler_at, -0.1, 0), (1, 0, 0), (0, 0.04, 1), 400)
    return finish(reduce(shot), focus=(0.2, 0.84), seed=seed)


def drawn_nail(
    bench: Flat, length_in: float, shank_in: float, *, note: str, ink: Colour, portrait: bool, seed: str
) -> Image.Image:
    """Return an old nail on the wood it came from, a ruler along it and its hole above.

    Args:
        bench: The wood, drawn on.
        length_in: Length of the nail [in].
        shank_in: Its shank [in].
        note: Chalked beside it.
        ink: Color of the chalk.
        portrait: True for a picture higher than wide.
        seed: Names the noise.
    """
    bench.disc(1.0, 1.75, 0.075, (16, 10, 8))
    bench.poly([(0.7, 1.72), (0.95, 1.95), (1.3, 1.86), (1.32, 1.62), (0.95, 1.55)], (120, 92, 62), 120, 0.05)
    bench.put(rule(bench.ppi, 4.6), 2.3, -0.72, 0, 0.06)
    bench.put(nail(bench.ppi, length_in, shank_in, ring=False, old=True), length_in / 2, -0.12, 0, 0.06)
    bench.chalk(note, 2.9, 1.7, 0.62, ink, 4)
    shot = looked_down(bench, (1.7, 0.3), 5.4 if portrait else 7.0, lean_deg=16, portrait=portrait)
    picture = reduce(shot)
    return finish(shaded(picture, 1.04), focus=(0.16, 0.84), seed=seed)
