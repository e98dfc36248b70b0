"""Whole roofs from a few measures: gable, hip, shed, and wings that make an L or a T of them.

A form says where its planes lie; the program computes their corners and edges. Measures are level, in plan,
from eave line to eave line.
"""

from typing import Annotated, Literal

from pydantic import Discriminator

from packet.fields import Coordinate, Id, Length, Line, Pitch, Strict, everyone
from packet.record.planes import Facing, Point

Part = Literal["front", "back", "left", "right", "end"]
Side = Literal["front", "right", "back", "left"]


class FormPlane(Strict):
    """One plane of a form; where two forms make one plane together, both name it by the same id."""

    id: Id = everyone(description="Id of the plane.", examples=["HS"])
    title: Line | None = everyone(None, description="What the crew calls it.", examples=["front, south"])


class GablePlanes(Strict):
    """Planes of a gable roof, seen from its front."""

    front: FormPlane = everyone(description="Plane over the front eave.", examples=[{"id": "GS"}])
    back: FormPlane = everyone(description="Plane over the back eave.", examples=[{"id": "GN"}])


class HipPlanes(GablePlanes):
    """Planes of a hip roof, seen from its front; the end with a gable has none."""

    left: FormPlane | None = everyone(None, description="Hip end on the left.", examples=[{"id": "HW"}])
    right: FormPlane | None = everyone(None, description="Hip end on the right.", examples=[{"id": "HE"}])


class ShedPlanes(Strict):
    """The one plane of a shed roof."""

    front: FormPlane = everyone(description="Plane over the front eave.", examples=[{"id": "SH"}])


class WingPlanes(Strict):
    """Planes of a wing, seen from outside its end."""

    left: FormPlane = everyone(description="Plane over the left eave.", examples=[{"id": "WW"}])
    right: FormPlane = everyone(description="Plane over the right eave.", examples=[{"id": "WE"}])
    end: FormPlane | None = everyone(
        None, description="Hip end; a gable end has none.", examples=[{"id": "WS"}]
    )


class Standing(Strict):
    """A form that stands by itself."""

    id: Id = everyone(description="Id of the form.", examples=["MAIN"])
    front: Facing = everyone(description="Way the front eave looks.", examples=["south"])
    at: Point = everyone(
        description="Plan position, east and north, of the left end of the front eave as seen from outside.",
        examples=[["0 ft", "0 ft"]],
    )
    length: Length = everyone(description="Along the front eave.", examples=["48 ft"])
    depth: Length = everyone(description="Level, from the front eave to the back.", examples=["28 ft"])
    pitch: Pitch = everyone(description="Rise in 12 of level run.", examples=["5:12"])


class GableForm(Standing):
    """Two planes that meet in a ridge, a gable at either end."""

    form: Literal["gable"] = everyone(description="Form of the roof.", examples=["gable"])
    planes: GablePlanes = everyone(
        description="Its planes, seen from the front.",
        examples=[{"front": {"id": "GS"}, "back": {"id": "GN"}}],
    )


class HipForm(Standing):
    """A roof with hip ends, or with one hip end and one gable."""

    form: Literal["hip"] = everyone(description="Form of the roof.", examples=["hip"])
    end_pitch: Pitch | None = everyone(
        None, description="Pitch of the hip ends, where it is another.", examples=["8:12"]
    )
    gable_end: Literal["left", "right"] | None = everyone(
        None, description="The end that is a gable, where one is.", examples=["left"]
    )
    planes: HipPlanes = everyone(
        description="Its planes, seen from the front.",
        examples=[{"front": {"id": "HS"}, "back": {"id": "HN"}, "left": {"id": "HW"}, "right": {"id": "HE"}}],
    )


class ShedForm(Standing):
    """One plane."""

    form: Literal["shed"] = everyone(description="Form of the roof.", examples=["shed"])
    top: Literal["ridge", "headwall"] = everyone(
        description="What the top edge is: a free ridge, or it meets a wall.", examples=["headwall"]
    )
    planes: ShedPlanes = everyone(description="Its plane.", examples=[{"front": {"id": "SH"}}])


class WingForm(Strict):
    """A wing that joins another form and dies into it with valleys: an L at a corner, a T between."""

    form: Literal["wing"] = everyone(description="Form of the roof.", examples=["wing"])
    id: Id = everyone(description="Id of the form.", examples=["WING"])
    joins: Id = everyone(description="Form that it joins.", examples=["MAIN"])
    side: Side = everyone(description="Eave of that form, seen from its front.", examples=["front"])
    starts: Coordinate = everyone(
        description="Where the wing starts along that eave, from its left end as seen from outside.",
        examples=["20 ft"],
    )
    width: Length = everyone(description="Width of the wing, from eave to eave.", examples=["16 ft"])
    out: Length = everyone(
        description="How far it stands out, from that eave to the wing's end.", examples=["12 ft"]
    )
    pitch: Pitch | None = everyone(None, description="Its pitch, where it is another.", examples=["8:12"])
    planes: WingPlanes = everyone(
        description="Its planes, seen from outside its end.",
        examples=[{"left": {"id": "WW"}, "right": {"id": "WE"}}],
    )


AnyForm = Annotated[GableForm | HipForm | ShedForm | WingForm, Discriminator("form")]
StandingForm = GableForm | HipForm | ShedForm


def parts(form: AnyForm) -> tuple[tuple[Part, FormPlane], ...]:
    """Return the planes of a form by the part of it they are."""
    planes = form.planes
    return tuple((name, plane) for name in type(planes).model_fields if (plane := getattr(planes, name)))  # type: ignore[misc]
