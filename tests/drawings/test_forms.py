"""Whole roofs by form: names inside planes of any outline, true numbers, and a sheet that reads on paper."""

import math
import re
from typing import Any

import pytest

from packet.drawings.flat import crosses, is_inside
from packet.drawings.roof_plan import roof_plan
from tests.bench.cut_up import cut_up
from tests.drawings.facts import Draw, every_sheet
from tests.drawings.formed import geometry_of_record
from tests.drawings.reading import Drawing
from tests.drawings.roofs import ROOFS, Geometry, crowded

#: Most a drawing may measure on a Letter page, and the least letters there [pt]; 11.5 px are the letters.
PAGE_PT, LEAST_PT, LETTERS_PX = (507.0, 581.0), 6.5, 11.5


@pytest.fixture(scope="module")
def big() -> Geometry:
    """Four cut-up houses, 48 planes."""
    return geometry_of_record(cut_up(48))


def test_the_t_has_a_slope_that_goes_down_to_both_valley_feet(draw: Draw) -> None:
    (slope,) = (part for part in Drawing(draw(ROOFS["t-plan"])).of("plane") if part.get("data-plane") == "MS")
    scale = (slope.points[1][0] - slope.points[0][0]) / 18
    west, south = slope.points[0]
    feet = {(round((x - west) / scale, 1), round((south - y) / scale, 1)) for x, y in slope.points}
    assert feet == {(0, 0), (18, 0), (26, 8), (34, 0), (52, 0), (52, 14), (0, 14)}


def test_the_l_joins_its_wing_to_the_hip_end_in_one_plane(draw: Draw) -> None:
    drawing = Drawing(draw(ROOFS["l-forms"]))
    assert [part.get("data-plane") for part in drawing.of("plane")].count("HE") == 1
    said = {part.get("data-edge"): part.text for part in drawing.of("dim")}
    assert said["HE-EAVE"] == "eave 40\u2032"
    assert said["HS-EAVE"] == "eave 20\u2032"
    assert said["HS-HN"] == "ridge 20\u2032"
    assert {"HS-WW", "HE-WS", "HN-HE"} <= {part.get("data-edge") for part in drawing.of("edge")}


def test_an_eave_in_two_pieces_is_dimensioned_piece_by_piece(draw: Draw) -> None:
    said = {part.get("data-edge"): part.text for part in Drawing(draw(ROOFS["t-plan"])).of("dim")}
    assert said["MN-EAVE"] == "eave 52\u2032"
    assert said["MS-EAVE-2"] == "eave 18\u2032"
    assert {said.get("MS-EAVE-1"), said.get("P1")} >= {"eave 18\u2032"}  # one span, shown once


@every_sheet
def test_every_name_stands_inside_its_plane_and_on_no_plane_above(
    roof: Geometry, narrow: bool, draw: Draw
) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    outlines = {part.get("data-plane"): part.points for part in drawing.of("plane")}
    order = list(outlines)
    placed = [part for part in drawing.within("plane-name") if part.tag == "text"]
    assert placed
    for part in placed:
        own = part.get("data-plane")
        assert all(is_inside(corner, outlines[own]) for corner in part.box), part.text
        middle = (sum(x for x, _ in part.box) / 4, sum(y for _, y in part.box) / 4)
        for other in order[order.index(own) + 1 :]:
            assert not is_inside(middle, outlines[other]), part.text


@every_sheet
def test_a_leader_runs_through_no_label(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    leaders = [part.points for part in drawing.of("leader") if part not in drawing.within("strip")]
    labels = [(text, box) for text, box in drawing.labels() if text != "ring"]
    for start, end in leaders:
        stopped = (end[0] + (start[0] - end[0]) * 0.02, end[1] + (start[1] - end[1]) * 0.02)
        assert [text for text, box in labels if crosses(box, (start, stopped))] == []


@pytest.mark.parametrize("name", [*ROOFS, "crowded", "big"])
def test_letters_are_large_enough_on_a_letter_page(name: str, big: Geometry, draw: Draw) -> None:
    drawing = Drawing(draw({**ROOFS, "crowded": crowded(), "big": big}[name]))
    shrunk = min(PAGE_PT[0] / drawing.width, PAGE_PT[1] / drawing.height)
    assert LETTERS_PX * shrunk >= LEAST_PT
    assert min(part.number("font-size") for part in drawing.texts) >= LETTERS_PX


@pytest.mark.parametrize("name", [*ROOFS, "big"])
def test_a_phone_shows_the_sheet_no_smaller_than_it_was_drawn(name: str, big: Geometry, draw: Draw) -> None:
    drawing = Drawing(draw({**ROOFS, "big": big}[name], narrow=True))
    assert drawing.width == 360


def test_all_of_a_large_roof_is_named(big: Geometry, words: Any) -> None:
    for narrow in (False, True):
        drawing = Drawing(roof_plan(big, words, narrow=narrow))
        named = {part.text for part in drawing.of("name")}
        said = " ".join(part.text for part in drawing.texts)
        assert {plane["id"] for plane in big["planes"]} <= named
        assert all(re.search(rf"\b{area['id']}\b", said) for area in big["areas"])
        left, top = 0.0, 0.0
        for text, box in drawing.labels():
            assert all(left <= x <= drawing.width and top <= y <= drawing.height for x, y in box), text
            assert not math.isnan(box[0][0])
