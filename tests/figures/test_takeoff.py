"""Every line of the takeoff of small roofs, worked by hand: need, allowance, what to buy."""

import math
from fractions import Fraction
from typing import get_args

import pytest

from packet.figure import Number
from packet.uses import Use
from tests.support.small_roofs import GABLE, HEAD, PATCH, PORCH, TEE
from tests.support.takeoff import taken_off
from tests.support.yamltext import with_value

#: A rake of 12 ft run at 6 in 12, and the two planes of the gable roof.
RAKE_FT = math.sqrt(12**2 + 6**2)
PLANE_SQ_FT = 40 * RAKE_FT

BARRIER = "{product: self-adhered sheet, up_slope: 6 ft, lap: 6 in}"
ROLL = (
    "\n  - {id: BARRIER, item: membrane, use: ice barrier, unit: roll, width_each: 36 in, length_each: 60 ft}"
)


CLIPS = "\n  - {id: CLIPS, item: clips, use: deck clips, unit: box, pieces_each: 3}"
SECOND = "    - {id: S2, plane: GS, at: [0 ft, 4 ft], along: 8 ft, up: 4 ft, why: rot}\n"


def with_clips(text: str) -> str:
    """A second sheet above the first, both of a panel that spans 20 in with bare edges, on framing at 24 in."""
    text = with_value(text, "deck.panel.span_rating", "24/0")
    text = with_value(text, "deck.panel.thickness", "3/8 in")
    return text.replace("  renailed:", f"{SECOND}  renailed:").rstrip() + CLIPS + "\n"


def with_barrier(text: str) -> str:
    return with_value(text, "dry_in.ice_barrier", BARRIER).rstrip() + ROLL + "\n"


#: Record, net need and what to buy. Each need is the sum beside it.
BY_HAND: dict[Use, tuple[str, float, int]] = {
    # one sheet of 8 by 4 ft, which is one sheet of 32 sq ft
    "deck panels": (GABLE, 32, 1),
    # a sheet across 24 in framing: 2 rows of 9 at 6 in, 3 of 5 at 12 in are 33; 1 new, and 536.7 / 32 * 33 = 553.4 old
    "deck nails": (GABLE, 33 + 554, 2),
    # one joint of 8 ft between two courses, four spaces of 24 in, a clip in each; boxes of 3
    "deck clips": (with_clips(GABLE), 4, 2),
    # two planes: sides 2 * 536.7 * (1/4 + 1/8), less 106.8 ft around, halved; 295.7 ft in rolls of 75
    "joint tape": (GABLE, 2 * (2 * PLANE_SQ_FT * 3 / 8 - 2 * (40 + RAKE_FT)) / 2, 4),
    # 72 in up, courses of 36 lapped 6: the first 36, then 30 and 6 more: 3 on 80 ft; 240 in rolls of 60
    "ice barrier": (with_barrier(GABLE), 3 * 80, 4),
    # 36 in shown as 32, and 6 in from each side over 40 ft of ridge; a roll gives 71.5 ft by 3 ft
    "underlayment": (GABLE, 2 * PLANE_SQ_FT * 36 / 32 + 40, 6),
    # 161 in up are 5 courses: 6 rows of 81 at 6 in, and 2 rows of 41 in each of 5 sheets; two planes
    "cap nails": (GABLE, 2 * (6 * 81 + 5 * 2 * 41), 2),
    # 10 ft pieces that show 9 ft 9 in after the first: 5 on each eave, 2 on each of four rakes
    "drip edge": (GABLE, 2 * 5 + 4 * 2, 18),
    # two valleys, each 8 ft along, 8 ft in and 4 ft up: 12 ft; rolls of 12 ft
    "valley lining": (TEE, 24, 2),
    # 108 in and 48 in at 5 in are 21.6 and 9.6: 22 + 1 and 10 + 1, the old wall none; boxes of 17
    "step flashing": (GABLE, 34, 2),
    # the reused one is not counted
    "pipe boots": (GABLE, 1, 1),
    # two eaves and four rakes; bundles of 105 ft
    "starter": (GABLE, 80 + 4 * RAKE_FT, 2),
    # 1,073 sq ft and a tenth of it: 1,180.6 by 33.3
    "shingles": (GABLE, 2 * PLANE_SQ_FT, 36),
    # 1,073.3 sq ft over 180 sq in are 858.7: 859 of 4; 97 caps of 2; 3,630 at 165 to the pound are 22
    "roofing nails": (GABLE, 859 * 4 + 97 * 2, 22),
    # only the new one high on the roof; 9.5 pieces of 4 ft
    "ridge vent": (GABLE, 38, 10),
    # 480 in at 5 in, and one to finish; 3.2 bundles of 30
    "caps": (GABLE, 97, 4),
    # 22 shingles of 4 spots; a tube of 185
    "cement": (GABLE, 88, 1),
}


@pytest.mark.parametrize("use", BY_HAND)
def test_need_and_purchase_are_those_of_the_hand_sum(use: Use) -> None:
    text, net, to_buy = BY_HAND[use]
    found = taken_off(text, laid_out=use == "deck clips")
    assert float(found.net(use)) == pytest.approx(net, rel=1e-9)
    assert found.to_buy(use) == to_buy
    assert found.missing(use) == ()


def test_every_use_there_is_has_its_hand_sum() -> None:
    assert set(BY_HAND) == set(get_args(Use))


def test_a_need_with_an_allowance_is_a_figure_of_its_own() -> None:
    found = taken_off(GABLE)
    line = found.line("shingles")
    assert (line.net, line.need) == ("takeoff.shingles.net", "takeoff.shingles.need")
    assert float(found.need("shingles")) == pytest.approx(1.1 * 2 * PLANE_SQ_FT)
    assert found.line("caps").need == found.line("caps").net == "takeoff.caps.net"


def test_an_allowance_of_a_published_source_cites_it() -> None:
    text = with_value(GABLE, "bought.SHINGLES.allowance.source", "building-estimating-textbook")
    sources = taken_off(text).figures["takeoff.shingles.need"].sources
    assert [source.id for source in sources] == ["building-estimating-textbook"]


@pytest.mark.parametrize(
    ("use", "cover", "buys"),
    [
        # 32 sq ft by a sheet of 32, of 8, of 16 and a trifle less than 16
        ("deck panels", "32 sq ft", 1),
        ("deck panels", "8 sq ft", 4),
        ("deck panels", "16 sq ft", 2),
        ("deck panels", "15.99 sq ft", 3),
    ],
)
def test_a_need_of_whole_units_buys_just_those(use: Use, cover: str, buys: int) -> None:
    assert taken_off(with_value(GABLE, "bought.PANELS.cover_each", cover)).to_buy(use) == buys


def test_a_root_that_comes_to_whole_units_buys_no_more() -> None:
    """9 in 12 is 5/4: two planes of 40 by 15 ft are 1,200 sq ft, with a tenth 1,320, in bundles of 33."""
    text = with_value(
        with_value(GABLE, "roof.forms.MAIN.pitch", "9:12"), "bought.SHINGLES.cover_each", "33 sq ft"
    )
    assert float(taken_off(text).net("shingles")) == pytest.approx(1200)
    assert taken_off(text).to_buy("shingles") == 40
    assert taken_off(with_value(text, "bought.SHINGLES.cover_each", "32.99 sq ft")).to_buy("shingles") == 41


def test_a_wing_adds_its_planes_valleys_and_ridge_to_the_takeoff() -> None:
    """In plan 480 + 480 - 64 + 2 * 112 sq ft; ridges of 40 and 18 ft; 24 ft of valley."""
    found = taken_off(TEE)
    slope = math.sqrt(1.25)
    assert float(found.net("shingles")) == pytest.approx(1120 * slope)
    # 97 on the ridge; 216 in at 5 in are 43.2: 44 and one to finish
    assert found.parts("takeoff.caps.") == {"GS-GN": 97, "WW-WE": 45, "net": 142, "to_buy": 5}
    assert float(found.net("underlayment")) == pytest.approx(1120 * slope * 36 / 32 + 40 + 18)
    # eaves of 12, 12, 40, 10, 10 ft are 2 + 2 + 5 + 1 + 1; rakes 4 of 2 and 2 of 1
    assert found.net("drip edge") == 11 + 8 + 2


def test_drip_edge_is_counted_run_by_run() -> None:
    found = taken_off(TEE).parts("takeoff.drip-edge.")
    assert (found["GS-EAVE-1"], found["GN-EAVE"], found["WW-EAVE"], found["WW-RAKE"]) == (2, 5, 1, 1)
    assert found["net"] == sum(value for name, value in found.items() if name not in ("net", "to_buy"))


def test_drip_edge_takes_the_lap_of_the_rules_where_none_was_measured() -> None:
    """2 in by the code of 2018: 39 ft 10 in over 9 ft 10 in are 4.05, so 5; and 13.25 over 9.83 are 2."""
    text = with_value(GABLE.replace(", lap: 3 in}", "}"), "basis.code", "irc-2018")
    found = taken_off(text)
    working = found.figures["takeoff.drip-edge.lap"].working
    assert working
    assert [(term.value, term.origin.ref) for term in working.terms] == [(2, "irc-2018-drip-lap")]
    eave = found.figures["takeoff.drip-edge.GS-EAVE"]
    assert eave.working
    assert {term.symbol: term.value for term in eave.working.terms}["lap_ft"] == Fraction(1, 6)
    assert [source.locator for source in eave.sources] == ["R905.2.8.5"]
    assert found.net("drip edge") == 18


def test_a_lap_that_is_only_remembered_counts_no_drip_edge() -> None:
    """The row of 2021 was not read."""
    found = taken_off(GABLE.replace(", lap: 3 in}", "}"))
    assert (found.line("drip edge").net, found.missing("drip edge")) == ("", ("lap",))


def test_step_flashing_is_counted_wall_by_wall() -> None:
    assert taken_off(GABLE).parts("takeoff.step-flashing.C") == {"1": 23, "2": 11}


def test_caps_of_their_own_exposure_are_counted_by_it() -> None:
    """A sheet of an office says 6 in: 480 / 6 + 1; without one they are laid at the shingle's 5 in."""
    assert taken_off(with_value(GABLE, "covering.shingle.exposure", "6 in")).net("caps") == 81


def test_roofing_nails_hold_shingles_alone_where_there_are_no_caps() -> None:
    """90 sq ft of 180 sq in each are 72 shingles of 4 nails; the patch has no ridge."""
    found = taken_off(PATCH)
    assert found.net("roofing nails") == 288
    assert found.figures["takeoff.roofing-nails.net"].sources == ()
    assert taken_off(GABLE).figures["takeoff.roofing-nails.net"].sources[-1].locator == "R905.2.6"


def test_deck_nails_of_new_sheets_and_of_the_old_deck_are_apart() -> None:
    """The new sheet lies on another plane; on the plane nailed again it takes 33 nails off."""
    apart = taken_off(GABLE)
    assert (apart.value("takeoff.deck-nails.new"), apart.value("renailed.nails")) == (33, 554)
    within = taken_off(with_value(GABLE, "deck.sheets.S1.plane", "GN"))
    # 536.66 - 32 are 504.66, by 32 are 15.77 sheets of 33
    assert (within.value("renailed.GN.nails"), within.net("deck nails")) == (521, 33 + 521)


def test_starter_lies_along_the_edges_the_record_names() -> None:
    assert taken_off(with_value(GABLE, "covering.starter_along", "[eave]")).net("starter") == 80
    rakes = taken_off(with_value(GABLE, "covering.starter_along", "[rake]")).net("starter")
    assert float(rakes) == pytest.approx(4 * RAKE_FT)


def test_a_low_slope_covering_takes_no_shingles_and_no_shingle_goods() -> None:
    low = "[{id: L1, plane: GN, product: cap sheet}]"
    found = taken_off(with_value(GABLE, "covering.low_slope", low))
    assert float(found.net("shingles")) == pytest.approx(PLANE_SQ_FT)
    assert float(found.net("starter")) == pytest.approx(40 + 2 * RAKE_FT)
    assert found.line("shingles").planes == ("GS",)
    assert found.line("drip edge").planes == ("GS", "GN")
    assert found.net("drip edge") == 18


def test_disposal_weighs_every_layer_of_the_kind_recorded() -> None:
    """10.733 squares of two layers at 200 lb; 0.9 squares of one at 480 lb."""
    gable, patch = taken_off(GABLE), taken_off(PATCH)
    assert float(gable.value("disposal.weight")) == pytest.approx(2 * PLANE_SQ_FT / 100 * 2 * 200)
    assert float(gable.value("disposal.tons")) == pytest.approx(2 * PLANE_SQ_FT / 100 * 2 * 200 / 2000)
    assert patch.value("disposal.weight") == 432
    assert "disposal.weight" not in taken_off(GABLE.replace(", weighs_as: three-tab", "")).figures


def test_each_line_names_the_planes_it_is_for() -> None:
    planes = {line.use: line.planes for line in taken_off(GABLE).lines}
    assert planes["deck panels"] == ("GS",)
    assert planes["pipe boots"] == ("GN",)
    assert planes["step flashing"] == ("GS",)
    assert planes["deck nails"] == planes["shingles"] == ("GS", "GN")
    assert taken_off(TEE).line("valley lining").planes == ("GS", "WW", "WE")


def test_a_record_without_work_or_goods_has_no_line() -> None:
    assert taken_off(HEAD).lines == ()
    assert {line.use for line in taken_off(PORCH).lines} == {
        "underlayment",
        "cap nails",
        "starter",
        "shingles",
    }


def total(found: dict[str, Number]) -> Number:
    return sum(value for name, value in found.items() if name not in ("net", "need", "to_buy", "gives"))


@pytest.mark.parametrize("use", ["caps", "drip-edge", "step-flashing"])
def test_the_parts_of_a_line_are_its_need(use: str) -> None:
    found = taken_off(GABLE).parts(f"takeoff.{use}.")
    assert total(found) == found["net"]
