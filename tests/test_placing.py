"""A file is put in its place whole or not at all."""

import os
from pathlib import Path

import pytest

from packet.placing import placing


def test_a_file_takes_the_place_of_the_one_before(tmp_path: Path) -> None:
    path = tmp_path / "card.pdf"
    path.write_bytes(b"before")
    with placing(path) as part:
        part.write_bytes(b"after")
        assert path.read_bytes() == b"before"
    assert path.read_bytes() == b"after"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("before", [b"before", None])
def test_a_block_that_fails_leaves_what_was_there(tmp_path: Path, before: bytes | None) -> None:
    path = tmp_path / "card.pdf"
    if before is not None:
        path.write_bytes(before)

    def stopped() -> None:
        with placing(path) as part:
            part.write_bytes(b"half")
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        stopped()
    assert [file.read_bytes() for file in tmp_path.iterdir()] == ([before] if before is not None else [])


@pytest.mark.parametrize("step", ["os.fsync", "pathlib.Path.replace"])
def test_a_disk_that_takes_no_more_leaves_what_was_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    def full(*arguments: object) -> None:
        raise OSError(28, os.strerror(28))

    path = tmp_path / "card.pdf"
    path.write_bytes(b"before")
    with monkeypatch.context() as patch:
        patch.setattr(step, full)
        with pytest.raises(OSError, match="No space left"), placing(path) as part:
            part.write_bytes(b"after")
    assert [file.read_bytes() for file in tmp_path.iterdir()] == [b"before"]


def test_the_disk_has_a_file_before_it_takes_its_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A rename may reach the disk before the bytes do."""
    steps: list[str] = []
    sync, replace = os.fsync, Path.replace

    def synced(number: int) -> None:
        steps.append("on disk")
        sync(number)

    def replaced(self: Path, target: Path) -> Path:
        steps.append("in place")
        return replace(self, target)

    monkeypatch.setattr("os.fsync", synced)
    monkeypatch.setattr("pathlib.Path.replace", replaced)
    for durable in (True, False):
        with placing(tmp_path / "a", durable=durable) as part:
            part.write_bytes(b"a")
    assert steps == ["on disk", "in place", "in place"]


def test_what_a_killed_run_left_is_written_over(tmp_path: Path) -> None:
    (tmp_path / ".a.part").write_bytes(b"left by a run that was killed")
    with placing(tmp_path / "a") as part:
        part.write_bytes(b"new")
    assert [file.read_bytes() for file in tmp_path.iterdir()] == [b"new"]


def test_permissions_stay(tmp_path: Path) -> None:
    path = tmp_path / "photos.yaml"
    path.write_bytes(b"before")
    path.chmod(0o440)
    with placing(path) as part:
        part.write_bytes(b"after")
    assert (path.read_bytes(), path.stat().st_mode & 0o777) == (b"after", 0o440)
