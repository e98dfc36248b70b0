"""Papers, inspections, money and promises."""

from typing import Literal

from packet.fields import Day, Id, Line, MoneyAmount, Prose, Slug, Speed, Strict, everyone, leaf
from packet.readers import Reader


class Basis(Strict):
    """The rules the work was done under and where they were read."""

    code: Line = everyone(
        description="Adopted code by its id; `packet` ships the known ones.", examples=["irc-2021"]
    )
    authority: Line = everyone(
        quoted=True, description="Who enforces it.", examples=["Town of Pellam Reach, building office"]
    )
    authority_phone: Line | None = everyone(
        None, quoted=True, description="Telephone of its office.", examples=["843-555-0188"]
    )
    programs: tuple[Line, ...] = everyone(
        (),
        description="Programs the house is in, by id.",
        examples=[["ibhs-high-wind-2025"]],
        max_length=10,
    )
    practices: tuple[Line, ...] = everyone(
        (),
        description="Guides the office works by, by id.",
        examples=[["arma-hand-seal", "trade-practice"]],
        max_length=10,
    )
    wind_speed: Speed | None = everyone(None, description="Design wind speed.", examples=["130 mph"])
    wind_kind: Literal["ultimate", "nominal"] = everyone(
        "ultimate", description="Ultimate or nominal speed; never mixed.", examples=["ultimate"]
    )
    exposure: Literal["B", "C", "D"] | None = everyone(None, description="Wind exposure.", examples=["B"])
    wind_zone: Literal["seaward", "inland-1", "inland-2", "hvhz"] | None = everyone(
        None,
        description="Zone by name where the code has one: coastal Texas, high-velocity zone of Florida.",
        examples=["seaward"],
    )
    roof_zone: Literal["zone-1", "zone-2", "zone-3"] | None = everyone(
        None,
        description="Wind zone of the roof that the new deck lies in, by the drawing beside the nailing "
        "table; of several, the one that asks the closest nails.",
        examples=["zone-2"],
    )
    read_from: Prose | None = everyone(
        None, description="Where speed and exposure were read.", examples=["The building office's wind map."]
    )
    permit: Line | None = everyone(None, quoted=True, description="Permit number.", examples=["26-0388"])
    permit_date: Day | None = everyone(None, description="Day the permit was issued.")
    no_permit: Prose | None = everyone(
        None, description="Why there is no permit.", examples=["The town asks for none below one square."]
    )


class Document(Strict):
    """A paper of the job and who may see it; the office keeps the paper itself."""

    id: Id = everyone(description="Id of the document.", examples=["D1"])
    kind: Literal[
        "contract", "permit", "inspection", "invoice", "receipt", "waiver", "warranty", "message", "other"
    ] = everyone(description="Kind of paper.", examples=["permit"])
    title: Line = everyone(quoted=True, description="What it is.", examples=["Building permit 26-0388"])
    date: Day | None = everyone(None, description="Date on it.")
    party: Line | None = everyone(
        None,
        quoted=True,
        description="Who issued or signed it.",
        examples=["Town of Pellam Reach, building office"],
    )
    proves: tuple[Line, ...] = everyone(
        (),
        description="Requirements or things this paper is evidence for.",
        examples=[["permit-closed"]],
        max_length=40,
    )
    readers: tuple[Reader, ...] = everyone(
        ("office",), description="Copies that name it.", examples=[["outside", "office"]]
    )


class Correction(Strict):
    """What an inspector asked to be put right, and how it was."""

    asked: Prose = everyone(
        quoted=True, description="What was asked.", examples=["Two more nails at the rake end of sheet S2."]
    )
    done: Prose | None = everyone(None, description="What was done.", examples=["Two nails added."])
    done_on: Day | None = everyone(None, description="Day it was done.")
    photo: Id | None = everyone(None, description="Photo that shows it done.", examples=["P24"])
    requirement: Line | None = everyone(
        None, description="Requirement the correction belongs to.", examples=["deck-nail-edge-spacing"]
    )
    seen_at: Id | None = everyone(
        None, description="Visit at which the inspector saw it done.", examples=["I2"]
    )


class Inspection(Strict):
    """One visit of an inspector."""

    id: Id = everyone(description="Id of the visit.", examples=["I1"])
    on: Day = everyone(description="Day of the visit.")
    what: Line = everyone(description="What was looked at.", examples=["deck and dry-in"])
    stages: tuple[Slug, ...] = everyone(
        (),
        description="Stages of the work that were looked at; done is the finished work.",
        examples=[["deck", "dried-in"]],
        max_length=10,
    )
    purpose: Literal["permit", "windstorm", "program"] = everyone(
        "permit",
        description="What the visit was for: the building permit, a windstorm certificate, a program.",
        examples=["permit"],
    )
    by: Line = everyone(description="Office or role of the inspector.", examples=["town building inspector"])
    result: Literal["passed", "failed", "partial"] = everyone(description="Result.", examples=["passed"])
    note: Prose | None = everyone(
        None,
        description="What was asked, and how it was mended.",
        examples=["Two nails added at the rake; looked at again on the spot."],
    )
    corrections: tuple[Correction, ...] = everyone(
        (), description="What was asked to be put right, one by one.", max_length=40
    )


class Promise(Strict):
    """A warranty: who promises what, until when."""

    id: Id = everyone(description="Id of the promise.", examples=["W1"])
    kind: Literal["workmanship", "maker"] = everyone(description="Whose promise.", examples=["workmanship"])
    by: Line = everyone(quoted=True, description="Who promises.", examples=["Pike and Gannet Roofing"])
    covers: Prose = everyone(
        quoted=True,
        description="What is promised.",
        examples=["New work will not leak through a fault in how it was done."],
    )
    leaves_out: Prose | None = everyone(
        None,
        quoted=True,
        description="What is not promised, and what ends it.",
        examples=["Old shingles beyond the joint; work by others."],
    )
    starts: Day = everyone(description="First day.")
    until: Day | None = everyone(None, description="Last day.")
    term: Line | None = everyone(
        None,
        quoted=True,
        description="Term as printed, when it is not a day.",
        examples=["limited, see the maker's paper"],
    )
    transfers: Prose | None = everyone(
        None,
        quoted=True,
        description="Whether it passes to a later owner.",
        examples=["Passes once, when we are told in writing."],
    )
    claim: Prose | None = everyone(
        None,
        quoted=True,
        description="What the owner does to call on it.",
        examples=["Call or write to us; give the job number."],
    )


class Money(Strict):
    """Money; the office's copy alone."""

    contract: MoneyAmount | None = leaf(None, description="Contract sum.", examples=["USD 4860.00"])
    invoice: MoneyAmount | None = leaf(None, description="Final invoice.", examples=["USD 4860.00"])
    paid: MoneyAmount | None = leaf(None, description="Paid.", examples=["USD 4860.00"])
    note: Prose | None = leaf(
        None, description="Anything else about money.", examples=["Two sheets added, agreed by telephone."]
    )


class WayOut(Strict):
    """What was done about a value that differs from a rule; shown beside it, never instead."""

    requirement: Line = everyone(description="Requirement id.", examples=["deck-nail-edge-spacing"])
    kind: Literal["corrected", "accepted", "explained"] = everyone(
        description="Corrected, accepted by the official, or explained.", examples=["corrected"]
    )
    on: Day | None = everyone(None, description="Day.")
    photo: Id | None = everyone(None, description="Photo that shows the correction.", examples=["P24"])
    by: Line | None = everyone(
        None,
        quoted=True,
        description="Office and number of the acceptance.",
        examples=["building office, note 26-11"],
    )
    text: Prose = everyone(
        description="What was done or said.", examples=["Nails added between, 4 in apart."]
    )
