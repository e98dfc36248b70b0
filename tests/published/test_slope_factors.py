"""Slope and hip factors against printed tables. Every figure was read in the named text (mark: seen)."""

import pytest

from packet.calc.slope import hip_factor, slope_factor

#: Printed tables carry three or four places; half a unit of the last printed place is rounding.
THREE_PLACES = 0.0005 + 1e-9
FOUR_PLACES = 0.0001

RAFTER_TABLE = {
    1: 1.003,
    2: 1.014,
    3: 1.031,
    4: 1.054,
    5: 1.083,
    6: 1.118,
    7: 1.158,
    8: 1.202,
    9: 1.250,
    10: 1.302,
    12: 1.414,
}
HIP_TABLE = {
    1: 1.4167,
    2: 1.4240,
    3: 1.4362,
    4: 1.4529,
    5: 1.4743,
    6: 1.5000,
    7: 1.5298,
    8: 1.5635,
    9: 1.6008,
    10: 1.6415,
    12: 1.7321,
}
UNIT_LENGTH_IN = {
    2: 12.17,
    3: 12.37,
    4: 12.65,
    5: 13.00,
    6: 13.42,
    7: 13.89,
    8: 14.42,
    9: 15.00,
    10: 15.62,
    12: 16.97,
}
FIELD_GUIDE = {4: (1.054, 1.452), 6: (1.118, 1.500), 8: (1.202, 1.564), 12: (1.414, 1.732)}


@pytest.mark.parametrize(("rise", "printed"), RAFTER_TABLE.items())
def test_slope_factor_matches_a_printed_rafter_table(rise: int, printed: float) -> None:
    """A supplier's rafter table, column of slope factors."""
    assert slope_factor(rise) == pytest.approx(printed, abs=THREE_PLACES)


@pytest.mark.parametrize(("rise", "printed"), HIP_TABLE.items())
def test_hip_factor_matches_a_printed_hip_and_valley_table(rise: int, printed: float) -> None:
    """Hip and valley factor table of a roofing reference; its 4:12 cell is cut (1.4530), not rounded."""
    assert hip_factor(rise) == pytest.approx(printed, abs=FOUR_PLACES)


@pytest.mark.parametrize(("rise", "printed_in"), UNIT_LENGTH_IN.items())
def test_unit_rafter_length_matches_a_framing_square_guide(rise: int, printed_in: float) -> None:
    """Inches of rafter to a foot of run, a framing-square guide."""
    assert 12 * slope_factor(rise) == pytest.approx(printed_in, abs=0.005 + 1e-9)


@pytest.mark.parametrize(("rise", "printed"), FIELD_GUIDE.items())
def test_both_factors_match_the_field_guide(rise: int, printed: tuple[float, float]) -> None:
    """Asphalt Shingles Field Guide, trade journal: three places; its 4:12 hip cell (1.452) is cut."""
    assert slope_factor(rise) == pytest.approx(printed[0], abs=THREE_PLACES)
    assert hip_factor(rise) == pytest.approx(printed[1], abs=0.001)


def test_two_printed_hip_cells_are_slips_and_are_not_copied() -> None:
    """The same guide prints 1.524 at 7:12 and 1.684 at 11:12, off by more than rounding: so compute."""
    assert hip_factor(7) == pytest.approx(1.530, abs=THREE_PLACES)
    assert abs(hip_factor(7) - 1.524) > 0.005
    assert hip_factor(11) == pytest.approx(1.685, abs=THREE_PLACES)
    assert abs(hip_factor(11) - 1.684) > THREE_PLACES


@pytest.mark.parametrize(
    ("rise", "slope", "hip"),
    [
        (4, 1.0541, 1.4530),
        (6, 1.1180, 1.5000),
        (8, 1.2019, 1.5635),
        (12, 1.4142, 1.7321),
    ],
)
def test_factors_to_four_places(rise: int, slope: float, hip: float) -> None:
    """Derived from the two roots; at 4:12 one printed table has 1.4529 and another 1.452, both cut."""
    assert round(slope_factor(rise), 4) == slope
    assert round(hip_factor(rise), 4) == hip


def test_a_hip_s_own_unit_run_is_the_diagonal_of_a_foot() -> None:
    """A carpentry textbook: 16.97 in of run to the foot, rounded to 17."""
    assert 12 * hip_factor(0) == pytest.approx(16.97, abs=0.005)
