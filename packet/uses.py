"""What goods are for and what they are counted in: words that the record and the product sheets share."""

from typing import Literal

#: The lines of the takeoff, in the order a roof is built.
Use = Literal[
    "deck panels",
    "deck nails",
    "deck clips",
    "joint tape",
    "ice barrier",
    "underlayment",
    "cap nails",
    "drip edge",
    "valley lining",
    "step flashing",
    "pipe boots",
    "starter",
    "shingles",
    "roofing nails",
    "ridge vent",
    "caps",
    "cement",
]

#: Units in which goods are bought.
PurchaseUnit = Literal["bundle", "sheet", "roll", "piece", "box", "tube", "lb"]
