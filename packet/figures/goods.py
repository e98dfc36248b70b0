"""Goods: what went into the roof, and what it covers."""

from packet.calc.takeoff import LAID, laid
from packet.figure import FigureSet
from packet.record.job import JobRecord
from packet.reference import Library

COVER_LAID = "laid * cover_sq_ft"


def goods_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add laid = delivered - returned - left - scrap for each line, and the area it covers."""
    for line in record.bought:
        at = f"bought.{line.id}"
        terms = [figures.as_term(name, f"{at}.{name}") for name in ("delivered", "returned", "left", "scrap")]
        amount = laid(line.delivered, line.returned, line.left, line.scrap)
        figures.computed(
            f"{at}.laid", amount, line.unit, LAID, terms, decimals=0 if amount == int(amount) else 2
        )
        if line.cover_each:
            cover = [
                figures.as_term("laid", f"{at}.laid"),
                figures.as_term("cover_sq_ft", f"{at}.cover_each"),
            ]
            covered = amount * line.cover_each.square_feet
            figures.computed(f"{at}.cover", covered, "sq_ft", COVER_LAID, cover, decimals=1)
