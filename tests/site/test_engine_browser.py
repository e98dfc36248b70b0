"""A built site opened by double-click, without a network: search works and no request leaves."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import sync_playwright

pytestmark = pytest.mark.browser

FLAGS = (
    "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update",
    "--disable-sync",
)  # fmt: skip


def test_search_finds_a_table_cell_from_a_folder_with_spaces(
    build: Callable[..., Path], tmp_path: Path
) -> None:
    site = tmp_path / "my packet (1) [a]"
    shutil.copytree(build(), site)
    asked: list[str] = []
    errors: list[str] = []
    with sync_playwright() as playwright:
        chromium = shutil.which("chromium")
        browser = playwright.chromium.launch(executable_path=chromium, args=list(FLAGS))
        page = browser.new_page()
        page.on("request", lambda request: asked.append(request.url))
        page.on("console", lambda message: errors.append(message.text) if message.type == "error" else None)
        page.on("pageerror", lambda error: errors.append(str(error)))
        page.goto((site / "index.html").as_uri())
        page.click("input[data-md-component=search-query]")
        page.keyboard.type("zanzibar")
        page.click(".md-search-result__link")
        page.wait_for_url("**/scope.html*")
        browser.close()
    assert asked
    assert [url for url in asked if not url.startswith(("file:", "about:", "blob:", "data:"))] == []
    # The small theme of these tests publishes no real picture, so no other error is expected.
    assert [text for text in errors if "P-01.png" not in text] == []
