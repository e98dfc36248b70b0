"""Findings: facts of a record that do not agree, or a measure that can't be right; nothing is mended."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from packet.calc.plan import compare_sides, plan_outline, slope_to_plan
from packet.calc.polygon import holds_point, overlapping
from packet.figure import FigureSet
from packet.figures.deck_parts import DeckPlan
from packet.figures.shapes import opening_outline_ft, outline_ft, roof_shape
from packet.figures.takeoff import TakeoffLine
from packet.photos.taken import TakenPhoto
from packet.record.job import JobRecord
from packet.reference import Library
from packet.review.boards import board_findings
from packet.review.duties import Duty, approval_findings, correction_findings, duty_findings
from packet.review.goods import goods_findings
from packet.review.model import Finding, Result
from packet.review.slopes import slope_findings
from packet.review.ways_out import way_out_findings
from packet.review.wood import wood_findings
from packet.review.wording import wording_findings

#: A taped edge may be this far from the computed one [ft]: two inches, or one part in a hundred.
EDGE_TOLERANCE_FT, EDGE_TOLERANCE_SHARE = 2 / 12, 0.01

#: Findings whose subject is a photo.
OF_PHOTOS = frozenset({"photo-time", "pin-off-plane"})

#: Roofs stand over each other by an overhang: a strip of twice this, or a patch as small [ft, sq ft].
STACKED_FT, STACKED_SQ_FT = 1.0, 16.0

#: A detail may stand this far off its plane, a photo's pin that far [ft].
DETAIL_TOLERANCE_FT, PIN_TOLERANCE_FT = 1.0, 3.0


def _edge_lengths(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> Iterator[Finding]:
    for edge in roof_shape(record.roof).edges if record.roof else ():
        if edge.measured:
            computed, taped = figures.by_id[f"edge.{edge.id}.length"], figures.by_id[edge.measured]
            taped_ft = float(taped.value) / (12 if taped.unit == "in" else 1)
            allowed = max(EDGE_TOLERANCE_FT, EDGE_TOLERANCE_SHARE * float(computed.value))
            if abs(float(computed.value) - taped_ft) > allowed:
                yield Finding("edge-length", edge.id, (computed.id, edge.measured))


def _edge_sides(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> Iterator[Finding]:
    """Edges that meet in plan, but are longer on one plane than on the other: a pitch is wrong."""
    shape = roof_shape(record.roof) if record.roof else None
    for edge in shape.edges if shape else ():
        if (
            shape
            and len(edge.names) == 2
            and not compare_sides(shape.placed(edge), shape.placed(edge, 1)).shared
        ):
            yield Finding("edge-sides", edge.id, (), {"first": edge.names[0], "second": edge.names[1]})


def _planes_stacked(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> Iterator[Finding]:
    """A plane on a level of its own lies over another without an opening there: that roof counts twice."""
    roof = record.roof
    shape = roof_shape(roof) if roof else None
    if roof is None or shape is None:
        return
    planes = list(shape.planes.values())
    seen = [plan_outline(plane.level, plane.place) for plane in planes]
    holes = [
        tuple(slope_to_plan(item.place, item.rise, point) for point in opening_outline_ft(opening))
        for opening in roof.openings
        if (item := shape.planes.get(opening.plane))
    ]
    under: dict[str, list[str]] = {}
    for first, second, area in overlapping(seen, holes, STACKED_FT):
        pair = (planes[first], planes[second])
        raised = next((plane for plane in pair if plane.eave_height), None)
        if raised and area > STACKED_SQ_FT:
            other = pair[0] if raised is pair[1] else pair[1]
            under.setdefault(raised.id, []).append(other.id)
    for id, others in under.items():
        yield Finding("planes-stacked", id, (), {"others": ", ".join(others)})


def _places_on_planes(
    record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet
) -> Iterator[Finding]:
    """A detail or a pin that is not on its plane: one of its measures is wrong."""
    known = roof_shape(record.roof).planes if record.roof else {}
    outlines = {id: item.slope for id, item in known.items()}
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


def _photo_times(record: JobRecord, photos: Sequence[TakenPhoto], figures: FigureSet) -> Iterator[Finding]:
    for photo in photos:
        logged, camera = photo.entry.taken_at, photo.facts.taken_at
        if logged and camera and logged != camera:
            yield Finding(
                "photo-time", photo.entry.id, (), {"log": logged.isoformat(), "camera": camera.isoformat()}
            )


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
    _planes_stacked,
    _places_on_planes,
    _photo_times,
    _permission_late,
    _left_open,
)


def findings(
    record: JobRecord,
    photos: Sequence[TakenPhoto],
    figures: FigureSet,
    takeoff: Sequence[TakeoffLine],
    deck_plan: DeckPlan | None,
    library: Library,
    results: Sequence[Result],
    duties: Sequence[Duty],
) -> tuple[Finding, ...]:
    """Return every finding, each with the record's explanation when it has one."""
    found = [finding for check in CHECKS for finding in check(record, photos, figures)]
    found += goods_findings(record, takeoff, library, figures)
    found += wood_findings(record, deck_plan, library, figures)
    found += board_findings(record, library, figures)
    found += slope_findings(record, library, figures)
    found += approval_findings(record)
    found += correction_findings(record, photos)
    found += duty_findings(duties)
    found += way_out_findings(record, photos, results)
    found += wording_findings(record, photos, library)
    return tuple(replace(finding, explanation=record.explained.get(finding.id, "")) for finding in found)
