"""Goods: what is to be bought, what came, what went back, what stayed, what was thrown away."""

from fractions import Fraction

from packet.fields import (
    Area,
    Count,
    Day,
    Id,
    Length,
    Line,
    Percent,
    Prose,
    Quantity,
    Slug,
    Strict,
    everyone,
)
from packet.uses import PurchaseUnit, Use


class Delivery(Strict):
    """One delivery of an item; lots belong to deliveries, because crews mix bundles."""

    id: Id = everyone(description="Id of the delivery.", examples=["DL1"])
    on: Day = everyone(description="Day it came.")
    ticket: Line | None = everyone(
        None, quoted=True, description="Number on the ticket.", examples=["T-4471"]
    )
    quantity: Quantity = everyone(description="How much came.", examples=["30"])
    lot: Line | None = everyone(None, quoted=True, description="Lot on the wrapper.", examples=["M-06C-1127"])


class Allowance(Strict):
    """What is bought beyond the need, and why."""

    percent: Percent = everyone(description="Share of the need.", examples=["8 %"])
    why: Prose = everyone(description="Why.", examples=["Four hips: every course is cut twice."])
    source: Slug | None = everyone(
        None,
        description="Published source of the share, by its id; without one it is the office's own figure.",
        examples=["building-estimating-textbook"],
    )


class Bought(Strict):
    """One item, before the work and after it."""

    id: Id = everyone(description="Id of the line.", examples=["SHINGLES"])
    item: Line = everyone(description="What it is.", examples=["laminated shingle, bundle"])
    use: Use | None = everyone(
        None,
        description="What of the roof it is for; the program then says how much that takes.",
        examples=["shingles"],
    )
    product: Slug | None = everyone(
        None, description="Product sheet its figures are read from, by id.", examples=["laminated-metric"]
    )
    unit: PurchaseUnit = everyone(description="Unit it is counted in.", examples=["bundle"])
    cover_each: Area | None = everyone(
        None, description="What one covers, from the wrapper.", examples=["32.8 sq ft"]
    )
    length_each: Length | None = everyone(
        None, description="Length of one, from the wrapper or as measured.", examples=["10 ft"]
    )
    width_each: Length | None = everyone(
        None, description="Width of one, from the wrapper or as measured.", examples=["36 in"]
    )
    pieces_each: Count | None = everyone(None, description="Pieces in one, from the wrapper.", examples=[30])
    nails_a_pound: Count | None = everyone(
        None, description="Nails to the pound, from the box.", examples=[140]
    )
    allowance: Allowance | None = everyone(None, description="What is bought beyond the need.")
    planned: Quantity | None = everyone(None, description="Ordered, or meant to be.", examples=["52"])
    delivered: Quantity | None = everyone(
        None, description="Delivered; left out where deliveries are listed.", examples=["6"]
    )
    deliveries: tuple[Delivery, ...] = everyone((), description="Deliveries one by one.", max_length=40)
    returned: Quantity | None = everyone(None, description="Returned to the supplier.")
    left: Quantity | None = everyone(None, description="Left with the owner.")
    scrap: Quantity | None = everyone(None, description="Thrown away.")
    lot: Line | None = everyone(None, quoted=True, description="Lot on the wrapper.", examples=["L-27F-0318"])
    left_where: Line | None = everyone(
        None, description="Where the rest is kept.", examples=["garage, north shelf"]
    )

    @property
    def came(self) -> Fraction | None:
        """How much was delivered in all; None when nothing is recorded."""
        if self.deliveries:
            return sum((delivery.quantity for delivery in self.deliveries), start=Fraction(0))
        return self.delivered
