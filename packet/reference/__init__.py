"""Tables, code editions and product sheets from ``shared/``, each value with its citation and its mark."""

from packet.reference.library import Library
from packet.reference.match import CannotTell, CodeRow, Match
from packet.reference.products import PRODUCT_FIGURES, Product, ProductFigure
from packet.reference.table import NotInTable, Table, TableRow

__all__ = [
    "PRODUCT_FIGURES",
    "CannotTell",
    "CodeRow",
    "Library",
    "Match",
    "NotInTable",
    "Product",
    "ProductFigure",
    "Table",
    "TableRow",
]
