"""Corrections an inspector asked for, and photos that can't show them."""

from collections.abc import Iterator, Sequence

from packet.photos.taken import TakenPhoto
from packet.record.job import JobRecord
from packet.review.model import Finding


def correction_findings(record: JobRecord, photos: Sequence[TakenPhoto]) -> Iterator[Finding]:
    """Yield visits whose correction is shown by a photo from before the visit, with the day of the visit.

    The photo may be the office's alone, and so is its day.
    """
    taken = {photo.entry.id: photo.day(record.property.time_zone) for photo in photos}
    for visit in record.inspections:
        days = [taken.get(correction.photo or "") for correction in visit.corrections]
        if any(day and day < visit.on for day in days):
            yield Finding("correction-photo-early", visit.id, (), {"visit": visit.on.isoformat()})
