"""Nails, caps and cement spots: how many, how long, how heavy."""

from fractions import Fraction

from packet.calc.domain import above_zero, lap_below_piece, zero_or_more
from packet.figure import Number
from packet.units import round_up

ROOFING_NAILS = "pieces * nails_each"
POUNDS = "nails / nails_a_pound"
SEAL_SPOTS = "pieces * spots_each"
NAILS_IN_ROW = "ceil(12 * row_ft / spacing_in) + 1"
FIELD_ROWS = "max(0, ceil((sheet_width_in - head_lap_in) / spacing_in) - 1)"
CAP_NAILS = (
    "(sheets + 1) * (ceil(12 * run_ft / lap_spacing_in) + 1)"
    " + sheets * max(0, ceil((sheet_width_in - head_lap_in) / field_spacing_in) - 1)"
    " * (ceil(12 * run_ft / field_spacing_in) + 1)"
)
NAIL_LENGTH_THICK_DECK = "above_in + 3 / 4"
NAIL_LENGTH_THIN_DECK = "above_in + deck_in + 1 / 8"

#: Deck at least this thick holds the point; through a thinner one the nail must pass [in].
THICK_DECK_IN = Fraction(3, 4)


def roofing_nails(pieces: int, nails_each: int) -> int:
    """Return the nails in a number of shingles.

    Source: house rule; pieces times nails each. It is a count to the schedule, not of nails driven.

    Args:
        pieces: Shingles laid [piece], 0 or more.
        nails_each: Nails a shingle [nail/piece], above 0.

    Returns:
        Nails [nail].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> roofing_nails(80, 6)
        480
    """
    zero_or_more(pieces=pieces)
    above_zero(nails_each=nails_each)
    return pieces * nails_each


def pounds(nails: int, nails_a_pound: Number) -> Number:
    """Return the weight of a number of nails.

    Source: house rule; nails over the box's own count, because published counts differ by 5 to 15 percent.

    Args:
        nails: Nails [nail], 0 or more.
        nails_a_pound: Nails to a pound, from the box [nail/lb], above 0.

    Returns:
        Weight [lb], exact when the count is.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> pounds(372, 186)
        Fraction(2, 1)
    """
    zero_or_more(nails=nails)
    above_zero(nails_a_pound=nails_a_pound)
    return Fraction(nails) / nails_a_pound


def seal_spots(pieces: int, spots_each: int) -> int:
    """Return the cement spots under hand-sealed pieces.

    Source: ARMA, slopes greater than 21:12: four spots under a laminated shingle, two under each tab of a
    three-tab strip. The piece is the shingle for the first and the tab for the second.

    Args:
        pieces: Shingles, or tabs of three-tab shingles, sealed by hand [piece], 0 or more.
        spots_each: Spots under each [spot/piece], above 0.

    Returns:
        Spots [spot].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> seal_spots(22, 4)
        88
    """
    zero_or_more(pieces=pieces)
    above_zero(spots_each=spots_each)
    return pieces * spots_each


def nails_in_row(row_ft: Number, spacing_in: Number) -> int:
    """Return the fasteners in one row, one at each end and none farther apart than the spacing.

    Source: house rule; whole spaces, and one fastener more than spaces.

    Args:
        row_ft: Length of the row [ft], above 0.
        spacing_in: Most distance between fasteners [in], above 0.

    Returns:
        Fasteners [nail].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> nails_in_row(10, 6)
        21
    """
    above_zero(row_ft=row_ft, spacing_in=spacing_in)
    return round_up(Fraction(12) * row_ft / spacing_in) + 1


def field_rows(sheet_width_in: Number, head_lap_in: Number, spacing_in: Number) -> int:
    """Return the rows of fasteners between two laps of an underlayment sheet.

    Source: house rule; the width that shows, divided so that no two rows are farther apart than the spacing.

    Args:
        sheet_width_in: Width of the sheet [in], above the lap.
        head_lap_in: Lap of one sheet over the next [in], 0 or more.
        spacing_in: Most distance between rows [in], above 0.

    Returns:
        Rows between the laps [row].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> field_rows(36, 4, 12)
        2
    """
    lap_below_piece(head_lap_in, sheet_width_in)
    above_zero(spacing_in=spacing_in)
    return max(0, round_up(Fraction(1) * (sheet_width_in - head_lap_in) / spacing_in) - 1)


def cap_nails(
    run_ft: Number,
    sheets: int,
    *,
    sheet_width_in: Number,
    head_lap_in: Number,
    lap_spacing_in: Number,
    field_spacing_in: Number,
) -> int:
    """Return the cap nails that hold courses of underlayment: a row at every lap and edge, rows between.

    Source: IBC 2018 Table 1507.1.1(3), 140 mph and over: a grid 12 in between side laps, 6 in along side and
    end laps, caps 1 in. End laps are not in the count: add ``nails_in_row`` across the sheet for each.

    Args:
        run_ft: Length of the courses along the eave [ft], above 0.
        sheets: Courses from eave to top [sheet], above 0.
        sheet_width_in: Width of the sheet [in], above the lap.
        head_lap_in: Lap of one course over the next [in], 0 or more.
        lap_spacing_in: Most distance along laps and edges [in], above 0.
        field_spacing_in: Most distance in and between the rows elsewhere [in], above 0.

    Returns:
        Cap nails [nail]. It is a count to the schedule, not of nails driven.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> cap_nails(10, 1, sheet_width_in=36, head_lap_in=4, lap_spacing_in=6, field_spacing_in=12)
        64
    """
    above_zero(sheets=sheets)
    between = field_rows(sheet_width_in, head_lap_in, field_spacing_in) * nails_in_row(
        run_ft, field_spacing_in
    )
    return (sheets + 1) * nails_in_row(run_ft, lap_spacing_in) + sheets * between


def nail_length_thick_deck(above_in: Number) -> Number:
    """Return the least roofing nail for a deck of 3/4 in or more.

    Source: IBC 1507.2.5 (same text as IRC R905.2.5): through the roofing and 3/4 in into the deck.

    Args:
        above_in: Shingles, underlayment and metal above the deck [in], 0 or more.

    Returns:
        Length under the head [in].

    Raises:
        OutOfRange: The value is below 0.

    Example:
        >>> nail_length_thick_deck(Fraction(3, 8))
        Fraction(9, 8)
    """
    zero_or_more(above_in=above_in)
    return above_in + THICK_DECK_IN


def nail_length_thin_deck(above_in: Number, deck_in: Number) -> Number:
    """Return the least roofing nail for a deck under 3/4 in.

    Source: IBC 1507.2.5: through the deck; ARMA, nail application: 1/8 in or more past its underside.

    Args:
        above_in: Shingles, underlayment and metal above the deck [in], 0 or more.
        deck_in: Thickness of the deck [in], above 0 and below 3/4.

    Returns:
        Length under the head [in].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> nail_length_thin_deck(Fraction(3, 8), Fraction(15, 32))
        Fraction(31, 32)
    """
    zero_or_more(above_in=above_in)
    above_zero(deck_in=deck_in, below_thick_in=THICK_DECK_IN - deck_in)
    return above_in + deck_in + Fraction(1, 8)


def least_nail_length(above_in: Number, deck_in: Number) -> Number:
    """Return the least roofing nail for a deck of any thickness.

    Source: IBC 1507.2.5 and ARMA, nail application, as in the two rules beside this one.

    Args:
        above_in: Shingles, underlayment and metal above the deck [in], 0 or more.
        deck_in: Thickness of the deck [in], above 0.

    Returns:
        Length under the head [in].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> least_nail_length(Fraction(3, 8), Fraction(15, 32)), least_nail_length(Fraction(3, 8), 1)
        (Fraction(31, 32), Fraction(9, 8))
    """
    above_zero(deck_in=deck_in)
    if deck_in >= THICK_DECK_IN:
        return nail_length_thick_deck(above_in)
    return nail_length_thin_deck(above_in, deck_in)


def least_nail_length_formula(deck_in: Number) -> str:
    """Return the formula that ``least_nail_length`` takes for a deck.

    Source: IBC 1507.2.5 and ARMA, nail application.

    Args:
        deck_in: Thickness of the deck [in], above 0.

    Returns:
        Arithmetic in ``above_in`` and, for a thin deck, ``deck_in`` [in].

    Raises:
        OutOfRange: The value is not above 0.

    Example:
        >>> least_nail_length_formula(Fraction(15, 32))
        'above_in + deck_in + 1 / 8'
    """
    above_zero(deck_in=deck_in)
    return NAIL_LENGTH_THICK_DECK if deck_in >= THICK_DECK_IN else NAIL_LENGTH_THIN_DECK
