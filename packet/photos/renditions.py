"""Copies for the web: upright, in sRGB, without any metadata, the same bytes every time."""

import io
import os
import threading
from collections.abc import Iterable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from time import time
from typing import cast

import PIL
from PIL import ExifTags, Image, ImageCms

from packet.photos.facts import DAMAGED, PhotoUnreadable, open_photo
from packet.photos.kinds import heif_version
from packet.placing import placing

#: Long side and quality of the two sizes.
LARGE_PX, SMALL_PX, QUALITY = 1600, 480, 80
WORKERS = 2
#: A half-written copy that is older than this was left by a run that was killed [s].
_LEFT_AFTER_S = 3600
#: Part of the cache key: another library or setting may give other bytes.
RECIPE = "-".join(filter(None, (PIL.__version__, heif_version(), f"{LARGE_PX}-{SMALL_PX}-q{QUALITY}")))

#: What brings a stored picture upright, by the camera's note of how it was held. Pillow's own way also writes
#: the camera's notes anew, which fails on some damaged ones.
_UPRIGHT = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}


class PhotosUnreadable(Exception):
    """Pictures that were opened and can't be decoded.

    Attributes:
        ids: Their ids, in the order they were asked for.
    """

    def __init__(self, ids: Iterable[str]) -> None:
        self.ids = tuple(ids)
        super().__init__(", ".join(self.ids))


@dataclass(frozen=True)
class Rendition:
    """The two published sizes of one photo, as files in the cache."""

    large: Path
    small: Path


def _in_srgb(image: Image.Image) -> Image.Image:
    profile = image.info.get("icc_profile")
    if profile:
        try:
            source = ImageCms.ImageCmsProfile(io.BytesIO(cast(bytes, profile)))
            converted = ImageCms.profileToProfile(
                image, source, ImageCms.createProfile("sRGB"), outputMode="RGB"
            )
            if converted is not None:
                image = converted
        except (ImageCms.PyCMSError, OSError, ValueError):
            pass  # a damaged profile says nothing; the picture is shown as stored
    if image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info:
        with_alpha = image.convert("RGBA")
        paper = Image.new("RGBA", with_alpha.size, "white")
        image = Image.alpha_composite(paper, with_alpha)
    return image.convert("RGB")


def _fit(size: tuple[int, int], long_side_px: int) -> tuple[int, int]:
    scale = min(1.0, long_side_px / max(size))
    return max(1, round(size[0] * scale)), max(1, round(size[1] * scale))


def save_jpeg(image: Image.Image, path: Path) -> None:
    """Put a picture into the cache as a JPEG that carries no comment, profile or tag.

    Raises:
        OSError: The disk takes no more, or may not be written.
    """
    clean = Image.new("RGB", image.size)
    clean.paste(image)
    part = path.with_suffix(f".{os.getpid()}-{threading.get_ident()}.part")  # one photo may be logged twice
    with placing(path, part, durable=False):
        clean.save(part, "JPEG", quality=QUALITY, optimize=False, progressive=False)


def _upright(original: Path) -> Image.Image:
    """Return an original's picture, upright and in sRGB."""
    with open_photo(original) as image:
        try:
            # draft only helps with the picture's own proportions, so ask for those
            image.draft("RGB", _fit(image.size, LARGE_PX))
            image.load()  # a broken picture fails here, and is not taken for one with a broken profile
            turn = _UPRIGHT.get(image.getexif().get(ExifTags.Base.Orientation, 1))
            return _in_srgb(image.transpose(turn) if turn is not None else image)
        except DAMAGED as error:  # a broken picture is noticed when it is decoded
            raise PhotoUnreadable(type(error).__name__) from error


def render(original: Path, sha256: str, cache: Path) -> Rendition:
    """Return the published sizes of one original, made now or taken from the cache.

    Args:
        original: Path of the original.
        sha256: Its digest [hex]; names the cached files.
        cache: Folder of the cache.

    Raises:
        PhotoUnreadable: The picture can't be decoded.
    """
    large, small = (cache / f"{sha256[:32]}-{RECIPE}-{name}.jpg" for name in ("large", "small"))
    if not (large.is_file() and small.is_file()):
        upright = _upright(original)
        shown = upright.resize(_fit(upright.size, LARGE_PX), Image.Resampling.LANCZOS)
        save_jpeg(shown, large)
        save_jpeg(shown.resize(_fit(shown.size, SMALL_PX), Image.Resampling.LANCZOS), small)
    return Rendition(large, small)


def _sweep(cache: Path) -> None:
    """Remove what killed runs left half-written; a run beside this one keeps its own."""
    for part in cache.glob("*.part"):
        with suppress(OSError):
            if part.stat().st_mtime < time() - _LEFT_AFTER_S:
                part.unlink()


def render_all(photos: Iterable[tuple[str, Path, str]], cache: Path) -> dict[str, Rendition]:
    """Return renditions by photo id.

    Args:
        photos: Id, original and digest of each photo.
        cache: Folder of the cache; made when missing.

    Raises:
        PhotosUnreadable: Pictures that can't be decoded, all at once.
    """
    cache.mkdir(parents=True, exist_ok=True)
    _sweep(cache)
    wanted = tuple(photos)
    made: dict[str, Rendition] = {}
    failed: list[str] = []
    with ThreadPoolExecutor(WORKERS) as pool:
        jobs = {id: pool.submit(render, path, sha256, cache) for id, path, sha256 in wanted}
        for id, job in jobs.items():
            try:
                made[id] = job.result()
            except PhotoUnreadable:
                failed.append(id)
    if failed:
        raise PhotosUnreadable(failed)
    return made
