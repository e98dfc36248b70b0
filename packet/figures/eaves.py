"""The ice barrier: how deep the rules ask it up the slope, and how far the taped one reaches."""

from fractions import Fraction

from packet.calc.ice_barrier import (
    DEPTH_FROM_OUTSIDE_FACE,
    REACH_PAST_OUTSIDE_FACE,
    depth_from_outside_face,
    reach_past_outside_face,
)
from packet.figure import FigureSet, Term, term
from packet.figures.rules import code_ids, facts, shingled_planes
from packet.figures.shapes import PlacedPlane
from packet.record.job import JobRecord
from packet.record.layers import IceBarrier
from packet.reference import CodeRow, Library

#: Where no least depth is asked, the depth is the level distance laid up the slope.
DEPTH_ALONE = "(overhang_in + inside_in) * sqrt(1 + (rise / 12) ** 2)"
AT = "dry_in.ice_barrier"


def eaves_figures(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add the depth asked and the reach of the depth taped, on the steepest plane it lies on."""
    barrier = record.dry_in.ice_barrier if record.dry_in else None
    plane = steepest(record)
    if barrier is None or barrier.overhang is None or plane is None:
        return
    overhang = figures.as_term("overhang_in", f"{AT}.overhang", barrier.overhang.inches, "in")
    rise = figures.as_term("rise", plane.pitch)
    _needed(record, library, figures, overhang, rise)
    if barrier.up_slope:
        depth = figures.as_term("depth_in", f"{AT}.up_slope", barrier.up_slope.inches, "in")
        reach = reach_past_outside_face(depth.value, overhang.value, rise.value)
        terms = [depth, rise, overhang]
        figures.computed("ice_barrier.reach", reach, "in", REACH_PAST_OUTSIDE_FACE, terms, decimals=1)


def steepest(record: JobRecord) -> PlacedPlane | None:
    """Return the steepest plane under shingles: the same depth up the slope reaches least there."""
    planes = shingled_planes(record)
    return max(planes, key=lambda plane: plane.rise) if planes else None


def reach_in(barrier: IceBarrier, plane: PlacedPlane) -> Fraction | None:
    """Return how far inside the outside face of the wall a taped barrier reaches [in], to a millionth.

    A root carries noise in its last digits, which must not decide against a depth that just reaches.
    """
    if barrier.up_slope is None or barrier.overhang is None:
        return None
    reach = reach_past_outside_face(barrier.up_slope.inches, barrier.overhang.inches, plane.rise)
    return Fraction(round(reach * 10**6), 10**6)


def _needed(record: JobRecord, library: Library, figures: FigureSet, overhang: Term, rise: Term) -> None:
    """Add the depth by the rule that reaches farthest among those that may decide."""
    known = facts(record, figures, library)

    def largest(asks: str) -> CodeRow | None:
        rows = [row for row in library.rows(code_ids(record), asks, known) if row.may_decide]
        return max(rows, key=lambda row: row.value, default=None)  # type: ignore[arg-type, return-value]

    inside, least = largest("ice_barrier.inside_wall"), largest("ice_barrier.up_slope")
    if inside is None:
        return
    terms, formula = [overhang, _of_rule("inside_in", inside), rise], DEPTH_ALONE
    if least:
        terms, formula = [_of_rule("least_in", least), *terms], DEPTH_FROM_OUTSIDE_FACE
    least_in = Fraction(least.value) if least else Fraction(0)  # type: ignore[arg-type]
    depth = depth_from_outside_face(overhang.value, terms[-2].value, rise.value, least_in)
    sources = [library.source(row) for row in (inside, least) if row]
    figures.computed("ice_barrier.needed", depth, "in", formula, terms, decimals=1, sources=sources)


def _of_rule(symbol: str, row: CodeRow) -> Term:
    return term(symbol, row.value, "in", "rule", row.id)  # type: ignore[arg-type]
