"""The cut-out: what the rules add to the rot, and why."""

import pytest

from packet.calc.deck.cutout import Box, CutRule, Way, cut_out
from packet.calc.domain import OutOfRange

PLANE = Box(0, 20, 0, 12)
RAFTERS = tuple(range(0, 21, 2))
HALF_FT = 0.0625
CENTER: Way = "on the center of a rafter"


def found(rot: Box, *, unsound: tuple[int, ...] = (), way: Way = CENTER, rule: CutRule | None = None):  # type: ignore[no-untyped-def]
    return cut_out(rot, PLANE, RAFTERS, unsound, way, HALF_FT, rule or CutRule())


def test_ends_go_to_the_center_of_rafters_over_two_spans() -> None:
    """APA E30V (2011) p. 62: strength axis across supports, continuous over two or more spans."""
    result = found(Box(5, 5.5, 4, 6))
    assert result.box == Box(4, 8, 4, 6)
    assert [(step.side, step.end, step.reason) for step in result.steps] == [
        ("left", 4, "sound_framing"),
        ("right", 6, "sound_framing"),
        ("right", 8, "two_spans"),
    ]


def test_a_piece_is_four_feet_long_at_least() -> None:
    """FEMA 499 sheet 18 (2005): no piece shorter than 4 ft; rafters 16 in on center span it earlier."""
    close = tuple(number * 4 / 3 for number in range(16))
    result = cut_out(Box(4.2, 5, 4, 6), PLANE, close, (), CENTER, HALF_FT, CutRule())
    assert (result.box.left, result.box.right) == (4, pytest.approx(8))
    assert result.steps[-1].reason == "least_length"


def test_a_piece_is_two_feet_wide_and_leaves_no_narrower_strip() -> None:
    """APA text on the span tables: panels 24 in wide or more."""
    assert (found(Box(4, 8, 5, 5.5)).box.lower, found(Box(4, 8, 5, 5.5)).box.upper) == (5, 7)
    low = found(Box(4, 8, 1, 4))
    assert (low.box.lower, low.steps[-1].reason) == (0, "strip_left")
    assert found(Box(4, 8, 8, 11)).box.upper == 12


def test_a_rotten_rafter_carries_no_edge() -> None:
    assert found(Box(5, 7, 4, 6), unsound=(4, 8)).box == Box(2, 10, 4, 6)


def test_at_the_end_of_the_plane_it_goes_to_the_left() -> None:
    result = found(Box(18.5, 19, 4, 6))
    assert (result.box.left, result.box.right) == (16, 20)
    assert [step.side for step in result.steps] == ["left", "right", "left"]


def test_beside_a_rafter_the_nailer_takes_the_edge_past_its_far_face() -> None:
    result = found(Box(5, 7, 4, 6), way="beside a rafter, on a nailer")
    assert (result.box.left, result.box.right) == (4 - HALF_FT, 8 + HALF_FT)
    assert [step.reason for step in result.steps[-2:]] == ["nailer", "nailer"]


def test_every_inch_added_has_its_step() -> None:
    rot = Box(5, 5.5, 1, 1.5)
    result = found(rot)
    added = sum(abs(float(step.end - step.start)) for step in result.steps)
    box = result.box
    assert added == (rot.left - box.left) + (box.right - rot.right) + (rot.lower - box.lower) + (
        box.upper - rot.upper
    )


def test_rot_off_the_plane_is_refused() -> None:
    with pytest.raises(OutOfRange):
        found(Box(18, 21, 4, 6))


def test_no_strip_is_left_at_the_ridge_when_the_piece_was_widened() -> None:
    """Rot 6 in high from 8.25 ft: 24 in of new deck would leave 21 in of old deck below the ridge."""
    result = found(Box(4, 8, 8.25, 8.75))
    assert (result.box.lower, result.box.upper) == (8.25, 12)
    assert [(step.side, step.end, step.reason) for step in result.steps] == [
        ("upper", 10.25, "least_width"),
        ("upper", 12, "strip_left"),
    ]


def test_a_strip_left_at_the_ridge_is_the_only_reason_where_it_alone_widens() -> None:
    assert [(step.end, step.reason) for step in found(Box(4, 8, 9, 10.5)).steps] == [(12, "strip_left")]


def test_at_the_ridge_a_piece_is_widened_down_the_slope() -> None:
    result = found(Box(4, 8, 11, 12))
    assert [(step.side, step.end, step.reason) for step in result.steps] == [("lower", 10, "least_width")]
