"""Waiting until files change: by looking at names, sizes and times, twice a second.

Notices of the operating system would be quicker, but they stay out on network drives and synced folders,
where offices keep their jobs, and break off when a folder is taken away and put back. Looking at a few
hundred files costs a few milliseconds. Whether a change matters is left to the build: it compares contents.
"""

import os
import time
from collections.abc import Iterator, Sequence
from pathlib import Path

#: Between two looks, and between two looks at files that are still changing [s].
PAUSE_S, SETTLE_S = 0.5, 0.2

Seen = dict[str, tuple[int, int, int]]


class Watch:
    """Folders as they were at the last look; ones that are not there yet are waited for too."""

    def __init__(self, folders: Sequence[Path]) -> None:
        self._folders = tuple(folders)
        self._seen = look(self._folders)

    def wait(self) -> None:
        """Return once a file has changed, come or gone since the last return, and all are still again."""
        found = look(self._folders)
        while found == self._seen:
            time.sleep(PAUSE_S)
            found = look(self._folders)
        while True:
            time.sleep(SETTLE_S)
            again = look(self._folders)
            if again == found:
                break
            found = again
        self._seen = found


def look(folders: Sequence[Path]) -> Seen:
    """Return size, time and number of every file below folders; what starts with a dot is passed over."""
    found: Seen = {}
    for folder in folders:
        for path in _files(folder):
            try:
                known = path.stat()
            except OSError:  # gone since, or a link to nothing
                continue
            found[str(path)] = (known.st_size, known.st_mtime_ns, known.st_ino)
    return found


def _files(folder: Path) -> Iterator[Path]:
    """Yield the files below a folder, linked ones too; a link that leads back up is followed once."""
    been: set[str] = set()
    for directory, names, files in os.walk(folder, followlinks=True):
        real = os.path.realpath(directory)
        names[:] = (
            [] if real in been else [name for name in names if not name.startswith((".", "__pycache__"))]
        )
        been.add(real)
        yield from (Path(directory, name) for name in files if not name.startswith("."))
