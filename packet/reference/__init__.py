"""Published tables and code editions from ``shared/``, each value with its citation and its mark."""

from packet.reference.library import Library
from packet.reference.match import CannotTell, CodeRow, Match
from packet.reference.table import NotInTable, Table, TableRow

__all__ = ["CannotTell", "CodeRow", "Library", "Match", "NotInTable", "Table", "TableRow"]
