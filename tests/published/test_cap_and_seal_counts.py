"""Caps, starter, nails, cap nails and seal spots against the figures the trade prints."""

from fractions import Fraction

import pytest

from packet.calc.fasteners import (
    cap_nails,
    field_rows,
    least_nail_length,
    nails_in_row,
    pounds,
    roofing_nails,
    seal_spots,
)
from packet.calc.takeoff import (
    caps,
    starter_strips,
    step_flashing_length,
    step_flashing_pieces,
    strips_for_caps,
)

F = Fraction


def test_caps_of_a_ridge() -> None:
    """Derived: one piece an exposure; the finish piece is common practice, no published source."""
    assert caps(32, F(45, 8)) == 69 + 1
    assert caps(30, 5) == 72 + 1


def test_three_caps_from_a_three_tab_strip() -> None:
    """Roofers' forum (seen, weight C)."""
    assert strips_for_caps(72) == 24
    assert strips_for_caps(73) == 25


def test_a_36_inch_strip_starts_three_feet() -> None:
    """Derived from the strip's length."""
    assert starter_strips(40, 3) == 14
    assert starter_strips(39, 3) == 13


@pytest.mark.parametrize(
    ("pieces", "nails_each", "nails"), [(80, 4, 320), (80, 6, 480), (65, 4, 260), (65, 6, 390)]
)
def test_nails_a_square(pieces: int, nails_each: int, nails: int) -> None:
    """Contractor page: 320 a square at four (seen, weight C); the others derived from 80 and 65 pieces."""
    assert roofing_nails(pieces, nails_each) == nails


@pytest.mark.parametrize(("nails_a_pound", "weight_lb"), [(186, 1.72), (165, 1.94), (140, 2.29)])
def test_pounds_a_square_fall_in_the_printed_span(nails_a_pound: int, weight_lb: float) -> None:
    """1-1/2 in nails: 186 by a data sheet to F1667-05, 165 and 140 by trade pages; 1-1/2 to 3 lb a square.

    The three lists differ by a third, so the box's own count is asked for.
    """
    weight = float(pounds(320, nails_a_pound))
    assert weight == pytest.approx(weight_lb, abs=0.005)
    assert 1.5 <= weight <= 3


def test_four_spots_a_laminated_shingle() -> None:
    """ARMA, slopes greater than 21:12 (seen): four near the lower edge."""
    assert seal_spots(22, 4) == 88


def test_six_spots_a_three_tab_strip() -> None:
    """ARMA, the same bulletin (seen): two under each tab, six a strip."""
    assert seal_spots(10 * 3, 2) == 10 * 6


def test_cap_nails_on_the_twelve_and_six_inch_grid() -> None:
    """IBC 2018 Table 1507.1.1(3) (seen): 12 in between side laps, 6 in along laps; counts derived.

    A run of L feet takes L / 0.5 + 1 along a lap and L + 1 in a row between.
    """
    assert nails_in_row(20, 6) == 41
    assert nails_in_row(20, 12) == 21
    assert field_rows(36, 4, 12) == 2
    one_sheet = {"sheet_width_in": 36, "head_lap_in": 4, "lap_spacing_in": 6, "field_spacing_in": 12}
    assert cap_nails(20, 1, **one_sheet) == 2 * 41 + 2 * 21
    assert cap_nails(20, 5, **one_sheet) == 6 * 41 + 5 * 2 * 21


def test_half_lapped_sheets_have_one_row_between_laps() -> None:
    """19 in laps leave 17 in showing: one row between keeps the grid under 12 in."""
    assert field_rows(36, 19, 12) == 1
    assert field_rows(36, 24, 12) == 0


def test_a_row_never_leaves_a_gap_over_the_spacing() -> None:
    assert nails_in_row(F(5, 12), 6) == 2
    assert nails_in_row(F(121, 12), 6) == 22


def test_step_flashing_goes_one_a_course() -> None:
    """One a course as roofers count (seen, weight C); the piece at the top is common practice."""
    assert step_flashing_pieces(10, 5) == 24 + 1


@pytest.mark.parametrize(("lap_in", "length_in"), [(2, F(61, 8)), (3, F(69, 8))])
def test_step_flashing_is_longer_than_the_exposure_by_its_lap(lap_in: int, length_in: Fraction) -> None:
    """Sidewall Flashing, trade journal checklist (seen): 2 in, or 3 in in severe weather."""
    assert step_flashing_length(F(45, 8), lap_in) == length_in


@pytest.mark.parametrize(
    ("deck_in", "least_in"),
    [(F(15, 32), F(31, 32)), (F(1, 2), 1), (F(23, 32), F(39, 32)), (F(3, 4), F(9, 8)), (F(3, 2), F(9, 8))],
)
def test_least_roofing_nail_through_three_eighths_of_covering(deck_in: Fraction, least_in: Fraction) -> None:
    """IBC 1507.2.5 (seen): 3/4 in into the deck, or through a thinner one; ARMA (seen): 1/8 in past it."""
    assert least_nail_length(F(3, 8), deck_in) == least_in
