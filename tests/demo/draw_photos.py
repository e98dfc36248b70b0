"""Draw the photos of demo job 26-041 and write their log.

The house is invented, so nobody could photograph it: these pictures are drawn, say so in their corner, and
carry the same facts a phone would put into a file. Run it from the checkout::

    python -m tests.demo.draw_photos            # all of them, and the log
    python -m tests.demo.draw_photos P07 P20    # these only, and the log

The same Pillow draws the same bytes every time.
"""

import hashlib
import io
import sys
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import PIL
from PIL import ExifTags, Image

from . import views_framing as framing
from . import views_inside as inside
from . import views_near as near
from . import views_roof as roof
from .photo_list import ENTRIES, OFFSET, Entry

JOB = Path(__file__).resolve().parents[2] / "jobs" / "26-041"
#: A file may be this large; the quality is lowered until it is [bytes].
MOST_BYTES = 115_000
QUALITIES = range(84, 39, -4)
#: Open sea: no house stands there.
LATITUDE, LONGITUDE = 33.0, -78.0
#: How a picture lies in the file when the camera was held on its side, by EXIF orientation.
STORED = {6: Image.Transpose.ROTATE_90, 8: Image.Transpose.ROTATE_270}


def _hose_test() -> Image.Image:
    return roof.hose_test(inside.attic_inset())


VIEWS: dict[str, Callable[[], Image.Image]] = {
    "P01": roof.street_view,
    "P02": roof.slope_before,
    "P03": inside.ceiling_stain,
    "P04": roof.wall_foot_before,
    "P05": inside.pitch,
    "P06": roof.stripped_wide,
    "P07": roof.front_rot,
    "P08": roof.wing_rot,
    "P09": near.old_nail,
    "P10": framing.open_rafters,
    "P11": framing.rotten_rafter,
    "P12": framing.sistered,
    "P13": roof.front_sheets,
    "P14": roof.wing_sheets,
    "P15": near.grade_stamp,
    "P16": near.ring_nail,
    "P17": near.edge_nails,
    "P18": near.field_nails,
    "P19": roof.valley_sheet,
    "P20": near.felt_lap,
    "P21": roof.dried_in,
    "P22": near.drip_edge,
    "P23": roof.step_flashing,
    "P24": roof.kick_out,
    "P25": near.wrapper,
    "P26": near.six_nails,
    "P27": near.hand_seal,
    "P28": roof.joint,
    "P29": roof.slope_done,
    "P30": inside.attic_dry,
    "P31": _hose_test,
    "P32": inside.lawn,
}


def facts(entry: Entry) -> Image.Exif:
    """Return what the camera writes into the file of one photo."""
    moment = entry.taken_at.strftime("%Y:%m:%d %H:%M:%S")
    exif = Image.Exif()
    exif[ExifTags.Base.Make] = "Demo"
    exif[ExifTags.Base.Model] = "Demo"
    exif[ExifTags.Base.Software] = f"Pillow {PIL.__version__}"
    exif[ExifTags.Base.Orientation] = entry.orientation
    exif[ExifTags.Base.DateTime] = moment
    exif[ExifTags.Base.ImageDescription] = "Illustration for the demo job"
    detail = exif.get_ifd(ExifTags.IFD.Exif)
    detail[ExifTags.Base.DateTimeOriginal] = moment
    detail[ExifTags.Base.OffsetTimeOriginal] = OFFSET
    place = exif.get_ifd(ExifTags.IFD.GPSInfo)
    place[ExifTags.GPS.GPSLatitudeRef] = "N" if LATITUDE >= 0 else "S"
    place[ExifTags.GPS.GPSLatitude] = (abs(LATITUDE), 0.0, 0.0)
    place[ExifTags.GPS.GPSLongitudeRef] = "E" if LONGITUDE >= 0 else "W"
    place[ExifTags.GPS.GPSLongitude] = (abs(LONGITUDE), 0.0, 0.0)
    return exif


def photo_bytes(entry: Entry) -> bytes:
    """Draw one photo and return its file."""
    picture = VIEWS[entry.id]()
    if entry.orientation in STORED:
        picture = picture.transpose(STORED[entry.orientation])
    exif = facts(entry).tobytes()
    data = b""
    for quality in QUALITIES:
        out = io.BytesIO()
        picture.save(out, "JPEG", quality=quality, optimize=True, progressive=True, exif=exif)
        data = out.getvalue()
        if len(data) <= MOST_BYTES:
            break
    return data


def _yaml(text: str) -> str:
    plain = not any(mark in text for mark in (": ", " #", '"', "'")) and text[0].isalnum()
    return text if plain else '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def log_text(digests: dict[str, str]) -> str:
    """Return the photo log for the digests of the files, by photo id."""
    lines = ["# Written by tests/demo/draw_photos.py: the photos of this job are drawings.", "photos:"]
    for entry in ENTRIES:
        fields = [
            ("id", entry.id),
            ("file", f"photos/{entry.id}.jpg"),
            ("sha256", digests[entry.id]),
            ("taken_at", entry.when),
            ("offset", f'"{OFFSET}"'),
            ("offset_from", "camera"),
            ("taken_by", entry.taken_by),
            ("stage", entry.stage),
            ("plane", entry.plane),
            ("pin", f"[{', '.join(entry.pin)}]" if entry.pin else ""),
            ("direction", entry.direction),
            ("shows", _yaml(entry.shows)),
            ("proves", f"[{', '.join(entry.proves)}]" if entry.proves else ""),
            ("set_by", entry.set_by),
            ("readers", f"[{', '.join(entry.readers)}]"),
        ]
        said = [f"{name}: {value}" for name, value in fields if value]
        lines += [f"  - {said[0]}", *(f"    {line}" for line in said[1:])]
    return "\n".join(lines) + "\n"


def _draw(entry: Entry) -> tuple[str, int]:
    path = JOB / "photos" / f"{entry.id}.jpg"
    path.write_bytes(photo_bytes(entry))
    return entry.id, path.stat().st_size


def main(wanted: list[str]) -> None:
    """Draw the wanted photos, or all of them, and write the log.

    Raises:
        SystemExit: A name is not the id of a photo.
    """
    unknown = sorted(set(wanted) - set(VIEWS))
    if unknown:
        raise SystemExit(f"no such photo: {', '.join(unknown)}")
    (JOB / "photos").mkdir(parents=True, exist_ok=True)
    chosen = [entry for entry in ENTRIES if not wanted or entry.id in wanted]
    with ProcessPoolExecutor(2) as pool:
        for id, size in pool.map(_draw, chosen):
            print(f"{id} {size / 1000:.0f} kB", flush=True)
    files = {entry.id: (JOB / "photos" / f"{entry.id}.jpg").read_bytes() for entry in ENTRIES}
    digests = {id: hashlib.sha256(data).hexdigest() for id, data in files.items()}
    (JOB / "photos.yaml").write_text(log_text(digests), encoding="utf-8")
    print(f"{len(files)} photos, {sum(map(len, files.values())) / 1e6:.2f} MB")


if __name__ == "__main__":
    main(sys.argv[1:])
