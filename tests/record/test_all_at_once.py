"""One mistake never hides another: fields, parts held together and other files are told in one go."""

from collections.abc import Callable
from typing import Any

from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]


def told(office: Office) -> set[tuple[str, str]]:
    return {(problem.code, problem.at) for problem in office.problems()}


def test_a_wrong_field_hides_neither_codes_nor_planes_nor_days(job_office: Office) -> None:
    job_office.changed("deck.edge_spacing", "6").changed("basis.code", "irc-2022")
    job_office.changed("details.C1.plane", "XX").changed("warranty.W1.until", "2026-03-17")
    assert told(job_office) == {
        ("no-unit", "deck.edge_spacing"),
        ("unknown-code", "basis.code"),
        ("unknown-id", "details[1].plane"),
        ("dates-out-of-order", "warranty[0].until"),
    }


def test_places_stay_right_behind_an_entry_that_was_refused(job_office: Office) -> None:
    job_office.changed("details.V1.kind", "gully").changed("details.K1.plane", "XX")
    line, column = job_office.place("details.K1.plane")
    assert ("job.yaml", "unknown-id", line, column) in job_office.places()
    assert len(job_office.problems()) == 2


def test_what_a_refused_part_names_is_not_unknown_as_well(job_office: Office) -> None:
    job_office.changed("roof.planes.MS.pitch", "steep")
    assert told(job_office) == {("bad-pitch", "roof.planes[0].pitch")}


def test_a_photo_of_a_refused_sheet_is_no_second_mistake(job_office: Office, shoot: Shoot) -> None:
    job_office.changed("deck.sheets.S1.along", "wide").log(shoot("P01", "deck", "S1", "S9"))
    assert [problem.found for problem in job_office.problems() if problem.code == "unknown-proof"] == ["S9"]


def test_a_file_with_nothing_left_to_stand_on_says_only_what_is_wrong(job_office: Office) -> None:
    text = job_office.text.replace("property:", "propertie:", 1)
    assert [problem.code for problem in job_office.write(text).problems()] == ["unknown-key"]
