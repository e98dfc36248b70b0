"""axe-core finds nothing on any page.

The pages are served for this: from disk axe can't read the style sheets, and would leave rules out in silence.
"""

from itertools import product
from typing import TYPE_CHECKING, Any

import pytest
from axe_playwright_python.base import AXE_SCRIPT

from tests.browser.conftest import every_look
from tests.support.browser import DESKTOP, PHONE, watched

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

#: No rule is switched off; these two, of WCAG 2.2 and 2.1, axe leaves out unless it is asked for.
MORE_RULES = ("target-size", "css-orientation-lock")
OPTIONS = {"resultTypes": ["violations"], "rules": {rule: {"enabled": True} for rule in MORE_RULES}}

SCREENS = {"desktop": DESKTOP, "phone": PHONE}
SCHEMES = ("light", "dark")

#: Every sheet is looked at in both widths and both schemes; one sheet in all four pairs. A scheme changes nothing but
#: the values of the colours, and a width nothing but the places of the parts.
PAIRS = tuple(product(SCREENS, SCHEMES))
CROSSWISE = (("desktop", "light"), ("phone", "dark"))

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


@every_look
def test_no_page_has_a_fault(chromium: "Browser", host: str, reader: str, name: str) -> None:
    with watched(chromium) as seen:
        seen.page.goto(f"{host}/{reader}/{name}.html")
        seen.page.evaluate(OPEN_ALL)
        for screen, scheme in PAIRS if name == "fasteners" else CROSSWISE:
            seen.page.set_viewport_size(SCREENS[screen])
            seen.page.emulate_media(color_scheme=scheme)
            assert (screen, scheme, faults(seen.page)) == (screen, scheme, [])
        assert seen.errors == []


@pytest.mark.parametrize(("screen", "scheme"), CROSSWISE)
def test_open_search_and_large_view_have_no_fault(
    chromium: "Browser", host: str, screen: str, scheme: str
) -> None:
    with watched(chromium, viewport=SCREENS[screen], color_scheme=scheme) as seen:
        seen.page.goto(f"{host}/outside/photos.html")
        seen.page.click("input[data-md-component=search-query]")
        seen.page.keyboard.type("valley")
        seen.page.wait_for_selector(".md-search-result__link")
        assert faults(seen.page) == []
        seen.page.keyboard.press("Escape")
        seen.page.locator(".photo > a").first.click()
        seen.page.wait_for_selector("dialog[open] img")
        assert faults(seen.page) == []


def test_a_fault_is_noticed(chromium: "Browser", host: str) -> None:
    with watched(chromium) as seen:
        seen.page.goto(f"{host}/outside/index.html")
        seen.page.evaluate("document.querySelector('.lead').style.color = '#aaa'")
        seen.page.evaluate("document.querySelector('#roof-plan img').removeAttribute('alt')")
        assert {line.split(":")[0] for line in faults(seen.page)} >= {"color-contrast", "image-alt"}
