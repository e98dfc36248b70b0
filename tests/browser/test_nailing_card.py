"""The nailing card as a page: each language is one sheet when it is printed, and read aloud in its own tongue."""

import io
import shutil
from pathlib import Path
from typing import TYPE_CHECKING

from pypdf import PdfReader

from packet.build import build
from packet.workspace import Workspace
from tests.browser.conftest import Copies, Open
from tests.support.browser import watched
from tests.support.office import ROOT

if TYPE_CHECKING:
    from playwright.sync_api import Browser


def test_each_language_prints_on_one_letter_sheet(open_page: Open) -> None:
    page = open_page("outside", "nailing-card").page
    sheets = PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True))).pages
    texts = [" ".join(sheet.extract_text().split()) for sheet in sheets]
    assert len(texts) == 2
    assert [tuple(map(float, sheet.mediabox)) for sheet in sheets] == [(0, 0, 612, 792)] * 2
    assert "Deck panels" in texts[0]
    assert "Tarjeta de clavado" in texts[1]
    assert "Tableros" in texts[1]


def test_the_card_of_a_whole_roof_prints_on_one_sheet_a_language_too(
    chromium: "Browser", tmp_path: Path
) -> None:
    """A re-roof has the most layers and the most to photograph, and Spanish takes the most room for them."""
    shutil.copytree(ROOT / "jobs" / "26-052", tmp_path / "jobs" / "26-052")
    (tmp_path / "shared").mkdir()
    shutil.copy(ROOT / "shared" / "office.yaml", tmp_path / "shared")
    made = build(Workspace(tmp_path), tmp_path / "jobs" / "26-052")
    with watched(chromium) as seen:
        seen.page.goto((made.folder / "outside" / "nailing-card.html").as_uri())
        sheets = PdfReader(io.BytesIO(seen.page.pdf(prefer_css_page_size=True))).pages
    texts = [" ".join(sheet.extract_text().split()) for sheet in sheets]
    assert len(texts) == 2
    assert "Local safety rules come before this card." in texts[0]
    assert "Las reglas de seguridad locales van antes que esta tarjeta." in texts[1]


def test_each_language_is_marked_as_what_it_is(open_page: Open) -> None:
    page = open_page("outside", "nailing-card").page
    marked = "[...document.querySelectorAll('.nailing-card')].map(it => [it.lang, it.querySelector('dt').textContent])"
    assert page.evaluate(marked) == [["en", "House"], ["es", "Casa"]]


def test_the_search_finds_the_english_card_once(copies: Copies) -> None:
    index = (copies.root / "outside" / "search" / "search_index.js").read_text(encoding="utf-8")
    assert "A penny size names no nail" in index
    assert "Un número de penny" not in index
