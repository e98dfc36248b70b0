"""Every kind of edge has a line of its own, told apart without colour, and the key says which is which."""

import math
import re
from collections.abc import Iterator
from typing import Any

import pytest

from packet.drawings.edges import KINDS
from tests.drawings.facts import Draw, every_sheet, placed_on
from tests.drawings.reading import Drawing, Part
from tests.drawings.roofs import ROOFS, Geometry

#: What a grey printer shows of a line.
SHOWN = ("stroke-width", "stroke-dasharray", "stroke")


def rules_of(drawing: Drawing) -> dict[str, dict[str, str]]:
    """Return the style of each class, later rules over earlier ones."""
    (style,) = (part.text for part in drawing.parts if part.tag == "style")
    rules: dict[str, dict[str, str]] = {}
    for selectors, body in re.findall(r"([^{}]+)\{([^}]*)\}", style):
        for selector in selectors.split(","):
            declared = dict(re.findall(r"([\w-]+): ([^;]+);", body))
            rules.setdefault(selector.strip().removeprefix(".roof-plan ").lstrip("."), {}).update(declared)
    return rules


def look(parts: list[Part], rules: dict[str, dict[str, str]]) -> frozenset[tuple[str, ...]]:
    """Return how the lines that make one edge are drawn."""
    looks = set()
    for part in parts:
        declared: dict[str, str] = {}
        for name in rules:
            if name in part.classes:
                declared |= rules[name]
        looks.add(tuple(declared.get(name, "") for name in SHOWN))
    return frozenset(looks)


def key_lines(drawing: Drawing) -> Iterator[tuple[str, list[Part]]]:
    """Yield the word and the lines of each entry of the key that shows a line of an edge."""
    entries = {id(part.inside[-1]): part.inside[-1] for part in drawing.within("key-entry")}
    for entry in entries.values():
        parts = [part for part in drawing.parts if part.inside and part.inside[-1] is entry]
        if any("edge-sign" in part.classes for part in parts):
            (word,) = (part.text for part in parts if part.tag == "text")
            yield word, [part for part in parts if part.tag == "line"]


@every_sheet
def test_the_key_shows_a_line_for_each_kind_that_occurs_and_for_no_other(
    roof: Geometry, narrow: bool, draw: Draw, words: Any
) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    kinds = {edge["kind"] for edge in roof["edges"]}
    shown = dict(key_lines(drawing))
    assert set(shown) == {words["edge_" + kind.replace(" ", "_")] for kind in kinds}
    for kind in kinds:
        drawn = [part for part in drawing.of("edge") if part.get("data-kind") == kind]
        (sign,) = (
            part for part in shown[words["edge_" + kind.replace(" ", "_")]] if "edge-sign" in part.classes
        )
        assert sign.classes - {"edge-sign"} == drawn[0].classes - {"edge", "on-top"}


def test_no_two_kinds_of_edges_look_alike(draw: Draw, words: Any) -> None:
    looks: dict[str, frozenset[tuple[str, ...]]] = {}
    for roof in ROOFS.values():
        drawing = Drawing(draw(roof))
        looks |= {word: look(parts, rules_of(drawing)) for word, parts in key_lines(drawing)}
    assert set(looks) == {words["edge_" + kind.replace(" ", "_")] for kind in KINDS}
    assert len(set(looks.values())) == len(KINDS)


@every_sheet
def test_every_edge_is_drawn_once_and_lies_where_the_record_has_it(
    roof: Geometry, narrow: bool, draw: Draw
) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    drawn = [part for part in drawing.of("edge") if part.tag == "line"]
    assert sorted(part.get("data-edge") for part in drawn) == sorted(edge["id"] for edge in roof["edges"])
    to_sheet = placed_on(roof, drawing)
    lines = {part.get("data-edge"): part.points for part in drawn}
    for edge in roof["edges"]:
        for end, point in zip(lines[edge["id"]], edge["line"], strict=True):
            assert end == pytest.approx(to_sheet(point), abs=0.08)


@every_sheet
def test_a_rake_has_a_fine_line_on_the_side_of_its_plane(roof: Geometry, narrow: bool, draw: Draw) -> None:
    drawing = Drawing(draw(roof, narrow=narrow))
    rakes = [part for part in drawing.of("edge") if part.get("data-kind") == "rake"]
    fine = [part for part in drawing.of("rake-inner") if part not in drawing.within("strip")]
    assert len(fine) == len(rakes)
    planes = [part.points for part in drawing.of("plane")]
    for rake, inner in zip(rakes, fine, strict=True):
        assert math.dist(*rake.points) == pytest.approx(math.dist(*inner.points), abs=0.02)
        centre = (
            (inner.points[0][0] + inner.points[1][0]) / 2,
            (inner.points[0][1] + inner.points[1][1]) / 2,
        )
        own = next(points for points in planes if _has_side(points, rake.points))
        assert _winding_says_inside(centre, own)


def _has_side(points: Any, line: Any) -> bool:
    return all(min(math.dist(end, corner) for corner in points) < 1.0 for end in line)


def _winding_says_inside(point: tuple[float, float], outline: Any) -> bool:
    """Return whether an outline goes around a point, by the angles at which its corners are seen."""
    turned = 0.0
    for (ax, ay), (bx, by) in zip(outline, [*outline[1:], outline[0]], strict=True):
        angle = math.atan2(by - point[1], bx - point[0]) - math.atan2(ay - point[1], ax - point[0])
        turned += (angle + math.pi) % math.tau - math.pi
    return abs(turned) > math.pi
