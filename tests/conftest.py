"""Settings and fixtures every test shares."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

from packet.closeout.assemble import assemble
from packet.closeout.model import Closeout
from packet.workspace import Workspace
from tests.support.browser import chromium as chromium
from tests.support.office import DEMO_JOB, ROOT, Office, demo_text
from tests.support.pictures import picture

# A loaded machine must not turn a slow first example into a failure.
settings.register_profile("packet", deadline=None)
settings.load_profile("packet")

#: Enough of a record to be accepted.
SMALLEST = """\
job: {number: 26-041, kind: patch, status: closed}
property: {street: 18 Heron Lane, town: Pellam Reach, state: South Carolina, time_zone: America/New_York}
cause: {what: A nail backed out.}
"""


@pytest.fixture
def job_office(tmp_path: Path) -> Office:
    """An office whose one job is a copy of the demo record, without its photos."""
    return Office(tmp_path / "office", demo_text())


@pytest.fixture
def small_office(tmp_path: Path) -> Office:
    """An office whose one job holds what a record must hold and nothing else."""
    return Office(tmp_path / "small", SMALLEST)


@pytest.fixture(scope="session")
def demo() -> Closeout:
    """The closeout of the demo job as it lies in the checkout, photos included."""
    return assemble(Workspace(ROOT), DEMO_JOB)[0]


@pytest.fixture
def shoot(job_office: Office) -> Callable[..., dict[str, Any]]:
    """Take a photo in the demo record's copy and return its log entry."""

    def entry(
        id: str, stage: str, *proves: str, taken: str = "2026:03:16 10:15:00", **more: Any
    ) -> dict[str, Any]:
        picture(job_office.job / "photos" / f"{id}.jpg", taken=taken)
        return {
            "id": id,
            "file": f"photos/{id}.jpg",
            "stage": stage,
            "shows": f"Photo {id}.",
            "proves": list(proves),
            "readers": ["outside", "office"],
            **more,
        }

    return entry
