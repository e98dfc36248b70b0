"""Getting up to the roof and working on it: ladders, heights of fall, old paint and old coverings."""

import math
from typing import Literal

from packet.calc.domain import OutOfRange, above_zero, zero_or_more
from packet.figure import Number

WORKING_LENGTH = "eave_height_ft / sqrt(1 - share ** 2)"
FOOT_DISTANCE = "share * working_ft"
RAIL_LENGTH = "(eave_height_ft + above_ft) / sqrt(1 - share ** 2)"
TWO_SECTION_SIZE = "ceil(rails_ft + overlap_ft)"

#: Where fall protection is asked by height: on all of the roof, from a line up the slope, nowhere.
FallWord = Literal["everywhere", "above_a_line", "not_by_height"]

#: What is known of lead paint: not by the year, year or areas missing, below the limits, above one of them.
LeadWord = Literal["not_by_year", "ask_year", "ask_areas", "minor", "certified_firm"]

#: What is known of asbestos: tested, laid over, year missing, old enough to suspect, built later.
AsbestosWord = Literal["tested_none", "tested_found", "left_in_place", "ask_year", "suspect", "built_later"]


def working_length(eave_height_ft: Number, share: Number) -> float:
    """Return the length of a leaning ladder from its foot to its top support.

    Source: 29 CFR 1926.1053(b)(5)(i): the foot stands out a share of this length, so that height, foot
    and ladder make a right triangle.

    Args:
        eave_height_ft: Height of the eave it leans on, above the foot [ft], above 0.
        share: Distance of the foot over the working length [-], above 0 and below 1.

    Returns:
        Length along the ladder [ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> round(working_length(9, 0.25), 3)
        9.295
    """
    above_zero(eave_height_ft=eave_height_ft, share=share)
    if share >= 1:
        message = f"share is {share}; it must be below 1"
        raise OutOfRange(message)
    return float(eave_height_ft) / math.sqrt(1 - float(share) ** 2)


def foot_distance(working_ft: Number, share: Number) -> float:
    """Return how far the foot of a ladder stands out from below its top support.

    Source: 29 CFR 1926.1053(b)(5)(i): about a quarter of the working length.

    Args:
        working_ft: Length from foot to top support [ft], above 0.
        share: Share of it [-], above 0.

    Returns:
        Level distance [ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> foot_distance(20, 0.25)
        5.0
    """
    above_zero(working_ft=working_ft, share=share)
    return float(share) * float(working_ft)


def rail_length(eave_height_ft: Number, above_ft: Number, share: Number) -> float:
    """Return how long the rails have to be to reach past the landing.

    Source: 29 CFR 1926.1053(b)(1), 3 ft above the landing surface; taken plumb, which asks a little more
    than along the rail.

    Args:
        eave_height_ft: Height of the eave one steps off at, above the foot [ft], above 0.
        above_ft: Height of the rails' tops above the landing [ft], 0 or more.
        share: Distance of the foot over the working length [-], above 0 and below 1.

    Returns:
        Length of rail [ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> round(rail_length(9, 3, 0.25), 3)
        12.394
    """
    zero_or_more(above_ft=above_ft)
    above_zero(eave_height_ft=eave_height_ft)
    return working_length(eave_height_ft + above_ft, share)


def two_section_size(rails_ft: Number, overlap_ft: Number) -> int:
    """Return the least size of an extension ladder of two sections, in whole feet.

    Source: WAC 296-876-40045 Table 2: sections overlap; a ladder's size is that of both sections
    together, so the overlap is lost from it.

    Args:
        rails_ft: Length of rail that is needed [ft], above 0.
        overlap_ft: Least overlap of the sections [ft], 0 or more.

    Returns:
        Size [ft].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> two_section_size(12.394, 3)
        16
    """
    above_zero(rails_ft=rails_ft)
    zero_or_more(overlap_ft=overlap_ft)
    return math.ceil(rails_ft + overlap_ft)


def fall_word(eave_ft: Number, top_ft: Number, from_ft: Number) -> FallWord:
    """Return where on a roof fall protection is asked by height.

    Source: 29 CFR 1926.501(b)(13) and (b)(11): 6 ft or more above the lower level.

    Args:
        eave_ft: Height of the lowest edge that can be fallen from, above the level below [ft], above 0.
        top_ft: Height of the roof's highest point above it [ft], not below the eave.
        from_ft: Height from which it is asked [ft], above 0.

    Returns:
        The word [-].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> fall_word(9, 14, 6), fall_word(5, 14, 6), fall_word(4, 5, 6)
        ('everywhere', 'above_a_line', 'not_by_height')
    """
    above_zero(eave_ft=eave_ft, from_ft=from_ft)
    zero_or_more(top_above_eave_ft=top_ft - eave_ft)
    if eave_ft >= from_ft:
        return "everywhere"
    return "above_a_line" if top_ft >= from_ft else "not_by_height"


def is_steep(rise: Number, over: Number) -> bool:
    """Return whether a roof is steep in the words of the fall rules.

    Source: 29 CFR 1926.501(b)(11): a slope over 4 in 12.

    Args:
        rise: Rise in 12 [in], 0 or more.
        over: Rise that is still not steep [in], 0 or more.

    Returns:
        True above it [-].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> is_steep(4, 4), is_steep(4.5, 4)
        (False, True)
    """
    zero_or_more(rise=rise, over=over)
    return rise > over


def lead_word(
    built: int | None,
    built_before: Number,
    disturbed: tuple[Number, Number] | None,
    limits: tuple[Number, Number],
    *,
    taken_out: bool = False,
) -> LeadWord:
    """Return what the federal rule on old paint asks of a job.

    Source: 40 CFR 745.83: housing built before 1978; minor work disturbs at most 20 sq ft outside in all
    and 6 sq ft inside in a room, replaces no window and tears out no painted part.

    Args:
        built: Year the house was built [year]; None when it is not known.
        built_before: Year from which housing is out of the rule [year], above 0.
        disturbed: Painted area disturbed outside, and inside in one room [sq ft]; None when not known.
        limits: Most that is minor outside, and inside in one room [sq ft], 0 or more.
        taken_out: A window is replaced, or a painted part is torn out [-].

    Returns:
        The word [-].

    Raises:
        OutOfRange: An area is below 0.

    Example:
        >>> lead_word(1948, 1978, (20, 0), (20, 6)), lead_word(1948, 1978, (20.5, 0), (20, 6))
        ('minor', 'certified_firm')
    """
    above_zero(built_before=built_before)
    if built is not None and built >= built_before:
        return "not_by_year"
    if disturbed is not None:
        outside, inside = disturbed
        zero_or_more(outside=outside, inside=inside)
        if not (outside or inside or taken_out):
            return "minor"
    if built is None:
        return "ask_year"
    if disturbed is None:
        return "ask_areas"
    over = disturbed[0] > limits[0] or disturbed[1] > limits[1]
    return "certified_firm" if over or taken_out else "minor"


def asbestos_word(
    built: int | None,
    built_before: Number,
    *,
    test: Literal["none found", "found"] | None,
    left_in_place: bool,
) -> AsbestosWord:
    """Return what is known of asbestos in the old covering, felt and mastic.

    Source: house rule over a state agency's page, which names roof shingles of homes built before 1978;
    a test comes before any year, and a year clears nothing.

    Args:
        built: Year the house was built [year]; None when it is not known.
        built_before: Year before which the page names roof shingles [year], above 0.
        test: What a licensed tester found [-]; None when nobody tested.
        left_in_place: The old covering stays and is only covered [-].

    Returns:
        The word [-].

    Raises:
        OutOfRange: The year of the page is not above 0.

    Example:
        >>> asbestos_word(1948, 1978, test=None, left_in_place=False)
        'suspect'
    """
    above_zero(built_before=built_before)
    if test is not None:
        return "tested_found" if test == "found" else "tested_none"
    if built is not None and built >= built_before:
        return "built_later"
    if left_in_place:
        return "left_in_place"
    return "ask_year" if built is None else "suspect"
