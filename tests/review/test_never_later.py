"""Whatever the times of areas, photos and cameras: no photo from after the cover proves what lies below it."""

from datetime import datetime, timedelta
from functools import cache
from pathlib import Path

from hypothesis import example, given
from hypothesis import strategies as st

from packet.photos.facts import PhotoFacts
from packet.photos.log import CaptionedPhoto
from packet.photos.taken import TakenPhoto
from packet.record.job import JobRecord
from packet.record.load import read_record
from packet.reference import Library
from packet.reference.models import Stage
from packet.review.catalogue import BY_ID
from packet.review.evidence import evidence
from packet.workspace import Workspace
from tests.support.office import DEMO_JOB, ROOT

EDGE = "deck-nail-edge-spacing"

#: Midnight at the house on the day it was started, in minutes of UTC since the same midnight there: -04:00.
HOUSE_BEHIND_MIN = 240
DAY_MIN = 24 * 60


@cache
def demo_record() -> JobRecord:
    read, problems = read_record(DEMO_JOB)
    assert read
    assert not problems
    return read.value


@cache
def stages() -> tuple[Stage, ...]:
    return Library.load(Workspace(ROOT).shared_folders()).stages()


def moment(minutes: int) -> datetime:
    return datetime(2026, 3, 16) + timedelta(minutes=minutes)


def taken_photo(minutes: int, offset_min: int | None, plane: str | None) -> TakenPhoto:
    sign = "-" if (offset_min or 0) < 0 else "+"
    hours, rest = divmod(abs(offset_min or 0), 60)
    offset = f"{sign}{hours:02}:{rest:02}" if offset_min is not None else None
    entry = CaptionedPhoto(
        id="P1", file="photos/P1.jpg", stage="deck", shows="Nails.", proves=(EDGE,), plane=plane
    )
    return TakenPhoto(entry, Path("P1.jpg"), PhotoFacts("0" * 64, 1, 4, 3, moment(minutes), offset, False))


STEPS = st.lists(st.integers(0, 3 * DAY_MIN - 1), min_size=3, max_size=3).map(sorted)


@given(
    front=STEPS,
    wing=STEPS,
    minutes=st.integers(-2 * DAY_MIN, 5 * DAY_MIN),
    offset_min=st.none() | st.integers(-12 * 4, 12 * 4).map(lambda quarters: quarters * 15),
    plane=st.sampled_from([None, "MS", "WW"]),
)
@example(front=[450, 900, 1080], wing=[1890, 2400, 2880], minutes=901, offset_min=-240, plane="MS")
def test_no_photo_from_after_the_cover_ever_proves_anything(
    front: list[int], wing: list[int], minutes: int, offset_min: int | None, plane: str | None
) -> None:
    record = demo_record()
    assert record.covering
    timed = {"A1": front, "A2": wing}
    areas = tuple(
        area.model_copy(
            update=dict(zip(("opened", "dried_in", "covered"), map(moment, timed[area.id]), strict=True))
        )
        for area in record.covering.areas
    )
    record = record.model_copy(update={"covering": record.covering.model_copy(update={"areas": areas})})
    found = evidence(BY_ID[EDGE], "", record, [taken_photo(minutes, offset_min, plane)], stages())
    taken = minutes - (offset_min if offset_min is not None else -HOUSE_BEHIND_MIN)
    shown = {"MS": [front], "WW": [wing], None: [front, wing]}[plane]
    lay_open = any(
        opened + HOUSE_BEHIND_MIN <= taken <= dried_in + HOUSE_BEHIND_MIN for opened, dried_in, _ in shown
    )
    assert found.photos == (("P1",) if lay_open else ())
    assert found.late == (() if lay_open else ("P1",))
