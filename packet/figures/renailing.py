"""An old deck nailed again: what asks for it, which way the old fastener selects, nails added."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, get_args

from packet.figure import FigureSet, Source
from packet.figures.renailed_nails import Sheet, count_nails, lacks
from packet.figures.rules import Limit, code_ids, facts, limits
from packet.record.job import JobRecord
from packet.record.wood import RenailedWay
from packet.reference import CodeRow, Library
from packet.reference.models import Whose
from packet.reference.when import Value, When, plain

Asked = Literal["asked", "not_asked", "cannot_tell"]

WHOLE, BETWEEN = get_args(RenailedWay)


@dataclass(frozen=True)
class Trigger:
    """One rule on nailing an old deck again, and whether it asks it of this job.

    Attributes:
        row: Id of the row.
        whose: Law, maker, program or practice.
        word: Asked, not asked, or not to be told.
        facts: The facts that settle it, or those without which it can't be told.
        source: Where it was read.
        decides: Whether it was read well enough to decide.
        note: Plain note; "" for none.
    """

    row: str
    whose: Whose
    word: Asked
    facts: tuple[str, ...]
    source: Source
    decides: bool
    note: str


@dataclass(frozen=True)
class Renailing:
    """An old deck nailed again, or one of which rules tell.

    Attributes:
        triggers: Rules on whether it is asked, each with what settles it.
        branches: Rules on the way, by what holds the old deck.
        way: Way the nails are counted by; "" where neither a rule nor the record says it.
        by_rule: Whether a rule that may decide leaves no other way; else it is the way recorded.
        edge: Figure of the spacing at panel edges the nails are counted by; "" where there is none.
        field: Figure of the spacing between.
        planes: Planes nailed again, each with the figure of its nails; "" where they could not be counted.
        each: Figure of the nails of one old sheet; "" for boards.
        nails: Figure of all nails.
        missing: What the count lacks, as keys of ``takeoff.missing``.
    """

    triggers: tuple[Trigger, ...]
    branches: tuple[Limit, ...]
    way: RenailedWay | Literal[""] = ""
    by_rule: bool = False
    edge: str = ""
    field: str = ""
    planes: tuple[tuple[str, str], ...] = ()
    each: str = ""
    nails: str = ""
    missing: tuple[str, ...] = ()


def renailing(record: JobRecord, library: Library, figures: FigureSet) -> Renailing | None:
    """Return what rules and the record say of nailing the old deck again, and add the figures of its nails.

    None where nothing was nailed again and no rule of the job's speaks of it.
    """
    known = facts(record, figures, library)
    codes = code_ids(record)
    rows = [row for row in library.all_rows(codes) if row.asks == "renailed.needed"]
    triggers = tuple(_trigger(row, known, library) for row in rows)
    branches = limits("renailed.way", codes, known, library, figures)
    deck = record.deck
    old = deck.renailed if deck else None
    if deck is None or old is None:
        return Renailing(triggers, branches) if triggers else None
    way, by_rule = _way(branches, old.way)
    edge, field = (
        _spacing(name, record, known, library, figures) for name in ("edge_spacing", "field_spacing")
    )
    sheet = Sheet(way == BETWEEN, edge, field)
    missing = ("renailed_way",) if not (way or old.boards) else lacks(record, sheet)
    if missing:
        planes = tuple((plane, "") for plane in dict.fromkeys(old.planes))
        return Renailing(triggers, branches, way, by_rule, edge, field, planes, missing=missing)
    counted = count_nails(record, figures, sheet)
    each = "" if old.boards else "renailed.each"
    return Renailing(triggers, branches, way, by_rule, edge, field, counted, each, "renailed.nails")


def _trigger(row: CodeRow, known: Mapping[str, object], library: Library) -> Trigger:
    word, names = settled(row.when, plain(known))
    return Trigger(row.id, row.whose, word, names, library.source(row), row.may_decide, row.note)


def settled(when: When, known: Mapping[str, Value]) -> tuple[Asked, tuple[str, ...]]:
    """Return whether conditions hold, and by which facts; where it can't be told, the facts that lack.

    Args:
        when: Conditions of a row.
        known: What is known of the job, already ``plain``.
    """
    holds, missing = when.judge(known)
    if holds is None:
        return "cannot_tell", missing
    own = _agreeing(when, known, holds)
    if holds or not own:
        ways = [way for way in getattr(when, "any_of", ()) if way.judge(known)[0] is holds]
        own += [name for way in (ways[:1] if holds else ways) for name in _agreeing(way, known, holds)]
    return "asked" if holds else "not_asked", tuple(dict.fromkeys(own))


def _agreeing(when: When, known: Mapping[str, Value], holds: bool) -> list[str]:
    """Return the known facts whose condition comes out as wanted."""
    conditions = when.conditions.items()
    return [name for name, it in conditions if name in known and it.holds(known[name]) is holds]  # type: ignore[arg-type]


def _way(branches: tuple[Limit, ...], recorded: RenailedWay | None) -> tuple[RenailedWay | Literal[""], bool]:
    """Return the way nails are counted by: the one that rules leave, else the recorded one.

    Where rules that may decide let old nails count, nailing the whole deck again is more than they ask, and
    what was done is counted.
    """
    deciding = [limit for limit in branches if limit.decides and limit.words]
    if any(BETWEEN not in limit.words for limit in deciding):
        return WHOLE, True
    if recorded:
        return recorded, False
    return (BETWEEN, True) if deciding else ("", False)


def _spacing(
    name: str, record: JobRecord, known: Mapping[str, object], library: Library, figures: FigureSet
) -> str:
    """Return the figure of a spacing: the tightest rule's that may decide, else the one measured."""
    asked = limits(f"renailed.{name}", code_ids(record), known, library, figures)
    deciding = [limit for limit in asked if limit.decides and limit.kind == "at_most" and limit.figures]
    tightest = min(deciding, key=lambda limit: limit.value, default=None)  # type: ignore[arg-type, return-value]
    measured = f"deck.renailed.{name}"
    return tightest.figures[0] if tightest else measured if figures.get(measured) else ""
