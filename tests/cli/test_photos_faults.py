"""``packet photos`` meeting wrecks, links, a full disk, a second run and its own death: nothing is lost."""

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from filelock import FileLock

from packet.photos.folder import PhotoFolder
from packet.photos.sources import MOST_BYTES
from tests.cli.conftest import Run
from tests.photos.test_paths import png_that_claims
from tests.support.heic import heic
from tests.support.intake import HAND_MADE, files_of, log_of, take
from tests.support.intake import phone as phone
from tests.support.office import NUMBER, ROOT, Office
from tests.support.pictures import picture


def bombs_and_wrecks(folder: Path) -> dict[str, str]:
    """Write files that look like photos and are none; return the code of each."""
    whole = picture(folder / "cut.jpg").read_bytes()
    (folder / "cut.jpg").write_bytes(whole[: len(whole) // 2])
    # a picture coded in a way that no phone uses, whole to the last byte: only decoding tells
    (folder / "odd.jpg").write_bytes(whole.replace(b"\xff\xc0", b"\xff\xc3", 1))
    half = heic(folder / "cut.heic").read_bytes()
    (folder / "cut.heic").write_bytes(half[: len(half) // 2])
    (folder / "empty.jpg").write_bytes(b"")
    (folder / "gif.jpg").write_bytes(b"GIF89a\1\0\1\0\0\0\0;")
    (folder / "bomb.png").write_bytes(png_that_claims(60_000, 60_000))
    (folder / "wreck.png").write_bytes(png_that_claims(400, 300))
    with (folder / "huge.jpg").open("wb") as file:
        file.write(whole)
        file.truncate(MOST_BYTES + 1)
    damaged = dict.fromkeys(
        ("cut.jpg", "odd.jpg", "cut.heic", "bomb.png", "wreck.png"), "photo-source-damaged"
    )
    return damaged | {
        "empty.jpg": "photo-source-empty",
        "gif.jpg": "photo-source-other",
        "huge.jpg": "photo-source-too-large",
    }


def test_a_damaged_photo_gets_one_line_and_keeps_no_other_out(
    small_office: Office, run: Run, phone: Path
) -> None:
    codes = bombs_and_wrecks(phone)
    picture(phone / "good.jpg", size=(30, 20))
    ran = take(small_office, run, phone)
    assert ran.code == 2
    lines = ran.err.splitlines()
    found = {
        line.partition(": error[")[0].rpartition("/")[2]: line.partition("[")[2].partition("]")[0]
        for line in lines
    }
    assert found == codes
    assert len(lines) == len(codes)
    assert [row["file"] for row in log_of(small_office)] == ["photos/good.jpg"]
    assert set(files_of(small_office)) == {"job.yaml", "photos.yaml", "photos/good.jpg"}


def test_what_is_no_photo_is_listed_with_its_reason_and_is_no_problem(
    small_office: Office, run: Run, phone: Path
) -> None:
    (phone / "film.mp4").write_bytes(b"\0\0\0\x18ftypisom\0\0\0\0isommp42")
    (phone / "nothing").write_bytes(b"")
    picture(phone / ".thumbnails" / "t.jpg")
    secret = picture(small_office.root.parent / "elsewhere" / "s.jpg")
    (phone / "link.jpg").symlink_to(secret)
    (phone / "more").symlink_to(secret.parent, target_is_directory=True)
    os.mkfifo(phone / "pipe")
    ran = take(small_office, run, phone)
    assert (ran.code, ran.err) == (0, "")
    told = {line.split(": ")[0].rpartition("/")[2]: line.split(": ")[1] for line in ran.out.splitlines()[2:]}
    assert told == {
        ".thumbnails": "its name starts with a dot, as what programs keep for themselves does. Name it by itself if it is a photo.",
        "film.mp4": "this is no JPEG, PNG or HEIC photo. Save it as a JPEG if it is a photo of another kind.",
        "link.jpg": "this is a link, which is not followed. Name the folder or file it leads to.",
        "more": "this is a link, which is not followed. Name the folder or file it leads to.",
        "nothing": "the file is empty. Copy it again from the camera.",
        "pipe": "this is neither a file nor a folder. Nothing in it can be taken in.",
    }
    assert list(files_of(small_office)) == ["job.yaml"]


def test_a_heic_without_the_extra_says_what_to_install_and_others_are_taken_in(
    small_office: Office, run: Run, phone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("packet.photos.facts.opens_heif", lambda: False)
    heic(phone / "IMG_1.HEIC")
    picture(phone / "a.jpg")
    ran = take(small_office, run, phone)
    assert ran.code == 2
    assert ran.err == (
        f'{phone.as_posix()}/IMG_1.HEIC: error[heic-not-installed]: the photo "IMG_1.HEIC" is a HEIC, and what opens '
        'those is not installed. Run: pip install "roof-closeout-packet[heic]". Then do it again.\n'
    )
    assert [row["file"] for row in log_of(small_office)] == ["photos/a.jpg"]


def test_a_folder_that_cannot_be_read_or_is_not_there_gets_one_line(
    small_office: Office, run: Run, phone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    picture(phone / "a.jpg")
    (phone / "locked").mkdir()
    real = os.scandir

    def scandir(path: Any) -> Any:
        if str(path).endswith("locked"):
            raise PermissionError(13, "denied")
        return real(path)

    monkeypatch.setattr("packet.photos.sources.os.scandir", scandir)
    ran = take(small_office, run, phone, phone.parent / "gone")
    assert ran.code == 2
    assert [line.partition("]")[0].rpartition("/")[2] for line in ran.err.splitlines()] == [
        "locked: error[photo-source-unreadable",
        "gone: error[photo-source-missing",
    ]
    assert len(log_of(small_office)) == 1


def test_the_home_of_a_user_nobody_knows_is_not_there(small_office: Office, run: Run) -> None:
    ran = run(small_office.root, "photos", NUMBER, "~nobody-of-that-name/phone")
    assert ran.code == 2
    assert ran.err.startswith("~nobody-of-that-name/phone: error[photo-source-missing]")


@pytest.mark.parametrize("what", ["photos", "photos.yaml"])
def test_nothing_is_written_through_a_link_out_of_the_job(
    small_office: Office, run: Run, phone: Path, what: str
) -> None:
    picture(phone / "a.jpg")
    outside = small_office.root / "outside"
    if what == "photos":
        outside.mkdir()
    else:
        outside.write_text("photos:\n", encoding="utf-8")
    (small_office.job / what).symlink_to(outside)
    ran = take(small_office, run, phone)
    assert (ran.code, "error[path-leaves-job]" in ran.err) == (2, True)
    assert list(outside.iterdir()) == [] if what == "photos" else outside.read_text("utf-8") == "photos:\n"


def test_the_time_zone_is_all_that_is_asked_of_the_record(
    small_office: Office, run: Run, phone: Path
) -> None:
    picture(phone / "a.jpg")
    small_office.added("deck: {edge_spacing: 6}")
    assert take(small_office, run, phone).code == 0
    small_office.changed("property.time_zone", "Mars/North")
    ran = take(small_office, run, phone)
    assert (ran.code, ran.out, "error[bad-time-zone]" in ran.err) == (2, "", True)


def test_a_log_written_meanwhile_is_not_overwritten(
    small_office: Office, run: Run, phone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    picture(phone / "a.jpg")
    real = PhotoFolder.copy

    def copy(self: PhotoFolder, *arguments: Any) -> None:
        real(self, *arguments)
        (small_office.job / "photos.yaml").write_text("# mine\n", encoding="utf-8")

    monkeypatch.setattr(PhotoFolder, "copy", copy)
    ran = take(small_office, run, phone)
    assert (ran.code, "error[photo-log-changed]" in ran.err) == (2, True)
    assert (small_office.job / "photos.yaml").read_text("utf-8") == "# mine\n"


def test_a_photo_that_changes_while_it_is_copied_is_left_out(
    small_office: Office, run: Run, phone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, real = picture(phone / "a.jpg"), PhotoFolder.copy
    picture(phone / "b.jpg", size=(30, 20), taken="2026:03:17 09:00:00")

    def copy(self: PhotoFolder, source: Path, *rest: Any) -> None:
        if source == path:
            path.write_bytes(path.read_bytes() + b"\0")
        real(self, source, *rest)

    monkeypatch.setattr(PhotoFolder, "copy", copy)
    ran = take(small_office, run, phone)
    assert (ran.code, "a.jpg: error[photo-source-changed]" in ran.err) == (2, True)
    assert [row["file"] for row in log_of(small_office)] == ["photos/b.jpg"]
    assert set(files_of(small_office)) == {"job.yaml", "photos.yaml", "photos/b.jpg"}


def test_a_full_disk_leaves_the_old_log_and_no_half_photo(
    small_office: Office, run: Run, phone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(descriptor: int) -> None:
        raise OSError(28, "full")

    picture(phone / "a.jpg")
    monkeypatch.setattr("packet.photos.folder.os.fsync", full)
    ran = take(small_office, run, phone)
    assert (
        ran.code,
        "error[photos-not-written]: the photos can't be taken in: no space left" in ran.err,
    ) == (2, True)
    assert list(files_of(small_office)) == ["job.yaml"]
    monkeypatch.undo()
    assert run(small_office.root, "photos", "26-041", str(phone)).code == 0


def test_a_second_run_at_the_same_job_waits_and_then_says_so(
    small_office: Office, run: Run, phone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    picture(phone / "a.jpg")
    monkeypatch.setattr("packet.photos.intake._PATIENCE_S", 0.05)
    (small_office.root / "out").mkdir()
    with FileLock(small_office.root / "out" / ".lock-photos-26-041"):
        ran = take(small_office, run, phone)
    assert (ran.code, "error[photos-busy]" in ran.err) == (2, True)
    assert list(files_of(small_office)) == ["job.yaml"]


#: Kills the run at the n-th file that is made safe on the disk (two photos, then the log), before or after its rename.
KILLED = """
import os, sys
from pathlib import Path
when, number = sys.argv[1], int(sys.argv[2])
count = 0
def stop():
    global count
    count += 1
    if count == number:
        os.kill(os.getpid(), 9)
real_replace, real_fsync = Path.replace, os.fsync
def fsync(descriptor):
    real_fsync(descriptor)
    if when == "before": stop()
def replace(self, target):
    made = real_replace(self, target)
    if when == "after": stop()
    return made
os.fsync, Path.replace = fsync, replace
from packet.cli.main import status
sys.exit(status(["photos", "26-041", sys.argv[3]]))
"""


@pytest.mark.parametrize("number", [1, 2, 3])
@pytest.mark.parametrize("when", ["before", "after"])
def test_a_killed_run_leaves_the_old_log_or_the_new_one_and_whole_photos(
    small_office: Office, run: Run, phone: Path, when: str, number: int
) -> None:
    picture(small_office.job / "photos" / "P09.jpg", size=(20, 20))
    (small_office.job / "photos.yaml").write_bytes(HAND_MADE)
    originals = [
        picture(phone / "a.jpg"),
        picture(phone / "b.jpg", size=(30, 20), taken="2026:03:17 09:00:00"),
    ]
    killed = subprocess.run(
        [sys.executable, "-c", KILLED, when, str(number), str(phone)],
        cwd=small_office.root, env={**os.environ, "PYTHONPATH": str(ROOT)}, capture_output=True, check=False,
    )  # fmt: skip
    assert killed.returncode == -9
    log = (small_office.job / "photos.yaml").read_bytes()
    if (when, number) == ("after", 3):
        assert [row["id"] for row in log_of(small_office)] == ["P09", "P10", "P11"]
    else:
        assert log == HAND_MADE
    whole = {path.read_bytes() for path in originals}
    for name, data in files_of(small_office).items():
        if name.startswith("photos/") and name != "photos/P09.jpg" and not name.endswith(".part"):
            assert data in whole
    assert take(small_office, run, phone).code == 0
    assert set(files_of(small_office)) == {
        "job.yaml", "photos.yaml", "photos/P09.jpg", "photos/a.jpg", "photos/b.jpg",
    }  # fmt: skip
    assert [(row["id"], row["file"]) for row in log_of(small_office)] == [
        ("P09", "photos/P09.jpg"), ("P10", "photos/a.jpg"), ("P11", "photos/b.jpg"),
    ]  # fmt: skip
