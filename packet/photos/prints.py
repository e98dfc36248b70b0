"""Copies of photos for paper: as large as print needs, made from the large web copies, in the same cache."""

import os
import threading
from collections.abc import Iterable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import PIL
from PIL import Image

from packet.photos.renditions import QUALITY, WORKERS, PhotosUnreadable, render_all
from packet.photos.taken import TakenPhoto, take_photos
from packet.problems import Refused

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
    originals = [(photo.entry.id, photo.path, photo.facts.sha256) for photo in photos]
    try:
        renditions = render_all(originals, cache)
    except PhotosUnreadable as failed:
        raise _refused(job_folder, failed.ids) from failed
    with ThreadPoolExecutor(WORKERS) as pool:
        made = pool.map(_print, (rendition.large for rendition in renditions.values()))
        return dict(zip(renditions, made, strict=True))


def _print(large: Path) -> Path:
    """Return a large web copy made smaller for paper; its name tells what it was made from, and how."""
    path = large.with_name(f"{large.stem}-print-{PIL.__version__}-{PRINT_PX}-q{QUALITY}.jpg")
    if not path.is_file():
        with Image.open(large) as image:
            image.thumbnail((PRINT_PX, PRINT_PX), Image.Resampling.LANCZOS)
            part = path.with_suffix(f".{os.getpid()}-{threading.get_ident()}.part")
            image.save(part, "JPEG", quality=QUALITY)
            part.replace(path)
    return path


def _refused(job_folder: Path, ids: Iterable[str]) -> Refused:
    log, failed = take_photos(job_folder).log, frozenset(ids)
    entries = enumerate(log.value.photos) if log else ()
    return Refused(
        log.problem("photo-unreadable", ("photos", index, "file"), entry.file)
        for index, entry in entries
        if log and entry.id in failed
    )
