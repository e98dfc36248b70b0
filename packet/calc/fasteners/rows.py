"""Rows of fasteners: cap nails on the grid of an underlayment sheet, nails in a whole deck sheet."""

from fractions import Fraction

from packet.calc.domain import above_zero, lap_below_piece
from packet.figure import Number
from packet.units import round_up

NAILS_IN_ROW = "ceil(12 * row_ft / spacing_in) + 1"
FIELD_ROWS = "max(0, ceil((sheet_width_in - head_lap_in) / spacing_in) - 1)"
SHEET_NAILS = (
    "2 * (ceil(12 * sheet_width_ft / edge_spacing_in) + 1)"
    " + (ceil(12 * sheet_length_ft / frame_spacing_in) - 1)"
    " * (ceil(12 * sheet_width_ft / field_spacing_in) + 1)"
)
CAP_NAILS = (
    "(sheets + 1) * (ceil(12 * run_ft / lap_spacing_in) + 1)"
    " + sheets * max(0, ceil((sheet_width_in - head_lap_in) / field_spacing_in) - 1)"
    " * (ceil(12 * run_ft / field_spacing_in) + 1)"
)


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


def sheet_nails(
    sheet_length_ft: Number,
    sheet_width_ft: Number,
    frame_spacing_in: Number,
    *,
    edge_spacing_in: Number,
    field_spacing_in: Number,
) -> int:
    """Return the nails in a whole deck sheet laid across regular framing.

    Nails go where there is framing: a row across the sheet on each support, the two ends at the edge spacing,
    the supports between at the field spacing. The long edges are nailed where they cross a support, by the
    outer nails of the rows. Supports are one more than the spaces in the sheet's length; where the length is
    not whole spaces, the last space is the short one.

    Source: house rule; a row is ``nails_in_row``. Blocked edges and a closer spacing along gable ends are not
    in it.

    Args:
        sheet_length_ft: Length of the sheet across the supports [ft], above 0.
        sheet_width_ft: Width of the sheet along the supports [ft], above 0.
        frame_spacing_in: Distance of the supports on center [in], above 0.
        edge_spacing_in: Most distance of nails on the two end supports [in], above 0.
        field_spacing_in: Most distance of nails on the supports between [in], above 0.

    Returns:
        Nails [nail]. It is a count to the schedule, not of nails driven.

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> sheet_nails(8, 4, 24, edge_spacing_in=6, field_spacing_in=12)
        33
    """
    above_zero(sheet_length_ft=sheet_length_ft, frame_spacing_in=frame_spacing_in)
    between = round_up(Fraction(12) * sheet_length_ft / frame_spacing_in) - 1
    ends = 2 * nails_in_row(sheet_width_ft, edge_spacing_in)
    return ends + between * nails_in_row(sheet_width_ft, field_spacing_in)
