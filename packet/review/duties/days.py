"""Days of papers and visits held against the days of the work."""

from collections.abc import Callable, Mapping
from datetime import date

from packet.record.job import JobRecord
from packet.record.permissions import Permission, PermissionKind
from packet.review.duties.facts import final_visit, first_deck_visit
from packet.review.duties.model import DayCheck, DayWord

DaysOf = Callable[[JobRecord], tuple[DayCheck, ...]]


def _before(key: str, day: date | None, against: date | None, paper: str, *, due: bool) -> DayCheck:
    """Compare a day that comes first; the same day is told apart, since a record holds no hours."""
    return DayCheck(key, _word(day, against, due=due, first=True), day, against, paper)


def _after(key: str, day: date | None, against: date | None, paper: str, *, due: bool) -> DayCheck:
    return DayCheck(key, _word(day, against, due=due, first=False), day, against, paper)


def _word(day: date | None, against: date | None, *, due: bool, first: bool) -> DayWord:
    if day is None or against is None:
        return "not_recorded" if due else "not_due"
    if day == against:
        return "same_day"
    return "in_order" if (day < against) == first else "out_of_order"


def _begun(record: JobRecord) -> bool:
    return record.job.status != "planned"


def _closed(record: JobRecord) -> bool:
    return record.job.status == "closed"


def _issued(record: JobRecord, kind: PermissionKind) -> tuple[date | None, str]:
    """Return day and id of the first paper of a kind that was issued; else of one that has no day yet."""
    papers = [paper for paper in record.permissions if paper.kind == kind]
    dated = [(paper.issued_on, paper.id) for paper in papers if paper.issued_on]
    return min(dated, default=(None, papers[0].id if papers else ""))


def _applied(record: JobRecord) -> tuple[date | None, str]:
    """Return day and id of the first application for a windstorm certificate."""
    papers: list[Permission] = [
        paper
        for paper in record.permissions
        if paper.kind in ("windstorm application", "windstorm certificate")
    ]
    dated = [(paper.applied_on, paper.id) for paper in papers if paper.applied_on]
    return min(dated, default=(None, papers[0].id if papers else ""))


def _certificate(record: JobRecord) -> tuple[DayCheck, ...]:
    dates = record.dates
    applied, application = _applied(record)
    issued, certificate = _issued(record, "windstorm certificate")
    return (
        _before("application_before_work", applied, dates.started, application, due=_begun(record)),
        _after("certificate_after_work", issued, dates.finished, certificate, due=_closed(record)),
    )


def _engineer(record: JobRecord) -> tuple[DayCheck, ...]:
    issued, paper = _issued(record, "engineer certificate")
    return (_after("engineer_after_work", issued, record.dates.finished, paper, due=_closed(record)),)


def _affidavit(record: JobRecord) -> tuple[DayCheck, ...]:
    final = final_visit(record)
    signed, paper = _issued(record, "affidavit")
    seen, visit = first_deck_visit(record)
    dried_in = record.dates.dried_in
    return (
        _before("deck_seen_before_dry_in", seen, dried_in, visit, due=_closed(record) or bool(dried_in)),
        _before("affidavit_before_final", signed, final.on if final else None, paper, due=_closed(record)),
    )


def _permit(record: JobRecord) -> tuple[DayCheck, ...]:
    issued = record.basis.permit_date if record.basis else None
    return (_before("permit_before_work", issued, record.dates.started, "", due=_begun(record)),)


def _final(record: JobRecord) -> tuple[DayCheck, ...]:
    visit = final_visit(record)
    day, id = (visit.on, visit.id) if visit else (None, "")
    return (_after("final_after_work", day, record.dates.finished, id, due=_closed(record)),)


#: Days compared, by duty.
DAYS: Mapping[str, DaysOf] = {
    "windstorm-certificate": _certificate,
    "engineer": _engineer,
    "affidavit": _affidavit,
    "permit": _permit,
    "final-visit": _final,
}
