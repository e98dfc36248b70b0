"""``packet zip``: one copy of each job's packet as a zip to hand on."""

from typing import TYPE_CHECKING, cast

import click

from packet.cli.each import each_job, here
from packet.cli.report import chosen, the_workspace
from packet.readers import READERS, Reader

if TYPE_CHECKING:
    from packet.handover.zipping import Zipped

CAUTION = (
    "Caution: the office's copy holds the owner's telephone, money and papers kept in the office. "
    "Do not send it to anyone."
)


@click.command(
    name="zip",
    help="""Make the zip of a packet's outside copy, to hand on.

    It is written to out/<job>-outside.zip, beside the folder that "packet build" makes, and holds the copy
    and a note that says to unzip first. Jobs that changed are built first; all jobs when none is named.

    Example: packet zip 26-041
    """,
)
@click.argument("jobs", nargs=-1)
@click.option(
    "--copy", "reader", type=click.Choice(READERS), default="outside", show_default=True, help="Whose copy."
)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but problems and cautions.")
def command(jobs: tuple[str, ...], reader: str, quiet: bool) -> int:
    """Make zips and return the exit code."""
    from packet.build import build
    from packet.handover.zipping import zip_copy
    from packet.site.publish import recover

    workspace = the_workspace()
    folders = chosen(workspace, jobs)
    recover(workspace.out)
    if reader == "office":
        click.echo(CAUTION, err=True)
    return each_job(
        folders,
        lambda folder, tell: zip_copy(workspace, build(workspace, folder, tell=tell), cast("Reader", reader)),
        _lines,
        quiet=quiet,
    )


def size_text(size: int) -> str:
    """Return a size in bytes as a mail program shows it.

    Example:
        >>> size_text(5_130_000), size_text(999_700), size_text(412_000), size_text(80)
        ('5.1 MB', '1.0 MB', '412 kB', '1 kB')
    """
    return f"{size / 1e6:.1f} MB" if size >= 999_500 else f"{max(1, round(size / 1e3))} kB"


def _lines(made: "Zipped") -> list[str]:
    return ["zipped", f"{here(made.file)}  {size_text(made.size)}, {made.files} files"]
