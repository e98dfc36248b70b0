"""Things of a record by id: what a plane, an edge, an area or a detail is called beside its numbers."""

from collections.abc import Iterator, Mapping
from typing import Any

#: Where the id of a thing stands in that of a figure, by its first part: ``edge.E1.worked``.
_PLACE = {"plane": 1, "edge": 1, "area": 1, "sheet": 1, "opening": 1, "section": 1, "takeoff": 2}


def things(copy: Mapping[str, Any], words: Mapping[str, Any]) -> dict[str, str]:
    """Return title or kind of every plane, edge, area, detail, sheet, opening and section, by id.

    Args:
        copy: A redacted copy, as in ``packet.json``.
        words: Words of the packet's language.
    """
    return dict(_things(copy, words))


def thing_of(ref: str, known: Mapping[str, str]) -> str:
    """Return title and id of the thing whose figure this is; "" where it is of no thing, or of a part of one.

    Example:
        >>> thing_of("edge.MS-EAVE.worked", {"MS-EAVE": "Eave"})
        'Eave MS-EAVE'
        >>> thing_of("edge.MS-EAVE.worked.1", {"MS-EAVE": "Eave"}), thing_of("work.area", {})
        ('', '')
    """
    parts = ref.split(".")
    place = _PLACE.get(parts[0], len(parts))
    if place >= len(parts) or len(parts) > place + 2 or parts[place] not in known:
        return ""
    id = parts[place]
    return id if known[id] == id else f"{known[id]} {id}"


def _things(copy: Mapping[str, Any], words: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    record, geometry, labels = copy["record"], copy["geometry"] or {}, words["labels"]
    roof = record.get("roof") or {}
    for plane in geometry.get("planes", ()):
        yield plane["id"], plane["title"]
    for edge in geometry.get("edges", ()):
        yield edge["id"], words["edge_kinds"][edge["kind"]]
    for area in geometry.get("areas", ()):
        yield area["id"], labels["area"]
    for sheet in (record.get("deck") or {}).get("sheets", ()):
        yield sheet["id"], labels["sheet"]
    for opening in roof.get("openings", ()):
        yield opening["id"], opening["what"]
    for section in roof.get("sections", ()):
        yield section["id"], section["title"]
    for detail in record.get("details", ()):
        yield detail["id"], words["detail_kinds"][detail["kind"]]
