"""A phone's own format, and notes in a PNG: facts, published copies, and what happens when the extra is missing."""

import io
from datetime import datetime
from pathlib import Path

import piexif
import pytest
from PIL import Image

from packet.build import build
from packet.photos import kinds
from packet.photos.facts import PhotoUnreadable, read_facts, try_decoding
from packet.photos.kinds import is_cut_off, kind_of
from packet.photos.renditions import render
from packet.photos.taken import take_photos
from tests.support.heic import heic
from tests.support.office import Office
from tests.support.pictures import QUARTERS, exif, quarters

#: A HEIC changes a flat colour by a few steps, twice.
NEAR = 16


def test_a_heic_gives_time_offset_place_and_upright_size(tmp_path: Path) -> None:
    facts = read_facts(heic(tmp_path / "IMG_0007.HEIC"))
    assert (facts.taken_at, facts.offset) == (datetime(2026, 3, 16, 10, 15), "-04:00")
    assert (facts.width_px, facts.height_px, facts.has_place) == (96, 64, True)


def test_a_heic_without_notes_tells_nothing(tmp_path: Path) -> None:
    facts = read_facts(heic(tmp_path / "a.heic", "no-notes"))
    assert (facts.taken_at, facts.offset, facts.has_place) == (None, None, False)
    assert (facts.width_px, facts.height_px) == (96, 64)


@pytest.mark.parametrize("kind", ["turned", "no-notes"])
def test_published_copies_of_a_heic_are_upright_jpegs_without_metadata(tmp_path: Path, kind: str) -> None:
    original = heic(tmp_path / "a.heic", kind)  # type: ignore[arg-type]
    made = render(original, "a" * 64, _folder(tmp_path / "cache"))
    for path in (made.large, made.small):
        data = path.read_bytes()
        assert not [word for word in (b"Exif", b"PELICAN", b"2026:03:16") if word in data]
        with Image.open(path) as image:
            assert (image.format, image.size) == ("JPEG", (96, 64))
            seen = [image.getpixel((x, y)) for y in (16, 48) for x in (24, 72)]
        for colour, wanted in zip(seen, QUARTERS, strict=True):
            assert isinstance(colour, tuple)
            assert all(abs(a - b) <= NEAR for a, b in zip(colour, wanted, strict=True)), seen


def _folder(path: Path) -> Path:
    path.mkdir()
    return path


def test_a_captioned_heic_stands_in_the_built_packet_as_a_jpeg(job_office: Office) -> None:
    heic(job_office.job / "photos" / "IMG_0007.HEIC")
    job_office.log(
        {
            "id": "P1", "file": "photos/IMG_0007.HEIC", "stage": "deck", "shows": "New deck.",
            "readers": ["outside", "office"],
        }
    )  # fmt: skip
    built = build(job_office.workspace, job_office.job)
    for copy in built.copies.values():
        published = sorted(path.name for path in (copy.parent / "photos").iterdir())
        assert [name.rpartition(".")[2] for name in published] == ["jpg", "jpg"]
        assert (copy.parent / "photos" / published[0]).read_bytes().startswith(b"\xff\xd8\xff")
    assert not list(built.folder.rglob("*.HEIC"))


def test_without_the_extra_a_logged_heic_says_what_to_install(
    job_office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("packet.photos.facts.opens_heif", lambda: False)
    heic(job_office.job / "photos" / "a.heic")
    job_office.log({"id": "P1", "file": "photos/a.heic", "stage": "deck", "shows": "x"})
    line, column = job_office.place("photos.0.file", file="photos.yaml")
    assert job_office.places() == [("photos.yaml", "heic-not-installed", line, column)]
    assert job_office.problems()[0].values["install"] == "roof-closeout-packet[heic]"


def test_whether_the_extra_is_there_is_found_by_importing_it(monkeypatch: pytest.MonkeyPatch) -> None:
    kinds.opens_heif.cache_clear()
    monkeypatch.setitem(__import__("sys").modules, "pi_heif", None)
    assert not kinds.opens_heif()
    monkeypatch.undo()
    kinds.opens_heif.cache_clear()
    assert kinds.opens_heif()


def test_a_heic_cut_off_anywhere_is_no_photo(tmp_path: Path) -> None:
    whole = heic(tmp_path / "a.heic").read_bytes()
    for length in range(0, len(whole), 7):
        (tmp_path / "b.heic").write_bytes(whole[:length])
        with pytest.raises(PhotoUnreadable):
            read_facts(tmp_path / "b.heic")


def test_what_a_phone_puts_behind_the_picture_is_no_cut(tmp_path: Path) -> None:
    for tail in (b"\0" * 50, b"SEFT trailer of a camera", b"\0\0\xff\xffmpvdfilm"):
        path = heic(tmp_path / "a.heic")
        path.write_bytes(path.read_bytes() + tail)
        assert read_facts(path).width_px == 96
        try_decoding(path)


@pytest.mark.filterwarnings("ignore::UserWarning")  # the library complains of notes that make no sense
def test_a_heic_with_a_damaged_middle_is_refused_or_decoded_but_never_falls_over(tmp_path: Path) -> None:
    whole = heic(tmp_path / "a.heic").read_bytes()
    refused = 0
    for at in range(0, len(whole), 3):
        (tmp_path / "b.heic").write_bytes(whole[:at] + bytes([whole[at] ^ 0xFF]) + whole[at + 1 :])
        try:
            read_facts(tmp_path / "b.heic")
            try_decoding(tmp_path / "b.heic")
        except PhotoUnreadable:
            refused += 1
    assert refused > 50


@pytest.mark.parametrize(
    ("head", "kind"),
    [
        (b"\xff\xd8\xff\xe1", "JPEG"),
        (b"\x89PNG\r\n\x1a\n", "PNG"),
        (b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", "HEIF"),
        (b"\0\0\0\x18ftypmif1\0\0\0\0mif1heic", "HEIF"),
        (b"\0\0\0\x18ftypavif\0\0\0\0mif1avif", None),
        (b"\0\0\0\x14ftypqt  \0\0\0\0qt  ", None),
        (b"\0\0\0\x10ftypisom\0\0\0\0heic", None),  # the brand lies outside its part
        (b"GIF89a", None),
        (b"", None),
        (b"ftyp", None),
    ],
)
def test_a_kind_is_told_by_content(head: bytes, kind: str | None) -> None:
    assert kind_of(head) == kind


def test_the_cut_is_told_for_every_kind(tmp_path: Path) -> None:
    quarters((64, 48)).save(tmp_path / "a.jpg")
    quarters((64, 48)).save(tmp_path / "a.png")
    heic(tmp_path / "a.heic")
    for path in tmp_path.iterdir():
        data = path.read_bytes()
        assert (is_cut_off(data), is_cut_off(data[: len(data) // 2])) == (False, True), path.name


def test_the_end_of_the_small_picture_among_the_notes_is_not_the_photos(tmp_path: Path) -> None:
    """Cameras put a thumbnail, a whole JPEG of its own, before the picture."""
    small, out = io.BytesIO(), io.BytesIO()
    quarters((16, 12)).save(small, "JPEG")
    notes = piexif.dump({"1st": {piexif.ImageIFD.Compression: 6}, "thumbnail": small.getvalue()})
    quarters((64, 48)).save(out, "JPEG", exif=notes)
    data = out.getvalue()
    assert data[: len(data) // 2].count(b"\xff\xd9") == 1
    assert (is_cut_off(data), is_cut_off(data[:-2])) == (False, True)


def test_notes_of_a_png_are_read(tmp_path: Path) -> None:
    path = tmp_path / "a.png"
    quarters((64, 48)).save(path, exif=exif(taken="2026:03:17 07:00:01", offset="+02:00", orientation=6)[6:])
    facts = read_facts(path)
    assert (facts.taken_at, facts.offset) == (datetime(2026, 3, 17, 7, 0, 1), "+02:00")
    assert (facts.width_px, facts.height_px, facts.has_place) == (48, 64, True)


def test_a_heic_is_taken_into_a_closeout(job_office: Office) -> None:
    heic(job_office.job / "photos" / "a.heic")
    job_office.log({"id": "P1", "file": "photos/a.heic", "stage": "deck", "shows": "x"})
    assert take_photos(job_office.job).photos[0].taken_at == datetime(2026, 3, 16, 10, 15)
