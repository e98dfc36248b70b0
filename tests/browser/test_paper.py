"""A page printed by the browser: Letter sheets, each signed by the title block and numbered, workings included."""

import io
import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pypdf import PageObject, PdfReader

from tests.browser.conftest import PAGES_OF, Anatomy, Copies, every_look
from tests.support.browser import watched

if TYPE_CHECKING:
    from playwright.sync_api import Browser

#: A Letter sheet, and its margin of 18 mm [pt].
LETTER_PT = (612, 792)
MARGIN_PT = 18 / 25.4 * 72

#: White between the last line of a sheet and the upper rule of its title block, whose labels stand just below [pt].
CLEAR_PT = 8


@dataclass(frozen=True)
class Sheet:
    """A sheet of paper.

    Attributes:
        size_pt: Width and height.
        text: Its text in small letters, without spaces: where a line ends says nothing about the words.
        pieces: Left end, height and text of each piece of lettering [pt, from the lower left corner].
    """

    size_pt: tuple[int, int]
    text: str
    pieces: tuple[tuple[float, float, str], ...]


def printed(browser: "Browser", address: str) -> list[Sheet]:
    """Return the sheets of paper a page makes."""
    with watched(browser) as seen:
        seen.page.goto(address)
        made = PdfReader(io.BytesIO(seen.page.pdf(prefer_css_page_size=True)))
        return [read(sheet) for sheet in made.pages]


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text).lower()


def read(sheet: PageObject) -> Sheet:
    """Return a sheet's size, text and lettering."""
    found: list[tuple[float, float, str]] = []

    def note(text: str, to_page: list[float], in_line: list[float], font: object, size: float) -> None:
        if text.strip():
            x, y = in_line[4], in_line[5]
            left = to_page[0] * x + to_page[2] * y + to_page[4]
            height = to_page[1] * x + to_page[3] * y + to_page[5]
            found.append((left, height, squeezed(text)))

    text = squeezed(sheet.extract_text(visitor_text=note))
    size_pt = (round(float(sheet.mediabox.width)), round(float(sheet.mediabox.height)))
    return Sheet(size_pt, text, tuple(found))


@every_look
def test_a_page_on_paper(
    chromium: "Browser", copies: Copies, anatomy: Anatomy, reader: str, name: str
) -> None:
    found = anatomy(reader, name)
    sheets = printed(chromium, copies.address(reader, name))
    are_letter_signed_and_numbered(sheets, found["title_block"], place_of(reader, name))
    hold_all_a_page_says(sheets, found["says"].splitlines(), found["ways"])
    keep_out_of_margin_and_title_block(sheets, found["title_block"][0])


def place_of(reader: str, name: str) -> str:
    names = PAGES_OF[reader]  # type: ignore[index]
    return f"{names.index(name) + 1} of {len(names)}"


def are_letter_signed_and_numbered(sheets: Sequence[Sheet], title_block: Sequence[str], place: str) -> None:
    block = [squeezed(text) for text in title_block]
    assert squeezed(place) in block
    for at, sheet in enumerate(sheets, 1):
        assert sheet.size_pt == LETTER_PT
        assert [part for part in block if part not in sheet.text] == []
        assert f"{at}/{len(sheets)}" in sheet.text
        assert "skiptocontent" not in sheet.text


def hold_all_a_page_says(sheets: Sequence[Sheet], lines: Sequence[str], ways: Sequence[str]) -> None:
    """Check every line of a page but the ways to other pages, which paper has not."""
    on_paper = "".join(sheet.text for sheet in sheets)
    said = [line for line in lines if len(line.split()) > 2 and line not in ways]
    assert len(said) > 5
    assert [line for line in said if squeezed(line) not in on_paper] == []


def keep_out_of_margin_and_title_block(sheets: Sequence[Sheet], first_label: str) -> None:
    for sheet in sheets:
        block_pt = min(height for _, height, text in sheet.pieces if text == squeezed(first_label))
        assert min(left for left, _, _ in sheet.pieces) >= MARGIN_PT - 1
        assert all(re.fullmatch(r"[\d/]+", text) for _, height, text in sheet.pieces if height < MARGIN_PT)
        assert min(height for _, height, _ in sheet.pieces if height > block_pt + 1) > block_pt + CLEAR_PT
