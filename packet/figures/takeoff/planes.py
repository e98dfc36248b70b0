"""Which planes each line of the takeoff is for."""

from collections.abc import Callable, Iterable, Mapping

from packet.figures.takeoff.ground import Ground
from packet.uses import Use


def planes_of(use: Use, ground: Ground) -> tuple[str, ...]:
    """Return the planes the goods of a use go on, each once, in the order of the record."""
    return tuple(dict.fromkeys(PLANES[use](ground)))


def _worked(ground: Ground) -> Iterable[str]:
    return (area.plane for area in ground.areas)


def _shingled(ground: Ground) -> Iterable[str]:
    return (area.plane for area in ground.shingled)


def _sheets(ground: Ground) -> Iterable[str]:
    deck = ground.record.deck
    return (sheet.plane for sheet in deck.sheets) if deck else ()


def _nailed(ground: Ground) -> Iterable[str]:
    deck = ground.record.deck
    boards = (board.plane for board in deck.boards) if deck else ()
    again = deck.renailed.planes if deck and deck.renailed else ()
    return (*_sheets(ground), *boards, *again)


def _along(*kinds: str) -> Callable[[Ground], Iterable[str]]:
    """Return the worked planes that meet an edge of some kinds along the work."""

    def planes(ground: Ground) -> Iterable[str]:
        met = {plane for edge in ground.edges(*kinds) for plane, _ in edge.sides}
        return (plane for plane in _worked(ground) if plane in met)

    return planes


def _new(kind: str) -> Callable[[Ground], Iterable[str]]:
    """Return the planes that new details of a kind stand on."""

    def planes(ground: Ground) -> Iterable[str]:
        details = (item for item in ground.record.details if item.kind == kind and item.state == "new")
        return (item.plane for item in details if item.plane)

    return planes


PLANES: Mapping[Use, Callable[[Ground], Iterable[str]]] = {
    "deck panels": _sheets,
    "deck nails": _nailed,
    "deck clips": _sheets,
    "joint tape": _worked,
    "ice barrier": _shingled,
    "underlayment": _shingled,
    "cap nails": _shingled,
    "drip edge": _along("eave", "rake"),
    "valley lining": _along("valley"),
    "step flashing": _new("sidewall"),
    "pipe boots": _new("pipe boot"),
    "starter": _shingled,
    "shingles": _shingled,
    "ridge vent": _along("ridge", "hip"),
    "caps": _along("ridge", "hip"),
    "roofing nails": _shingled,
    "cement": _worked,
}
