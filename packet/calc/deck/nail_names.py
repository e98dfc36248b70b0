"""What a nail is called, and what is sold under a name: a penny size alone identifies no nail."""

from collections.abc import Iterable
from dataclasses import dataclass

from packet.calc.domain import above_zero
from packet.figure import Number


@dataclass(frozen=True)
class NamedNail:
    """One nail of a published list.

    Attributes:
        name: What the list calls it.
        length_in: Length under the head [in].
        shank_in: Diameter of the shank [in].
        shank: ``smooth`` or ``ring``.
        penny: Penny number it is sold under; None when the list gives none.
    """

    name: str
    length_in: Number
    shank_in: Number
    shank: str
    penny: int | None = None

    @property
    def size(self) -> tuple[Number, Number, str]:
        """What tells one nail from another: length [in], shank [in], kind of shank."""
        return (self.length_in, self.shank_in, self.shank)


def names_of(length_in: Number, shank_in: Number, shank: str, known: Iterable[NamedNail]) -> tuple[str, ...]:
    """Return the names under which a nail of this size is known.

    Source: house rule; length, diameter and kind of shank are those of the list, with nothing between.

    Args:
        length_in: Length under the head [in], above 0.
        shank_in: Diameter of the shank [in], above 0.
        shank: ``smooth`` or ``ring`` [-].
        known: Nails of the list [-].

    Returns:
        Names in the order of the list [-]; none when the list has no such nail.

    Raises:
        OutOfRange: A size is not above 0.

    Example:
        >>> common = NamedNail("8d common", 2.5, 0.131, "smooth", 8)
        >>> box = NamedNail("8d box", 2.5, 0.113, "smooth", 8)
        >>> names_of(2.5, 0.113, "smooth", [common, box])
        ('8d box',)
    """
    above_zero(length_in=length_in, shank_in=shank_in)
    return tuple(nail.name for nail in known if nail.size == (length_in, shank_in, shank))


def sold_as(penny: int, known: Iterable[NamedNail]) -> tuple[NamedNail, ...]:
    """Return every nail that is sold under a penny number.

    Source: house rule; the list names the number each nail is sold under, because gun strips called 8d are
    shorter than the 8d of the penny list.

    Args:
        penny: Penny number, 8 for 8d [-], above 0.
        known: Nails of the list [-].

    Returns:
        Nails in the order of the list [-].

    Raises:
        OutOfRange: The number is not above 0.

    Example:
        >>> common = NamedNail("8d common", 2.5, 0.131, "smooth", 8)
        >>> box = NamedNail("8d box", 2.5, 0.113, "smooth", 8)
        >>> [nail.name for nail in sold_as(8, [common, box])]
        ['8d common', '8d box']
    """
    above_zero(penny=penny)
    return tuple(nail for nail in known if nail.penny == penny)


def identifies_one(penny: int, known: Iterable[NamedNail]) -> bool:
    """Return whether a penny number alone says which nail is meant.

    Source: house rule; it does when every nail sold under it has one length and one shank.

    Args:
        penny: Penny number, 8 for 8d [-], above 0.
        known: Nails of the list [-].

    Returns:
        Whether it does; no value [-].

    Raises:
        OutOfRange: The number is not above 0.

    Example:
        >>> common = NamedNail("8d common", 2.5, 0.131, "smooth", 8)
        >>> box = NamedNail("8d box", 2.5, 0.113, "smooth", 8)
        >>> identifies_one(8, [common, box]), identifies_one(8, [common])
        (False, True)
    """
    return len({nail.size for nail in sold_as(penny, known)}) == 1
