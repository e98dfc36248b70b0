"""``packet build``: one site for each copy of each job."""

import sys
from functools import partial
from pathlib import Path
from time import perf_counter

import click

from packet.cli.main import EXIT_BAD
from packet.cli.report import chosen, show_problems, the_workspace
from packet.problems import Problem, Refused

STEPS = {
    "record": "reading the record",
    "photos": "photos",
    "outside": "the copy for homeowner, adjuster and inspector",
    "office": "the office's copy",
}


@click.command(
    name="build",
    help="Build the closeout packet of jobs, one site for each copy.\n\nExample: packet build 26-041",
)
@click.argument("jobs", nargs=-1)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but problems.")
def command(jobs: tuple[str, ...], quiet: bool) -> int:
    """Build packets and return the exit code."""
    from packet.build import build
    from packet.site.publish import recover

    workspace = the_workspace()
    folders = chosen(workspace, jobs)
    recover(workspace.out)
    problems: list[Problem] = []
    failed: list[str] = []
    shows = not quiet and sys.stderr.isatty()
    for number, folder in enumerate(folders, 1):
        begun = perf_counter()
        line = f"[{number}/{len(folders)}] {folder.name}"
        try:
            built = build(workspace, folder, tell=partial(_progress, line) if shows else _quiet)
        except Refused as refused:
            problems += refused.problems
            failed.append(folder.name)
            continue
        finally:
            if shows:
                click.echo("\r\033[K", err=True, nl=False)
        if not quiet:
            seconds = perf_counter() - begun
            state = "built" if built.made else "unchanged"
            click.echo(f"{folder.name}: {state} in {seconds:.1f} s")
            for reader, path in built.copies.items():
                click.echo(f"  {reader:<8} {_shown(path)}")
    if problems:
        show_problems(problems, of_jobs=len(folders), not_built=failed)
        return EXIT_BAD
    return 0


def _quiet(step: str) -> None:
    """Say nothing."""


def _progress(line: str, step: str) -> None:
    click.echo(f"\r\033[K{line}: {STEPS[step]} …", err=True, nl=False)


def _shown(path: Path) -> Path:
    """Return a path relative to the working directory where it lies below it."""
    return path.relative_to(Path.cwd()) if path.is_relative_to(Path.cwd()) else path
