"""The Texas coast by the day work began: the edition at each boundary day; expected values typed here."""

from datetime import date

import pytest

from packet.reference import Library
from packet.workspace import packaged
from tests.published.rows import one, told

IRC = "International Residential Code"
ASSOCIATION = "Association building code, 28 TAC 5.4008"
GUIDE = "Windstorm Resistant Construction Guide"


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.mark.parametrize(
    ("day", "zone", "edition"),
    [
        (date(1998, 8, 31), "seaward", None),
        (date(1998, 9, 1), "seaward", ASSOCIATION),
        (date(1998, 9, 1), "inland-1", ASSOCIATION),
        (date(1998, 9, 1), "inland-2", GUIDE),
        (date(2003, 1, 31), "seaward", ASSOCIATION),
        (date(2003, 1, 31), "inland-2", GUIDE),
        (date(2003, 2, 1), "seaward", None),
        (date(2004, 12, 31), "seaward", None),
        (date(2005, 1, 1), "seaward", f"{IRC}, 2003, with Texas Revisions"),
        (date(2007, 12, 31), "inland-1", f"{IRC}, 2003, with Texas Revisions"),
        (date(2008, 1, 1), "inland-1", f"{IRC}, 2006, with Texas Revisions"),
        (date(2020, 4, 1), "seaward", f"{IRC}, 2006, with Texas Revisions"),
        (date(2020, 8, 31), "seaward", f"{IRC}, 2006, with Texas Revisions"),
        (date(2020, 9, 1), "seaward", f"{IRC}, 2018"),
        (date(2026, 2, 28), "seaward", f"{IRC}, 2018"),
        (date(2026, 3, 1), "seaward", None),
    ],
)
def test_the_edition_follows_the_day_work_began(
    library: Library, day: date, zone: str, edition: str | None
) -> None:
    """28 TAC 5.4008; the department's archived table and its page of adopted codes; the 2026 proposal: seen."""
    row = one(library, "tx-windstorm", "basis.edition", work_begun=day, wind_zone=zone)
    assert row.value == ((edition,) if edition else None)
    assert row.may_decide is bool(edition)
    assert bool(row.reason) is not bool(edition)
    assert row.checked == ("memory" if day < date(1998, 9, 1) else "seen")


def test_work_from_march_2026_asks_the_inspector(library: Library) -> None:
    """Texas Register, proposed 28 TAC 5.4013: the adopted text was not read."""
    row = one(library, "tx-windstorm", "basis.edition", work_begun=date(2026, 3, 1))
    assert "Ask the inspector" in row.reason


def test_without_the_day_no_edition_is_named(library: Library) -> None:
    match = library.match(["tx-windstorm"], "basis.edition", {"wind_zone": "seaward"})
    assert match.rows == ()
    assert {fact for item in match.cannot_tell for fact in item.missing} == {"work_begun"}


@pytest.mark.parametrize(
    ("zone", "speed", "mark", "decides"),
    [
        ("seaward", 130, "seen_secondary", True),
        ("inland-1", 120, "seen_secondary", True),
        ("inland-2", 110, "memory", False),
    ],
)
def test_zone_names_set_the_speed_to_august_2020(
    library: Library, zone: str, speed: int, mark: str, decides: bool
) -> None:
    """Two pages on the zones of the 2006 era: seen (secondary); Inland II from memory."""
    last = one(library, "tx-windstorm", "basis.wind_nominal", work_begun=date(2020, 8, 31), wind_zone=zone)
    assert told(last) == (speed, mark, decides)
    now = one(library, "tx-windstorm", "basis.wind_nominal", work_begun=date(2020, 9, 1), wind_zone=zone)
    assert (now.value, now.may_decide) == (None, False)
    assert "read for the address" in now.reason


def test_there_is_no_prescriptive_nail_table_after_january_2003(library: Library) -> None:
    """None found; the 2018 rules point to the code itself."""
    for asks in ("deck.nail.edge_spacing", "deck.nail.field_spacing"):
        row = one(library, "tx-windstorm", asks, work_begun=date(2003, 2, 1))
        assert (row.value, row.may_decide) == (None, False)
        assert library.rows(["tx-windstorm"], asks, {"work_begun": date(2003, 1, 31)}) == []


def test_texas_coast_shingles(library: Library) -> None:
    """Contractors' pages: D3161 Class F or D7158 Class H, 12 ga, 3/8 in head: seen (secondary)."""
    classes = one(library, "tx-windstorm", "shingle.wind_class")
    assert classes.value == ("ASTM D3161 Class F", "ASTM D7158 Class H")
    assert float(one(library, "tx-windstorm", "shingle_nail.shank").value) == 0.105  # type: ignore[arg-type]
    assert float(one(library, "tx-windstorm", "shingle_nail.head").value) == 0.375  # type: ignore[arg-type]
