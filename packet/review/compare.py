"""An answer held against limits: the truth table, and which limit governs."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

from packet.figures.rules import Limit
from packet.reference.vocabulary import Nail
from packet.review.model import Answer, Word


def _same_words(answer: object, accepted: Sequence[str]) -> bool:
    words = " ".join(str(answer).split()).casefold()
    return any(words == " ".join(word.split()).casefold() for word in accepted)


def _nail_suits(answer: Any, accepted: Sequence[Nail]) -> bool:
    """Return whether a nail is one of those named: the same kind of shank, no shorter and no thinner."""
    length, shank, kind = answer
    return any(
        kind == nail.shank and length >= nail.length_in and shank >= nail.shank_in for nail in accepted
    )


def _one_of(answer: object, accepted: Any) -> bool:
    if accepted and isinstance(accepted[0], Nail):
        return _nail_suits(answer, accepted)
    return _same_words(answer, accepted)


_MEETS: Mapping[str, Callable[[Any, Any], bool]] = {
    "at_most": lambda answer, limit: answer <= limit,
    "at_least": lambda answer, limit: answer >= limit,
    "one_of": _one_of,
    "present": lambda answer, limit: answer is not None,
}


def meets(answer: Answer, limit: Limit) -> bool:
    """Return whether an answer keeps to one limit; both are in the unit of the question."""
    return _MEETS[limit.kind](answer.value, limit.value)


def fair(limits: Sequence[Limit], answer: Answer) -> tuple[Limit, ...]:
    """Return the limits, those silenced that an answer misses while a rule that was not read asks less."""
    return tuple(
        replace(limit, decides=False, caution=False)
        if limit.decides and not limit.may_accuse and answer.value is not None and not meets(answer, limit)
        else limit
        for limit in limits
    )


def governing(limits: Sequence[Limit], answer: Answer) -> Limit | None:
    """Return the limit that decides: the tightest that may decide, or the first one the answer misses.

    Limits of one question are alike, so the tightest lawful value governs; lists of nails or words are not,
    and every one of them has to be kept.
    """
    deciding = [limit for limit in limits if limit.decides]
    if not deciding:
        return None
    missed = [limit for limit in deciding if answer.value is not None and not meets(answer, limit)]
    return min(missed or deciding, key=_looseness)


def _looseness(limit: Limit) -> Fraction:
    if not isinstance(limit.value, Fraction):
        return Fraction(0)
    return limit.value if limit.kind == "at_most" else -limit.value


def verified(limits: Sequence[Limit]) -> bool:
    """Return whether the rule was read well enough to decide: the law's own row, where the law has one.

    A rule that was superseded asks nothing; the maker's printed number decides where the law is silent.
    """
    standing = [limit for limit in limits if not limit.superseded]
    law = [limit for limit in standing if limit.whose == "law"]
    return any(limit.decides for limit in (law or standing))


def word(answer: Answer, limits: Sequence[Limit], *, present: bool, proven: bool) -> Word:
    """Return the word for one question.

    A value that differs differs, with or without a photo. A value that meets, with proof from before its
    layer was covered, meets. Without such proof, or with a photo and no value, it is not recorded.

    Args:
        answer: What the record says.
        limits: What is asked.
        present: The thing only has to be there.
        proven: A photo from before the layer was covered shows it.
    """
    if answer.value is None:
        return "not_recorded"
    if any(limit.decides and not meets(answer, limit) for limit in limits):
        return "differs"
    if not proven:
        return "not_recorded"
    return "meets" if present or verified(limits) else "not_verified"
