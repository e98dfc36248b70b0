"""``packet photos``: originals copied as they are, entries behind the old ones, a line for all that is left out."""

import hashlib
import os
import re
import stat
import typing
from pathlib import Path

import pytest
from PIL import Image

from packet.cli.photos import STAGES
from packet.photos.log import Stage
from tests.cli.conftest import Run
from tests.support.heic import heic
from tests.support.intake import HAND_MADE, files_of, log_of, sha, take
from tests.support.intake import phone as phone
from tests.support.new_job import flags
from tests.support.office import Office
from tests.support.pictures import picture


def test_photos_of_every_kind_are_copied_byte_for_byte_and_logged(
    small_office: Office, run: Run, phone: Path
) -> None:
    a = picture(phone / "IMG_1.JPG", taken="2026:03:16 11:00:00", orientation=6)
    b = heic(phone / "DCIM" / "100" / "IMG_2.HEIC")
    Image.new("RGB", (30, 20), "red").save(phone / "c.png")
    ran = take(small_office, run, phone)
    assert (ran.code, ran.err) == (0, "")
    files = files_of(small_office)
    assert files["photos/IMG_1.JPG"] == a.read_bytes()
    assert files["photos/IMG_2.HEIC"] == b.read_bytes()
    assert files["photos/c.png"] == (phone / "c.png").read_bytes()
    assert log_of(small_office) == [
        {
            "id": "P01", "file": "photos/IMG_2.HEIC", "sha256": sha(b), "taken_at": "2026-03-16T10:15:00",
            "offset": "-04:00", "offset_from": "camera", "stage": "", "shows": "", "proves": [],
        },
        {
            "id": "P02", "file": "photos/IMG_1.JPG", "sha256": sha(a), "taken_at": "2026-03-16T11:00:00",
            "offset": "-04:00", "offset_from": "camera", "stage": "", "shows": "", "proves": [],
        },
        {"id": "P03", "file": "photos/c.png", "sha256": sha(phone / "c.png"), "stage": "", "shows": "", "proves": []},
    ]  # fmt: skip
    assert small_office.closeout().photos == ()


def test_the_end_says_what_was_done_and_what_is_next(small_office: Office, run: Run, phone: Path) -> None:
    picture(phone / "a.jpg")
    picture(phone / "b.jpg", size=(30, 20), taken="")
    (phone / "notes.txt").write_text("x", encoding="utf-8")
    ran = take(small_office, run, phone)
    shown = phone.as_posix()
    assert ran.out.splitlines() == [
        "26-041: 2 photos taken in",
        f"  P01  {shown}/a.jpg → photos/a.jpg, 2026-03-16 10:15 -04:00",
        f"  P02  {shown}/b.jpg → photos/b.jpg, no time in the photo",
        "skipped: 1",
        f"  {shown}/notes.txt: this is no JPEG, PNG or HEIC photo. Save it as a JPEG if it is a photo of another kind.",
        "Next: write stage and shows, the caption, in jobs/26-041/photos.yaml from line 3. Until then no copy carries them.",
    ]
    lines = (small_office.job / "photos.yaml").read_text("utf-8").splitlines()
    assert lines[2] == "  - id: P01"
    assert "\033" not in ran.out + ran.err


def test_hand_made_lines_keep_every_byte_and_ids_go_on(small_office: Office, run: Run, phone: Path) -> None:
    picture(small_office.job / "photos" / "P09.jpg", size=(20, 20))
    log = small_office.job / "photos.yaml"
    log.write_bytes(HAND_MADE)
    log.chmod(0o640)
    picture(phone / "a.jpg")
    assert take(small_office, run, phone).code == 0
    new = log.read_bytes()
    assert new.startswith(HAND_MADE)
    assert new.count(b"\n") == new.count(b"\r\n")
    assert stat.S_IMODE(log.stat().st_mode) == 0o640
    assert [(row["id"], row["shows"]) for row in log_of(small_office)] == [
        ("P09", "Old deck, chalked."),
        ("P10", ""),
    ]


@pytest.mark.parametrize(
    "text", ["photos: [{id: P01, file: a.jpg}]\n", "photos:\n  - id: P01\n    fiel: a.jpg\n", "photos: [\n"]
)
def test_a_log_that_cannot_be_added_to_stops_before_anything_is_copied(
    small_office: Office, run: Run, phone: Path, text: str
) -> None:
    (small_office.job / "photos.yaml").write_text(text, encoding="utf-8")
    picture(phone / "a.jpg")
    before = files_of(small_office)
    ran = take(small_office, run, phone)
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("jobs/26-041/photos.yaml:")
    assert files_of(small_office) == before


def test_what_the_person_says_goes_into_every_new_entry(small_office: Office, run: Run, phone: Path) -> None:
    picture(phone / "a.jpg")
    options = (
        "--stage",
        "deck",
        "--by",
        "Dov Marrick",
        "--set-by",
        "Tam: O'Duya #2",
        "--readers",
        "office, outside",
    )
    ran = take(small_office, run, phone, *options)
    assert "write shows, the caption, in" in ran.out
    row = log_of(small_office)[0]
    assert (row["stage"], row["taken_by"], row["set_by"]) == ("deck", "Dov Marrick", "Tam: O'Duya #2")
    assert row["readers"] == ["outside", "office"]
    assert row["shows"] == ""


@pytest.mark.parametrize(
    "options",
    [
        ("--stage", "roof"), ("--by", ""), ("--by", "a\nb"), ("--by", "\u202ex"), ("--by", "x" * 201),
        ("--set-by", " "), ("--readers", "everyone"), ("--readers", ""),
    ],
)  # fmt: skip
def test_words_a_log_cannot_hold_are_refused_before_anything_is_done(
    small_office: Office, run: Run, phone: Path, options: tuple[str, str]
) -> None:
    picture(phone / "a.jpg")
    ran = take(small_office, run, phone, *options)
    assert (ran.code, ran.out) == (2, "")
    assert "Error: Invalid value" in ran.err
    assert list(files_of(small_office)) == ["job.yaml"]


def test_the_stages_are_those_of_the_log() -> None:
    assert typing.get_args(Stage) == STAGES


def test_an_offset_the_camera_does_not_give_is_derived_and_marked(
    small_office: Office, run: Run, phone: Path
) -> None:
    picture(phone / "a.jpg", taken="2026:07:01 09:00:00", offset="")
    picture(phone / "b.jpg", taken="2026:11:01 01:30:00", offset="", size=(30, 20))
    take(small_office, run, phone)
    rows = log_of(small_office)
    assert (rows[0]["offset"], rows[0]["offset_from"]) == ("-04:00", "property")
    assert rows[1]["taken_at"] == "2026-11-01T01:30:00"
    assert not rows[1].keys() & {"offset", "offset_from"}
    text = (small_office.job / "photos.yaml").read_text("utf-8")
    assert re.search(r"# The clocks showed this hour twice.*\n  - id: P02\n", text)


def test_a_photo_without_a_time_gets_none_and_a_remark(small_office: Office, run: Run, phone: Path) -> None:
    path = picture(phone / "a.jpg", taken="")
    os.utime(path, (1_700_000_000, 1_700_000_000))
    take(small_office, run, phone)
    assert not log_of(small_office)[0].keys() & {"taken_at", "offset", "offset_from"}
    text = (small_office.job / "photos.yaml").read_text("utf-8")
    assert re.search(r"# The photo holds no time.*\n  - id: P01\n", text)
    assert "2023" not in text.replace(sha(path), "")


def test_a_second_run_finds_everything_there(small_office: Office, run: Run, phone: Path) -> None:
    picture(phone / "a.jpg")
    take(small_office, run, phone)
    before = files_of(small_office)
    ran = take(small_office, run, phone)
    assert ran.code == 0
    assert ran.out.splitlines()[:3] == [
        "26-041: 0 photos taken in",
        "already there: 1 photo",
        f"  {phone.as_posix()}/a.jpg is P01",
    ]
    assert files_of(small_office) == before


def test_bytes_logged_without_a_digest_are_known_too(small_office: Office, run: Run, phone: Path) -> None:
    original = picture(small_office.job / "photos" / "front.jpg")
    small_office.log({"id": "P01", "file": "photos/front.jpg", "stage": "deck", "shows": "x"})
    (phone / "other name.jpg").write_bytes(original.read_bytes())
    assert "other name.jpg is P01" in take(small_office, run, phone).out
    assert len(log_of(small_office)) == 1


def test_the_same_bytes_twice_are_taken_in_once(small_office: Office, run: Run, phone: Path) -> None:
    first = picture(phone / "a.jpg")
    (phone / "copy of a.jpg").write_bytes(first.read_bytes())
    ran = take(small_office, run, phone, first)
    assert f"  {phone.as_posix()}/copy of a.jpg is {phone.as_posix()}/a.jpg" in ran.out
    assert [row["file"] for row in log_of(small_office)] == ["photos/a.jpg"]


def test_a_name_that_is_taken_becomes_a_new_one(small_office: Office, run: Run, phone: Path) -> None:
    old = picture(small_office.job / "photos" / "img_1.jpg", size=(20, 20)).read_bytes()
    small_office.log(
        {"id": "P01", "file": "photos/img_1.jpg", "stage": "deck", "shows": "x"},
        {"id": "P02", "file": "photos/lost.jpg", "stage": "deck", "shows": "x"},
    )
    picture(phone / "IMG_1.jpg")
    picture(phone / "sub" / "IMG_1.jpg", size=(30, 20), taken="2026:03:17 09:00:00")
    picture(phone / "lost.jpg", size=(31, 20), taken="2026:03:18 09:00:00")
    take(small_office, run, phone)
    assert [row["file"] for row in log_of(small_office)[2:]] == [
        "photos/IMG_1-2.jpg", "photos/IMG_1-3.jpg", "photos/lost-2.jpg",
    ]  # fmt: skip
    files = files_of(small_office)
    assert files["photos/img_1.jpg"] == old
    for row in log_of(small_office)[2:]:
        assert hashlib.sha256(files[row["file"]]).hexdigest() == row["sha256"]


def test_photos_that_lie_in_the_jobs_folder_are_logged_where_they_lie(small_office: Office, run: Run) -> None:
    logged = picture(small_office.job / "photos" / "P01.jpg", size=(20, 20))
    small_office.log({"id": "P01", "file": "photos/P01.jpg", "stage": "deck", "shows": "x"})
    picture(small_office.job / "photos" / "day two" / "IMG 7.jpg")
    before = set(files_of(small_office))
    ran = take(small_office, run, "jobs/26-041/photos")
    assert ran.code == 0
    assert "jobs/26-041/photos/P01.jpg is P01" in ran.out
    assert "P02  photos/day two/IMG 7.jpg, where it lay, " in ran.out
    assert set(files_of(small_office)) == before
    assert [row["file"] for row in log_of(small_office)] == ["photos/P01.jpg", "photos/day two/IMG 7.jpg"]
    assert logged.is_file()


def test_a_kind_is_told_by_content_and_not_by_the_ending(small_office: Office, run: Run, phone: Path) -> None:
    heic(phone / "IMG_1.jpg")
    picture(phone / "no ending")
    take(small_office, run, phone)
    assert sorted(row["file"] for row in log_of(small_office)) == [
        "photos/IMG_1.jpg.heic",
        "photos/no ending.jpg",
    ]


def test_a_dry_run_says_all_and_writes_nothing(small_office: Office, run: Run, phone: Path) -> None:
    picture(phone / "a.jpg")
    before = files_of(small_office)
    ran = take(small_office, run, phone, "--dry-run")
    assert ran.code == 0
    assert ran.out.splitlines() == [
        "26-041: 1 photo would be taken in; nothing was written",
        f"  P01  {phone.as_posix()}/a.jpg → photos/a.jpg, 2026-03-16 10:15 -04:00",
    ]
    assert files_of(small_office) == before
    assert not (small_office.root / "out").exists()


def test_quiet_prints_problems_alone(small_office: Office, run: Run, phone: Path) -> None:
    picture(phone / "a.jpg")
    assert take(small_office, run, phone, "-q").out == ""
    (phone / "b.jpg").write_bytes(b"")
    ran = take(small_office, run, phone, "-q")
    assert (ran.code, ran.out, ran.err.count("\n")) == (2, "", 1)


def test_progress_is_shown_on_a_terminal_only(
    small_office: Office, run: Run, phone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    picture(phone / "a.jpg")
    assert "photo 1 of 1" not in take(small_office, run, phone, "--dry-run").err
    monkeypatch.setattr("packet.cli.progress.sys.stderr.isatty", lambda: True, raising=False)
    assert "\r\033[K26-041: photo 1 of 1: a.jpg" in take(small_office, run, phone, "--dry-run").err
    assert take(small_office, run, phone, "--dry-run", "-q").err == ""


def test_new_entries_stand_in_the_order_in_which_the_photos_were_taken(
    small_office: Office, run: Run, phone: Path
) -> None:
    picture(phone / "1.jpg", taken="", size=(20, 20))
    picture(phone / "2.jpg", taken="2026:03:16 12:00:00", offset="-04:00", size=(21, 20))
    picture(
        phone / "3.jpg", taken="2026:03:16 15:30:00", offset="+00:00", size=(22, 20)
    )  # half past eleven here
    picture(phone / "4.jpg", taken="2026:03:16 11:45:00", offset="", size=(23, 20))
    take(small_office, run, phone)
    assert [row["file"] for row in log_of(small_office)] == [f"photos/{n}.jpg" for n in (3, 4, 2, 1)]


def test_what_was_taken_in_becomes_a_photo_of_the_packet_once_it_has_its_words(
    small_office: Office, run: Run, phone: Path
) -> None:
    picture(phone / "a.jpg")
    take(small_office, run, phone, "--stage", "deck", "--readers", "outside,office")
    assert run(small_office.root, "build", "-q").code == 0
    page = small_office.root / "out" / "26-041" / "outside" / "photos.html"
    assert "P01" not in page.read_text("utf-8")
    log = small_office.job / "photos.yaml"
    log.write_text(log.read_text("utf-8").replace("shows:\n", "shows: Newdeckword\n"), encoding="utf-8")
    assert run(small_office.root, "build", "-q").code == 0
    assert "Newdeckword" in page.read_text("utf-8")


def test_a_log_as_a_new_job_has_it_takes_photos_in(new_office: Path, run: Run, tmp_path: Path) -> None:
    assert run(new_office, "new", *flags()).code == 0
    log = new_office / "jobs" / "26-042" / "photos.yaml"
    old = log.read_bytes()
    assert b"\nphotos: []\n" in old
    picture(tmp_path / "phone" / "a.jpg")
    ran = run(new_office, "photos", "26-042", str(tmp_path / "phone"))
    assert (ran.code, ran.err) == (0, "")
    assert log.read_bytes().startswith(old.replace(b"photos: []", b"photos:"))
    assert run(new_office, "check", "26-042").out.count("P01 jobs/26-042/photos.yaml:") == 1
