"""A built copy behind the preview's server, and plain requests to it."""

import http.client
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path

import pytest

from packet.preview.server import serving
from packet.preview.state import Preview
from tests.support.built import built_office, copied
from tests.support.office import NUMBER, Office


@dataclass(frozen=True)
class Answer:
    status: int
    headers: dict[str, str]
    body: bytes


@dataclass(frozen=True)
class Served:
    office: Office
    preview: Preview
    port: int

    @property
    def folder(self) -> Path:
        return self.office.root / "out" / NUMBER

    def ask(self, path: str, *, method: str = "GET", hosts: tuple[str, ...] | None = None) -> Answer:
        """Send a path as it is, with the Host headers given; a client's library would tidy both."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        connection.putrequest(method, path, skip_host=True)
        for host in (f"127.0.0.1:{self.port}",) if hosts is None else hosts:
            connection.putheader("Host", host)
        connection.endheaders()
        answer = connection.getresponse()
        try:
            return Answer(answer.status, dict(answer.getheaders()), answer.read())
        finally:
            connection.close()


Serve = Callable[[Office], Served]


@pytest.fixture(scope="session")
def _once(tmp_path_factory: pytest.TempPathFactory) -> Office:
    return built_office(tmp_path_factory.mktemp("preview") / "office")


@pytest.fixture
def serve() -> Iterator[Serve]:
    """Return a function that serves the outside copy of an office until the test ends."""
    with ExitStack() as stack:

        def start(office: Office) -> Served:
            preview = Preview(office.root / "out" / NUMBER, "outside")
            address = stack.enter_context(serving(preview, (0,)))
            return Served(office, preview, int(address.rstrip("/").rpartition(":")[2]))

        yield start


@pytest.fixture(scope="session")
def still(_once: Office) -> Iterator[Served]:
    """One server for all tests that only ask."""
    preview = Preview(_once.root / "out" / NUMBER, "outside")
    with serving(preview, (0,)) as address:
        yield Served(_once, preview, int(address.rstrip("/").rpartition(":")[2]))


@pytest.fixture
def served(_once: Office, tmp_path: Path, serve: Serve) -> Served:
    return serve(copied(_once, tmp_path))
