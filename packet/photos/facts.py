"""Facts read from an original photo; the original itself is never changed."""

import hashlib
import re
import warnings
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from PIL import ExifTags, Image, UnidentifiedImageError

#: Formats read here; a phone's own format comes with the command that takes photos in.
FORMATS = ("JPEG", "PNG")
#: A larger picture is refused before it is decoded.
MOST_PIXELS = 120_000_000

_UPRIGHT_SWAPS = frozenset({5, 6, 7, 8})


class PhotoUnreadable(Exception):
    """The file is not a photo that can be read; the text says why."""


@dataclass(frozen=True)
class PhotoFacts:
    """What an original says of itself.

    Attributes:
        sha256: Digest of the file [hex].
        size_bytes: Size of the file [bytes].
        width_px: Width as shown upright [px].
        height_px: Height as shown upright [px].
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
        PhotoUnreadable: Not a JPEG or PNG, damaged, or too large.
    """
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            image = Image.open(path, formats=FORMATS)
    except (UnidentifiedImageError, OSError, SyntaxError, ValueError) as error:
        raise PhotoUnreadable(type(error).__name__) from error
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as error:
        raise PhotoUnreadable(type(error).__name__) from error
    if image.width * image.height > MOST_PIXELS:
        image.close()
        raise PhotoUnreadable(f"{image.width}x{image.height}")
    return image


def _is_cut_off(data: bytes) -> bool:
    """Return whether a JPEG or PNG ends before its picture does, told without decoding it.

    A JPEG's segments are stepped over to where the picture starts, since the small picture among the camera's
    notes has an end of its own; inside a picture the two bytes of the end mark can't occur.
    """
    if not data.startswith(b"\xff\xd8"):
        return b"IEND" not in data
    at = 2
    while data[at : at + 1] == b"\xff" and data[at + 1 : at + 2] != b"\xda":
        at += 1 if data[at + 1 : at + 2] == b"\xff" else 2 + int.from_bytes(data[at + 2 : at + 4], "big")
    return data.find(b"\xff\xd9", at) < 0


def read_facts(path: Path) -> PhotoFacts:
    """Return the facts of one original, without decoding the picture.

    Raises:
        PhotoUnreadable: As for :func:`open_photo`, or the file is cut off.
    """
    data = path.read_bytes()
    with open_photo(path) as image:
        if _is_cut_off(data):
            raise PhotoUnreadable("cut off")
        try:
            exif = image.getexif()
        except (OSError, SyntaxError, ValueError) as error:  # a PNG is decoded to reach its last notes
            raise PhotoUnreadable(type(error).__name__) from error
        detail = exif.get_ifd(ExifTags.IFD.Exif)
        width, height = image.size
        if exif.get(ExifTags.Base.Orientation) in _UPRIGHT_SWAPS:
            width, height = height, width
        return PhotoFacts(
            sha256=hashlib.sha256(data).hexdigest(),
            size_bytes=len(data),
            width_px=width,
            height_px=height,
            taken_at=_moment(detail.get(ExifTags.Base.DateTimeOriginal)),
            offset=_offset(detail.get(ExifTags.Base.OffsetTimeOriginal)),
            has_place=bool(exif.get_ifd(ExifTags.IFD.GPSInfo)),
        )
