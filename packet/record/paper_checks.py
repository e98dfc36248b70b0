"""What papers say against each other and the rest of the record: ids that name nothing, days out of order."""

from collections.abc import Callable, Collection, Iterator

from packet.problems import nearest
from packet.record.fault import Fault, Loc
from packet.record.job import JobRecord


def _unknown(loc: Loc, id: str, known: Collection[str]) -> Iterator[Fault]:
    if id not in known:
        accepted = ", ".join(sorted(known)) or "none: the record has no such entry"
        yield Fault("unknown-id", loc, id, {"accepted": accepted, "nearest": nearest(id, known) or ""})


def _named_papers(record: JobRecord) -> Iterator[Fault]:
    """Documents, goods, visits and sections that a paper names and the record does not have."""
    documents = {document.id for document in record.documents}
    goods, visits = {line.id for line in record.bought}, {visit.id for visit in record.inspections}
    for name in ("permissions", "approvals"):
        for n, paper in enumerate(getattr(record, name)):
            if paper.document:
                yield from _unknown((name, n, "document"), paper.document, documents)
    for n, approval in enumerate(record.approvals):
        for m, id in enumerate(approval.goods):
            yield from _unknown(("approvals", n, "goods", m), id, goods)
    for n, visit in enumerate(record.inspections):
        for m, correction in enumerate(visit.corrections):
            if correction.seen_at:
                yield from _unknown(
                    ("inspections", n, "corrections", m, "seen_at"), correction.seen_at, visits
                )
    sections = {section.id for section in record.roof.sections} if record.roof else set()
    for n, work in enumerate((record.roof.worked_before if record.roof else None) or ()):
        if work.section:
            yield from _unknown(("roof", "worked_before", n, "section"), work.section, sections)


def _corrected_before_asked(record: JobRecord) -> Iterator[Fault]:
    """Nothing is put right before it was asked, and nobody sees it done before it is."""
    visits = {visit.id: visit.on for visit in record.inspections}
    for n, visit in enumerate(record.inspections):
        for m, correction in enumerate(visit.corrections):
            loc: Loc = ("inspections", n, "corrections", m)
            if correction.done_on and correction.done_on < visit.on:
                accepted = {"accepted": f"the visit was on {visit.on}"}
                yield Fault("dates-out-of-order", (*loc, "done_on"), str(correction.done_on), accepted)
            seen = visits.get(correction.seen_at or "")
            first = correction.done_on or visit.on
            if seen and correction.seen_at and seen < first:
                accepted = {"accepted": f"{correction.seen_at} was on {seen}, and this is of {first}"}
                yield Fault("dates-out-of-order", (*loc, "seen_at"), str(seen), accepted)


def _worked_before_after(record: JobRecord) -> Iterator[Fault]:
    """Earlier work lies before this job."""
    started = record.dates.started
    for n, work in enumerate((record.roof.worked_before if record.roof else None) or ()):
        if started and work.on >= started:
            accepted = {"accepted": f"a day before {started}, when this job started"}
            yield Fault("dates-out-of-order", ("roof", "worked_before", n, "on"), str(work.on), accepted)


PAPER_CHECKS: tuple[Callable[[JobRecord], Iterator[Fault]], ...] = (
    _named_papers,
    _corrected_before_asked,
    _worked_before_after,
)
