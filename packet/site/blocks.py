"""HTML blocks of a page step aside while Markdown reads the rest.

Tables, figures and the like come finished from templates. Markdown would walk through every tag of them,
twice, to hand them back as they were; a page of tables then takes longer to read than to write. So each block
is replaced by a one-line stand-in and put back into the result, which is the same to the last byte.
"""

import html
import re
from dataclasses import dataclass

#: Elements that Markdown takes as a block of HTML when a line starts with them.
_BLOCKS = "article|aside|details|div|dl|figure|footer|header|nav|ol|section|table|ul"

_START = re.compile(rf"(?:\A|\n[ ]*\n)<({_BLOCKS})(?=[\s>])")
_NEXT = re.compile(rf"[ ]*\n<({_BLOCKS})(?=[\s>])")
_TAGS = {name: re.compile(rf"<(/?){name}(?=[\s>/])[^<>]*>") for name in _BLOCKS.split("|")}
_LINE_END = re.compile(r"[ ]*(?:\n|\Z)")
_BLANK_LINE = re.compile(r"(?<=\n) +\n")
_TAB_LENGTH = 4  # Markdown's own
_STAND_IN = re.compile(r'<div data-block="(\d+)"></div>')
_ANCHOR = re.compile(r"""\s(?:id|name)\s*=\s*(?:"([^"]*)"|'([^']*)')""")

#: Where these stand, what looks like a block may be code, or may hold Markdown.
_LEFT_ALONE = re.compile(r"^[ ]*(?:```|~~~)|<[^<>]+\smarkdown\s*=|data-block=", re.MULTILINE)


@dataclass(frozen=True)
class Parted:
    """A page's Markdown without its HTML blocks.

    Attributes:
        text: Markdown with a stand-in for each block.
        blocks: The blocks, by the number of their stand-in.
    """

    text: str
    blocks: tuple[str, ...]

    def whole(self, content: str) -> str:
        """Return rendered content with the blocks back in place."""
        return _STAND_IN.sub(lambda found: self.blocks[int(found[1])], content) if self.blocks else content

    def anchors(self) -> set[str]:
        """Return what inside the blocks can be linked to."""
        found = (match[1] or match[2] for block in self.blocks for match in _ANCHOR.finditer(block))
        return {html.unescape(anchor) for anchor in found if anchor}


def parted(body: str) -> Parted:
    """Return a page's Markdown and its HTML blocks apart; a page with code fences is left as it is.

    A block starts a line, after an empty line or another block, and ends a line with its own closing tag;
    anything else stays for Markdown to read.
    """
    body = _evened(body)
    if _LEFT_ALONE.search(body):
        return Parted(body, ())
    pieces: list[str] = []
    blocks: list[str] = []
    at = 0
    found = _START.search(body)
    while found:
        start = found.start(1) - 1
        end = _end(body, start, found[1])
        pieces.append(body[at:start])
        if end is None:
            at, found = start, _START.search(body, start + 1)
            continue
        pieces.append(f'<div data-block="{len(blocks)}"></div>')
        blocks.append(body[start:end])
        at = end
        found = _NEXT.match(body, at) or _START.search(body, at)
    return Parted("".join([*pieces, body[at:]]), tuple(blocks))


def _evened(body: str) -> str:
    """Return a body with line ends, tabs and blank lines as Markdown makes them before it reads anything."""
    text = body.replace("\r\n", "\n").replace("\r", "\n").expandtabs(_TAB_LENGTH)
    return _BLANK_LINE.sub("\n", text)


def _end(body: str, start: int, name: str) -> int | None:
    """Return where the element that starts at ``start`` ends; None when no line ends with its closing tag."""
    depth = 0
    for tag in _TAGS[name].finditer(body, start):
        depth += -1 if tag[1] else 1
        if depth == 0:
            return tag.end() if _LINE_END.match(body, tag.end()) else None
    return None
