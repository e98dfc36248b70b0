"""What one field cannot know: ids given twice or naming nothing, days out of order, impossible shapes."""

from collections.abc import Callable, Collection, Iterator
from fractions import Fraction
from itertools import pairwise
from typing import Any

from packet.problems import path_text
from packet.record.area_checks import AREA_CHECKS
from packet.record.fault import Fault, Loc
from packet.record.forms import HipForm, WingForm, parts
from packet.record.job import JobRecord
from packet.record.paper_checks import PAPER_CHECKS
from packet.record.planes import AnyPlane, Outlined, Trapezoid, Triangle
from packet.record.roof import Roof
from packet.record.twice_checks import TWICE_CHECKS
from packet.record.wood_checks import WOOD_CHECKS
from packet.units import fraction_text

__all__ = ["CHECKS", "Fault", "Loc", "faults", "shown_ids"]

#: Lists whose entries carry ids, by their place in the record; all share one set of names.
_LISTS: tuple[Loc, ...] = (
    ("roof", "forms"),
    ("roof", "planes"),
    ("roof", "edges"),
    ("roof", "openings"),
    ("roof", "sections"),
    ("roof", "ties"),
    ("found",),
    ("framing",),
    ("deck", "cut_outs"),
    ("deck", "sheets"),
    ("deck", "boards"),
    ("temporary",),
    ("details",),
    ("covering", "areas"),
    ("covering", "low_slope"),
    ("ventilation", "vents"),
    ("detached",),
    ("bought",),
    ("punch_list",),
    ("callbacks",),
    ("inspections",),
    ("permissions",),
    ("approvals",),
    ("code_items",),
    ("documents",),
    ("warranty",),
    ("roof", "worked_before"),
)

#: Lists whose entries name a plane.
_ON_PLANES: tuple[Loc, ...] = (
    ("roof", "openings"),
    ("deck", "cut_outs"),
    ("deck", "sheets"),
    ("deck", "boards"),
    ("details",),
    ("covering", "areas"),
    ("covering", "low_slope"),
)

#: Lists whose entries a photo can show: work and goods, not papers or outlines.
_SHOWN: tuple[Loc, ...] = (
    ("roof", "ties"),
    ("found",),
    ("framing",),
    ("deck", "cut_outs"),
    ("deck", "sheets"),
    ("deck", "boards"),
    ("temporary",),
    ("details",),
    ("covering", "low_slope"),
    ("ventilation", "vents"),
    ("detached",),
    ("bought",),
    ("punch_list",),
    ("callbacks",),
)

#: Pairs of days in one entry of a list: the second is not before the first.
_PAIRS: tuple[tuple[Loc, str, str], ...] = (
    (("temporary",), "put_on", "taken_off"),
    (("detached",), "off", "reset"),
    (("punch_list",), "on", "done_on"),
    (("callbacks",), "on", "done_on"),
    (("warranty",), "starts", "until"),
    (("permissions",), "applied_on", "issued_on"),
    (("approvals",), "valid_from", "valid_until"),
)
SIDES = ("lower", "right", "upper", "left")


def _at(record: JobRecord, loc: Loc) -> tuple:  # type: ignore[type-arg]
    value: object = record
    for name in loc:
        value = getattr(value, str(name), None)
        if value is None:
            return ()
    return value if isinstance(value, tuple) else ()


def _ids_given_twice(record: JobRecord) -> Iterator[Fault]:
    first: dict[str, str] = {}
    for n, form in enumerate(_at(record, ("roof", "forms"))):
        for part, plane in parts(form):
            first.setdefault(plane.id, f"roof.forms[{n}].planes.{part}")
    for loc, entry in _entries(record):
        if entry.id in first:
            accepted = f"{first[entry.id]} has it"
            yield Fault("duplicate-id", (*loc, "id"), entry.id, {"accepted": accepted})
        first.setdefault(entry.id, path_text(loc))


def _entries(record: JobRecord) -> Iterator[tuple[Loc, Any]]:
    """Yield every entry that carries an id, with its place."""
    for loc in _LISTS:
        for index, entry in enumerate(_at(record, loc)):
            yield (*loc, index), entry
    for n, line in enumerate(record.bought):
        for m, delivery in enumerate(line.deliveries):
            yield ("bought", n, "deliveries", m), delivery


def _ids_that_name_nothing(record: JobRecord) -> Iterator[Fault]:
    planes = set(record.roof.plane_ids) if record.roof else set()
    sides = {plane.id: _side_names(plane) for plane in _at(record, ("roof", "planes"))}
    accepted = ", ".join(sorted(planes)) or "none: the record has no planes"
    for loc in _ON_PLANES:
        for index, entry in enumerate(_at(record, loc)):
            if entry.plane is not None and entry.plane not in planes:
                yield Fault("unknown-id", (*loc, index, "plane"), entry.plane, {"accepted": accepted})
    listed: list[tuple[Loc, tuple[str, ...]]] = [
        (("roof", "sections", n, "planes"), section.planes)
        for n, section in enumerate(_at(record, ("roof", "sections")))
    ]
    for loc, ids in [(("deck", "renailed", "planes"), _at(record, ("deck", "renailed", "planes"))), *listed]:
        for index, plane in enumerate(ids):
            if plane not in planes:
                yield Fault("unknown-id", (*loc, index), plane, {"accepted": accepted})
    for index, edge in enumerate(_at(record, ("roof", "edges"))):
        for number, side in enumerate(edge.sides):
            plane, _, name = side.partition(".")
            names = sides.get(plane)
            of_form = names is None and plane in planes and name.isdecimal()
            if not of_form and (names is None or name not in names):
                values = {"accepted": _sides_of(plane, names, planes, accepted)}
                yield Fault("unknown-id", ("roof", "edges", index, "sides", number), side, values)


def _sides_of(plane: str, names: tuple[str, ...] | None, planes: Collection[str], accepted: str) -> str:
    """Return what may stand in the place of a side that is not there."""
    if plane not in planes:
        return f"a plane ({accepted}) and one of its sides ({', '.join(SIDES)}), as MS.right"
    if names is None:
        return f"a side of {plane} by number, counterclockwise from its lowest edge, as {plane}.1"
    return f"one of the sides of {plane}: {', '.join(f'{plane}.{name}' for name in names)}"


def _side_names(plane: AnyPlane) -> tuple[str, ...]:
    if isinstance(plane, Outlined):
        return tuple(str(number) for number in range(1, len(plane.outline) + 1))
    return tuple(name for name in SIDES if name != "upper" or not isinstance(plane, Triangle))


def _days_out_of_order(record: JobRecord) -> Iterator[Fault]:
    names = ("looked_at", "started", "dried_in", "finished")
    given = [(name, day) for name in names if (day := getattr(record.dates, name)) is not None]
    for (earlier, first), (later, second) in pairwise(given):
        if second < first:
            yield Fault(
                "dates-out-of-order", ("dates", later), str(second), {"accepted": f"{earlier} is {first}"}
            )
    for list_loc, earlier, later in _PAIRS:
        for index, entry in enumerate(_at(record, list_loc)):
            first, second = getattr(entry, earlier), getattr(entry, later)
            if first and second and second < first:
                values = {"accepted": f"{earlier} is {first}"}
                yield Fault("dates-out-of-order", (*list_loc, index, later), str(second), values)


def _shapes_that_do_not_close(record: JobRecord) -> Iterator[Fault]:
    roof: Roof | None = record.roof
    for index, plane in enumerate(roof.planes if roof else ()):
        loc: Loc = ("roof", "planes", index)
        if isinstance(plane, Triangle) and not 0 <= plane.top_at.inches <= plane.lower.inches:
            accepted = f"between 0 ft and {plane.lower.text}"
            yield Fault("out-of-range", (*loc, "top_at"), plane.top_at.text, {"accepted": accepted})
        if isinstance(plane, Trapezoid):
            reach = plane.upper_starts.inches + plane.upper.inches
            if reach <= 0 or plane.upper_starts.inches >= plane.lower.inches:
                accepted = "a top edge that stands above the lowest edge"
                yield Fault(
                    "out-of-range", (*loc, "upper_starts"), plane.upper_starts.text, {"accepted": accepted}
                )


def _openings_larger_than_their_plane(record: JobRecord) -> Iterator[Fault]:
    """Openings that leave less than nothing of a plane: one of their measures is wrong."""
    roof = record.roof
    if roof is None:
        return
    left = {plane.id: _slope_area(plane) for plane in roof.planes}  # [sq in]
    for index, opening in enumerate(roof.openings):
        if opening.plane in left:
            left[opening.plane] -= float(opening.along.inches * opening.up.inches)
            if left[opening.plane] < 0:
                accepted = f"less than what is left of the plane {opening.plane}"
                loc: Loc = ("roof", "openings", index, "along")
                yield Fault("out-of-range", loc, opening.along.text, {"accepted": accepted})


def _slope_area(plane: AnyPlane) -> float:
    """Return the area of a plane along its slope [sq in]."""
    if isinstance(plane, Outlined):
        corners = [(u.inches, v.inches) for u, v in plane.outline]
        turned = zip(corners, (*corners[1:], corners[0]), strict=True)
        return abs(float(sum(u * next_v - next_u * v for (u, v), (next_u, next_v) in turned) / 2))
    if isinstance(plane, Trapezoid):
        upper_in = plane.upper.inches
    else:
        upper_in = Fraction(0) if isinstance(plane, Triangle) else plane.lower.inches
    return float((plane.lower.inches + upper_in) / 2 * plane.run.inches) * plane.pitch.slope_factor


def _more_used_than_came(record: JobRecord) -> Iterator[Fault]:
    for index, line in enumerate(record.bought):
        came = line.came
        gone = next((name for name in ("returned", "left", "scrap") if getattr(line, name)), None)
        if came is None and gone:
            yield Fault("goods-never-came", ("bought", index, gone), fraction_text(getattr(line, gone)))
        went = sum(getattr(line, name) or 0 for name in ("returned", "left", "scrap"))
        if came is not None and gone and went > came:
            values = {"came": fraction_text(came)}
            yield Fault("more-went-than-came", ("bought", index, gone), fraction_text(went), values)
        if came is not None and line.delivered is not None and line.delivered != came:
            values = {"accepted": f"{fraction_text(came)}, what the deliveries come to, or no such line"}
            found = fraction_text(line.delivered)
            yield Fault("out-of-range", ("bought", index, "delivered"), found, values)


def _vents_counted_twice(record: JobRecord) -> Iterator[Fault]:
    """Free area is printed for a piece or for a foot; with both given nobody could tell which."""
    for index, vent in enumerate(record.ventilation.vents if record.ventilation else ()):
        if vent.pieces is not None and vent.length is not None:
            yield Fault("vent-counted-twice", ("ventilation", "vents", index, "length"), vent.length.text)


def _cause_missing(record: JobRecord) -> Iterator[Fault]:
    """A planned job may not know its cause; a roof that was opened shows it."""
    if record.cause is None and record.job.status != "planned":
        yield Fault("cause-missing", ("job", "status"), record.job.status)


def _forms_not_whole(record: JobRecord) -> Iterator[Fault]:
    """Forms that lack a plane, name one too many, or join nothing."""
    roof = record.roof
    if roof is None:
        return
    if not roof.planes and not roof.forms:
        yield Fault("roof-without-planes", ("roof", "planes"), "")
    standing = [form.id for form in roof.forms if not isinstance(form, WingForm)]
    for index, form in enumerate(roof.forms):
        loc: Loc = ("roof", "forms", index)
        for name in ("pitch", "end_pitch"):
            pitch = getattr(form, name, None)
            if pitch is not None and not pitch.rise_in_12:
                accepted = "above 0:12; a flat plane is taped by itself, under planes"
                yield Fault("out-of-range", (*loc, name), pitch.text, {"accepted": accepted})
        if isinstance(form, HipForm):
            named = {name for name, _ in parts(form)}
            wanted = {"front", "back", "left", "right"} - {form.gable_end}
            for part in sorted(named ^ wanted, key=str):
                accepted = ", ".join(name for name in ("front", "right", "back", "left") if name in wanted)
                yield Fault("form-planes", (*loc, "planes"), str(part), {"accepted": accepted})
        if isinstance(form, WingForm) and form.joins not in standing:
            yield Fault(
                "wing-joins", (*loc, "joins"), form.joins, {"accepted": ", ".join(standing) or "none"}
            )


def shown_ids(record: JobRecord) -> frozenset[str]:
    """Return the ids of everything in the record that a photo can show."""
    deliveries = (delivery.id for line in record.bought for delivery in line.deliveries)
    return frozenset((*(entry.id for loc in _SHOWN for entry in _at(record, loc)), *deliveries))


CHECKS: tuple[Callable[[JobRecord], Iterator[Fault]], ...] = (
    _cause_missing,
    _forms_not_whole,
    _vents_counted_twice,
    _ids_given_twice,
    _ids_that_name_nothing,
    _days_out_of_order,
    _shapes_that_do_not_close,
    _openings_larger_than_their_plane,
    _more_used_than_came,
    *AREA_CHECKS,
    *PAPER_CHECKS,
    *WOOD_CHECKS,
    *TWICE_CHECKS,
)


def faults(record: JobRecord) -> tuple[Fault, ...]:
    """Return everything that is wrong between fields, all at once."""
    return tuple(fault for check in CHECKS for fault in check(record))
