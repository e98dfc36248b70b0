"""A disk that is full, and folders that may not be written or read: one clear problem, and the packet there was."""

import errno
import os
import re
import resource
import shutil
import stat
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.build_job.conftest import Packet
from tests.build_job.pages import tree
from tests.build_job.test_killed_builds import ONE, OTHER, Killer, Round, telling
from tests.build_job.test_killed_builds import killer as killer
from tests.support.office import NUMBER
from tests.support.process import surroundings

#: Runs a program as a user who is not above permissions; a container runs tests as one who is.
AS_ANYBODY = (
    ("setpriv", "--bounding-set=-dac_override,-dac_read_search", "--inh-caps=-dac_override,-dac_read_search")
    if os.geteuid() == 0
    else ()
)


def run(root: Path, *arguments: str, before: Callable[[], None] | None = None) -> tuple[int, str, str]:
    """Run ``packet`` as anybody, and return its exit code and what it wrote."""
    done = subprocess.run(
        [*AS_ANYBODY, sys.executable, "-m", "packet", *arguments], cwd=root, env=surroundings(), text=True,
        capture_output=True, check=False, preexec_fn=before,
    )  # fmt: skip
    assert "Traceback" not in done.stderr, done.stderr
    return done.returncode, done.stdout, done.stderr


@pytest.fixture
def locked() -> Iterator[Callable[..., None]]:
    """Take permissions away from files and folders until the test ends."""
    before: dict[Path, int] = {}

    def lock(*paths: Path, mode: int = 0o555) -> None:
        for path in paths:
            before.setdefault(path, stat.S_IMODE(path.stat().st_mode))
        for path in paths:
            path.chmod(mode)

    yield lock
    for path, mode in before.items():
        path.chmod(mode)


def test_full_at_any_write_the_old_packet_stays(small_packet: Packet, killer: Killer) -> None:
    struck = Round(small_packet, killer, exchange=True)
    kinds = re.compile(
        r"open|exchange|os\.rename|os\.mkdir \.work-[^/]*$"
    )  # other folders may be there already
    writes = [n for n in telling(struck.acts, 8) if n <= struck.swapped and kinds.match(struck.acts[n])]
    assert len(writes) >= 10
    struck.turn()
    for at in writes:
        assert killer.strike(small_packet, at, "ENOSPC") == 2, struck.acts[at]
        refusal = killer.acts()[-1]
        assert refusal.startswith("refused "), struck.acts[at]
        assert refusal.endswith(f"/out/{NUMBER}:1:1: output-unwritable"), refusal
        assert tree(small_packet.folder) == struck.trees[struck.before], struck.acts[at]
        assert small_packet.left_over() == [], struck.acts[at]
    assert small_packet.build().made
    assert tree(small_packet.folder) == struck.trees[struck.now]


def test_a_sweep_that_fails_spoils_no_build(small_packet: Packet, killer: Killer) -> None:
    struck = Round(small_packet, killer, exchange=True)
    removing = next(n for n, act in enumerate(struck.acts) if act.startswith("os.remove"))
    struck.turn()
    assert killer.strike(small_packet, removing, "EIO") == 0
    assert tree(small_packet.folder) == struck.trees[ONE]


@pytest.fixture
def small_disk(small_packet: Packet) -> Iterator[Callable[[int], None]]:
    """Move the packets to a disk of their own with so many bytes left; only a superuser may do so."""
    out = small_packet.folder.parent
    mounted = False

    def mount(free: int) -> None:
        nonlocal mounted
        kept = out.with_name("kept")
        shutil.move(out, kept)
        out.mkdir()
        used = sum(-(-path.stat().st_size // 4096) * 4096 for path in kept.rglob("*") if path.is_file())
        size = f"size={used + free},mode=755"
        done = subprocess.run(
            ["mount", "-t", "tmpfs", "-o", size, "tmpfs", str(out)], capture_output=True, check=False
        )
        if done.returncode:
            pytest.skip(
                "this machine lets nobody make a small disk; the same is tested with writes that fail"
            )
        mounted = True
        shutil.copytree(kept, out, dirs_exist_ok=True)

    yield mount
    if mounted:
        subprocess.run(["umount", str(out)], check=True)


@pytest.mark.parametrize("free", [0, 100_000, 400_000])
def test_a_disk_that_really_is_full_says_so(
    small_packet: Packet, small_disk: Callable[[int], None], free: int
) -> None:
    before = tree(small_packet.folder)
    small_disk(free)
    small_packet.office.replaced(ONE, OTHER)
    code, said, error = run(small_packet.office.root, "build")
    assert (code, said) == (2, "")
    assert (
        f"out/{NUMBER}: error[output-unwritable]: the packet can't be written: no space left on device"
        in error
    )
    assert error.count("error[") == 1
    assert tree(small_packet.folder) == before
    assert small_packet.left_over() == []


@pytest.mark.parametrize("most", [1_000, 20_000, 60_000])
def test_a_limit_on_the_size_of_files_says_so(small_packet: Packet, most: int) -> None:
    before = tree(small_packet.folder)
    small_packet.office.replaced(ONE, OTHER)

    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))

    code, said, error = run(small_packet.office.root, "build", before=limit)
    assert (code, said) == (2, "")
    assert (
        f"error[output-unwritable]: the packet can't be written: {os.strerror(errno.EFBIG).lower()}" in error
    )
    assert tree(small_packet.folder) == before
    assert small_packet.build().made
    assert small_packet.left_over() == []


def test_a_folder_for_packets_that_may_not_be_written_says_so(
    small_packet: Packet, locked: Callable[..., None]
) -> None:
    root, out = small_packet.office.root, small_packet.folder.parent
    before = tree(small_packet.folder)
    (out / ".work-26-999-0011aabb").mkdir()  # left by a killed build; it can't be swept now
    locked(out, small_packet.folder)
    code, said, _ = run(root, "build")
    assert (code, "unchanged" in said) == (0, True)
    small_packet.office.replaced(ONE, OTHER)
    code, said, error = run(root, "build")
    assert (code, said) == (2, "")
    assert "error[output-unwritable]: the packet can't be written: permission denied" in error
    assert "Make room or permit writing below out/" in error
    assert tree(small_packet.folder) == before


def test_an_office_that_may_not_be_written_says_so(small_packet: Packet, locked: Callable[..., None]) -> None:
    root = small_packet.office.root
    shutil.rmtree(root / "out")
    locked(root)
    code, said, error = run(root, "build")
    assert (code, said) == (2, "")
    assert f"out/{NUMBER}: error[output-unwritable]: the packet can't be written: permission denied" in error


def test_jobs_shared_data_and_templates_may_be_read_only(
    small_packet: Packet, locked: Callable[..., None]
) -> None:
    office = small_packet.office
    office.file("templates/pages/scope.md.j2", '{% extends "default:pages/scope.md.j2" %}')
    office.replaced(ONE, OTHER)
    inputs = [office.root / name for name in ("jobs", "shared", "templates")]
    below = [path for folder in inputs for path in folder.rglob("*")]
    locked(*(path for path in below if path.is_file()), mode=0o444)
    locked(*inputs, *(path for path in below if path.is_dir()))
    code, said, error = run(office.root, "build")
    assert (code, error) == (0, "")
    assert f"{NUMBER}: built" in said
    assert all(run(office.root, *command)[0] in (0, 1) for command in (("check",), ("figures", NUMBER)))


@pytest.mark.parametrize(
    ("name", "code", "shown"),
    [
        (f"jobs/{NUMBER}/job.yaml", "file-unreadable", f"jobs/{NUMBER}/job.yaml"),
        (f"jobs/{NUMBER}/photos.yaml", "file-unreadable", f"jobs/{NUMBER}/photos.yaml"),
        (f"jobs/{NUMBER}/photos/P01.jpg", "photo-unreadable", f"jobs/{NUMBER}/photos"),
        ("shared/office.yaml", "file-unreadable", "shared/office.yaml"),
        ("shared/words/en.yaml", "file-unreadable", "shared/words/en.yaml"),
        ("templates/pages/scope.md.j2", "template-bad", "templates/pages/scope.md.j2"),
    ],
)
def test_a_file_that_may_not_be_read_is_named(
    small_packet: Packet, locked: Callable[..., None], name: str, code: str, shown: str
) -> None:
    office = small_packet.office
    before = tree(small_packet.folder)
    path = office.root / name
    if not path.exists():
        office.file(
            name, '{% extends "default:pages/scope.md.j2" %}' if name.endswith("j2") else "packet: {name: A}"
        )
    locked(path, mode=0)
    for command in ("build", "check") if code != "template-bad" else ("build",):
        status, _, error = run(office.root, command)
        assert status == 2, (command, error)
        assert shown in error
        assert f"error[{code}]" in error or (command == "build" and "error[file-unreadable]" in error)
        assert "permission denied" in error or code == "photo-unreadable"
    assert tree(small_packet.folder) == before


@pytest.mark.parametrize("what", ["a file", "a link to nothing"])
def test_something_else_named_out_is_left_alone(small_packet: Packet, what: str) -> None:
    root = small_packet.office.root
    shutil.rmtree(root / "out")
    if what == "a file":
        (root / "out").write_text("mine")
    else:
        (root / "out").symlink_to("nowhere")
    code, said, error = run(root, "build")
    assert (code, said) == (2, "")
    assert error.startswith("out:")
    assert 'error[output-foreign]: "out" stands where the packet is written' in error
    assert (root / "out").is_symlink() or (root / "out").read_text() == "mine"


def test_a_file_too_large_for_the_memory_is_no_hindrance(small_packet: Packet) -> None:
    film = small_packet.office.job / "photos" / "roof.mp4"
    with film.open("wb") as file:
        file.truncate(700_000_000)  # takes no room on the disk

    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_AS, (800_000_000, 800_000_000))

    code, said, _ = run(small_packet.office.root, "build", before=limit)
    assert (code, f"{NUMBER}: built" in said) == (0, True)
