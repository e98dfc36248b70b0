"""Papers a job needs: missing ones and late ones are open items, each with a way to explain it."""

from pathlib import Path

import pytest

from tests.support.duties import duty, small_office
from tests.support.office import Office

APPLIED = "permissions: [{{id: AP1, kind: windstorm application, applied_on: {on}}}]"


def test_a_closed_job_without_the_papers_it_needs_has_them_open(tmp_path: Path) -> None:
    office = small_office(tmp_path, along="10 ft")
    assert {"paper-missing:windstorm-certificate", "paper-missing:engineer"} <= office.finding_ids()
    assert not small_office(tmp_path / "exempt").finding_ids() & {"paper-missing:windstorm-certificate"}


def test_nothing_is_missing_while_its_time_has_not_passed(tmp_path: Path) -> None:
    office = small_office(tmp_path, along="10 ft", status="under way").replaced(", finished: 2026-04-15", "")
    office.added(APPLIED.format(on="2026-04-10"))
    assert not any(id.startswith("paper-") for id in office.finding_ids())


@pytest.mark.parametrize(
    ("on", "open_"), [("2026-04-12", False), ("2026-04-13", False), ("2026-04-14", True)]
)
def test_an_application_after_the_work_began_is_open(tmp_path: Path, on: str, open_: bool) -> None:
    office = small_office(tmp_path, along="10 ft").added(APPLIED.format(on=on))
    assert ("paper-out-of-order:windstorm-certificate" in office.finding_ids()) is open_


def test_an_explanation_closes_it(tmp_path: Path) -> None:
    office = small_office(tmp_path, along="10 ft")
    office.added('explained: {"paper-missing:engineer": "The owner did not want one."}')
    found = {finding.id: finding.explanation for finding in office.closeout().findings}
    assert found["paper-missing:engineer"] == "The owner did not want one."


@pytest.mark.parametrize("county", ["Harris County", "Travis County", "Galveston County"])
def test_a_small_repair_is_exempt_wherever_the_house_stands(tmp_path: Path, county: str) -> None:
    """Inside, under 100 sq ft with the deck untouched needs none; outside none is needed: so none is, anywhere."""
    assert duty(small_office(tmp_path, county=county), "windstorm-certificate").word == "not_needed"


@pytest.mark.parametrize(
    ("text", "bare"),
    [
        ("kind: corrected, on: 2026-03-17, by: building inspector", False),
        ("kind: corrected, on: 2026-03-17", True),
        ("kind: corrected, by: building inspector", True),
        ("kind: accepted, on: 2026-03-17, by: building office", False),
        ("kind: accepted, by: building office", True),
        ("kind: explained", False),
    ],
)
def test_a_way_out_says_when_and_who_or_what_shows_it(job_office: Office, text: str, bare: bool) -> None:
    job_office.changed("deck.field_spacing", "8 in")
    job_office.added(f"ways_out: [{{requirement: deck-nail-field-spacing, {text}, text: Twelve added.}}]")
    assert ("way-out-bare:deck-nail-field-spacing" in job_office.finding_ids()) is bare
