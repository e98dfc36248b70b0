"""The note beside the folder in a zip: plain text, because it must open inside any zip viewer.

A web page inside a zip opens without its styles and pictures and looks like a broken packet; a text file
opens as what it is on every computer and phone, and no mail filter holds it back.
"""

import html
import textwrap
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from packet.site.filters import make_filters
from packet.site.templating import make_environment, render
from packet.text import Words

#: Name of the note in the zip; its template's name but for the ending.
NOTE_NAME = "UNZIP-FIRST.txt"

#: Old text viewers don't wrap lines.
_MOST_COLUMNS = 68


def note(copy: Mapping[str, Any], folder: str, template_folders: Sequence[Path], words: Words) -> bytes:
    """Return the note of one copy's zip.

    Args:
        copy: The redacted copy, as in ``packet.json``.
        folder: Name of the folder in the zip.
        template_folders: The office's templates first, then the packaged ones.
        words: Words of the packet's language.

    Raises:
        Refused: The template is bad, with its file and line.
    """
    environment = make_environment(template_folders, words, filters=make_filters(words))
    made = render(environment, f"handover/{NOTE_NAME}.j2", {"copy": copy, "folder": folder})
    # The templates write record text as entities, which a text file has no use for.
    return _plain(html.unescape(made))


def _plain(text: str) -> bytes:
    """Return text with the line ends every Windows knows, and a mark of its encoding where needed."""
    lines = [part for line in text.strip().splitlines() for part in _wrapped(line)]
    ended = "".join(f"{line}\r\n" for line in lines)
    return ended.encode() if ended.isascii() else ended.encode("utf-8-sig")


def _wrapped(line: str) -> list[str]:
    """Return a line in lines that fit a narrow window."""
    return textwrap.wrap(line, _MOST_COLUMNS, break_long_words=False, break_on_hyphens=False) or [""]
