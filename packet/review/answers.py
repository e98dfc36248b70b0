"""How the record answers: small functions from a record to one answer."""

from collections.abc import Callable
from typing import Any

from packet import units
from packet.calc.ventilation import attic_to_vents as vent_ratio
from packet.figures.air import free_area, open_vents
from packet.figures.eaves import reach_in, steepest
from packet.figures.rules import Limit, maker_limit
from packet.record.air import Ventilation
from packet.record.job import JobRecord
from packet.record.wood import DeckNail
from packet.review.model import Answer

Ask = Callable[[JobRecord], Answer]


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


def nail(path: str) -> Ask:
    """Answer with a deck nail: length, shank and kind of shank; never a penny name."""

    def answer(record: JobRecord) -> Answer:
        found: DeckNail | None = at(record, path)
        if found is None:
            return Answer()
        figures = (f"{path}.size.length", f"{path}.size.shank")
        return Answer((found.size.length_in, found.size.shank_in, found.shank), figures, found.shank)

    return answer


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


def board_nails(record: JobRecord) -> Answer:
    """Answer with the nails in a board at each rafter: the least of all; one left out answers nothing.

    Old boards nailed again count with the new ones.
    """
    boards = record.deck.boards if record.deck else ()
    found = [(board.nails_each_bearing, f"deck.boards.{board.id}") for board in boards]
    old = at(record, "deck.renailed.boards")
    found += [(old.nails_each_bearing, "deck.renailed.boards")] if old else []
    given = [(nails, path) for nails, path in found if nails is not None]
    if not found or len(given) < len(found):
        return Answer()
    least, path = min(given)
    return Answer(least, (f"{path}.nails_each_bearing",))


def edges_held_by(record: JobRecord) -> Answer:
    """Answer with what holds the long edges of the panels between the framing."""
    held = record.deck.edges_held_by if record.deck else None
    return Answer(held, text=held) if held else Answer()


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


def barrier_reach(record: JobRecord) -> Answer:
    """Answer with how far inside the outside face of the wall the taped ice barrier reaches."""
    barrier, plane = at(record, "dry_in.ice_barrier"), steepest(record)
    reach = reach_in(barrier, plane) if barrier and plane else None
    return Answer(reach, ("ice_barrier.reach",)) if reach is not None else Answer()


def attic_to_vents(record: JobRecord) -> Answer:
    """Answer with the attic there is for each of free vent area; one unknown line leaves it unknown."""
    attic: Ventilation | None = record.ventilation
    if attic is None or attic.attic_area is None:
        return Answer()
    areas = [free_area(vent) for vent in open_vents(attic)]
    known = [area for area in areas if area is not None]
    if len(known) < len(areas) or not sum(known):
        return Answer()
    ratio = vent_ratio(attic.attic_area.square_feet, sum(known))
    return Answer(ratio, ("ventilation.ratio",))


def listed(record: JobRecord) -> Answer:
    """Answer that the thing is in the record; its photos do the rest."""
    return Answer(True)


def listed_once(path: str) -> Ask:
    """Answer that a part of the record is there."""
    return lambda record: Answer(True) if at(record, path) else Answer()


def maker_nails(record: JobRecord) -> Limit | None:
    """Return the maker's printed number of nails."""
    maker = at(record, "covering.maker")
    if maker is None or maker.nails_each is None:
        return None
    return maker_limit(maker.nails_each, "covering.maker.nails_each", maker.printed_on)


def roof_measured(record: JobRecord) -> Answer:
    """Answer that the planes are in the record with their pitch and size."""
    return Answer(True) if record.roof and record.roof.plane_ids else Answer()


def old_fastener(record: JobRecord) -> Answer:
    """Answer with what holds the old deck: its kind, or its size."""
    old = record.roof.old if record.roof else None
    if old is None or not (old.deck_fastener or old.deck_nail):
        return Answer()
    figures = ("roof.old.deck_nail.length", "roof.old.deck_nail.shank") if old.deck_nail else ()
    return Answer(old.deck_fastener or old.deck_nail, figures, old.deck_fastener or "")


def label(record: JobRecord) -> Answer:
    """Answer with color and lot as the wrapper reads; lots may stand at the deliveries."""
    color = at(record, "covering.shingle.color")
    of_goods = [line for line in record.bought if line.use == "shingles"]
    lots = [at(record, "covering.shingle.lot"), *(line.lot for line in of_goods)]
    lots += [delivery.lot for line in of_goods for delivery in line.deliveries]
    lot = next((lot for lot in lots if lot), None)
    return Answer(True, text=f"{color}, {lot}") if color and lot else Answer()


def swept(record: JobRecord) -> Answer:
    """Answer with the magnet's run."""
    magnet = at(record, "clean_up.magnet")
    return Answer(True, text=magnet) if magnet else Answer()


def final_passed(record: JobRecord) -> Answer:
    """Answer that the permit's last visit passed: the one that looked at the finished work."""
    final = [
        visit
        for visit in record.inspections
        if visit.purpose == "permit" and "done" in visit.stages and visit.result == "passed"
    ]
    return Answer(True, text=final[-1].by) if final else Answer()


def kept_where(record: JobRecord) -> Answer:
    """Answer with where the goods that were left are kept."""
    left = [line for line in record.bought if line.left]
    places = [line.left_where for line in left if line.left_where]
    return Answer(True, text="; ".join(places)) if places else Answer()


def measured_paid(record: JobRecord) -> Answer:
    """Answer that a payment is in the record."""
    return Answer(True) if at(record, "money.paid") else Answer()


def papers_of(kind: str) -> Ask:
    """Answer that a paper of a kind is listed."""
    return lambda record: Answer(True) if any(d.kind == kind for d in record.documents) else Answer()
