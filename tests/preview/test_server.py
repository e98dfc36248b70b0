"""The preview's server: this machine only, one copy only, reading only."""

import socket
import threading
import time
from pathlib import Path

import pytest

from packet.preview.server import HOST, TYPES, PortTaken, _Handler, serving
from packet.preview.state import Preview
from tests.preview.conftest import Serve, Served
from tests.support.office import Office


def test_every_file_of_the_copy_is_served_and_pages_get_the_preview_script(still: Served) -> None:
    folder = still.folder / "outside"
    files = [path for path in sorted(folder.rglob("*")) if path.is_file()]
    assert len(files) > 20
    for path in files:
        answer = still.ask(f"/{path.relative_to(folder).as_posix()}")
        assert answer.status == 200
        assert answer.headers["Content-Type"] == TYPES[path.suffix]
        if path.suffix != ".html":
            assert answer.body == path.read_bytes()
        else:
            assert answer.body.count(b'<script src="/.preview/preview.js" data-state="') == 1
            assert b"preview" not in path.read_bytes()
    assert still.ask("/").body == still.ask("/index.html").body


def test_an_address_with_a_question_and_a_place_finds_the_page(still: Served) -> None:
    assert still.ask("/sources.html?q=1#top").status == 200


@pytest.mark.parametrize("path", ["/", "/.preview/state", "/.preview/preview.js"])
@pytest.mark.parametrize(
    "hosts",
    [
        (),
        ("",),
        ("evil.example",),
        ("evil.example:{port}",),
        ("127.0.0.1",),
        ("127.0.0.1:1",),
        ("127.0.0.1:{port}.evil.example",),
        ("[::1]:{port}",),
        ("0.0.0.0:{port}",),
        ("127.0.0.1:{port}", "evil.example"),
        ("evil.example", "127.0.0.1:{port}"),
    ],
)
def test_a_request_for_another_host_is_refused(still: Served, hosts: tuple[str, ...], path: str) -> None:
    answer = still.ask(path, hosts=tuple(host.format(port=still.port) for host in hosts))
    assert answer.status == 403
    assert b"26-041" not in answer.body


@pytest.mark.parametrize("name", ["127.0.0.1", "localhost", "LOCALHOST"])
def test_this_machine_has_two_names(still: Served, name: str) -> None:
    assert still.ask("/", hosts=(f"{name}:{still.port}",)).status == 200


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE", "BREW"])
def test_nothing_but_reading_is_allowed(still: Served, method: str) -> None:
    answer = still.ask("/", method=method)
    assert (answer.status, answer.headers["Allow"]) == (405, "GET, HEAD")


@pytest.mark.parametrize("path", ["/", "/sources.html", "/nothing"])
def test_head_answers_without_a_body(still: Served, path: str) -> None:
    got, head = still.ask(path), still.ask(path, method="HEAD")
    assert head.body == b""
    assert (head.status, head.headers["Content-Length"]) == (got.status, got.headers["Content-Length"])


#: Ways out of the copy: other copies, the build's own lists, the record, the system.
WAYS_OUT = [
    "/../office/index.html",
    "/..%2foffice/index.html",
    "/%2e%2e/office/index.html",
    "/%252e%252e/office/index.html",
    "/..\\office\\index.html",
    "/..%5coffice%5cindex.html",
    "/photos/../../office/index.html",
    "/../.packet-built.json",
    "/.packet-built.json",
    "/../../../jobs/26-041/job.yaml",
    "//etc/passwd",
    "/%2fetc%2fpasswd",
    "/c:/windows/win.ini",
    "/C%3A%5Cwindows%5Cwin.ini",
    "/index.html::$DATA",
    "/index.html%00.txt",
    "/index.html%0a",
    "/%ff",
    "/%c0%ae%c0%ae/office/index.html",
    "/./index.html",
    "/assets//fonts",
    "/.preview/",
    "/.preview/../index.html",
    "/.preview/..%2f..%2findex.html",
]


@pytest.mark.parametrize("path", [*WAYS_OUT, "/photos", "/photos/", "/assets/", "/index.html/"])
def test_what_is_no_file_of_the_copy_is_not_found(still: Served, path: str) -> None:
    answer = still.ask(path)
    assert answer.status == 404
    assert b"index.html" not in answer.body


def test_an_address_that_names_a_server_is_refused(still: Served) -> None:
    assert still.ask(f"http://127.0.0.1:{still.port}/index.html").status == 400


def test_a_link_in_the_place_of_a_file_is_not_followed(served: Served, tmp_path: Path) -> None:
    secret = tmp_path / "secret.html"
    secret.write_text("secret")
    for name in ("outside/sources.html", "outside/photos"):
        path = served.folder / name
        kept = path.rename(path.with_name("kept"))
        path.symlink_to(secret if path.suffix else kept)
        kept.rename(tmp_path / path.name)
    (served.folder / "outside" / "photos").unlink()
    (served.folder / "outside" / "photos").symlink_to(tmp_path / "photos")
    photo = next((tmp_path / "photos").glob("*.jpg")).name
    for address in ("/sources.html", f"/photos/{photo}"):
        answer = served.ask(address)
        assert (answer.status, b"secret" in answer.body) == (404, False)


@pytest.mark.parametrize(("path", "status"), [("/", 200), ("/nothing", 404), ("/.preview/state", 200)])
def test_every_answer_forbids_keeping_guessing_and_embedding(still: Served, path: str, status: int) -> None:
    answer = still.ask(path)
    assert answer.status == status
    expected = {
        "Cache-Control": "no-store",
        "Content-Security-Policy": "frame-ancestors 'none'",
        "Cross-Origin-Resource-Policy": "same-origin",
        "Referrer-Policy": "no-referrer",
        "Server": "packet",
        "X-Content-Type-Options": "nosniff",
    }
    assert {name: answer.headers[name] for name in expected} == expected
    assert "Access-Control-Allow-Origin" not in answer.headers


def test_only_this_machine_is_listened_to(still: Served) -> None:
    others = {info[4][0] for info in socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET)}
    for address in others - {HOST}:
        with socket.socket() as tried:
            tried.settimeout(2)
            assert tried.connect_ex((address, still.port)) != 0
    assert HOST == "127.0.0.1"


def test_a_job_without_output_has_a_page_that_waits(small_office: Office, serve: Serve) -> None:
    served = serve(small_office)
    answer = served.ask("/")
    assert answer.status == 503
    assert b"There is no page of this job yet" in answer.body
    assert b"preview.js" in answer.body
    assert served.ask("/sources.html").status == 404
    served.preview.tell("job.yaml:3: wrong")
    assert b"This page reloads when the mistakes are corrected" in served.ask("/").body


def test_a_page_read_while_the_packet_changes_places_is_found_all_the_same(served: Served) -> None:
    aside = served.folder.rename(served.folder.with_name("aside"))
    back = threading.Timer(0.15, lambda: aside.rename(served.folder))
    back.start()
    answer = served.ask("/sources.html")
    back.join()
    assert answer.status == 200


def test_a_page_names_the_state_from_before_it_was_read(
    served: Served, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A page that named a later state than its bytes show would never be loaded again."""
    seen, read = served.ask("/.preview/state").body, _Handler._content

    def overtaken(handler: _Handler, name: str) -> bytes | None:
        content = read(handler, name)
        handler.server.preview.tell("job.yaml:3: wrong")
        return content

    monkeypatch.setattr(_Handler, "_content", overtaken)
    assert b'data-state="%b"' % seen in served.ask("/").body
    assert served.ask("/.preview/state").body != seen


def test_a_waiting_page_hears_of_a_change_at_once(served: Served) -> None:
    seen = served.ask("/.preview/state").body.decode()
    told = threading.Timer(0.3, served.preview.tell, ["job.yaml:3: wrong"])
    begun = time.monotonic()
    told.start()
    now = served.ask(f"/.preview/state?seen={seen}").body.decode()
    assert now != seen
    assert 0.2 < time.monotonic() - begun < 5
    assert f'data-state="{now}"'.encode() in served.ask("/").body


def test_stopping_lets_waiting_pages_go(still: Served) -> None:
    before = [t for t in threading.enumerate() if t.name == "preview"]
    preview = Preview(still.folder, "outside")
    with serving(preview, (0,)) as address:
        served = Served(still.office, preview, int(address.rstrip("/").rpartition(":")[2]))
        ended: list[int] = []
        page = threading.Thread(
            target=lambda: ended.append(served.ask(f"/.preview/state?seen={preview.state}").status)
        )
        page.start()
        time.sleep(0.3)
        begun = time.monotonic()
    page.join(5)
    assert ended == [200]
    assert time.monotonic() - begun < 3
    assert [t for t in threading.enumerate() if t.name == "preview"] == before
    with socket.socket() as tried:
        assert tried.connect_ex((HOST, served.port)) != 0


def test_a_port_in_use_is_told_and_the_next_one_taken(still: Served) -> None:
    with pytest.raises(PortTaken) as taken, serving(still.preview, (still.port,)):
        pass
    assert (taken.value.port, taken.value.why) == (still.port, "is in use")
    with serving(Preview(still.folder, "outside"), (still.port, 0)) as address:
        assert address.startswith("http://127.0.0.1:")
        assert f":{still.port}/" not in address
