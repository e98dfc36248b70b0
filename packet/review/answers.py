"""How the record answers: small functions from a record to one answer."""

from collections.abc import Callable
from typing import Any

from packet import units
from packet.figures.rules import Limit, maker_limit
from packet.record.job import JobRecord
from packet.review.model import Answer

Ask = Callable[[JobRecord], Answer]
Applies = Callable[[JobRecord], str]


def at(record: JobRecord, path: str) -> Any:
    """Return the value at a dotted path of the record, or None where a part is absent."""
    value: Any = record
    for name in path.split("."):
        value = getattr(value, name, None)
        if value is None:
            return None
    return value


def measure(path: str) -> Ask:
    """Answer with a length in inches."""

    def answer(record: JobRecord) -> Answer:
        length: units.Length | None = at(record, path)
        return Answer(length.inches, (path,)) if length is not None else Answer()

    return answer


def count(path: str) -> Ask:
    """Answer with a count."""

    def answer(record: JobRecord) -> Answer:
        number: int | None = at(record, path)
        return Answer(number, (path,)) if number is not None else Answer()

    return answer


def words(path: str) -> Ask:
    """Answer with words as typed."""

    def answer(record: JobRecord) -> Answer:
        text: str | None = at(record, path)
        return Answer(text, text=text) if text is not None else Answer()

    return answer


def deck_nail(record: JobRecord) -> Answer:
    """Answer with the deck nail: length, shank and kind of shank; never a penny name."""
    nail = at(record, "deck.nail")
    if nail is None:
        return Answer()
    figures = ("deck.nail.size.length", "deck.nail.size.shank")
    return Answer((nail.size.length_in, nail.size.shank_in, nail.shank), figures, nail.shank)


def of_new_details(kind: str, name: str) -> Ask:
    """Answer with a length of the new details of one kind: the least of them, since the least decides."""

    def answer(record: JobRecord) -> Answer:
        details = [detail for detail in record.details if detail.kind == kind and detail.state == "new"]
        given = [(value, d.id) for d in details if (value := getattr(d, name)) is not None]
        if not details or len(given) < len(details):
            return Answer()
        value, id = min(given, key=lambda pair: pair[0].inches)
        return Answer(value.inches, (f"details.{id}.{name}",))

    return answer


def nail_in_deck(record: JobRecord) -> Answer:
    """Answer with what the shingle nail has below the covering."""
    length, above = at(record, "covering.nail.length"), at(record, "covering.above_deck")
    if length is None or above is None:
        return Answer()
    return Answer(length.inches - above.inches, ("covering.nail.in_deck",))


def wind_class(record: JobRecord) -> Answer:
    """Answer with test and class as the wrapper reads, ``ASTM D7158 Class H``."""
    test, name = at(record, "covering.shingle.wind_test"), at(record, "covering.shingle.wind_class")
    if not test or not name:
        return Answer()
    text = f"{test} Class {name}"
    return Answer(text, text=text)


def listed(record: JobRecord) -> Answer:
    """Answer that the thing is in the record; its photos do the rest."""
    return Answer(True)


def maker_nails(record: JobRecord) -> Limit | None:
    """Return the maker's printed number of nails."""
    maker = at(record, "covering.maker")
    if maker is None or maker.nails_each is None:
        return None
    return maker_limit(maker.nails_each, "covering.maker.nails_each", maker.printed_on)


def when_recorded(path: str, reason: str) -> Applies:
    """Apply when the record has something at a path."""
    return lambda record: "" if at(record, path) else reason


def when_new(kind: str, reason: str) -> Applies:
    """Apply when a detail of a kind is new."""
    return lambda record: "" if any(d.kind == kind and d.state == "new" for d in record.details) else reason
