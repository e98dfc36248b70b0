import pytest

from packet.drawings.flat import crosses, do_overlap, is_inside, middle, rectangle, surface, touches
from packet.drawings.hatch import SPACING_PX, hatch
from packet.drawings.room import Room
from packet.drawings.taken import Taken

ELBOW = [(0.0, 0.0), (30.0, 0.0), (30.0, 10.0), (10.0, 10.0), (10.0, 30.0), (0.0, 30.0)]


def test_boxes_that_only_touch_do_not_overlap_unless_a_gap_is_asked_for() -> None:
    left, right = rectangle((0, 0), 10, 10), rectangle((10, 0), 10, 10)
    assert not do_overlap(left, right)
    assert do_overlap(left, right, gap=1.0)
    assert do_overlap(left, rectangle((9, 0), 10, 10))


def test_turned_boxes_are_judged_by_their_own_sides() -> None:
    first, second = rectangle((0, 0), 40, 4, 45), rectangle((10, -10), 40, 4, 45)
    assert not do_overlap(first, second)
    assert do_overlap(first, rectangle((1, -1), 40, 4, 45))


def test_a_box_in_the_notch_of_an_elbow_is_not_held() -> None:
    room = Room([(10 * x, 10 * y) for x, y in ELBOW], (), Taken())
    found = room.best(60, 60, 10)
    assert found is not None
    assert 40 <= min(found) <= 60
    assert max(found) <= 260
    assert room.best(110, 110, 1) is None
    assert not touches(rectangle((20, 20), 6, 6), ELBOW)
    assert touches(rectangle((10, 10), 6, 6), ELBOW)


def test_a_line_through_a_box_with_both_ends_outside_crosses_it() -> None:
    box = rectangle((0, 0), 10, 10)
    assert crosses(box, ((-20, 0), (20, 0)))
    assert not crosses(box, ((-20, 6), (20, 6)))


def test_area_and_middle_of_an_elbow() -> None:
    assert surface(ELBOW) == 500
    assert middle(ELBOW) == pytest.approx((11.0, 11.0))


@pytest.mark.parametrize("turn", [0, 1])
def test_hatching_lies_inside_the_outline_and_outside_the_holes(turn: int) -> None:
    hole = rectangle((5, 20), 8, 6)
    runs = hatch(ELBOW, turn, [hole])
    assert len(runs) > 30 / SPACING_PX
    for (start, end), closed in runs:
        centre = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        assert not closed
        assert is_inside(centre, ELBOW)
        assert not is_inside(centre, hole)


def test_neighbours_are_hatched_at_different_angles() -> None:
    leans = [
        [(end[0] - start[0]) * (end[1] - start[1]) > 0 for (start, end), _ in hatch(ELBOW, n)] for n in (0, 1)
    ]
    assert all(leans[0])
    assert not any(leans[1])
