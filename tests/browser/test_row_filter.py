"""The filter of the code basis: by result and by reader, from an address, under the keyboard, without a script, on paper."""

from typing import TYPE_CHECKING

import pytest

from tests.browser.conftest import Copies, Open, every_copy
from tests.browser.scripts import script
from tests.browser.test_axe import CROSSWISE, SCREENS, faults
from tests.support.browser import PHONE, watched

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

ROWS = "tr[data-result]"
STATUS = ".row-filter [role=status]"

#: Result and readers of each row that a reader sees.
SEEN = """Array.from(document.querySelectorAll('tr[data-result]'))
  .filter((row) => row.checkVisibility())
  .map((row) => [row.id, row.dataset.result, row.dataset.askedBy])"""

#: Heads of stages that stand over no row that is seen, or are missing over one that is.
STRAY_HEADS = """Array.from(document.querySelectorAll('.results tbody'))
  .filter((part) => part.querySelector('.group').checkVisibility()
    !== Array.from(part.querySelectorAll('tr[data-result]')).some((row) => row.checkVisibility()))
  .map((part) => part.innerText)"""


def seen(page: "Page") -> list[list[str]]:
    found: list[list[str]] = page.evaluate(SEEN)
    assert page.evaluate(STRAY_HEADS) == []
    return found


def choose(page: "Page", name: str, value: str) -> None:
    page.select_option(f"select[data-filter={name}]", value)


@every_copy
def test_rows_are_chosen_by_result_and_by_reader(open_page: Open, reader: str) -> None:
    page = open_page(reader, "code-basis").page
    every = seen(page)
    assert len(every) == page.locator(ROWS).count() > 15
    assert page.inner_text(STATUS) == f"All {len(every)} rows are shown."

    choose(page, "result", "not_verified")
    unread = [row for row in every if row[1] == "not_verified"]
    assert seen(page) == unread
    assert 0 < len(unread) < len(every)
    assert page.inner_text(STATUS) == f"{len(unread)} of {len(every)} rows are shown."

    choose(page, "asked-by", "homeowner")
    both = [row for row in unread if "homeowner" in row[2].split()]
    assert seen(page) == both
    assert 0 < len(both) < len(unread)
    assert page.evaluate("location.hash") == "#result=not_verified&asked-by=homeowner"

    page.click(".row-filter button")
    assert seen(page) == every
    assert page.evaluate("location.hash") == "#rows"
    assert not page.locator(".row-filter button").is_visible()
    assert page.evaluate("document.activeElement.dataset.filter") == "result"


def test_open_items_can_be_chosen(open_page: Open) -> None:
    page = open_page("outside", "code-basis").page
    choose(page, "result", "open")
    assert [row[0] for row in seen(page)] == ["r-drip-edge-fastening"]


def test_the_status_is_read_out_and_each_choice_has_a_name(open_page: Open) -> None:
    page = open_page("outside", "code-basis").page
    assert page.get_by_role("status").count() == 1
    assert page.get_by_role("combobox", name="Result").count() == 1
    assert page.get_by_role("combobox", name="Asked by").count() == 1


def at(copies: Copies, hash: str) -> str:
    return f"{copies.address('outside', 'code-basis')}#{hash}"


def test_an_address_opens_the_page_filtered(chromium: "Browser", copies: Copies) -> None:
    with watched(chromium) as opened:
        page = opened.page
        page.goto(at(copies, "result=meets&asked-by=homeowner"))
        found = seen(page)
        assert found
        assert {row[1] for row in found} == {"meets"}
        assert all("homeowner" in row[2].split() for row in found)
        assert page.evaluate("document.querySelector('[data-filter=result]').value") == "meets"
        top = page.evaluate("document.querySelector('.row-filter').getBoundingClientRect().top")
        assert 0 <= top < 900, "the choice that was made is in view"
        page.evaluate("location.hash = 'asked-by=inspector'")
        page.wait_for_timeout(100)
        assert len(seen(page)) > len(found)
        assert page.evaluate("document.querySelector('[data-filter=result]').value") == ""
        assert opened.errors == []


@pytest.mark.parametrize("hash", ["r-valley-lining", "result=nonsense", "asked-by=", "%E0%A4%A", "rows"])
def test_an_address_that_names_no_choice_shows_all(chromium: "Browser", copies: Copies, hash: str) -> None:
    with watched(chromium) as opened:
        opened.page.goto(at(copies, hash))
        assert len(seen(opened.page)) == opened.page.locator(ROWS).count()
        assert opened.page.locator(".row-filter").is_visible()


def test_a_link_to_a_row_that_is_filtered_out_shows_it(chromium: "Browser", copies: Copies) -> None:
    with watched(chromium) as opened:
        page = opened.page
        page.goto(at(copies, "result=open"))
        assert not page.locator("#r-valley-lining").is_visible()
        page.evaluate("location.hash = 'r-valley-lining'")
        page.locator("#r-valley-lining").wait_for(state="visible")


def test_the_keyboard_alone_filters(open_page: Open) -> None:
    page = open_page("outside", "code-basis").page
    page.focus("select[data-filter=result]")
    page.keyboard.type("open")
    page.keyboard.press("Tab")
    assert [row[1] for row in seen(page)] == ["not_recorded"]
    assert page.evaluate("document.activeElement.dataset.filter") == "asked-by"
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.tagName") == "BUTTON"
    page.keyboard.press("Enter")
    assert len(seen(page)) == page.locator(ROWS).count()


def test_without_a_script_every_row_shows_and_no_choice_is_offered(
    chromium: "Browser", copies: Copies
) -> None:
    with watched(chromium, java_script_enabled=False) as opened:
        opened.page.goto(at(copies, "result=open"))
        rows = opened.page.locator(ROWS)
        assert rows.count() > 15
        assert all(row.is_visible() for row in rows.all())
        assert not opened.page.locator(".row-filter").is_visible()


def test_paper_shows_every_row_whatever_was_chosen(open_page: Open) -> None:
    page = open_page("outside", "code-basis").page
    choose(page, "result", "open")
    assert len(seen(page)) == 1
    page.emulate_media(media="print")
    assert len(seen(page)) == page.locator(ROWS).count()
    assert not page.locator(".row-filter").is_visible()


@pytest.mark.parametrize(("screen", "scheme"), CROSSWISE)
def test_a_filtered_page_has_no_fault(chromium: "Browser", host: str, screen: str, scheme: str) -> None:
    with watched(chromium, viewport=SCREENS[screen], color_scheme=scheme) as opened:
        opened.page.goto(f"{host}/outside/code-basis.html#result=open")
        assert len(seen(opened.page)) == 1
        assert faults(opened.page) == []


@pytest.mark.parametrize("hash", ["", "#result=not_recorded&asked-by=inspector"])
@pytest.mark.parametrize("width_px", [390, 320])
def test_the_filter_fits_a_phone(chromium: "Browser", copies: Copies, hash: str, width_px: int) -> None:
    with watched(chromium, viewport={**PHONE, "width": width_px}, is_mobile=True, has_touch=True) as opened:
        opened.page.goto(copies.address("outside", "code-basis") + hash)
        assert opened.page.locator(".row-filter").is_visible()
        found = opened.page.evaluate(script("layout"))
        assert found == {"width": width_px, "scrolls": False, "sticksOut": [], "cutOff": []}
