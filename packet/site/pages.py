"""One reader's copy → the pages of a site, through the templates."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from packet.fields import Line, Strict
from packet.reading import read_model
from packet.site.engine import Page
from packet.site.filters import make_filters
from packet.site.templating import make_environment, render
from packet.text import Words

#: The list of pages; an office's own list stands in for the packaged one.
LIST_NAME = "pages/pages.yaml"


class ListedPage(Strict):
    """A page: its template's name, and the key of its title."""

    name: Line
    title: Line


class PageList(Strict):
    """Pages in order."""

    pages: tuple[ListedPage, ...]


def listed_pages(template_folders: Sequence[Path]) -> tuple[ListedPage, ...]:
    """Return the pages of a packet in order.

    Raises:
        Refused: The list can't be read.
    """
    path = next(found for folder in template_folders if (found := folder / LIST_NAME).is_file())
    return read_model(path, PageList).value.pages


def make_pages(copy: Mapping[str, Any], template_folders: Sequence[Path], words: Words) -> tuple[Page, ...]:
    """Return the pages of one copy as Markdown.

    Args:
        copy: The redacted copy, as in ``packet.json``.
        template_folders: The office's templates first, then the packaged ones.
        words: Words of the packet's language.

    Raises:
        Refused: A template is bad, with its file and line.
    """
    environment = make_environment(template_folders, words, filters=make_filters(words))
    listed = listed_pages(template_folders)
    made = []
    for number, page in enumerate(listed, 1):
        sheet = {"name": page.name, "number": number, "count": len(listed)}
        body = render(environment, f"pages/{page.name}.md.j2", {"copy": copy, "sheet": sheet})
        made.append(Page(page.name, words[page.title], body))
    return tuple(made)
