"""Takeoff: how much material an area, an edge or a line of caps takes, and how much was laid.

Every count is whole pieces for one area or one run; pieces cut from another run's waste are not foreseen.
"""

from fractions import Fraction

from packet.calc.domain import above_zero, lap_below_piece, zero_or_more
from packet.figure import Number
from packet.units import round_up

SQUARES = "area_sq_ft / 100"
BUNDLES = "ceil(area_sq_ft / cover_sq_ft)"
BUNDLES_BY_SQUARE = "ceil(area_sq_ft / 100 * bundles_a_square)"
PIECES_A_SQUARE = "14400 / (width_in * exposure_in)"
SHINGLES = "ceil(area_sq_ft * 144 / (width_in * exposure_in))"
DECK_SHEETS = "ceil(area_sq_ft / (sheet_width_ft * sheet_length_ft))"
ROLL_COVER = "roll_length_ft * (roll_width_in - head_lap_in) / 12"
ROLLS = "ceil(area_sq_ft / roll_cover_sq_ft)"
DRIP_EDGE_PIECES = "max(1, ceil((length_ft - lap_ft) / (piece_ft - lap_ft)))"
STARTER_STRIPS = "ceil(length_ft / strip_ft)"
CAPS = "ceil(12 * length_ft / exposure_in) + 1"
STRIPS_FOR_CAPS = "ceil(caps / caps_a_strip)"
STEP_FLASHING_PIECES = "ceil(12 * length_ft / exposure_in) + 1"
STEP_FLASHING_LENGTH = "exposure_in + lap_in"
LAID = "delivered - returned - left - scrap"


def squares(area_sq_ft: Number) -> Number:
    """Return an area in roofing squares.

    Source: US Army subcourse EN5156, part C: a square is 100 sq ft.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.

    Returns:
        Squares [square], exact when the area is.

    Raises:
        OutOfRange: The area is below 0.

    Example:
        >>> squares(350)
        Fraction(7, 2)
    """
    zero_or_more(area_sq_ft=area_sq_ft)
    return area_sq_ft * Fraction(1, 100)


def bundles(area_sq_ft: Number, cover_sq_ft: Number) -> int:
    """Return the bundles that cover an area, by the cover printed on the wrapper.

    Source: house rule; whole bundles, and the wrapper's own cover because bundles differ (20 to 33.3 sq ft in
    Estimating in Building Construction, ch. 14). No waste is in it.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.
        cover_sq_ft: Area one bundle covers [sq ft], above 0.

    Returns:
        Whole bundles [bundle].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> bundles(Fraction(12700, 3), Fraction(328, 10))
        130
    """
    zero_or_more(area_sq_ft=area_sq_ft)
    above_zero(cover_sq_ft=cover_sq_ft)
    return round_up(Fraction(1) * area_sq_ft / cover_sq_ft)


def bundles_by_square(area_sq_ft: Number, bundles_a_square: Number) -> int:
    """Return the bundles that cover an area, by the number of bundles to a square.

    Source: house rule; whole bundles. Three to five bundles make a square by the trade journal article
    Estimating Asphalt Shingles. No waste is in it.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.
        bundles_a_square: Bundles to 100 sq ft [bundle/square], above 0.

    Returns:
        Whole bundles [bundle].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> bundles_by_square(Fraction(12700, 3), 3)
        127
    """
    above_zero(bundles_a_square=bundles_a_square)
    return round_up(squares(area_sq_ft) * bundles_a_square)


def pieces_a_square(width_in: Number, exposure_in: Number) -> Number:
    """Return how many shingles make a square.

    Source: house rule; 14,400 sq in over the area one shingle shows.

    Args:
        width_in: Length of a shingle along the course [in], above 0.
        exposure_in: Exposure [in], above 0.

    Returns:
        Shingles to 100 sq ft [piece/square], exact when the inputs are.

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> pieces_a_square(36, 5)
        Fraction(80, 1)
    """
    above_zero(width_in=width_in, exposure_in=exposure_in)
    return Fraction(14_400) / (width_in * exposure_in)


def shingles(area_sq_ft: Number, width_in: Number, exposure_in: Number) -> int:
    """Return how many shingles cover an area.

    Source: house rule; area over the area one shingle shows, whole shingles. Starter and caps are not in it.

    Args:
        area_sq_ft: Roof area [sq ft], 0 or more.
        width_in: Length of a shingle along the course [in], above 0.
        exposure_in: Exposure [in], above 0.

    Returns:
        Whole shingles [piece].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> shingles(250, 36, 5)
        200
    """
    return round_up(squares(area_sq_ft) * pieces_a_square(width_in, exposure_in))


def deck_sheets(area_sq_ft: Number, sheet_width_ft: Number = 4, sheet_length_ft: Number = 8) -> int:
    """Return the least deck sheets by area; a layout on the framing may take more.

    Source: house rule; area over the sheet's, whole sheets. The usual sheet is 4 by 8 ft, 32 sq ft.

    Args:
        area_sq_ft: Deck area [sq ft], 0 or more.
        sheet_width_ft: Width of a sheet [ft], above 0.
        sheet_length_ft: Length of a sheet [ft], above 0.

    Returns:
        Whole sheets [sheet].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> deck_sheets(100)
        4
    """
    zero_or_more(area_sq_ft=area_sq_ft)
    above_zero(sheet_width_ft=sheet_width_ft, sheet_length_ft=sheet_length_ft)
    return round_up(area_sq_ft / (Fraction(1) * sheet_width_ft * sheet_length_ft))


def roll_cover(roll_length_ft: Number, roll_width_in: Number, head_lap_in: Number) -> Number:
    """Return the area one roll covers after its head laps; end laps are not taken off.

    Source: house rule; length times the width that shows.

    Args:
        roll_length_ft: Length of the roll [ft], above 0.
        roll_width_in: Width of the roll [in], above 0.
        head_lap_in: Lap of one course over the next [in], 0 or more and below the width.

    Returns:
        Area [sq ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> roll_cover(144, 36, 2)
        Fraction(408, 1)
    """
    above_zero(roll_length_ft=roll_length_ft)
    lap_below_piece(head_lap_in, roll_width_in)
    return roll_length_ft * (roll_width_in - head_lap_in) * Fraction(1, 12)


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


def drip_edge_pieces(length_ft: Number, piece_ft: Number, lap_ft: Number) -> int:
    """Return the pieces of edge metal in one straight run.

    Source: house rule; every piece after the first adds its length less the lap. The 2 in lap is IRC
    R905.2.8.5's, as a roof-edge metal maker quotes it.

    Args:
        length_ft: Length of the run [ft], above 0.
        piece_ft: Length of a piece [ft], above the lap.
        lap_ft: Lap of one piece over the next [ft], 0 or more.

    Returns:
        Whole pieces [piece], at least 1.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> drip_edge_pieces(40, 10, Fraction(1, 6))
        5
    """
    above_zero(length_ft=length_ft)
    lap_below_piece(lap_ft, piece_ft)
    return max(1, round_up(Fraction(1) * (length_ft - lap_ft) / (piece_ft - lap_ft)))


def starter_strips(length_ft: Number, strip_ft: Number) -> int:
    """Return the starter strips along one eave or rake.

    Source: house rule; whole strips end to end. A 36 in shingle gives a 3 ft strip.

    Args:
        length_ft: Length of the edge [ft], 0 or more.
        strip_ft: Length of a strip [ft], above 0.

    Returns:
        Whole strips [piece].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> starter_strips(20, 3)
        7
    """
    zero_or_more(length_ft=length_ft)
    above_zero(strip_ft=strip_ft)
    return round_up(Fraction(1) * length_ft / strip_ft)


def caps(length_ft: Number, exposure_in: Number) -> int:
    """Return the cap pieces on one ridge or hip.

    Source: house rule; one piece an exposure and one to finish on. No published text was read for the last.

    Args:
        length_ft: Length of the ridge or hip [ft], above 0.
        exposure_in: Exposure of a cap [in], above 0.

    Returns:
        Whole pieces [piece].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> caps(32, Fraction(45, 8))
        70
    """
    above_zero(length_ft=length_ft, exposure_in=exposure_in)
    return round_up(Fraction(12) * length_ft / exposure_in) + 1


def strips_for_caps(caps: int, caps_a_strip: int = 3) -> int:
    """Return the strip shingles that a number of caps is cut from.

    Source: house rule; three caps from a three-tab strip, as roofers count.

    Args:
        caps: Cap pieces [piece], 0 or more.
        caps_a_strip: Caps cut from one strip [piece], above 0.

    Returns:
        Whole strips [piece].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> strips_for_caps(70)
        24
    """
    zero_or_more(caps=caps)
    above_zero(caps_a_strip=caps_a_strip)
    return round_up(Fraction(caps, caps_a_strip))


def step_flashing_pieces(length_ft: Number, exposure_in: Number) -> int:
    """Return the step flashing pieces along one wall.

    Source: house rule; one piece a course and one at the top, as roofers count. No published text was read.

    Args:
        length_ft: Length of the wall up the slope [ft], above 0.
        exposure_in: Exposure of the shingles [in], above 0.

    Returns:
        Whole pieces [piece].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> step_flashing_pieces(9, Fraction(45, 8))
        21
    """
    above_zero(length_ft=length_ft, exposure_in=exposure_in)
    return round_up(Fraction(12) * length_ft / exposure_in) + 1


def step_flashing_length(exposure_in: Number, lap_in: Number = 2) -> Number:
    """Return the least length of a step flashing piece up the slope.

    Source: Sidewall Flashing, trade journal checklist: exposure plus a lap of 2 in, 3 in in severe weather.

    Args:
        exposure_in: Exposure of the shingles [in], above 0.
        lap_in: Lap of one piece over the next [in], 0 or more.

    Returns:
        Length [in].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> step_flashing_length(Fraction(45, 8))
        Fraction(61, 8)
    """
    above_zero(exposure_in=exposure_in)
    zero_or_more(lap_in=lap_in)
    return exposure_in + lap_in


def laid(delivered: Number, returned: Number, left: Number, scrap: Number) -> Number:
    """Return how much of a material went into the roof.

    Source: house rule; what came, less what went back, stayed with the owner, or was thrown away.

    Args:
        delivered: Amount delivered [the item's own unit], 0 or more.
        returned: Amount returned [same unit], 0 or more.
        left: Amount left with the owner [same unit], 0 or more.
        scrap: Amount thrown away [same unit], 0 or more.

    Returns:
        Amount laid [same unit].

    Raises:
        OutOfRange: A value is below 0, or more went than came.

    Example:
        >>> laid(Fraction(9), 1, Fraction(1, 2), Fraction(1, 2))
        Fraction(7, 1)
    """
    zero_or_more(delivered=delivered, returned=returned, left=left, scrap=scrap)
    amount = delivered - returned - left - scrap
    zero_or_more(laid=amount)
    return amount
