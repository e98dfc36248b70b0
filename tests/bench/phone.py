"""Photos of a phone's size, drawn, so that photo work is measured on what offices will really have."""

import random
from pathlib import Path

from PIL import Image, ImageDraw, ImageFilter

COUNT, SIZE_PX, QUALITY = 8, (4000, 3000), 92
GRAIN_PX = (1000, 750)


def draw_phone_photos(folder: Path) -> None:
    """Draw photos with courses and grain, 3 to 5 MB each, always the same ones."""
    folder.mkdir(parents=True)
    for number in range(COUNT):
        lots = random.Random(number)
        grain = Image.frombytes("L", GRAIN_PX, lots.randbytes(GRAIN_PX[0] * GRAIN_PX[1])).resize(
            SIZE_PX, Image.Resampling.BILINEAR
        )
        picture = Image.blend(grain.convert("RGB"), Image.new("RGB", SIZE_PX, (96, 90, 84)), 0.55)
        draw = ImageDraw.Draw(picture)
        for course in range(0, SIZE_PX[1], 180):
            draw.line([(0, course), (SIZE_PX[0], course + lots.randint(-20, 20))], fill=(40, 38, 36), width=9)
        picture.filter(ImageFilter.SHARPEN).save(folder / f"P-{number:02}.jpg", quality=QUALITY)
