"""What README says can be typed: the two lines, the commands and their examples."""

import inspect
import re
import shlex
import subprocess

import click
import pytest

from packet.cli.main import COMMANDS, packet
from tests.support.office import ROOT

README = (ROOT / "README.md").read_text(encoding="utf-8")
#: A word in capitals stands for something the reader puts in; brackets for what may be left out.
TYPED = [
    re.sub(r"\[[^\]]*\]", "", fragment).replace("JOB", "26-041")
    for fragment in re.findall(r"`(packet [^`]+)`", README)
]


def first_block() -> list[str]:
    """Return the lines of README's first block of commands."""
    found = re.search(r"^```sh\n(.*?)^```$", README, re.MULTILINE | re.DOTALL)
    assert found
    return found[1].splitlines()


def help_of(name: str) -> tuple[click.Command, list[str]]:
    """Return a command and the paragraphs of its help."""
    command = packet.get_command(click.Context(packet), name)
    assert command is not None
    return command, inspect.cleandoc(command.help or "").split("\n\n")


def example_of(name: str) -> str:
    """Return the example a command's help shows."""
    return help_of(name)[1][-1].removeprefix("Example: ")


def parse(line: str) -> None:
    """Parse a typed command line without running it; click raises when it does not fit."""
    program, name, *arguments = shlex.split(line.partition(" > ")[0])
    assert program == "packet"
    assert name in COMMANDS, line
    help_of(name)[0].make_context(name, arguments)


def test_the_first_block_is_two_lines_for_a_fresh_machine() -> None:
    lines = first_block()
    assert len(lines) == 2
    builds, tests = lines
    for line in lines:
        assert "python3 -m venv .venv" in line
        assert "-c constraints.txt" in line
    assert builds.endswith(".venv/bin/packet build")
    assert "chromium" in tests
    assert "[test]" in tests
    assert ".venv/bin/python -m pytest" in tests


def test_ci_runs_the_second_line() -> None:
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    (picks,) = (line for line in script.splitlines() if line.startswith("line="))
    picked = subprocess.run(
        ["bash", "-euo", "pipefail", "-c", f'{picks}; printf "%s" "$line"'],
        cwd=ROOT, capture_output=True, encoding="utf-8", check=True,
    ).stdout  # fmt: skip
    assert picked == first_block()[1]
    assert 'bash -euo pipefail -c "$line"' in script
    assert (ROOT / ".ci" / "run").stat().st_mode & 0o111


def test_readme_names_every_command_and_no_other() -> None:
    named = {fragment.split()[1] for fragment in TYPED}
    assert named == set(COMMANDS)


@pytest.mark.parametrize("line", [*TYPED, *(example_of(name) for name in COMMANDS)])
def test_what_readme_and_help_show_can_be_typed(line: str) -> None:
    parse(line)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_one_line_of_help_and_an_example(name: str) -> None:
    command, paragraphs = help_of(name)
    assert paragraphs[0] == COMMANDS[name]
    assert "\n" not in paragraphs[0]
    assert paragraphs[0].endswith(".")
    assert paragraphs[-1].startswith(f"Example: packet {name}")
    assert "--quiet" in {flag for option in command.params for flag in option.opts}
