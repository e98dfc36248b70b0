"""Built files as a browser, a search or a curious reader takes them."""

import html
import json
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from typing import Any
from urllib.parse import unquote

Event = tuple[str, str, tuple[tuple[str, str], ...]]

#: Elements and attributes that run something.
RUNS = frozenset({"script", "iframe", "object", "embed", "base", "frame", "applet"})
ADDRESSES = frozenset({"href", "src", "srcset", "action", "formaction", "poster", "data", "xlink:href"})


def _called(address: str) -> str:
    """Return an address as it stands; of one to be dialed only that nothing but digits was let in."""
    return "tel:" if re.fullmatch(r"tel:\+?[0-9]*", address) else address


@dataclass
class _Reader(HTMLParser):
    events: list[Event] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.events.append(("start", tag, tuple((name, _called(value or "")) for name, value in attrs)))

    def handle_endtag(self, tag: str) -> None:
        self.events.append(("end", tag, ()))

    def handle_data(self, data: str) -> None:
        if self.events and self.events[-1][0] == "text":
            data = self.events.pop()[1] + data
        self.events.append(("text", data, ()))

    def handle_comment(self, data: str) -> None:
        self.events.append(("comment", data, ()))

    def handle_decl(self, decl: str) -> None:
        self.events.append(("declaration", decl, ()))

    def handle_pi(self, data: str) -> None:
        self.events.append(("instruction", data, ()))


def events(markup: str) -> list[Event]:
    """Return what an HTML parser meets, entities resolved."""
    reader = _Reader()
    reader.feed(markup)
    reader.close()
    return reader.events


def page_events(path: Path) -> list[Event]:
    return events(path.read_text(encoding="utf-8"))


def strings(found: list[Event]) -> Iterator[str]:
    """Yield every text and attribute value."""
    for kind, text, attributes in found:
        if kind == "text":
            yield text
        yield from (value for _, value in attributes)


def attributes(found: list[Event]) -> Iterator[tuple[str, str, str]]:
    """Yield tag, name and value of every attribute."""
    for kind, tag, pairs in found:
        if kind == "start":
            yield from ((tag, name, value) for name, value in pairs)


def text_content(found: list[Event]) -> str:
    return "".join(text for kind, text, _ in found if kind == "text")


def search_index(copy: Path) -> list[dict[str, Any]]:
    """Return the entries a search from disk reads."""
    text = (copy / "search" / "search_index.js").read_text(encoding="utf-8")
    found: list[dict[str, Any]] = json.loads(text[text.index("{") : text.rindex("}") + 1])["docs"]
    return found


def all_strings(value: Any) -> Iterator[str]:
    """Yield keys and values of plain data as text."""
    if isinstance(value, dict):
        for key, item in value.items():
            yield key
            yield from all_strings(item)
    elif isinstance(value, list):
        for item in value:
            yield from all_strings(item)
    else:
        yield str(value)


def packed(text: str) -> str:
    """Return letters and digits alone, in small letters."""
    return re.sub(r"[\W_]+", "", text).casefold()


def searchable(path: Path) -> str:
    """Return all a reader could find in a file, packed: as it stands, decoded, and as other encodings."""
    data = path.read_bytes()
    views = [data.decode("utf-8", errors="replace"), data.decode("latin-1")]
    views += [
        data[start:].decode(encoding, errors="ignore")
        for start in (0, 1)
        for encoding in ("utf-16-le", "utf-16-be")
    ]
    views += [unquote(views[0]), html.unescape(views[0]), html.unescape(html.unescape(views[0]))]
    if path.suffix in (".json", ".js"):
        views.append(re.sub(r"\\u([0-9a-fA-F]{4})", lambda found: chr(int(found[1], 16)), views[0]))
    if path.suffix in (".html", ".svg"):
        views.append(text_content(events(views[0])))
    return "\n".join(packed(view) for view in views)


def tree(folder: Path) -> dict[str, bytes]:
    """Return every file below a folder by its path."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }
