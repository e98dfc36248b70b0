"""When a photo of a stage can have been taken: between what was done to the area it shows, before and after.

A roof is opened and covered piece by piece: the front may be shingled while the back still lies open. So a
photo is held against the times of the work area it shows, and against the days of the job only where the area
has no time of its own. A photo that may show one of several areas has to fit at least one of them.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime

from packet.calc.polygon import holds_point
from packet.figures.shapes import outline_ft
from packet.photos.clock import day_in, span
from packet.photos.taken import TakenPhoto
from packet.record.house import Dates
from packet.record.job import JobRecord
from packet.record.layers import WorkedArea
from packet.record.planes import Point
from packet.record.wood import Sheet
from packet.reference.models import Stage
from packet.review.model import Missed, Step
from packet.units import Length

#: Days of the job in order, and what of one area stands in the place of each.
STEPS: Mapping[str, Step] = {"started": "opened", "dried_in": "dried_in", "finished": "covered"}
_DAYS = tuple(STEPS)

Span = tuple[datetime, datetime]


def areas_worked(record: JobRecord) -> tuple[WorkedArea, ...]:
    """Return every work area of a job."""
    return record.covering.areas if record.covering else ()


def areas_shown(photo: TakenPhoto, record: JobRecord) -> tuple[WorkedArea, ...]:
    """Return the work areas a photo may show: those of its plane, or all where the log names no plane."""
    entry = photo.entry
    return _areas_at(record, entry.plane, entry.pin) if entry.plane else areas_worked(record)


def areas_of(subject: str, record: JobRecord) -> tuple[WorkedArea, ...]:
    """Return the work areas a sheet, boards, a detail or a plane may lie in; none where no plane is known."""
    deck = record.deck
    for sheet in deck.sheets if deck else ():
        if sheet.id == subject:
            return _areas_at(record, sheet.plane, _middle(sheet))
    for board in deck.boards if deck else ():
        if board.id == subject:
            return _areas_at(record, board.plane, None)
    for detail in record.details:
        if detail.id == subject:
            return _areas_at(record, detail.plane, detail.at) if detail.plane else ()
    return _areas_at(record, subject, None)


def missed(
    stage: Stage, areas: Sequence[WorkedArea], record: JobRecord, photo: TakenPhoto, taken: Span
) -> Missed | None:
    """Return what a photo of a stage missed; None when it fits an area it may show.

    Args:
        stage: The stage the log gives it.
        areas: Areas it may show; without any, the days of the job hold.
        record: The job record.
        photo: The photo.
        taken: The earliest and the latest instant it can have been taken at, in UTC.
    """
    zone = record.property.time_zone
    found = [_missed(stage, area, record.dates, photo.entry.id, taken, zone) for area in areas or (None,)]
    missing = [miss for miss in found if miss is not None]
    if len(missing) < len(found):
        return None
    # of several areas: the one that was covered last, else the one that was opened first
    after = [miss for miss in missing if miss.side == "after"]
    return max(after, key=_order) if after else min(missing, key=_order)


def is_past(stage: Stage, areas: Sequence[WorkedArea]) -> bool:
    """Return whether every one of some areas has come past a stage, by its own times; not without any."""
    steps = [STEPS[name] for name in _from(stage.latest)]
    return bool(areas) and all(any(getattr(area, step) for step in steps) for area in areas)


def _missed(
    stage: Stage, area: WorkedArea | None, dates: Dates, photo: str, taken: Span, zone: str
) -> Missed | None:
    for name in _from(stage.latest):
        for id, at in _times(name, area, dates):
            if _is_after(taken, at, zone):
                return Missed(photo, "after", STEPS[name], at, id)
    for name in _up_to(stage.earliest):
        for id, at in _times(name, area, dates):
            if _is_before(taken, at, zone):
                return Missed(photo, "before", STEPS[name], at, id)
    return None


def _times(name: str, area: WorkedArea | None, dates: Dates) -> Iterator[tuple[str, date]]:
    """Yield when a step came, as far as it is known: by the area's own time, else by the job's day."""
    own = getattr(area, STEPS[name]) if area else None
    at = own or getattr(dates, name)
    if at is not None:
        yield (area.id if own and area else ""), at


def _from(latest: str | None) -> tuple[str, ...]:
    """Return what a photo is not after: a layer that was covered was also dried in before."""
    return _DAYS[_DAYS.index(latest) :] if latest else ()


def _up_to(earliest: str | None) -> tuple[str, ...]:
    """Return what a photo is not before, the last of it first."""
    return tuple(reversed(_DAYS[: _DAYS.index(earliest) + 1])) if earliest else ()


def _is_after(taken: Span, at: date, zone: str) -> bool:
    if isinstance(at, datetime):
        return taken[1] > span(at, None, zone)[0]
    return day_in(taken[1], zone) > at


def _is_before(taken: Span, at: date, zone: str) -> bool:
    if isinstance(at, datetime):
        return taken[0] < span(at, None, zone)[1]
    return day_in(taken[0], zone) < at


def _order(miss: Missed) -> str:
    return miss.at.isoformat()


def _areas_at(record: JobRecord, plane: str, place: Point | None) -> tuple[WorkedArea, ...]:
    """Return the areas of a plane; of a place on it those that hold it, unless none does."""
    there = tuple(area for area in areas_worked(record) if area.plane == plane)
    if place is None:
        return there
    point = outline_ft((place,))[0]
    held = tuple(
        area for area in there if area.outline is None or holds_point(outline_ft(area.outline), point)
    )
    return held or there


def _middle(sheet: Sheet) -> Point:
    (u, v), along, up = sheet.at, sheet.along, sheet.up
    return Length(u.inches + along.inches / 2), Length(v.inches + up.inches / 2)
