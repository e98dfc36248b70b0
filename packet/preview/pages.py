"""What a served page gets on its way out; the files themselves stay as they were built.

Script and styles come from the server as files of their own, because the pages allow no others.
"""

import re
from functools import cache, lru_cache

from markupsafe import escape

from packet.preview.state import Preview
from packet.site.templating import make_environment, render
from packet.text import Words, load_words
from packet.workspace import packaged

#: Addresses below this are the preview's own; published names never start with a dot.
OWN = "/.preview/"

#: Files of ``templates/preview/`` that are served as they are.
OWN_FILES = ("preview.js", "preview.css")

_HEAD_ENDS = re.compile(rb"</head\s*>", re.IGNORECASE)
_BODY_BEGINS = re.compile(rb"<body\b[^>]*>", re.IGNORECASE)


def with_preview(page: bytes, state: str, problems: str, *, waiting: bool = False) -> bytes:
    """Return a built page that reloads by itself, with the problems of the latest build above it.

    Args:
        page: The page as built.
        state: The state it shows.
        problems: Text of the problems; empty when there are none.
        waiting: The page stands in for one that was never built.
    """
    head = _head(state)
    bar = _rendered("preview/bar.html.j2", problems, waiting) if problems else b""
    page = _HEAD_ENDS.sub(lambda tag: head + tag[0], page, count=1)
    return _BODY_BEGINS.sub(lambda tag: tag[0] + bar, page, count=1)


def waiting_page(preview: Preview) -> bytes:
    """Return the page of a job that has no output yet."""
    return with_preview(_rendered("preview/waiting.html.j2"), preview.state, preview.problems, waiting=True)


@cache
def own_file(name: str) -> bytes:
    """Return one of the preview's own files."""
    return (packaged("templates") / "preview" / name).read_bytes()


def _head(state: str) -> bytes:
    style = f'<link rel="stylesheet" href="{OWN}preview.css">'
    script = f'<script src="{OWN}preview.js" data-state="{escape(state)}" defer></script>'
    return f"{style}{script}".encode()


@cache
def words_for_pages() -> Words:
    """Return the packaged words, read once: the office's own may be what is broken.

    Raises:
        Refused: They can't be read, in a checkout.
    """
    return load_words([packaged("shared")])


@lru_cache(maxsize=8)
def _rendered(name: str, problems: str = "", waiting: bool = False) -> bytes:
    """Return a packaged template filled."""
    environment = make_environment([packaged("templates")], words_for_pages())
    return render(environment, name, {"problems": problems, "waiting": waiting}).encode()
