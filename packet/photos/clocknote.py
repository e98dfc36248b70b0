"""Notes on camera clocks that were off: whose, on which days, by how much, and how that is known."""

import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import combinations
from typing import Annotated, Literal, Self

from pydantic import ValidationInfo, field_validator, model_validator

from packet.fields import Day, Line, Parsed, Strict, everyone, leaf, refuse
from packet.units import NotAMeasure

_EXAMPLES = ("4 min", "40 s", "1 h 5 min", "1 d")
_LAPSE = re.compile(
    r"(?:(\d{1,4}) ?d(?:ays?)?)? ?(?:(\d{1,2}) ?h)? ?(?:(\d{1,2}) ?min)? ?(?:(\d{1,2}) ?s)?", re.ASCII
)


@dataclass(frozen=True)
class Lapse:
    """By how much a clock is off, and how that was typed."""

    length: timedelta
    text: str


def _lapse(text: str) -> Lapse:
    match = _LAPSE.fullmatch(text.strip())
    days, hours, minutes, seconds = (int(part or 0) for part in match.groups()) if match else (0, 0, 0, 0)
    length = timedelta(days=days, hours=hours, minutes=minutes, seconds=seconds)
    if not length:
        raise NotAMeasure("bad-lapse", text, _EXAMPLES)
    return Lapse(length, text.strip())


class ClockNote(Strict):
    """A camera's clock that was off on some days; times of those days are corrected, and none is replaced."""

    taken_by: Line = leaf(
        description="Whose camera, as taken_by of its photos has it.", examples=["Tam Oduya"]
    )
    ahead: Annotated[Lapse, Parsed(_lapse, _EXAMPLES)] | None = leaf(
        None, description="By how much its clock was ahead."
    )
    behind: Annotated[Lapse, Parsed(_lapse, _EXAMPLES)] | None = leaf(
        None, description="By how much it was behind."
    )
    from_: Day = leaf(alias="from", description="First day, as the camera dates its photos.")
    until: Day = leaf(description="Last day, as the camera dates its photos.")
    how: Line | None = leaf(
        None, description="How it is known.", examples=["held beside the phone's network time"]
    )

    @field_validator("until")
    @classmethod
    def _not_before(cls, until: date, info: ValidationInfo) -> date:
        first = info.data.get("from_")
        if first and until < first:
            raise refuse("dates-out-of-order", until, f"from is {first}")
        return until

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if (self.ahead is None) == (self.behind is None):
            raise refuse("clock-one-way", "")
        return self

    @property
    def side(self) -> Literal["ahead", "behind"]:
        """Whether the clock was ahead or behind."""
        return "ahead" if self.ahead else "behind"

    @property
    def lapse(self) -> Lapse:
        """By how much it was off."""
        lapse = self.ahead or self.behind
        assert lapse  # noqa: S101 - one of the two is always given
        return lapse

    def is_of(self, taken_by: str | None, moment: datetime | None) -> bool:
        """Return whether the note is on the clock that gave somebody's photo its time."""
        if taken_by is None or moment is None:
            return False
        return _same(taken_by) == _same(self.taken_by) and self.from_ <= moment.date() <= self.until

    def corrected(self, moment: datetime) -> datetime:
        """Return what a right clock would have shown; a time at the end of the calendar stays."""
        try:
            return moment - self.lapse.length if self.side == "ahead" else moment + self.lapse.length
        except OverflowError:
            return moment


class ClockCorrection(Strict):
    """What a photo's time is with its camera's clock put right; the camera's own stands beside it."""

    corrected_at: datetime = everyone(description="Time on the wall, by a right clock.")
    off: Line = everyone(description="By how much the camera's clock was off.", examples=["4 min"])
    side: Literal["ahead", "behind"] = everyone(description="Which way.", examples=["ahead"])
    how: Line | None = everyone(None, description="How it is known.")


@dataclass(frozen=True)
class NoteFault:
    """A note that can't be used: its number in the list, the key, and what is found and accepted."""

    code: str
    number: int
    key: str
    found: str
    accepted: str = ""


def note_faults(notes: Sequence[ClockNote], people: Sequence[str]) -> Iterator[NoteFault]:
    """Yield notes on one clock for the same days, and notes on a clock that took no photo.

    Args:
        notes: The notes of a log.
        people: Who took its photos.
    """
    for (_, first), (number, second) in combinations(enumerate(notes), 2):
        days = first.from_ <= second.until and second.from_ <= first.until
        if days and _same(first.taken_by) == _same(second.taken_by):
            accepted = f"the other is from {first.from_} until {first.until}"
            yield NoteFault("clocks-overlap", number, "from", second.taken_by, accepted)
    known = {_same(name) for name in people}
    for number, note in enumerate(notes):
        if known and _same(note.taken_by) not in known:
            yield NoteFault("clock-of-nobody", number, "taken_by", note.taken_by)


def _same(name: str) -> str:
    """Return a name as it is told from others."""
    return unicodedata.normalize("NFC", " ".join(name.split())).casefold()
