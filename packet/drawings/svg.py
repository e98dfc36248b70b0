"""A small SVG writer: same elements in, same bytes out.

One number formatter, attributes in one order, everything escaped, one element a line.
"""

import math
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

Point = tuple[float, float]
Value = str | float | int

_DECIMALS = 2
_INDENT = " "

#: The one order in which attributes are written; an attribute not named here is refused.
ATTRIBUTES = (
    "xmlns",
    "id",
    "class",
    "role",
    "aria-labelledby",
    "data-plane",
    "data-edge",
    "data-area",
    "data-opening",
    "data-piece",
    "data-cut-out",
    "data-at",
    "data-mark",
    "data-kind",
    "viewBox",
    "width",
    "height",
    "transform",
    "x",
    "y",
    "x1",
    "y1",
    "x2",
    "y2",
    "cx",
    "cy",
    "r",
    "points",
    "d",
    "text-anchor",
    "font-size",
)
_PLACE = {name: number for number, name in enumerate(ATTRIBUTES)}

#: What XML 1.0 cannot hold at all, escaped or not.
_ILLEGAL = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_ESCAPES = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;"})
_PLAIN_ID = re.compile(r"[A-Za-z0-9-]")


@dataclass(frozen=True)
class Element:
    """One SVG element; ``content`` is text or further elements, not both."""

    tag: str
    attributes: Mapping[str, Value] = field(default_factory=dict)
    content: str | Sequence["Element"] = ()


def number(value: float) -> str:
    """Return a number as every coordinate is written: two decimals at most, no trailing zeros, no minus zero.

    Raises:
        ValueError: The value is not finite.

    Example:
        >>> number(12.0), number(-0.001), number(1 / 3)
        ('12', '0', '0.33')
    """
    if not math.isfinite(value):
        message = f"a coordinate must be finite, not {value}"
        raise ValueError(message)
    text = f"{value:.{_DECIMALS}f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def escape(text: str) -> str:
    """Return text that is safe inside an element and inside a quoted attribute, on one line."""
    legal = _ILLEGAL.sub("\N{REPLACEMENT CHARACTER}", text)
    return " ".join(legal.split()).translate(_ESCAPES)


def ident(*parts: str) -> str:
    """Return an id made from content; different parts never give the same id.

    Example:
        >>> ident("plan", "MS"), ident("plan", "a b")
        ('plan-MS', 'plan-a_20_b')
    """
    return "-".join("".join(c if _PLAIN_ID.match(c) else f"_{ord(c):x}_" for c in part) for part in parts)


def element(tag: str, content: str | Iterable[Element] = (), **attributes: Value | None) -> Element:
    """Return an element; ``class_`` is class, an underscore is a hyphen, None is left out.

    Raises:
        ValueError: An attribute has no place in ``ATTRIBUTES``.
    """
    named = {
        name.rstrip("_").replace("_", "-"): value for name, value in attributes.items() if value is not None
    }
    for name in named:
        if name not in _PLACE:
            message = f"{name} has no place in the order of attributes"
            raise ValueError(message)
    return Element(tag, named, content if isinstance(content, str) else tuple(content))


def line(start: Point, end: Point, **attributes: Any) -> Element:
    """Return a straight line."""
    return element("line", x1=start[0], y1=start[1], x2=end[0], y2=end[1], **attributes)


def polygon(points: Iterable[Point], **attributes: Any) -> Element:
    """Return a closed outline."""
    return element("polygon", points=" ".join(f"{number(x)},{number(y)}" for x, y in points), **attributes)


def path(runs: Iterable[tuple[Sequence[Point], bool]], **attributes: Any) -> Element:
    """Return runs of points in one path; the flag closes a run."""
    steps = []
    for points, closed in runs:
        joined = "L".join(f"{number(x)} {number(y)}" for x, y in points)
        steps.append(f"M{joined}{'Z' if closed else ''}")
    return element("path", d="".join(steps), **attributes)


def render(root: Element) -> str:
    """Return an element and all below it as text, one element a line."""
    return "\n".join(_lines(root, 0)) + "\n"


def _lines(item: Element, depth: int) -> Iterable[str]:
    space = _INDENT * depth
    pairs = sorted(item.attributes.items(), key=lambda pair: _PLACE[pair[0]])
    written = "".join(
        f' {name}="{escape(value) if isinstance(value, str) else number(value)}"' for name, value in pairs
    )
    if isinstance(item.content, str):
        yield f"{space}<{item.tag}{written}>{escape(item.content)}</{item.tag}>"
    elif not item.content:
        yield f"{space}<{item.tag}{written}/>"
    else:
        yield f"{space}<{item.tag}{written}>"
        for child in item.content:
            yield from _lines(child, depth + 1)
        yield f"{space}</{item.tag}>"
