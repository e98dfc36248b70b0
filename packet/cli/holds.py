"""``packet holds``: what open jobs wait to be shown before the next layer goes on."""

import json
import textwrap
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import click

from packet.cli.main import EXIT_BAD
from packet.cli.progress import progress
from packet.cli.report import chosen, show_problems, the_workspace
from packet.snippet import visible

if TYPE_CHECKING:
    from packet.holding import JobHolds
    from packet.text import Words

#: Shape of the JSON; a change that a reader of it would notice makes another one.
FORMAT, FORMAT_VERSION = "roof-hold-points", 1

_WIDTH = 110


@click.command(
    name="holds",
    help="""List what open jobs wait to be shown, next first.

    Work under way stands before planned work. Closed jobs are left out, unless they are named.

    Example: packet holds
    """,
)
@click.argument("jobs", nargs=-1)
@click.option("--all", "every", is_flag=True, help="Print every hold point, not only the next one.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@click.option("-q", "--quiet", is_flag=True, help="Print no progress.")
def command(jobs: tuple[str, ...], every: bool, as_json: bool, quiet: bool) -> int:
    """Print hold points and return the exit code."""
    from packet.holding import holds_of_jobs
    from packet.reference import Library
    from packet.text import load_words

    workspace = the_workspace()
    folders = chosen(workspace, jobs)
    stages = [stage.id for stage in Library.load(workspace.shared_folders()).stages()]
    with progress(f"reading {len(folders)} jobs" if len(folders) > 1 else folders[0].name, quiet=quiet):
        found = holds_of_jobs(workspace, folders, stages=stages, closed_too=bool(jobs))
    shown = [job for job in found if jobs or job.problems or job.status != "closed"]
    if as_json:
        click.echo(json.dumps(_data(shown), indent=1, ensure_ascii=False))
    else:
        words = load_words(workspace.shared_folders())
        lines = _lines([job for job in shown if not job.problems], every, words)
        for line in lines if shown else (words["holds.none"],):
            click.echo(line)
    refused = [job for job in shown if job.problems]
    if refused:
        problems = [problem for job in refused for problem in job.problems]
        show_problems(problems, of_jobs=len(folders))
        return EXIT_BAD
    return 0


def _data(jobs: "list[JobHolds]") -> dict[str, Any]:
    """Return the jobs as JSON: each with its next hold point, and all of them."""
    return {
        "format": FORMAT,
        "version": FORMAT_VERSION,
        "jobs": [
            {
                "job": job.folder,
                "status": job.status,
                "kind": job.kind,
                "street": job.street,
                "town": job.town,
                "missed": job.missed,
                "next": job.next,
                "points": list(job.points or ()),
            }
            if not job.problems
            else {"job": job.folder, "problems": len(job.problems)}
            for job in jobs
        ],
    }


def _lines(jobs: "list[JobHolds]", every: bool, words: "Words") -> Iterator[str]:
    for job in jobs:
        missed = f"; {words['holds.many_missed'].format(number=job.missed)}" if job.missed else ""
        place = ", ".join(visible(part) for part in (job.street, job.town))
        kind, status = words[f"kinds.{job.kind}"], words[f"holds.status.{job.status}"]
        yield f"{job.folder}: {place}; {kind}, {status}{missed}"
        points = job.points or () if every else (job.next,) if job.next else ()
        if not points:
            yield f"  {words['holds.nothing_waits']}"
        for point in points:
            yield from _point(point, every, words)


def _point(point: dict[str, Any], every: bool, words: "Words") -> Iterator[str]:
    """Yield a hold point: what waits as the record stands, then what may still come."""
    yield f"  {words['plan.before']} {words['plan.begins_stage.' + point['before']]}:"
    for item in point["items"]:
        if item["state"] == "waiting" and not item["only_if"]:
            yield from _item(item, words)
        elif every and item["state"] != "waiting":
            yield f"    {_title(item, words)}: {words['holds.' + item['state']]}"
    may = [item for item in point["items"] if item["only_if"] and item["state"] == "waiting"]
    if may:
        titles = "; ".join(_title(item, words) for item in may)
        yield from _wrapped(f"{words['plan.as_it_stands']}: {titles}", "    ")


def _item(item: dict[str, Any], words: "Words") -> Iterator[str]:
    asked = words[f"shots.{item['requirement']}"]
    value = f" {words['holds.write_too']}" if item["lacks_value"] else ""
    yield from _wrapped(f"{_title(item, words)}: {asked}{value} [{_id(item)}]", "    ")


def _title(item: dict[str, Any], words: "Words") -> str:
    title: str = words[f"requirements.{item['requirement']}"]
    return f"{title} {item['subject']}" if item["subject"] else title


def _id(item: dict[str, Any]) -> str:
    return f"{item['requirement']}:{item['subject']}" if item["subject"] else str(item["requirement"])


def _wrapped(text: str, indent: str) -> list[str]:
    return textwrap.wrap(
        text, _WIDTH, initial_indent=indent, subsequent_indent=f"{indent}  ", break_on_hyphens=False
    )
