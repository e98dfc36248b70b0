"""Phrases as a file of words writes them, and where they stand in a text.

A phrase is words with a blank between; in the text a hyphen or a comma will do as well. In a phrase

* ``a|b|c`` is one of several words,
* ``repair~`` is the word with its simple endings: repairs, repaired, repairing,
* ``not?`` may be left out,
* ``N`` is a number, in digits or as a word,
* ``..`` is up to four words of the same sentence.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Annotated

from packet.fields import Parsed
from packet.units import NotAMeasure

#: Words that ``..`` may stand for.
MOST_BETWEEN = 4

_EXAMPLES = (
    "words with a blank between, such as withstand~ .. N mph: a|b for one of two words, ~ for endings,"
    " ? for a word that may be left out, N for a number, .. for up to four words; first and last a word or N",
)

# Marks that part words and the signs of words have no character in common, so that no text is slow to search.
_PARTING = r"\s,()\[\]\"“”«»\u2010-\u2015-"
_BETWEEN = f"[{_PARTING}]+"
_ANY_WORD = rf"[^{_PARTING}]*[^{_PARTING}.;:!?]"
_DIGITS = r"\d+(?:[.,/]\d+)*\+?"
_NUMBER_WORDS = (
    "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty|sixty"
    "|seventy|eighty|ninety|hundred|thousand"
)
_NUMBER = rf"(?:{_DIGITS}|(?:{_NUMBER_WORDS})(?!\w))"
_WORD = re.compile(r"([^\W\d_]+(?:'[^\W\d_]+)?)(~?)")

#: Curly and other signs that people and phones write for an apostrophe.
_APOSTROPHES = str.maketrans(dict.fromkeys("\u2019\u2018\u02bc\u00b4", "'"))


@dataclass(frozen=True)
class Phrase:
    """A phrase to look for.

    Attributes:
        text: As it was typed.
        needles: Words in small letters, of which any text with the phrase holds one.
    """

    text: str
    needles: tuple[str, ...]
    _pattern: re.Pattern[str] = field(repr=False, compare=False)

    def spans(self, text: str) -> Iterator[tuple[int, int]]:
        """Yield start and end of each place in a text where the phrase stands."""
        for match in self._pattern.finditer(text.translate(_APOSTROPHES)):
            yield match.span()


def words_in(text: str) -> list[str]:
    """Return the words of a text in small letters, what stands before an apostrophe as a word of its own."""
    return re.findall(r"[^\W\d_]+", text.casefold())


def parse_phrase(text: str) -> Phrase:
    """Return the phrase that a text writes down.

    Raises:
        NotAMeasure: It is no phrase, or begins or ends with something that may be left out.

    Example:
        >>> list(parse_phrase("withstand~ .. N mph").spans("It withstands winds of 150 mph."))
        [(3, 30)]
    """
    tokens = text.split()
    if not tokens or not all(map(_always_there, (tokens[0], tokens[-1]))):
        raise NotAMeasure("bad-phrase", text, _EXAMPLES)
    pattern, after_number = r"(?<!\w)", False
    needles: list[tuple[str, ...]] = []
    for number, token in enumerate(tokens):
        between = "" if not number else f"[{_PARTING}]*" if after_number else _BETWEEN
        if token == "..":
            pattern += rf"(?:{_BETWEEN}{_ANY_WORD}){{0,{MOST_BETWEEN}}}?"
            after_number = False
            continue
        after_number = token == "N"
        if after_number:
            pattern += between + _NUMBER
            continue
        words = [_WORD.fullmatch(word) for word in token.removesuffix("?").casefold().split("|")]
        if not all(words):
            raise NotAMeasure("bad-phrase", text, _EXAMPLES)
        forms = [form for word in words if word for form in _forms(word[1], word[2])]
        piece = rf"{between}(?:{'|'.join(map(re.escape, forms))})(?!\w)"
        pattern += f"(?:{piece})?" if token.endswith("?") else piece
        if not token.endswith("?"):
            needles.append(tuple(words_in(form)[0] for form in forms))
    if not needles:
        raise NotAMeasure("bad-phrase", text, _EXAMPLES)
    rarest = max(needles, key=lambda words: min(map(len, words)))
    return Phrase(text, rarest, re.compile(pattern, re.IGNORECASE))


def _always_there(token: str) -> bool:
    return token != ".." and not token.endswith("?")


def _forms(word: str, ending: str) -> tuple[str, ...]:
    """Return a word, with its simple endings where they are asked for; a last letter may be doubled."""
    if not ending:
        return (word,)
    if word.endswith("e"):
        return tuple(word[:-1] + end for end in ("e", "es", "ed", "ing"))
    if word.endswith("y"):
        return tuple(word[:-1] + end for end in ("y", "ys", "ies", "yed", "ied", "ying"))
    return tuple(word + end for end in ("", "s", "es", "ed", "ing", f"{word[-1]}ed", f"{word[-1]}ing"))


PhraseText = Annotated[Phrase, Parsed(parse_phrase, _EXAMPLES)]
