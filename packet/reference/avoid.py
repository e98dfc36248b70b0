"""Words a packet does not use, ``words/avoid.yaml``: phrases, a plain way to say each, exempt senses."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from pydantic import Field

from packet.fields import Line, Slug, Strict
from packet.figure import Mark
from packet.problems import Problem, Refused
from packet.reading import ReadFile, read_model
from packet.reference.checks import unknown_source
from packet.reference.phrases import Phrase, PhraseText, words_in

#: Place of the file in a ``shared/`` folder.
AVOID_FILE = Path("words") / "avoid.yaml"


class AvoidedPhrase(Strict):
    """Phrases of one meaning, and what to write instead."""

    says: tuple[PhraseText, ...] = Field(min_length=1)
    plainly: Line


class AvoidGroup(Strict):
    """Phrases that do one thing a contractor's packet must not do, and where that was read."""

    title: Line
    source: Slug
    locator: Line
    checked: Mark
    phrases: dict[Slug, AvoidedPhrase] = Field(min_length=1)


class ExemptSense(Strict):
    """A sense in which the same words are the trade's own; they are let stand where the two overlap."""

    says: tuple[PhraseText, ...] = Field(min_length=1)


class AvoidFile(Strict):
    """One file of avoided phrases; its exempt senses are of its own phrases."""

    groups: dict[Slug, AvoidGroup]
    exempt: dict[Slug, ExemptSense] = {}

    @cached_property
    def by_word(self) -> Mapping[str, Sequence[tuple[str, str, Phrase]]]:
        """Group, phrase and one way to say it, by each word that a text with it may hold."""
        found: dict[str, list[tuple[str, str, Phrase]]] = {}
        for group_id, group in self.groups.items():
            for id, entry in group.phrases.items():
                for phrase in entry.says:
                    for word in phrase.needles:
                        found.setdefault(word, []).append((group_id, id, phrase))
        return found


@dataclass(frozen=True)
class Avoided:
    """An avoided phrase in a text.

    Attributes:
        start: Where it begins.
        end: Where it ends.
        written: As it was typed.
        group: Id of its group.
        phrase: Id of the phrase in it.
        title: What the group's phrases do.
        plainly: What to write instead.
    """

    start: int
    end: int
    written: str
    group: str
    phrase: str
    title: str
    plainly: str


def avoided_in(text: str, files: Sequence[AvoidFile]) -> tuple[Avoided, ...]:
    """Return the avoided phrases of a text in their order; of several that overlap, the first and longest."""
    words = dict.fromkeys(words_in(text))
    found = sorted(
        (hit for file in files for hit in _hits(text, words, file)), key=lambda hit: (hit.start, -hit.end)
    )
    kept: list[Avoided] = []
    for hit in found:
        if not kept or hit.start >= kept[-1].end:
            kept.append(hit)
    return tuple(kept)


def _hits(text: str, words: Iterable[str], file: AvoidFile) -> Iterator[Avoided]:
    found = [
        _avoided(text, span, file.groups[group], group, id)
        for group, id, phrase in dict.fromkeys(way for word in words for way in file.by_word.get(word, ()))
        for span in phrase.spans(text)
    ]
    if not found:
        return
    exempt = [span for sense in file.exempt.values() for phrase in sense.says for span in phrase.spans(text)]
    for hit in found:
        if not any(start < hit.end and hit.start < end for start, end in exempt):
            yield hit


def _avoided(text: str, span: tuple[int, int], group: AvoidGroup, group_id: str, id: str) -> Avoided:
    start, end = span
    return Avoided(start, end, text[start:end], group_id, id, group.title, group.phrases[id].plainly)


def read_avoided(folders: Sequence[Path], sources: Collection[str]) -> tuple[ReadFile[AvoidFile], ...]:
    """Return the files of avoided phrases, the packaged one first.

    Args:
        folders: ``shared/`` folders, the packaged one first.
        sources: Every document there is.

    Raises:
        Refused: A file does not fit, cites what is not there, or takes the id of another file's group.
    """
    reads: list[ReadFile[AvoidFile]] = []
    problems: list[Problem] = []
    for folder in folders:
        if not (folder / AVOID_FILE).is_file():
            continue
        try:
            read = read_model(folder / AVOID_FILE, AvoidFile)
        except Refused as refused:
            problems += refused.problems
            continue
        taken = {id for earlier in reads for id in earlier.value.groups}
        reads.append(read)
        for id, group in read.value.groups.items():
            if id in taken:
                problems.append(read.problem_of_key("shadows-packaged", ("groups", id)))
            if group.source not in sources:
                problems.append(unknown_source(read, ("groups", id, "source"), group.source, sources))
    if problems:
        raise Refused(problems)
    return tuple(reads)
