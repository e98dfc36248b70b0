"""Deck: sheets of an area, and the joints between them that are taped."""

from fractions import Fraction

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number
from packet.units import round_up

JOINTS_TO_TAPE = "max(0, (2 * area_sq_ft * (1 / sheet_width_ft + 1 / sheet_length_ft) - perimeter_ft) / 2)"
DECK_SHEETS = "ceil(area_sq_ft / (sheet_width_ft * sheet_length_ft))"


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


def joints_to_tape(
    area_sq_ft: Number, perimeter_ft: Number, sheet_width_ft: Number = 4, sheet_length_ft: Number = 8
) -> Number:
    """Return the length of the joints between the sheets of a deck.

    An area holds area / (width * length) sheets, and each has sides of 2 * (width + length): in all
    2 * area * (1 / width + 1 / length). Every joint is the side of two sheets and the outer edge the side of
    one, so the sides less the outer edge are twice the joints. It is exact where whole sheets fill the area.
    A cut sheet has more side to its area: a course that starts with half a sheet adds the width of one joint,
    and strips at the outer edge add some more, so a deck of many cuts takes an allowance.

    Source: house rule; house arithmetic, no published text was read.

    Args:
        area_sq_ft: Deck area [sq ft], 0 or more.
        perimeter_ft: Length around it [ft], 0 or more.
        sheet_width_ft: Width of a sheet [ft], above 0.
        sheet_length_ft: Length of a sheet [ft], above 0.

    Returns:
        Joints [ft], 0 at least; exact when the inputs are.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> joints_to_tape(64, 32)
        Fraction(8, 1)
    """
    zero_or_more(area_sq_ft=area_sq_ft, perimeter_ft=perimeter_ft)
    above_zero(sheet_width_ft=sheet_width_ft, sheet_length_ft=sheet_length_ft)
    sides = 2 * area_sq_ft * (Fraction(1) / sheet_width_ft + Fraction(1) / sheet_length_ft)
    joints: Number = (sides - perimeter_ft) / 2
    return joints if joints > 0 else Fraction(0)
