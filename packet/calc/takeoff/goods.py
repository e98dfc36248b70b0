"""Goods: what is bought for a need, and what of it was laid."""

from fractions import Fraction

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number
from packet.units import round_up

WITH_ALLOWANCE = "net * (1 + percent / 100)"
TO_BUY = "ceil(need / gives_each)"
LAID = "delivered - returned - left - scrap"


def with_allowance(net: Number, percent: Number) -> Number:
    """Return a need with what is bought beyond it.

    Source: house rule; the allowance is a stated share of the net need. Starter and caps are needs of their
    own and not hidden in it.

    Args:
        net: Need by geometry and rule [any unit], 0 or more.
        percent: Share of it that is bought besides [percent], 0 or more.

    Returns:
        Need with the allowance [same unit], exact when the inputs are.

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> with_allowance(1250, 8)
        Fraction(1350, 1)
    """
    zero_or_more(net=net, percent=percent)
    return net * (1 + percent * Fraction(1, 100))


def to_buy(need: Number, gives_each: Number) -> int:
    """Return the whole bundles, rolls, boxes or tubes that give what is needed.

    Source: house rule; whole purchase units. What one gives is read off its wrapper or product sheet.

    Args:
        need: What is needed [any unit], 0 or more.
        gives_each: What one purchase unit gives [same unit], above 0.

    Returns:
        Whole purchase units [the item's own unit].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> to_buy(1350, Fraction(164, 5)), to_buy(88, 185)
        (42, 1)
    """
    zero_or_more(need=need)
    above_zero(gives_each=gives_each)
    return round_up(Fraction(1) * need / gives_each)


def laid(delivered: Number, returned: Number, left: Number, scrap: Number) -> Number:
    """Return how much of a material went into the roof.

    Source: house rule; what came, less what went back, stayed with the owner, or was thrown away.

    Args:
        delivered: Amount delivered [the item's own unit], 0 or more.
        returned: Amount returned [same unit], 0 or more.
        left: Amount left with the owner [same unit], 0 or more.
        scrap: Amount thrown away [same unit], 0 or more.

    Returns:
        Amount laid [same unit].

    Raises:
        OutOfRange: A value is below 0, or more went than came.

    Example:
        >>> laid(Fraction(9), 1, Fraction(1, 2), Fraction(1, 2))
        Fraction(7, 1)
    """
    zero_or_more(delivered=delivered, returned=returned, left=left, scrap=scrap)
    amount = delivered - returned - left - scrap
    zero_or_more(laid=amount)
    return amount
