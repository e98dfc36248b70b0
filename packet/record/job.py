"""The whole job record, in the trade's own order."""

from packet.fields import Line, Prose, Strict, everyone, leaf
from packet.record.after import Callback, CleanUp, Detached, PunchItem, Undocumented
from packet.record.air import Ventilation
from packet.record.goods import Bought
from packet.record.house import Cause, Dates, Found, House, JobHead, People, Tested
from packet.record.layers import Covering, Detail, DripEdge, DryIn, TemporaryCover, TieIn
from packet.record.papers import Basis, Document, Inspection, Money, Promise, WayOut
from packet.record.permissions import Approval, CodeItem, Permission
from packet.record.roof import Roof
from packet.record.wood import Deck, FramingWork


class JobRecord(Strict):
    """What the contractor wrote down about one job.

    Every part but job, property and cause may be absent: the packet then says "not recorded". The cause may
    wait until the roof is open.
    """

    job: JobHead = everyone(
        description="Number, kind and status.",
        examples=[{"number": "26-041", "kind": "patch", "status": "planned"}],
    )
    property: House = everyone(description="The house.")
    people: People | None = everyone(None, description="Owner and crew.")
    dates: Dates = everyone(Dates(), description="Days of the work.")
    complaint: Prose | None = everyone(
        None, quoted=True, description="What the owner saw.", examples=["A ring on the dining-room ceiling."]
    )
    cause: Cause | None = everyone(None, description="Why it leaked; a planned job may not know yet.")
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
    temporary: tuple[TemporaryCover, ...] = everyone((), description="Covers of a night or a week.")
    drip_edge: DripEdge | None = everyone(None, description="Metal at eaves and rakes.")
    details: tuple[Detail, ...] = everyone((), description="Valleys, walls, pipes.")
    covering: Covering | None = everyone(None, description="New shingles.")
    tie_in: TieIn | None = everyone(None, description="Where new meets old.")
    ventilation: Ventilation | None = everyone(None, description="Attic ventilation.")
    detached: tuple[Detached, ...] = everyone((), description="Taken off for the work and set again.")
    bought: tuple[Bought, ...] = everyone((), description="Goods: planned, delivered, returned, left, scrap.")
    tested: Tested | None = everyone(None, description="How the cure was proven.")
    clean_up: CleanUp | None = everyone(None, description="How the place was left.")
    punch_list: tuple[PunchItem, ...] = everyone((), description="Points left, and when they were done.")
    callbacks: tuple[Callback, ...] = everyone((), description="Calls after the work.")
    inspections: tuple[Inspection, ...] = everyone((), description="Visits of inspectors.")
    permissions: tuple[Permission, ...] = everyone(
        (), description="Applications, certificates and affidavits.", max_length=100
    )
    approvals: tuple[Approval, ...] = everyone((), description="Approvals of products.", max_length=100)
    code_items: tuple[CodeItem, ...] = everyone((), description="Work the code required.", max_length=100)
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
    undocumented: tuple[Undocumented, ...] = everyone(
        (), description="What no requirement asks for and nothing shows, with the reason."
    )
