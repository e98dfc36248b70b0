"""The evaluator must be strict, or a test that leans on it proves nothing."""

from fractions import Fraction

import pytest

from packet.units import ROUND_UP_TOLERANCE
from tests.support.arithmetic import NOISE, NotArithmetic, evaluate, names


@pytest.mark.parametrize(
    ("formula", "value"),
    [
        ("1 / 3 + 1 / 3", Fraction(2, 3)),
        ("0.1 * 3", Fraction(3, 10)),
        ("-2 ** 2", -4),
        ("2 ** -1", Fraction(1, 2)),
        ("sqrt(9 / 16)", 0.75),
        ("ceil(127 / 3 * 3) + floor(7 / 2)", 130),
        ("max(1, min(3, 2))", 2),
    ],
)
def test_arithmetic_is_evaluated_exactly(formula: str, value: object) -> None:
    assert evaluate(formula, {}) == value


def test_given_values_are_put_in() -> None:
    assert evaluate("a / b", {"a": 1, "b": 3}) == Fraction(1, 3)
    assert names("sqrt(a) + b * b") == {"a", "b"}


def test_a_float_a_hair_above_a_whole_number_is_not_a_further_piece() -> None:
    assert evaluate("ceil(a)", {"a": 127.00000000000003}) == 127
    assert evaluate("ceil(a)", {"a": 127.001}) == 128
    assert evaluate("floor(a)", {"a": 126.99999999999997}) == 127
    assert NOISE == ROUND_UP_TOLERANCE


@pytest.mark.parametrize(
    "formula",
    [
        "__import__('os')",
        "a.real",
        "(lambda: 1)()",
        "[1][0]",
        "'a' * 3",
        "1 if 2 else 3",
        "1 < 2",
        "a := 1",
        "True",
        "+1",
        "7 // 2",
        "7 % 2",
        "~1",
        "abs(1)",
        "sqrt(1, 2)",
        "max(1)",
        "max(*[1, 2])",
        "max(1, key=2)",
        "2 ** 1000000000",
        "1j",
        "sqrt",
        "1 +",
        "",
        "1 + " * 1000 + "1",
    ],
)
def test_anything_but_arithmetic_is_refused(formula: str) -> None:
    with pytest.raises(NotArithmetic):
        evaluate(formula, {})


def test_a_missing_or_unused_value_is_refused() -> None:
    with pytest.raises(NotArithmetic, match="no value for b"):
        evaluate("a + b", {"a": 1})
    with pytest.raises(NotArithmetic, match="not in the formula: c"):
        evaluate("a", {"a": 1, "c": 2})
