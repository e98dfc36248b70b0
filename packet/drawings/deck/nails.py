"""Nails as dots: all of one kind on a piece are one path."""

import math
from collections.abc import Mapping, Sequence
from itertools import groupby
from typing import Any

from packet.drawings.deck.view import View
from packet.drawings.flat import Segment
from packet.drawings.svg import Element, element

#: Widest dot, one that is still seen on a joint, and the least [px]; share of the distance of two nails.
_WIDEST, _SEEN, _LEAST, _OF_DISTANCE = 2.8, 1.9, 1.2, 0.45
#: Distance of the two rows beside a joint [ft], and the share of it a dot may take.
_ROWS_AT_JOINT_FT, _OF_ROWS = 2 * 0.375 / 12, 0.95


def dot_px(plane: Mapping[str, Any], px_per_ft: float) -> float:
    """Return how wide a nail is drawn, so that neighbours stay apart as long as a dot can be seen [px]."""
    near = min((_step_ft(row) for piece in plane["pieces"] for row in piece["rows"]), default=1.0)
    at_joint = max(_SEEN, _OF_ROWS * _ROWS_AT_JOINT_FT * px_per_ft)
    return max(_LEAST, min(_WIDEST, at_joint, _OF_DISTANCE * near * px_per_ft))


def nail_paths(piece: Mapping[str, Any], view: View) -> list[Element]:
    """Return one path for each kind of row on a piece."""
    rows = sorted(piece["rows"], key=lambda row: str(row["kind"]))
    return [
        element(
            "path",
            d="".join(_dots(row, view) for row in same),
            class_=f"nails {kind.replace(' ', '-')}",
            data_kind=kind,
        )
        for kind, same in groupby(rows, key=lambda row: str(row["kind"]))
    ]


def _dots(row: Mapping[str, Any], view: View) -> str:
    """Return the dots of a row; they stand evenly from its start, which may be another part's, to its end."""
    count, opens = row["count"], row["opens"]
    (x, y), (to_x, to_y) = view.point(row["start"]), view.point(row["end"])
    spaces = max(count - opens, 1)
    step_x, step_y = (to_x - x) / spaces, (to_y - y) / spaces
    first = 0 if opens else 1
    # A hundred nails a sheet: plain formatting, two decimals, is what keeps a whole deck quick.
    return "".join(
        f"M{x + step_x * number:.2f} {y + step_y * number:.2f}h0" for number in range(first, first + count)
    )


def _step_ft(row: Mapping[str, Any]) -> float:
    spaces = max(int(row["count"]) - bool(row["opens"]), 1)
    return max(math.dist(row["start"], row["end"]) / spaces, 1 / 12)


def row_lines(pieces: Sequence[Mapping[str, Any]], view: View) -> list[Segment]:
    """Return the lines on which nails stand, as both ends of each [px]."""
    return [(view.point(row["start"]), view.point(row["end"])) for piece in pieces for row in piece["rows"]]
