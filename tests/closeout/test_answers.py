"""What a record says of requirements by name: reasons for what is shown, and parts nothing is judged for."""

from collections.abc import Callable
from typing import Any

import pytest

from packet.located import read_catalogue
from packet.problems import message
from packet.workspace import packaged
from tests.support.office import Office

SENTENCES = read_catalogue(packaged("shared") / "words" / "problems.yaml")
Shoot = Callable[..., dict[str, Any]]


def held(office: Office, code: str, path: str, *, key: bool) -> str:
    problems = office.problems()
    assert [(p.code, p.line, p.column) for p in problems] == [(code, *office.place(path, key=key))]
    return " ".join(message(problems[0], SENTENCES))


# A reason why something was not recorded


def test_a_reason_for_what_is_recorded_and_shown_is_refused_at_its_key(
    job_office: Office, shoot: Shoot
) -> None:
    job_office.log(shoot("P17", "deck", "deck-nail")).changed("not_recorded.deck-nail", "forgot")
    text = held(job_office, "reason-though-shown", "not_recorded.deck-nail", key=True)
    assert 'why "deck-nail" was not recorded, and P17 shows it as it is recorded' in text


def test_a_value_that_differs_and_is_shown_is_recorded_too(job_office: Office, shoot: Shoot) -> None:
    job_office.log(shoot("P17", "deck", "deck-nail-field-spacing")).changed("deck.field_spacing", "7 in")
    job_office.changed("not_recorded.deck-nail-field-spacing", "no access")
    held(job_office, "reason-though-shown", "not_recorded.deck-nail-field-spacing", key=True)


def test_a_paper_shows_it_as_well(job_office: Office) -> None:
    job_office.changed("documents.D2.proves", "[paid]").changed("money.paid", "USD 100.00")
    job_office.changed("not_recorded.paid", "forgot")
    text = held(job_office, "reason-though-shown", "not_recorded.paid", key=True)
    assert "D2" in text


@pytest.mark.parametrize("name", ["deck-sheets", "'deck-sheets:S2'"])
def test_a_reason_for_the_sheets_nobody_photographed_is_taken(
    job_office: Office, shoot: Shoot, name: str
) -> None:
    """Of four sheets one is shown: the reason speaks of the others."""
    job_office.log(shoot("P17", "deck", "S1"))
    job_office.write(
        job_office.text.replace("not_recorded:\n", f"not_recorded:\n  {name}: rain was coming\n")
    )
    job_office.closeout()


def test_a_reason_for_one_sheet_that_is_shown_is_refused(job_office: Office, shoot: Shoot) -> None:
    job_office.log(shoot("P17", "deck", "S1"))
    job_office.write(
        job_office.text.replace("not_recorded:\n", "not_recorded:\n  deck-sheets:S1: rain was coming\n")
    )
    assert [(p.code, p.found) for p in job_office.problems()] == [("reason-though-shown", "deck-sheets:S1")]


def test_one_reason_for_all_sheets_and_another_for_one_are_no_two_answers(job_office: Office) -> None:
    """The one for a sheet speaks of that sheet, the other of the rest."""
    reasons = "not_recorded:\n  deck-sheets: no access\n  deck-sheets:S1: forgot\n"
    job_office.write(job_office.text.replace("not_recorded:\n", reasons))
    assert [job_office.result("deck-sheets", sheet).reason for sheet in ("S1", "S2")] == [
        "forgot",
        "no access",
    ]


def test_a_photo_from_after_the_layer_was_covered_leaves_the_reason_standing(
    job_office: Office, shoot: Shoot
) -> None:
    job_office.log(shoot("P17", "done", "deck-nail")).changed("not_recorded.deck-nail", "forgot").closeout()


def test_a_reason_for_what_does_not_apply_is_taken(job_office: Office) -> None:
    job_office.changed("not_recorded.deck-nail-gable-spacing", "no gable here").closeout()


# Parts of the work


def test_a_sheet_that_is_not_there_is_answered_with_the_nearest(job_office: Office) -> None:
    job_office.added("ways_out: [{requirement: 'deck-sheets:S9', kind: explained, text: x}]")
    text = held(job_office, "unknown-subject", "ways_out.0.requirement", key=False)
    assert 'deck-sheets is not judged for "S9"' in text
    assert 'Did you mean "deck-sheets:S' in text
    assert "deck-sheets:S1, deck-sheets:S2, deck-sheets:S3, deck-sheets:S4" in text


def test_a_reason_for_a_sheet_that_is_not_there_is_refused_at_its_key(job_office: Office) -> None:
    job_office.write(job_office.text.replace("not_recorded:\n", "not_recorded:\n  deck-sheets:S9: forgot\n"))
    assert [(p.code, p.found) for p in job_office.problems()] == [("unknown-subject", "deck-sheets:S9")]


@pytest.mark.parametrize("name", ["deck-nail:S1", "deck-sheets:V1", "before-planes:XX"])
def test_a_part_that_the_requirement_is_not_judged_for_is_refused(job_office: Office, name: str) -> None:
    job_office.changed("inspections.I1.corrections", f"[{{asked: Nails., requirement: '{name}'}}]")
    held(job_office, "unknown-subject", "inspections.I1.corrections.0.requirement", key=False)


def test_a_part_that_a_refused_entry_carries_is_not_unknown(job_office: Office) -> None:
    job_office.changed("deck.sheets.S1.along", "8")
    job_office.added("ways_out: [{requirement: 'deck-sheets:S1', kind: explained, text: x}]")
    assert {problem.code for problem in job_office.problems()} == {"no-unit"}
