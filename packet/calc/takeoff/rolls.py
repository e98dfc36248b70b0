"""Sheet goods in rolls: what one roll covers, and what laps, starter strips, ridges and walls take."""

from fractions import Fraction

from packet.calc.domain import above_zero, lap_below_piece, zero_or_more
from packet.figure import Number
from packet.units import round_up

ROLL_COVER = "(roll_length_ft - end_lap_in / 12) * (roll_width_in - head_lap_in) / 12"
ROLL_SHEET = "(roll_length_ft - end_lap_in / 12) * roll_width_in / 12"
ROLLS = "ceil(area_sq_ft / roll_cover_sq_ft)"
SHEET_AREA = "area_sq_ft * roll_width_in / (roll_width_in - head_lap_in)"
LOW_SLOPE_SHEET_AREA = (
    "area_sq_ft * roll_width_in / (roll_width_in - head_lap_in) + eave_ft * strip_width_in / 12"
)
HALF_SHEET_LAP = "roll_width_in / 2 + over_half_in"
OVER_RIDGE_AREA = "2 * length_ft * over_in / 12"
UP_WALL_AREA = "length_ft * up_in / 12"


def roll_cover(
    roll_length_ft: Number, roll_width_in: Number, head_lap_in: Number, end_lap_in: Number = 0
) -> Number:
    """Return the area one roll covers, its head laps and one end lap taken off.

    Source: house rule; length less one end lap, because every roll after the first starts on the one before,
    times the width that shows.

    Args:
        roll_length_ft: Length of the roll [ft], above 0.
        roll_width_in: Width of the roll [in], above 0.
        head_lap_in: Lap of one course over the next [in], 0 or more and below the width.
        end_lap_in: Lap of one roll over the end of another [in], 0 or more and below the length.

    Returns:
        Area [sq ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> roll_cover(144, 36, 2), roll_cover(144, 36, 2, 4)
        (Fraction(408, 1), Fraction(7327, 18))
    """
    above_zero(roll_length_ft=roll_length_ft)
    lap_below_piece(head_lap_in, roll_width_in)
    lap_below_piece(end_lap_in, 12 * roll_length_ft)
    return (roll_length_ft - end_lap_in * Fraction(1, 12)) * (roll_width_in - head_lap_in) * Fraction(1, 12)


def roll_sheet(roll_length_ft: Number, roll_width_in: Number, end_lap_in: Number) -> Number:
    """Return the sheet that one roll gives, its one end lap taken off; head laps are in the sheet needed.

    Source: house rule; each roll is lapped over the one before it once.

    Args:
        roll_length_ft: Length of a roll [ft], above 0.
        roll_width_in: Width of a roll [in], above 0.
        end_lap_in: Lap at its end [in], 0 or more, less than the roll.

    Returns:
        Sheet [sq ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> roll_sheet(72, 36, 6)
        Fraction(429, 2)
    """
    return roll_cover(roll_length_ft, roll_width_in, 0, end_lap_in)


def rolls(area_sq_ft: Number, roll_cover_sq_ft: Number) -> int:
    """Return the rolls that cover an area.

    Source: house rule; area over what one roll covers, whole rolls.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.
        roll_cover_sq_ft: Area one roll covers, laps taken off [sq ft], above 0.

    Returns:
        Whole rolls [roll].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> rolls(1000, 400)
        3
    """
    zero_or_more(area_sq_ft=area_sq_ft)
    above_zero(roll_cover_sq_ft=roll_cover_sq_ft)
    return round_up(Fraction(1) * area_sq_ft / roll_cover_sq_ft)


def sheet_area(area_sq_ft: Number, roll_width_in: Number, head_lap_in: Number) -> Number:
    """Return the sheet that goes on an area, its head laps counted in.

    Source: house rule; each course shows its width less the lap, so the sheet is to the area as the width is
    to what shows.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.
        roll_width_in: Width of the roll [in], above the lap.
        head_lap_in: Lap of one course over the next [in], 0 or more.

    Returns:
        Sheet [sq ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> sheet_area(510, 36, 19)
        Fraction(1080, 1)
    """
    zero_or_more(area_sq_ft=area_sq_ft)
    lap_below_piece(head_lap_in, roll_width_in)
    return Fraction(1) * area_sq_ft * roll_width_in / (roll_width_in - head_lap_in)


def low_slope_sheet_area(
    area_sq_ft: Number,
    eave_ft: Number,
    roll_width_in: Number = 36,
    head_lap_in: Number = 19,
    strip_width_in: Number = 19,
) -> Number:
    """Return the sheet that goes on an area of low slope as double underlayment, starter strip included.

    Source: IBC 1507.1.1 and a city re-roofing handout, 2:12 to under 4:12: sheets 36 in wide lapped 19 in,
    over a strip half a sheet wide (printed as 18 or 19 in) along the eave.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.
        eave_ft: Length of its eaves [ft], 0 or more.
        roll_width_in: Width of the roll [in], above the lap.
        head_lap_in: Lap of one course over the next [in], 0 or more.
        strip_width_in: Width of the starter strip [in], above 0.

    Returns:
        Sheet [sq ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> low_slope_sheet_area(510, 30)
        Fraction(2255, 2)
    """
    zero_or_more(eave_ft=eave_ft)
    above_zero(strip_width_in=strip_width_in)
    strip = eave_ft * strip_width_in * Fraction(1, 12)
    return sheet_area(area_sq_ft, roll_width_in, head_lap_in) + strip


def half_sheet_lap(roll_width_in: Number, over_half_in: Number = 1) -> Number:
    """Return the head lap that keeps two layers everywhere under a sheet of any width.

    Source: ARMA, lower sloped roofs: half the sheet and 1 in, the first lap between full sheets half the
    sheet and 2 in. On a 36 in sheet that is the 19 in of the code.

    Args:
        roll_width_in: Width of the roll [in], above 0.
        over_half_in: What the lap is more than half the sheet [in], 0 or more.

    Returns:
        Head lap [in], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range, or the lap leaves nothing of the sheet.

    Example:
        >>> half_sheet_lap(36), half_sheet_lap(48)
        (Fraction(19, 1), Fraction(25, 1))
    """
    above_zero(roll_width_in=roll_width_in)
    zero_or_more(over_half_in=over_half_in)
    lap = roll_width_in * Fraction(1, 2) + over_half_in
    lap_below_piece(lap, roll_width_in)
    return lap


def over_ridge_area(length_ft: Number, over_in: Number) -> Number:
    """Return the sheet that runs over a ridge or hip, from both sides.

    Source: US Navy NAVEDTRA 14044 and 14045: underlayment 6 in over hips and ridges from both sides.

    Args:
        length_ft: Length of the ridge or hip [ft], 0 or more.
        over_in: How far each side runs over the line [in], 0 or more.

    Returns:
        Sheet beyond the planes' own area [sq ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> over_ridge_area(32, 6)
        Fraction(32, 1)
    """
    zero_or_more(length_ft=length_ft, over_in=over_in)
    return length_ft * over_in * Fraction(1, 6)


def up_wall_area(length_ft: Number, up_in: Number) -> Number:
    """Return the sheet that is turned up a wall.

    Source: US Navy NAVEDTRA 14045: underlayment 4 in up walls.

    Args:
        length_ft: Length of the wall along the roof [ft], 0 or more.
        up_in: How far the sheet goes up the wall [in], 0 or more.

    Returns:
        Sheet beyond the planes' own area [sq ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> up_wall_area(9, 4)
        Fraction(3, 1)
    """
    zero_or_more(length_ft=length_ft, up_in=up_in)
    return length_ft * up_in * Fraction(1, 12)
