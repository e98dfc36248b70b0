"""Ranges a calculator accepts, checked in one place."""

import math

from packet.figure import Number


class OutOfRange(ValueError):
    """A number outside the range a formula holds for."""


def above_zero(**values: Number) -> None:
    """Refuse a value that is not above 0.

    Source: house rule; lengths, covers and spacings divide something, so zero has no meaning.

    Args:
        values: Values by name [any unit].

    Returns:
        None; no value [-] comes back.

    Raises:
        OutOfRange: A value is 0, below 0, or not finite.

    Example:
        >>> above_zero(cover_sq_ft=0)
        Traceback (most recent call last):
        packet.calc.domain.OutOfRange: cover_sq_ft is 0; it must be above 0
    """
    for name, value in values.items():
        if not math.isfinite(value) or value <= 0:
            message = f"{name} is {value}; it must be above 0"
            raise OutOfRange(message)


def zero_or_more(**values: Number) -> None:
    """Refuse a value below 0.

    Source: house rule; counts, areas and laps are sizes.

    Args:
        values: Values by name [any unit].

    Returns:
        None; no value [-] comes back.

    Raises:
        OutOfRange: A value is below 0 or not finite.

    Example:
        >>> zero_or_more(lap_ft=-1)
        Traceback (most recent call last):
        packet.calc.domain.OutOfRange: lap_ft is -1; it must be 0 or more
    """
    for name, value in values.items():
        if not math.isfinite(value) or value < 0:
            message = f"{name} is {value}; it must be 0 or more"
            raise OutOfRange(message)


def lap_below_piece(lap: Number, piece: Number) -> None:
    """Refuse a lap that leaves nothing of the piece.

    Source: house rule; a piece that is all lap covers nothing, and the count would not end.

    Args:
        lap: Part of a piece that lies on its neighbour [any unit], 0 or more.
        piece: Size of the piece [same unit].

    Returns:
        None; no value [-] comes back.

    Raises:
        OutOfRange: The lap is below 0, or not below the piece.

    Example:
        >>> lap_below_piece(2, 2)
        Traceback (most recent call last):
        packet.calc.domain.OutOfRange: a lap of 2 leaves nothing of a piece of 2
    """
    zero_or_more(lap=lap)
    above_zero(piece=piece)
    if lap >= piece:
        message = f"a lap of {lap} leaves nothing of a piece of {piece}"
        raise OutOfRange(message)
