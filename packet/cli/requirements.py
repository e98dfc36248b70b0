"""``packet requirements``: what is asked, when, by whom and after which source; and how a job answers."""

import json
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import click

from packet.cli.answered import asks_name, job_data, job_lines, source_data, title
from packet.cli.report import chosen, the_workspace

if TYPE_CHECKING:
    from packet.closeout.asked import Listed
    from packet.figure import Source
    from packet.text import Words


@click.command(
    name="requirements",
    help="""List what is asked: the whole catalogue, or how one job answers it.

    Without a job each requirement stands with the kinds of work that ask it, the stage that shows it, what
    hides it, who asks and where the need was read. With a job: whether it applies or why not, each limit with
    whose it is, what was recorded, the result, and what proves it.

    Example: packet requirements 26-041
    """,
)
@click.argument("job", required=False)
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@click.option("-q", "--quiet", is_flag=True, help="Print one line a requirement.")
def command(job: str | None, as_json: bool, quiet: bool) -> None:
    """Print the catalogue, or one job's answers, in the order of the work."""
    from packet.closeout.asked import catalogue
    from packet.closeout.assemble import assemble
    from packet.reference import Library
    from packet.text import load_words

    workspace = the_workspace()
    folder = chosen(workspace, [job])[0] if job else None
    closeout = assemble(workspace, folder)[0] if folder else None
    library = Library.load(workspace.shared_folders())
    words = load_words(workspace.shared_folders())
    listed = () if closeout else catalogue(library)
    if as_json:
        data = job_data(closeout, library, words) if closeout else [_data(item, words) for item in listed]
        click.echo(json.dumps(data, indent=2, ensure_ascii=False))
        return
    for line in job_lines(closeout, library, words, quiet) if closeout else _lines(listed, words, quiet):
        click.echo(line)


def _lines(listed: "tuple[Listed, ...]", words: "Words", quiet: bool) -> Iterator[str]:
    said = words["requirement_list"]
    yield said["head"].format(number=len(listed))
    stage = ""
    for item in listed:
        asked = item.requirement
        if asked.shown_at != stage:
            stage = asked.shown_at
            yield from ("", words[f"stages.{stage}"])
        yield f"  {title(asked.id, words)}"
        if not quiet:
            yield from (f"    {line}" for line in _behind(item, words))


def _behind(item: "Listed", words: "Words") -> Iterator[str]:
    """Yield what stands behind one requirement, a line each."""
    said, asked = words["requirement_list"], item.requirement
    yield f"{said['asked_of']}: {_kinds(asked.kinds, words)}"
    if asked.if_answered:
        yield f"{said['if_answered']}: {_kinds(asked.if_answered, words)}"
    if asked.if_ruled:
        yield said["if_ruled"]
    for reason in dict.fromkeys(item.falls_away.values()):
        kinds = {kind for kind, why in item.falls_away.items() if why == reason}
        some = f" ({_kinds(kinds, words)})" if kinds < asked.kinds | asked.if_answered else ""
        yield f"{said['falls_away']}: {words[f'reasons.{reason}']}{some}"
    if asked.subjects:
        yield f"{said['one_by_one']}: {said['subjects'][asked.subjects.__name__]}"
    moves = f" ({said['stages_move']})" if asked.stages else ""
    yield f"{said['hidden_by']}: {words[f'hidden_by.{asked.hidden_by}']}{moves}"
    yield f"{words['labels.asked_by']}: {_readers(asked.asked_by, words)}"
    for question in asked.questions:
        yield f"{said['asks']}: {asks_name(question.asks, words)}; {_limited(item, question.asks, words)}"
    frame = [*(words[f"views.{view}"] for view in asked.views), *(_in_frame(item, words))]
    if frame:
        yield f"{said['in_frame']}: {', '.join(frame)}"
    if asked.papers:
        yield said["papers"]
    yield f"{said['source']}: {_source(item.source, words)}"


def _limited(item: "Listed", asks: str, words: "Words") -> str:
    """Return how many rows limit a question in each of the places rules come from."""
    said, rows = words["requirement_list"], item.rows[asks]
    question = next(question for question in item.requirement.questions if question.asks == asks)
    counts = [f"{rows[whose]} {said['places'][whose]}" for whose in said["places"] if rows.get(whose)]
    if question.maker:
        counts.append(said["makers_number"])
    return f"{said['limited_by']} {', '.join(counts)}" if counts else str(said["no_limit"])


def _in_frame(item: "Listed", words: "Words") -> Iterator[str]:
    return (str(words["in_frame"][name]) for name in item.note.in_frame)


def _data(item: "Listed", words: "Words") -> dict[str, Any]:
    """Return one requirement of the catalogue as plain data."""
    asked = item.requirement
    return {
        "id": asked.id,
        "title": words[f"requirements.{asked.id}"],
        "kinds": sorted(asked.kinds),
        "if_answered": sorted(asked.if_answered),
        "if_ruled": asked.if_ruled,
        "falls_away": {kind: words[f"reasons.{reason}"] for kind, reason in item.falls_away.items()},
        "one_by_one": bool(asked.subjects),
        "shown_at": asked.shown_at,
        "hidden_by": asked.hidden_by,
        "asked_by": list(asked.asked_by),
        "questions": [
            {
                "asks": question.asks,
                "name": asks_name(question.asks, words),
                "rows": dict(item.rows[question.asks]),
            }
            for question in asked.questions
        ],
        "views": list(asked.views),
        "in_frame": list(item.note.in_frame),
        "papers": asked.papers,
        "source": source_data(item.source),
    }


def _kinds(kinds: "frozenset[str] | set[str]", words: "Words") -> str:
    return ", ".join(str(words["kinds"][kind]) for kind in words["kinds"] if kind in kinds)


def _readers(readers: tuple[str, ...], words: "Words") -> str:
    return ", ".join(str(words["readers"][reader]) for reader in readers)


def _source(source: "Source", words: "Words") -> str:
    place = source.locator if source.checked != "common_practice" else ""
    text = ", ".join(filter(None, (source.document, source.edition, place)))
    return f"{text} ({words[f'marks.{source.checked}']})"
