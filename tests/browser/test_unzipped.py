"""The demo packet's zip as its reader gets it: unzipped into an awkward folder, opened by double-click."""

import re
import shutil
import zipfile
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import unquote, urlsplit
from urllib.request import url2pathname

import pytest

from packet.build import build
from packet.handover.zipping import zip_copy
from packet.workspace import Workspace
from tests.browser.conftest import FOLDER, PAGES, strays
from tests.browser.scripts import script
from tests.browser.test_search import ANSWER, ask
from tests.support.browser import watched
from tests.support.office import DEMO_JOB, NUMBER, ROOT

if TYPE_CHECKING:
    from playwright.sync_api import Browser

#: What no page loads or links, and why it is in the zip: the licences that fonts and script must travel with,
#: and the data that the page of sources says lies beside it.
KEPT = re.compile(r"assets/.*LICENSE.*\.txt|packet\.json")


@pytest.fixture(scope="module")
def unzipped(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Folder the outside copy's zip was unpacked into."""
    office = tmp_path_factory.mktemp("zipping")
    shutil.copytree(DEMO_JOB, office / "jobs" / NUMBER)
    (office / "shared").mkdir()
    shutil.copy(ROOT / "shared" / "office.yaml", office / "shared")
    workspace = Workspace(office)
    made = zip_copy(workspace, build(workspace, office / "jobs" / NUMBER), "outside")
    target = tmp_path_factory.mktemp("download") / FOLDER
    with zipfile.ZipFile(made.file) as archive:
        archive.extractall(target)
    shutil.rmtree(office)
    return target


def test_a_note_and_one_folder_are_unpacked(unzipped: Path) -> None:
    assert sorted(path.name for path in unzipped.iterdir()) == ["26-041-outside", "UNZIP-FIRST.txt"]


def test_every_page_opens_whole_and_every_file_has_its_use(chromium: "Browser", unzipped: Path) -> None:
    folder = unzipped / "26-041-outside"
    used: set[str] = set()
    with watched(chromium) as seen:
        for name in PAGES:
            seen.page.goto((folder / f"{name}.html").as_uri())
            found = seen.page.evaluate(script("anatomy"))
            assert [source for source, width_px in found["images"] if not width_px] == []
            used.update(found["addresses"])
        ask(seen, "cartridge")
        seen.page.click(f"{ANSWER}[href*='quantities.html']")
        seen.page.wait_for_url("**/quantities.html*")
        # The drawing for narrow screens is one of two that a page chooses from.
        seen.page.set_viewport_size({"width": 390, "height": 844})
        seen.page.goto((folder / "index.html").as_uri())
        assert seen.errors == []
        assert strays(seen.asked, folder) == []
        used.update(seen.asked)
    paths = {Path(url2pathname(unquote(urlsplit(url).path))) for url in used if url.startswith("file:")}
    files = {path.relative_to(folder).as_posix(): path for path in folder.rglob("*") if path.is_file()}
    useless = [name for name, path in files.items() if path not in paths and not KEPT.fullmatch(name)]
    assert useless == []
