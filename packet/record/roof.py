"""The roof: planes, edges, openings, framing, and what was on it before."""

from typing import Annotated, Literal

from pydantic import Discriminator

from packet.fields import (
    Coordinate,
    Count,
    Id,
    Length,
    Line,
    NailSize,
    Pitch,
    Prose,
    Spacing,
    Strict,
    Thickness,
    everyone,
)

Facing = Literal["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"]
EdgeKind = Literal["eave", "rake", "ridge", "hip", "valley", "sidewall", "headwall", "pitch break"]
Point = tuple[Coordinate, Coordinate]


class Plane(Strict):
    """What every plane has; lengths along the eave are level, ``run`` is level from the eave to the top."""

    id: Id = everyone(description="Id of the plane.", examples=["MS"])
    title: Line = everyone(description="What the crew calls it.", examples=["front, south"])
    pitch: Pitch = everyone(description="Rise in 12 of level run.", examples=["6:12"])
    facing: Facing = everyone(description="Way the plane looks, down the slope.", examples=["south"])
    at: Point = everyone(
        description="Plan position, east and north, of the lower left corner as seen from outside.",
        examples=[["0 ft", "0 ft"]],
    )
    run: Length = everyone(description="Level run from the lowest edge to the top.", examples=["12 ft"])


class Rectangle(Plane):
    """A plane of equal width all the way up."""

    shape: Literal["rectangle"] = everyone(description="Shape of the plane.", examples=["rectangle"])
    lower: Length = everyone(description="Length of the lowest edge.", examples=["40 ft"])


class Trapezoid(Plane):
    """A plane whose top is shorter or longer than its lowest edge."""

    shape: Literal["trapezoid"] = everyone(description="Shape of the plane.", examples=["trapezoid"])
    lower: Length = everyone(description="Length of the lowest edge.", examples=["20 ft"])
    upper: Length = everyone(description="Length of the top edge.", examples=["32 ft"])
    upper_starts: Coordinate = everyone(
        description="Where the top edge starts, along the lowest edge from its left end; negative when the "
        "plane widens to the left.",
        examples=["0 ft"],
    )


class Triangle(Plane):
    """A hip end."""

    shape: Literal["triangle"] = everyone(description="Shape of the plane.", examples=["triangle"])
    lower: Length = everyone(description="Length of the lowest edge.", examples=["24 ft"])
    top_at: Coordinate = everyone(
        description="Where the top stands, measured along the lowest edge from its left end.",
        examples=["12 ft"],
    )


AnyPlane = Annotated[Rectangle | Trapezoid | Triangle, Discriminator("shape")]


class Edge(Strict):
    """One edge; the planes that meet in it share it, so it is counted once."""

    id: Id = everyone(description="Id of the edge.", examples=["E1"])
    kind: EdgeKind = everyone(description="Kind of edge.", examples=["valley"])
    sides: tuple[Line, ...] = everyone(
        description="One or two sides of planes, each as plane.side; sides are lower, right, upper and left.",
        examples=[["MS.right", "WW.left"]],
        min_length=1,
        max_length=2,
    )
    measured: Length | None = everyone(
        None, description="Length as taped on the roof.", examples=["17 ft 11-3/4 in"]
    )


class Opening(Strict):
    """A rectangle the covering does not pass: a dormer, a chimney, a skylight."""

    id: Id = everyone(description="Id of the opening.", examples=["O1"])
    plane: Id = everyone(description="Plane it is cut in.", examples=["MS"])
    what: Line = everyone(description="What stands there.", examples=["dormer"])
    at: Point = everyone(description="Lower left corner: along the lowest edge, then up the slope.")
    along: Length = everyone(description="Width along the eave.", examples=["10 ft"])
    up: Length = everyone(description="Length up the slope.", examples=["8 ft 11-5/16 in"])


class Framing(Strict):
    """Rafters or trusses under the work."""

    member: Line = everyone(description="Size and kind of the member.", examples=["2x8 rafter"])
    species: Line | None = everyone(None, description="Species of the wood.", examples=["Southern Pine"])
    spacing: Spacing = everyone(description="Spacing of the members.", examples=["24 in oc"])


class OldRoof(Strict):
    """What was on the house before the work."""

    covering: Line | None = everyone(None, description="Old covering.", examples=["laminated shingle"])
    layers: Count | None = everyone(None, description="Layers of covering.", examples=[1])
    age_years: Count | None = everyone(None, description="Age as told or dated.", examples=[12])
    age_from: Line | None = everyone(
        None, description="How the age is known.", examples=["permit of 2008", "told by the owner"]
    )
    bend_test: Prose | None = everyone(
        None,
        description="A shingle lifted and bent by hand: how it took it, at what temperature.",
        examples=["Lifted to a right angle without a crack, 61 F."],
    )
    match_tried: Prose | None = everyone(
        None,
        description="Whether a like shingle was sought, and what came of it.",
        examples=["Same line, color no longer made; nearest color shown to the owner."],
    )
    condition: Prose | None = everyone(
        None,
        description="Condition as found: granules, seal, brittleness.",
        examples=["Granules good, seals held."],
    )
    deck: Line | None = everyone(None, description="Old deck.", examples=["1/2 in plywood"])
    deck_nail: NailSize | None = everyone(
        None, description="Old deck nail as measured.", examples=["2-1/2 x 0.131"]
    )
    deck_thickness: Thickness | None = everyone(
        None, description="Old deck's thickness.", examples=["1/2 in"]
    )


class Roof(Strict):
    """Geometry and make of the roof."""

    eave_height: Length = everyone(description="Height of the eave above the ground.", examples=["9 ft 2 in"])
    planes: tuple[AnyPlane, ...] = everyone(description="Planes of the roof.", min_length=1, max_length=200)
    edges: tuple[Edge, ...] = everyone((), description="Edges of the roof.", max_length=800)
    openings: tuple[Opening, ...] = everyone((), description="Openings in planes.", max_length=200)
    framing: Framing | None = everyone(None, description="Framing under the deck.")
    old: OldRoof | None = everyone(None, description="The roof as it was found.")
