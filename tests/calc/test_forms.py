"""Planes of whole roofs against closed forms, and against heights worked out by hand."""

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from packet.calc.domain import OutOfRange
from packet.calc.form_edges import edges
from packet.calc.forms import Block, FormPlane, NotAForm, Side, planes, wing
from packet.calc.polygon import polygon_area
from tests.support.whole_roofs import (
    IDS,
    INWARD,
    LENGTHS,
    LOOKS,
    RISES,
    ByHand,
    area,
    factor,
    gable,
    hip,
    in_space,
    inside,
    main_roof,
    slope_area,
    tee,
)

F = Fraction
SIDES: tuple[Side, ...] = ("front", "right", "back", "left")
EACH = st.integers(0, 192).map(lambda n: F(n, 192))


def by_id(blocks: list[Block]) -> dict[str, FormPlane]:
    return {plane.id: plane for plane in planes(blocks)}


# Gable, shed, hip


@given(LENGTHS, LENGTHS, RISES)
def test_a_gable_has_two_planes_of_half_its_depth(length: Fraction, depth: Fraction, rise: Fraction) -> None:
    """The corners come back as they were taped, to the sixteenth."""
    found = planes([gable(length, depth, rise)])
    half = depth / 2
    assert [plane.level for plane in found] == [((0, 0), (length, 0), (length, half), (0, half))] * 2
    assert [plane.origin for plane in found] == [(0, 0), (length, depth)]
    assert slope_area(found, "S") == pytest.approx(float(length * half) * factor(rise), rel=1e-12)


@given(LENGTHS, LENGTHS, RISES)
def test_a_shed_is_one_plane_over_its_whole_depth(length: Fraction, depth: Fraction, rise: Fraction) -> None:
    (plane,) = planes([main_roof(length, depth, front=rise)])
    assert plane.level == ((0, 0), (length, 0), (length, depth), (0, depth))


@given(LENGTHS, LENGTHS, RISES)
def test_a_hip_of_one_pitch_has_its_plan_times_the_slope_factor(
    length: Fraction, depth: Fraction, rise: Fraction
) -> None:
    length, depth = max(length, depth), min(length, depth)
    found = by_id([hip(length, depth, rise)])
    half, ridge = depth / 2, length - depth
    top = ((half + ridge, half), (half, half)) if ridge else ((half, half),)
    assert found["S"].level == found["N"].level == ((0, 0), (length, 0), *top)
    assert found["W"].level == found["E"].level == ((0, 0), (depth, 0), (half, half))
    assert slope_area([*found.values()]) == pytest.approx(float(length * depth) * factor(rise), rel=1e-12)


@given(LENGTHS, LENGTHS, RISES)
def test_a_hip_deeper_than_long_has_its_ridge_the_other_way(
    length: Fraction, depth: Fraction, rise: Fraction
) -> None:
    assume(depth != length)
    length, depth = min(length, depth), max(length, depth)
    found = by_id([hip(length, depth, rise)])
    half = length / 2
    assert found["S"].level == found["N"].level == ((0, 0), (length, 0), (half, half))
    assert found["W"].level == found["E"].level == ((0, 0), (depth, 0), (depth - half, half), (half, half))


@given(LENGTHS, LENGTHS, RISES, RISES)
def test_steeper_ends_stand_nearer_to_the_eave(
    length: Fraction, depth: Fraction, rise: Fraction, end_rise: Fraction
) -> None:
    """The end reaches the ridge's height, half depth x rise / 12, after half depth x rise / end rise of run."""
    end_run = depth / 2 * rise / end_rise
    assume(2 * end_run < length)
    found = by_id([hip(length, depth, rise, end_rise)])
    assert found["E"].level == found["W"].level == ((0, 0), (depth, 0), (depth / 2, end_run))
    sides = 2 * float((length - end_run) * depth / 2) * factor(rise)
    ends = float(depth * end_run) * factor(end_rise)
    assert slope_area([*found.values()]) == pytest.approx(sides + ends, rel=1e-12)


@pytest.mark.parametrize(("gabled", "hipped"), [("left", "E"), ("right", "W")])
@given(length=LENGTHS, depth=LENGTHS, rise=RISES)
def test_a_hip_roof_may_end_in_one_gable(
    gabled: str, hipped: str, length: Fraction, depth: Fraction, rise: Fraction
) -> None:
    length, depth = max(length, depth), min(length, depth)
    rises = {side: rise for side in SIDES if side != gabled}
    found = by_id([main_roof(length, depth, **rises)])
    half = depth / 2
    assert found.keys() == {"S", "N", hipped}
    assert found[hipped].level == ((0, 0), (depth, 0), (half, half))
    assert area(found["S"].level) == area(found["N"].level) == (length + length - half) / 2 * half


# L and T


@given(LENGTHS, LENGTHS, LENGTHS, RISES)
def test_an_l_is_a_hip_with_a_gable_and_a_wing_of_equal_width(
    length: Fraction, depth: Fraction, out: Fraction, rise: Fraction
) -> None:
    """The wing stands at the corner, and its outer plane is the hip end carried on."""
    assume(length != depth)
    length, depth = max(length, depth), min(length, depth)
    main = main_roof(length, depth, front=rise, right=rise, back=rise)
    made = wing(main, "front", length - depth, depth, out, rise, {"left": "WL", "right": "E"})
    found, half = by_id([main, made]), depth / 2
    assert found["S"].level == ((0, 0), (length - depth, 0), (length - half, half), (0, half))
    assert found["N"].level == ((0, 0), (length, 0), (length, half), (half, half))
    assert found["WL"].level == ((0, 0), (out, 0), (out, half), (-half, half))
    assert found["E"].level == ((0, 0), (out + depth, 0), (out + half, half), (0, half))
    plan = length * depth + depth * out
    assert slope_area([*found.values()]) == pytest.approx(float(plan) * factor(rise), rel=1e-12)


@st.composite
def wings_below_the_ridge(draw: st.DrawFn) -> tuple[Fraction, ...]:
    """Length, depth and rise of a gable; start, width, stand-out and rise of a wing that stays below its ridge."""
    length, depth, rise = draw(LENGTHS), draw(LENGTHS), draw(RISES)
    width = F(draw(st.integers(96, int(length * 192))), 192)
    steepest = math.ceil(16 * depth * rise / width) - 1  # in sixteenths; at the next the ridges are level
    assume(steepest >= 1)
    wing_rise = F(draw(st.integers(1, min(384, steepest))), 16)
    starts = F(draw(st.integers(0, int((length - width) * 192))), 192)
    return length, depth, rise, starts, width, draw(LENGTHS), wing_rise


@given(wings_below_the_ridge())
def test_a_t_of_any_two_pitches(measures: tuple[Fraction, ...]) -> None:
    """The wing's ridge runs into the main plane until both are as high."""
    length, depth, rise, starts, width, out, wing_rise = measures
    half, into = width / 2, width / 2 * wing_rise / rise
    found = by_id(tee(gable(length, depth, rise), starts, width, out, wing_rise))
    # facing west, the wing's ridge ends to the left of its eave's end; facing east, to the right
    assert found["WL"].level == ((0, 0), (out, 0), (out, half), (-into, half))
    assert found["WR"].level == ((0, 0), (out, 0), (out + into, half), (0, half))
    low = [(0, 0), (starts, 0), (starts + half, into), (starts + width, 0), (length, 0)]
    assert found["S"].outline == (*dict.fromkeys(low), (length, depth / 2), (0, depth / 2))
    assert area(found["S"].level) == length * depth / 2 - half * into
    main = float(length * depth - half * into) * factor(rise)
    wings = float((2 * out + into) * half) * factor(wing_rise)
    assert slope_area([*found.values()]) == pytest.approx(main + wings, rel=1e-12)


@given(wings_below_the_ridge())
def test_a_wing_may_end_in_a_hip(measures: tuple[Fraction, ...]) -> None:
    length, depth, rise, starts, width, out, wing_rise = measures
    out += width / 2
    main = gable(length, depth, rise)
    ids = {"left": "WL", "right": "WR", "end": "WS"}
    found = by_id([main, wing(main, "front", starts, width, out, wing_rise, ids)])
    half, into = width / 2, width / 2 * wing_rise / rise
    assert found["WS"].level == ((0, 0), (width, 0), (half, half))
    # facing west, the front of the house is at the right hand
    assert found["WL"].level == ((0, 0), (out, 0), (out - half, half), (-into, half))
    assert area(found["WR"].level) == (out + out + into - half) / 2 * half


@pytest.mark.parametrize("side", SIDES)
@given(length=LENGTHS, depth=LENGTHS, out=LENGTHS, part=st.integers(1, 15), rise=RISES)
def test_a_wing_in_the_middle_of_any_eave_of_a_hip(
    side: Side, length: Fraction, depth: Fraction, out: Fraction, part: int, rise: Fraction
) -> None:
    length, depth = max(length, depth), min(length, depth)
    across, main = (length if side in ("front", "back") else depth), hip(length, depth, rise)
    width = depth * part / 16
    half = width / 2
    made = wing(main, side, (across - width) / 2, width, out, rise, {"left": "WL", "right": "WR"})
    found = by_id([main, made])
    assert (found["WL"].side, found["WR"].side) == LOOKS[side]
    assert found["WL"].level == ((0, 0), (out, 0), (out, half), (-half, half))
    assert found["WR"].level == ((0, 0), (out, 0), (out + half, half), (0, half))
    assert area(found[IDS[side]].level) == area(by_id([main])[IDS[side]].level) - half * half
    plan = float(length * depth + width * out)
    assert slope_area([*found.values()]) == pytest.approx(plan * factor(rise), rel=1e-9)


def test_a_wing_before_a_shed_dies_into_its_one_plane() -> None:
    found = by_id(tee(main_roof(F(40), F(20), front=F(6)), F(10), F(16), F(8), F(9)))
    assert found["S"].outline == ((0, 0), (10, 0), (18, 12), (26, 0), (40, 0), (40, 20), (0, 20))


# Any roof: planes tile the plan, and are as high as the roof


@st.composite
def any_roof(draw: st.DrawFn) -> tuple[list[Block], list[ByHand], Fraction]:
    """Return blocks, the same by hand, and the area in plan: a main roof with up to two wings on unlike sides."""
    length, depth, rise = draw(LENGTHS), draw(LENGTHS), draw(RISES)
    ends = draw(st.sampled_from([rise, draw(RISES)]))
    eaves = draw(st.sampled_from([SIDES, ("front", "back"), ("front", "back", "right"), ("front",)]))
    rises = {side: ends if side in ("left", "right") else rise for side in SIDES if side in eaves}
    main = main_roof(length, depth, **rises)
    blocks, hand, plan = [main], [ByHand(F(0), F(0), length, depth, rises)], length * depth
    for number, side in enumerate(draw(st.lists(st.sampled_from(eaves), unique=True, max_size=2))):
        across, deep = (length, depth) if side in ("front", "back") else (depth, length)
        opposite = {"front": "back", "back": "front", "left": "right", "right": "left"}[side]
        reach = deep / 2 if opposite in eaves else deep
        width = across * draw(st.integers(1, 12)) / 16
        starts, out = (across - width) * draw(EACH), draw(LENGTHS)
        wing_rise = draw(st.sampled_from([rises[side], draw(RISES)]))
        ids = {"left": f"{number}L", "right": f"{number}R"}
        left, right = LOOKS[side]
        own = {left: wing_rise, right: wing_rise}
        if draw(st.booleans()):
            ids["end"], own[side] = f"{number}S", wing_rise
        try:
            planes([*blocks, made := wing(main, side, starts, width, out, wing_rise, ids)])
        except NotAForm:
            continue  # what is refused, and why, is tested by itself
        blocks.append(made)
        low, high, far = starts, starts + width, across - starts - width
        hand.append(
            {
                "front": ByHand(low, -out, high, reach, own),
                "back": ByHand(far, depth - reach, far + width, depth + out, own),
                "right": ByHand(length - reach, low, length + out, high, own),
                "left": ByHand(-out, far, reach, far + width, own),
            }[side]
        )
        plan += width * out
    return blocks, hand, plan


@given(any_roof(), st.lists(st.tuples(st.floats(0, 1), st.floats(0, 1)), min_size=20, max_size=20))
def test_planes_tile_the_plan_and_are_as_high_as_the_roof(
    roof: tuple[list[Block], list[ByHand], Fraction], shares: list[tuple[float, float]]
) -> None:
    """At any point the roof is as high as its highest block, and a block as its lowest plane."""
    blocks, hand, plan = roof
    found = planes(blocks)
    assert float(sum(area(plane.level) for plane in found)) == pytest.approx(float(plan), rel=1e-9)
    for across, up in shares:
        part = hand[int(across * 1000) % len(hand)]
        x = float(part.west) + across * float(part.east - part.west)
        y = float(part.south) + up * float(part.north - part.south)
        corners = {plane.id: [(float(a), float(b)) for a, b in plane.outline] for plane in found}
        over = [plane for plane in found if inside(corners[plane.id], x, y)]
        near = any(
            abs((bx - ax) * (ay - y) - (ax - x) * (by - ay)) < 1e-6 * math.dist((ax, ay), (bx, by))
            for outline in corners.values()
            for (ax, ay), (bx, by) in zip(outline, (*outline[1:], outline[0]), strict=True)
        )
        if near:
            continue  # on an edge a point belongs to either plane
        assert len(over) == 1, (x, y)
        ax, ay = INWARD[over[0].side]
        origin = over[0].origin
        run = (x - float(origin[0])) * ax + (y - float(origin[1])) * ay
        height = max(block.height(x, y) for block in hand)
        assert run * float(over[0].rise) / 12 == pytest.approx(height, rel=1e-6, abs=1e-6)


@given(any_roof())
def test_corners_on_the_plane_and_in_plan_are_the_same_points(
    roof: tuple[list[Block], list[ByHand], Fraction],
) -> None:
    found = planes(roof[0])
    for plane in found:
        seen = [in_space(plane, corner)[:2] for corner in plane.level]
        assert [x for x, _ in seen] == pytest.approx([float(x) for x, _ in plane.outline], abs=1e-9)
        assert [y for _, y in seen] == pytest.approx([float(y) for _, y in plane.outline], abs=1e-9)
        assert plane.level[0] == (0, min(run for _, run in plane.level))
        assert area(plane.level) > 0


# What makes no roof


def refused(blocks: list[Block]) -> tuple[str, str]:
    with pytest.raises(NotAForm) as refusal:
        planes(blocks)
    return refusal.value.code, refusal.value.subject


GABLE = gable(F(40), F(24), F(6))
OWN = {"left": "WL", "right": "WR"}


@pytest.mark.parametrize(
    ("side", "starts", "width", "rise", "code"),
    [
        ("right", 0, 10, 6, "wing-side"),
        ("left", 0, 10, 6, "wing-side"),
        ("front", F(-1, 192), 10, 6, "wing-past-eave"),
        ("front", 30, 10 + F(1, 192), 6, "wing-past-eave"),
        ("back", 8, 24 + F(1, 192), 6, "wing-too-high"),
        ("front", 8, 24, 6 + F(1, 16), "wing-too-high"),
        ("front", 0, 40, 4, "wing-too-high"),
    ],
)
def test_a_wing_that_does_not_fit_is_refused(
    side: Side, starts: Fraction, width: Fraction, rise: Fraction, code: str
) -> None:
    with pytest.raises(NotAForm) as refusal:
        wing(GABLE, side, F(starts), F(width), F(8), F(rise), OWN)
    assert (refusal.value.code, refusal.value.subject) == (code, side)


@pytest.mark.parametrize(
    ("starts", "width", "rise"),
    [(0, 10, 6), (30, 10, 6), (8, 24, 6), (0, 40, F(7, 2)), (8, 24 - F(1, 192), 6)],
)
def test_a_wing_that_just_fits_is_not(starts: int, width: Fraction, rise: Fraction) -> None:
    assert wing(GABLE, "front", F(starts), F(width), F(8), F(rise), OWN).low == (starts, -8)


def test_a_flat_topped_wing_may_not_stick_out_over_a_low_hip_end() -> None:
    """Over x = 15 the wing with a hip end is already 7.5 ft high; the low hip end of the main roof is 2.5 ft."""
    main = hip(F(200), F(20), F(12), F(2))
    with pytest.raises(NotAForm, match="wing-too-high"):
        wing(main, "front", F(0), F(90), F(5), F(6), {**OWN, "end": "WS"})


def test_what_the_planes_are_refused_for_names_the_plane() -> None:
    hipped = hip(F(40), F(24), F(6))
    flush, own = (F(24), F(16), F(8)), F(6)
    assert refused([hipped, wing(hipped, "front", *flush, own, OWN)]) == ("planes-are-one", "WR")
    same = {"left": "WL", "right": "E"}
    assert refused([hipped, wing(hipped, "front", F(23), F(16), F(8), own, same)]) == ("not-one-plane", "E")
    assert refused([hipped, wing(hipped, "front", *flush, F(5), same)]) == ("not-one-plane", "E")
    wide = wing(GABLE, "front", F(8), F(20), F(8), F(6), OWN)
    hidden = wing(GABLE, "front", F(12), F(8), F(4), F(6), {"left": "XL", "right": "XR"})
    assert refused([GABLE, wide, hidden]) == ("plane-hidden", "XL")


def test_a_wing_as_wide_as_the_house_reaches_its_ridge_in_a_point() -> None:
    """40 ft x 24 ft and a wing 24 ft wide: 960 sq ft in front and behind, less two times 12 x 12 / 2, wing added."""
    blocks = tee(GABLE, F(8), F(24), F(8), F(6))
    found = by_id(blocks)
    assert found["S"].level == ((0, 0), (8, 0), (20, 12), (32, 0), (40, 0), (40, 12), (0, 12))
    assert [polygon_area(found[id].level) for id in ("S", "N", "WL", "WR")] == [336, 480, 168, 168]
    ridges = {edge.planes: edge for edge in edges(planes(blocks), blocks) if edge.kind == "ridge"}
    assert set(ridges) == {("S", "N"), ("WL", "WR")}


def test_planes_that_lie_in_one_plane_far_apart_may_have_their_own_ids() -> None:
    """Wings of equal width across from each other: the main ridge runs between their planes."""
    back = wing(GABLE, "back", F(12), F(16), F(8), F(6), {"left": "BL", "right": "BR"})
    front = wing(GABLE, "front", F(12), F(16), F(8), F(6), OWN)
    found = by_id([GABLE, front, back])
    assert found.keys() == {"S", "N", "WL", "WR", "BL", "BR"}
    assert found["WL"].level == found["BL"].level == ((0, 0), (8, 0), (8, 8), (-8, 8))
    assert refused(
        [GABLE, front, wing(GABLE, "back", F(12), F(16), F(8), F(6), {"left": "BL", "right": "WL"})]
    ) == (
        "plane-in-pieces",
        "WL",
    )


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: gable(F(0), F(24), F(6)),
        lambda: gable(F(40), F(-1), F(6)),
        lambda: gable(F(40), F(24), F(0)),
        lambda: wing(GABLE, "front", F(0), F(0), F(8), F(6), OWN),
        lambda: wing(GABLE, "front", F(0), F(8), F(0), F(6), OWN),
        lambda: wing(GABLE, "front", F(0), F(8), F(8), F(0), OWN),
    ],
)
def test_a_measure_that_is_not_above_zero_is_refused(wrong: object) -> None:
    assert callable(wrong)
    with pytest.raises(OutOfRange, match="above 0"):
        wrong()
