"""The web copies of a job's photos; pictures that can't be decoded are problems of its log."""

from collections.abc import Iterable
from pathlib import Path

from packet.photos.renditions import PhotosUnreadable, Rendition, render_all
from packet.photos.taken import TakenPhoto, take_photos
from packet.problems import Refused


def web_copies(job_folder: Path, photos: Iterable[TakenPhoto], cache: Path) -> dict[str, Rendition]:
    """Return the published sizes of each photo by id, made now or taken from the cache.

    Args:
        job_folder: Folder of the job, for the places of problems.
        photos: Photos to publish.
        cache: Folder of the cache; made when missing.

    Raises:
        Refused: Photos that can't be decoded, each at its entry in the log (``photo-unreadable``).
    """
    originals = [(photo.entry.id, photo.path, photo.facts.sha256) for photo in photos]
    try:
        return render_all(originals, cache)
    except PhotosUnreadable as failed:
        raise _refused(job_folder, failed.ids) from failed


def _refused(job_folder: Path, ids: Iterable[str]) -> Refused:
    log, failed = take_photos(job_folder).log, frozenset(ids)
    entries = enumerate(log.value.photos) if log else ()
    return Refused(
        log.problem("photo-unreadable", ("photos", index, "file"), entry.file)
        for index, entry in entries
        if log and entry.id in failed
    )
