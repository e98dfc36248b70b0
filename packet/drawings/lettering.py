"""Lettering: styles, estimated widths, wrapping.

A viewer's font is unknown, so estimates lean to the wide side.
"""

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from packet.drawings.flat import rectangle
from packet.drawings.svg import Element, Point, element, number


@dataclass(frozen=True)
class Style:
    """A way of lettering; ``size_px`` on the sheet, ``wide`` as a factor of plain letters."""

    name: str
    size_px: float
    wide: float = 1.0


#: Sizes on a sheet shown in its own width; none below 11 px.
STYLES: Mapping[str, Style] = {
    style.name: style
    for style in (
        Style("name", 12.5, 1.07),
        Style("note", 11.5),
        Style("word", 11.5),
        Style("dim", 11.5),
        Style("area-id", 12.5, 1.07),
        Style("letter", 11.5),
        Style("key", 11.5),
        Style("heading", 12.5, 1.07),
        Style("caption", 11.5),
    )
}

#: Widths in parts of the size, the widest of common sans faces; what is not listed is 0.62.
_WIDTHS = (
    ("ijl'|", 0.29),
    ("ftrI.,:;!()[]/ -\u2032\u2033\u202f\u2044", 0.38),
    ('szcxkvyJ"*', 0.54),
    ("abdeghnopquLFTZE0123456789?$\u2212+=<>", 0.6),
    ("SPKBXYACRVU&", 0.71),
    ("GDNHOQw", 0.8),
    ("mM%", 0.9),
    ("W@", 1.02),
)
_WIDTH = {letter: width for letters, width in _WIDTHS for letter in letters}
_OTHER, _FULL = 0.62, 1.05

#: Height of capitals with room for descenders, and where the baseline stands below the middle, per size.
LINE_HEIGHT, _BASELINE = 1.16, 0.35


@lru_cache(maxsize=4096)
def width_px(text: str, style: Style) -> float:
    """Return the estimated width of a line of text [px]."""
    return sum(_letter(letter) for letter in text) * style.size_px * style.wide


def _letter(letter: str) -> float:
    if letter in _WIDTH:
        return _WIDTH[letter]
    if unicodedata.combining(letter):
        return 0.0
    if unicodedata.east_asian_width(letter) in "WF":
        return _FULL
    return _OTHER if letter.isascii() or unicodedata.category(letter) == "Ll" else 0.85


def wrapped(text: str, style: Style, most_px: float) -> list[str]:
    """Return text in lines no wider than ``most_px``; a word too long for a line is broken."""
    lines: list[str] = []
    for word in text.split():
        tried = f"{lines[-1]} {word}" if lines else word
        if lines and width_px(tried, style) <= most_px:
            lines[-1] = tried
            continue
        while len(word) > 1 and width_px(word, style) > most_px:
            fits = next((n for n in range(len(word) - 1, 1, -1) if width_px(word[:n], style) <= most_px), 1)
            lines.append(word[:fits])
            word = word[fits:]  # noqa: PLW2901
        lines.append(word)
    return lines


@dataclass(frozen=True)
class Lettered:
    """A line of text at its place, turned clockwise.

    Attributes:
        at: Middle of the text, or the middle of its left edge when ``from_left`` [px].
    """

    text: str
    style: Style
    at: Point
    angle_deg: float = 0.0
    from_left: bool = False

    @property
    def box(self) -> tuple[Point, ...]:
        """The four corners of the room it takes."""
        width = width_px(self.text, self.style)
        middle = (self.at[0] + width / 2, self.at[1]) if self.from_left else self.at
        return rectangle(middle, width, self.style.size_px * LINE_HEIGHT, self.angle_deg)

    def draw(self, **attributes: str | None) -> Element:
        """Return the text element."""
        x, y = self.at
        turned = abs(self.angle_deg) > 0.01
        return element(
            "text",
            self.text,
            class_=self.style.name,
            x=x,
            y=y + self.style.size_px * _BASELINE,
            transform=f"rotate({number(self.angle_deg)} {number(x)} {number(y)})" if turned else None,
            text_anchor="start" if self.from_left else "middle",
            font_size=self.style.size_px,
            **attributes,
        )
