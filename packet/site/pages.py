"""One reader's copy → the pages of a site, through the templates."""

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

from packet.closeout.orderlist import more_text, more_to_order, order_csv
from packet.closeout.things import thing_of, things
from packet.fields import Line, Strict
from packet.readers import EVERYONE, Reader
from packet.reading import read_model
from packet.site.engine import Page
from packet.site.filters import make_filters
from packet.site.templating import make_environment, render
from packet.text import Words

#: The list of pages; an office's own list stands in for the packaged one.
LIST_NAME = "pages/pages.yaml"

#: Files that stand beside a page, made from the same copy: name of the page, name of the file, what makes it.
FILES_BESIDE: Mapping[str, tuple[str, Callable[[Mapping[str, Any], Words], bytes]]] = {
    "order-list": ("order-list.csv", order_csv),
}


class ListedPage(Strict):
    """A page: its template's name, the key of its title, and whose copies hold it."""

    name: Line
    title: Line
    readers: tuple[Reader, ...] = EVERYONE


class PageList(Strict):
    """Pages in order."""

    pages: tuple[ListedPage, ...]


def listed_pages(template_folders: Sequence[Path], reader: Reader | None = None) -> tuple[ListedPage, ...]:
    """Return the pages of a packet in order.

    Args:
        template_folders: The office's templates first, then the packaged ones.
        reader: Whose copy; the pages of every copy when None.

    Raises:
        Refused: The list can't be read.
    """
    path = next(found for folder in template_folders if (found := folder / LIST_NAME).is_file())
    pages = read_model(path, PageList).value.pages
    return tuple(page for page in pages if reader is None or reader in page.readers)


def make_pages(copy: Mapping[str, Any], template_folders: Sequence[Path], words: Words) -> tuple[Page, ...]:
    """Return the pages of one copy as Markdown.

    Args:
        copy: The redacted copy, as in ``packet.json``.
        template_folders: The office's templates first, then the packaged ones.
        words: Words of the packet's language.

    Raises:
        Refused: A template is bad, with its file and line.
    """
    environment = make_environment(template_folders, words, filters=page_filters(copy, words))
    listed = listed_pages(template_folders, copy["packet"]["reader"])
    made = []
    for number, page in enumerate(listed, 1):
        sheet = {"name": page.name, "number": number, "count": len(listed)}
        body = render(environment, f"pages/{page.name}.md.j2", {"copy": copy, "sheet": sheet})
        made.append(Page(page.name, words[page.title], body))
    return tuple(made)


def page_filters(copy: Mapping[str, Any], words: Words) -> dict[str, Callable[..., str]]:
    """Return the filters of the pages: those of words, and two that read the copy.

    ``thing`` names what a figure is of, by its id; ``more_to_order`` says what an order lacks, by its line.

    Args:
        copy: The redacted copy, as in ``packet.json``.
        words: Words of the packet's language.
    """
    known = things(copy, words)

    def thing(ref: str) -> str:
        return thing_of(ref, known)

    def more(line: Mapping[str, Any]) -> str:
        return more_text(more_to_order(copy, line), words)

    return {**make_filters(words), "thing": thing, "more_to_order": more}


def files_beside(copy: Mapping[str, Any], template_folders: Sequence[Path], words: Words) -> dict[str, bytes]:
    """Return the files that stand beside the pages of one copy, by published name.

    Args:
        copy: The redacted copy, as in ``packet.json``.
        template_folders: The office's templates first, then the packaged ones.
        words: Words of the packet's language.

    Raises:
        Refused: The list of pages can't be read.
    """
    names = {page.name for page in listed_pages(template_folders, copy["packet"]["reader"])}
    return {file: make(copy, words) for name, (file, make) in FILES_BESIDE.items() if name in names}
