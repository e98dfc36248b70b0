"""Draw the photos of the demo jobs and write their logs.

The houses are invented, so nobody could photograph them: these pictures are drawn, say so in their corner, and
carry the same facts a phone would put into a file. Run it from the checkout::

    python -m tests.demo.draw_photos                # every job, and its log
    python -m tests.demo.draw_photos 26-041         # one job
    python -m tests.demo.draw_photos 26-041 P07 P20 # these photos of it only, and its log

The same Pillow draws the same bytes every time.
"""

import hashlib
import io
import re
import sys
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor

import PIL
from PIL import ExifTags, Image

from .jobs import JOBS, Job
from .log_entry import Entry

#: The quality is lowered until the file is as small as the job wants it.
QUALITIES = range(84, 39, -4)
#: How a picture lies in the file when the camera was held on its side, by EXIF orientation.
STORED = {6: Image.Transpose.ROTATE_90, 8: Image.Transpose.ROTATE_270}


def facts(job: Job, entry: Entry) -> Image.Exif:
    """Return what the camera writes into the file of one photo."""
    latitude, longitude = job.place
    exif = Image.Exif()
    exif[ExifTags.Base.Make] = "Demo"
    exif[ExifTags.Base.Model] = "Demo"
    exif[ExifTags.Base.Software] = f"Pillow {PIL.__version__}"
    exif[ExifTags.Base.Orientation] = entry.orientation
    exif[ExifTags.Base.ImageDescription] = "Illustration for the demo job"
    detail = exif.get_ifd(ExifTags.IFD.Exif)
    if entry.when:
        moment = entry.taken_at.strftime("%Y:%m:%d %H:%M:%S")
        exif[ExifTags.Base.DateTime] = moment
        detail[ExifTags.Base.DateTimeOriginal] = moment
        detail[ExifTags.Base.OffsetTimeOriginal] = job.offset(entry)
    place = exif.get_ifd(ExifTags.IFD.GPSInfo)
    place[ExifTags.GPS.GPSLatitudeRef] = "N" if latitude >= 0 else "S"
    place[ExifTags.GPS.GPSLatitude] = (abs(latitude), 0.0, 0.0)
    place[ExifTags.GPS.GPSLongitudeRef] = "E" if longitude >= 0 else "W"
    place[ExifTags.GPS.GPSLongitude] = (abs(longitude), 0.0, 0.0)
    return exif


def photo_bytes(job: Job, entry: Entry) -> bytes:
    """Draw one photo and return its file."""
    picture = job.views[entry.id]()
    if max(picture.size) > job.long_px:
        share = job.long_px / max(picture.size)
        size = (round(picture.width * share), round(picture.height * share))
        picture = picture.resize(size, Image.Resampling.LANCZOS)
    if entry.orientation in STORED:
        picture = picture.transpose(STORED[entry.orientation])
    exif = facts(job, entry).tobytes()
    data = b""
    for quality in QUALITIES:
        out = io.BytesIO()
        picture.save(out, "JPEG", quality=quality, optimize=True, progressive=True, exif=exif)
        data = out.getvalue()
        if len(data) <= job.most_bytes:
            break
    return data


def _yaml(text: str) -> str:
    plain = not any(mark in text for mark in (": ", " #", '"', "'")) and text[0].isalnum()
    return text if plain else '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def log_text(job: Job, digests: dict[str, str]) -> str:
    """Return the photo log for the digests of the files, by photo id."""
    lines = ["# Written by tests/demo/draw_photos.py: the photos of this job are drawings.", "photos:"]
    for entry in job.entries:
        fields = [
            ("id", entry.id),
            ("file", f"photos/{entry.id}.jpg"),
            ("sha256", digests[entry.id]),
            ("taken_at", entry.when),
            ("offset", f'"{job.offset(entry)}"' if entry.when else ""),
            ("offset_from", "camera" if entry.when else ""),
            ("taken_by", entry.taken_by),
            ("stage", entry.stage),
            ("plane", entry.plane),
            ("pin", f"[{', '.join(entry.pin)}]" if entry.pin else ""),
            ("direction", entry.direction),
            ("view", entry.view),
            ("in_frame", f"[{', '.join(entry.in_frame)}]" if entry.in_frame else ""),
            ("shows", _yaml(entry.shows)),
            ("proves", f"[{', '.join(entry.proves)}]" if entry.proves else ""),
            ("set_by", entry.set_by),
            ("readers", f"[{', '.join(entry.readers)}]"),
        ]
        said = [f"{name}: {value}" for name, value in fields if value]
        lines += [f"  - {said[0]}", *(f"    {line}" for line in said[1:])]
    return "\n".join(lines) + "\n"


def _draw(number: str, id: str) -> tuple[str, bytes]:
    job = JOBS[number]
    return id, photo_bytes(job, job.by_id[id])


def draw(job: Job, wanted: Sequence[str] = ()) -> None:
    """Draw the wanted photos of a job, or all of them; then write them and the log together.

    Raises:
        SystemExit: A name is not the id of a photo.
    """
    unknown = sorted(set(wanted) - set(job.views))
    if unknown:
        raise SystemExit(f"no such photo in {job.number}: {', '.join(unknown)}")
    chosen = [entry.id for entry in job.entries if not wanted or entry.id in wanted]
    files: dict[str, bytes] = {}
    with ProcessPoolExecutor(2) as pool:
        for id, data in pool.map(_draw, [job.number] * len(chosen), chosen):
            files[id] = data
            print(f"{job.number} {id} {len(data) / 1000:.0f} kB", flush=True)
    folder = job.folder / "photos"
    folder.mkdir(parents=True, exist_ok=True)
    for id, data in files.items():
        (folder / f"{id}.jpg").write_bytes(data)
    all_files = [(entry.id, (folder / f"{entry.id}.jpg").read_bytes()) for entry in job.entries]
    digests = {id: hashlib.sha256(data).hexdigest() for id, data in all_files}
    (job.folder / "photos.yaml").write_text(log_text(job, digests), encoding="utf-8")
    print(f"{job.number}: {len(all_files)} photos, {sum(len(data) for _, data in all_files) / 1e6:.2f} MB")


def main(words: Sequence[str]) -> None:
    """Draw every job, or the one named first, or the photos of it named after.

    Raises:
        SystemExit: A word names neither a job nor a photo.
    """
    numbers = [word for word in words if word in JOBS]
    photos = [word for word in words if re.fullmatch(r"P\d+", word)]
    unknown = sorted(set(words) - set(numbers) - set(photos))
    if unknown or (photos and len(numbers) != 1):
        raise SystemExit(
            f"name a job ({', '.join(JOBS)}), then photos of it as P07; found: {' '.join(words)}"
        )
    for number in numbers or JOBS:
        draw(JOBS[number], photos)


if __name__ == "__main__":
    main(sys.argv[1:])
