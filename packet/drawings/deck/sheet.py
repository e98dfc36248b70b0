"""The sheet of a deck nailing plan: its two widths, and its style beside the roof plan's."""

from dataclasses import dataclass

from packet.drawings import sheet as roof
from packet.drawings.svg import number

#: Rules of its own; lettering, edges, hatching, dimensions and scale bar look as on the roof plan.
_OWN = """
.deck-plan .edge { stroke-width: 2.4; }
.deck-plan .ridge, .deck-plan .hip, .deck-plan .valley { stroke-width: 1.8; }
.deck-plan .break { stroke: #5b6470; stroke-width: 0.8; }
.deck-plan .member, .deck-plan .level-wood { stroke: #5b6470; stroke-width: 0.8; }
.deck-plan .level-wood { stroke-dasharray: 7 2.5; }
.deck-plan .unsound { stroke-width: 1; }
.deck-plan polygon.piece { fill: #f1efe7; stroke: none; }
.deck-plan .joint { stroke-width: 1.2; stroke-linejoin: miter; stroke-linecap: square; }
.deck-plan .strip-line { stroke-width: 0.9; stroke-dasharray: 1.5 2.5; }
.deck-plan .rot { stroke-width: 1.1; stroke-dasharray: 4 3; }
.deck-plan .asked { stroke-width: 1.1; stroke-dasharray: 10 3 2 3; }
.deck-plan .made { stroke-width: 2.6; stroke-linecap: square; }
"""

#: A nail is a dot: a line of no length with round ends. Those of closer rows are square and larger.
_NAILS = """.deck-plan .nails {{ stroke-width: {dot}; stroke-linecap: round; }}
.deck-plan .nails.closer {{ stroke-width: {closer}; stroke-linecap: square; }}
"""

#: Square ends reach as far as round ones but look smaller; this makes up for it and tells them apart.
_CLOSER_TIMES = 1.25


@dataclass(frozen=True)
class Sheet:
    """Measures of a sheet [px]; the drawing is to be shown about this wide or wider.

    Attributes:
        width: Width of the view box.
        margin: From the sheet's edge to the drawing.
        most_height: Most height for the deck with its dimensions.
        most_px_per_ft: Largest scale.
        room_ft: Old deck shown beside the work [ft].
    """

    name: str
    width: float
    margin: float
    most_height: float
    most_px_per_ft: float
    room_ft: float


WIDE = Sheet("deck", 620.0, 20.0, 660.0, 44.0, 1.5)
NARROW = Sheet("deck-narrow", 360.0, 11.0, 480.0, 32.0, 1.0)


def style(dot_px: float) -> str:
    """Return the style of a drawing whose nails are this wide [px]."""
    nails = _NAILS.format(dot=number(dot_px), closer=number(dot_px * _CLOSER_TIMES))
    return roof.STYLE.replace(".roof-plan", ".deck-plan").rstrip("\n") + _OWN + nails
