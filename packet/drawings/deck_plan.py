"""Deck nailing plans as SVG text: pieces, framing, nails to the schedule and cut-outs, to scale."""

import math
from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from packet.drawings import svg
from packet.drawings.deck.draw import draw_deck
from packet.drawings.deck.edges import plane_edges
from packet.drawings.deck.labels import PieceWords
from packet.drawings.deck.layout import Layout, lay_out
from packet.drawings.deck.legend import key_groups
from packet.drawings.deck.nails import dot_px
from packet.drawings.deck.sheet import NARROW, WIDE, Sheet, style
from packet.drawings.deck.view import view_of
from packet.drawings.flat import bounds
from packet.drawings.key import Strip, strip
from packet.drawings.sheet import FRAME_INSET, STRIP_GAP
from packet.drawings.svg import Element, Point, element
from packet.units import feet_and_inches, tape_text

_NAMESPACE = "http://www.w3.org/2000/svg"

#: Tries to find the largest scale at which words and dimensions fit; each shrinks by what stood over.
_TRIES, _SHRINK = 6, 0.98
#: Room first taken for dimensions: beside, and above and below [px].
_BESIDE, _OVER = 48.0, 110.0


def deck_plans(copy: Mapping[str, Any], words: Mapping[str, str], *, narrow: bool = False) -> dict[str, str]:
    """Return the deck nailing plan of each plane with new deck, by its id; none where there is no new deck.

    Args:
        copy: A packet's copy: ``deck_plan`` in feet on the slope, ``figures`` and ``geometry``.
        words: Words of drawings (``drawing`` in the words file).
        narrow: For a phone: a tighter view, letters as large as on the wide sheet.

    Raises:
        KeyError: A word, or a part of the deck plan, is missing.
    """
    plan = copy.get("deck_plan")
    return {
        plane["id"]: _deck_plan(copy, plane, words, narrow=narrow)
        for plane in (plan or {"planes": ()})["planes"]
    }


def seen_by(copy: Mapping[str, Any]) -> Any:
    """Return all of a copy that its deck nailing plans show; equal parts give equal drawings."""
    plan = copy.get("deck_plan")
    if not plan:
        return None
    names = [plan[name] for name in ("edge", "field", "gable")]
    for plane in plan["planes"]:
        for piece in plane["pieces"]:
            names += [piece["nails"], *(f"deck.sheets.{piece['id']}.{way}" for way in ("along", "up"))]
    return plan, copy["geometry"], {name: copy["figures"].get(name) for name in names}


def _deck_plan(
    copy: Mapping[str, Any], plane: Mapping[str, Any], words: Mapping[str, str], *, narrow: bool
) -> str:
    sheet = NARROW if narrow else WIDE
    said = {piece["id"]: _said(piece, copy["figures"], words) for piece in plane["pieces"]}
    layout = _largest(copy, plane, said, words, sheet)
    left, top, right, low = layout.bounds()
    room = max(sheet.width - 2 * sheet.margin, float(math.ceil(right - left)))
    shift = (sheet.margin + (room - (right - left)) / 2 - left, sheet.margin - top)
    texts = _texts(copy, plane, words)
    groups = key_groups(plane, layout, _spacings(copy, words), words)
    under = strip(groups, room, layout.view.px_per_ft, texts, north=False)
    strip_top = sheet.margin + low - top + STRIP_GAP
    size = (room + 2 * sheet.margin, float(round(strip_top + under.height + sheet.margin)))
    description = _description(plane, said, words)
    return svg.render(
        _document(plane, layout, sheet, texts["title"], description, size, shift, under, strip_top)
    )


def _largest(
    copy: Mapping[str, Any],
    plane: Mapping[str, Any],
    said: Mapping[str, PieceWords],
    words: Mapping[str, str],
    sheet: Sheet,
) -> Layout:
    """Return the deck at the largest scale at which all that belongs to it fits on the sheet."""
    view, edges = view_of(plane, sheet.room_ft), plane_edges(plane, copy["geometry"])
    width_ft, height_ft = (max(side, 1e-3) for side in view.size_px)
    room = sheet.width - 2 * sheet.margin
    scale = min(sheet.most_px_per_ft, (room - _BESIDE) / width_ft, (sheet.most_height - _OVER) / height_ft)
    layout = lay_out(plane, edges, said, view.at_scale(scale), words)
    for _ in range(_TRIES):
        left, top, right, low = layout.bounds()
        if right - left <= room and low - top <= sheet.most_height:
            break
        beside, over = (right - left) - width_ft * scale, (low - top) - height_ft * scale
        fits = min((room - beside) / width_ft, (sheet.most_height - over) / height_ft)
        scale = max(scale / 2, min(scale * _SHRINK, fits))
        layout = lay_out(plane, edges, said, view.at_scale(scale), words)
    return layout


def _said(piece: Mapping[str, Any], figures: Mapping[str, Any], words: Mapping[str, str]) -> PieceWords:
    """Return what is to be said in a piece: the sheet as recorded, else the rectangle around it."""
    left, low, right, high = (
        bounds(tuple(c) for outline in piece["outlines"] for c in outline)
        if piece["outlines"]
        else (0.0,) * 4
    )
    along = _inches(figures.get(f"deck.sheets.{piece['id']}.along"), right - left)
    up = _inches(figures.get(f"deck.sheets.{piece['id']}.up"), high - low)
    first, second = feet_and_inches(along), feet_and_inches(up)
    nails = figures.get(piece["nails"])
    count = words["deck_nails"].format(count=int(nails["value"])) if nails else ""
    times = words["deck_times"]
    return PieceWords(piece["id"], (f"{first} {times} {second}",), (f"{first} {times}", second), count)


def _inches(figure: Mapping[str, Any] | None, otherwise_ft: float) -> Fraction:
    if figure is None:
        return Fraction(otherwise_ft) * 12
    return Fraction(figure["value"]) * (1 if figure["unit"] == "in" else 12)


def _spacings(copy: Mapping[str, Any], words: Mapping[str, str]) -> dict[str, str]:
    """Return the spacings of nails as text."""
    plan = copy["deck_plan"]
    found = {}
    for name in ("edge", "field", "gable"):
        figure = copy["figures"].get(plan[name])
        if figure is not None:
            spacing = tape_text(_inches(figure, 0.0)) + "\u2033"
            ruled = words["deck_by_rule" if str(figure["origin"]).startswith("rule.") else "deck_as_measured"]
            found[name] = ruled.format(spacing=spacing)
    return found


def _texts(copy: Mapping[str, Any], plane: Mapping[str, Any], words: Mapping[str, str]) -> dict[str, str]:
    """Return the words with this drawing's title and caption."""
    plan = copy["deck_plan"]
    caption = words["deck_caption" if plan["edge"] and plan["field"] else "deck_caption_bare"]
    title = words["deck_title"].format(id=plane["id"], title=plane["title"])
    return {**words, "title": title, "caption": caption}


def _description(plane: Mapping[str, Any], said: Mapping[str, PieceWords], words: Mapping[str, str]) -> str:
    pieces = [f"{id} {', '.join(one.whole)}" for id, one in said.items()]
    cuts = [cut["id"] for cut in plane["cut_outs"]]
    return words["deck_desc"].format(
        title=plane["title"],
        id=plane["id"],
        pieces="; ".join(pieces) or words["none"],
        cuts=", ".join(cuts) or words["none"],
    )


def _document(
    plane: Mapping[str, Any],
    layout: Layout,
    sheet: Sheet,
    title: str,
    description: str,
    size: Point,
    shift: Point,
    under: Strip,
    strip_top: float,
) -> Element:
    name = svg.ident(sheet.name, plane["id"])
    title_id, desc_id = f"{name}-title", f"{name}-desc"
    content = [
        element("title", title, id=title_id),
        element("desc", description, id=desc_id),
        element("style", style(dot_px(plane, layout.view.px_per_ft))),
        *_paper(size),
        element("g", draw_deck(plane, layout, sheet), class_="deck", transform=_translate(shift)),
        element("g", under.parts, class_="strip", transform=_translate((sheet.margin, strip_top))),
    ]
    return element(
        "svg",
        content,
        xmlns=_NAMESPACE,
        id=name,
        class_="deck-plan",
        role="img",
        aria_labelledby=f"{title_id} {desc_id}",
        data_plane=plane["id"],
        viewBox=f"0 0 {svg.number(size[0])} {svg.number(size[1])}",
    )


def _paper(size: Point) -> Iterator[Element]:
    width, height = size
    near, far_x, far_y = FRAME_INSET, width - FRAME_INSET, height - FRAME_INSET
    yield svg.polygon([(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)], class_="paper")
    yield svg.polygon([(near, near), (far_x, near), (far_x, far_y), (near, far_y)], class_="frame")


def _translate(by: Point) -> str:
    return f"translate({svg.number(by[0])} {svg.number(by[1])})"
