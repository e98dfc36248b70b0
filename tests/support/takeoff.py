"""The takeoff of a record written as text, without the rest of the closeout."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from packet.figure import Figure, Number
from packet.figures.deck import deck_plan
from packet.figures.make import make_figures
from packet.figures.takeoff import TakeoffLine, take_off
from packet.record.load import read_record
from packet.reference import Library
from packet.uses import Use
from packet.workspace import packaged
from tests.support.office import NUMBER


@dataclass(frozen=True)
class TakenOff:
    """Figures and lines of a record."""

    figures: Mapping[str, Figure]
    lines: tuple[TakeoffLine, ...]

    def line(self, use: Use) -> TakeoffLine:
        (found,) = [line for line in self.lines if line.use == use]
        return found

    def value(self, id: str) -> Number:
        return self.figures[id].value

    def net(self, use: Use) -> Number:
        return self.value(self.line(use).net)

    def need(self, use: Use) -> Number:
        return self.value(self.line(use).need)

    def to_buy(self, use: Use) -> Number:
        return self.value(self.line(use).to_buy)

    def missing(self, use: Use) -> tuple[str, ...]:
        return self.line(use).missing

    def parts(self, prefix: str) -> dict[str, Number]:
        """Return the figures below an id, without it."""
        return {
            id.removeprefix(prefix): figure.value
            for id, figure in self.figures.items()
            if id.startswith(prefix)
        }


@cache
def library() -> Library:
    return Library.load([packaged("shared")])


def taken_off(text: str, *, laid_out: bool = False) -> TakenOff:
    """Return the takeoff of a record; sheets, nails and clips are laid out first where that is asked.

    Raises:
        AssertionError: The record has a problem; it is told.
    """
    with TemporaryDirectory() as folder:
        job = Path(folder, NUMBER)
        job.mkdir()
        (job / "job.yaml").write_text(text, encoding="utf-8")
        record, problems = read_record(job)
    assert record, problems
    assert not problems, problems
    figures = make_figures(record.value, library())
    if laid_out:
        deck_plan(record.value, library(), figures)
    lines = take_off(record.value, library(), figures)
    return TakenOff(figures.by_id, lines)
