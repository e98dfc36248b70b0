"""The work layer by layer above the deck: dry-in, edges, details, covering, tie-in."""

from typing import Literal

from packet.fields import (
    Coordinate,
    Count,
    Day,
    DayOrTime,
    Exposure,
    Id,
    Length,
    Line,
    Prose,
    Spacing,
    Strict,
    Thickness,
    everyone,
)
from packet.record.planes import Point


class CapFasteners(Strict):
    """How the underlayment is held."""

    kind: Line = everyone(description="Kind of fastener.", examples=["1 in plastic cap nail"])
    at_laps: Spacing = everyone(description="Spacing along laps.", examples=["6 in"])
    between: Spacing = everyone(description="Spacing between laps.", examples=["12 in"])


class IceBarrier(Strict):
    """The membrane along the eaves of a cold place, as taped."""

    product: Line = everyone(description="What the crew calls it.", examples=["self-adhered sheet"])
    standard: Line | None = everyone(
        None, quoted=True, description="Standard on the roll.", examples=["ASTM D1970"]
    )
    up_slope: Length | None = everyone(
        None, description="From the eave edge up the slope, as taped.", examples=["6 ft"]
    )
    overhang: Length | None = everyone(
        None, description="Level, from the eave edge to the outside face of the wall.", examples=["12 in"]
    )
    lap: Length | None = everyone(
        None, description="Lap of one course over the next, as measured.", examples=["3-1/2 in"]
    )
    edges: tuple[Id, ...] = everyone(
        (),
        description="Edges it lies along, by id; left out, every eave of the work.",
        examples=[["E3", "E4"]],
        max_length=200,
    )


class SealedDeck(Strict):
    """How the joints of the deck were closed against water."""

    way: Literal["tape on the joints", "self-adhered sheet", "two layers of underlayment"] = everyone(
        description="Way of sealing.", examples=["tape on the joints"]
    )
    product: Line | None = everyone(None, description="What was used.", examples=["flashing tape"])
    standard: Line | None = everyone(
        None, quoted=True, description="Standard on it.", examples=["ASTM D1970"]
    )
    width: Length | None = everyone(None, description="Width of the tape.", examples=["4 in"])


class TemporaryCover(Strict):
    """A cover that kept the weather out until the roof could: when it went on, and when it came off."""

    id: Id = everyone(description="Id of the cover.", examples=["T1"])
    where: Line = everyone(description="What it covered.", examples=["open deck on the north slope"])
    what: Line = everyone(description="What it was.", examples=["tarp, 20 ft x 30 ft"])
    held_by: Line | None = everyone(
        None, description="How it was held.", examples=["over the ridge, battens screwed along the edges"]
    )
    put_on: Day = everyone(description="Day it went on.")
    taken_off: Day | None = everyone(None, description="Day it came off; absent while it is on.")
    weather: Prose | None = everyone(
        None,
        description="What the weather did to it, and what was seen inside.",
        examples=["Light rain; attic dry."],
    )


class DryIn(Strict):
    """Underlayment and what the night did."""

    standard: Line | None = everyone(
        None, quoted=True, description="Standard and type on the roll.", examples=["ASTM D226 Type II"]
    )
    product: Line | None = everyone(None, description="What the crew calls it.", examples=["No. 30 felt"])
    layers: Count | None = everyone(None, description="Layers laid.", examples=[1])
    head_lap: Length | None = everyone(None, description="Lap of one course over the next, as measured.")
    end_lap: Length | None = everyone(None, description="Lap at roll ends, as measured.")
    fasteners: CapFasteners | None = everyone(None, description="Fasteners of the underlayment.")
    sealed_deck: SealedDeck | None = everyone(None, description="Joints of the deck closed.")
    ice_barrier: IceBarrier | None = everyone(None, description="Membrane along the eaves.")
    weather: Prose | None = everyone(
        None, description="Weather while the roof was open.", examples=["Dry, 60 F, light wind."]
    )


EdgeOrder = Literal["under the underlayment", "over the underlayment"]


class DripEdge(Strict):
    """Metal at eaves and rakes."""

    metal: Line = everyone(description="Metal and thickness.", examples=["0.019 in aluminum"])
    length: Length | None = everyone(None, description="Run of new metal.", examples=["9 ft"])
    lap: Length | None = everyone(None, description="Lap of pieces, as measured.", examples=["2-1/2 in"])
    fasteners: Line | None = everyone(
        None,
        description="What holds it, by length and shank.",
        examples=["1-1/4 in x 0.120 in roofing nails, hot-dip galvanized"],
    )
    fastener_spacing: Spacing | None = everyone(
        None, description="Nail spacing, as measured.", examples=["10 in"]
    )
    order_eave: EdgeOrder | None = everyone(
        None,
        description="Metal of the eaves over or under the underlayment.",
        examples=["under the underlayment"],
    )
    order_rake: EdgeOrder | None = everyone(
        None,
        description="Metal of the rakes over or under the underlayment.",
        examples=["over the underlayment"],
    )
    order: Line | None = everyone(
        None,
        description="Anything else about the order of metal and underlayment.",
        examples=["felt lapped over the metal"],
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
    fasteners: Line | None = everyone(
        None,
        description="What holds it, and where.",
        examples=["one roofing nail in the upper corner of each piece"],
    )
    flashing_height: Length | None = everyone(None, description="Flashing up the wall.", examples=["4 in"])
    flashing_width: Length | None = everyone(None, description="Flashing onto the roof.", examples=["4 in"])
    length: Length | None = everyone(
        None, description="Length along the wall, up the slope.", examples=["9 ft"]
    )
    pieces: Count | None = everyone(None, description="Pieces of step flashing.", examples=[12])
    counterflashing: Literal["new", "reused", "left as found", "by others", "none"] | None = everyone(
        None, description="What was done with the metal that laps over it.", examples=["reused"]
    )
    width: Length | None = everyone(
        None, description="Width of a chimney or skylight along the slope's level.", examples=["32 in"]
    )
    cricket: Literal["built", "none"] | None = everyone(
        None, description="Whether a cricket stands on the uphill side.", examples=["built"]
    )
    note: Prose | None = everyone(
        None, description="Anything else about it.", examples=["Sound; laid back over new shingles."]
    )


class WorkedArea(Strict):
    """A plane, or a part of one as an outline on the slope, that was stripped and covered again."""

    id: Id = everyone(description="Id of the area.", examples=["A1"])
    plane: Id = everyone(description="Plane it lies on.", examples=["MS"])
    outline: tuple[Point, ...] | None = everyone(
        None,
        description="Corners in order: along the lowest edge, then up the slope. Left out, it is "
        "the whole plane.",
        min_length=3,
        max_length=60,
    )
    opened: DayOrTime | None = everyone(
        None, description="When it was opened; left out, the day the job was started holds."
    )
    dried_in: DayOrTime | None = everyone(
        None,
        description="When it was under underlayment; left out, the job's day holds.",
        examples=["2026-03-16T15:30"],
    )
    covered: DayOrTime | None = everyone(
        None, description="When its covering was on; left out, the day the job was finished holds."
    )


class Shingle(Strict):
    """The shingle as its wrapper reads."""

    kind: Literal["laminated", "three-tab"] = everyone(description="Kind of shingle.", examples=["laminated"])
    made_by: Line | None = everyone(
        None, quoted=True, description="Maker on the wrapper.", examples=["Marshgate Roofing Mill"]
    )
    color: Line | None = everyone(None, quoted=True, description="Color.", examples=["wet slate"])
    lot: Line | None = everyone(None, quoted=True, description="Lot on the wrapper.", examples=["L-27F-0318"])
    width: Length | None = everyone(
        None, description="Length of a shingle along the course.", examples=["39-3/8 in"]
    )
    exposure: Exposure = everyone(description="Exposure laid.", examples=["5-5/8 in"])
    wind_test: Line | None = everyone(
        None, quoted=True, description="Wind test on the wrapper.", examples=["ASTM D7158"]
    )
    wind_class: Line | None = everyone(None, quoted=True, description="Class on the wrapper.", examples=["H"])


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
        quoted=True, description="Where it is printed.", examples=["bundle wrapper, high-wind panel"]
    )


class LowSlope(Strict):
    """A covering for a slope too low for shingles, and how it runs under them."""

    id: Id = everyone(description="Id of the entry.", examples=["L1"])
    plane: Id = everyone(description="Plane it lies on.", examples=["PR"])
    product: Line = everyone(
        description="What it is.", examples=["self-adhered cap sheet over a nailed base sheet"]
    )
    made_by: Line | None = everyone(
        None, quoted=True, description="Maker on the roll.", examples=["Marshgate Roofing Mill"]
    )
    plies: Count = everyone(1, description="Plies laid.", examples=[2])
    side_lap: Length | None = everyone(None, description="Side lap, as measured.", examples=["3 in"])
    end_lap: Length | None = everyone(None, description="End lap, as measured.", examples=["6 in"])
    under_shingles: Length | None = everyone(
        None, description="How far it runs up under the shingles, as taped.", examples=["24 in"]
    )
    note: Prose | None = everyone(
        None, description="Anything else about it.", examples=["Rolled in at 58 F."]
    )


class Covering(Strict):
    """The new covering."""

    areas: tuple[WorkedArea, ...] = everyone(
        (), description="Areas stripped and covered again.", max_length=200
    )
    shingle: Shingle | None = everyone(None, description="The shingle.")
    starter: Line | None = everyone(
        None, description="Starter at eaves and rakes.", examples=["starter strip, sealed at the eave edge"]
    )
    starter_along: tuple[Literal["eave", "rake"], ...] = everyone(
        ("eave",), description="Edges that get a starter.", examples=[["eave", "rake"]], max_length=2
    )
    low_slope: tuple[LowSlope, ...] = everyone((), description="Covering of low slopes.", max_length=50)
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
