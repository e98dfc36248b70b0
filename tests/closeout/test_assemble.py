"""What one file cannot know of another is refused at its place, and every file's problems come at once."""

import shutil
from collections.abc import Callable
from typing import Any

import pytest

from tests.support.office import NUMBER, ROOT, Office

Shoot = Callable[..., dict[str, Any]]


@pytest.mark.parametrize(
    ("path", "value", "nearest"),
    [
        ("basis.code", "IRC 2021", "irc-2021"),
        ("basis.code", "The town's code", ""),
        ("basis.practices.1", "arma-nail", "arma-nails"),
        ("basis.programs", "[ibhs-high-wind]", "ibhs-high-wind-2025"),
    ],
)
def test_a_code_that_no_file_states_is_refused(
    job_office: Office, path: str, value: str, nearest: str
) -> None:
    problems = job_office.changed(path, value).problems()
    where = path if path != "basis.programs" else "basis.programs.0"
    assert [(p.code, (p.line, p.column)) for p in problems] == [("unknown-code", job_office.place(where))]
    assert problems[0].values["nearest"].startswith(nearest)
    assert bool(problems[0].values["nearest"]) == bool(nearest)


def test_a_reason_for_a_requirement_nobody_knows_is_refused_at_its_key(job_office: Office) -> None:
    problems = job_office.changed("not_recorded.deck-nails", "forgot").problems()
    place = job_office.place("not_recorded.deck-nails", key=True)
    assert [(p.code, (p.line, p.column)) for p in problems] == [("unknown-requirement", place)]
    assert problems[0].values["nearest"] == "deck-nail"


def test_a_way_out_of_a_requirement_nobody_knows_is_refused(job_office: Office) -> None:
    job_office.added("ways_out: [{requirement: felt-laps, kind: explained, text: x}]")
    place = job_office.place("ways_out.0.requirement")
    assert job_office.places() == [("job.yaml", "unknown-requirement", *place)]


def test_a_photo_of_a_plane_the_record_has_not_is_refused(job_office: Office, shoot: Shoot) -> None:
    job_office.log(shoot("P1", "deck"), shoot("P2", "deck", plane="MX"))
    place = job_office.place("photos.1.plane", file="photos.yaml")
    problems = job_office.problems()
    assert [(p.code, p.found, (p.line, p.column)) for p in problems] == [("unknown-id", "MX", place)]
    assert problems[0].values["accepted"] == "DR, MN, MS, WE, WW"


def test_a_photo_that_proves_nothing_the_job_has_is_refused(job_office: Office, shoot: Shoot) -> None:
    job_office.log(shoot("P1", "deck", "deck-nail", "deck-nail-edge-spaceing", "S9"))
    places = [job_office.place(f"photos.0.proves.{n}", file="photos.yaml") for n in (1, 2)]
    problems = job_office.problems()
    assert [(p.code, (p.line, p.column)) for p in problems] == [("unknown-proof", place) for place in places]
    assert problems[0].values["nearest"] == "deck-nail-edge-spacing"


def test_a_photo_may_prove_a_requirement_a_sheet_a_detail_a_find_and_a_framing_piece(
    job_office: Office, shoot: Shoot
) -> None:
    proves = ("hand-seal", "S4", "V1", "F2", "R1")
    assert job_office.log(shoot("P1", "deck", *proves)).closeout().photos[0].proves == proves


def test_the_problems_of_every_file_come_in_one_pass(job_office: Office, shoot: Shoot) -> None:
    job_office.changed("deck.edge_spacing", "6").changed("dates.started", "yesterday")
    job_office.log({**shoot("P1", "deck"), "file": "../P1.jpg"}, {**shoot("P2", "deck"), "file": "P2.jpg"})
    job_office.file("shared/office.yaml", "name: Pike and Gannet Roofing\nfone: 843-555-0142\n")
    job_office.file("shared/codes/town.yaml", "code: village\n")
    job_office.file("shared/tables/gaps.yaml", "table: [\n")
    found = {(file, code) for file, code, _, _ in job_office.places()}
    assert found >= {
        ("job.yaml", "no-unit"),
        ("job.yaml", "bad-date"),
        ("photos.yaml", "path-leaves-job"),
        ("photos.yaml", "photo-missing"),
        ("office.yaml", "unknown-key"),
        ("office.yaml", "missing"),
        ("town.yaml", "missing"),
    }
    assert "gaps.yaml" in {file for file, _ in found}


def test_an_office_without_its_card_is_refused(job_office: Office) -> None:
    (job_office.root / "shared" / "office.yaml").unlink()
    assert [(p.file.name, p.code) for p in job_office.problems()] == [("office.yaml", "file-missing")]


def test_a_photo_is_published_under_its_id_and_its_bytes(job_office: Office, shoot: Shoot) -> None:
    entry = shoot("P1", "deck")
    (job_office.job / "photos" / "P1.jpg").rename(job_office.job / "photos" / "phone 555-0107.jpg")
    photo = job_office.log({**entry, "file": "photos/phone 555-0107.jpg"}).closeout().photos[0]
    digest = photo.original_sha256[:8]
    assert (photo.large, photo.small) == (f"photos/p1-{digest}.jpg", f"photos/p1-{digest}-small.jpg")


@pytest.mark.parametrize(("built", "more"), [("1930", True), ("2024", False)])
def test_care_notes_for_old_houses_are_for_old_houses(job_office: Office, built: str, more: bool) -> None:
    usual = {note.id for note in job_office.changed("property.built", "2024").closeout().care}
    here = {note.id for note in job_office.changed("property.built", built).closeout().care}
    assert (here > usual) is more


def test_assembling_twice_gives_the_same_closeout_and_writes_nothing(
    job_office: Office, shoot: Shoot
) -> None:
    job_office.log(shoot("P1", "deck", "S1"))
    before = sorted(path for path in job_office.root.rglob("*"))
    assert job_office.closeout() == job_office.closeout()
    assert sorted(path for path in job_office.root.rglob("*")) == before


def test_the_office_may_lie_anywhere(job_office: Office) -> None:
    away = job_office.root.parent / "another place"
    shutil.copytree(job_office.root, away)
    here = job_office.closeout()
    job_office.root = away
    job_office.job = away / "jobs" / NUMBER
    assert job_office.closeout() == here
    assert str(ROOT) not in str(here.packet.reference)
