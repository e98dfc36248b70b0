"""Every address in a built site, checked: nothing points at nothing, and nothing is asked of a network.

MkDocs checks Markdown links only; raw tags, anchors in raw HTML, style sheets and drawings are checked here,
in the built files, as a browser that opened them from a folder would read them.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path, PurePosixPath
from posixpath import normpath
from urllib.parse import unquote, urlsplit

#: Attributes that hold an address: those the reader may follow, and those the browser follows by itself.
_LINKS = frozenset({("a", "href"), ("a", "xlink:href"), ("area", "href")})
_FETCHED = frozenset({"href", "xlink:href", "src", "poster", "data", "action", "formaction", "background"})
_SETS = frozenset({"srcset", "imagesrcset"})

#: Schemes a reader may follow by choice, and the one a browser fetches from the page itself.
_FOLLOWED_SCHEMES = frozenset({"http", "https", "mailto", "tel"})
_INLINE_SCHEME = "data"

_CSS_ADDRESS = re.compile(
    r"""url\(\s*(?:"([^"]*)"|'([^']*)'|([^)"'\s]*))\s*\)|@import\s+(?:"([^"]*)"|'([^']*)')"""
)
_CSS_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_REFRESH = re.compile(r"url\s*=\s*['\"]?([^'\"]+)", re.IGNORECASE)

_TOP = ("top",)  # a browser takes #top for the head of a page that has no such anchor


@dataclass(frozen=True)
class _Address:
    """One address as written, and where it stands."""

    written: str
    line: int
    tag: str
    fetched: bool


@dataclass
class _Read:
    """What one file points at, and what in it can be pointed at."""

    addresses: list[_Address] = field(default_factory=list)
    anchors: set[str] = field(default_factory=set)


class _Reader(HTMLParser):
    """Collects the addresses and anchors of a page or a drawing."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.read = _Read()
        self._in_style = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Take the addresses of one tag."""
        values = {name: value or "" for name, value in attrs}
        self._in_style = tag == "style"
        named = ("id", "name") if tag == "a" else ("id",)
        self.read.anchors.update(values[name] for name in named if values.get(name))
        for name, value in values.items():
            if name in _FETCHED:
                self._add(value, f"{tag} {name}", fetched=(tag, name) not in _LINKS)
            elif name in _SETS:
                for part in value.split(","):
                    self._add(part.split()[0] if part.split() else "", f"{tag} {name}")
            elif "url(" in value:
                self._add_style(value, f"{tag} {name}")
        if tag == "meta" and values.get("http-equiv", "").lower() == "refresh":
            found = _REFRESH.search(values.get("content", ""))
            self._add(found[1] if found else "", "meta refresh")

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Take the addresses of a tag without content."""
        self.handle_starttag(tag, attrs)
        self._in_style = False

    def handle_endtag(self, tag: str) -> None:
        """Leave a style element."""
        self._in_style = False

    def handle_data(self, data: str) -> None:
        """Take the addresses of a style element."""
        if self._in_style:
            self._add_style(data, "style")

    def _add(self, written: str, tag: str, *, fetched: bool = True) -> None:
        self.read.addresses.append(_Address(written.strip(), self.getpos()[0], tag, fetched))

    def _add_style(self, text: str, tag: str) -> None:
        for _, written in _style_addresses(text):
            self._add(written, tag)


def broken_links(site_dir: Path) -> list[str]:
    """Return the faults of the addresses in a built site; none when it is whole.

    One line each: ``page:line: address (tag): fault``. A fault is an address without its file, an anchor
    without its element, an address that needs a server (from the root, a folder), leaves the site or runs a
    script, and anything a browser would fetch from a network. A link to a web page, a mail or a telephone is
    none: the reader chooses to follow it.

    Args:
        site_dir: Folder of the built site.
    """
    names = {path.relative_to(site_dir).as_posix() for path in site_dir.rglob("*") if path.is_file()}
    read = {name: _read(site_dir / name) for name in sorted(names) if _kind(name)}
    return [
        f"{name}:{address.line}: {address.written!r} ({address.tag}): {fault}"
        for name, found in read.items()
        for address in found.addresses
        if (fault := _fault(address, name, names, read))
    ]


def _kind(name: str) -> str:
    """Return how a file is read: ``page``, ``style``, or nothing."""
    return {".html": "page", ".htm": "page", ".svg": "page", ".css": "style"}.get(
        PurePosixPath(name).suffix, ""
    )


def _read(path: Path) -> _Read:
    """Return what a file points at."""
    text = path.read_text(encoding="utf-8")
    if _kind(path.name) == "style":
        found = [_Address(written, line, "style", True) for line, written in _style_addresses(text)]
        return _Read(found)
    reader = _Reader()
    reader.feed(text)
    reader.close()
    return reader.read


def _style_addresses(text: str) -> Iterator[tuple[int, str]]:
    """Yield the addresses of a style sheet with their lines, comments left out."""
    text = _CSS_COMMENT.sub(lambda comment: "\n" * comment[0].count("\n"), text)
    for found in _CSS_ADDRESS.finditer(text):
        yield text.count("\n", 0, found.start()) + 1, next((part for part in found.groups() if part), "")


def _fault(address: _Address, name: str, names: set[str], read: dict[str, _Read]) -> str:
    """Return what is wrong with an address, or an empty text."""
    if not address.written:
        return "empty"
    try:
        parts = urlsplit(address.written)
    except ValueError:
        return "not an address"
    if parts.scheme or parts.netloc:
        return _scheme_fault(address, parts.scheme)
    if not parts.path and _kind(name) == "style":
        return ""  # an anchor in the page that uses the sheet
    if parts.path.startswith("/"):
        return "needs a server"
    target = _target(name, parts.path)
    if target.startswith("../"):
        return "leaves the site"
    if target not in names:
        return "no such file"
    anchor = unquote(parts.fragment)
    if anchor and target in read and anchor not in read[target].anchors and anchor not in _TOP:
        return "no such anchor"
    return ""


def _target(name: str, path: str) -> str:
    """Return the file of the site that a relative path means, seen from one of its files."""
    return normpath(str(PurePosixPath(name).parent / unquote(path))) if path else name


def _scheme_fault(address: _Address, scheme: str) -> str:
    """Return what is wrong with an address that leaves the site by its scheme or host."""
    if address.fetched:
        return "" if scheme == _INLINE_SCHEME else "asks a network"
    return "" if scheme in _FOLLOWED_SCHEMES else "no address to follow"
