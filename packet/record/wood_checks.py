"""What one field of the deck cannot know of another."""

from collections.abc import Callable, Iterator, Sequence

from packet.record.fault import Fault, Loc
from packet.record.job import JobRecord

#: Measures of an old deck of panels.
_OF_PANELS = (
    "edge_spacing",
    "field_spacing",
    "old_edge_spacing",
    "old_field_spacing",
    "sheet_length",
    "sheet_width",
)


def _edges_held_twice(record: JobRecord) -> Iterator[Fault]:
    """Clips stand where edges are held by clips, and nowhere else."""
    deck = record.deck
    if deck and deck.clips and deck.edge_support not in (None, "clips"):
        yield Fault("edges-held-twice", ("deck", "edge_support"), deck.edge_support)


def _boards_nailed_as_panels(record: JobRecord) -> Iterator[Fault]:
    """Spacings along edges and sizes of sheets are of panels; boards take nails at each rafter."""
    old = record.deck.renailed if record.deck else None
    for name in _OF_PANELS if old and old.boards else ():
        length = getattr(old, name)
        if length is not None:
            yield Fault("boards-nailed-as-panels", ("deck", "renailed", name), length.text)


def _ids_that_name_nothing(record: JobRecord) -> Iterator[Fault]:
    """A nailer is an entry under framing, an offcut comes of another sheet, a price was agreed somewhere."""
    deck = record.deck
    if deck is None:
        return
    framing = [work.id for work in record.framing]
    sheets = [sheet.id for sheet in deck.sheets]
    papers = [*(item.id for item in record.found), *(paper.id for paper in record.documents)]
    for index, cut in enumerate(deck.cut_outs):
        yield from _named(cut.nailer, framing, ("deck", "cut_outs", index, "nailer"))
    for index, sheet in enumerate(deck.sheets):
        others = [id for id in sheets if id != sheet.id]
        yield from _named(sheet.cut_from, others, ("deck", "sheets", index, "cut_from"))
        yield from _named(sheet.agreed, papers, ("deck", "sheets", index, "agreed"))


def _named(id: str | None, known: Sequence[str], loc: Loc) -> Iterator[Fault]:
    if id is not None and id not in known:
        yield Fault("unknown-id", loc, id, {"accepted": ", ".join(known) or "none is entered"})


WOOD_CHECKS: tuple[Callable[[JobRecord], Iterator[Fault]], ...] = (
    _edges_held_twice,
    _boards_nailed_as_panels,
    _ids_that_name_nothing,
)
