"""The frozen closeout; ``packet.json`` is the dump of one reader's copy of it."""

from typing import Literal

from packet.fields import Strict, everyone, leaf
from packet.figure import Figure, Source
from packet.figures.access import Access
from packet.figures.deck_parts import DeckPlan
from packet.figures.plan import Geometry
from packet.figures.renailing import Renailing
from packet.figures.takeoff import TakeoffLine
from packet.photos.clocknote import ClockCorrection
from packet.photos.log import CaptionedPhoto
from packet.record.job import JobRecord
from packet.record.office import Office
from packet.review.duties import Duty, Standing
from packet.review.holds import HoldPoint
from packet.review.model import Finding, Result

FORMAT, FORMAT_VERSION = "roof-closeout-packet", 1


class Head(Strict):
    """What made the packet and what it rests on."""

    format: Literal["roof-closeout-packet"] = everyone(FORMAT)
    version: int = everyone(FORMAT_VERSION)
    program: str = everyone(description="Version of the program.")
    language: str = everyone("en")
    reference: dict[str, str] = everyone(description="Reference file to digest.")


class Photo(CaptionedPhoto):
    """A logged photo with the facts of its original and the names of its published sizes."""

    original_sha256: str = everyone()
    width_px: int = everyone(description="Width of the original, upright [px].")
    height_px: int = everyone(description="Height of the original, upright [px].")
    time_from: Literal["log", "camera", "nowhere"] = everyone()
    time_stated: bool = everyone(description="Its time rests on what somebody said, not on a camera.")
    clock: ClockCorrection | None = everyone(
        None,
        description="Its time by a right clock, where the camera's was off; taken_at stays the camera's.",
    )
    large: str = everyone(description="Published large size.")
    small: str = everyone(description="Published small size.")
    has_place: bool = leaf(description="The original carries a position; it is never published.")


class Code(Strict):
    """A code, program or guide the job rests on."""

    id: str = everyone()
    title: str = everyone()
    edition: str = everyone()
    whose: str = everyone()
    note: str = everyone("")


class Care(Strict):
    """One care note or caution that fits this house."""

    id: str = everyone()
    kind: Literal["care", "avoid", "caution"] = everyone()
    when: str = everyone()
    says: str = everyone()
    source: Source = everyone()


class Closeout(Strict):
    """Everything a packet says about one job."""

    packet: Head = everyone()
    office: Office = everyone()
    record: JobRecord = everyone()
    codes: tuple[Code, ...] = everyone()
    figures: dict[str, Figure] = everyone()
    results: tuple[Result, ...] = everyone()
    findings: tuple[Finding, ...] = everyone()
    holds: tuple[HoldPoint, ...] = everyone(description="What is shown before each layer goes on.")
    duties: tuple[Duty, ...] = everyone(description="Inspections and certificates: needed or not, and why.")
    approvals: tuple[Standing, ...] = everyone(description="Approvals of products, by the days of the work.")
    stages: tuple[str, ...] = everyone()
    expected: tuple[str, ...] = everyone(description="Parts of the record this kind of work is asked for.")
    photos: tuple[Photo, ...] = everyone()
    takeoff: tuple[TakeoffLine, ...] = everyone()
    deck_plan: DeckPlan | None = everyone()
    renailing: Renailing | None = everyone()
    geometry: Geometry | None = everyone()
    care: tuple[Care, ...] = everyone()
    access: Access = everyone(description="Ladders, heights of fall, old paint and old coverings.")
