"""What a log says of a photo just taken in: what the file tells, what the person said, and nothing else."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from packet.photos.clock import offset_at
from packet.photos.facts import PhotoFacts
from packet.photos.logedit import NewEntry
from packet.readers import Reader

OffsetFrom = Literal["camera", "property"]


@dataclass(frozen=True)
class Said:
    """What the person says of all photos of a run; None is left open."""

    stage: str | None = None
    taken_by: str | None = None
    set_by: str | None = None
    readers: tuple[Reader, ...] | None = None


@dataclass(frozen=True)
class NewPhoto:
    """A photo to be logged.

    Attributes:
        id: Its id in the log.
        source: Where it came from.
        file: Its file inside the job folder.
        copied: False when it lay there already.
        facts: What it says of itself.
        offset: Offset from UTC when it was taken, or None.
        offset_from: Where the offset comes from, or None.
    """

    id: str
    source: Path
    file: str
    copied: bool
    facts: PhotoFacts
    offset: str | None
    offset_from: OffsetFrom | None


def offset_of(facts: PhotoFacts, zone: str) -> tuple[str | None, OffsetFrom | None]:
    """Return the offset of a photo's time and where it comes from; none without a time.

    Args:
        facts: What the photo says of itself.
        zone: Time zone of the house, for a camera that gives no offset.
    """
    if facts.taken_at is None:
        return None, None
    if facts.offset:
        return facts.offset, "camera"
    derived = offset_at(facts.taken_at, zone)
    return (derived, "property") if derived else (None, None)


def entry_of(photo: NewPhoto, said: Said, remarks: Mapping[str, str], *, first: bool) -> NewEntry:
    """Return a photo's entry; stage and caption stand there empty when they are still to be written.

    Args:
        photo: The photo.
        said: What the person says of it.
        remarks: Sentences for the log: ``fill``, ``fill_caption``, ``no_time`` and ``no_offset``.
        first: Whether it is the first of its run, which says what is still to be written.
    """
    taken_at = photo.facts.taken_at
    values: dict[str, Any] = {
        "id": photo.id,
        "file": photo.file,
        "sha256": photo.facts.sha256,
        "taken_at": taken_at.isoformat() if taken_at else None,
        "offset": photo.offset,
        "offset_from": photo.offset_from,
        "taken_by": said.taken_by,
        "stage": said.stage,
        "shows": None,
        "proves": [],
        "set_by": said.set_by,
        "readers": said.readers,
    }
    kept = {name: value for name, value in values.items() if value is not None or name in ("stage", "shows")}
    remark = [remarks["fill_caption" if said.stage else "fill"]] if first else []
    if taken_at is None:
        remark.append(remarks["no_time"])
    elif photo.offset is None:
        remark.append(remarks["no_offset"])
    return NewEntry(kept, "\n".join(remark))
