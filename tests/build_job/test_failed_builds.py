"""A build that fails or is killed leaves the packet there was, and the next build cleans up after it."""

import errno
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from packet.problems import Refused
from tests.build_job.conftest import DONE, Packet
from tests.build_job.pages import tree
from tests.support.office import NUMBER
from tests.support.pictures import picture
from tests.support.process import surroundings

Command = Callable[..., tuple[int, str, str]]


def scope(body: str) -> str:
    """Return a page of the office's own that says something before the rest."""
    return f'{{% extends "default:pages/scope.md.j2" %}}\n{{% block body %}}\n{body}\n\n{{{{ super() }}}}\n{{% endblock %}}\n'


BAD_PAGE = scope("{{ copy.nothing_there.more }}")
BROKEN_LINK = scope('<a href="nowhere.html">x</a>')
MARKDOWN_LINK = scope("[x](nowhere.md)")
FROM_A_NETWORK = scope('<img src="https://example.org/x.png" alt="x">')


def spoil_record(packet: Packet) -> None:
    packet.office.replaced("kind: patch", "kind: pach")


def spoil_photo(packet: Packet) -> None:
    (packet.office.job / "photos" / "P01.jpg").write_bytes(b"\xff\xd8\xff\xe0 cut off")


def lose_photo(packet: Packet) -> None:
    (packet.office.job / "photos" / "P01.jpg").unlink()


def half_photo(packet: Packet) -> None:
    path = packet.office.job / "photos" / "P01.jpg"
    picture(path, size=(640, 480))
    path.write_bytes(path.read_bytes()[:-2000])


def spoil_table(packet: Packet) -> None:
    packet.office.file("shared/tables/mine.yaml", "rows: [")


def spoil_words(packet: Packet) -> None:
    packet.office.file("shared/words/en.yaml", "pages: {index: [")


def page(text: str) -> Callable[[Packet], object]:
    """Return what gives the office a page of its own."""
    return lambda packet: packet.office.file("templates/pages/scope.md.j2", text)


#: What goes wrong, the code of its problem, and the file it is in.
FAILURES: dict[str, tuple[Callable[[Packet], object], str, str]] = {
    "record": (spoil_record, "not-one-of", "job.yaml:1:29"),
    "unreadable photo": (spoil_photo, "photo-unreadable", "photos.yaml:2:"),
    "missing photo": (lose_photo, "photo-missing", "photos.yaml:2:"),
    "photo cut short": (half_photo, "photo-unreadable", "photos.yaml:2:"),
    "table": (spoil_table, "bad-yaml", "mine.yaml:1:7:"),
    "words": (spoil_words, "bad-yaml", "en.yaml:1:16:"),
    "template": (page(BAD_PAGE), "template-bad", "scope.md.j2:3:"),
    "unclosed template": (page("{% if x %}"), "template-bad", "scope.md.j2:1:"),
    "raw link": (page(BROKEN_LINK), "site-failed", "templates: error"),
    "Markdown link": (page(MARKDOWN_LINK), "site-failed", "templates: error"),
    "network": (page(FROM_A_NETWORK), "site-failed", "templates: error"),
}


@pytest.mark.parametrize("failure", FAILURES)
def test_a_failed_build_says_why_and_changes_nothing(
    small_packet: Packet, packet_command: Command, failure: str
) -> None:
    before = tree(small_packet.folder)
    spoil, code, place = FAILURES[failure]
    spoil(small_packet)
    status, said, error = packet_command(small_packet.office.root, "build")
    assert (status, said) == (2, "")
    assert f"error[{code}]" in error
    assert place in error
    assert "Traceback" not in error
    assert error.count("error[") == 1
    assert f"Nothing was built for {NUMBER}." in error
    assert tree(small_packet.folder) == before
    assert small_packet.left_over() == []


def test_every_reason_of_a_failed_site_is_a_problem(small_packet: Packet) -> None:
    links = '<a href="one.html">x</a><a href="two.html">x</a>'
    page(BROKEN_LINK.replace('<a href="nowhere.html">x</a>', links))(small_packet)
    with pytest.raises(Refused) as refused:
        small_packet.build()
    whys = [problem.values["why"] for problem in refused.value.problems]
    assert [("one.html" in why, "two.html" in why) for why in whys] == [(True, False), (False, True)]


def test_a_fault_of_the_program_is_told_apart_and_changes_nothing(
    small_packet: Packet, packet_command: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = tree(small_packet.folder)
    small_packet.office.replaced("A nail backed out.", "Two nails.")
    monkeypatch.setattr("packet.site.pages.make_filters", lambda words: 1 // 0)
    status, _, error = packet_command(small_packet.office.root, "build")
    assert status == 70
    assert "ZeroDivisionError" in error
    assert "a fault of the program" in error
    assert tree(small_packet.folder) == before
    assert small_packet.left_over() == []


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EACCES])
@pytest.mark.parametrize("after", [0, 3, 40])
def test_a_disk_that_takes_no_more_leaves_the_packet_there_was(
    small_packet: Packet, packet_command: Command, monkeypatch: pytest.MonkeyPatch, number: int, after: int
) -> None:
    before = tree(small_packet.folder)
    small_packet.office.replaced("A nail backed out.", "Two nails.")
    opened, seen = Path.open, []

    def full(self: Path, mode: str = "r", *rest: object, **more: object) -> object:
        _refuse_after(seen, after, number, self, mode)
        return opened(self, mode, *rest, **more)  # type: ignore[call-overload]

    import builtins

    plain_open = builtins.open

    def also_full(file: object, mode: str = "r", *rest: object, **more: object) -> object:
        _refuse_after(seen, after, number, file, mode)
        return plain_open(file, mode, *rest, **more)  # type: ignore[call-overload]

    with monkeypatch.context() as patch:
        patch.setattr(Path, "open", full)
        patch.setattr(builtins, "open", also_full)
        status, _, error = packet_command(small_packet.office.root, "build")
    assert len(seen) > after, "the disk was asked"
    assert status == 2
    assert "error[output-unwritable]" in error
    assert os.strerror(number).lower() in error
    assert tree(small_packet.folder) == before
    assert small_packet.left_over() == []
    assert small_packet.build().made


def _refuse_after(seen: list[str], after: int, number: int, file: object, mode: str) -> None:
    if "w" in mode and ".work-" in str(file):
        seen.append(str(file))
        if len(seen) > after:
            raise OSError(number, os.strerror(number), str(file))


@pytest.mark.parametrize("share", [0.3, 0.7, 0.95])
def test_a_killed_command_leaves_one_whole_packet(small_packet: Packet, share: float) -> None:
    before = tree(small_packet.folder)
    arguments = [sys.executable, "-m", "packet", "build", "--quiet"]

    def start() -> subprocess.Popen[bytes]:
        return subprocess.Popen(arguments, cwd=small_packet.office.root, env=surroundings())

    small_packet.office.replaced("A nail backed out.", "Two nails.")
    begun = time.monotonic()
    assert start().wait() == 0
    whole_s = time.monotonic() - begun
    two = tree(small_packet.folder)
    small_packet.office.replaced("Two nails.", "A nail backed out.")
    child = start()
    time.sleep(whole_s * share)
    child.kill()
    child.wait()
    assert tree(small_packet.folder) in (before, two)
    small_packet.build()
    assert tree(small_packet.folder) == before
    shutil.rmtree(small_packet.folder)
    small_packet.build()
    assert small_packet.left_over() == []


def test_an_unchanged_job_is_not_written_again(small_packet: Packet, packet_command: Command) -> None:
    def times() -> dict[str, int]:
        return {str(path): path.stat().st_mtime_ns for path in sorted(small_packet.folder.rglob("*"))}

    before = times()
    assert not small_packet.build().made
    status, said, _ = packet_command(small_packet.office.root, "build")
    assert (status, f"{NUMBER}: unchanged" in said) == (0, True)
    assert times() == before


def test_a_build_sweeps_what_killed_builds_of_other_jobs_left(
    small_packet: Packet, packet_command: Command
) -> None:
    left = small_packet.office.root / "out" / ".work-26-999-0011aabb"
    left.mkdir()
    assert packet_command(small_packet.office.root, "build")[0] == 0
    assert not left.exists()


def remove(path: Path) -> None:
    path.unlink()


def edit(path: Path) -> None:
    data = bytearray(path.read_bytes())
    data[-1] ^= 1
    path.write_bytes(data)


@pytest.mark.parametrize("damage", [remove, edit])
@pytest.mark.parametrize(
    "name", ["outside/index.html", "office/packet.json", "outside/photos", ".packet-built.json"]
)
def test_a_damaged_packet_is_built_again(
    small_packet: Packet, damage: Callable[[Path], None], name: str
) -> None:
    whole = tree(small_packet.folder)
    path = small_packet.folder / name
    damage(next(path.iterdir()) if path.is_dir() else path)
    assert small_packet.build().made
    assert tree(small_packet.folder) == whole


@pytest.mark.parametrize(
    "name", ["outside/notes.txt", "notes.txt", "office/photos/more.jpg", "outside/.hidden"]
)
def test_a_file_added_to_a_packet_is_refused_and_kept(
    small_packet: Packet, packet_command: Command, name: str
) -> None:
    whole = tree(small_packet.folder)
    (small_packet.folder / name).write_text("mine")
    status, _, error = packet_command(small_packet.office.root, "build")
    assert status == 2
    assert "error[output-foreign]" in error
    assert name in error
    assert tree(small_packet.folder) == {**whole, name: b"mine"}
    (small_packet.folder / name).unlink()
    assert not small_packet.build().made


def test_what_a_file_browser_leaves_is_no_change(small_packet: Packet) -> None:
    (small_packet.folder / "outside" / ".DS_Store").write_text("")
    (small_packet.folder / "Thumbs.db").write_text("")
    assert not small_packet.build().made


CHANGES: dict[str, Callable[[Packet], object]] = {
    "record": lambda packet: packet.office.replaced("A nail backed out.", "Two nails."),
    "a remark in the record": lambda packet: packet.office.added("# looked at again"),
    "log": lambda packet: packet.office.log({**DONE, "shows": "The roof is done."}),
    "photo": lambda packet: picture(packet.office.job / "photos" / "P01.jpg", size=(80, 60)),
    "office card": lambda packet: packet.office.file("shared/office.yaml", "{name: A, address: B, phone: C}"),
    "words": lambda packet: packet.office.file("shared/words/en.yaml", "packet: {name: Roof packet}\n"),
    "template": lambda packet: packet.office.file(
        "templates/pages/scope.md.j2", '{% extends "default:pages/scope.md.j2" %}'
    ),
}


@pytest.mark.parametrize("change", CHANGES)
def test_any_change_builds_again(small_packet: Packet, change: str) -> None:
    CHANGES[change](small_packet)
    assert small_packet.build().made
    assert not small_packet.build().made


def test_a_linked_file_of_the_office_is_followed_when_it_changes(
    small_packet: Packet, tmp_path: Path
) -> None:
    card = small_packet.office.root / "shared" / "office.yaml"
    elsewhere = tmp_path / "card.yaml"
    shutil.move(card, elsewhere)
    card.symlink_to(elsewhere)
    small_packet.build()
    elsewhere.write_text("{name: Another firm, address: B, phone: C}")
    assert small_packet.build().made
    assert b"Another firm" in (small_packet.folder / "outside" / "packet.json").read_bytes()


def test_a_pipe_in_the_job_folder_does_not_stop_a_build(small_packet: Packet) -> None:
    os.mkfifo(small_packet.office.job / "pipe")
    assert not small_packet.build().made


@pytest.mark.parametrize("fails", [False, True])
def test_a_build_writes_below_out_and_nowhere_else(
    small_packet: Packet, packet_command: Command, fails: bool
) -> None:
    root = small_packet.office.root

    def rest() -> dict[str, tuple[int, bytes]]:
        found = {}
        for path in sorted(root.rglob("*")):
            if not path.is_relative_to(root / "out"):
                found[str(path)] = (path.stat().st_mtime_ns, b"" if path.is_dir() else path.read_bytes())
        return found

    if fails:
        spoil_record(small_packet)
    else:
        small_packet.office.replaced("A nail backed out.", "Two nails.")
    before = rest()
    for command in (("build",), ("check",), ("figures", NUMBER, "--json")):
        packet_command(root, *command)
    assert rest() == before


def test_a_record_that_changes_while_it_is_built_is_built_again(small_packet: Packet) -> None:
    before = tree(small_packet.folder)
    text = small_packet.office.text
    small_packet.office.added("complaint: A stain.")

    def edit_between(step: str) -> None:
        if step == "record":  # the key of the record was taken, and the record is about to be read
            small_packet.office.write(text.replace("A nail backed out.", "Two nails."))
        if step == "office":
            small_packet.office.write(f"{text.rstrip()}\ncomplaint: A stain.\n")

    small_packet.build(tell=edit_between)
    assert b"Two nails." in (small_packet.folder / "outside" / "packet.json").read_bytes()
    assert small_packet.build().made
    assert b"A stain." in (small_packet.folder / "outside" / "packet.json").read_bytes()
    small_packet.office.write(text)
    small_packet.build()
    assert tree(small_packet.folder) == before
