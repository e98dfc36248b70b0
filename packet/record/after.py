"""What stands around the roofing itself: things taken off and set again, clean-up, points left, callbacks."""

from typing import Literal

from packet.fields import Day, Id, Line, Prose, Strict, everyone


class Detached(Strict):
    """Something that had to come off for the work: by whom, and whether it stands again."""

    id: Id = everyone(description="Id of the entry.", examples=["DR1"])
    what: Line = everyone(description="What it is.", examples=["gutter, north eave"])
    by: Line | None = everyone(None, description="Who took it off and set it.", examples=["our crew"])
    off: Day | None = everyone(None, description="Day it came off.")
    reset: Day | None = everyone(None, description="Day it was set again.")
    state: Literal["set as it was", "replaced", "left off", "not yet"] = everyone(
        description="How it stands.", examples=["set as it was"]
    )
    note: Prose | None = everyone(
        None, description="What was seen.", examples=["Two hangers were new; the slope was tried with water."]
    )


class CleanUp(Strict):
    """How the place was left."""

    magnet: Prose | None = everyone(
        None, description="Magnet run for nails.", examples=["Run twice over lawn and drive."]
    )
    gutters: Prose | None = everyone(
        None, description="Gutters.", examples=["Cleared of granules and nails."]
    )
    walk_through: Prose | None = everyone(
        None, description="Walk-through with the owner.", examples=["On the last day; no points left."]
    )


class PunchItem(Strict):
    """A point somebody saw that had to be put right."""

    id: Id = everyone(description="Id of the point.", examples=["PL1"])
    what: Prose = everyone(description="What was seen.", examples=["Scuffed shingle beside the vent."])
    seen_by: Line | None = everyone(None, description="Who saw it.", examples=["owner, at the walk-through"])
    on: Day | None = everyone(None, description="Day it was seen.")
    done: Prose | None = everyone(None, description="What was done.", examples=["Shingle changed."])
    done_on: Day | None = everyone(None, description="Day it was done; absent while it is open.")


class Undocumented(Strict):
    """A fact of the work that nothing shows, in the contractor's own words."""

    what: Prose = everyone(
        description="What was not documented.", examples=["The two holes of old vents, closed with plywood."]
    )
    why: Prose = everyone(description="Why not.", examples=["Rain was coming and the felt went on."])


class Callback(Strict):
    """A call after the work: what was told, what was found, what was done."""

    id: Id = everyone(description="Id of the call.", examples=["CB1"])
    on: Day = everyone(description="Day of the call.")
    told: Prose = everyone(
        quoted=True,
        description="What was told.",
        examples=["A drip at the bath fan after wind from the west."],
    )
    found: Prose | None = everyone(
        None, description="What was found.", examples=["Condensation in the fan pipe."]
    )
    ours: Literal["our work", "not our work", "not known yet"] = everyone(
        description="Whether it came from the work of this packet.", examples=["not our work"]
    )
    done: Prose | None = everyone(None, description="What was done.", examples=["Pipe insulated by others."])
    done_on: Day | None = everyone(None, description="Day it was done; absent while it is open.")
