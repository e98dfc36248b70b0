"""One reader's copy: what the reader may not have is gone before any template sees it."""

from collections.abc import Iterable, Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any

from pydantic import BaseModel

from packet import units
from packet.closeout.model import Closeout
from packet.fields import Money, readers_of
from packet.figure import Figure, Origin, Source, Term, Working
from packet.figures.access import Access, AccessFact, Landing
from packet.figures.deck_parts import (
    DeckCutOut,
    DeckEdges,
    DeckJoint,
    DeckPiece,
    DeckPlan,
    DeckPlane,
    DeckRow,
    DeckStep,
)
from packet.figures.plan import Geometry, PlanArea, PlanEdge, PlanMark, PlanPlane
from packet.figures.renailing import Renailing, Trigger
from packet.figures.rules import Limit
from packet.figures.takeoff import TakeoffLine
from packet.readers import EVERYONE, Reader
from packet.reference.vocabulary import Nail
from packet.review.catalogue import BY_ID
from packet.review.duties import Bound, DayCheck, Duty, Reason, Rule, Standing, Stated
from packet.review.findings import OF_PHOTOS
from packet.review.holds import HoldItem, HoldPoint
from packet.review.model import Answer, Finding, Missed, Part, Result

#: Types whose leaves go where the thing that holds them goes; the leaves of any other are the office's alone.
_FOLLOW: frozenset[type] = frozenset(
    {Figure, Working, Term, Origin, Source, Result, Missed, Part, Limit, Answer, Finding, Nail}
    | {Geometry, PlanPlane, PlanEdge, PlanArea, PlanMark, TakeoffLine}
    | {DeckPlan, DeckPlane, DeckPiece, DeckRow, DeckStep, DeckCutOut, DeckEdges, DeckJoint}
    | {Renailing, Trigger}
    | {Access, AccessFact, Landing}
    | {HoldPoint, HoldItem}
    | {Duty, Reason, Bound, Rule, DayCheck, Stated, Standing}
)
_TYPED = (units.Length, units.Pitch, units.Area, units.Speed, units.NailSize, Money)
_GONE = object()


def redact(closeout: Closeout, reader: Reader) -> dict[str, Any]:
    """Return the copy one reader may have, ready for JSON; what the reader may not have is an absent key.

    Templates, drawings and paper get this and nothing else.

    Args:
        closeout: The whole closeout.
        reader: Whose copy.
    """
    copy: dict[str, Any] = _seen(closeout, reader)
    copy["packet"]["reader"] = reader
    if reader != "office":
        _office_requirements(copy)
    photos = {photo["id"] for photo in copy["photos"]}
    documents = {document["id"] for document in copy["record"]["documents"]}
    for result in copy["results"]:
        for name in ("evidence", "late", "stated"):
            _keep(result, name, photos)
        result["missed"] = [miss for miss in result["missed"] if miss["photo"] in photos]
        _keep(result, "papers", documents)
    withheld = {photo.id for photo in closeout.photos} - photos
    for finding in copy["findings"]:
        _withhold(finding, withheld, copy["record"]["explained"])
    for way_out in copy["record"]["ways_out"]:
        if way_out["photo"] not in photos:
            way_out["photo"] = None
    _papers(copy, photos)
    copy["figures"] = {
        id: figure for id, figure in copy["figures"].items() if _may_have(figure, copy["record"])
    }
    copy["sources"] = _sources(copy)
    return copy


def _office_requirements(copy: dict[str, Any]) -> None:
    """Take the requirements that are the office's alone out of a copy, with what the record says of them."""

    def others(name: str) -> bool:
        return not BY_ID[name.partition(":")[0]].office_only

    record = copy["record"]
    copy["results"] = [result for result in copy["results"] if others(result["requirement"])]
    for point in copy["holds"]:
        point["items"] = [item for item in point["items"] if others(item["requirement"])]
    record["not_recorded"] = {name: why for name, why in record["not_recorded"].items() if others(name)}
    record["ways_out"] = [way for way in record["ways_out"] if others(way["requirement"])]


def _papers(copy: dict[str, Any], photos: set[str]) -> None:
    """Take withheld papers and photos out of what names them, and say how many there are elsewhere."""
    record = copy["record"]
    documents = {document["id"] for document in record["documents"]}
    there = {paper["id"] for name in ("permissions", "inspections") for paper in record[name]} | documents
    for duty in copy["duties"]:
        _keep(duty, "evidence", there)
        for stated in duty["stated_facts"]:
            _keep(stated, "photos", photos)
    for item in record["code_items"]:
        for name in ("photos_found", "photos_built"):
            _keep(item, name, photos)
    for visit in record["inspections"]:
        for correction in visit["corrections"]:
            if correction["photo"] not in photos:
                correction["photo"] = None
    for name in ("permissions", "approvals"):
        for paper in record[name]:
            if paper["document"] not in documents:
                paper["document"] = None


def _keep(entry: dict[str, Any], name: str, there: set[str]) -> None:
    kept = [id for id in entry[name] if id in there]
    entry[f"{name}_elsewhere"] = len(entry[name]) - len(kept)
    entry[name] = kept


def _withhold(finding: dict[str, Any], photos: set[str], explained: dict[str, Any]) -> None:
    """Take a withheld photo's id and times out of a finding; that there is a finding is never hidden."""
    if finding["code"] in OF_PHOTOS and finding["subject"] in photos:
        explained.pop(f"{finding['code']}:{finding['subject']}", None)
        finding["subject"], finding["words"] = "", {}


def _may_have(figure: Mapping[str, Any], record: Mapping[str, Any]) -> bool:
    """Return whether a measured figure's place in the record is still in the copy."""
    origin: str = figure["origin"]
    return not origin or origin.startswith(("rule.", "table.")) or origin.split(".", 1)[0] in record


def _seen(value: Any, reader: Reader) -> Any:
    if isinstance(value, _TYPED):
        return value.text
    if isinstance(value, BaseModel):
        return _model(value, reader)
    if is_dataclass(value) and not isinstance(value, type):
        if type(value) not in _FOLLOW and reader != "office":
            return _GONE
        return _kept((field.name, _seen(getattr(value, field.name), reader)) for field in fields(value))
    if isinstance(value, Mapping):
        return _kept((str(key), _seen(item, reader)) for key, item in value.items())
    if isinstance(value, list | tuple | set | frozenset):
        return [seen for item in value if (seen := _seen(item, reader)) is not _GONE]
    return _scalar(value)


def _model(value: BaseModel, reader: Reader) -> Any:
    """Return the fields the reader may have; an entry with readers of its own may be gone whole."""
    if reader not in getattr(value, "readers", EVERYONE):
        return _GONE
    follows = type(value) in _FOLLOW
    declared = type(value).model_fields.items()
    names = (name for name, info in declared if follows or reader in readers_of(info))
    return _kept((name, _seen(getattr(value, name), reader)) for name in names)


def _kept(pairs: Iterable[tuple[str, Any]]) -> dict[str, Any]:
    return {name: value for name, value in pairs if value is not _GONE}


def _scalar(value: Any) -> Any:
    if isinstance(value, Fraction):
        return int(value) if value.denominator == 1 else float(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Decimal):
        return str(value)
    return value


def _sources(copy: Mapping[str, Any]) -> list[dict[str, Any]]:
    """Return every place the copy cites, once, in the order of their ids: typed words move nothing."""
    found: dict[tuple[str, ...], dict[str, Any]] = {}

    def walk(value: Any) -> None:
        if isinstance(value, dict):
            if {"document", "edition", "locator", "checked"} <= value.keys():
                found[(value["id"], value["edition"], value["locator"], value["checked"])] = value
            for item in value.values():
                walk(item)
        elif isinstance(value, list):
            for item in value:
                walk(item)

    for part in ("figures", "results", "duties", "renailing", "care"):
        walk(copy[part])
    return [found[key] for key in sorted(found)]
