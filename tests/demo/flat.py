"""Flat pictures with inch coordinates: what is drawn on a deck, a wall or a label."""

import math
import random
from collections.abc import Sequence

from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageFont

from .camera import Colour

Point = tuple[float, float]


def grain(seed: str, size: tuple[int, int], cell: tuple[float, float]) -> Image.Image:
    """Return smooth grey noise, the same for the same seed; ``cell`` is the size of one blot [px]."""
    small = (max(2, math.ceil(size[0] / cell[0]) + 2), max(2, math.ceil(size[1] / cell[1]) + 2))
    raw = Image.frombytes("L", small, random.Random(seed).randbytes(small[0] * small[1]))
    if cell[0] <= 1 and cell[1] <= 1:
        return raw.crop((0, 0, *size))
    wide = raw.resize((round(small[0] * cell[0]), round(small[1] * cell[1])), Image.Resampling.BICUBIC)
    return wide.crop((0, 0, *size)) if wide.width >= size[0] and wide.height >= size[1] else wide.resize(size)


def speckled(picture: Image.Image, noise: Image.Image, strength: float) -> Image.Image:
    """Return the picture with the noise added, ``strength`` levels up and down at most."""
    level = noise.point([128 + (value - 127.5) / 127.5 * strength for value in range(256)])
    return ImageChops.add(picture, Image.merge("RGB", (level, level, level)), 1, -128)


def mixed(low: Colour, high: Colour, share: Image.Image) -> Image.Image:
    """Return colours between two, by a grey picture."""
    return Image.merge(
        "RGB",
        [share.point([a + (b - a) * v / 255 for v in range(256)]) for a, b in zip(low, high, strict=True)],
    )


def font(size_px: float) -> ImageFont.FreeTypeFont:
    """Return Pillow's own scalable face, so that no font of the machine is needed."""
    face = ImageFont.load_default(size=max(4.0, size_px))
    if not isinstance(face, ImageFont.FreeTypeFont):
        message = "Pillow was built without FreeType"
        raise TypeError(message)
    return face


def words(text: str, height_px: float, colour: Colour, bold: float = 0.0) -> Image.Image:
    """Return a line of text on nothing; ``height_px`` is the height of a capital."""
    size = height_px / 0.72
    face, stroke = font(size), round(height_px * bold)
    left, top, right, bottom = face.getbbox(text, stroke_width=stroke)
    picture = Image.new("RGBA", (math.ceil(right - left) + 4, math.ceil(bottom - top) + 4), (*colour, 0))
    ImageDraw.Draw(picture).text(
        (2 - left, 2 - top),
        text,
        font=face,
        fill=(*colour, 255),
        stroke_width=stroke,
        stroke_fill=(*colour, 255),
    )
    return picture


class Flat:
    """A flat picture that is drawn on in inches: x to the right, y up.

    Args:
        window: Left, bottom, right and top [in].
        ppi: Pixels for one inch.
        base: A colour, or a picture of the right size.
    """

    def __init__(
        self, window: tuple[float, float, float, float], ppi: float, base: Colour | Image.Image = (0, 0, 0)
    ) -> None:
        self.left, self.bottom, self.right, self.top = window
        self.ppi = ppi
        size = (round((self.right - self.left) * ppi), round((self.top - self.bottom) * ppi))
        if isinstance(base, Image.Image):
            self.picture = base if base.size == size else base.resize(size)
        else:
            self.picture = Image.new("RGB", size, base)

    @property
    def size(self) -> tuple[int, int]:
        """Size in pixels."""
        return self.picture.size

    def px(self, points: Sequence[Point]) -> list[Point]:
        """Return points in pixels."""
        return [((x - self.left) * self.ppi, (self.top - y) * self.ppi) for x, y in points]

    def mask(self, points: Sequence[Point], alpha: int = 255, blur_in: float = 0) -> Image.Image:
        """Return a polygon as a grey mask."""
        mask = Image.new("L", self.size)
        ImageDraw.Draw(mask).polygon(self.px(points), fill=alpha)
        return mask.filter(ImageFilter.GaussianBlur(blur_in * self.ppi)) if blur_in else mask

    def _spot(
        self, points: Sequence[Point], around_in: float
    ) -> tuple[tuple[int, int, int, int], list[Point]] | None:
        """Return the part of the picture a shape touches [px], and the shape in that part."""
        drawn, more = self.px(points), around_in * self.ppi + 2
        left = max(0, math.floor(min(x for x, _ in drawn) - more))
        top = max(0, math.floor(min(y for _, y in drawn) - more))
        right = min(self.size[0], math.ceil(max(x for x, _ in drawn) + more))
        bottom = min(self.size[1], math.ceil(max(y for _, y in drawn) + more))
        if left >= right or top >= bottom:
            return None
        return (left, top, right, bottom), [(x - left, y - top) for x, y in drawn]

    def poly(self, points: Sequence[Point], fill: Colour, alpha: int = 255, blur_in: float = 0) -> None:
        """Fill a polygon."""
        spot = self._spot(points, 3 * blur_in)
        if spot is None:
            return
        (left, top, right, bottom), drawn = spot
        mask = Image.new("L", (right - left, bottom - top))
        ImageDraw.Draw(mask).polygon(drawn, fill=alpha)
        if blur_in:
            mask = mask.filter(ImageFilter.GaussianBlur(blur_in * self.ppi))
        self.picture.paste(fill, (left, top), mask)

    def skin(
        self, points: Sequence[Point], texture: Image.Image, alpha: int = 255, blur_in: float = 0
    ) -> None:
        """Fill a polygon with a picture as large as this one."""
        self.picture.paste(texture, (0, 0), self.mask(points, alpha, blur_in))

    def line(
        self, points: Sequence[Point], fill: Colour, width_in: float, alpha: int = 255, blur_in: float = 0
    ) -> None:
        """Draw a line."""
        width = max(1, round(width_in * self.ppi))
        spot = self._spot(points, width_in + 3 * blur_in)
        if spot is None:
            return
        (left, top, right, bottom), drawn = spot
        mask = Image.new("L", (right - left, bottom - top))
        ImageDraw.Draw(mask).line(drawn, fill=alpha, width=width, joint="curve")
        if blur_in:
            mask = mask.filter(ImageFilter.GaussianBlur(blur_in * self.ppi))
        self.picture.paste(fill, (left, top), mask)

    def disc(
        self, x: float, y: float, radius: float, fill: Colour, alpha: int = 255, blur_in: float = 0
    ) -> None:
        """Draw a disc."""
        if not (
            self.left - 2 * radius < x < self.right + 2 * radius
            and self.bottom - 2 * radius < y < self.top + 2 * radius
        ):
            return
        ring = [
            (x + radius * math.cos(k * math.pi / 24), y + radius * math.sin(k * math.pi / 24))
            for k in range(48)
        ]
        spread = radius + 3 * blur_in + 2 / self.ppi
        part = Flat((x - spread, y - spread, x + spread, y + spread), self.ppi)
        mask = part.mask(ring, alpha, blur_in)
        ((left, top),) = self.px([(x - spread, y + spread)])
        self.picture.paste(fill, (round(left), round(top)), mask)

    def put(self, sprite: Image.Image, x: float, y: float, angle_deg: float = 0, shadow: float = 0) -> None:
        """Paste a picture with its middle at a point, turned anticlockwise; ``shadow`` [in] lifts it."""
        turned = sprite.rotate(angle_deg, Image.Resampling.BICUBIC, expand=True) if angle_deg else sprite
        (middle,) = self.px([(x, y)])
        left, top = round(middle[0] - turned.width / 2), round(middle[1] - turned.height / 2)
        alpha = turned.getchannel("A")
        if shadow:
            grow = math.ceil(shadow * self.ppi * 3)
            soft = Image.new("L", (turned.width + 2 * grow, turned.height + 2 * grow))
            soft.paste(alpha.point([value * 0.6 for value in range(256)]), (grow, grow))
            soft = soft.filter(ImageFilter.GaussianBlur(shadow * self.ppi * 0.7))
            step = round(shadow * self.ppi)
            self.picture.paste((14, 12, 12), (left - grow - step, top - grow + step), soft)
        self.picture.paste(turned.convert("RGB"), (left, top), alpha)

    def text(
        self,
        text: str,
        x: float,
        y: float,
        height_in: float,
        fill: Colour,
        angle_deg: float = 0,
        bold: float = 0.0,
    ) -> None:
        """Write a line of text with its middle at a point."""
        self.put(words(text, height_in * self.ppi, fill, bold), x, y, angle_deg)

    def chalk(
        self, text: str, x: float, y: float, height_in: float, fill: Colour, angle_deg: float = 0
    ) -> None:
        """Write as with chalk on wood: broad and broken."""
        sprite = words(text, height_in * self.ppi, fill, 0.07)
        rough = grain(f"chalk {text}", sprite.size, (max(1.0, height_in * self.ppi * 0.022),) * 2)
        broken = rough.point([255 if value > 70 else 70 for value in range(256)])
        sprite.putalpha(ImageChops.multiply(sprite.getchannel("A"), broken))
        self.put(sprite, x, y, angle_deg)

    def speckle(self, seed: str, cell_in: float, strength: float) -> None:
        """Add noise with blots of a given size."""
        cell = max(1.0, cell_in * self.ppi)
        self.picture = speckled(self.picture, grain(seed, self.size, (cell, cell)), strength)
