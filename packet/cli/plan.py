"""``packet plan``: the sheet before a job, as pages for the phone and for paper."""

from typing import TYPE_CHECKING

import click

from packet.cli.each import each_job, here
from packet.cli.report import chosen, the_workspace

if TYPE_CHECKING:
    from packet.planning import Planned


@click.command(
    name="plan",
    help="""Make the sheet before a job, for the office and the crew.

    What to buy, nails, hold points, permits, access and safety: a small site in out/<job>-plan/, with a page
    for the crew in English and Spanish. Each topic prints on one page. All jobs when none is named.

    Example: packet plan 26-041
    """,
)
@click.argument("jobs", nargs=-1)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but problems.")
def command(jobs: tuple[str, ...], quiet: bool) -> int:
    """Make the sheets of jobs and return the exit code."""
    from packet.planning import make_plan

    workspace = the_workspace()
    return each_job(
        chosen(workspace, jobs), lambda folder, tell: make_plan(workspace, folder, tell), _lines, quiet=quiet
    )


def _lines(made: "Planned") -> list[str]:
    lacking = [f"not written yet: {sentence}" for sentence in made.questions]
    return [f"planned, pages: {made.pages}", *lacking, str(here(made.front)), str(here(made.crew))]
