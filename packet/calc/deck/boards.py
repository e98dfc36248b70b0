"""Board decking: running feet, bearings on the framing, nails, board feet."""

from fractions import Fraction

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number
from packet.units import round_up

BOARDS_APART = "width_in + gap_in"
BOARDS_COVER = "length_ft * (width_in + gap_in) / 12"
RUNNING_FEET = "12 * area_sq_ft / (width_in + gap_in)"
BEARINGS = "ceil(12 * length_ft / frame_spacing_in) + pieces"
NAILS_EACH_BEARING = "2 + min(1, max(0, ceil(width_in / 8) - 1))"
BOARD_NAILS_ON_AREA = "ceil(144 * area_sq_ft / (apart_in * frame_spacing_in)) * nails_each"
BOARD_NAILS = "bearings * nails_each"
BOARD_FEET = "max(1, thickness_in) * width_in * length_ft / 12"
FRAMING_NAIL_POUNDS = "1.67 * penny * lumber_board_ft / 1000"


def boards_apart(width_in: Number, gap_in: Number) -> Number:
    """Return how far spaced boards stand apart, center to center.

    Source: house rule; the width of a board and the gap beside it.

    Args:
        width_in: Width of a board as measured [in], above 0.
        gap_in: Space between two boards [in], 0 or more.

    Returns:
        Distance [in], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> boards_apart(Fraction(7, 2), 5)
        Fraction(17, 2)
    """
    above_zero(width_in=width_in)
    zero_or_more(gap_in=gap_in)
    return width_in + gap_in


def boards_cover(length_ft: Number, width_in: Number, gap_in: Number) -> Number:
    """Return the roof area that boards of a length make, the gaps between them included.

    Source: house rule; ``running_feet`` turned round.

    Args:
        length_ft: Length of all boards together [ft], 0 or more.
        width_in: Width of a board as measured [in], above 0.
        gap_in: Space between two boards [in], 0 or more.

    Returns:
        Area [sq ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> boards_cover(120, Fraction(11, 2), Fraction(11, 2))
        Fraction(110, 1)
    """
    zero_or_more(length_ft=length_ft, gap_in=gap_in)
    above_zero(width_in=width_in)
    return Fraction(1) * length_ft * (width_in + gap_in) / 12


def running_feet(area_sq_ft: Number, width_in: Number, gap_in: Number) -> Number:
    """Return the length of boards that cover an area, close together or with a space between.

    Source: house rule; each board takes its own width and one gap. Cutting and waste are not in it.

    Args:
        area_sq_ft: Area [sq ft], 0 or more.
        width_in: Width of a board as measured [in], above 0.
        gap_in: Space between two boards [in], 0 or more; on a spaced deck, center to center less the width.

    Returns:
        Boards [ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> running_feet(110, Fraction(11, 2), 0), running_feet(110, Fraction(11, 2), Fraction(11, 2))
        (Fraction(240, 1), Fraction(120, 1))
    """
    zero_or_more(area_sq_ft=area_sq_ft, gap_in=gap_in)
    above_zero(width_in=width_in)
    return Fraction(1) * 12 * area_sq_ft / (width_in + gap_in)


def bearings(length_ft: Number, frame_spacing_in: Number, pieces: int) -> int:
    """Return the places where boards lie on framing, both ends of every board included.

    Source: house rule; a board that ends on framing at both ends bears once more than it has spaces.

    Args:
        length_ft: Length of all boards together [ft], above 0.
        frame_spacing_in: Framing on center [in], above 0.
        pieces: Boards [piece], above 0.

    Returns:
        Bearings [bearing]; a board and a rafter under it are one.

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> bearings(48, 24, 6)
        30
    """
    above_zero(length_ft=length_ft, frame_spacing_in=frame_spacing_in, pieces=pieces)
    return round_up(Fraction(12) * length_ft / frame_spacing_in) + pieces


def nails_each_bearing(width_in: Number) -> int:
    """Return the nails that are counted for a board at each rafter.

    Source: Army subcourse EN0069, nail requirements: two for material up to 8 in wide, three for wider. It
    counts what to buy; what holds the deck is the adopted code's to say.

    Args:
        width_in: Nominal width of a board [in], above 0.

    Returns:
        Nails at each bearing [nail/bearing].

    Raises:
        OutOfRange: The width is not above 0.

    Example:
        >>> nails_each_bearing(6), nails_each_bearing(8), nails_each_bearing(10)
        (2, 2, 3)
    """
    above_zero(width_in=width_in)
    return 3 if width_in > 8 else 2


def board_nails(bearings: int, nails_each: int) -> int:
    """Return the nails of board decking.

    Source: house rule; bearings times nails each. It is a count to the schedule, not of nails driven.

    Args:
        bearings: Bearings [bearing], 0 or more.
        nails_each: Nails in a board at each rafter [nail/bearing], above 0.

    Returns:
        Nails [nail].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> board_nails(30, 2)
        60
    """
    zero_or_more(bearings=bearings)
    above_zero(nails_each=nails_each)
    return bearings * nails_each


def board_nails_on_area(
    area_sq_ft: Number, apart_in: Number, frame_spacing_in: Number, nails_each: int
) -> int:
    """Return the nails of a deck of boards by its area, where single boards were not counted.

    Source: house rule; a board bears on a rafter once in each space between rafters. Ends of boards, where
    two of them bear on one rafter, are not counted, so a deck of short boards takes more.

    Args:
        area_sq_ft: Area of the deck [sq ft], 0 or more.
        apart_in: Boards center to center [in], above 0.
        frame_spacing_in: Framing on center [in], above 0.
        nails_each: Nails in a board at each rafter [nail/bearing], above 0.

    Returns:
        Nails [nail], rounded up to whole bearings. It is a count to the schedule, not of nails driven.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> board_nails_on_area(100, 6, 24, 2)
        200
    """
    zero_or_more(area_sq_ft=area_sq_ft)
    above_zero(apart_in=apart_in, frame_spacing_in=frame_spacing_in, nails_each=nails_each)
    return round_up(Fraction(144) * area_sq_ft / (apart_in * frame_spacing_in)) * nails_each


def board_feet(thickness_in: Number, width_in: Number, length_ft: Number) -> Number:
    """Return lumber in board feet.

    Source: Army subcourse EN5155, 1-5: nominal thickness times nominal width over 12, times length. An older
    carpentry textbook adds that stock under 1 in counts as 1 in.

    Args:
        thickness_in: Nominal thickness [in], above 0.
        width_in: Nominal width [in], above 0.
        length_ft: Length of all boards together [ft], 0 or more.

    Returns:
        Lumber [board ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> board_feet(1, 4, 8 * 14)
        Fraction(112, 3)
    """
    above_zero(thickness_in=thickness_in, width_in=width_in)
    zero_or_more(length_ft=length_ft)
    return Fraction(1) * max(1, thickness_in) * width_in * length_ft / 12


def framing_nail_pounds(penny: int, lumber_board_ft: Number) -> Number:
    """Return about how many pounds of nails framing takes, by the size of the nail alone.

    Source: Army subcourse EN0069, nail requirements: pounds for each 1,000 board feet are 1.67 times the
    penny number. It is said of framing; for its own formula for boards the text was not read.

    Args:
        penny: Penny number of the nail [-], above 0.
        lumber_board_ft: Framing lumber [board ft], 0 or more.

    Returns:
        Nails [lb], waste included.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> float(framing_nail_pounds(10, 6300))
        105.21
    """
    above_zero(penny=penny)
    zero_or_more(lumber_board_ft=lumber_board_ft)
    return Fraction(167, 100) * penny * lumber_board_ft / 1000
