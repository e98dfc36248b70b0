"""A hip roof computed by hand: 40 by 24 ft, 7 in 12, a porch of 2-1/2 in 12."""

import math
from fractions import Fraction
from pathlib import Path

import pytest

from packet.closeout.model import Closeout
from tests.support.office import Office
from tests.support.records import HIP_ROOF

#: Hand sums are carried to four figures.
BY_HAND = 5e-4

SLOPE = math.sqrt(1 + (7 / 12) ** 2)
HIP_FT = math.sqrt(12**2 + (12 * SLOPE) ** 2)


@pytest.fixture
def hip(tmp_path: Path) -> Closeout:
    return Office(tmp_path / "hip", HIP_ROOF).closeout()


@pytest.mark.parametrize(
    ("id", "expected"),
    [
        ("plane.HS.plan_area", 28 * 12),
        ("plane.HS.area", 28 * 12 * SLOPE),
        ("plane.HW.plan_area", 12 * 12),
        ("plane.HW.area", 12 * 12 * SLOPE),
        ("plane.PORCH.plan_area", 12.5833 * 6.125),
        ("opening.CHIM.area", 6.1667 * 5.25),
        ("plane.HN.net_area", 28 * 12 * SLOPE - 6.1667 * 5.25),
        ("edge.H1.length", HIP_FT),
        ("edge.H4.length", HIP_FT),
        ("edges.hip.length", 4 * HIP_FT),
        ("edge.P1.length", 6.125 * math.sqrt(1 + (2.5 / 12) ** 2)),
        ("roof.ridge_height", 10.2917 + 7),
        ("roof.mean_height", 10.2917 + 3.5),
        ("basis.wind_nominal", 117 * math.sqrt(0.6)),
        ("sheet.D1.area", 7.97917 * 3.84375),
        ("area.A1.area", 12 * 13.875),
        ("takeoff.cement.net", 102),
        ("bought.B1.laid", 9 - 1 / 3),
        ("covering.nail.in_deck", 1.75 - 0.31),
    ],
)
def test_figure_matches_the_hand_sum(hip: Closeout, id: str, expected: float) -> None:
    assert float(hip.figures[id].value) == pytest.approx(expected, rel=BY_HAND)


def test_whole_roof_deducts_the_chimney_but_not_the_skylight(hip: Closeout) -> None:
    porch = 12.5833 * 6.125 * math.sqrt(1 + (2.5 / 12) ** 2)
    whole = 40 * 24 * SLOPE + porch - 6.1667 * 5.25
    assert float(hip.figures["roof.area"].value) == pytest.approx(whole, rel=BY_HAND)
    assert "opening.SKY.area" not in str(hip.figures["plane.HN.net_area"].working)


def test_a_side_a_shape_gives_is_named_as_the_shapes_and_not_as_taped(hip: Closeout) -> None:
    working = hip.figures["edge.P1.length"].working
    assert working
    starts = next(term for term in working.terms if term.symbol == "upper_starts_ft")
    assert (starts.origin.kind, starts.origin.ref, starts.value) == ("shape", "rectangle", Fraction(0))


def test_an_edge_is_counted_once_though_two_planes_share_it(hip: Closeout) -> None:
    working = hip.figures["edges.hip.length"].working
    assert working
    assert [term.origin.ref for term in working.terms] == [f"edge.H{n}.length" for n in range(1, 5)]
