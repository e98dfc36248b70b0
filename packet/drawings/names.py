"""Names of planes: id, title, pitch with an arrow down the slope, and whether a plane was touched."""

import itertools
import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from packet.drawings.flat import Polygon, bounds, moved, rectangle
from packet.drawings.lettering import LINE_HEIGHT, STYLES, Lettered, width_px, wrapped
from packet.drawings.plan import Plan, Plane
from packet.drawings.room import Room
from packet.drawings.svg import Element, Point, line, polygon
from packet.drawings.taken import Taken

#: Arrow: length, half width of its head, length of its head; space between it and its pitch [px].
_ARROW, _HEAD_HALF, _HEAD, _BESIDE = 23.0, 3.2, 8.0, 4.0
_LINE_GAP, _ID_GAP, _MARGIN = 1.5, 7.0, 4.0
_WIDEST_TITLE, _MOST_LINES = 150.0, 3


@dataclass(frozen=True)
class Arrow:
    """An arrow down the slope, by its middle."""

    middle: Point
    way: Point

    @property
    def box(self) -> tuple[Point, ...]:
        """The room it takes."""
        angle = math.degrees(math.atan2(self.way[1], self.way[0]))
        return rectangle(self.middle, _ARROW, 2 * _HEAD_HALF + 1, angle)

    def draw(self) -> list[Element]:
        """Return shaft and head."""
        tail, tip = moved(self.middle, self.way, -_ARROW / 2), moved(self.middle, self.way, _ARROW / 2)
        neck = moved(tip, self.way, -_HEAD)
        side = (-self.way[1], self.way[0])
        head = [tip, moved(neck, side, _HEAD_HALF), moved(neck, side, -_HEAD_HALF)]
        return [line(tail, neck, class_="arrow"), polygon(head, class_="arrow-head")]


@dataclass(frozen=True)
class Block:
    """Lettering and arrow set together; places are from the block's middle."""

    width: float
    height: float
    letters: tuple[Lettered, ...] = ()
    arrows: tuple[Arrow, ...] = ()

    def at(self, point: Point) -> "Block":
        """Return the block with its middle at a point."""
        x, y = point
        letters = tuple(replace(one, at=(one.at[0] + x, one.at[1] + y)) for one in self.letters)
        arrows = tuple(replace(one, middle=(one.middle[0] + x, one.middle[1] + y)) for one in self.arrows)
        return replace(self, letters=letters, arrows=arrows)

    @property
    def boxes(self) -> list[tuple[Point, ...]]:
        """The room its parts take."""
        return [*(one.box for one in self.letters), *(one.box for one in self.arrows)]


@dataclass(frozen=True)
class Name:
    """A plane's name in its place; ``in_key`` when title and status stand in the key instead."""

    plane: Plane
    block: Block
    in_key: bool


def lettered(text: str, style: str) -> Block:
    """Return one line of text as a block."""
    one = Lettered(text, STYLES[style], (0.0, 0.0))
    return Block(width_px(text, one.style), one.style.size_px * LINE_HEIGHT, (one,))


def stack(blocks: Sequence[Block], gap: float = _LINE_GAP) -> Block:
    """Return blocks one under another, centred."""
    height = sum(block.height for block in blocks) + gap * (len(blocks) - 1)
    top, placed = -height / 2, []
    for block in blocks:
        placed.append(block.at((0.0, top + block.height / 2)))
        top += block.height + gap
    return _joined(placed, max(block.width for block in blocks), height)


def row(blocks: Sequence[Block], gap: float) -> Block:
    """Return blocks side by side, centred."""
    width = sum(block.width for block in blocks) + gap * (len(blocks) - 1)
    left, placed = -width / 2, []
    for block in blocks:
        placed.append(block.at((left + block.width / 2, 0.0)))
        left += block.width + gap
    return _joined(placed, width, max(block.height for block in blocks))


def _joined(blocks: Sequence[Block], width: float, height: float) -> Block:
    letters = tuple(itertools.chain.from_iterable(block.letters for block in blocks))
    arrows = tuple(itertools.chain.from_iterable(block.arrows for block in blocks))
    return Block(width, height, letters, arrows)


def pitch_block(text: str, down: Point) -> Block:
    """Return the pitch beside, or above, an arrow down the slope."""
    arrow = Arrow((0.0, 0.0), down)
    left, top, right, low = bounds(arrow.box)
    shape = Block(right - left, low - top, arrows=(arrow,))
    pitch = lettered(text, "note")
    return stack([pitch, shape], 2.0) if abs(down[1]) < 0.01 else row([shape, pitch], _BESIDE)


def names(plan: Plan, taken: Taken, words: Mapping[str, str]) -> list[Name]:
    """Return the names that find room on their planes, and take that room; small planes first."""
    placed = []
    for plane in sorted(plan.planes, key=lambda one: -one.level):
        name = _fitted(plane, plan, taken, words)
        if name is not None:
            taken.add(name.block.boxes)
            placed.append(name)
    return placed


def _layouts(plane: Plane, words: Mapping[str, str]) -> Iterator[list[Block]]:
    """Yield sets of layouts from full to bare; all but the first set leave the title to the key."""
    id, pitch = lettered(plane.id, "name"), pitch_block(plane.pitch, plane.down)
    if plane.area:  # an area that is the whole plane is named beside it
        id = row([id, lettered(plane.area, "area-id")], _ID_GAP)
    status = [] if plane.touched else [lettered(words["untouched"], "note")]
    lines = wrapped(plane.title, STYLES["note"], _WIDEST_TITLE)
    titles = [[lettered(text, "note") for text in lines]]
    halves = wrapped(plane.title, STYLES["note"], _WIDEST_TITLE / 2)
    if halves != lines:
        titles.append([lettered(text, "note") for text in halves])
    full = []
    for title in titles:
        if len(title) <= _MOST_LINES:
            full += [
                stack([id, *title, pitch, *status]),
                row([stack([id, *title, *status]), pitch], 10.0),
            ]
    yield full
    yield [stack([id, pitch, *status]), row([stack([id, *status]), pitch], 8.0)]
    if plane.area:  # from here on the key names the area
        id = lettered(plane.id, "name")
    yield [stack([id, pitch]), row([id, pitch], 6.0)]
    yield [id]


def _fitted(plane: Plane, plan: Plan, taken: Taken, words: Mapping[str, str]) -> Name | None:
    above: list[Polygon] = [other.outline for other in plan.above(plane)]
    hatched: list[Polygon] = [
        area.outline for area in plan.areas if area.plane == plane.id and not area.whole
    ]
    kept_free = [[*above, *hatched], above] if hatched else [above]
    rooms = [Room(plane.outline, some, taken) for some in kept_free]
    for number, layouts in enumerate(_layouts(plane, words)):
        for room in rooms:
            for block in layouts:
                found = room.best(block.width, block.height, _MARGIN)
                if found is not None:
                    return Name(plane, block.at(found), in_key=number > 0)
    return None
