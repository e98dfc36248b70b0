"""The demo jobs whose photos are drawn: add a job here, with its log entries and its views."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from zoneinfo import ZoneInfo

from PIL import Image

from . import framed, hip, valley
from .framed import with_frames
from .goods_shown import HIP, SNOW, VALLEY, with_goods
from .log_entry import Entry
from .snow import photo_list as snow

FOLDER = Path(__file__).resolve().parents[2] / "jobs"


@dataclass(frozen=True)
class Job:
    """A demo job with drawn photos.

    Attributes:
        number: The job's number, and the name of its folder.
        entries: What the log says of each photo, in the order of the log.
        views: What draws each photo, by its id.
        zone: Time zone of the house; the camera writes its offset of the day.
        place: Where the camera says it stood, latitude and longitude [degrees]; open sea, no house.
        most_bytes: A photo's file may be this large [bytes].
        long_px: Longer side of a photo [px]; the camera of a large job is set to smaller pictures.
    """

    number: str
    entries: tuple[Entry, ...]
    views: Mapping[str, Callable[[], Image.Image]]
    zone: str = "America/New_York"
    place: tuple[float, float] = (33.0, -78.0)
    most_bytes: int = 115_000
    long_px: int = 1600

    @property
    def folder(self) -> Path:
        """The job's folder."""
        return FOLDER / self.number

    @property
    def by_id(self) -> dict[str, Entry]:
        """The entries by photo id."""
        return {entry.id: entry for entry in self.entries}

    def offset(self, entry: Entry) -> str:
        """Return the offset from UTC on the day of a photo, ``-04:00``."""
        text = entry.taken_at.replace(tzinfo=ZoneInfo(self.zone)).strftime("%z")
        return f"{text[:3]}:{text[3:]}"


def _log(
    entries: tuple[Entry, ...], shown: Mapping[str, tuple[str, ...]], frames: Mapping[str, framed.Frame]
) -> tuple[Entry, ...]:
    return with_frames(with_goods(entries, shown), frames)


JOBS: dict[str, Job] = {
    job.number: job
    for job in (
        Job("26-041", _log(valley.ENTRIES, VALLEY, framed.VALLEY), valley.VIEWS),
        Job("26-052", _log(hip.ENTRIES, HIP, framed.HIP), hip.VIEWS, most_bytes=75_000, long_px=1400),
        Job("26-067", _log(snow.ENTRIES, SNOW, framed.SNOW), snow.VIEWS, most_bytes=70_000, long_px=1360),
    )
}
