"""A number with its working: what is shown on a page, where it comes from, and who says so."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

Mark = Literal["seen", "seen_secondary", "derived", "memory", "common_practice", "office"]

#: Marks whose rows may decide a result; a restatement decides with a caution beside it.
DECIDING_MARKS: frozenset[Mark] = frozenset({"seen", "derived", "office", "seen_secondary"})

Number = int | float | Fraction
OriginKind = Literal["record", "figure", "table", "rule", "shape", "form", "product", "unit"]


@dataclass(frozen=True)
class Source:
    """A published place a value was read in, and how well it was read."""

    id: str
    document: str
    edition: str
    locator: str
    checked: Mark


@dataclass(frozen=True)
class Origin:
    """Where a term comes from: the record, another figure, a table cell, a rule, a shape, a product."""

    kind: OriginKind
    ref: str


@dataclass(frozen=True)
class Term:
    """One symbol of a working with the number put in."""

    symbol: str
    value: Number
    unit: str
    origin: Origin


@dataclass(frozen=True)
class Working:
    """Arithmetic in symbols: + - * / ** ( ), sqrt, ceil, floor, min, max; re-evaluated it gives the value."""

    formula: str
    terms: tuple[Term, ...]


@dataclass(frozen=True)
class Figure:
    """One shown number.

    Attributes:
        id: Stable id, also its anchor on the page (``plane.MS.area``).
        value: Exact or full-precision value in ``unit``.
        unit: Unit key (``sq_ft``, ``ft``, ``in``, ``bundle`` …).
        decimals: Places shown; lengths in ``ft_in`` show feet, inches and sixteenths instead, and those in
            ``in`` a tape's fraction when it is 0.
        working: How it was computed; None when it was measured or typed.
        origin: Record path of a measured value, else "".
        sources: Published places the rule or cell was read in.
    """

    id: str
    value: Number
    unit: str
    decimals: int = 0
    working: Working | None = None
    origin: str = ""
    sources: tuple[Source, ...] = ()


def term(symbol: str, value: Number, unit: str, kind: OriginKind, ref: str) -> Term:
    """Return a term; shorthand that keeps the figure modules readable."""
    return Term(symbol, value, unit, Origin(kind, ref))


@dataclass
class FigureSet:
    """Figures by id, in the order they were made; an id is given once."""

    by_id: dict[str, Figure] = field(default_factory=dict)

    def add(self, figure: Figure) -> Figure:
        """Add a figure and return it.

        Raises:
            ValueError: The id is taken.
        """
        if figure.id in self.by_id:
            message = f"figure id {figure.id} is taken"
            raise ValueError(message)
        self.by_id[figure.id] = figure
        return figure

    def measured(
        self,
        id: str,
        value: Number,
        unit: str,
        origin: str,
        *,
        decimals: int = 0,
        sources: Sequence[Source] = (),
    ) -> Figure:
        """Add a value a person measured or typed, or that stands in a published table."""
        return self.add(Figure(id, value, unit, decimals, origin=origin, sources=tuple(sources)))

    def computed(
        self,
        id: str,
        value: Number,
        unit: str,
        formula: str,
        terms: Sequence[Term],
        *,
        decimals: int = 0,
        sources: Sequence[Source] = (),
    ) -> Figure:
        """Add a computed value with its working."""
        return self.add(Figure(id, value, unit, decimals, Working(formula, tuple(terms)), "", tuple(sources)))

    def as_term(self, symbol: str, id: str, value: Number | None = None, unit: str = "") -> Term:
        """Return a figure as a term of another working.

        Args:
            symbol: Symbol in the formula.
            id: The figure.
            value: Its value in ``unit`` when the formula wants another unit than the figure shows.
            unit: That unit.
        """
        figure = self.by_id[id]
        if value is None:
            return term(symbol, figure.value, "ft" if figure.unit == "ft_in" else figure.unit, "figure", id)
        return term(symbol, value, unit, "figure", id)

    def get(self, id: str) -> Figure | None:
        """Return the figure with this id, or None."""
        return self.by_id.get(id)
