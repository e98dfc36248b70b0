"""Squares, shingles and bundles against the trade's own figures."""

from fractions import Fraction

import pytest

from packet.calc.takeoff import bundles, bundles_by_square, pieces_a_square, shingles, squares

F = Fraction

#: The area of the check value: 42-1/3 squares.
AREA_SQ_FT = F(127, 3) * 100


def test_a_square_is_a_hundred_square_feet() -> None:
    """US Army subcourse EN5156, part C (seen)."""
    assert squares(100) == 1
    assert squares(AREA_SQ_FT) == F(127, 3)


def test_42_and_a_third_squares_at_three_bundles_is_127_not_128() -> None:
    """Exact: 42-1/3 times 3 is 127; floating noise above it adds no bundle."""
    assert bundles_by_square(AREA_SQ_FT, 3) == 127
    assert bundles_by_square(42.333333333333336 * 100, 3) == 127
    assert bundles_by_square(4233.333333333334, 3.0000000000000004) == 127
    assert bundles_by_square(AREA_SQ_FT + 1, 3) == 128


def test_by_a_wrapper_that_covers_32_8_square_feet_it_is_130() -> None:
    """4,233-1/3 over 32.8 is 129.07."""
    assert bundles(AREA_SQ_FT, F(328, 10)) == 130
    assert bundles(float(AREA_SQ_FT), 32.8) == 130


def test_a_rounded_cover_is_a_different_question() -> None:
    """A third of a square printed as 33.3 covers less than a third: 127.13, so 128 by that wrapper."""
    assert bundles(AREA_SQ_FT, F(333, 10)) == 128
    assert bundles(AREA_SQ_FT, F(100, 3)) == 127


@pytest.mark.parametrize(("cover_sq_ft", "bundles_a_square"), [(33.3, 3), (25, 4), (20, 5)])
def test_bundle_cover_matches_three_to_five_bundles_a_square(
    cover_sq_ft: float, bundles_a_square: int
) -> None:
    """Estimating in Building Construction, ch. 14: 33.3, 25 or 20 sq ft; 3 to 5 a square (seen)."""
    assert bundles_a_square == pytest.approx(100 / cover_sq_ft, abs=0.005)
    assert bundles_by_square(1000, bundles_a_square) == bundles(1000, F(100, bundles_a_square))


def test_english_strips_make_80_a_square() -> None:
    """Estimating in Building Construction, ch. 14: 12 by 36 in, 5 in exposure (seen); count derived."""
    assert pieces_a_square(36, 5) == 80
    assert shingles(100, 36, 5) == 80


def test_metric_shingles_make_65_a_square() -> None:
    """13-1/4 by 39-3/8 in at 5-5/8 in (size seen on a trade page; count derived)."""
    assert float(pieces_a_square(F(315, 8), F(45, 8))) == pytest.approx(65.02, abs=0.005)


def test_a_third_of_a_square_holds_about_27_strips() -> None:
    """US Navy NAVEDTRA 14044, ch. 3: 27 strips a bundle (seen); 80 over 3 is 26.7. The wrapper governs."""
    assert shingles(F(100, 3), 36, 5) == 27
