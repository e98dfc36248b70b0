"""A photo is held against the work area it shows: not before that was opened, not after it was covered."""

import json
from collections.abc import Callable
from datetime import date, datetime, timedelta
from typing import Any

import pytest

from packet.review.model import Missed
from tests.support.office import Office
from tests.support.pictures import picture

Shoot = Callable[..., dict[str, Any]]
EDGE = "deck-nail-edge-spacing"

#: The front is opened, dried in and shingled on the first day; the wing is opened on the second.
FRONT = {"opened": "2026-03-16T07:30", "dried_in": "2026-03-16T15:00", "covered": "2026-03-16T18:00"}
WING = {"opened": "2026-03-17T07:30", "dried_in": "2026-03-17T16:00", "covered": "2026-03-18"}

#: Both halves of the front: the left one is covered on the first day, the right one on the last.
HALVES = """
    - {id: A1, plane: MS, outline: [[0 ft, 0 ft], [10 ft, 0 ft], [10 ft, 4 ft], [0 ft, 4 ft]],
       opened: 2026-03-16, dried_in: 2026-03-16, covered: 2026-03-16}
    - {id: A3, plane: MS, outline: [[10 ft, 0 ft], [20 ft, 0 ft], [20 ft, 4 ft], [10 ft, 4 ft]],
       opened: 2026-03-17, dried_in: 2026-03-17, covered: 2026-03-18}
    - {id: A2, plane: WW, dried_in: 2026-03-17}
"""


def at(day: int, clock: str) -> str:
    return f"2026:03:{day:02} {clock}:00"


@pytest.fixture
def shingled(job_office: Office) -> Office:
    """The demo job, its front shingled while the wing is still to be stripped."""
    for area, times in (("A1", FRONT), ("A2", WING)):
        for step, moment in times.items():
            job_office.changed(f"covering.areas.{area}.{step}", moment)
    return job_office


def outcome(office: Office, entry: dict[str, Any]) -> str | tuple[str, str, str]:
    """Return ``proof``, or the side, the step and the area that the one photo missed."""
    result = office.log(entry).result(EDGE)
    if result.evidence == ("P1",):
        assert (result.word, result.late, result.missed) == ("meets", (), ())
        return "proof"
    assert (result.word, result.evidence, result.late) == ("not_recorded", (), ("P1",))
    (miss,) = result.missed
    assert miss.photo == "P1"
    return miss.side, miss.step, miss.area


# Area by area


@pytest.mark.parametrize(
    ("plane", "taken", "found"),
    [
        ("MS", at(16, "07:29"), ("before", "opened", "A1")),
        ("MS", at(16, "07:30"), "proof"),
        ("MS", at(16, "15:00"), "proof"),
        ("MS", at(16, "15:01"), ("after", "dried_in", "A1")),
        ("MS", at(17, "09:00"), ("after", "dried_in", "A1")),
        ("WW", at(16, "14:00"), ("before", "opened", "A2")),
        ("WW", at(17, "09:00"), "proof"),
        ("WW", at(17, "16:01"), ("after", "dried_in", "A2")),
    ],
)
def test_the_front_is_covered_while_the_wing_lies_open(
    shingled: Office, shoot: Shoot, plane: str, taken: str, found: object
) -> None:
    assert outcome(shingled, shoot("P1", "deck", EDGE, taken=taken, plane=plane)) == found


@pytest.mark.parametrize(
    ("stage", "taken", "proves"),
    [
        ("before", at(16, "12:00"), True),
        ("before", at(17, "08:00"), False),
        ("done", at(17, "08:00"), False),
        ("done", at(18, "00:00"), True),
    ],
)
def test_the_wing_stands_as_it_was_while_the_front_is_opened(
    shingled: Office, shoot: Shoot, stage: str, taken: str, proves: bool
) -> None:
    requirement = {"before": "before-planes", "done": "finished-planes"}[stage]
    office = shingled.changed("job.kind", "re-roof")
    office.log(shoot("P1", stage, requirement, taken=taken, plane="WW"))
    assert office.result(requirement, "WW").evidence == (("P1",) if proves else ())


def test_a_finished_front_is_shown_before_the_job_is_finished(shingled: Office, shoot: Shoot) -> None:
    entry = shoot("P1", "done", "finished-planes", taken=at(16, "18:30"), plane="MS")
    office = shingled.changed("job.kind", "re-roof").log(entry)
    assert office.result("finished-planes", "MS").evidence == ("P1",)


@pytest.mark.parametrize(
    ("pin", "day", "found"),
    [
        (["4 ft", "2 ft"], 16, "proof"),
        (["4 ft", "2 ft"], 17, ("after", "dried_in", "A1")),
        (["14 ft", "2 ft"], 16, ("before", "opened", "A3")),
        (["14 ft", "2 ft"], 17, "proof"),
        (["4 ft", "9 ft"], 17, "proof"),
        (None, 17, "proof"),
        (None, 18, ("after", "dried_in", "A3")),
    ],
    ids=["left", "left, covered", "right, not yet", "right", "in neither half", "no pin", "no pin, too late"],
)
def test_a_pin_tells_which_half_of_a_plane_a_photo_shows(
    job_office: Office, shoot: Shoot, pin: list[str] | None, day: int, found: object
) -> None:
    job_office.changed("covering.areas", HALVES)
    entry = shoot("P1", "deck", EDGE, taken=at(day, "10:00"), plane="MS", pin=pin)
    assert outcome(job_office, entry) == found


@pytest.mark.parametrize(
    ("taken", "found"),
    [
        (at(16, "12:00"), "proof"),
        (at(16, "20:00"), ("after", "dried_in", "A1")),
        (at(17, "12:00"), "proof"),
        (at(17, "20:00"), ("after", "dried_in", "A2")),
    ],
    ids=["front open", "nothing open", "wing open", "all covered"],
)
def test_a_photo_of_no_plane_is_judged_by_whatever_lay_open(
    shingled: Office, shoot: Shoot, taken: str, found: object
) -> None:
    assert outcome(shingled, shoot("P1", "deck", EDGE, taken=taken)) == found


@pytest.mark.parametrize(("day", "proves"), [(16, True), (17, False)])
@pytest.mark.parametrize("plane", [None, "MS"])
def test_a_sheet_is_judged_by_the_area_it_lies_in(
    shingled: Office, shoot: Shoot, plane: str | None, day: int, proves: bool
) -> None:
    result = shingled.log(shoot("P1", "deck", "S1", taken=at(day, "10:00"), plane=plane)).result(
        "deck-sheets", "S1"
    )
    assert (result.evidence, result.late) == ((("P1",), ()) if proves else ((), ("P1",)))


def test_a_photo_of_the_wing_shows_no_sheet_of_the_covered_front(shingled: Office, shoot: Shoot) -> None:
    entry = shoot("P1", "deck", "S1", taken=at(17, "10:00"), plane="WW")
    result = shingled.log(entry).result("deck-sheets", "S1")
    assert result.evidence == ()
    assert result.missed == (Missed("P1", "after", "dried_in", datetime(2026, 3, 16, 15), "A1"),)


def test_where_an_area_has_no_time_the_days_of_the_job_hold(job_office: Office, shoot: Shoot) -> None:
    job_office.changed("covering.areas.A1.covered", "2026-03-16")
    assert outcome(job_office, shoot("P1", "deck", EDGE, taken=at(17, "10:00"), plane="WW")) == "proof"
    late = shoot("P1", "deck", EDGE, taken=at(18, "10:00"), plane="WW")
    assert outcome(job_office, late) == ("after", "dried_in", "")


def test_an_area_that_was_shingled_was_dried_in_before(job_office: Office, shoot: Shoot) -> None:
    job_office.changed("covering.areas.A1.covered", "2026-03-16")
    entry = shoot("P1", "deck", EDGE, taken=at(17, "10:00"), plane="MS")
    assert outcome(job_office, entry) == ("after", "covered", "A1")


def test_a_sheet_of_a_covered_area_is_due_while_the_rest_lies_open(shingled: Office) -> None:
    text = shingled.text.replace("  dried_in: 2026-03-17\n  finished: 2026-03-18\n", "")
    shingled.write(text).changed("job.status", "under way").changed(
        "covering.areas.A2", "{id: A2, plane: WW}"
    )
    due = {sheet: shingled.result("deck-sheets", sheet).due for sheet in ("S1", "S2", "S3", "S4")}
    assert due == {"S1": True, "S2": True, "S3": False, "S4": False}
    assert not shingled.result(EDGE).due


# Instants


@pytest.mark.parametrize(
    ("taken", "offset", "proves"),
    [
        ("2026:03:18 03:30:00", "+00:00", True),  # 23:30 of the 17th at the house
        ("2026:03:18 04:00:00", "+00:00", False),
        ("2026:03:17 23:30:00", "-10:00", False),  # 5:30 of the 18th at the house
        ("2026:03:15 23:30:00", "-10:00", True),  # 5:30 of the 16th
        ("2026:03:16 03:59:00", "+00:00", False),  # 23:59 of the 15th
        ("2026:03:17 23:30:00", "", True),
    ],
)
def test_days_are_the_houses_whatever_the_camera_shows(
    job_office: Office, shoot: Shoot, taken: str, offset: str, proves: bool
) -> None:
    entry = shoot("P1", "deck", EDGE, taken=taken)
    picture(job_office.job / "photos" / "P1.jpg", taken=taken, offset=offset)
    assert (outcome(job_office, entry) == "proof") is proves


@pytest.mark.parametrize(
    ("clock", "offset", "proves"),
    [
        ("19:00", "+00:00", True),  # 15:00 at the house
        ("19:01", "+00:00", False),
        ("15:01", "-04:00", False),
        ("14:30", "-05:00", False),  # a clock that was never put forward: 15:30
        ("15:30", "-03:00", True),
    ],
)
def test_a_time_of_an_area_is_compared_by_the_instant(
    shingled: Office, shoot: Shoot, clock: str, offset: str, proves: bool
) -> None:
    entry = shoot("P1", "deck", EDGE, taken=at(16, clock), plane="MS", offset=offset)
    assert (outcome(shingled, entry) == "proof") is proves


@pytest.mark.parametrize(
    ("dried_in", "clock", "offset", "proves"),
    [
        # clocks are put back: 1:30 comes twice, and the earlier one covers
        ("2026-11-01T01:30", "2026:11:01 01:30:00", "-04:00", True),
        ("2026-11-01T01:30", "2026:11:01 01:10:00", "-05:00", False),
        ("2026-11-01T01:30", "2026:11:01 01:10:00", "", False),
        ("2026-11-01T02:10", "2026:11:01 01:50:00", "", True),
        # clocks are put forward: 3:10 is ten minutes after 1:59
        ("2026-03-08T03:10", "2026:03:08 01:59:00", "", True),
        ("2026-03-08T03:10", "2026:03:08 02:09:00", "-05:00", True),
        ("2026-03-08T03:10", "2026:03:08 02:11:00", "-05:00", False),
        ("2026-03-08T03:10", "2026:03:08 03:11:00", "", False),
    ],
)
def test_the_night_clocks_change(
    job_office: Office, shoot: Shoot, dried_in: str, clock: str, offset: str, proves: bool
) -> None:
    day = date.fromisoformat(dried_in[:10])
    job_office.changed("dates.looked_at", "2026-03-01").changed("dates.started", str(day - timedelta(1)))
    job_office.changed("dates.dried_in", str(day)).changed("dates.finished", str(day + timedelta(1)))
    job_office.changed("covering.areas.A1.dried_in", dried_in).changed("inspections", "[]")
    entry = shoot("P1", "deck", EDGE, taken=clock, plane="MS")
    picture(job_office.job / "photos" / "P1.jpg", taken=clock, offset=offset)
    assert (outcome(job_office, entry) == "proof") is proves


# A clock that was off


def note(**more: str) -> dict[str, str]:
    return {"taken_by": "Tam Oduya", "from": "2026-03-16", "until": "2026-03-16", **more}


def with_clocks(office: Office, entry: dict[str, Any], *notes: dict[str, str]) -> Office:
    log = {"clocks": list(notes), "photos": [entry]}
    (office.job / "photos.yaml").write_text(json.dumps(log), encoding="utf-8")
    return office


@pytest.mark.parametrize(
    ("clock", "off", "proves"),
    [
        ("15:03", {"ahead": "4 min"}, True),
        ("15:05", {"ahead": "4 min"}, False),
        ("14:58", {"behind": "4 min"}, False),
        ("14:56", {"behind": "4 min"}, True),
        ("07:28", {"behind": "2 min"}, True),
        ("07:32", {"ahead": "2 min 1 s"}, False),
    ],
)
def test_a_note_on_the_clock_moves_a_photo_over_the_bound(
    shingled: Office, shoot: Shoot, clock: str, off: dict[str, str], proves: bool
) -> None:
    entry = shoot("P1", "deck", EDGE, taken=at(16, clock), plane="MS", taken_by="Tam Oduya")
    result = with_clocks(shingled, entry, note(**off)).result(EDGE)
    assert (result.evidence, result.late) == ((("P1",), ()) if proves else ((), ("P1",)))
    assert result.stated == ()


@pytest.mark.parametrize(
    "change",
    [{"from": "2026-03-17", "until": "2026-03-18"}, {"from": "2026-03-09", "until": "2026-03-15"}],
    ids=["later days", "earlier days"],
)
def test_a_note_for_other_days_corrects_nothing(
    shingled: Office, shoot: Shoot, change: dict[str, str]
) -> None:
    entry = shoot("P1", "deck", EDGE, taken=at(16, "15:03"), plane="MS", taken_by="Tam Oduya")
    assert with_clocks(shingled, entry, note(ahead="4 min") | change).result(EDGE).late == ("P1",)


def test_a_note_on_a_camera_does_not_move_a_time_that_somebody_said(shingled: Office, shoot: Shoot) -> None:
    entry = shoot("P1", "deck", EDGE, taken="", plane="MS", taken_by="Tam Oduya", taken_at="2026-03-16T15:03")
    assert with_clocks(shingled, entry, note(ahead="4 min")).result(EDGE).late == ("P1",)


# As stated


def test_a_time_that_only_the_log_has_is_a_weaker_proof(job_office: Office, shoot: Shoot) -> None:
    entry = shoot("P1", "deck", EDGE, taken="", taken_at="2026-03-16T10:00")
    result = job_office.log(entry).result(EDGE)
    assert (result.word, result.evidence, result.stated) == ("meets", ("P1",), ("P1",))


@pytest.mark.parametrize(
    ("more", "stated"),
    [
        ({}, False),
        ({"taken_at": "2026-03-16T10:15:00", "offset": "-04:00"}, False),
        ({"taken_at": "2026-03-16T11:15:00"}, True),
        ({"offset": "-05:00"}, True),
        ({"offset": "-04:00", "offset_from": "stated"}, True),
        ({"stated_by": "Dov Marrick, in a text message"}, True),
    ],
    ids=["camera's", "camera's, written down", "another time", "another offset", "offset said", "said"],
)
def test_what_is_not_the_cameras_is_stated(
    job_office: Office, shoot: Shoot, more: dict[str, str], stated: bool
) -> None:
    result = job_office.log(shoot("P1", "deck", EDGE, **more)).result(EDGE)
    assert (result.evidence, result.stated) == (("P1",), ("P1",) if stated else ())


def test_a_stated_time_after_the_cover_proves_nothing(shingled: Office, shoot: Shoot) -> None:
    entry = shoot("P1", "deck", EDGE, taken="", taken_at="2026-03-16T15:01", plane="MS", stated_by="Dov")
    result = shingled.log(entry).result(EDGE)
    assert (result.evidence, result.stated, result.late) == ((), (), ("P1",))


def test_a_photo_without_any_time_proves_nothing(shingled: Office, shoot: Shoot) -> None:
    result = shingled.log(shoot("P1", "deck", EDGE, taken="", stated_by="Dov Marrick")).result(EDGE)
    assert (result.evidence, result.late, result.missed) == ((), ("P1",), ())
