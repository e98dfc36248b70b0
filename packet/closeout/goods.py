"""What is wrong with lines bought: products that are not there, or lack the figure that is needed."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Any

from packet.figure import DECIDING_MARKS
from packet.figures.takeoff import TakeoffLine
from packet.figures.takeoff.ground import UNITS, WRAPPER, states
from packet.problems import Problem, nearest
from packet.reading import ReadFile
from packet.record.goods import Bought
from packet.record.job import JobRecord
from packet.reference import Library
from packet.reference.products import ProductFigure
from packet.units import Length, fraction_text
from packet.uses import Use

SOME = "1 or more"


def product_problems(record: ReadFile[JobRecord], library: Library) -> Iterator[Problem]:
    """Find products and sources that are not there, and products of another use or unit."""
    known = library.product_ids()
    for number, line in enumerate(record.value.bought):
        at = ("bought", number)
        if line.allowance and line.allowance.source and line.allowance.source not in library.source_ids():
            id = line.allowance.source
            near = nearest(id, library.source_ids()) or ""
            yield record.problem("unknown-source", (*at, "allowance", "source"), id, nearest=near)
        if line.product is None:
            continue
        if line.product not in known:
            near = nearest(line.product, known) or ""
            fits = (id for id in known if line.use is None or library.product(id).use == line.use)
            accepted = ", ".join(fits)
            yield record.problem(
                "unknown-product", (*at, "product"), line.product, nearest=near, accepted=accepted or "none"
            )
            continue
        product = library.product(line.product)
        if product.unit != line.unit:
            yield record.problem("product-unit", (*at, "unit"), line.unit, accepted=product.unit)
    yield from _exposure(record, library)
    yield from _laps(record, library)
    yield from _nothing_each(record)


def _exposure(record: ReadFile[JobRecord], library: Library) -> Iterator[Problem]:
    """Find an exposure laid that a piece does not allow; a remembered limit decides nothing.

    No piece is laid at more than half its own height: what lies under it would then be covered once.
    """
    covering, known = record.value.covering, library.product_ids()
    lines = [line for line in record.value.bought if line.use == "shingles" and line.product in known]
    limits: list[tuple[Fraction, str]] = []
    for line in lines:
        figures = library.product(str(line.product)).figures
        given = ((figures.get("most_exposure_in"), 1), (figures.get("height_in"), 2))
        limits += [
            (limit.value / part, str(line.product)) for limit, part in given if limit and _decides(limit)
        ][:1]
    if not covering or not covering.shingle or not limits:
        return
    most, product = min(limits)
    if covering.shingle.exposure.inches > most:
        accepted = f"at most {fraction_text(most)} in, by the product sheet {product}"
        loc, found = ("covering", "shingle", "exposure"), covering.shingle.exposure.text
        yield record.problem("exposure-too-large", loc, found, accepted=accepted)


#: Laps that a record gives, each with the use of the goods and the figure of a piece it must be less than.
LAPS: tuple[tuple[tuple[str, ...], Use, str], ...] = (
    (("dry_in", "head_lap"), "underlayment", "width_in"),
    (("dry_in", "end_lap"), "underlayment", "length_ft"),
    (("dry_in", "ice_barrier", "lap"), "ice barrier", "width_in"),
    (("drip_edge", "lap"), "drip edge", "length_ft"),
)


def _laps(record: ReadFile[JobRecord], library: Library) -> Iterator[Problem]:
    """Find laps that leave nothing of the piece they are on."""
    for loc, use, name in LAPS:
        lap: Any = record.value
        for step in loc:
            lap = getattr(lap, step, None)
        lines = [line for line in record.value.bought if line.use == use]
        pieces = [(size, line.id) for line in lines if (size := _size_in(line, name, library)) is not None]
        if lap is None or not pieces or lap.inches < min(pieces)[0]:
            continue
        least, id = min(pieces)
        accepted = f"less than {fraction_text(least)} in, which a piece of {id} is"
        yield record.problem("out-of-range", loc, lap.text, accepted=accepted)


def _size_in(line: Bought, name: str, library: Library) -> Fraction | None:
    """Return the width or length of a piece [in], from the wrapper, else from the product sheet."""
    printed: Length | None = getattr(line, WRAPPER[name])
    if printed:
        return printed.inches
    known = line.product is not None and line.product in library.product_ids()
    figure = library.product(str(line.product)).figures.get(name) if known else None
    return figure.value * (12 if name == "length_ft" else 1) if figure else None


def _nothing_each(record: ReadFile[JobRecord]) -> Iterator[Problem]:
    """Find counts of nothing: a bundle without a piece in it, a shingle without a nail."""
    for number, line in enumerate(record.value.bought):
        for name in ("pieces_each", "nails_a_pound"):
            if getattr(line, name) == 0:
                yield record.problem("out-of-range", ("bought", number, name), "0", accepted=SOME)
    if record.value.covering and record.value.covering.nails_each == 0:
        yield record.problem("out-of-range", ("covering", "nails_each"), "0", accepted=SOME)


def _decides(figure: ProductFigure) -> bool:
    return figure.source.checked in DECIDING_MARKS


def missing_figures(
    record: ReadFile[JobRecord], takeoff: Sequence[TakeoffLine], library: Library
) -> Iterator[Problem]:
    """Find products that lack a figure their line needs, and whose wrapper gives none either."""
    numbers = {line.id: number for number, line in enumerate(record.value.bought)}
    for item in takeoff:
        for name in (name for name in item.missing if name in UNITS):
            for id in item.goods:
                line = record.value.bought[numbers[id]]
                if line.product and not states(line, name, library):
                    key = WRAPPER.get(name, "")
                    values = {"figure": name, "use": item.use, "key": key}
                    yield record.problem(
                        "figure-needed", ("bought", numbers[id], "product"), line.product, **values
                    )
