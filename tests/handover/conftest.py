"""A built packet to zip."""

from pathlib import Path

import pytest

from tests.support.built import built_office, copied
from tests.support.office import Office


@pytest.fixture(scope="session")
def _once(tmp_path_factory: pytest.TempPathFactory) -> Office:
    return built_office(tmp_path_factory.mktemp("handover") / "office")


@pytest.fixture
def ready(_once: Office, tmp_path: Path) -> Office:
    """An office with a built packet, which a test may spoil."""
    return copied(_once, tmp_path)
