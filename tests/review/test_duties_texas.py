"""Coastal Texas: which job needs a windstorm certificate, and whether it was applied for in time."""

from pathlib import Path

import pytest

from packet.closeout.rests_on import rests_on
from packet.figure import Figure
from packet.reference import Library
from packet.workspace import packaged
from tests.support.duties import day, duty, duty_ids, small_office
from tests.support.office import Office

CERTIFICATE = "windstorm-certificate"
SHEETS = "{sheets: [{id: S1, plane: A, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}]}"
APPLICATION = "permissions: [{{id: AP1, kind: windstorm application, applied_on: {on}}}]"
VISIT = "inspections: [{{id: I1, on: {on}, what: deck, by: windstorm inspector, result: passed, {more}}}]"


@pytest.mark.parametrize(
    ("along", "word"),
    [
        ("9.9 ft", "not_needed"),  # 99 sq ft
        ("10 ft", "needed"),  # 100 sq ft: "under 100 sq ft" leaves it out
        ("10.1 ft", "needed"),  # 101 sq ft
    ],
)
def test_under_100_sq_ft_with_the_deck_untouched_needs_none(tmp_path: Path, along: str, word: str) -> None:
    """State insurance department, what you need to know about windstorm inspections: seen."""
    found = duty(small_office(tmp_path, along=along), CERTIFICATE)
    assert found.word == word
    assert [rule.source.id for rule in found.rules] == ["tdi-take-five"]
    assert all(rule.decides and not rule.caution for rule in found.rules)


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("deck", SHEETS),
        ("deck", "{renailed: {planes: [A]}}"),
        ("framing", "[{id: R1, part: rafter, what: A new one beside it.}]"),
    ],
)
def test_a_small_repair_that_touches_deck_or_framing_needs_one(tmp_path: Path, path: str, value: str) -> None:
    """Department's list: the decking is left alone; engineers' copies of it add framing members."""
    found = duty(small_office(tmp_path).changed(path, value), CERTIFICATE)
    assert found.word == "needed"
    assert [(reason.fact, reason.word) for reason in found.reasons] == [
        ("windstorm_area", "inside"),
        ("deck_touched", "yes"),
    ]


def test_trim_is_no_framing(tmp_path: Path) -> None:
    office = small_office(tmp_path).changed("framing", "[{id: R1, part: fascia, what: New board.}]")
    assert duty(office, CERTIFICATE).word == "not_needed"


def test_a_small_re_roof_is_no_repair(tmp_path: Path) -> None:
    """The exemption is for a roof repair; a re-roof needs a certificate whatever its size."""
    assert duty(small_office(tmp_path, kind="re-roof"), CERTIFICATE).word == "needed"


def test_the_reason_is_the_worked_area_beside_the_threshold(tmp_path: Path) -> None:
    closeout = small_office(tmp_path).closeout()
    reason = next(r for r in closeout.duties[0].reasons if r.fact == "worked_area_sq_ft")
    assert reason.figure == "work.area"
    assert float(closeout.figures[reason.figure].value) == 99
    bound = reason.bounds[0]
    limit: Figure = closeout.figures[bound.figure]
    assert (bound.kind, limit.value, limit.unit) == ("below", 100, "sq_ft")
    assert limit.sources[0].id == "tdi-take-five"


@pytest.mark.parametrize(
    ("county", "more", "word", "missing"),
    [
        ("San Patricio", "", "needed", ()),
        ("galveston county", "", "needed", ()),
        ("Travis County", "", "not_needed", ()),
        ("Galvestn County", "", "cannot_tell", ("windstorm_area",)),  # a slip is no inland county
        ("Harris County", "", "cannot_tell", ("windstorm_area",)),
        ("Harris County", "inside", "needed", ()),
        ("Harris County", "outside", "not_needed", ()),
    ],
)
def test_the_county_decides(
    tmp_path: Path, county: str, more: str, word: str, missing: tuple[str, ...]
) -> None:
    """Department: 14 first-tier counties, and Harris east of Highway 146 inside the cities on its map."""
    office = small_office(tmp_path, county=county, along="10 ft")
    if more:
        office.changed("property.windstorm_area", more)
    found = duty(office, CERTIFICATE)
    assert (found.word, found.missing) == (word, missing)
    row = {"needed": "tx-windstorm-certificate", "not_needed": "tx-windstorm-no-certificate-outside"}
    if word in row:
        assert [rule.row for rule in found.rules] == [row[word]]


def test_an_inland_re_roof_needs_none_and_no_engineer(tmp_path: Path) -> None:
    office = small_office(tmp_path, county="Travis County", kind="re-roof", along="40 ft")
    assert duty(office, CERTIFICATE).word == "not_needed"
    assert duty_ids(office) == [CERTIFICATE, "permit", "final-visit"]


def test_the_counties_are_the_published_fifteen() -> None:
    """Department's field offices by county, which make 14 first-tier counties and a part of Harris: seen."""
    table = Library.load([packaged("shared")]).table("windstorm_counties")
    assert set(table.words("county")) == {
        "Aransas", "Brazoria", "Calhoun", "Cameron", "Chambers", "Galveston", "Harris", "Jefferson", "Kenedy",
        "Kleberg", "Matagorda", "Nueces", "Refugio", "San Patricio", "Willacy",
    }  # fmt: skip
    assert {row.source.checked for row in table.rows} == {"seen"}
    assert [row.cells["county"] for row in table.rows if row.cells["area"] is None] == ["Harris"]


def test_without_area_and_deck_it_cannot_be_told_and_both_are_named(tmp_path: Path) -> None:
    office = small_office(tmp_path, status="under way").changed("dates", "{started: 2026-04-13}")
    lines = [line for line in office.text.splitlines() if not line.startswith("covering:")]
    found = duty(office.write("\n".join(lines) + "\n"), CERTIFICATE)
    assert found.word == "cannot_tell"
    assert set(found.missing) == {"worked_area_sq_ft", "deck_touched"}


@pytest.mark.parametrize(
    ("on", "word"),
    [("2026-04-12", "in_order"), ("2026-04-13", "same_day"), ("2026-04-14", "out_of_order")],
)
def test_the_application_comes_before_the_work(tmp_path: Path, on: str, word: str) -> None:
    """Windstorm certification requirements: the application is filed before work begins."""
    office = small_office(tmp_path, along="20 ft").added(APPLICATION.format(on=on))
    check = day(office, CERTIFICATE, "application_before_work")
    assert (check.word, str(check.day), str(check.against), check.paper) == (word, on, "2026-04-13", "AP1")


def test_no_application_is_not_recorded_and_before_the_work_not_due(tmp_path: Path) -> None:
    office = small_office(tmp_path, along="20 ft")
    assert day(office, CERTIFICATE, "application_before_work").word == "not_recorded"
    planned = small_office(tmp_path / "planned", along="20 ft", status="planned").changed("dates", "{}")
    assert day(planned, CERTIFICATE, "application_before_work").word == "not_due"


def test_what_needs_no_certificate_compares_no_days(tmp_path: Path) -> None:
    assert duty(small_office(tmp_path), CERTIFICATE).days == ()


@pytest.mark.parametrize(
    ("issued", "word"),
    [("2026-04-14", "out_of_order"), ("2026-04-15", "same_day"), ("2026-04-20", "in_order")],
)
def test_the_certificate_comes_after_the_work(tmp_path: Path, issued: str, word: str) -> None:
    paper = f"{{id: WC1, kind: windstorm certificate, issued_on: {issued}}}"
    office = small_office(tmp_path, along="20 ft").added(f"permissions: [{paper}]")
    assert day(office, CERTIFICATE, "certificate_after_work").word == word


@pytest.mark.parametrize(
    ("visit", "word"),
    [
        ("", "needed"),
        (VISIT.format(on="2026-04-14", more="purpose: windstorm"), "not_needed"),
        (VISIT.format(on="2026-04-16", more="purpose: windstorm"), "needed"),  # the work was finished
        (VISIT.format(on="2026-04-14", more="purpose: permit"), "needed"),  # the town's inspector is another
    ],
)
def test_finished_work_that_nobody_saw_needs_an_engineer(tmp_path: Path, visit: str, word: str) -> None:
    """Department's inspection process, item 5: inspectors look at work under way, not after: seen."""
    office = small_office(tmp_path, along="20 ft").added(visit)
    assert duty(office, "engineer").word == word


def test_before_it_is_finished_nobody_can_say_whether_an_engineer_is_needed(tmp_path: Path) -> None:
    office = small_office(tmp_path, along="20 ft", status="under way").changed(
        "dates", "{started: 2026-04-13, dried_in: 2026-04-14}"
    )
    found = duty(office, "engineer")
    assert (found.word, found.missing) == ("cannot_tell", ("seen_under_way",))


def test_papers_and_visits_are_evidence(tmp_path: Path) -> None:
    office = small_office(tmp_path, along="20 ft")
    office.added(VISIT.format(on="2026-04-14", more="purpose: windstorm"))
    office.added("documents: [{id: D1, kind: other, title: Application, readers: [outside, office]}]")
    office.added("permissions: [{id: AP1, kind: windstorm application, document: D1}]")
    assert duty(office, CERTIFICATE).evidence == ("AP1", "I1", "D1")


def test_the_rows_are_among_those_the_job_rests_on(tmp_path: Path) -> None:
    library = Library.load([packaged("shared")])
    rested = {item.row: item for item in rests_on(small_office(tmp_path).closeout(), library)}
    small = rested["tx-windstorm-no-certificate-small"]
    assert (small.decides, small.governs, small.used_by) == (True, True, (CERTIFICATE,))


def test_elsewhere_nothing_is_said_of_windstorm_or_sections(job_office: Office) -> None:
    assert duty_ids(job_office) == ["permit", "final-visit"]
