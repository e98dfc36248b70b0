"""What the jobs of an office wait to be shown; jobs that did not change are not read again."""

import gc
import hashlib
import json
import os
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import suppress
from dataclasses import dataclass
from functools import lru_cache, partial
from multiprocessing import get_all_start_methods, get_context
from multiprocessing.context import BaseContext
from pathlib import Path
from typing import TYPE_CHECKING, Any

from packet import __version__
from packet.placing import placing
from packet.problems import Problem, Refused
from packet.workspace import Workspace

if TYPE_CHECKING:
    from packet.record.job import JobRecord
    from packet.reference import Library

#: Kept beside the packets; it can be made again at any time.
KEPT = ".holds.json"

#: Fewer jobs than this are read in one process: starting others takes longer.
ALONE_UP_TO = 12

#: Jobs handed to a process at a time.
_AT_A_TIME = 8

#: What such a process has loaded before its first job.
_ASSEMBLE = "packet.closeout.assemble"


@dataclass(frozen=True)
class JobHolds:
    """One job and what it waits for.

    Attributes:
        folder: Name of its folder.
        status: planned, under way or closed.
        kind: Kind of work.
        street: Street of the house.
        town: Town of the house.
        points: Hold points in the order of the work, as plain data: ``before`` and ``items``; None for a
            closed job that nobody asked for.
        problems: Why it can't be read; then all the rest is empty.
    """

    folder: str
    status: str = ""
    kind: str = ""
    street: str = ""
    town: str = ""
    points: tuple[dict[str, Any], ...] | None = ()
    problems: tuple[Problem, ...] = ()

    @property
    def next(self) -> dict[str, Any] | None:
        """The first hold point with something that waits to be shown."""
        return next((point for point in self.points or () if unmet(point)), None)

    @property
    def missed(self) -> int:
        """How many things were covered before they were shown."""
        return sum(item["state"] == "missed" for point in self.points or () for item in point["items"])


def unmet(point: dict[str, Any]) -> list[dict[str, Any]]:
    """Return the items of a hold point that wait and are asked as the record stands."""
    return [item for item in point["items"] if item["state"] == "waiting" and not item["only_if"]]


def holds_of_jobs(
    workspace: Workspace,
    folders: Sequence[Path],
    *,
    stages: Sequence[str] = (),
    closed_too: bool = True,
    processes: int = 0,
) -> tuple[JobHolds, ...]:
    """Return what jobs wait for: work under way first, then by the stage that comes next, then by number.

    Args:
        workspace: The office.
        folders: Folders of the jobs.
        stages: Ids of the stages in the order of the work.
        closed_too: Work out the hold points of closed jobs too.
        processes: How many jobs are read beside each other; as many as the machine has processors for 0.
    """
    key = _office_key(workspace)
    kept = _kept(workspace.out / KEPT, key)
    stamps = {folder.name: _stamp(folder) for folder in folders}
    found = {
        name: job
        for name, (stamp, job) in kept.items()
        if stamps.get(name) == stamp and not (closed_too and job.points is None)
    }
    new = [folder for folder in folders if folder.name not in found]
    for job in _read(workspace, key, new, closed_too, processes or os.cpu_count() or 1):
        found[job.folder] = job
    if new:
        # what changed while it was read has another stamp next time; of a job that is gone nothing is kept
        others = {name: entry for name, entry in kept.items() if (workspace.jobs / name).is_dir()}
        mine = {name: (stamp, found[name]) for name, stamp in stamps.items()}
        _keep(workspace.out / KEPT, key, {**others, **mine})
    return tuple(sorted((found[folder.name] for folder in folders), key=lambda job: _order(job, stages)))


def _order(job: JobHolds, stages: Sequence[str]) -> tuple[bool, bool, int, str]:
    coming = job.next["before"] if job.next else ""
    place = stages.index(coming) if coming in stages else len(stages)
    return bool(job.problems), job.status != "under way", place, job.folder


def _read(
    workspace: Workspace, key: str, folders: Sequence[Path], closed_too: bool, processes: int
) -> Iterator[JobHolds]:
    of_job = partial(_of_job, workspace.root, key, closed_too)
    if len(folders) <= ALONE_UP_TO or processes == 1:
        yield from map(of_job, folders)
        return
    # what a job leaves goes in no circles: looking for garbage would only take time
    with ProcessPoolExecutor(processes, _context(), initializer=gc.disable) as pool:
        yield from pool.map(of_job, folders, chunksize=_AT_A_TIME)


def _context() -> BaseContext:
    """Return how processes begin: where the system can, as copies of one that loaded the program once."""
    if "forkserver" not in get_all_start_methods():
        return get_context("spawn")
    context = get_context("forkserver")
    context.set_forkserver_preload([_ASSEMBLE])
    return context


def _of_job(root: Path, key: str, closed_too: bool, folder: Path) -> JobHolds:
    from packet.closeout.assemble import assemble_holds, closed_record

    if not closed_too and (record := closed_record(folder)):
        return _held(folder, record, None)
    try:
        record, points = assemble_holds(Workspace(root), folder, _library(root, key))
    except Refused as refused:
        return JobHolds(folder.name, problems=tuple(refused.problems))
    plain = ({"before": point.before, "items": [vars(item) for item in point.items]} for point in points)
    return _held(folder, record, tuple(plain))


@lru_cache(maxsize=1)
def _library(root: Path, key: str) -> "Library":
    """Return the office's library, loaded once for all its jobs; another key stands for other files.

    Raises:
        Refused: A file of the office's own does not fit.
    """
    from packet.reference import Library

    return Library.load(Workspace(root).shared_folders())


def _held(folder: Path, record: "JobRecord", points: tuple[dict[str, Any], ...] | None) -> JobHolds:
    return JobHolds(
        folder=folder.name,
        status=record.job.status,
        kind=record.job.kind,
        street=record.property.street,
        town=record.property.town,
        points=points,
    )


def _stamp(folder: Path) -> str:
    """Return a digest of names, sizes and times of a job's files; the photos themselves are not read."""
    return _digest(_seen(folder))


def _office_key(workspace: Workspace) -> str:
    """Return a digest of what every job rests on: the program and the shared folders."""
    trees = (Path(__file__).resolve().parent, *workspace.shared_folders())
    return _digest((__version__, *(line for tree in trees for line in _seen(tree))))


def _digest(lines: Iterable[str]) -> str:
    return hashlib.sha256("\0".join(lines).encode("utf-8", "surrogateescape")).hexdigest()


def _seen(folder: Path) -> Iterator[str]:
    """Yield name, size and time of every file below a folder, in the order of the names."""
    waiting = [str(folder)]
    while waiting:
        try:
            entries = sorted(os.scandir(waiting.pop()), key=lambda entry: entry.name)
        except OSError:
            continue
        for entry in entries:
            if entry.name == "__pycache__" or entry.name.startswith("."):
                continue
            with suppress(OSError):
                if entry.is_dir(follow_symlinks=False):
                    waiting.append(entry.path)
                else:
                    of = entry.stat(follow_symlinks=False)
                    yield f"{entry.path} {of.st_mode} {of.st_size} {of.st_mtime_ns}"


def _kept(path: Path, key: str) -> dict[str, tuple[str, JobHolds]]:
    """Return what an earlier run kept for the same office and program; nothing from another file."""
    try:
        held = json.loads(path.read_bytes())
        if held["key"] != key:
            return {}
        return {name: (entry["stamp"], _from_data(entry["job"])) for name, entry in held["jobs"].items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}


def _from_data(data: dict[str, Any]) -> JobHolds:
    points = data["points"]
    return JobHolds(**{**data, "points": None if points is None else tuple(points)})


def _keep(path: Path, key: str, jobs: dict[str, tuple[str, JobHolds]]) -> None:
    """Keep what was read; a disk that takes no more costs time at the next run and nothing else."""
    held = {
        name: {"stamp": stamp, "job": {field: getattr(job, field) for field in _FIELDS}}
        for name, (stamp, job) in sorted(jobs.items())
        if not job.problems
    }
    with suppress(OSError):
        path.parent.mkdir(parents=True, exist_ok=True)
        part = path.with_name(f"{path.name}.{os.getpid()}.part")
        with placing(path, part, durable=False):
            part.write_text(json.dumps({"key": key, "jobs": held}), encoding="utf-8")


_FIELDS = ("folder", "status", "kind", "street", "town", "points")
