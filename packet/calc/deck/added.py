"""Nails added to an old deck, so that no two stand farther apart than the rule lets them."""

from fractions import Fraction

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number
from packet.units import round_up

ADDED_IN_ROW = "ceil(12 * row_ft / old_spacing_in) * (ceil(old_spacing_in / most_in) - 1)"
ADDED_IN_SHEET = (
    "2 * ceil(12 * sheet_width_ft / old_edge_in) * (ceil(old_edge_in / most_edge_in) - 1)"
    " + (ceil(12 * sheet_length_ft / frame_spacing_in) - 1)"
    " * ceil(12 * sheet_width_ft / old_field_in) * (ceil(old_field_in / most_field_in) - 1)"
)
NAILS_ON_AREA = "ceil(area_sq_ft / (sheet_length_ft * sheet_width_ft) * nails_a_sheet)"


def added_in_row(row_ft: Number, old_spacing_in: Number, most_in: Number) -> int:
    """Return the nails added between the old ones of a row; the old ones count.

    Source: house rule; each space between two old nails is parted into spaces no larger than the limit.
    Whether old nails may count is the rule's to say: it asks how thick they are and what kind. Where they may
    not, the row is counted as a new one.

    Args:
        row_ft: Length of the row [ft], above 0.
        old_spacing_in: Spacing of the old nails, the widest found [in], above 0.
        most_in: Most distance between nails [in], above 0.

    Returns:
        Nails to add [nail]; 0 when the old ones stand close enough.

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> added_in_row(4, 12, 6), added_in_row(4, 6, 6)
        (4, 0)
    """
    above_zero(row_ft=row_ft, old_spacing_in=old_spacing_in, most_in=most_in)
    spaces = round_up(Fraction(12) * row_ft / old_spacing_in)
    return spaces * (round_up(Fraction(1) * old_spacing_in / most_in) - 1)


def added_in_sheet(
    sheet_length_ft: Number,
    sheet_width_ft: Number,
    frame_spacing_in: Number,
    *,
    old_edge_in: Number,
    old_field_in: Number,
    most_edge_in: Number,
    most_field_in: Number,
) -> int:
    """Return the nails added to a whole sheet of old deck across regular framing.

    Source: house rule; a row on each support as in ``sheet_nails``, the two ends by the edge spacings, the
    supports between by the field spacings.

    Args:
        sheet_length_ft: Length of the sheet across the supports [ft], above 0.
        sheet_width_ft: Width of the sheet along the supports [ft], above 0.
        frame_spacing_in: Distance of the supports on center [in], above 0.
        old_edge_in: Spacing of the old nails on the two ends [in], above 0.
        old_field_in: Spacing of the old nails on the supports between [in], above 0.
        most_edge_in: Most distance on the two ends [in], above 0.
        most_field_in: Most distance on the supports between [in], above 0.

    Returns:
        Nails to add [nail]. It is a count to the schedule, not of nails driven.

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> added_in_sheet(8, 4, 24, old_edge_in=6, old_field_in=12, most_edge_in=6, most_field_in=6)
        12
    """
    above_zero(sheet_length_ft=sheet_length_ft, frame_spacing_in=frame_spacing_in)
    between = round_up(Fraction(12) * sheet_length_ft / frame_spacing_in) - 1
    on_ends = added_in_row(sheet_width_ft, old_edge_in, most_edge_in)
    return 2 * on_ends + between * added_in_row(sheet_width_ft, old_field_in, most_field_in)


def nails_on_area(
    area_sq_ft: Number, nails_a_sheet: int, sheet_width_ft: Number = 4, sheet_length_ft: Number = 8
) -> int:
    """Return the nails of a deck from those of one sheet, by area.

    Source: house rule; the area in sheets times the nails of a whole one. Cut sheets have more edge, so a
    layout on the framing takes more.

    Args:
        area_sq_ft: Area of the deck [sq ft], 0 or more.
        nails_a_sheet: Nails of a whole sheet [nail/sheet], 0 or more.
        sheet_width_ft: Width of a sheet [ft], above 0.
        sheet_length_ft: Length of a sheet [ft], above 0.

    Returns:
        Nails [nail], rounded up. It is a count to the schedule, not of nails driven.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> nails_on_area(1600, 33)
        1650
    """
    zero_or_more(area_sq_ft=area_sq_ft, nails_a_sheet=nails_a_sheet)
    above_zero(sheet_width_ft=sheet_width_ft, sheet_length_ft=sheet_length_ft)
    return round_up(area_sq_ft / (Fraction(1) * sheet_length_ft * sheet_width_ft) * nails_a_sheet)
