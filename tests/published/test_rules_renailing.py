"""Nailing an old deck again: what sets it off, and which way the old fastener selects; values typed here."""

from datetime import date
from fractions import Fraction

import pytest

from packet.reference import Library
from packet.workspace import packaged
from tests.published.rows import applies, nails, one, told

WHOLE, ADDED = "whole deck nailed again", "ring shank nails added between"
OLD_HOUSE = {"kind_of_work": "re-roof", "house_built": 1988}
COMMON_8D = {"old_fastener": "smooth nails", "old_nail_length_in": 2.5, "old_nail_shank_in": 0.131}


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.mark.parametrize(
    ("facts", "asked"),
    [
        ({"kind_of_work": "re-roof", "house_built": 1988}, True),
        ({"kind_of_work": "section", "house_built": 1988}, True),
        ({"kind_of_work": "recover", "house_built": 1988}, False),
        ({"kind_of_work": "patch", "house_built": 1988}, False),
        ({"kind_of_work": "re-roof", "house_permit_date": date(2002, 2, 28)}, True),
        ({"kind_of_work": "re-roof", "house_built": 2003, "house_permit_date": date(2002, 3, 1)}, False),
        ({"kind_of_work": "re-roof", "house_built": 2001}, True),
        ({"kind_of_work": "re-roof", "house_built": 2002}, None),
        ({"kind_of_work": "re-roof"}, None),
        ({"house_built": 1988}, None),
        ({"kind_of_work": "recover"}, False),
    ],
)
def test_florida_asks_it_of_houses_permitted_before_march_2002(
    library: Library, facts: dict[str, object], asked: bool | None
) -> None:
    """FBC Existing Building 706.7, 2017, by an inspector's answer of 2018: seen (secondary)."""
    for asks in ("renailed.needed", "renailed.edge_spacing", "renailed.field_spacing"):
        assert applies(library, "fbc-existing-2017", asks, **facts) is asked
    if asked:
        row = one(library, "fbc-existing-2017", "renailed.needed", **facts)
        assert (row.kind, *told(row)) == ("present", None, "seen_secondary", True)


@pytest.mark.parametrize(
    ("facts", "way"),
    [
        ({"old_fastener": "staples"}, (WHOLE,)),
        ({"old_nail_length_in": 2, "old_nail_shank_in": 0.113, "old_fastener": "smooth nails"}, (WHOLE,)),
        ({**COMMON_8D, "wind_ultimate_mph": 110, "wind_nominal_mph": 85}, (ADDED, WHOLE)),
        ({**COMMON_8D, "old_nail_length_in": 2.25, "wind_ultimate_mph": 100}, (ADDED, WHOLE)),
        ({**COMMON_8D, "wind_ultimate_mph": 155, "wind_nominal_mph": 120}, (WHOLE,)),
        ({**COMMON_8D, "wind_ultimate_mph": 111, "wind_nominal_mph": 119}, None),
        ({**COMMON_8D, "old_nail_length_in": 2.125, "wind_ultimate_mph": 100}, None),
        ({**COMMON_8D, "old_nail_shank_in": 0.113, "wind_ultimate_mph": 100}, None),
        ({"old_fastener": "ring shank nails", "old_nail_length_in": 2.375}, None),
        ({"old_fastener": "not known"}, None),
    ],
)
def test_florida_branches_by_the_old_fastener(
    library: Library, facts: dict[str, object], way: tuple[str, ...] | None
) -> None:
    """Same answer: staples and 6d, 8d smooth to 110 mph, 8d smooth from 120 mph; the rest was not read."""
    known = {
        "old_nail_length_in": 9, "old_nail_shank_in": 0, "wind_ultimate_mph": 0, "wind_nominal_mph": 0,
    }  # fmt: skip
    row = one(library, "fbc-existing-2017", "renailed.way", **OLD_HOUSE, **{**known, **facts})
    assert (row.value, row.may_decide) == (way, way is not None)
    assert bool(row.reason) is (way is None)


def test_an_old_fastener_nobody_wrote_down_selects_no_branch(library: Library) -> None:
    match = library.match(["fbc-existing-2017"], "renailed.way", OLD_HOUSE)
    assert match.rows == ()
    assert "old_fastener" in {fact for item in match.cannot_tell for fact in item.missing}


def test_florida_nails_6_in_apart_and_the_nail_is_not_told(library: Library) -> None:
    """Same answer: 8d ring shank with a round head at 6 in; its length and shank were not read."""
    for asks in ("renailed.edge_spacing", "renailed.field_spacing"):
        assert told(one(library, "fbc-existing-2017", asks, **OLD_HOUSE)) == (6, "seen_secondary", True)
    nail = one(library, "fbc-existing-2017", "renailed.nail", **OLD_HOUSE)
    assert (nail.value, nail.may_decide) == (None, False)


@pytest.mark.parametrize("edition", ["2020", "2023"])
def test_later_florida_editions_were_not_read_and_decide_nothing(library: Library, edition: str) -> None:
    """FBC Existing Building 2020 and 2023, Table 706.7.1.2: cells not found."""
    for asks in ("renailed.needed", "renailed.way", "renailed.nail", "renailed.edge_spacing"):
        assert told(one(library, f"fbc-existing-{edition}", asks, **OLD_HOUSE)) == (None, "memory", False)


def test_the_second_duty_is_a_water_barrier(library: Library) -> None:
    """FBC Existing Building 706.7.2, by a city's re-roof form: seen (secondary)."""
    row = one(library, "fbc-existing-2017", "sealed_deck.way", **OLD_HOUSE)
    assert (row.kind, row.checked, row.may_decide) == ("present", "seen_secondary", True)
    new_house = {"kind_of_work": "re-roof", "house_built": 2010, "house_permit_date": date(2009, 5, 4)}
    assert applies(library, "fbc-existing-2017", "sealed_deck.way", **new_house) is False


@pytest.mark.parametrize("edition", ["2007", "2017", "2020", "2023"])
def test_the_residential_code_brings_the_existing_building_rows_along(library: Library, edition: str) -> None:
    facts = {**OLD_HOUSE, "work_begun": date(2009, 5, 4)}
    rows = library.rows([f"fbcr-{edition}"], "renailed.needed", facts)
    assert [row.code for row in rows] == [f"fbc-existing-{edition}"]


@pytest.mark.parametrize(("day", "asked"), [(date(2007, 9, 30), False), (date(2007, 10, 1), True)])
def test_the_florida_retrofit_rule_starts_on_1_october_2007(library: Library, day: date, asked: bool) -> None:
    """Inspectors' answers on the cut-off day: seen (secondary)."""
    assert applies(library, "fbc-existing-2007", "renailed.needed", **OLD_HOUSE, work_begun=day) is asked


@pytest.mark.parametrize(
    ("facts", "way"),
    [
        ({"old_fastener": "staples"}, (WHOLE,)),
        ({"old_fastener": "not known"}, (WHOLE,)),
        ({"old_fastener": "smooth nails", "old_nail_length_in": 2, "old_nail_shank_in": 0.113}, (WHOLE,)),
        (COMMON_8D, (ADDED, WHOLE)),
        ({**COMMON_8D, "old_nail_length_in": 3, "old_nail_shank_in": 0.148}, (ADDED, WHOLE)),
        ({**COMMON_8D, "old_nail_length_in": 2.375, "old_nail_shank_in": 0.113}, None),
        ({**COMMON_8D, "old_nail_shank_in": 0.113}, None),
    ],
)
def test_the_older_high_wind_sheet_branches_too(
    library: Library, facts: dict[str, object], way: tuple[str, ...] | None
) -> None:
    """New-roof requirement sheet: staples, 6d or unknown; existing 8d common or larger: seen."""
    known = {"old_nail_length_in": 9, "old_nail_shank_in": 0, "kind_of_work": "re-roof"}
    row = one(library, "ibhs-high-wind-older", "renailed.way", **{**known, **facts})
    assert told(row) == (way, "seen", way is not None)


def test_the_older_sheet_asks_8d_ring_shank_at_6_and_the_2025_edition_was_not_read(library: Library) -> None:
    """New-roof requirement sheet: 8d ring shank, at least 0.113 x 2-3/8, 6 in everywhere: seen."""
    nail = one(library, "ibhs-high-wind-older", "renailed.nail")
    assert nails(nail) == {(2.375, 0.113, "ring")}
    assert one(library, "ibhs-high-wind-older", "renailed.field_spacing").value == 6
    facts = {**COMMON_8D, "kind_of_work": "re-roof"}
    for asks in ("renailed.needed", "renailed.way", "renailed.nail", "renailed.field_spacing"):
        row = one(library, "ibhs-high-wind-2025", asks, **facts)
        assert (row.checked, row.may_decide) == ("memory", False)


def test_a_2007_re_nailing_with_0_131_in_is_not_short(library: Library) -> None:
    """Roofing Advisory Committee minutes, 24 Feb 2009, DCA09-DEC-025: 0.131, not the printed 0.141: seen."""
    row = one(library, "fbc-existing-2007", "deck.nail.shank")
    assert told(row) == (Fraction("0.131"), "seen", True)


def test_the_rebuilding_notice_of_2016_asks_6_in(library: Library) -> None:
    """Northwest Florida rebuilding notice 2016, notice text: 8d ring shank 2-1/2 in at 6 in: seen."""
    for asks in ("renailed.edge_spacing", "renailed.field_spacing"):
        assert told(one(library, "fl-rebuilding-2016", asks)) == (6, "seen", True)
