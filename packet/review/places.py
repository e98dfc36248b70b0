"""Where the fact behind a finding stands in the job's files, so that it can be mended or explained there."""

import re
from collections.abc import Iterator, Sequence
from typing import Any

from packet.review.model import Finding
from packet.yamlread.document import Document, Loc

#: Findings whose subject is the place of a text in the record, or the photo whose caption it is.
WORDING = "wording"

#: Findings whose subject is one part of the record and no entry with an id of its own.
_PARTS: dict[str, Loc] = {
    "truss-damaged": ("roof", "framing", "damage"),
    "species-unknown": ("roof", "framing", "species"),
    "framing-too-wide": ("roof", "framing", "spacing"),
    "span-rating-unread": ("deck", "panel", "span_rating"),
    "nail-too-short": ("deck", "nail", "size"),
    "boards-too-far-apart": ("deck", "over_boards", "gap"),
    "panel-thin-over-boards": ("deck", "panel", "thickness"),
}

#: The field of the subject's entry that the finding is about; without one, the entry itself.
_FIELDS: dict[str, str] = {
    "cut-out-short": "cut",
    "sheet-without-bearing": "at",
    "space-too-wide": "at",
    "ends-in-line": "at",
    "strength-along-rafters": "along",
    "boards-bare": "laid",
    "edge-length": "measured",
    "slope-too-flat": "pitch",
    "slope-too-steep": "pitch",
    "place-off-plane": "at",
    "pin-off-plane": "pin",
    "photo-time": "taken_at",
    "permission-late": "on",
    "not-reset": "state",
    "laid-below-need": "delivered",
    "laid-above-need": "delivered",
    "ordered-below-need": "planned",
}


def finding_place(finding: Finding, documents: Sequence[Document]) -> tuple[Document, Loc] | None:
    """Return the file and the path of what a finding is about; None where no file has it.

    Args:
        finding: The finding.
        documents: The job's files, the record first.
    """
    subject = _subject(finding)
    if finding.code == WORDING:
        places = {finding.subject, f"photos.{finding.subject}.shows"}
        found = ((document, loc) for document in documents for loc in _named(document.value, places))
        return next(found, None)
    if finding.code.startswith("way-out-"):
        for n, way in enumerate(documents[0].value.get("ways_out") or ()):
            if step_name(str(way.get("requirement"))) == finding.subject:
                return documents[0], ("ways_out", n)
    part = _PARTS.get(finding.code)
    if part is not None:
        return next(((document, part) for document in documents[:1]), None)
    for document in documents:
        for loc, value in _entries(document.value):
            if value.get("id") == subject:
                name = _FIELDS.get(finding.code)
                return document, (*loc, name) if name and name in value else loc
            if loc and loc[-1] == "taped" and subject in value:
                return document, (*loc, subject)
    return None


def _subject(finding: Finding) -> str:
    """Return the id of the entry to mend: of joints in one line, the sheet whose place was taped to one."""
    return finding.figures[0].split(".")[2] if finding.code == "ends-in-line" else finding.subject


def step_name(step: str | int) -> str:
    """Return a step of a place as anchors and links take it: an entry's id, its number, or a key."""
    return re.sub(r"[^A-Za-z0-9_-]+", "-", str(step))


def _named(value: Any, places: set[str], loc: Loc = (), place: str = "") -> Iterator[Loc]:
    """Yield the paths of the texts of a file whose place is one of those; entries go by their ids."""
    if place in places:
        yield loc
    elif isinstance(value, dict):
        for key, part in value.items():
            yield from _named(part, places, (*loc, key), f"{place}.{step_name(key)}".removeprefix("."))
    elif isinstance(value, list):
        for index, part in enumerate(value):
            step = part.get("id", index) if isinstance(part, dict) else index
            yield from _named(part, places, (*loc, index), f"{place}.{step_name(step)}")


def _entries(value: Any, loc: tuple[str | int, ...] = ()) -> Iterator[tuple[tuple[str | int, ...], Any]]:
    """Yield every mapping of a file with its path."""
    if isinstance(value, dict):
        yield loc, value
        for key, part in value.items():
            yield from _entries(part, (*loc, key))
    elif isinstance(value, list):
        for index, part in enumerate(value):
            yield from _entries(part, (*loc, index))
