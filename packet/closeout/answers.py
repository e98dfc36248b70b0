"""What the record says of requirements by name, held against what was asked and what was shown."""

from collections.abc import Iterator, Sequence

from packet.problems import Problem, nearest
from packet.reading import ReadFile
from packet.record.fault import Loc
from packet.record.job import JobRecord
from packet.review.catalogue import BY_ID
from packet.review.model import Result

#: Photos and papers named in a message before "and more".
_MOST_NAMED = 4


def unknown_subjects(record: ReadFile[JobRecord]) -> Iterator[Problem]:
    """Find names such as deck-sheets:S9 whose part of the work the requirement is not judged for."""
    for loc, name, is_key in _names(record.value):
        id, _, subject = name.partition(":")
        if not subject or id not in BY_ID or subject in record.ids_typed:
            continue
        subjects = BY_ID[id].subjects
        accepted = [f"{id}:{known}" for known in subjects(record.value)] if subjects else []
        if name in accepted:
            continue
        words = {"accepted": ", ".join((id, *accepted)), "nearest": nearest(name, accepted) or ""}
        words |= {"requirement": id, "subject": subject}
        if is_key:
            yield record.problem_of_key("unknown-subject", loc, **words)
        else:
            yield record.problem("unknown-subject", loc, name, **words)


def _names(record: JobRecord) -> Iterator[tuple[Loc, str, bool]]:
    """Yield each requirement the record names, with its place and whether the name is a key."""
    for name in record.not_recorded:
        yield ("not_recorded", name), name, True
    for n, way in enumerate(record.ways_out):
        yield ("ways_out", n, "requirement"), way.requirement, False
    for n, visit in enumerate(record.inspections):
        for m, correction in enumerate(visit.corrections):
            if correction.requirement:
                loc = ("inspections", n, "corrections", m, "requirement")
                yield loc, correction.requirement, False


def reasons_for_what_is_shown(record: ReadFile[JobRecord], results: Sequence[Result]) -> Iterator[Problem]:
    """Find reasons why something was not recorded that is, and is proven, in every part they name."""
    for name in record.value.not_recorded:
        id, _, subject = name.partition(":")
        judged = [
            result
            for result in results
            if result.requirement == id
            and result.word != "does_not_apply"
            and (not subject or result.subject == subject)
        ]
        if judged and all(map(_shown, judged)):
            proof = tuple(
                dict.fromkeys(ref for result in judged for ref in (*result.evidence, *result.papers))
            )
            by = ", ".join(proof[:_MOST_NAMED]) + (" …" if len(proof) > _MOST_NAMED else "")
            yield record.problem_of_key("reason-though-shown", ("not_recorded", name), by=by)


def _shown(result: Result) -> bool:
    """Return whether nothing of a result is missing: an answer to each question, and what proves it."""
    return result.word != "not_recorded" and bool(result.evidence or result.papers)
