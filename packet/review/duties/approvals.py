"""Approvals of products, held against the days of the work."""

from collections.abc import Iterator

from packet.record.job import JobRecord
from packet.record.permissions import Approval
from packet.review.duties.model import Standing, StandingWord
from packet.review.model import Finding


def standings(record: JobRecord) -> tuple[Standing, ...]:
    """Return whether each approval was valid on every day of the work."""
    first, last = record.dates.started, record.dates.finished
    return tuple(Standing(item.id, _word(item, record), first, last) for item in record.approvals)


def _word(approval: Approval, record: JobRecord) -> StandingWord:
    first, last = record.dates.started, record.dates.finished
    if first is None:
        return "not_due" if record.job.status == "planned" else "not_recorded"
    begins, ends = approval.valid_from, approval.valid_until
    if (begins and begins > first) or (ends and ends < (last or first)):
        return "not_valid"
    if begins is None or ends is None or (last is None and record.job.status == "closed"):
        return "not_recorded"
    return "valid"


def approval_findings(record: JobRecord) -> Iterator[Finding]:
    """Yield the approvals that were not valid on some day of the work, with both spans of days."""
    by_id = {item.id: item for item in record.approvals}
    for standing in standings(record):
        if standing.word == "not_valid":
            item = by_id[standing.approval]
            work, valid = (standing.first, standing.last), (item.valid_from, item.valid_until)
            words = {
                "1_valid": " – ".join(day.isoformat() if day else "…" for day in valid),
                "2_work": " – ".join(day.isoformat() for day in work if day),
            }
            yield Finding("approval-not-valid", item.id, (), words)
