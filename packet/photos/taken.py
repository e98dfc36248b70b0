"""The photo log joined with the originals it names."""

from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import Literal

from packet.photos.clock import day_in, offset_at, span
from packet.photos.clocknote import ClockCorrection, ClockNote, note_faults
from packet.photos.facts import DecoderMissing, PhotoFacts, PhotoUnreadable, read_facts
from packet.photos.kinds import HEIC_EXTRA
from packet.photos.log import CaptionedPhoto, LoggedPhoto, PhotoLog, photo_path
from packet.problems import Problem, Refused, nearest
from packet.reading import ReadFile, read_model


@dataclass(frozen=True)
class TakenPhoto:
    """A captioned photo, its original, and what the original says of itself.

    Attributes:
        entry: Its entry in the log.
        path: The original.
        facts: What the original says.
        clocks: The log's notes on clocks that were off.
    """

    entry: CaptionedPhoto
    path: Path
    facts: PhotoFacts
    clocks: tuple[ClockNote, ...] = ()

    @property
    def taken_at(self) -> datetime | None:
        """Wall-clock time: the log's, else the camera's."""
        return self.entry.taken_at or self.facts.taken_at

    @property
    def offset(self) -> str | None:
        """Offset from UTC: the log's, else the camera's."""
        return self.entry.offset or self.facts.offset

    @property
    def time_from(self) -> Literal["log", "camera", "nowhere"]:
        """Where the time comes from: log, camera, or nowhere."""
        if self.entry.taken_at:
            return "log"
        return "camera" if self.facts.taken_at else "nowhere"

    def is_stated(self, zone: str) -> bool:
        """Return whether when it was taken rests on what somebody said: time or offset is not the camera's.

        Args:
            zone: Time zone of the house, which tells the offset where the camera gave none.
        """
        entry, facts, moment = self.entry, self.facts, self.taken_at
        if moment is None:
            return False
        told = facts.offset or offset_at(moment, zone)
        another_offset = entry.offset is not None and entry.offset != told
        said = entry.stated_by is not None or entry.offset_from == "stated"
        return said or moment != facts.taken_at or another_offset

    @property
    def clock(self) -> ClockCorrection | None:
        """The time by a right clock, where a note says that the camera's was off."""
        moment = self.taken_at
        if moment is None or moment != self.facts.taken_at or self.entry.stated_by:
            return None  # what somebody said was not read off that clock
        note = next((note for note in self.clocks if note.is_of(self.entry.taken_by, moment)), None)
        if note is None:
            return None
        return ClockCorrection(
            corrected_at=note.corrected(moment), off=note.lapse.text, side=note.side, how=note.how
        )

    def span(self, zone: str) -> tuple[datetime, datetime] | None:
        """Return the earliest and the latest instant it can have been taken at, in UTC; None without a time.

        Args:
            zone: Time zone of the house, for a time without an offset.
        """
        clock = self.clock
        moment = clock.corrected_at if clock else self.taken_at
        return span(moment, self.offset, zone) if moment else None

    def day(self, zone: str) -> date | None:
        """Return the day it was taken on, by the house's calendar; None without a time."""
        taken = self.span(zone)
        return day_in(taken[0], zone) if taken else None


@dataclass(frozen=True)
class WaitingPhoto:
    """A logged photo that no copy carries yet.

    Attributes:
        id: Its id.
        file: Its file inside the job folder.
        log: The log.
        line: Line of its entry there [1-based].
        lacks: Keys a person has still to write.
    """

    id: str
    file: str
    log: Path
    line: int
    lacks: tuple[str, ...]


@dataclass(frozen=True)
class PhotoSet:
    """The captioned photos of a job in the order of its log, and the log; a job may have none."""

    log: ReadFile[PhotoLog] | None = None
    photos: tuple[TakenPhoto, ...] = ()


def waiting_photos(job_folder: Path) -> tuple[WaitingPhoto, ...]:
    """Return the photos of a job that wait for a stage or a caption, in the order of its log.

    Raises:
        Refused: The log can't be read or does not fit.
    """
    path = job_folder / "photos.yaml"
    if not path.exists():
        return ()
    log: ReadFile[PhotoLog] = read_model(path, PhotoLog)
    return tuple(
        WaitingPhoto(entry.id, entry.file, path, log.document.place(("photos", index))[0], entry.lacks)
        for index, entry in enumerate(log.value.photos)
        if entry.lacks
    )


def take_photos(job_folder: Path, *, whole: bool = True) -> PhotoSet:
    """Return the captioned photos of a job; those that wait are looked at too and left out.

    Args:
        job_folder: Folder of the job.
        whole: Hold each original against the digest in the log; else only its camera's notes are read.

    Raises:
        Refused: The log does not fit, names a file outside the job folder or one that is missing, changed or
            unreadable, or gives an id twice; every problem at once.
    """
    path = job_folder / "photos.yaml"
    if not path.exists():
        return PhotoSet()
    log: ReadFile[PhotoLog] = read_model(path, PhotoLog)
    problems: list[Problem] = []
    problems += _clock_problems(log)
    taken: list[TakenPhoto] = []
    seen: set[str] = set()
    for index, entry in enumerate(log.value.photos):
        if entry.id in seen:
            problems.append(log.problem("duplicate-id", ("photos", index, "id"), entry.id))
        seen.add(entry.id)
        found = _take(job_folder, entry, whole)
        if isinstance(found, str):
            place = "sha256" if found == "photo-changed" else "file"
            problems.append(log.problem(found, ("photos", index, place), entry.file, install=HEIC_EXTRA))
        elif not entry.lacks:
            taken.append(TakenPhoto(_captioned(entry), *found, log.value.clocks))
    if problems:
        raise Refused(problems)
    return PhotoSet(log, tuple(taken))


def _clock_problems(log: ReadFile[PhotoLog]) -> list[Problem]:
    people = [photo.taken_by for photo in log.value.photos if photo.taken_by]
    return [
        log.problem(
            fault.code,
            ("clocks", fault.number, fault.key),
            fault.found,
            accepted=fault.accepted,
            nearest=nearest(fault.found, people) or "",
        )
        for fault in note_faults(log.value.clocks, people)
    ]


def _captioned(entry: LoggedPhoto) -> CaptionedPhoto:
    return CaptionedPhoto.model_construct(**vars(entry))


def _take(job_folder: Path, entry: LoggedPhoto, whole: bool) -> tuple[Path, PhotoFacts] | str:
    """Return the original and its facts, or the code of what is wrong with it."""
    path = photo_path(job_folder, entry.file)
    if path is None:
        return "path-leaves-job"
    if not path.is_file():
        return "photo-missing"
    try:
        facts = read_facts(path, whole=whole)
    except DecoderMissing:
        return "heic-not-installed"
    except PhotoUnreadable:
        return "photo-unreadable"
    if whole and entry.sha256 and entry.sha256 != facts.sha256:
        return "photo-changed"
    return path, facts
