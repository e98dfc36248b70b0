"""Metal and vents in pieces: edge metal and valley linings with laps, step flashing by courses."""

from fractions import Fraction

from packet.calc.domain import above_zero, lap_below_piece, zero_or_more
from packet.figure import Number
from packet.units import round_up

LAPPED_PIECES = "max(1, ceil((length_ft - lap_ft) / (piece_ft - lap_ft)))"
DRIP_EDGE_PIECES = LAPPED_PIECES
VALLEY_PIECES = LAPPED_PIECES
LAPPED_LENGTH = "length_ft + (pieces - 1) * lap_ft"
RIDGE_VENT_PIECES = "ceil(length_ft / piece_ft)"
STEP_FLASHING_PIECES = "ceil(12 * length_ft / exposure_in) + 1"
STEP_FLASHING_LENGTH = "exposure_in + lap_in"


def lapped_pieces(length_ft: Number, piece_ft: Number, lap_ft: Number) -> int:
    """Return the pieces of metal or lining in one straight run.

    Source: house rule; every piece after the first adds its length less the lap.

    Args:
        length_ft: Length of the run [ft], above 0.
        piece_ft: Length of a piece [ft], above the lap.
        lap_ft: Lap of one piece over the next [ft], 0 or more.

    Returns:
        Whole pieces [piece], at least 1.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> lapped_pieces(18, 10, Fraction(1, 2))
        2
    """
    above_zero(length_ft=length_ft)
    lap_below_piece(lap_ft, piece_ft)
    return max(1, round_up(Fraction(1) * (length_ft - lap_ft) / (piece_ft - lap_ft)))


def drip_edge_pieces(length_ft: Number, piece_ft: Number, lap_ft: Number) -> int:
    """Return the pieces of edge metal in one straight run.

    Source: house rule; ``lapped_pieces``. The 2 in lap is IRC R905.2.8.5's, as a roof-edge metal maker quotes
    it.

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
    return lapped_pieces(length_ft, piece_ft, lap_ft)


def valley_pieces(length_ft: Number, piece_ft: Number, lap_ft: Number) -> int:
    """Return the pieces of lining in one valley.

    Source: house rule; ``lapped_pieces``. The lap is the record's: no published one was read.

    Args:
        length_ft: Length of the valley [ft], above 0.
        piece_ft: Length of a piece [ft], above the lap.
        lap_ft: Lap of one piece over the next [ft], 0 or more.

    Returns:
        Whole pieces [piece], at least 1.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> valley_pieces(18, 10, 1)
        2
    """
    return lapped_pieces(length_ft, piece_ft, lap_ft)


def lapped_length(length_ft: Number, pieces: int, lap_ft: Number) -> Number:
    """Return the metal or lining that lies in a run, its laps counted in.

    Source: house rule; the run, and one lap for every piece after the first.

    Args:
        length_ft: Length of the run [ft], above 0.
        pieces: Pieces in it [piece], above 0.
        lap_ft: Lap of one piece over the next [ft], 0 or more.

    Returns:
        Length [ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> lapped_length(40, 5, Fraction(1, 6))
        Fraction(122, 3)
    """
    above_zero(length_ft=length_ft, pieces=pieces)
    zero_or_more(lap_ft=lap_ft)
    return length_ft + (pieces - 1) * lap_ft


def ridge_vent_pieces(length_ft: Number, piece_ft: Number) -> int:
    """Return the pieces of ridge vent along one ridge, laid end to end.

    Source: house rule; whole pieces without laps.

    Args:
        length_ft: Length of vent on the ridge [ft], 0 or more.
        piece_ft: Length of a piece [ft], above 0.

    Returns:
        Whole pieces [piece].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> ridge_vent_pieces(30, 4)
        8
    """
    zero_or_more(length_ft=length_ft)
    above_zero(piece_ft=piece_ft)
    return round_up(Fraction(1) * length_ft / piece_ft)


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
