"""One photo of a demo job's log: when, where, what it shows and proves."""

from dataclasses import dataclass
from datetime import datetime

DOV, TAM = "Dov Marrick", "Tam Oduya"


@dataclass(frozen=True)
class Entry:
    """One photo of the log.

    Attributes:
        id: Id of the photo.
        when: Day and time on the wall; empty where nobody knows it, and then the file carries none either.
        stage: Stage of the work.
        shows: The caption.
        plane: Slope it shows, or nothing.
        pin: Place on that slope, u and v, as a crew writes it.
        direction: Way the camera looks.
        proves: What it is evidence for.
        taken_by: Who took it.
        orientation: How the camera was held, as EXIF says it: 1 upright, 6 and 8 on its side.
        readers: Copies that carry it.
        view: ``wide`` or ``close``.
        in_frame: What can be read in the picture.
    """

    id: str
    when: str
    stage: str
    shows: str
    plane: str = ""
    pin: tuple[str, str] | None = None
    direction: str = ""
    proves: tuple[str, ...] = ()
    taken_by: str = DOV
    orientation: int = 1
    readers: tuple[str, ...] = ("outside", "office")
    view: str = ""
    in_frame: tuple[str, ...] = ()

    @property
    def taken_at(self) -> datetime:
        """Time on the wall."""
        return datetime.fromisoformat(self.when)

    @property
    def set_by(self) -> str:
        """Who wrote the entry: the one who did not take the photo."""
        return TAM if self.taken_by == DOV else DOV
