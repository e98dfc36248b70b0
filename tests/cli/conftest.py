"""Running the command inside an office folder."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from packet.cli.main import status
from tests.support.new_job import new_office as new_office
from tests.support.new_job import usual_office as usual_office


@dataclass(frozen=True)
class Ran:
    code: int
    out: str
    err: str


Run = Callable[..., Ran]


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Run:
    """Run ``packet`` with arguments in a folder; return its exit code and what it printed."""

    def ran(folder: Path, *arguments: str) -> Ran:
        monkeypatch.chdir(folder)
        capsys.readouterr()
        code = status(list(arguments))
        return Ran(code, *capsys.readouterr())

    return ran
