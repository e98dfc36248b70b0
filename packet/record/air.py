"""Attic ventilation as it stands after the work."""

from typing import Literal

from packet.fields import Area, Count, Id, Length, Line, Prose, Quantity, Strict, everyone


class Vent(Strict):
    """Vents of one kind; their free area is what their maker printed, per piece or per running foot."""

    id: Id = everyone(description="Id of the entry.", examples=["VT1"])
    what: Line = everyone(description="What they are.", examples=["ridge vent", "soffit strip"])
    place: Literal["high", "low"] = everyone(
        description="In the upper part of the attic, or low at the eaves.", examples=["high"]
    )
    state: Literal["new", "reused", "left as found", "closed"] = everyone(
        description="What was done with them; closed ones count nothing.", examples=["new"]
    )
    pieces: Count | None = everyone(None, description="How many, where they are pieces.", examples=[6])
    length: Length | None = everyone(
        None, description="How long, where they run in feet.", examples=["32 ft"]
    )
    free_sq_in_each: Quantity | None = everyone(
        None, description="Net free area of one piece, or of one foot, in square inches.", examples=["18"]
    )
    printed_on: Line | None = everyone(
        None, quoted=True, description="Where that area is printed.", examples=["carton"]
    )
    below_top: Length | None = everyone(
        None,
        description="Height below the ridge or the highest point of the attic, measured plumb.",
        examples=["10 in"],
    )


class Ventilation(Strict):
    """The attic, its vents, and what is on the warm side of its ceiling."""

    attic_area: Area | None = everyone(
        None, description="Floor area of the vented attic.", examples=["1056 sq ft"]
    )
    climate_zone: Count | None = everyone(
        None, description="Climate zone of the energy code, its number.", examples=[3]
    )
    vapor_retarder: Literal["class I", "class II", "class III", "none"] | None = everyone(
        None, description="Vapor retarder on the warm side in winter.", examples=["class II"]
    )
    vents: tuple[Vent, ...] = everyone((), description="Vents, one entry a kind.", max_length=60)
    note: Prose | None = everyone(
        None, description="Baffles, blocked bays, fans.", examples=["Baffles set in every bay at the eaves."]
    )
