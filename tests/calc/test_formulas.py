"""Each calculator's printed formula gives what the calculator gives, over its whole domain."""

import inspect
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

import packet.calc
from packet.calc import (
    cement,
    fasteners,
    geometry,
    ice_barrier,
    polygon,
    slope,
    takeoff,
    ventilation,
    wind,
)
from packet.calc.domain import OutOfRange
from tests.calc.test_docstrings import CALCULATORS, modules
from tests.support.arithmetic import evaluate, names

F = Fraction


def sixteenths(least: int, most: int) -> st.SearchStrategy[Fraction]:
    return st.integers(least * 16, most * 16).map(lambda n: F(n, 16))


FEET = sixteenths(1, 200)
ANY_FEET = sixteenths(-100, 100)
INCHES = sixteenths(1, 60)
RISE = sixteenths(0, 24)
AREA = st.one_of(sixteenths(0, 20_000), st.floats(0, 20_000))
COUNT = st.integers(1, 5_000)
SMALL_LAP = st.integers(0, 15).map(lambda n: F(n, 16))

#: Values for each argument name, wherever it stands.
VALUES: dict[str, st.SearchStrategy[Fraction | int | float]] = {
    "area_sq_ft": AREA,
    "cover_sq_ft": sixteenths(15, 40),
    "roll_cover_sq_ft": sixteenths(100, 1000),
    "bundles_a_square": st.integers(3, 5),
    "rise": RISE,
    "upper_starts_ft": ANY_FEET,
    "upper_ft": sixteenths(0, 200),
    "lap_ft": SMALL_LAP,
    "head_lap_in": SMALL_LAP,
    "lap_in": SMALL_LAP,
    "end_lap_in": SMALL_LAP,
    "height_in": sixteenths(60, 90),
    "over_half_in": sixteenths(0, 0),
    "percent": sixteenths(0, 40),
    "squares": sixteenths(0, 200),
    "layers": st.integers(0, 3),
    "deck_in": st.integers(4, 23).map(lambda n: F(n, 32)),
    "ultimate_mph": st.integers(80, 250),
    "nails_a_pound": st.integers(80, 350),
    "spots_each": st.integers(1, 8),
    "nails_each": st.integers(1, 8),
    "caps_a_strip": st.integers(1, 4),
    "eave_height_ft": sixteenths(7, 20),
    "ridge_height_ft": sixteenths(20, 60),
    "delivered": sixteenths(30, 100),
    "returned": sixteenths(0, 10),
    "left": sixteenths(0, 10),
    "scrap": sixteenths(0, 10),
    "sheets": st.integers(1, 30),
    "attic_sq_ft": AREA,
    "vents_sq_in": sixteenths(1, 5000),
    "high_sq_in": sixteenths(0, 5000),
    "all_sq_in": sixteenths(1, 5000),
    "each_sq_in": sixteenths(0, 200),
    "foot_sq_in": sixteenths(0, 40),
    "ratio": st.sampled_from([150, 300]),
    "below_top_ft": sixteenths(0, 15),
    "overdriven": st.integers(0, 90),
    "driven": st.integers(90, 500),
    "added_for_each_two": st.integers(0, 2),
    "share": st.integers(1, 15).map(lambda n: F(n, 16)),
    "specific_gravity": st.integers(31, 73).map(lambda n: F(n, 100)),
}


def values_of(name: str) -> st.SearchStrategy[Fraction | int | float]:
    if name in VALUES:
        return VALUES[name]
    return {"ft": FEET, "in": INCHES}.get(name.rsplit("_", 1)[-1], COUNT)


#: Every module of calculators; a package only names again what its modules hold.
MODULES = [module for module in modules(packet.calc) if not hasattr(module, "__path__")]


def formula_of(function: Callable[..., object]) -> str | None:
    found = getattr(inspect.getmodule(function), function.__name__.upper(), None)
    return found if isinstance(found, str) else None


WITH_FORMULA = {name: f for name, f in CALCULATORS.items() if formula_of(f) is not None}

#: Calculators whose answer is a shape, a place, a claim or a choice, or which write their own formula.
WITHOUT_FORMULA = {
    "packet.calc.access": {"fall_word", "is_steep", "lead_word", "asbestos_word"},
    "packet.calc.deck.cutout": {"cut_out"},
    "packet.calc.deck.edge_support": {"span_rating", "edge_support_needed", "clips_needed"},
    "packet.calc.deck.framing": {"framing_lines", "supports", "widest_space"},
    "packet.calc.deck.joints": {
        "course_joints",
        "end_joints",
        "ends_in_line",
        "strength_up_the_slope",
        "members_between",
    },
    "packet.calc.deck.marks": {"corners_kept", "place_on_sheet"},
    "packet.calc.deck.nail_names": {"names_of", "sold_as", "identifies_one"},
    "packet.calc.deck.nails": {"nail_rows"},
    "packet.calc.deck.overdriven": {"finding_of", "remedy"},
    "packet.calc.deck.pieces": {"piece"},
    "packet.calc.domain": {"above_zero", "zero_or_more", "lap_below_piece"},
    "packet.calc.fasteners.nail_length": {"least_nail_length", "least_nail_length_formula"},
    "packet.calc.form_edges": {"edges"},
    "packet.calc.forms": {"block", "wing", "planes"},
    "packet.calc.geometry": {
        "rectangle",
        "triangle",
        "level_outline",
        "level_from_slope",
        "slope_outline",
        "side_lengths",
    },
    "packet.calc.plan": {
        "bearing",
        "place",
        "level_to_plan",
        "slope_to_plan",
        "plan_outline",
        "placed_side",
        "compare_sides",
    },
    "packet.calc.polygon": {
        "polygon_area",
        "counterclockwise",
        "polygon_area_formula",
        "rectangle_at",
        "distance",
        "holds_point",
        "holds_outline",
        "is_simple",
        "lies_along",
        "lies_on_a_line",
        "overlapping",
        "polygon",
    },
    "packet.calc.slope": {"eave_height_governs"},
}


def test_every_calculator_of_a_number_has_its_formula_beside_it() -> None:
    without = {name for name in CALCULATORS if name not in WITH_FORMULA}
    assert without == {f"{module}.{name}" for module, known in WITHOUT_FORMULA.items() for name in known}


def test_every_formula_belongs_to_a_calculator() -> None:
    formulas = {
        f"{module.__name__}.{name.lower()}"
        for module in MODULES
        for name, value in vars(module).items()
        if name.isupper() and isinstance(value, str)
    }
    assert formulas == set(WITH_FORMULA)


@pytest.mark.parametrize("name", WITH_FORMULA)
def test_a_formula_speaks_in_the_names_of_the_arguments(name: str) -> None:
    function = WITH_FORMULA[name]
    assert names(formula_of(function) or "") == set(inspect.signature(function).parameters)


@pytest.mark.parametrize("name", WITH_FORMULA)
@given(data=st.data())
def test_the_formula_gives_what_the_calculator_gives(name: str, data: st.DataObject) -> None:
    function = WITH_FORMULA[name]
    values = {
        symbol: data.draw(values_of(symbol), symbol) for symbol in inspect.signature(function).parameters
    }
    value = function(**values)
    assert isinstance(value, int | float | Fraction)
    by_formula = evaluate(formula_of(function) or "", values)
    if isinstance(value, float) or isinstance(by_formula, float):
        assert float(by_formula) == pytest.approx(float(value), rel=1e-12, abs=1e-12)
    else:
        assert by_formula == value


@given(INCHES, st.integers(4, 40).map(lambda n: F(n, 32)))
def test_the_nail_formula_is_the_one_for_the_deck(above_in: Fraction, deck_in: Fraction) -> None:
    formula = fasteners.least_nail_length_formula(deck_in)
    given_values = {"above_in": above_in, "deck_in": deck_in}
    values = {symbol: given_values[symbol] for symbol in names(formula)}
    assert evaluate(formula, values) == fasteners.least_nail_length(above_in, deck_in)


@given(st.lists(st.tuples(ANY_FEET, ANY_FEET), min_size=3, max_size=20))
def test_the_polygon_formula_gives_the_area(corners: list[tuple[Fraction, Fraction]]) -> None:
    ordered = polygon.counterclockwise(corners)
    values = {f"{axis}{n}": c[i] for n, c in enumerate(ordered, 1) for i, axis in enumerate("uv")}
    assert evaluate(polygon.polygon_area_formula(len(ordered)), values) == polygon.polygon_area(corners)


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: takeoff.bundles(100, 0),
        lambda: takeoff.bundles(-1, 33),
        lambda: takeoff.bundles(float("nan"), 33),
        lambda: takeoff.bundles(float("inf"), 33),
        lambda: takeoff.drip_edge_pieces(10, 2, 2),
        lambda: takeoff.drip_edge_pieces(0, 10, 0),
        lambda: takeoff.roll_cover(72, 36, 36),
        lambda: takeoff.laid(1, 2, 0, 0),
        lambda: takeoff.with_allowance(100, -5),
        lambda: takeoff.to_buy(100, 0),
        lambda: takeoff.to_buy(-1, 10),
        lambda: takeoff.roll_cover(1, 36, 2, 12),
        lambda: takeoff.sheet_area(100, 36, 36),
        lambda: takeoff.low_slope_sheet_area(100, 10, strip_width_in=0),
        lambda: takeoff.low_slope_sheet_area(100, -1),
        lambda: takeoff.half_sheet_lap(36, 18),
        lambda: takeoff.over_ridge_area(-1, 6),
        lambda: takeoff.up_wall_area(10, -4),
        lambda: takeoff.joints_to_tape(100, -1),
        lambda: takeoff.joints_to_tape(100, 40, 0),
        lambda: takeoff.valley_pieces(10, 1, 1),
        lambda: takeoff.lapped_length(10, 0, 1),
        lambda: takeoff.ridge_vent_pieces(10, 0),
        lambda: takeoff.top_lap(5, 6),
        lambda: takeoff.disposal_weight(10, -1, 250),
        lambda: takeoff.tons(-1),
        lambda: takeoff.dead_load(1, -250),
        lambda: cement.cartridge_volume(0),
        lambda: cement.spots_in_cartridge(18, 1, 0),
        lambda: cement.bead_length(18, 0),
        lambda: cement.cement_on_area(100, -1),
        lambda: fasteners.sheet_nails(8, 4, 0, edge_spacing_in=6, field_spacing_in=12),
        lambda: fasteners.sheet_nails(0, 4, 24, edge_spacing_in=6, field_spacing_in=12),
        lambda: ice_barrier.barrier_length(40, 0),
        lambda: takeoff.step_flashing_pieces(1, 0),
        lambda: fasteners.nail_length_thin_deck(F(1, 4), F(3, 4)),
        lambda: fasteners.pounds(1, 0),
        lambda: fasteners.field_rows(36, 36, 12),
        lambda: ice_barrier.depth_from_outside_face(-1, 24, 6),
        lambda: slope.slope_factor(-1),
        lambda: slope.mean_roof_height(16, 10),
        lambda: geometry.Shape(0, 1, 0, 1, 6),
        lambda: geometry.Shape(1, 1, float("nan"), 1, 6),
        lambda: polygon.polygon_area([(0, 0), (1, 1)]),
        lambda: polygon.polygon_area_formula(2),
        lambda: wind.nominal_speed(0),
        lambda: ice_barrier.reach_past_outside_face(72, -1, 6),
        lambda: ventilation.free_area_of_pieces(-1, 50),
        lambda: ventilation.free_area_of_run(32, -18),
        lambda: ventilation.required_free_area(1500, 0),
        lambda: ventilation.attic_to_vents(1500, 0),
        lambda: ventilation.share_of_area(360, 0),
        lambda: ventilation.height_above_eaves(16, 10, -1),
    ],
)
def test_a_value_outside_the_formula_s_range_is_refused(wrong: Callable[[], object]) -> None:
    with pytest.raises(OutOfRange):
        wrong()
