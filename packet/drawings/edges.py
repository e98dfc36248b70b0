"""Edges: a line of its own for each kind, and its name along it."""

import math
from collections.abc import Iterable, Mapping, Sequence

from packet.drawings.building import Building
from packet.drawings.flat import along, direction, moved, touches
from packet.drawings.lettering import LINE_HEIGHT, STYLES, Lettered, width_px
from packet.drawings.plan import Edge, Plan
from packet.drawings.svg import Element, line
from packet.drawings.taken import Taken

#: Kinds always named along the line; the others only where there is room, for a dimension may name them.
ALWAYS_NAMED = ("valley", "hip", "ridge", "sidewall", "headwall")

#: Shares of the line at which its name may stand, best first.
_SHARES = (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9)
#: Clear space between a line and its name [px].
_OFF_LINE = 3.0


def edge_name(kind: str, words: Mapping[str, str]) -> str:
    """Return the word for a kind of edge."""
    return words[f"edge_{kind.replace(' ', '_')}"]


def draw_edge(edge: Edge) -> Element:
    """Return the line of an edge; its class is its kind."""
    kind = edge.kind.replace(" ", "-")
    # A dormer's edges are its own outline: heavier than lines within a plane, lighter than the building's.
    classes = f"edge {kind} on-top" if edge.level else f"edge {kind}"
    return line(*edge.line, class_=classes, data_edge=edge.id, data_kind=edge.kind)


def edge_names(
    edges: Iterable[Edge], plan: Plan, building: Building, taken: Taken, words: Mapping[str, str]
) -> list[tuple[Edge, Lettered]]:
    """Return the names that find room along their lines, and take that room."""
    placed = []
    for edge in edges:
        found = _along(edge, plan, building, taken, edge_name(edge.kind, words))
        if found is not None:
            taken.add([found.box])
            placed.append((edge, found))
    return placed


def _along(edge: Edge, plan: Plan, building: Building, taken: Taken, text: str) -> Lettered | None:
    style = STYLES["word"]
    way = direction(*edge.line)
    if (way[0], -way[1]) < (-0.01, 0.0) or (abs(way[0]) < 0.01 and way[1] > 0):
        way = (-way[0], -way[1])
    angle = math.degrees(math.atan2(way[1], way[0]))
    off = _OFF_LINE + style.size_px * LINE_HEIGHT / 2
    is_long_enough = math.dist(*edge.line) >= width_px(text, style)
    hidden = [plane.outline for plane in plan.planes if plane.level > edge.level]
    hatched = [area.outline for area in plan.areas]
    candidates: list[tuple[int, int, Lettered]] = []
    for number, share in enumerate(_SHARES if is_long_enough else _SHARES[:1]):
        for side, normal in enumerate(((way[1], -way[0]), (-way[1], way[0]))):
            one = Lettered(text, style, moved(along(*edge.line, share), normal, off), angle)
            if taken.is_free(one.box, gap=1.0):
                cost = (
                    3 * _count(one, hatched) + 4 * _count(one, hidden) + 2 * (not building.is_on_roof(one.at))
                )
                candidates.append((cost, number * 2 + side, one))
    best = min(candidates, key=lambda candidate: candidate[:2], default=None)
    return best[2] if best else None


def _count(one: Lettered, outlines: Sequence[Sequence[tuple[float, float]]]) -> int:
    return sum(touches(one.box, outline) for outline in outlines)
