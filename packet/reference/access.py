"""Facts on getting up to a roof and working on it safely, each with its source and mark."""

from packet.fields import Line, Quantity, Slug, Strict
from packet.figure import Mark


class AccessFactEntry(Strict):
    """One fact; what it means stands in the words, under ``access.says`` and its id.

    Attributes:
        value: The number; None where the fact is words alone.
        unit: Its unit, as in ``units`` of the words; "" without a number.
    """

    value: Quantity | None = None
    unit: Line | None = None
    source: Slug
    locator: Line
    checked: Mark


class AccessFile(Strict):
    """Every fact by its id."""

    facts: dict[Slug, AccessFactEntry]
