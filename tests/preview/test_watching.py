"""Waiting for changes: every kind of change ends the wait, and none of what is not one."""

import os
import threading
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from packet.preview.watching import Watch, look

#: Longer than any wait for a change that is there [s].
PATIENCE_S = 10.0


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name in ("job.yaml", "photos/P01.jpg"):
        path = tmp_path / "job" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("one")
    return tmp_path / "job"


def ends(watch: Watch) -> threading.Thread:
    """Start a wait beside the test."""
    waiting = threading.Thread(target=watch.wait, daemon=True)
    waiting.start()
    return waiting


CHANGES: dict[str, Callable[[Path], object]] = {
    "written": lambda folder: (folder / "job.yaml").write_text("two and more"),
    "same size": lambda folder: os.utime(folder / "job.yaml", (1, 1)),
    "replaced": lambda folder: (folder.parent / "new").rename(folder / "job.yaml"),
    "added": lambda folder: (folder / "photos" / "P02.jpg").write_text("two"),
    "removed": lambda folder: (folder / "photos" / "P01.jpg").unlink(),
    "renamed": lambda folder: (folder / "photos").rename(folder / "pictures"),
    "folder gone": lambda folder: folder.rename(folder.parent / "elsewhere"),
    "folder of the office made": lambda folder: (folder.parent / "templates" / "a.j2").write_text("x"),
}


@pytest.mark.parametrize("change", CHANGES)
def test_a_change_ends_the_wait(folder: Path, change: str) -> None:
    (folder.parent / "new").write_text("two")
    watch = Watch([folder, folder.parent / "templates"])
    (folder.parent / "templates").mkdir()
    waiting = ends(watch)
    waiting.join(0.7)
    assert waiting.is_alive(), "nothing has changed yet"
    CHANGES[change](folder)
    waiting.join(PATIENCE_S)
    assert not waiting.is_alive()


def test_a_change_made_between_two_waits_is_not_lost(folder: Path) -> None:
    watch = Watch([folder])
    (folder / "job.yaml").write_text("changed while a build ran")
    waiting = ends(watch)
    waiting.join(PATIENCE_S)
    assert not waiting.is_alive()


def test_a_folder_taken_away_and_put_back_is_watched_again(folder: Path) -> None:
    watch = Watch([folder])
    away = folder.rename(folder.parent / "away")
    waiting = ends(watch)
    waiting.join(PATIENCE_S)
    away.rename(folder)
    waiting = ends(watch)
    waiting.join(PATIENCE_S)
    assert not waiting.is_alive()


def test_it_waits_until_files_are_still(folder: Path) -> None:
    watch = Watch([folder])
    waiting = ends(watch)
    begun = time.monotonic()
    while time.monotonic() - begun < 1.5:
        (folder / "job.yaml").write_text("x" * int((time.monotonic() - begun) * 1000))
        assert waiting.is_alive()
        time.sleep(0.05)
    waiting.join(PATIENCE_S)
    assert not waiting.is_alive()


def test_an_editors_hidden_files_are_no_change(folder: Path) -> None:
    before = look([folder])
    (folder / ".job.yaml.swp").write_text("x")
    (folder / ".git").mkdir()
    (folder / ".git" / "index").write_text("x")
    assert look([folder]) == before


def test_links_are_followed_and_one_that_leads_back_up_does_no_harm(folder: Path, tmp_path: Path) -> None:
    (folder / "up").symlink_to(folder)
    (folder / "nothing").symlink_to(folder / "gone")
    elsewhere = tmp_path / "card.yaml"
    elsewhere.write_text("one")
    (folder / "card.yaml").symlink_to(elsewhere)
    before = look([folder])
    elsewhere.write_text("two and more")
    assert look([folder]) != before
