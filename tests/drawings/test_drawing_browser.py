"""The drawing as a browser sets it: estimated widths must cover real ones."""

import base64
import math
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import pytest

from tests.drawings.reading import Drawing
from tests.drawings.roofs import ROOFS
from tests.support.office import ROOT

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser

MEASURE = """() => [...document.querySelectorAll('text')].map(t => ({
  text: t.textContent, width: t.getComputedTextLength(),
  size: parseFloat(getComputedStyle(t).fontSize)}))"""


FONTS = ROOT / "templates" / "assets" / "fonts"


def _plex() -> str:
    """Return the packet's own typeface as a style, for a drawing inside a page."""
    rules = []
    for weight in (400, 600):
        data = base64.b64encode((FONTS / f"ibm-plex-sans-latin-{weight}-normal.woff2").read_bytes()).decode()
        source = f"url(data:font/woff2;base64,{data})"
        rules.append(f"@font-face {{ font-family: 'Plex Sans'; font-weight: {weight}; src: {source}; }}")
    return "".join(rules)


@pytest.mark.parametrize("style", ["", _plex()], ids=["fallback", "plex"])
def test_real_lettering_is_no_wider_than_estimated(
    style: str, draw: Callable[..., str], chromium: "Browser"
) -> None:
    page = chromium.new_page()
    for roof in ROOFS.values():
        for narrow in (False, True):
            text = draw(roof, narrow=narrow)
            page.set_content(f"<style>{style}</style><div style='width: 360px'>{text}</div>")
            page.evaluate("() => document.fonts.ready.then(() => true)")
            assert page.evaluate("() => document.fonts.size") == (2 if style else 0)
            measured: list[dict[str, Any]] = page.evaluate(MEASURE)
            parts = Drawing(text).texts
            assert [one["text"] for one in measured] == [part.text for part in parts]
            for one, part in zip(measured, parts, strict=True):
                assert one["size"] >= 11
                assert one["width"] <= math.dist(part.box[0], part.box[1]) + 0.5, one["text"]
    page.close()
