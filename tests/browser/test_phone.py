"""A page on a phone: nothing runs out sideways, nothing is cut off, drawings can be read."""

import pytest

from tests.browser.conftest import Open, every_copy, every_look
from tests.browser.scripts import script
from tests.support.browser import PHONE

#: The phone of the brief, and the narrowest window a page has to fit without a sideways scroll (WCAG 2.2, 1.4.10).
WIDTHS_PX = (390, 320)

#: Smallest lettering of a drawing on a phone (shared/look.md).
LETTERING_PX = 11

OPEN_ALL = "document.querySelectorAll('details').forEach((part) => { part.open = true })"


def phone() -> dict[str, object]:
    return {"viewport": PHONE, "is_mobile": True, "has_touch": True}


@every_look
def test_nothing_runs_out_sideways(open_page: Open, reader: str, name: str) -> None:
    page = open_page(reader, name, **phone()).page
    page.evaluate(OPEN_ALL)
    for width_px in WIDTHS_PX:
        page.set_viewport_size({"width": width_px, "height": PHONE["height"]})
        found = page.evaluate(script("layout"))
        assert found == {"width": width_px, "scrolls": False, "sticksOut": [], "cutOff": []}


def test_what_sticks_out_is_noticed(open_page: Open) -> None:
    page = open_page("outside", "index", **phone()).page
    page.evaluate(
        "() => { const p = document.createElement('p'); p.textContent = 'wide'; p.style.width = '500px';"
        " document.querySelector('h1').after(p); }"
    )
    found = page.evaluate(script("layout"))
    assert found["scrolls"] or found["width"] > PHONE["width"]
    page = open_page("outside", "index", **phone()).page
    page.evaluate("document.querySelector('h1').style.cssText = 'overflow: hidden; white-space: nowrap'")
    assert len(page.evaluate(script("layout"))["cutOff"]) == 1


@every_copy
def test_lettering_of_the_drawing_can_be_read(open_page: Open, reader: str) -> None:
    page = open_page(reader, "index", **phone()).page
    image = page.locator("#roof-plan img")
    shown_px = image.evaluate("image => image.getBoundingClientRect().width")
    source = image.evaluate("image => image.currentSrc")
    assert source.endswith("roof-plan-phone.svg")
    drawing = open_page(reader, "index").page
    drawing.goto(source)
    scale = shown_px / drawing.evaluate("document.documentElement.viewBox.baseVal.width")
    sizes_px = drawing.evaluate(
        "Array.from(document.querySelectorAll('text'), (text) => parseFloat(getComputedStyle(text).fontSize))"
    )
    assert sizes_px
    assert min(sizes_px) * scale >= LETTERING_PX


@pytest.mark.parametrize("copy", ["outside"])
def test_the_search_field_and_its_answers_fit(open_page: Open, copy: str) -> None:
    page = open_page(copy, "scope", **phone()).page
    page.tap("input[data-md-component=search-query]")
    page.keyboard.type("valley")
    page.wait_for_selector(".md-search-result__link")
    assert page.evaluate(script("layout"))["sticksOut"] == []
    assert not page.evaluate(script("layout"))["scrolls"]
