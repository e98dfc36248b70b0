"""The strip under a drawing: key, scale bar, north arrow, heading and caption."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from packet.drawings.edges import beside
from packet.drawings.hatch import hatch
from packet.drawings.lettering import STYLES, Lettered, width_px, wrapped
from packet.drawings.names import Arrow
from packet.drawings.pointers import RING_PX, ring_radius
from packet.drawings.svg import Element, Point, element, line, path, polygon

Sign = Callable[[Point], list[Element]]

#: A line of the key and a further line of the same text, room for its sign, space between columns [px].
_ROW, _LINE, _SIGN, _COLUMN_GAP = 21.0, 14.5, 30.0, 14.0
#: The same for lines without a ring or a swatch [px].
_LOW_ROW = 17.0
#: Space between groups and above the foot of the strip; height and room of the north arrow [px].
_GROUP_GAP, _FOOT_GAP, _NORTH_HEIGHT, _NORTH_WIDTH = 4.0, 10.0, 38.0, 30.0
#: Height of the scale bar, shortest with a middle label [px], greatest share of the strip, lengths [ft].
_BAR_HEIGHT, _BAR_WITH_MIDDLE, _BAR_SHARE = 5.0, 64.0, 0.34
_BARS = (1, 2, 5, 10, 20, 50, 100, 200, 500)


@dataclass(frozen=True)
class Entry:
    """A sign, what it means, and the room the sign needs [px]."""

    sign: Sign
    text: str
    mark: str | None = None
    room: float = _SIGN
    row: float = _ROW


@dataclass(frozen=True)
class Strip:
    """Finished elements and the height they take [px]."""

    parts: tuple[Element, ...]
    height: float


def hatch_sign(at: Point) -> list[Element]:
    """Return a swatch of hatching."""
    x, y = at
    box = [(x, y - 6.5), (x + 24, y - 6.5), (x + 24, y + 6.5), (x, y + 6.5)]
    return [path(hatch(box, 0), class_="hatch"), polygon(box, class_="area")]


def opening_sign(at: Point) -> list[Element]:
    """Return a swatch of an opening's line."""
    x, y = at
    return [polygon([(x, y - 6), (x + 24, y - 6), (x + 24, y + 6), (x, y + 6)], class_="opening")]


def line_entry(kind: str, text: str) -> Entry:
    """Return a line of the key for a kind of edge; eaves and rakes are drawn on the building's outline."""

    def draw(at: Point) -> list[Element]:
        ends = (at, (at[0] + 24, at[1]))
        outer = [line(*ends, class_="outline-sign")] if kind in ("eave", "rake") else []
        own = line(*ends, class_=f"edge-sign {kind.replace(' ', '-')}")
        return [*outer, own, *beside(kind, ends, (0.0, 1.0))]

    return Entry(draw, text, row=_LOW_ROW)


def arrow_sign(at: Point) -> list[Element]:
    """Return the arrow down a slope."""
    return Arrow((at[0] + 12, at[1]), (1.0, 0.0)).draw()


def ring_sign(text: str) -> Sign:
    """Return a ringed letter as a sign."""

    def draw(at: Point) -> list[Element]:
        x, y = at[0] + 12, at[1]
        ring = element("circle", class_="ring", cx=x, cy=y, r=max(RING_PX, ring_radius(text)))
        return [ring, Lettered(text, STYLES["letter"], (x, y)).draw()]

    return draw


def plane_entry(id: str, text: str) -> Entry:
    """Return a line of the key for a plane whose name found no room on it."""

    def draw(at: Point) -> list[Element]:
        return [Lettered(id, STYLES["name"], at, from_left=True).draw()]

    return Entry(draw, text, room=max(_SIGN, width_px(id, STYLES["name"]) + 6), row=_LOW_ROW)


def strip(
    groups: Sequence[Sequence[Entry]],
    width: float,
    px_per_ft: float,
    words: Mapping[str, str],
    *,
    north: bool = True,
) -> Strip:
    """Return the strip under a drawing, from the origin down.

    Args:
        groups: Lines of the key; each group has columns of its own.
        width: Width of the strip [px].
        px_per_ft: Scale of the drawing.
        words: Words of drawings.
        north: Whether the drawing has a north: a slope seen from the front has none.
    """
    parts: list[Element] = []
    top = 0.0
    north_width = _NORTH_WIDTH if north else 0.0
    for entries in filter(None, groups):
        drawn, top = _group(entries, top + (_GROUP_GAP if parts else 0.0), width)
        parts += drawn
    room = width - north_width - _scale_width(width, px_per_ft, words) - _COLUMN_GAP
    foot = top + _FOOT_GAP + _NORTH_HEIGHT
    heading = wrapped(words["title"], STYLES["heading"], room)
    caption = wrapped(words["caption"], STYLES["caption"], room)
    beside, below = [(text, "heading") for text in heading], []
    if len(caption) == 1:
        beside.append((caption[0], "caption"))
    else:
        below = [(text, "caption") for text in wrapped(words["caption"], STYLES["caption"], width)]
    y = foot - _LINE * (len(beside) - 0.5)
    for text, style in beside + below:
        parts.append(Lettered(text, STYLES[style], (0.0, y), from_left=True).draw())
        y += _LINE
    if north:
        parts += _north((width - _NORTH_WIDTH / 2, foot - 3), words)
    parts += _scale_bar((width - north_width, foot - 3), width, px_per_ft, words)
    return Strip(tuple(parts), foot + _LINE * len(below))


def _group(entries: Sequence[Entry], top: float, width: float) -> tuple[list[Element], float]:
    """Return a group's lines in columns, and where it ends."""
    room = max(entry.room for entry in entries)
    widest = room + max(width_px(entry.text, STYLES["key"]) for entry in entries)
    columns = max(1, min(len(entries), int((width + _COLUMN_GAP) / (widest + _COLUMN_GAP))))
    each = min(width, widest)
    gap = min((width - columns * each) / max(columns - 1, 1), _COLUMN_GAP * 2)
    rows = -(-len(entries) // columns)
    parts, lowest = [], top
    for column in range(columns):
        y = top
        for entry in entries[column * rows : (column + 1) * rows]:
            drawn, y = _entry(entry, (column * (each + gap), y), room, each - room)
            parts.append(element("g", drawn, class_="key-entry", data_mark=entry.mark))
        lowest = max(lowest, y)
    return parts, lowest


def _entry(entry: Entry, at: Point, room: float, width: float) -> tuple[list[Element], float]:
    """Return one line of the key, its text wrapped, and where it ends."""
    x, y = at[0], at[1] + entry.row / 2
    parts = entry.sign((x, y))
    for number, text in enumerate(wrapped(entry.text, STYLES["key"], width + 0.01)):
        y += _LINE if number else 0.0
        parts.append(Lettered(text, STYLES["key"], (x + room, y), from_left=True).draw())
    return parts, y + entry.row / 2


def _north(foot: Point, words: Mapping[str, str]) -> list[Element]:
    x, y = foot
    tip, tail = (x, y - _NORTH_HEIGHT + 13), (x, y)
    waist, left, right = (x, y - 5), (x - 6.5, y + 1), (x + 6.5, y + 1)
    return [
        element(
            "g",
            [
                polygon([tip, right, waist], class_="north-dark"),
                polygon([tip, left, waist], class_="north-light"),
                line(waist, tail, class_="leader"),
                Lettered(words["north"], STYLES["heading"], (x, y - _NORTH_HEIGHT + 5)).draw(),
            ],
            class_="north",
        )
    ]


def _scale_bar(right_foot: Point, width: float, px_per_ft: float, words: Mapping[str, str]) -> list[Element]:
    """Return the scale bar; its last label ends at ``right_foot``."""
    length_ft = _bar_length(width, px_per_ft)
    long, end = length_ft * px_per_ft, words["feet"].format(number=length_ft)
    right, foot = right_foot
    left = right - long - width_px(end, STYLES["key"]) / 2
    half = left + long / 2
    above = foot - _BAR_HEIGHT - 9
    parts = [
        _bar((left, foot - _BAR_HEIGHT), (half, foot), "bar-dark"),
        _bar((half, foot - _BAR_HEIGHT), (left + long, foot), "bar-light"),
        Lettered("0", STYLES["key"], (left, above)).draw(),
        Lettered(end, STYLES["key"], (left + long, above)).draw(),
    ]
    if long >= _BAR_WITH_MIDDLE and length_ft % 2 == 0:
        parts.append(Lettered(str(length_ft // 2), STYLES["key"], (half, above)).draw())
    return [element("g", parts, class_="scale-bar")]


def _bar_length(width: float, px_per_ft: float) -> int:
    return max((bar for bar in _BARS if bar * px_per_ft <= width * _BAR_SHARE), default=_BARS[0])


def _scale_width(width: float, px_per_ft: float, words: Mapping[str, str]) -> float:
    length_ft = _bar_length(width, px_per_ft)
    end = words["feet"].format(number=length_ft)
    return length_ft * px_per_ft + width_px(end, STYLES["key"]) / 2 + width_px("0", STYLES["key"]) / 2


def _bar(start: Point, end: Point, name: str) -> Element:
    return polygon([start, (end[0], start[1]), end, (start[0], end[1])], class_=name)
