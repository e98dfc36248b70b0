"""Where rafters or trusses stand under a plane."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from packet.calc.domain import OutOfRange, above_zero
from packet.figure import Number
from packet.units import round_up


def framing_lines(
    first_ft: Number, spacing_in: Number, low_ft: Number, high_ft: Number
) -> tuple[Number, ...]:
    """Return the center lines of regular framing from one end of a plane to the other.

    Source: house rule; one line every spacing, before and after the one that was measured.

    Args:
        first_ft: Center of one member, along the lowest edge [ft].
        spacing_in: Distance on center [in], above 0.
        low_ft: Left end of what the plane reaches [ft].
        high_ft: Right end [ft].

    Returns:
        Centers from left to right [ft].

    Raises:
        OutOfRange: The spacing is not above 0, or the ends are the wrong way round.

    Example:
        >>> [float(line) for line in framing_lines(0, 24, 0, 7)]
        [0.0, 2.0, 4.0, 6.0]
    """
    above_zero(spacing_in=spacing_in)
    if high_ft < low_ft:
        message = f"a plane does not reach from {low_ft} to {high_ft}"
        raise OutOfRange(message)
    step = Fraction(spacing_in) / 12
    start = round_up(Fraction(low_ft - first_ft) / step) * step + first_ft
    count = int((high_ft - start) / step) if high_ft >= start else -1
    return tuple(start + number * step for number in range(count + 1))


def supports(lines: Sequence[Number], start_ft: Number, end_ft: Number, half_width_ft: Number) -> int:
    """Return how many members a panel bears on, those at its ends included.

    Source: house rule; an end bears when it stands over the member.

    Args:
        lines: Centers of the members [ft].
        start_ft: Left end of the panel [ft].
        end_ft: Right end of the panel [ft].
        half_width_ft: Half the width of a member [ft], 0 or more.

    Returns:
        Members [support].

    Example:
        >>> supports([0, 2, 4, 6, 8], 0, 8, 0.0625)
        5
    """
    return sum(start_ft - half_width_ft <= line <= end_ft + half_width_ft for line in lines)


def widest_space(
    lines: Sequence[Number], start_ft: Number, end_ft: Number, half_width_ft: Number
) -> tuple[Number, Number] | None:
    """Return the two members next to each other under a panel that stand farthest apart, center to center.

    Source: house rule; a panel spans from member to member, and on old framing the spaces differ.

    Args:
        lines: Centers of the members, left to right [ft].
        start_ft: Left end of the panel [ft].
        end_ft: Right end of the panel [ft].
        half_width_ft: Half the width of a member [ft], 0 or more.

    Returns:
        Both centers [ft], the first of equals; None where the panel bears on fewer than two.

    Example:
        >>> widest_space([0, 2, 5, 7, 9], 0, 8, 0.0625)
        (2, 5)
    """
    under = [line for line in lines if start_ft - half_width_ft <= line <= end_ft + half_width_ft]
    return max(pairwise(under), key=lambda space: space[1] - space[0], default=None)
