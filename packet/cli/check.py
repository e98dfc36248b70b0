"""``packet check``: are the records sound, and what is still open?"""

from typing import Any

import click

from packet.cli.main import EXIT_BAD, EXIT_OPEN
from packet.cli.report import chosen, show_problems, the_workspace
from packet.problems import Problem, Refused


@click.command(name="check", help="Check records and say what is still open.\n\nExample: packet check 26-041")
@click.argument("jobs", nargs=-1)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but problems.")
def command(jobs: tuple[str, ...], quiet: bool) -> int:
    """Check records and return the exit code."""
    from packet.closeout.assemble import assemble
    from packet.closeout.model import Closeout
    from packet.text import load_words

    workspace = the_workspace()
    folders = chosen(workspace, jobs)
    problems: list[Problem] = []
    closeouts: dict[str, Closeout] = {}
    for folder in folders:
        try:
            closeouts[folder.name], _ = assemble(workspace, folder)
        except Refused as refused:
            problems += refused.problems
    words = load_words(workspace.shared_folders())
    items = {name: open_items(closeout, words) for name, closeout in closeouts.items()}
    if not quiet:
        for name, lines in items.items():
            click.echo(f"{name}: nothing due is open" if not lines else f"{name}: {len(lines)} open")
            for line in lines:
                click.echo(f"  {line}")
    if problems:
        show_problems(problems, of_jobs=len(folders))
        return EXIT_BAD
    return EXIT_OPEN if any(items.values()) else 0


def open_items(closeout: Any, words: Any) -> list[str]:
    """Return a line for each open item: a due result that is open, or a finding without an explanation."""
    lines = []
    for result in closeout.results:
        if result.open:
            title = words[f"requirements.{result.requirement}"]
            subject = f" {result.subject}" if result.subject else ""
            reason = f" ({result.reason})" if result.reason else ""
            lines.append(
                f"{title}{subject}: {words[f'results.{result.word}']}{reason} [{result.requirement}]"
            )
    for finding in closeout.findings:
        if not finding.explanation:
            lines.append(f"{words[f'findings.{finding.code}']}: {finding.subject} [{finding.id}]")
    return lines
