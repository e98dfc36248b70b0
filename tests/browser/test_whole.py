"""Each page opened from disk: nothing leaves the folder, nothing is missing, nothing goes wrong."""

import re
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import unquote, urlsplit
from urllib.request import url2pathname

import pytest

from packet.readers import READERS
from tests.browser.conftest import (
    OFFICE_READS_MORE,
    PAGES,
    PAGES_OF,
    Anatomy,
    Copies,
    every_copy,
    every_sheet,
    strays,
)
from tests.support.browser import watched

if TYPE_CHECKING:
    from playwright.sync_api import Browser

#: The typefaces of shared/look.md, as the style sheets name them.
FACES = {("Plex Sans", "400"), ("Plex Sans", "600"), ("Plex Condensed", "500"), ("Plex Mono", "400")}


@every_copy
def test_a_copy_holds_the_listed_pages_and_no_other(copies: Copies, reader: str) -> None:
    assert sorted(path.stem for path in (copies.root / reader).rglob("*.html")) == sorted(PAGES_OF[reader])


@pytest.mark.parametrize("name", PAGES)
def test_the_office_reads_more_on_the_named_pages_only(copies: Copies, name: str) -> None:
    outside, office = (without_place(copies.file(reader, name)) for reader in READERS)
    assert (outside == office) is (name not in OFFICE_READS_MORE)


def without_place(file: Path) -> str:
    """Return a page without whose copy it is, and without its place among the pages of that copy."""
    text = file.read_text(encoding="utf-8")
    for told in (
        r'<p class="label">[^<]*</p>',
        r'<nav aria-label="Navigation">.*?</nav>',
        r"<dd>\d+ of \d+</dd>",
        r'<link rel="(?:prev|next)" [^>]*>',
    ):
        assert re.search(told, text, re.DOTALL)
        text = re.sub(told, "", text, flags=re.DOTALL)
    return text


def test_the_order_list_is_the_offices_alone(copies: Copies) -> None:
    held = {reader: {path.name for path in (copies.root / reader).rglob("order-list*")} for reader in READERS}
    assert held == {"outside": set(), "office": {"order-list.html", "order-list.csv"}}
    named = [
        path.name
        for path in (copies.root / "outside").rglob("*")
        if path.suffix in (".html", ".js", ".json") and b"order-list" in path.read_bytes()
    ]
    assert named == []


@every_sheet
def test_no_request_leaves_the_folder(anatomy: Anatomy, copies: Copies, reader: str, name: str) -> None:
    asked = anatomy(reader, name)["asked"]
    assert len(asked) > len(FACES)
    assert strays(asked, copies.root / reader) == []


@every_sheet
def test_nothing_goes_wrong(anatomy: Anatomy, reader: str, name: str) -> None:
    assert anatomy(reader, name)["errors"] == []


@every_sheet
def test_no_link_is_broken(anatomy: Anatomy, copies: Copies, reader: str, name: str) -> None:
    addresses = set(anatomy(reader, name)["addresses"])
    assert len(addresses) > len(PAGES)
    folder = copies.root / reader
    assert [fault for url in sorted(addresses) if (fault := fault_of(url, folder, reader, anatomy))] == []


def fault_of(url: str, folder: Path, reader: str, anatomy: Anatomy) -> str:
    """Return what is wrong with an address, or an empty text."""
    parts = urlsplit(url)
    if parts.scheme in ("tel", "mailto", "data"):
        return ""
    file = Path(url2pathname(parts.path))
    if parts.scheme != "file" or folder not in file.parents:
        return f"{url}: outside the copy"
    if not file.is_file():
        return f"{url}: no such file"
    if parts.fragment and unquote(parts.fragment) not in anatomy(reader, file.stem)["ids"]:
        return f"{url}: no such place"
    return ""


@every_sheet
def test_every_image_arrives(anatomy: Anatomy, reader: str, name: str) -> None:
    images = anatomy(reader, name)["images"]
    assert [source for source, width_px in images if not width_px] == []
    if name in ("index", "photos"):
        assert images


@every_sheet
def test_anchors_stand_once(anatomy: Anatomy, reader: str, name: str) -> None:
    counted = Counter(anatomy(reader, name)["ids"])
    assert [anchor for anchor, times in counted.items() if times > 1] == []


@every_sheet
def test_every_typeface_arrives_and_is_used(anatomy: Anatomy, reader: str, name: str) -> None:
    found = anatomy(reader, name)
    assert {(family, weight) for family, weight, status in found["fonts"] if status == "loaded"} == FACES
    assert found["text"].startswith('"Plex Sans"')


@every_copy
def test_titles_tell_the_pages_apart(anatomy: Anatomy, reader: str) -> None:
    names = PAGES_OF[reader]
    assert len({anatomy(reader, name)["title"] for name in names}) == len(names)


@every_copy
def test_style_sheets_refer_only_to_files_beside_them(copies: Copies, reader: str) -> None:
    folder = copies.root / reader
    broken, found = [], 0
    for sheet in sorted(folder.rglob("*.css")):
        text = re.sub(r"/\*.*?\*/", "", sheet.read_text(encoding="utf-8"), flags=re.DOTALL)
        for address in re.findall(r"""(?:url\(|@import\s+)\s*["']?([^"')\s]+)""", text):
            if address.startswith("data:"):
                continue
            found += 1
            file = (sheet.parent / unquote(urlsplit(address).path)).resolve()
            if urlsplit(address).scheme or not file.is_file() or folder.resolve() not in file.parents:
                broken.append(f"{sheet.name}: {address}")
    assert found >= len(FACES)
    assert broken == []


@every_copy
@pytest.mark.parametrize("drawing", ["roof-plan", "roof-plan-phone"])
def test_a_drawing_opens_by_itself(chromium: "Browser", copies: Copies, reader: str, drawing: str) -> None:
    file = copies.root / reader / "drawings" / f"{drawing}.svg"
    with watched(chromium) as seen:
        seen.page.goto(file.as_uri())
        assert seen.page.evaluate("document.documentElement.tagName") == "svg"
        assert seen.page.evaluate("document.querySelectorAll('text').length") > 0
        assert seen.errors == []
        assert seen.asked == [file.as_uri()]
