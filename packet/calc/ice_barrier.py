"""How far an ice barrier reaches up the slope; each rule is named after the wall face it starts from."""

from fractions import Fraction

from packet.calc.domain import above_zero, lap_below_piece, zero_or_more
from packet.calc.slope import slope_factor
from packet.figure import Number
from packet.units import round_up

DEPTH_FROM_OUTSIDE_FACE = "max(least_in, (overhang_in + inside_in) * sqrt(1 + (rise / 12) ** 2))"
DEPTH_FROM_INSIDE_FACE = "max(least_in, (overhang_in + wall_in + inside_in) * sqrt(1 + (rise / 12) ** 2))"
REACH_PAST_OUTSIDE_FACE = "depth_in / sqrt(1 + (rise / 12) ** 2) - overhang_in"
BARRIER_LENGTH = "eave_ft * rows"
BARRIER_ROWS = "max(1, ceil((depth_in - lap_in) / (sheet_width_in - lap_in)))"


def depth_from_outside_face(
    overhang_in: Number, inside_in: Number, rise: Number, least_in: Number = 0
) -> float:
    """Return the slope length of an ice barrier measured from the outside face of the wall.

    Source: IRC R905.1.2, as the trade journal article Ice-Dam Protection and a code officials' forum give it:
    from the eave edge to 24 in inside the exterior wall line, measured level. The 2015 to 2021 editions add
    36 in up the slope as a least depth at 8:12 and steeper; the 2024 edition does not.

    Args:
        overhang_in: Level distance from eave edge to the outside face [in], 0 or more.
        inside_in: Level distance past that face [in], 0 or more.
        rise: Rise in 12 [in], 0 or more.
        least_in: Least depth up the slope [in], 0 where none is asked.

    Returns:
        Depth up the slope from the eave edge [in].

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> round(depth_from_outside_face(12, 24, 6), 1)
        40.2
    """
    return depth_from_inside_face(overhang_in, 0, inside_in, rise, least_in)


def depth_from_inside_face(
    overhang_in: Number, wall_in: Number, inside_in: Number, rise: Number, least_in: Number = 0
) -> float:
    """Return the slope length of an ice barrier measured from the inside face of the wall.

    Source: ARMA, preventing damage from ice dams: 24 in inside the interior wall line; worked in the trade
    journal article Ice-Dam Protection (6:12, 12 in overhang, 2x6 wall: 47 in).

    Args:
        overhang_in: Level distance from eave edge to the outside face [in], 0 or more.
        wall_in: Thickness of the wall with its sheathing [in], 0 or more.
        inside_in: Level distance past the inside face [in], 0 or more.
        rise: Rise in 12 [in], 0 or more.
        least_in: Least depth up the slope [in], 0 where none is asked.

    Returns:
        Depth up the slope from the eave edge [in].

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> round(depth_from_inside_face(12, 6, 24, 6))
        47
    """
    zero_or_more(overhang_in=overhang_in, wall_in=wall_in, inside_in=inside_in, least_in=least_in)
    return max(float(least_in), float(overhang_in + wall_in + inside_in) * slope_factor(rise))


def reach_past_outside_face(depth_in: Number, overhang_in: Number, rise: Number) -> float:
    """Return how far inside the outside face of the wall an ice barrier reaches, measured level.

    Source: house rule; ``depth_from_outside_face`` the other way round.

    Args:
        depth_in: Depth up the slope from the eave edge [in], 0 or more.
        overhang_in: Level distance from eave edge to the outside face [in], 0 or more.
        rise: Rise in 12 [in], 0 or more.

    Returns:
        Level distance past the outside face [in]; below 0 where the barrier ends outside the wall.

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> round(reach_past_outside_face(72, 16, 8), 1)
        43.9
    """
    zero_or_more(depth_in=depth_in, overhang_in=overhang_in)
    return float(depth_in) / slope_factor(rise) - float(overhang_in)


def barrier_rows(depth_in: Number, sheet_width_in: Number, lap_in: Number) -> int:
    """Return the courses of sheet that reach a depth.

    Source: house rule; every course after the first adds its width less the lap.

    Args:
        depth_in: Depth up the slope [in], 0 or more.
        sheet_width_in: Width of the sheet [in], above the lap.
        lap_in: Lap of one course over the next [in], 0 or more.

    Returns:
        Whole courses [sheet], at least 1.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> barrier_rows(47, 36, 3)
        2
    """
    zero_or_more(depth_in=depth_in)
    lap_below_piece(lap_in, sheet_width_in)
    return max(1, round_up(Fraction(1) * (depth_in - lap_in) / (sheet_width_in - lap_in)))


def barrier_length(eave_ft: Number, rows: int) -> Number:
    """Return the length of sheet along an eave.

    Source: house rule; every course runs the length of the eave. End laps and slanting ends are not in it.

    Args:
        eave_ft: Length of the eave [ft], 0 or more.
        rows: Courses of sheet [sheet], above 0.

    Returns:
        Length [ft], exact when the input is.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> barrier_length(40, 2)
        80
    """
    zero_or_more(eave_ft=eave_ft)
    above_zero(rows=rows)
    return eave_ft * rows
