"""How one job answers what is asked: its limits, what was recorded, and what proves it."""

from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from packet.cli.rules import limit_text, mark_text, rule_text, state_of, value_data
from packet.snippet import visible

if TYPE_CHECKING:
    from packet.closeout.model import Closeout
    from packet.closeout.rests_on import Rested
    from packet.figure import Source
    from packet.reference import Library
    from packet.review.model import Part, Result
    from packet.text import Words


def job_lines(closeout: "Closeout", library: "Library", words: "Words", quiet: bool) -> Iterator[str]:
    """Yield a job's answers as lines: what was judged by stage, what does not apply, what is not asked."""
    from packet.closeout.asked import not_asked, shown_unasked

    said, job = words["requirement_list"], closeout.record.job
    applying = [result for result in closeout.results if result.word != "does_not_apply"]
    away = [result for result in closeout.results if result.word == "does_not_apply"]
    counts = {"number": len(applying), "open": sum(result.open for result in applying), "away": len(away)}
    yield f"{visible(job.number)}: {words[f'kinds.{job.kind}']}; {said['job_head'].format(**counts)}"
    rested = _rested(closeout, library)
    for stage in closeout.stages:
        here = [result for result in applying if result.shown_at == stage]
        if here:
            yield from ("", words[f"stages.{stage}"])
        for result in here:
            yield f"  {title(result.requirement, words, result.subject)}: {_word(result, words)}"
            if not quiet:
                yield from (f"    {line}" for line in _answers(result, closeout, rested, words))
    if away:
        yield from ("", str(words["results.does_not_apply"]).capitalize())
    for result in away:
        yield f"  {title(result.requirement, words)}: {words[f'reasons.{result.reason}']}"
    unasked = not_asked(closeout)
    if unasked and not quiet:
        yield from ("", f"{said['not_asked']}: {', '.join(unasked)}")
    shown = shown_unasked(closeout)
    if shown:
        yield from ("", said["shown_unasked"])
    for id, proof in shown.items():
        yield f"  {title(id, words)}: {', '.join(proof)}"


def _answers(
    result: "Result", closeout: "Closeout", rested: "dict[str, Rested]", words: "Words"
) -> Iterator[str]:
    """Yield a job's answers to one requirement: each limit, what was recorded, and what proves it."""
    said = words["requirement_list"]
    for part in result.parts:
        name = f"{asks_name(part.asks, words)}: " if len(result.parts) > 1 else ""
        yield f"{name}{said['recorded']}: {_recorded(part, closeout, words)}"
        for item in _limits(part, rested):
            whose = words[f"whose.{item.whose}"]
            yield f"  {limit_text(item, words)}; {whose}: {rule_text(item)} [{item.row}]"
            yield f"    {mark_text(item, words)}; {words[f'rule_list.{state_of(item)}']}"
            if item.authority:
                yield f"    {words['labels.amendment_of']}: {item.authority}"
    for key, proof in (("evidence", result.evidence), ("papers_shown", result.papers), ("late", result.late)):
        if proof:
            yield f"{said[key]}: {', '.join(proof)}"
    if result.reason:
        yield f"{said['reason']}: {visible(result.reason)}"
    elif result.why_not_proven and result.due:
        yield f"{said['reason']}: {words[f'why_not_proven.{result.why_not_proven}']}"
    if result.way_out is not None:
        way = closeout.record.ways_out[result.way_out]
        yield f"{words[f'ways_out.{way.kind}']}: {visible(way.text)}"
    yield str(said["open" if result.open else "due" if result.due else "not_due"])


def _rested(closeout: "Closeout", library: "Library") -> "dict[str, Rested]":
    from packet.closeout.rests_on import rests_on

    return {item.row: item for item in rests_on(closeout, library)}


def _limits(part: "Part", rested: "dict[str, Rested]") -> "Iterator[Rested]":
    """Yield the limits of one question, the one that governs it first."""
    for limit in sorted(part.limits, key=lambda limit: limit.row != part.governing):
        yield replace(rested[limit.row], governs=limit.row == part.governing)


def _recorded(part: "Part", closeout: "Closeout", words: "Words") -> str:
    """Return an answer as numbers and words; what a picture answers by itself has none."""
    from packet.review.answers import listed
    from packet.review.catalogue import CATALOGUE
    from packet.text import figure_text

    if part.answer.value is None:
        return str(words["not_recorded"])
    questions = (question for requirement in CATALOGUE for question in requirement.questions)
    if any(question.asks == part.asks and question.answer is listed for question in questions):
        return str(words["unruled.pictured"])
    numbers = " × ".join(figure_text(vars(closeout.figures[id]), words) for id in part.answer.figures)
    text = words["shanks"].get(part.answer.text, visible(part.answer.text))
    return " ".join(filter(None, (numbers, text))) or str(words["limits.recorded"])


def _word(result: "Result", words: "Words") -> str:
    """Return the word of a result as the pages have it.

    What is not due can't be missing yet, and what no rule limits is recorded, no more.
    """
    if result.word == "not_recorded":
        key = "not_recorded" if result.due else "not_due"
    elif any(part.limits for part in result.parts):
        key = result.word
    else:
        key = "in_record" if result.evidence else "in_record_paper"
    return str(words[f"results.{key}"])


def job_data(closeout: "Closeout", library: "Library", words: "Words") -> dict[str, Any]:
    """Return a job's answers as plain data."""
    from packet.closeout.asked import not_asked, shown_unasked

    rested = _rested(closeout, library)
    return {
        "job": closeout.record.job.number,
        "kind": closeout.record.job.kind,
        "requirements": [_result_data(result, closeout, rested, words) for result in closeout.results],
        "not_asked": list(not_asked(closeout)),
        "shown_unasked": {id: list(proof) for id, proof in shown_unasked(closeout).items()},
    }


def _result_data(
    result: "Result", closeout: "Closeout", rested: "dict[str, Rested]", words: "Words"
) -> dict[str, Any]:
    applies = result.word != "does_not_apply"
    return {
        "id": result.requirement,
        "subject": result.subject,
        "title": words[f"requirements.{result.requirement}"],
        "applies": applies,
        "reason": result.reason if applies else words[f"reasons.{result.reason}"],
        "word": result.word,
        "due": result.due,
        "open": result.open,
        "shown_at": result.shown_at,
        "hidden_by": result.hidden_by,
        "asked_by": list(result.asked_by),
        "questions": [
            {
                "asks": part.asks,
                "recorded": _recorded(part, closeout, words) if part.answer.value is not None else None,
                "word": part.word,
                "limits": [_limit_data(item) for item in _limits(part, rested)],
            }
            for part in result.parts
        ],
        "evidence": list(result.evidence),
        "stated": list(result.stated),
        "late": list(result.late),
        "papers": list(result.papers),
        "why_not_proven": result.why_not_proven,
        "way_out": None if result.way_out is None else closeout.record.ways_out[result.way_out].kind,
    }


def _limit_data(item: "Rested") -> dict[str, Any]:
    return {
        "row": item.row,
        "whose": item.whose,
        "kind": item.kind,
        "value": value_data(item),
        "unit": item.unit,
        "source": {**source_data(item.source), "document": item.document, "edition": item.edition},
        "state": state_of(item),
        "authority": item.authority,
    }


def title(id: str, words: "Words", subject: str = "") -> str:
    """Return what is asked, of which part of the work, and its id."""
    name = words[f"requirements.{id}"]
    return f"{name} {subject} [{id}]" if subject else f"{name} [{id}]"


def asks_name(key: str, words: "Words") -> str:
    """Return a question's name; a key that others grow from keeps its own under ``self``."""
    name = words[f"asks.{key}"]
    return str(name if isinstance(name, str) else name["self"])


def source_data(source: "Source") -> dict[str, str]:
    """Return a source as plain data."""
    return {
        "document": source.document,
        "edition": source.edition,
        "locator": source.locator,
        "mark": source.checked,
    }
