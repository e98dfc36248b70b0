"""The committed demo photos say what their log says, and drawing them again gives the same files."""

import hashlib
import io
from pathlib import Path
from typing import Any

import PIL
import pytest
import yaml
from PIL import ExifTags, Image, ImageChops, ImageOps, ImageStat

from .draw_photos import JOB, VIEWS, log_text, photo_bytes
from .photo_list import ENTRIES

ENTRY = {entry.id: entry for entry in ENTRIES}
LOG: list[dict[str, Any]] = yaml.load(
    (JOB / "photos.yaml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader
)["photos"]
TURNED = {6, 8}


def path_of(photo: dict[str, Any]) -> Path:
    return JOB / str(photo["file"])


def test_the_log_holds_every_view_once() -> None:
    assert [photo["id"] for photo in LOG] == [f"P{number:02}" for number in range(1, 33)] == list(VIEWS)
    assert sorted(path.name for path in (JOB / "photos").iterdir()) == [f"{photo['id']}.jpg" for photo in LOG]


def test_the_log_is_the_one_the_program_writes() -> None:
    digests = {photo["id"]: hashlib.sha256(path_of(photo).read_bytes()).hexdigest() for photo in LOG}
    assert (JOB / "photos.yaml").read_text(encoding="utf-8") == log_text(digests)


@pytest.mark.parametrize("photo", LOG, ids=lambda photo: str(photo["id"]))
def test_file_says_what_the_log_says(photo: dict[str, Any]) -> None:
    data = path_of(photo).read_bytes()
    assert hashlib.sha256(data).hexdigest() == photo["sha256"]
    with Image.open(io.BytesIO(data)) as picture:
        exif = picture.getexif()
        detail = exif.get_ifd(ExifTags.IFD.Exif)
        place = exif.get_ifd(ExifTags.IFD.GPSInfo)
        assert (
            detail[ExifTags.Base.DateTimeOriginal].replace(":", "-", 2).replace(" ", "T") == photo["taken_at"]
        )
        assert detail[ExifTags.Base.OffsetTimeOriginal] == photo["offset"] == "-04:00"
        assert (exif[ExifTags.Base.Make], exif[ExifTags.Base.Model]) == ("Demo", "Demo")
        assert exif[ExifTags.Base.Orientation] == ENTRY[photo["id"]].orientation
        assert (place[ExifTags.GPS.GPSLatitudeRef], place[ExifTags.GPS.GPSLongitudeRef]) == ("N", "W")
        assert [float(part) for part in place[ExifTags.GPS.GPSLatitude]] == [33.0, 0.0, 0.0]
        assert [float(part) for part in place[ExifTags.GPS.GPSLongitude]] == [78.0, 0.0, 0.0]
        assert picture.size == (1600, 1200)
        upright = ImageOps.exif_transpose(picture)
        assert upright.size == ((1200, 1600) if exif[ExifTags.Base.Orientation] in TURNED else (1600, 1200))


def test_some_photos_were_taken_with_the_camera_on_its_side() -> None:
    assert sum(entry.orientation in TURNED for entry in ENTRIES) >= 4
    assert {entry.orientation for entry in ENTRIES} == {1, 6, 8}


def test_all_files_together_stay_small() -> None:
    assert sum(path_of(photo).stat().st_size for photo in LOG) < 4_000_000


def test_captions_are_short_and_claim_nothing() -> None:
    for photo in LOG:
        assert 1 <= len(photo["shows"]) <= 300
        assert not {"compliant", "certified", "guaranteed"} & set(
            photo["shows"].lower().replace(",", " ").split()
        )
    assert [photo["id"] for photo in LOG if photo["readers"] == ["office"]] == ["P31"]


def test_times_follow_the_work_day_by_day() -> None:
    days = [photo["taken_at"][:10] for photo in LOG]
    assert days == sorted(days)
    assert set(days) == {"2026-03-09", "2026-03-16", "2026-03-17", "2026-03-18"}


@pytest.mark.parametrize("id", ["P05", "P09", "P11", "P20"])
def test_drawing_again_gives_the_same_file(id: str) -> None:
    committed = (JOB / "photos" / f"{id}.jpg").read_bytes()
    drawn = photo_bytes(ENTRY[id])
    with Image.open(io.BytesIO(committed)) as before, Image.open(io.BytesIO(drawn)) as after:
        if before.getexif()[ExifTags.Base.Software] == f"Pillow {PIL.__version__}":
            assert drawn == committed
        else:  # another Pillow may round or compress a little differently: then the picture must be the same
            assert max(ImageStat.Stat(ImageChops.difference(before, after)).mean) < 3
