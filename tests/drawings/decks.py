"""Decks to draw: those of the demo jobs, and one with everything a deck may have; and what is read back."""

import math
import re
from dataclasses import asdict
from functools import cache
from typing import Any

import yaml

from packet.figures.deck import deck_plan
from packet.figures.make import make_figures
from packet.figures.plan import plan
from packet.record.job import JobRecord
from packet.reference import Library
from tests.drawings.formed import HEAD
from tests.drawings.reading import Drawing
from tests.support.office import ROOT

Copy = dict[str, Any]

#: A rake with closer nails, irregular framing with an unsound member, rot cut out of two courses of new deck.
EVERYTHING = """\
roof:
  eave_height: 9 ft
  planes:
    - {id: MAIN, title: "front, south", shape: rectangle, lower: 30 ft, run: 12 ft, pitch: 6:12, facing: south, at: [0 ft, 0 ft]}
  edges:
    - {id: E1, kind: eave, sides: [MAIN.lower]}
    - {id: E2, kind: rake, sides: [MAIN.left]}
    - {id: E3, kind: rake, sides: [MAIN.right]}
    - {id: E4, kind: ridge, sides: [MAIN.upper]}
  openings:
    - {id: O1, plane: MAIN, what: chimney, at: [9 ft, 6 ft 6 in], along: 2 ft 6 in, up: 2 ft}
  framing:
    member: 2x6 rafter
    spacing: 24 in oc
    width: 1-5/8 in
    lines:
      - {plane: MAIN, at: [2 in, 2 ft 1 in, 4 ft, 6 ft 2 in, 8 ft, 9 ft 10 in, 12 ft 1 in, 14 ft, 16 ft], unsound: [6 ft 2 in]}
deck:
  panel: {product: plywood, thickness: 15/32 in, span_rating: 32/16, bond: Exposure 1, width: 4 ft, length: 8 ft}
  edge_spacing: 6 in
  field_spacing: 12 in
  gable_spacing: 4 in
  cut_outs:
    - {id: CO1, plane: MAIN, rot: {at: [5 ft, 1 ft], along: 2 ft, up: 18 in}, cut: {at: [4 ft, 0 ft], along: 8 ft 1 in, up: 4 ft},
       edges: on the center of a rafter}
  sheets:
    - {id: S1, plane: MAIN, at: [0 ft, 0 ft], along: 4 ft, up: 4 ft, why: rot}
    - {id: S2, plane: MAIN, at: [4 ft, 0 ft], along: 8 ft 1 in, up: 4 ft, why: rot}
    - {id: S3, plane: MAIN, at: [8 ft, 4 ft], along: 6 ft, up: 4 ft, why: rot beside the chimney}
    - {id: S4, plane: MAIN, at: [0 ft, 8 ft], along: 8 ft, up: 4 ft, why: rot}
"""

#: One sheet in the middle of a large plane, and no spacing of nails.
BARE = """\
roof:
  eave_height: 9 ft
  planes:
    - {id: MAIN, title: "front, south", shape: rectangle, lower: 48 ft, run: 20 ft, pitch: 6:12, facing: south, at: [0 ft, 0 ft]}
deck:
  panel: {product: plywood, thickness: 15/32 in, width: 4 ft, length: 8 ft}
  sheets:
    - {id: S1, plane: MAIN, at: [20 ft, 8 ft], along: 8 ft, up: 4 ft, why: rot}
"""


@cache
def library() -> Library:
    return Library.load([ROOT / "shared"])


def copy_of(record: JobRecord) -> Copy:
    """Return what drawings of the deck see of a copy."""
    figures = make_figures(record, library())
    deck, geometry = deck_plan(record, library(), figures), plan(record, figures)
    return {
        "deck_plan": asdict(deck) if deck else None,
        "geometry": asdict(geometry) if geometry else None,
        "figures": {id: asdict(figure) for id, figure in figures.by_id.items()},
    }


def written(text: str) -> Copy:
    return copy_of(JobRecord.model_validate(yaml.load(HEAD + text, yaml.BaseLoader)))


@cache
def demo(number: str) -> Copy:
    text = (ROOT / "jobs" / number / "job.yaml").read_text(encoding="utf-8")
    return copy_of(JobRecord.model_validate(yaml.load(text, yaml.BaseLoader)))


@cache
def deck(name: str) -> Copy:
    return demo(name) if name[0].isdigit() else written({"everything": EVERYTHING, "bare": BARE}[name])


#: Decks and their planes.
PLANES = [
    ("26-041", "MS"),
    ("26-041", "WW"),
    ("26-052", "HE"),
    ("26-052", "HN"),
    ("everything", "MAIN"),
    ("bare", "MAIN"),
]


def plane_of(copy: Copy, id: str) -> dict[str, Any]:
    return next(dict(plane) for plane in copy["deck_plan"]["planes"] if plane["id"] == id)


class Scale:
    """Where places of the plane stand on a drawing, read from its scale bar and one corner of a piece."""

    def __init__(self, drawing: Drawing, plane: dict[str, Any]) -> None:
        bar = drawing.within("scale-bar")
        xs = [x for part in bar if part.tag == "polygon" for x, _ in part.points]
        (feet,) = (int(part.text.split()[0]) for part in bar if part.text.endswith(" ft"))
        self.px_per_ft = (max(xs) - min(xs)) / feet
        drawn = next(part for part in drawing.of("piece", tag="polygon") if part.element.get("data-piece"))
        self._corner = drawn.points[0]
        piece = next(one for one in plane["pieces"] if one["id"] == drawn.get("data-piece"))
        self._at = piece["outlines"][0][0]

    def point(self, u: float, v: float) -> tuple[float, float]:
        return (
            self._corner[0] + (float(u) - float(self._at[0])) * self.px_per_ft,
            self._corner[1] - (float(v) - float(self._at[1])) * self.px_per_ft,
        )


def dots(path: str, moved: tuple[float, float]) -> list[tuple[float, float]]:
    """Return the places of lines of no length."""
    found = re.findall(r"M(-?[\d.]+) (-?[\d.]+)h0(?![\d.])", path)
    assert "".join(f"M{x} {y}h0" for x, y in found) == path
    return [(float(x) + moved[0], float(y) + moved[1]) for x, y in found]


def surface(points: list[tuple[float, float]]) -> float:
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    return abs(sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairs)) / 2


def near(first: tuple[float, float], second: tuple[float, float], px: float = 0.1) -> bool:
    return math.dist(first, second) <= px
