"""The photo log joined with the originals it names."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Literal

from packet.photos.facts import DecoderMissing, PhotoFacts, PhotoUnreadable, read_facts
from packet.photos.kinds import HEIC_EXTRA
from packet.photos.log import CaptionedPhoto, LoggedPhoto, PhotoLog, photo_path
from packet.problems import Problem, Refused
from packet.reading import ReadFile, read_model


@dataclass(frozen=True)
class TakenPhoto:
    """A captioned photo, its original, and what the original says of itself."""

    entry: CaptionedPhoto
    path: Path
    facts: PhotoFacts

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


def take_photos(job_folder: Path) -> PhotoSet:
    """Return the captioned photos of a job; those that wait are looked at too and left out.

    Raises:
        Refused: The log does not fit, names a file outside the job folder or one that is missing, changed or
            unreadable, or gives an id twice; every problem at once.
    """
    path = job_folder / "photos.yaml"
    if not path.exists():
        return PhotoSet()
    log: ReadFile[PhotoLog] = read_model(path, PhotoLog)
    problems: list[Problem] = []
    taken: list[TakenPhoto] = []
    seen: set[str] = set()
    for index, entry in enumerate(log.value.photos):
        if entry.id in seen:
            problems.append(log.problem("duplicate-id", ("photos", index, "id"), entry.id))
        seen.add(entry.id)
        found = _take(job_folder, entry)
        if isinstance(found, str):
            place = "sha256" if found == "photo-changed" else "file"
            problems.append(log.problem(found, ("photos", index, place), entry.file, install=HEIC_EXTRA))
        elif not entry.lacks:
            taken.append(TakenPhoto(_captioned(entry), *found))
    if problems:
        raise Refused(problems)
    return PhotoSet(log, tuple(taken))


def _captioned(entry: LoggedPhoto) -> CaptionedPhoto:
    return CaptionedPhoto.model_construct(**{name: getattr(entry, name) for name in type(entry).model_fields})


def _take(job_folder: Path, entry: LoggedPhoto) -> tuple[Path, PhotoFacts] | str:
    """Return the original and its facts, or the code of what is wrong with it."""
    path = photo_path(job_folder, entry.file)
    if path is None:
        return "path-leaves-job"
    if not path.is_file():
        return "photo-missing"
    try:
        facts = read_facts(path)
    except DecoderMissing:
        return "heic-not-installed"
    except PhotoUnreadable:
        return "photo-unreadable"
    if entry.sha256 and entry.sha256 != facts.sha256:
        return "photo-changed"
    return path, facts
