"""A job → its packet in ``out/``: whole or not at all, and not again when nothing has changed."""

import hashlib
import json
import os
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime, time
from importlib.metadata import version
from pathlib import Path
from typing import Any

from packet import __version__
from packet.readers import READERS, Reader
from packet.workspace import Workspace

#: Libraries whose version may change the output.
LIBRARIES = ("jinja2", "markdown", "mkdocs", "mkdocs-material", "pillow", "pydantic", "pymdown-extensions")

#: Lies in a published folder: the key it was built for, and the digest of every file.
RECEIPT_NAME = ".packet-built.json"

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
        Refused: Problems in a file of the office; the previous output stays whole.
        SiteFailed: The pages do not make a whole site; the previous output stays whole.
    """
    target = workspace.out / job_folder.name
    copies = {reader: target / reader / "index.html" for reader in READERS}
    key = cache_key(workspace, job_folder)
    if _is_current(target, key):
        return Built(target, copies, made=False)
    _make(workspace, job_folder, key, tell)
    return Built(target, copies, made=True)


def cache_key(workspace: Workspace, job_folder: Path) -> str:
    """Return the digest of all the output depends on: job, templates, shared data, program, libraries."""
    digest = hashlib.sha256(
        f"{__version__} {' '.join(f'{name} {version(name)}' for name in LIBRARIES)}".encode()
    )
    trees = [
        ("job", job_folder),
        ("program", Path(__file__).resolve().parent),
        *(("shared", folder) for folder in workspace.shared_folders()),
        *(("templates", folder) for folder in workspace.template_folders()),
    ]
    for label, folder in trees:
        for path in _files(folder):
            digest.update(f"\0{label}/{path.relative_to(folder).as_posix()}\0".encode())
            digest.update(hashlib.sha256(path.read_bytes()).digest())
    return digest.hexdigest()


def _files(folder: Path) -> Iterable[Path]:
    """Return the regular files of a folder in order; links are not followed."""
    for directory, names, files in os.walk(folder):
        names[:] = sorted(name for name in names if name != "__pycache__" and not name.startswith("."))
        for name in sorted(files):
            path = Path(directory, name)
            if not path.is_symlink():
                yield path


def _is_current(target: Path, key: str) -> bool:
    """Return whether the output was built for this key and every file of it is as it was made."""
    try:
        receipt = json.loads((target / RECEIPT_NAME).read_bytes())
        if receipt["key"] != key:
            return False
        return all(_digest(target / name) == made for name, made in receipt["files"].items())
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return False


def _digest(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _make(workspace: Workspace, job_folder: Path, key: str, tell: Told) -> None:
    from packet.closeout.assemble import assemble
    from packet.closeout.redact import redact
    from packet.photos.renditions import render_all
    from packet.site.publish import replacing
    from packet.text import load_words

    tell("record")
    closeout, photos = assemble(workspace, job_folder)
    words = load_words(workspace.shared_folders())
    with replacing(workspace.out, job_folder.name) as work:
        tell("photos")
        originals = [(photo.entry.id, photo.path, photo.facts.sha256) for photo in photos]
        renditions = render_all(originals, workspace.out / ".cache" / "photos")
        for reader in READERS:
            tell(reader)
            copy = redact(closeout, reader)
            files: dict[str, bytes | Path] = {}
            for photo in copy["photos"]:
                files[photo["large"]] = renditions[photo["id"]].large
                files[photo["small"]] = renditions[photo["id"]].small
            _site(workspace, copy, files, words, _epoch(closeout.record.dates.finished), work / reader)
        made = {path.relative_to(work).as_posix(): _digest(path) for path in _files(work)}
        receipt = json.dumps({"key": key, "files": made}, indent=0, sort_keys=True)
        (work / RECEIPT_NAME).write_text(receipt, encoding="utf-8", newline="\n")


def _site(
    workspace: Workspace,
    copy: Mapping[str, Any],
    files: dict[str, bytes | Path],
    words: Any,
    epoch: int,
    site_dir: Path,
) -> None:
    from packet.drawings.roof_plan import roof_plan
    from packet.site.engine import SiteFailed, build_site
    from packet.site.links import broken_links
    from packet.site.pages import make_pages

    templates = workspace.template_folders()[-1]
    if copy["geometry"]:
        for name, narrow in (("roof-plan", False), ("roof-plan-phone", True)):
            drawing = roof_plan(copy["geometry"], words["drawing"], narrow=narrow)
            files[f"drawings/{name}.svg"] = drawing.encode()
    files["packet.json"] = json.dumps(copy, indent=1, ensure_ascii=False, sort_keys=True).encode()
    build_site(
        site_name=words["packet.name"],
        language=copy["packet"]["language"],
        pages=make_pages(copy, workspace.template_folders(), words),
        files=files,
        theme_dir=templates / "theme",
        assets_dir=templates / "assets",
        epoch=epoch,
        site_dir=site_dir,
    )
    broken = broken_links(site_dir)
    if broken:
        raise SiteFailed(broken)


def _epoch(finished: Any) -> int:
    """Return the time every date in the output is taken from: the day the work was finished, never today."""
    if finished is None:
        return 315532800
    return int(datetime.combine(finished, time(), UTC).timestamp())
