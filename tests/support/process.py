"""Running the program as a process of its own."""

import os

from tests.support.office import ROOT


def surroundings() -> dict[str, str]:
    """Return the environment in which a process finds the program of this checkout."""
    folders = [str(ROOT), os.environ.get("PYTHONPATH", "")]
    return {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, folders))}
