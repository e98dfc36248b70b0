"""The same job gives the same bytes: after another job, in another folder, on another day."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from packet.build import build
from tests.build_job.everyfield import job_of, numbered, write_job
from tests.build_job.pages import tree
from tests.support.office import NUMBER, ROOT

#: A process in which every clock is years ahead, and in which no answer depends on an order of hashes.
ON_ANOTHER_DAY = """
import sys, time
from pathlib import Path

YEARS_S = 9 * 366 * 86_400
clocks = {name: getattr(time, name) for name in ("time", "localtime", "gmtime", "strftime", "time_ns")}
time.time = lambda: clocks["time"]() + YEARS_S
time.time_ns = lambda: clocks["time_ns"]() + YEARS_S * 10**9
time.localtime = lambda seconds=None: clocks["localtime"](time.time() if seconds is None else seconds)
time.gmtime = lambda seconds=None: clocks["gmtime"](time.time() if seconds is None else seconds)
time.strftime = lambda form, parts=None: clocks["strftime"](form, parts or time.localtime())

import datetime
for name in ("mkdocs.commands.build", "mkdocs.utils", "material", "packet.build", "packet.site.engine"):
    __import__(name)
real = datetime.datetime

class Later(real):
    @classmethod
    def now(cls, tz=None):
        return real.fromtimestamp(time.time(), tz)

    @classmethod
    def utcnow(cls):
        return real.fromtimestamp(time.time(), datetime.timezone.utc).replace(tzinfo=None)

    @classmethod
    def today(cls):
        return cls.now()

for module in list(sys.modules.values()):
    ours = module.__name__.split(".")[0] in ("mkdocs", "material", "packet")
    if ours and getattr(module, "datetime", None) is real:
        module.datetime = Later
datetime.datetime = Later

from packet.build import build
from packet.workspace import Workspace

root = Path(sys.argv[1])
assert build(Workspace(root), root / "jobs" / sys.argv[2]).made
"""


def office(root: Path, text: str = "plain{}word") -> Path:
    write_job(root, numbered(text))
    return root


def built(root: Path) -> dict[str, bytes]:
    """Build from nothing and return every byte that was published."""
    shutil.rmtree(root / "out", ignore_errors=True)
    made = build(*job_of(root))
    assert made.made
    return tree(made.folder)


@pytest.fixture(scope="module")
def first(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, bytes]]:
    root = office(tmp_path_factory.mktemp("first"))
    return root, built(root)


def differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    assert len(one) > 50
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))


def test_a_job_is_the_same_after_another_job_in_the_same_process(
    first: tuple[Path, dict[str, bytes]], tmp_path: Path
) -> None:
    root, before = first
    other = built(office(tmp_path / "b", "<b>{}</b> _another_ house"))
    assert differing(before, other)
    assert differing(before, built(root)) == []


def test_another_folder_gives_the_same_bytes(first: tuple[Path, dict[str, bytes]], tmp_path: Path) -> None:
    assert differing(first[1], built(office(tmp_path / "quite" / "another folder (2)"))) == []


def test_times_of_files_do_not_matter(first: tuple[Path, dict[str, bytes]], tmp_path: Path) -> None:
    root = office(tmp_path / "old")
    for path in root.rglob("*"):
        os.utime(path, (86_400, 86_400))
    assert differing(first[1], built(root)) == []


@pytest.mark.parametrize(("seed", "zone"), [("1", "Pacific/Kiritimati"), ("77", "America/Adak")])
def test_another_process_day_and_time_zone_give_the_same_bytes(
    first: tuple[Path, dict[str, bytes]], tmp_path: Path, seed: str, zone: str
) -> None:
    root = office(tmp_path / "later")
    surroundings = {
        **os.environ, "PYTHONHASHSEED": seed, "TZ": zone, "LC_ALL": "C", "SOURCE_DATE_EPOCH": "1",
        "PYTHONPATH": os.pathsep.join(filter(None, [str(ROOT), os.environ.get("PYTHONPATH")])),
    }  # fmt: skip
    subprocess.run(
        [sys.executable, "-c", ON_ANOTHER_DAY, str(root), NUMBER], env=surroundings, cwd=tmp_path, check=True
    )
    assert differing(first[1], tree(root / "out" / NUMBER)) == []


def test_the_clocks_of_that_process_do_run_ahead() -> None:
    """Hold that the script above moves the clocks, or the test says nothing."""
    asks = "from datetime import datetime\nprint(datetime.now().year, time.localtime().tm_year)"
    script = ON_ANOTHER_DAY.partition("from packet.build")[0] + asks
    said = subprocess.run(
        [sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=True
    )
    import time

    assert said.stdout.split() == [str(time.localtime(time.time() + 9 * 366 * 86_400).tm_year)] * 2
