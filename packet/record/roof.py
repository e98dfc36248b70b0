"""The roof: planes or whole forms, edges, openings, sections, framing, and what was on it before."""

from typing import Literal

from packet.fields import (
    Area,
    Coordinate,
    Count,
    Day,
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
from packet.record.forms import AnyForm, parts
from packet.record.planes import AnyPlane, Point

EdgeKind = Literal["eave", "rake", "ridge", "hip", "valley", "sidewall", "headwall", "pitch break"]


class Edge(Strict):
    """One edge; the planes that meet in it share it, so it is counted once."""

    id: Id = everyone(description="Id of the edge.", examples=["E1"])
    kind: EdgeKind = everyone(description="Kind of edge.", examples=["valley"])
    sides: tuple[Line, ...] = everyone(
        description="One or two sides of planes, each as plane.side: lower, right, upper and left, or the "
        "number of the side where the plane is an outline.",
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
    at: Point = everyone(
        description="Lower left corner: along the lowest edge, then up the slope.",
        examples=[["16 ft", "0 ft"]],
    )
    along: Length = everyone(description="Width along the eave.", examples=["10 ft"])
    up: Length = everyone(description="Length up the slope.", examples=["8 ft 11-5/16 in"])


class FramingLines(Strict):
    """Where the members stand under one plane: regular from one that was measured, or measured one by one."""

    plane: Id = everyone(description="Plane they stand under.", examples=["MS"])
    first: Coordinate | None = everyone(
        None,
        description="Center of one member, along the lowest edge; the others follow by the spacing.",
        examples=["0 ft"],
    )
    at: tuple[Coordinate, ...] = everyone(
        (),
        description="Centers measured one by one, where old framing is not regular.",
        examples=[["1 ft 1 in", "3 ft", "5 ft 2 in"]],
        max_length=400,
    )
    unsound: tuple[Coordinate, ...] = everyone(
        (),
        description="Centers of members that can't carry a panel's edge.",
        examples=[["3 ft"]],
        max_length=100,
    )
    level_wood: tuple[Coordinate, ...] = everyone(
        (),
        description="Wood along the eave under panel edges, by its place up the slope: sub-fascia, "
        "ridge board, blocking.",
        examples=[["0 ft"]],
        max_length=40,
    )


class Framing(Strict):
    """Rafters or trusses under the work."""

    member: Line = everyone(description="Size and kind of the member.", examples=["2x8 rafter"])
    species: Line | None = everyone(None, description="Species of the wood.", examples=["Southern Pine"])
    spacing: Spacing = everyone(description="Spacing of the members.", examples=["24 in oc"])
    width: Length | None = everyone(
        None, description="Width of a member across, where the deck bears.", examples=["1-1/2 in"]
    )
    kind: Literal["rafters", "trusses"] | None = everyone(
        None, description="Rafters or trusses.", examples=["trusses"]
    )
    damage: Prose | None = everyone(
        None,
        description="Damage found in a member that the work did not make good.",
        examples=["Top chord split at the second panel point; left to the truss engineer."],
    )
    lines: tuple[FramingLines, ...] = everyone(
        (), description="Where they stand, plane by plane.", max_length=200
    )


class RoofToWallTie(Strict):
    """What ties rafters or trusses to the wall, where it was seen or made better."""

    id: Id = everyone(description="Id of the entry.", examples=["TIE1"])
    where: Line = everyone(description="Where it is.", examples=["front wall, every truss"])
    kind: Literal["toe nails", "clip", "strap over the top", "strap over the top, both sides", "other"] = (
        everyone(description="Kind of tie.", examples=["clip"])
    )
    nails: Count | None = everyone(None, description="Nails in each, as counted.", examples=[3])
    state: Literal["left as found", "new"] = everyone(description="What was done with it.", examples=["new"])
    note: Prose | None = everyone(
        None, description="Anything else about it.", examples=["Light rust on two of them."]
    )


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
    weighs_as: Literal["three-tab", "laminated, 30-year", "heavy laminated"] | None = everyone(
        None, description="Kind of shingle its weight is taken from, for disposal.", examples=["three-tab"]
    )
    deck: Line | None = everyone(None, description="Old deck.", examples=["1/2 in plywood"])
    deck_nail: NailSize | None = everyone(
        None, description="Old deck nail as measured.", examples=["2-1/2 x 0.131"]
    )
    deck_fastener: Literal["staples", "smooth nails", "ring shank nails", "not known"] | None = everyone(
        None, description="What holds the old deck.", examples=["smooth nails"]
    )
    deck_thickness: Thickness | None = everyone(
        None, description="Old deck's thickness.", examples=["1/2 in"]
    )
    permit_date: Day | None = everyone(
        None,
        description="Day of the permit the old covering was laid under; it tells the edition of its code.",
        examples=["2014-06-03"],
    )


class EarlierWork(Strict):
    """Work on this roof before this job, for rules that add up what is done in twelve months."""

    id: Id = everyone(description="Id of the entry.", examples=["EW1"])
    on: Day = everyone(description="Day it was finished.", examples=["2025-09-02"])
    area: Area = everyone(description="Area that was worked.", examples=["120 sq ft"])
    section: Id | None = everyone(
        None, description="Section of the roof, where the record names sections.", examples=["SEC1"]
    )
    how_known: Line = everyone(description="How it is known.", examples=["told by the owner"])


class Section(Strict):
    """Planes that a rule on roof sections takes together."""

    id: Id = everyone(description="Id of the section.", examples=["SEC1"])
    title: Line = everyone(description="What it is called.", examples=["main house"])
    planes: tuple[Id, ...] = everyone(
        description="Its planes.", examples=[["HN", "HS"]], min_length=1, max_length=200
    )


class Roof(Strict):
    """Geometry and make of the roof."""

    eave_height: Length = everyone(description="Height of the eave above the ground.", examples=["9 ft 2 in"])
    forms: tuple[AnyForm, ...] = everyone(
        (), description="Whole roofs by form; their planes and edges are computed.", max_length=40
    )
    planes: tuple[AnyPlane, ...] = everyone((), description="Planes taped one by one.", max_length=200)
    edges: tuple[Edge, ...] = everyone((), description="Edges of planes taped one by one.", max_length=800)
    taped: dict[str, Length] = everyone(
        {},
        description="Edges of a form as taped on the roof, by the id the program gives them: the two planes "
        "that meet, or a plane and EAVE or RAKE.",
        examples=[{"HS-HE": "20 ft 7-1/2 in", "HS-EAVE": "48 ft"}],
        max_length=800,
    )
    openings: tuple[Opening, ...] = everyone((), description="Openings in planes.", max_length=200)
    sections: tuple[Section, ...] = everyone((), description="Sections of the roof.", max_length=50)
    worked_before: tuple[EarlierWork, ...] | None = everyone(
        None,
        description="Work on this roof in the twelve months before; an empty list says there was none.",
        max_length=50,
    )
    framing: Framing | None = everyone(None, description="Framing under the deck.")
    soffit: Literal["open", "closed"] | None = everyone(
        None,
        description="Open where the deck is seen from below at the eaves, else closed.",
        examples=["closed"],
    )
    ties: tuple[RoofToWallTie, ...] = everyone(
        (), description="Ties of the roof to the walls, where they were seen or made better.", max_length=50
    )
    old: OldRoof | None = everyone(None, description="The roof as it was found.")

    @property
    def plane_ids(self) -> tuple[str, ...]:
        """Ids of all planes, of forms and taped ones, each once."""
        of_forms = (plane.id for form in self.forms for _, plane in parts(form))
        return tuple(dict.fromkeys((*of_forms, *(plane.id for plane in self.planes))))
