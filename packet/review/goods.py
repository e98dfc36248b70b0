"""Findings of goods: what was laid, or ordered, is far from what the roof needs."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from packet.figure import FigureSet, Number
from packet.figures.takeoff import TakeoffLine
from packet.record.job import JobRecord
from packet.reference import Library
from packet.review.model import Finding

BELOW, ABOVE = "laid below the need", "laid above the need"


def goods_findings(
    record: JobRecord, takeoff: Sequence[TakeoffLine], library: Library, figures: FigureSet
) -> Iterator[Finding]:
    """Yield a finding for each line whose goods do not agree with its need; the tolerances are a table's.

    Goods are held against the need once the job is closed; before that, an order that is too small is told.
    """
    allowed = {what: _tolerance(what, library, figures) for what in (BELOW, ABOVE)}
    for line in takeoff:
        subject = "-".join(line.goods)
        if record.job.status == "closed" and line.covers and line.laid:
            covers, net, need, units = (
                figures.by_id[id].value for id in (line.covers, line.net, line.need, line.laid)
            )
            each = covers / units if units else 0
            if covers < net - _margin(net, each, allowed[BELOW]):
                yield Finding("laid-below-need", subject, (line.covers, line.net))
            elif covers > need + _margin(need, each, allowed[ABOVE]):
                yield Finding("laid-above-need", subject, (line.covers, line.need))
        elif record.job.status != "closed" and line.to_buy and line.planned:
            ordered, buy = figures.by_id[line.planned].value, figures.by_id[line.to_buy].value
            if ordered < buy:
                yield Finding("ordered-below-need", subject, (line.planned, line.to_buy))


def _tolerance(what: str, library: Library, figures: FigureSet) -> tuple[Fraction, Fraction]:
    """Return percent and units of a tolerance, and add the figure that pages state it by."""
    row = library.table("takeoff_tolerance").lookup(what=what)
    id = f"tolerance.{what.replace(' ', '_')}"
    if not figures.get(id):
        percent = row.number("percent")
        figures.measured(id, percent, "percent", "table.takeoff_tolerance", sources=[row.source])
    return Fraction(row.number("percent")), Fraction(row.number("units"))


def _margin(amount: Number, each: Number, tolerance: tuple[Fraction, Fraction]) -> Number:
    percent, units = tolerance
    return max(amount * percent / 100, units * each)
