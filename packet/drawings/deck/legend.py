"""The key of a deck nailing plan."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from packet.drawings import svg
from packet.drawings.deck.draw import corner_marks
from packet.drawings.deck.layout import Layout
from packet.drawings.flat import Polygon, sides
from packet.drawings.hatch import hatch
from packet.drawings.key import Entry, Sign, opening_sign, plane_entry
from packet.drawings.svg import Element, Point, element, path, polygon
from packet.units import feet_and_inches, tape_text

#: Half the height of a swatch, its width, distance of the nails of a sign [px].
_HALF, _WIDE, _NAIL_STEP = 6.0, 24.0, 6.0


def key_groups(
    plane: Mapping[str, Any],
    layout: Layout,
    spacings: Mapping[str, str],
    words: Mapping[str, str],
) -> list[list[Entry]]:
    """Return the lines of the key: only signs that the drawing shows, then pieces it says too little of.

    Args:
        plane: A plane of the deck plan [ft].
        layout: The drawing.
        spacings: Spacing of nails as text, by ``edge``, ``field`` and ``gable``; those that apply.
        words: Words of drawings.
    """
    return [
        _nails(plane, spacings, words),
        [*_deck(plane, layout, words), *_cut_outs(plane, words)],
        _pieces(plane, layout, words),
    ]


def _nails(plane: Mapping[str, Any], spacings: Mapping[str, str], words: Mapping[str, str]) -> list[Entry]:
    kinds = {row["kind"] for piece in plane["pieces"] for row in piece["rows"]}
    entries = []
    edge, field = (spacings.get(name) for name in ("edge", "field"))
    if "field" in kinds and kinds & {"end", "cut edge"} and edge == field is not None:
        entries.append(Entry(_nail_sign("end"), words["deck_nails_all"].format(spacing=edge)))
        kinds -= {"end", "cut edge", "field"}
    for sign, drawn, spacing, word in (
        ("end", {"end", "cut edge"}, edge, "deck_nails_edge"),
        ("field", {"field"}, field, "deck_nails_field"),
        ("closer", {"closer"}, spacings.get("gable"), "deck_nails_closer"),
    ):
        if kinds & drawn and spacing is not None:
            entries.append(Entry(_nail_sign(sign), words[word].format(spacing=spacing)))
    if plane["strips"] and "gable" in spacings:
        text = words["deck_strip"].format(spacing=spacings["gable"])
        entries.append(Entry(_swatch("strip-line"), text))
    return entries


def _deck(plane: Mapping[str, Any], layout: Layout, words: Mapping[str, str]) -> list[Entry]:
    entries = []
    if plane["pieces"]:
        entries.append(Entry(_piece_sign, words["deck_piece"]))
    if any(member.sound for member in layout.members):
        width = tape_text(plane["member_ft"] * 12) + "\u2033"
        entries.append(Entry(_member_sign(sound=True), words["deck_member"].format(width=width)))
    if not all(member.sound for member in layout.members):
        entries.append(Entry(_member_sign(sound=False), words["deck_member_unsound"]))
    if layout.wood:
        entries.append(Entry(_wood_sign, words["deck_level_wood"]))
    if _shows_opening(plane, layout):
        entries.append(Entry(opening_sign, words["opening"]))
    return entries


def _cut_outs(plane: Mapping[str, Any], words: Mapping[str, str]) -> list[Entry]:
    if not plane["cut_outs"]:
        return []
    entries = [Entry(_rot_sign, words["deck_rot"]), Entry(_swatch("asked"), words["deck_asked"])]
    if any(cut["made"] for cut in plane["cut_outs"]):
        entries.append(Entry(_made_sign, words["deck_made"]))
    return entries


def _pieces(plane: Mapping[str, Any], layout: Layout, words: Mapping[str, str]) -> list[Entry]:
    entries = []
    for piece in plane["pieces"]:
        id = piece["id"]
        parts = list(layout.in_key.get(id, ()))
        if id in layout.placed_in_key:
            corners = [corner for outline in piece["outlines"] for corner in outline]
            parts.append(
                words["deck_place"].format(
                    along=_length(min(u for u, _ in corners)), up=_length(min(v for _, v in corners))
                )
            )
        if parts:
            entries.append(plane_entry(id, ", ".join(parts)))
    return entries


def _length(length_ft: float) -> str:
    return feet_and_inches(Fraction(length_ft) * 12)


def _shows_opening(plane: Mapping[str, Any], layout: Layout) -> bool:
    view = layout.view
    return any(view.clipped(side) for opening in plane["openings"] for side in sides(view.points(opening)))


def _box(at: Point) -> list[Point]:
    x, y = at
    return [(x, y - _HALF), (x + _WIDE, y - _HALF), (x + _WIDE, y + _HALF), (x, y + _HALF)]


def _swatch(name: str) -> Sign:
    return lambda at: [polygon(_box(at), class_=name)]


def _piece_sign(at: Point) -> list[Element]:
    return [polygon(_box(at), class_="piece"), polygon(_box(at), class_="joint")]


def _rot_sign(at: Point) -> list[Element]:
    return [path(hatch(_box(at), 0), class_="hatch"), polygon(_box(at), class_="rot")]


def _made_sign(at: Point) -> list[Element]:
    corners: Polygon = _box(at)
    return [path(corner_marks(corners, 5.0), class_="made")]


def _wood_sign(at: Point) -> list[Element]:
    x, y = at
    return [path([([(x, y + by), (x + _WIDE, y + by)], False) for by in (-2.5, 2.5)], class_="level-wood")]


def _member_sign(*, sound: bool) -> Sign:
    def draw(at: Point) -> list[Element]:
        x, y = at
        corners = [(x, y - 2.5), (x + _WIDE, y - 2.5), (x + _WIDE, y + 2.5), (x, y + 2.5)]
        faces = [(corners[:2], False), (corners[2:], False)]
        if sound:
            return [path(faces, class_="member")]
        return [path([*faces, *hatch(corners, 0)], class_="member unsound")]

    return draw


def _nail_sign(kind: str) -> Sign:
    def draw(at: Point) -> list[Element]:
        x, y = at
        dots = "".join(f"M{svg.number(x + _NAIL_STEP * at)} {svg.number(y)}h0" for at in range(5))
        return [element("path", d=dots, class_=f"sign nails {kind}")]

    return draw
