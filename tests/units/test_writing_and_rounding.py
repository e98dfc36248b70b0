import math
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.units import (
    decimal_text,
    feet_and_inches,
    fraction_text,
    parse_length,
    parse_quantity,
    round_half_away,
    round_up,
)

F = Fraction


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (F(301, 2), "12\u2032 6 1/2\u2033"),
        (F(144), "12\u2032"),
        (F(0), "0\u2033"),
        (F(1, 2), "1/2\u2033"),
        (F(13, 2), "6 1/2\u2033"),
        (F(51, 8), "6 3/8\u2033"),
        (F(107, 16), "6 11/16\u2033"),
        (F(11, 16), "11/16\u2033"),
        (F(1441, 10), "12\u2032 1/8\u2033"),
        (F(143999, 1000), "12\u2032"),
        (F(-30), "\u22122\u2032 6\u2033"),
        (F(1, 32), "1/16\u2033"),
        (F(1, 33), "0\u2033"),
    ],
)
def test_feet_and_inches_have_real_marks(inches: Fraction, text: str) -> None:
    assert feet_and_inches(inches) == text


def test_the_parts_of_an_inch_can_be_chosen() -> None:
    assert feet_and_inches(F(51, 8), denominator=2) == "6 1/2\u2033"
    assert feet_and_inches(F(47, 4), denominator=1) == "1\u2032"
    assert feet_and_inches(F(1, 64), denominator=64) == "1/64\u2033"
    with pytest.raises(ValueError, match="at least one part"):
        feet_and_inches(F(1), denominator=0)


@given(st.integers(-100_000, 100_000))
def test_shown_sixteenths_read_back(sixteenths: int) -> None:
    assert parse_length(feet_and_inches(F(sixteenths, 16))).inches == F(sixteenths, 16)


@given(st.integers(0, 900_000_000), st.integers(1, 9999))
def test_fraction_reads_back(numerator: int, denominator: int) -> None:
    value = F(numerator, denominator) % 1_000_000
    assert parse_quantity(fraction_text(value)) == value


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    [
        (F(5, 2), 0, "3"),
        (F(-5, 2), 0, "-3"),
        (0.125, 2, "0.13"),
        (2.675, 2, "2.67"),
        (F(2675, 1000), 2, "2.68"),
        (-0.04, 1, "0.0"),
        (1234567, 2, "1234567.00"),
        (F(1, 3), 4, "0.3333"),
        (9.999, 2, "10.00"),
        (1e-300, 3, "0.000"),
    ],
)
def test_decimals_round_half_away_from_zero(value: float | Fraction, decimals: int, text: str) -> None:
    assert decimal_text(value, decimals) == text


@given(st.floats(-1e9, 1e9), st.integers(0, 6))
def test_decimals_agree_with_decimal_arithmetic(value: float, decimals: int) -> None:
    expected = Decimal(value).quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP)
    assert Decimal(decimal_text(value, decimals)) == expected


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_not_finite_is_not_rounded(value: float) -> None:
    for round_it in (
        lambda: decimal_text(value, 1),
        lambda: round_up(value),
        lambda: round_half_away(value, F(1)),
    ):
        with pytest.raises(ValueError, match="cannot be rounded"):
            round_it()


def test_rounding_up_ignores_noise_and_nothing_more() -> None:
    assert round_up(0.1 * 3 * 10) == 3
    assert round_up(F(3)) == 3
    assert round_up(F(3) + F(1, 10**9)) == 3
    assert round_up(F(3) + F(2, 10**9)) == 4
    assert round_up(3.2, tolerance=F(1, 4)) == 3
    assert round_up(-2.5) == -2
    assert round_up(0) == 0


def test_rounding_up_to_a_step() -> None:
    assert round_up(F(13, 16), F(1, 4)) == 1
    assert round_up(F(3, 4), F(1, 4)) == F(3, 4)
    assert round_up(41, 12) == 48
    assert isinstance(round_up(41.0, 12), int)


@pytest.mark.parametrize(("step", "tolerance"), [(0, F(0)), (-1, F(0)), (1, F(-1)), (1, F(1))])
def test_a_step_or_tolerance_without_sense_is_refused(step: int, tolerance: Fraction) -> None:
    with pytest.raises(ValueError, match="round_up needs"):
        round_up(1, step, tolerance=tolerance)


@given(st.integers(1, 10_000), st.integers(1, 50))
def test_whole_pieces_put_together_in_floats_are_counted_once(pieces: int, parts: int) -> None:
    total = math.fsum([pieces / parts] * parts)
    assert round_up(total) == pieces
    assert round_up(sum([pieces / parts] * parts)) == pieces


@pytest.mark.parametrize("decimals", [-1, 13])
def test_decimals_nobody_can_use_are_refused(decimals: int) -> None:
    with pytest.raises(ValueError, match="0 to 12"):
        decimal_text(1, decimals)


def test_a_step_of_zero_is_refused_in_rounding_for_show() -> None:
    with pytest.raises(ValueError, match="above 0"):
        round_half_away(1, F(0))
