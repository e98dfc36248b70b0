"""What commands share: finding the office and its jobs, and printing problems with their places."""

from collections.abc import Collection, Iterable
from pathlib import Path

import click

from packet.problems import Catalogue, Problem, Refused, nearest, render_all
from packet.workspace import Workspace, find_workspace, packaged


def the_workspace() -> Workspace:
    """Return the office at or above the working directory.

    Raises:
        Refused: There is none.
    """
    workspace = find_workspace(Path.cwd())
    if workspace is None:
        raise Refused(Problem("not-an-office", Path.cwd()))
    return workspace


def chosen(workspace: Workspace, names: Iterable[str]) -> tuple[Path, ...]:
    """Return the folders of the jobs named, or of every job when none is named.

    Raises:
        Refused: A name is no job, or there are no jobs.
    """
    known = workspace.job_folders()
    folders: list[Path] = []
    problems: list[Problem] = []
    for name in names:
        folder = workspace.job_folder(name)
        if folder is None:
            near = nearest(name, [path.name for path in known]) or ""
            accepted = ", ".join(path.name for path in known)
            values = {"nearest": near, "accepted": accepted}
            problems.append(Problem("no-such-job", workspace.jobs, found=name, values=values))
        elif folder not in folders:
            folders.append(folder)
    if not folders and not problems:
        folders = list(known)
        if not folders:
            problems.append(Problem("no-jobs", workspace.jobs))
    if problems:
        raise Refused(problems)
    return tuple(folders)


def sentences() -> Catalogue:
    """Return what is said about each problem, by its code."""
    from packet.located import read_catalogue

    return read_catalogue(packaged("shared") / "words" / "problems.yaml")


def problems_text(
    problems: Iterable[Problem],
    *,
    of_jobs: int | None = None,
    not_built: Collection[str] = (),
) -> str:
    """Return problems with file, line, the record's own words and what to write."""
    return render_all(problems, sentences(), root=Path.cwd(), of_jobs=of_jobs, not_built=not_built)


def show_problems(
    problems: Iterable[Problem],
    *,
    of_jobs: int | None = None,
    not_built: Collection[str] = (),
) -> None:
    """Print problems."""
    click.echo(problems_text(problems, of_jobs=of_jobs, not_built=not_built), err=True)
