"""An office in a folder with an awkward name, and files as Windows writes them: the same packet, and it works."""

import shutil
import unicodedata
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from packet.site.links import broken_links
from tests.build_job.conftest import Packet
from tests.build_job.pages import tree
from tests.support.browser import watched
from tests.support.office import NUMBER, Office

if TYPE_CHECKING:
    from playwright.sync_api import Browser

Command = Callable[..., tuple[int, str, str]]

#: Names that addresses, shells, patterns and terminals trip over.
FOLDERS = (
    "Two words  and more",
    "Lot #2, 100% (new) [a]",
    "50%20off?yes&no=1;x",
    "it's {here} $HOME `x` !",
    "-rf *",
    unicodedata.normalize("NFC", "Dachdeckerei Münze, Café"),
    unicodedata.normalize("NFD", "Dachdeckerei Münze, Café"),
    "\u5c4b\u6839 \U0001f3e0",
    ".hidden office",
    "a" * 200,
)

MARK = b"\xef\xbb\xbf"


def moved(packet: Packet, tmp_path: Path, name: str) -> Path:
    """Move an office, without its packets, into a folder of another name."""
    folder = tmp_path / name
    shutil.copytree(packet.office.root, folder, ignore=shutil.ignore_patterns("out"))
    return folder


@pytest.mark.parametrize("name", FOLDERS)
def test_a_packet_does_not_depend_on_the_name_of_its_folder(
    small_packet: Packet, packet_command: Command, tmp_path: Path, name: str
) -> None:
    office = moved(small_packet, tmp_path, name)
    assert packet_command(office, "check")[0] in (0, 1)
    code, said, error = packet_command(office, "build", str(office / "jobs" / NUMBER))
    assert (code, error) == (0, "")
    assert f"out/{NUMBER}/outside/index.html" in said
    assert tree(office / "out" / NUMBER) == tree(small_packet.folder)
    assert packet_command(office, "build")[1].startswith(f"{NUMBER}: unchanged")


@pytest.mark.parametrize("name", FOLDERS)
def test_a_problem_in_such_a_folder_is_still_located(
    small_packet: Packet, packet_command: Command, tmp_path: Path, name: str
) -> None:
    office = moved(small_packet, tmp_path, name)
    record = office / "jobs" / NUMBER / "job.yaml"
    record.write_text(record.read_text().replace("kind: patch", "kind: pach"))
    code, _, error = packet_command(office / "jobs", "check")
    assert code == 2
    assert f"{NUMBER}/job.yaml:1:29: error[not-one-of]" in error


@pytest.mark.browser
@pytest.mark.parametrize("name", [FOLDERS[1], FOLDERS[2], FOLDERS[6], FOLDERS[7]])
def test_a_page_in_such_a_folder_opens_by_a_double_click(
    small_packet: Packet, packet_command: Command, tmp_path: Path, chromium: "Browser", name: str
) -> None:
    office = moved(small_packet, tmp_path, name)
    assert packet_command(office, "build")[0] == 0
    site = office / "out" / NUMBER / "outside"
    assert broken_links(site) == []
    with watched(chromium) as seen:
        page = seen.page
        page.goto((site / "photos.html").as_uri())
        assert (
            page.locator("figure img").evaluate("image => image.decode().then(() => image.naturalWidth)") > 0
        )
        page.click(".photo > a")
        page.wait_for_selector("dialog[open] img")
        shown = "document.querySelector('dialog img').decode().then(() => document.querySelector('dialog img').naturalWidth)"
        assert page.evaluate(shown) > 0
        page.keyboard.press("Escape")
        page.click("input[data-md-component=search-query]")
        page.keyboard.type("Heron")
        page.wait_for_selector(".md-search-result__link")
        page.click(".md-search-result__link >> nth=0")
        page.wait_for_load_state()
        assert page.locator("h1").is_visible()
        assert seen.errors == []
        inside = f"{site.as_uri()}/"
        assert [url for url in seen.asked if not url.startswith((inside, "data:", "blob:", "about:"))] == []


@pytest.mark.browser
def test_the_roof_plan_shows_in_such_a_folder(
    job_office: Office, packet_command: Command, tmp_path: Path, chromium: "Browser"
) -> None:
    office = tmp_path / FOLDERS[1]
    shutil.copytree(job_office.root, office)
    assert packet_command(office, "build")[0] == 0
    with watched(chromium) as seen:
        seen.page.goto((office / "out" / NUMBER / "outside" / "index.html").as_uri())
        image = seen.page.locator("#roof-plan img")
        assert image.evaluate("image => image.decode().then(() => image.naturalWidth)") > 0
        assert seen.errors == []


@pytest.mark.parametrize(
    "name", ["26\n041", "26\x1b041", "26\\041", ".26-041", "26:041", "26 041 ", "r\u00e9"]
)
def test_a_job_folder_with_an_awkward_name_is_built_or_refused_with_a_reason(
    small_packet: Packet, packet_command: Command, name: str
) -> None:
    jobs = small_packet.office.job.parent
    small_packet.office.job.rename(jobs / name)
    for command in ("check", "build"):
        code, said, error = packet_command(small_packet.office.root, command)
        assert code in (0, 1, 2)
        assert "Traceback" not in error
        assert not {"\x1b", "\x07"} & set(said + error)
        assert (code == 2) == ("error[" in error)


def windows(data: bytes) -> bytes:
    return MARK + data.replace(b"\n", b"\r\n")


def old_mac(data: bytes) -> bytes:
    return data.replace(b"\n", b"\r")


TEMPLATE = '{% extends "default:pages/scope.md.j2" %}\n{% block body %}\n{{ super() }}\n\n## Our own words\n\nTwo\nlines.\n{% endblock %}\n'
WORDS = "packet:\n  name: Roof packet\n"


@pytest.mark.parametrize(
    "written", [windows, old_mac, lambda data: MARK + data], ids=["Windows", "old Mac", "mark"]
)
def test_line_ends_and_a_byte_mark_change_no_byte_of_a_packet(
    small_packet: Packet, written: Callable[[bytes], bytes]
) -> None:
    office = small_packet.office
    office.added("complaint: |\n  A stain.\n  Two lines.\nsummary: >-\n  One\n  line.")
    own = [
        office.file("templates/pages/scope.md.j2", TEMPLATE),
        office.file("shared/words/en.yaml", WORDS),
        office.root / "shared" / "office.yaml",
        office.job / "photos.yaml",
        office.record,
    ]
    small_packet.build()
    plain = tree(small_packet.folder)
    for path in own:
        path.write_bytes(written(path.read_bytes()))
    assert small_packet.build().made, "other bytes of a record are another record"
    again = tree(small_packet.folder)
    assert b"Our own words" in again["outside/scope.html"]
    assert again.keys() == plain.keys()
    assert {name for name in plain if plain[name] != again[name]} == {".packet-built.json"}


@pytest.mark.parametrize("written", [windows, old_mac], ids=["Windows", "old Mac"])
def test_a_problem_stands_at_the_same_place_with_other_line_ends(
    small_packet: Packet, packet_command: Command, written: Callable[[bytes], bytes]
) -> None:
    small_packet.office.added("complaint: 'a'\nsummary: {a: b}\ntested:\n  on: 16.3.2026")
    code, _, plain = packet_command(small_packet.office.root, "check")
    assert code == 2
    assert "job.yaml:5:10: error[" in plain
    assert "job.yaml:7:7: error[bad-date]" in plain
    small_packet.office.record.write_bytes(written(small_packet.office.record.read_bytes()))
    assert packet_command(small_packet.office.root, "check")[2] == plain
