"""What is bought beyond the need, and the old rules of thumb that hide caps and starter in an area."""

from fractions import Fraction

import pytest

from packet.calc.fasteners import nails_in_row, pounds
from packet.calc.takeoff import (
    bundles_by_square,
    caps,
    pieces_a_square,
    ridge_vent_pieces,
    shingles,
    starter_strips,
    strips_for_caps,
    to_buy,
    top_lap,
    valley_pieces,
    with_allowance,
)

F = Fraction


@pytest.mark.parametrize(
    ("percent", "sq_ft"),
    [
        (5, 2625),  # Estimating in Building Construction, ch. 14: 5 to 8 percent (seen)
        (8, 2700),
        (
            10,
            2750,
        ),  # roofers' forum and a contractor's note: 10 plain, 15 with valleys or hips (seen, weight C)
        (15, 2875),
    ],
)
def test_waste_is_a_stated_allowance(percent: int, sq_ft: int) -> None:
    """Four published shares of one roof of 25 squares; they differ by two and a half squares.

    None is a constant: the record states the share and whose it is.
    """
    assert with_allowance(2500, percent) == sq_ft


def test_an_allowance_of_nothing_changes_nothing_and_parts_of_a_percent_are_exact() -> None:
    assert with_allowance(F(12700, 3), 0) == F(12700, 3)
    assert with_allowance(100, F(15, 2)) == F(215, 2)


def test_an_allowance_that_fits_whole_units_buys_no_more() -> None:
    """Exact: 100 and a tenth is 110, in floats a little more; 4,233-1/3 in thirds of a square is 127."""
    assert 100 * 1.1 > 110
    assert to_buy(with_allowance(100, 10), 10) == 11
    assert to_buy(with_allowance(1250, 8), 25) == 54
    assert to_buy(4233.333333333334, F(100, 3)) == 127
    assert to_buy(0, 10) == 0


def test_two_bundles_besides() -> None:
    """Estimating Asphalt Shingles, trade journal (seen): two more for waste, caps and future repairs."""
    assert bundles_by_square(2500, 3) + 2 == 77


def test_hips_and_ridges_as_a_foot_of_area_are_three_caps_from_a_strip() -> None:
    """Estimating in Building Construction (seen): length x 1 ft; roofers' forum (seen): three from a strip.

    At 5 in exposure 20 ft take 48 caps, 16 strips of the 80 in a square: 20 sq ft. The finish piece is over that.
    """
    strips = strips_for_caps(caps(20, 5) - 1)
    assert strips == 16
    assert 100 * strips / pieces_a_square(36, 5) == 20


def test_starter_is_one_course_more_at_the_eave() -> None:
    """Estimating in Building Construction (seen): one extra course; at 36 in strips both counts agree."""
    assert starter_strips(30, 3) == 10
    assert shingles(30 * F(5, 12), 36, 5) == 10


def test_a_woven_valley_takes_a_bundle_to_16_feet() -> None:
    """Estimating Asphalt Shingles, trade journal (seen)."""
    assert to_buy(16, 16) == 1
    assert to_buy(F(1697, 100), 16) == 2


@pytest.mark.parametrize(
    ("strips_each", "a_square", "whole_roof"),
    [(27, 3, 126), (29, 3, 117), (26, 4, 131)],
)
def test_bundles_differ_by_the_strips_in_them(strips_each: int, a_square: int, whole_roof: int) -> None:
    """27 by NAVEDTRA 14044, 29 by a trade text, 26 by a trade forum (all seen); a third of 80 is 26.7.

    42-1/3 squares are 3,387 strips. None of the three is taken: the count on the wrapper is.
    """
    assert to_buy(80, strips_each) == a_square
    assert to_buy(shingles(F(12700, 3), 36, 5), strips_each) == whole_roof


def test_top_lap_is_height_less_exposure() -> None:
    """US Army subcourse EN5156, part C (seen); on the strip's and the metric shingle's printed sizes."""
    assert top_lap(12, 5) == 7
    assert top_lap(F(53, 4), F(45, 8)) == F(61, 8)


@pytest.mark.parametrize(
    ("length", "page_one", "data_sheet"), [("1-1/4", 190, 218), ("1-1/2", 165, 186), ("1-3/4", 145, 152)]
)
def test_lists_of_nails_to_the_pound_differ_by_5_to_15_percent(
    length: str, page_one: int, data_sheet: int
) -> None:
    """A trade page (seen, weight C) against a data sheet to F1667-05 (seen): so the box's own count is asked."""
    more = float(pounds(6400, page_one) / pounds(6400, data_sheet)) - 1
    assert 0.045 < more < 0.15


@pytest.mark.parametrize(("nails", "printed_lb"), [(320, 2.25), (480, 3.5)])
def test_pounds_a_square_as_printed_belong_to_140_nails_a_pound(nails: int, printed_lb: float) -> None:
    """A second trade page (seen, weight C): 2-1/4 lb at 320, 3-1/2 at 480, and 140 to the pound.

    Its own 140 gives them to the quarter pound; the 165 of the first page does not.
    """
    assert round(4 * float(pounds(nails, 140))) / 4 == printed_lb
    assert round(4 * float(pounds(nails, 165))) / 4 != printed_lb


@pytest.mark.parametrize(("spacing_in", "nails"), [(12, 41), (10, 49)])
def test_nails_along_40_feet_of_drip_edge(spacing_in: int, nails: int) -> None:
    """12 in by the code as a metal maker quotes it, 10 in by NAVEDTRA 14045 (both seen).

    The spacing is the record's or the rule's of the job; none is built in.
    """
    assert nails_in_row(40, spacing_in) == nails


def test_a_valley_lining_in_10_foot_pieces() -> None:
    """Derived: 17 ft valley at 6 in laps takes two pieces, at 20 ft the laps cost a third."""
    assert valley_pieces(17, 10, F(1, 2)) == 2
    assert valley_pieces(20, 10, F(1, 2)) == 3


def test_ridge_vent_goes_end_to_end() -> None:
    """Derived: 32 ft of 4 ft pieces is eight, and a foot more a ninth."""
    assert ridge_vent_pieces(32, 4) == 8
    assert ridge_vent_pieces(33, 4) == 9
