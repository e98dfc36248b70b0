"""The deck laid out, as drawings and pages need it: planes, pieces, rows of nails, cut-outs."""

from dataclasses import dataclass

from packet.calc.deck.marks import Corner, Place

UV = tuple[float, float]


@dataclass(frozen=True)
class DeckRow:
    """One row of nails, evenly apart, on the slope [ft]; ``opens`` tells of a nail at its start."""

    kind: str
    start: UV
    end: UV
    count: int
    opens: bool


@dataclass(frozen=True)
class DeckPiece:
    """One sheet as laid.

    Attributes:
        id: Sheet.
        outlines: Corners of each part [ft].
        cuts: Both ends of each cut, as figures of the distances from the sheet's lower left corner.
        rows: Rows of nails.
        laid: Figure of its area after cutting.
        nails: Figure of its nails; "" where there is no schedule.
        bearings: Members it bears on.
        marks: Where on the sheet each cut begins and ends.
        corners: Corners of the sheet that stay whole; no cut ends in them.
        trimmed: It is smaller than a whole panel, or an offcut: it was cut square to its size first.
    """

    id: str
    outlines: tuple[tuple[UV, ...], ...]
    cuts: tuple[tuple[str, str, str, str], ...]
    rows: tuple[DeckRow, ...]
    laid: str
    nails: str
    bearings: int
    marks: tuple[tuple[Place, Place], ...] = ()
    corners: tuple[Corner, ...] = ()
    trimmed: bool = False


@dataclass(frozen=True)
class DeckStep:
    """One side of a cut-out moved: which, why, and the figure of how far."""

    side: str
    reason: str
    added: str


@dataclass(frozen=True)
class DeckCutOut:
    """A cut-out the rule leads to, and the one that was made; corners lower left and upper right [ft]."""

    id: str
    rot: tuple[UV, UV]
    asked: tuple[UV, UV]
    made: tuple[UV, UV] | None
    steps: tuple[DeckStep, ...]
    edges: str


@dataclass(frozen=True)
class DeckPlane:
    """One plane with new deck, on the slope [ft]; ``level_wood`` are places up the slope."""

    id: str
    title: str
    outline: tuple[UV, ...]
    openings: tuple[tuple[UV, ...], ...]
    lines: tuple[float, ...]
    unsound: tuple[float, ...]
    member_ft: float
    strips: tuple[tuple[UV, ...], ...]
    pieces: tuple[DeckPiece, ...]
    cut_outs: tuple[DeckCutOut, ...]
    level_wood: tuple[float, ...] = ()


@dataclass(frozen=True)
class DeckJoint:
    """One joint between two courses of new sheets.

    Attributes:
        plane: Plane it lies on.
        below: Sheets below it.
        above: Sheets above it.
        length: Figure of its length.
        clips: Figure of the clips on it; "" where it takes none.
    """

    plane: str
    below: tuple[str, ...]
    above: tuple[str, ...]
    length: str
    clips: str


@dataclass(frozen=True)
class DeckEdges:
    """The long edges of the panels between the framing; a figure that there is not is "".

    Attributes:
        bare: Figure of the widest framing that the panel spans with bare edges.
        held: Figure of the widest framing that it spans with its edges held.
        spacing: Figure of the widest distance on center that the panels span.
        wanted: Whether the edges want support on this framing; None where nobody can tell.
        each_wanted: Figure of the clips that each space wants, where clips are to hold the edges.
        by_clips: Whether clips hold the edges, or are to hold them.
        joints: Joints between courses of new sheets; none where no clips hold them.
        clips: Figure of the clips on all of them.
    """

    bare: str
    held: str
    spacing: str
    wanted: bool | None
    each_wanted: str
    by_clips: bool
    joints: tuple[DeckJoint, ...]
    clips: str


@dataclass(frozen=True)
class DeckPlan:
    """The deck as a drawing needs it.

    Attributes:
        edge: Figure of the spacing on supported edges; "" where there is none.
        field: Figure of the spacing between.
        gable: Figure of the spacing at gable ends; "" where there is none.
        by_rule: Whether the schedule is a rule's; else it is as measured.
        planes: Planes with new deck.
        edges: Long edges of the new panels; None where there are no sheets, or they lie over old boards.
    """

    edge: str
    field: str
    gable: str
    by_rule: bool
    planes: tuple[DeckPlane, ...]
    edges: DeckEdges | None = None
