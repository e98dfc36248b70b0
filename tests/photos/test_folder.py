"""Copying into a job's folder of photos."""

import hashlib
from pathlib import Path

import pytest

from packet.photos.folder import CopyDiffers, PhotoFolder


def test_a_file_that_came_meanwhile_under_the_same_name_is_kept(tmp_path: Path) -> None:
    source, job = tmp_path / "a.jpg", tmp_path / "job"
    source.write_bytes(b"new")
    job.mkdir()
    folder = PhotoFolder(job, ())
    name = folder.name_for(source, "JPEG")
    (job / "photos").mkdir()
    (job / name).write_bytes(b"put there by hand")
    with pytest.raises(FileExistsError):
        folder.copy(source, name, hashlib.sha256(b"new").hexdigest())
    assert [file.read_bytes() for file in (job / "photos").iterdir()] == [b"put there by hand"]


def test_nothing_is_left_of_a_copy_that_is_not_what_was_looked_at(tmp_path: Path) -> None:
    source = tmp_path / "a.jpg"
    source.write_bytes(b"changed")
    with pytest.raises(CopyDiffers):
        PhotoFolder(tmp_path, ()).copy(source, "photos/a.jpg", hashlib.sha256(b"new").hexdigest())
    assert not list((tmp_path / "photos").iterdir())
