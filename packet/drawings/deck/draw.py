"""The drawn deck: from old deck and framing below to nails and words above."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any

from packet.drawings import svg
from packet.drawings.building import lies_on
from packet.drawings.deck.edges import Edge
from packet.drawings.deck.layout import Layout
from packet.drawings.deck.nails import nail_paths
from packet.drawings.deck.sheet import Sheet
from packet.drawings.deck.view import View, inset, on_plane
from packet.drawings.flat import Polygon, Segment, along, bounds, crossings, direction, moved, sides
from packet.drawings.hatch import hatch, without
from packet.drawings.plan import SAME_PLACE_FT
from packet.drawings.svg import Element, Point, element

#: Half the width and height of the zigzag in a break line; how far it stands off the view [px].
_ZIGZAG = 5.0
#: The line of what the rule led to runs this far inside its place, apart from the joints [px].
_INSET = 3.5
#: Length of the corner marks of the cut that was made [px].
_MARK = 12.0


def draw_deck(plane: Mapping[str, Any], layout: Layout, sheet: Sheet) -> Iterator[Element]:
    """Yield the deck from below to above."""
    view = layout.view
    for piece in plane["pieces"]:
        for outline in piece["outlines"]:
            yield svg.polygon(view.points(outline), class_="piece", data_piece=piece["id"])
    for number, cut in enumerate(plane["cut_outs"]):
        rot = on_plane(cut["rot"], plane, view)
        yield svg.path(hatch(rot, number, layout.clear.near(bounds(rot))), class_="hatch")
    yield from _framing(layout)
    yield from _strips(plane, view)
    for opening in plane["openings"]:
        runs = [(part, False) for side in sides(view.points(opening)) if (part := view.clipped(side))]
        if runs:
            yield svg.path(runs, class_="opening")
    yield from _breaks(plane, view)
    near = SAME_PLACE_FT * view.px_per_ft
    yield from (_edge(edge, shown) for edge, shown in layout.edges)
    for piece in plane["pieces"]:
        yield _piece(piece, layout, sheet, near)
    shown = [part for _, part in layout.edges]
    for cut in plane["cut_outs"]:
        parts = _cut_out(cut, plane, shown, view)
        yield element("g", parts, class_="cut-out", data_cut_out=cut["id"])
    yield from (measure.draw() for measure in layout.measures)
    yield from _words(layout)


def _framing(layout: Layout) -> Iterator[Element]:
    for number, member in enumerate(layout.members):
        clear = layout.clear.near(bounds(member.corners))
        runs = [(part, False) for face in member.faces for part in without(face, clear)]
        at = svg.number(member.at)
        if member.sound:
            yield svg.path(runs, class_="member", data_at=at)
        else:
            lines = [*runs, *hatch(member.corners, number, clear)]
            yield svg.path(lines, class_="member unsound", data_at=at)
    wood = [(part, False) for face in layout.wood for part in without(face, layout.clear.near(bounds(face)))]
    if wood:
        yield svg.path(wood, class_="level-wood")


def _strips(plane: Mapping[str, Any], view: View) -> Iterator[Element]:
    for strip in plane["strips"]:
        runs = [(part, False) for side in sides(view.points(strip)) if (part := view.clipped(side))]
        if runs:
            yield svg.path(runs, class_="strip-line")


def _breaks(plane: Mapping[str, Any], view: View) -> Iterator[Element]:
    """Yield a break line on each side of the view where the plane goes on."""
    width, height = view.size_px
    outline = view.points(plane["outline"])
    around = [(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)]
    openings = [view.points(opening) for opening in plane["openings"]]
    for side in sides(around):
        outer = (moved(side[0], _outward(side), 1.0), moved(side[1], _outward(side), 1.0))
        for start, end in crossings(outer, outline):
            piece = (along(*side, start), along(*side, end))
            for part in _outside(piece, openings):
                yield svg.path([(_zigzag(part), False)], class_="break")


def _outside(piece: Segment, openings: Sequence[Polygon]) -> list[Segment]:
    pieces = [piece]
    for opening in openings:
        kept: list[Segment] = []
        for one in pieces:
            at = 0.0
            for start, end in [*crossings(one, opening), (1.0, 1.0)]:
                if start - at > 0.01:
                    kept.append((along(*one, at), along(*one, start)))
                at = max(at, end)
        pieces = kept
    return pieces


def _outward(side: Segment) -> Point:
    way = direction(*side)
    return way[1], -way[0]


def _zigzag(part: Segment) -> list[Point]:
    way, out = direction(*part), _outward(part)
    centre = along(*part, 0.5)
    bends = [(-1.0, 0.0), (-0.5, 1.0), (0.5, -1.0), (1.0, 0.0)]
    return [
        part[0],
        *(moved(moved(centre, way, a * _ZIGZAG), out, b * _ZIGZAG) for a, b in bends),
        part[1],
    ]


def _edge(edge: Edge, shown: Segment) -> Element:
    kind = edge.kind.replace(" ", "-")
    classes = f"edge {kind}" if kind else "edge"
    return svg.line(*shown, class_=classes, data_edge=edge.id or None, data_kind=edge.kind or None)


def _piece(piece: Mapping[str, Any], layout: Layout, sheet: Sheet, near: float) -> Element:
    """Return joints and nails of a piece; on an edge of the plane the edge's own line shows."""
    view = layout.view
    shown = [part for _, part in layout.edges]
    joints = [
        (side, False)
        for outline in piece["outlines"]
        for side in sides(view.points(outline))
        if not any(lies_on(side, edge, near) for edge in shown)
    ]
    parts = [svg.path(_joined(joints), class_="joint")] if joints else []
    id = svg.ident(sheet.name, "piece", piece["id"])
    return element("g", [*parts, *nail_paths(piece, view)], id=id, class_="sheet", data_piece=piece["id"])


def _joined(runs: Sequence[tuple[Segment, bool]]) -> list[tuple[list[Point], bool]]:
    """Return sides that follow each other as one run, so that their corners are drawn as corners."""
    found: list[tuple[list[Point], bool]] = []
    for (start, end), _ in runs:
        if found and found[-1][0][-1] == start:
            found[-1][0].append(end)
        else:
            found.append(([start, end], False))
    if len(found) > 1 and found[-1][0][-1] == found[0][0][0]:
        last, _ = found.pop()
        found[0] = ([*last, *found[0][0][1:]], False)
    if len(found) == 1 and found[0][0][0] == found[0][0][-1]:
        return [(found[0][0][:-1], True)]
    return found


def _cut_out(
    cut: Mapping[str, Any], plane: Mapping[str, Any], edges: Sequence[Segment], view: View
) -> Iterator[Element]:
    """Yield rot, the cut-out the rule leads to, and the cut made, as far as each lies on the plane."""
    near = SAME_PLACE_FT * view.px_per_ft
    rot, asked = (on_plane(cut[name], plane, view) for name in ("rot", "asked"))
    # Where rot ends at an edge of the plane, the edge's own line shows.
    border = [(side, False) for side in sides(rot) if not any(lies_on(side, edge, near) for edge in edges)]
    yield svg.path(_joined(border), class_="rot")
    yield svg.polygon(inset(asked, _INSET), class_="asked")
    if cut["made"]:
        yield svg.path(corner_marks(on_plane(cut["made"], plane, view)), class_="made")


def corner_marks(corners: Polygon, most: float = _MARK) -> list[tuple[list[Point], bool]]:
    """Return a mark in each corner of an outline: two short strokes along its sides."""
    around = [corners[-1], *corners, corners[0]]
    found = []
    for (before, corner), (_, after) in zip(pairwise(around), pairwise(around[1:]), strict=False):
        found.append(([_toward(corner, before, most), corner, _toward(corner, after, most)], False))
    return found


def _toward(start: Point, end: Point, by: float) -> Point:
    long = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2) ** 0.5
    return along(start, end, min(0.4, by / long) if long else 0.0)


def _words(layout: Layout) -> Iterator[Element]:
    yield from (word.draw() for word in layout.words)
    for id, block in layout.pieces:
        yield element("g", [one.draw() for one in block.letters], class_="piece-words", data_piece=id)
    for id, block in layout.cut_outs:
        yield from (one.draw(data_cut_out=id) for one in block.letters)
    for pointer in layout.pointers:
        yield element("g", pointer.draw(), class_="pointer")
