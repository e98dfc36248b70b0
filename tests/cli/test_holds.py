"""``packet holds``: which jobs, in which order, what waits; kept between runs and never stale."""

import hashlib
import json
import os
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import pytest
import yaml

from packet import holding
from packet.cli.main import EXIT_BAD
from packet.reference import Library
from tests.cli.conftest import Run
from tests.support.office import Office, as_yaml, copy_job
from tests.support.yamltext import with_value

Shoot = Callable[..., dict[str, Any]]


def job(office: Office, number: str, **changes: str) -> Path:
    """Copy the office's job with values changed; a path is written with __ for its dots."""
    folder = copy_job(office, number)
    text = (folder / "job.yaml").read_text(encoding="utf-8")
    for path, value in changes.items():
        text = with_value(text, path.replace("__", "."), value)
    (folder / "job.yaml").write_text(text, encoding="utf-8")
    return folder


@pytest.fixture
def office(job_office: Office, shoot: Shoot) -> Office:
    """A closed job, one dried in, one whose deck lies open, and a planned one."""
    damage = [
        shoot(f"D{n}", "before", "damage-as-found", taken="2026:03:09 09:10:00", view=view)
        for n, view in enumerate(("wide", "close"))
    ]
    job_office.log(*damage, shoot("P1", "deck", "deck-nail"))
    job(job_office, "26-050", job__status="under way", dates="{started: 2026-03-16, dried_in: 2026-03-17}")
    job(job_office, "26-051", job__status="under way", dates="{started: 2026-03-16}")
    planned = job(job_office, "26-052", job__status="planned", job__kind="re-roof", dates="{}")
    (planned / "photos.yaml").unlink()
    return job_office


def data(run: Run, office: Office, *arguments: str) -> list[dict[str, Any]]:
    ran = run(office.root, "holds", "--json", *arguments)
    assert (ran.code, ran.err) == (0, "")
    whole = json.loads(ran.out)
    assert (whole["format"], whole["version"]) == ("roof-hold-points", 1)
    jobs: list[dict[str, Any]] = whole["jobs"]
    return jobs


def test_open_jobs_stand_by_what_is_covered_next_and_closed_ones_are_left_out(
    office: Office, run: Run
) -> None:
    found = [(job["job"], job["status"], job["next"]["before"]) for job in data(run, office)]
    assert found == [
        ("26-051", "under way", "dried-in"),
        ("26-050", "under way", "covering"),
        ("26-052", "planned", "stripped"),
    ]


def test_a_closed_job_is_listed_when_it_is_named(office: Office, run: Run) -> None:
    assert [(job["job"], job["next"]) for job in data(run, office, "26-041")] == [("26-041", None)]


def test_the_next_hold_point_says_what_to_show_and_how(office: Office, run: Run) -> None:
    lines = run(office.root, "holds", "26-051").out.splitlines()
    assert lines[0] == "26-051: 18 Heron Lane, Pellam Reach; patch repair, under way"
    assert lines[1] == "  Before the underlayment goes on:"
    assert any(
        line.startswith("    Deck nails, spacing at panel edges: Tape along an edge row") for line in lines
    )
    assert "deck-nail]" not in " ".join(lines), "what was shown waits no longer"


def test_what_was_covered_before_it_was_shown_is_counted(office: Office, run: Run) -> None:
    first = run(office.root, "holds", "26-050").out.splitlines()[0]
    assert first.endswith("; 6 covered before it was shown")


def test_what_may_still_come_stands_apart(office: Office, run: Run) -> None:
    points = data(run, office, "26-052")[0]["points"]
    sheets = [item for point in points for item in point["items"] if item["requirement"] == "bad-sheets"]
    assert {item["subject"] for item in sheets} == {"S1", "S2", "S3", "S4"}
    office.write(office.text)
    job(office, "26-053", job__status="planned", job__kind="re-roof", dates="{}", deck="null")
    points = data(run, office, "26-053")[0]["points"]
    sheets = [item for point in points for item in point["items"] if item["requirement"] == "bad-sheets"]
    assert [(item["subject"], item["only_if"]) for item in sheets] == [("", "no_deck_replaced")]


def test_a_job_that_can_not_be_read_does_not_hide_the_others(office: Office, run: Run) -> None:
    (office.root / "jobs" / "26-051" / "job.yaml").write_text("job: {number: 26-051}\n", encoding="utf-8")
    ran = run(office.root, "holds")
    assert ran.code == EXIT_BAD
    assert "26-050: " in ran.out
    assert "jobs/26-051/job.yaml:1" in ran.err


def test_an_office_without_an_open_job_says_so(job_office: Office, run: Run) -> None:
    assert run(job_office.root, "holds").out == "No open job.\n"


# What is kept


def times_read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    read: list[str] = []
    whole = holding._of_job

    def counted(root: Path, key: str, closed_too: bool, folder: Path) -> holding.JobHolds:
        read.append(folder.name)
        return whole(root, key, closed_too, folder)

    monkeypatch.setattr(holding, "_of_job", counted)
    return read


def test_what_did_not_change_is_not_read_again_and_says_the_same(
    office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    read = times_read(monkeypatch)
    first = run(office.root, "holds", "--json").out
    assert len(read) == 4
    assert run(office.root, "holds", "--json").out == first
    assert len(read) == 4


def test_the_library_is_loaded_once_for_all_jobs(
    office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    loaded: list[tuple[Path, ...]] = []
    load = Library.load

    def counted(folders: Sequence[Path]) -> Library:
        loaded.append(tuple(folders))
        return load(folders)

    monkeypatch.setattr(Library, "load", counted)
    assert len(data(run, office)) == 3
    assert len(loaded) == 2  # the command's own, and the one of the jobs


def test_a_changed_record_is_read_again_and_alone(
    office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    data(run, office)
    read = times_read(monkeypatch)
    path = office.root / "jobs" / "26-051" / "job.yaml"
    path.write_text(with_value(path.read_text(encoding="utf-8"), "job.status", "closed"), encoding="utf-8")
    assert [job["job"] for job in data(run, office)] == ["26-050", "26-052"]
    assert read == ["26-051"]


def test_a_closed_job_that_was_passed_over_is_worked_out_once_it_is_named(office: Office, run: Run) -> None:
    data(run, office)
    named = data(run, office, "26-041")[0]["points"]
    assert [point["before"] for point in named][:2] == ["deck", "dried-in"]
    data(run, office)
    assert data(run, office, "26-041")[0]["points"] == named


def test_photos_of_a_closed_job_are_not_looked_at_until_it_is_named(office: Office, run: Run) -> None:
    (office.root / "jobs" / "26-041" / "photos" / "P1.jpg").unlink()
    assert "26-041" not in [job["job"] for job in data(run, office)]
    assert run(office.root, "holds", "26-041").code == EXIT_BAD


def test_of_a_photo_only_the_cameras_notes_are_read(office: Office, run: Run) -> None:
    """Thousands of photos of several megabytes each can't be read to the end for a list of the day."""
    folder = office.root / "jobs" / "26-051"
    entries = yaml.safe_load((folder / "photos.yaml").read_text(encoding="utf-8"))["photos"]
    for entry in entries:
        entry["sha256"] = hashlib.sha256((folder / entry["file"]).read_bytes()).hexdigest()
    (folder / "photos.yaml").write_text(as_yaml({"photos": entries}), encoding="utf-8")
    first = data(run, office, "26-051")
    photo = folder / "photos" / "P1.jpg"
    photo.write_bytes(photo.read_bytes() + b"one byte more")
    assert data(run, office, "26-051") == first
    ran = run(office.root, "check", "26-051")
    assert (ran.code, "is not the one that was logged" in ran.err) == (EXIT_BAD, True)


def test_a_photo_that_is_gone_is_noticed(office: Office, run: Run) -> None:
    data(run, office)
    (office.root / "jobs" / "26-051" / "photos" / "P1.jpg").unlink()
    ran = run(office.root, "holds")
    assert (ran.code, "photo" in ran.err) == (EXIT_BAD, True)


def test_a_changed_rule_of_the_office_is_noticed(
    office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    data(run, office)
    read = times_read(monkeypatch)
    office.file("shared/sources.yaml", 'town: {document: Ordinance, edition: "2026"}\n')
    data(run, office)
    assert len(read) == 4


@pytest.mark.parametrize("held", ["", "[]", '{"key": 1}', "\x00", '{"key": "x", "jobs": {"26-050": 3}}'])
def test_a_spoiled_file_of_what_was_kept_costs_nothing_but_time(office: Office, run: Run, held: str) -> None:
    first = data(run, office)
    (office.root / "out" / holding.KEPT).write_text(held, encoding="utf-8")
    assert data(run, office) == first


def test_an_entry_of_another_shape_under_the_same_key_is_read_anew(office: Office, run: Run) -> None:
    first = data(run, office)
    path = office.root / "out" / holding.KEPT
    kept = json.loads(path.read_text(encoding="utf-8"))
    kept["jobs"]["26-050"]["job"] = {"folder": "26-050", "colour": "red"}
    path.write_text(json.dumps(kept), encoding="utf-8")
    assert data(run, office) == first


@pytest.mark.skipif(os.name == "nt", reason="permissions of another kind")
def test_a_disk_that_may_not_be_written_still_answers(
    office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*arguments: object, **more: object) -> None:
        raise PermissionError(13, "refused")

    monkeypatch.setattr(holding, "placing", refuse)
    assert len(data(run, office)) == 3
    assert not (office.root / "out" / holding.KEPT).exists()


def test_many_jobs_are_read_by_several_processes_to_the_same_end(
    office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    alone = data(run, office)
    (office.root / "out" / holding.KEPT).unlink()
    monkeypatch.setattr(holding, "ALONE_UP_TO", 1)
    assert data(run, office) == alone


def test_an_office_whose_only_job_has_a_mistake_is_not_said_to_have_none(
    job_office: Office, run: Run
) -> None:
    job_office.changed("job.kind", "pach")
    ran = run(job_office.root, "holds")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.rstrip().endswith("1 error in 1 file.")


def test_what_was_covered_unshown_is_said_in_words(office: Office, run: Run) -> None:
    out = run(office.root, "holds", "--all").out
    assert ": covered before it was shown" in out
    assert "{number}" not in out
