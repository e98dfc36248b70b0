"""The demo packet as a reader gets it: unzipped into a folder with an awkward name, opened by double-click."""

import shutil
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from functools import cache, partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING, Any

import pytest

from packet.build import build
from packet.readers import READERS
from packet.site.pages import listed_pages
from packet.workspace import Workspace, packaged
from tests.browser.scripts import script
from tests.support.browser import Watched, watched
from tests.support.office import DEMO_JOB, NUMBER, ROOT

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

#: What mail programs and second downloads make of a folder's name, and what addresses trip over.
FOLDER = "Closeout packet (1) [Heron Lane] 100% #2"

#: Pages by copy, in order.
PAGES_OF = {
    reader: tuple(page.name for page in listed_pages([packaged("templates")], reader)) for reader in READERS
}

#: Pages that every copy has.
PAGES = PAGES_OF["outside"]

#: Every page of every copy.
SHEETS = tuple((reader, name) for reader, names in PAGES_OF.items() for name in names)

#: Pages on which the office reads more. Its other pages are those of the outside copy but for the line that says whose
#: copy it is; ``test_whole.py`` holds that.
OFFICE_READS_MORE = ("index", "code-basis", "quantities", "photos", "inspections")

#: The slow tests of the look pass over the office's pages that show nothing of another kind: two of those have no more
#: than a photo and links to it.
OFFICE_LOOKS = ("index", "inspections", "order-list")
LOOKS = tuple((reader, name) for reader, name in SHEETS if reader == "outside" or name in OFFICE_LOOKS)

every_sheet = pytest.mark.parametrize(("reader", "name"), SHEETS)
every_look = pytest.mark.parametrize(("reader", "name"), LOOKS)
every_copy = pytest.mark.parametrize("reader", READERS)

Open = Callable[..., Watched]
Anatomy = Callable[[str, str], dict[str, Any]]


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark every test of this folder; a test can't be left out by forgetting the mark."""
    here = Path(__file__).parent
    for item in items:
        if here in item.path.parents:
            item.add_marker(pytest.mark.browser)


@dataclass(frozen=True)
class Copies:
    """The built copies.

    Attributes:
        root: Folder with a folder for each reader.
    """

    root: Path

    def file(self, reader: str, name: str) -> Path:
        return self.root / reader / f"{name}.html"

    def address(self, reader: str, name: str) -> str:
        return self.file(reader, name).as_uri()


@pytest.fixture(scope="session")
def copies(tmp_path_factory: pytest.TempPathFactory) -> Copies:
    """The demo job, built in an office of its own so that the checkout's output is left alone, and moved away."""
    office = tmp_path_factory.mktemp("office")
    shutil.copytree(DEMO_JOB, office / "jobs" / NUMBER)
    (office / "shared").mkdir()
    shutil.copy(ROOT / "shared" / "office.yaml", office / "shared")
    made = build(Workspace(office), office / "jobs" / NUMBER)
    target = tmp_path_factory.mktemp("download") / FOLDER
    shutil.move(made.folder, target)
    shutil.rmtree(office)
    return Copies(target)


@pytest.fixture(scope="session")
def anatomy(chromium: "Browser", copies: Copies) -> Anatomy:
    """Return a function that opens a page once and tells what it refers to, asked for, complained of and says."""

    @cache
    def look(reader: str, name: str) -> dict[str, Any]:
        with watched(chromium) as seen:
            seen.page.goto(copies.address(reader, name))
            found: dict[str, Any] = seen.page.evaluate(script("anatomy"))
            return {**found, "asked": list(seen.asked), "errors": list(seen.errors)}

    return look


class Quiet(SimpleHTTPRequestHandler):
    """Serves files without a line for each on the terminal."""

    def log_message(self, format: str, *args: object) -> None:
        pass


@pytest.fixture(scope="session")
def host(copies: Copies) -> Iterator[str]:
    """Address of a server, on this machine only, that serves the copies."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=copies.root))
    thread = Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()
    thread.join()


@pytest.fixture
def open_page(chromium: "Browser", copies: Copies) -> Iterator[Open]:
    """Return a function that opens a page of a copy; closes every page after the test.

    Whatever a test does, nothing may be asked for outside the copy's folder and no error may be written.
    """
    with ExitStack() as stack:
        opened: list[tuple[str, Watched]] = []

        def opening(reader: str, name: str, **settings: Any) -> Watched:
            seen = stack.enter_context(watched(chromium, **settings))
            opened.append((reader, seen))
            seen.page.goto(copies.address(reader, name))
            return seen

        yield opening
        for reader, seen in opened:
            assert strays(seen.asked, copies.root / reader) == []
            assert seen.errors == []


def strays(asked: list[str], folder: Path) -> list[str]:
    """Return the requests for anything but a file of the folder; what a page makes in memory needs no file."""
    inside = f"{folder.as_uri()}/"
    return [url for url in asked if not url.startswith((inside, "data:", "blob:", "about:"))]


def until(page: "Page", holds: str) -> None:
    """Wait until something holds; a wait inside the page would need eval, which its policy forbids."""
    for _ in range(200):
        if page.evaluate(holds):
            return
        page.wait_for_timeout(50)
    raise AssertionError(f"never true: {holds}")
