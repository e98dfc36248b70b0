"""What is being done, on a terminal: one line that is written over and gone at the end."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import click

from packet.snippet import visible

#: What a build is doing, as it is shown.
STEPS = {
    "record": "reading the record",
    "photos": "photos",
    "outside": "the copy for homeowner, adjuster and inspector",
    "office": "the office's copy",
    "roof-card": "the roof card",
    "nailing-card": "the nailing card",
    "plan": "the sheet before the job",
}

#: Goes to the start of the line and empties it.
_CLEAR = "\r\033[K"


@contextmanager
def one_line(*, quiet: bool = False) -> Iterator[Callable[[str], None]]:
    """Give what shows a text in the place of the one before; nothing is shown when stderr is no terminal.

    Args:
        quiet: Show nothing.
    """
    shows = not quiet and sys.stderr.isatty()

    def show(text: str) -> None:
        if shows:
            click.echo(f"{_CLEAR}{visible(text)}", err=True, nl=False)

    try:
        yield show
    finally:
        if shows:
            click.echo(_CLEAR, err=True, nl=False)


@contextmanager
def progress(job: str, *, quiet: bool = False) -> Iterator[Callable[[str], None]]:
    """Give what a build tells its steps to.

    Args:
        job: The job's number, or more words to show before the step.
        quiet: Show nothing.
    """
    with one_line(quiet=quiet) as show:
        yield lambda step: show(f"{job}: {STEPS[step]} …")
