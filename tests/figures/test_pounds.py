"""Nails by count and by weight: what a product sheet or a box says of nails to the pound."""

import pytest

from tests.support.small_roofs import GABLE
from tests.support.takeoff import TakenOff, taken_off


def bought(line: str) -> TakenOff:
    """The gable with other nails bought; its roofing nails are 3,630, its deck nails 587."""
    start = GABLE.index("bought:")
    return taken_off(f"{GABLE[:start]}bought:\n  - {line}\n")


def test_nails_by_the_pound_show_their_weight_and_whole_pounds() -> None:
    """1-1/2 in roofing nails, product sheet: 165 to the pound. 3,436 without caps are 20.8 lb."""
    found = bought("{id: N, item: nails, use: roofing nails, product: roofing-nails-1-1-2, unit: lb}")
    line = found.line("roofing nails")
    assert found.net("roofing nails") == 859 * 4 + 97 * 2
    assert float(found.value(line.pounds)) == pytest.approx(3630 / 165)
    assert found.figures[line.pounds].sources[-1].locator
    assert found.to_buy("roofing nails") == 22


def test_a_box_shows_the_weight_besides() -> None:
    found = bought(
        "{id: N, item: coil, use: roofing nails, unit: box, pieces_each: 1815, nails_a_pound: 180}"
    )
    line = found.line("roofing nails")
    assert (found.to_buy("roofing nails"), float(found.value(line.pounds))) == (2, pytest.approx(3630 / 180))


def test_the_weight_holds_the_allowance() -> None:
    goods = "{id: N, item: nails, use: deck nails, unit: lb, nails_a_pound: 100, allowance: {percent: 20 %, why: bent}}"
    found = bought(goods)
    # 587 and a fifth are 704.4
    assert float(found.value(found.line("deck nails").pounds)) == pytest.approx(7.044)
    assert found.to_buy("deck nails") == 8


def test_cap_nails_are_weighed_too() -> None:
    goods = "{id: N, item: cap nails, use: cap nails, unit: box, pieces_each: 1000, nails_a_pound: 100}"
    sheet = "{id: F, item: felt, use: underlayment, unit: roll, width_each: 36 in, length_each: 72 ft}"
    found = bought(f"{goods}\n  - {sheet}")
    assert float(found.value(found.line("cap nails").pounds)) == pytest.approx(
        float(found.net("cap nails")) / 100
    )


@pytest.mark.parametrize(
    "line",
    [
        "{id: N, item: coil, use: deck nails, unit: box, pieces_each: 500}",
        # the sheet has no count that was read
        "{id: N, item: coil, use: deck nails, product: deck-nails-ring-shank, unit: box, pieces_each: 500}",
    ],
)
def test_nails_whose_count_nobody_printed_have_no_weight_and_lack_nothing(line: str) -> None:
    found = bought(line).line("deck nails")
    assert (found.pounds, found.missing) == ("", ())


def test_two_boxes_of_different_nails_have_no_one_weight() -> None:
    more = "{id: M, item: coil, use: deck nails, unit: box, pieces_each: 500, nails_a_pound: 120}"
    found = bought(f"{more.replace('M', 'N').replace('120', '140')}\n  - {more}").line("deck nails")
    assert (found.pounds, found.missing) == ("", ())


def test_shingles_are_not_weighed() -> None:
    assert {line.use for line in taken_off(GABLE).lines if line.pounds} == {"roofing nails"}


def test_nails_of_two_sizes_are_bought_apart() -> None:
    found = taken_off(
        GABLE.replace(
            "size: 2-3/8 x 0.113, shank: ring}, edge_spacing",
            "size: 2-1/2 x 0.131, shank: ring}, edge_spacing",
        )
    )
    line = found.line("deck nails")
    assert (line.net, line.to_buy, line.missing) == ("", "", ("one_nail",))
    assert (found.value("renailed.nails"), found.value("takeoff.deck-nails.new")) == (554, 33)
