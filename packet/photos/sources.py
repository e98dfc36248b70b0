"""The files and folders a person names → the photos in them, and a line for all that is passed over."""

import os
import stat
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from packet.photos.kinds import ENDINGS, HEAD_BYTES, Kind, kind_of
from packet.problems import Problem

#: A larger file is no photo of a phone [bytes].
MOST_BYTES = 200_000_000

_PHOTO_ENDINGS = tuple(ending for endings in ENDINGS.values() for ending in endings)


@dataclass
class Sources:
    """What was found.

    Attributes:
        photos: Photos and their kind by content, each file once, in the order of their names.
        passed_over: What is no photo, each with its reason.
        problems: What may be a photo and can't be read.
    """

    photos: dict[Path, Kind] = field(default_factory=dict)
    passed_over: list[Problem] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)


def find_photos(named: Iterable[Path]) -> Sources:
    """Return the photos among files and in folders, down to the last; links in a folder are not followed.

    Args:
        named: Files and folders.
    """
    found, seen = Sources(), set[str]()
    for start in named:
        for path in _files(start, found):
            real = os.path.realpath(path)
            if real not in seen:
                seen.add(real)
                _sort(path, found)
    return found


def _files(start: Path, found: Sources) -> Iterator[Path]:
    """Yield the files at or below a path in the order of their names; say why others are passed over."""
    if not os.path.lexists(start):
        found.problems.append(Problem("photo-source-missing", start))
        return
    if not start.is_dir():
        yield start
        return
    folders = [start]
    while folders:
        folder = folders.pop()
        try:
            with os.scandir(folder) as entries:
                inside = sorted(entries, key=lambda entry: entry.name)
        except OSError as error:
            found.problems.append(unreadable(folder, error))
            continue
        below = []
        for entry in inside:
            path = Path(entry.path)
            if entry.is_symlink():
                found.passed_over.append(Problem("photo-source-link", path))
            elif entry.name.startswith("."):
                found.passed_over.append(Problem("photo-source-hidden", path))
            elif entry.is_dir(follow_symlinks=False):
                below.append(path)
            else:
                yield path
        folders += reversed(below)


def _sort(path: Path, found: Sources) -> None:
    """Put a file among the photos, what is passed over, or the problems."""
    is_named_so = path.name.lower().endswith(_PHOTO_ENDINGS)
    doubtful = found.problems if is_named_so else found.passed_over
    try:
        status = path.stat()
        if not stat.S_ISREG(status.st_mode):
            found.passed_over.append(Problem("photo-source-no-file", path))
            return
        with path.open("rb") as file:
            head = file.read(HEAD_BYTES)
    except OSError as error:
        found.problems.append(unreadable(path, error))
        return
    kind = kind_of(head)
    if not head:
        doubtful.append(Problem("photo-source-empty", path))
    elif kind is None:
        doubtful.append(Problem("photo-source-other", path))
    elif status.st_size > MOST_BYTES:
        most = f"{MOST_BYTES // 1_000_000} MB"
        found.problems.append(Problem("photo-source-too-large", path, values={"most": most}))
    else:
        found.photos[path] = kind


def unreadable(path: Path, error: OSError) -> Problem:
    """Return the problem of a file or folder that can't be read."""
    reason = os.strerror(error.errno).lower() if error.errno else "it can't be opened"
    return Problem("photo-source-unreadable", path, values={"reason": reason})
