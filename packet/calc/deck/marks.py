"""Where on a sheet a cut begins and ends, told by its edges as a carpenter marks them."""

from collections.abc import Sequence
from typing import Literal

from packet.calc.domain import above_zero
from packet.calc.polygon import Outline
from packet.figure import Number

Corner = Literal["lower left", "lower right", "upper left", "upper right"]
Place = Literal[
    "lower left", "lower right", "upper left", "upper right", "lower", "upper", "left", "right", "inside"
]

#: A mark this near to an edge lies on it: a quarter inch, as near as a pencil line is laid [ft].
NEAR_FT = 1 / 48

_PLACES: dict[tuple[str, str], Place] = {
    ("lower", "left"): "lower left",
    ("lower", "right"): "lower right",
    ("upper", "left"): "upper left",
    ("upper", "right"): "upper right",
    ("lower", ""): "lower",
    ("upper", ""): "upper",
    ("", "left"): "left",
    ("", "right"): "right",
    ("", ""): "inside",
}
_CORNERS: tuple[Corner, ...] = ("lower left", "lower right", "upper right", "upper left")


def place_on_sheet(along_ft: Number, up_ft: Number, width_ft: Number, height_ft: Number) -> Place:
    """Return the edge or corner of a sheet on which a point lies.

    Source: house rule; within a quarter inch of an edge a point lies on it.

    Args:
        along_ft: From the sheet's left edge [ft].
        up_ft: From its lower edge [ft].
        width_ft: Size of the sheet along the eave [ft], above 0.
        height_ft: Size of the sheet up the slope [ft], above 0.

    Returns:
        Corner, edge, or "inside" [-].

    Raises:
        OutOfRange: A size is not above 0.

    Example:
        >>> place_on_sheet(4, 0, 8, 4), place_on_sheet(8, 4, 8, 4), place_on_sheet(2, 0.5, 6, 4)
        ('lower', 'upper right', 'inside')
    """
    above_zero(width_ft=width_ft, height_ft=height_ft)
    return _PLACES[_end(up_ft, height_ft, "lower", "upper"), _end(along_ft, width_ft, "left", "right")]


def corners_kept(sheet: Outline, outlines: Sequence[Outline]) -> tuple[Corner, ...]:
    """Return the corners of a sheet that are still there after cutting: they tell which side of a cut stays.

    Source: house rule; a corner is kept where a corner of what is laid lies within a quarter inch of it.

    Args:
        sheet: Corners of the whole sheet, counterclockwise from its lower left [ft].
        outlines: Corners of each part laid [ft].

    Returns:
        Corners kept, counterclockwise from the lower left [-].

    Example:
        >>> sheet = ((16, 0), (24, 0), (24, 4), (16, 4))
        >>> corners_kept(sheet, [((16, 0), (20, 0), (23.58, 4), (16, 4))])
        ('lower left', 'upper left')
    """
    left = [corner for outline in outlines for corner in outline]
    return tuple(
        name
        for name, (along, up) in zip(_CORNERS, sheet, strict=True)
        if any(abs(float(u - along)) <= NEAR_FT and abs(float(v - up)) <= NEAR_FT for u, v in left)
    )


def _end(at: Number, size: Number, first: str, last: str) -> str:
    return first if abs(float(at)) <= NEAR_FT else last if abs(float(size - at)) <= NEAR_FT else ""
