"""Planes of the record as shapes with a place in plan."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from packet.calc import geometry
from packet.calc.plan import Place, place
from packet.calc.polygon import Outline
from packet.record.roof import AnyPlane, Opening, Point, Rectangle, Roof, Triangle
from packet.units import Length


@dataclass(frozen=True)
class PlacedPlane:
    """A plane of the record with its shape and its place in plan."""

    plane: AnyPlane
    shape: geometry.Shape
    place: Place


def feet(length: Length) -> Fraction:
    """Return a length in feet, exact."""
    return length.inches / 12


def _shape(plane: AnyPlane) -> geometry.Shape:
    lower, run, rise = feet(plane.lower), feet(plane.run), plane.pitch.rise_in_12
    if isinstance(plane, Rectangle):
        return geometry.rectangle(lower, run, rise)
    if isinstance(plane, Triangle):
        return geometry.triangle(lower, feet(plane.top_at), run, rise)
    return geometry.Shape(lower, feet(plane.upper), feet(plane.upper_starts), run, rise)


def placed_planes(roof: Roof) -> dict[str, PlacedPlane]:
    """Return the planes of a roof by id."""
    return {
        plane.id: PlacedPlane(
            plane, _shape(plane), place((feet(plane.at[0]), feet(plane.at[1])), plane.facing)
        )
        for plane in roof.planes
    }


def outline_ft(points: Sequence[Point]) -> Outline:
    """Return corners of the record in feet on the slope."""
    return tuple((feet(u), feet(v)) for u, v in points)


def opening_outline_ft(opening: Opening) -> Outline:
    """Return the corners of an opening in feet on the slope."""
    left, low = feet(opening.at[0]), feet(opening.at[1])
    right, high = left + feet(opening.along), low + feet(opening.up)
    return ((left, low), (right, low), (right, high), (left, high))
