"""What the work costs at the least: bare Markdown and Jinja for pages; read and half decode for photos."""

import hashlib
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import jinja2
import markdown
from PIL import Image

from packet.site.blocks import parted
from packet.site.engine import MARKDOWN_EXTENSIONS
from packet.site.pages import listed_pages, page_filters
from packet.site.templating import make_environment
from packet.text import Words

THREADS = 2

#: A page with a title, a navigation and a content, as a site of one's own would have it.
PAGE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>{{ title }}</title>
<link rel="stylesheet" href="all.css"></head>
<body><nav><ul>
{% for name, title in pages %}<li><a href="{{ name }}.html">{{ title }}</a></li>
{% endfor %}</ul></nav>
<main>{{ body }}</main></body></html>
"""


def pages_floor(
    copy: Mapping[str, Any], template_folders: Sequence[Path], words: Words, *, apart: bool
) -> Callable[[Path], None]:
    """Return a function that writes the pages of one copy into a folder with as little as possible.

    Everything that can be made once is made here: environment, templates, Markdown and the page around it.

    Args:
        copy: The redacted copy.
        template_folders: The folders ``make_pages`` is given.
        words: Words of the packet's language.
        apart: HTML blocks pass Markdown by, as in the engine; else Markdown reads all of a page.
    """
    environment = make_environment(template_folders, words, filters=page_filters(copy, words))
    listed = listed_pages(template_folders, copy["packet"]["reader"])
    templates = [environment.get_template(f"pages/{page.name}.md.j2") for page in listed]
    titles = [(page.name, words[page.title]) for page in listed]
    reader = markdown.Markdown(extensions=list(MARKDOWN_EXTENSIONS))
    around = jinja2.Environment(autoescape=False).from_string(PAGE)

    def write(folder: Path) -> None:
        folder.mkdir(parents=True)
        for number, ((name, title), template) in enumerate(zip(titles, templates, strict=True), 1):
            sheet = {"name": name, "number": number, "count": len(listed)}
            body = template.render(copy=copy, sheet=sheet)
            reader.reset()
            if apart:
                pieces = parted(body)
                body = pieces.whole(reader.convert(pieces.text))
            else:
                body = reader.convert(body)
            text = around.render(title=title, body=body, pages=titles)
            (folder / f"{name}.html").write_text(text, encoding="utf-8")

    return write


def photos_floor(originals: Sequence[Path]) -> None:
    """Read, digest and decode photos at half their scale, on two threads."""
    with ThreadPoolExecutor(THREADS) as pool:
        list(pool.map(_half_decoded, originals))


def _half_decoded(path: Path) -> tuple[str, tuple[int, int]]:
    digest = hashlib.sha256(path.read_bytes()).hexdigest()
    with Image.open(path) as image:
        image.draft("RGB", (image.width // 2, image.height // 2))
        image.load()
        return digest, image.size
