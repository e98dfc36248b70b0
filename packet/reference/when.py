"""Conditions of a row: what must be known and true for it to apply."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from fractions import Fraction
from functools import cached_property
from typing import Generic, TypeVar

from pydantic import Field, model_validator

from packet.fields import Day, Quantity, Strict, refuse
from packet.reference.vocabulary import (
    EdgeSupport,
    Exposure,
    InsideOutside,
    OldFastener,
    RoofZone,
    Shank,
    ShingleKind,
    ValleyKind,
    VaporRetarder,
    WindZone,
    WorkKind,
    YesNo,
)

Value = Fraction | str | date
Facts = Mapping[str, object]

#: Code of a problem; its sentences are in ``shared/words/problems.yaml``.
EMPTY_CONDITION = "empty-condition"

V = TypeVar("V", bound=Value)
W = TypeVar("W", bound=str)


class Bounds(Strict, Generic[V]):
    """Limits on a fact that has an order: ends, and whether they are included."""

    at_least: V | None = None
    at_most: V | None = None
    above: V | None = None
    below: V | None = None
    is_: V | None = Field(None, alias="is")

    @model_validator(mode="after")
    def _says_something(self) -> "Bounds[V]":
        if not self.model_fields_set or any(getattr(self, name) is None for name in self.model_fields_set):
            raise refuse(EMPTY_CONDITION, "", "at_least, at_most, above, below or is, with a value")
        return self

    def holds(self, value: V) -> bool:
        """Return whether a known value lies within the limits."""
        return (
            (self.at_least is None or value >= self.at_least)  # type: ignore[operator]
            and (self.at_most is None or value <= self.at_most)  # type: ignore[operator]
            and (self.above is None or value > self.above)  # type: ignore[operator]
            and (self.below is None or value < self.below)  # type: ignore[operator]
            and (self.is_ is None or value == self.is_)
        )

    def apart(self, other: "Bounds[V]") -> bool:
        """Return whether no value lies within the limits of both."""
        return self._ends_below(other) or other._ends_below(self)

    def _ends_below(self, other: "Bounds[V]") -> bool:
        """Return whether every value here is below every value there."""
        ends = ((self.at_most, True), (self.below, False), (self.is_, True))
        starts = ((other.at_least, True), (other.above, False), (other.is_, True))
        return any(
            end < start or (end == start and not (reached and begun))  # type: ignore[operator]
            for end, reached in ends
            for start, begun in starts
            if end is not None and start is not None
        )


class Choice(Strict, Generic[W]):
    """The words a fact may be."""

    is_: W | None = Field(None, alias="is")
    one_of: tuple[W, ...] = ()

    @model_validator(mode="after")
    def _says_something(self) -> "Choice[W]":
        if len(self.model_fields_set) != 1 or (self.is_ is None and not self.one_of):
            raise refuse(EMPTY_CONDITION, "", "either is with a word, or one_of with a list of words")
        return self

    def holds(self, value: str) -> bool:
        """Return whether a known word is among them."""
        return value in self.words

    @property
    def words(self) -> frozenset[str]:
        """The words that are accepted."""
        return frozenset(self.one_of) if self.is_ is None else frozenset({self.is_})

    def apart(self, other: "Choice[W]") -> bool:
        """Return whether no word is accepted by both."""
        return not self.words & other.words


Number = Bounds[Quantity]


class When(Strict):
    """Every condition that must hold; a fact that is not named does not matter."""

    wind_ultimate_mph: Number | None = None
    wind_nominal_mph: Number | None = None
    exposure: Choice[Exposure] | None = None
    slope_rise_in_12: Number | None = None
    steepest_rise_in_12: Number | None = None
    panel_thickness_in: Number | None = None
    nail_length_in: Number | None = None
    nail_shank_in: Number | None = None
    nail_shank: Choice[Shank] | None = None
    mean_roof_height_ft: Number | None = None
    shingle_kind: Choice[ShingleKind] | None = None
    valley_kind: Choice[ValleyKind] | None = None
    underlayment_layers: Number | None = None
    frame_spacing_in: Number | None = None
    edges_want_support: Choice[YesNo] | None = None
    edge_support: Choice[EdgeSupport] | None = None
    wind_zone: Choice[WindZone] | None = None
    permit_date: Bounds[Day] | None = None
    climate_zone: Number | None = None
    vapor_retarder: Choice[VaporRetarder] | None = None
    vent_high_share_percent: Number | None = None
    vent_high_below_top_ft: Number | None = None
    vent_high_above_eaves_ft: Number | None = None
    kind_of_work: Choice[WorkKind] | None = None
    work_begun: Bounds[Day] | None = None
    house_built: Number | None = None
    house_permit_date: Bounds[Day] | None = None
    old_fastener: Choice[OldFastener] | None = None
    old_nail_length_in: Number | None = None
    old_nail_shank_in: Number | None = None
    frame_gravity: Number | None = None
    roof_zone: Choice[RoofZone] | None = None
    chimney_width_in: Number | None = None
    windstorm_area: Choice[InsideOutside] | None = None
    worked_area_sq_ft: Number | None = None
    deck_touched: Choice[YesNo] | None = None
    seen_under_way: Choice[YesNo] | None = None
    job_share_percent: Number | None = None
    year_share_percent: Number | None = None
    old_roof_permit_date: Bounds[Day] | None = None
    permit_named: Choice[YesNo] | None = None

    @model_validator(mode="after")
    def _no_empty_condition(self) -> "When":
        empty = [name for name in self.model_fields_set if getattr(self, name) is None]
        if empty:
            raise refuse(EMPTY_CONDITION, ", ".join(empty), "a condition behind the fact, or no line at all")
        return self

    @cached_property
    def conditions(self) -> Mapping[str, "Bounds[Fraction] | Bounds[date] | Choice[str]"]:
        """The conditions by fact."""
        found = {name: getattr(self, name) for name in When.model_fields}
        return {name: condition for name, condition in found.items() if condition is not None}

    def judge(self, facts: Facts) -> tuple[bool | None, tuple[str, ...]]:
        """Return whether the conditions hold, and the unknown facts that keep it from being told.

        One known fact that fails settles it: False. Otherwise one unknown fact leaves it open: None.

        Args:
            facts: Facts by name, already ``plain``; an unknown one is absent or None.
        """
        missing = []
        for name, condition in self.conditions.items():
            value = facts.get(name)
            if value is None:
                missing.append(name)
            elif not condition.holds(value):  # type: ignore[arg-type]
                return False, ()
        return (None, tuple(missing)) if missing else (True, ())

    def apart(self, other: "When") -> bool:
        """Return whether both can never hold: a fact that both name can't satisfy both."""
        here, there = self.conditions, other.conditions
        return any(here[name].apart(there[name]) for name in here.keys() & there.keys())  # type: ignore[arg-type]


class RowWhen(When):
    """Conditions of a row: all that are named, and where ways are listed under ``any_of``, one of those.

    A deck counts as weakly nailed when it has staples, or short nails, or nails that nobody knows.
    """

    any_of: tuple[When, ...] = ()

    @model_validator(mode="after")
    def _two_ways_at_least(self) -> "RowWhen":
        if "any_of" in self.model_fields_set and (len(self.any_of) < 2 or When() in self.any_of):
            raise refuse(EMPTY_CONDITION, "any_of", "at least two ways, each with its conditions")
        return self

    def judge(self, facts: Facts) -> tuple[bool | None, tuple[str, ...]]:
        """Return whether the conditions hold, and the unknown facts that keep it from being told.

        One way that holds is enough; when none does, one that is open leaves it open.
        """
        holds, missing = super().judge(facts)
        if holds is False or not self.any_of:
            return holds, missing
        ways = [way.judge(facts) for way in self.any_of]
        if any(way is True for way, _ in ways):
            return holds, missing
        lacking = [name for way, names in ways if way is None for name in names]
        return (None, tuple(dict.fromkeys((*missing, *lacking)))) if lacking else (False, ())

    def apart(self, other: When) -> bool:
        """Return whether both can never hold, by whichever of their ways."""
        theirs = other.any_of if isinstance(other, RowWhen) else ()
        return When.apart(self, other) or all(
            any(When.apart(a, b) for a in (self, way) for b in (other, their_way))
            for way in self.any_of or (self,)
            for their_way in theirs or (other,)
        )


#: Every fact a condition may name.
FACTS: frozenset[str] = frozenset(When.model_fields)


def plain(facts: Facts) -> dict[str, Value]:
    """Return the known facts with exact numbers, so that 0.131 typed and 0.131 computed are one value.

    Args:
        facts: Facts by name; None stands for unknown.

    Raises:
        ValueError: A name is no fact, or a value is neither a number, a word nor a day.
    """
    unknown = set(facts) - FACTS
    if unknown:
        message = f"no such fact: {', '.join(sorted(unknown))}"
        raise ValueError(message)
    return {name: _plain(name, value) for name, value in facts.items() if value is not None}


def _plain(name: str, value: object) -> Value:
    if type(value) is Fraction:
        return value
    if isinstance(value, str | date):
        return value
    if isinstance(value, bool):
        message = f"{name} is neither a number, a word nor a day"
        raise ValueError(message)
    if isinstance(value, float):
        return Fraction(repr(value))
    if isinstance(value, int | Fraction | Decimal):
        return Fraction(value)
    message = f"{name} is neither a number, a word nor a day"
    raise ValueError(message)
