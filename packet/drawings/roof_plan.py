"""The roof from above as SVG text: what was worked on, what was left alone, and how large it is."""

import json
import math
from collections.abc import Container, Iterator, Mapping
from dataclasses import replace
from itertools import chain
from typing import Any

from packet.drawings import svg
from packet.drawings.building import lies_on, loops
from packet.drawings.edges import KINDS, draw_edge, edge_name
from packet.drawings.flat import bounds, direction, middle, moved, sides
from packet.drawings.hatch import hatch, without
from packet.drawings.key import (
    Entry,
    Strip,
    arrow_sign,
    hatch_sign,
    line_entry,
    opening_sign,
    plane_entry,
    ring_sign,
    strip,
)
from packet.drawings.layout import Layout, Measured, Site, lay_out, site
from packet.drawings.plan import SAME_PLACE_FT, Patch, Plan
from packet.drawings.pointers import letter
from packet.drawings.sheet import FRAME_INSET, NARROW, STRIP_GAP, STYLE, WIDE, Sheet
from packet.drawings.svg import Element, Point, element

_NAMESPACE = "http://www.w3.org/2000/svg"

#: Tries to find the largest scale at which labels and dimensions fit; each shrinks by what stood over.
_TRIES, _SHRINK, _NEARLY = 12, 0.97, 0.998
#: With more planes than this most names stand in the key.
_CROWDED = 24
#: No smaller than this share of the scale at which the bare roof fills the sheet; the sheet grows instead.
_LEAST_SHARE = 0.5

#: An opening is drawn this far inside its outline, where a dormer's own outline runs [px]; a small one less,
#: by this share of its shorter side.
_OPENING_INSET, _OPENING_SHARE = 6.0, 0.12


def roof_plan(geometry: Mapping[str, Any], words: Mapping[str, str], *, narrow: bool = False) -> str:
    """Return the roof in plan as one SVG document; it has no XML declaration, so it also fits inside a page.

    Args:
        geometry: ``geometry`` of a packet's copy, in feet, x east and y north.
        words: Words of drawings (``drawing`` in the words file).
        narrow: For a phone: roof only, few dimensions, letters as large as on the wide sheet.

    Raises:
        ValueError: There is no plane.
        KeyError: A word or a part of the geometry is missing.
    """
    sheet = NARROW if narrow else WIDE
    bare = site(json.dumps(geometry))
    if len(bare.plan.planes) > _CROWDED:
        groups = _groups(bare.plan, {plane.id for plane in bare.plan.planes}, words)
        key = strip(groups, sheet.width - 2 * sheet.margin, 1.0, words)
        sheet = _with_key(sheet, sheet.most_height + STRIP_GAP + key.height + 2 * sheet.margin)
    layout = _largest(bare, sheet, words)
    under, size, shift = _arranged(layout, sheet, words)
    if size[1] > sheet.most_total:
        layout = _largest(bare, _with_key(sheet, size[1]), words)
        under, size, shift = _arranged(layout, sheet, words)
    return svg.render(
        _document(layout, sheet, words, size, shift, under, size[1] - sheet.margin - under.height)
    )


def _with_key(sheet: Sheet, height: float) -> Sheet:
    """Return a sheet whose roof gives up what the height is too much, so that letters stay large on paper."""
    left = sheet.most_height - max(height - sheet.most_total, 0.0)
    return replace(sheet, most_height=max(left, _LEAST_SHARE * sheet.most_height))


def _arranged(layout: Layout, sheet: Sheet, words: Mapping[str, str]) -> tuple[Strip, Point, Point]:
    """Return the strip under a roof, the size of the sheet, and where the roof's origin stands on it."""
    left, top, right, low = layout.bounds()
    # Labels that stand outside a crowded roof may need a wider sheet than the roof does.
    room = max(sheet.width - 2 * sheet.margin, float(math.ceil(right - left)))
    shift = (sheet.margin + (room - (right - left)) / 2 - left, sheet.margin - top)
    under = strip(_groups(layout.plan, layout.in_key(), words), room, layout.plan.px_per_ft, words)
    height = round(sheet.margin + (low - top) + STRIP_GAP + under.height + sheet.margin)
    return under, (room + 2 * sheet.margin, float(height)), shift


def _largest(bare: Site, sheet: Sheet, words: Mapping[str, str]) -> Layout:
    """Return the roof at the largest scale at which it fits with its dimensions, then with its labels too."""
    room, width_ft, depth_ft = (
        sheet.width - 2 * sheet.margin,
        max(bare.width_ft, 1e-6),
        max(bare.depth_ft, 1e-6),
    )
    scale = min(sheet.most_px_per_ft, room / width_ft, sheet.most_height / depth_ft)
    least = scale * _LEAST_SHARE
    tries = 0
    while True:
        measured = Measured(*bare.at_scale(scale), sheet, words)
        tries += 1
        is_last = scale <= least or tries > _TRIES
        smaller = _smaller(measured.bounds(), scale, (width_ft, depth_ft), (room, sheet.most_height))
        if smaller is None or is_last:
            layout = lay_out(measured, words)
            smaller = _smaller(layout.bounds(), scale, (width_ft, depth_ft), (room, sheet.most_height))
            if smaller is None or is_last:
                return layout
        scale = max(least, smaller)


def _smaller(
    taken: tuple[float, float, float, float], scale: float, size_ft: Point, room: Point
) -> float | None:
    """Return a scale at which what stands beside the roof would find room; None when it has found it."""
    spans = (taken[2] - taken[0], taken[3] - taken[1])
    if all(span <= most for span, most in zip(spans, room, strict=True)):
        return None
    fitting = (
        (most - max(span - feet * scale, 0.0)) / feet
        for span, most, feet in zip(spans, room, size_ft, strict=True)
    )
    return min(scale * _SHRINK, *(_NEARLY * one for one in fitting))


def _groups(plan: Plan, in_key: Container[str], words: Mapping[str, str]) -> list[list[Entry]]:
    """Return the key: kinds of edges that occur, other signs, planes whose title found no room, marks."""
    kinds = {edge.kind for edge in plan.edges}
    lines = [line_entry(kind, edge_name(kind, words)) for kind in KINDS if kind in kinds]
    signs, planes = [], []
    if plan.areas:
        signs.append(Entry(hatch_sign, words["worked"]))
    if plan.openings:
        signs.append(Entry(opening_sign, words["opening"]))
    signs.append(Entry(arrow_sign, words["arrow"]))
    for plane in plan.planes:
        if plane.id in in_key:
            status = "_untouched" if not plane.touched else "_area" if plane.area else ""
            pattern = words[f"key_plane{status}"]
            text = pattern.format(title=plane.title, pitch=plane.pitch, area=plane.area)
            planes.append(plane_entry(plane.id, text))
    marks = [
        Entry(ring_sign(letter(number)), words["key_mark"].format(id=mark.id, label=mark.label), mark.id)
        for number, mark in enumerate(plan.marks)
    ]
    return [lines, signs, planes, marks]


def _document(
    layout: Layout,
    sheet: Sheet,
    words: Mapping[str, str],
    size: Point,
    shift: Point,
    under: Strip,
    strip_top: float,
) -> Element:
    width, height = size
    title_id, desc_id = svg.ident(sheet.name, "title"), svg.ident(sheet.name, "desc")
    paper = [(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)]
    near, far_x, far_y = FRAME_INSET, width - FRAME_INSET, height - FRAME_INSET
    frame = [(near, near), (far_x, near), (far_x, far_y), (near, far_y)]
    content = [
        element("title", words["title"], id=title_id),
        element("desc", _description(layout, words), id=desc_id),
        element("style", STYLE),
        svg.polygon(paper, class_="paper"),
        svg.polygon(frame, class_="frame"),
        element("g", _roof(layout, sheet), class_="roof", transform=_translate(shift)),
        element("g", under.parts, class_="strip", transform=_translate((sheet.margin, strip_top))),
    ]
    return element(
        "svg",
        content,
        xmlns=_NAMESPACE,
        id=sheet.name,
        class_="roof-plan",
        role="img",
        aria_labelledby=f"{title_id} {desc_id}",
        viewBox=f"0 0 {svg.number(width)} {svg.number(height)}",
    )


def _translate(by: Point) -> str:
    return f"translate({svg.number(by[0])} {svg.number(by[1])})"


def _description(layout: Layout, words: Mapping[str, str]) -> str:
    def listed(*, touched: bool) -> str:
        found = [f"{p.title} ({p.id})" for p in layout.plan.planes if p.touched == touched]
        return ", ".join(found) or words["none"]

    count = len(layout.plan.planes)
    return words["desc"].format(count=count, worked=listed(touched=True), untouched=listed(touched=False))


def _roof(layout: Layout, sheet: Sheet) -> Iterator[Element]:
    """Yield the roof from below to above: planes level by level, outline, openings, dimensions, labels."""
    plan = layout.plan
    for level in sorted({plane.level for plane in plan.planes}):
        on_level = [plane for plane in plan.planes if plane.level == level]
        for plane in on_level:
            yield svg.polygon(
                plane.outline,
                id=svg.ident(sheet.name, "plane", plane.id),
                class_="plane",
                data_plane=plane.id,
            )
        ids = {plane.id for plane in on_level}
        for number, area in enumerate(plan.areas):
            if area.plane in ids:
                yield _area(area, number, layout, sheet)
        yield from (svg.line(*seam, class_="seam") for seam, at in layout.building.seams if at == level)
        yield from chain.from_iterable(draw_edge(edge) for edge in plan.edges if edge.level == level)
    near = SAME_PLACE_FT * plan.px_per_ft
    yield svg.path(loops(layout.building.outline, near), class_="outline")
    for opening in plan.openings:
        yield svg.polygon(_inset(opening), class_="opening", data_opening=opening.id)
    yield from (dimension.draw() for dimension in layout.dimensions)
    yield from _labels(layout)


def _area(area: Patch, number: int, layout: Layout, sheet: Sheet) -> Element:
    clear = layout.clear.near(bounds(area.outline))
    lines = hatch(area.outline, number, clear)
    # Where an area ends at an edge, the edge's own line shows; another on it would fill its dashes.
    near = SAME_PLACE_FT * layout.plan.px_per_ft
    edges = layout.edges.near(bounds(area.outline), near)
    border = [side for side in sides(area.outline) if not any(lies_on(side, edge, near) for edge in edges)]
    cut = loops([piece for side in border for piece in without(side, clear)], near)
    parts = [svg.path(lines, class_="hatch"), svg.path(cut, class_="area")]
    return element("g", parts, id=svg.ident(sheet.name, "area", area.id), data_area=area.id)


def _inset(opening: Patch) -> list[Point]:
    centre = middle(opening.outline)
    inset = min(_OPENING_INSET, _OPENING_SHARE * min(math.dist(*side) for side in sides(opening.outline)))
    # Corners move along their diagonal, 1.414 times the distance of the sides.
    return [moved(corner, direction(corner, centre), inset * 2**0.5) for corner in opening.outline]


def _labels(layout: Layout) -> Iterator[Element]:
    for edge, word in layout.words:
        yield word.draw(data_edge=edge.id)
    for name in layout.names:
        parts = [part for arrow in name.block.arrows for part in arrow.draw()]
        parts += [one.draw() for one in name.block.letters]
        yield element("g", parts, class_="plane-name", data_plane=name.plane.id)
    for area, block in layout.areas:
        yield from (one.draw(data_area=area.id) for one in block.letters)
    for pointer in layout.pointers:
        yield element("g", pointer.draw(), class_="pointer")
    for mark, ring in zip(layout.plan.marks, layout.rings, strict=True):
        yield element("g", ring.draw(), class_="mark", data_mark=mark.id)
