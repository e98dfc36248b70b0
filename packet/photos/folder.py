"""The folder ``photos/`` of a job: what lies there, what of it is logged, and copying into it."""

import errno
import hashlib
import os
import re
from collections.abc import Collection, Iterator
from pathlib import Path

from packet.photos.kinds import Kind
from packet.photos.log import LoggedPhoto, photo_path
from packet.photos.naming import free_name, plain_name
from packet.placing import placing
from packet.problems import Problem, Refused
from packet.snippet import FORBIDDEN

#: What a killed run may leave; swept by the next one.
_PART = re.compile(r"\.taken-in-\d+\.part", re.ASCII)
_LONGEST_FILE = 200
_BLOCK_BYTES = 1 << 20


class CopyDiffers(Exception):
    """The file changed or went away while it was copied."""


class PhotoFolder:
    """The photos of a job as files, looked up by name and by content.

    Args:
        job_folder: Folder of the job.
        entries: Entries of its log.

    Raises:
        Refused: ``photos`` or the log is a link, or no folder and no file (``path-leaves-job``).
    """

    def __init__(self, job_folder: Path, entries: Collection[LoggedPhoto]) -> None:
        self.job_folder, self.path = job_folder, job_folder / "photos"
        if self.path.is_symlink() or (self.path.exists() and not self.path.is_dir()):
            raise Refused(Problem("path-leaves-job", job_folder, found="photos"))
        self._ids = {entry.file: entry.id for entry in entries}
        self._ids_by_digest = {entry.sha256: entry.id for entry in entries if entry.sha256}
        self._undigested = [entry for entry in entries if not entry.sha256]
        self._by_size: dict[int, list[Path]] = {}
        for path in self._files():
            self._by_size.setdefault(path.stat().st_size, []).append(path)
        names = {path.name for path in self.path.iterdir()} if self.path.is_dir() else set()
        names |= {file.removeprefix("photos/") for file in self._ids}
        self._taken = {name.casefold() for name in names}

    def id_of(self, source: Path, sha256: str) -> str | None:
        """Return the id under which a file, or a file with the same bytes, is logged."""
        inside = self._inside(source)
        if inside in self._ids:
            return self._ids[inside]
        if sha256 in self._ids_by_digest:
            return self._ids_by_digest[sha256]
        for entry in self._undigested:
            path = photo_path(self.job_folder, entry.file)
            same_size = path and path.is_file() and path.stat().st_size == source.stat().st_size
            if path and same_size and digest_of(path) == sha256:
                return entry.id
        return None

    def lying_there(self, source: Path, sha256: str) -> str | None:
        """Return the log's name of a file that lies there unlogged and has these bytes, or None.

        It is the source itself, or what an earlier run copied before it was stopped.
        """
        inside = self._inside(source)
        if inside:
            return inside
        for path in self._by_size.get(source.stat().st_size, ()):
            name = self._inside(path)
            if name and name not in self._ids and digest_of(path) == sha256:
                return name
        return None

    def name_for(self, source: Path, kind: Kind) -> str:
        """Return the log's name for a copy, no other file's, and keep it."""
        name = free_name(plain_name(source.name, kind), self._taken)
        self._taken.add(name.casefold())
        return f"photos/{name}"

    def copy(self, source: Path, file: str, sha256: str) -> None:
        """Copy a file under its name in the log, whole or not at all.

        Raises:
            CopyDiffers: The file can't be read, or what was written does not have the digest.
            OSError: The disk takes no more, or a file of that name has come meanwhile.
        """
        target = self.job_folder / file
        self.path.mkdir(exist_ok=True)
        with placing(target, _part(self.path)) as part:
            with part.open("wb") as new:
                for block in _blocks(source):
                    new.write(block)
            if digest_of(part) != sha256:
                raise CopyDiffers
            if os.path.lexists(target):
                raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(target))

    def sweep(self) -> None:
        """Take away the half copies of runs that were killed; the caller holds the job's lock."""
        for folder in (self.path, self.job_folder):
            for path in list(folder.iterdir()) if folder.is_dir() else ():
                if _PART.fullmatch(path.name):
                    path.unlink()

    def _files(self) -> Iterator[Path]:
        for directory, folders, names in os.walk(self.path):
            folders.sort()
            for name in sorted(names):
                path = Path(directory, name)
                if path.is_file() and not path.is_symlink() and not _PART.fullmatch(name):
                    yield path

    def _inside(self, source: Path) -> str | None:
        """Return the log's name of a file in the folder; None elsewhere, or when a log can't name it."""
        real = source.resolve()
        if not real.is_relative_to(self.path.resolve()):
            return None
        file = f"photos/{real.relative_to(self.path.resolve()).as_posix()}"
        if len(file) > _LONGEST_FILE or FORBIDDEN.search(file) or re.search(r"[\t\r\n]", file):
            return None
        return file if photo_path(self.job_folder, file) else None


def _part(folder: Path) -> Path:
    return folder / f".taken-in-{os.getpid()}.part"


def _blocks(source: Path) -> Iterator[bytes]:
    """Yield a file's bytes; one that can't be read to its end has changed since it was looked at."""
    try:
        with source.open("rb") as file:
            while block := file.read(_BLOCK_BYTES):
                yield block
    except OSError as error:
        raise CopyDiffers from error


def write_whole(path: Path, data: bytes) -> None:
    """Put new bytes in the place of a file in one step; its permissions stay.

    Raises:
        OSError: The disk takes no more, or may not be written.
    """
    with placing(path, _part(path.parent)) as part:
        part.write_bytes(data)


def digest_of(path: Path) -> str:
    """Return a file's SHA-256 [hex]."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()
