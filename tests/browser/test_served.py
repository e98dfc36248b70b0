"""The same folder behind a plain web server: every page, and search, as from disk."""

from typing import TYPE_CHECKING

from tests.browser.conftest import OFFICE_READS_MORE, PAGES, Anatomy, every_copy
from tests.browser.scripts import script
from tests.browser.test_search import ANSWER, ask
from tests.support.browser import watched

if TYPE_CHECKING:
    from playwright.sync_api import Browser


@every_copy
def test_pages_and_search_work_as_from_disk(
    chromium: "Browser", anatomy: Anatomy, host: str, reader: str
) -> None:
    with watched(chromium) as served:
        for name in PAGES if reader == "outside" else OFFICE_READS_MORE:
            served.page.goto(f"{host}/{reader}/{name}.html")
            found = served.page.evaluate(script("anatomy"))
            assert found["says"] == anatomy(reader, name)["says"]
            assert all(width_px for _, width_px in found["images"])
        ask(served, "cartridge")
        served.page.click(f"{ANSWER}[href*='quantities.html']")
        served.page.wait_for_url(f"{host}/{reader}/quantities.html*")
        assert served.errors == []
        assert [
            url for url in served.asked if not url.startswith((f"{host}/{reader}/", "blob:", "data:"))
        ] == []


def test_a_folder_address_opens_the_front_page(chromium: "Browser", host: str) -> None:
    with watched(chromium) as seen:
        seen.page.goto(f"{host}/outside/")
        assert seen.page.locator("#roof-plan img").evaluate("image => image.naturalWidth") > 0
        assert seen.errors == []
