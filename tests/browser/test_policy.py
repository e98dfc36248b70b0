"""What a page may load and run, held in the browser: what somebody slips into a page neither runs nor asks for anything."""

import re
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING

import pytest

from tests.browser.conftest import PAGES_OF, Copies, Quiet, every_copy, every_sheet
from tests.support.browser import watched

if TYPE_CHECKING:
    from playwright.sync_api import Browser

POLICY = re.compile(r'\s*<meta http-equiv="Content-Security-Policy" content="([^"]*)">')
REFERRER = '<meta name="referrer" content="no-referrer">'


@dataclass
class Elsewhere:
    """A server that stands for the rest of the world.

    Attributes:
        address: Where it listens.
        asked: Path and ``Referer`` of every request.
    """

    address: str
    asked: list[tuple[str, str | None]] = field(default_factory=list)


@contextmanager
def listening(handler: Callable[..., BaseHTTPRequestHandler]) -> Iterator[str]:
    """Serve on this machine and give the address."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()
    thread.join()


@contextmanager
def opened_by(page: Path, *, served: bool) -> Iterator[str]:
    """Give the address of a page: of its file, or behind a server for its folder."""
    if served:
        with listening(partial(Quiet, directory=page.parent)) as address:
            yield f"{address}/{page.name}"
    else:
        yield page.as_uri()


@pytest.fixture
def elsewhere() -> Iterator[Elsewhere]:
    seen = Elsewhere("")

    class Answering(BaseHTTPRequestHandler):
        def do_GET(self) -> None:  # noqa: N802 (the server's name)
            seen.asked.append((self.path, self.headers["Referer"]))
            self.send_response(200)
            self.send_header("Content-Type", "text/html")
            self.end_headers()
            self.wfile.write(b"<title>elsewhere</title>")

        def log_message(self, format: str, *args: object) -> None:
            pass

    with listening(Answering) as seen.address:
        yield seen


@pytest.fixture
def spoiled(copies: Copies, tmp_path: Path) -> Callable[..., Path]:
    """Return a function that slips markup into the front page of a copy of the outside copy."""

    def slip(markup: str, *, policy: bool = True) -> Path:
        folder = tmp_path / f"slipped {policy}"
        shutil.copytree(copies.root / "outside", folder, dirs_exist_ok=True)
        text = (folder / "index.html").read_text(encoding="utf-8")
        text = text if policy else POLICY.sub("", text, count=1).replace(REFERRER, "")
        (folder / "index.html").write_text(text.replace("</body>", f"{markup}</body>"), encoding="utf-8")
        return folder / "index.html"

    return slip


@every_sheet
def test_the_policy_comes_before_all_else(copies: Copies, reader: str, name: str) -> None:
    text = copies.file(reader, name).read_text(encoding="utf-8")
    head = text.partition("<head>")[2]
    found = POLICY.match(head)
    assert found
    assert head[found.end() :].lstrip().startswith(REFERRER)
    assert text.index('<meta charset="utf-8">') < 1000, "a browser looks no further for the encoding"
    parts = dict(part.strip().partition(" ")[::2] for part in found[1].split(";"))
    assert parts["default-src"] == "'none'"
    assert (parts["base-uri"], parts["form-action"]) == ("'none'", "'none'")
    assert [part for part in found[1].split() if part.startswith(("'unsafe", "http", "*"))] == []
    assert len(re.findall("'sha256-", parts["script-src"])) == 2


@every_copy
def test_no_page_is_without_one(copies: Copies, reader: str) -> None:
    pages = sorted((copies.root / reader).rglob("*.html"))
    assert len(pages) == len(PAGES_OF[reader])
    assert [
        page.name for page in pages if "Content-Security-Policy" not in page.read_text(encoding="utf-8")
    ] == []


SLIPPED = """
<script>window.ran = "script"</script>
<img src="photos/none.jpg" onerror="window.ran = 'handler'" alt="">
<a href="javascript:void(window.ran = 'link')" id="slipped">x</a>
<img src="{elsewhere}/picture" alt="">
<script src="{elsewhere}/script.js"></script>
<link rel="stylesheet" href="{elsewhere}/style.css">
<iframe src="{elsewhere}/frame"></iframe>
<object data="{elsewhere}/object"></object>
<video src="{elsewhere}/film"></video>
<div style="background: url({elsewhere}/background)">x</div>
<style>body {{ background: url({elsewhere}/background2) }}</style>
<base href="{elsewhere}/">
<form action="{elsewhere}/form"><button id="send">x</button></form>
"""


@pytest.mark.parametrize("served", [False, True], ids=["from disk", "served"])
@pytest.mark.parametrize("policy", [True, False], ids=["as built", "without its policy"])
def test_what_is_slipped_in_neither_runs_nor_asks(
    chromium: "Browser", spoiled: Callable[..., Path], elsewhere: Elsewhere, served: bool, policy: bool
) -> None:
    page = spoiled(SLIPPED.format(elsewhere=elsewhere.address), policy=policy)
    with opened_by(page, served=served) as address, watched(chromium) as seen:
        seen.page.goto(address)
        seen.page.evaluate("document.getElementById('slipped').click()")
        seen.page.wait_for_timeout(300)
        ran = seen.page.evaluate("window.ran")
        seen.page.evaluate("document.getElementById('send').click()")
        seen.page.wait_for_timeout(300)
    if policy:
        assert ran is None
        assert elsewhere.asked == []
        assert sum("Content Security Policy" in text for text in seen.errors) >= 8
    else:
        assert ran
        asked = {path.partition("?")[0] for path, _ in elsewhere.asked}
        assert asked >= {"/picture", "/script.js", "/style.css", "/frame", "/background", "/form"}


@pytest.mark.parametrize("policy", [True, False], ids=["as built", "without it"])
def test_a_link_that_is_followed_does_not_tell_where_from(
    chromium: "Browser", spoiled: Callable[..., Path], elsewhere: Elsewhere, policy: bool
) -> None:
    page = spoiled(f'<a id="away" href="{elsewhere.address}/away">x</a>', policy=policy)
    with opened_by(page, served=True) as address, watched(chromium) as seen:
        seen.page.goto(address)
        seen.page.evaluate("document.getElementById('away').click()")
        seen.page.wait_for_url("**/away")
    told = [came_from for path, came_from in elsewhere.asked if path == "/away"]
    assert len(told) == 1
    assert (told[0] is None) is policy
