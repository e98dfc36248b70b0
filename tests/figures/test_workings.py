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
from packet.reference import Library
from packet.workspace import packaged
from tests.support.arithmetic import evaluate
from tests.support.office import Office
from tests.support.records import HIP_ROOF

#: Both sides are floats where a root is taken; they differ by rounding alone.
FLOAT_TOLERANCE = 1e-9

#: Factor from the unit a figure shows to the unit a formula wants.
FACTORS = {("ft_in", "ft"): Fraction(1), ("in", "ft"): Fraction(1, 12), ("ft_in", "in"): Fraction(12)}

#: Numbers that a plane's shape gives, not the tape.
OF_SHAPES: dict[tuple[str, str], int] = {("rectangle", "upper_starts_ft"): 0, ("triangle", "upper_ft"): 0}


@pytest.fixture
def hip(tmp_path: Path) -> Closeout:
    return Office(tmp_path / "hip", HIP_ROOF).closeout()


@pytest.fixture(params=["demo", "hip", "winter"])
def closeout(request: pytest.FixtureRequest) -> Closeout:
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
    assert len(worked) > 40


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
    assert len(named) > 100


def test_no_figure_rests_on_itself(closeout: Closeout) -> None:
    order = list(closeout.figures)
    for figure in closeout.figures.values():
        for term in figure.working.terms if figure.working else ():
            if term.origin.kind == "figure":
                assert order.index(term.origin.ref) < order.index(figure.id)


def test_every_other_term_comes_from_the_record_a_row_or_a_shape(closeout: Closeout) -> None:
    library = Library.load([packaged("shared")])
    assert closeout.record.deck
    sheets = {f"deck.sheets.{sheet.id}" for sheet in closeout.record.deck.sheets}
    for figure in closeout.figures.values():
        for term in figure.working.terms if figure.working else ():
            kind, ref = term.origin.kind, term.origin.ref
            if kind == "record":
                assert ref in sheets, figure.id
                assert term.value == 1
            elif kind == "shape":
                assert term.value == OF_SHAPES[ref, term.symbol]
            elif kind == "rule":
                assert term.value == library.row(ref).value, figure.id
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
