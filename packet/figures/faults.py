"""What is wrong with the shape of the roof: outlines that cross, planes that overlap, edges apart."""

from collections.abc import Iterator, Sequence
from itertools import combinations

from packet.calc.forms import NotAForm, planes
from packet.calc.plan import compare_sides, plan_outline, slope_to_plan
from packet.calc.polygon import (
    Outline,
    holds_outline,
    is_simple,
    lies_on_a_line,
    overlapping,
    polygon_area,
)
from packet.figures.deck_faults import deck_faults
from packet.figures.shapes import RoofShape, blocks, groups, opening_outline_ft, outline_ft, roof_shape
from packet.record.checks import Fault
from packet.record.forms import AnyForm, WingForm, parts
from packet.record.job import JobRecord
from packet.record.layers import WorkedArea
from packet.record.planes import Outlined
from packet.record.roof import Roof

#: An outline below this holds nothing [sq ft].
LEAST_AREA_SQ_FT = 0.01

#: Sides of one edge may be this far apart, planes may overlap that deep: two taped ends on a slope [ft].
APART_FT = 0.25


def shape_faults(record: JobRecord) -> tuple[Fault, ...]:
    """Return everything that is wrong with the shape of a record's roof, all at once.

    What rests on a form that makes no roof is not looked at: its planes are not known.
    """
    roof = record.roof
    if roof is None:
        return ()
    found = [*_forms(roof), *_outlines(record)]
    if any(fault.loc[:2] in (("roof", "forms"), ("roof", "planes")) for fault in found):
        return tuple(found)
    shape = roof_shape(roof)
    return (
        *found,
        *_named_edges(record, roof, shape),
        *_apart(shape, roof),
        *_areas(record, shape),
        *_openings(roof, shape),
        *_overlaps(roof, shape),
        *deck_faults(record, shape),
    )


def _forms(roof: Roof) -> Iterator[Fault]:
    where: dict[str, tuple[str | int, ...]] = {}
    for number, form in enumerate(roof.forms):
        for part, plane in parts(form):
            where.setdefault(plane.id, ("roof", "forms", number, "planes", part, "id"))
    for first, second in combinations(groups(roof.forms), 2):
        taken = {plane.id for form in first for _, plane in parts(form)}
        for form in second:
            for part, plane in parts(form):
                if plane.id in taken:
                    loc = ("roof", "forms", roof.forms.index(form), "planes", part, "id")
                    yield Fault("plane-of-two-roofs", loc, plane.id, {"other": first[0].id})
    for group in groups(roof.forms):
        wrong = [*_wings(roof, group)]
        yield from wrong
        if wrong:
            continue
        try:
            planes(blocks(group))
        except NotAForm as error:
            yield Fault(error.code, where[error.subject], error.subject, error.values)


def _wings(roof: Roof, group: Sequence[AnyForm]) -> Iterator[Fault]:
    """Wings that do not fit the form they join, each by itself, or that stand in each other's way."""
    before: list[WingForm] = []
    for wing in group[1:]:
        assert isinstance(wing, WingForm)  # noqa: S101 - all but the first of a group are wings
        loc = ("roof", "forms", roof.forms.index(wing))
        try:
            blocks((group[0], wing))
        except NotAForm as error:
            yield Fault(error.code, (*loc, "side"), error.subject, error.values)
            continue
        across = next((other for other in before if _overlap(other, wing)), None)
        if across:
            yield Fault("wings-overlap", (*loc, "starts"), wing.id, {"other": across.id})
        before.append(wing)


def _overlap(first: WingForm, second: WingForm) -> bool:
    """Tell whether two wings share a part of one eave: the gable of one would stand in the other's roof."""
    ends = [(wing.starts.inches, wing.starts.inches + wing.width.inches) for wing in (first, second)]
    return first.side == second.side and ends[0][0] < ends[1][1] and ends[1][0] < ends[0][1]


def _outlines(record: JobRecord) -> Iterator[Fault]:
    """Outlines whose sides cross, or that hold nothing."""
    roof = record.roof
    outlines: list[tuple[tuple[str | int, ...], str, Outline]] = [
        (("roof", "planes", n, "outline"), plane.id, outline_ft(plane.outline))
        for n, plane in enumerate(roof.planes if roof else ())
        if isinstance(plane, Outlined)
    ]
    outlines += [
        (("covering", "areas", n, "outline"), area.id, outline_ft(area.outline))
        for n, area in enumerate(record.covering.areas if record.covering else ())
        if area.outline is not None
    ]
    for loc, id, outline in outlines:
        simple = is_simple(outline)
        if lies_on_a_line(outline) or (simple and polygon_area(outline) < LEAST_AREA_SQ_FT):
            yield Fault("outline-empty", loc, id)
        elif not simple:
            yield Fault("outline-crosses", loc, id)


def _named_edges(record: JobRecord, roof: Roof, shape: RoofShape) -> Iterator[Fault]:
    """Edges that are named and are not there, and sides of a form's planes that are not."""
    of_forms = [edge.id for edge in shape.edges if edge.form]
    for id in roof.taped:
        if id not in of_forms:
            yield Fault(
                "unknown-edge", ("roof", "taped", id), id, {"accepted": ", ".join(of_forms) or "none"}
            )
    known = {edge.id for edge in shape.edges}
    barrier = record.dry_in.ice_barrier if record.dry_in else None
    for number, id in enumerate(barrier.edges if barrier else ()):
        if id not in known:
            accepted = ", ".join(sorted(known)) or "none"
            loc = ("dry_in", "ice_barrier", "edges", number)
            yield Fault("unknown-id", loc, id, {"accepted": accepted})
    for number, edge in enumerate(roof.edges):
        if edge.id not in known:
            yield Fault("unknown-side", ("roof", "edges", number, "sides"), ", ".join(edge.sides))
    typed = [edge.id for edge in roof.edges]
    for number, id in enumerate(typed):
        if id in of_forms:
            values = {"accepted": "an edge of a form has it"}
            yield Fault("duplicate-id", ("roof", "edges", number, "id"), id, values)


def _apart(shape: RoofShape, roof: Roof) -> Iterator[Fault]:
    """Edges whose two planes do not meet there in plan."""
    numbers = {edge.id: number for number, edge in enumerate(roof.edges)}
    for edge in shape.edges:
        if len(edge.sides) == 2 and edge.id in numbers:
            gap_ft = compare_sides(shape.placed(edge), shape.placed(edge, 1)).gap_ft
            if gap_ft > APART_FT:
                apart = f"{gap_ft:.2f} ft"
                loc = ("roof", "edges", numbers[edge.id], "sides")
                yield Fault("edge-apart", loc, " and ".join(edge.names), {"apart": apart})


def _areas(record: JobRecord, shape: RoofShape) -> Iterator[Fault]:
    """Areas worked on that reach past their plane, or lie on each other."""
    areas = record.covering.areas if record.covering else ()
    for number, area in enumerate(areas):
        plane = shape.planes.get(area.plane)
        if plane is None:
            continue
        for other in areas[:number]:
            if other.plane == area.plane and _on_each_other(area, other):
                values = {"other": other.id}
                yield Fault("areas-overlap", ("covering", "areas", number, "plane"), area.id, values)
        if area.outline is None:
            continue
        outline = outline_ft(area.outline)
        if is_simple(outline) and not holds_outline(plane.slope, outline):
            values = {"plane": plane.id}
            yield Fault("area-outside-plane", ("covering", "areas", number, "outline"), area.id, values)


def _on_each_other(area: WorkedArea, other: WorkedArea) -> bool:
    """Tell whether two areas of one plane share more than an edge; a whole plane shares all."""
    if area.outline is None or other.outline is None:
        return True
    outlines = [outline_ft(area.outline), outline_ft(other.outline)]
    return all(map(is_simple, outlines)) and bool(overlapping(outlines, [], APART_FT))


def _openings(roof: Roof, shape: RoofShape) -> Iterator[Fault]:
    """Openings that do not lie in their plane: the net area would lose what the plane never had."""
    for number, opening in enumerate(roof.openings):
        plane = shape.planes.get(opening.plane)
        if plane and not holds_outline(plane.slope, opening_outline_ft(opening), APART_FT):
            loc = ("roof", "openings", number, "at")
            yield Fault("opening-outside-plane", loc, opening.id, {"plane": plane.id})


def _overlaps(roof: Roof, shape: RoofShape) -> Iterator[Fault]:
    """Planes at one height that lie over each other in plan, openings taken out.

    A plane with an eave height of its own stands on another level: a dormer, a porch under an overhang.
    """
    typed = {plane.id: number for number, plane in enumerate(roof.planes)}
    level = [plane for plane in shape.planes.values() if plane.eave_height is None]
    seen = {plane.id: plan_outline(plane.level, plane.place) for plane in level}
    holes = [
        tuple(slope_to_plan(item.place, item.rise, point) for point in opening_outline_ft(opening))
        for opening in roof.openings
        if (item := shape.planes.get(opening.plane))
    ]
    for first, second, area in overlapping([seen[plane.id] for plane in level], holes, APART_FT):
        pair = (level[first].id, level[second].id)
        later = next((id for id in reversed(pair) if id in typed), None)
        if later is not None:
            other = pair[0] if later == pair[1] else pair[1]
            values = {"other": other, "area": f"{area:.1f} sq ft"}
            yield Fault("planes-overlap", ("roof", "planes", typed[later], "at"), later, values)
