"""How a number and its unit are written for a reader."""

from fractions import Fraction

import pytest

from packet.text import figure_text, load_words
from packet.workspace import packaged


@pytest.mark.parametrize(
    ("value", "unit", "decimals", "text"),
    [
        (1, "piece", 0, "1 piece"),
        (-1, "piece", 0, "−1 piece"),
        (-2, "piece", 0, "−2 pieces"),
        (0, "piece", 0, "0 pieces"),
        (Fraction(1, 2), "bundle", 2, "1/2 bundle"),
        (Fraction(-1, 2), "bundle", 2, "−1/2 bundle"),
        (Fraction(-3, 2), "bundle", 2, "−1 1/2 bundles"),
        (Fraction(1, 2), "square", 2, "0.50 squares"),
    ],
)
def test_one_of_a_thing_is_written_as_one_also_where_it_is_one_less(
    value: Fraction, unit: str, decimals: int, text: str
) -> None:
    words = load_words([packaged("shared")])
    assert figure_text({"value": value, "unit": unit, "decimals": decimals}, words) == text
