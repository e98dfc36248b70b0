"""A published folder held against the list it carries, read apart from the program."""

from pathlib import Path

from packet.site.publish import MARKER_NAME


def is_whole(folder: Path) -> bool:
    """Return whether a folder holds every file its list names, each in its size."""
    marker = folder / MARKER_NAME
    if not marker.is_file():
        return False
    rows = [line.partition(" ") for line in marker.read_text(encoding="utf-8").splitlines()]
    return all(
        (folder / name).is_file() and (folder / name).stat().st_size == int(size) for size, _, name in rows
    )
