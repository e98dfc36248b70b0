"""A build struck at any act: one whole packet is there or comes back, nothing is mixed, and the next build cleans up."""

import json
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from packet.site.publish import recover
from tests.build_job.conftest import Packet
from tests.build_job.pages import tree
from tests.support.office import NUMBER, ROOT, Office
from tests.support.process import surroundings

#: Causes of the leak, in turn; each gives another packet.
ONE, OTHER = "A nail backed out.", "Two nails backed out."

TARGET = f"os.rename {NUMBER}"


@dataclass
class Killer:
    """The process that forks builds.

    Attributes:
        process: The process.
        notes: File a build leaves its acts in.
    """

    process: "subprocess.Popen[str]"
    notes: Path

    def strike(self, packet: Packet, at: int, blow: str = "SIGKILL", *, exchange: bool = True) -> int:
        """Build, struck at the act of this number (-1: none), and return how it ended."""
        order = {"root": str(packet.office.root), "job": NUMBER, "at": at, "blow": blow, "exchange": exchange}
        self.notes.unlink(missing_ok=True)
        assert self.process.stdin
        assert self.process.stdout
        self.process.stdin.write(json.dumps({**order, "acts": str(self.notes)}) + "\n")
        self.process.stdin.flush()
        return int(self.process.stdout.readline())

    def acts(self) -> list[str]:
        """Return what the last build did; empty when it was killed."""
        return json.loads(self.notes.read_text()) if self.notes.exists() else []


@pytest.fixture(scope="session")
def killer(tmp_path_factory: pytest.TempPathFactory, _built_office: Office) -> Iterator[Killer]:
    folder = tmp_path_factory.mktemp("killer")
    shutil.copytree(_built_office.root, folder / "warm", ignore=shutil.ignore_patterns("out"))
    arguments = [sys.executable, "-m", "tests.build_job.killer", str(folder / "warm")]
    process = subprocess.Popen(
        arguments, cwd=ROOT, env=surroundings(), stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    yield Killer(process, folder / "acts.json")
    assert process.stdin
    process.stdin.close()
    assert process.wait(timeout=60) == 0


@dataclass
class Round:
    """A packet of the old record, and what a build of the new record does."""

    packet: Packet
    killer: Killer
    exchange: bool

    def __post_init__(self) -> None:
        self.trees = {ONE: tree(self.packet.folder)}
        self.now = ONE
        self.turn()
        assert self.killer.strike(self.packet, -1, exchange=self.exchange) == 0
        self.acts = self.killer.acts()
        self.trees[OTHER] = tree(self.packet.folder)
        assert self.trees[ONE] != self.trees[OTHER]

    @property
    def before(self) -> str:
        return ONE if self.now == OTHER else OTHER

    @property
    def swapped(self) -> int:
        """Number of the act that brings the new packet in."""
        renames = [
            number for number, act in enumerate(self.acts) if act.startswith((TARGET, "os.rename .work-"))
        ]
        return self.acts.index("exchange") if self.exchange else renames[1]

    def turn(self) -> None:
        """Write the other cause into the record."""
        self.packet.office.replaced(self.now, OTHER if self.now == ONE else ONE)
        self.now = OTHER if self.now == ONE else ONE

    def hold(self, at: int, blow: str = "SIGKILL") -> None:
        """Strike at one act, and hold what must be true then and after the next build."""
        act = self.acts[at]
        self.turn()
        code = self.killer.strike(self.packet, at, blow, exchange=self.exchange)
        assert code == {"SIGKILL": -9, "SIGTERM": -15, "SIGINT": 130}[blow], act
        if not self.packet.folder.exists():
            assert not self.exchange, act
            assert blow != "SIGINT", act
            assert recover(self.packet.folder.parent) == (NUMBER,)
        assert tree(self.packet.folder) == self.trees[self.now if at > self.swapped else self.before], act
        if blow == "SIGINT" and at <= self.swapped:
            assert self.packet.left_over() == [], act
        assert self.killer.strike(self.packet, -1, exchange=self.exchange) == 0, act
        assert tree(self.packet.folder) == self.trees[self.now], act
        if at <= self.swapped:  # a whole new packet is not built again, so nothing is swept by that
            assert self.packet.left_over() == [], act
        recover(self.packet.folder.parent)
        assert self.packet.left_over() == [], act


@pytest.fixture(params=[True, False], ids=["exchange", "two renames"])
def struck(request: pytest.FixtureRequest, small_packet: Packet, killer: Killer) -> Round:
    return Round(small_packet, killer, request.param)


def telling(acts: list[str], most_plain: int) -> list[int]:
    """Return the numbers of acts worth a blow: every step and change of a name, and some of the plain ones."""
    always = ("step ", "exchange", "os.rename")
    lists = (".packet-built.json", ".packet-output")
    kept = {n for n, act in enumerate(acts) if act.startswith(always) or act.endswith(lists)}
    for kind in ("os.mkdir", "open", "os.remove", "os.rmdir"):
        found = [n for n, act in enumerate(acts) if act.startswith(kind)]
        kept |= {*found[:1], *found[-1:], *found[:: max(len(found) // most_plain, 1)]}
    return sorted(kept)


def test_the_acts_of_a_build_are_all_seen(struck: Round) -> None:
    kinds = {act.partition(" ")[0] for act in struck.acts}
    assert kinds >= {
        "step",
        "open",
        "os.mkdir",
        "os.remove",
        "os.rmdir",
        "exchange" if struck.exchange else "os.rename",
    }
    assert sum(act.startswith("open .work-") for act in struck.acts) > 40
    assert [act for act in struck.acts if act.startswith("step")] == [
        "step record", "step photos", "step outside", "step office",
    ]  # fmt: skip


def test_killed_at_any_act_one_whole_packet_is_there(struck: Round) -> None:
    for at in telling(struck.acts, 2):
        struck.hold(at)


@pytest.mark.fuzz
def test_killed_at_every_single_act(struck: Round) -> None:
    for at in range(len(struck.acts)):
        struck.hold(at)


@pytest.mark.parametrize("blow", ["SIGTERM", "SIGINT"])
def test_told_to_stop_one_whole_packet_is_there(struck: Round, blow: str) -> None:
    for at in (*telling(struck.acts, 1)[::3], struck.swapped, struck.swapped + 1):
        struck.hold(at, blow)


def test_a_half_removed_old_packet_never_comes_back(small_packet: Packet, killer: Killer) -> None:
    struck = Round(small_packet, killer, exchange=False)
    removing = [number for number, act in enumerate(struck.acts) if act.startswith("os.remove")]
    struck.turn()
    assert killer.strike(small_packet, removing[len(removing) // 2], exchange=False) == -9
    shutil.rmtree(small_packet.folder)  # a person clears the job's folder away
    recover(small_packet.folder.parent)
    assert not small_packet.folder.exists()
    assert small_packet.left_over() == []


def start(root: Path, *arguments: str) -> "subprocess.Popen[str]":
    """Start the command itself, as at a terminal: a shell's background jobs are born deaf to Ctrl-C."""
    return subprocess.Popen(
        [sys.executable, "-m", "packet", "build", *arguments], cwd=root, env=surroundings(), text=True,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE,
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    )  # fmt: skip


def wait_for(happened: Callable[[], object], seconds: float = 60.0) -> None:
    until = time.monotonic() + seconds
    while not happened():
        assert time.monotonic() < until
        time.sleep(0.002)


@pytest.mark.parametrize(("number", "code"), [(signal.SIGINT, 130), (signal.SIGTERM, -signal.SIGTERM)])
def test_the_command_told_to_stop_says_so_and_changes_nothing(
    small_packet: Packet, number: signal.Signals, code: int
) -> None:
    before = tree(small_packet.folder)
    small_packet.office.replaced(ONE, OTHER)
    child = start(small_packet.office.root)
    wait_for(lambda: list((small_packet.office.root / "out").glob(".work-*")))
    child.send_signal(number)
    said, error = child.communicate()
    assert (child.returncode, said) == (code, "")
    assert error.strip() == ("Stopped." if number == signal.SIGINT else "")
    assert tree(small_packet.folder) == before
    assert small_packet.build().made
    assert small_packet.left_over() == []


def test_builds_beside_one_another_leave_whole_packets(small_packet: Packet) -> None:
    root, second = small_packet.office.root, "26-042"
    other = root / "jobs" / second
    shutil.copytree(small_packet.office.job, other)
    text = small_packet.office.text.replace(NUMBER, second)
    (other / "job.yaml").write_text(text)
    assert start(root).wait() == 0
    alone = {number: tree(root / "out" / number) for number in (NUMBER, second)}
    assert alone[NUMBER] != alone[second]
    small_packet.office.replaced(ONE, OTHER)
    (other / "job.yaml").write_text(text.replace(ONE, OTHER))
    children = [start(root), start(root, NUMBER), start(root, second), start(root, second, NUMBER)]
    gone = 0
    while any(child.poll() is None for child in children):
        gone += sum(not (root / "out" / number / "office" / "index.html").is_file() for number in alone)
        time.sleep(0.001)
    ends = [(child.returncode, child.communicate()[1]) for child in children]
    assert ends == [(0, "")] * 4
    assert gone == 0, "a reader found no packet while it was replaced"
    new = {number: tree(root / "out" / number) for number in (NUMBER, second)}
    assert all(new[number] != alone[number] for number in alone)
    shutil.rmtree(root / "out")
    assert start(root).wait() == 0
    assert {number: tree(root / "out" / number) for number in alone} == new
    left = {path.name for path in (root / "out").iterdir()}
    assert left == {NUMBER, second, ".cache", f".lock-{NUMBER}", f".lock-{second}"}


def test_a_record_edited_while_it_is_built_gives_one_of_the_two_packets(small_packet: Packet) -> None:
    root = small_packet.office.root
    whole = {ONE: tree(small_packet.folder)}
    small_packet.office.replaced(ONE, OTHER)
    small_packet.build()
    whole[OTHER] = tree(small_packet.folder)
    first = start(root)
    small_packet.office.replaced(OTHER, ONE)
    second = start(root)
    small_packet.office.replaced(ONE, OTHER)
    assert [(child.wait(), child.communicate()[1]) for child in (first, second)] == [(0, ""), (0, "")]
    assert tree(small_packet.folder) in whole.values()
    small_packet.build()
    assert tree(small_packet.folder) == whole[OTHER]
