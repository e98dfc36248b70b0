"""The zip of a copy: what is in it, that it is sound, and that an earlier one outlives every failure."""

import errno
import json
import os
import random
import stat
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from filelock import FileLock

from packet.build import RECEIPT_NAME
from packet.handover.note import NOTE_NAME
from packet.handover.zipping import Zipped, first_difference, folder_name, write_zip, zip_copy
from packet.problems import Refused
from packet.readers import READERS, Reader
from tests.support.built import packet_of
from tests.support.office import NUMBER, Office

INDEX_JSON = "search/search_index.json"


def zipped(office: Office, reader: Reader = "outside") -> Zipped:
    return zip_copy(office.workspace, packet_of(office), reader)


def contents(file: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(file) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


@pytest.mark.parametrize("reader", READERS)
def test_it_holds_the_copy_in_one_folder_and_the_note_beside_it(ready: Office, reader: Reader) -> None:
    made = zipped(ready, reader)
    folder = ready.root / "out" / NUMBER / reader
    built = {p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()}
    assert built.pop(INDEX_JSON)
    found = contents(made.file)
    assert b"UNZIP FIRST" in found.pop(NOTE_NAME)
    assert found == {f"26-041-{reader}/{name}": content for name, content in built.items()}
    assert made.file == ready.root / "out" / f"26-041-{reader}.zip"
    assert (made.size, made.files) == (made.file.stat().st_size, len(found) + 1)


def test_no_leftovers_of_theme_or_build_are_in_it(ready: Office) -> None:
    names = " ".join(contents(zipped(ready).file))
    for leftover in (".map", "/lunr", "sitemap", "404", "search_index.json", ".packet", ".DS_Store", "/."):
        assert leftover not in names


def test_droppings_of_a_file_browser_stay_behind(ready: Office) -> None:
    (ready.root / "out" / NUMBER / "outside" / "Thumbs.db").write_text("x")
    assert not [name for name in contents(zipped(ready).file) if "Thumbs" in name]


def test_members_are_plain_files_with_plain_names(ready: Office) -> None:
    with zipfile.ZipFile(zipped(ready).file) as archive:
        members = archive.infolist()
    names = [member.filename for member in members]
    assert len(set(names)) == len(names)
    assert names[0] == NOTE_NAME
    assert names[1:] == sorted(names[1:])
    for member in members:
        assert member.filename.isascii()
        assert not member.filename.startswith("/")
        assert not {"..", "", "\\"} & set(member.filename.split("/"))
        assert member.date_time == (1980, 1, 1, 0, 0, 0)
        assert member.create_system == 3
        assert member.external_attr >> 16 == stat.S_IFREG | 0o644


def test_text_is_packed_and_the_zip_is_less_than_half_of_one_that_stores(
    ready: Office, tmp_path: Path
) -> None:
    made = zipped(ready)
    plain = tmp_path / "stored.zip"
    with zipfile.ZipFile(plain, "w", zipfile.ZIP_STORED) as archive:
        for name, content in contents(made.file).items():
            archive.writestr(name, content)
    assert made.size < 0.5 * plain.stat().st_size


def test_what_packing_does_not_make_smaller_is_stored(tmp_path: Path) -> None:
    noise = random.Random(1).randbytes(5000)
    contents = {"photo.jpg": noise, "drawn.jpg": noise + bytes(5000), "page.html": b"<p>one</p>" * 500}
    write_zip(tmp_path / "x.zip", contents)
    with zipfile.ZipFile(tmp_path / "x.zip") as archive:
        how = {member.filename: member.compress_type for member in archive.infolist()}
    assert how == {
        "photo.jpg": zipfile.ZIP_STORED,
        "drawn.jpg": zipfile.ZIP_DEFLATED,
        "page.html": zipfile.ZIP_DEFLATED,
    }


def test_the_same_packet_gives_the_same_bytes_anywhere_at_any_time(ready: Office) -> None:
    first = zipped(ready).file.read_bytes()
    for path in (ready.root / "out" / NUMBER).rglob("*"):
        os.utime(path, (1_900_000_000, 1_900_000_000))
        path.chmod(0o700)
    moved = ready.root.rename(ready.root.with_name("moved [1] #2"))
    again = Office.__new__(Office)
    again.root, again.job = moved, moved / "jobs" / NUMBER
    (moved / "out" / "26-041-outside.zip").unlink()
    assert zipped(again).file.read_bytes() == first


@pytest.mark.parametrize(
    ("job", "folder"),
    [
        ("26-041", "26-041-outside"),
        ("26-041 Müller #2", "26-041-Muller-2-outside"),
        ("con.x", "con-x-outside"),
        ("屋根", "packet-outside"),
        ("..a", "a-outside"),
    ],
)
def test_the_folder_has_a_name_any_system_can_unzip(job: str, folder: str) -> None:
    assert folder_name(job, "outside") == folder


def test_a_job_with_an_awkward_name_is_zipped(ready: Office) -> None:
    job = ready.job.rename(ready.job.with_name("Müller #2"))
    (job / "job.yaml").write_text(ready_record(job).replace("26-041", '"Müller #2"'), encoding="utf-8")
    office = Office.__new__(Office)
    office.root, office.job = ready.root, job
    made = zipped(office)
    assert made.file.name == "Müller #2-outside.zip"
    assert "Muller-2-outside/index.html" in contents(made.file)


def ready_record(job: Path) -> str:
    return (job / "job.yaml").read_text(encoding="utf-8")


def full(number: int) -> Callable[..., None]:
    def refuse(*arguments: object, **more: object) -> None:
        raise OSError(number, os.strerror(number))

    return refuse


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EACCES])
@pytest.mark.parametrize(
    "step", ["zipfile.ZipFile.writestr", "zipfile.ZipFile.close", "pathlib.Path.replace"]
)
def test_a_disk_that_takes_no_more_leaves_the_earlier_zip(
    ready: Office, monkeypatch: pytest.MonkeyPatch, step: str, number: int
) -> None:
    built, earlier = packet_of(ready), zipped(ready).file.read_bytes()
    with monkeypatch.context() as patch:
        patch.setattr(step, full(number))
        with pytest.raises(Refused) as refused:
            zip_copy(ready.workspace, built, "outside")
    (problem,) = refused.value.problems
    assert (problem.code, problem.values["reason"]) == ("zip-unwritable", os.strerror(number).lower())
    assert_only(ready, earlier)


def test_a_second_run_waits_for_the_first_and_then_gives_up(
    ready: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    built = packet_of(ready)
    monkeypatch.setattr("packet.handover.zipping._PATIENCE_S", 0.1)
    with FileLock(ready.root / "out" / f".lock-{NUMBER}-outside"), pytest.raises(Refused) as refused:
        zip_copy(ready.workspace, built, "outside")
    assert [problem.code for problem in refused.value.problems] == ["job-busy"]
    assert not list((ready.root / "out").glob("*.zip"))


@pytest.mark.parametrize("gone", ["outside/packet.json", RECEIPT_NAME])
def test_a_packet_that_is_gone_before_it_is_read_is_not_zipped(ready: Office, gone: str) -> None:
    built = packet_of(ready)
    (built.folder / gone).unlink()
    with pytest.raises(Refused) as refused:
        zip_copy(ready.workspace, built, "outside")
    assert [problem.code for problem in refused.value.problems] == ["zip-differs"]


def test_a_folder_where_the_zip_should_be_is_left_alone(ready: Office) -> None:
    kept = ready.file("out/26-041-outside.zip/mine.txt", "mine")
    with pytest.raises(Refused) as refused:
        zipped(ready)
    assert refused.value.problems[0].code == "zip-unwritable"
    assert kept.read_text() == "mine"


def change(path: Path) -> None:
    path.write_bytes(path.read_bytes() + b" ")


@pytest.mark.parametrize("spoil", [change, Path.unlink])
def test_a_packet_that_changes_while_it_is_zipped_is_not_zipped(
    ready: Office, spoil: Callable[[Path], None]
) -> None:
    built, earlier = packet_of(ready), zipped(ready).file.read_bytes()
    spoil(built.folder / "outside" / "sources.html")
    with pytest.raises(Refused) as refused:
        zip_copy(ready.workspace, built, "outside")
    (problem,) = refused.value.problems
    assert problem.code == "zip-differs"
    assert problem.found.endswith("sources.html")
    assert_only(ready, earlier)


def test_a_name_that_not_every_system_can_unzip_is_refused(ready: Office) -> None:
    built = packet_of(ready)
    receipt = json.loads((built.folder / RECEIPT_NAME).read_text())
    receipt["files"]["outside/assets/ünser logo.png"] = "0" * 64
    (built.folder / RECEIPT_NAME).write_text(json.dumps(receipt))
    with pytest.raises(Refused) as refused:
        zip_copy(ready.workspace, built, "outside")
    assert [(p.code, p.found) for p in refused.value.problems] == [("zip-name", "assets/ünser logo.png")]
    assert not list((ready.root / "out").glob("*.zip"))


def assert_only(office: Office, earlier: bytes) -> None:
    """The earlier zip is there, and no half-made one."""
    assert (office.root / "out" / "26-041-outside.zip").read_bytes() == earlier
    assert not list((office.root / "out").glob(".*.part"))


def write(file: Path, *members: tuple[str, bytes]) -> Path:
    with zipfile.ZipFile(file, "w") as archive:
        for name, content in members:
            archive.writestr(name, content)
    return file


#: SHA-256 of "one" and of "two".
ONE = "7692c3ad3540bb803c020b3aee66cd8887123234ea0c6e7143c0add73ff431ed"
TWO = "3fc4ccfe745870e2c0d99f71f30ff0656c8dedd41cc1d7d3d376b0dbe685e2f3"


@pytest.mark.filterwarnings("ignore:Duplicate name")
@pytest.mark.parametrize(
    ("members", "differing"),
    [
        ([("a", b"one"), ("b", b"two")], None),
        ([("a", b"one"), ("b", b"one")], "b"),
        ([("a", b"one")], "x.zip"),
        ([("a", b"one"), ("b", b"two"), ("c", b"two")], "x.zip"),
        ([("a", b"one"), ("b", b"two"), ("b", b"two")], "x.zip"),
    ],
)
def test_a_zip_is_held_against_what_should_be_in_it(
    tmp_path: Path, members: list[tuple[str, bytes]], differing: str | None
) -> None:
    file = write(tmp_path / "x.zip", *members)
    assert first_difference(file, {"a": ONE, "b": TWO}) == differing


@pytest.mark.parametrize("damage", [lambda data: data.replace(b"one", b"ome", 1), lambda data: data[:-10]])
def test_a_damaged_zip_is_noticed(tmp_path: Path, damage: Callable[[bytes], bytes]) -> None:
    file = write(tmp_path / "x.zip", ("a", b"one"), ("b", b"two"))
    file.write_bytes(damage(file.read_bytes()))
    assert first_difference(file, {"a": ONE, "b": TWO}) in ("a", "x.zip")


def test_packed_bytes_that_can_not_be_unpacked_are_noticed(tmp_path: Path) -> None:
    write_zip(tmp_path / "x.zip", {"a": b"one " * 1000})
    data = bytearray((tmp_path / "x.zip").read_bytes())
    data[31] = 0xFF  # the first packed byte: no block is of that kind
    (tmp_path / "x.zip").write_bytes(data)
    assert first_difference(tmp_path / "x.zip", {"a": ONE}) == "x.zip"
