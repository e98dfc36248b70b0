"""The only module that imports Typst: templates and data in one closed folder → the bytes of a PDF."""

import re
import shutil
from collections.abc import Mapping, Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

import typst

from packet.environ import environment
from packet.paper.templates import PAPER, fonts_of, gather
from packet.problems import Problem, Refused

if TYPE_CHECKING:
    from typst import PDFStandard

#: For archives, and for readers who listen.
_STANDARDS: "list[PDFStandard]" = ["a-3a", "ua-1"]

#: A place in what Typst reports, the innermost first.
_PLACE = re.compile(r"┌─ (?P<file>.+):(?P<line>\d+):(?P<column>\d+)$", re.MULTILINE)


#: A package it looked for: by its name, or by the address it would have been fetched from.
_PACKAGE = re.compile(
    r"@[\w-]+/[\w-]+(?::[\d.]+)?|/(?P<space>\w+)/(?P<name>[\w-]+)-(?P<version>\d[\d.]*\d)\.tar"
)

#: Where Typst looks for the network: it has no switch, and a template may put a package's name together.
#: Port 0 is nobody's, so nothing is reached and nothing is waited for.
_NOWHERE = {
    "https_proxy": "http://127.0.0.1:0",
    "HTTPS_PROXY": "http://127.0.0.1:0",
    "no_proxy": "",
    "NO_PROXY": "",
}


def typeset(
    name: str, files: Mapping[str, bytes | Path], template_folders: Sequence[Path], epoch: int
) -> bytes:
    """Return a PDF.

    Typst reads a folder of its own that holds the templates and these files; it has no other files, only our
    fonts, and no packages.

    Args:
        name: Template, below ``paper/``.
        files: What the template may read, by path from the root.
        template_folders: The office's folder first, the packaged one last.
        epoch: Time that dates in the document are taken from [s since 1970].

    Raises:
        Refused: A template is bad, with its file and line (``template-bad``), or asks for a package
            (``paper-package``).
    """
    with TemporaryDirectory(prefix="packet-paper-") as made:
        root = Path(made).resolve()
        came_from = gather(template_folders, root)
        for path, content in files.items():
            target = root / path
            target.parent.mkdir(parents=True, exist_ok=True)
            if isinstance(content, bytes):
                target.write_bytes(content)
            else:
                shutil.copyfile(content, target)
        fonts = typst.Fonts(
            include_system_fonts=False,
            include_embedded_fonts=False,
            font_paths=[fonts_of(template_folders)],
        )
        try:
            with environment(_NOWHERE):
                return typst.compile(
                    root / PAPER / name,
                    root=root,
                    font_paths=fonts,
                    pdf_standards=_STANDARDS,
                    timestamp=epoch,
                    package_path=root / "no-packages",
                    package_cache_path=root / "no-packages",
                )
        except typst.TypstError as error:
            packaged = template_folders[-1] / PAPER
            raise Refused(_problem(error, packaged / name, root, came_from)) from error


def _problem(error: typst.TypstError, packaged: Path, root: Path, came_from: Mapping[Path, Path]) -> Problem:
    """Return what Typst reports as a problem of a template: the office's own when one was on the way."""
    why = ". ".join([error.message, *error.hints]).replace(f"{root.as_posix()}/", "")
    places = [
        (source, int(place["line"]), int(place["column"]))
        for place in _PLACE.finditer(error.diagnostic)
        if (source := came_from.get(Path(place["file"]).resolve()))
    ]
    own = [place for place in places if not place[0].is_relative_to(packaged.parent)]
    file, line, column = next(iter(own or places), (packaged, 1, 1))
    package = _PACKAGE.search(error.message) if "package" in error.message else None
    if package:
        named = (
            f"@{package['space']}/{package['name']}:{package['version']}" if package["name"] else package[0]
        )
        return Problem("paper-package", file, line, column, found=named)
    return Problem("template-bad", file, line, column, found=file.name, values={"why": why})
