"""One copy of a built packet as a zip beside it: ``out/<job>-<copy>.zip``.

It stands beside ``out/<job>`` and not inside, because a build replaces that folder whole. The same packet
gives the same bytes. What is in it is held against the digests the build wrote down, after it was read back
from the disk; only then does it take the place of an earlier zip.
"""

import hashlib
import json
import os
import re
import stat
import unicodedata
import zlib
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZIP_STORED, BadZipFile, ZipFile, ZipInfo

from filelock import FileLock, Timeout

from packet.build import RECEIPT_NAME, Built
from packet.handover.note import NOTE_NAME, note
from packet.placing import placing
from packet.problems import Problem, Refused
from packet.readers import Reader
from packet.text import load_words
from packet.workspace import Workspace

#: Published for a web server; pages opened from a folder read ``search_index.js``.
LEFT_OUT = frozenset({"search/search_index.json"})

#: A file that deflating makes smaller by less than this part is stored: fonts, most photos.
_LEAST_GAIN = 0.02
_LEVEL = 9

#: The earliest day a zip can name. A zip made tomorrow has the same bytes.
_DATE_TIME = (1980, 1, 1, 0, 0, 0)

_UNIX = 3
_MODE = (stat.S_IFREG | 0o644) << 16
_MEMBER_NAME = re.compile(r"[A-Za-z0-9_-][A-Za-z0-9._-]*(?:/[A-Za-z0-9_-][A-Za-z0-9._-]*)*")

#: How long to wait for another run that zips the same copy [s].
_PATIENCE_S = 60.0

Members = Mapping[str, "Path | bytes"]


@dataclass(frozen=True)
class Zipped:
    """A zip that was written.

    Attributes:
        file: Where it lies.
        size: Its size [bytes].
        files: How many files are in it.
    """

    file: Path
    size: int
    files: int


def zip_copy(workspace: Workspace, built: Built, reader: Reader) -> Zipped:
    """Write the zip of one copy of a packet that was just built.

    Args:
        workspace: The office.
        built: The packet.
        reader: Whose copy.

    Raises:
        Refused: A disk that takes no more, a packet that changed meanwhile, a bad note. An earlier zip stays
            whole.
    """
    target = workspace.out / f"{built.folder.name}-{reader}.zip"
    with _replacing(target) as new:
        members, expected = _members(workspace, built, reader)
        write_zip(new, members)
        differing = first_difference(new, expected)
        if differing is not None:
            raise Refused(Problem("zip-differs", target, found=differing))
        size = new.stat().st_size
    return Zipped(target, size, len(members))


def _members(
    workspace: Workspace, built: Built, reader: Reader
) -> tuple[dict[str, Path | bytes], dict[str, str]]:
    """Return what goes into the zip, and the digest of each, by name in the zip."""
    top, folder = folder_name(built.folder.name, reader), built.copies[reader].parent
    copy = json.loads((folder / "packet.json").read_bytes())
    words = load_words(workspace.shared_folders(), copy["packet"]["language"])
    told = note(copy, top, workspace.template_folders(), words)
    members: dict[str, Path | bytes] = {NOTE_NAME: told}
    digests = {NOTE_NAME: hashlib.sha256(told).hexdigest()}
    for name, digest in sorted(_made(built.folder, reader).items()):
        member = f"{top}/{name}"
        if not _MEMBER_NAME.fullmatch(member):
            raise Refused(Problem("zip-name", folder / name, found=name))
        members[member], digests[member] = folder / name, digest
    return members, digests


def folder_name(job: str, reader: Reader) -> str:
    """Return the name of the folder in the zip: plain letters, digits and hyphens that any system can unzip.

    Example:
        >>> folder_name("26-041 Müller #2", "outside")
        '26-041-Muller-2-outside'
    """
    plain = unicodedata.normalize("NFKD", job).encode("ascii", "ignore").decode()
    kept = re.sub(r"[^A-Za-z0-9_]+", "-", plain).strip("-")
    return f"{kept or 'packet'}-{reader}"


def write_zip(file: Path, members: Members) -> None:
    """Write a zip whose bytes depend on its members alone.

    Args:
        file: The new file.
        members: Bytes, or a file to copy, by name in the zip.

    Raises:
        OSError: The file can't be written, or a member is gone.
    """
    with ZipFile(file, "w") as archive:
        for name, content in members.items():
            info = ZipInfo(name, _DATE_TIME)
            info.create_system, info.external_attr = _UNIX, _MODE
            data = content if isinstance(content, bytes) else content.read_bytes()
            gains = len(zlib.compress(data, _LEVEL)) < (1 - _LEAST_GAIN) * len(data)
            info.compress_type = ZIP_DEFLATED if gains else ZIP_STORED
            archive.writestr(info, data, compresslevel=_LEVEL)


def first_difference(file: Path, expected: Mapping[str, str]) -> str | None:
    """Return the first thing in a zip that is not as expected, or None when it holds just that.

    Args:
        file: The zip, read back from the disk.
        expected: Digest (SHA-256) of each member, by name in order.
    """
    try:
        with ZipFile(file) as archive:
            broken = archive.testzip()
            if broken is not None or archive.namelist() != list(expected):
                return broken or file.name
            for name, digest in expected.items():
                if hashlib.sha256(archive.read(name)).hexdigest() != digest:
                    return name
    except (BadZipFile, zlib.error, EOFError):
        return file.name
    return None


def _made(folder: Path, reader: Reader) -> dict[str, str]:
    """Return the digest of each file of a copy as the build wrote it down, without what stays behind."""
    receipt = json.loads((folder / RECEIPT_NAME).read_bytes())
    files = {
        name.removeprefix(f"{reader}/"): digest
        for name, digest in receipt["files"].items()
        if name.startswith(f"{reader}/")
    }
    return {name: digest for name, digest in files.items() if name not in LEFT_OUT}


@contextmanager
def _replacing(target: Path) -> Iterator[Path]:
    """Give the name of a file to write; it becomes the target when the block ends well.

    Raises:
        Refused: The disk says no (``zip-unwritable``), the packet is being replaced (``zip-differs``), or
            another run is at it (``job-busy``).
    """
    lock = FileLock(target.with_name(f".lock-{target.stem}"), timeout=_PATIENCE_S)
    try:
        with lock, placing(target) as new:
            yield new
    except Timeout as error:
        raise Refused(Problem("job-busy", target, found=target.name)) from error
    except FileNotFoundError as error:
        raise Refused(Problem("zip-differs", target, found=Path(error.filename or "").name)) from error
    except OSError as error:
        reason = os.strerror(error.errno).lower() if error.errno else str(error)
        raise Refused(Problem("zip-unwritable", target, values={"reason": reason})) from error
