"""The shipped words of drawings, and the option that writes golden files anew.

``pytest tests/drawings --update-golden``; a changed drawing needs a sentence in the commit.
"""

import json
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

from packet.drawings.roof_plan import roof_plan
from packet.text import load_words
from tests.support.office import ROOT

GOLDEN = ROOT / "tests" / "golden" / "drawings"


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the option; it is known when ``tests/drawings`` is named on the command line."""
    parser.addoption("--update-golden", action="store_true", help="write tests/golden/drawings anew")


@pytest.fixture(scope="session")
def words() -> Mapping[str, Any]:
    """Return the words of drawings as they ship."""
    found: Mapping[str, Any] = load_words([ROOT / "shared"])["drawing"]
    return found


@pytest.fixture(scope="session")
def draw(words: Mapping[str, Any]) -> Callable[..., str]:
    """Return ``roof_plan`` with the shipped words; each roof is drawn once a session."""
    made: dict[str, str] = {}

    def drawn(geometry: Mapping[str, Any], *, narrow: bool = False) -> str:
        key = json.dumps([geometry, narrow])
        if key not in made:
            made[key] = roof_plan(geometry, words, narrow=narrow)
        return made[key]

    return drawn


@pytest.fixture
def check_golden(request: pytest.FixtureRequest, tmp_path: Path) -> Callable[[str, str], None]:
    """Return a check of text against its golden file; a differing text is kept beside the test."""

    def check(name: str, text: str) -> None:
        golden = GOLDEN / name
        if request.config.getoption("--update-golden", default=False):
            golden.parent.mkdir(parents=True, exist_ok=True)
            golden.write_text(text, encoding="utf-8", newline="\n")
        kept = tmp_path / name
        kept.write_text(text, encoding="utf-8", newline="\n")
        assert golden.is_file(), f"{name} has no golden file; pytest tests/drawings --update-golden writes it"
        assert golden.read_text(encoding="utf-8") == text, f"{name} changed; the new drawing is {kept}"

    return check
