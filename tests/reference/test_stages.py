"""A photo of a stage was taken while the stage could be seen: not before, and not after it was covered."""

from dataclasses import dataclass
from datetime import date

import pytest

from packet.reference import Library


@dataclass(frozen=True)
class Days:
    started: date | None = date(2026, 3, 16)
    dried_in: date | None = date(2026, 3, 17)
    finished: date | None = date(2026, 3, 18)


@pytest.mark.parametrize(
    ("stage", "day", "fits"),
    [
        ("before", 9, True),
        ("before", 16, True),
        ("before", 17, False),
        ("stripped", 15, False),
        ("stripped", 17, True),
        ("stripped", 18, False),
        ("deck", 17, True),
        ("deck", 18, False),
        ("dried-in", 18, True),
        ("dried-in", 19, False),
        ("covering", 18, True),
        ("covering", 19, False),
        ("done", 17, False),
        ("done", 30, True),
    ],
)
def test_the_day_of_a_photo_fits_its_stage_or_not(library: Library, stage: str, day: int, fits: bool) -> None:
    (found,) = [each for each in library.stages() if each.id == stage]
    assert found.fits(date(2026, 3, day), Days()) is fits


def test_a_day_that_was_not_recorded_bounds_nothing(library: Library) -> None:
    for stage in library.stages():
        assert stage.fits(date(1999, 1, 1), Days(None, None, None))
