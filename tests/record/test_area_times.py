"""Days and times of one work area: days or times, in order, inside the days of the job; refused at their line."""

from datetime import date, datetime

import pytest

from packet.record.area_checks import is_before
from tests.support.office import Office

AREA = "covering.areas.A1"


def timed(office: Office, **times: str) -> Office:
    for step, moment in times.items():
        office.changed(f"{AREA}.{step}", moment)
    return office


def test_a_day_stays_a_day_and_a_time_a_time(job_office: Office) -> None:
    office = timed(
        job_office, opened="2026-03-16", dried_in="2026-03-16T15:30", covered="2026-03-17 11:05:30"
    )
    covering = office.closeout().record.covering
    assert covering
    area = covering.areas[0]
    assert (area.opened, area.dried_in, area.covered) == (
        date(2026, 3, 16), datetime(2026, 3, 16, 15, 30), datetime(2026, 3, 17, 11, 5, 30),
    )  # fmt: skip
    assert type(area.opened) is date


@pytest.mark.parametrize(
    "moment",
    [
        "20260316",
        "2026-02-30",
        "2026-W12-1",
        "2026-03-16T25:00",
        "2026-03-16T15",
        "Monday",
        "2026-03-16T15:30-04:00",
    ],
)
def test_what_is_neither_is_refused_with_both_forms(job_office: Office, moment: str) -> None:
    (problem,) = timed(job_office, opened=f'"{moment}"').problems()
    assert (problem.code, problem.at) == ("bad-date", "covering.areas[0].opened")
    assert problem.values["accepted"] == "a day as 2026-03-16; a time at the house as 2026-03-16T15:30"


@pytest.mark.parametrize(
    ("times", "step"),
    [
        ({"opened": "2026-03-17", "dried_in": "2026-03-16"}, "dried_in"),
        ({"opened": "2026-03-16T12:00", "dried_in": "2026-03-16T11:59"}, "dried_in"),
        ({"dried_in": "2026-03-17", "covered": "2026-03-16T18:00"}, "covered"),
        ({"opened": "2026-03-16T12:00", "dried_in": "2026-03-16", "covered": "2026-03-16T11:00"}, "covered"),
        ({"opened": "2026-03-17", "covered": "2026-03-16"}, "covered"),
    ],
)
def test_an_area_is_opened_then_dried_in_then_covered(
    job_office: Office, times: dict[str, str], step: str
) -> None:
    office = timed(job_office, **times)
    place = ("job.yaml", "area-times-out-of-order", *office.place(f"{AREA}.{step}"))
    assert office.places() == [place]


def test_a_day_and_a_time_of_that_day_are_in_order(job_office: Office) -> None:
    timed(job_office, opened="2026-03-16T14:00", dried_in="2026-03-16", covered="2026-03-16T15:00").closeout()


@pytest.mark.parametrize(
    ("step", "moment", "bound"),
    [
        ("opened", "2026-03-15", "started is 2026-03-16"),
        ("opened", "2026-03-15T23:59", "started is 2026-03-16"),
        ("opened", "2026-03-18", "dried_in is 2026-03-17"),
        ("dried_in", "2026-03-18T00:00", "dried_in is 2026-03-17"),
        ("covered", "2026-03-19", "finished is 2026-03-18"),
        ("covered", "2026-03-15", "started is 2026-03-16"),
    ],
)
def test_an_area_is_worked_inside_the_days_of_the_job(
    job_office: Office, step: str, moment: str, bound: str
) -> None:
    office = timed(job_office, **{step: moment})
    (problem,) = office.problems()
    assert (problem.code, (problem.line, problem.column)) == (
        "area-outside-days",
        office.place(f"{AREA}.{step}"),
    )
    assert problem.values["accepted"] == bound


@pytest.mark.parametrize(
    ("step", "moment"), [("opened", "2026-03-16T00:00"), ("covered", "2026-03-18T23:59")]
)
def test_the_first_and_the_last_day_belong_to_the_job(job_office: Office, step: str, moment: str) -> None:
    timed(job_office, **{step: moment}).closeout()


def test_without_days_of_the_job_an_area_may_have_its_own(job_office: Office) -> None:
    job_office.changed("dates", "{}")
    job_office.changed("inspections", "[]")
    covering = timed(job_office, opened="2030-01-01", covered="2030-01-02").closeout().record.covering
    assert covering
    assert covering.areas[0].covered == date(2030, 1, 2)


def test_a_day_is_compared_with_a_time_by_its_day() -> None:
    noon = datetime(2026, 3, 16, 12)
    assert not is_before(date(2026, 3, 16), noon)
    assert not is_before(noon, date(2026, 3, 16))
    assert is_before(noon, date(2026, 3, 17))
