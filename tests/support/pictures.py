"""Tiny photos for tests, as a phone would write them."""

from pathlib import Path
from typing import Any

import piexif
from PIL import Image, ImageCms

#: Four quarters, left to right and down, so that a turned picture is noticed.
QUARTERS = ((220, 30, 30), (30, 200, 30), (30, 30, 220), (230, 220, 40))


def quarters(size: tuple[int, int]) -> Image.Image:
    image = Image.new("RGB", size)
    half = size[0] // 2, size[1] // 2
    for number, colour in enumerate(QUARTERS):
        left, top = half[0] * (number % 2), half[1] * (number // 2)
        image.paste(colour, (left, top, left + half[0], top + half[1]))
    return image


#: What turns an upright picture into the stored one, by EXIF orientation.
STORED_AS: dict[int, tuple[Image.Transpose, ...]] = {
    1: (),
    2: (Image.Transpose.FLIP_LEFT_RIGHT,),
    3: (Image.Transpose.ROTATE_180,),
    4: (Image.Transpose.FLIP_TOP_BOTTOM,),
    5: (Image.Transpose.TRANSPOSE,),
    6: (Image.Transpose.ROTATE_90,),
    7: (Image.Transpose.TRANSVERSE,),
    8: (Image.Transpose.ROTATE_270,),
}


def exif(
    *, taken: str = "2026:03:16 10:15:00", offset: str = "-04:00", orientation: int = 1, place: bool = True
) -> bytes:
    """Return EXIF with a time, an offset, an orientation and a position."""
    tags: dict[str, dict[int, Any]] = {
        "0th": {piexif.ImageIFD.Orientation: orientation, piexif.ImageIFD.Make: b"PELICAN-CAMERA"},
        "Exif": {},
        "GPS": {},
    }
    if taken:
        tags["Exif"][piexif.ExifIFD.DateTimeOriginal] = taken.encode()
    if offset:
        tags["Exif"][piexif.ExifIFD.OffsetTimeOriginal] = offset.encode()
    if place:
        gps = piexif.GPSIFD
        tags["GPS"] = {
            gps.GPSLatitudeRef: b"N",
            gps.GPSLatitude: ((33, 1), (12, 1), (3456, 100)),
            gps.GPSLongitudeRef: b"W",
            gps.GPSLongitude: ((79, 1), (5, 1), (789, 100)),
        }
    made: bytes = piexif.dump(tags)
    return made


def picture(path: Path, *, size: tuple[int, int] = (64, 48), profile: bool = True, **camera: Any) -> Path:
    """Write a JPEG with metadata of every kind, perhaps without a colour profile; ``camera`` as for ``exif``."""
    path.parent.mkdir(parents=True, exist_ok=True)
    image = quarters(size)
    for turn in STORED_AS[camera.get("orientation", 1)]:
        image = image.transpose(turn)
    notes = {"exif": exif(**camera), "comment": b"written by a crew member"}
    if profile:
        notes["icc_profile"] = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    image.save(path, "JPEG", quality=95, **notes)
    return path
