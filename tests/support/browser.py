"""One headless Chromium for all tests of a run, and pages of it that keep what they asked for and what went wrong.

A machine without Chromium fails these tests; it never skips them.
"""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

FLAGS = (
    "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update",
    "--disable-sync",
)  # fmt: skip

#: Names a Chromium goes by on the path.
NAMES = ("chromium", "chromium-browser", "google-chrome")

#: No page of a packet may need longer than this for anything [ms].
PATIENCE_MS = 20_000

DESKTOP = {"width": 1280, "height": 900}
PHONE = {"width": 390, "height": 844}


@pytest.fixture(scope="session")
def chromium() -> Iterator["Browser"]:
    """The browser of the run. A second playwright in one process is refused, so every test takes this one."""
    from playwright.sync_api import sync_playwright

    program = os.environ.get("PACKET_CHROMIUM") or next(filter(None, map(shutil.which, NAMES)), None)
    if program is None:
        pytest.fail(f"no Chromium: install one of {', '.join(NAMES)}, or name it in PACKET_CHROMIUM")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=list(FLAGS))
        yield browser
        browser.close()


@dataclass
class Watched:
    """A page with every address it asked for, and every error it wrote.

    Attributes:
        page: The page.
        asked: Addresses in the order they were asked for.
        errors: Errors on the console, uncaught errors, requests that failed.
    """

    page: "Page"
    asked: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)


@contextmanager
def watched(browser: "Browser", **settings: Any) -> Iterator[Watched]:
    """Open an empty page in a profile of its own; nothing it does stays in the browser."""
    context = browser.new_context(**{"viewport": DESKTOP, **settings})
    context.set_default_timeout(PATIENCE_MS)
    seen = Watched(context.new_page())
    context.on("request", lambda request: seen.asked.append(request.url))
    context.on("requestfailed", lambda request: _failed(seen, request.url, request.failure))
    context.on("console", lambda message: message.type == "error" and seen.errors.append(message.text))
    context.on("weberror", lambda error: seen.errors.append(str(error.error)))
    try:
        yield seen
    finally:
        context.close()


def _failed(seen: Watched, url: str, failure: str | None) -> None:
    """Note a request that failed; leaving a page while it loads breaks off what it had asked for, and is no fault."""
    if failure != "net::ERR_ABORTED":
        seen.errors.append(f"{url}: {failure}")
