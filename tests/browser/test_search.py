"""The search field, opened from disk: it answers from the cells of tables, and its answers lead there."""

import re
from urllib.parse import urlsplit

import pytest

from tests.browser.conftest import Open
from tests.support.browser import PHONE, Watched

FIELD = "input[data-md-component=search-query]"
ANSWER = ".md-search-result__link"

#: Words of the demo record that stand in a table cell of one page of a copy.
CELLS = [
    ("outside", "primed on all faces", "scope"),  # framing
    ("outside", "plastic cap nail", "fasteners"),  # underlayment
    ("outside", "cartridge", "quantities"),  # goods
    ("office", "building inspector", "inspections"),  # visits
    ("office", "final invoice", "inspections"),  # papers that the office keeps
]


def ask(seen: Watched, words: str) -> None:
    """Type into the field and wait for an answer."""
    type_into(seen, words)
    seen.page.wait_for_selector(ANSWER)


def type_into(seen: Watched, words: str) -> None:
    """Type over what stands in the field; the theme listens to keys, not to a changed value."""
    seen.page.click(FIELD, click_count=3)
    seen.page.keyboard.type(words)


@pytest.mark.parametrize(("reader", "words", "page"), CELLS)
def test_an_answer_opens_the_page_with_the_cell(open_page: Open, reader: str, words: str, page: str) -> None:
    seen = open_page(reader, "index")
    ask(seen, words)
    seen.page.click(f"{ANSWER}[href*='{page}.html']")
    seen.page.wait_for_url(f"**/{page}.html*")
    assert seen.page.locator("td, th").filter(has_text=re.compile(words, re.IGNORECASE)).first.is_visible()
    anchor = urlsplit(seen.page.url).fragment
    assert anchor == "" or seen.page.locator(f"[id='{anchor}']").count() == 1


@pytest.mark.parametrize("screen", [None, PHONE], ids=["desktop", "phone"])
def test_the_keyboard_alone_searches(open_page: Open, screen: dict[str, int] | None) -> None:
    seen = open_page("outside", "photos", **({"viewport": screen} if screen else {}))
    seen.page.focus(FIELD)
    seen.page.keyboard.type("cartridge")
    seen.page.wait_for_selector(ANSWER)
    seen.page.keyboard.press("ArrowDown")
    assert "quantities.html" in seen.page.evaluate("document.activeElement.href")
    seen.page.keyboard.press("Enter")
    seen.page.wait_for_url("**/quantities.html*")


def test_escape_closes_the_answers(open_page: Open) -> None:
    seen = open_page("outside", "index")
    ask(seen, "valley")
    seen.page.keyboard.press("Escape")
    seen.page.wait_for_selector(ANSWER, state="hidden")


def test_what_no_page_holds_is_not_found(open_page: Open) -> None:
    seen = open_page("outside", "index")
    ask(seen, "valley")
    type_into(seen, "zanzibar")
    seen.page.wait_for_selector(ANSWER, state="detached")


def test_others_do_not_find_papers_of_the_office(open_page: Open) -> None:
    outside = open_page("outside", "index")
    ask(outside, "cartridge")
    type_into(outside, "invoice")
    outside.page.wait_for_selector(ANSWER, state="detached")
