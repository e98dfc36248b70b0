"""Edges: a line of its own for each kind, and its name along it."""

import math
from collections.abc import Iterable, Iterator, Mapping

from packet.drawings.building import Building
from packet.drawings.flat import Segment, along, bounds, direction, is_inside, moved, touches
from packet.drawings.lettering import LINE_HEIGHT, STYLES, Lettered, width_px
from packet.drawings.plan import Edge, Plan
from packet.drawings.svg import Element, Point, line
from packet.drawings.taken import Index, Taken

#: Kinds always named along the line; the others only where there is room, for a dimension may name them.
ALWAYS_NAMED = ("valley", "hip", "ridge", "sidewall", "headwall")

#: All kinds in the order of the key.
KINDS = ("eave", "rake", "ridge", "hip", "valley", "sidewall", "headwall", "pitch break")

#: Lines along walls carry ticks.
WALLS = ("sidewall", "headwall")
#: Distance of the fine line inside a rake from its edge [px].
_RAKE_INNER = 3.4

#: Shares of the line at which its name may stand, best first.
_SHARES = (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9)
#: A name that costs no more than standing beside the roof does not wander along the line.
_GOOD_ENOUGH = 2

#: Clear space between a line and its name, and between one with ticks and its name [px].
_OFF_LINE, _OFF_TICKS = 3.0, 5.0


def edge_name(kind: str, words: Mapping[str, str]) -> str:
    """Return the word for a kind of edge."""
    return words[f"edge_{kind.replace(' ', '_')}"]


def draw_edge(edge: Edge) -> Iterator[Element]:
    """Yield the line of an edge, its class is its kind, and what tells its kind beside the line's dashes."""
    kind = edge.kind.replace(" ", "-")
    # A dormer's edges are its own outline: heavier than lines within a plane, lighter than the building's.
    classes = f"edge {kind} on-top" if edge.level else f"edge {kind}"
    yield line(*edge.line, class_=classes, data_edge=edge.id, data_kind=edge.kind)
    yield from beside(edge.kind, edge.line, edge.inner)


def inner_line(edge: Edge) -> Segment | None:
    """Return the fine line inside a rake; no other edge has one."""
    if edge.kind != "rake" or edge.inner is None:
        return None
    return moved(edge.line[0], edge.inner, _RAKE_INNER), moved(edge.line[1], edge.inner, _RAKE_INNER)


def beside(kind: str, edge_line: Segment, inner: Point | None) -> Iterator[Element]:
    """Yield the fine line inside a rake, or the ticks across a line along a wall."""
    if kind == "rake" and inner:
        start, end = (moved(point, inner, _RAKE_INNER) for point in edge_line)
        yield line(start, end, class_="rake-inner")
    if kind in WALLS:
        yield line(*edge_line, class_=f"{kind}-ticks")


def edge_names(
    edges: Iterable[Edge], ground: "Ground", taken: Taken, words: Mapping[str, str]
) -> list[tuple[Edge, Lettered]]:
    """Return the names that find room along their lines, and take that room."""
    placed = []
    for edge in edges:
        found = _along(edge, ground, taken, edge_name(edge.kind, words))
        if found is not None:
            taken.add([found.box])
            placed.append((edge, found))
    return placed


class Ground:
    """What a name along an edge would stand on."""

    def __init__(self, plan: Plan, building: Building) -> None:
        self._building = building
        self._hatched = Index(area.outline for area in plan.areas if area.whole)
        self._parts = Index(area.outline for area in plan.areas if not area.whole)
        self._planes = [
            (level, Index(plane.outline for plane in plan.planes if plane.level == level))
            for level in range(1, plan.top_level + 1)
        ]

    def cost(self, name: Lettered, level: int) -> int:
        """Return how unwelcome a name of an edge of a level is: best beside it on bare roof."""
        over = any(_is_on(name.at, planes) for higher, planes in self._planes if higher > level)
        cost = 4 * over + (_is_on(name.at, self._hatched) if self._building.is_on_roof(name.at) else 2)
        box = name.box
        return cost + 3 * any(touches(box, part) for part in self._parts.near(bounds(box)))


def _is_on(at: Point, outlines: Index[tuple[Point, ...]]) -> bool:
    return any(is_inside(at, outline) for outline in outlines.near((*at, *at)))


def _along(edge: Edge, ground: Ground, taken: Taken, text: str) -> Lettered | None:
    style = STYLES["word"]
    way = direction(*edge.line)
    if (way[0], -way[1]) < (-0.01, 0.0) or (abs(way[0]) < 0.01 and way[1] > 0):
        way = (-way[0], -way[1])
    angle = math.degrees(math.atan2(way[1], way[0]))
    off = (_OFF_TICKS if edge.kind in WALLS else _OFF_LINE) + style.size_px * LINE_HEIGHT / 2
    is_long_enough = math.dist(*edge.line) >= width_px(text, style)
    best: tuple[int, Lettered] | None = None
    for share in _SHARES if is_long_enough else _SHARES[:1]:
        for normal in ((way[1], -way[0]), (-way[1], way[0])):
            one = Lettered(text, style, moved(along(*edge.line, share), normal, off), angle)
            cost = ground.cost(one, edge.level)
            if (best is None or cost < best[0]) and taken.is_free(one.box, gap=1.0):
                best = (cost, one)
        if best is not None and best[0] <= _GOOD_ENOUGH:
            break
    return best[1] if best else None
