"""The sheet itself: scale, lettering, lines, ids, and titles that hold anything."""

import re
from itertools import combinations
from typing import Any

import pytest

from packet.drawings.flat import do_overlap
from packet.drawings.roof_plan import roof_plan
from tests.drawings.facts import Draw, every_sheet, ids_in, scale_of
from tests.drawings.reading import Drawing
from tests.drawings.roofs import DEMO, HIP_ROOF, SMALL, Geometry, changed


@every_sheet
def test_the_scale_bar_has_the_scale_of_the_drawing(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    bar = drawing.within("scale-bar")
    corners = [x for part in bar if part.tag == "polygon" for x, _ in part.points]
    (length,) = (
        int(part.text.split()[0]) for part in bar if part.tag == "text" and part.text.endswith(" ft")
    )
    assert (max(corners) - min(corners)) / length == pytest.approx(scale_of(roof, drawing), rel=0.01)


@every_sheet
def test_lettering_is_large_enough_at_the_width_it_is_shown(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    assert drawing.width == (360 if narrow else 620)
    assert min(part.number("font-size") for part in drawing.texts) >= 11


@every_sheet
def test_north_caption_title_and_description_are_there(
    roof: Geometry, narrow: bool, draw: Draw, words: Any
) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    assert [part.text for part in drawing.within("north") if part.tag == "text"] == [words["north"]]
    assert words["caption"] in " ".join(part.text for part in drawing.of("caption"))
    (title,) = (part for part in drawing.parts if part.tag == "title")
    (desc,) = (part for part in drawing.parts if part.tag == "desc")
    assert title.text == words["title"]
    assert all(f"{plane['title']} ({plane['id']})" in desc.text for plane in roof["planes"])
    labelled = drawing.root.attrib["aria-labelledby"].split()
    assert labelled == [title.element.get("id"), desc.element.get("id")]


def test_line_weights_and_dashes_follow_the_convention(draw: Draw) -> None:
    (style,) = (part.text for part in Drawing(draw(DEMO)).parts if part.tag == "style")
    rules = dict(re.findall(r"\.roof-plan \.([\w-]+) \{ ([^}]*) \}", style))
    weight = {
        name: float(found[1])
        for name, rule in rules.items()
        if (found := re.search(r"stroke-width: ([\d.]+)", rule))
    }
    dash = {
        name: found[1]
        for name, rule in rules.items()
        if (found := re.search(r"stroke-dasharray: ([\d. ]+)", rule))
    }
    assert weight["outline"] == max(weight[name] for name in weight if not name.endswith("-ticks"))
    assert weight["outline"] > weight["on-top"] > weight["ridge"] > weight["hatch"]
    assert dash["hip"] != dash["valley"]
    assert "ridge" not in dash
    assert "#1d4e89" in rules["dim"]


def test_every_rule_is_bound_to_the_drawing_so_that_it_can_stand_in_a_page(draw: Draw) -> None:
    text = draw(DEMO)
    (style,) = (part.text for part in Drawing(text).parts if part.tag == "style")
    selectors = [one.strip() for rule in style.split("}")[:-1] for one in rule.split("{")[0].split(",")]
    assert selectors
    assert all(one.startswith(".roof-plan ") for one in selectors)
    assert text.startswith("<svg ")
    assert not set(ids_in(text)) & set(ids_in(draw(DEMO, narrow=True)))
    assert "http" not in text.replace('xmlns="http://www.w3.org/2000/svg"', "")


@every_sheet
def test_ids_are_unique_and_the_same_record_gives_the_same_bytes(
    roof: Geometry, narrow: bool, draw: Draw, words: Any
) -> None:
    text = draw(roof, narrow=narrow)
    assert len(set(ids_in(text))) == len(ids_in(text)) > len(roof["planes"])
    assert roof_plan(roof, words, narrow=narrow) == text


@pytest.mark.parametrize(
    "title", ["<b>\"A\" & 'B'</b>", "south\x00\n\x1b wing", "\u5c4b\u6839 \U0001f3e0", "x" * 200, "{0} %s"]
)
@pytest.mark.parametrize("narrow", [False, True])
def test_a_title_may_hold_any_characters(title: str, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(changed(DEMO, title=title), narrow=narrow))
    said = "".join(part.text for part in drawing.texts).replace(" ", "")
    assert re.sub(r"[\x00\x1b]", "\ufffd", "".join(title.split())) in said
    labels = drawing.labels()
    assert [(one, two) for (one, a), (two, b) in combinations(labels, 2) if do_overlap(a, b)] == []


@pytest.mark.parametrize("narrow", [False, True])
def test_a_long_id_leaves_room_for_its_line_in_the_key(narrow: bool, draw: Draw) -> None:
    roof = changed(SMALL, id="W" * 24, title="porch by the kitchen")
    roof["areas"][0]["plane"] = "W" * 24
    labels = Drawing(draw(roof, narrow=narrow)).labels()
    assert [(one, two) for (one, a), (two, b) in combinations(labels, 2) if do_overlap(a, b)] == []


def test_a_side_without_an_edge_in_the_record_is_still_drawn(draw: Draw) -> None:
    roof = changed(HIP_ROOF)
    roof["edges"] = []
    assert len(Drawing(draw(roof)).of("seam")) == 5
    assert Drawing(draw(HIP_ROOF)).of("seam") == []


def test_a_roof_without_planes_is_refused(words: Any) -> None:
    empty: Geometry = {"planes": [], "edges": [], "areas": [], "openings": [], "marks": []}
    with pytest.raises(ValueError, match="at least one plane"):
        roof_plan(empty, words)


def test_a_missing_word_is_an_error(words: Any) -> None:
    some = {key: value for key, value in words.items() if key != "untouched"}
    with pytest.raises(KeyError, match="untouched"):
        roof_plan(DEMO, some)
