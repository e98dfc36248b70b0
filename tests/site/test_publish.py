"""The output of a job is replaced whole or not at all, whenever the program is killed."""

import os
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from filelock import FileLock

from packet.problems import Refused
from packet.site import publish
from packet.site.exchange import exchange
from packet.site.publish import MARKER_NAME, STAGES, recover, replacing
from tests.support.published import is_whole

Read = Callable[[Path], dict[str, bytes]]

JOB = "26-041"
ROOT = Path(__file__).parents[2]

CHILD = """
import os, signal, sys
from pathlib import Path
from packet.site import publish

out, job, stop_at, can_exchange, text = Path(sys.argv[1]), sys.argv[2], sys.argv[3], sys.argv[4], sys.argv[5]
if can_exchange == "no":
    publish.exchange = lambda one, other: False

def watch(stage):
    if stage == stop_at:
        os.kill(os.getpid(), signal.SIGKILL)

with publish.replacing(out, job, watch=watch) as work:
    for reader in ("office", "outside"):
        (work / reader).mkdir()
        (work / reader / "index.html").write_text(text)
        if stop_at == "half made":
            watch("half made")
"""


def run_child(out: Path, stop_at: str, *, can_exchange: bool, text: str = "new") -> int:
    arguments = [sys.executable, "-c", CHILD, str(out), JOB, stop_at, "yes" if can_exchange else "no", text]
    return subprocess.run(arguments, cwd=ROOT, check=False).returncode


def make(out: Path, text: str) -> Path:
    with replacing(out, JOB) as work:
        for reader in ("office", "outside"):
            (work / reader).mkdir()
            (work / reader / "index.html").write_text(text)
    return out / JOB


def texts(folder: Path) -> set[str]:
    return {(folder / reader / "index.html").read_text() for reader in ("office", "outside")}


def left_over(out: Path) -> list[str]:
    return sorted(path.name for path in out.iterdir() if path.name.startswith((".work-", ".old-")))


@pytest.mark.parametrize("can_exchange", [True, False])
@pytest.mark.parametrize("stage", ["half made", *STAGES])
def test_killed_at_any_stage_the_output_is_whole(tmp_path: Path, stage: str, can_exchange: bool) -> None:
    target = make(tmp_path, "old")
    code = run_child(tmp_path, stage, can_exchange=can_exchange)
    reached = not (can_exchange and stage == "set aside")
    assert code == (-signal.SIGKILL if reached else 0)
    if can_exchange:
        assert is_whole(target), "with an exchange there is no moment without a whole output"
    recover(tmp_path)
    assert is_whole(target)
    done = stage in ("in place", "old removed") or not reached
    assert texts(target) == ({"new"} if done else {"old"})
    assert left_over(tmp_path) == []


@pytest.mark.parametrize("stage", ["half made", *STAGES])
def test_a_first_build_killed_leaves_all_or_nothing(tmp_path: Path, stage: str) -> None:
    run_child(tmp_path, stage, can_exchange=True)
    recover(tmp_path)
    target = tmp_path / JOB
    assert target.exists() == (stage in ("set aside", "in place", "old removed"))
    assert not target.exists() or (is_whole(target) and texts(target) == {"new"})
    assert left_over(tmp_path) == []


def test_the_next_build_repairs_what_a_killed_one_left(tmp_path: Path) -> None:
    make(tmp_path, "old")
    run_child(tmp_path, "set aside", can_exchange=False)
    assert not (tmp_path / JOB).exists()
    with pytest.raises(RuntimeError), replacing(tmp_path, JOB):
        raise RuntimeError
    assert texts(tmp_path / JOB) == {"old"}
    assert left_over(tmp_path) == []


@pytest.mark.parametrize("can_exchange", [True, False])
def test_a_build_replaces_the_whole_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, can_exchange: bool
) -> None:
    if not can_exchange:
        monkeypatch.setattr(publish, "exchange", lambda one, other: False)
    seen: list[str] = []
    target = make(tmp_path, "old")
    with replacing(tmp_path, JOB, watch=seen.append) as work:
        (work / "only.html").write_text("x")
    assert sorted(path.name for path in target.iterdir()) == [MARKER_NAME, "only.html"]
    assert seen == [stage for stage in STAGES if stage != "set aside" or not can_exchange]
    assert left_over(tmp_path) == []


def test_a_build_that_fails_leaves_the_previous_output(tmp_path: Path, contents: Read) -> None:
    target = make(tmp_path, "old")
    before = contents(target)
    with pytest.raises(ZeroDivisionError), replacing(tmp_path, JOB) as work:
        (work / "half.html").write_bytes(b"x" * (1 // 0))
    assert contents(target) == before
    assert left_over(tmp_path) == []


def test_a_second_rename_that_fails_puts_the_old_output_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = make(tmp_path, "old")
    monkeypatch.setattr(publish, "exchange", lambda one, other: False)
    rename = Path.rename

    def refuse(self: Path, to: Path) -> Path:
        if self.name.startswith(".work-"):
            raise PermissionError
        return rename(self, to)

    monkeypatch.setattr(Path, "rename", refuse)
    with pytest.raises(PermissionError):
        make(tmp_path, "new")
    assert texts(target) == {"old"}
    assert left_over(tmp_path) == []


def test_a_folder_without_our_marker_is_never_replaced(tmp_path: Path) -> None:
    (tmp_path / JOB).mkdir()
    (tmp_path / JOB / "thesis.txt").write_text("mine")
    with pytest.raises(Refused) as refused:
        make(tmp_path, "new")
    (problem,) = refused.value.problems
    assert (problem.code, problem.found) == ("output-foreign", "thesis.txt")
    assert (tmp_path / JOB / "thesis.txt").read_text() == "mine"
    assert left_over(tmp_path) == []


@pytest.mark.parametrize("name", ["notes.txt", "outside/notes.txt"])
def test_a_file_that_someone_put_into_our_output_is_never_lost(tmp_path: Path, name: str) -> None:
    target = make(tmp_path, "old")
    (target / name).write_text("mine")
    with pytest.raises(Refused):
        make(tmp_path, "new")
    assert (target / name).read_text() == "mine"
    assert texts(target) == {"old"}


def test_a_file_put_there_during_the_build_is_never_lost(tmp_path: Path) -> None:
    target = make(tmp_path, "old")
    with pytest.raises(Refused), replacing(tmp_path, JOB):
        (target / "notes.txt").write_text("mine")
    assert (target / "notes.txt").read_text() == "mine"


def test_what_a_file_browser_drops_is_no_hindrance(tmp_path: Path) -> None:
    target = make(tmp_path, "old")
    (target / ".DS_Store").write_text("")
    make(tmp_path, "new")
    assert texts(target) == {"new"}


def test_an_empty_folder_is_taken_and_a_link_or_a_file_is_not(tmp_path: Path) -> None:
    (tmp_path / JOB).mkdir()
    assert texts(make(tmp_path, "new")) == {"new"}
    elsewhere = tmp_path / "elsewhere"
    (tmp_path / JOB).rename(elsewhere)
    (tmp_path / JOB).symlink_to(elsewhere)
    with pytest.raises(Refused):
        make(tmp_path, "newer")
    assert texts(elsewhere) == {"new"}
    (tmp_path / JOB).unlink()
    (tmp_path / JOB).write_text("mine")
    with pytest.raises(Refused):
        make(tmp_path, "newer")


def test_a_running_build_is_left_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(publish, "_PATIENCE_S", 0.05)
    (tmp_path / f".work-{JOB}-0011aabb").mkdir()
    with FileLock(tmp_path / f".lock-{JOB}"):
        assert recover(tmp_path) == ()
        assert left_over(tmp_path) == [f".work-{JOB}-0011aabb"]
        with pytest.raises(Refused) as refused:
            make(tmp_path, "new")
        assert refused.value.problems[0].code == "job-busy"
    assert recover(tmp_path) == (JOB,)
    assert left_over(tmp_path) == []


def test_only_our_own_left_overs_are_swept(tmp_path: Path) -> None:
    (tmp_path / ".workshop").mkdir()
    (tmp_path / "26-042").mkdir()
    (tmp_path / ".work-26-0410-0011aabb").mkdir()
    (tmp_path / "target").mkdir()
    (tmp_path / f".work-{JOB}-99").symlink_to(tmp_path / "target")
    make(tmp_path, "new")
    kept = {".workshop", "26-042", ".work-26-0410-0011aabb", "target", f".work-{JOB}-99", JOB}
    assert kept <= {path.name for path in tmp_path.iterdir()}
    assert recover(tmp_path) == ("26-0410",)


def test_recovering_where_nothing_was_built_does_nothing(tmp_path: Path) -> None:
    assert recover(tmp_path / "out") == ()
    assert not (tmp_path / "out").exists()


def test_whole_means_every_published_file_in_its_size(tmp_path: Path) -> None:
    target = make(tmp_path, "old")
    assert is_whole(target)
    page = target / "office" / "index.html"
    page.write_text("shorter or longer")
    assert not is_whole(target)
    page.unlink()
    assert not is_whole(target)
    assert not is_whole(tmp_path / "nowhere")
    (target / MARKER_NAME).write_text("not a list")
    assert not is_whole(target)


@pytest.mark.parametrize("job", ["", "..", "../x", "a/b", "a\\b", ".work-x", "a\0", "/x"])
def test_a_job_that_is_no_folder_name_is_refused(tmp_path: Path, job: str) -> None:
    with pytest.raises(ValueError, match="folder name"), replacing(tmp_path, job):
        pass


def test_a_job_folder_may_have_spaces_and_letters_of_any_kind(tmp_path: Path) -> None:
    name = "26-041 Büro - east (2)"
    (tmp_path / f".work-{name}-0011aabb").mkdir()
    with replacing(tmp_path, name) as work:
        (work / "index.html").write_text("x")
    assert is_whole(tmp_path / name)
    assert left_over(tmp_path) == []


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the call is Linux's")
def test_two_folders_change_places(tmp_path: Path) -> None:
    for name in ("a", "b"):
        (tmp_path / name).mkdir()
        (tmp_path / name / name).write_text("")
    assert exchange(tmp_path / "a", tmp_path / "b")
    assert os.listdir(tmp_path / "a") == ["b"]  # noqa: PTH208
    with pytest.raises(FileNotFoundError):
        exchange(tmp_path / "a", tmp_path / "nowhere")
