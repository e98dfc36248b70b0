"""How much of a roof section is worked, by this job and with what was worked in the twelve months before."""

from dataclasses import dataclass
from datetime import date

from packet.figure import FigureSet
from packet.figures.roof import add_up
from packet.record.job import JobRecord
from packet.record.roof import EarlierWork, Roof

JOB_SHARE = "100 * worked_sq_ft / section_sq_ft"
YEAR_SHARE = "100 * (worked_sq_ft + earlier_sq_ft) / section_sq_ft"

#: Id and name of the whole roof, where the record names no sections.
WHOLE = "roof"


@dataclass(frozen=True)
class SectionShare:
    """One roof section that was worked.

    Attributes:
        section: Id of the section; ``roof`` for the whole roof.
        job: Id of the figure of this job's share [percent].
        year: Id of the share in twelve months [percent]; "" where the record says nothing of earlier work.
    """

    section: str
    job: str
    year: str


def section_shares(record: JobRecord, figures: FigureSet) -> tuple[SectionShare, ...]:
    """Add the shares of every roof section that was worked, and return them.

    Where the record names no sections the roof counts as one. Nothing is returned where no area is recorded.

    Args:
        record: The job record.
        figures: The record's figures; takes the shares.
    """
    roof, covering = record.roof, record.covering
    if roof is None or covering is None:
        return ()
    found = []
    sections = {item.id: set(item.planes) for item in roof.sections} or {WHOLE: set(roof.plane_ids)}
    for id, planes in sections.items():
        areas = [f"area.{area.id}.area" for area in covering.areas if area.plane in planes]
        if areas:
            of = "roof" if id == WHOLE else f"section.{id}"
            found.append(_share(id, f"{of}.area", areas, record, roof, figures))
    return tuple(found)


def _share(
    id: str, section: str, areas: list[str], record: JobRecord, roof: Roof, figures: FigureSet
) -> SectionShare:
    at = f"share.{id}"
    add_up(figures, f"{at}.worked", "sq_ft", areas)
    worked, whole = figures.as_term("worked_sq_ft", f"{at}.worked"), figures.as_term("section_sq_ft", section)
    share = 100 * worked.value / whole.value
    figures.computed(f"{at}.job", share, "percent", JOB_SHARE, [worked, whole], decimals=1)
    if roof.worked_before is None or record.dates.started is None:
        return SectionShare(id, f"{at}.job", "")
    earlier = [work for work in roof.worked_before if _counts(work, id, roof, record.dates.started)]
    if not earlier:
        return SectionShare(id, f"{at}.job", f"{at}.job")
    add_up(figures, f"{at}.earlier", "sq_ft", [f"roof.worked_before.{work.id}.area" for work in earlier])
    before = figures.as_term("earlier_sq_ft", f"{at}.earlier")
    share = 100 * (worked.value + before.value) / whole.value
    figures.computed(f"{at}.year", share, "percent", YEAR_SHARE, [worked, before, whole], decimals=1)
    return SectionShare(id, f"{at}.job", f"{at}.year")


def _counts(work: EarlierWork, section: str, roof: Roof, started: date) -> bool:
    """Return whether earlier work lies in twelve months that also hold this job's first day.

    Work whose section is not named counts for every section: it may have been that one.
    """
    in_section = not roof.sections or work.section in (None, section)
    return in_section and work.on > year_before(started)


def year_before(day: date) -> date:
    """Return the same day a year earlier; of February 29, February 28.

    Example:
        >>> year_before(date(2024, 2, 29)), year_before(date(2026, 3, 16))
        (datetime.date(2023, 2, 28), datetime.date(2025, 3, 16))
    """
    try:
        return day.replace(year=day.year - 1)
    except ValueError:
        return day.replace(year=day.year - 1, day=28)
