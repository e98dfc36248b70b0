"""A reader, or a mail program's viewer, that runs no script sees all of every page."""

from tests.browser.conftest import Anatomy, Open, every_look

WORKING = ".md-content details.working"
OPEN_ALL = "document.querySelectorAll('.md-content details').forEach((part) => { part.open = true })"
MISSING = "Array.from(document.images).filter((image) => !image.naturalWidth).length"


@every_look
def test_every_page_shows_all_it_holds(open_page: Open, anatomy: Anatomy, reader: str, name: str) -> None:
    page = open_page(reader, name, java_script_enabled=False).page
    workings = page.locator(WORKING)
    assert workings.count() or name not in ("quantities", "code-basis"), (
        "no number on the page opens its working"
    )
    if workings.count():
        workings.first.locator("summary").focus()
        assert not workings.first.locator(".working-sheet").is_visible()
        page.keyboard.press("Enter")
        assert workings.first.locator(".working-sheet").is_visible()
    page.evaluate(OPEN_ALL)
    assert page.inner_text(".md-content") == anatomy(reader, name)["says"]
    assert page.evaluate(MISSING) == 0


def test_a_photo_opens_whole(open_page: Open) -> None:
    page = open_page("outside", "photos", java_script_enabled=False).page
    link = page.locator(".photo > a").first
    address = link.evaluate("link => link.href")
    link.click()
    assert page.url == address


def test_the_list_of_sheets_leads_on(open_page: Open) -> None:
    page = open_page("outside", "index", java_script_enabled=False).page
    page.click(".sheet-list--side a[href$='warranty-and-care.html']")
    assert page.url.endswith("/warranty-and-care.html")


def test_the_phone_opens_the_list_of_sheets(open_page: Open) -> None:
    page = open_page(
        "outside", "index", java_script_enabled=False, viewport={"width": 390, "height": 844}
    ).page
    page.click(".sheet-list--top summary")
    page.click(".sheet-list--top a[href$='photos.html']")
    assert page.url.endswith("/photos.html")


def test_nothing_is_offered_that_needs_a_script(open_page: Open) -> None:
    page = open_page("outside", "index", java_script_enabled=False).page
    assert not page.locator("input[data-md-component=search-query]").is_visible()
