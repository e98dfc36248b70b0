import pytest

from packet.drawings.lettering import STYLES, width_px, wrapped

KEY = STYLES["key"]


def test_wide_letters_take_more_room_than_narrow_ones() -> None:
    assert width_px("WWW", KEY) > 2 * width_px("iii", KEY)
    assert width_px("\u5c4b\u6839", KEY) >= 2 * KEY.size_px
    assert width_px("e\u0301", KEY) == width_px("e", KEY)


@pytest.mark.parametrize("most", [30.0, 60.0, 200.0])
def test_wrapping_keeps_every_letter_and_the_width(most: float) -> None:
    text = "a roof over the kitchen Donaudampfschifffahrtsgesellschaft and more"
    lines = wrapped(text, KEY, most)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert all(width_px(line, KEY) <= most for line in lines)


def test_no_lettering_is_smaller_than_eleven_px() -> None:
    assert min(style.size_px for style in STYLES.values()) >= 11
