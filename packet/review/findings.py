"""Findings: facts of a record that do not agree, or a measure that can't be right; nothing is mended."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from packet.calc.geometry import slope_outline
from packet.calc.plan import compare_sides, placed_side
from packet.calc.polygon import Outline, holds_outline, holds_point, is_simple, rectangle_at
from packet.figure import FigureSet
from packet.figures.shapes import feet, outline_ft, placed_planes
from packet.figures.work import shingled_area
from packet.photos.taken import TakenPhoto
from packet.record.job import JobRecord
from packet.review.model import Finding

#: A taped edge may be this far from the computed one [ft]: two inches, or one part in a hundred.
EDGE_TOLERANCE_FT, EDGE_TOLERANCE_SHARE = 2 / 12, 0.01

#: Findings whose subject is a photo.
OF_PHOTOS = frozenset({"photo-time", "pin-off-plane"})

#: A detail may stand this far off its plane, a photo's pin that far [ft]; sheets are cut to a sloping edge.
DETAIL_TOLERANCE_FT, PIN_TOLERANCE_FT, SHEET_TOLERANCE_FT = 1.0, 3.0, 0.5


def _edge_lengths(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> Iterator[Finding]:
    for edge in record.roof.edges if record.roof else ():
        if edge.measured:
            computed, taped = figures.by_id[f"edge.{edge.id}.length"], float(edge.measured.inches / 12)
            allowed = max(EDGE_TOLERANCE_FT, EDGE_TOLERANCE_SHARE * float(computed.value))
            if abs(float(computed.value) - taped) > allowed:
                yield Finding("edge-length", edge.id, (computed.id, f"roof.edges.{edge.id}.measured"))


def _edge_sides(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> Iterator[Finding]:
    known = placed_planes(record.roof) if record.roof else {}
    for edge in record.roof.edges if record.roof else ():
        if len(edge.sides) == 2:
            sides = [side.partition(".") for side in edge.sides]
            first, second = (
                placed_side(known[plane].shape, known[plane].place, name)  # type: ignore[arg-type]
                for plane, _, name in sides
            )
            if not compare_sides(first, second).shared:
                yield Finding("edge-sides", edge.id, (), {"first": edge.sides[0], "second": edge.sides[1]})


def _areas_in_planes(
    record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet
) -> Iterator[Finding]:
    known = placed_planes(record.roof) if record.roof else {}
    for area in record.covering.areas if record.covering else ():
        outline = outline_ft(area.outline)
        if not is_simple(outline):
            yield Finding("area-crosses", area.id, (), {"plane": area.plane})
        elif not holds_outline(slope_outline(known[area.plane].shape), outline):
            yield Finding("area-outside-plane", area.id, (), {"plane": area.plane})


def _places_on_planes(
    record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet
) -> Iterator[Finding]:
    """A sheet, a detail or a pin that is not on its plane: one of its measures is wrong."""
    known = placed_planes(record.roof) if record.roof else {}
    outlines = {id: slope_outline(item.shape) for id, item in known.items()}
    for sheet in record.deck.sheets if record.deck else ():
        left, low = outline_ft((sheet.at,))[0]
        corners = rectangle_at(left, low, feet(sheet.along), feet(sheet.up))
        if not holds_outline(_box(outlines[sheet.plane]), corners, SHEET_TOLERANCE_FT):
            yield Finding("place-off-plane", sheet.id, (), {"plane": sheet.plane})
    for detail in record.details:
        if detail.plane and detail.at:
            point = outline_ft((detail.at,))[0]
            if not holds_point(outlines[detail.plane], point, DETAIL_TOLERANCE_FT):
                yield Finding("place-off-plane", detail.id, (), {"plane": detail.plane})
    for photo in photos:
        entry = photo.entry
        if entry.plane and entry.pin:
            point = outline_ft((entry.pin,))[0]
            if not holds_point(outlines[entry.plane], point, PIN_TOLERANCE_FT):
                yield Finding("pin-off-plane", entry.id, (), {"plane": entry.plane})


def _box(outline: Outline) -> Outline:
    """Return the rectangle around an outline."""
    us, vs = [u for u, _ in outline], [v for _, v in outline]
    return rectangle_at(min(us), min(vs), max(us) - min(us), max(vs) - min(vs))


def _photo_times(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> Iterator[Finding]:
    for photo in photos:
        logged, camera = photo.entry.taken_at, photo.facts.taken_at
        if logged and camera and logged != camera:
            yield Finding(
                "photo-time", photo.entry.id, (), {"log": logged.isoformat(), "camera": camera.isoformat()}
            )


def _goods_enough(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> Iterator[Finding]:
    """Hold what the laid bundles cover against the area worked on; whole bundles would mislead."""
    area = figures.get(shingled_area(record))
    lots = [line.id for line in record.bought if line.unit == "bundle" and line.cover_each]
    covers = [figures.by_id[f"bought.{id}.cover"] for id in lots]
    if area and covers and sum(cover.value for cover in covers) < area.value:
        yield Finding("laid-below-need", "-".join(lots), (*(cover.id for cover in covers), area.id))


def _permission_late(
    record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet
) -> Iterator[Finding]:
    """What was found and covered again was agreed first, or the record shows that it was not."""
    for found in record.found:
        if not found.covered_on:
            continue
        late = found.answer == "agreed" and found.on is not None and found.on > found.covered_on
        never = found.answer == "not asked" and found.done is not None
        if late or never:
            days = {"covered": found.covered_on.isoformat()}
            if found.on:
                days["agreed"] = found.on.isoformat()
            yield Finding("permission-late", found.id, (), days)


def _left_open(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> Iterator[Finding]:
    """A closed job left a cover on, a thing off, or a point undone."""
    if record.job.status != "closed":
        return
    for cover in record.temporary:
        if cover.taken_off is None:
            yield Finding("cover-still-on", cover.id, (), {"on": cover.put_on.isoformat()})
    for thing in record.detached:
        if thing.state == "not yet":
            yield Finding("not-reset", thing.id, (), {"what": thing.what})
    for point in record.punch_list:
        if point.done_on is None:
            yield Finding("punch-open", point.id, (), {"what": point.what})


CHECKS: tuple[Callable[[JobRecord, Sequence[TakenPhoto], FigureSet], Iterator[Finding]], ...] = (
    _edge_lengths,
    _edge_sides,
    _areas_in_planes,
    _places_on_planes,
    _photo_times,
    _goods_enough,
    _permission_late,
    _left_open,
)


def findings(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> tuple[Finding, ...]:
    """Return every finding, each with the record's explanation when it has one."""
    found = (finding for check in CHECKS for finding in check(record, photos, figures))
    return tuple(replace(finding, explanation=record.explained.get(finding.id, "")) for finding in found)
