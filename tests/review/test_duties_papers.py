"""Permit and final inspection anywhere; approvals and corrections by their days."""

from collections.abc import Callable

import pytest

from packet.closeout.redact import redact
from tests.support.duties import day, duty
from tests.support.office import Office

Shoot = Callable[..., dict[str, object]]
APPROVAL = "approvals: [{{id: PA1, product: shingle, number: N-1, by: office{days}}}]"


@pytest.mark.parametrize(
    ("on", "word"),
    [("2026-03-15", "in_order"), ("2026-03-16", "same_day"), ("2026-03-17", "out_of_order")],
)
def test_the_permit_comes_before_the_work(job_office: Office, on: str, word: str) -> None:
    job_office.changed("basis.permit_date", on)
    found = duty(job_office, "permit")
    assert (found.word, found.stated, found.evidence) == ("needed", True, ("D2",))
    assert day(job_office, "permit", "permit_before_work").word == word


def test_a_reason_for_no_permit_stands_and_leaves_none_to_close(job_office: Office) -> None:
    job_office.replaced("  permit: 26-0388\n  permit_date: 2026-03-12\n", "  no_permit: Below one square.\n")
    permit = duty(job_office, "permit")
    assert (permit.word, permit.stated, permit.days) == ("not_needed", True, ())
    assert duty(job_office, "final-visit").word == "not_needed"


def test_neither_permit_nor_reason_is_named_as_missing(job_office: Office) -> None:
    job_office.replaced("  permit: 26-0388\n  permit_date: 2026-03-12\n", "")
    for id in ("permit", "final-visit"):
        found = duty(job_office, id)
        assert (found.word, found.missing) == ("cannot_tell", ("permit_named",))


def test_the_2018_code_asks_a_permit_where_the_record_names_none(job_office: Office) -> None:
    """R105.1 of the 2018 residential code, as a page on inspections quotes it: seen (secondary)."""
    job_office.replaced("  permit: 26-0388\n  permit_date: 2026-03-12\n", "")
    found = duty(job_office.changed("basis.code", "irc-2018"), "permit")
    assert (found.word, found.stated) == ("needed", False)
    assert [(rule.row, rule.caution) for rule in found.rules] == [("irc-2018-permit", True)]
    assert [check.word for check in found.days] == ["not_recorded"]


def test_the_final_visit_is_the_one_that_saw_finished_work(job_office: Office) -> None:
    found = duty(job_office, "final-visit")
    assert (found.word, found.evidence) == ("needed", ("I2",))
    assert day(job_office, "final-visit", "final_after_work").word == "in_order"
    job_office.changed("inspections.I2.stages", "[covering]")
    assert day(job_office, "final-visit", "final_after_work").word == "not_recorded"


def test_a_visit_for_something_else_closes_no_permit(job_office: Office) -> None:
    job_office.changed("inspections.I2.purpose", "windstorm")
    assert day(job_office, "final-visit", "final_after_work").word == "not_recorded"


# Approvals; the demo job started on March 16 and was finished on March 18, 2026.


@pytest.mark.parametrize(
    ("days", "word"),
    [
        (", valid_from: 2026-03-16, valid_until: 2026-03-18", "valid"),
        (", valid_from: 2026-03-17, valid_until: 2026-03-18", "not_valid"),
        (", valid_from: 2026-03-16, valid_until: 2026-03-17", "not_valid"),
        (", valid_until: 2026-03-15", "not_valid"),
        (", valid_until: 2027-03-15", "not_recorded"),
        ("", "not_recorded"),
    ],
)
def test_an_approval_is_held_against_every_day_of_the_work(job_office: Office, days: str, word: str) -> None:
    job_office.added(APPROVAL.format(days=days))
    assert [item.word for item in job_office.closeout().approvals] == [word]
    assert ("approval-not-valid:PA1" in job_office.finding_ids()) is (word == "not_valid")


def test_an_approval_that_ran_out_can_be_explained(job_office: Office) -> None:
    job_office.added(APPROVAL.format(days=", valid_until: 2026-03-15"))
    job_office.added('explained: {"approval-not-valid:PA1": renewed under number N-2}')
    finding = next(f for f in job_office.closeout().findings if f.code == "approval-not-valid")
    assert finding.explanation == "renewed under number N-2"
    assert finding.words == {"1_valid": "… – 2026-03-15", "2_work": "2026-03-16 – 2026-03-18"}


# Corrections


@pytest.mark.parametrize(("taken", "early"), [("2026:03:16 18:00:00", True), ("2026:03:17 12:00:00", False)])
def test_a_photo_from_before_the_visit_shows_no_correction(
    job_office: Office, shoot: Shoot, taken: str, early: bool
) -> None:
    job_office.log(shoot("P1", "deck", "deck-nail", taken=taken))
    job_office.changed("inspections.I1.corrections", "[{asked: Two nails more., photo: P1}]")
    assert ("correction-photo-early:I1" in job_office.finding_ids()) is early


# Copies


def test_a_copy_names_no_paper_and_no_photo_that_it_does_not_hold(job_office: Office, shoot: Shoot) -> None:
    job_office.log({**shoot("P1", "deck", "deck-nail"), "readers": ["office"]})
    job_office.changed("inspections.I1.corrections", "[{asked: Two nails more., photo: P1}]")
    job_office.changed("documents.D2.readers", "[office]")
    job_office.added("permissions: [{id: AP1, kind: other, document: D1}]")
    job_office.added(
        "code_items: [{id: CI1, what: nails, section: R1, trigger: bare, as_found: few, photos_built: [P1]}]"
    )
    closeout = job_office.closeout()
    outside, office = redact(closeout, "outside"), redact(closeout, "office")
    told = {copy["packet"]["reader"]: copy["duties"][0] for copy in (outside, office)}
    assert (told["outside"]["evidence"], told["outside"]["evidence_elsewhere"]) == ([], 1)
    assert (told["office"]["evidence"], told["office"]["evidence_elsewhere"]) == (["D2"], 0)
    assert outside["record"]["inspections"][0]["corrections"][0]["photo"] is None
    assert office["record"]["inspections"][0]["corrections"][0]["photo"] == "P1"
    assert outside["record"]["permissions"][0]["document"] is None
    item = outside["record"]["code_items"][0]
    assert (item["photos_built"], item["photos_built_elsewhere"]) == ([], 1)
