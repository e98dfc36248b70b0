"""A pinhole camera that lays flat pictures into space: enough to draw a roof from any place on it."""

import math
from collections.abc import Sequence

from PIL import Image, ImageChops, ImageDraw, ImageFilter

Vector = tuple[float, float, float]
Colour = tuple[int, int, int]

#: Everything is drawn this many times larger and then reduced, which smooths every edge.
OVERSAMPLE = 2
#: Nearer than this to the camera is cut away, in the scene's own units.
NEAREST = 0.05


def plus(a: Vector, b: Vector, times: float = 1.0) -> Vector:
    """Return a + b * times."""
    return (a[0] + b[0] * times, a[1] + b[1] * times, a[2] + b[2] * times)


def dot(a: Vector, b: Vector) -> float:
    """Return the inner product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vector, b: Vector) -> Vector:
    """Return the vector product."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def unit(a: Vector) -> Vector:
    """Return the vector of length one in the same direction."""
    length = math.sqrt(dot(a, a))
    return (a[0] / length, a[1] / length, a[2] / length)


def toned(colour: Colour, factor: float, lift: float = 0) -> Colour:
    """Return a colour made lighter or darker, then lifted by some levels."""
    red, green, blue = (max(0, min(255, round(channel * factor + lift))) for channel in colour)
    return red, green, blue


def shaded(picture: Image.Image, factor: float, tint: tuple[float, float, float] = (1, 1, 1)) -> Image.Image:
    """Return the picture lighter or darker, with its alpha kept."""
    tables: list[float] = []
    for channel in tint:
        tables += [min(255.0, level * factor * channel) for level in range(256)]
    if picture.mode == "RGBA":
        return picture.point(tables + list(range(256)))
    return picture.convert("RGB").point(tables)


class Shot:
    """One picture being taken: a camera and what it has seen so far.

    Args:
        eye: Place of the camera.
        target: Point in the middle of the picture.
        fov_deg: Width of view [degrees].
        portrait: True for a picture higher than wide.
        sky: Colour of the empty picture.
        up: Which way is up.
    """

    def __init__(
        self,
        eye: Vector,
        target: Vector,
        fov_deg: float,
        *,
        portrait: bool = False,
        sky: Colour = (30, 30, 32),
        up: Vector = (0, 0, 1),
    ) -> None:
        long_px, short_px = 1600 * OVERSAMPLE, 1200 * OVERSAMPLE
        self.width, self.height = (short_px, long_px) if portrait else (long_px, short_px)
        self.picture = Image.new("RGB", (self.width, self.height), sky)
        self.eye = eye
        self.ahead = unit(plus(target, eye, -1))
        self.right = unit(cross(self.ahead, up))
        self.up = cross(self.right, self.ahead)
        self.focal = self.width / 2 / math.tan(math.radians(fov_deg) / 2)

    def _seen(self, direction: Vector) -> Vector:
        ahead = dot(direction, self.ahead)
        return (
            self.focal * dot(direction, self.right) + self.width / 2 * ahead,
            -self.focal * dot(direction, self.up) + self.height / 2 * ahead,
            ahead,
        )

    def at(self, point: Vector) -> tuple[float, float]:
        """Return where a point in front of the camera falls in the picture [px]."""
        x, y, ahead = self._seen(plus(point, self.eye, -1))
        return x / ahead, y / ahead

    def outline(self, points: Sequence[Vector]) -> list[tuple[float, float]]:
        """Return a polygon in the picture [px], cut where it passes behind the camera."""
        kept: list[Vector] = []
        depths = [dot(plus(point, self.eye, -1), self.ahead) - NEAREST for point in points]
        for index, point in enumerate(points):
            before, before_depth = points[index - 1], depths[index - 1]
            if (depths[index] > 0) != (before_depth > 0):
                kept.append(
                    plus(before, plus(point, before, -1), before_depth / (before_depth - depths[index]))
                )
            if depths[index] > 0:
                kept.append(point)
        return [self.at(point) for point in kept]

    def fill(self, points: Sequence[Vector], colour: Colour, alpha: int = 255, blur_px: float = 0) -> None:
        """Fill a polygon in space with one colour; blurred, it serves as a shadow."""
        outline = self.outline(points)
        if len(outline) < 3:
            return
        mask = Image.new("L", self.picture.size)
        ImageDraw.Draw(mask).polygon(outline, fill=alpha)
        if blur_px:
            mask = mask.filter(ImageFilter.GaussianBlur(blur_px))
        self.picture.paste(colour, (0, 0), mask)

    def stroke(self, points: Sequence[Vector], colour: Colour, width_px: float) -> None:
        """Draw a line through points in space; the width is in picture pixels."""
        pen = ImageDraw.Draw(self.picture)
        for start, end in zip(points, points[1:], strict=False):
            seen = self.outline([start, end, plus(start, plus(end, start, -1), 0.5)])
            if len(seen) > 1:
                pen.line([min(seen), max(seen)], fill=colour, width=max(1, round(width_px)))

    def lay(
        self,
        texture: Image.Image,
        corner: Vector,
        along: Vector,
        upward: Vector,
        per_unit: float,
        edge: Sequence[tuple[float, float]] | None = None,
    ) -> None:
        """Lay a flat picture into space.

        Args:
            texture: The flat picture; alpha is respected.
            corner: Where its lower left corner lies.
            along: Step in space for one unit to the right.
            upward: Step in space for one unit up.
            per_unit: Pixels of the texture for one unit.
            edge: Outline in units from the lower left corner; the whole picture when absent.
        """
        wide, high = texture.width / per_unit, texture.height / per_unit
        edge = edge or [(0, 0), (wide, 0), (wide, high), (0, high)]
        outline = self.outline([plus(plus(corner, along, s), upward, t) for s, t in edge])
        if len(outline) < 3:
            return
        left = max(0, math.floor(min(x for x, _ in outline)))
        top = max(0, math.floor(min(y for _, y in outline)))
        right = min(self.width, math.ceil(max(x for x, _ in outline)) + 1)
        bottom = min(self.height, math.ceil(max(y for _, y in outline)) + 1)
        if left >= right or top >= bottom:
            return
        size = (right - left, bottom - top)
        columns = (
            self._seen((along[0] / per_unit, along[1] / per_unit, along[2] / per_unit)),
            self._seen((-upward[0] / per_unit, -upward[1] / per_unit, -upward[2] / per_unit)),
            self._seen(plus(plus(corner, upward, high), self.eye, -1)),
        )
        if abs(dot(columns[0], cross(columns[1], columns[2]))) < 1e-12:
            return  # seen exactly from its edge
        back = _inverse(columns)
        shifted = [(row[0], row[1], row[0] * left + row[1] * top + row[2]) for row in back]
        scale = shifted[2][2]
        data = [value / scale for row in shifted for value in row][:8]
        seen = texture.transform(size, Image.Transform.PERSPECTIVE, data, Image.Resampling.BICUBIC)
        mask = Image.new("L", size)
        ImageDraw.Draw(mask).polygon([(x - left, y - top) for x, y in outline], fill=255)
        if seen.mode == "RGBA":
            mask = ImageChops.multiply(mask, seen.getchannel("A"))
        self.picture.paste(seen.convert("RGB"), (left, top), mask)

    def box(
        self,
        corner: Vector,
        sides: tuple[Vector, Vector, Vector],
        texture: Image.Image,
        per_unit: float,
        light: Vector = (0.25, -0.45, 0.86),
        top: Image.Image | None = None,
    ) -> None:
        """Draw a block: its three sides start at the corner; the texture runs along the first one.

        The third side should point up; ``top`` replaces the texture on that face.
        """
        lengths = [math.sqrt(dot(side, side)) for side in sides]
        for along, upward, out in ((0, 1, 2), (0, 2, 1), (1, 2, 0)):
            normal = unit(cross(sides[along], sides[upward]))
            if dot(normal, sides[out]) < 0:
                normal = (-normal[0], -normal[1], -normal[2])
            for far in (True, False):
                start = plus(corner, sides[out]) if far else corner
                facing = normal if far else (-normal[0], -normal[1], -normal[2])
                if dot(facing, plus(self.eye, start, -1)) <= 0:
                    continue
                skin = top if top is not None and out == 2 and far else texture
                need = (round(lengths[along] * per_unit), round(lengths[upward] * per_unit))
                face = skin.crop((0, 0, min(need[0], skin.width), min(need[1], skin.height)))
                if face.size != need:
                    face = skin.resize((max(2, need[0]), max(2, need[1])))
                bright = 0.42 + 0.66 * max(0.0, dot(facing, unit(light)))
                self.lay(shaded(face, bright), start, unit(sides[along]), unit(sides[upward]), per_unit)

    def finished(self) -> Image.Image:
        """Return the picture at its real size."""
        return self.picture.resize(
            (self.width // OVERSAMPLE, self.height // OVERSAMPLE), Image.Resampling.LANCZOS
        )


def _inverse(columns: Sequence[Vector]) -> list[Vector]:
    first, second, third = columns
    rows = [cross(second, third), cross(third, first), cross(first, second)]
    size = dot(first, rows[0])
    return [(row[0] / size, row[1] / size, row[2] / size) for row in rows]
