"""Notes on camera clocks: read, refused at their line, kept when photos are taken in, shown beside the camera's time."""

import json
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from packet.closeout.redact import redact
from packet.photos.clock import day_in, span
from packet.photos.logedit import NewEntry, read_log, with_entries
from packet.photos.taken import take_photos
from packet.yamlread import parse_yaml
from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]

NOTE = "{taken_by: Tam Oduya, ahead: 4 min, from: 2026-03-16, until: 2026-03-17, how: beside the phone}"


def logged(office: Office, entry: dict[str, Any], *notes: str) -> Office:
    lines = ["clocks:", *(f"  - {note}" for note in notes), "photos:", f"  - {json.dumps(entry)}", ""]
    (office.job / "photos.yaml").write_text("\n".join(lines), encoding="utf-8")
    return office


def by_tam(shoot: Shoot, **more: Any) -> dict[str, Any]:
    return shoot("P1", "deck", taken_by="Tam Oduya", **more)


# Refused at their line


@pytest.mark.parametrize(
    ("old", "new", "code", "at"),
    [
        ("ahead: 4 min", "ahead: 4", "bad-lapse", "ahead"),
        ("ahead: 4 min", "ahead: 0 min", "bad-lapse", "ahead"),
        ("ahead: 4 min", "ahead: a bit", "bad-lapse", "ahead"),
        ("ahead: 4 min", "ahead: 4 min, behind: 2 min", "clock-one-way", ""),
        ("ahead: 4 min, ", "", "clock-one-way", ""),
        ("until: 2026-03-17", "until: 2026-03-15", "dates-out-of-order", "until"),
        ("until: 2026-03-17", "until: Tuesday", "bad-date", "until"),
        ("taken_by: Tam Oduya", "taken_by: Tam Odya", "clock-of-nobody", "taken_by"),
    ],
)
def test_a_note_that_does_not_hold_is_refused_at_its_line(
    job_office: Office, shoot: Shoot, old: str, new: str, code: str, at: str
) -> None:
    assert NOTE.count(old) == 1
    office = logged(job_office, by_tam(shoot), NOTE.replace(old, new))
    line, column = office.place(f"clocks.0.{at}".rstrip("."), file="photos.yaml")
    assert office.places() == [("photos.yaml", code, line, column)]


def test_two_notes_on_one_clock_for_the_same_days_are_refused(job_office: Office, shoot: Shoot) -> None:
    second = "{taken_by: tam  oduya, behind: 1 min, from: 2026-03-17, until: 2026-03-20}"
    office = logged(job_office, by_tam(shoot), NOTE, second)
    line, column = office.place("clocks.1.from", file="photos.yaml")
    assert office.places() == [("photos.yaml", "clocks-overlap", line, column)]


@pytest.mark.parametrize(
    "second",
    [
        "{taken_by: Tam Oduya, behind: 1 min, from: 2026-03-18, until: 2026-03-20}",
        "{taken_by: Dov Marrick, behind: 1 min, from: 2026-03-16, until: 2026-03-20}",
    ],
    ids=["later days", "another camera"],
)
def test_notes_for_other_days_or_cameras_stand_beside_each_other(
    job_office: Office, shoot: Shoot, second: str
) -> None:
    logged(job_office, by_tam(shoot), NOTE, second)
    text = (job_office.job / "photos.yaml").read_text("utf-8")
    more = json.dumps(shoot("P2", "deck", taken_by="Dov Marrick"))
    (job_office.job / "photos.yaml").write_text(f"{text}  - {more}\n", encoding="utf-8")
    clocks = [photo.clock for photo in take_photos(job_office.job).photos]
    dov = "1 min" if "Dov Marrick" in second else None
    assert [clock.off if clock else None for clock in clocks] == ["4 min", dov]


# What a note does


@pytest.mark.parametrize(
    ("off", "corrected"),
    [
        ("ahead: 4 min", datetime(2026, 3, 16, 10, 11)),
        ("behind: 40 s", datetime(2026, 3, 16, 10, 15, 40)),
        ("ahead: 1 h 5 min", datetime(2026, 3, 16, 9, 10)),
        ("behind: 1 d", datetime(2026, 3, 17, 10, 15)),
        ("ahead: 11 h", datetime(2026, 3, 15, 23, 15)),
    ],
)
def test_the_corrected_time_stands_beside_the_cameras(
    job_office: Office, shoot: Shoot, off: str, corrected: datetime
) -> None:
    office = logged(job_office, by_tam(shoot), NOTE.replace("ahead: 4 min", off))
    (photo,) = office.closeout().photos
    assert photo.clock
    assert (photo.taken_at, photo.clock.corrected_at) == (datetime(2026, 3, 16, 10, 15), corrected)
    assert f"{photo.clock.side}: {photo.clock.off}" == off
    assert photo.clock.how == "beside the phone"


def test_a_copy_carries_both_times(job_office: Office, shoot: Shoot) -> None:
    copy = redact(logged(job_office, by_tam(shoot), NOTE).closeout(), "outside")
    (photo,) = copy["photos"]
    assert photo["taken_at"] == "2026-03-16T10:15:00"
    assert photo["clock"] == {
        "corrected_at": "2026-03-16T10:11:00", "off": "4 min", "side": "ahead", "how": "beside the phone",
    }  # fmt: skip


@pytest.mark.parametrize("taken_by", ["Dov Marrick", None])
def test_a_note_is_on_the_camera_of_one_person(
    job_office: Office, shoot: Shoot, taken_by: str | None
) -> None:
    office = logged(
        job_office, shoot("P1", "deck", taken_by=taken_by), NOTE.replace("Tam Oduya", "Dov Marrick")
    )
    (photo,) = office.closeout().photos
    assert (photo.clock is not None) is (taken_by == "Dov Marrick")


# Taking photos in


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (f"clocks:\n  - {NOTE}\nphotos: []\n", f"clocks:\n  - {NOTE}\nphotos:\n@"),
        (f"photos: []\nclocks:\n  - {NOTE}\n", f"photos:\n@clocks:\n  - {NOTE}\n"),
        (
            f"photos:\n  - {{id: P01, file: a.jpg}}  # first\n\n# our clocks\nclocks:\n  - {NOTE}\n# end\n",
            f"photos:\n  - {{id: P01, file: a.jpg}}  # first\n@\n# our clocks\nclocks:\n  - {NOTE}\n# end\n",
        ),
        (f"clocks:\n  - {NOTE}\n", f"clocks:\n  - {NOTE}\nphotos:\n@"),
        (f"photos: []\r\nclocks:\r\n  - {NOTE}\r\n", f"photos:\r\n@clocks:\r\n  - {NOTE}\r\n"),
    ],
    ids=["notes first", "notes last", "remarks between", "notes alone", "line ends of another system"],
)
def test_notes_stay_when_photos_are_taken_in(tmp_path: Path, old: str, new: str) -> None:
    path = tmp_path / "photos.yaml"
    path.write_bytes(old.encode())
    made = with_entries(read_log(path), [NewEntry({"id": "P09", "file": "photos/b.jpg"})])
    end = "\r\n" if "\r" in old else "\n"
    assert made.data.decode() == new.replace("@", f"  - id: P09{end}    file: photos/b.jpg{end}")
    value = parse_yaml(made.data, path).value
    assert value["clocks"][0]["ahead"] == "4 min"
    assert made.data.decode().splitlines()[made.first_line - 1] == "  - id: P09"


# Instants


def test_an_hour_shown_twice_means_two_instants() -> None:
    first, last = span(datetime(2026, 11, 1, 1, 30), None, "America/New_York")
    assert (first.hour, last.hour) == (5, 6)
    assert span(datetime(2026, 11, 1, 1, 30), "-04:00", "America/New_York") == (first, first)


def test_the_day_is_the_houses() -> None:
    first, _ = span(datetime(2026, 3, 18, 3, 59), "+00:00", "America/New_York")
    assert day_in(first, "America/New_York").isoformat() == "2026-03-17"


def test_a_camera_that_was_never_set_has_a_day() -> None:
    first, last = span(datetime(1, 1, 1), None, "America/New_York")
    assert first <= last
    assert day_in(first, "America/New_York").year == 1
