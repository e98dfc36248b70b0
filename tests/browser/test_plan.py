"""The sheet before the job: each topic is one Letter page, a phone shows it whole, and axe finds nothing."""

import io
import shutil
from collections.abc import Iterator
from functools import partial
from http.server import ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING

import pytest
from pypdf import PdfReader

from packet.planning import make_plan
from packet.workspace import Workspace
from tests.browser.conftest import Quiet
from tests.browser.scripts import script
from tests.browser.test_axe import AT_REST, CROSSWISE, OPEN_ALL, SCREENS, faults
from tests.support.browser import PHONE, watched
from tests.support.office import ROOT
from tests.support.planned import COAST

if TYPE_CHECKING:
    from playwright.sync_api import Browser

DEMOS = ("26-041", "26-052", "26-067")
JOBS = (*DEMOS, "27-001")

#: Sheets of paper of each page: the card is one in each language, the crew has pictures, then nails and safety, in each.
SHEETS = {
    "index": 1, "to-buy": 1, "nailing-card": 2, "hold-points": 1, "permits": 1, "access-and-safety": 1, "crew": 4,
}  # fmt: skip

#: The phone of the brief, and the narrowest window a page has to fit without a sideways scroll (WCAG 2.2, 1.4.10).
WIDTHS_PX = (390, 320)


@pytest.fixture(scope="session")
def plans(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sheets of the demo jobs and of one that is only planned, in an office of their own."""
    office = tmp_path_factory.mktemp("office")
    (office / "shared").mkdir()
    shutil.copy(ROOT / "shared" / "office.yaml", office / "shared")
    for job in DEMOS:
        shutil.copytree(ROOT / "jobs" / job, office / "jobs" / job)
    (office / "jobs" / "27-001").mkdir()
    (office / "jobs" / "27-001" / "job.yaml").write_text(COAST, encoding="utf-8")
    for folder in sorted((office / "jobs").iterdir()):
        make_plan(Workspace(office), folder, lambda step: None)
    return office / "out"


@pytest.fixture(scope="session")
def plan_host(plans: Path) -> Iterator[str]:
    """Address of a server, on this machine only, that serves the sheets."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(plans)))
    Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


@pytest.mark.parametrize("job", JOBS)
def test_each_topic_prints_on_one_letter_page(chromium: "Browser", plans: Path, job: str) -> None:
    found, texts = {}, {}
    with watched(chromium) as seen:
        for name in SHEETS:
            seen.page.goto((plans / f"{job}-plan" / f"{name}.html").as_uri())
            paper = PdfReader(io.BytesIO(seen.page.pdf(prefer_css_page_size=True))).pages
            assert {tuple(map(float, sheet.mediabox)) for sheet in paper} == {(0, 0, 612, 792)}
            found[name], texts[name] = len(paper), [sheet.extract_text() for sheet in paper]
        assert seen.errors == []
    assert found == SHEETS
    heads = ["English: Pictures", "English: Nails", "Español: Fotos", "Español: Clavos"]
    assert [head in text for head, text in zip(heads, texts["crew"], strict=True)] == [True] * 4
    assert "Tarjeta de clavado" in texts["nailing-card"][1]


@pytest.mark.parametrize("job", JOBS)
def test_nothing_runs_out_sideways_on_a_phone(chromium: "Browser", plans: Path, job: str) -> None:
    with watched(chromium, viewport=PHONE, is_mobile=True, has_touch=True) as seen:
        for name in (*SHEETS, "sources"):
            seen.page.goto((plans / f"{job}-plan" / f"{name}.html").as_uri())
            seen.page.evaluate(OPEN_ALL)
            for width_px in WIDTHS_PX:
                seen.page.set_viewport_size({"width": width_px, "height": PHONE["height"]})
                layout = seen.page.evaluate(script("layout"))
                whole = {"width": width_px, "scrolls": False, "sticksOut": [], "cutOff": []}
                assert (name, layout) == (name, whole)


@pytest.mark.parametrize("name", [*SHEETS, "sources"])
def test_axe_finds_nothing(chromium: "Browser", plan_host: str, name: str) -> None:
    with watched(chromium) as seen:
        seen.page.goto(f"{plan_host}/26-067-plan/{name}.html")
        seen.page.evaluate(OPEN_ALL)
        for screen, scheme in CROSSWISE:
            seen.page.set_viewport_size(SCREENS[screen])
            seen.page.emulate_media(color_scheme=scheme)
            seen.page.evaluate(AT_REST)
            assert (screen, scheme, faults(seen.page)) == (screen, scheme, [])
        assert seen.errors == []


def test_the_crews_languages_are_marked_and_the_search_finds_one(chromium: "Browser", plans: Path) -> None:
    with watched(chromium) as seen:
        seen.page.goto((plans / "26-067-plan" / "crew.html").as_uri())
        marked = "[...document.querySelectorAll('.plan-topic')].map(it => it.lang)"
        assert seen.page.evaluate(marked) == ["en", "en", "es", "es"]
    index = (plans / "26-067-plan" / "search" / "search_index.js").read_text(encoding="utf-8")
    assert "Tie off before you step on the roof" in index
    assert "Amárrese" not in index
