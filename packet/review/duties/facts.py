"""What is known of a job that rules on inspections and certificates look at."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction

from packet.figure import FigureSet
from packet.figures.rules import facts
from packet.figures.share import SectionShare, section_shares
from packet.problems import nearest
from packet.record.job import JobRecord
from packet.record.papers import Inspection
from packet.reference import Library
from packet.reference.table import NotInTable, Table

TEXAS, FLORIDA = "texas", "florida"

#: States with rules of their own, by the ways their names are written.
_STATES: Mapping[str, str] = {"texas": TEXAS, "tx": TEXAS, "florida": FLORIDA, "fl": FLORIDA}

#: Parts at the eave that are trim and no framing.
_TRIM = frozenset({"fascia", "soffit"})

#: Digits of a computed share that count; the rest is rounding of roots.
_SHARE_DIGITS = 6


@dataclass(frozen=True)
class Known:
    """Facts of a job, and the figures that show them.

    Attributes:
        state: State with rules of its own; "" elsewhere.
        values: Facts by name; an unknown one is left out.
        figures: Ids of figures by fact.
        subject: Roof section whose share is looked at; "" for none.
    """

    state: str
    values: Mapping[str, object]
    figures: Mapping[str, str] = field(default_factory=dict)
    subject: str = ""


def state_of(record: JobRecord) -> str:
    """Return the state with rules of its own that the house stands in; "" elsewhere."""
    return _STATES.get(" ".join(record.property.state.split()).casefold(), "")


def known_facts(record: JobRecord, library: Library, figures: FigureSet) -> Known:
    """Return what is known; in Florida the shares of roof sections are worked out first.

    Args:
        record: The job record.
        library: Published tables.
        figures: The record's figures; takes those of shares.
    """
    state = state_of(record)
    values: dict[str, object] = dict(facts(record, figures, library))
    shown = {"house_built": "property.built"}
    area = figures.get("work.area")
    added: dict[str, object] = {
        "deck_touched": deck_touched(record),
        "permit_named": _permit_named(record),
        "old_roof_permit_date": record.roof.old.permit_date if record.roof and record.roof.old else None,
    }
    if area:
        added["worked_area_sq_ft"], shown["worked_area_sq_ft"] = _exact(area.value), area.id
    subject = ""
    if state == TEXAS:
        added["windstorm_area"] = windstorm_area(record, library.table("windstorm_counties"))
        added["seen_under_way"] = seen_under_way(record)
    if state == FLORIDA and (share := _greatest(section_shares(record, figures), figures)):
        subject = share.section
        for fact, id in (("job_share_percent", share.job), ("year_share_percent", share.year)):
            if id:
                added[fact], shown[fact] = _exact(figures.by_id[id].value), id
    values |= {name: value for name, value in added.items() if value is not None}
    return Known(state, values, shown, subject)


def _exact(value: float | Fraction) -> Fraction:
    return Fraction(str(round(float(value), _SHARE_DIGITS)))


def _greatest(shares: tuple[SectionShare, ...], figures: FigureSet) -> SectionShare | None:
    """Return the section with the greatest share; a rule is met by the whole job when it is met there."""
    return max(shares, key=lambda share: figures.by_id[share.year or share.job].value, default=None)


def _permit_named(record: JobRecord) -> str | None:
    basis = record.basis
    if basis is None or not (basis.permit or basis.no_permit):
        return None
    return "yes" if basis.permit else "no"


def deck_touched(record: JobRecord) -> str | None:
    """Return whether the deck or its framing was touched; None before the work has come so far.

    Sheets, boards, a deck nailed again or work on framing say yes. A record that names none says no once the
    roof is under underlayment again, or the job is closed.
    """
    deck = record.deck
    of_deck = deck and (deck.sheets or deck.boards or deck.cut_outs or deck.renailed)
    if of_deck or any(work.part not in _TRIM for work in record.framing):
        return "yes"
    return "no" if record.job.status == "closed" or record.dates.dried_in else None


def windstorm_area(record: JobRecord, counties: Table) -> str | None:
    """Return whether a Texas house lies in the windstorm area, by its county; None when it can't be told."""
    written = " ".join((record.property.county or "").split())
    name = written.casefold().removesuffix(" county")
    named = {county.casefold(): county for county in counties.words("county")}
    if not name:
        return None
    if name not in named:
        # a slip of the pen is not a county elsewhere
        return None if nearest(name, named) else "outside"
    try:
        return counties.lookup(county=named[name]).word("area")
    except NotInTable:
        return record.property.windstorm_area


def seen_under_way(record: JobRecord) -> str | None:
    """Return whether an inspector for the windstorm certificate came while the work was under way."""
    started, finished = record.dates.started, record.dates.finished
    visits = [visit.on for visit in record.inspections if visit.purpose == "windstorm"]
    if started and any(started <= day <= (finished or day) for day in visits):
        return "yes"
    return "no" if started and finished else None


def final_visit(record: JobRecord) -> Inspection | None:
    """Return the last visit for the permit that looked at the finished work."""
    visits = [v for v in record.inspections if v.purpose == "permit" and "done" in v.stages]
    return max(visits, key=lambda visit: visit.on, default=None)


def first_deck_visit(record: JobRecord) -> tuple[date | None, str]:
    """Return day and id of the first visit for the permit that looked at the bare deck."""
    visits = [v for v in record.inspections if v.purpose == "permit" and "deck" in v.stages]
    first = min(visits, key=lambda visit: visit.on, default=None)
    return (first.on, first.id) if first else (None, "")
