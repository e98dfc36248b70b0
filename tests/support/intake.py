"""Taking photos into a job by the command, and what lies in the job afterwards."""

import hashlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.support.office import Office

HAND_MADE = (
    b"# Our own remark.\r\nphotos:\r\n\r\n-   id: P09   # the first\r\n    file: 'photos/P09.jpg'\r\n"
    b"    stage: \"deck\"\r\n    shows: >-\r\n      Old deck,\r\n      chalked.\r\n"
)  # fmt: skip


@pytest.fixture
def phone(small_office: Office) -> Path:
    """A folder beside the office's folders, as a phone or a card is."""
    folder = small_office.root.parent / "phone"
    folder.mkdir()
    return folder


def log_of(office: Office) -> list[dict[str, Any]]:
    text = (office.job / "photos.yaml").read_bytes()
    rows: list[dict[str, Any]] = yaml.load(text, Loader=yaml.BaseLoader)["photos"]
    return rows


def files_of(office: Office) -> dict[str, bytes]:
    """Return every file of the job by its path, temporary ones too."""
    found = (path for path in office.job.rglob("*") if path.is_file())
    return {path.relative_to(office.job).as_posix(): path.read_bytes() for path in found}


def take(office: Office, run: Callable[..., Any], *arguments: Path | str) -> Any:
    return run(office.root, "photos", "26-041", *(str(argument) for argument in arguments))


def sha(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()
