"""What an original says of itself: time, offset, place, upright size."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from packet.photos.facts import PhotoUnreadable, read_facts
from tests.support.office import Office
from tests.support.pictures import picture


def test_time_and_offset_are_the_cameras(tmp_path: Path) -> None:
    facts = read_facts(picture(tmp_path / "P1.jpg", taken="2026:03:17 14:05:09", offset="-04:00"))
    assert facts.taken_at == datetime(2026, 3, 17, 14, 5, 9)
    assert facts.offset == "-04:00"


def test_a_position_is_noticed_and_not_read(tmp_path: Path) -> None:
    assert read_facts(picture(tmp_path / "P1.jpg", place=True)).has_place
    assert not read_facts(picture(tmp_path / "P2.jpg", place=False)).has_place


@pytest.mark.parametrize("taken", ["", "2026:13:45 99:00:00", "    :  :     :  :  ", "0000:00:00 00:00:00"])
def test_a_time_that_is_none_is_told_as_none(tmp_path: Path, taken: str) -> None:
    assert read_facts(picture(tmp_path / "P1.jpg", taken=taken)).taken_at is None


@pytest.mark.parametrize("orientation", range(1, 9))
def test_size_is_the_upright_one(tmp_path: Path, orientation: int) -> None:
    facts = read_facts(picture(tmp_path / "P1.jpg", size=(64, 48), orientation=orientation))
    assert (facts.width_px, facts.height_px) == (64, 48)


def app(name: int, data: bytes) -> bytes:
    """Return a segment of a JPEG."""
    return bytes([0xFF, name]) + (len(data) + 2).to_bytes(2, "big") + data


#: What may stand between the start of a JPEG and its notes; the last pushes them out of what is read at first.
BEFORE_THE_NOTES = {
    "nothing": b"",
    "a fill byte": b"\xff",
    "another application's segment": app(0xE1, b"http://an.example/notes\0" + bytes(80)),
    "a long segment": app(0xE2, bytes(65_000)) + app(0xE2, bytes(65_000)),
}


@pytest.mark.parametrize("before", BEFORE_THE_NOTES)
@pytest.mark.parametrize(
    "camera",
    [{}, {"place": False}, {"offset": ""}, {"taken": ""}, {"taken": "2026:13:45 99:00:00", "orientation": 6}],
)
def test_the_notes_say_alone_what_they_say_of_the_whole_photo(
    tmp_path: Path, camera: dict[str, Any], before: str
) -> None:
    path = picture(tmp_path / "P1.jpg", **camera)
    data = path.read_bytes()
    path.write_bytes(data[:2] + BEFORE_THE_NOTES[before] + data[2:])
    said = [
        (facts.taken_at, facts.offset, facts.has_place)
        for facts in (read_facts(path), read_facts(path, whole=False))
    ]
    assert said[0] == said[1]
    assert said[0][2] == camera.get("place", True)


def test_notes_at_the_start_are_read_without_opening_a_picture(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(path: Path) -> None:
        raise AssertionError(path)

    monkeypatch.setattr("packet.photos.facts.open_photo", refuse)
    assert read_facts(picture(tmp_path / "P1.jpg"), whole=False).offset == "-04:00"


@pytest.mark.parametrize("content", [b"\xff\xd8\xff\xe1", b"\xff\xd8\xff\xe1\x00\x10Exif\0\0MM", b"no photo"])
def test_a_file_without_a_picture_is_refused_by_its_notes_too(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "P1.jpg").write_bytes(content)
    with pytest.raises(PhotoUnreadable):
        read_facts(tmp_path / "P1.jpg", whole=False)


def test_the_original_is_left_as_it_is(tmp_path: Path) -> None:
    path = picture(tmp_path / "P1.jpg")
    before = path.read_bytes()
    facts = read_facts(path)
    assert path.read_bytes() == before
    assert facts.size_bytes == len(before)


@pytest.mark.parametrize(
    ("camera", "logged", "expected", "time_from"),
    [
        ("2026:03:16 10:15:00", "2026-03-16T11:00:00", "2026-03-16T11:00:00", "log"),
        ("2026:03:16 10:15:00", None, "2026-03-16T10:15:00", "camera"),
        ("", "2026-03-16 11:00", "2026-03-16T11:00:00", "log"),
        ("", None, None, "nowhere"),
    ],
)
def test_the_logs_time_comes_before_the_cameras(
    job_office: Office,
    shoot: Callable[..., dict[str, Any]],
    camera: str,
    logged: str | None,
    expected: str | None,
    time_from: str,
) -> None:
    entry = shoot("P1", "deck", taken=camera)
    photo = job_office.log({**entry, "taken_at": logged}).closeout().photos[0]
    assert (photo.taken_at.isoformat() if photo.taken_at else None) == expected
    assert photo.time_from == time_from
