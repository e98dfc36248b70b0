"""A web server for this machine alone: reads one copy's files and nothing else.

A page of another site can make a browser call 127.0.0.1, also under a name of its own choosing, so a request
must name this server. Files are looked up among those the build listed; no path is ever put together from
what was asked.
"""

import errno
import os
import sys
import threading
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import PurePosixPath
from socketserver import TCPServer
from typing import Any
from urllib.parse import parse_qs, unquote

from packet.preview.pages import OWN, OWN_FILES, own_file, waiting_page, with_preview, words_for_pages
from packet.preview.state import Preview

HOST = "127.0.0.1"

#: Tried in this order when no port is asked for.
PORTS = tuple(range(8000, 8020))

#: Written on every answer, refusals included.
HEADERS = {
    "Cache-Control": "no-store",
    "Content-Security-Policy": "frame-ancestors 'none'",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
}

#: The system's own table can be wrong (a changed registry); a browser told not to guess then runs no script.
TYPES = {
    ".css": "text/css; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".ics": "text/calendar; charset=utf-8",
    ".jpg": "image/jpeg",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".pdf": "application/pdf",
    ".png": "image/png",
    ".svg": "image/svg+xml; charset=utf-8",
    ".txt": "text/plain; charset=utf-8",
    ".woff2": "font/woff2",
}
_UNKNOWN_TYPE = "application/octet-stream"

_METHODS = ("GET", "HEAD")

#: What the system says of a port, as it follows "port 8000".
_REFUSALS = {errno.EADDRINUSE: "is in use", errno.EACCES: "may not be used"}

#: How long a page's question for another state is kept open, and a silent connection [s].
_PATIENCE_S, _SILENCE_S = 20.0, 30.0

#: How soon the server notices that it should stop [s].
_STOP_S = 0.05

#: While a packet takes its place there may be a moment without one: how often to look, after how long [s].
_LOOKS, _PAUSE_S = 10, 0.05


class PortTaken(Exception):
    """No server can be started there.

    Attributes:
        port: The port, the last one tried.
        why: What the system says of it, "is in use".
        other: A port to try instead.
    """

    def __init__(self, port: int, why: str) -> None:
        self.port, self.why, self.other = port, why, max(port + 1, PORTS[0]) if port < 65535 else PORTS[0]
        super().__init__(f"port {port} {why}")


@contextmanager
def serving(preview: Preview, ports: Sequence[int]) -> Iterator[str]:
    """Serve a copy while the block runs, and give the address of its front page.

    Args:
        preview: What is served.
        ports: Tried in order; 0 is any that is free.

    Raises:
        PortTaken: None of them can be had.
    """
    words_for_pages()  # before a mistake in them can be among the problems to show
    server = _started(preview, ports)
    thread = threading.Thread(target=server.serve_forever, args=(_STOP_S,), name="preview", daemon=True)
    thread.start()
    try:
        yield f"http://{HOST}:{server.server_port}/"
    finally:
        preview.close()
        server.shutdown()
        server.server_close()
        thread.join()


def _started(preview: Preview, ports: Sequence[int]) -> "_Server":
    for port in ports:
        try:
            return _Server(preview, port)
        except OSError as error:
            if error.errno not in _REFUSALS:
                raise
            why = _REFUSALS[error.errno]
    raise PortTaken(ports[-1], why)


class _Server(ThreadingHTTPServer):
    """One thread a request; a thread that waits for a browser never keeps the program alive."""

    daemon_threads = True
    # On Windows this setting would let two programs have one port.
    allow_reuse_address = os.name == "posix"

    def __init__(self, preview: Preview, port: int) -> None:
        self.preview = preview
        super().__init__((HOST, port), _Handler)
        names = (HOST, "localhost")
        self.hosts = {f"{name}:{self.server_port}" for name in names}
        if self.server_port == 80:
            self.hosts |= set(names)

    def server_bind(self) -> None:
        """Bind without asking the network for this machine's name, which can take seconds."""
        TCPServer.server_bind(self)
        self.server_name, self.server_port = HOST, self.server_address[1]

    def handle_error(self, request: Any, client_address: Any) -> None:
        """Pass over a browser that went away; anything else is a fault of ours."""
        if not isinstance(sys.exception(), (ConnectionError, TimeoutError)):
            super().handle_error(request, client_address)


class _Handler(BaseHTTPRequestHandler):
    """Answers one request."""

    server: _Server
    timeout = _SILENCE_S

    def parse_request(self) -> bool:
        """Read the request and refuse what is not asked of this server in a plain way."""
        if not super().parse_request():
            return False
        hosts = self.headers.get_all("Host", [])
        if len(hosts) != 1 or hosts[0].strip().lower() not in self.server.hosts:
            self.send_error(HTTPStatus.FORBIDDEN)
        elif self.command not in _METHODS:
            self.send_error(HTTPStatus.METHOD_NOT_ALLOWED)
        elif not self.path.startswith("/"):
            self.send_error(HTTPStatus.BAD_REQUEST)
        else:
            return True
        return False

    def do_GET(self) -> None:  # noqa: N802 (the library's name)
        """Answer with a file of the copy, or one of the preview's own."""
        path, _, query = self.path.partition("#")[0].partition("?")
        if path.startswith(OWN):
            self._answer_own(path.removeprefix(OWN), query)
        else:
            self._answer_file(path)

    do_HEAD = do_GET  # noqa: N815 (the library's name)

    def end_headers(self) -> None:
        """Write the headers that every answer has."""
        for name, value in HEADERS.items():
            self.send_header(name, value)
        if self.command not in _METHODS:
            self.send_header("Allow", ", ".join(_METHODS))
        super().end_headers()

    def version_string(self) -> str:
        """Name the server without versions."""
        return "packet"

    def log_message(self, format: str, *args: Any) -> None:
        """Write no line for each request: the terminal is for builds and problems."""

    def _answer_own(self, name: str, query: str) -> None:
        if name in OWN_FILES:
            self._send(own_file(name), name)
        elif name == "state":
            seen = parse_qs(query).get("seen", [""])[0]
            self._send(self.server.preview.wait(seen, _PATIENCE_S).encode(), "state.txt")
        else:
            self.send_error(HTTPStatus.NOT_FOUND)

    def _answer_file(self, path: str) -> None:
        """Answer with a file the build listed."""
        preview = self.server.preview
        try:
            name = unquote(path, errors="strict").removeprefix("/") or "index.html"
        except UnicodeDecodeError:
            name = ""
        for look in range(_LOOKS):
            time.sleep(_PAUSE_S if look else 0)
            # Before the file is read: a page older than its state would never be loaded again.
            state = preview.state
            listed = preview.published()
            content = self._content(name) if name in listed else None
            if content is not None:
                page = with_preview(content, state, preview.problems) if name.endswith(".html") else content
                self._send(page, name)
                return
            if listed and name not in listed:
                break
        if name == "index.html":
            self._send(waiting_page(preview), name, HTTPStatus.SERVICE_UNAVAILABLE)
        else:
            self.send_error(HTTPStatus.NOT_FOUND)

    def _content(self, name: str) -> bytes | None:
        """Return a listed file's bytes, or None when it is not there or a link put in its place."""
        folder = self.server.preview.folder / self.server.preview.reader
        file = folder / name
        try:
            inside = file.resolve() == folder.parent.resolve() / folder.name / name
            return file.read_bytes() if inside else None
        except OSError:
            return None

    def _send(self, content: bytes, name: str, status: HTTPStatus = HTTPStatus.OK) -> None:
        self.send_response(status)
        self.send_header("Content-Type", TYPES.get(PurePosixPath(name).suffix, _UNKNOWN_TYPE))
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(content)
