"""Edges of whole roofs: each counted once, at the same place on both of its planes, as long as by hand."""

import math
from collections import Counter
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from packet.calc.form_edges import FormEdge, edges
from packet.calc.forms import Block, FormPlane, Side, planes, wing
from tests.calc.test_forms import SIDES, any_roof, wings_below_the_ridge
from tests.support.whole_roofs import (
    LENGTHS,
    RISES,
    ByHand,
    factor,
    gable,
    hip,
    in_space,
    lengths,
    main_roof,
    tee,
    totals,
)
from tests.support.whole_roofs import (
    length as edge_length,
)

F = Fraction
OWN = {"left": "WL", "right": "WR"}


def worked(blocks: list[Block]) -> tuple[tuple[FormPlane, ...], tuple[FormEdge, ...]]:
    found = planes(blocks)
    return found, edges(found, blocks)


def diagonal(run: Fraction, rise: Fraction) -> float:
    """Length of a hip or valley between planes of one pitch."""
    return float(run) * math.sqrt(2 + float(rise / 12) ** 2)


def same(expected: dict[str, object]) -> object:
    return pytest.approx(expected, rel=1e-6, abs=1e-6)


# Closed forms


@given(LENGTHS, LENGTHS, RISES)
def test_a_gable_has_one_ridge_two_eaves_and_four_rakes(
    length: Fraction, depth: Fraction, rise: Fraction
) -> None:
    found, its = worked([gable(length, depth, rise)])
    rake = float(depth / 2) * factor(rise)
    assert {kind: pytest.approx(each, rel=1e-9) for kind, each in lengths(its, found).items()} == {
        "eave": [float(length)] * 2,
        "ridge": [float(length)],
        "rake": [rake] * 4,
    }


@given(LENGTHS, LENGTHS, RISES)
def test_a_shed_has_an_eave_two_rakes_and_a_free_top(
    length: Fraction, depth: Fraction, rise: Fraction
) -> None:
    found, its = worked([main_roof(length, depth, front=rise)])
    rake = float(depth) * factor(rise)
    assert totals(its, found) == same({"eave": float(length), "rake": 2 * rake, "ridge": float(length)})
    assert Counter(edge.kind for edge in its) == {"eave": 1, "rake": 2, "ridge": 1}


@given(LENGTHS, LENGTHS, RISES)
def test_a_hip_has_four_hips_and_what_is_left_of_its_length_as_ridge(
    length: Fraction, depth: Fraction, rise: Fraction
) -> None:
    length, depth = max(length, depth), min(length, depth)
    found, its = worked([hip(length, depth, rise)])
    expected = {"eave": 2 * float(length + depth), "hip": 4 * diagonal(depth / 2, rise)}
    if length > depth:
        expected["ridge"] = float(length - depth)
    assert totals(its, found) == same(expected)
    assert Counter(edge.kind for edge in its)["hip"] == 4


@given(LENGTHS, LENGTHS, RISES, RISES)
def test_a_hip_between_two_pitches_leans_to_the_flatter(
    length: Fraction, depth: Fraction, rise: Fraction, end_rise: Fraction
) -> None:
    end_run = depth / 2 * rise / end_rise
    assume(2 * end_run < length)
    found, its = worked([hip(length, depth, rise, end_rise)])
    one = math.hypot(float(depth / 2), float(end_run), float(depth / 2 * rise / 12))
    assert totals(its, found) == same(
        {"eave": 2 * float(length + depth), "hip": 4 * one, "ridge": float(length - 2 * end_run)}
    )


@given(LENGTHS, LENGTHS, LENGTHS, RISES)
def test_an_l_has_one_valley_and_one_hip_across_from_it(
    length: Fraction, depth: Fraction, out: Fraction, rise: Fraction
) -> None:
    assume(length != depth)
    length, depth = max(length, depth), min(length, depth)
    main = main_roof(length, depth, front=rise, right=rise, back=rise)
    ids = {"left": "WL", "right": "E"}
    found, its = worked([main, wing(main, "front", length - depth, depth, out, rise, ids)])
    half = depth / 2
    assert {kind: pytest.approx(each, rel=1e-6) for kind, each in lengths(its, found).items()} == {
        "eave": sorted(map(float, (length - depth, length, out, out + depth))),
        "rake": [float(half) * factor(rise)] * 4,
        "ridge": sorted(map(float, (length - half, out + half))),
        "valley": [diagonal(half, rise)],
        "hip": [diagonal(half, rise)],
    }
    meet = {edge.kind: set(edge.planes) for edge in its if len(edge.planes) == 2 and edge.kind != "ridge"}
    assert meet == {"valley": {"S", "WL"}, "hip": {"N", "E"}}


@given(wings_below_the_ridge())
def test_a_t_has_two_valleys_and_a_ridge_that_runs_into_the_roof(measures: tuple[Fraction, ...]) -> None:
    length, depth, rise, starts, width, out, wing_rise = measures
    found, its = worked(tee(gable(length, depth, rise), starts, width, out, wing_rise))
    half, into = width / 2, width / 2 * wing_rise / rise
    valley = math.hypot(float(half), float(into), float(half * wing_rise / 12))
    assert totals(its, found) == same(
        {
            "eave": float(2 * length - width + 2 * out),
            "rake": 2 * float(depth) * factor(rise) + 2 * float(half) * factor(wing_rise),
            "ridge": float(length + out + into),
            "valley": 2 * valley,
        }
    )
    assert Counter(edge.kind for edge in its)["valley"] == 2


@pytest.mark.parametrize("side", SIDES)
@given(length=LENGTHS, depth=LENGTHS, out=LENGTHS, part=st.integers(1, 15), rise=RISES)
def test_a_wing_adds_the_same_edges_on_any_side(
    side: Side, length: Fraction, depth: Fraction, out: Fraction, part: int, rise: Fraction
) -> None:
    assume(length != depth)
    length, depth = max(length, depth), min(length, depth)
    across, main = (length if side in ("front", "back") else depth), hip(length, depth, rise)
    width = depth * part / 16
    half = width / 2
    found, its = worked([main, wing(main, side, (across - width) / 2, width, out, rise, OWN)])
    assert totals(its, found) == same(
        {
            "eave": float(2 * (length + depth) - width + 2 * out),
            "hip": 4 * diagonal(depth / 2, rise),
            "ridge": float(length - depth + out + half),
            "valley": 2 * diagonal(half, rise),
            "rake": 2 * float(half) * factor(rise),
        }
    )


def test_wings_side_by_side_meet_in_a_level_valley() -> None:
    """Between two eaves at one height lies a gutter."""
    main = gable(F(40), F(24), F(6))
    first = wing(main, "front", F(4), F(10), F(8), F(6), OWN)
    second = wing(main, "front", F(14), F(12), F(5), F(6), {"left": "XL", "right": "XR"})
    found, its = worked([main, first, second])
    between = [edge for edge in its if set(edge.planes) == {"WR", "XL"}]
    assert [(edge.kind, edge_length(edge, found)) for edge in between] == [("valley", 5)]


# Any roof


@given(any_roof())
def test_an_edge_is_one_line_in_space_whichever_plane_it_is_taken_from(
    roof: tuple[list[Block], list[ByHand], Fraction],
) -> None:
    found, its = worked(roof[0])
    known = {plane.id: plane for plane in found}
    for edge in its:
        assert 1 <= len(edge.sides) <= 2
        ends = [[in_space(known[id], point) for point in line] for id, line in edge.sides]
        for other in ends[1:]:
            assert [value for end in other for value in end] == pytest.approx(
                [value for end in ends[0] for value in end], rel=1e-6, abs=1e-5
            )


@given(any_roof())
def test_every_side_of_every_plane_is_in_the_edges_once(
    roof: tuple[list[Block], list[ByHand], Fraction],
) -> None:
    """The sides of all planes together are edges of one plane once, and edges of two planes twice."""
    found, its = worked(roof[0])
    around = sum(
        math.dist(in_space(plane, plane.level[number - 1]), in_space(plane, corner))
        for plane in found
        for number, corner in enumerate(plane.level)
    )
    counted = sum(edge_length(edge, found) * len(edge.sides) for edge in its)
    assert counted == pytest.approx(around, rel=1e-6)


@given(any_roof())
def test_eaves_and_rakes_go_once_round_the_plan(roof: tuple[list[Block], list[ByHand], Fraction]) -> None:
    """Seen from above, what bounds one plane is the outline of the house; each wing adds twice its stand-out."""
    blocks, hand, _ = roof
    found, its = worked(blocks)
    known = {plane.id: plane for plane in found}
    free = [edge for edge in its if len(edge.sides) == 1]
    seen = sum(
        math.dist(*(in_space(known[edge.planes[0]], point)[:2] for point in edge.sides[0][1]))
        for edge in free
    )
    main = hand[0]
    outs = [
        max(main.south - part.south, part.north - main.north, main.west - part.west, part.east - main.east)
        for part in hand[1:]
    ]
    around = 2 * (main.east + main.north) + 2 * sum(outs)
    assert seen == pytest.approx(float(around), rel=1e-6)
    assert {edge.kind for edge in free} <= {"eave", "rake", "ridge"}
    assert all(edge.kind in ("ridge", "hip", "valley") for edge in its if len(edge.sides) == 2)


@given(any_roof())
def test_a_valley_holds_water_and_a_hip_sheds_it(roof: tuple[list[Block], list[ByHand], Fraction]) -> None:
    """The roof beside the middle of a valley is higher on both sides, beside a hip or a ridge it is lower."""
    blocks, hand, _ = roof
    found, its = worked(blocks)
    known = {plane.id: plane for plane in found}
    for edge in (edge for edge in its if len(edge.sides) == 2):
        (ax, ay, az), (bx, by, bz) = (in_space(known[edge.planes[0]], p) for p in edge.sides[0][1])
        along = math.hypot(bx - ax, by - ay)
        if along < 0.1:
            continue
        step = 1e-3
        beside = [
            max(
                part.height(
                    (ax + bx) / 2 - turn * (by - ay) / along, (ay + by) / 2 + turn * (bx - ax) / along
                )
                for part in hand
            )
            for turn in (step, -step)
        ]
        hollow = sum(beside) / 2 - (az + bz) / 2
        assert (hollow > 0) == (edge.kind == "valley"), edge
        if edge.kind != "valley":
            assert (abs(az - bz) < 1e-5) == (edge.kind == "ridge")


def test_lines_a_rounding_apart_are_one() -> None:
    """At this length the hip's line lies half-way between two marks of a thousandth of a foot."""
    roof = hip(F(40) + F(15, 192), F(24), F(6), F(8))
    found, its = worked([roof])
    assert Counter((edge.kind, len(edge.sides)) for edge in its) == {
        ("eave", 1): 4,
        ("hip", 2): 4,
        ("ridge", 2): 1,
    }
    assert {plane.id for plane in found} == {"S", "E", "N", "W"}
