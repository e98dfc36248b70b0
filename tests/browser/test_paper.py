"""A page printed by the browser: Letter sheets, each signed by the title block and numbered, workings included."""

import io
import re
from collections.abc import Callable
from functools import cache
from typing import TYPE_CHECKING

import pytest
from pypdf import PageObject, PdfReader

from tests.browser.conftest import PAGES, Anatomy, Copies, every_sheet
from tests.support.browser import watched

if TYPE_CHECKING:
    from playwright.sync_api import Browser

#: A Letter sheet, and its margin of 18 mm [pt].
LETTER_PT = (612, 792)
MARGIN_PT = 18 / 25.4 * 72

#: White between the last line of a sheet and the upper rule of its title block, whose labels stand just below [pt].
CLEAR_PT = 8

Printed = Callable[[str, str], tuple[PageObject, ...]]


@pytest.fixture(scope="module")
def printed(chromium: "Browser", copies: Copies) -> Printed:
    """Return a function that gives the sheets of paper of a page, printed once."""

    @cache
    def sheets(reader: str, name: str) -> tuple[PageObject, ...]:
        with watched(chromium) as seen:
            seen.page.goto(copies.address(reader, name))
            return tuple(PdfReader(io.BytesIO(seen.page.pdf(prefer_css_page_size=True))).pages)

    return sheets


def squeezed(text: str) -> str:
    """Return a text without its spaces, in small letters; where a line ends on paper says nothing about the words."""
    return re.sub(r"\s+", "", text).lower()


def lettering(sheet: PageObject) -> list[tuple[float, float, str]]:
    """Return left end, height and text of each piece of lettering on a sheet [pt, from its lower left corner]."""
    found: list[tuple[float, float, str]] = []

    def note(text: str, to_page: list[float], in_line: list[float], font: object, size: float) -> None:
        if text.strip():
            x, y = in_line[4], in_line[5]
            left = to_page[0] * x + to_page[2] * y + to_page[4]
            height = to_page[1] * x + to_page[3] * y + to_page[5]
            found.append((left, height, text.strip()))

    sheet.extract_text(visitor_text=note)
    return found


@every_sheet
def test_every_sheet_is_letter_signed_and_numbered(
    printed: Printed, anatomy: Anatomy, reader: str, name: str
) -> None:
    block = [squeezed(text) for text in anatomy(reader, name)["title_block"]]
    assert squeezed(f"{PAGES.index(name) + 1} of {len(PAGES)}") in block
    sheets = printed(reader, name)
    for number, sheet in enumerate(sheets, 1):
        assert (round(float(sheet.mediabox.width)), round(float(sheet.mediabox.height))) == LETTER_PT
        text = squeezed(sheet.extract_text())
        assert [part for part in block if part not in text] == []
        assert f"{number}/{len(sheets)}" in text
        assert "skiptocontent" not in text


@every_sheet
def test_paper_holds_all_a_page_says(printed: Printed, anatomy: Anatomy, reader: str, name: str) -> None:
    on_paper = squeezed(" ".join(sheet.extract_text() for sheet in printed(reader, name)))
    found = anatomy(reader, name)
    said = [line for line in found["says"].splitlines() if len(line.split()) > 2]
    assert len(said) > 5
    assert [line for line in said if squeezed(line) not in on_paper and line not in found["ways"]] == []


@every_sheet
def test_lettering_keeps_out_of_the_margin_and_of_the_title_block(
    printed: Printed, anatomy: Anatomy, reader: str, name: str
) -> None:
    first_label = squeezed(anatomy(reader, name)["title_block"][0])
    for sheet in printed(reader, name):
        pieces = lettering(sheet)
        block_pt = min(height for _, height, text in pieces if squeezed(text) == first_label)
        assert min(left for left, _, _ in pieces) >= MARGIN_PT - 1
        assert all(re.fullmatch(r"[\d/ ]+", text) for _, height, text in pieces if height < MARGIN_PT)
        assert min(height for _, height, _ in pieces if height > block_pt + 1) > block_pt + CLEAR_PT
