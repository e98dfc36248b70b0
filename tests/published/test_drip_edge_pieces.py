"""Edge metal in 10 ft pieces; 2 in lap by IRC R905.2.8.5, as a roof-edge metal maker quotes it (seen)."""

from fractions import Fraction

import pytest

from packet.calc.takeoff import drip_edge_pieces, lapped_length

TWO_INCHES_FT = Fraction(1, 6)


@pytest.mark.parametrize(("length_ft", "pieces"), [(40, 5), (100, 11)])
def test_pieces_of_a_run_with_two_inch_laps(length_ft: int, pieces: int) -> None:
    """Derived: 9 ft 10 in net a piece after the first."""
    assert drip_edge_pieces(length_ft, 10, TWO_INCHES_FT) == pieces


def test_the_last_whole_fit_takes_no_further_piece() -> None:
    """Four pieces reach 10 + 3 x 9-5/6 = 39-1/2 ft; a float of that length is the same run."""
    reach = 10 + 3 * (10 - TWO_INCHES_FT)
    assert reach == Fraction(79, 2)
    assert drip_edge_pieces(reach, 10, TWO_INCHES_FT) == 4
    assert drip_edge_pieces(39.5, 10, 1 / 6) == 4
    assert drip_edge_pieces(reach + Fraction(1, 192), 10, TWO_INCHES_FT) == 5


def test_eight_foot_pieces_and_no_lap() -> None:
    """Household estimating note (seen, weight C): pieces are 8 or 10 ft."""
    assert drip_edge_pieces(40, 8, 0) == 5
    assert drip_edge_pieces(40, 8, TWO_INCHES_FT) == 6


@pytest.mark.parametrize("length_ft", [Fraction(1, 12), Fraction(1, 6), 1, 10])
def test_a_run_of_one_piece_or_less_takes_one(length_ft: Fraction) -> None:
    assert drip_edge_pieces(length_ft, 10, TWO_INCHES_FT) == 1


def test_laps_ignored_would_be_a_piece_short() -> None:
    assert drip_edge_pieces(40, 10, 0) == 4


def test_metal_that_lies_in_a_run_is_the_run_and_its_laps() -> None:
    """Derived: five pieces in 40 ft lie 40 ft 8 in, of the 50 ft bought."""
    assert lapped_length(40, drip_edge_pieces(40, 10, TWO_INCHES_FT), TWO_INCHES_FT) == Fraction(122, 3)
    assert lapped_length(10, 1, TWO_INCHES_FT) == 10
