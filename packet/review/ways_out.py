"""Ways out that show nothing: without day, without who or what shows it, or of a row that does not differ."""

from collections.abc import Iterator, Sequence

from packet.photos.taken import TakenPhoto
from packet.record.job import JobRecord
from packet.record.papers import WayOut
from packet.review.model import Finding, Result
from packet.review.places import step_name


def way_out_findings(
    record: JobRecord, photos: Sequence[TakenPhoto], results: Sequence[Result]
) -> Iterator[Finding]:
    """Yield ways out that a reader could not follow, each once for its requirement.

    Args:
        record: The job record.
        photos: Its photos.
        results: The results of the record.
    """
    taken = {photo.entry.id: photo.day(record.property.time_zone) for photo in photos}
    for way in record.ways_out:
        if _is_bare(way):
            yield Finding("way-out-bare", step_name(way.requirement), (), {})
        day = taken.get(way.photo or "")
        if day and way.on and day < way.on:
            # the photo may be the office's alone, and so is its day
            on = {"on": way.on.isoformat()}
            yield Finding("way-out-photo-early", step_name(way.requirement), (), on)
        id, _, subject = way.requirement.partition(":")
        of = [item for item in results if item.requirement == id and subject in ("", item.subject)]
        if of and not any(item.word == "differs" for item in of):
            yield Finding("way-out-of-nothing", step_name(way.requirement), (), {})


def _is_bare(way: WayOut) -> bool:
    """Return whether a correction lacks its day or what shows it, or an acceptance its day or its office."""
    if way.kind == "corrected":
        return not (way.on and (way.photo or way.by))
    return way.kind == "accepted" and not (way.on and way.by)
