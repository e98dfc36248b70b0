"""The whole job record, in the trade's own order."""

from packet.fields import Line, Prose, Strict, everyone, leaf
from packet.record.house import Cause, Dates, Found, House, JobHead, People, Tested
from packet.record.layers import Covering, Deck, Detail, DripEdge, DryIn, FramingWork, TieIn
from packet.record.papers import Basis, Bought, Document, Inspection, Money, Promise, WayOut
from packet.record.roof import Roof


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


class JobRecord(Strict):
    """What the contractor wrote down about one job.

    Every part but job, property and cause may be absent: the packet then says "not recorded".
    """

    job: JobHead = everyone(description="Number, kind and status.")
    property: House = everyone(description="The house.")
    people: People | None = everyone(None, description="Owner and crew.")
    dates: Dates = everyone(Dates(), description="Days of the work.")
    complaint: Prose | None = everyone(
        None, description="What the owner saw.", examples=["A ring on the dining-room ceiling."]
    )
    cause: Cause = everyone(description="Why it leaked.")
    roof: Roof | None = everyone(None, description="The roof.")
    basis: Basis | None = everyone(None, description="The rules the work was done under.")
    summary: Prose | None = everyone(
        None,
        description="What was done, in plain words, for the front page.",
        examples=["We cut out the rot and laid four new sheets."],
    )
    found: tuple[Found, ...] = everyone((), description="Found on the way: offered, agreed or declined.")
    framing: tuple[FramingWork, ...] = everyone((), description="Framing and trim touched.")
    deck: Deck | None = everyone(None, description="New deck.")
    dry_in: DryIn | None = everyone(None, description="Underlayment.")
    drip_edge: DripEdge | None = everyone(None, description="Metal at eaves and rakes.")
    details: tuple[Detail, ...] = everyone((), description="Valleys, walls, pipes.")
    covering: Covering | None = everyone(None, description="New shingles.")
    tie_in: TieIn | None = everyone(None, description="Where new meets old.")
    bought: tuple[Bought, ...] = everyone((), description="Goods: delivered, returned, left, scrap.")
    tested: Tested | None = everyone(None, description="How the cure was proven.")
    clean_up: CleanUp | None = everyone(None, description="How the place was left.")
    inspections: tuple[Inspection, ...] = everyone((), description="Visits of inspectors.")
    documents: tuple[Document, ...] = everyone((), description="Papers of the job.")
    warranty: tuple[Promise, ...] = everyone((), description="Promises and their ends.")
    money: Money | None = leaf(None, description="Money; the office's copy alone.")
    ways_out: tuple[WayOut, ...] = everyone(
        (), description="What was done about values that differ from a rule."
    )
    explained: dict[str, Line] = everyone(
        {},
        description="Finding id to its explanation.",
        examples=[{"edge-length:E1": "taped over the gutter"}],
    )
    not_recorded: dict[str, Line] = everyone(
        {},
        description="Requirement id to the reason it was not recorded.",
        examples=[{"drip-edge-fastening": "forgot"}],
    )


class Office(Strict):
    """The office's own card, ``shared/office.yaml``."""

    name: Line = everyone(description="Name of the contractor.", examples=["Pike and Gannet Roofing"])
    address: Line = everyone(description="Postal address.", examples=["4 Slipway Road, Pellam Reach"])
    phone: Line = everyone(description="Telephone.", examples=["843-555-0142"])
    email: Line | None = everyone(None, description="E-mail.", examples=["office@example.org"])
    license: Line | None = everyone(
        None, description="License as printed.", examples=["Residential roofing RBS-00000"]
    )
    hours: Line | None = everyone(None, description="When somebody answers.", examples=["weekdays 7 to 5"])
