"""A page under the keyboard alone."""

from typing import TYPE_CHECKING

from tests.browser.conftest import Open, every_copy, until

if TYPE_CHECKING:
    from playwright.sync_api import Page

ACTIVE_PHOTO = "document.activeElement.closest('.photo')?.id"
SHOWN = "document.querySelector('dialog[open] img').src"

RING = """() => {
  const style = getComputedStyle(document.activeElement);
  return {
    where: document.activeElement.outerHTML.slice(0, 120),
    ring: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 1,
    seen: document.activeElement.checkVisibility({ opacityProperty: true, visibilityProperty: true }),
  };
}"""


def photos(page: "Page") -> list[list[str]]:
    """Return id and large picture of each photo in order."""
    found: list[list[str]] = page.evaluate(
        "Array.from(document.querySelectorAll('.photo > a'), (link) => [link.parentNode.id, link.href])"
    )
    return found


@every_copy
def test_the_large_view_opens_moves_and_closes(open_page: Open, reader: str) -> None:
    page = open_page(reader, "photos").page
    shots = photos(page)
    assert len(shots) >= 20
    page.locator(".photo > a").nth(1).focus()
    page.keyboard.press("Enter")
    assert page.evaluate(SHOWN) == shots[1][1]
    assert page.evaluate("document.querySelector('dialog').getAttribute('aria-label')") == shots[1][0]
    until(page, "document.querySelector('dialog img').naturalWidth > 0")
    for key, shown in (
        ("ArrowRight", 2),
        ("ArrowRight", 3),
        ("ArrowLeft", 2),
        ("ArrowLeft", 1),
        ("ArrowLeft", 0),
    ):
        page.keyboard.press(key)
        assert page.evaluate(SHOWN) == shots[shown][1]
    page.keyboard.press("ArrowLeft")
    assert page.evaluate(SHOWN) == shots[-1][1], "before the first comes the last"
    page.keyboard.press("ArrowRight")
    assert shots[0][0] in page.inner_text("dialog .place")
    assert page.inner_text("dialog .words").startswith(page.locator(".photo .shows").first.inner_text()), (
        "the caption goes with the picture"
    )
    page.keyboard.press("Escape")
    assert page.locator("dialog[open]").count() == 0
    until(page, f"{ACTIVE_PHOTO} === '{shots[0][0]}'")  # a dialog tells a moment later that it closed


def test_the_large_view_holds_the_focus(open_page: Open) -> None:
    page = open_page("outside", "photos").page
    page.locator(".photo > a").first.focus()
    page.keyboard.press("Enter")
    reached = set()
    for _ in range(4):
        page.keyboard.press("Tab")
        reached.add(page.evaluate("document.activeElement.textContent"))
        assert page.evaluate(
            "document.activeElement === document.body || !!document.activeElement.closest('dialog')"
        )
    assert len(reached) >= 3, "previous, next and close are buttons to reach"


def test_the_way_into_a_page_is_short_and_seen(open_page: Open) -> None:
    page = open_page("outside", "quantities").page
    page.keyboard.press("Tab")
    first = page.evaluate(RING)
    assert (first["ring"], first["seen"]) == (True, True), first["where"]
    page.keyboard.press("Enter")
    target = page.evaluate("location.hash.slice(1)")
    assert page.locator(f"[id='{target}']").count() == 1


def test_every_stop_shows_a_ring(open_page: Open) -> None:
    page = open_page("outside", "index").page
    stops = []
    for _ in range(60):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement === document.body"):
            break
        stops.append(page.evaluate(RING))
    assert len(stops) > 15
    assert [stop["where"] for stop in stops if not (stop["ring"] and stop["seen"])] == []


def test_a_working_opens_and_closes(open_page: Open) -> None:
    page = open_page("outside", "quantities").page
    working = page.locator("details.working").first
    working.locator("summary").focus()
    for key, shown in (("Enter", True), ("Space", False)):
        page.keyboard.press(key)
        assert working.locator(".working-sheet").is_visible() is shown
