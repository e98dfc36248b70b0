"""Nails driven too deep at a panel's edge: what was found, and how many are added for them."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from packet.calc.domain import OutOfRange, above_zero, zero_or_more
from packet.figure import Number
from packet.units import round_up

Finding = Literal["sixteenth-or-less", "one-fifth-or-fewer", "more-than-one-fifth", "beyond-an-eighth"]

SHARE_OVERDRIVEN = "100 * overdriven / driven"
ADDED_FOR_OVERDRIVEN = "ceil(overdriven * added_for_each_two / 2)"
STAPLES_INSTEAD = "nails * staples_each"


@dataclass(frozen=True)
class Counted:
    """Nails along the edge of a panel, as counted.

    Attributes:
        driven: All of them [nail].
        over_sixteenth: Driven more than 1/16 in below the surface, the deeper ones included [nail].
        over_eighth: Driven more than 1/8 in below it [nail].
    """

    driven: int
    over_sixteenth: int
    over_eighth: int

    def __post_init__(self) -> None:
        above_zero(driven=self.driven)
        if not 0 <= self.over_eighth <= self.over_sixteenth <= self.driven:
            message = (
                f"of {self.driven} nails, {self.over_sixteenth} beyond 1/16 in and {self.over_eighth} beyond"
                " 1/8 in can't be: the deeper ones are counted in both"
            )
            raise OutOfRange(message)


@dataclass(frozen=True)
class Remedy:
    """What the counts lead to.

    Attributes:
        finding: Row of the table.
        added: Nails to add [nail].
        ask: Whether to ask the panel's maker or an engineer first: nails already stand so close that more
            can split the framing.
    """

    finding: Finding
    added: int
    ask: bool


def share_overdriven(overdriven: int, driven: int) -> Number:
    """Return the share of the nails that were driven too deep.

    Source: APA TT-012, as restated: the share of the nails along the panel's perimeter.

    Args:
        overdriven: Nails beyond 1/16 in [nail], 0 or more.
        driven: All nails along the edge [nail], above 0, not below the others.

    Returns:
        Share [percent], exact.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> share_overdriven(9, 45)
        Fraction(20, 1)
    """
    return 100 * Fraction(Counted(driven, overdriven, 0).over_sixteenth, driven)


def finding_of(counted: Counted, most_percent: Number) -> Finding:
    """Return the row of the table that the counts fall under.

    Source: APA TT-012, as restated: nothing is done up to 1/16 in, nor where at most a fifth lie beyond that
    and none beyond 1/8 in. It is said of shear walls.

    Args:
        counted: Nails as counted [nail].
        most_percent: Largest share that needs nothing [percent], 0 or more.

    Returns:
        Row of the table [-].

    Raises:
        OutOfRange: The share is below 0.

    Example:
        >>> finding_of(Counted(45, 9, 0), 20), finding_of(Counted(45, 10, 0), 20)
        ('one-fifth-or-fewer', 'more-than-one-fifth')
    """
    zero_or_more(most_percent=most_percent)
    if counted.over_eighth:
        return "beyond-an-eighth"
    if not counted.over_sixteenth:
        return "sixteenth-or-less"
    share = share_overdriven(counted.over_sixteenth, counted.driven)
    return "more-than-one-fifth" if share > most_percent else "one-fifth-or-fewer"


def added_for_overdriven(overdriven: int, added_for_each_two: int) -> int:
    """Return the nails added for those driven too deep.

    Source: APA TT-012, as restated: one for every two overdriven. An odd one counts as a pair.

    Args:
        overdriven: Nails beyond 1/16 in [nail], 0 or more.
        added_for_each_two: Nails for each two of them [nail], 0 or more.

    Returns:
        Nails to add [nail].

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> added_for_overdriven(9, 1)
        5
    """
    zero_or_more(overdriven=overdriven, added_for_each_two=added_for_each_two)
    return round_up(Fraction(overdriven * added_for_each_two, 2))


def staples_instead(nails: int, staples_each: int) -> int:
    """Return the staples that stand for nails which would stand too close.

    Source: APA TT-012, as restated: three for each nail needed. Where the rule of the place allows no
    staples, there is no such way out.

    Args:
        nails: Nails needed [nail], 0 or more.
        staples_each: Staples for each of them [staple/nail], above 0.

    Returns:
        Staples [staple].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> staples_instead(5, 3)
        15
    """
    zero_or_more(nails=nails)
    above_zero(staples_each=staples_each)
    return nails * staples_each


def remedy(
    counted: Counted,
    spacing_in: Number,
    *,
    most_percent: Number,
    added_for_each_two: int,
    may_split_at_in: Number,
) -> Remedy:
    """Return what to do about nails driven too deep along the edge of a panel.

    Source: APA TT-012, as restated, and an engineer's note on it: where nails stand 4 in apart or closer,
    adding more can do more harm than good.

    Args:
        counted: Nails as counted [nail].
        spacing_in: Spacing they stand at [in], above 0.
        most_percent: Largest share that needs nothing [percent], 0 or more.
        added_for_each_two: Nails for each two overdriven, where something is needed [nail], 0 or more.
        may_split_at_in: Spacing at and below which more nails can split the wood [in], above 0.

    Returns:
        Row, nails to add [nail], and whether to ask first.

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> remedy(Counted(45, 12, 0), 6, most_percent=20, added_for_each_two=1, may_split_at_in=4)
        Remedy(finding='more-than-one-fifth', added=6, ask=False)
    """
    above_zero(spacing_in=spacing_in, may_split_at_in=may_split_at_in)
    finding = finding_of(counted, most_percent)
    if finding in ("sixteenth-or-less", "one-fifth-or-fewer"):
        return Remedy(finding, 0, ask=False)
    added = added_for_overdriven(counted.over_sixteenth, added_for_each_two)
    return Remedy(finding, added, ask=added > 0 and spacing_in <= may_split_at_in)
