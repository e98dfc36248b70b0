"""A job's output is replaced as a whole or not at all, also when the program is killed half-way.

Everything is made in ``out/.work-<job>-<random>`` and changes places with ``out/<job>`` in one step. Where
the system has no such step, the old folder is renamed to ``out/.old-<job>-<random>`` first; if the program
dies between the two renames, the next run puts it back. A marker lists what was published, so that a folder
or a file that is not ours is never taken away.
"""

import os
import re
import secrets
import shutil
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from filelock import FileLock, Timeout

from packet.problems import Problem, Refused
from packet.site.exchange import exchange

#: Lies in every published folder: one line a file, its size in bytes and its path.
MARKER_NAME = ".packet-output"

#: What the operating system leaves in a folder that was looked at; it is nobody's work.
DROPPINGS = frozenset({".DS_Store", "Thumbs.db", "desktop.ini"})

#: The steps of a replacement in order, as given to a watcher; tests stop the program at each.
STAGES = ("begun", "marked", "set aside", "in place", "old removed")

_WORK, _OLD, _LOCK = ".work-", ".old-", ".lock-"
_JOB_NAME = re.compile(r"[^./\\\x00-\x1f][^/\\\x00-\x1f]*")

#: How long a build waits for another one of the same job [s].
_PATIENCE_S = 60.0

Watcher = Callable[[str], None]


def _unwatched(stage: str) -> None:
    """Watch nothing."""


@contextmanager
def replacing(out_dir: Path, job: str, *, watch: Watcher = _unwatched) -> Iterator[Path]:
    """Give an empty folder to build a job's output in; it becomes ``out/<job>`` when the block ends well.

    The job is locked meanwhile. When the block raises, the previous output stays and the new one is removed.

    Args:
        out_dir: Folder of all output; made if missing.
        job: Name of the job, also the name of its folder.
        watch: Told each stage as it is reached.

    Raises:
        Refused: Another build holds the job (``job-busy``), or ``out/<job>`` is not ours
            (``output-foreign``).
        OSError: The disk takes no more, or the folder may not be written.
    """
    target = out_dir / _safe(job)
    if os.path.lexists(out_dir) and not out_dir.is_dir():
        raise Refused(Problem("output-foreign", out_dir, found=out_dir.name))
    out_dir.mkdir(parents=True, exist_ok=True)
    lock = _lock(out_dir, job)
    try:
        lock.acquire(timeout=_PATIENCE_S)
    except Timeout as error:
        raise Refused(Problem("job-busy", target, found=job)) from error
    try:
        _mend(out_dir, job)
        _refuse_foreign(target)
        work = _work_dir(out_dir, job)
        work.mkdir()
        try:
            watch("begun")
            yield work
            swap_in(work, target, watch=watch)
        finally:
            shutil.rmtree(work, ignore_errors=True)
    finally:
        lock.release()


def swap_in(new_dir: Path, target_dir: Path, *, watch: Watcher = _unwatched) -> None:
    """Put a finished folder in the place of the published one; the caller holds the job's lock.

    Args:
        new_dir: What was built; a folder beside ``target_dir``, or below one.
        target_dir: ``out/<job>``; may be missing.
        watch: Told each stage as it is reached.

    Raises:
        Refused: ``target_dir`` is not ours, or holds files that we did not publish (``output-foreign``).
    """
    _refuse_foreign(target_dir)
    _mark(new_dir)
    watch("marked")
    old_dir = new_dir
    if not target_dir.exists():
        new_dir.rename(target_dir)
    elif not exchange(new_dir, target_dir):
        old_dir = target_dir.parent / f"{_OLD}{target_dir.name}-{secrets.token_hex(4)}"
        target_dir.rename(old_dir)
        watch("set aside")
        try:
            new_dir.rename(target_dir)
        except BaseException:  # also when the program is told to stop
            if not target_dir.exists():
                old_dir.rename(target_dir)
            raise
    watch("in place")
    _sweep(old_dir, target_dir.parent, target_dir.name)
    watch("old removed")


def recover(out_dir: Path) -> tuple[str, ...]:
    """Repair what killed builds left: put set-aside output back, and sweep half-made folders.

    A job that a running build holds is left alone, and so is a folder that may not be written.

    Returns:
        The jobs something was done for, in order of name.
    """
    if not out_dir.is_dir():
        return ()
    left = {job for path in out_dir.iterdir() if (job := _job_of(path))}
    mended = []
    for job in sorted(left):
        lock = _lock(out_dir, job)
        try:
            lock.acquire(timeout=0)
        except (Timeout, OSError):
            continue
        try:
            with suppress(OSError):
                _mend(out_dir, job)
                mended.append(job)
        finally:
            lock.release()
    return tuple(mended)


def _safe(job: str) -> str:
    """Return a job's name if it is a plain folder name.

    Raises:
        ValueError: It is hidden or would lead elsewhere.
    """
    if not _JOB_NAME.fullmatch(job):
        message = f"{job!r} is no folder name"
        raise ValueError(message)
    return job


def _lock(out_dir: Path, job: str) -> FileLock:
    """Return the lock of a job; the system frees it when its holder dies."""
    return FileLock(out_dir / f"{_LOCK}{job}")


def _job_of(path: Path) -> str:
    """Return the job a left folder belongs to, or an empty text when it is none of ours."""
    for prefix in (_WORK, _OLD):
        if path.name.startswith(prefix) and path.is_dir() and not path.is_symlink():
            return path.name.removeprefix(prefix).rpartition("-")[0]
    return ""


def _mend(out_dir: Path, job: str) -> None:
    """Repair one job, whose lock is held."""
    target = out_dir / job
    for path in sorted(out_dir.iterdir()):
        if _job_of(path) != job:
            continue
        if path.name.startswith(_OLD) and not target.exists():
            path.rename(target)
        else:
            _sweep(path, out_dir, job)


def _sweep(folder: Path, out_dir: Path, job: str) -> None:
    """Remove a folder of a job; half-removed it is never taken for output that was set aside."""
    if folder.name.startswith(_OLD):
        folder = folder.rename(_work_dir(out_dir, job))
    shutil.rmtree(folder, ignore_errors=True)


def _work_dir(out_dir: Path, job: str) -> Path:
    """Return a new name for a folder that may be removed at any time."""
    return out_dir / f"{_WORK}{job}-{secrets.token_hex(4)}"


def _mark(folder: Path) -> None:
    """Write the list of what is published."""
    lines = [f"{size} {name}\n" for name, size in sorted(_sizes(folder).items())]
    (folder / MARKER_NAME).write_text("".join(lines), encoding="utf-8", newline="\n")


def _listed(folder: Path) -> Mapping[str, int] | None:
    """Return what a folder's marker lists, or None when it has no marker of ours."""
    try:
        lines = (folder / MARKER_NAME).read_text(encoding="utf-8").splitlines()
        return {name: int(size) for size, _, name in (line.partition(" ") for line in lines)}
    except (FileNotFoundError, NotADirectoryError, ValueError):
        return None


def _sizes(folder: Path) -> dict[str, int]:
    """Return the size in bytes of every file below a folder, the marker left out."""
    found = {}
    for path in folder.rglob("*"):
        if path.is_symlink() or not path.is_dir():
            found[path.relative_to(folder).as_posix()] = path.lstat().st_size
    found.pop(MARKER_NAME, None)
    return found


def _refuse_foreign(target: Path) -> None:
    """Refuse to take away what we did not make."""
    if target.is_symlink() or (target.exists() and not target.is_dir()):
        raise Refused(Problem("output-foreign", target, found=target.name))
    if not target.is_dir():
        return
    foreign = sorted(
        name
        for name in _sizes(target).keys() - (_listed(target) or {}).keys()
        if name.rpartition("/")[2] not in DROPPINGS
    )
    if foreign:
        raise Refused(Problem("output-foreign", target / foreign[0], found=foreign[0]))
