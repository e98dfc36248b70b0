"""Nails in a whole deck sheet, counted by hand on the framing, and joints between sheets."""

import pytest

from packet.calc.fasteners import sheet_nails
from packet.calc.takeoff import deck_sheets, joints_to_tape, to_buy


@pytest.mark.parametrize(
    ("frame_in", "edge_in", "field_in", "nails"),
    [
        (24, 6, 12, 2 * 9 + 3 * 5),  # IRC 2009 to 2015 rows: 6 in edges, 12 in field
        (16, 6, 12, 2 * 9 + 5 * 5),
        (24, 6, 6, 5 * 9),  # IRC 2021 rows for 8d common: 6 and 6
        (16, 6, 6, 7 * 9),
        (24, 4, 4, 5 * 13),  # voluntary high-wind home standard, 2025: 4 in
        (16, 4, 4, 7 * 13),
        (24, 4, 6, 2 * 13 + 3 * 9),
    ],
)
def test_nails_in_a_4_by_8_sheet(frame_in: int, edge_in: int, field_in: int, nails: int) -> None:
    """Spacings of IRC Table R602.3(1) and the high-wind standard; the counts are derived by hand.

    An 8 ft sheet lies on five supports at 24 in and on seven at 16 in; 4 ft at 6 in is nine nails, at 12 in
    five, at 4 in thirteen.
    """
    assert sheet_nails(8, 4, frame_in, edge_spacing_in=edge_in, field_spacing_in=field_in) == nails


def test_counts_of_the_usual_schedules() -> None:
    """The same four counts, added up."""
    assert sheet_nails(8, 4, 24, edge_spacing_in=6, field_spacing_in=12) == 33
    assert sheet_nails(8, 4, 16, edge_spacing_in=6, field_spacing_in=12) == 43
    assert sheet_nails(8, 4, 24, edge_spacing_in=6, field_spacing_in=6) == 45
    assert sheet_nails(8, 4, 24, edge_spacing_in=4, field_spacing_in=4) == 65


def test_wider_framing_changes_the_rows_and_not_the_spacing() -> None:
    """Voluntary high-wind standard, 4.2.2 (seen, secondary): spacing counts per support."""
    by_16 = sheet_nails(8, 4, 16, edge_spacing_in=6, field_spacing_in=6)
    by_24 = sheet_nails(8, 4, 24, edge_spacing_in=6, field_spacing_in=6)
    assert (by_16 - by_24) == 2 * 9


def test_a_half_sheet_is_nailed_on_its_own_supports() -> None:
    """Derived: 4 ft on 24 in framing is three supports, one of them field."""
    assert sheet_nails(4, 4, 24, edge_spacing_in=6, field_spacing_in=12) == 2 * 9 + 5


@pytest.mark.parametrize(
    ("along_ft", "up_ft", "joints_ft"),
    [
        (8, 4, 0),  # one sheet
        (8, 8, 8),  # two sheets: one long joint
        (16, 8, 16 + 2 * 4),  # four sheets: a long joint of 16 ft and a short one in each course
        (32, 16, 3 * 32 + 4 * 3 * 4),  # sixteen sheets, four courses
    ],
)
def test_joints_of_a_deck_of_whole_sheets(along_ft: int, up_ft: int, joints_ft: int) -> None:
    """FEMA, Louisiana extension and IBC 1507.1.1 exception 1 (seen) ask 4 in tape on all joints.

    The lengths are laid out by hand: long joints between courses, short ones within them.
    """
    area, around = along_ft * up_ft, 2 * (along_ft + up_ft)
    assert joints_to_tape(area, around) == joints_ft
    assert deck_sheets(area) == area // 32


def test_a_cut_within_the_deck_adds_its_length() -> None:
    """Derived: of two courses of 16 ft one starts with half a sheet: 16 + 4 + 2 x 4, one short joint more."""
    assert 16 + 4 + 2 * 4 - joints_to_tape(128, 48) == 4


def test_strips_at_the_outer_edge_are_not_foreseen() -> None:
    """Derived: 10 by 8 ft has 10 + 2 x 4 ft of joints, the rule says 12: a small cut-up deck is measured."""
    assert joints_to_tape(80, 36) == 12


def test_an_area_smaller_than_its_edge_has_no_joints() -> None:
    assert joints_to_tape(10, 22) == 0


def test_tape_is_bought_in_whole_rolls() -> None:
    """Derived: 144 ft of joint from rolls of 75 ft."""
    assert to_buy(joints_to_tape(32 * 16, 96), 75) == 2
