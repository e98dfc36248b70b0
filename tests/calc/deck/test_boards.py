"""Board decking counted by hand."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.calc.deck.boards import (
    bearings,
    board_feet,
    board_nails,
    board_nails_on_area,
    framing_nail_pounds,
    nails_each_bearing,
    running_feet,
)
from packet.calc.domain import OutOfRange

F = Fraction


def test_boards_side_by_side_and_apart() -> None:
    # 5-1/2 in boards: 10 ft of slope takes 240/11 courses; over 11 ft along the eave 240 ft
    assert running_feet(110, F(11, 2), 0) == 240
    # spaced deck, 3-1/2 in boards 10 in on center: 12 courses to 10 ft of slope
    assert running_feet(10 * 16, F(7, 2), F(13, 2)) == 12 * 16


@pytest.mark.parametrize(
    ("lengths_ft", "spacing_in"),
    [([8] * 6, 24), ([16, 12, 4], 16), ([F(32, 3)], 16), ([4], 24), ([2, 2], 24)],
)
def test_bearings_are_those_of_each_board_counted_on_its_rafters(
    lengths_ft: list[int | F], spacing_in: int
) -> None:
    by_hand = sum(int(12 * length / spacing_in) + 1 for length in lengths_ft)
    assert bearings(sum(lengths_ft), spacing_in, len(lengths_ft)) == by_hand


def test_six_boards_of_nine_feet_bear_at_thirty_three_places() -> None:
    # the demo patch: 54 ft on 24 in framing is 27 spaces, and one bearing more for each of 6 boards
    assert board_nails(bearings(54, 24, 6), nails_each_bearing(6)) == 66


@given(st.lists(st.integers(1, 20), min_size=1, max_size=30), st.sampled_from([12, 16, 24]))
def test_two_lots_bear_as_their_sum_where_boards_end_on_rafters(spaces: list[int], spacing_in: int) -> None:
    lengths = [F(n * spacing_in, 12) for n in spaces]
    assert bearings(sum(lengths), spacing_in, len(lengths)) == sum(
        bearings(one, spacing_in, 1) for one in lengths
    )


def test_wide_boards_take_a_third_nail() -> None:
    assert [nails_each_bearing(width) for width in (4, 6, 8, F(129, 16), 10, 12, 24)] == [2, 2, 2, 3, 3, 3, 3]


def test_thin_boards_count_as_an_inch() -> None:
    assert board_feet(F(3, 4), 6, 16) == board_feet(1, 6, 16) == 8
    assert board_feet(2, 6, 16) == 16


def test_a_deck_of_boards_counts_its_courses_on_each_space_between_rafters() -> None:
    # 40 ft by 15 ft: 30 courses of 6 in on 20 spaces of 24 in, two nails each
    assert board_nails_on_area(600, 6, 24, 2) == 30 * 20 * 2
    # a part of a bearing is a whole one: 100 sq ft at 7 in and 16 in are 128.6
    assert board_nails_on_area(100, 7, 16, 3) == 129 * 3


@given(st.integers(1, 60), st.integers(1, 60), st.integers(1, 4))
def test_boards_laid_over_whole_spaces_count_the_same_by_area_as_course_by_course(
    courses: int, spaces: int, each: int
) -> None:
    area = F(courses * 6, 12) * spaces * 2
    assert board_nails_on_area(area, 6, 24, each) == courses * spaces * each


@pytest.mark.parametrize(
    "call",
    [
        lambda: running_feet(-1, 6, 0),
        lambda: running_feet(100, 0, 0),
        lambda: running_feet(100, 6, -1),
        lambda: bearings(0, 24, 1),
        lambda: bearings(8, 24, 0),
        lambda: nails_each_bearing(0),
        lambda: board_nails(10, 0),
        lambda: board_nails(-1, 2),
        lambda: board_nails_on_area(-1, 6, 24, 2),
        lambda: board_nails_on_area(100, 0, 24, 2),
        lambda: board_nails_on_area(100, 6, 0, 2),
        lambda: board_nails_on_area(100, 6, 24, 0),
        lambda: board_feet(0, 6, 8),
        lambda: framing_nail_pounds(0, 100),
        lambda: framing_nail_pounds(8, -1),
    ],
)
def test_nonsense_is_refused(call) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(OutOfRange):
        call()
