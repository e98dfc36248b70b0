"""What commands that ask share: flags first, then questions, each answer held against its field."""

import sys
from collections.abc import Callable, Mapping
from typing import Any

import click

from packet.cli.report import sentences
from packet.problems import Problem, Refused, message


def may_ask() -> bool:
    """Return whether somebody sits at a terminal who can answer."""
    return sys.stdin is not None and sys.stdin.isatty()


def said(problem: Problem) -> str:
    """Return what is wrong with an answer and what to write."""
    says, write = message(problem, sentences())
    return f"{says}. {write}"


def given_or_asked(
    given: Mapping[str, str | None],
    questions: Mapping[str, str],
    *,
    ask: bool,
    offered: Mapping[str, str] | None = None,
    optional: frozenset[str] = frozenset(),
    also: Mapping[str, Callable[[str], str]] | None = None,
) -> dict[str, str]:
    """Return the accepted answers by name, in the order of the questions; those not given are asked.

    Args:
        given: What was given by flags.
        questions: The words of each question, by name.
        ask: Whether to ask for what was not given; otherwise it is left out.
        offered: Answers offered as a default, which Enter accepts.
        optional: Names of questions that Enter may leave without an answer.
        also: Further checks of an answer, by name; each raises ``Refused``.

    Raises:
        click.UsageError: What a flag gives is not accepted; every such flag at once.
    """
    checks = also or {}
    answers: dict[str, str] = {}
    wrong: list[str] = []
    for name in questions:
        value = given.get(name)
        if value is not None:
            try:
                answers[name] = _checked(name, value, checks)
            except Refused as refused:
                wrong += [f"{problem.file}: {said(problem)}" for problem in refused.problems]
    if wrong:
        raise click.UsageError("\n".join(wrong))
    for name, words in questions.items():
        if ask and name not in answers:
            default = (offered or {}).get(name, "" if name in optional else None)
            answer = _asked(name, words, default, checks)
            if answer:
                answers[name] = answer
    return {name: answers[name] for name in questions if name in answers}


def _checked(name: str, value: str, checks: Mapping[str, Callable[[str], str]]) -> str:
    from packet.starting.answers import accepted

    answer = accepted(name, value)
    return checks[name](answer) if name in checks else answer


def _asked(name: str, words: str, default: str | None, checks: Mapping[str, Callable[[str], str]]) -> str:
    def parse(value: Any) -> str:
        if default == "" and not str(value).strip():
            return ""
        try:
            return _checked(name, str(value), checks)
        except Refused as refused:
            raise click.UsageError(" ".join(said(problem) for problem in refused.problems)) from None

    answer: str = click.prompt(words, default=default, show_default=bool(default), value_proc=parse, err=True)
    return answer
