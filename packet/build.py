"""A job → its packet in ``out/``: whole or not at all, and not again when nothing has changed."""

import errno
import hashlib
import json
import os
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, datetime, time
from importlib.metadata import version
from pathlib import Path
from typing import TYPE_CHECKING, Any

from packet import __version__
from packet.problems import Problem, Refused
from packet.readers import READERS, Reader
from packet.site.publish import DROPPINGS, MARKER_NAME
from packet.workspace import Workspace

if TYPE_CHECKING:
    from packet.site.engine import Page

#: Libraries whose version may change the output.
LIBRARIES = ("jinja2", "markdown", "mkdocs", "mkdocs-material", "pillow", "pydantic", "pymdown-extensions")

#: Lies in a published folder: the key it was built for, and the digest of every file.
RECEIPT_NAME = ".packet-built.json"

#: Names of files in a published folder that are not in its receipt: the receipt, the publisher's own list,
#: and what a file browser leaves behind.
_UNLISTED = frozenset({RECEIPT_NAME, MARKER_NAME, *DROPPINGS})

#: What a disk answers that is full, that may not be read or written, or that fails.
_DISK_SAYS_NO = frozenset(
    {errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EROFS, errno.EACCES, errno.EPERM}
    | {errno.EIO, errno.ENAMETOOLONG, errno.EMFILE}
)

#: Stands in a receipt for the key of files that changed while they were read: the next build makes it anew.
_NO_KEY = ""

#: A file and a line at the start of what the site engine reports.
_PLACE = re.compile(r"(?P<file>.+?):(?P<line>\d+): (?P<why>.+)", re.DOTALL)

Told = Callable[[str], None]


@dataclass(frozen=True)
class Built:
    """What a build made.

    Attributes:
        folder: The job's output.
        copies: Front page of each copy, by reader.
        made: False when nothing had changed and the output was whole.
    """

    folder: Path
    copies: Mapping[Reader, Path]
    made: bool


def build(workspace: Workspace, job_folder: Path, *, tell: Told = lambda step: None) -> Built:
    """Build the packet of one job.

    Args:
        workspace: The office.
        job_folder: Folder of the job.
        tell: Told each step as it begins.

    Raises:
        Refused: Problems in a file of the office, pages that make no whole site, or a disk that takes no
            more; the previous output stays whole.
    """
    target = workspace.out / job_folder.name
    copies = {reader: target / reader / "index.html" for reader in READERS}
    try:
        stamps = _stamps(workspace, job_folder)
        key = cache_key(workspace, job_folder)
        if _is_current(target, key):
            return Built(target, copies, made=False)

        def key_now() -> str:
            return key if _stamps(workspace, job_folder) == stamps else _NO_KEY

        _make(workspace, job_folder, key_now, tell)
    except OSError as error:
        refused = disk_refusal(error, target, workspace.out)
        if refused is None:
            raise
        raise refused from error
    return Built(target, copies, made=True)


def disk_refusal(error: OSError, target: Path, out: Path) -> Refused | None:
    """Return what a disk that takes no more says as a refusal; None for any other error.

    Args:
        error: What the system raised.
        target: What was being made.
        out: Folder of all output.
    """
    return Refused(_refusal(error, target, out)) if error.errno in _DISK_SAYS_NO else None


def _refusal(error: OSError, target: Path, out: Path) -> Problem:
    """Return what the disk refused as a problem: of the file that can't be read, else of the output."""
    reason = os.strerror(error.errno or 0).lower()
    name = error.filename if isinstance(error.filename, str) else ""
    if Path(name).is_absolute() and not Path(name).is_relative_to(out):
        return Problem("file-unreadable", Path(name), values={"reason": reason})
    return Problem("output-unwritable", target, values={"reason": reason})


def cache_key(workspace: Workspace, job_folder: Path) -> str:
    """Return the digest of all the output depends on: job, templates, shared data, program, libraries."""
    digest = hashlib.sha256(
        f"{__version__} {' '.join(f'{name} {version(name)}' for name in LIBRARIES)}".encode()
    )
    for label, folder in _trees(workspace, job_folder):
        for path in _files(folder):
            name = path.relative_to(folder)
            # a linked photo is refused, so a link has to make another key
            kind = "file" if path.resolve() == folder.resolve() / name else "link"
            digest.update(f"\0{label}/{name.as_posix()}\0{kind}\0".encode())
            with suppress(FileNotFoundError):  # gone since it was listed
                digest.update(bytes.fromhex(_digest(path)))
    return digest.hexdigest()


def _trees(workspace: Workspace, job_folder: Path) -> Iterable[tuple[str, Path]]:
    """Return the folders that the output depends on."""
    yield "job", job_folder
    yield "program", Path(__file__).resolve().parent
    yield from (("shared", folder) for folder in workspace.shared_folders())
    yield from (("templates", folder) for folder in workspace.template_folders())


def _stamps(workspace: Workspace, job_folder: Path) -> set[tuple[str, int, int]]:
    """Return name, size and time of every file that the output depends on, to see whether one was edited."""
    found = set()
    for _, folder in _trees(workspace, job_folder):
        for path in _files(folder):
            with suppress(FileNotFoundError):
                seen = path.stat()
                found.add((str(path), seen.st_size, seen.st_mtime_ns))
    return found


def _files(folder: Path) -> Iterable[Path]:
    """Return the files of a folder in order, linked ones too; a pipe or a device is never opened."""
    seen: set[str] = set()
    for directory, names, files in os.walk(folder, followlinks=True):
        names[:] = sorted(name for name in names if name != "__pycache__" and not name.startswith("."))
        real = os.path.realpath(directory)  # a link may lead back up
        if real in seen:
            names[:] = []
            continue
        seen.add(real)
        for name in sorted(files):
            path = Path(directory, name)
            if path.is_file():
                yield path


def _listed_names(folder: Path) -> set[str]:
    """Return the paths of all that a receipt lists, or would list; a link counts as a file."""
    found: set[str] = set()
    for directory, folders, files in os.walk(folder):
        links = [name for name in folders if Path(directory, name).is_symlink()]
        names = (name for name in (*files, *links) if name not in _UNLISTED)
        found.update(Path(directory, name).relative_to(folder).as_posix() for name in names)
    return found


def _is_current(target: Path, key: str) -> bool:
    """Return whether the output was built for this key, with every file as it was made and none besides."""
    try:
        receipt = json.loads((target / RECEIPT_NAME).read_bytes())
        if receipt["key"] != key or _listed_names(target) != receipt["files"].keys():
            return False
        return all(_digest(target / name) == made for name, made in receipt["files"].items())
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return False


def _digest(path: Path) -> str:
    with path.open("rb") as file:  # read in pieces: a film may lie among the photos
        return hashlib.file_digest(file, "sha256").hexdigest()


def _make(workspace: Workspace, job_folder: Path, key: Callable[[], str], tell: Told) -> None:
    from packet.closeout.assemble import assemble
    from packet.closeout.redact import redact
    from packet.photos.copies import web_copies
    from packet.site.publish import replacing
    from packet.text import load_words

    tell("record")
    closeout, photos = assemble(workspace, job_folder)
    words = load_words(workspace.shared_folders())
    with replacing(workspace.out, job_folder.name) as work:
        tell("photos")
        renditions = web_copies(job_folder, photos, workspace.out / ".cache" / "photos")
        drawn = _Drawings(words)
        for reader in READERS:
            tell(reader)
            copy = redact(closeout, reader)
            files: dict[str, bytes | Path] = {**drawn.of(copy)}
            for photo in copy["photos"]:
                files[photo["large"]] = renditions[photo["id"]].large
                files[photo["small"]] = renditions[photo["id"]].small
            _site(workspace, copy, files, words, epoch_of(closeout.record.dates.finished), work / reader)
        made = {path.relative_to(work).as_posix(): _digest(path) for path in _files(work)}
        receipt = json.dumps({"key": key(), "files": made}, indent=0, sort_keys=True)
        (work / RECEIPT_NAME).write_text(receipt, encoding="utf-8", newline="\n")


class _Drawings:
    """The drawings of copies; copies of one shape share them, since finding room for labels takes long."""

    def __init__(self, words: Mapping[str, Any]) -> None:
        self._words = words["drawing"]
        self._made: list[tuple[Any, dict[str, bytes]]] = []

    def of(self, copy: Mapping[str, Any]) -> dict[str, bytes]:
        """Return the drawings of a copy by published path; none when it has no geometry."""
        from packet.drawings.deck_plan import deck_plans, seen_by
        from packet.drawings.roof_plan import roof_plan

        geometry = copy["geometry"]
        if not geometry:
            return {}
        shown = (geometry, seen_by(copy))
        for known, drawings in self._made:
            if known == shown:
                return drawings
        drawings = {}
        for ending, narrow in (("", False), ("-phone", True)):
            plan = roof_plan(geometry, self._words, narrow=narrow)
            drawings[f"drawings/roof-plan{ending}.svg"] = plan.encode()
        # An id never has an underscore: a file system that takes small letters for capitals confuses no two.
        for ending, narrow in (("", False), ("_phone", True)):
            for plane, deck in deck_plans(copy, self._words, narrow=narrow).items():
                drawings[f"drawings/deck-{plane}{ending}.svg"] = deck.encode()
        self._made.append((shown, drawings))
        return drawings


def _site(
    workspace: Workspace,
    copy: Mapping[str, Any],
    files: dict[str, bytes | Path],
    words: Any,
    epoch: int,
    site_dir: Path,
) -> None:
    from packet.site.pages import files_beside, make_pages

    files |= files_beside(copy, workspace.template_folders(), words)
    files["packet.json"] = json.dumps(copy, indent=1, ensure_ascii=False, sort_keys=True).encode()
    pages = make_pages(copy, workspace.template_folders(), words)
    write_site(workspace, words["packet.name"], copy["packet"]["language"], pages, files, epoch, site_dir)


def write_site(
    workspace: Workspace,
    name: str,
    language: str,
    pages: Sequence["Page"],
    files: Mapping[str, bytes | Path],
    epoch: int,
    site_dir: Path,
) -> None:
    """Write pages as one site, with every address in it checked.

    Args:
        workspace: The office.
        name: Name in the header of every page.
        language: Language of the pages, ``en``.
        pages: Pages in order.
        files: What lies beside them, by path.
        epoch: Time every date in the output is taken from [seconds since 1970, UTC].
        site_dir: Folder to build into; absent or empty.

    Raises:
        Refused: The pages make no whole site (``site-failed``).
    """
    from packet.site.engine import SiteFailed, build_site
    from packet.site.links import broken_links

    templates = workspace.template_folders()[-1]
    try:
        build_site(
            site_name=name,
            language=language,
            pages=pages,
            files=files,
            theme_dir=templates / "theme",
            assets_dir=templates / "assets",
            epoch=epoch,
            site_dir=site_dir,
        )
    except SiteFailed as failed:
        raise Refused([_site_problem(reason, templates) for reason in failed.reasons]) from failed
    broken = broken_links(site_dir)
    if broken:
        raise Refused([_site_problem(fault, templates) for fault in broken])


def _site_problem(reason: str, templates: Path) -> Problem:
    """Return what the site engine reports as a problem of the template it names, or of the templates."""
    place = _PLACE.fullmatch(reason)
    if place and Path(place["file"]).is_file():
        return Problem("site-failed", Path(place["file"]), int(place["line"]), values={"why": place["why"]})
    return Problem("site-failed", templates, values={"why": reason})


def epoch_of(finished: Any) -> int:
    """Return the time every date in the output is taken from: the day the work was finished, never today."""
    if finished is None:
        return 315532800
    return int(datetime.combine(finished, time(), UTC).timestamp())
