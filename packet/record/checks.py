"""What one field cannot know: ids given twice or naming nothing, days out of order, impossible shapes."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise

from packet.record.job import JobRecord
from packet.record.roof import AnyPlane, Roof, Trapezoid, Triangle

Loc = tuple[str | int, ...]


@dataclass(frozen=True)
class Fault:
    """A problem by its place in the record, before the file's lines are known."""

    code: str
    loc: Loc
    found: str
    values: dict[str, str] = field(default_factory=dict)


#: Lists whose entries carry ids, by their place in the record; all share one set of names.
_LISTS: tuple[Loc, ...] = (
    ("roof", "planes"),
    ("roof", "edges"),
    ("roof", "openings"),
    ("found",),
    ("framing",),
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
    ("documents",),
    ("warranty",),
)

#: Lists whose entries name a plane.
_ON_PLANES: tuple[Loc, ...] = (
    ("roof", "openings"),
    ("deck", "sheets"),
    ("deck", "boards"),
    ("details",),
    ("covering", "areas"),
    ("covering", "low_slope"),
)

#: Lists whose entries a photo can show: work and goods, not papers or outlines.
_SHOWN: tuple[Loc, ...] = (
    ("found",),
    ("framing",),
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
    for loc in _LISTS:
        for index, entry in enumerate(_at(record, loc)):
            place = f"{'.'.join(map(str, loc))}[{index}]"
            if entry.id in first:
                yield Fault(
                    "duplicate-id", (*loc, index, "id"), entry.id, {"accepted": f"{first[entry.id]} has it"}
                )
            first.setdefault(entry.id, place)


def _ids_that_name_nothing(record: JobRecord) -> Iterator[Fault]:
    planes = {plane.id for plane in record.roof.planes} if record.roof else set()
    pointed = {plane.id for plane in _at(record, ("roof", "planes")) if isinstance(plane, Triangle)}
    accepted = ", ".join(sorted(planes)) or "none: the record has no planes"
    for loc in _ON_PLANES:
        for index, entry in enumerate(_at(record, loc)):
            if entry.plane is not None and entry.plane not in planes:
                yield Fault("unknown-id", (*loc, index, "plane"), entry.plane, {"accepted": accepted})
    for index, plane in enumerate(_at(record, ("deck", "renailed", "planes"))):
        if plane not in planes:
            yield Fault("unknown-id", ("deck", "renailed", "planes", index), plane, {"accepted": accepted})
    for index, edge in enumerate(_at(record, ("roof", "edges"))):
        for number, side in enumerate(edge.sides):
            plane, _, name = side.partition(".")
            if plane not in planes or name not in SIDES or (plane in pointed and name == "upper"):
                values = {"accepted": f"a plane ({accepted}) and a side ({', '.join(SIDES)}), as MS.right"}
                yield Fault("unknown-id", ("roof", "edges", index, "sides", number), side, values)


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
    if isinstance(plane, Trapezoid):
        upper_in = plane.upper.inches
    else:
        upper_in = Fraction(0) if isinstance(plane, Triangle) else plane.lower.inches
    return float((plane.lower.inches + upper_in) / 2 * plane.run.inches) * plane.pitch.slope_factor


def _more_used_than_came(record: JobRecord) -> Iterator[Fault]:
    for index, line in enumerate(record.bought):
        if line.returned + line.left + line.scrap > line.delivered:
            values = {"accepted": f"returned, left and scrap together at most {line.delivered}"}
            yield Fault("out-of-range", ("bought", index, "delivered"), str(line.delivered), values)


def _vents_counted_twice(record: JobRecord) -> Iterator[Fault]:
    """Free area is printed for a piece or for a foot; with both given nobody could tell which."""
    for index, vent in enumerate(record.ventilation.vents if record.ventilation else ()):
        if vent.pieces is not None and vent.length is not None:
            yield Fault("vent-counted-twice", ("ventilation", "vents", index, "length"), vent.length.text)


def _cause_missing(record: JobRecord) -> Iterator[Fault]:
    """A planned job may not know its cause; a roof that was opened shows it."""
    if record.cause is None and record.job.status != "planned":
        yield Fault("cause-missing", ("job", "status"), record.job.status)


def shown_ids(record: JobRecord) -> frozenset[str]:
    """Return the ids of everything in the record that a photo can show."""
    return frozenset(entry.id for loc in _SHOWN for entry in _at(record, loc))


CHECKS: tuple[Callable[[JobRecord], Iterator[Fault]], ...] = (
    _cause_missing,
    _vents_counted_twice,
    _ids_given_twice,
    _ids_that_name_nothing,
    _days_out_of_order,
    _shapes_that_do_not_close,
    _openings_larger_than_their_plane,
    _more_used_than_came,
)


def faults(record: JobRecord) -> tuple[Fault, ...]:
    """Return everything that is wrong between fields, all at once."""
    return tuple(fault for check in CHECKS for fault in check(record))
