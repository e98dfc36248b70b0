"""A page as a grey printer would put it on paper, and how strongly a spot of it stands out.

What is measured: the page in print style, as wide as the printable part of a Letter sheet, is photographed at two
device pixels a CSS pixel (192 to the inch; a printer has 300 or more, so a thin stroke comes out no darker here than
on paper) and turned to grey by Pillow. Of every line of text and every drawn border the darkest and the lightest pixel
of its own box are taken, and their contrast computed as WCAG 2 does. So thin strokes, pale ink, translucent parts and
what lies behind the text all count as they come out.
"""

import io
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from PIL import Image

if TYPE_CHECKING:
    from playwright.sync_api import Page

#: Width of a Letter sheet less margins of 18 mm [CSS px], and device pixels a CSS pixel.
PAPER = {"width": 680, "height": 920}
SCALE = 2

#: The same for a drawing [device px a CSS px]: 288 to the inch, as the plainest printer.
DRAWING_SCALE = 3

#: What text and lines must reach (WCAG 2.2, 1.4.3).
CONTRAST = 4.5

#: A browser photographs no more than this at once [device px].
_TILE_PX = 12_000

Box = Sequence[float]


def grey(page: "Page") -> list[Image.Image]:
    """Return the whole page in grey, in tiles from top to bottom, one as high as the next."""
    height_px = page.evaluate("document.documentElement.scrollHeight")
    step_px = _TILE_PX // SCALE
    tiles = []
    for top_px in range(0, height_px, step_px):
        clip = {"x": 0, "y": top_px, "width": PAPER["width"], "height": min(step_px, height_px - top_px)}
        shot = page.screenshot(full_page=True, clip=clip, animations="disabled")  # type: ignore[arg-type]
        tiles.append(Image.open(io.BytesIO(shot)).convert("L"))
    return tiles


def contrast_of(tiles: Sequence[Image.Image], box: Box) -> float:
    """Return the contrast between the darkest and the lightest pixel of a box given in CSS pixels."""
    found = [extremes for part in _parts(tiles, box) for extremes in [part.getextrema()]]
    if not found:
        return 0.0
    return ratio(min(low for low, _ in found), max(high for _, high in found))


def _parts(tiles: Sequence[Image.Image], box: Box) -> Iterator[Image.Image]:
    """Yield what each tile holds of a box."""
    left, top, right, bottom = (round(edge * SCALE) for edge in box)
    for number, tile in enumerate(tiles):
        shift = number * (_TILE_PX // SCALE * SCALE)
        upper, lower = max(top - shift, 0), min(bottom - shift, tile.height)
        if upper < lower and left < min(right, tile.width):
            yield tile.crop((max(left, 0), upper, min(right, tile.width), lower))


def ratio(one: float, other: float) -> float:
    """Return the contrast of two greys of 0 to 255 as WCAG 2 defines it."""
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(grey_level: float) -> float:
    share = grey_level / 255
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def stroke_contrast(tile: Image.Image, points: Sequence[Sequence[float]]) -> float:
    """Return the contrast with white paper that a quarter of a drawn line reaches; dashes leave the rest blank.

    The tile was taken at ``DRAWING_SCALE``: a hairline is thinner than a stroke of a letter. At each point, given in
    CSS pixels, the darkest pixel no farther than one device pixel counts.
    """
    darkest = []
    for x, y in points:
        column, row = int(x * DRAWING_SCALE), int(y * DRAWING_SCALE)
        spot = tile.crop(
            (max(column - 1, 0), max(row - 1, 0), min(column + 2, tile.width), min(row + 2, tile.height))
        )
        darkest.append(spot.getextrema()[0])
    return ratio(sorted(darkest)[len(darkest) // 4], 255)
