"""Where the fact behind a finding stands in the job's files, so that it can be mended or explained there."""

from collections.abc import Iterator, Sequence
from typing import Any

from packet.review.model import Finding
from packet.yamlread.document import Document, Loc

#: Findings whose subject is one part of the record and no entry with an id of its own.
_PARTS: dict[str, Loc] = {
    "truss-damaged": ("roof", "framing", "damage"),
    "species-unknown": ("roof", "framing", "species"),
    "framing-too-wide": ("roof", "framing", "spacing"),
    "nail-too-short": ("deck", "nail", "size"),
    "boards-too-far-apart": ("deck", "over_boards", "gap"),
    "panel-thin-over-boards": ("deck", "panel", "thickness"),
}

#: The field of the subject's entry that the finding is about; without one, the entry itself.
_FIELDS: dict[str, str] = {
    "cut-out-short": "cut",
    "sheet-without-bearing": "at",
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
    part = _PARTS.get(finding.code)
    if part is not None:
        return next(((document, part) for document in documents[:1]), None)
    for document in documents:
        for loc, value in _entries(document.value):
            if value.get("id") == finding.subject:
                name = _FIELDS.get(finding.code)
                return document, (*loc, name) if name and name in value else loc
            if loc and loc[-1] == "taped" and finding.subject in value:
                return document, (*loc, finding.subject)
    return None


def _entries(value: Any, loc: tuple[str | int, ...] = ()) -> Iterator[tuple[tuple[str | int, ...], Any]]:
    """Yield every mapping of a file with its path."""
    if isinstance(value, dict):
        yield loc, value
        for key, part in value.items():
            yield from _entries(part, (*loc, key))
    elif isinstance(value, list):
        for index, part in enumerate(value):
            yield from _entries(part, (*loc, index))
