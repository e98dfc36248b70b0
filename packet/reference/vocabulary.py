"""What a rule can limit and what it can depend on: the words that codes, records and requirements share."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from packet.fields import Quantity, Strict

Kind = Literal["at_most", "at_least", "one_of", "present"]
Form = Literal["number", "words", "nails"]


@dataclass(frozen=True)
class Ask:
    """One thing a rule can limit.

    Attributes:
        form: Whether limits are numbers, words or nails.
        unit: Unit of numbers; "" for words and nails.
    """

    form: Form
    unit: str = ""


_INCHES, _EACH, _WORDS, _MPH = Ask("number", "in"), Ask("number", "each"), Ask("words"), Ask("number", "mph")

#: What rows may limit. Add the name here, then rows, then the requirement that asks it.
ASKS: Mapping[str, Ask] = {
    "basis.edition": _WORDS,
    "basis.wind_nominal": _MPH,
    "program.path": _WORDS,
    "deck.panel.thickness": _INCHES,
    "deck.panel.gap": _INCHES,
    "deck.panel.standard": _WORDS,
    "deck.panel.bond": _WORDS,
    "deck.panel.edge_support": _WORDS,
    "deck.panel.clips_each_space": _EACH,
    "deck.panel.near_edges_support": _WORDS,
    "deck.panel.past_gable": _INCHES,
    "deck.piece.length": _INCHES,
    "deck.piece.width": _INCHES,
    "deck.fastener": _WORDS,
    "deck.nail": Ask("nails"),
    "deck.nail.length": _INCHES,
    "deck.nail.shank": _INCHES,
    "deck.nail.shank_kind": _WORDS,
    "deck.nail.finish": _WORDS,
    "deck.nail.edge_spacing": _INCHES,
    "deck.nail.field_spacing": _INCHES,
    "deck.nail.gable_spacing": _INCHES,
    "deck.nail.near_edges_spacing": _INCHES,
    "deck.nail.near_edges_width": _INCHES,
    "deck.nail.from_edge": _INCHES,
    "deck.nail.apart": _INCHES,
    "deck.nail.heads": _WORDS,
    "deck.board.nails_each_bearing": _EACH,
    "underlayment.type": _WORDS,
    "underlayment.layers": _EACH,
    "underlayment.head_lap": _INCHES,
    "underlayment.end_lap": _INCHES,
    "underlayment.fastening.at_laps": _INCHES,
    "underlayment.fastening.between": _INCHES,
    "underlayment.fastening.cap": _INCHES,
    "ice_barrier.inside_wall": _INCHES,
    "ice_barrier.up_slope": _INCHES,
    "drip_edge.at_eaves": _WORDS,
    "drip_edge.at_rakes": _WORDS,
    "drip_edge.below_deck": _INCHES,
    "drip_edge.on_deck": _INCHES,
    "drip_edge.order_eave": _WORDS,
    "drip_edge.order_rake": _WORDS,
    "drip_edge.lap": _INCHES,
    "drip_edge.fastener_spacing": _INCHES,
    "drip_edge.nail_from_edge": _INCHES,
    "flashing.metal_thickness": _INCHES,
    "chimney.cricket": _WORDS,
    "step_flashing.overlap": _INCHES,
    "step_flashing.nailed_to": _WORDS,
    "sidewall_flashing.height": _INCHES,
    "sidewall_flashing.width": _INCHES,
    "valley_lining.width": _INCHES,
    "starter.width": _INCHES,
    "starter.held": _WORDS,
    "starter.nail.from_edge": _INCHES,
    "starter.nail.into": _WORDS,
    "shingle.nails": _EACH,
    "shingle.wind_class": _WORDS,
    "shingle.overhang": _INCHES,
    "shingle.offset": _INCHES,
    "shingle_nail.shank": _INCHES,
    "shingle_nail.head": _INCHES,
    "shingle_nail.penetration": _INCHES,
    "shingle_nail.line": _WORDS,
    "shingle_nail.set": _WORDS,
    "shingle_nail.over_joint": _WORDS,
    "shingle_nail.metal": _WORDS,
    "shingle_nail.from_end": _INCHES,
    "shingle_nail.from_joint": _INCHES,
    "cap.nails": _EACH,
    "cap.nail.penetration": _INCHES,
    "hand_seal.spots": _EACH,
    "hand_seal.spot_spacing": _INCHES,
    "roof_bracket.nail.length": _INCHES,
    "roof_bracket.nail.into": _WORDS,
    "renailed.needed": _WORDS,
    "renailed.way": _WORDS,
    "renailed.nail": Ask("nails"),
    "renailed.edge_spacing": _INCHES,
    "renailed.field_spacing": _INCHES,
    "sealed_deck.way": _WORDS,
    "ventilation.ratio": Ask("number", "to_one"),
    "duty.windstorm_certificate": _WORDS,
    "duty.engineer": _WORDS,
    "duty.section_to_code": _WORDS,
    "duty.affidavit": _WORDS,
    "duty.permit": _WORDS,
    "duty.final_visit": _WORDS,
}

#: Units that columns of a table may carry. ``word`` is text, ``source`` an id of sources.yaml.
UNITS: frozenset[str] = frozenset(
    {"word", "source", "mark", "in", "ft", "sq_ft", "squares", "mph", "lb", "per_lb", "psf", "each"}
    | {"ratio", "percent"}
)

#: Units whose cells are text.
TEXT_UNITS: frozenset[str] = frozenset({"word", "source", "mark"})

Exposure = Literal["B", "C", "D"]
Shank = Literal["smooth", "ring"]
ShingleKind = Literal["laminated", "three-tab"]
ValleyKind = Literal["open", "closed"]
VaporRetarder = Literal["class I", "class II", "class III", "none"]
WindZone = Literal["seaward", "inland-1", "inland-2", "hvhz"]
RoofZone = Literal["zone-1", "zone-2", "zone-3"]
WorkKind = Literal["patch", "section", "re-roof", "recover"]

#: What rows on inspections and certificates answer with, and what they look at.
DutyAnswer = Literal["needed", "not needed"]
YesNo = Literal["yes", "no"]
InsideOutside = Literal["inside", "outside"]

#: What holds the long edges of panels between the framing; "none" is an answer too.
EdgeSupport = Literal["clips", "tongue and groove", "blocking", "none"]

#: What holds the old deck, as seen from the attic or with the covering off; nobody knowing is an answer too.
OldFastener = Literal["staples", "smooth nails", "ring shank nails", "not known"]


class Nail(Strict):
    """A nail by length and shank; a penny name alone does not identify one."""

    length_in: Quantity
    shank_in: Quantity
    shank: Shank
