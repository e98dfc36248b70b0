"""The program as others get it: sdist, wheels, an environment of its own, an office far from the checkout."""

import os
import shutil
import subprocess
import sys
import tarfile
import zipfile
from collections.abc import Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.support.office import DEMO_JOB, ROOT

#: Of the checkout, what a packet can be built from.
PROGRAM_PARTS = ("packet", "shared", "templates", "jobs")


@dataclass(frozen=True)
class Distributions:
    """What ``python -m build`` made, as bytes by name inside the archive."""

    wheel_file: Path
    wheel: Mapping[str, bytes]
    wheel_of_sdist: Mapping[str, bytes]
    sdist: Mapping[str, bytes]


@dataclass(frozen=True)
class Program:
    """A way to start ``packet``, and the folder to start it in."""

    start: tuple[str, ...]
    folder: Path

    def run(self, *arguments: str, code: int | None = 0) -> subprocess.CompletedProcess[str]:
        """Run a command; any exit code is right when ``code`` is None."""
        done = run([*self.start, *arguments], self.folder)
        assert code is None or done.returncode == code, done.stdout + done.stderr
        return done

    def built(self) -> dict[str, bytes]:
        """Build, and return the published files; the receipts, which also stand for the program, left out."""
        self.run("build")
        out = self.folder / "out" / DEMO_JOB.name
        files = (path for path in out.rglob("*") if path.is_file() and not path.name.startswith(".packet-"))
        return {path.relative_to(out).as_posix(): path.read_bytes() for path in files}


def run(command: list[str], folder: Path) -> subprocess.CompletedProcess[str]:
    """Run a command as on a machine that knows nothing of the checkout."""
    environment = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
    environment |= {"PYTHONDONTWRITEBYTECODE": "1", "NO_COLOR": "1"}
    return subprocess.run(
        command, cwd=folder, env=environment, capture_output=True, encoding="utf-8", check=False
    )


def _made(kind: str, source: Path, target: Path) -> Path:
    """Build one distribution from a source folder and return its file."""
    done = run(
        [sys.executable, "-m", "build", "--no-isolation", f"--{kind}", "--outdir", str(target), str(source)],
        target,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return next(target.glob("*.whl" if kind == "wheel" else "*.tar.gz"))


def _unzipped(file: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(file) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


@pytest.fixture(scope="session")
def distributions(tmp_path_factory: pytest.TempPathFactory) -> Distributions:
    """Sdist and wheel of the checkout, and the wheel of the sdist."""
    here, there, again, unpacked = (
        tmp_path_factory.mktemp(name) for name in ("wheel", "sdist", "again", "unpacked")
    )
    with ThreadPoolExecutor(2) as pool:
        wheel, sdist = pool.map(_made, ("wheel", "sdist"), (ROOT, ROOT), (here, there))
    with tarfile.open(sdist) as archive:
        archive.extractall(unpacked, filter="data")
    source = next(unpacked.iterdir())
    return Distributions(
        wheel_file=wheel,
        wheel=_unzipped(wheel),
        wheel_of_sdist=_unzipped(_made("wheel", source, again)),
        sdist={
            path.relative_to(source).as_posix(): path.read_bytes()
            for path in source.rglob("*")
            if path.is_file()
        },
    )


@pytest.fixture(scope="session")
def environment(distributions: Distributions, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of commands of an environment in which the wheel, not the checkout, is installed.

    The libraries are those of the running environment, by a path file. Path files inside that folder, and
    with them an editable checkout, are not followed.
    """
    folder = tmp_path_factory.mktemp("environment")
    made = run([sys.executable, "-m", "venv", "--without-pip", "."], folder)
    assert made.returncode == 0, made.stderr
    commands = folder / ("Scripts" if os.name == "nt" else "bin")
    pip = [sys.executable, "-m", "pip", "--python", str(commands / "python"), "install", "--quiet"]
    done = run([*pip, "--no-deps", "--no-index", "--no-compile", str(distributions.wheel_file)], folder)
    assert done.returncode == 0, done.stderr
    (own,) = (path.parent for path in folder.glob("**/site-packages/packet"))
    libraries = [entry for entry in sys.path if entry.endswith(("site-packages", "dist-packages"))]
    (own / "libraries.pth").write_text("".join(f"{entry}\n" for entry in libraries), encoding="utf-8")
    return commands


def _office(folder: Path) -> Path:
    """Make an office of the demo job and the office's card, and of nothing else."""
    shutil.copytree(DEMO_JOB, folder / "jobs" / DEMO_JOB.name)
    (folder / "shared").mkdir()
    shutil.copy(ROOT / "shared" / "office.yaml", folder / "shared")
    return folder


@pytest.fixture
def office(environment: Path, tmp_path: Path) -> Program:
    """The installed program in an office outside the checkout."""
    return Program((str(environment / "packet"),), _office(tmp_path / "the office"))


@pytest.fixture(scope="session")
def installed(environment: Path, tmp_path_factory: pytest.TempPathFactory) -> Program:
    """As ``office``, but shared: a test changes nothing in it."""
    return Program(
        (str(environment / "packet"),), _office(tmp_path_factory.mktemp("installed") / "the office")
    )


@pytest.fixture(scope="session")
def checkout(tmp_path_factory: pytest.TempPathFactory) -> Program:
    """The program in a checkout of its own, a copy, so that nothing is written in this one."""
    folder = tmp_path_factory.mktemp("checkout")
    for part in PROGRAM_PARTS:
        shutil.copytree(ROOT / part, folder / part, ignore=shutil.ignore_patterns("__pycache__"))
    return Program((sys.executable, "-m", "packet"), folder)
