"""Panel edges between the framing: whether they want support, and how many clips that takes."""

import re
from dataclasses import dataclass
from fractions import Fraction

from packet.calc.domain import OutOfRange, above_zero
from packet.figure import Number
from packet.units import round_up

#: From this spacing on, two clips stand in a span: APA E30V (2011) p. 62 [in].
TWO_CLIPS_FROM_IN = 48

#: How a floor panel is stamped: one number of inches on center, ``20 oc``.
FLOOR_RATING = re.compile(r"\s*\d{1,2}\s*o\.?\s*c\.?\s*", re.ASCII | re.IGNORECASE)

CLIPS_IN_SPAN = "min(2, 1 + floor(frame_spacing_in / 48))"
CLIPS_ON_EDGE = "ceil(12 * joint_ft / frame_spacing_in) * clips_each"


class FramingTooWide(OutOfRange):
    """The framing stands farther apart than the panel may span, even with its edges supported."""


@dataclass(frozen=True)
class SpanRating:
    """What the stamp of a panel says of spans.

    Attributes:
        roof_in: Widest spacing of roof supports [in].
        floor_in: Widest spacing of floor supports [in]; 0 where the panel is for no floor.
    """

    roof_in: int
    floor_in: int


def span_rating(text: str) -> SpanRating:
    """Return the two numbers of a span rating.

    Source: APA text on span ratings: the left number is the widest roof support spacing, the right one the
    widest floor support spacing, strength axis across three supports or more.

    Args:
        text: Rating as stamped, ``32/16`` [in].

    Returns:
        Both numbers [in].

    Raises:
        OutOfRange: The text is no pair of whole inches with a slash, or its left number is 0. A floor panel
            (``20 oc``) is stamped for no roof span.

    Example:
        >>> span_rating("32/16")
        SpanRating(roof_in=32, floor_in=16)
    """
    found = re.fullmatch(r"\s*([1-9]\d?)\s*/\s*(\d{1,2})\s*", text, re.ASCII)
    if found is None:
        message = f"{text!r} is no span rating such as 32/16"
        raise OutOfRange(message)
    return SpanRating(int(found[1]), int(found[2]))


def edge_support_needed(frame_spacing_in: Number, widest_without_in: Number, widest_with_in: Number) -> bool:
    """Return whether the long edges of a panel want clips, tongue and groove, or blocking.

    Source: APA E30V (2011) p. 62: edge support by clips, tongue and groove or blocking. The two widths come
    from the panel's table or stamp.

    Args:
        frame_spacing_in: Framing on center [in], above 0.
        widest_without_in: Widest framing with bare edges [in], above 0.
        widest_with_in: Widest framing with supported edges [in], not below the other.

    Returns:
        Whether they do; no value [-].

    Raises:
        FramingTooWide: The framing is wider than the panel may span at all.
        OutOfRange: A value is not above 0, or the two widths are the wrong way round.

    Example:
        >>> edge_support_needed(24, 24, 24), edge_support_needed(24, 20, 24)
        (False, True)
    """
    above_zero(
        frame_spacing_in=frame_spacing_in, widest_without_in=widest_without_in, widest_with_in=widest_with_in
    )
    if widest_with_in < widest_without_in:
        message = f"{widest_with_in} in with edge support is below {widest_without_in} in without"
        raise OutOfRange(message)
    if frame_spacing_in > widest_with_in:
        message = f"framing at {frame_spacing_in} in; the panel spans {widest_with_in} in at most"
        raise FramingTooWide(message)
    return frame_spacing_in > widest_without_in


def clips_in_span(frame_spacing_in: Number) -> int:
    """Return the clips between two supports, where an edge is held by clips.

    Source: APA E30V (2011) Table 31, p. 62: one midway; two, evenly spaced, where supports stand 48 in apart
    or more.

    Args:
        frame_spacing_in: Framing on center [in], above 0.

    Returns:
        Clips in each span [piece].

    Raises:
        OutOfRange: The spacing is not above 0.

    Example:
        >>> clips_in_span(24), clips_in_span(48)
        (1, 2)
    """
    above_zero(frame_spacing_in=frame_spacing_in)
    return 2 if frame_spacing_in >= TWO_CLIPS_FROM_IN else 1


def clips_needed(frame_spacing_in: Number, widest_without_in: Number, widest_with_in: Number) -> int:
    """Return the clips between two supports that a panel wants on this framing.

    Source: APA E30V (2011) p. 62, as in the two rules beside this one.

    Args:
        frame_spacing_in: Framing on center [in], above 0.
        widest_without_in: Widest framing with bare edges [in], above 0.
        widest_with_in: Widest framing with supported edges [in], not below the other.

    Returns:
        Clips in each span [piece]; 0 where bare edges will do.

    Raises:
        FramingTooWide: The framing is wider than the panel may span at all.
        OutOfRange: A value is not above 0, or the two widths are the wrong way round.

    Example:
        >>> clips_needed(24, 24, 24), clips_needed(24, 20, 24)
        (0, 1)
    """
    needed = edge_support_needed(frame_spacing_in, widest_without_in, widest_with_in)
    return clips_in_span(frame_spacing_in) if needed else 0


def clips_on_edge(joint_ft: Number, frame_spacing_in: Number, clips_each: int) -> int:
    """Return the clips on one joint between two courses, or on the long edge of one sheet.

    Source: house rule; clips of one span times spans, and a short last span takes its clips too. A joint is
    one edge: two sheets share its clips.

    Args:
        joint_ft: Length of the joint, across the framing [ft], above 0.
        frame_spacing_in: Framing on center [in], above 0.
        clips_each: Clips in each span [piece], above 0.

    Returns:
        Clips [piece].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> clips_on_edge(8, 24, 1), clips_on_edge(8, 16, 1)
        (4, 6)
    """
    above_zero(joint_ft=joint_ft, frame_spacing_in=frame_spacing_in, clips_each=clips_each)
    return round_up(Fraction(12) * joint_ft / frame_spacing_in) * clips_each
