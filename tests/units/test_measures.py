from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packet import units
from packet.units import NotAMeasure
from tests.support.outcome import outcome

F = Fraction


@pytest.mark.parametrize(
    ("text", "rise"),
    [
        ("6:12", 6),
        ("6/12", 6),
        ("6 on 12", 6),
        ("6 in 12", 6),
        ("6 : 12", 6),
        ("6-1/2:12", F(13, 2)),
        ("6 1/2 in 12", F(13, 2)),
        ("6-1/2/12", F(13, 2)),
        ("6\u00bd:12", F(13, 2)),
        ("4.5/12", F(9, 2)),
        ("0:12", 0),
    ],
)
def test_pitch_spelling_is_read(text: str, rise: Fraction) -> None:
    assert units.parse_pitch(text).rise_in_12 == rise


def test_pitch_factors() -> None:
    pitch = units.parse_pitch("9:12")
    assert pitch.slope_factor == 1.25
    assert pitch.hip_factor == pytest.approx(1.6008, abs=5e-5)
    assert pitch.angle_deg == pytest.approx(36.87, abs=5e-3)


@pytest.mark.parametrize(
    ("text", "square_feet"),
    [
        ("100 sq ft", 100),
        ("32.8 sq ft", F(164, 5)),
        ("32.8 sq. ft.", F(164, 5)),
        ("100 square feet", 100),
        ("1 square foot", 1),
        ("100 sf", 100),
        ("100 ft\u00b2", 100),
        ("1 square", 100),
        ("3-1/2 squares", 350),
        ("1,234.5 sq ft", F(2469, 2)),
    ],
)
def test_area_spelling_is_read(text: str, square_feet: Fraction) -> None:
    assert units.parse_area(text).square_feet == square_feet
    assert units.parse_area(text).squares * 100 == square_feet


@pytest.mark.parametrize("text", ["130 mph", "130mph", "130 MPH", "130 miles per hour"])
def test_speed_spelling_is_read(text: str) -> None:
    assert units.parse_speed(text).mph == 130


@pytest.mark.parametrize(
    "text",
    [
        "2-3/8 x 0.113",
        "2-3/8 in x 0.113 in",
        '2-3/8" \u00d7 .113"',
        "2 3/8 X 0.113",
        "2\u215c\u2033 x 0.113\u2033",
        "2-3/8 by 0.113 in",
        "0.113 x 2-3/8",
    ],
)
def test_nail_size_spelling_is_read(text: str) -> None:
    nail = units.parse_nail_size(text)
    assert (nail.length_in, nail.shank_in) == (F(19, 8), F(113, 1000))


@pytest.mark.parametrize(
    ("text", "value"), [("5", 5), ("3-1/2", F(7, 2)), ("0.5", F(1, 2)), ("\u00bd", F(1, 2)), ("0", 0)]
)
def test_quantity_spelling_is_read(text: str, value: Fraction) -> None:
    assert units.parse_quantity(text) == value


@pytest.mark.parametrize(("text", "value"), [("0", 0), ("4", 4), ("1988", 1988), ("1,200", 1200), (" 7 ", 7)])
def test_count_spelling_is_read(text: str, value: int) -> None:
    assert units.parse_count(text) == value


@pytest.mark.parametrize(
    ("parse", "text", "code"),
    [
        (units.parse_pitch, "6", "no-unit"),
        (units.parse_pitch, "flat", "bad-pitch"),
        (units.parse_pitch, "1:2", "bad-pitch"),
        (units.parse_pitch, "6/10", "bad-pitch"),
        (units.parse_pitch, "252", "no-unit"),
        (units.parse_pitch, "27 degrees", "bad-pitch"),
        (units.parse_pitch, "-6:12", "negative"),
        (units.parse_pitch, "1/0:12", "zero-denominator"),
        (units.parse_pitch, "121:12", "out-of-range"),
        (units.parse_pitch, "1e999999:12", "not-plain-number"),
        (units.parse_area, "100", "no-unit"),
        (units.parse_area, "2 sq", "bad-area"),
        (units.parse_area, "-1 square", "negative"),
        (units.parse_area, "nan sq ft", "not-plain-number"),
        (units.parse_area, "1,000,001 sq ft", "out-of-range"),
        (units.parse_speed, "130", "no-unit"),
        (units.parse_speed, "58 m/s", "bad-speed"),
        (units.parse_speed, "0 mph", "out-of-range"),
        (units.parse_speed, "1300 mph", "out-of-range"),
        (units.parse_nail_size, "8d", "penny-size"),
        (units.parse_nail_size, "8d ring shank", "penny-size"),
        (units.parse_nail_size, "16 penny", "penny-size"),
        (units.parse_nail_size, "2-3/8", "no-unit"),
        (units.parse_nail_size, "2-3/8 x 11 ga", "bad-nail-size"),
        (units.parse_nail_size, "2-3/8 x 0", "out-of-range"),
        (units.parse_nail_size, "2-3/8 x 113", "out-of-range"),
        (units.parse_nail_size, "2-3/0 x 0.113", "zero-denominator"),
        (units.parse_count, "3.5", "bad-count"),
        (units.parse_count, "-3", "negative"),
        (units.parse_count, "1e6", "not-plain-number"),
        (units.parse_count, "0x10", "bad-count"),
        (units.parse_count, "\u0665", "bad-count"),
        (units.parse_count, "1000001", "out-of-range"),
        (units.parse_count, "9" * 60, "bad-count"),
        (units.parse_quantity, "5 bundles", "bad-quantity"),
        (units.parse_quantity, "1/0", "zero-denominator"),
        (units.parse_quantity, "-0.5", "negative"),
        (units.parse_quantity, "inf", "not-plain-number"),
        (units.parse_quantity, "1e999999", "not-plain-number"),
        (units.parse_quantity, "1" * 61, "too-long"),
    ],
)
def test_anything_else_is_refused_with_its_code(parse: Callable[[str], object], text: str, code: str) -> None:
    with pytest.raises(NotAMeasure) as refused:
        parse(text)
    assert refused.value.code == code
    assert refused.value.accepted


PARSERS = (
    units.parse_length,
    units.parse_pitch,
    units.parse_area,
    units.parse_speed,
    units.parse_nail_size,
    units.parse_count,
    units.parse_quantity,
)


@pytest.mark.parametrize("parse", PARSERS)
def test_every_accepted_form_it_names_is_accepted(parse: Callable[[str], object]) -> None:
    with pytest.raises(NotAMeasure) as refused:
        parse("no measure")
    for form in refused.value.accepted:
        parse(form)


@pytest.mark.parametrize("parse", PARSERS)
@given(text=st.one_of(st.text(max_size=70), st.text(alphabet="0123456789 -/.,:'\"xsqftmphdin", max_size=60)))
def test_any_text_is_a_measure_or_a_refusal(parse: Callable[[str], object], text: str) -> None:
    refused = outcome(parse, text)
    assert not isinstance(refused, NotAMeasure) or (refused.code and refused.accepted)


@pytest.mark.parametrize(
    ("parse", "limits", "text", "accepted"),
    [
        (units.parse_pitch, {"least": 2, "most": F(43, 2)}, "1:12", "from 2:12 to 21-1/2:12"),
        (units.parse_area, {"least": 1, "most": F(250, 3)}, "84 sq ft", "from 1 sq ft to 83-1/3 sq ft"),
        (units.parse_speed, {"least": 85, "most": 200}, "84 mph", "from 85 mph to 200 mph"),
        (units.parse_count, {"least": 4, "most": 6}, "7", "from 4 to 6"),
        (units.parse_quantity, {"least": F(1, 2), "most": 6}, "0.25", "from 1/2 to 6"),
        (
            units.parse_nail_size,
            {"least_length_in": F(2), "most_length_in": F(3)},
            "1-1/2 x 0.131",
            "from a length of 2 in to a length of 3 in",
        ),
        (
            units.parse_nail_size,
            {"least_shank_in": F(1, 10), "most_shank_in": F(1, 5)},
            "2 x 0.05",
            "from a shank of 0.1 in to a shank of 0.2 in",
        ),
    ],
)
def test_a_declared_range_is_named(
    parse: Callable[..., object], limits: dict[str, Fraction], text: str, accepted: str
) -> None:
    with pytest.raises(NotAMeasure) as refused:
        parse(text, **limits)
    assert (refused.value.code, refused.value.accepted) == ("out-of-range", (accepted,))
