"""What an affidavit on nailing and dry-in states, as far as this record holds it."""

from collections.abc import Sequence

from packet.figure import FigureSet
from packet.photos.taken import TakenPhoto
from packet.record.job import JobRecord
from packet.review.duties.model import Stated

#: Stages whose photos show the deck of a plane, nailed or dried in.
_SHOWN_AT = frozenset({"deck", "dried-in"})

#: Where nail and spacing stand: of the old deck nailed again, else of the new deck.
_NAILING = ("deck.renailed", "deck")


def stated(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> tuple[Stated, ...]:
    """Return what an affidavit states, one thing after the other.

    Args:
        record: The job record.
        photos: Its photos.
        figures: The record's figures.
    """
    basis, dry_in = record.basis, record.dry_in
    affidavit = next((paper for paper in record.permissions if paper.kind == "affidavit"), None)
    sealed = dry_in.sealed_deck.way if dry_in and dry_in.sealed_deck else ""
    method = "; ".join(part for part in (dry_in.standard if dry_in else "", sealed) if part)
    return (
        _text("permit", basis.permit if basis else None),
        _text("address", record.property.street),
        _text("signer", affidavit.by if affidavit else None),
        _nailing("nail", (".nail.size.length", ".nail.size.shank"), figures),
        _nailing("spacing", (".edge_spacing", ".field_spacing"), figures),
        _text("dry_in", method or None),
        _planes(record, photos),
    )


def _text(key: str, text: str | None) -> Stated:
    return Stated(key, recorded=bool(text), text=text or "")


def _nailing(key: str, names: tuple[str, ...], figures: FigureSet) -> Stated:
    for at in _NAILING:
        ids = tuple(f"{at}{name}" for name in names if figures.get(f"{at}{name}"))
        if len(ids) == len(names):
            return Stated(key, recorded=True, figures=ids)
    return Stated(key, recorded=False)


def _planes(record: JobRecord, photos: Sequence[TakenPhoto]) -> Stated:
    """Return the photos of the deck of each plane worked on, and the planes without one."""
    areas = record.covering.areas if record.covering else ()
    planes = tuple(dict.fromkeys(area.plane for area in areas))
    shown = [photo.entry for photo in photos if photo.entry.stage in _SHOWN_AT]
    of_planes = [entry for entry in shown if entry.plane in planes]
    bare = tuple(plane for plane in planes if plane not in {entry.plane for entry in of_planes})
    ids = tuple(entry.id for entry in of_planes)
    return Stated("planes", recorded=bool(planes) and not bare, photos=ids, planes=bare)
