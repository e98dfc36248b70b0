"""A photo's path never leads out of its job folder, and what it leads to is the photo that was logged."""

import hashlib
import struct
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from packet.photos.facts import MOST_PIXELS, read_facts
from packet.photos.log import photo_path
from packet.photos.taken import take_photos
from packet.problems import Refused
from tests.support.office import Office
from tests.support.pictures import picture

Shoot = Callable[..., dict[str, Any]]


@pytest.mark.parametrize(
    "file",
    [
        "../office.yaml",
        "photos/../../../secret.jpg",
        "photos/..",
        "..",
        "/etc/passwd",
        "//server/share/P1.jpg",
        "photos//P1.jpg",
        "./photos/P1.jpg",
        "photos/./P1.jpg",
        "photos/",
        "photos\\P1.jpg",
        "..\\..\\secret.jpg",
        "C:/photos/P1.jpg",
        "C:P1.jpg",
        "photos/P1.jpg:stream",
    ],
)
def test_a_path_that_could_lead_out_is_refused_at_its_place(small_office: Office, file: str) -> None:
    picture(small_office.job / "photos" / "P1.jpg")
    picture(small_office.root / "secret.jpg")
    office = small_office.log({"id": "P1", "file": file, "stage": "deck", "shows": "x"})
    line, column = office.place("photos.0.file", file="photos.yaml")
    assert office.places() == [("photos.yaml", "path-leaves-job", line, column)]


def test_a_plain_path_below_the_job_is_taken(tmp_path: Path) -> None:
    assert photo_path(tmp_path, "photos/day two/P1.jpg") == tmp_path / "photos" / "day two" / "P1.jpg"


def test_a_linked_file_is_refused(small_office: Office) -> None:
    outside = picture(small_office.root / "secret.jpg")
    (small_office.job / "photos").mkdir()
    (small_office.job / "photos" / "P1.jpg").symlink_to(outside)
    assert codes(small_office, "photos/P1.jpg") == ["path-leaves-job"]


def test_a_link_that_leads_nowhere_is_refused_as_a_link(small_office: Office) -> None:
    (small_office.job / "P1.jpg").symlink_to("/nowhere/P1.jpg")
    assert codes(small_office, "P1.jpg") == ["path-leaves-job"]


def test_a_linked_folder_is_refused(small_office: Office) -> None:
    outside = picture(small_office.root / "elsewhere" / "P1.jpg").parent
    (small_office.job / "photos").symlink_to(outside, target_is_directory=True)
    assert codes(small_office, "photos/P1.jpg") == ["path-leaves-job"]


def codes(office: Office, file: str, **more: str) -> list[str]:
    office.log({"id": "P1", "file": file, "stage": "deck", "shows": "x", **more})
    return [problem.code for problem in office.problems()]


def test_a_missing_file_is_named(small_office: Office) -> None:
    assert codes(small_office, "photos/P1.jpg") == ["photo-missing"]


def test_a_folder_is_no_photo(small_office: Office) -> None:
    (small_office.job / "photos").mkdir()
    assert codes(small_office, "photos") == ["photo-missing"]


def test_a_changed_original_is_refused_at_its_digest(small_office: Office) -> None:
    path = picture(small_office.job / "P1.jpg")
    digest = hashlib.sha256(path.read_bytes()).hexdigest()
    small_office.log({"id": "P1", "file": "P1.jpg", "stage": "deck", "shows": "x", "sha256": digest})
    assert len(take_photos(small_office.job).photos) == 1
    path.write_bytes(path.read_bytes() + b"\n")
    line, column = small_office.place("photos.0.sha256", file="photos.yaml")
    assert small_office.places() == [("photos.yaml", "photo-changed", line, column)]


@pytest.mark.parametrize(
    "content",
    [b"", b"not a picture", b"<svg/>", b"GIF89a\1\0\1\0\0\0\0;", b"%PDF-1.7", b"\xff\xd8\xff"],
    ids=["empty", "text", "svg", "gif", "pdf", "three bytes of a JPEG"],
)
def test_what_is_not_a_jpeg_or_png_is_refused(small_office: Office, content: bytes) -> None:
    (small_office.job / "P1.jpg").write_bytes(content)
    assert codes(small_office, "P1.jpg") == ["photo-unreadable"]


def png_that_claims(width: int, height: int) -> bytes:
    """Return a PNG of a few bytes whose header claims any size."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    body = chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(b"\0" * 1000)) + chunk(b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + body


@pytest.mark.parametrize("side", [60_000, 12_000])
def test_a_picture_that_would_fill_the_memory_is_refused_unopened(small_office: Office, side: int) -> None:
    assert side * side > MOST_PIXELS
    (small_office.job / "P1.png").write_bytes(png_that_claims(side, side))
    assert codes(small_office, "P1.png") == ["photo-unreadable"]


def test_a_phone_of_108_million_pixels_is_no_danger(tmp_path: Path) -> None:
    Image.new("1", (12_000, 9_000)).save(tmp_path / "P1.png")
    facts = read_facts(tmp_path / "P1.png")
    assert (facts.width_px, facts.height_px) == (12_000, 9_000)


def test_a_photo_cut_off_in_the_middle_is_refused_before_anything_is_built(small_office: Office) -> None:
    path = picture(small_office.job / "P1.jpg", size=(400, 300))
    whole = path.read_bytes()
    path.write_bytes(whole[: len(whole) * 2 // 3])
    assert codes(small_office, "P1.jpg") == ["photo-unreadable"]


def test_a_png_is_taken(small_office: Office) -> None:
    Image.new("RGB", (30, 20), "red").save(small_office.job / "P1.png")
    small_office.log({"id": "P1", "file": "P1.png", "stage": "deck", "shows": "x"})
    facts = take_photos(small_office.job).photos[0].facts
    assert (facts.width_px, facts.height_px, facts.taken_at, facts.has_place) == (30, 20, None, False)


def test_every_photo_that_is_wrong_is_told_at_once(job_office: Office, shoot: Shoot) -> None:
    good = shoot("P1", "deck")
    twice = {**good, "shows": "again"}
    away = {**good, "id": "P2", "file": "../x.jpg"}
    gone = {**good, "id": "P3", "file": "photos/P3.jpg"}
    job_office.log(good, twice, away, gone)
    places = [
        ("photos.yaml", code, *job_office.place(path, file="photos.yaml"))
        for code, path in (
            ("duplicate-id", "photos.1.id"),
            ("path-leaves-job", "photos.2.file"),
            ("photo-missing", "photos.3.file"),
        )
    ]
    assert job_office.places() == sorted(places)


def test_a_job_without_a_log_has_no_photos(small_office: Office) -> None:
    assert take_photos(small_office.job).photos == ()


def test_a_log_that_does_not_fit_is_refused(small_office: Office) -> None:
    (small_office.job / "photos.yaml").write_text("photos: [{id: P1}]\n", encoding="utf-8")
    with pytest.raises(Refused) as refused:
        take_photos(small_office.job)
    assert {(p.code, p.at) for p in refused.value.problems} == {("missing", "photos[0].file")}
