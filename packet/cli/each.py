"""One job after another: a step shown on a terminal, a line for what was made, all problems at the end."""

from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from time import perf_counter
from typing import TypeVar

import click

from packet.cli.main import EXIT_BAD
from packet.cli.progress import progress
from packet.cli.report import show_problems
from packet.problems import Problem, Refused

Made = TypeVar("Made")
Told = Callable[[str], None]


def each_job(
    folders: Sequence[Path],
    make: Callable[[Path, Told], Made],
    lines: Callable[[Made], Iterable[str]],
    *,
    quiet: bool,
    timed: bool = True,
) -> int:
    """Make something of each job and return the exit code; a bad job does not stop the others.

    Args:
        folders: Folders of the jobs.
        make: Makes it; is given what to tell its steps to.
        lines: Says what was made: a state ("built"), then the lines that follow it.
        quiet: Print nothing but problems.
        timed: Say how long each took; not where jobs are made beside each other.
    """
    problems: list[Problem] = []
    failed: list[str] = []
    for number, folder in enumerate(folders, 1):
        begun = perf_counter()
        try:
            with progress(f"[{number}/{len(folders)}] {folder.name}", quiet=quiet) as tell:
                made = make(folder, tell)
        except Refused as refused:
            problems += refused.problems
            failed.append(folder.name)
            continue
        if not quiet:
            state, *rest = lines(made)
            seconds = f" in {perf_counter() - begun:.1f} s" if timed else ""
            click.echo(f"{folder.name}: {state}{seconds}")
            for line in rest:
                click.echo(f"  {line}")
    if problems:
        show_problems(problems, of_jobs=len(folders), not_built=failed)
        return EXIT_BAD
    return 0


def here(path: Path) -> Path:
    """Return a path relative to the working directory where it lies below it."""
    return path.relative_to(Path.cwd()) if path.is_relative_to(Path.cwd()) else path
