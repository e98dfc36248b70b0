"""Days and times of one work area: in the order of the work, and inside the days of the job."""

from collections.abc import Callable, Iterator
from datetime import date, datetime
from itertools import combinations

from packet.record.fault import Fault
from packet.record.house import Dates
from packet.record.job import JobRecord

#: What is done to an area, in order.
STEPS = ("opened", "dried_in", "covered")

#: Days of the job, the steps of an area they bound, and whether those come no later instead of no earlier.
_BOUNDS: tuple[tuple[str, tuple[str, ...], bool], ...] = (
    ("started", STEPS, False),
    ("dried_in", ("opened", "dried_in"), True),
    ("finished", STEPS, True),
)


def is_before(first: date, second: date) -> bool:
    """Return whether a day or time is before another; where one is only a day, days are compared."""
    if isinstance(first, datetime) and isinstance(second, datetime):
        return first < second
    return day_of(first) < day_of(second)


def day_of(moment: date) -> date:
    """Return the day of a day or time."""
    return moment.date() if isinstance(moment, datetime) else moment


def _out_of_order(record: JobRecord) -> Iterator[Fault]:
    for index, area in enumerate(record.covering.areas if record.covering else ()):
        given = [(step, moment) for step in STEPS if (moment := getattr(area, step)) is not None]
        wrong: dict[str, Fault] = {}
        for (earlier, first), (later, second) in combinations(given, 2):
            if is_before(second, first):
                values = {"area": area.id, "accepted": f"{earlier} is {written(first)}"}
                loc = ("covering", "areas", index, later)
                wrong.setdefault(later, Fault("area-times-out-of-order", loc, written(second), values))
        yield from wrong.values()


def _outside_the_job(record: JobRecord) -> Iterator[Fault]:
    for index, area in enumerate(record.covering.areas if record.covering else ()):
        for step in STEPS:
            moment = getattr(area, step)
            missed = _bound_missed(step, moment, record.dates) if moment else None
            if missed:
                values = {"area": area.id, "accepted": missed}
                loc = ("covering", "areas", index, step)
                yield Fault("area-outside-days", loc, written(moment), values)


def _bound_missed(step: str, moment: date, days: Dates) -> str | None:
    """Return the day of the job that a step misses, as "finished is 2026-03-18"; None when it misses none."""
    for name, steps, is_last in _BOUNDS:
        day = getattr(days, name) if step in steps else None
        if day and is_before(*((day, moment) if is_last else (moment, day))):
            return f"{name} is {day}"
    return None


def written(moment: date) -> str:
    """Return a day or time as records hold it."""
    return moment.isoformat(timespec="minutes") if isinstance(moment, datetime) else moment.isoformat()


AREA_CHECKS: tuple[Callable[[JobRecord], Iterator[Fault]], ...] = (_out_of_order, _outside_the_job)
