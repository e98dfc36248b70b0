"""Underlayment, ice barrier, tape and caps of small roofs, worked by hand."""

import math
from pathlib import Path

import pytest

from packet.figures.make import make_figures
from packet.figures.rules import facts
from tests.support.office import Office
from tests.support.small_roofs import GABLE, PATCH, PORCH, TEE, with_lines
from tests.support.takeoff import library, taken_off
from tests.support.yamltext import with_value

RAKE_FT = math.sqrt(12**2 + 6**2)
PLANE_SQ_FT = 40 * RAKE_FT
PORCH_SQ_FT = 20 * 10 * math.sqrt(1 + (3 / 12) ** 2)
ROLL = "{id: BARRIER, item: membrane, use: ice barrier, unit: roll, width_each: 36 in, length_each: 60 ft}"

#: The patch in two rectangles, side by side, and one above the other.
SIDE_BY_SIDE = """\
[{id: A1, plane: MS, outline: [[4 ft, 0 ft], [9 ft, 0 ft], [9 ft, 9 ft], [4 ft, 9 ft]]},
     {id: A2, plane: MS, outline: [[9 ft, 0 ft], [14 ft, 0 ft], [14 ft, 9 ft], [9 ft, 9 ft]]}]"""
ONE_ABOVE = """\
[{id: A1, plane: MS, outline: [[4 ft, 0 ft], [14 ft, 0 ft], [14 ft, 4 ft], [4 ft, 4 ft]]},
     {id: A2, plane: MS, outline: [[4 ft, 4 ft], [14 ft, 4 ft], [14 ft, 9 ft], [4 ft, 9 ft]]}]"""


def with_barrier(text: str, barrier: str) -> str:
    return with_lines(with_value(text, "dry_in.ice_barrier", barrier), ROLL)


TAPED = "{product: membrane, up_slope: 6 ft, lap: 6 in}"
ASKED = "{product: membrane, overhang: 12 in, lap: 6 in}"


def test_underlayment_is_counted_plane_by_plane_and_over_the_ridge() -> None:
    found = taken_off(GABLE).parts("takeoff.underlayment.")
    assert float(found["GS"]) == pytest.approx(PLANE_SQ_FT * 36 / 32)
    assert float(found["GS-GN"]) == pytest.approx(2 * 40 * 6 / 12)
    assert found["gives"] == pytest.approx(71.5 * 3)


def test_underlayment_starts_above_an_ice_barrier_as_taped() -> None:
    """6 ft up 40 ft of eave are 240 sq ft of each plane."""
    found = taken_off(with_barrier(GABLE, TAPED))
    assert float(found.value("takeoff.underlayment.GS.open")) == pytest.approx(PLANE_SQ_FT - 240)
    assert float(found.net("underlayment")) == pytest.approx(2 * (PLANE_SQ_FT - 240) * 36 / 32 + 40)


def test_a_barrier_that_was_not_taped_is_as_deep_as_the_rules_ask() -> None:
    """12 in of overhang and 24 in inside the wall, on the slope: 40.25 in are two courses."""
    deep_in = 36 * math.sqrt(1.25)
    found = taken_off(with_barrier(GABLE, ASKED))
    assert found.parts("takeoff.ice-barrier.") == {
        "courses": 2, "GS-EAVE": 80, "GN-EAVE": 80, "net": 160, "to_buy": 3
    }  # fmt: skip
    above = PLANE_SQ_FT - 40 * deep_in / 12
    assert float(found.value("takeoff.underlayment.GN.open")) == pytest.approx(above)


def test_a_taped_depth_comes_before_the_one_asked() -> None:
    both = "{product: membrane, up_slope: 6 ft, overhang: 12 in, lap: 6 in}"
    assert taken_off(with_barrier(GABLE, both)).value("takeoff.ice-barrier.courses") == 3


@pytest.mark.parametrize(
    ("up", "courses"), [("3 ft", 1), ("36-1/8 in", 2), ("5 ft 6 in", 2), ("5 ft 7 in", 3)]
)
def test_courses_are_whole_sheets_with_their_laps(up: str, courses: int) -> None:
    """Sheets of 36 in lapped 6: one reaches 36 in, two 66."""
    found = taken_off(with_barrier(GABLE, TAPED.replace("6 ft", up)))
    assert found.value("takeoff.ice-barrier.courses") == courses


def test_a_barrier_along_named_edges_lies_on_those_alone() -> None:
    found = taken_off(with_barrier(GABLE, TAPED.replace("lap:", "edges: [GS-EAVE], lap:")))
    assert found.net("ice barrier") == 3 * 40
    assert "takeoff.underlayment.GN.open" not in found.figures
    whole, above = PLANE_SQ_FT, PLANE_SQ_FT - 240
    assert float(found.net("underlayment")) == pytest.approx((whole + above) * 36 / 32 + 40)


def test_a_barrier_deeper_than_the_work_leaves_no_underlayment() -> None:
    """The patch is 9 ft up; a barrier of 10 ft covers it all."""
    found = taken_off(with_barrier(PATCH, TAPED.replace("6 ft", "10 ft")))
    assert found.net("underlayment") == 0
    assert found.to_buy("underlayment") == 0


@pytest.mark.parametrize("areas", [SIDE_BY_SIDE, ONE_ABOVE])
def test_two_areas_of_a_plane_lie_on_one_barrier(areas: str) -> None:
    """90 sq ft, of them 3 ft along 10 ft of eave under the barrier, in one piece or in two."""
    text = with_barrier(PATCH, TAPED.replace("6 ft", "3 ft"))
    one, two = taken_off(text), taken_off(with_value(text, "covering.areas", areas))
    assert one.net("underlayment") == two.net("underlayment") == 60 * 36 / 32
    assert one.net("ice barrier") == two.net("ice barrier") == 10


def test_low_slope_is_laid_double_over_a_starter_strip() -> None:
    """36 in shown as 17, a strip of 19 in along 20 ft of eave, 4 in up 20 ft of headwall and a sidewall."""
    found = taken_off(PORCH).parts("takeoff.underlayment.")
    assert float(found["PO"]) == pytest.approx(PORCH_SQ_FT * 36 / 17 + 20 * 19 / 12)
    assert float(found["E3"]) == pytest.approx(20 * 4 / 12)
    assert float(found["E4"]) == pytest.approx(10 * math.sqrt(1 + 1 / 16) * 4 / 12)
    assert float(found["net"]) == pytest.approx(float(found["PO"] + found["E3"] + found["E4"]))


def test_two_areas_of_a_low_plane_have_one_starter_strip() -> None:
    halves = """\
[{id: A1, plane: PO, outline: [[0 ft, 0 ft], [20 ft, 0 ft], [20 ft, 4 ft], [0 ft, 4 ft]]},
     {id: A2, plane: PO, outline: [[0 ft, 4 ft], [20 ft, 4 ft], [20 ft, 8 ft], [0 ft, 8 ft]]}]"""
    found = taken_off(with_value(PORCH, "covering.areas", halves))
    assert float(found.value("takeoff.underlayment.PO")) == pytest.approx(160 * 36 / 17 + 20 * 19 / 12)


def test_a_low_plane_whose_eave_was_not_worked_on_has_no_starter_strip() -> None:
    found = taken_off(PORCH.replace("    - {id: E1, kind: eave, sides: [PO.lower]}\n", ""))
    assert float(found.value("takeoff.underlayment.PO")) == pytest.approx(PORCH_SQ_FT * 36 / 17)


@pytest.mark.parametrize(("pitch", "double"), [("4:12", False), ("3-15/16:12", True)])
def test_low_slope_ends_at_four_in_twelve(pitch: str, double: bool) -> None:
    found = taken_off(with_value(PORCH, "roof.planes.PO.pitch", pitch))
    working = found.figures["takeoff.underlayment.PO"].working
    assert working
    assert ("strip_width_in" in working.formula) is double


def test_layers_that_nobody_typed_are_no_figure_and_no_fact(tmp_path: Path) -> None:
    """The sheet is that of one layer; no page may say that one was recorded."""
    untyped = GABLE.replace("  layers: 1\n", "")
    assert untyped != GABLE
    found = taken_off(untyped)
    assert "dry_in.layers" not in found.figures
    assert found.net("underlayment") == taken_off(GABLE).net("underlayment")
    for name, text, layers in (
        ("untyped", untyped, None),
        ("none", with_value(GABLE, "dry_in.layers", "0"), 0),
        ("one", GABLE, 1),
    ):
        record = Office(tmp_path / name, text).closeout().record
        assert facts(record, make_figures(record, library()), library()).get("underlayment_layers") == layers


def test_two_layers_are_laid_twice_and_run_over_the_ridge_once() -> None:
    found = taken_off(with_value(GABLE, "dry_in.layers", "2"))
    assert float(found.net("underlayment")) == pytest.approx(2 * 2 * PLANE_SQ_FT * 36 / 32 + 40)


def test_a_head_lap_that_was_not_measured_is_the_published_one() -> None:
    """36 in shown as 34."""
    found = taken_off(GABLE.replace("  head_lap: 4 in\n", ""))
    assert float(found.net("underlayment")) == pytest.approx(2 * PLANE_SQ_FT * 36 / 34 + 40)
    assert [source.id for source in found.figures["takeoff.underlayment.GS"].sources] == ["navy-14045"]


def test_an_end_lap_that_was_not_measured_is_the_rules() -> None:
    """4 in of each roll of 72 ft."""
    found = taken_off(GABLE.replace("  end_lap: 6 in\n", ""))
    assert float(found.value("takeoff.underlayment.gives")) == pytest.approx((72 - 4 / 12) * 3)


def test_a_roof_of_two_ridges_runs_over_both() -> None:
    found = taken_off(TEE).parts("takeoff.underlayment.")
    assert (found["GS-GN"], found["WW-WE"]) == (40, 18)


def test_tape_of_an_outline_goes_by_its_own_length_around() -> None:
    """90 sq ft: sides of 2 * 90 * (1/4 + 1/8) = 67.5 ft, less 38 around, halved."""
    found = taken_off(PATCH)
    assert float(found.value("takeoff.joint-tape.A1.perimeter")) == pytest.approx(38)
    assert float(found.net("joint tape")) == pytest.approx(14.75)


def test_tape_of_a_whole_plane_goes_by_its_edges() -> None:
    found = taken_off(GABLE)
    assert float(found.value("takeoff.joint-tape.A1.perimeter")) == pytest.approx(2 * (40 + RAKE_FT))
    assert found.value("takeoff.joint-tape.A1") == found.value("takeoff.joint-tape.A2")


def test_tape_of_a_whole_plane_waits_until_all_of_its_edges_are_known() -> None:
    """The plane of the patch has three of its four."""
    text = with_value(PATCH, "covering.areas", "[{id: A1, plane: MS}]")
    assert taken_off(text).missing("joint tape") == ("edges",)
    whole = text.replace("  old: {", "    - {id: E4, kind: rake, sides: [MS.right]}\n  old: {")
    # 30 by 15 ft: 2 * 450 * 3/8 = 337.5, less 90, halved
    assert float(taken_off(whole).net("joint tape")) == pytest.approx(123.75)


@pytest.mark.parametrize(
    ("way", "layers"), [("self-adhered sheet", "1"), ("two layers of underlayment", "2")]
)
def test_joints_closed_in_another_way_take_no_tape(way: str, layers: str) -> None:
    sealed = with_value(GABLE, "dry_in.sealed_deck.way", way)
    found = taken_off(with_value(sealed, "dry_in.layers", layers))
    assert found.line("joint tape").net == ""


def test_caps_hold_every_course_of_an_outline() -> None:
    """9 ft up are 108 in: 4 courses; 10 ft along are 21 at 6 in, 11 at 12 in, two rows in each course."""
    found = taken_off(PATCH)
    assert float(found.value("takeoff.cap-nails.A1.run")) == pytest.approx(10)
    assert (found.value("takeoff.cap-nails.A1.courses"), found.net("cap nails")) == (4, 5 * 21 + 4 * 2 * 11)


def test_caps_on_a_low_slope_follow_its_own_lap() -> None:
    """10.31 ft up: 123.7 in less 19 over 17 are 6.2, 7 courses; 20 ft are 41 and 21; one row between."""
    found = taken_off(PORCH)
    assert found.value("takeoff.cap-nails.A1.courses") == 7
    assert found.net("cap nails") == 8 * 41 + 7 * 1 * 21


def test_caps_start_above_an_ice_barrier() -> None:
    """Of 13.42 ft up 7.42 are left: 89 in less 4 over 32 are 2.7, 3 courses; 40 ft are 81 and 41."""
    found = taken_off(with_barrier(GABLE, TAPED))
    assert found.value("takeoff.cap-nails.A1.courses") == 3
    assert found.net("cap nails") == 2 * (4 * 81 + 3 * 2 * 41)
    one_side = taken_off(with_barrier(GABLE, TAPED.replace("lap:", "edges: [GS-EAVE], lap:")))
    assert one_side.net("cap nails") == 4 * 81 + 3 * 2 * 41 + 6 * 81 + 5 * 2 * 41


def test_an_area_above_the_eave_holds_its_caps_over_all_of_its_height() -> None:
    """Of the patch in two, only the lower part lies on the barrier of 3 ft: 1 ft of it is left."""
    found = taken_off(
        with_barrier(with_value(PATCH, "covering.areas", ONE_ABOVE), TAPED.replace("6 ft", "3 ft"))
    )
    assert (found.value("takeoff.cap-nails.A1.courses"), found.value("takeoff.cap-nails.A2.courses")) == (
        1,
        2,
    )


def test_a_barrier_over_all_of_the_work_takes_no_caps() -> None:
    found = taken_off(with_barrier(PATCH, TAPED.replace("6 ft", "10 ft")))
    assert (found.line("cap nails").net, found.missing("cap nails")) == ("", ())


def test_a_measured_lap_counts_on_a_low_slope_where_it_is_no_less_than_the_published_one() -> None:
    """A roll of 48 in lapped 25 lies double and shows 23; lapped 4, as elsewhere, 19 counts here."""
    wide = PORCH.replace("width_each: 36 in", "width_each: 48 in")
    for lap, shows in (("25 in", 23), ("4 in", 29)):
        sheet = taken_off(with_value(wide, "dry_in.head_lap", lap)).value("takeoff.underlayment.PO")
        assert float(sheet) == pytest.approx(PORCH_SQ_FT * 48 / shows + 20 * 19 / 12)
