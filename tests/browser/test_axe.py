"""axe-core finds nothing on any page, with every rule of its standard set and the size of targets on top."""

from typing import TYPE_CHECKING, Any

import pytest
from axe_playwright_python.base import AXE_SCRIPT

from tests.browser.conftest import Open, every_sheet
from tests.support.browser import DESKTOP, PHONE

if TYPE_CHECKING:
    from playwright.sync_api import Page

#: axe leaves the rule on targets out unless it is asked for. A page opened from disk may not read its own styles again,
#: which preloading would do; no rule needs it.
OPTIONS = {"preload": False, "resultTypes": ["violations"], "rules": {"target-size": {"enabled": True}}}

SCREENS = {"desktop": DESKTOP, "phone": PHONE}
SCHEMES = ("light", "dark")

OPEN_ALL = "document.querySelectorAll('details').forEach((part) => { part.open = true })"
AT_REST = "document.getAnimations().forEach((change) => change.finish())"


def faults(page: "Page") -> list[str]:
    """Return what axe objects to in a page as it stands, one line an element."""
    if not page.evaluate("Boolean(window.axe)"):
        page.evaluate(AXE_SCRIPT)
    page.evaluate(AT_REST)
    found: dict[str, Any] = page.evaluate("options => axe.run(document, options)", OPTIONS)
    return [
        f"{rule['id']}: {node['html'][:160]} {node['failureSummary']}"
        for rule in found["violations"]
        for node in rule["nodes"]
    ]


@every_sheet
def test_no_page_has_a_fault(open_page: Open, reader: str, name: str) -> None:
    page = open_page(reader, name).page
    page.evaluate(OPEN_ALL)
    for screen, size in SCREENS.items():
        page.set_viewport_size(size)
        for scheme in SCHEMES:
            page.emulate_media(color_scheme=scheme)
            assert (screen, scheme, faults(page)) == (screen, scheme, [])


@pytest.mark.parametrize("screen", SCREENS)
@pytest.mark.parametrize("scheme", SCHEMES)
def test_open_search_and_large_view_have_no_fault(open_page: Open, screen: str, scheme: str) -> None:
    page = open_page("outside", "photos", viewport=SCREENS[screen], color_scheme=scheme).page
    page.click("input[data-md-component=search-query]")
    page.keyboard.type("valley")
    page.wait_for_selector(".md-search-result__link")
    assert faults(page) == []
    page.keyboard.press("Escape")
    page.locator(".photo > a").first.click()
    page.wait_for_selector("dialog[open] img")
    assert faults(page) == []


def test_a_fault_is_noticed(open_page: Open) -> None:
    page = open_page("outside", "index").page
    page.evaluate("document.querySelector('.lead').style.color = '#aaa'")
    page.evaluate("document.querySelector('#roof-plan img').removeAttribute('alt')")
    assert {line.split(":")[0] for line in faults(page)} >= {"color-contrast", "image-alt"}
