"""Florida: the share of a roof section in twelve months, the old roof's code, the affidavit."""

from datetime import date
from pathlib import Path

import pytest

from packet.closeout.model import Closeout
from packet.figures.share import year_before
from packet.reference import Library
from packet.workspace import packaged
from tests.published.rows import one
from tests.support.duties import day, duty, duty_ids, small_office
from tests.support.office import Office

SECTION = "section-to-code"
OLD = "2008-05-01"


def florida(
    folder: Path, along: str, *, old: str = OLD, before: str = "[]", kind: str = "section", **more: str
) -> Office:
    """Return a job in Florida: old roof's permit, and work of the twelve months before."""
    office = small_office(folder, state="FL", county="Osprey County", kind=kind, along=along, **more)
    if old:
        office.changed("roof.old", f"{{covering: laminated shingle, permit_date: {old}}}")
    return office.changed("roof.worked_before", before) if before else office


def earlier(*entries: str) -> str:
    return "[" + ", ".join(f"{{{entry}, how_known: told by the owner}}" for entry in entries) + "]"


def shares(closeout: Closeout) -> dict[str, float]:
    return {id: float(f.value) for id, f in closeout.figures.items() if id.startswith("share.")}


@pytest.mark.parametrize(
    ("along", "word"), [("24 ft", "not_needed"), ("25 ft", "not_needed"), ("26 ft", "needed")]
)
def test_more_than_25_percent_brings_the_section_to_the_code(tmp_path: Path, along: str, word: str) -> None:
    """Existing building code 706.1.1, "not more than 25 percent": quoted, seen (secondary)."""
    found = duty(florida(tmp_path, along), SECTION)
    assert found.word == word
    assert all(rule.caution for rule in found.rules)


@pytest.mark.parametrize(("old", "word"), [("2009-02-28", "needed"), ("2009-03-01", "not_needed")])
def test_a_roof_to_the_2007_code_may_be_worked_in_part(tmp_path: Path, old: str, word: str) -> None:
    """553.844(5), statutes of 2022; the 2007 code is in force from 1 March 2009: seen (secondary)."""
    found = duty(florida(tmp_path, "26 ft", old=old), SECTION)
    assert found.word == word
    assert (old, "old_roof_permit_date") in {(str(r.day), r.fact) for r in found.reasons}


def test_no_roof_is_older_than_its_house(tmp_path: Path) -> None:
    office = florida(tmp_path, "26 ft", old="").changed("property.permit_date", "2012-06-01")
    assert duty(office, SECTION).word == "not_needed"


def test_a_house_permit_from_before_says_nothing_of_a_later_roof(tmp_path: Path) -> None:
    office = florida(tmp_path, "26 ft", old="").changed("property.permit_date", "1999-06-01")
    found = duty(office, SECTION)
    assert (found.word, found.missing) == ("cannot_tell", ("old_roof_permit_date",))


def test_permits_that_contradict_each_other_decide_nothing(tmp_path: Path) -> None:
    office = florida(tmp_path, "26 ft", old="2005-01-01").changed("property.permit_date", "2012-06-01")
    found = duty(office, SECTION)
    assert (found.word, found.missing) == ("cannot_tell", ())
    assert {rule.answer for rule in found.rules} == {"needed", "not_needed"}


def test_an_unknown_year_before_leaves_a_small_share_open_and_not_a_large_one(tmp_path: Path) -> None:
    small = duty(florida(tmp_path / "small", "10 ft", before=""), SECTION)
    assert small.word == "cannot_tell"
    assert "year_share_percent" in small.missing
    assert duty(florida(tmp_path / "large", "26 ft", before=""), SECTION).word == "needed"


def test_earlier_work_is_added_with_its_working(tmp_path: Path) -> None:
    office = florida(tmp_path, "20 ft", before=earlier("id: EW1, on: 2025-09-02, area: 60 sq ft"))
    closeout = office.closeout()
    assert duty(office, SECTION).word == "needed"
    assert shares(closeout)["share.roof.job"] == pytest.approx(20)
    assert shares(closeout)["share.roof.year"] == pytest.approx(26)
    working = closeout.figures["share.roof.year"].working
    assert working
    assert working.formula == "100 * (worked_sq_ft + earlier_sq_ft) / section_sq_ft"
    terms = [(term.symbol, round(float(term.value))) for term in working.terms]
    assert terms == [("worked_sq_ft", 200), ("earlier_sq_ft", 60), ("section_sq_ft", 1000)]


@pytest.mark.parametrize(("on", "word"), [("2025-04-13", "not_needed"), ("2025-04-14", "needed")])
def test_only_work_of_the_same_twelve_months_counts(tmp_path: Path, on: str, word: str) -> None:
    """Started on 13 April 2026: twelve months that hold that day begin on 14 April 2025 at the earliest."""
    office = florida(tmp_path, "20 ft", before=earlier(f"id: EW1, on: {on}, area: 60 sq ft"))
    assert duty(office, SECTION).word == word


def test_a_year_before_a_leap_day() -> None:
    assert year_before(date(2024, 2, 29)) == date(2023, 2, 28)


def test_each_section_is_looked_at_by_itself(tmp_path: Path) -> None:
    wing = "{id: B, title: wing, shape: rectangle, lower: 20 ft, run: 20 ft, pitch: 9:12, facing: south, at: [60 ft, 0 ft]}"
    office = florida(
        tmp_path, "20 ft", before=earlier("id: EW1, on: 2026-01-02, area: 90 sq ft, section: SB")
    )
    text = office.text.replace("at: [0 ft, 0 ft]}]\n", "at: [0 ft, 0 ft]}, " + wing + "]\n", 1)
    office.write(text).changed(
        "roof.sections", "[{id: SA, title: main, planes: [A]}, {id: SB, title: wing, planes: [B]}]"
    )
    assert duty(office, SECTION).word == "not_needed"  # 20 percent of SA; the 90 sq ft were on SB
    found_shares = shares(office.closeout())
    assert found_shares["share.SA.job"] == pytest.approx(20)
    assert "share.SA.year" not in found_shares
    office.changed("roof.worked_before.EW1.section", "SA")
    found = duty(office, SECTION)
    assert found.word == "needed"
    assert {reason.subject for reason in found.reasons if reason.fact == "year_share_percent"} == {"SA"}


def test_the_rows_are_marked_as_read() -> None:
    library = Library.load([packaged("shared")])
    row = one(library, "fl-roof-section", "duty.section_to_code", year_share_percent=10)
    assert (row.checked, row.caution) == ("seen_secondary", True)


# The affidavit


def test_whether_an_affidavit_is_asked_here_was_not_read(tmp_path: Path) -> None:
    """A county's page, houses of 2002 or older: said of that county alone, so it decides nothing here."""
    office = florida(tmp_path, "26 ft").changed("property.built", "1996")
    found = duty(office, "affidavit")
    assert (found.word, [rule.decides for rule in found.rules]) == ("not_verified", [False])


AFFIDAVIT = "permissions: [{{id: AF1, kind: affidavit, by: roofing contractor, issued_on: {on}}}]"
FINAL = "inspections: [{id: I1, on: 2026-04-20, what: final, stages: [done], by: inspector, result: passed}]"


@pytest.mark.parametrize(
    ("on", "word"),
    [("2026-04-19", "in_order"), ("2026-04-20", "same_day"), ("2026-04-21", "out_of_order")],
)
def test_the_affidavit_is_there_at_the_final_visit(tmp_path: Path, on: str, word: str) -> None:
    """A county's reroofing affidavit: on site at the final inspection."""
    office = florida(tmp_path, "26 ft").changed("property.built", "1996")
    office.added(AFFIDAVIT.format(on=on)).added(FINAL)
    assert day(office, "affidavit", "affidavit_before_final").word == word


@pytest.mark.parametrize(
    ("on", "word"),
    [("2026-04-13", "in_order"), ("2026-04-14", "same_day"), ("2026-04-15", "out_of_order")],
)
def test_the_deck_is_seen_before_it_is_covered(tmp_path: Path, on: str, word: str) -> None:
    """A city's answers on roofing inspections: nothing is covered before the first visit or affidavit."""
    office = florida(tmp_path, "26 ft").changed("property.built", "1996")
    office.added(
        f"inspections: [{{id: I1, on: {on}, what: deck, stages: [deck], by: inspector, result: passed}}]"
    )
    assert day(office, "affidavit", "deck_seen_before_dry_in").word == word


def test_what_the_affidavit_states_is_held_against_the_record(tmp_path: Path) -> None:
    office = florida(tmp_path, "26 ft").added(AFFIDAVIT.format(on="2026-04-19"))
    office.changed("basis.permit", "R-26-1").changed(
        "deck",
        "{renailed: {planes: [A], nail: {size: 2-3/8 x 0.113, shank: ring}, edge_spacing: 6 in, field_spacing: 6 in}}",
    )
    found = {item.key: item for item in duty(office, "affidavit").stated_facts}
    assert {key for key, item in found.items() if item.recorded} == {
        "permit", "address", "signer", "nail", "spacing",
    }  # fmt: skip
    assert found["spacing"].figures == ("deck.renailed.edge_spacing", "deck.renailed.field_spacing")
    assert found["planes"].planes == ("A",)


def test_florida_is_asked_for_section_affidavit_permit_and_final(tmp_path: Path) -> None:
    assert duty_ids(florida(tmp_path, "10 ft")) == [SECTION, "affidavit", "permit", "final-visit"]
