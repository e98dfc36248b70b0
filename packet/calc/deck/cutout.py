"""The cut-out that the rot and the rules lead to, with the reason for every inch added."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from packet.calc.domain import OutOfRange
from packet.figure import Number

Side = Literal["left", "right", "lower", "upper"]
Way = Literal["on the center of a rafter", "beside a rafter, on a nailer"]
Reason = Literal[
    "sound_framing", "nailer", "two_spans", "least_length", "least_width", "strip_left", "plane_ends"
]


@dataclass(frozen=True)
class Box:
    """A rectangle on the slope.

    Attributes:
        left: Left end, along the lowest edge [ft].
        right: Right end [ft].
        lower: Lower end, up the slope [ft].
        upper: Upper end [ft].
    """

    left: Number
    right: Number
    lower: Number
    upper: Number

    @property
    def along(self) -> Number:
        """Size along the eave [ft]."""
        return self.right - self.left

    @property
    def up(self) -> Number:
        """Size up the slope [ft]."""
        return self.upper - self.lower


@dataclass(frozen=True)
class Step:
    """One side moved.

    Attributes:
        side: Side that moved.
        start: Where it was [ft].
        end: Where it went [ft].
        reason: Why.
    """

    side: Side
    start: Number
    end: Number
    reason: Reason


@dataclass(frozen=True)
class CutOut:
    """The cut-out and how it came about."""

    box: Box
    steps: tuple[Step, ...]


@dataclass(frozen=True)
class CutRule:
    """What a new piece has to be.

    Attributes:
        spans: Spans its strength runs across, at least [span].
        least_along_ft: Shortest piece [ft].
        least_up_ft: Narrowest piece, and narrowest strip left of the old deck [ft].
    """

    spans: int = 2
    least_along_ft: Number = 4
    least_up_ft: Number = 2


def cut_out(
    rot: Box,
    plane: Box,
    lines: Sequence[Number],
    unsound: Sequence[Number],
    way: Way,
    half_width_ft: Number,
    rule: CutRule,
) -> CutOut:
    """Return the least rectangle that takes out the rot and gives the new piece its bearing and size.

    Source: APA E30V (2011) p. 62: strength axis across supports, over two or more spans; APA text on span
    tables: panels 24 in wide at least; FEMA 499 sheet 18 (2005): no piece shorter than 4 ft.

    Args:
        rot: Rotten area as found [ft].
        plane: Rectangle around the plane [ft].
        lines: Centers of the framing, left to right [ft].
        unsound: Centers of members that can't carry an edge [ft].
        way: How the old edge is carried [-].
        half_width_ft: Half the width of a member [ft], 0 or more.
        rule: Least sizes of a piece [ft].

    Returns:
        The cut-out [ft] and each side's way to it.

    Raises:
        OutOfRange: The rot lies outside the plane, or there is no sound framing around it.

    Example:
        >>> found = cut_out(Box(5, 6, 1, 2), Box(0, 20, 0, 12), range(0, 21, 2), [],
        ...                 "on the center of a rafter", 0.0625, CutRule())
        >>> found.box
        Box(left=4, right=8, lower=0, upper=2)
    """
    if not (
        plane.left <= rot.left < rot.right <= plane.right
        and plane.lower <= rot.lower < rot.upper <= plane.upper
    ):
        message = "the rot does not lie on the plane"
        raise OutOfRange(message)
    sound = [line for line in lines if line not in unsound]
    steps: list[Step] = []
    box = _to_framing(rot, plane, sound, steps)
    box = _over_spans(box, sound, rule, steps)
    box = _up_and_down(box, plane, rule, steps)
    if way == "beside a rafter, on a nailer":
        box = _beside(box, plane, sound, half_width_ft, steps)
    return CutOut(box, tuple(steps))


def _move(box: Box, side: Side, end: Number, reason: Reason, steps: list[Step]) -> Box:
    start = getattr(box, side)
    if end == start:
        return box
    steps.append(Step(side, start, end, reason))
    return replace(box, **{side: end})


def _to_framing(box: Box, plane: Box, sound: Sequence[Number], steps: list[Step]) -> Box:
    """Move both ends out to the center of sound members; at the plane's end there is framing by itself."""
    left = max((line for line in sound if line <= box.left), default=None)
    right = min((line for line in sound if line >= box.right), default=None)
    box = _move(
        box,
        "left",
        plane.left if left is None else left,
        "plane_ends" if left is None else "sound_framing",
        steps,
    )
    end, reason = (plane.right, "plane_ends") if right is None else (right, "sound_framing")
    return _move(box, "right", end, reason, steps)  # type: ignore[arg-type]


def _over_spans(box: Box, sound: Sequence[Number], rule: CutRule, steps: list[Step]) -> Box:
    """Lengthen a piece until it bears on enough members and is long enough, to the right first."""
    while True:
        spans = sum(box.left <= line <= box.right for line in sound) - 1
        reason: Reason = "two_spans" if spans < rule.spans else "least_length"
        if spans >= rule.spans and box.along >= rule.least_along_ft:
            return box
        right = min((line for line in sound if line > box.right), default=None)
        left = max((line for line in sound if line < box.left), default=None)
        if right is not None:
            box = _move(box, "right", right, reason, steps)
        elif left is not None:
            box = _move(box, "left", left, reason, steps)
        else:
            return box


def _up_and_down(box: Box, plane: Box, rule: CutRule, steps: list[Step]) -> Box:
    """Widen a piece to the least width, and take a strip of old deck that would be narrower than that."""
    if 0 < box.lower - plane.lower < rule.least_up_ft:
        box = _move(box, "lower", plane.lower, "strip_left", steps)
    if 0 < plane.upper - box.upper < rule.least_up_ft:
        box = _move(box, "upper", plane.upper, "strip_left", steps)
    if box.up < rule.least_up_ft:
        box = _move(box, "upper", min(plane.upper, box.lower + rule.least_up_ft), "least_width", steps)
    if box.up < rule.least_up_ft:
        box = _move(box, "lower", max(plane.lower, box.upper - rule.least_up_ft), "least_width", steps)
    if 0 < plane.upper - box.upper < rule.least_up_ft:
        box = _move(box, "upper", plane.upper, "strip_left", steps)
    return box


def _beside(box: Box, plane: Box, sound: Sequence[Number], half_width_ft: Number, steps: list[Step]) -> Box:
    """Move the ends to the far face of their members, where a nailer carries the old edge."""
    if box.left in sound and box.left != plane.left:
        box = _move(box, "left", box.left - half_width_ft, "nailer", steps)
    if box.right in sound and box.right != plane.right:
        box = _move(box, "right", box.right + half_width_ft, "nailer", steps)
    return box
