"""What a textbook says of whole roofs: Estimating in Building Construction, ch. 14, p. 181 (seen)."""

from fractions import Fraction

import pytest

from packet.calc.areas import rectangle_slope_area, trapezoid_slope_area, triangle_slope_area
from packet.calc.forms import planes
from packet.calc.geometry import left_side_length
from packet.calc.slope import hip_length, rake_length
from tests.support.whole_roofs import gable, hip, main_roof, slope_area

#: Length, span, rise in 12, and the area of the whole roof worked by hand: length x span x slope factor.
ROOFS = [
    (40, 24, 6, 1073.31),
    (40, 24, 12, 1357.65),
    (50, 30, 4, 1581.14),
    (36, 26, 9, 1170.00),
    (30, 30, 8, 1081.67),
]


def hip_roof(length_ft: float, span_ft: float, rise: float) -> float:
    """Two long sides that end in hips, and two hip ends; every plane runs half the span."""
    run_ft, ridge_ft = span_ft / 2, length_ft - span_ft
    long_side = trapezoid_slope_area(length_ft, ridge_ft, run_ft, rise)
    return 2 * long_side + 2 * triangle_slope_area(span_ft, run_ft, rise)


@pytest.mark.parametrize(("length_ft", "span_ft", "rise", "area_sq_ft"), ROOFS)
def test_a_hip_roof_has_the_area_of_a_gable_of_equal_span_pitch_and_length(
    length_ft: int, span_ft: int, rise: int, area_sq_ft: float
) -> None:
    """The book's statement, for five roofs; the square one has no ridge at all."""
    gable = 2 * rectangle_slope_area(length_ft, span_ft / 2, rise)
    assert gable == pytest.approx(area_sq_ft, abs=0.01)
    assert hip_roof(length_ft, span_ft, rise) == pytest.approx(area_sq_ft, abs=0.01)


@pytest.mark.parametrize(("length_ft", "span_ft", "rise", "area_sq_ft"), ROOFS)
def test_the_forms_of_a_hip_and_a_gable_roof_have_that_area_too(
    length_ft: int, span_ft: int, rise: int, area_sq_ft: float
) -> None:
    """The book's statement again, from length, span and pitch alone; a hip roof with one gable lies between."""
    length, span, of_12 = Fraction(length_ft), Fraction(span_ft), Fraction(rise)
    half = main_roof(length, span, front=of_12, right=of_12, back=of_12)
    for roof in (gable(length, span, of_12), hip(length, span, of_12), half):
        assert slope_area(planes([roof])) == pytest.approx(area_sq_ft, abs=0.01)


@pytest.mark.parametrize(
    ("run_ft", "rise", "rake_ft"), [(12, 6, 13.416), (15, 4, 15.811), (13, 9, 16.25), (12, 12, 16.971)]
)
def test_a_rake_is_run_times_factor(run_ft: int, rise: int, rake_ft: float) -> None:
    """The book's rule; the side of the plane by Pythagoras is the same line."""
    assert rake_length(run_ft, rise) == pytest.approx(rake_ft, abs=0.0006)
    assert left_side_length(0, run_ft, rise) == pytest.approx(rake_ft, abs=0.0006)


@pytest.mark.parametrize(("length_ft", "span_ft", "rise", "area_sq_ft"), ROOFS)
def test_a_gable_is_twice_rake_times_ridge(
    length_ft: int, span_ft: int, rise: int, area_sq_ft: float
) -> None:
    """The book's rule: 2 x rake x ridge length."""
    assert 2 * rake_length(span_ft / 2, rise) * length_ft == pytest.approx(area_sq_ft, abs=0.01)


@pytest.mark.parametrize(
    ("eave_ft", "run_ft", "rise", "area_sq_ft"), [(30, 12, 6, 402.49), (16, 10, 3, 164.92)]
)
def test_a_shed_is_rake_times_eave(eave_ft: int, run_ft: int, rise: int, area_sq_ft: float) -> None:
    """The book's rule."""
    assert rake_length(run_ft, rise) * eave_ft == pytest.approx(area_sq_ft, abs=0.01)
    assert rectangle_slope_area(eave_ft, run_ft, rise) == pytest.approx(area_sq_ft, abs=0.01)


@pytest.mark.parametrize(("run_ft", "rise", "hip_ft"), [(12, 6, 18.0), (12, 12, 20.785), (15, 4, 21.794)])
def test_a_hip_is_run_times_hip_factor(run_ft: int, rise: int, hip_ft: float) -> None:
    """Asphalt Shingles Field Guide (seen): hip factor times level run; the plane's own side is the same line."""
    assert hip_length(run_ft, rise) == pytest.approx(hip_ft, abs=0.0006)
    assert left_side_length(run_ft, run_ft, rise) == pytest.approx(hip_ft, abs=0.0006)
