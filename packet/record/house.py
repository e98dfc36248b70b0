"""The job, the house, its people and the days of the work."""

from typing import Literal

from packet.fields import Count, Day, Id, Line, Prose, SomeArea, Strict, TimeZone, everyone, leaf

Kind = Literal["patch", "section", "re-roof", "recover"]
Status = Literal["planned", "under way", "closed"]


class JobHead(Strict):
    """Number, kind of work and status of the job."""

    number: Line = everyone(
        description="The office's job number; also the name of the job's folder.", examples=["26-041"]
    )
    kind: Kind = everyone(
        description="Kind of work; it decides which requirements are asked.", examples=["patch"]
    )
    status: Status = everyone(description="Where the job stands.", examples=["closed"])
    revision: Count = everyone(1, description="Revision of the packet, counted from 1.", examples=[1])
    title: Line | None = everyone(
        None, description="The outcome in a few words, for the front page.", examples=["Valley leak closed"]
    )


class PaintDisturbed(Strict):
    """Painted surface the work breaks, scrapes, cuts or takes off; what is left out is none."""

    outside: SomeArea | None = everyone(None, description="Outside, in all.", examples=["12 sq ft"])
    inside: SomeArea | None = everyone(
        None, description="Inside: the most in one room within 30 days.", examples=["2 sq ft"]
    )
    taken_out: Literal["none", "windows or painted parts"] = everyone(
        "none",
        description="Whether a window is replaced, or a painted part such as a fascia torn out.",
        examples=["windows or painted parts"],
    )


class House(Strict):
    """The house the work was done on."""

    street: Line = everyone(quoted=True, description="House number and street.", examples=["18 Heron Lane"])
    town: Line = everyone(quoted=True, description="Town or city.", examples=["Pellam Reach"])
    county: Line | None = everyone(None, quoted=True, description="County.", examples=["Kestrel County"])
    state: Line = everyone(quoted=True, description="State.", examples=["South Carolina"])
    built: Count | None = everyone(None, description="Year the house was built.", examples=[1988])
    permit_date: Day | None = everyone(
        None,
        description="Day of the permit the house was built under; some rules ask for the era.",
        examples=["1988-05-02"],
    )
    windstorm_area: Literal["inside", "outside"] | None = everyone(
        None,
        description="In a county that lies only in part in the Texas windstorm area: on which side.",
        examples=["inside"],
    )
    salt_water: Literal["within 3,000 ft", "farther"] | None = everyone(
        None,
        description="Whether an ocean shore, bays included, is near; fasteners there rust sooner.",
        examples=["within 3,000 ft"],
    )
    stories: Count | None = everyone(None, description="Stories above ground.", examples=[1])
    paint_disturbed: PaintDisturbed | None = everyone(
        None, description="Old paint that the work disturbs, planned or done; a rule on lead asks by it."
    )
    asbestos_test: Literal["none found", "found"] | None = everyone(
        None,
        description="What a licensed tester found in the old covering and felt; left out when untested.",
        examples=["none found"],
    )
    time_zone: TimeZone = everyone(
        description="IANA time zone of the house; photo times are read in it.", examples=["America/New_York"]
    )


class Person(Strict):
    """Somebody the office deals with; private to the office's copy."""

    name: Line = leaf(description="Name as it should be written.", examples=["Lenore Asprey"])
    phone: Line | None = leaf(None, description="Telephone.", examples=["843-555-0107"])
    email: Line | None = leaf(None, description="E-mail.", examples=["asprey@example.org"])


class People(Strict):
    """Owner and crew."""

    owner: Person | None = leaf(None, description="The owner; printed in the office's copy alone.")
    crew: tuple[Line, ...] = everyone(
        (), quoted=True, description="Who did the work.", examples=[["Dov Marrick", "Tam Oduya"]]
    )


class Dates(Strict):
    """The days of the work."""

    looked_at: Day | None = everyone(None, description="Day the leak was looked at.")
    started: Day | None = everyone(None, description="Day the roof was opened.")
    dried_in: Day | None = everyone(None, description="Day the work was under underlayment.")
    finished: Day | None = everyone(None, description="Day the work was finished.")


class Cause(Strict):
    """Why it leaked and how we know."""

    what: Prose = everyone(
        description="The cause, in plain words.", examples=["The step flashing stopped short of the valley."]
    )
    how_known: Prose | None = everyone(
        None,
        description="How the cause was found: opened up, hose test, seen in the attic.",
        examples=["Opened up; the hose wet the same spot."],
    )


class Tested(Strict):
    """How the cure was proven."""

    how: Prose = everyone(
        description="What was done to prove it.", examples=["Hose on the valley for 30 minutes, attic dry."]
    )
    on: Day | None = everyone(None, description="Day of the test.")
    result: Prose | None = everyone(None, description="What was seen.", examples=["The attic stayed dry."])
    inside: Prose | None = everyone(
        None,
        description="What was seen inside later, and when.",
        examples=["Dry after the rain of March 27; meter 9 percent."],
    )


class Found(Strict):
    """Something found on the way: offered, and agreed or declined."""

    id: Id = everyone(description="Id of the entry.", examples=["F1"])
    what: Prose = everyone(description="What was found.", examples=["Pipe boot cracked on its uphill side."])
    offered: Prose | None = everyone(
        None, description="What was offered.", examples=["A new boot and the shingles around it."]
    )
    answer: Literal["agreed", "declined", "not asked"] = everyone(
        description="What the owner answered.", examples=["declined"]
    )
    on: Day | None = everyone(None, description="Day of the answer.")
    how: Line | None = everyone(
        None, quoted=True, description="How the answer was given.", examples=["text message"]
    )
    done: Prose | None = everyone(None, description="What was done about it.", examples=["Left as found."])
    covered_on: Day | None = everyone(None, description="Day the next layer covered it.")
