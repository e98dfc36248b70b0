"""Where things are: an office's folders, and the data that ships with the program."""

from dataclasses import dataclass
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def packaged(name: str) -> Path:
    """Return ``shared`` or ``templates`` as packaged: from the wheel when installed, else the checkout's."""
    shipped = _PACKAGE / f"_{name}"
    return shipped if shipped.is_dir() else _PACKAGE.parent / name


@dataclass(frozen=True)
class Workspace:
    """An office folder: ``jobs/``, ``shared/``, ``templates/`` and, made when needed, ``out/``."""

    root: Path

    @property
    def jobs(self) -> Path:
        """Folder with one folder a job."""
        return self.root / "jobs"

    @property
    def out(self) -> Path:
        """Folder of all that can be made again: packets, zips, PDFs, and the locks and caches of runs."""
        return self.root / "out"

    @property
    def office_file(self) -> Path:
        """The office's own name, licence and phone; it has no packaged default."""
        return self.root / "shared" / "office.yaml"

    @property
    def is_checkout(self) -> bool:
        """Whether the office is the program's own checkout; its data are then the packaged ones."""
        return (self.root / "packet" / "workspace.py").is_file()

    def shared_folders(self) -> tuple[Path, ...]:
        """Folders of codes, tables and words: the packaged one first, then the office's own."""
        own = self.root / "shared"
        if self.is_checkout:
            return (own,)
        return (packaged("shared"), own) if own.is_dir() else (packaged("shared"),)

    def template_folders(self) -> tuple[Path, ...]:
        """Folders of templates: the office's own first, then the packaged one."""
        own = self.root / "templates"
        if self.is_checkout:
            return (own,)
        return (own, packaged("templates")) if own.is_dir() else (packaged("templates"),)

    def job_folders(self) -> tuple[Path, ...]:
        """Folders under ``jobs/`` that hold a job.yaml, in order of name; hidden ones are none."""
        if not self.jobs.is_dir():
            return ()
        folders = (folder for folder in self.jobs.iterdir() if not folder.name.startswith("."))
        return tuple(sorted(folder for folder in folders if (folder / "job.yaml").is_file()))

    def job_folder(self, name: str) -> Path | None:
        """Return the folder of a job given by number or by path, or None when there is none."""
        candidates = [self.jobs / name] if "/" not in name and "\\" not in name else []
        for folder in [*candidates, Path(name).resolve()]:
            if (folder / "job.yaml").is_file() and not folder.name.startswith("."):
                return folder
        return None


def find_workspace(start: Path) -> Workspace | None:
    """Return the nearest folder at or above ``start`` that holds ``jobs/``, or None."""
    for folder in (start.resolve(), *start.resolve().parents):
        if (folder / "jobs").is_dir():
            return Workspace(folder)
    return None
