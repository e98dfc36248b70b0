"""Joints between sheets as laid: those between courses, end joints, and end joints that stand in one line."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from packet.calc.domain import OutOfRange, above_zero, zero_or_more
from packet.calc.polygon import Outline
from packet.figure import Number

#: Sheets this far apart still meet: the gap between panels, and what a tape on a slope is good for [ft].
MEET_FT = Fraction(1, 8)

#: Floating noise of a place that was taped in sixteenths of an inch or was cut in thirds [ft].
_NOISE_FT = 1e-9

CLIPS_IN_SPACES = "(members_between + 1) * clips_each"

#: A sheet by its id, and the outlines of its parts, counterclockwise.
Laid = tuple[str, Sequence[Outline]]


@dataclass(frozen=True)
class Joint:
    """A straight joint between sheets.

    Attributes:
        at_ft: Where its line lies: up the slope between courses, along the eave at ends [ft].
        from_ft: Where it starts on that line [ft].
        to_ft: Where it ends [ft].
        before: Sheets below it, or left of it.
        after: Sheets above it, or right of it.
    """

    at_ft: Number
    from_ft: Number
    to_ft: Number
    before: tuple[str, ...]
    after: tuple[str, ...]


def course_joints(sheets: Sequence[Laid]) -> tuple[Joint, ...]:
    """Return the joints along the eave between sheets of one plane, each from end to end.

    Where several sheets stand in a course, their joints with the next course are one as far as they go on.

    Source: house rule; what is side to two sheets is a joint. The side of one sheet alone meets an old deck
    or the end of the plane, and is none.

    Args:
        sheets: Sheets of one plane as cut, places along the eave and up the slope [ft].

    Returns:
        Joints from the eave up and from left to right [ft].

    Example:
        >>> below, above = ((0, 0), (8, 0), (8, 4), (0, 4)), ((4, 4), (12, 4), (12, 8), (4, 8))
        >>> (joint,) = course_joints([("A", [below]), ("B", [above])])
        >>> [int(place) for place in (joint.at_ft, joint.from_ft, joint.to_ft)]
        [4, 4, 8]
    """
    return _joined(sorted(_shared(sheets, along=0), key=lambda joint: (joint.at_ft, joint.from_ft)))


def end_joints(sheets: Sequence[Laid]) -> tuple[Joint, ...]:
    """Return the joints up the slope between sheets of one plane, one for each pair that meets.

    Source: house rule; what is end to two sheets is a joint.

    Args:
        sheets: Sheets of one plane as cut, places along the eave and up the slope [ft].

    Returns:
        Joints from left to right and from the eave up [ft].

    Example:
        >>> left, right = ((0, 0), (8, 0), (8, 4), (0, 4)), ((8, 0), (12, 0), (12, 4), (8, 4))
        >>> (joint,) = end_joints([("A", [left]), ("B", [right])])
        >>> [int(place) for place in (joint.at_ft, joint.from_ft, joint.to_ft)]
        [8, 0, 4]
    """
    return tuple(sorted(_shared(sheets, along=1), key=lambda joint: (joint.at_ft, joint.from_ft)))


def ends_in_line(ends: Sequence[Joint], member_ft: Number) -> tuple[tuple[Joint, Joint], ...]:
    """Return the pairs of end joints that stand on one member in courses that touch.

    Source: house rule; both ends of both joints are sheets as laid, so that a patch, whose ends stand in the
    line of an old deck's, is none.

    Args:
        ends: End joints of one plane [ft].
        member_ft: Width of a member [ft], 0 or more.

    Returns:
        Pairs, the lower joint first [ft].

    Raises:
        OutOfRange: The width is below 0.

    Example:
        >>> low, high = Joint(8, 0, 4, ("A",), ("B",)), Joint(8, 4, 8, ("C",), ("D",))
        >>> ends_in_line([low, high], 0.125) == ((low, high),)
        True
    """
    zero_or_more(member_ft=member_ft)
    return tuple(
        (low, high)
        for low in ends
        for high in ends
        if abs(float(low.at_ft - high.at_ft)) <= member_ft and abs(float(high.from_ft - low.to_ft)) <= MEET_FT
    )


def strength_up_the_slope(along_ft: Number, up_ft: Number, sheet_width_ft: Number) -> bool:
    """Return whether a sheet or piece surely lies with its strength axis along the rafters.

    A piece taller than a sheet is wide was cut from the length of one, so its strength runs up the slope. A
    piece that is not taller may lie either way: an offcut 2 ft along and 4 ft up is the end of a sheet that
    lies across.

    Source: APA E30V (2011) p. 62: the strength axis is the long dimension of a panel.

    Args:
        along_ft: Size along the eave [ft], above 0.
        up_ft: Size up the slope [ft], above 0.
        sheet_width_ft: Width of a whole sheet [ft], above 0.

    Returns:
        Whether it surely does; no value [-].

    Raises:
        OutOfRange: A size is not above 0.

    Example:
        >>> [strength_up_the_slope(*size, 4) for size in ((4, 8), (8, 4), (2, 4), (4, 4))]
        [True, False, False, False]
    """
    above_zero(along_ft=along_ft, up_ft=up_ft, sheet_width_ft=sheet_width_ft)
    widest = sheet_width_ft + MEET_FT
    return up_ft > widest and along_ft <= widest


def clips_in_spaces(members_between: int, clips_each: int) -> int:
    """Return the clips on one joint over framing that was measured one by one.

    Source: house rule; every space between members that the joint crosses takes its clips, a short one too.

    Args:
        members_between: Members under the joint, those at its ends left out [support], 0 or more.
        clips_each: Clips in each space [piece], above 0.

    Returns:
        Clips [piece].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> clips_in_spaces(3, 1), clips_in_spaces(0, 2)
        (4, 2)
    """
    zero_or_more(members_between=members_between)
    above_zero(clips_each=clips_each)
    return (members_between + 1) * clips_each


def members_between(lines: Sequence[Number], from_ft: Number, to_ft: Number, half_width_ft: Number) -> int:
    """Return how many members a joint crosses, those at its ends left out.

    Source: house rule; a joint ends on a member when its end stands over it.

    Args:
        lines: Centers of the members [ft].
        from_ft: Start of the joint [ft].
        to_ft: Its end, beyond the start [ft].
        half_width_ft: Half the width of a member [ft], 0 or more.

    Returns:
        Members [support].

    Raises:
        OutOfRange: The joint does not run from left to right.

    Example:
        >>> members_between([0, 2, 4, 6, 8], 0, 8, 0.0625)
        3
    """
    if to_ft <= from_ft:
        message = f"a joint does not run from {from_ft} to {to_ft}"
        raise OutOfRange(message)
    return sum(from_ft + half_width_ft < line < to_ft - half_width_ft for line in lines)


def _shared(sheets: Sequence[Laid], along: int) -> Iterator[Joint]:
    """Yield what a side of one sheet and a side of another have in common, on lines along one axis."""
    before = [(id, *side) for id, side, turned in _straight(sheets, along) if not turned]
    after = [(id, *side) for id, side, turned in _straight(sheets, along) if turned]
    for below, at, start, end in before:
        for above, other_at, other_start, other_end in after:
            low, high = max(start, other_start), min(end, other_end)
            if below != above and abs(float(other_at - at)) <= MEET_FT and high - low > MEET_FT:
                yield Joint(at, low, high, (below,), (above,))


def _straight(
    sheets: Sequence[Laid], along: int
) -> Iterator[tuple[str, tuple[Number, Number, Number], bool]]:
    """Yield sides along an axis by sheet: where they lie, from, to, and whether the sheet is beyond them."""
    across = 1 - along
    for id, outlines in sheets:
        for outline in outlines:
            for start, end in pairwise([*outline, outline[0]]):
                if abs(float(end[across] - start[across])) < _NOISE_FT:
                    places = sorted((_exact(start[along]), _exact(end[along])))
                    # counterclockwise, a lower side runs to the right and a right side runs up
                    forward = end[along] > start[along]
                    yield id, (_exact(start[across]), places[0], places[1]), forward == (along == 0)


def _joined(joints: Sequence[Joint]) -> tuple[Joint, ...]:
    """Return joints that go on from one another as one."""
    found: list[Joint] = []
    for joint in joints:
        last = next(
            (
                item
                for item in found
                if abs(float(item.at_ft - joint.at_ft)) <= MEET_FT and joint.from_ft - item.to_ft <= MEET_FT
            ),
            None,
        )
        if last is None:
            found.append(joint)
            continue
        before = tuple(dict.fromkeys((*last.before, *joint.before)))
        after = tuple(dict.fromkeys((*last.after, *joint.after)))
        end = max(last.to_ft, joint.to_ft)
        found[found.index(last)] = Joint(last.at_ft, last.from_ft, end, before, after)
    return tuple(found)


def _exact(value: Number) -> Number:
    near = Fraction(value).limit_denominator(768)
    return near if abs(float(near) - float(value)) < _NOISE_FT else value
