"""``packet serve`` as it is run: a process of its own, a record that is edited, and Ctrl-C."""

import http.client
import os
import re
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import IO

import pytest

from tests.cli.conftest import Run
from tests.support.office import ROOT, Office

#: No build of the smallest job takes longer, on a machine that does other things too [s].
PATIENCE_S = 60.0

BAR = b'class="preview-problems"'


@dataclass
class Serving:
    """A running command, what it has printed, and its pages."""

    process: subprocess.Popen[str]
    out: list[str] = field(default_factory=list)
    err: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        for stream, lines in ((self.process.stdout, self.out), (self.process.stderr, self.err)):
            assert stream
            threading.Thread(target=self._keep, args=(stream, lines), daemon=True).start()

    @staticmethod
    def _keep(stream: IO[str], lines: list[str]) -> None:
        lines.extend(iter(stream.readline, ""))

    @property
    def port(self) -> int:
        found = re.search(r"^26-041: http://127\.0\.0\.1:(\d+)/$", "".join(self.out), re.MULTILINE)
        return int(found[1]) if found else 0

    def page(self, name: str = "index.html") -> bytes:
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        connection.request("GET", f"/{name}")
        try:
            return connection.getresponse().read()
        finally:
            connection.close()

    def wait(self, holds: Callable[[], bool]) -> None:
        until = time.monotonic() + PATIENCE_S
        while not holds():
            assert time.monotonic() < until, ("waited in vain", self.out, self.err)
            assert self.process.poll() is None, ("ended", self.out, self.err)
            time.sleep(0.1)


Start = Callable[..., Serving]


@pytest.fixture
def start() -> Iterator[Start]:
    """Return a function that starts the command in an office and waits for its address."""
    begun: list[subprocess.Popen[str]] = []

    def run(office: Office, *arguments: str) -> Serving:
        process = subprocess.Popen(
            [sys.executable, "-m", "packet", "serve", "26-041", "--port", "0", *arguments],
            cwd=office.root,
            env={**os.environ, "PYTHONPATH": os.pathsep.join([str(ROOT), os.environ.get("PYTHONPATH", "")])},
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            encoding="utf-8",
            # A test run in the background of a shell ignores Ctrl-C, and so would its children.
            preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
        )
        begun.append(process)
        serving = Serving(process)
        serving.wait(lambda: serving.port > 0)
        return serving

    yield run
    for process in begun:
        process.kill()
        process.wait()


def stop(serving: Serving) -> int:
    serving.process.send_signal(signal.SIGINT)
    return serving.process.wait(10)


def test_pages_follow_the_record_and_outlive_its_mistakes(small_office: Office, start: Start) -> None:
    good = small_office.text
    serving = start(small_office)
    assert b"A nail backed out" in serving.page("packet.json")
    assert BAR not in serving.page()

    small_office.replaced("A nail backed out.", "Two nails backed out.")
    serving.wait(lambda: b"Two nails backed out" in serving.page("packet.json"))

    small_office.changed("job.kind", "pach")
    serving.wait(lambda: BAR in serving.page())
    page = serving.page()
    assert b"job&#46;yaml&#58;1&#58;" in page
    assert b"18 Heron Lane" in page
    assert b"Two nails backed out" in serving.page("packet.json")
    serving.wait(lambda: any("Nothing was built for 26-041." in line for line in serving.err))
    assert re.match(r"jobs/26-041/job\.yaml:1:\d+: error\[not-one-of\]: ", serving.err[0])

    small_office.write(good)
    serving.wait(lambda: BAR not in serving.page())
    serving.wait(lambda: b"A nail backed out" in serving.page("packet.json"))
    assert stop(serving) == 0
    assert not [path for path in (small_office.root / "out").iterdir() if path.name.startswith(".work-")]


def test_mending_without_a_change_takes_the_bar_away(small_office: Office, start: Start) -> None:
    good = small_office.text
    small_office.changed("job.kind", "pach")
    serving = start(small_office)
    assert BAR in serving.page()
    assert b"There is no page of this job yet" in serving.page()
    small_office.write(good)
    serving.wait(lambda: BAR not in serving.page())
    small_office.changed("job.kind", "pach")
    serving.wait(lambda: BAR in serving.page())
    small_office.write(good)
    serving.wait(lambda: BAR not in serving.page())
    serving.wait(lambda: any(line.startswith("26-041: unchanged") for line in serving.out))


def test_words_and_pages_of_the_office_are_watched_also_when_they_are_new(
    small_office: Office, start: Start
) -> None:
    serving = start(small_office)
    small_office.file("shared/words/en.yaml", "packet: {name: Roof papers}\n")
    serving.wait(lambda: b"Roof papers" in serving.page())
    page = small_office.file("templates/pages/scope.md.j2", "{% if x %}")
    serving.wait(lambda: b"template&#45;bad" in serving.page())
    page.unlink()
    serving.wait(lambda: BAR not in serving.page())


@pytest.mark.parametrize("arguments", [[], ["--quiet"]])
def test_ctrl_c_stops_it_with_0_also_while_a_page_waits(
    small_office: Office, start: Start, arguments: list[str]
) -> None:
    serving = start(small_office, *arguments)
    found = re.search(rb'data-state="([0-9a-f]+-\d+)"', serving.page())
    assert found
    port = serving.port
    with (
        socket.create_connection(("127.0.0.1", port)) as waiting,
        socket.create_connection(("127.0.0.1", port)),
    ):
        ask = f"GET /.preview/state?seen={found[1].decode()} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n\r\n"
        waiting.sendall(ask.encode())
        time.sleep(0.3)
        begun = time.monotonic()
        assert stop(serving) == 0
    assert time.monotonic() - begun < 5
    time.sleep(0.2)
    assert ("Stopped.\n" in serving.out) is (not arguments)
    assert (len(serving.out) == 1) is bool(arguments)
    assert serving.err == []
    with socket.socket() as tried:
        assert tried.connect_ex(("127.0.0.1", port)) != 0


def test_the_offices_copy_is_shown_only_when_asked_for(small_office: Office, start: Start) -> None:
    assert b'"reader": "outside"' in start(small_office).page("packet.json")
    assert b'"reader": "office"' in start(small_office, "--copy", "office").page("packet.json")


def test_a_port_in_use_is_a_clear_refusal(small_office: Office, run: Run) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        ran = run(small_office.root, "serve", "26-041", "--port", str(port))
    assert (ran.code, ran.out) == (2, "")
    assert f"port {port} is in use; choose another one, for example --port " in ran.err
    assert "Traceback" not in ran.err


@pytest.mark.parametrize("arguments", [["26-099"], ["26-041", "--port", "70000"], []])
def test_a_bad_command_exits_2_and_serves_nothing(
    small_office: Office, run: Run, arguments: list[str]
) -> None:
    ran = run(small_office.root, "serve", *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert not (small_office.root / "out").exists()


def test_a_fault_of_the_program_ends_it_with_70(
    small_office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*arguments: object) -> None:
        raise ZeroDivisionError("a fault of ours")

    before = [thread for thread in threading.enumerate() if thread.name == "preview"]
    monkeypatch.setattr("packet.closeout.assemble.assemble", broken)
    ran = run(small_office.root, "serve", "26-041", "--port", "0")
    assert ran.code == 70
    assert "ZeroDivisionError: a fault of ours" in ran.err
    assert [thread for thread in threading.enumerate() if thread.name == "preview"] == before


def test_a_file_that_is_gone_before_it_is_read_is_looked_at_again(
    small_office: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls = []

    def vanishing(*arguments: object, **more: object) -> None:
        calls.append(1)
        if len(calls) < 3:
            raise FileNotFoundError(2, "no such file", "job.yaml~")
        raise KeyboardInterrupt

    monkeypatch.setattr("packet.build.build", vanishing)
    ran = run(small_office.root, "serve", "26-041", "--port", "0")
    assert (ran.code, len(calls)) == (0, 3)
