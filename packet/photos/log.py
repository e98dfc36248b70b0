"""The photo log, ``photos.yaml``: which photo shows what, when it was taken, and who says so."""

import stat
from pathlib import Path
from typing import Annotated, Literal

from pydantic import StringConstraints

from packet.fields import Coordinate, Id, Line, Moment, Offset, Strict, everyone, leaf
from packet.photos.clocknote import ClockNote
from packet.readers import OFFICE, Reader

#: Entries one log may hold, and notes on clocks.
MOST_PHOTOS, MOST_CLOCKS = 2000, 100

Caption = Annotated[str, StringConstraints(min_length=1, max_length=300)]
Stage = Literal["before", "stripped", "deck", "dried-in", "edges", "covering", "done"]
View = Literal["wide", "close"]
InFrame = Literal["house number", "permit number", "tape", "ruler", "label", "chalk mark"]
Compass = Literal[
    "north", "north-north-east", "north-east", "east-north-east", "east", "east-south-east", "south-east",
    "south-south-east", "south", "south-south-west", "south-west", "west-south-west", "west",
    "west-north-west", "north-west", "north-north-west", "up", "down",
]  # fmt: skip


class LoggedPhoto(Strict):
    """One entry of the log; without a stage or a caption it waits, and no copy carries it."""

    id: Id = everyone(description="Id of the photo.", examples=["P07"])
    file: Line = leaf(description="File inside the job folder.", examples=["photos/P07.jpg"])
    sha256: Annotated[str, StringConstraints(pattern=r"^[0-9a-f]{64}$")] | None = everyone(
        None,
        description="Digest of the original, so that a changed file is noticed.",
        examples=["9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"],
    )
    taken_at: Moment | None = everyone(None, description="Time on the wall where it was taken.")
    offset: Offset | None = everyone(None, description="Offset from UTC at that time.")
    offset_from: Literal["camera", "property", "stated"] = everyone(
        "camera", description="Where the offset comes from.", examples=["camera"]
    )
    stated_by: Line | None = everyone(
        None,
        description="Who said when it was taken, and how, where the time is no camera's: a weaker proof.",
        examples=["Dov Marrick, in the text message it came with"],
    )
    taken_by: Line | None = everyone(None, description="Who took it.", examples=["Dov Marrick"])
    stage: Stage | None = everyone(
        None,
        description="Stage of the work it shows; until stage and caption are there, no copy carries it.",
        examples=["stripped"],
    )
    plane: Id | None = everyone(None, description="Plane it shows.", examples=["MS"])
    pin: tuple[Coordinate, Coordinate] | None = everyone(None, description="Place on that plane.")
    direction: Compass | None = everyone(None, description="Way the camera looks.", examples=["north-east"])
    view: View | None = everyone(
        None, description="Wide shows where it is, close what it is.", examples=["close"]
    )
    in_frame: tuple[InFrame, ...] = everyone(
        (), description="What can be read in the picture, as stated.", examples=[["tape", "permit number"]]
    )
    shows: Caption | None = everyone(
        None, description="The caption; says what it proves.", examples=["Rot on both sides of the valley."]
    )
    proves: tuple[Line, ...] = everyone(
        (), description="Requirements, sheets and details it is evidence for.", examples=[["deck-nail", "S1"]]
    )
    set_by: Line | None = leaf(None, description="Who wrote this entry.", examples=["Tam Oduya"])
    readers: tuple[Reader, ...] = leaf(
        OFFICE, description="Copies that carry it.", examples=[["outside", "office"]]
    )

    @property
    def lacks(self) -> tuple[str, ...]:
        """Keys a person has still to write before a copy may carry the photo."""
        return tuple(name for name in ("stage", "shows") if getattr(self, name) is None)


class CaptionedPhoto(LoggedPhoto):
    """An entry with stage and caption: what every consumer of photos gets."""

    stage: Stage = everyone(description="Stage of the work it shows.", examples=["stripped"])
    shows: Caption = everyone(
        description="The caption; says what it proves.", examples=["Rot on both sides of the valley."]
    )


class PhotoLog(Strict):
    """The whole log."""

    photos: tuple[LoggedPhoto, ...] = leaf(
        (), description="Photos in the order of the work.", max_length=MOST_PHOTOS
    )
    clocks: tuple[ClockNote, ...] = leaf(
        (), description="Notes on camera clocks that were off.", max_length=MOST_CLOCKS
    )


def photo_path(job_folder: Path, file: str) -> Path | None:
    """Return the photo's path, or None when it would leave the job folder.

    A path with ``..``, an absolute path, a drive, a backslash or a link on the way is refused, because a job
    folder may come from elsewhere.
    """
    parts = file.split("/")
    if "\\" in file or ":" in file or any(part in ("", ".", "..") for part in parts):
        return None
    path = job_folder
    for part in parts:
        path = path / part
        try:
            if stat.S_ISLNK(path.lstat().st_mode):
                return None
        except OSError:
            break
    return job_folder.joinpath(*parts)
