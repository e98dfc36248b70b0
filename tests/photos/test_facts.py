"""What an original says of itself: time, offset, place, upright size."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from packet.photos.facts import read_facts
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
