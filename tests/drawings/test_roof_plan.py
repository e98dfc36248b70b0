"""The roof on the sheet: planes, edges, dimensions, labels, marks."""

import math
import re
from collections.abc import Callable
from itertools import combinations
from typing import Any

import pytest

from packet.drawings.flat import do_overlap, is_inside, rectangle, to_segment
from tests.drawings.conftest import GOLDEN
from tests.drawings.decks import PLANES
from tests.drawings.facts import (
    FACINGS,
    Draw,
    area_inside,
    arrow_way,
    down_slope,
    every_sheet,
    group_of_mark,
    inches_of,
    placed_on,
    scale_of,
)
from tests.drawings.reading import Drawing
from tests.drawings.roofs import DEMO, GABLE, ROOFS, SMALL, Geometry, changed, crowded


@pytest.mark.parametrize("name", ROOFS)
@pytest.mark.parametrize("narrow", [False, True], ids=["wide", "narrow"])
def test_roof_plan_svg_is_unchanged(
    name: str, narrow: bool, draw: Draw, check_golden: Callable[[str, str], None]
) -> None:
    check_golden(f"{name}{'-narrow' if narrow else ''}.svg", draw(ROOFS[name], narrow=narrow))


def test_no_golden_file_is_left_over() -> None:
    wanted = {f"{name}{end}.svg" for name in ROOFS for end in ("", "-narrow")}
    wanted |= {f"deck-{deck}-{plane}{end}.svg" for deck, plane in PLANES for end in ("", "-narrow")}
    assert {path.name for path in GOLDEN.iterdir()} == wanted


@every_sheet
def test_every_plane_has_one_outline_and_its_id_and_title(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    assert [part.get("data-plane") for part in drawing.of("plane")] != []
    assert sorted(part.get("data-plane") for part in drawing.of("plane")) == sorted(
        plane["id"] for plane in roof["planes"]
    )
    said = " ".join(part.text for part in drawing.texts)
    for plane in roof["planes"]:
        assert plane["id"] in {part.text for part in drawing.of("name")}
        assert plane["title"] in said
        assert plane["pitch"] in said


@every_sheet
def test_plane_outlines_have_the_shape_of_the_record(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    scales = set()
    outlines = {part.get("data-plane"): part.points for part in drawing.of("plane")}
    for plane in roof["planes"]:
        drawn, corners = outlines[plane["id"]], plane["outline"]
        assert len(drawn) == len(corners)
        for (a, b), (p, q) in zip(combinations(drawn, 2), combinations(corners, 2), strict=True):
            assert math.copysign(1, b[0] - a[0]) == math.copysign(1, q[0] - p[0]) or abs(q[0] - p[0]) < 0.01
            assert math.copysign(1, a[1] - b[1]) == math.copysign(1, q[1] - p[1]) or abs(q[1] - p[1]) < 0.01
            scales.add(round(math.dist(a, b) / math.dist(p, q), 1))
    assert max(scales) - min(scales) <= 0.11


@every_sheet
def test_every_worked_area_is_hatched_inside_its_outline(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    hatches = [part for part in drawing.of("hatch") if part not in drawing.within("strip")]
    assert [part.get("data-area") for part in hatches] == [area["id"] for area in roof["areas"]]
    named = {part.text for part in drawing.of("area-id")}
    in_key = " ".join(part.text for part in drawing.within("key-entry") if part.tag == "text")
    for area in roof["areas"]:
        assert area["id"] in named or f", {area['id']}" in in_key
    to_sheet = placed_on(roof, drawing)
    for part, area in zip(hatches, roof["areas"], strict=True):
        outline = [to_sheet(point) for point in area["outline"]]
        runs = list(zip(part.points[::2], part.points[1::2], strict=True))
        assert len(runs) >= 4
        for a, b in runs:
            assert is_inside(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), outline)


@every_sheet
def test_hatching_runs_through_no_label(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    labels = drawing.labels()
    for part in drawing.of("hatch"):
        for a, b in zip(part.points[::2], part.points[1::2], strict=True):
            centre = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            assert not [text for text, box in labels if is_inside(centre, box)]


@every_sheet
def test_untouched_planes_and_only_they_are_called_untouched(
    roof: Geometry, narrow: bool, draw: Draw, words: Any
) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    called = {
        part.get("data-plane") for part in drawing.within("plane-name") if part.text == words["untouched"]
    }
    in_key = {part.text for part in drawing.within("key-entry")}
    for plane in roof["planes"]:
        long_form = words["key_plane_untouched"].format(title=plane["title"], pitch=plane["pitch"])
        untouched = not (plane["worked"] or plane["part_worked"])
        assert (plane["id"] in called or long_form in in_key) == untouched


@every_sheet
def test_valleys_hips_ridges_and_walls_are_named_along_the_line(
    roof: Geometry, narrow: bool, draw: Draw, words: Any
) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    led = drawing.within("pointer")
    named = {part.get("data-edge"): part for part in drawing.of("word") if part not in led}
    to_sheet = placed_on(roof, drawing)
    for edge in roof["edges"]:
        if edge["kind"] not in ("valley", "hip", "ridge", "sidewall", "headwall"):
            continue
        start, end = [to_sheet(point) for point in edge["line"]]
        word = words[f"edge_{edge['kind']}"]
        if edge["id"] not in named:  # too short for its name, which then stands beside it with a leader
            dots = [part.at(part.number("cx"), part.number("cy")) for part in led if "dot" in part.classes]
            assert word in {part.text for part in led}
            assert any(to_segment(dot, (start, end)) < 0.1 for dot in dots)
            continue
        part = named[edge["id"]]
        assert part.text == word
        middle = tuple(sum(corner[n] for corner in part.box) / 4 for n in (0, 1))
        off = abs((end[0] - start[0]) * (start[1] - middle[1]) - (start[0] - middle[0]) * (end[1] - start[1]))
        assert 6 < off / math.dist(start, end) < 14


@pytest.mark.parametrize("roof", ROOFS.values(), ids=ROOFS)
def test_eaves_and_rakes_are_named_on_the_wide_sheet(roof: Geometry, draw: Draw, words: Any) -> None:
    drawing = Drawing(draw(roof))
    said = " ".join(part.text for part in [*drawing.of("word"), *drawing.of("dim")])
    for kind in {edge["kind"] for edge in roof["edges"]} - {"pitch break"}:
        assert words[f"edge_{kind}"] in said


@every_sheet
def test_a_dimension_says_the_length_and_its_line_has_it(
    roof: Geometry, narrow: bool, draw: Draw, words: Any
) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    edges = {edge["id"]: edge for edge in roof["edges"]}
    scale = scale_of(roof, drawing)
    texts = [part for part in drawing.within("dimension") if part.tag == "text"]
    lines = [part for part in drawing.within("dimension") if "dim-line" in part.classes]
    assert texts
    for text, line in zip(texts, lines, strict=True):
        edge = edges[text.get("data-edge")]
        found = re.fullmatch(
            rf"{words['edge_' + edge['kind']]} (?:(\d+)\u2032)? ?(?:([\d /]+)\u2033)?",
            text.text,
        )
        assert found, text.text
        assert int(found[1] or 0) * 12 + inches_of(found[2]) == pytest.approx(
            edge["length_ft"] * 12, abs=1 / 32
        )
        assert math.dist(*line.points) / scale == pytest.approx(edge["length_ft"], abs=0.02)


def test_the_demo_shows_all_its_spans_and_a_phone_only_the_whole_house(draw: Draw) -> None:
    wide = [part.text for part in Drawing(draw(DEMO)).of("dim")]
    assert sorted(wide) == [
        "eave 16\u2032",
        "eave 20\u2032",
        "eave 40\u2032",
        "eave 44\u2032",
        "ridge 28\u2032",
        "ridge 32\u2032",
    ]
    narrow = [part.text for part in Drawing(draw(DEMO, narrow=True)).of("dim")]
    assert sorted(narrow) == ["eave 40\u2032", "eave 44\u2032"]


def test_a_span_is_not_dimensioned_twice(draw: Draw) -> None:
    assert [part.text for part in Drawing(draw(GABLE)).of("dim")] == ["eave 36\u2032 6\u2033"]


def test_a_length_that_the_plan_does_not_have_is_not_drawn_as_a_dimension(draw: Draw) -> None:
    roof = changed(GABLE)
    for edge in roof["edges"]:
        edge["length_ft"] += 1 if edge["kind"] in ("eave", "ridge") else 0
    assert Drawing(draw(roof)).of("dim") == []


@every_sheet
def test_labels_overlap_nothing_and_stay_in_the_frame(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    labels = drawing.labels()
    overlapping = [(one, two) for (one, a), (two, b) in combinations(labels, 2) if do_overlap(a, b)]
    assert overlapping == []
    frame = drawing.of("frame")[0].points
    assert [text for text, box in labels if not all(is_inside(corner, frame) for corner in box)] == []


@pytest.mark.parametrize("narrow", [False, True])
def test_labels_of_a_crowded_roof_do_not_overlap(narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(crowded(), narrow=narrow))
    labels = drawing.labels()
    assert [(one, two) for (one, a), (two, b) in combinations(labels, 2) if do_overlap(a, b)] == []
    assert len(drawing.of("mark")) == len(crowded()["marks"])
    assert drawing.width <= (361 if narrow else 621)


@every_sheet
def test_no_label_stands_on_the_outline_of_the_building(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    loop = drawing.of("outline")[0].points
    for text, box in drawing.labels():
        for a, b in zip(loop, [*loop[1:], loop[0]], strict=True):
            steps = max(2, int(math.dist(a, b)))
            on = [
                (a[0] + (b[0] - a[0]) * n / steps, a[1] + (b[1] - a[1]) * n / steps) for n in range(steps + 1)
            ]
            assert not any(is_inside(point, box) for point in on), text


@every_sheet
def test_no_label_covers_the_place_of_a_mark(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    for dot in drawing.of("dot"):
        x, y, r = (dot.number(name) for name in ("cx", "cy", "r"))
        room = rectangle(dot.at(x, y), 2 * r, 2 * r)
        assert [text for text, box in drawing.labels() if do_overlap(box, room)] == []


@pytest.mark.parametrize("facing", FACINGS)
def test_the_arrow_of_a_plane_points_the_way_it_looks(facing: str, draw: Draw) -> None:
    square = [[-6, -6], [6, -6], [6, 6], [-6, 6]]
    roof = changed(SMALL, facing=facing, outline=square)
    roof |= {"edges": [], "areas": [], "marks": []}
    (head,) = (part for part in Drawing(draw(roof)).within("plane-name") if "arrow-head" in part.classes)
    assert arrow_way(head.points) == pytest.approx(down_slope(facing), abs=0.02)


@every_sheet
def test_the_outline_goes_once_around_the_building(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    (outline,) = drawing.of("outline")
    assert outline.element.attrib["d"].count("M") == outline.element.attrib["d"].count("Z") == 1
    ground = [plane for plane in roof["planes"] if plane["id"] != "DR"]
    loop, scale = outline.points, scale_of(roof, drawing)
    assert area_inside(loop) / scale**2 == pytest.approx(
        sum(area_inside(plane["outline"]) for plane in ground), rel=0.01
    )


def test_the_dormer_lies_on_top_of_its_plane_with_its_opening(draw: Draw) -> None:
    drawing = Drawing(draw(DEMO))
    order = [part.element.get("id") for part in drawing.parts]
    assert (
        order.index("roof-plan-plane-DR")
        > order.index("roof-plan-area-A1")
        > order.index("roof-plan-plane-MS")
    )
    (opening,) = (part for part in drawing.of("opening") if part not in drawing.within("strip"))
    (dormer,) = (part for part in drawing.of("plane") if part.get("data-plane") == "DR")
    assert opening.get("data-opening") == "O1"
    assert all(is_inside(corner, dormer.points) for corner in opening.points)
    assert {part.get("data-edge") for part in drawing.of("on-top")} == {"E13", "E14", "E15", "E16"}


@every_sheet
def test_arrows_point_down_the_slope(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    heads = {
        part.get("data-plane"): part.points
        for part in drawing.within("plane-name")
        if "arrow-head" in part.classes
    }
    assert heads
    for plane in roof["planes"]:
        if plane["id"] not in heads:
            continue
        assert arrow_way(heads[plane["id"]]) == pytest.approx(down_slope(plane["facing"]), abs=0.02)


@every_sheet
def test_each_mark_has_a_dot_at_its_place_and_a_line_in_the_key(
    roof: Geometry, narrow: bool, draw: Draw, words: Any
) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    to_sheet = placed_on(roof, drawing)
    dots = {part.get("data-mark"): part for part in drawing.within("mark") if "dot" in part.classes}
    ringed = {part.get("data-mark"): part.text for part in drawing.within("mark") if part.tag == "text"}
    entries = [part for part in drawing.within("key-entry") if part.tag == "text"]
    assert len(set(ringed.values())) == len(roof["marks"])
    for mark in roof["marks"]:
        dot = dots[mark["id"]]
        assert dot.at(dot.number("cx"), dot.number("cy")) == pytest.approx(to_sheet(mark["at"]), abs=0.05)
        text = words["key_mark"].format(id=mark["id"], label=mark["label"])
        own = [
            part.text
            for part in entries
            if part.element in {p.element for p in group_of_mark(drawing, mark["id"])}
        ]
        assert own == [ringed[mark["id"]], text]
