"""A file put in its place in one step, whole or not at all, also on a full disk or when the run is killed."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def placing(path: Path, part: Path | None = None, *, durable: bool = True) -> Iterator[Path]:
    """Give the name of a file to write; it takes the place of ``path`` when the block ends well.

    When the block raises, what was there stays and the half-made file is removed. What a killed run leaves is
    written over by the next one, so runs that may meet hold a lock or name parts of their own.

    Args:
        path: Where the file belongs; one that is there is replaced, and its permissions stay.
        part: Where it is made, on the same disk; a hidden file beside ``path`` when None.
        durable: Wait until the disk has it, so that not even a power cut leaves an empty file in its place.

    Raises:
        OSError: The disk takes no more, or may not be written.
    """
    part = part or path.with_name(f".{path.name}.part")
    try:
        yield part
        if durable:
            with part.open("rb+") as file:
                os.fsync(file.fileno())
        if path.exists():
            part.chmod(path.stat().st_mode & 0o7777)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)
