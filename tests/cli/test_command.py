"""The command as a whole: help, version, exit codes, faults of its own."""

import shlex
import subprocess
import sys

import click
import pytest

from packet import __version__
from packet.cli.main import COMMANDS, packet
from tests.cli.conftest import Run
from tests.support.office import ROOT, Office

#: What help must not load: each takes longer than the help itself.
HEAVY = {"pydantic", "yaml", "PIL", "mkdocs", "jinja2", "markdown"}

#: Commands whose example writes, or goes on until it is stopped; their own tests run them.
WRITING = {"build", "new", "pdf", "photos", "serve", "start", "zip"}


def command(name: str) -> click.Command:
    found = packet.get_command(click.Context(packet), name)
    assert found
    return found


def test_help_names_every_command_with_its_line(job_office: Office, run: Run) -> None:
    ran = run(job_office.root, "--help")
    assert (ran.code, ran.err) == (0, "")
    words = " ".join(ran.out.split())
    for name, line in COMMANDS.items():
        assert f"{name} {line}" in words


@pytest.mark.parametrize("name", COMMANDS)
def test_help_of_a_command_has_its_line_and_an_example(job_office: Office, run: Run, name: str) -> None:
    ran = run(job_office.root, name, "--help")
    assert ran.code == 0
    assert " ".join(ran.out.split()).count(f"Example: packet {name}") == 1
    assert (command(name).help or "").splitlines()[0] in (COMMANDS[name], f"{COMMANDS[name]}")
    assert "--quiet" in ran.out


@pytest.mark.parametrize("name", [name for name in COMMANDS if name not in WRITING])
def test_the_example_runs_on_the_demo_job(run: Run, name: str) -> None:
    example = (command(name).help or "").partition("Example: packet ")[2].partition(">")[0]
    ran = run(ROOT, *shlex.split(example))
    assert ran.code in ((0, 1) if name == "check" else (0,))
    assert ran.out


def test_version_is_printed(job_office: Office, run: Run) -> None:
    ran = run(job_office.root, "--version")
    assert (ran.code, ran.out.split()[0], ran.out.split()[-1]) == (0, "packet,", __version__)


@pytest.mark.parametrize("arguments", [["chekc"], ["check", "--loud"], ["schema", "--of", "roof"]])
def test_a_bad_command_exits_2_without_a_traceback(
    job_office: Office, run: Run, arguments: list[str]
) -> None:
    ran = run(job_office.root, *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert "Error:" in ran.err
    assert "Traceback" not in ran.err


@pytest.mark.parametrize("name", ["check", "build", "figures"])
def test_a_fault_of_the_program_exits_70_with_its_traceback(
    job_office: Office, run: Run, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    def broken(*arguments: object) -> None:
        raise ZeroDivisionError("a fault of ours")

    monkeypatch.setattr("packet.closeout.assemble.assemble", broken)
    ran = run(job_office.root, name, "26-041")
    assert ran.code == 70
    assert "Traceback (most recent call last)" in ran.err
    assert "ZeroDivisionError: a fault of ours" in ran.err
    assert ran.err.rstrip().endswith("a fault of the program, not of your record.")


def test_a_command_stopped_by_hand_says_so(
    job_office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stopped(*arguments: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("packet.closeout.assemble.assemble", stopped)
    ran = run(job_office.root, "check")
    assert ran.code == 130
    assert ran.err.strip() == "Stopped."


def test_help_loads_nothing_heavy() -> None:
    script = (
        "import sys; from packet.cli.main import status; code = status(['--help']);"
        "print('LOADED', *sorted({name.partition('.')[0] for name in sys.modules})); sys.exit(code)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True, cwd=ROOT
    )
    loaded = set(done.stdout.partition("LOADED")[2].split())
    assert "packet" in loaded
    assert not loaded & HEAVY


def test_it_runs_as_a_module() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "packet", "check", "no-such-job"], capture_output=True, text=True, cwd=ROOT
    )
    assert done.returncode == 2
    assert "error[no-such-job]" in done.stderr
