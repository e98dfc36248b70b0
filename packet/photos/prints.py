"""Copies of photos for paper: as large as print needs, made from the large web copies, in the same cache."""

from collections.abc import Iterable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import PIL
from PIL import Image

from packet.photos.copies import web_copies
from packet.photos.renditions import QUALITY, WORKERS, save_jpeg
from packet.photos.taken import TakenPhoto

#: Long side of a photo on paper: about 280 dots an inch at the width it is printed.
PRINT_PX = 900


def print_all(job_folder: Path, photos: Iterable[TakenPhoto], cache: Path) -> dict[str, Path]:
    """Return the copy for paper of each photo by id, made now or taken from the cache.

    Args:
        job_folder: Folder of the job, for the places of problems.
        photos: Photos to print.
        cache: Folder of the cache; made when missing.

    Raises:
        Refused: Photos that can't be decoded, each at its entry in the log (``photo-unreadable``).
    """
    renditions = web_copies(job_folder, photos, cache)
    with ThreadPoolExecutor(WORKERS) as pool:
        made = pool.map(_print, (rendition.large for rendition in renditions.values()))
        return dict(zip(renditions, made, strict=True))


def _print(large: Path) -> Path:
    """Return a large web copy made smaller for paper; its name tells what it was made from, and how."""
    path = large.with_name(f"{large.stem}-print-{PIL.__version__}-{PRINT_PX}-q{QUALITY}.jpg")
    if not path.is_file():
        with Image.open(large) as image:
            image.thumbnail((PRINT_PX, PRINT_PX), Image.Resampling.LANCZOS)
            save_jpeg(image, path)
    return path
