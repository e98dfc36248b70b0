"""What the log says of each demo photo: when, where, what it shows and proves."""

from dataclasses import dataclass
from datetime import datetime

OFFSET = "-04:00"
LOOKED, FIRST, SECOND, LAST = "2026-03-09", "2026-03-16", "2026-03-17", "2026-03-18"
DOV, TAM = "Dov Marrick", "Tam Oduya"


@dataclass(frozen=True)
class Entry:
    """One photo of the log.

    Attributes:
        id: Id of the photo.
        when: Day and time on the wall.
        stage: Stage of the work.
        shows: The caption.
        plane: Slope it shows, or nothing.
        pin: Place on that slope, u and v, as a crew writes it.
        direction: Way the camera looks.
        proves: What it is evidence for.
        taken_by: Who took it.
        orientation: How the camera was held, as EXIF says it: 1 upright, 6 and 8 on its side.
        readers: Copies that carry it.
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

    @property
    def taken_at(self) -> datetime:
        """Time on the wall."""
        return datetime.fromisoformat(self.when)

    @property
    def set_by(self) -> str:
        """Who wrote the entry: the one who did not take the photo."""
        return TAM if self.taken_by == DOV else DOV


ENTRIES: tuple[Entry, ...] = (
    Entry("P01", f"{LOOKED}T09:10:24", "before", "The house from the street, number 18.", direction="north"),
    Entry(
        "P02",
        f"{LOOKED}T09:14:51",
        "before",
        "The front slope, the dormer and the valley to the wing before the work.",
        "MS",
        ("18 ft", "4 ft"),
        "north-north-east",
    ),
    Entry(
        "P03",
        f"{LOOKED}T09:26:07",
        "before",
        (
            "Brown ring on the dining-room ceiling, with a second, smaller one beside it: where the "
            "water came in."
        ),
        direction="up",
    ),
    Entry(
        "P04",
        f"{LOOKED}T09:41:38",
        "before",
        (
            "Foot of the dormer's east wall: the last step flashing ends above the valley, bare wet "
            "sheathing below it, no kick-out."
        ),
        "MS",
        ("24 ft", "4 ft 9 in"),
        "west-north-west",
        ("C1", "K1"),
        orientation=6,
    ),
    Entry(
        "P05",
        f"{LOOKED}T09:52:15",
        "before",
        "Level and tape at the rake: 6 in of fall in 12 in, so the slope is 6 in 12.",
        "MS",
        ("0 ft", "5 ft"),
        "north",
        taken_by=TAM,
    ),
    Entry(
        "P06",
        f"{FIRST}T08:20:33",
        "stripped",
        "Stripped on both sides of the valley; the deck is dark and wet along it.",
        "MS",
        ("22 ft", "3 ft"),
        "north-north-west",
    ),
    Entry(
        "P07",
        f"{FIRST}T08:34:02",
        "stripped",
        (
            "Rot in the deck of the front slope beside the valley; sheets S1 and S2 marked with "
            "chalk, tape along S1."
        ),
        "MS",
        ("20 ft", "2 ft 6 in"),
        "north-north-west",
        ("S1", "S2"),
    ),
    Entry(
        "P08",
        f"{FIRST}T08:37:46",
        "stripped",
        ("Rot in the deck of the wing beside the valley; sheets S3 and S4 marked with chalk, tape along S3."),
        "WW",
        ("0 ft", "2 ft 6 in"),
        "east",
        ("S3", "S4"),
    ),
    Entry(
        "P09",
        f"{FIRST}T08:52:19",
        "stripped",
        "Old deck nail beside the tape: smooth shank, 2-1/2 in long.",
        "MS",
        ("18 ft", "2 ft"),
        "down",
        taken_by=TAM,
    ),
    Entry(
        "P10",
        f"{FIRST}T09:48:40",
        "stripped",
        "Open rafters, tape from one left edge to the next: 24 in on center.",
        "MS",
        ("18 ft", "2 ft"),
        "north",
        taken_by=TAM,
    ),
    Entry(
        "P11",
        f"{FIRST}T09:55:11",
        "stripped",
        "Rot in the top edge of one jack rafter; the probe goes in by hand.",
        "MS",
        ("24 ft", "5 ft"),
        "north-north-west",
        ("R1",),
        orientation=8,
    ),
    Entry(
        "P12",
        f"{FIRST}T11:32:58",
        "deck",
        (
            "New 2x8 nailed beside the old jack rafter, two rows of nails 12 in apart; the rotten "
            "top edge is cut back."
        ),
        "MS",
        ("24 ft", "5 ft"),
        "north-west",
        ("R1",),
    ),
    Entry(
        "P13",
        f"{FIRST}T14:06:27",
        "deck",
        "New sheets S1 and S2 nailed down on the front slope.",
        "MS",
        ("20 ft", "2 ft 6 in"),
        "north-north-west",
        ("S1", "S2"),
    ),
    Entry(
        "P14",
        f"{FIRST}T14:09:13",
        "deck",
        "New sheets S3 and S4 nailed down on the wing.",
        "WW",
        ("0 ft", "4 ft"),
        "east",
        ("S3", "S4"),
    ),
    Entry(
        "P15",
        f"{FIRST}T13:02:44",
        "deck",
        "Stamp on the new panel: 15/32 in, span 32/16, Exposure 1.",
        "MS",
        ("18 ft", "2 ft"),
        "down",
        ("deck-panel",),
        taken_by=TAM,
    ),
    Entry(
        "P16",
        f"{FIRST}T13:05:30",
        "deck",
        "New deck nail on the tape, 2-3/8 in, ring shank; the box says 2-3/8 x .113 ring.",
        "MS",
        ("18 ft", "2 ft"),
        "down",
        ("deck-nail",),
        taken_by=TAM,
        orientation=6,
    ),
    Entry(
        "P17",
        f"{FIRST}T14:21:05",
        "deck",
        "Nails along the edges of two panels: heads at 0, 6, 12 and 18 in on the tape.",
        "WW",
        ("1 ft", "4 ft"),
        "east",
        ("deck-nail-edge-spacing",),
    ),
    Entry(
        "P18",
        f"{FIRST}T14:23:52",
        "deck",
        "Nails on a rafter line inside the panel: heads at 0, 6, 12 and 18 in on the tape.",
        "WW",
        ("2 ft", "2 ft"),
        "north-east",
        ("deck-nail-field-spacing",),
    ),
    Entry(
        "P19",
        f"{SECOND}T08:31:16",
        "dried-in",
        "Self-adhered sheet in the valley, 36 in wide on the tape, 18 in on each side.",
        "MS",
        ("21 ft 9 in", "2 ft"),
        "north-north-east",
        ("valley-lining", "V1"),
    ),
    Entry(
        "P20",
        f"{SECOND}T09:12:48",
        "dried-in",
        (
            "Head lap of the felt: 4 in from the lower edge of the upper sheet to the upper edge of "
            "the lower one. Cap nails 6 in apart."
        ),
        "MS",
        ("17 ft", "2 ft 8 in"),
        "north",
        ("underlayment-laps", "underlayment-fastening"),
        taken_by=TAM,
    ),
    Entry(
        "P21",
        f"{SECOND}T10:04:09",
        "dried-in",
        "The whole opened area under felt; the roll's label reads D226 Type II.",
        "MS",
        ("22 ft", "3 ft"),
        "north-north-west",
        ("underlayment-type",),
    ),
    Entry(
        "P22",
        f"{SECOND}T08:02:37",
        "edges",
        (
            "Lap of the drip edge at the eave: 2-1/2 in on the tape, the end of the lower piece "
            "marked in pencil."
        ),
        "MS",
        ("18 ft", "0 ft"),
        "north",
        ("drip-edge-lap",),
        taken_by=TAM,
    ),
    Entry(
        "P23",
        f"{SECOND}T14:18:20",
        "edges",
        (
            "New step flashing on the dormer's east wall; it stands 4 in up the wall on the tape, "
            "one piece at every course."
        ),
        "MS",
        ("24 ft", "6 ft 3 in"),
        "west-north-west",
        ("sidewall-flashing", "C1"),
    ),
    Entry(
        "P24",
        f"{SECOND}T14:26:54",
        "edges",
        "New kick-out at the foot of the wall; it turns the water out into the valley.",
        "MS",
        ("24 ft", "4 ft 6 in"),
        "north-west",
        ("K1",),
        orientation=6,
    ),
    Entry(
        "P25",
        f"{LAST}T08:05:12",
        "covering",
        "Bundle wrapper: Class H by ASTM D7158, lot L-27F-0318, covers 32.8 sq ft.",
        direction="down",
        proves=("shingle-wind-class",),
        taken_by=TAM,
    ),
    Entry(
        "P26",
        f"{LAST}T09:17:41",
        "covering",
        ("Open course: six nails on the nail line of one shingle, numbered in chalk, 1 in from each end."),
        "MS",
        ("19 ft", "3 ft"),
        "north",
        ("shingle-nails", "shingle-nail"),
    ),
    Entry(
        "P27",
        f"{LAST}T10:44:03",
        "covering",
        "Old shingle lifted at the joint: four spots of cement before it was pressed down.",
        "MS",
        ("15 ft", "3 ft"),
        "north",
        ("hand-seal",),
        taken_by=TAM,
    ),
    Entry(
        "P28",
        f"{LAST}T13:31:29",
        "done",
        "Joint of old shingles, left, and new ones, right; the courses line up.",
        "MS",
        ("16 ft", "2 ft"),
        "north",
    ),
    Entry(
        "P29",
        f"{LAST}T13:58:10",
        "done",
        "The front slope after the work, from the same place as P02.",
        "MS",
        ("18 ft", "4 ft"),
        "north-north-east",
    ),
    Entry(
        "P30",
        f"{LAST}T14:22:36",
        "done",
        "Attic: the underside of the new deck is dry and no daylight shows.",
        direction="north",
        taken_by=TAM,
    ),
    Entry(
        "P31",
        f"{LAST}T14:40:18",
        "done",
        "Hose test on the valley; inset, the helper watching the new deck from the attic.",
        "MS",
        ("26 ft", "7 ft"),
        "north",
        ("V1", "C1", "K1"),
        orientation=8,
        readers=("office",),
    ),
    Entry(
        "P32",
        f"{LAST}T16:05:47",
        "done",
        "Magnet run over the lawn after sweeping; what it picked up is still on it.",
        direction="north",
        taken_by=TAM,
    ),
)
