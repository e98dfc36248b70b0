"""The sheet: its two widths, its frame and its style."""

import math
from dataclasses import dataclass

#: Scoped to the drawing, so that it neither takes nor gives rules when the drawing stands inside a page.
#: Weight and dashes tell lines apart; colour only sets dimensions back.
#: Selectors are plain, because programs other than browsers read them too.
STYLE = """
.roof-plan text { fill: #22272e;
  font-family: 'Plex Sans', 'IBM Plex Sans', 'Segoe UI', Roboto, 'Helvetica Neue', Arial, sans-serif; }
.roof-plan .name, .roof-plan .area-id, .roof-plan .heading { font-weight: 600; }
.roof-plan .word { font-style: italic; }
.roof-plan .caption { fill: #5b6470; }
.roof-plan .dim { fill: #1d4e89; }
.roof-plan line, .roof-plan path, .roof-plan polygon, .roof-plan circle { fill: none; stroke: #22272e; }
.roof-plan .paper { fill: #ffffff; stroke: none; }
.roof-plan .frame { stroke-width: 0.8; }
.roof-plan .plane { fill: #ffffff; stroke: none; }
.roof-plan .outline { stroke-width: 2.8; stroke-linejoin: miter; stroke-linecap: square; }
.roof-plan .outline-sign { stroke-width: 2.8; }
.roof-plan .edge, .roof-plan .edge-sign, .roof-plan .seam { stroke-width: 1.2; }
.roof-plan .on-top { stroke-width: 2.1; }
.roof-plan .rake-inner { stroke-width: 0.8; }
.roof-plan .ridge { stroke-width: 1.5; }
.roof-plan .hip { stroke-dasharray: 11 4; }
.roof-plan .valley { stroke-dasharray: 9 3 2 3; }
.roof-plan .pitch-break { stroke-dasharray: 2 3; }
.roof-plan .sidewall-ticks { stroke-width: 8; stroke-dasharray: 1 7; stroke-dashoffset: -3; }
.roof-plan .headwall-ticks { stroke-width: 8; stroke-dasharray: 1 2.4 1 7; stroke-dashoffset: -3; }
.roof-plan .opening { stroke-width: 1; stroke-dasharray: 4 2.5; }
.roof-plan .area { stroke-width: 1; }
.roof-plan .hatch { stroke-width: 0.9; stroke: #5b6470; }
.roof-plan .dim-line, .roof-plan .extension { stroke: #1d4e89; stroke-width: 1; }
.roof-plan .tick { stroke: #1d4e89; stroke-width: 1.4; }
.roof-plan .arrow, .roof-plan .leader { stroke-width: 1; }
.roof-plan .arrow-head, .roof-plan .dot, .roof-plan .north-dark, .roof-plan .bar-dark { fill: #22272e; }
.roof-plan .arrow-head, .roof-plan .dot, .roof-plan .north-dark, .roof-plan .bar-dark { stroke-width: 0.8; }
.roof-plan .north-light, .roof-plan .bar-light { fill: #ffffff; stroke-width: 0.8; }
.roof-plan .ring { fill: #ffffff; stroke-width: 1; }
"""


@dataclass(frozen=True)
class Sheet:
    """Measures of a sheet [px]; the drawing is to be shown about this wide or wider.

    Attributes:
        width: Width of the view box.
        margin: From the sheet's edge to the drawing.
        most_height: Most height for the roof with its dimensions.
        most_total: Most height of the whole sheet, where the key leaves the roof half of its room: a Letter
            page then shows letters of 6.5 pt.
        most_px_per_ft: Largest scale, so that a small plane stays small.
        few_dimensions: Whether only the longest eaves are dimensioned.
    """

    name: str
    width: float
    margin: float
    most_height: float
    most_total: float
    most_px_per_ft: float
    few_dimensions: bool


WIDE = Sheet("roof-plan", 620.0, 20.0, 640.0, 1025.0, 36.0, few_dimensions=False)
NARROW = Sheet("roof-plan-narrow", 360.0, 11.0, 460.0, math.inf, 26.0, few_dimensions=True)

#: The frame stands this far inside the sheet's edge; space between roof and strip [px].
FRAME_INSET, STRIP_GAP = 4.0, 16.0
