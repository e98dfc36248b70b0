"""``packet build``: one site for each copy of each job."""

from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from typing import TYPE_CHECKING

import click

from packet.cli.each import each_job, here
from packet.cli.report import chosen, the_workspace

if TYPE_CHECKING:
    from packet.build import Built


@click.command(
    name="build",
    help="Build the closeout packet of jobs, one site for each copy.\n\nExample: packet build 26-041",
)
@click.argument("jobs", nargs=-1)
@click.option(
    "-p",
    "--processes",
    type=click.IntRange(1, 64),
    default=1,
    help="Jobs built at one time; worth it for more than a few.",
)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but problems.")
def command(jobs: tuple[str, ...], processes: int, quiet: bool) -> int:
    """Build packets and return the exit code."""
    from packet.build import build
    from packet.site.publish import recover

    workspace = the_workspace()
    folders = chosen(workspace, jobs)
    recover(workspace.out)
    if processes == 1 or len(folders) == 1:
        return each_job(
            folders, lambda folder, tell: build(workspace, folder, tell=tell), _lines, quiet=quiet
        )
    with ProcessPoolExecutor(min(processes, len(folders)), mp_context=get_context("spawn")) as pool:
        begun = {folder: pool.submit(build, workspace, folder) for folder in folders}
        return each_job(
            folders, lambda folder, tell: begun[folder].result(), _lines, quiet=quiet, timed=False
        )


def _lines(built: "Built") -> list[str]:
    copies = (f"{reader:<8} {here(path)}" for reader, path in built.copies.items())
    return ["built" if built.made else "unchanged", *copies]
