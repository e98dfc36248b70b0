"""Pitch, area, wind speed and nail size in trade spellings."""

import re
from fractions import Fraction

from packet.units.kinds import Area, NailSize, Pitch, Speed
from packet.units.numbers import NUMBER, Kind, number, unsigned, within
from packet.units.writing import fraction_text

PITCH = Kind("bad-pitch", ("6:12", "6/12", "6 on 12", "6-1/2:12"))
AREA = Kind("bad-area", ("32.8 sq ft", "100 sq ft", "1 square", "3-1/2 squares"))
SPEED = Kind("bad-speed", ("130 mph",))
NAIL = Kind("bad-nail-size", ("2-3/8 x 0.113", "2-1/2 in x 0.131 in"))

_PITCH = re.compile(rf"({NUMBER}) ?(?:[:/]|on|in) ?12")
_AREA = re.compile(rf"({NUMBER}) ?(?:(?:sq\.?|square) ?(?:ft\.?|feet|foot)|sf|ft\.? ?2|(squares?))")
_SPEED = re.compile(rf"({NUMBER}) ?(?:mph|mi/h|miles per hour)")
_INCH = r'(?: ?(?:"|inches|inch|in\.?))?'
_NAIL = re.compile(rf"({NUMBER}){_INCH} ?(?:x|by) ?({NUMBER}){_INCH}")
_PENNY = re.compile(r"[0-9]{1,3} ?-?(?:d|penny)(?![a-z]).*")


def parse_pitch(text: str, *, least: Fraction | int = 0, most: Fraction | int = 120) -> Pitch:
    """Return a pitch written as rise in 12.

    Args:
        text: The text as typed.
        least: Least accepted rise in 12.
        most: Most accepted rise in 12.

    Raises:
        NotAMeasure: ``no-unit``, ``bad-pitch``, or one of the codes every measure shares.

    Example:
        >>> parse_pitch("6-1/2:12").rise_in_12
        Fraction(13, 2)
    """
    same = unsigned(text, PITCH)
    match = _PITCH.fullmatch(same)
    if not match:
        # 6/10 reads as a fraction too: it is a pitch over the wrong run, not a number without its 12.
        raise PITCH.refusal(text) if "/" in same else PITCH.bare(same, text)
    rise = number(match[1], text, PITCH)
    return Pitch(within(rise, least, most, text, lambda end: f"{fraction_text(end)}:12"), text)


def parse_area(text: str, *, least: Fraction | int = 0, most: Fraction | int = 1_000_000) -> Area:
    """Return an area; a square is 100 sq ft. ``sq`` alone is refused: it is read both ways.

    Args:
        text: The text as typed.
        least: Least accepted area [sq ft].
        most: Most accepted area [sq ft].

    Raises:
        NotAMeasure: ``no-unit``, ``bad-area``, or one of the codes every measure shares.

    Example:
        >>> parse_area("3-1/2 squares").square_feet
        Fraction(350, 1)
    """
    same = unsigned(text, AREA)
    match = _AREA.fullmatch(same)
    if not match:
        raise AREA.bare(same, text)
    size = number(match[1], text, AREA) * (100 if match[2] else 1)
    return Area(within(size, least, most, text, lambda end: f"{fraction_text(end)} sq ft"), text)


def parse_speed(text: str, *, least: Fraction | int = 1, most: Fraction | int = 300) -> Speed:
    """Return a wind speed.

    Args:
        text: The text as typed.
        least: Least accepted speed [mph].
        most: Most accepted speed [mph].

    Raises:
        NotAMeasure: ``no-unit``, ``bad-speed``, or one of the codes every measure shares.

    Example:
        >>> parse_speed("130 mph").mph
        Fraction(130, 1)
    """
    same = unsigned(text, SPEED)
    match = _SPEED.fullmatch(same)
    if not match:
        raise SPEED.bare(same, text)
    mph = number(match[1], text, SPEED)
    return Speed(within(mph, least, most, text, lambda end: f"{fraction_text(end)} mph"), text)


def parse_nail_size(
    text: str,
    *,
    least_length_in: Fraction = Fraction(1, 2),
    most_length_in: Fraction = Fraction(12),
    least_shank_in: Fraction = Fraction(1, 25),
    most_shank_in: Fraction = Fraction(1, 2),
) -> NailSize:
    """Return a nail by length and shank; the longer of the two is the length, whichever is written first.

    Args:
        text: The text as typed.
        least_length_in: Least accepted length [in].
        most_length_in: Most accepted length [in].
        least_shank_in: Least accepted shank [in].
        most_shank_in: Most accepted shank [in].

    Raises:
        NotAMeasure: ``penny-size`` for a penny name, ``no-unit`` for one number alone, ``bad-nail-size``,
            or one of the codes every measure shares.

    Example:
        >>> parse_nail_size("2-3/8 x 0.113").shank_in
        Fraction(113, 1000)
    """
    same = unsigned(text, NAIL)
    match = _NAIL.fullmatch(same)
    if not match:
        raise NAIL.refusal(text, code="penny-size") if _PENNY.fullmatch(same) else NAIL.bare(same, text)
    sizes = [number(digits, text, NAIL) for digits in match.groups()]
    shank, length = sorted(sizes)
    within(length, least_length_in, most_length_in, text, lambda end: f"a length of {float(end):g} in")
    within(shank, least_shank_in, most_shank_in, text, lambda end: f"a shank of {float(end):g} in")
    return NailSize(length, shank, text)
