"""Things a roofer holds against the work: steel tape, nails, labels; and the last touch to a picture."""

import math
from fractions import Fraction

from PIL import Image, ImageDraw, ImageFilter

from .camera import Colour, shaded, toned
from .flat import Flat, font, grain, speckled

YELLOW: Colour = (240, 202, 52)
INK: Colour = (24, 22, 20)
RED: Colour = (178, 34, 28)
STEEL: Colour = (186, 190, 194)
NOTE = "Illustration for the demo job"


def tape(
    ppi: float, from_in: float, to_in: float, *, hook: bool = True, wide_in: float = 1.0, finest: int = 16
) -> Image.Image:
    """Return a length of steel tape, zero to the left; its left edge is exactly at ``from_in``.

    Args:
        ppi: Pixels for one inch.
        from_in: First reading [in]; 0 shows the hook, which ends at zero.
        to_in: Last reading [in].
        hook: True to draw the hook at zero.
        wide_in: Width of the blade [in].
        finest: Parts of an inch of the finest ticks.
    """
    high = round(wide_in * ppi)
    picture = Image.new("RGBA", (round((to_in - from_in) * ppi), high), (*YELLOW, 255))
    for y in range(high):
        bend = math.cos((y / high - 0.42) * 2.2)
        tone = tuple(round(channel * (0.72 + 0.3 * bend)) for channel in YELLOW)
        ImageDraw.Draw(picture).line([(0, y), (picture.width, y)], fill=(*tone, 255))
    pen = ImageDraw.Draw(picture)
    part = math.floor(from_in * finest)
    while part <= to_in * finest:
        x = (part / finest - from_in) * ppi
        lowest = Fraction(part, finest).denominator
        reach = {1: 1.0, 2: 0.46, 4: 0.36, 8: 0.26, 16: 0.17}[lowest]
        thick = max(1, round(ppi * (0.022 if lowest > 1 else 0.03)))
        pen.line([(x, 0), (x, high * reach)], fill=INK, width=thick)
        if lowest > 1:
            pen.line([(x, high), (x, high * (1 - reach * 0.6))], fill=INK, width=thick)
        elif part:
            inch = part // finest
            face = font(high * 0.62)
            foot = inch % 12 == 0
            label = str(inch)
            left, top, right, bottom = face.getbbox(label, stroke_width=max(1, high // 40))
            where = (x - (right - left) - high * 0.1 - left, high * 0.53 - (top + bottom) / 2 + high * 0.03)
            if foot:
                pen.rectangle(
                    (x - (right - left) - high * 0.18, high * 0.24, x - high * 0.03, high * 0.84), fill=INK
                )
            colour = YELLOW if foot else RED if inch % 16 == 0 else INK
            pen.text(
                where, label, font=face, fill=colour, stroke_width=max(1, high // 40), stroke_fill=colour
            )
        part += 1
    pen.line([(0, 1), (picture.width, 1)], fill=(150, 120, 20), width=max(1, high // 60))
    pen.line([(0, high - 2), (picture.width, high - 2)], fill=(150, 120, 20), width=max(1, high // 60))
    if hook and from_in == 0:
        tip = round(ppi * 0.4)
        pen.rectangle((0, round(high * 0.06), tip, round(high * 0.94)), fill=(200, 204, 208))
        pen.rectangle(
            (0, round(high * 0.06), max(2, round(ppi * 0.07)), round(high * 0.94)), fill=(120, 124, 130)
        )
        for spot in (0.3, 0.7):
            r = high * 0.09
            pen.ellipse(
                (tip * 0.62 - r, high * spot - r, tip * 0.62 + r, high * spot + r), fill=(140, 144, 150)
            )
            pen.ellipse(
                (tip * 0.62 - r * 0.6, high * spot - r * 0.8, tip * 0.62 + r * 0.4, high * spot + r * 0.2),
                fill=(226, 228, 230),
            )
    return picture


def lay_tape(
    flat: Flat,
    x: float,
    y: float,
    length_in: float,
    *,
    angle_deg: float = 0,
    from_in: float = 0,
    side: int = 1,
    wide_in: float = 1.0,
    finest: int = 16,
    shadow: float = 0.1,
) -> None:
    """Lay a tape so that its reading ``from_in`` is at (x, y) on the tape's upper edge.

    ``side`` is 1 when the tape lies below the measured line, seen along the tape, and -1 when above.
    """
    strip = tape(flat.ppi, from_in, from_in + length_in, wide_in=wide_in, finest=finest)
    a = math.radians(angle_deg)
    middle_x = x + math.cos(a) * length_in / 2 + math.sin(a) * wide_in / 2 * side
    middle_y = y + math.sin(a) * length_in / 2 - math.cos(a) * wide_in / 2 * side
    flat.put(strip, middle_x, middle_y, angle_deg, shadow)


def tape_case(ppi: float) -> Image.Image:
    """Return the case of the tape seen from its side, its mouth at the left edge below."""
    size = round(2.7 * ppi)
    picture = Image.new("RGBA", (size, size), (0, 0, 0, 0))
    pen = ImageDraw.Draw(picture)
    pen.rounded_rectangle((0, 0, size - 1, size - 1), round(size * 0.24), fill=(44, 46, 50, 255))
    pen.rounded_rectangle((0, size * 0.6, size * 0.5, size - 1), round(size * 0.05), fill=(44, 46, 50, 255))
    pen.rounded_rectangle(
        (size * 0.05, size * 0.05, size * 0.95, size * 0.95),
        round(size * 0.2),
        outline=(76, 79, 84, 255),
        width=round(size * 0.02),
    )
    pen.rounded_rectangle(
        (size * 0.2, size * 0.24, size * 0.8, size * 0.76), round(size * 0.06), fill=(*YELLOW, 255)
    )
    face = font(size * 0.2)
    left, top, right, bottom = face.getbbox("25 ft")
    pen.text(
        (size / 2 - (left + right) / 2, size / 2 - (top + bottom) / 2), "25 ft", font=face, fill=(*INK, 255)
    )
    return picture


def nail(
    ppi: float, length_in: float, shank_in: float, *, ring: bool, old: bool = False, head_in: float = 0.281
) -> Image.Image:
    """Return a nail lying on its side, head to the left; head's top to point is ``length_in``."""
    high = round(head_in * ppi) + 4
    picture = Image.new("RGBA", (round(length_in * ppi), high), (0, 0, 0, 0))
    middle, half = high / 2, shank_in * ppi / 2
    tone: Colour = (136, 116, 98) if old else (178, 182, 184)
    pen = ImageDraw.Draw(picture)
    end, point = picture.width, picture.width - shank_in * ppi * 1.7
    for row in range(round(middle - half), round(middle + half) + 1):
        bend = math.cos((row - middle + half * 0.35) / half * 1.25)
        shade = tuple(round(channel * (0.42 + 0.66 * max(0.0, bend))) for channel in tone)
        taper = abs(row - middle) / half
        pen.line([(ppi * 0.05, row), (point + (end - point) * (1 - taper), row)], fill=(*shade, 255))
    if ring:
        x, step = ppi * 0.55, ppi * 0.062
        while x < point - step:
            for row in range(round(middle - half - ppi * 0.012), round(middle + half + ppi * 0.012) + 1):
                bend = math.cos((row - middle + half * 0.35) / half * 1.2)
                pen.line(
                    [(x, row), (x + step * 0.45, row)],
                    fill=(*(round(c * (0.25 + 0.4 * max(0, bend))) for c in tone), 255),
                )
                pen.line(
                    [(x + step * 0.5, row), (x + step * 0.8, row)],
                    fill=(*(min(255, round(c * (0.5 + 0.75 * max(0, bend)))) for c in tone), 255),
                )
            x += step
    thick = ppi * 0.055
    pen.rounded_rectangle(
        (0, 2, thick, high - 2), radius=thick / 2, fill=(*(round(c * 0.84) for c in tone), 255)
    )
    pen.line(
        [(thick * 0.35, 4), (thick * 0.35, high - 4)],
        fill=(*(min(255, c + 40) for c in tone), 255),
        width=max(1, round(thick * 0.3)),
    )
    if old:
        rust = grain("rust", picture.size, (ppi * 0.05, ppi * 0.035)).point(
            [min(255, max(0, v - 90) * 2) for v in range(256)]
        )
        alpha = picture.getchannel("A")
        picture.paste((112, 58, 30), (0, 0), rust)
        picture.putalpha(alpha)
    return picture


def nail_head(flat: Flat, x: float, y: float, radius_in: float = 0.14, *, bright: bool = True) -> None:
    """Draw a driven nail head, flush with the wood."""
    tone: Colour = (176, 180, 182) if bright else (84, 66, 52)
    flat.disc(x + 0.03, y - 0.04, radius_in * 1.22, (50, 34, 20), 150, 0.03)
    flat.disc(x, y, radius_in, tone)
    flat.disc(
        x - radius_in * 0.22,
        y + radius_in * 0.24,
        radius_in * 0.55,
        toned(tone, 1, 34),
        200,
        0.02,
    )
    if bright and flat.ppi > 40:
        for k in range(-2, 3):
            flat.line([(x + k * 0.045, y - 0.08), (x + k * 0.045, y + 0.08)], (140, 144, 148), 0.012, 150)


def cap(flat: Flat, x: float, y: float) -> None:
    """Draw a plastic cap nail, 1 in across."""
    flat.disc(x + 0.1, y - 0.12, 0.54, (12, 12, 12), 150, 0.08)
    flat.disc(x, y, 0.5, (196, 92, 40))
    flat.disc(x, y, 0.42, (222, 116, 56))
    flat.disc(x - 0.1, y + 0.12, 0.22, (240, 150, 92), 170, 0.08)
    flat.disc(x, y, 0.17, (150, 154, 158))
    flat.disc(x - 0.03, y + 0.04, 0.09, (214, 216, 218))


def paper_label(
    size_in: tuple[float, float],
    ppi: float,
    lines: list[tuple[str, float, float, Colour]],
    *,
    paper: Colour = (240, 237, 226),
) -> Flat:
    """Return a printed label; each line is text, height up [in], letter height [in] and colour."""
    label = Flat((0, 0, *size_in), ppi, paper)
    label.speckle("paper " + lines[0][0], 0.3, 4)
    for text, y, high, colour in lines:
        label.text(text, size_in[0] / 2, y, high, colour, bold=0.05)
    return label


def finish(
    picture: Image.Image,
    *,
    vignette: float = 0.22,
    focus: tuple[float, float] | None = None,
    blur_px: float = 5,
    warm: tuple[float, float, float] = (1.02, 1.0, 0.97),
    seed: str = "film",
    light: float = 1.0,
) -> Image.Image:
    """Return the picture as a phone would keep it: lens, focus, a little noise, the corner note.

    Args:
        picture: The picture at its real size.
        vignette: Loss of light in the corners.
        focus: Upper and lower bound of the sharp band, as shares of the height; all sharp when absent.
        blur_px: Blur outside that band [px].
        warm: Factors of red, green and blue.
        seed: Names the noise.
        light: Exposure.
    """
    wide, high = picture.size
    if focus:
        ramp = Image.new("L", (1, 64))
        for row in range(64):
            share = row / 63
            away = max(focus[0] - share, share - focus[1], 0.0)
            ramp.putpixel((0, row), min(255, round(away / 0.22 * 255)))
        mask = ramp.resize(picture.size, Image.Resampling.BICUBIC)
        half = picture.filter(ImageFilter.GaussianBlur(blur_px * 0.4))
        far = picture.filter(ImageFilter.GaussianBlur(blur_px))
        picture = Image.composite(half, picture, mask.point([min(255, v * 3) for v in range(256)]))
        picture = Image.composite(far, picture, mask.point([max(0, (v - 85) * 1.5) for v in range(256)]))
    picture = shaded(picture, light, warm)
    fall = Image.radial_gradient("L").resize((round(wide * 1.1), round(high * 1.1)))
    fall = fall.crop(
        (round(wide * 0.05), round(high * 0.05), round(wide * 0.05) + wide, round(high * 0.05) + high)
    )
    fall = fall.point([max(0, (v - 90) / 165) ** 1.5 * 255 * vignette for v in range(256)])
    picture.paste((10, 8, 8), (0, 0), fall)
    picture = speckled(picture, grain(seed, picture.size, (2.2, 2.2)), 1.5)
    return noted(picture)


def noted(picture: Image.Image) -> Image.Image:
    """Return the picture with the note in its lower right corner."""
    face = font(23)
    left, top, right, bottom = face.getbbox(NOTE)
    wide, high = right - left + 28, bottom - top + 18
    x, y = picture.width - wide - 18, picture.height - high - 16
    plate = Image.new("L", picture.size)
    ImageDraw.Draw(plate).rounded_rectangle((x, y, x + wide, y + high), 6, fill=168)
    picture.paste((22, 24, 28), (0, 0), plate)
    ImageDraw.Draw(picture).text((x + 14 - left, y + 9 - top), NOTE, font=face, fill=(246, 244, 236))
    return picture
