"""An old deck nailed again: nails added by the spacings that published rules name."""

import pytest

from packet.calc.deck.added import added_in_sheet, nails_on_area
from packet.calc.fasteners import sheet_nails


def added(frame_in: int, old: tuple[int, int], most: int) -> int:
    return added_in_sheet(
        8, 4, frame_in, old_edge_in=old[0], old_field_in=old[1], most_edge_in=most, most_field_in=most
    )


@pytest.mark.parametrize(("frame_in", "nails"), [(24, 12), (16, 20)])
def test_8d_smooth_at_6_and_12_brought_to_6(frame_in: int, nails: int) -> None:
    """Florida at 110 mph or less (an inspector's answer, 2018): ring shank added so that spacing is 6 in or less.

    Seen (secondary). By hand: the ends stand at 6 in already; each row between takes four more.
    """
    assert added(frame_in, (6, 12), 6) == nails


@pytest.mark.parametrize(("frame_in", "nails"), [(24, 45), (16, 63)])
def test_staples_and_6d_are_left_out_of_the_count(frame_in: int, nails: int) -> None:
    """The same answer: staples or 6d take a complete new nailing at 6 in: seen (secondary).

    By hand: nine nails on each of five or seven supports.
    """
    assert sheet_nails(8, 4, frame_in, edge_spacing_in=6, field_spacing_in=6) == nails


def test_older_high_wind_sheet_no_gap_over_6_in() -> None:
    """Voluntary high-wind home standard, older sheet: ring shank added so that no gap exceeds 6 in: seen.

    By hand, old nails at 8 and 12 in: six on each end, four on each of three between.
    """
    assert added(24, (8, 12), 6) == 2 * 6 + 3 * 4


def test_the_2025_edition_asks_for_more_of_the_same_deck() -> None:
    """The same standard, 2025, 4.2.2: 4 in: seen (secondary). By hand: eight on every one of five supports."""
    assert added(24, (6, 12), 4) == 2 * 8 + 3 * 8


def test_a_whole_roof_by_area() -> None:
    """Derived: 1,600 sq ft are fifty sheets of twelve nails."""
    assert nails_on_area(1600, added(24, (6, 12), 6)) == 600
