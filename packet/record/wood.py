"""Wood: framing and trim touched, new deck of panels or boards, old deck nailed again."""

from typing import Annotated, Literal

from packet import units
from packet.fields import (
    Count,
    Id,
    Length,
    Line,
    NailSize,
    Prose,
    Spacing,
    Strict,
    Thickness,
    everyone,
    length,
)
from packet.record.planes import Point

#: A gap between panels; where they were found tight it is nothing, and that too is a measure.
PanelGap = Annotated[units.Length, length("0 in", "2 in", "1/8 in", "0 in")]
Shank = Literal["smooth", "ring"]
BoardsLaid = Literal["side by side", "spaced"]
RenailedWay = Literal["whole deck nailed again", "ring shank nails added between"]
EdgeSupport = Literal["clips", "tongue and groove", "blocking", "none"]
NailHeads = Literal["flush", "overdriven", "standing up"]
PanelKind = Literal["plywood", "OSB", "composite panel"]
FramingPart = Literal[
    "rafter",
    "jack rafter",
    "rafter tail",
    "ridge board",
    "blocking",
    "outlooker",
    "barge rafter",
    "sub-fascia",
    "nailer",
    "fascia",
    "soffit",
    "other",
]


class FramingWork(Strict):
    """Framing or trim that was cut back, stiffened or replaced."""

    id: Id = everyone(description="Id of the entry.", examples=["R1"])
    part: FramingPart = everyone(description="Which part.", examples=["jack rafter"])
    where: Line | None = everyone(None, description="Where it is.", examples=["under the valley foot"])
    what: Prose = everyone(
        description="What was done.", examples=["Cut back to sound wood and a new rafter set beside it."]
    )
    member: Line | None = everyone(None, description="Size of the new piece.", examples=["2x8 Southern Pine"])
    length: Length | None = everyone(None, description="Length of the new piece.", examples=["6 ft"])
    fasteners: Line | None = everyone(
        None, description="What holds it.", examples=["3 in x 0.131 in nails, two rows at 12 in"]
    )


class Panel(Strict):
    """The new deck panel as its stamp reads."""

    product: PanelKind = everyone(description="Kind of panel.", examples=["plywood"])
    thickness: Thickness = everyone(description="Performance category or thickness.", examples=["15/32 in"])
    span_rating: Line | None = everyone(
        None, quoted=True, description="Span rating on the stamp.", examples=["32/16"]
    )
    bond: Line | None = everyone(
        None, quoted=True, description="Bond class on the stamp.", examples=["Exposure 1"]
    )
    width: Length = everyone(description="Width of a whole sheet.", examples=["4 ft"])
    length: Length = everyone(description="Length of a whole sheet.", examples=["8 ft"])


class DeckNail(Strict):
    """The nail, by length and shank; a penny name alone does not identify it."""

    size: NailSize = everyone(description="Length by shank.", examples=["2-3/8 x 0.113"])
    shank: Shank = everyone(description="Smooth or ring shank.", examples=["ring"])
    finish: Line | None = everyone(None, description="Coating or metal.", examples=["hot-dip galvanized"])


class Patch(Strict):
    """A rectangle on a plane."""

    at: Point = everyone(
        description="Lower left corner: along the lowest edge, then up the slope.",
        examples=[["16 ft", "0 ft"]],
    )
    along: Length = everyone(description="Size along the eave.", examples=["3 ft"])
    up: Length = everyone(description="Size up the slope.", examples=["18 in"])


class CutOut(Strict):
    """Rot as found, and the old deck that was cut out for it."""

    id: Id = everyone(description="Id of the entry.", examples=["CO1"])
    plane: Id = everyone(description="Plane it lies on.", examples=["MS"])
    rot: Patch = everyone(
        description="Rotten area as found, the least rectangle around it.",
        examples=[{"at": ["16 ft 8 in", "0 ft"], "along": "5 ft", "up": "3 ft 4 in"}],
    )
    cut: Patch | None = everyone(None, description="What was cut out, as measured.")
    edges: Literal["on the center of a rafter", "beside a rafter, on a nailer"] = everyone(
        description="How the old deck's edges are carried.", examples=["on the center of a rafter"]
    )
    nailer: Id | None = everyone(
        None, description="Entry under framing of the nailer, where one was set.", examples=["R1"]
    )
    note: Prose | None = everyone(
        None, description="Anything else about it.", examples=["Cut along the old joint above."]
    )


class Clips(Strict):
    """Clips between panels over the space between supports."""

    kind: Line = everyone(description="What they are.", examples=["15/32 in H-shaped steel clip"])
    each_space: Count = everyone(description="Clips in each space between supports.", examples=[1])


class Sheet(Strict):
    """One sheet or piece of new deck."""

    id: Id = everyone(description="Id chalked on the sheet.", examples=["S1"])
    plane: Id = everyone(description="Plane it lies on.", examples=["MS"])
    at: Point = everyone(
        description="Lower left corner: along the lowest edge, then up the slope.",
        examples=[["16 ft", "0 ft"]],
    )
    along: Length = everyone(description="Size along the eave.", examples=["8 ft"])
    up: Length = everyone(description="Size up the slope.", examples=["4 ft"])
    why: Line = everyone(description="Why the old deck came out.", examples=["rot"])
    product: Line | None = everyone(
        None, description="Kind of panel, where it is another than the deck's.", examples=["19/32 in plywood"]
    )
    cut_from: Id | None = everyone(
        None, description="Sheet it is an offcut of, where no new one was opened.", examples=["S1"]
    )
    agreed: Id | None = everyone(
        None, description="What its price was agreed in: a thing found, or a document.", examples=["F1"]
    )


class Board(Strict):
    """New deck boards in one place, counted in running feet."""

    id: Id = everyone(description="Id of the entry.", examples=["B1"])
    plane: Id = everyone(description="Plane they lie on.", examples=["MS"])
    where: Line = everyone(description="Where they lie.", examples=["two courses above the eave"])
    size: Line = everyone(description="Nominal size and wood.", examples=["1x6 pine, square edge"])
    width: Length = everyone(description="Width of a board as measured.", examples=["5-1/2 in"])
    thickness: Thickness | None = everyone(None, description="Thickness as measured.", examples=["3/4 in"])
    pieces: Count = everyone(description="Boards laid.", examples=[6])
    length: Length = everyone(description="Length of all of them together.", examples=["54 ft"])
    laid: BoardsLaid | None = everyone(
        None, description="Side by side, or spaced on purpose.", examples=["side by side"]
    )
    gap: Length | None = everyone(
        None,
        description="Widest gap between boards; of spaced boards the gap they were spaced by.",
        examples=["1/8 in"],
    )
    nail: DeckNail | None = everyone(None, description="Board nail.")
    nails_each_bearing: Count | None = everyone(
        None, description="Nails in a board at each rafter.", examples=[2]
    )
    why: Line = everyone(description="Why the old boards came out.", examples=["rot"])


class BoardsBelow(Strict):
    """Old boards that stayed, with the new panels laid over them."""

    laid: BoardsLaid | None = everyone(
        None, description="Side by side, or spaced on purpose.", examples=["spaced"]
    )
    thickness: Thickness = everyone(description="Thickness as measured.", examples=["3/4 in"])
    width: Length | None = everyone(None, description="Width of a board as measured.", examples=["3-1/2 in"])
    gap: Length | None = everyone(None, description="Widest gap between boards.", examples=["5 in"])
    note: Prose | None = everyone(
        None, description="Anything else about them.", examples=["Loose boards were nailed first."]
    )


class OldBoards(Strict):
    """Old deck of boards, nailed again at each rafter."""

    apart: Length = everyone(
        description="Boards center to center: the width of one, and the gap beside it.", examples=["5-1/2 in"]
    )
    nails_each_bearing: Count = everyone(description="New nails in a board at each rafter.", examples=[2])


class Renailed(Strict):
    """Old deck that stayed and was nailed again, as measured with the tape."""

    planes: tuple[Id, ...] = everyone(
        description="Planes nailed again.", examples=[["HN", "HS"]], min_length=1, max_length=200
    )
    nail: DeckNail | None = everyone(None, description="Nail driven.")
    edge_spacing: Spacing | None = everyone(
        None, description="Spacing along panel edges, old nails of the same kind counted."
    )
    field_spacing: Spacing | None = everyone(None, description="Spacing on supports between.")
    way: RenailedWay | None = everyone(
        None, description="How it was nailed again.", examples=["whole deck nailed again"]
    )
    old_edge_spacing: Spacing | None = everyone(
        None,
        description="Spacing of the old nails along panel edges, the widest found, where they count.",
        examples=["6 in"],
    )
    old_field_spacing: Spacing | None = everyone(
        None,
        description="Spacing of the old nails on supports between, the widest found, where they count.",
        examples=["12 in"],
    )
    sheet_length: Length | None = everyone(
        None,
        description="Length of a sheet of the old deck, where it is another than the new panel's.",
        examples=["8 ft"],
    )
    sheet_width: Length | None = everyone(
        None,
        description="Width of a sheet of the old deck, where it is another than the new panel's.",
        examples=["4 ft"],
    )
    boards: OldBoards | None = everyone(
        None, description="Old boards; they have no panel edges, so no spacings stand beside them."
    )
    note: Prose | None = everyone(
        None,
        description="What the old nails were and how they were counted.",
        examples=["Old nails missed the rafter at two joints."],
    )


class Deck(Strict):
    """New deck and its nailing as measured with the tape."""

    panel: Panel | None = everyone(None, description="New panel.")
    nail: DeckNail | None = everyone(None, description="Deck nail.")
    edge_spacing: Spacing | None = everyone(None, description="Nail spacing along panel edges, as measured.")
    field_spacing: Spacing | None = everyone(
        None, description="Nail spacing on supports between, as measured."
    )
    gable_spacing: Spacing | None = everyone(
        None, description="Nail spacing on the framing at gable ends, as measured.", examples=["4 in"]
    )
    near_edges_spacing: Spacing | None = everyone(
        None,
        description="Nail spacing on supports near eaves, ridges and gable ends, as measured.",
        examples=["4 in"],
    )
    gap: PanelGap | None = everyone(
        None, description="Gap between panels, as measured; 0 in where they are tight.", examples=["1/8 in"]
    )
    heads: NailHeads | None = everyone(
        None, description="How the nail heads sit, as seen in low light.", examples=["flush"]
    )
    edge_support: EdgeSupport | None = everyone(
        None,
        description="What holds the long edges of panels between the framing; clips say so by themselves.",
        examples=["tongue and groove"],
    )
    clips: Clips | None = everyone(None, description="Clips between panels.")
    cut_outs: tuple[CutOut, ...] = everyone(
        (), description="Rot, and what was cut out for it.", max_length=100
    )
    sheets: tuple[Sheet, ...] = everyone((), description="One entry a sheet or piece.", max_length=400)
    boards: tuple[Board, ...] = everyone((), description="Deck boards, one entry a place.", max_length=200)
    over_boards: BoardsBelow | None = everyone(
        None, description="Old boards that stayed under the new panels."
    )
    renailed: Renailed | None = everyone(None, description="Old deck nailed again.")
    note: Prose | None = everyone(
        None, description="Anything else about the deck.", examples=["Sheets lie across the rafters."]
    )

    @property
    def edges_held_by(self) -> EdgeSupport | None:
        """What holds the long edges of the panels between the framing."""
        return self.edge_support or ("clips" if self.clips else None)
