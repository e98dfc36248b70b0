"""Packets built once for many tests; each office has every free-text field filled."""

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from packet.build import Built, build
from packet.cli.main import status
from packet.workspace import Workspace
from tests.build_job.everyfield import Filling, TextOf, job_of, numbered, write_job
from tests.conftest import SMALLEST
from tests.support.office import NUMBER, Office
from tests.support.pictures import picture


@dataclass(frozen=True)
class Filled:
    """An office whose texts are known by their places, and its packet."""

    root: Path
    filling: Filling
    packet: Path


@pytest.fixture(scope="session")
def fill_and_build(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Callable[[TextOf], Filled]]:
    """Write an office with texts of a test's own, and build it."""
    made: list[Path] = []

    def run(text_of: TextOf) -> Filled:
        root = tmp_path_factory.mktemp("office")
        made.append(root)
        filling = write_job(root, text_of)
        return Filled(root, filling, build(*job_of(root)).folder)

    yield run
    for root in made:
        shutil.rmtree(root)


@pytest.fixture(scope="session")
def plain(fill_and_build: Callable[[TextOf], Filled]) -> Filled:
    """The packet of a job whose texts are plain words."""
    return fill_and_build(numbered("plain{}word"))


#: Entry of the one photo in the smallest job.
DONE = {
    "id": "P01",
    "file": "photos/P01.jpg",
    "stage": "done",
    "shows": "Done.",
    "readers": ["outside", "office"],
}


@dataclass(frozen=True)
class Packet:
    """An office of a test's own with a built packet."""

    office: Office

    @property
    def folder(self) -> Path:
        return self.office.root / "out" / NUMBER

    def build(self, **how: Any) -> Built:
        return build(Workspace(self.office.root), self.office.job, **how)

    def left_over(self) -> list[str]:
        """Return what lies in ``out/`` beside packets, locks and the cache."""
        found = (path.name for path in (self.office.root / "out").iterdir())
        return sorted(name for name in found if name not in (NUMBER, ".cache", f".lock-{NUMBER}"))


@pytest.fixture(scope="session")
def _built_office(tmp_path_factory: pytest.TempPathFactory) -> Office:
    """The smallest job there is, with one photo, built once."""
    packet = Packet(Office(tmp_path_factory.mktemp("built") / "office", SMALLEST))
    picture(packet.office.job / "photos" / "P01.jpg")
    packet.office.log(DONE)
    assert packet.build().made
    return packet.office


@pytest.fixture
def small_packet(_built_office: Office, tmp_path: Path) -> Packet:
    """A copy of that office, which a test may spoil; a packet does not depend on where it lies."""
    office = Office(tmp_path / "office", SMALLEST)
    shutil.copytree(_built_office.root, office.root, dirs_exist_ok=True)
    return Packet(office)


@pytest.fixture
def packet_command(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Callable[..., Any]:
    """Run ``packet`` in a folder; returns its exit code and what it wrote to stdout and stderr."""

    def run(folder: Path, *arguments: str) -> tuple[int, str, str]:
        monkeypatch.chdir(folder)
        capsys.readouterr()
        code = status(list(arguments))
        said = capsys.readouterr()
        return code, said.out, said.err

    return run
