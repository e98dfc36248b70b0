"""A drawing read back: its parts by class, and where they stand on the sheet."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from xml.etree import ElementTree

from packet.drawings.flat import rectangle
from packet.drawings.lettering import LINE_HEIGHT, STYLES, width_px

NAMESPACE = "{http://www.w3.org/2000/svg}"
Point = tuple[float, float]
Box = tuple[Point, ...]


@dataclass(frozen=True)
class Part:
    """An element, where its group was moved to, and the groups around it."""

    element: ElementTree.Element
    moved: Point
    inside: tuple[ElementTree.Element, ...]

    @property
    def tag(self) -> str:
        return self.element.tag.removeprefix(NAMESPACE)

    @property
    def classes(self) -> set[str]:
        return set(self.element.get("class", "").split())

    @property
    def text(self) -> str:
        return self.element.text or ""

    def get(self, name: str) -> str:
        """Return an attribute of the element or of the nearest group that has it."""
        for one in (self.element, *reversed(self.inside)):
            if (found := one.get(name)) is not None:
                return found
        raise KeyError(name)

    def number(self, name: str) -> float:
        return float(self.element.attrib[name])

    def at(self, x: float, y: float) -> Point:
        return (x + self.moved[0], y + self.moved[1])

    @property
    def points(self) -> list[Point]:
        """Corners of a polygon, ends of a line, or points of a path."""
        if self.tag == "line":
            return [
                self.at(self.number("x1"), self.number("y1")),
                self.at(self.number("x2"), self.number("y2")),
            ]
        numbers = [
            float(n)
            for n in re.findall(r"-?[\d.]+", self.element.get("points") or self.element.get("d") or "")
        ]
        return [self.at(x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]

    @property
    def box(self) -> Box:
        """The room a text takes, turned as it is."""
        size = self.number("font-size")
        (style,) = (STYLES[name] for name in self.classes)
        assert style.size_px == size
        width = width_px(self.text, style)
        x, y = self.number("x"), self.number("y") - 0.35 * size
        turned = re.match(r"rotate\(([-\d.]+) ", self.element.get("transform", ""))
        left = self.element.get("text-anchor") == "start"
        assert not (left and turned)
        centre = self.at(x + width / 2 if left else x, y)
        return rectangle(centre, width, size * LINE_HEIGHT, float(turned[1]) if turned else 0.0)


class Drawing:
    """All parts of a drawing in the order in which they are drawn."""

    def __init__(self, text: str) -> None:
        self.root = ElementTree.fromstring(text)
        self.parts = list(_walk(self.root, (0.0, 0.0), ()))
        self.width, self.height = (float(n) for n in self.root.attrib["viewBox"].split()[2:])

    def of(self, *names: str, tag: str | None = None) -> list[Part]:
        """Return parts that have all of these classes."""
        return [p for p in self.parts if set(names) <= p.classes and (tag is None or p.tag == tag)]

    @property
    def texts(self) -> list[Part]:
        return [part for part in self.parts if part.tag == "text"]

    def within(self, group: str) -> list[Part]:
        """Return parts inside groups of a class."""
        return [p for p in self.parts if any(group in one.get("class", "").split() for one in p.inside)]

    def labels(self) -> list[tuple[str, Box]]:
        """Return all text and all rings with the room they take; a ringed letter is its ring."""
        found = []
        for part in self.parts:
            if part.tag == "text" and "letter" not in part.classes:
                found.append((part.text, part.box))
            if "ring" in part.classes:
                r = part.number("r")
                found.append(("ring", rectangle(part.at(part.number("cx"), part.number("cy")), 2 * r, 2 * r)))
        return found


def _walk(
    element: ElementTree.Element, moved: Point, inside: tuple[ElementTree.Element, ...]
) -> Iterator[Part]:
    yield Part(element, moved, inside)
    if shift := re.match(r"translate\(([-\d.]+) ([-\d.]+)\)", element.get("transform", "")):
        moved = (moved[0] + float(shift[1]), moved[1] + float(shift[2]))
    for child in element:
        yield from _walk(child, moved, (*inside, element))
