from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet.units import Length, NotAMeasure, parse_length, plain_length
from tests.support.outcome import outcome

F = Fraction


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("12' 6\"", 150),
        ("12'-6\"", 150),
        ("12'6\"", 150),
        ("12' - 6\"", 150),
        ("12' 6-1/2\"", F(301, 2)),
        ("12'-6 1/2\"", F(301, 2)),
        ("12 ft 6 in", 150),
        ("12ft6in", 150),
        ("12 ft. 6 in.", 150),
        ("12 feet 6 1/2 inches", F(301, 2)),
        ("1 foot 1 inch", 13),
        ("12 FT 6 IN", 150),
        ('6-1/2"', F(13, 2)),
        ("6 1/2 in", F(13, 2)),
        ("6 - 1/2 in", F(13, 2)),
        ("3/8 in", F(3, 8)),
        ("0.131 in", F(131, 1000)),
        ('.131"', F(131, 1000)),
        ("12.5 ft", 150),
        ("12-1/2 ft", 150),
        ("4'", 48),
        ("0 ft", 0),
        ("1,000 ft", 12000),
        ("12\u2032 6\u2033", 150),
        ("12\u2019 6\u201d", 150),
        ("12' 6''", 150),
        ("12\u2032 6\u00bd\u2033", F(301, 2)),
        ("12\u2032 6 11\u204416\u2033", F(2411, 16)),
        ("\u215c in", F(3, 8)),
        ("15\u00a0\u00be in", F(63, 4)),
        ("6\u20131/2 in", F(13, 2)),
        ("16 oc", 16),
        ("16 o.c.", 16),
        ("16 o.c", 16),
        ("16 in on center", 16),
        ("16 on center", 16),
        ('16" O.C.', 16),
        ("2 ft oc", 24),
        ("  12 ft   6 in ", 150),
    ],
)
def test_trade_spelling_is_read(text: str, inches: Fraction) -> None:
    assert parse_length(text).inches == inches
    assert parse_length(text).text == text


def test_feet_are_the_same_length() -> None:
    assert parse_length("12' 6\"").feet == F(25, 2)
    assert parse_length("48 in") == parse_length("4'")
    assert parse_length("3 ft") < parse_length("4'")


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("12", "no-unit"),
        ("12.5", "no-unit"),
        ("6-1/2", "no-unit"),
        ("12' 6", "no-unit"),
        ("12 ft 6-1/2", "no-unit"),
        ("-12", "no-unit"),
        ("", "bad-length"),
        ("   ", "bad-length"),
        ("twelve feet", "bad-length"),
        ("12 mm", "bad-length"),
        ("12.5' 6\"", "bad-length"),
        ("12' 12\"", "bad-length"),
        ("12 in 6 ft", "bad-length"),
        ("6-5/4 in", "bad-length"),
        ("6-4/4 in", "bad-length"),
        ("1 2 in", "bad-length"),
        ("12. in", "bad-length"),
        ("1,00 in", "bad-length"),
        ("--6 in", "bad-length"),
        ("+6 in", "bad-length"),
        ("6 in x 4 in", "bad-length"),
        ("6 in\x00", "bad-length"),
        ("\u0666 in", "bad-length"),
        ("1/0 in", "zero-denominator"),
        ("6-1/00 in", "zero-denominator"),
        ("1e999999 in", "not-plain-number"),
        ("1e3 ft", "not-plain-number"),
        ("1.e+5 in", "not-plain-number"),
        ("nan in", "not-plain-number"),
        ("inf ft", "not-plain-number"),
        ("-Infinity ft", "not-plain-number"),
        ("9" * 9 + " ft", "out-of-range"),
        ("9" * 10 + " ft", "bad-length"),
        ("9" * 61, "too-long"),
        (" " * 5_000_000 + "1 in", "too-long"),
    ],
)
def test_anything_else_is_refused_with_its_code(text: str, code: str) -> None:
    with pytest.raises(NotAMeasure) as refused:
        parse_length(text)
    assert refused.value.code == code
    assert refused.value.accepted
    assert len(refused.value.found) <= 61


def test_a_bare_number_names_the_accepted_forms() -> None:
    with pytest.raises(NotAMeasure) as refused:
        parse_length("12")
    assert refused.value.found == "12"
    for form in refused.value.accepted:
        parse_length(form)


def test_the_declared_range_includes_its_ends() -> None:
    limits = {"least_in": F(1, 4), "most_in": F(120)}
    assert parse_length("1/4 in", **limits).inches == F(1, 4)
    assert parse_length("10 ft", **limits).inches == 120
    for text in ("0 in", "15/64 in", "10 ft 1/64 in"):
        with pytest.raises(NotAMeasure) as refused:
            parse_length(text, **limits)
        assert (refused.value.code, refused.value.accepted) == ("out-of-range", ("from 1/4 in to 10 ft",))


def test_a_minus_sign_is_read_only_where_the_range_reaches_below_zero() -> None:
    assert parse_length("-12 ft", least_in=F(-144)).inches == -144
    assert parse_length("\u221212' 6\"", least_in=F(-500)).inches == -150
    with pytest.raises(NotAMeasure) as refused:
        parse_length("-12 ft", least_in=F(0))
    assert refused.value.code == "negative"


@given(st.fractions(min_value=-10_000 * 12, max_value=10_000 * 12, max_denominator=64))
def test_plain_length_reads_back(inches: Fraction) -> None:
    assert parse_length(plain_length(inches)) == Length(inches)


@given(st.text(max_size=80))
def test_any_text_is_a_length_or_a_refusal(text: str) -> None:
    refused = outcome(parse_length, text)
    assert not isinstance(refused, NotAMeasure) or (refused.code and refused.accepted)


@given(st.text(alphabet="0123456789 -/.,'\"ftinocx", max_size=60))
def test_near_spellings_stay_in_the_widest_range(text: str) -> None:
    read = outcome(parse_length, text)
    assert read.found == text if isinstance(read, NotAMeasure) else abs(read.inches) <= 120_000
