"""Attic ventilation: the free area of each line of vents, high and low, and what the rules ask."""

from collections.abc import Sequence
from fractions import Fraction

from packet.calc import ventilation as calc
from packet.figure import FigureSet, Number, term
from packet.figures.roof import add_up
from packet.figures.rules import code_ids, facts
from packet.figures.shapes import feet
from packet.record.air import Vent, Ventilation
from packet.record.job import JobRecord
from packet.reference import CodeRow, Library

ASKED, REDUCED = "ventilation.ratio", 300


def air_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add free areas, shares, the areas asked at each ratio, and the one that holds for this job."""
    attic = record.ventilation
    if attic is None:
        return
    for vent in open_vents(attic):
        _add_free_area(vent, figures)
    for place in ("high", "low"):
        _sum(f"ventilation.{place}", [vent for vent in open_vents(attic) if vent.place == place], figures)
    _sum("ventilation.total", open_vents(attic), figures)
    _height_of_high_vents(attic, figures)
    _share("ventilation.high_of_all", "ventilation.total", figures)
    if attic.attic_area is None:
        return
    _ratio(figures)
    rules = [row for row in library.all_rows(code_ids(record)) if row.asks == ASKED and row.value]
    for ratio, row in {_ratio_of(row): row for row in reversed(rules)}.items():
        _required(f"ventilation.required_{ratio}", row, library, figures)
    _share("ventilation.high_share", f"ventilation.required_{REDUCED}", figures)
    found = library.match(code_ids(record), ASKED, facts(record, figures, library)).rows
    holding = sorted((row for row in found if row.may_decide), key=_ratio_of)
    if holding:
        _required("ventilation.required", holding[0], library, figures)


def open_vents(attic: Ventilation) -> list[Vent]:
    """Return the vents that air can pass; closed ones count nothing."""
    return [vent for vent in attic.vents if vent.state != "closed"]


def free_area(vent: Vent) -> Number | None:
    """Return the free area of a line [sq in]; None where it is unknown.

    Without a count nobody can tell it, nor with both a count and a run: the printed area is of one of them.
    """
    if vent.free_sq_in_each is None or bool(vent.pieces) == bool(vent.length):
        return None
    if vent.length:
        return calc.free_area_of_run(feet(vent.length), vent.free_sq_in_each)
    return calc.free_area_of_pieces(vent.pieces or 0, vent.free_sq_in_each)


def _add_free_area(vent: Vent, figures: FigureSet) -> None:
    area = free_area(vent)
    if area is None:
        return
    at = f"ventilation.vents.{vent.id}"
    if vent.length:
        formula, each = calc.FREE_AREA_OF_RUN, "foot_sq_in"
        amount = figures.as_term("length_ft", f"{at}.length", feet(vent.length), "ft")
    else:
        formula, each = calc.FREE_AREA_OF_PIECES, "each_sq_in"
        amount = figures.as_term("pieces", f"{at}.pieces")
    terms = [amount, figures.as_term(each, f"{at}.free_sq_in_each")]
    figures.computed(f"vent.{vent.id}.area", area, "sq_in", formula, terms)


def _sum(id: str, vents: Sequence[Vent], figures: FigureSet) -> None:
    """Add the free area of several lines; one that is unknown leaves the sum unknown."""
    parts = [f"vent.{vent.id}.area" for vent in vents]
    if parts and all(figures.get(part) for part in parts):
        add_up(figures, id, "sq_in", parts, decimals=0)


def _height_of_high_vents(attic: Ventilation, figures: FigureSet) -> None:
    """Add the depth of the lowest of the high vents below the top, and its height above the eaves."""
    high = [vent for vent in open_vents(attic) if vent.place == "high"]
    depths = [(feet(vent.below_top), vent.id) for vent in high if vent.below_top]
    if not high or len(depths) < len(high):
        return
    depth, id = max(depths)
    lowest = figures.as_term("below_top_ft", f"ventilation.vents.{id}.below_top", depth, "ft")
    figures.computed("ventilation.high_below_top", depth, "ft", lowest.symbol, [lowest], decimals=1)
    ridge, eave = figures.get("roof.ridge_height"), figures.get("roof.eave_height")
    if ridge and eave:
        terms = [
            figures.as_term("ridge_height_ft", ridge.id),
            figures.as_term("eave_height_ft", eave.id, eave.value / 12 if eave.unit == "in" else None, "ft"),
            figures.as_term("below_top_ft", "ventilation.high_below_top"),
        ]
        height = calc.height_above_eaves(*(item.value for item in terms))
        formula = calc.HEIGHT_ABOVE_EAVES
        figures.computed("ventilation.high_above_eaves", height, "ft", formula, terms, decimals=1)


def _share(id: str, whole: str, figures: FigureSet) -> None:
    all_of_it = figures.get(whole)
    if figures.get("ventilation.high") and all_of_it and all_of_it.value:
        terms = [
            figures.as_term("high_sq_in", "ventilation.high"),
            figures.as_term("all_sq_in", whole),
        ]
        share = calc.share_of_area(terms[0].value, terms[1].value)
        figures.computed(id, share, "percent", calc.SHARE_OF_AREA, terms, decimals=1)


def _ratio(figures: FigureSet) -> None:
    total = figures.get("ventilation.total")
    if total and total.value:
        terms = [
            figures.as_term("attic_sq_ft", "ventilation.attic_area"),
            figures.as_term("vents_sq_in", total.id),
        ]
        ratio = calc.attic_to_vents(terms[0].value, terms[1].value)
        figures.computed(ASKED, ratio, "to_one", calc.ATTIC_TO_VENTS, terms, decimals=1)


def _ratio_of(row: CodeRow) -> Fraction:
    return Fraction(row.value)  # type: ignore[arg-type]


def _required(id: str, row: CodeRow, library: Library, figures: FigureSet) -> None:
    attic = figures.as_term("attic_sq_ft", "ventilation.attic_area")
    ratio = term("ratio", _ratio_of(row), row.unit, "rule", row.id)
    area = calc.required_free_area(attic.value, ratio.value)
    source = library.source(row)
    figures.computed(id, area, "sq_in", calc.REQUIRED_FREE_AREA, [attic, ratio], sources=[source])
