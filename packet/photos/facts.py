"""Facts read from an original photo; the original itself is never changed."""

import hashlib
import re
import struct
import warnings
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from PIL import ExifTags, Image, UnidentifiedImageError

from packet.photos.kinds import (
    HEAD_BYTES,
    heif_names_are_text,
    is_cut_off,
    jpeg_notes,
    kind_of,
    opens_heif,
)

#: A larger picture is refused before it is decoded.
MOST_PIXELS = 120_000_000
Image.MAX_IMAGE_PIXELS = MOST_PIXELS  # its own limit is lower than what some phones take

#: What the libraries raise at a damaged picture.
DAMAGED = (OSError, SyntaxError, ValueError, RuntimeError, EOFError, IndexError, struct.error)

#: Where a phone's JPEG holds its notes: one segment, behind at most a short one [bytes].
_NOTES_WITHIN = 70_000

_UPRIGHT_SWAPS = frozenset({5, 6, 7, 8})

# What is wrong with a camera's notes is told by what is read of them, not by a library on the terminal.
warnings.filterwarnings("ignore", category=UserWarning, module=r"PIL\.TiffImagePlugin")


class PhotoUnreadable(Exception):
    """The file is not a photo that can be read; the text says why."""


class DecoderMissing(PhotoUnreadable):
    """The photo is a HEIC, and what opens those is not installed."""


@dataclass(frozen=True)
class PhotoFacts:
    """What an original says of itself.

    Attributes:
        sha256: Digest of the file [hex]; "" where only the camera's notes were read.
        size_bytes: Size of the file [bytes]; 0 there.
        width_px: Width as shown upright [px]; 0 there.
        height_px: Height as shown upright [px]; 0 there.
        taken_at: Wall-clock time in the file, or None.
        offset: Offset from UTC in the file, or None.
        has_place: True when the file carries a position; it is never published.
    """

    sha256: str
    size_bytes: int
    width_px: int
    height_px: int
    taken_at: datetime | None
    offset: str | None
    has_place: bool


def _moment(text: object) -> datetime | None:
    try:
        return datetime.strptime(str(text).strip("\x00 "), "%Y:%m:%d %H:%M:%S")
    except ValueError:
        return None


def _offset(text: object) -> str | None:
    """Return an offset from UTC; whatever else stands in its place is not passed on."""
    found = str(text).strip("\x00 ")
    return found if re.fullmatch(r"[+-](0\d|1[0-4]):[0-5]\d", found, re.ASCII) else None


def open_photo(path: Path) -> Image.Image:
    """Open an original.

    Raises:
        PhotoUnreadable: Not a JPEG, PNG or HEIC, damaged, or too large.
        DecoderMissing: A HEIC, and what opens those is not installed.
    """
    try:
        with path.open("rb") as file:
            kind = kind_of(file.read(HEAD_BYTES))
        if kind is None:
            raise PhotoUnreadable("no photo")
        if kind == "HEIF" and not opens_heif():
            raise DecoderMissing(kind)
        if kind == "HEIF" and not heif_names_are_text(path.read_bytes()):
            raise PhotoUnreadable("names of items")
        with warnings.catch_warnings():
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            image = Image.open(path, formats=(kind,))
    except (UnidentifiedImageError, *DAMAGED) as error:
        raise PhotoUnreadable(type(error).__name__) from error
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as error:
        raise PhotoUnreadable(type(error).__name__) from error
    if image.width * image.height > MOST_PIXELS:
        image.close()
        raise PhotoUnreadable(f"{image.width}x{image.height}")
    return image


def try_decoding(path: Path) -> None:
    """Decode an original once, at the smallest size its format offers.

    Raises:
        PhotoUnreadable: As for :func:`open_photo`, or the picture is damaged inside.
    """
    with open_photo(path) as image:
        try:
            image.draft("RGB", (1, 1))
            image.load()
        except DAMAGED as error:
            raise PhotoUnreadable(type(error).__name__) from error


def read_facts(path: Path, *, whole: bool = True) -> PhotoFacts:
    """Return the facts of one original, without decoding the picture.

    Args:
        path: The original.
        whole: Read all of it, for its digest and to its end; else only the camera's notes at its start, which
            takes an office with thousands of photos a moment instead of minutes.

    Raises:
        PhotoUnreadable: As for :func:`open_photo`, or the file is cut off.
    """
    if not whole and (facts := _facts_at_start(path)):
        return facts
    with open_photo(path) as image:
        data = path.read_bytes() if whole else b""
        if whole and is_cut_off(data):
            raise PhotoUnreadable("cut off")
        try:
            return _facts(image.getexif(), data, image.size)
        except DAMAGED as error:  # a PNG is decoded to reach its last notes
            raise PhotoUnreadable(type(error).__name__) from error


def _facts_at_start(path: Path) -> PhotoFacts | None:
    """Return what a JPEG's notes say without opening it as a picture; None where that takes more."""
    try:
        with path.open("rb") as file:
            found = jpeg_notes(file.read(_NOTES_WITHIN))
        if found is None:
            return None
        notes = Image.Exif()
        notes.load(found)
        return _facts(notes)
    except DAMAGED:
        return None  # opening it as a picture says what is wrong


def _facts(notes: Image.Exif, data: bytes = b"", size: tuple[int, int] = (0, 0)) -> PhotoFacts:
    """Return the facts in a camera's notes, and those of the whole file where it was read."""
    detail = notes.get_ifd(ExifTags.IFD.Exif)
    width, height = size
    if notes.get(ExifTags.Base.Orientation) in _UPRIGHT_SWAPS:
        width, height = height, width
    return PhotoFacts(
        sha256=hashlib.sha256(data).hexdigest() if data else "",
        size_bytes=len(data),
        width_px=width,
        height_px=height,
        taken_at=_moment(detail.get(ExifTags.Base.DateTimeOriginal)),
        offset=_offset(detail.get(ExifTags.Base.OffsetTimeOriginal)),
        has_place=ExifTags.IFD.GPSInfo in notes,
    )
