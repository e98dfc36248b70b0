"""The office's own card, ``shared/office.yaml``, and what the office usually puts on a roof."""

from packet.fields import Line, Strict, TimeZone, everyone, leaf
from packet.record.layers import CapFasteners, RoofingNail
from packet.record.wood import DeckNail


class UsualUnderlayment(Strict):
    """The underlayment the office usually lays."""

    product: Line = leaf(description="What the crew calls it.", examples=["No. 30 felt"])
    standard: Line | None = leaf(
        None, description="Standard and type on the roll.", examples=["ASTM D226 Type II"]
    )
    fasteners: CapFasteners | None = leaf(None, description="How it is usually held.")


class Usual(Strict):
    """Habits of the office. They are offered for each new job, and none is a fact of a job by itself."""

    deck_nail: DeckNail | None = leaf(None, description="Usual deck nail.")
    underlayment: UsualUnderlayment | None = leaf(None, description="Usual underlayment.")
    drip_edge: Line | None = leaf(
        None, description="Usual metal of the drip edge, and its thickness.", examples=["0.019 in aluminum"]
    )
    shingle_nail: RoofingNail | None = leaf(None, description="Usual shingle nail.")
    town: Line | None = leaf(None, description="Town or city most jobs are in.", examples=["Pellam Reach"])
    county: Line | None = leaf(None, description="County most jobs are in.", examples=["Kestrel County"])
    state: Line | None = leaf(None, description="State most jobs are in.", examples=["South Carolina"])
    time_zone: TimeZone | None = leaf(
        None, description="IANA time zone most jobs are in.", examples=["America/New_York"]
    )
    code: Line | None = leaf(None, description="Code most jobs fall under, by its id.", examples=["irc-2021"])
    authority: Line | None = leaf(
        None, description="Who usually enforces it.", examples=["Town of Pellam Reach, building office"]
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
    usual: Usual | None = leaf(None, description="What the office usually uses; offered for each new job.")
