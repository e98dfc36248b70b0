"""Fasteners: how many, how long, how heavy; one topic a module."""

from packet.calc.cement import SEAL_SPOTS, seal_spots
from packet.calc.fasteners.nail_length import (
    NAIL_LENGTH_THICK_DECK,
    NAIL_LENGTH_THIN_DECK,
    THICK_DECK_IN,
    least_nail_length,
    least_nail_length_formula,
    nail_length_thick_deck,
    nail_length_thin_deck,
)
from packet.calc.fasteners.nails import POUNDS, ROOFING_NAILS, pounds, roofing_nails
from packet.calc.fasteners.rows import (
    CAP_NAILS,
    FIELD_ROWS,
    NAILS_IN_ROW,
    SHEET_NAILS,
    cap_nails,
    field_rows,
    nails_in_row,
    sheet_nails,
)

__all__ = [
    "CAP_NAILS",
    "FIELD_ROWS",
    "NAILS_IN_ROW",
    "NAIL_LENGTH_THICK_DECK",
    "NAIL_LENGTH_THIN_DECK",
    "POUNDS",
    "ROOFING_NAILS",
    "SEAL_SPOTS",
    "SHEET_NAILS",
    "THICK_DECK_IN",
    "cap_nails",
    "field_rows",
    "least_nail_length",
    "least_nail_length_formula",
    "nail_length_thick_deck",
    "nail_length_thin_deck",
    "nails_in_row",
    "pounds",
    "roofing_nails",
    "seal_spots",
    "sheet_nails",
]
