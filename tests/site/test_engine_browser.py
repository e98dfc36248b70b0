"""A built site opened by double-click, without a network: search works and no request leaves."""

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.support.browser import watched

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser


def test_search_finds_a_table_cell_from_a_folder_with_spaces(
    build: Callable[..., Path], tmp_path: Path, chromium: "Browser"
) -> None:
    site = tmp_path / "my packet (1) [a]"
    shutil.copytree(build(), site)
    with watched(chromium) as seen:
        page = seen.page
        page.goto((site / "index.html").as_uri())
        page.click("input[data-md-component=search-query]")
        page.keyboard.type("zanzibar")
        page.click(".md-search-result__link")
        page.wait_for_url("**/scope.html*")
    assert seen.asked
    assert [url for url in seen.asked if not url.startswith(("file:", "about:", "blob:", "data:"))] == []
    # The small theme of these tests publishes no real picture, so no other error is expected.
    assert [text for text in seen.errors if "P-01.png" not in text and "ERR_FILE_NOT_FOUND" not in text] == []
