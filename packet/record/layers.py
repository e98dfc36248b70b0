"""The work layer by layer: framing, deck, dry-in, edges, details, covering, tie-in."""

from typing import Literal

from packet.fields import (
    Coordinate,
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
)
from packet.record.roof import Point

Shank = Literal["smooth", "ring"]


class FramingWork(Strict):
    """Framing or trim that was cut back, stiffened or replaced."""

    id: Id = everyone(description="Id of the entry.", examples=["R1"])
    part: Line = everyone(description="Which part.", examples=["jack rafter", "fascia"])
    what: Prose = everyone(
        description="What was done.", examples=["Cut back to sound wood and a new rafter set beside it."]
    )
    member: Line | None = everyone(None, description="Size of the new piece.", examples=["2x8 Southern Pine"])
    length: Length | None = everyone(None, description="Length of the new piece.", examples=["6 ft"])
    fasteners: Line | None = everyone(
        None, description="What holds it.", examples=["3 x 0.131 nails, two rows at 12 in"]
    )


class Panel(Strict):
    """The new deck panel as its stamp reads."""

    product: Line = everyone(description="Kind of panel.", examples=["plywood"])
    thickness: Thickness = everyone(description="Performance category or thickness.", examples=["15/32 in"])
    span_rating: Line | None = everyone(None, description="Span rating on the stamp.", examples=["32/16"])
    bond: Line | None = everyone(None, description="Bond class on the stamp.", examples=["Exposure 1"])
    width: Length = everyone(description="Width of a whole sheet.", examples=["4 ft"])
    length: Length = everyone(description="Length of a whole sheet.", examples=["8 ft"])


class DeckNail(Strict):
    """The nail, by length and shank; a penny name alone does not identify it."""

    size: NailSize = everyone(description="Length by shank.", examples=["2-3/8 x 0.113"])
    shank: Shank = everyone(description="Smooth or ring shank.", examples=["ring"])
    finish: Line | None = everyone(None, description="Coating or metal.", examples=["hot-dip galvanized"])


class Sheet(Strict):
    """One sheet or piece of new deck."""

    id: Id = everyone(description="Id chalked on the sheet.", examples=["S1"])
    plane: Id = everyone(description="Plane it lies on.", examples=["MS"])
    at: Point = everyone(description="Lower left corner: along the lowest edge, then up the slope.")
    along: Length = everyone(description="Size along the eave.", examples=["8 ft"])
    up: Length = everyone(description="Size up the slope.", examples=["4 ft"])
    why: Line = everyone(description="Why the old deck came out.", examples=["rot"])


class Deck(Strict):
    """New deck and its nailing as measured with the tape."""

    panel: Panel | None = everyone(None, description="New panel.")
    nail: DeckNail | None = everyone(None, description="Deck nail.")
    edge_spacing: Spacing | None = everyone(None, description="Nail spacing along panel edges, as measured.")
    field_spacing: Spacing | None = everyone(
        None, description="Nail spacing on supports between, as measured."
    )
    sheets: tuple[Sheet, ...] = everyone((), description="One entry a sheet or piece.", max_length=400)
    note: Prose | None = everyone(
        None, description="Anything else about the deck.", examples=["Sheets lie across the rafters."]
    )


class CapFasteners(Strict):
    """How the underlayment is held."""

    kind: Line = everyone(description="Kind of fastener.", examples=["1 in plastic cap nail"])
    at_laps: Spacing = everyone(description="Spacing along laps.", examples=["6 in"])
    between: Spacing = everyone(description="Spacing between laps.", examples=["12 in"])


class DryIn(Strict):
    """Underlayment and what the night did."""

    standard: Line | None = everyone(
        None, description="Standard and type on the roll.", examples=["ASTM D226 Type II"]
    )
    product: Line | None = everyone(None, description="What the crew calls it.", examples=["No. 30 felt"])
    layers: Count = everyone(1, description="Layers laid.", examples=[1])
    head_lap: Length | None = everyone(None, description="Lap of one course over the next, as measured.")
    end_lap: Length | None = everyone(None, description="Lap at roll ends, as measured.")
    fasteners: CapFasteners | None = everyone(None, description="Fasteners of the underlayment.")
    weather: Prose | None = everyone(
        None, description="Weather while the roof was open.", examples=["Dry, 60 F, light wind."]
    )


class DripEdge(Strict):
    """Metal at eaves and rakes."""

    metal: Line = everyone(description="Metal and thickness.", examples=["0.019 in aluminum"])
    length: Length | None = everyone(None, description="Run of new metal.", examples=["9 ft"])
    lap: Length | None = everyone(None, description="Lap of pieces, as measured.", examples=["2-1/2 in"])
    fastener_spacing: Spacing | None = everyone(
        None, description="Nail spacing, as measured.", examples=["10 in"]
    )
    order: Line | None = everyone(
        None, description="Over or under the underlayment.", examples=["under at the eave"]
    )


class Detail(Strict):
    """One place where water wants in: a valley, a wall, a pipe."""

    id: Id = everyone(description="Id of the detail.", examples=["V1"])
    kind: Literal[
        "valley", "sidewall", "headwall", "kick-out", "chimney", "pipe boot", "skylight", "vent", "mast"
    ] = everyone(description="Kind of detail.", examples=["valley"])
    where: Line = everyone(description="Where it is.", examples=["between the front slope and the wing"])
    plane: Id | None = everyone(None, description="Plane it stands on.", examples=["MS"])
    at: tuple[Coordinate, Coordinate] | None = everyone(None, description="Place on that plane.")
    state: Literal["new", "reused", "left as found", "by others"] = everyone(
        description="What was done with it.", examples=["new"]
    )
    style: Line | None = everyone(None, description="How it is made.", examples=["closed-cut"])
    valley: Literal["open", "closed"] | None = everyone(
        None, description="Whether a valley is open metal or closed with shingles.", examples=["closed"]
    )
    lining_width: Length | None = everyone(
        None, description="Width of a valley's lining.", examples=["36 in"]
    )
    metal: Line | None = everyone(None, description="Metal and thickness.", examples=["0.019 in aluminum"])
    flashing_height: Length | None = everyone(None, description="Flashing up the wall.", examples=["4 in"])
    flashing_width: Length | None = everyone(None, description="Flashing onto the roof.", examples=["4 in"])
    pieces: Count | None = everyone(None, description="Pieces of step flashing.", examples=[12])
    note: Prose | None = everyone(
        None, description="Anything else about it.", examples=["Sound; laid back over new shingles."]
    )


class WorkedArea(Strict):
    """A part of a plane that was stripped and covered again, as an outline in feet on the slope."""

    id: Id = everyone(description="Id of the area.", examples=["A1"])
    plane: Id = everyone(description="Plane it lies on.", examples=["MS"])
    outline: tuple[Point, ...] = everyone(
        description="Corners in order: along the lowest edge, then up the slope.", min_length=3, max_length=60
    )


class Shingle(Strict):
    """The shingle as its wrapper reads."""

    kind: Literal["laminated", "three-tab"] = everyone(description="Kind of shingle.", examples=["laminated"])
    color: Line | None = everyone(None, description="Color.", examples=["driftwood gray"])
    lot: Line | None = everyone(None, description="Lot on the wrapper.", examples=["L-27F-0318"])
    width: Length | None = everyone(
        None, description="Length of a shingle along the course.", examples=["39-3/8 in"]
    )
    exposure: Length = everyone(description="Exposure laid.", examples=["5-5/8 in"])
    wind_test: Line | None = everyone(None, description="Wind test on the wrapper.", examples=["ASTM D7158"])
    wind_class: Line | None = everyone(None, description="Class on the wrapper.", examples=["H"])


class RoofingNail(Strict):
    """The shingle nail."""

    length: Length = everyone(description="Length.", examples=["1-1/2 in"])
    shank: Thickness = everyone(description="Shank.", examples=["0.120 in"])
    head: Thickness = everyone(description="Head.", examples=["3/8 in"])
    finish: Line | None = everyone(None, description="Coating or metal.", examples=["hot-dip galvanized"])


class MakerSays(Strict):
    """What the maker's printed instructions ask."""

    nails_each: Count | None = everyone(None, description="Nails a shingle for this wind.", examples=[6])
    printed_on: Line = everyone(
        description="Where it is printed.", examples=["bundle wrapper, high-wind panel"]
    )


class Covering(Strict):
    """The new shingles."""

    areas: tuple[WorkedArea, ...] = everyone(
        (), description="Areas stripped and covered again.", max_length=200
    )
    shingle: Shingle | None = everyone(None, description="The shingle.")
    nail: RoofingNail | None = everyone(None, description="The shingle nail.")
    nails_each: Count | None = everyone(
        None, description="Nails a shingle, as counted on an open course.", examples=[6]
    )
    maker: MakerSays | None = everyone(None, description="The maker's printed instructions.")
    above_deck: Thickness | None = everyone(
        None, description="Shingle, felt and metal a nail passes before the deck.", examples=["3/8 in"]
    )


class TieIn(Strict):
    """Where new shingles meet old."""

    courses_lifted: Count | None = everyone(None, description="Old courses lifted.", examples=[9])
    shingles_sealed: Count | None = everyone(None, description="Old shingles hand sealed.", examples=[22])
    spots_each: Count | None = everyone(None, description="Cement spots a shingle.", examples=[4])
    cement: Line | None = everyone(
        None, description="Cement used.", examples=["asphalt roof cement, ASTM D4586"]
    )
    temperature: Line | None = everyone(None, description="Air temperature as read.", examples=["61 F"])
    condition: Prose | None = everyone(
        None, description="How the old shingles took it.", examples=["Lifted without tearing."]
    )
