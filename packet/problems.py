"""Problems in a user's file: where, which rule, the record's own words, and what to write instead.

A problem is data; its sentences live in ``shared/words/problems.yaml`` under its code, so that one catalogue
serves the terminal, the tests and the documentation.
"""

import difflib
import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from packet.snippet import read_lines, snippet, visible

#: A file with more problems than this shows the first ones and a count of the rest.
MOST_SHOWN_A_FILE = 100

#: Job numbers named in the closing line before "and N more".
_MOST_NAMED = 8

#: The record's words are cut to this many characters in a message; the snippet shows the rest.
_MOST_QUOTED = 80

Catalogue = Mapping[str, Mapping[str, str]]


@dataclass(frozen=True)
class Problem:
    """One mistake in one file, at the place where the reader must edit.

    Attributes:
        code: Key in ``shared/words/problems.yaml``.
        file: The file to edit.
        line: Line in the file [1-based].
        column: Column in that line [1-based, characters].
        at: Path of the value in the record, ``roof.planes[1].run``.
        found: The record's own words.
        values: Further words that fill the message.
    """

    code: str
    file: Path
    line: int = 1
    column: int = 1
    at: str = ""
    found: str = ""
    values: Mapping[str, str] = field(default_factory=dict, hash=False)


class Refused(Exception):
    """A user's mistake: shown as located problems, never with a traceback."""

    def __init__(self, problems: Problem | Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = (problems,) if isinstance(problems, Problem) else tuple(problems)
        super().__init__(self.problems)

    def __str__(self) -> str:
        """Name code and place of each problem, for a log or a test report."""
        return "; ".join(f"{p.file}:{p.line}:{p.column}: {p.code}" for p in self.problems)


def nearest(word: str, accepted: Iterable[str]) -> str | None:
    """Return the accepted word that ``word`` most likely was meant to be, or None when none is near."""
    by_folded = {_folded(candidate): candidate for candidate in accepted}
    close = difflib.get_close_matches(_folded(word), by_folded, n=1, cutoff=0.6)
    return by_folded[close[0]] if close else None


def path_text(loc: Sequence[str | int]) -> str:
    """Return a path into a record as it is shown: ``("roof", "planes", 1)`` becomes ``roof.planes[1]``."""
    parts = [f"[{part}]" if isinstance(part, int) else f".{part}" for part in loc]
    return "".join(parts).removeprefix(".")


def shown(path: Path, root: Path | None) -> str:
    """Return a path as shown to the user: below ``root`` when it lies there, with forward slashes."""
    if root is not None and path.is_relative_to(root):
        return path.relative_to(root).as_posix()
    return path.as_posix()


def message(problem: Problem, catalogue: Catalogue) -> tuple[str, str]:
    """Return what a problem says and what to write, each one sentence; the second may be empty."""
    entry = catalogue.get(problem.code, {"says": "{found}"})
    words = {name: visible(str(value)) for name, value in problem.values.items()}
    words |= {"found": _cut(visible(problem.found)), "at": visible(problem.at)}
    write = entry.get("write_near" if words.get("nearest") else "write") or entry.get("write", "")
    return _filled(entry["says"], words), _filled(write, words)


def render(
    problem: Problem, catalogue: Catalogue, *, shown_path: str, lines: Sequence[str] | None = None
) -> str:
    """Return one problem as text: place, code, message, the line with a caret, and what to write.

    Args:
        problem: The problem.
        catalogue: Sentences by code.
        shown_path: The file's path as the user should see it.
        lines: The file's lines when the caller has them; read from the file otherwise.
    """
    says, write = message(problem, catalogue)
    known = read_lines(problem.file) if lines is None else lines
    # A folder, or a file that is not there, has no line to go to.
    spot = f":{problem.line}:{problem.column}" if known else ""
    text = f"{visible(shown_path)}{spot}: error[{problem.code}]: {says}"
    rows = [text, *snippet(known, problem.line, problem.column, problem.found)]
    place = f"at {visible(problem.at)}." if problem.at else ""
    hint = "  ".join(part for part in (place, write) if part)
    return "\n".join([*rows, f"   {hint}"] if hint else rows)


def render_all(
    problems: Iterable[Problem],
    catalogue: Catalogue,
    *,
    root: Path | None = None,
    of_jobs: int | None = None,
    not_built: Collection[str] = (),
) -> str:
    """Return all problems as text, by file and line, closed by a line that counts them.

    Args:
        problems: Problems of any number of files; one stated twice is shown once.
        catalogue: Sentences by code.
        root: Folder that shown paths are relative to.
        of_jobs: How many jobs were looked at, when jobs were looked at.
        not_built: Numbers of the jobs left unbuilt because of these problems.
    """
    by_file: dict[Path, list[Problem]] = {}
    for problem in sorted(
        problems, key=lambda p: (p.file.as_posix(), p.line, p.column, p.code, p.at, p.found)
    ):
        known = by_file.setdefault(problem.file, [])
        if problem not in known[-8:]:
            known.append(problem)
    rows = []
    for file, known in by_file.items():
        name, lines = shown(file, root), read_lines(file)
        rows += [render(p, catalogue, shown_path=name, lines=lines) for p in known[:MOST_SHOWN_A_FILE]]
        if len(known) > MOST_SHOWN_A_FILE:
            rows.append(f"{visible(name)}: and {len(known) - MOST_SHOWN_A_FILE} more")
    rows.append(_closing(sum(map(len, by_file.values())), len(by_file), of_jobs, sorted(not_built)))
    return "\n".join(rows)


def _closing(errors: int, files: int, of_jobs: int | None, not_built: Sequence[str]) -> str:
    where = _plural(files, "file")
    if of_jobs is not None and not_built:
        where = f"{len(not_built)} of {_plural(of_jobs, 'job')}"
    closing = f"{_plural(errors, 'error')} in {where}."
    if not_built:
        named = ", ".join(not_built[:_MOST_NAMED])
        rest = f" and {len(not_built) - _MOST_NAMED} more" if len(not_built) > _MOST_NAMED else ""
        closing += f" Nothing was built for {visible(named)}{rest}."
    return closing


def _filled(template: str, words: Mapping[str, str]) -> str:
    """Return a sentence with its words; a part in square brackets goes when one of its words is empty."""

    def kept(part: re.Match[str]) -> str:
        return part[1] if all(words.get(name) for name in re.findall(r"\{(\w+)\}", part[1])) else ""

    template = re.sub(r"\[([^\[\]]*)\]", kept, template)
    return " ".join(template.format_map(_Words(words)).split())


def _plural(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def _folded(word: str) -> str:
    return re.sub(r"[\s_-]+", "_", word.strip().lower())


def _cut(text: str) -> str:
    return text if len(text) <= _MOST_QUOTED else text[: _MOST_QUOTED - 1] + "…"


class _Words(dict[str, str]):
    """Words of a message; one that nobody gave is left out rather than failing the report."""

    def __missing__(self, key: str) -> str:
        return ""
