"""Applications, certificates and affidavits, approvals of products, and items a code required."""

from typing import Literal

from packet.fields import Day, Id, Line, Prose, Strict, everyone
from packet.uses import Use

PermissionKind = Literal[
    "windstorm application", "windstorm certificate", "engineer certificate", "affidavit", "other"
]


class Permission(Strict):
    """A paper that was applied for, signed or issued for this work; the permit itself stands in basis."""

    id: Id = everyone(description="Id of the paper.", examples=["AP1"])
    kind: PermissionKind = everyone(
        description="Application, certificate or affidavit.", examples=["windstorm application"]
    )
    title: Line | None = everyone(
        None, quoted=True, description="Its title or form.", examples=["Application for a certificate"]
    )
    number: Line | None = everyone(None, quoted=True, description="Its number.", examples=["WA-26-0412"])
    by: Line | None = everyone(
        None,
        quoted=True,
        description="Office that received or issued it, or trade and license of who signed it.",
        examples=["licensed engineer, license as printed on the certificate"],
    )
    applied_on: Day | None = everyone(None, description="Day it was applied for.", examples=["2026-03-11"])
    issued_on: Day | None = everyone(
        None, description="Day it was issued or signed.", examples=["2026-03-24"]
    )
    document: Id | None = everyone(None, description="The paper, by its id in documents.", examples=["D2"])
    note: Prose | None = everyone(
        None, description="Anything else about it.", examples=["Posted on site at the final visit."]
    )


class Approval(Strict):
    """A product's approval or evaluation, and the days it is valid."""

    id: Id = everyone(description="Id of the approval.", examples=["PA1"])
    product: Line = everyone(
        quoted=True, description="Product as the approval names it.", examples=["laminated shingle"]
    )
    number: Line = everyone(quoted=True, description="Number of the approval.", examples=["PA 1234.5"])
    by: Line = everyone(
        quoted=True, description="Who approved it.", examples=["state product approval office"]
    )
    valid_from: Day | None = everyone(None, description="First day it is valid.", examples=["2024-05-01"])
    valid_until: Day | None = everyone(None, description="Last day it is valid.", examples=["2027-04-30"])
    goods: tuple[Id, ...] = everyone(
        (), description="Goods it is for, by their ids.", examples=[["SHINGLES"]], max_length=40
    )
    use: Use | None = everyone(None, description="What those goods are for.", examples=["shingles"])
    document: Id | None = everyone(None, description="The paper, by its id in documents.", examples=["D2"])


class CodeItem(Strict):
    """Work the code required: the requirement and what was found and built, nothing on who pays."""

    id: Id = everyone(description="Id of the item.", examples=["CI1"])
    what: Line = everyone(description="What was required.", examples=["old deck nailed again"])
    section: Line = everyone(
        quoted=True, description="Section or table of the code, as printed.", examples=["R803.2.3.1"]
    )
    code: Line | None = everyone(
        None,
        description="Code by its id; the code of the job when left out.",
        examples=["fbc-existing-2023"],
    )
    authority: Line | None = everyone(
        None,
        quoted=True,
        description="Who enforces it; the authority of the job when left out.",
        examples=["Town of Pellam Reach, building office"],
    )
    trigger: Prose = everyone(
        description="What brought the requirement about.",
        examples=["The covering was taken off and the old deck lay bare."],
    )
    as_found: Prose = everyone(
        description="What was there before.", examples=["Smooth nails, 6 in along joints, 12 in between."]
    )
    as_built: Prose | None = everyone(
        None, description="What was built.", examples=["Ring shank nails 4 in apart everywhere."]
    )
    quantity: Line | None = everyone(None, description="How much, as counted.", examples=["4 slopes"])
    figure: Line | None = everyone(
        None,
        description="How much, as a figure of this packet by its id; `packet figures JOB` lists them.",
        examples=["work.area"],
    )
    photos_found: tuple[Id, ...] = everyone(
        (), description="Photos of what was there.", examples=[["P11"]], max_length=40
    )
    photos_built: tuple[Id, ...] = everyone(
        (), description="Photos of what was built.", examples=[["P14"]], max_length=40
    )
