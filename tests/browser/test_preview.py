"""The preview in a browser: a page loads itself again, also under the strictest policy a page may carry."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from packet.preview.server import serving
from packet.preview.state import Preview
from tests.browser.conftest import until
from tests.support.browser import watched
from tests.support.built import built_office, packet_of
from tests.support.office import NUMBER, Office

if TYPE_CHECKING:
    from playwright.sync_api import Browser

BAR = ".preview-problems"
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
    "connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'"
)


@pytest.fixture(scope="module")
def office(tmp_path_factory: pytest.TempPathFactory) -> Office:
    return built_office(tmp_path_factory.mktemp("served") / "office")


@pytest.fixture
def served(office: Office) -> Iterator[tuple[Preview, str]]:
    preview = Preview(office.root / "out" / NUMBER, "outside")
    with serving(preview, (0,)) as address:
        yield preview, address


def test_an_open_page_loads_the_new_build_and_shows_problems_until_they_are_mended(
    chromium: "Browser", office: Office, served: tuple[Preview, str]
) -> None:
    preview, address = served
    with watched(chromium) as seen:
        seen.page.goto(f"{address}sources.html")
        seen.page.evaluate("window.here = 1")
        preview.tell("jobs/26-041/job.yaml:3:9: error[not-one-of]: <b>pach</b>\n    3 |   kind")
        seen.page.wait_for_selector(BAR)
        assert seen.page.evaluate("window.here") is None
        box = seen.page.locator(BAR).bounding_box()
        assert box
        assert (box["y"], box["width"] > 1000) == (0, True)
        shown = seen.page.locator(f"{BAR} pre").inner_text()
        assert shown == "jobs/26-041/job.yaml:3:9: error[not-one-of]: <b>pach</b>\n    3 |   kind"
        assert seen.page.locator("h1").is_visible()

        preview.tell("")
        seen.page.wait_for_selector(BAR, state="detached")
        office.file("shared/words/en.yaml", "pages: {sources: Where it was read}\n")
        assert packet_of(office).made
        preview.tell("")
        seen.page.locator("h1", has_text=re.compile("Where it was read")).wait_for()
        assert seen.errors == []
        assert [url for url in seen.asked if not url.startswith(address)] == []


def test_the_policy_of_a_page_lets_the_preview_work(
    chromium: "Browser", office: Office, served: tuple[Preview, str]
) -> None:
    preview, address = served
    page = Path(preview.folder, "outside", "sources.html")
    built = page.read_bytes()
    meta = f'<head><meta http-equiv="Content-Security-Policy" content="{POLICY}">'.encode()
    page.write_bytes(re.sub(rb"<head>", meta, built, count=1))
    try:
        with watched(chromium) as seen:
            seen.page.goto(f"{address}sources.html")
            seen.page.evaluate("window.here = 1")
            preview.tell("wrong")
            seen.page.wait_for_selector(BAR)
            until(
                seen.page,
                f"getComputedStyle(document.querySelector('{BAR}')).backgroundColor === 'rgb(255, 244, 242)'",
            )  # the bar's own style sheet comes a moment after the bar
            assert not [error for error in seen.errors if ".preview" in error]
    finally:
        page.write_bytes(built)


def test_a_page_opened_before_the_first_build_opens_it(
    chromium: "Browser", office: Office, served: tuple[Preview, str]
) -> None:
    preview, address = served
    aside = preview.folder.rename(preview.folder.with_name("aside"))
    preview.tell("wrong")
    with watched(chromium) as seen:
        seen.page.goto(address)
        assert seen.page.locator(BAR).is_visible()
        assert "There is no page of this job yet" in seen.page.inner_text("main")
        aside.rename(preview.folder)
        preview.tell("")
        seen.page.wait_for_selector("h1")


def test_search_answers_in_the_preview(chromium: "Browser", served: tuple[Preview, str]) -> None:
    _, address = served
    with watched(chromium) as seen:
        seen.page.goto(address)
        seen.page.click("input[data-md-component=search-query]")
        seen.page.keyboard.type("Heron")
        seen.page.wait_for_selector(".md-search-result__link")
        assert seen.errors == []
