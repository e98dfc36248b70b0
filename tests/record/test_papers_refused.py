"""Papers, visits and approvals that can't be as written: one error each, at its line."""

from collections.abc import Callable

import pytest

from packet.located import read_catalogue
from packet.problems import Problem, message
from packet.workspace import packaged
from tests.support.office import Office

CATALOGUE = read_catalogue(packaged("shared") / "words" / "problems.yaml")
Shoot = Callable[..., dict[str, object]]

ITEM = "code_items: [{{id: CI1, what: nails, section: R1, trigger: bare deck, as_found: few{more}}}]"
PERMISSION = "permissions: [{{id: AP1, kind: windstorm certificate{more}}}]"
APPROVAL = "approvals: [{{id: PA1, product: shingle, number: N-1, by: office{more}}}]"


def only(office: Office) -> Problem:
    problems = office.problems()
    assert len(problems) == 1, problems
    return problems[0]


def held(office: Office, code: str, path: str) -> str:
    """Return the two sentences of the one problem, which stands at a path."""
    problem = only(office)
    assert (problem.code, problem.line, problem.column) == (code, *office.place(path))
    return " ".join(message(problem, CATALOGUE))


# Visits from before there was anything to look at; the roof was opened on March 16, 2026, finished on the 18th.


@pytest.mark.parametrize(
    ("id", "on", "named"),
    [("I1", "2026-03-15", "dates.started"), ("I2", "2026-03-17", "dates.finished")],
)
def test_a_visit_before_its_work_is_refused(job_office: Office, id: str, on: str, named: str) -> None:
    text = held(
        job_office.changed(f"inspections.{id}.on", on), "inspection-before-work", f"inspections.{id}.on"
    )
    assert on in text
    assert named in text
    assert 'names the stage "before" under stages' in text


def test_a_final_visit_on_the_last_day_is_none_too_early(job_office: Office) -> None:
    job_office.changed("inspections.I2.on", "2026-03-18").closeout()


def test_a_visit_without_stages_is_not_before_the_roof_was_opened(job_office: Office) -> None:
    added = "{id: I3, on: 2026-03-15, what: deck, by: inspector, result: passed}"
    job_office.changed("inspections.I1", added.replace("I3", "I1"))
    assert only(job_office).code == "inspection-before-work"
    job_office.changed("inspections.I1.stages", "[before]").closeout()


def test_without_days_of_the_work_nothing_is_too_early(job_office: Office) -> None:
    job_office.changed("dates", "{looked_at: 2026-03-09}").changed("inspections.I2.on", "2026-03-10")
    job_office.closeout()


def test_a_stage_nobody_knows_is_answered_with_the_nearest(job_office: Office) -> None:
    job_office.changed("inspections.I1.stages.0", "dekc")
    assert 'Did you mean "deck"?' in held(job_office, "unknown-stage", "inspections.I1.stages.0")


# Days


@pytest.mark.parametrize(
    ("part", "path", "earlier"),
    [
        (
            PERMISSION.format(more=", applied_on: 2026-03-20, issued_on: 2026-03-19"),
            "permissions.AP1.issued_on",
            "applied_on",
        ),
        (
            APPROVAL.format(more=", valid_from: 2026-03-20, valid_until: 2026-03-19"),
            "approvals.PA1.valid_until",
            "valid_from",
        ),
    ],
)
def test_what_ends_before_it_begins_is_refused(
    job_office: Office, part: str, path: str, earlier: str
) -> None:
    text = held(job_office.added(part), "dates-out-of-order", path)
    assert f"{earlier} is 2026-03-20" in text


@pytest.mark.parametrize(
    ("correction", "key"),
    [
        ("{asked: More nails., done_on: 2026-03-16}", "done_on"),
        ("{asked: More nails., done_on: 2026-03-21, seen_at: I2}", "seen_at"),
    ],
)
def test_nothing_is_put_right_before_it_is_asked_or_seen_before_it_is_done(
    job_office: Office, correction: str, key: str
) -> None:
    job_office.changed("inspections.I1.corrections", f"[{correction}]")
    held(job_office, "dates-out-of-order", f"inspections.I1.corrections.0.{key}")


def test_earlier_work_is_earlier(job_office: Office) -> None:
    work = "[{id: EW1, on: 2026-03-16, area: 60 sq ft, how_known: told by the owner}]"
    text = held(
        job_office.changed("roof.worked_before", work), "dates-out-of-order", "roof.worked_before.EW1.on"
    )
    assert "a day before 2026-03-16" in text


# Names that nothing carries


@pytest.mark.parametrize(
    ("path", "value", "code", "at", "near"),
    [
        ("inspections.I1.corrections", "[{asked: Nails., photo: P9}]", "unknown-photo", ".0.photo", ""),
        (
            "inspections.I1.corrections",
            "[{asked: Nails., requirement: deck-nial}]",
            "unknown-requirement",
            ".0.requirement",
            "deck-nail",
        ),
        ("inspections.I1.corrections", "[{asked: Nails., seen_at: I9}]", "unknown-id", ".0.seen_at", ""),
        ("documents.D2.proves", "[deck-nial]", "unknown-paper-proof", ".0", "deck-nail"),
        (
            "roof.worked_before",
            "[{id: EW1, on: 2025-09-01, area: 60 sq ft, how_known: told, section: SX}]",
            "unknown-id",
            ".0.section",
            "",
        ),
    ],
)
def test_a_name_that_nothing_carries_is_refused(
    job_office: Office, path: str, value: str, code: str, at: str, near: str
) -> None:
    text = held(job_office.changed(path, value), code, path + at)
    assert not near or f'Did you mean "{near}"?' in text


@pytest.mark.parametrize(
    ("part", "code", "path", "near"),
    [
        (PERMISSION.format(more=", document: D8"), "unknown-id", "permissions.0.document", ""),
        (APPROVAL.format(more=", document: D8"), "unknown-id", "approvals.0.document", ""),
        (APPROVAL.format(more=", goods: [SHINGLE]"), "unknown-id", "approvals.0.goods.0", "SHINGLES"),
        (ITEM.format(more=", code: irc-2012x"), "unknown-code", "code_items.0.code", "irc-2012"),
        (ITEM.format(more=", figure: work.aera"), "unknown-figure", "code_items.0.figure", "work.area"),
        (ITEM.format(more=", photos_found: [P9]"), "unknown-photo", "code_items.0.photos_found.0", ""),
        (ITEM.format(more="").replace("CI1", "S1"), "duplicate-id", "code_items.0.id", ""),
        (PERMISSION.format(more="").replace("AP1", "I1"), "duplicate-id", "permissions.0.id", ""),
    ],
)
def test_papers_name_what_is_there(job_office: Office, part: str, code: str, path: str, near: str) -> None:
    text = held(job_office.added(part), code, path)
    assert not near or f'Did you mean "{near}"?' in text


def test_a_photo_of_the_log_may_be_named_and_a_mistyped_one_is_answered(
    job_office: Office, shoot: Shoot
) -> None:
    job_office.log(shoot("P17", "deck", "deck-nail"))
    job_office.added(ITEM.format(more=", photos_found: [P17]")).closeout()
    job_office.changed("code_items.CI1.photos_found.0", "P71")
    assert 'Did you mean "P17"?' in held(job_office, "unknown-photo", "code_items.CI1.photos_found.0")


def test_a_paper_may_be_evidence_for_a_requirement_or_a_sheet(job_office: Office) -> None:
    job_office.changed("documents.D2.proves", "[deck-nail, S1]").closeout()
