"""Photos from a phone or a card → originals in the job's folder and entries at the end of its log.

Nothing is guessed: what a photo shows, at which stage, and who took it is for a person to write, and until
then no copy of the packet carries it. Photos are copied first and the log is replaced last, so a run that is
stopped leaves the old log and whole photos, which the next run finds.
"""

import os
from collections.abc import Callable, Mapping, Sequence
from contextlib import nullcontext
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

from filelock import FileLock, Timeout

from packet.photos.clock import instant
from packet.photos.facts import DecoderMissing, PhotoFacts, PhotoUnreadable, read_facts, try_decoding
from packet.photos.folder import CopyDiffers, PhotoFolder, digest_of, write_whole
from packet.photos.kinds import HEIC_EXTRA, Kind
from packet.photos.logedit import NewLog, OldLog, read_log, with_entries
from packet.photos.naming import following_ids
from packet.photos.newentry import NewPhoto, Said, entry_of, offset_of
from packet.photos.sources import Sources, unreadable
from packet.problems import Problem, Refused

#: How long a run waits for another one at the same job [s].
_PATIENCE_S = 10.0

#: Told the number of a photo, how many there are, and its file.
Told = Callable[[int, int, Path], None]


@dataclass(frozen=True)
class TakenIn:
    """What a run did, or would do.

    Attributes:
        new: Photos taken in, in the order of the log.
        known: Files whose bytes are logged already, with the id.
        twice: Files with the same bytes as another of this run, with that other.
        passed_over: What is no photo, each with its reason.
        problems: Photos that could not be taken in, each with its reason.
        log: The log.
        first_line: Line of the first new entry there [1-based]; 0 when there is none.
    """

    new: tuple[NewPhoto, ...]
    known: tuple[tuple[Path, str], ...]
    twice: tuple[tuple[Path, Path], ...]
    passed_over: tuple[Problem, ...]
    problems: tuple[Problem, ...]
    log: Path
    first_line: int


def take_in(
    job_folder: Path,
    sources: Sources,
    said: Said,
    *,
    zone: str,
    remarks: Mapping[str, str],
    lock: Path,
    dry_run: bool = False,
    tell: Told = lambda number, of, path: None,
) -> TakenIn:
    """Take photos into a job.

    Args:
        job_folder: Folder of the job.
        sources: What was found in the files and folders that the person named.
        said: What the person says of all of them.
        zone: Time zone of the house, for the times of cameras that give no offset.
        remarks: Sentences for the log: as :func:`entry_of` takes them.
        lock: Lock file of the job's photos.
        dry_run: Only say what would be done; nothing is written.
        tell: Told of each photo before it is read.

    Raises:
        Refused: The log does not fit or can't be added to, another run is at work, or the disk takes no more.
            The log is then as it was.
    """
    try:
        if not dry_run:
            lock.parent.mkdir(parents=True, exist_ok=True)
        with nullcontext() if dry_run else FileLock(lock, timeout=_PATIENCE_S):
            path = job_folder / "photos.yaml"
            if path.is_symlink():
                raise Refused(Problem("path-leaves-job", job_folder, found=path.name))
            run = _Run(job_folder, read_log(path), zone, problems=list(sources.problems))
            run.look(sources.photos, tell)
            plan = _Plan(run.planned(), run.old, said, remarks)
            if not dry_run:
                plan = plan.copied(run)
                plan.write()
    except Timeout as error:
        raise Refused(Problem("photos-busy", job_folder, found=job_folder.name)) from error
    except OSError as error:
        reason = os.strerror(error.errno).lower() if error.errno else "unknown"
        raise Refused(Problem("photos-not-written", job_folder, values={"reason": reason})) from error
    return TakenIn(
        plan.photos,
        tuple(run.known),
        tuple(run.twice),
        tuple(sources.passed_over),
        tuple(run.problems),
        path,
        plan.log.first_line if plan.log else 0,
    )


@dataclass
class _Run:
    """One run over the sources, collecting what becomes of each."""

    job_folder: Path
    old: OldLog
    zone: str
    fresh: list[tuple[Path, Kind, PhotoFacts]] = field(default_factory=list)
    known: list[tuple[Path, str]] = field(default_factory=list)
    twice: list[tuple[Path, Path]] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.folder = PhotoFolder(self.job_folder, self.old.entries)
        self._seen: dict[str, Path] = {}

    def look(self, photos: Mapping[Path, Kind], tell: Told) -> None:
        """Put each source where it belongs."""
        for number, (source, kind) in enumerate(photos.items(), 1):
            tell(number, len(photos), source)
            try:
                self._look(source, kind)
            except OSError as error:
                self.problems.append(unreadable(source, error))
            except DecoderMissing:
                values = {"install": HEIC_EXTRA}
                self.problems.append(Problem("heic-not-installed", source, found=source.name, values=values))
            except PhotoUnreadable:
                self.problems.append(Problem("photo-source-damaged", source))

    def _look(self, source: Path, kind: Kind) -> None:
        sha256 = digest_of(source)
        id = self.folder.id_of(source, sha256)
        if id:
            self.known.append((source, id))
        elif sha256 in self._seen:
            self.twice.append((source, self._seen[sha256]))
        else:
            facts = read_facts(source)
            try_decoding(source)
            self._seen[sha256] = source
            self.fresh.append((source, kind, facts))

    def planned(self) -> tuple[NewPhoto, ...]:
        """Return the fresh photos, each with its id and its file, in the order they were taken.

        Those without a time come last, by name.
        """
        job = self.old.path.with_name("job.yaml")
        texts = [_text(path) for path in (self.old.path, job)]
        ids = following_ids([entry.id for entry in self.old.entries], texts)
        photos = []
        for source, kind, facts in sorted(self.fresh, key=self._when):
            there = self.folder.lying_there(source, facts.sha256)
            file = there or self.folder.name_for(source, kind)
            offset, offset_from = offset_of(facts, self.zone)
            photos.append(NewPhoto(next(ids), source, file, not there, facts, offset, offset_from))
        return tuple(photos)

    def _when(self, photo: tuple[Path, Kind, PhotoFacts]) -> tuple[bool, datetime, str, str]:
        source, _, facts = photo
        last = datetime.max.replace(tzinfo=UTC)
        when = instant(facts.taken_at, facts.offset, self.zone) if facts.taken_at else last
        return facts.taken_at is None, when, source.name, str(source)


class _Plan:
    """The new log, worked out and read back before anything is written."""

    def __init__(
        self, photos: Sequence[NewPhoto], old: OldLog, said: Said, remarks: Mapping[str, str]
    ) -> None:
        self.photos, self._old = tuple(photos), old
        self._said, self._remarks = said, remarks
        entries = [entry_of(photo, said, remarks, first=n == 0) for n, photo in enumerate(self.photos)]
        self.log: NewLog | None = with_entries(old, entries) if entries else None

    def copied(self, run: _Run) -> "_Plan":
        """Copy the photos; return the plan without those that changed meanwhile."""
        run.folder.sweep()
        kept = []
        for photo in self.photos:
            try:
                if photo.copied:
                    run.folder.copy(photo.source, photo.file, photo.facts.sha256)
                kept.append(photo)
            except CopyDiffers:
                run.problems.append(Problem("photo-source-changed", photo.source))
        return self if len(kept) == len(self.photos) else _Plan(kept, self._old, self._said, self._remarks)

    def write(self) -> None:
        """Put the new log in the place of the old one, unless somebody wrote there meanwhile."""
        if self.log is None:
            return
        path = self._old.path
        if (path.read_bytes() if path.exists() else b"") != self._old.data:
            raise Refused(Problem("photo-log-changed", path))
        write_whole(path, self.log.data)


def _text(path: Path) -> str:
    """Return a file's text; an id named in it is never given again."""
    try:
        return path.read_text(encoding="utf-8", errors="replace")
    except OSError:
        return ""
