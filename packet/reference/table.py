"""A published table: typed cells, its own checks, and a lookup that never goes past what was printed."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import get_args

from packet import units
from packet.figure import Mark, Source
from packet.reference.invariants import Cell, UnknownInvariant, broken_rows, off_sums
from packet.reference.models import SourceEntry, TableFile
from packet.reference.vocabulary import TEXT_UNITS
from packet.reference.when import FACTS, plain

Loc = tuple[str | int, ...]
_EXTRA_KEYS = frozenset({"reason", "note"})
_MARKS = frozenset(get_args(Mark))


@dataclass(frozen=True)
class TableFault:
    """What is wrong with a table, by its place in the file."""

    code: str
    loc: Loc
    found: str = ""
    accepted: str = ""


class NotInTable(LookupError):
    """A lookup outside what was printed.

    Attributes:
        table: Name of the table.
        locator: Place in its document.
        column: Key or condition that failed.
        asked: What was asked for.
        limits: What the table has.
    """

    def __init__(self, table: str, locator: str, column: str, asked: str, limits: str) -> None:
        self.table, self.locator, self.column, self.asked, self.limits = table, locator, column, asked, limits
        super().__init__(f"table {table} ({locator}) has no {column} {asked}; it has {limits}")


@dataclass(frozen=True)
class TableRow:
    """One row: cells by column, and where it was read."""

    table: str
    cells: Mapping[str, Cell]
    reason: str
    source: Source

    def number(self, column: str) -> Fraction:
        """Return a number of the row.

        Raises:
            NotInTable: The cell was not read.
            TypeError: The column holds words.
        """
        cell = self._cell(column)
        if isinstance(cell, str):
            message = f"{column} of {self.table} holds words"
            raise TypeError(message)
        return cell

    def word(self, column: str) -> str:
        """Return a word of the row.

        Raises:
            NotInTable: The cell was not read.
        """
        return str(self._cell(column))

    def _cell(self, column: str) -> Fraction | str:
        cell = self.cells[column]
        if cell is None:
            raise NotInTable(self.table, self.source.locator, column, "in this row", self.reason)
        return cell


@dataclass(frozen=True)
class Table:
    """A table ready for lookups."""

    file: TableFile
    rows: tuple[TableRow, ...]

    @property
    def name(self) -> str:
        """Name of the table, and of its file."""
        return self.file.table

    def words(self, column: str) -> tuple[str, ...]:
        """Return every word of a column, in the order of the rows.

        Raises:
            NotInTable: The column is not of words.
        """
        return tuple(row.word(column) for row in self.rows)

    def lookup(self, **asked: object) -> TableRow:
        """Return the one row for the keys; ``exact`` keys match, ``next_above`` takes the next printed value.

        Args:
            asked: Every key column, and every fact that the table's ``valid`` names.

        Raises:
            NotInTable: A key is not printed, lies beyond the last printed value, or the table does not hold
                for the facts.
            TypeError: A key column was left out, or a word is no key.
        """
        wanted = set(self.file.keys) | set(self.file.valid.conditions)
        left_out, odd = set(self.file.keys) - set(asked), set(asked) - wanted
        if left_out or odd:
            message = f"table {self.name} is looked up by {', '.join(sorted(wanted))}"
            raise TypeError(message)
        self._hold(asked)
        found = self.rows
        ordered = sorted(self.file.keys.items(), key=lambda item: item[1] != "exact")
        for column, how in ordered:
            found = self._narrowed(found, column, _key(asked[column]), how)
        return found[0]

    def _hold(self, asked: Mapping[str, object]) -> None:
        """Refuse facts for which the table does not hold; an unknown fact is refused too."""
        facts = plain({name: value for name, value in asked.items() if name in FACTS})
        for name, condition in self.file.valid.conditions.items():
            value = facts.get(name)
            if value is None or not condition.holds(value):  # type: ignore[arg-type]
                limits = ", ".join(f"{word.rstrip('_')} {_text(end)}" for word, end in _ends(condition))
                raise self._missing(name, "unknown" if value is None else _text(value), f"it only {limits}")

    def _narrowed(
        self, rows: tuple[TableRow, ...], column: str, asked: Fraction | str, how: str
    ) -> tuple[TableRow, ...]:
        printed = [cell for row in rows if (cell := row.cells[column]) is not None]
        if how == "next_above" and isinstance(asked, Fraction):
            above = [cell for cell in printed if isinstance(cell, Fraction) and cell >= asked]
            asked = min(above) if above else asked
        kept = tuple(row for row in rows if row.cells[column] == asked)
        if not kept:
            shown = ", ".join(dict.fromkeys(_text(cell) for cell in printed))
            raise self._missing(column, _text(asked), shown)
        return kept

    def _missing(self, column: str, asked: str, limits: str) -> NotInTable:
        return NotInTable(self.name, self.file.source.locator, column, asked, limits)


def _ends(condition: object) -> Iterator[tuple[str, object]]:
    for name in type(condition).model_fields:  # type: ignore[attr-defined]
        end = getattr(condition, name)
        if end is not None and end != ():
            yield name, end


def _text(value: object) -> str:
    if isinstance(value, Fraction):
        return units.fraction_text(value) if 64 % value.denominator == 0 else f"{float(value):.6g}"
    return ", ".join(map(str, value)) if isinstance(value, tuple) else str(value)


def _key(value: object) -> Fraction | str:
    if isinstance(value, float):
        return Fraction(repr(value))
    if isinstance(value, int | Fraction | Decimal):
        return Fraction(value)
    return str(value)


def build(file: TableFile, sources: Mapping[str, SourceEntry]) -> tuple[Table, tuple[TableFault, ...]]:
    """Return a table with typed cells, and everything that is wrong with it.

    Args:
        file: The table as written.
        sources: Known documents.
    """
    faults = list(_column_faults(file))
    cells = []
    for index, row in enumerate(file.rows):
        typed, wrong = _typed(file, index, row)
        cells.append(typed)
        faults += wrong
    if not faults:
        faults = [*_row_faults(file, cells), *_source_faults(file, cells, sources)]
    if faults:
        return Table(file, ()), tuple(faults)
    rows = tuple(
        TableRow(file.table, row, written.get("reason") or "", _source(file, row, sources))
        for row, written in zip(cells, file.rows, strict=True)
    )
    return Table(file, rows), ()


def _column_faults(file: TableFile) -> Iterator[TableFault]:
    columns = ", ".join(file.units)
    for place, names in (("keys", file.keys), ("sums", file.sums)):
        for name in names:
            if name not in file.units or (place == "sums" and file.units[name] in TEXT_UNITS):
                yield TableFault("unknown-column", (place, name), name, columns)
    if not file.keys:
        yield TableFault("unknown-column", ("keys",), "", columns)
    if not file.rows:
        yield TableFault("too-few-entries", ("rows",), "", "at least 1 row")
    for name in file.units.keys() & _EXTRA_KEYS:
        yield TableFault("unknown-column", ("units", name), name, "another name")


def _typed(
    file: TableFile, index: int, row: Mapping[str, str | None]
) -> tuple[dict[str, Cell], list[TableFault]]:
    typed: dict[str, Cell] = {}
    faults = []
    for name in row.keys() - file.units.keys() - _EXTRA_KEYS:
        faults.append(TableFault("unknown-column", ("rows", index, name), name, ", ".join(file.units)))
    for name, unit in file.units.items():
        written = row.get(name)
        if name not in row:
            faults.append(TableFault("cell-missing", ("rows", index), name, f"{name}, or null and a reason"))
        elif written is None:
            if not row.get("reason") or name in file.keys:
                loc = ("rows", index, name)
                faults.append(TableFault("reason-missing", loc, name, "a value, or a reason"))
        elif unit in TEXT_UNITS:
            typed[name] = written
            if unit == "mark" and written not in _MARKS:
                accepted = ", ".join(sorted(_MARKS))
                faults.append(TableFault("not-one-of", ("rows", index, name), written, accepted))
            continue
        else:
            try:
                typed[name] = units.parse_quantity(written)
            except units.NotAMeasure as error:
                accepted = "; ".join(error.accepted)
                faults.append(TableFault(error.code, ("rows", index, name), written, accepted))
        typed.setdefault(name, None)
    return typed, faults


def _row_faults(file: TableFile, rows: list[dict[str, Cell]]) -> Iterator[TableFault]:
    for number, sentence in enumerate(file.invariants):
        try:
            for index in broken_rows(sentence, rows, frozenset(file.units)):
                yield TableFault("table-invariant", ("rows", index), sentence, sentence)
        except UnknownInvariant:
            accepted = "a is unique; a rises with b; a never falls with b in each c; a above b; a at least b"
            yield TableFault("unknown-invariant", ("invariants", number), sentence, accepted)
    for column, total in off_sums(file.sums, rows):
        yield TableFault("table-sum", ("sums", column), _text(file.sums[column]), _text(total))
    first: dict[tuple[Cell, ...], int] = {}
    for index, row in enumerate(rows):
        key = tuple(row[column] for column in file.keys)
        if first.setdefault(key, index) != index:
            yield TableFault("table-key-twice", ("rows", index), ", ".join(map(_text, key)), "one row a key")


def _source_faults(
    file: TableFile, rows: list[dict[str, Cell]], sources: Mapping[str, SourceEntry]
) -> Iterator[TableFault]:
    places: list[tuple[Loc, object]] = [(("source", "id"), file.source.id)]
    for name in (name for name, unit in file.units.items() if unit == "source"):
        places += [(("rows", index, name), row[name]) for index, row in enumerate(rows)]
    for loc, id in places:
        if id not in sources:
            yield TableFault("unknown-source", loc, str(id), "an id of sources.yaml")


def _source(file: TableFile, row: Mapping[str, Cell], sources: Mapping[str, SourceEntry]) -> Source:
    """Return where a row was read: its own source and mark when it names them, else the table's."""
    by_unit = {unit: row[name] for name, unit in file.units.items() if unit in ("source", "mark")}
    id = str(by_unit.get("source", file.source.id))
    entry = sources[id]
    mark = by_unit.get("mark", file.checked)
    return Source(id, entry.document, entry.edition, file.source.locator, mark)  # type: ignore[arg-type]
