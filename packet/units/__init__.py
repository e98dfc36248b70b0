"""Measures as a roofer writes them, read to exact fractions, and written back.

Lengths are exact fractions of an inch, pitches of a rise in 12. Suction is negative wherever a pressure is
given. A bare number is refused where a unit matters.
"""

from packet.units.kinds import Area, Length, NailSize, NotAMeasure, Pitch, Speed
from packet.units.lengths import LENGTH_FORMS, parse_length, plain_length
from packet.units.measures import parse_area, parse_nail_size, parse_pitch, parse_speed
from packet.units.numbers import parse_count, parse_quantity
from packet.units.rounding import ROUND_UP_TOLERANCE, Number, round_half_away, round_up
from packet.units.writing import decimal_text, feet_and_inches, fraction_text, tape_text

__all__ = [
    "LENGTH_FORMS",
    "ROUND_UP_TOLERANCE",
    "Area",
    "Length",
    "NailSize",
    "NotAMeasure",
    "Number",
    "Pitch",
    "Speed",
    "decimal_text",
    "feet_and_inches",
    "fraction_text",
    "parse_area",
    "parse_count",
    "parse_length",
    "parse_nail_size",
    "parse_pitch",
    "parse_quantity",
    "parse_speed",
    "plain_length",
    "round_half_away",
    "round_up",
    "tape_text",
]
