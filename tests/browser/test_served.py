"""The same folder behind a plain web server: every page, and search, as from disk."""

from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from typing import TYPE_CHECKING

import pytest

from tests.browser.conftest import PAGES, Anatomy, Copies, every_copy
from tests.browser.scripts import script
from tests.browser.test_search import ANSWER, ask
from tests.support.browser import watched

if TYPE_CHECKING:
    from playwright.sync_api import Browser


class Quiet(SimpleHTTPRequestHandler):
    """Serves files without a line for each on the terminal."""

    def log_message(self, format: str, *args: object) -> None:
        pass


@pytest.fixture(scope="module")
def host(copies: Copies) -> Iterator[str]:
    """Address of a server on this machine only, which serves the copies for as long as the tests of this file run."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=copies.root))
    thread = Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()
    thread.join()


@every_copy
def test_pages_and_search_work_as_from_disk(
    chromium: "Browser", anatomy: Anatomy, host: str, reader: str
) -> None:
    with watched(chromium) as served:
        for name in PAGES:
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
