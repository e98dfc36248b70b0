"""Two different answers to one question: only one of them could reach the packet, so neither is taken."""

from collections.abc import Callable, Iterator

from packet.problems import path_text
from packet.record.fault import Fault
from packet.record.job import JobRecord

#: States of a thing that was taken off and does not stand again.
_NOT_SET = frozenset({"not yet", "left off"})


def _ways_out(record: JobRecord) -> Iterator[Fault]:
    """One way out stands beside a requirement, or beside one of its sheets or details."""
    first: dict[str, int] = {}
    for n, way in enumerate(record.ways_out):
        earlier = first.setdefault(way.requirement, n)
        if way != record.ways_out[earlier]:
            values = {"first": path_text(("ways_out", earlier))}
            yield Fault("way-out-twice", ("ways_out", n, "requirement"), way.requirement, values)


def _permit_and_none(record: JobRecord) -> Iterator[Fault]:
    basis = record.basis
    given = next((name for name in ("permit", "permit_date") if basis and getattr(basis, name)), None)
    if basis and basis.no_permit and given:
        values = {"other": f"{given} is {getattr(basis, given)}", "name": given}
        yield Fault("permit-and-none", ("basis", "no_permit"), basis.no_permit, values)


def _staples_and_a_nail(record: JobRecord) -> Iterator[Fault]:
    old = record.roof.old if record.roof else None
    if old and old.deck_nail and old.deck_fastener == "staples":
        yield Fault("staples-and-nail", ("roof", "old", "deck_nail"), old.deck_nail.text)


def _layers_and_way(record: JobRecord) -> Iterator[Fault]:
    """A deck sealed by two layers of underlayment has two layers of it."""
    dry_in = record.dry_in
    two = dry_in and dry_in.sealed_deck and dry_in.sealed_deck.way == "two layers of underlayment"
    if dry_in and two and dry_in.layers is not None and dry_in.layers < 2:
        yield Fault("layers-and-way", ("dry_in", "layers"), str(dry_in.layers))


def _set_again_or_not(record: JobRecord) -> Iterator[Fault]:
    for n, thing in enumerate(record.detached):
        if thing.reset and thing.state in _NOT_SET:
            values = {"day": str(thing.reset)}
            yield Fault("set-again-or-not", ("detached", n, "state"), thing.state, values)


TWICE_CHECKS: tuple[Callable[[JobRecord], Iterator[Fault]], ...] = (
    _ways_out,
    _permit_and_none,
    _staples_and_a_nail,
    _layers_and_way,
    _set_again_or_not,
)
