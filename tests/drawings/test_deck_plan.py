"""The deck nailing plan holds what the figures say, where the record says, at the scale of its bar."""

import re
from collections.abc import Callable, Mapping
from fractions import Fraction
from itertools import combinations, pairwise
from typing import Any

import pytest

from packet.drawings.deck_plan import deck_plans, seen_by
from packet.drawings.flat import crosses, do_overlap, is_inside
from tests.drawings.decks import PLANES, Copy, Scale, deck, dots, near, plane_of, surface
from tests.drawings.facts import ids_in
from tests.drawings.reading import Drawing

Words = Mapping[str, Any]

every_plane = pytest.mark.parametrize(
    ("name", "plane", "narrow"),
    [pytest.param(name, plane, narrow, id=f"{name}-{plane}-{'narrow' if narrow else 'wide'}")
     for name, plane in PLANES for narrow in (False, True)],
)  # fmt: skip


#: Drawings on which an id finds no room in its place.
POINTERS = {("26-041", "MS", True), ("everything", "MAIN", True)}


def drawn(name: str, plane: str, words: Words, *, narrow: bool = False) -> Drawing:
    return Drawing(deck_plans(deck(name), words, narrow=narrow)[plane])


def inches(text: str) -> float:
    found = re.match(r"(\u2212?)(?:(\d+)\u2032)? ?(?:([\d /]+)\u2033)?", text)
    assert found
    return int(found[2] or 0) * 12 + float(sum(Fraction(part) for part in (found[3] or "0").split()))


def nails_of(drawing: Drawing) -> list[tuple[float, float]]:
    return [
        dot
        for part in drawing.of("nails")
        if "sign" not in part.classes
        for dot in dots(part.element.attrib["d"], part.moved)
    ]


@every_plane
def test_deck_plan_svg_is_unchanged(
    name: str, plane: str, narrow: bool, words: Words, check_golden: Callable[[str, str], None]
) -> None:
    text = deck_plans(deck(name), words, narrow=narrow)[plane]
    check_golden(f"deck-{name}-{plane}{'-narrow' if narrow else ''}.svg", text)
    assert deck_plans(deck(name), words, narrow=narrow)[plane] == text


@every_plane
def test_each_piece_has_as_many_nails_as_its_figure(
    name: str, plane: str, narrow: bool, words: Words
) -> None:
    copy, drawing = deck(name), drawn(name, plane, words, narrow=narrow)
    for piece in plane_of(copy, plane)["pieces"]:
        found = [
            dot
            for part in drawing.of("nails", tag="path")
            if "sign" not in part.classes and part.get("data-piece") == piece["id"]
            for dot in dots(part.element.attrib["d"], part.moved)
        ]
        figure = copy["figures"].get(f"sheet.{piece['id']}.nails")
        assert len(found) == len(set(found)) == (figure["value"] if figure else 0)


def test_the_nails_of_a_job_are_all_drawn(words: Words) -> None:
    for name, count in (("26-041", 161), ("26-052", 194)):
        found = [
            dot
            for text in deck_plans(deck(name), words).values()
            for part in Drawing(text).of("nails")
            if "sign" not in part.classes
            for dot in dots(part.element.attrib["d"], part.moved)
        ]
        assert len(found) == deck(name)["figures"]["deck.nails"]["value"] == count


@every_plane
def test_nails_stand_on_their_rows(name: str, plane: str, narrow: bool, words: Words) -> None:
    found, drawing = plane_of(deck(name), plane), drawn(name, plane, words, narrow=narrow)
    scale = Scale(drawing, found)
    there = nails_of(drawing)
    for piece in found["pieces"]:
        for row in piece["rows"]:
            ends = [row["end"], *([row["start"]] if row["opens"] else [])]
            for end in ends:
                assert any(near(scale.point(*end), dot) for dot in there)


def test_the_first_nail_of_a_row_that_goes_on_is_not_drawn_twice(words: Words) -> None:
    copy: Copy = {**deck("26-052")}
    plane = plane_of(copy, "HN")
    (piece,) = plane["pieces"]
    whole = next(row for row in piece["rows"] if row["kind"] == "field")
    (u, low), (_, high) = whole["start"], whole["end"]
    middle = (u, (low + high) / 2)
    parted = [
        whole | {"end": middle, "count": 7},
        whole | {"start": middle, "count": 6, "opens": False, "kind": "closer"},
    ]
    rows = [row for row in piece["rows"] if row is not whole] + parted
    copy["deck_plan"] = copy["deck_plan"] | {"gable": copy["deck_plan"]["edge"]}
    copy["deck_plan"]["planes"] = [plane | {"pieces": [piece | {"rows": rows}]}]
    before, after = drawn("26-052", "HN", words), Drawing(deck_plans(copy, words)["HN"])
    assert sorted(nails_of(after)) == [pytest.approx(dot, abs=0.02) for dot in sorted(nails_of(before))]
    assert len(nails_of(after)) == 65


@every_plane
def test_each_piece_has_the_area_of_its_figure(name: str, plane: str, narrow: bool, words: Words) -> None:
    copy, drawing = deck(name), drawn(name, plane, words, narrow=narrow)
    scale = Scale(drawing, plane_of(copy, plane))
    for piece in plane_of(copy, plane)["pieces"]:
        parts = [part for part in drawing.of("piece") if part.element.get("data-piece") == piece["id"]]
        area = sum(surface(part.points) for part in parts) / scale.px_per_ft**2
        assert area == pytest.approx(float(copy["figures"][f"sheet.{piece['id']}.laid"]["value"]), rel=0.01)


@pytest.mark.parametrize(
    ("name", "plane", "centers", "width_in"),
    [
        ("26-041", "MS", [16, 18, 20, 22, 24, 26, 28], 1.5),
        ("26-041", "WW", [-7.5, -5.5, -3.5, -1.5, 0.5, 2.5, 4.5], 1.5),
        ("everything", "MAIN", [1 / 6, 25 / 12, 4, 74 / 12, 8, 118 / 12, 145 / 12, 14], 1.625),
    ],
)
def test_framing_stands_where_it_was_measured(
    name: str, plane: str, centers: list[float], width_in: float, words: Words
) -> None:
    drawing = drawn(name, plane, words)
    scale = Scale(drawing, plane_of(deck(name), plane))
    members = [part for part in drawing.of("member") if part.element.get("data-at")]
    assert [float(part.get("data-at")) for part in members] == pytest.approx(centers, abs=0.01)
    for part, center in zip(members, centers, strict=True):
        if "unsound" in part.classes:
            continue
        faces = sorted({round(x, 1) for x, _ in part.points})
        middle = scale.point(center, 0)[0]
        half = width_in / 24 * scale.px_per_ft
        assert [faces[0], faces[-1]] == pytest.approx([middle - half, middle + half], abs=0.1)


def test_an_unsound_member_is_hatched_and_named(words: Words) -> None:
    drawing = drawn("everything", "MAIN", words)
    (member,) = (part for part in drawing.of("member", "unsound") if part.element.get("data-at"))
    assert float(member.get("data-at")) == pytest.approx(6.17)
    assert [part.text for part in drawing.of("word")].count(words["deck_unsound"]) == 1
    assert words["deck_unsound"] not in [part.text for part in drawn("26-041", "MS", words).texts]


def test_irregular_framing_is_dimensioned_space_by_space_and_regular_framing_once(words: Words) -> None:
    texts = [part.text for part in drawn("everything", "MAIN", words).of("dim")]
    for spacing in ("23\u2033", "26\u2033", "22\u2033", "27\u2033"):
        assert spacing in texts
    assert not [text for text in texts if "on center" in text]
    regular = [part.text for part in drawn("26-041", "MS", words).of("dim")]
    assert [text for text in regular if "on center" in text] == ["24\u2033 on center"]


@every_plane
def test_a_dimension_shows_the_length_it_is_drawn_with(
    name: str, plane: str, narrow: bool, words: Words
) -> None:
    drawing = drawn(name, plane, words, narrow=narrow)
    scale = Scale(drawing, plane_of(deck(name), plane))
    checked = 0
    groups = {part.inside[-1] for part in drawing.within("dimension") if part.tag == "text"}
    for group in groups:
        parts = [part for part in drawing.parts if part.inside and part.inside[-1] is group]
        (text,) = (part.text for part in parts if part.tag == "text")
        if sum("tick" in part.classes for part in parts) < 2:
            continue
        (line,) = (part.points for part in parts if "dim-line" in part.classes)
        long = abs(line[0][0] - line[1][0]) + abs(line[0][1] - line[1][1])
        assert long / scale.px_per_ft * 12 == pytest.approx(inches(text), abs=0.5), text
        checked += 1
    assert checked >= 2


def test_pieces_are_placed_from_the_corner_of_the_plane(words: Words) -> None:
    texts = {plane: [part.text for part in drawn("26-041", plane, words).of("dim")] for plane in ("MS", "WW")}
    assert "16\u2032 from the left end" in texts["MS"]
    assert "22\u2032 from the left end" in texts["MS"]
    assert "7\u2032 6 15/16\u2033" in texts["MS"]
    assert "4\u2032 6\u2033" in texts["WW"]
    assert "6\u2033 from the left end" in texts["WW"]
    alone = [part.text for part in drawn("26-052", "HN", words).of("dim")]
    assert {"16\u2032 from the left end", "4\u2032 from the lowest edge", "8\u2032"} <= set(alone)


@every_plane
def test_each_piece_is_said_with_size_and_nails(name: str, plane: str, narrow: bool, words: Words) -> None:
    copy, drawing = deck(name), drawn(name, plane, words, narrow=narrow)
    said = " ".join(part.text for part in drawing.texts)
    for piece in plane_of(copy, plane)["pieces"]:
        inside = [
            part.text for part in drawing.within("piece-words") if part.get("data-piece") == piece["id"]
        ]
        assert piece["id"] in [part.text for part in drawing.of("name")]
        nails = copy["figures"].get(piece["nails"])
        if nails:
            assert f"{nails['value']} nails" in said
        assert inside or [part for part in drawing.within("pointer") if part.text == piece["id"]]


def test_a_piece_that_no_dimension_places_is_placed_in_the_key(words: Words) -> None:
    entries = [part.text for part in drawn("everything", "MAIN", words).within("key-entry")]
    assert [text for text in entries if "8\u2032 along, 4\u2032 up" in text]


@pytest.mark.parametrize(
    ("name", "plane", "kinds"),
    [
        ("26-041", "MS", {"eave", "valley"}),
        ("26-041", "WW", {"eave", "valley"}),
        ("26-052", "HE", {"eave", "hip"}),
        ("26-052", "HN", set()),
        ("everything", "MAIN", {"eave", "rake"}),
    ],
)
def test_edges_are_drawn_by_kind_and_named(name: str, plane: str, kinds: set[str], words: Words) -> None:
    drawing = drawn(name, plane, words)
    edges = [part for part in drawing.of("edge", tag="line") if part.element.get("data-kind")]
    assert {part.get("data-kind") for part in edges} >= kinds
    assert {part.text for part in drawing.of("word")} >= {words[f"edge_{kind}"] for kind in kinds}


def test_a_valley_lies_where_the_sheets_are_cut(words: Words) -> None:
    drawing = drawn("26-041", "MS", words)
    scale = Scale(drawing, plane_of(deck("26-041"), "MS"))
    (valley,) = drawing.of("edge", "valley", tag="line")
    low, high = sorted(valley.points, key=lambda end: -end[1])
    assert near(low, scale.point(20, 0), 0.5)
    assert (high[0] - low[0]) / (low[1] - high[1]) == pytest.approx(12 / 13.416, abs=0.01)


def test_a_cut_out_shows_rot_rule_and_cut(words: Words) -> None:
    drawing = drawn("everything", "MAIN", words)
    scale = Scale(drawing, plane_of(deck("everything"), "MAIN"))
    (rot,) = (part for part in drawing.of("rot", tag="path") if part.element.get("d"))
    assert surface(rot.points) / scale.px_per_ft**2 == pytest.approx(3, rel=0.02)
    (asked,) = (part for part in drawing.within("cut-out") if "asked" in part.classes)
    xs, inset = [x for x, _ in asked.points], 3.5
    assert min(xs) - inset == pytest.approx(scale.point(4, 0)[0], abs=0.2)
    (made,) = (part for part in drawing.within("cut-out") if "made" in part.classes)
    for corner in ((4, 0), (145 / 12, 0), (145 / 12, 4), (4, 4)):
        assert any(near(scale.point(*corner), point) for point in made.points)
    entries = [part.text for part in drawing.within("key-entry")]
    assert {words["deck_rot"], words["deck_asked"], words["deck_made"]} <= set(entries)
    assert not drawn("26-052", "HE", words).within("cut-out")


def test_rot_past_the_valley_is_drawn_on_the_plane_only(words: Words) -> None:
    drawing = drawn("26-041", "MS", words)
    scale = Scale(drawing, plane_of(deck("26-041"), "MS"))
    outline = [scale.point(u, v) for u, v in ((-0.1, -0.1), (20.1, -0.1), (32.2, 13.5), (-0.1, 13.5))]
    shown = [point for part in drawing.within("cut-out") for point in part.points]
    assert shown
    assert all(is_inside(point, outline) for point in shown)


def test_wood_along_the_eave_is_drawn_at_its_place_and_named_in_the_key(words: Words) -> None:
    copy: Copy = {**deck("everything")}
    plane = plane_of(copy, "MAIN") | {"level_wood": (0.0, 7.5)}
    copy["deck_plan"] = copy["deck_plan"] | {"planes": [plane]}
    drawing = Drawing(deck_plans(copy, words)["MAIN"])
    scale, half = Scale(drawing, plane), 1.625 / 24
    signs = drawing.within("key-entry")
    (wood,) = (part for part in drawing.of("level-wood", tag="path") if part not in signs)
    ups = sorted({round(y, 1) for _, y in wood.points})
    asked = sorted(scale.point(0, up)[1] for up in (-half, half, 7.5 - half, 7.5 + half))
    assert ups == pytest.approx(asked, abs=0.1)
    faces = [(x, round(y, 1)) for x, y in wood.points]
    upper = [x for x, y in faces if y == ups[0]]
    # The chimney stands on 9 ft to 11 ft 6 in: no wood runs through it.
    chimney = (scale.point(9, 0)[0], scale.point(11.5, 0)[0])
    assert [x for x in upper if chimney[0] + 0.1 < x < chimney[1] - 0.1] == []
    assert {True, False} == {x < chimney[1] for x in upper}
    assert words["deck_level_wood"] in [part.text for part in signs]
    without = drawn("everything", "MAIN", words)
    assert not without.of("level-wood")
    assert words["deck_level_wood"] not in [part.text for part in without.within("key-entry")]


def test_closer_rows_have_their_strip_and_their_own_dots(words: Words) -> None:
    drawing = drawn("everything", "MAIN", words)
    plane = plane_of(deck("everything"), "MAIN")
    assert plane["strips"]
    assert drawing.of("strip-line", tag="path")
    entries = [part.text for part in drawing.within("key-entry")]
    assert [text for text in entries if text.startswith("strip of closer rows, 4\u2033")]
    kinds = {row["kind"] for piece in plane["pieces"] for row in piece["rows"]}
    assert "closer" in kinds
    assert [text for text in entries if text.startswith("closer rows, 4\u2033")]
    drawn_kinds = {part.get("data-kind") for part in drawing.of("nails") if part.element.get("data-kind")}
    assert drawn_kinds == kinds
    (style,) = (part.text for part in drawing.parts if part.tag == "style")
    assert "square" in next(rule for rule in style.split("}") if ".nails.closer" in rule)
    assert "round" in next(rule for rule in style.split("}") if ".nails {" in rule)


@every_plane
def test_words_cover_no_nail_and_no_word(name: str, plane: str, narrow: bool, words: Words) -> None:
    drawing = drawn(name, plane, words, narrow=narrow)
    labels = drawing.labels()
    assert [(one, two) for (one, a), (two, b) in combinations(labels, 2) if do_overlap(a, b)] == []
    nails = nails_of(drawing)
    assert [text for text, box in labels if any(is_inside(dot, box) for dot in nails)] == []
    frame = drawing.of("frame")[0].points
    assert [text for text, box in labels if not all(is_inside(corner, frame) for corner in box)] == []


@every_plane
def test_no_word_stands_on_the_dot_of_a_leader(name: str, plane: str, narrow: bool, words: Words) -> None:
    drawing = drawn(name, plane, words, narrow=narrow)
    labels = drawing.labels()
    places = [part.at(part.number("cx"), part.number("cy")) for part in drawing.of("dot")]
    assert [text for text, box in labels if any(is_inside(place, box) for place in places)] == []
    assert len(places) == ((name, plane, narrow) in POINTERS)


@every_plane
def test_dimension_lines_run_through_no_word(name: str, plane: str, narrow: bool, words: Words) -> None:
    drawing = drawn(name, plane, words, narrow=narrow)
    lines = [part.points for part in drawing.of("dim-line")] + [
        part.points for part in drawing.of("extension")
    ]
    for text, box in drawing.labels():
        assert not [line for line in lines if crosses(box, (line[0], line[1]))], text


@every_plane
def test_the_sheet_says_what_it_is_and_can_be_read(name: str, plane: str, narrow: bool, words: Words) -> None:
    copy, drawing = deck(name), drawn(name, plane, words, narrow=narrow)
    found = plane_of(copy, plane)
    assert min(part.number("font-size") for part in drawing.texts) >= 11
    assert drawing.width == (360 if narrow else 620)
    said = " ".join(part.text for part in drawing.of("caption"))
    assert ("Drawn to the schedule, not a survey of nails driven." in said) == bool(copy["deck_plan"]["edge"])
    assert ("no nails are drawn" in said) == (not copy["deck_plan"]["edge"])
    (title,) = (part for part in drawing.parts if part.tag == "title")
    (desc,) = (part for part in drawing.parts if part.tag == "desc")
    assert title.text == f"Deck nailing plan: {found['title']} ({plane})"
    assert all(piece["id"] in desc.text for piece in found["pieces"])
    assert drawing.root.attrib["aria-labelledby"].split() == [title.element.get("id"), desc.element.get("id")]
    assert not drawing.within("north")
    ids = ids_in(deck_plans(copy, words, narrow=narrow)[plane])
    assert len(set(ids)) == len(ids) > len(found["pieces"])


def test_every_rule_of_the_style_is_bound_to_the_drawing(words: Words) -> None:
    (style,) = (part.text for part in drawn("26-041", "MS", words).parts if part.tag == "style")
    selectors = [one.strip() for rule in style.split("}")[:-1] for one in rule.split("{")[0].split(",")]
    assert selectors
    assert all(one.startswith(".deck-plan ") for one in selectors)


def test_nails_take_no_element_each(words: Words) -> None:
    text = deck_plans(deck("26-052"), words)["HE"]
    assert text.count("<path") < 45
    assert len(text) < 20_000


def test_a_title_may_hold_any_characters(words: Words) -> None:
    copy: Copy = {**deck("bare")}
    plane = plane_of(copy, "MAIN") | {"title": "<b>\"A\" & 'B'</b> \u5c4b\u6839 {0} %s"}
    copy["deck_plan"] = {**copy["deck_plan"], "planes": [plane]}
    (text,) = deck_plans(copy, words).values()
    assert "<b>" not in text
    assert "{0} %s" in next(part.text for part in Drawing(text).parts if part.tag == "title")


def test_a_copy_without_new_deck_has_no_drawing(words: Words) -> None:
    for copy in ({"figures": {}}, {"deck_plan": None, "figures": {}, "geometry": None}):
        assert deck_plans(copy, words) == {}
        assert seen_by(copy) is None


def test_copies_that_show_other_numbers_are_told_apart() -> None:
    one = deck("26-041")
    figures = {**one["figures"], "sheet.S1.nails": one["figures"]["sheet.S1.nails"] | {"value": 45}}
    assert seen_by(one) == seen_by({**one, "figures": {**one["figures"], "other": {}}})
    assert seen_by(one) != seen_by({**one, "figures": figures})


def test_nails_at_the_scale_of_a_phone_stay_apart(words: Words) -> None:
    drawing = drawn("26-052", "HE", words, narrow=True)
    (style,) = (part.text for part in drawing.parts if part.tag == "style")
    width = float(re.findall(r"\.nails \{ stroke-width: ([\d.]+)", style)[0])
    for part in drawing.of("nails", "field"):
        if "sign" in part.classes:
            continue
        placed = sorted(dots(part.element.attrib["d"], part.moved))
        gaps = [abs(b[1] - a[1]) for a, b in pairwise(placed) if a[0] == b[0]]
        assert min(gaps) > 2 * width


@pytest.mark.parametrize("narrow", [False, True])
@pytest.mark.parametrize(
    "changed",
    [
        {"pieces": ()},
        {"pieces": (), "cut_outs": ()},
        {"lines": (), "unsound": (), "cut_outs": ()},
        {"lines": tuple(number / 10 for number in range(300))},
    ],
    ids=["no pieces", "nothing", "no framing", "framing everywhere"],
)
def test_a_deck_with_parts_missing_is_still_a_drawing(
    changed: dict[str, Any], narrow: bool, words: Words
) -> None:
    copy: Copy = {**deck("everything")}
    copy["deck_plan"] = copy["deck_plan"] | {"planes": [plane_of(copy, "MAIN") | changed]}
    drawing = Drawing(deck_plans(copy, words, narrow=narrow)["MAIN"])
    assert drawing.width >= (360 if narrow else 620)
    assert bool(drawing.of("rot", tag="path")) == ("cut_outs" not in changed)
    assert drawing.of("edge", "eave")


def test_a_roof_without_a_plan_leaves_edges_plain(words: Words) -> None:
    drawing = Drawing(deck_plans({**deck("26-041"), "geometry": None}, words)["MS"])
    assert {part.element.get("data-kind") for part in drawing.of("edge")} == {None}
    assert drawing.of("edge")


@pytest.mark.parametrize("narrow", [False, True])
def test_ids_that_find_no_room_stand_beside_with_a_leader(narrow: bool, words: Words) -> None:
    copy: Copy = {**deck("everything")}
    plane = plane_of(copy, "MAIN")
    (cut,) = plane["cut_outs"]
    small = [
        cut | {"id": f"CO{number}", "rot": ((number, 1.0), (number + 0.2, 1.2)), "made": None}
        for number in (5, 7, 9)
    ]
    copy["deck_plan"] = copy["deck_plan"] | {"planes": [plane | {"cut_outs": small}]}
    drawing = Drawing(deck_plans(copy, words, narrow=narrow)["MAIN"])
    assert {"CO5", "CO7", "CO9"} <= {part.text for part in drawing.within("pointer")}
    labels = drawing.labels()
    assert [(one, two) for (one, a), (two, b) in combinations(labels, 2) if do_overlap(a, b)] == []
    assert words["deck_made"] not in [part.text for part in drawing.within("key-entry")]
