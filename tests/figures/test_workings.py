"""Every printed working, computed again from its printed terms by a parser that knows arithmetic alone."""

import math
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from packet.closeout.model import Closeout
from packet.closeout.redact import redact
from packet.figure import Figure, Term
from packet.readers import READERS, Reader
from packet.record.wood import Patch, Sheet
from packet.reference import Library
from packet.workspace import packaged
from tests.support.arithmetic import evaluate
from tests.support.office import Office
from tests.support.records import HIP_ROOF
from tests.support.small_roofs import GABLE, PATCH, PORCH, TEE, with_lines
from tests.support.yamltext import with_value

#: Both sides are floats where a root is taken; they differ by rounding alone.
FLOAT_TOLERANCE = 1e-9

#: Factor from the unit a figure shows to the unit a formula wants.
FACTORS = {
    ("ft_in", "ft"): Fraction(1),
    ("in", "ft"): Fraction(1, 12),
    ("ft_in", "in"): Fraction(12),
    ("ft", "in"): Fraction(12),
}

#: Numbers that a plane's shape gives, not the tape.
OF_SHAPES: dict[tuple[str, str], int] = {("rectangle", "upper_starts_ft"): 0, ("triangle", "upper_ft"): 0}


@pytest.fixture
def hip(tmp_path: Path) -> Closeout:
    return Office(tmp_path / "hip", HIP_ROOF).closeout()


#: Small roofs by name; the last has an ice barrier whose depth the rules ask.
SMALL = {
    "gable": GABLE,
    "tee": TEE,
    "porch": PORCH,
    "patch": PATCH,
    "barrier": with_lines(
        with_value(GABLE, "dry_in.ice_barrier", "{product: membrane, overhang: 12 in, lap: 6 in}"),
        "{id: BARRIER, item: membrane, use: ice barrier, unit: roll, product: self-adhered-200}",
    ),
}


@pytest.fixture(params=["demo", "hip", "winter", *SMALL])
def closeout(request: pytest.FixtureRequest, tmp_path: Path) -> Closeout:
    if request.param in SMALL:
        return Office(tmp_path / "small", SMALL[request.param]).closeout()
    found: Closeout = request.getfixturevalue(request.param)
    return found


def same(left: Any, right: Any) -> bool:
    if isinstance(left, float) or isinstance(right, float):
        return math.isclose(left, right, rel_tol=FLOAT_TOLERANCE, abs_tol=FLOAT_TOLERANCE)
    return Fraction(left) == Fraction(right)


def test_every_working_gives_the_value_of_its_figure(closeout: Closeout) -> None:
    worked = [figure for figure in closeout.figures.values() if figure.working]
    wrong = {
        figure.id: (evaluate(figure.working.formula, values), figure.value)
        for figure in worked
        if figure.working
        and (values := {term.symbol: term.value for term in figure.working.terms})
        and not same(evaluate(figure.working.formula, values), figure.value)
    }
    assert not wrong
    assert len(worked) > 25


def test_no_symbol_stands_for_two_terms(closeout: Closeout) -> None:
    for figure in closeout.figures.values():
        symbols = [term.symbol for term in figure.working.terms] if figure.working else []
        assert len(symbols) == len(set(symbols)), figure.id


def in_unit_of(term: Term, figure: Figure) -> Any:
    if term.unit == figure.unit:
        return figure.value
    return figure.value * FACTORS[figure.unit, term.unit]


def test_every_term_has_the_value_of_the_figure_it_names(closeout: Closeout) -> None:
    named = [
        (figure.id, term)
        for figure in closeout.figures.values()
        if figure.working
        for term in figure.working.terms
        if term.origin.kind == "figure"
    ]
    known = closeout.figures
    wrong = [
        (id, term) for id, term in named if not same(term.value, in_unit_of(term, known[term.origin.ref]))
    ]
    assert not wrong
    assert len(named) > 25


def test_no_figure_rests_on_itself(closeout: Closeout) -> None:
    order = list(closeout.figures)
    for figure in closeout.figures.values():
        for term in figure.working.terms if figure.working else ():
            if term.origin.kind == "figure":
                assert order.index(term.origin.ref) < order.index(figure.id)


def on_patch(term: Term, patch: Sheet | Patch, closeout: Closeout) -> bool:
    """Tell whether a number that a sheet or rot gives lies where it can: on it, or on the way of a cut-out's side."""
    left, low = (float(length.feet) for length in patch.at)
    along, up = float(patch.along.feet), float(patch.up.feet)
    value, name = float(term.value), term.symbol.rstrip("0123456789")
    if name in ("to_ft", "from_ft"):
        return -60 < value < 120
    start, size = {"u": (left, along), "v": (low, up), "mark_ft": (0, max(along, up))}.get(
        name, (0, math.hypot(along, up))
    )
    return start - 1e-6 <= value <= start + size + 1e-6


def test_every_other_term_comes_from_a_place_that_says_it(closeout: Closeout) -> None:
    """Things counted one by one, a shape, a form's corner, a row of a code or table, a product sheet."""
    library, record = Library.load([packaged("shared")]), closeout.record
    counted = {f"deck.sheets.{sheet.id}" for sheet in record.deck.sheets} if record.deck else set()
    counted |= {f"details.{item.id}" for item in record.details}
    forms = {form.id for form in record.roof.forms} if record.roof else set()
    deck = record.deck
    patches = (
        {sheet.id: sheet for sheet in deck.sheets} | {c.id: c.rot for c in deck.cut_outs} if deck else {}
    )
    for figure in closeout.figures.values():
        for term in figure.working.terms if figure.working else ():
            kind, ref = term.origin.kind, term.origin.ref
            if kind == "record":
                assert ref in counted, figure.id
                assert term.value == 1
            elif kind == "shape" and ref in patches:
                assert on_patch(term, patches[ref], closeout), figure.id
            elif kind == "shape":
                assert term.value == OF_SHAPES[ref, term.symbol]
            elif kind == "rule":
                assert term.value == library.row(ref).value, figure.id
            elif kind == "form":
                assert ref in forms, figure.id
            elif kind == "unit":
                assert (term.value, ref) == (1, "piece"), figure.id
                assert figure.unit == "piece"
            elif kind == "table":
                cells = [cell for row in library.table(ref).rows for cell in row.cells.values()]
                assert term.value in cells, figure.id
            elif kind == "product":
                id, _, name = ref.partition(".")
                assert term.value == library.product(id).figures[name].value, figure.id
            else:
                assert kind == "figure", figure.id


def test_a_measured_figure_names_its_place_and_a_computed_one_its_working(closeout: Closeout) -> None:
    for figure in closeout.figures.values():
        assert bool(figure.origin) != bool(figure.working), figure.id


@pytest.mark.parametrize("reader", READERS)
def test_workings_as_written_to_the_packet_give_their_values(closeout: Closeout, reader: Reader) -> None:
    figures: Mapping[str, Any] = redact(closeout, reader)["figures"]
    for id, figure in figures.items():
        if figure["working"]:
            terms = figure["working"]["terms"]
            again = evaluate(figure["working"]["formula"], {term["symbol"]: term["value"] for term in terms})
            assert math.isclose(again, figure["value"], rel_tol=FLOAT_TOLERANCE, abs_tol=FLOAT_TOLERANCE), id
            for term in terms:
                assert term["origin"]["kind"] != "figure" or term["origin"]["ref"] in figures, id
