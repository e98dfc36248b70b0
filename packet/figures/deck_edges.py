"""Long edges of new panels between the framing: whether they want support, and the clips on their joints."""

from collections.abc import Sequence
from fractions import Fraction

from packet.calc.deck.edge_support import CLIPS_IN_SPAN, CLIPS_ON_EDGE, clips_in_span, clips_on_edge
from packet.calc.deck.joints import (
    CLIPS_IN_SPACES,
    Joint,
    clips_in_spaces,
    course_joints,
    members_between,
)
from packet.figure import FigureSet, Number, Term, term
from packet.figures.deck_parts import DeckEdges, DeckJoint, DeckPlane
from packet.figures.panel_span import TABLE, PanelSpan, edges_want_support, panel_span, widest_spacing
from packet.record.job import JobRecord
from packet.record.roof import FramingLines
from packet.reference import Library

JOINT_LENGTH = "to_ft - from_ft"


def deck_edges(
    record: JobRecord, library: Library, figures: FigureSet, planes: Sequence[DeckPlane]
) -> DeckEdges | None:
    """Return the long edges of new sheets on framing and their joints, and add their figures."""
    if record.deck is None or not record.deck.sheets or record.deck.over_boards:
        return None
    span = panel_span(record, library)
    wanted = edges_want_support(record, span)
    spacing = widest_spacing(record)
    bare = _span("bare", span, span.bare_in, figures) if span else ""
    held = _span("held", span, span.held_in, figures) if span else ""
    each_wanted = _each_wanted(spacing, library, span, figures) if wanted and span and spacing else ""
    each = _each(record, each_wanted if span and span.may_decide else "", figures)
    found = [
        _joint(record, figures, plane, f"joint.{plane.id}.{number}", joint, each)
        for plane in (planes if each else ())
        for number, joint in enumerate(_joints(plane), 1)
    ]
    clips = _total(found, figures)
    widest = spacing[0] if spacing else ""
    return DeckEdges(bare, held, widest, wanted, each_wanted, bool(each), tuple(found), clips)


def _span(name: str, span: PanelSpan, value: Number, figures: FigureSet) -> str:
    """Add the widest framing of the table with bare edges or with held ones."""
    return figures.measured(f"deck.edges.{name}", value, "in", f"table.{TABLE}", sources=[span.source]).id


def _each_wanted(spacing: tuple[str, Fraction], library: Library, span: PanelSpan, figures: FigureSet) -> str:
    """Add the clips that each space wants, by the widest of them."""
    terms = [figures.as_term("frame_spacing_in", *spacing, "in")]
    two = library.table("deck_distances").lookup(what="two clips in a span from").source
    id, value = "deck.edges.clips_wanted", clips_in_span(spacing[1])
    return figures.computed(id, value, "count", CLIPS_IN_SPAN, terms, sources=[span.source, two]).id


def _each(record: JobRecord, each_wanted: str, figures: FigureSet) -> str:
    """Return the figure that clips are counted by: what was recorded, or what is wanted where that is more.

    Other edges than those that clips hold take none, and a table that may not decide asks for none.
    """
    deck = record.deck
    if deck is None or deck.edges_held_by not in (None, "clips"):
        return ""
    known = [figures.by_id[id] for id in (each_wanted, "deck.clips.each_space") if figures.get(id)]
    most = max(known, key=lambda figure: figure.value, default=None)
    return most.id if most and most.value > 0 else ""


def _joints(plane: DeckPlane) -> list[Joint]:
    """Return the joints between courses of a plane that no wood along the eave stands under."""
    half = plane.member_ft / 2
    joints = course_joints([(piece.id, piece.outlines) for piece in plane.pieces])
    return [joint for joint in joints if not any(abs(joint.at_ft - at) <= half for at in plane.level_wood)]


def _joint(
    record: JobRecord, figures: FigureSet, plane: DeckPlane, id: str, joint: Joint, each: str
) -> DeckJoint:
    """Add the length of a joint and the clips on it."""
    ends = [
        term(name, value, "ft", "shape", plane.id)
        for name, value in (("to_ft", joint.to_ft), ("from_ft", joint.from_ft))
    ]
    length = joint.to_ft - joint.from_ft
    figures.computed(f"{id}.length", length, "ft_in", JOINT_LENGTH, ends)
    clips = _clips(record, figures, plane, id, joint, each) if each else ""
    return DeckJoint(plane.id, joint.before, joint.after, f"{id}.length", clips)


def _clips(record: JobRecord, figures: FigureSet, plane: DeckPlane, id: str, joint: Joint, each: str) -> str:
    framing = record.roof.framing if record.roof else None
    if framing is None:
        return ""
    clips_each: Term = figures.as_term("clips_each", each)
    number = int(clips_each.value)
    if _one_by_one(framing.lines, plane.id):
        between = members_between(plane.lines, joint.from_ft, joint.to_ft, plane.member_ft / 2)
        terms = [term("members_between", between, "count", "shape", plane.id), clips_each]
        value, formula = clips_in_spaces(between, number), CLIPS_IN_SPACES
    else:
        length, spacing = figures.as_term("joint_ft", f"{id}.length"), framing.spacing.inches
        terms = [
            length,
            figures.as_term("frame_spacing_in", "roof.framing.spacing", spacing, "in"),
            clips_each,
        ]
        value, formula = clips_on_edge(length.value, spacing, number), CLIPS_ON_EDGE
    return figures.computed(f"{id}.clips", value, "clip", formula, terms).id


def _one_by_one(lines: Sequence[FramingLines], plane: str) -> bool:
    return any(item.plane == plane and item.at for item in lines)


def _total(joints: Sequence[DeckJoint], figures: FigureSet) -> str:
    """Add the clips on all joints; two sheets share those of their joint."""
    counted = [joint.clips for joint in joints if joint.clips]
    if not counted:
        return ""
    terms = [figures.as_term(f"part_{number}", id) for number, id in enumerate(counted, 1)]
    formula = " + ".join(item.symbol for item in terms)
    return figures.computed("deck.edges.clips", sum(item.value for item in terms), "clip", formula, terms).id
