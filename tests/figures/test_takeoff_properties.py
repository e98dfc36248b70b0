"""What holds of the takeoff whatever the measures are."""

from fractions import Fraction
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packet.calc.takeoff import to_buy, with_allowance
from packet.uses import Use
from tests.support.small_roofs import PATCH, TEE, bought_alone
from tests.support.takeoff import TakenOff, taken_off
from tests.support.yamltext import with_value

#: A whole takeoff takes some milliseconds.
FEW = settings(max_examples=25)

amounts = st.fractions(min_value=0, max_value=10**6, max_denominator=64)
units = st.fractions(min_value=Fraction(1, 64), max_value=10**4, max_denominator=64)
sixteenths = st.integers(16, 14 * 192).map(
    lambda n: f"{n // 16} {n % 16}/16 in" if n % 16 else f"{n // 16} in"
)

#: Lines of the patch whose figures a split of the area must leave alone.
WITHOUT_CUTS = (
    "work.area",
    "work.squares",
    "takeoff.shingles.net",
    "takeoff.underlayment.net",
    "disposal.weight",
)


@given(amounts, units)
def test_what_is_bought_is_enough_and_one_less_is_not(need: Fraction, gives: Fraction) -> None:
    bought = to_buy(need, gives)
    assert bought * gives >= need > (bought - 1) * gives or (need == bought == 0)


@given(st.integers(0, 10_000), units)
def test_a_need_of_whole_units_buys_exactly_those(count: int, gives: Fraction) -> None:
    assert to_buy(count * gives, gives) == count
    assert to_buy(float(count * gives), gives) == count


@given(amounts, amounts, units)
def test_a_larger_need_never_buys_less(one: Fraction, other: Fraction, gives: Fraction) -> None:
    small, large = sorted((one, other))
    assert to_buy(small, gives) <= to_buy(large, gives)


@given(amounts, st.integers(0, 60))
def test_an_allowance_of_nothing_is_none_and_one_of_something_is_more(net: Fraction, percent: int) -> None:
    assert with_allowance(net, 0) == net
    assert with_allowance(net, percent) >= net


@FEW
@given(sixteenths)
def test_an_allowance_of_nothing_buys_what_none_buys(up: str) -> None:
    text = patch(up)
    without = taken_off(text)
    nothing = taken_off(with_value(text, "bought.SHINGLES.allowance", "{percent: 0 %, why: none}"))
    assert nothing.need("shingles") == without.net("shingles") == without.need("shingles")
    assert nothing.to_buy("shingles") == without.to_buy("shingles")


@FEW
@given(sixteenths, sixteenths)
def test_a_higher_patch_never_needs_less_of_anything(one: str, other: str) -> None:
    found = [taken_off(patch(up)) for up in (one, other)]
    low, high = sorted(found, key=lambda item: item.value("work.area"))
    needed: tuple[Use, ...] = ("shingles", "underlayment", "cap nails", "roofing nails")
    for use in needed:
        assert low.net(use) <= high.net(use), use
    for use in needed[:3]:
        assert low.to_buy(use) <= high.to_buy(use), use


def patch(up: str, *, cuts: str = "") -> str:
    """Return the patch with another height, whole or cut in two at a height or at a place along the eave."""
    shape = "[[4 ft, 0 ft], [14 ft, 0 ft], [14 ft, {0}], [4 ft, {0}]]"
    return with_value(
        PATCH, "covering.areas", cuts or f"[{{id: A1, plane: MS, outline: {shape.format(up)}}}]"
    )


def rectangle(id: str, left: str, low: str, right: str, top: str) -> str:
    corners = f"[[{left}, {low}], [{right}, {low}], [{right}, {top}], [{left}, {top}]]"
    return f"{{id: {id}, plane: MS, outline: {corners}}}"


@FEW
@given(st.integers(2, 14 * 12 - 2), st.booleans(), st.booleans())
def test_a_patch_in_two_rectangles_needs_what_it_needs_in_one(
    at_in: int, upright: bool, barrier: bool
) -> None:
    """14 ft by 14 ft from the eave, cut upright or level, with and without a barrier below."""
    whole = rectangle("A1", "0 ft", "0 ft", "14 ft", "14 ft")
    if upright:
        two = (
            rectangle("A1", "0 ft", "0 ft", f"{at_in} in", "14 ft"),
            rectangle("A2", f"{at_in} in", "0 ft", "14 ft", "14 ft"),
        )
    else:
        two = (
            rectangle("A1", "0 ft", "0 ft", "14 ft", f"{at_in} in"),
            rectangle("A2", "0 ft", f"{at_in} in", "14 ft", "14 ft"),
        )
    text = (
        with_value(PATCH, "dry_in.ice_barrier", "{product: x, up_slope: 3 ft, lap: 6 in}")
        if barrier
        else PATCH
    )
    one = taken_off(with_value(text, "covering.areas", f"[{whole}]"))
    split = taken_off(with_value(text, "covering.areas", f"[{', '.join(two)}]"))
    for id in WITHOUT_CUTS:
        assert float(split.value(id)) == pytest.approx(float(one.value(id)), rel=1e-12), id


def totals(found: TakenOff) -> dict[Use, tuple[float, ...]]:
    """Return every total of a takeoff, by its line."""
    found_lines = {}
    for line in found.lines:
        ids = (line.net, line.need, line.to_buy, line.planned, line.laid, line.covers)
        values = (float(found.value(id)) if id else -1.0 for id in ids)
        found_lines[line.use] = (float(len(line.missing)), *values)
    return found_lines


SHINGLE_LINES = (
    "{id: A, item: s, use: shingles, unit: bundle, cover_each: 30 sq ft, planned: 2, delivered: 2, allowance: {percent: 5 %, why: a}}",
    "{id: B, item: s, use: shingles, unit: bundle, cover_each: 30 sq ft, planned: 1, delivered: 2, scrap: 1/2, allowance: {percent: 9 %, why: b}}",
    "{id: C, item: s, use: shingles, unit: bundle, cover_each: 30 sq ft, planned: 1, delivered: 1}",
    "{id: F, item: felt, use: underlayment, product: felt-30, unit: roll, planned: 1, delivered: 1}",
    "{id: G, item: felt, use: underlayment, unit: roll, width_each: 36 in, length_each: 72 ft, planned: 1, delivered: 1}",
    "{id: N, item: caps, use: cap nails, unit: box, pieces_each: 100, delivered: 3}",
)


@FEW
@given(st.permutations(SHINGLE_LINES))
def test_the_order_of_the_lines_bought_changes_no_total(lines: list[str]) -> None:
    assert totals(taken_off(bought_alone(PATCH, *lines))) == totals(
        taken_off(bought_alone(PATCH, *SHINGLE_LINES))
    )


def test_the_order_of_the_areas_changes_no_total() -> None:
    """Four planes of a T, in every order."""
    areas = ["{id: A1, plane: GS}", "{id: A2, plane: GN}", "{id: A3, plane: WW}", "{id: A4, plane: WE}"]
    first = totals(taken_off(TEE))
    for turned in permutations(areas):
        again = totals(taken_off(with_value(TEE, "covering.areas", f"[{', '.join(turned)}]")))
        assert again.keys() == first.keys()
        for use, values in again.items():
            assert values == pytest.approx(first[use]), use
