"""A small theme and pages of our own, so that these tests do not move with the packet's look."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from packet.site.engine import Page, build_site
from packet.workspace import packaged

EPOCH = 1_773_792_000  # 2026-03-18, midnight UTC

MAIN = """{% extends "base.html" %}
{% block site_meta %}
<meta charset="utf-8"><link rel="icon" href="{{ config.theme.favicon | url }}">
{% endblock %}
"""

TABLE = """<table>
<thead><tr><th>Sheet</th><th>Nail</th></tr></thead>
<tbody><tr><td>S1</td><td>ring shank zanzibar</td></tr></tbody>
</table>
"""

PAGES = (
    Page(
        "index", "Front", "# The roof is dry\n\nSee [the scope](scope.md#deck).\n\n![deck](photos/P-01.png)\n"
    ),
    Page("scope", "Scope of work", f"# Scope\n\n## Deck {{#deck}}\n\n{TABLE}\n\n[front](index.md)\n"),
)

FILES = {"photos/P-01.png": b"not really a picture", "data/packet.json": b"{}"}


@pytest.fixture
def look(tmp_path: Path) -> Path:
    """Return a folder with ``theme`` and ``assets``."""
    folder = tmp_path / "look"
    (folder / "theme").mkdir(parents=True)
    (folder / "theme" / "main.html").write_text(MAIN)
    (folder / "assets" / "stylesheets").mkdir(parents=True)
    (folder / "assets" / "stylesheets" / "all.css").write_text('@import url("type.css");\n')
    (folder / "assets" / "stylesheets" / "type.css").write_text("body { color: #222 }\n")
    (folder / "assets" / "javascripts").mkdir()
    for path in (packaged("templates") / "assets" / "javascripts").glob("iframe-worker.*"):
        shutil.copy(path, folder / "assets" / "javascripts")
    return folder


@pytest.fixture
def build(tmp_path: Path, look: Path) -> Callable[..., Path]:
    """Return a function that builds a site into a folder of its own and returns the folder."""
    made: list[Path] = []

    def run(*pages: Page, **changes: object) -> Path:
        site_dir = tmp_path / f"site {len(made)}"
        made.append(site_dir)
        given: dict[str, object] = {
            "site_name": "Packet 26-041",
            "language": "en",
            "pages": pages or PAGES,
            "files": FILES,
            "theme_dir": look / "theme",
            "assets_dir": look / "assets",
            "epoch": EPOCH,
            "site_dir": site_dir,
        }
        build_site(**{**given, **changes})  # type: ignore[arg-type]
        return Path(str(changes.get("site_dir", site_dir)))

    return run


@pytest.fixture
def contents() -> Callable[[Path], dict[str, bytes]]:
    """Return a function that reads every file below a folder."""

    def read(folder: Path) -> dict[str, bytes]:
        files = (path for path in sorted(folder.rglob("*")) if path.is_file())
        return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}

    return read
