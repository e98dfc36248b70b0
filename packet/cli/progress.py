"""The step a build is at, on a terminal: one line that is written over and gone at the end."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import click

from packet.cli.each import STEPS


@contextmanager
def progress(job: str, *, quiet: bool = False) -> Iterator[Callable[[str], None]]:
    """Give what a build tells its steps to; nothing is shown when stderr is no terminal.

    Args:
        job: The job's number.
        quiet: Show nothing.
    """
    shows = not quiet and sys.stderr.isatty()

    def tell(step: str) -> None:
        if shows:
            click.echo(f"\r\033[K{job}: {STEPS[step]} …", err=True, nl=False)

    try:
        yield tell
    finally:
        if shows:
            click.echo("\r\033[K", err=True, nl=False)
