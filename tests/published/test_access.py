"""Ladders, heights of fall, old paint and old coverings: each number beside the place it was read in."""

import math
from fractions import Fraction
from typing import Literal

import pytest

from packet.calc import access
from packet.calc.domain import OutOfRange
from packet.reference import Library
from packet.workspace import packaged


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


#: Fact, its number and unit, the paragraph, and how well it was read.
FACTS = [
    ("ladder-foot-share", Fraction(1, 4), "ratio", "1926.1053(b)(5)(i)", "seen"),
    ("ladder-above-landing", 3, "ft", "1926.1053(b)(1)", "seen_secondary"),
    ("fall-height", 6, "ft", "1926.501(b)(13)", "seen"),
    ("steep-over", 4, "pitch", "1926.501(b)(11)", "seen_secondary"),
    ("anchor", 5000, "lb", "1926.502(d)", "seen"),
    ("power-line-bare", 10, "ft", "1926.451(f)(6)", "seen"),
    ("power-line-insulated", 3, "ft", "1926.451(f)(6)", "seen"),
    ("heat-water", 8, "oz", "Hydration", "seen"),
    ("heat-from", 15, "minute", "Hydration", "seen"),
    ("heat-to", 20, "minute", "Hydration", "seen"),
    ("heat-first-day", 20, "percent", "first day", "seen"),
    ("lead-built-before", 1978, "year", "40 CFR 745.83", "seen"),
    ("lead-outside", 20, "sq_ft", "40 CFR 745.83", "seen"),
    ("lead-inside", 6, "sq_ft", "40 CFR 745.83", "seen"),
    ("lead-days", 30, "day", "40 CFR 745.83", "seen"),
    ("asbestos-built-before", 1978, "year", "where it may be found", "seen"),
    ("asbestos-share", 1, "percent", "40 CFR 61 Subpart M", "seen"),
    ("asbestos-units", 4, "number", "40 CFR 61 Subpart M", "seen"),
]

#: Facts of words alone: paragraph and mark.
WORDS = [
    ("ladder-rails", "296-876-40035", "seen"),
    ("slide-guards", "16 June 2011", "seen"),
    ("brackets", "296-880-40070", "seen"),
    ("crawling-boards", "296-880-40075", "seen"),
    ("asbestos-materials", "roofing felt", "seen_secondary"),
    ("asbestos-crews", "1926.1101", "seen"),
]


@pytest.mark.parametrize(("id", "value", "unit", "paragraph", "mark"), FACTS)
def test_a_fact_is_the_number_of_its_paragraph(
    library: Library, id: str, value: float, unit: str, paragraph: str, mark: str
) -> None:
    fact = library.access_facts()[id]
    assert (fact.value, fact.unit, fact.checked) == (value, unit, mark)
    assert paragraph in fact.locator
    assert library.access_source(fact).document


@pytest.mark.parametrize(("id", "paragraph", "mark"), WORDS)
def test_a_fact_of_words_names_its_paragraph(library: Library, id: str, paragraph: str, mark: str) -> None:
    fact = library.access_facts()[id]
    assert (fact.value, fact.unit, fact.checked) == (None, None, mark)
    assert paragraph in fact.locator


def test_no_fact_is_left_unchecked(library: Library) -> None:
    assert set(library.access_facts()) == {row[0] for row in (*FACTS, *WORDS)}


def test_a_foot_a_quarter_of_the_working_length_out_makes_an_angle_of_75_and_a_half_degrees() -> None:
    """29 CFR 1926.1053(a)(1)(ii) tests ladders at 75-1/2 degrees: the cosine of a quarter is 75.52."""
    working = access.working_length(20, Fraction(1, 4))
    foot = access.foot_distance(working, Fraction(1, 4))
    assert math.degrees(math.acos(foot / working)) == pytest.approx(75.52, abs=0.01)
    assert math.hypot(foot, 20) == pytest.approx(working)


@pytest.mark.parametrize(
    ("eave_ft", "working", "foot", "rails"),
    # sqrt(1 - 1/16) is 0.968246: 8 ft / 0.968246 is 8.262, a quarter of it 2.066, and 11 ft / 0.968246 is 11.361
    [(8, 8.262, 2.066, 11.361), (9, 9.295, 2.324, 12.394), (20, 20.656, 5.164, 23.754)],
)
def test_a_ladder_for_an_eave(eave_ft: int, working: float, foot: float, rails: float) -> None:
    share = Fraction(1, 4)
    assert access.working_length(eave_ft, share) == pytest.approx(working, abs=5e-4)
    assert access.foot_distance(access.working_length(eave_ft, share), share) == pytest.approx(foot, abs=5e-4)
    assert access.rail_length(eave_ft, 3, share) == pytest.approx(rails, abs=5e-4)


def test_sections_overlap_as_the_state_prints_it(library: Library) -> None:
    """WAC 296-876-40045 Table 2: up to 36 ft 3 ft, over 36 to 48 ft 4 ft, over 48 to 60 ft 5 ft."""
    table = library.table("ladder_overlap")
    found = [table.lookup(size_ft=size).number("overlap_ft") for size in (16, 36, 37, 48, 49, 60)]
    assert found == [3, 3, 4, 4, 5, 5]
    assert table.rows[0].source.checked == "seen"
    assert (access.two_section_size(13, 3), access.two_section_size(13.01, 3)) == (16, 17)


@pytest.mark.parametrize(
    ("eave_ft", "top_ft", "word"),
    # 1926.501(b)(13): 6 ft or more above the lower level
    [
        (6, 12, "everywhere"),
        (Fraction(71, 12), 12, "above_a_line"),
        (5, 6, "above_a_line"),
        (4, Fraction(71, 12), "not_by_height"),
    ],
)
def test_fall_protection_is_asked_from_six_feet(eave_ft: float, top_ft: float, word: str) -> None:
    assert access.fall_word(eave_ft, top_ft, 6) == word


def test_a_steep_roof_is_over_four_in_twelve() -> None:
    assert [access.is_steep(rise, 4) for rise in (4, Fraction(17, 4), 12)] == [False, True, True]


@pytest.mark.parametrize(
    ("built", "disturbed", "taken_out", "word"),
    # 40 CFR 745.83: housing before 1978; at most 20 sq ft outside and 6 sq ft in a room; no window, nothing torn out
    [
        (1978, (500, 50), True, "not_by_year"),
        (1977, (20, 6), False, "minor"),
        (1977, (Fraction(201, 10), 0), False, "certified_firm"),
        (1977, (0, Fraction(61, 10)), False, "certified_firm"),
        (1977, (0, 0), True, "certified_firm"),
        (1977, (0, 0), False, "minor"),
        (1977, None, False, "ask_areas"),
        (None, None, False, "ask_year"),
        (None, (5, 0), False, "ask_year"),
        (None, (0, 0), False, "minor"),
    ],
)
def test_old_paint(
    built: int | None, disturbed: tuple[float, float] | None, taken_out: bool, word: str
) -> None:
    assert access.lead_word(built, 1978, disturbed, (20, 6), taken_out=taken_out) == word


@pytest.mark.parametrize(
    ("built", "test", "left", "word"),
    # a state's page names roof shingles of homes built before 1978; a test comes before any year
    [
        (1977, None, False, "suspect"),
        (1978, None, False, "built_later"),
        (None, None, False, "ask_year"),
        (1948, None, True, "left_in_place"),
        (None, None, True, "left_in_place"),
        (1948, "none found", False, "tested_none"),
        (2004, "found", False, "tested_found"),
        (1948, "found", True, "tested_found"),
    ],
)
def test_old_coverings(
    built: int | None, test: Literal["none found", "found"] | None, left: bool, word: str
) -> None:
    assert access.asbestos_word(built, 1978, test=test, left_in_place=left) == word


def test_what_no_ladder_can_be_is_refused() -> None:
    for wrong in (lambda: access.working_length(0, 0.25), lambda: access.working_length(9, 1)):
        with pytest.raises(OutOfRange):
            wrong()
    with pytest.raises(OutOfRange):
        access.fall_word(9, 8, 6)
    with pytest.raises(OutOfRange):
        access.lead_word(1948, 1978, (-1, 0), (20, 6))
