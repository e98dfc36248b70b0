"""Goods: what went into the roof, and what it covers."""

from fractions import Fraction

from packet.calc.takeoff import laid
from packet.figure import FigureSet
from packet.record.goods import Bought
from packet.record.job import JobRecord
from packet.reference import Library

COVER_LAID = "laid * cover_sq_ft"


def goods_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add laid = delivered - returned - left - scrap for each line, and the area it covers."""
    for line in record.bought:
        at = f"bought.{line.id}"
        came = _came(line, figures)
        if came is None:
            continue
        went = {name: getattr(line, name) for name in ("returned", "left", "scrap")}
        rest = [figures.as_term(name, f"{at}.{name}") for name, value in went.items() if value is not None]
        terms = [figures.as_term("delivered", came), *rest]
        amount = laid(Fraction(terms[0].value), **{name: value or 0 for name, value in went.items()})
        formula = " - ".join(item.symbol for item in terms)
        figures.computed(
            f"{at}.laid", amount, line.unit, formula, terms, decimals=0 if amount == int(amount) else 2
        )
        if line.cover_each:
            cover = [
                figures.as_term("laid", f"{at}.laid"),
                figures.as_term("cover_sq_ft", f"{at}.cover_each"),
            ]
            covered = amount * line.cover_each.square_feet
            figures.computed(f"{at}.cover", covered, "sq_ft", COVER_LAID, cover, decimals=1)


def _came(line: Bought, figures: FigureSet) -> str | None:
    """Return the figure of what was delivered, as typed or all deliveries together; None for neither."""
    at = f"bought.{line.id}"
    if line.delivered is not None:
        return f"{at}.delivered"
    if not line.deliveries:
        return None
    terms = [
        figures.as_term(f"part_{number}", f"{at}.deliveries.{delivery.id}.quantity")
        for number, delivery in enumerate(line.deliveries, 1)
    ]
    formula, total = " + ".join(item.symbol for item in terms), sum(item.value for item in terms)
    decimals = 0 if total == int(total) else 2
    figures.computed(f"{at}.delivered", total, line.unit, formula, terms, decimals=decimals)
    return f"{at}.delivered"
