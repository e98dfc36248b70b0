"""``packet pdf``: the packet of each copy on paper, the roof card and the nailing card."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import click

from packet.cli.each import each_job, here
from packet.cli.report import chosen, the_workspace

if TYPE_CHECKING:
    from packet.paper.make import Printed


@click.command(
    name="pdf",
    help="""Print jobs: a PDF of each copy, a roof card and a nailing card.

    They are written to out/<job>-outside.pdf, out/<job>-office.pdf, out/<job>-roof-card.pdf and
    out/<job>-nailing-card.pdf, beside the folder that "packet build" makes; neither command touches what the
    other made. The packet.json of a copy is attached to its PDF. The roof card is one page to tape by the
    attic hatch; the nailing card is one page for the crew, once in English and once in Spanish. All jobs
    when none is named.

    Example: packet pdf 26-041
    """,
)
@click.argument("jobs", nargs=-1)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but problems.")
def command(jobs: tuple[str, ...], quiet: bool) -> int:
    """Print jobs and return the exit code."""
    from packet.build import cache_key
    from packet.paper.make import Printed, print_job
    from packet.site.filters import make_filters
    from packet.text import load_words

    workspace = the_workspace()
    words = load_words(workspace.shared_folders())
    filters = make_filters(words)

    def printed(folder: Path, tell: Callable[[str], None]) -> Printed:
        return print_job(
            workspace, folder, words, filters, key_now=lambda: cache_key(workspace, folder), tell=tell
        )

    return each_job(
        chosen(workspace, jobs),
        printed,
        _lines,
        quiet=quiet,
    )


def _lines(printed: "Printed") -> list[str]:
    papers = (f"{name:<12} {here(path)}" for name, path in printed.papers.items())
    return ["printed" if printed.made else "unchanged", *papers]
