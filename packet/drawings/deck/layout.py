"""Everything on the deck of one plane in its place, at one scale."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from packet.drawings.deck.edges import Edge
from packet.drawings.deck.framing import Member, level_wood, members
from packet.drawings.deck.labels import (
    PieceWords,
    Places,
    named_edges,
    piece_outlines,
    unsound_words,
)
from packet.drawings.deck.measures import Chains, Measure, courses, extents
from packet.drawings.deck.nails import row_lines
from packet.drawings.deck.view import View, box, on_plane
from packet.drawings.flat import Polygon, Segment, bounds, middle, sides
from packet.drawings.lettering import STYLES, Lettered
from packet.drawings.names import Block, lettered
from packet.drawings.pointers import BESIDE_ROOF_PX, DOT_PX, Pointer, point_to
from packet.drawings.room import Room
from packet.drawings.taken import Box, Index, Taken

#: Clear space around the dot of a leader, where there is room [px].
_DOT_MARGIN = 1.0


@dataclass(frozen=True)
class Layout:
    """What stands where [px]; the upper left corner of the view is the origin.

    Attributes:
        view: The part of the plane.
        members: Framing in view.
        wood: Faces of wood along the eave.
        edges: Edges of the plane, each with what the view shows of it.
        measures: Dimensions.
        pieces: Words in pieces, by id of the piece.
        cut_outs: Ids in rot, by id of the cut-out.
        pointers: Ids that found no room in place.
        words: Words along edges and members.
        in_key: What the key must say of pieces, by their id.
        placed_in_key: Pieces whose place the key must give, since no dimension shows it.
        clear: Boxes that hatching must not run through.
    """

    view: View
    members: tuple[Member, ...]
    wood: tuple[Segment, ...]
    edges: tuple[tuple[Edge, Segment], ...]
    measures: tuple[Measure, ...]
    pieces: tuple[tuple[str, Block], ...]
    cut_outs: tuple[tuple[str, Block], ...]
    pointers: tuple[Pointer, ...]
    words: tuple[Lettered, ...]
    in_key: Mapping[str, tuple[str, ...]]
    placed_in_key: tuple[str, ...]
    clear: Index[Box]

    def bounds(self) -> tuple[float, float, float, float]:
        """Return the room of the view and all that belongs to it."""
        width, height = self.view.size_px
        points = [(0.0, 0.0), (width, height)]
        points += [point for measure in self.measures for point in measure.points]
        points += [point for word in self.words for point in word.box]
        points += [point for pointer in self.pointers for point in pointer.box]
        return bounds(points)


def lay_out(
    plane: Mapping[str, Any],
    edges: list[Edge],
    said: Mapping[str, PieceWords],
    view: View,
    words: Mapping[str, str],
) -> Layout:
    """Return everything in its place.

    Args:
        plane: A plane of the deck plan [ft].
        edges: Its edges [ft].
        said: What is to be said in each piece, by its id.
        view: The part of the plane that is drawn, at its scale.
        words: Words of drawings.
    """
    framing, wood = members(plane, view), level_wood(plane, view)
    shown = [
        (edge, part)
        for edge in edges
        if (part := view.clipped((view.point(edge.line[0]), view.point(edge.line[1]))))
    ]
    measures, unplaced = _measures(plane, framing, view, words)
    taken = Taken()
    taken.add_lines(part for _, part in shown)
    taken.add(measure.text.box for measure in measures if measure.text)
    for measure in measures:
        taken.add_lines([measure.line, *measure.extensions])
    width, height = view.size_px
    along = list(named_edges(shown, (width / 2, height / 2), taken, words))
    along += unsound_words(framing, taken, words)
    taken.add_lines(side for cut in plane["cut_outs"] for side in _cut_lines(cut, view))
    faces = [*(face for member in framing for face in member.faces), *wood]
    taken.add_lines(side for opening in plane["openings"] for side in sides(view.points(opening)))
    places = Places(row_lines(plane["pieces"], view), faces, taken)
    pieces, pointers, in_key = _pieces(plane, said, view, places)
    cut_outs = []
    for cut in plane["cut_outs"]:
        outline = on_plane(cut["rot"], plane, view)
        block = places.inside(lettered(cut["id"], "area-id"), outline)
        if block is not None:
            cut_outs.append((cut["id"], block))
        else:
            pointers.append(_beside(cut["id"], [outline], view, places))
    return Layout(
        view,
        tuple(framing),
        tuple(wood),
        tuple(shown),
        tuple(measures),
        tuple(pieces),
        tuple(cut_outs),
        tuple(pointers),
        tuple(along),
        in_key,
        tuple(unplaced),
        clear=taken.boxes,
    )


def _measures(
    plane: Mapping[str, Any], framing: list[Member], view: View, words: Mapping[str, str]
) -> tuple[list[Measure], list[str]]:
    """Return the dimensions, and the pieces that none of them places along the eave."""
    found = extents(plane)
    rows = courses(found)
    chains = Chains(view, words, [(float(u), float(v)) for u, v in plane["outline"]])
    measures = list(
        chains.framing(
            framing,
            plane["lines"],
            [end for one in rows[1:][-1:] for piece in one for end in (piece.left, piece.right)],
        )
    )
    shown = []
    for row, side in ((rows[:1], "below"), (rows[1:][-1:], "above")):
        for course in row:
            measures += chains.along(course, side)
            shown += course
    if found:
        measures += chains.up(found)
    known = {(round(one.left, 2), round(one.right, 2)) for one in shown}
    return measures, [one.id for one in found if (round(one.left, 2), round(one.right, 2)) not in known]


def _pieces(
    plane: Mapping[str, Any], said: Mapping[str, PieceWords], view: View, places: Places
) -> tuple[list[tuple[str, Block]], list[Pointer], dict[str, tuple[str, ...]]]:
    """Return words in pieces, ids beside them, and what is left to the key."""
    placed: list[tuple[str, Block]] = []
    pointers: list[Pointer] = []
    in_key: dict[str, tuple[str, ...]] = {}
    for piece in plane["pieces"]:
        id, parts = piece["id"], piece_outlines(piece, view)
        if not parts:
            continue
        tried = (
            (found, left)
            for block, left in said[id].layouts()
            for part in parts
            if (found := places.inside(block, part))
        )
        block, left = next(tried, (None, said[id].whole))
        block = block or places.inside(said[id].least(), parts[0], tight=True)
        if block is not None:
            placed.append((id, block))
        else:
            pointers.append(_beside(id, parts, view, places))
        if left:
            in_key[id] = left
    return placed, pointers, in_key


def _beside(id: str, outlines: Sequence[Polygon], view: View, places: Places) -> Pointer:
    """Return an id with a leader from the first outline, off nails and rather on old deck than on new."""
    room = Room(outlines[0], (), places.off_nails)
    at = room.best(2 * DOT_PX, 2 * DOT_PX, _DOT_MARGIN) or middle(outlines[0])
    (width, height), beside = view.size_px, BESIDE_ROOF_PX
    limits = (-beside, -beside, width + beside, height + beside)
    rather_not = Index(tuple(outline) for outline in outlines)
    return point_to(at, id, STYLES["name"], places.off_nails, rather_not, limits)


def _cut_lines(cut: Mapping[str, Any], view: View) -> Iterator[Segment]:
    for name in ("rot", "asked"):
        yield from sides(view.points(box(cut[name])))
