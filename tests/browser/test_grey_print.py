"""Text and lines stand out on a grey printer; ``grey.py`` says what is measured."""

from typing import Any

import pytest

from tests.browser.conftest import Copies, Open, every_copy, every_look
from tests.browser.grey import (
    CONTRAST,
    DRAWING_SCALE,
    PAPER,
    SCALE,
    contrast_of,
    grey,
    ratio,
    stroke_contrast,
)
from tests.browser.scripts import script

#: The title block is held at the foot of each sheet of paper; a screenshot knows no sheets and gets it at the end.
#: Photos are neither text nor lines, and slow to photograph.
FOR_THE_SHOT = ".md-typeset dl.title-block { position: static !important } .photo img { visibility: hidden }"

#: Adds a style sheet as an object; the policy of a page forbids one that is written into it.
ADD_STYLE = """text => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    document.adoptedStyleSheets.push(sheet);
}"""


#: Paper may take another picture than the screen; what stands below it moves when that one arrives.
PICTURES_IN = (
    """() => Promise.all(Array.from(document.images, (image) => image.decode().catch(() => null)))"""
)


def too_faint(open_page: Open, reader: str, name: str, change: str = "") -> tuple[list[str], int, int]:
    """Return what does not stand out, and how many texts and lines were measured."""
    page = open_page(reader, name, viewport=PAPER, device_scale_factor=SCALE).page
    page.emulate_media(media="print")
    page.evaluate(ADD_STYLE, FOR_THE_SHOT + change)
    page.evaluate(PICTURES_IN)
    found: dict[str, list[dict[str, Any]]] = page.evaluate(script("ink"))
    tiles = grey(page)
    faint = []
    for kind in ("texts", "lines"):
        for ink in found[kind]:
            reached = contrast_of(tiles, ink["box"])
            if reached < CONTRAST:
                faint.append(f"{kind} {ink['what']}: {reached:.2f}")
    return faint, len(found["texts"]), len(found["lines"])


@every_look
def test_text_and_lines_stand_out(open_page: Open, reader: str, name: str) -> None:
    faint, texts, lines = too_faint(open_page, reader, name)
    assert texts > 20
    assert lines > 5
    assert faint == []


def faint_strokes(
    open_page: Open, copies: Copies, reader: str, drawing: str, change: str = ""
) -> tuple[list[str], int]:
    """Return the lines of a drawing, as wide as on paper, that do not stand out, and how many were measured."""
    page = open_page(reader, "index", viewport=PAPER, device_scale_factor=DRAWING_SCALE).page
    page.emulate_media(media="print")
    width_px = page.locator("#roof-plan img").evaluate("image => image.getBoundingClientRect().width")
    drawn = (copies.root / reader / "drawings" / f"{drawing}.svg").read_text(encoding="utf-8")
    page.set_viewport_size({"width": round(width_px), "height": PAPER["height"]})
    page.goto("about:blank")  # the policy of a page forbids written styles
    page.set_content(f"<body style='margin: 0'>{drawn}<style>{change}</style></body>")
    (tile,) = grey(page)
    found = page.evaluate(script("strokes"))
    faint = [line["what"] for line in found if stroke_contrast(tile, line["points"]) < CONTRAST]
    return faint, len(found)


@every_copy
def test_lines_of_the_drawing_stand_out(open_page: Open, copies: Copies, reader: str) -> None:
    faint, lines = faint_strokes(open_page, copies, reader, "roof-plan")
    assert lines > 30
    assert faint == []


def test_a_faint_line_of_the_drawing_is_noticed(open_page: Open, copies: Copies) -> None:
    faint, _ = faint_strokes(
        open_page, copies, "outside", "roof-plan", ".roof-plan .hip { stroke: #999 !important }"
    )
    assert faint
    assert all("hip" in line for line in faint)


@pytest.mark.parametrize(
    ("change", "kind"),
    [(".lead { color: #888 }", "texts"), (".title-block { border-color: #999 !important }", "lines")],
)
def test_what_is_faint_is_noticed(open_page: Open, change: str, kind: str) -> None:
    faint, _, _ = too_faint(open_page, "outside", "index", change)
    assert [line for line in faint if line.startswith(kind)]


def test_the_ratio_is_that_of_the_guidelines() -> None:
    assert ratio(0, 255) == pytest.approx(21)
    assert ratio(0x76, 255) == pytest.approx(4.54, abs=0.005)  # the palest grey on white that may be text
    assert ratio(0x77, 255) < CONTRAST
