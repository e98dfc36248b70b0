"""A photo without stage or caption waits: it is looked at, proves nothing and stands in no copy."""

from collections.abc import Callable
from typing import Any

import pytest

from packet.build import build
from packet.photos.taken import take_photos, waiting_photos
from packet.readers import READERS
from tests.cli.conftest import Run
from tests.cli.conftest import run as run
from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]


def without(entry: dict[str, Any], *keys: str) -> dict[str, Any]:
    return {name: value for name, value in entry.items() if name not in keys}


@pytest.mark.parametrize("lacks", [("stage",), ("shows",), ("stage", "shows")])
def test_a_waiting_photo_proves_nothing_until_it_has_its_words(
    job_office: Office, shoot: Shoot, lacks: tuple[str, ...]
) -> None:
    whole = shoot("P1", "deck", "deck-nail")
    job_office.log(without(whole, *lacks))
    assert job_office.closeout().photos == ()
    assert job_office.result("deck-nail").evidence == ()
    assert waiting_photos(job_office.job)[0].lacks == lacks
    job_office.log(whole)
    assert [photo.id for photo in job_office.closeout().photos] == ["P1"]
    assert job_office.result("deck-nail").evidence == ("P1",)
    assert waiting_photos(job_office.job) == ()


def test_an_empty_key_waits_like_one_that_is_not_there(job_office: Office, shoot: Shoot) -> None:
    job_office.log({**shoot("P1", "deck"), "shows": None})
    assert [photo.lacks for photo in waiting_photos(job_office.job)] == [("shows",)]


def test_an_empty_caption_in_quotation_marks_is_still_refused(job_office: Office, shoot: Shoot) -> None:
    job_office.log({**shoot("P1", "deck"), "shows": ""})
    assert [problem.code for problem in job_office.problems()] == ["too-short"]


def test_a_waiting_photo_is_in_no_copy_and_does_not_stop_a_build(job_office: Office, shoot: Shoot) -> None:
    job_office.log(shoot("P1", "deck"), without(shoot("P2WAITS", "deck", taken_by="Nobody Yet"), "shows"))
    built = build(job_office.workspace, job_office.job)
    for reader in READERS:
        copy = built.copies[reader].parent
        assert len(list((copy / "photos").iterdir())) == 2
        assert 'id="P1"' in (copy / "photos.html").read_text("utf-8")
        for path in copy.rglob("*"):
            if path.is_file():
                assert b"P2WAITS" not in path.read_bytes(), path
                assert b"Nobody Yet" not in path.read_bytes(), path


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"sha256": "0" * 64}, "photo-changed"),
        ({"file": "photos/away.jpg"}, "photo-missing"),
        ({"file": "../P1.jpg"}, "path-leaves-job"),
        ({"plane": "ZZ"}, "unknown-id"),
        ({"proves": ["nothing"]}, "unknown-proof"),
    ],
)
def test_a_waiting_photo_is_looked_at_like_any_other(
    job_office: Office, shoot: Shoot, change: dict[str, Any], code: str
) -> None:
    job_office.log({**without(shoot("P1", "deck"), "shows"), **change})
    assert [problem.code for problem in job_office.problems()] == [code]


def test_check_lists_what_waits_with_its_place_and_is_not_upset(
    job_office: Office, shoot: Shoot, run: Run
) -> None:
    before = run(job_office.root, "check")
    job_office.log(without(shoot("P1", "deck"), "stage", "shows"), {**shoot("P2", "deck"), "shows": None})
    ran = run(job_office.root, "check")
    assert (ran.code, ran.err) == (before.code, "")
    assert ran.out == before.out + (
        "  2 photos wait for words in the log; until then no copy carries them:\n"
        "    P1 jobs/26-041/photos.yaml:2: write stage and shows (photos/P1.jpg)\n"
        "    P2 jobs/26-041/photos.yaml:3: write shows (photos/P2.jpg)\n"
    )
    assert run(job_office.root, "check", "-q").out == ""


def test_the_order_of_the_log_is_kept_around_what_waits(job_office: Office, shoot: Shoot) -> None:
    job_office.log(shoot("P1", "deck"), without(shoot("P2", "deck"), "stage"), shoot("P3", "done"))
    assert [photo.entry.id for photo in take_photos(job_office.job).photos] == ["P1", "P3"]
