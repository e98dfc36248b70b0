"""Smooth nails in withdrawal."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.calc.deck.withdrawal import smooth_withdrawal, ultimate_withdrawal
from packet.calc.domain import OutOfRange

GRAVITY = st.floats(0.31, 0.73)
SHANK = st.floats(0.09, 0.2)


@given(GRAVITY, SHANK)
def test_the_reference_value_is_a_fifth_of_the_ultimate(gravity: float, shank: float) -> None:
    assert 5 * smooth_withdrawal(gravity, shank) == pytest.approx(ultimate_withdrawal(gravity, shank))


@given(GRAVITY, SHANK)
def test_twice_the_shank_holds_twice_and_four_times_the_gravity_thirty_two_times(
    gravity: float, shank: float
) -> None:
    assert smooth_withdrawal(gravity, 2 * shank) == pytest.approx(2 * smooth_withdrawal(gravity, shank))
    assert smooth_withdrawal(4 * gravity, shank) == pytest.approx(32 * smooth_withdrawal(gravity, shank))


def test_nonsense_is_refused() -> None:
    for wrong in ((0, 0.131), (0.5, 0), (-0.5, 0.131), (float("inf"), 0.131)):
        with pytest.raises(OutOfRange):
            smooth_withdrawal(*wrong)
        with pytest.raises(OutOfRange):
            ultimate_withdrawal(*wrong)
