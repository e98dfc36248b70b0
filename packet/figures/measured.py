"""Every number a person measured or typed, as a figure named after its place in the record."""

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from pydantic import BaseModel

from packet import units
from packet.figure import FigureSet
from packet.record.job import JobRecord
from packet.reference import Library

#: Lengths from here on read better in feet and inches.
FEET_FROM_IN = 48

#: A nail's shank is known by its thousandths: 0.120 on the box is not 0.12.
WIRE_DECIMALS = 3

#: Fields that say where something is; places beside each other read in one unit.
PLACES = frozenset({"at", "outline", "upper_starts", "top_at"})

#: Whole numbers that are not counts.
_UNIT_BY_FIELD = {
    "built": "year",
    "age_years": "years",
    "revision": "number",
    "climate_zone": "number",
    "free_sq_in_each": "sq_in",
    "spots_each": "spot",
    "percent": "percent",
    "pieces_each": "piece",
    "nails_a_pound": "per_lb",
}


def add_length(figures: FigureSet, path: str, length: units.Length) -> None:
    """Add a length: a nail's shank in thousandths, feet and inches when long or a place on the roof."""
    if path.endswith(".shank"):
        figures.measured(path, length.inches, "in", path, decimals=WIRE_DECIMALS)
    elif abs(length.inches) >= FEET_FROM_IN or PLACES & set(path.split(".")):
        figures.measured(path, length.inches / 12, "ft_in", path)
    else:
        figures.measured(path, length.inches, "in", path)


def _nail(figures: FigureSet, path: str, nail: units.NailSize) -> None:
    figures.measured(f"{path}.length", nail.length_in, "in", path)
    figures.measured(f"{path}.shank", nail.shank_in, "in", path, decimals=WIRE_DECIMALS)


#: How each kind of value becomes figures.
_KINDS: dict[type, Callable[[FigureSet, str, Any], None]] = {
    units.Length: add_length,
    units.NailSize: _nail,
    units.Pitch: lambda figures, path, value: _one(figures, path, value.rise_in_12, "pitch", 1),
    units.Area: lambda figures, path, value: _one(figures, path, value.square_feet, "sq_ft", 1),
    units.Speed: lambda figures, path, value: _one(figures, path, value.mph, "mph", 0),
}


def _one(figures: FigureSet, path: str, value: Fraction, unit: str, decimals: int) -> None:
    figures.measured(path, value, unit, path, decimals=0 if value.denominator == 1 else decimals)


def measured_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add a figure for each measured or counted value of the record.

    A list's entry is named by its id, so that ``roof.planes.MS.lower`` stays when planes are reordered.
    """
    _walk(record, "", "count", figures)


def _walk(value: Any, path: str, unit: str, figures: FigureSet) -> None:
    """Walk into a value; ``unit`` is what a bare number in it counts, as its entry says."""
    if isinstance(value, BaseModel):
        unit = str(getattr(value, "unit", unit))
        for name in type(value).model_fields:
            _field(value, name, f"{path}.{name}" if path else name, unit, figures)
    elif isinstance(value, tuple):
        for index, entry in enumerate(value):
            _walk(entry, f"{path}.{getattr(entry, 'id', index)}", unit, figures)
    elif isinstance(value, Mapping):
        for key, entry in value.items():
            _walk(entry, f"{path}.{key}", unit, figures)
    elif type(value) in _KINDS:
        _KINDS[type(value)](figures, path, value)


def _field(model: BaseModel, name: str, path: str, unit: str, figures: FigureSet) -> None:
    value = getattr(model, name)
    if value is None or isinstance(value, bool):
        return
    if isinstance(value, (int, Fraction)):
        unit = _UNIT_BY_FIELD.get(name, unit)
        places = 0 if Fraction(value).denominator == 1 else 2
        figures.measured(path, value, unit, path, decimals=places)
    else:
        _walk(value, path, unit, figures)
