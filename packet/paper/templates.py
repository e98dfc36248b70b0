"""Templates of paper: the office's own before the packaged ones, gathered in one folder Typst may read."""

import os
import re
import shutil
from collections.abc import Iterator, Sequence
from pathlib import Path

from packet.problems import Problem, Refused

#: Folder of paper's templates below a folder of templates, and of the fonts below it.
PAPER, FONTS = "paper", "fonts"

#: Where the packaged templates lie, so that an office's own can import the one it stands in for.
DEFAULT = "default"

#: The name of a package; Typst would fetch it.
_PACKAGE = re.compile(r'"(?P<name>@[^"\n]*)"')


def fonts_of(template_folders: Sequence[Path]) -> Path:
    """Return the folder of our fonts; an office brings none."""
    return template_folders[-1] / PAPER / FONTS


def gather(template_folders: Sequence[Path], root: Path) -> dict[Path, Path]:
    """Copy templates below ``root`` and return where each came from.

    Args:
        template_folders: The office's folder first, the packaged one last.
        root: Where Typst reads; ``paper/`` and ``default/`` are made in it.

    Raises:
        Refused: A template asks for a package (``paper-package``).
    """
    packaged = template_folders[-1]
    steps = [(packaged, DEFAULT), *((folder, PAPER) for folder in reversed(template_folders))]
    came_from: dict[Path, Path] = {}
    problems: list[Problem] = []
    for folder, name in steps:
        for path in _files(folder / PAPER):
            target = root / name / path.relative_to(folder / PAPER)
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(path, target)
            came_from[target] = path
            problems += _packages(path)
    if problems:
        raise Refused(problems)
    return came_from


def _files(folder: Path) -> Iterator[Path]:
    """Yield templates in order; a link that leads out of the folder is none, and fonts are left."""
    inside = folder.resolve()
    for directory, names, files in os.walk(folder):
        names[:] = sorted(name for name in names if not name.startswith(".") and name != FONTS)
        for name in sorted(files):
            path = Path(directory, name)
            if path.is_file() and path.resolve().is_relative_to(inside) and not name.startswith("."):
                yield path


def _packages(path: Path) -> Iterator[Problem]:
    if path.suffix == ".typ":
        for number, line in enumerate(path.read_text(encoding="utf-8", errors="replace").splitlines(), 1):
            for match in _PACKAGE.finditer(line):
                yield Problem("paper-package", path, number, match.start("name") + 1, found=match["name"])
