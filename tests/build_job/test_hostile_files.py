"""Files made to hurt: one clear error each, quickly, and the packet there was stays."""

import os
import re
import struct
import subprocess
import sys
import zlib
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

import piexif
import pytest
from PIL import Image

from tests.build_job.conftest import DONE, Packet
from tests.build_job.pages import tree
from tests.support.pictures import exif, picture
from tests.support.process import surroundings

Command = Callable[..., tuple[int, str, str]]

#: Place and code of a problem at the start of a line, as an editor jumps to it.
LOCATED = re.compile(
    r"^(?P<file>[^\s:]+):(?P<line>\d+):(?P<column>\d+): error\[(?P<code>[a-z0-9-]+)\]: .+$", re.M
)
MOST_S = 5

SMALL = """\
job: {number: 26-041, kind: patch, status: closed}
property: {street: 18 Heron Lane, town: Pellam Reach, state: South Carolina, time_zone: America/New_York}
cause: {what: A nail backed out.}
"""
PLANE = "{id: A, title: a, shape: rectangle, lower: 20 ft, run: 12 ft, pitch: 6:12, facing: south, at: [0 ft, 0 ft]}"
BOMB = "\n".join(
    ["a0: &a0 [x, x, x, x]", *(f"a{n}: &a{n} [*a{n - 1}, *a{n - 1}, *a{n - 1}]" for n in range(1, 60))]
)
HUGE = "1e999999"


def roof(**changes: str) -> str:
    plane = PLANE
    for name, value in changes.items():
        plane = re.sub(rf"{name}: (\[.*?\]|[^,}}]+)", f"{name}: {value}", plane)
    return f"{SMALL}roof:\n  eave_height: 9 ft\n  planes:\n    - {plane}\n"


#: Bytes of a record; the code of its one problem, and where it stands.
RECORDS: dict[str, tuple[bytes, str, tuple[int, int]]] = {
    "alias bomb": (f"{SMALL}{BOMB}\n".encode(), "aliases-refused", (4, 5)),
    "merge": (f"{SMALL}dates: {{<<: {{started: 2026-03-16}}}}\n".encode(), "merge-refused", (4, 9)),
    "tag that runs": (f"{SMALL}summary: !!python/object/apply:os.kill [x]\n".encode(), "tags-refused", (4, 10)),
    "key twice": (f"{SMALL}complaint: one\ncomplaint: two\n".encode(), "duplicate-key", (5, 1)),
    "key twice below": (SMALL.replace("what: A", "what: B, what: A").encode(), "duplicate-key", (3, 18)),
    "zero byte": (f"{SMALL}complaint: a\0b\n".encode(), "nul-byte", (4, 13)),
    "UTF-16": (SMALL.encode("utf-16"), "not-utf8", (1, 1)),
    "UTF-16 without a mark": (SMALL.encode("utf-16-le"), "nul-byte", (1, 2)),
    "Latin-1": (f"{SMALL}complaint: Décembre\n".encode("latin-1"), "not-utf8", (4, 13)),
    "cut letter": (f"{SMALL}complaint: é".encode()[:-1], "not-utf8", (4, 12)),
    "surrogate": (SMALL.encode() + b"complaint: \xed\xa0\x80\n", "not-utf8", (4, 12)),
    "overlong": (SMALL.encode() + b"complaint: \xc0\xaf\n", "not-utf8", (4, 12)),
    "turned around": (f"{SMALL}complaint: a\u202eb\n".encode(), "control-character", (4, 13)),
    "nested": (f"{SMALL}complaint: {'[' * 10_000}{']' * 10_000}\n".encode(), "too-deep", (4, 0)),
    "nested and open": (f"{SMALL}complaint: {'[' * 10_000}\n".encode(), "too-deep", (4, 0)),
    "nested keys": (f"{SMALL}complaint: {'{a: ' * 10_000}\n".encode(), "too-deep", (4, 0)),
    "many entries": (f"{SMALL}found: [{'x, ' * 300_000}x]\n".encode(), "too-many-nodes", (4, 0)),
    "huge length": (roof(lower=f"{HUGE} ft").encode(), "not-plain-number", (7, 50)),
    "huge pitch": (roof(pitch=f"{HUGE}:12").encode(), "not-plain-number", (7, 0)),
    "long number": (roof(lower=f"{'9' * 5000} ft").encode(), "too-long", (7, 50)),
    "long fraction": (roof(lower=f"1/{'9' * 5000} ft").encode(), "too-long", (7, 50)),
    "huge count": (SMALL.replace("status: closed", f"status: closed, revision: {HUGE}").encode(), "", (1, 0)),
    "huge amount": (f"{SMALL}bought: [{{id: A, item: a, unit: box, delivered: {HUGE}}}]\n".encode(), "", (4, 0)),
    "huge sum": (f"{SMALL}money: {{paid: USD {HUGE}}}\n".encode(), "bad-money", (4, 15)),
    "huge speed": (
        f"{SMALL}basis: {{code: irc-2021, authority: a, wind_speed: {HUGE} mph}}\n".encode(), "", (4, 0)
    ),
    "huge year": (f"{SMALL}dates: {{started: {HUGE}-01-01}}\n".encode(), "bad-date", (4, 18)),
    "not a number": (roof(lower=".nan ft").encode(), "", (7, 50)),
    "no keys": (b"just words\n", "wrong-kind", (1, 1)),
    "nothing": (b"", "empty-file", (1, 1)),
    "two documents": (f"{SMALL}---\n{SMALL}".encode(), "several-documents", (4, 1)),
    "zone that leads out": (SMALL.replace("America/New_York", "../../etc/x").encode(), "bad-time-zone", (2, 0)),
}  # fmt: skip


def refused(packet: Packet, run: Command) -> re.Match[str]:
    """Build, hold that there is one located error and no other change, and return it."""
    before = tree(packet.folder)
    begun = perf_counter()
    status, said, error = run(packet.office.root, "build")
    assert perf_counter() - begun < MOST_S
    assert (status, said) == (2, "")
    found = list(LOCATED.finditer(error))
    assert len(found) == 1, error[:2000]
    assert error.count("error[") == 1
    assert "Traceback" not in error
    assert len(error) < 3000
    assert max(map(len, error.splitlines())) < 400
    assert error.rstrip().endswith(". Nothing was built for 26-041.")
    assert tree(packet.folder) == before
    assert packet.left_over() == []
    return found[0]


@pytest.mark.parametrize("name", RECORDS)
def test_a_hostile_record_is_one_clear_error(
    small_packet: Packet, packet_command: Command, name: str
) -> None:
    data, code, (line, column) = RECORDS[name]
    small_packet.office.record.write_bytes(data)
    found = refused(small_packet, packet_command)
    assert found["file"] == "jobs/26-041/job.yaml"
    assert found["code"] == code or not code
    assert found["code"] != "bad-yaml"
    assert int(found["line"]) == line
    assert int(found["column"]) == column or not column


def test_a_record_of_50_mb_is_not_read(small_packet: Packet, packet_command: Command) -> None:
    with small_packet.office.record.open("ab") as file:
        file.truncate(50_000_000)
    assert refused(small_packet, packet_command)["code"] == "too-large"


def test_the_other_files_are_guarded_alike(small_packet: Packet, packet_command: Command) -> None:
    log, card = small_packet.office.job / "photos.yaml", small_packet.office.root / "shared" / "office.yaml"
    good = {log: log.read_bytes(), card: card.read_bytes()}
    for path in good:
        for data, code in (
            (b"a: \0", "nul-byte"),
            (BOMB.encode(), "aliases-refused"),
            (b"a: \xff", "not-utf8"),
        ):
            path.write_bytes(data)
            found = refused(small_packet, packet_command)
            assert found["code"] == code
            assert Path(found["file"]).name == path.name
        path.write_bytes(good[path])


@pytest.mark.parametrize(
    "where", ["shared/tables/mine.yaml", "shared/codes/mine.yaml", "shared/words/en.yaml"]
)
def test_reference_files_are_guarded_alike(small_packet: Packet, packet_command: Command, where: str) -> None:
    small_packet.office.file(where, BOMB)
    found = refused(small_packet, packet_command)
    assert (found["file"], found["code"]) == (where, "aliases-refused")


@pytest.mark.parametrize(
    "file",
    ["../P01.jpg", "photos/../../P01.jpg", "photos/../photos/P01.jpg", "/etc/hostname", "./photos/P01.jpg",
     "photos//P01.jpg", "C:/P01.jpg", "photos\\\\P01.jpg", "~/../P01.jpg", "file:///etc/hostname"],
)  # fmt: skip
def test_a_photo_can_not_lead_out_of_the_job(
    small_packet: Packet, packet_command: Command, file: str
) -> None:
    small_packet.office.log({**DONE, "file": file})
    found = refused(small_packet, packet_command)
    assert (found["file"], found["code"], found["line"]) == (
        "jobs/26-041/photos.yaml",
        "path-leaves-job",
        "2",
    )


@pytest.mark.parametrize("linked", ["file", "folder", "to a file of the job"])
def test_a_linked_photo_is_not_followed(
    small_packet: Packet, packet_command: Command, tmp_path: Path, linked: str
) -> None:
    photos = small_packet.office.job / "photos"
    if linked == "folder":
        photos.rename(tmp_path / "elsewhere")
        photos.symlink_to(tmp_path / "elsewhere")
    else:
        kept = small_packet.office.job / "kept.jpg" if linked.startswith("to") else tmp_path / "kept.jpg"
        (photos / "P01.jpg").rename(kept)
        (photos / "P01.jpg").symlink_to(kept)
    assert refused(small_packet, packet_command)["code"] == "path-leaves-job"


@pytest.mark.parametrize("name", ["job.yaml", "photos.yaml"])
def test_a_linked_record_is_not_followed_or_shown(
    small_packet: Packet, packet_command: Command, tmp_path: Path, name: str
) -> None:
    before = tree(small_packet.folder)
    secret = tmp_path / "secret.yaml"
    secret.write_text("password: 7731\n")
    path = small_packet.office.job / name
    path.unlink()
    path.symlink_to(secret)
    status, _, error = packet_command(small_packet.office.root, "build")
    assert status == 2
    assert f'jobs/26-041: error[path-leaves-job]: "{name}"' in error
    assert error.count("error[") == 1
    assert "7731" not in error
    assert tree(small_packet.folder) == before


def png(width: int, height: int, *, body: bytes = b"\0" * 10) -> bytes:
    """Return a PNG that claims a size; its picture is a few bytes."""

    def part(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n" + part(b"IHDR", head) + part(b"IDAT", zlib.compress(body)) + part(b"IEND", b"")
    )


def text_bomb() -> bytes:
    """Return a PNG with a note of 200 MB once unpacked."""
    note = b"Comment\0\0" + zlib.compress(b"\0" * 200_000_000)
    whole = png(8, 8, body=(b"\0" + b"\0" * 24) * 8)
    at = whole.index(b"IDAT") - 4
    return (
        whole[:at]
        + struct.pack(">I", len(note))
        + b"zTXt"
        + note
        + struct.pack(">I", zlib.crc32(b"zTXt" + note))
        + whole[at:]
    )


def undecodable_jpeg() -> bytes:
    """Return a JPEG that opens, ends as it should, and names a table it does not have."""
    with TemporaryDirectory() as folder:
        data = bytearray(picture(Path(folder, "P.jpg")).read_bytes())
    frame = data.index(b"\xff\xc0")
    data[frame + 12] = 9
    return bytes(data)


PHOTOS: dict[str, bytes | Callable[[], bytes]] = {
    "PNG bomb": png(60_000, 60_000),
    "PNG that claims the most": png(2**31 - 1, 2**31 - 1),
    "PNG of no size": png(0, 0),
    "PNG with a note that unpacks": text_bomb,
    "text": b"this is no picture\n",
    "nothing": b"",
    "page": b"<html><script>alert(1)</script></html>",
    "drawing that runs": b'<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>',
    "half a JPEG": b"\xff\xd8\xff\xe0\x00\x10JFIF\x00",
    "JPEG that can't be decoded": undecodable_jpeg,
    "another format": b"GIF89a\x01\x00\x01\x00\x00\x00\x00;",
    "PostScript": b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 10 10\n",
    "fonts": b"\x00\x01\x00\x00" * 100,
    "PNG with a broken picture": png(64, 48, body=b"\x07" * 50),
}  # fmt: skip


@pytest.mark.parametrize("name", PHOTOS)
def test_a_photo_that_is_none_is_one_clear_error(
    small_packet: Packet, packet_command: Command, name: str
) -> None:
    data = PHOTOS[name]
    path = small_packet.office.job / "photos" / "P01.jpg"
    path.write_bytes(data() if callable(data) else data)
    found = refused(small_packet, packet_command)
    assert (found["file"], found["line"], found["code"]) == (
        "jobs/26-041/photos.yaml",
        "2",
        "photo-unreadable",
    )


def test_a_pipe_for_a_photo_or_a_record_is_never_opened(
    small_packet: Packet, packet_command: Command
) -> None:
    photo, record = small_packet.office.job / "photos" / "P01.jpg", small_packet.office.record
    photo.unlink()
    os.mkfifo(photo)
    assert refused(small_packet, packet_command)["code"] == "photo-missing"
    record.unlink()
    os.mkfifo(record)
    status, _, error = packet_command(small_packet.office.root, "build")
    assert (status, "error[no-jobs]" in error) == (2, True)


def test_every_file_s_problems_come_in_one_pass(small_packet: Packet, packet_command: Command) -> None:
    small_packet.office.replaced("kind: patch", "kind: pach")
    small_packet.office.log({**DONE, "file": "../x.jpg"}, {**DONE, "id": "P02", "file": "none.jpg"})
    small_packet.office.file("shared/office.yaml", "{name: A, address: B, fone: C}")
    status, _, error = packet_command(small_packet.office.root, "build")
    assert status == 2
    codes = {(Path(found["file"]).name, found["code"]) for found in LOCATED.finditer(error)}
    assert codes == {
        ("job.yaml", "not-one-of"), ("photos.yaml", "path-leaves-job"), ("photos.yaml", "photo-missing"),
        ("office.yaml", "unknown-key"),
    }  # fmt: skip


def test_one_bad_job_does_not_keep_another_from_being_built(
    small_packet: Packet, packet_command: Command
) -> None:
    good = small_packet.office.root / "jobs" / "26-042"
    good.mkdir()
    (good / "job.yaml").write_text(SMALL.replace("26-041", "26-042"))
    small_packet.office.record.write_bytes(b"\0")
    status, said, error = packet_command(small_packet.office.root, "build")
    assert status == 2
    assert "26-042: built" in said
    assert error.rstrip().endswith("1 error in 1 of 2 jobs. Nothing was built for 26-041.")
    assert (small_packet.office.root / "out" / "26-042" / "outside" / "index.html").is_file()


def test_a_hidden_folder_is_no_job(small_packet: Packet, packet_command: Command) -> None:
    hidden = small_packet.office.root / "jobs" / ".trash"
    hidden.mkdir()
    (hidden / "job.yaml").write_bytes(b"\0")
    assert packet_command(small_packet.office.root, "build")[0] == 0
    assert packet_command(small_packet.office.root, "build", "jobs/.trash")[0] == 2


def test_the_command_itself_says_the_same(small_packet: Packet) -> None:
    small_packet.office.record.write_bytes(RECORDS["alias bomb"][0])
    said = subprocess.run(
        [sys.executable, "-m", "packet", "build"],
        cwd=small_packet.office.root,
        env=surroundings(),
        capture_output=True,
        text=True,
        check=False,
    )
    assert (said.returncode, said.stdout) == (2, "")
    assert "jobs/26-041/job.yaml:4:5: error[aliases-refused]" in said.stderr
    assert "Traceback" not in said.stderr


def odd_notes(orientation: int) -> bytes:
    """Return the notes of a camera that wrote a word where a number belongs, and a table longer than its file."""
    notes = piexif.load(exif(orientation=orientation))
    notes["GPS"][piexif.GPSIFD.GPSAltitudeRef] = 0
    notes["0th"][piexif.ImageIFD.Software] = b"camera 7 of the crew"
    made = bytearray(piexif.dump(notes))
    altitude = made.index(b"\x00\x05\x00\x01\x00\x00\x00\x01")
    made[altitude + 3] = 2  # the kind "text"
    software = made.index(b"\x01\x31\x00\x02")
    made[software + 4 : software + 8] = b"\x00\x0f\xff\xff"  # a megabyte of it
    return bytes(made)


@pytest.mark.parametrize("orientation", [1, 6])
def test_a_photo_with_senseless_notes_is_shown_upright_and_quietly(
    small_packet: Packet, tmp_path: Path, orientation: int
) -> None:
    plain = picture(tmp_path / "plain.jpg", orientation=orientation)
    with Image.open(plain) as image:
        image.save(
            small_packet.office.job / "photos" / "P01.jpg", "JPEG", quality=95, exif=odd_notes(orientation)
        )
    said = subprocess.run(
        [sys.executable, "-m", "packet", "build"], cwd=small_packet.office.root, env=surroundings(),
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert (said.returncode, said.stderr) == (0, "")
    photos = (small_packet.folder / "outside" / "photos").iterdir()
    (shown,) = (path for path in photos if not path.name.endswith("-small.jpg"))
    with Image.open(shown) as image:
        assert image.size == (64, 48)
        red, green, blue = image.convert("RGB").getpixel((8, 8))  # type: ignore[misc]
        assert red > 150 > green + blue


def test_goods_that_cover_nothing_are_refused(small_packet: Packet, packet_command: Command) -> None:
    goods = "bought: [{id: A, item: shingle, unit: bundle, delivered: 7, cover_each: 0 sq ft}]\n"
    small_packet.office.write(SMALL + goods)
    assert refused(small_packet, packet_command)["code"] == "out-of-range"
