"""Planes of the roof as taped: rectangle, trapezoid, triangle, or an outline of points."""

from typing import Annotated, Literal

from pydantic import Discriminator

from packet.fields import Coordinate, Id, Length, Line, Pitch, Strict, everyone

Facing = Literal["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"]
Point = tuple[Coordinate, Coordinate]


class Plane(Strict):
    """What every plane has; lengths along the eave are level."""

    id: Id = everyone(description="Id of the plane.", examples=["MS"])
    title: Line = everyone(description="What the crew calls it.", examples=["front, south"])
    pitch: Pitch = everyone(description="Rise in 12 of level run.", examples=["6:12"])
    facing: Facing = everyone(description="Way the plane looks, down the slope.", examples=["south"])
    at: Point = everyone(
        description="Plan position, east and north, of the left end of the lowest edge as seen from outside.",
        examples=[["0 ft", "0 ft"]],
    )
    eave_height: Length | None = everyone(
        None,
        description="Height of its lowest edge above the ground, where it is not the roof's: "
        "a dormer, a porch.",
        examples=["14 ft"],
    )


class Taped(Plane):
    """A plane with level lower and upper edges; ``run`` is level, from the lower edge to the upper."""

    run: Length = everyone(description="Level run from the lowest edge to the top.", examples=["12 ft"])


class Rectangle(Taped):
    """A plane of equal width all the way up."""

    shape: Literal["rectangle"] = everyone(description="Shape of the plane.", examples=["rectangle"])
    lower: Length = everyone(description="Length of the lowest edge.", examples=["40 ft"])


class Trapezoid(Taped):
    """A plane whose top is shorter or longer than its lowest edge."""

    shape: Literal["trapezoid"] = everyone(description="Shape of the plane.", examples=["trapezoid"])
    lower: Length = everyone(description="Length of the lowest edge.", examples=["20 ft"])
    upper: Length = everyone(description="Length of the top edge.", examples=["32 ft"])
    upper_starts: Coordinate = everyone(
        description="Where the top edge starts, along the lowest edge from its left end; negative when the "
        "plane widens to the left.",
        examples=["0 ft"],
    )


class Triangle(Taped):
    """A hip end."""

    shape: Literal["triangle"] = everyone(description="Shape of the plane.", examples=["triangle"])
    lower: Length = everyone(description="Length of the lowest edge.", examples=["24 ft"])
    top_at: Coordinate = everyone(
        description="Where the top stands, measured along the lowest edge from its left end.",
        examples=["12 ft"],
    )


class Outlined(Plane):
    """A plane of any shape, taped corner by corner on the slope."""

    shape: Literal["outline"] = everyone(description="Shape of the plane.", examples=["outline"])
    outline: tuple[Point, ...] = everyone(
        description="Corners in order, counterclockwise from the left end of the lowest edge: along that "
        "edge, then up the slope.",
        examples=[[["0 ft", "0 ft"], ["20 ft", "0 ft"], ["20 ft", "14 ft"], ["6 ft", "14 ft"]]],
        min_length=3,
        max_length=60,
    )


AnyPlane = Annotated[Rectangle | Trapezoid | Triangle | Outlined, Discriminator("shape")]
