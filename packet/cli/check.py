"""``packet check``: are the records sound, and what is still open?"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from packet.cli.main import EXIT_BAD, EXIT_OPEN
from packet.cli.report import chosen, show_problems, the_workspace
from packet.closeout.model import Closeout
from packet.figure import Figure
from packet.figures.rules import Limit
from packet.problems import Problem, Refused, path_text, shown
from packet.review.catalogue import BY_ID
from packet.review.expected import absent
from packet.review.model import Finding, Result
from packet.review.places import finding_place
from packet.snippet import visible
from packet.text import Words, figure_text, load_words
from packet.yamlread import Document, parse_yaml, read_bytes

if TYPE_CHECKING:
    from packet.photos.taken import WaitingPhoto


@click.command(name="check", help="Check records and say what is still open.\n\nExample: packet check 26-041")
@click.argument("jobs", nargs=-1)
@click.option("-q", "--quiet", is_flag=True, help="Print nothing but problems.")
def command(jobs: tuple[str, ...], quiet: bool) -> int:
    """Check records and return the exit code."""
    from packet.closeout.assemble import assemble
    from packet.photos.taken import waiting_photos

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
    waiting = {folder.name: waiting_photos(folder) for folder in folders if folder.name in closeouts}
    items = {
        name: open_items(closeout, words, job_documents(workspace.jobs / name))
        for name, closeout in closeouts.items()
    }
    if not quiet:
        for name, lines in items.items():
            click.echo(headline(name, lines))
            for line in lines:
                click.echo(f"  {line}")
            for line in (
                *_how_to_explain(closeouts[name]),
                *_to_come(closeouts[name], words),
                *_waiting_lines(waiting[name]),
            ):
                click.echo(line)
    if problems:
        show_problems(problems, of_jobs=len(folders))
        return EXIT_BAD
    return EXIT_OPEN if any(items.values()) else 0


def headline(job: str, items: Sequence[str]) -> str:
    """Return the line that stands above a job's open items."""
    return f"{job}: {len(items)} open" if items else f"{job}: nothing due is open"


def job_documents(folder: Path) -> tuple[Document, ...]:
    """Return the files of a sound job as they are typed, the record first."""
    paths = (folder / "job.yaml", folder / "photos.yaml")
    return tuple(parse_yaml(read_bytes(path), path) for path in paths if path.exists())


def open_items(closeout: Closeout, words: Words, documents: Sequence[Document] = ()) -> list[str]:
    """Return a line for each open item: a due result that is open, or a finding without an explanation.

    Below a finding stands its place in one of the files, and what to do about it.
    """
    lines = []
    for result in closeout.results:
        if result.open:
            word, why = words[f"results.{result.word}"], "; ".join(_why(result, closeout.figures, words))
            said = f"{word}{f' ({why})' if why else ''}"
            lines.append(f"{_title(result, closeout, words)}: {said} [{result.requirement}]")
    for finding in _unexplained(closeout):
        facts = "; ".join(_facts(finding, closeout.figures, words))
        title = f"{words[f'findings.{finding.code}']}: {finding.subject}"
        place = _place(finding, documents, words)
        lines.append(f"{title}{f' ({facts})' if facts else ''} [{finding.id}]{place}")
    return lines


def _title(result: Result, closeout: Closeout, words: Words) -> str:
    """Return what is asked and of which part of the work; a plane has its title beside its id."""
    title = str(words[f"requirements.{result.requirement}"])
    planes = closeout.geometry.planes if BY_ID[result.requirement].by_plane and closeout.geometry else ()
    named = next((plane.title for plane in planes if plane.id == result.subject), "")
    if named:
        return f"{title}, {visible(named)} ({result.subject})"
    return f"{title} {result.subject}" if result.subject else title


def _to_prove(result: Result) -> str:
    """Return what a photo names under ``proves``, and the plane it has to show where that counts too."""
    if BY_ID[result.requirement].by_plane:
        return f"{result.requirement}, plane: {result.subject}"
    return result.subject or result.requirement


def _unexplained(closeout: Closeout) -> list[Finding]:
    return [finding for finding in closeout.findings if not finding.explanation]


def _facts(finding: Finding, figures: Mapping[str, Figure], words: Words) -> Iterator[str]:
    """Yield what does not agree, in the order of the pages: numbers with their units, then words."""
    yield from _numbers(finding.figures, figures, words)
    yield from (visible(text) for _, text in sorted(finding.words.items()) if text)


def _place(finding: Finding, documents: Sequence[Document], words: Words) -> str:
    """Return a line of its own with the place of a finding, where a file has it, and what to do."""
    found = finding_place(finding, documents)
    if found is None:
        return f"\n    {words[f'findings_to_do.{finding.code}']}."
    document, loc = found
    line, column = document.place(loc)
    where = f"{shown(document.path, Path.cwd())}:{line}:{column} at {path_text(document.resolve(loc))}"
    return f"\n    {where}. {words[f'findings_to_do.{finding.code}']}."


def _how_to_explain(closeout: Closeout) -> Iterator[str]:
    """Yield how a finding is explained, by the first that is not; nothing where none is open."""
    for finding in _unexplained(closeout)[:1]:
        yield f'  Explain one in job.yaml:  explained: {{"{finding.id}": "…"}}'


def _to_come(closeout: Closeout, words: Words) -> Iterator[str]:
    """Yield what is not written, and what to measure and photograph before it is covered, with ids."""
    named = [words[f"record_parts.{path}"] for path in absent(closeout.record)]
    missing = [name if isinstance(name, str) else name["self"] for name in named]
    if missing:
        yield f"  Not written: {'; '.join(missing)}"
    ahead = [result for result in closeout.results if not result.due and result.word == "not_recorded"]
    if ahead:
        yield "  To measure and photograph before it is covered:"
    for stage in closeout.stages:
        at_stage = [result for result in ahead if result.shown_at == stage]
        if at_stage:
            titles = (f"{_title(result, closeout, words)} [{_to_prove(result)}]" for result in at_stage)
            yield f"    {words[f'stages.{stage}']}: {'; '.join(titles)}"


def _waiting_lines(photos: Sequence["WaitingPhoto"]) -> Iterator[str]:
    """Yield the photos that wait for a person to write what they show, each with the place of its entry."""
    if photos:
        many = "1 photo waits" if len(photos) == 1 else f"{len(photos)} photos wait"
        yield f"  {many} for words in the log; until then no copy carries them:"
        for photo in photos:
            place, lacks = f"{shown(photo.log, Path.cwd())}:{photo.line}", " and ".join(photo.lacks)
            yield f"    {photo.id} {place}: write {lacks} ({visible(photo.file)})"


def _why(result: Result, figures: Mapping[str, Figure], words: Words) -> Iterator[str]:
    """Yield what stands behind an open result: the record's reason, the missing proof, or both numbers."""
    if result.reason:
        yield result.reason
    elif result.why_not_proven:
        yield _unproven(result, words)
    for part in result.parts:
        limit = next((limit for limit in part.limits if limit.row == part.governing), None)
        if part.word == "differs" and limit:
            read = limit.source
            source = ", ".join(filter(None, (read.document, read.edition, read.locator)))
            asked = " or ".join(_choices(limit, figures, words))
            found = " × ".join(_numbers(part.answer.figures, figures, words)) or part.answer.text
            yield f"{found}; {words[f'limits.{limit.kind}']} {asked} by {source}"


def _choices(limit: Limit, figures: Mapping[str, Figure], words: Words) -> Iterator[str]:
    """Yield what a limit accepts, one by one: a nail has a length and a shank, other numbers stand alone."""
    if not limit.figures:
        yield from limit.words
        return
    each = len(limit.figures) // (len(limit.value) if isinstance(limit.value, tuple) else 1)
    for first in range(0, len(limit.figures), each):
        yield " × ".join(_numbers(limit.figures[first : first + each], figures, words))


def _unproven(result: Result, words: Words) -> str:
    """Return why nothing proves it; where only some parts were not written down, which."""
    missing = [part.asks for part in result.parts if part.answer.value is None]
    if result.why_not_proven != "no_value" or len(missing) == len(result.parts):
        return str(words[f"why_not_proven.{result.why_not_proven}"])
    names = ", ".join(str(words[f"asks.{asks}"]) for asks in missing)
    return f"{words['why_not_proven.part_missing']}: {names}"


def _numbers(ids: Iterable[str], figures: Mapping[str, Figure], words: Words) -> Iterator[str]:
    return (figure_text(vars(figures[id]), words) for id in ids)
