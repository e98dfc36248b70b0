"""What a table says of itself: sentences that its rows must satisfy, and sums typed apart from them."""

import operator
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import combinations

Cell = Fraction | str | None
Row = Mapping[str, Cell]

_COLUMN = r"([a-z_0-9]+)"
_UNIQUE = re.compile(rf"{_COLUMN} is unique")
_TREND = re.compile(rf"{_COLUMN} (never rises|never falls|rises|falls) with {_COLUMN}(?: in each {_COLUMN})?")
_COMPARED = re.compile(rf"{_COLUMN} (above|at least|equals) {_COLUMN}(?: times {_COLUMN})?(?: over (\d+))?")

_ALLOWED: Mapping[str, Callable[[Fraction, Fraction], bool]] = {
    "rises": operator.gt,
    "falls": operator.lt,
    "never rises": operator.le,
    "never falls": operator.ge,
    "above": operator.gt,
    "at least": operator.ge,
    "equals": operator.eq,
}


class UnknownInvariant(Exception):
    """The sentence is none of the forms, or names a column that the table does not have."""


def broken_rows(sentence: str, rows: Sequence[Row], columns: frozenset[str]) -> Iterator[int]:
    """Return the positions of the rows that break an invariant.

    Args:
        sentence: ``a is unique``, ``a rises with b``, ``a never falls with b in each c``, ``a above b``,
            ``a at least b``, ``a equals b times c over 12``.
        rows: The table's rows; a row with an absent cell is passed over.
        columns: Columns of the table.

    Raises:
        UnknownInvariant: The sentence can't be read.
    """
    for form, judge in ((_UNIQUE, _not_unique), (_TREND, _off_trend), (_COMPARED, _off_comparison)):
        found = form.fullmatch(sentence)
        if found:
            names = [group for group in found.groups() if group and re.fullmatch(_COLUMN, group)]
            used = {name for name in names if not name.isdigit() and name not in _ALLOWED}
            if used <= columns:
                return judge(found, rows)
    raise UnknownInvariant(sentence)


def off_sums(sums: Mapping[str, Fraction], rows: Sequence[Row]) -> Iterator[tuple[str, Fraction]]:
    """Return the columns whose cells do not add up to the typed sum, with what they add up to."""
    for column, typed in sums.items():
        total = sum((cell for row in rows if isinstance(cell := row.get(column), Fraction)), Fraction(0))
        if total != typed:
            yield column, total


def _not_unique(found: re.Match[str], rows: Sequence[Row]) -> Iterator[int]:
    seen: set[Cell] = set()
    for index, row in enumerate(rows):
        cell = row[found[1]]
        if cell in seen:
            yield index
        seen.add(cell)


def _off_trend(found: re.Match[str], rows: Sequence[Row]) -> Iterator[int]:
    column, trend, along, group = found.groups()
    groups: dict[Cell, list[tuple[Fraction, Fraction, int]]] = {}
    for index, row in enumerate(rows):
        x, y = row[along], row[column]
        if isinstance(x, Fraction) and isinstance(y, Fraction):
            groups.setdefault(row[group] if group else None, []).append((x, y, index))
    for points in groups.values():
        for (x0, y0, _), (x1, y1, index) in combinations(sorted(points), 2):
            if x1 > x0 and not _ALLOWED[trend](y1, y0):
                yield index


def _off_comparison(found: re.Match[str], rows: Sequence[Row]) -> Iterator[int]:
    column, word, other, factor, over = found.groups()
    for index, row in enumerate(rows):
        left, right, times = row[column], row[other], row[factor] if factor else Fraction(1)
        if not (isinstance(left, Fraction) and isinstance(right, Fraction) and isinstance(times, Fraction)):
            continue
        if not _ALLOWED[word](left, right * times / int(over or 1)):
            yield index
