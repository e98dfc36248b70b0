"""Roofs to draw that the program itself measures from a record: forms with wings, dormers and porches."""

from dataclasses import asdict
from typing import Any

import yaml

from packet.figures.make import make_figures
from packet.figures.plan import plan
from packet.record.job import JobRecord
from packet.reference import Library
from tests.support.office import ROOT

HEAD = """\
job: {number: 26-041, kind: re-roof, status: closed}
property: {street: 5 Sedge Court, town: Pellam Reach, state: South Carolina, time_zone: America/New_York}
cause: {what: The covering was worn out.}
"""

#: A T: a wing dies into the front slope, so that its outline goes down to both valley feet and back; a dormer
#: of two planes on the back, each with a wall, a porch against the wing's wall, an eave in two pieces.
T_PLAN = """\
roof:
  eave_height: 10 ft
  forms:
    - {form: gable, id: MAIN, front: south, at: [0 ft, 0 ft], length: 52 ft, depth: 28 ft, pitch: 8:12,
       planes: {front: {id: MS, title: "front, south"}, back: {id: MN, title: "back, north"}}}
    - {form: wing, id: WING, joins: MAIN, side: front, starts: 18 ft, width: 16 ft, out: 13 ft,
       planes: {left: {id: WW, title: "wing, west"}, right: {id: WE, title: "wing, east"}}}
  planes:
    - {id: DR, title: dormer, shape: rectangle, lower: 12 ft, run: 7 ft, pitch: 3:12, facing: north, at: [44 ft, 25 ft],
       eave_height: 16 ft}
    - {id: PO, title: porch, shape: rectangle, lower: 18 ft, run: 7 ft, pitch: 3:12, facing: south, at: [0 ft, -7 ft],
       eave_height: 8 ft 6 in}
  edges:
    - {id: D1, kind: eave, sides: [DR.lower]}
    - {id: D2, kind: rake, sides: [DR.left]}
    - {id: D3, kind: rake, sides: [DR.right]}
    - {id: D4, kind: pitch break, sides: [DR.upper]}
    - {id: P1, kind: eave, sides: [PO.lower]}
    - {id: P2, kind: rake, sides: [PO.left]}
    - {id: P3, kind: sidewall, sides: [PO.right]}
    - {id: P4, kind: headwall, sides: [PO.upper]}
  openings:
    - {id: O1, plane: MN, what: dormer, at: [8 ft, 3 ft 7-1/4 in], along: 12 ft, up: 8 ft 5 in}
covering:
  areas: [{id: A1, plane: MS}, {id: A2, plane: PO}]
  shingle: {kind: laminated, exposure: 5-5/8 in}
  nail: {length: 1-3/4 in, shank: 0.120 in, head: 3/8 in}
  nails_each: 6
details:
  - {id: B1, kind: pipe boot, where: over the bath, plane: MS, at: [44 ft, 9 ft], state: new}
  - {id: C1, kind: chimney, where: at the ridge, plane: MN, at: [40 ft, 12 ft], state: reused}
"""

#: An L: the wing stands at the corner, so that its outer slope and the hip end of the main roof are one plane.
L_FORMS = """\
roof:
  eave_height: 9 ft 2 in
  forms:
    - {form: hip, id: MAIN, front: south, at: [0 ft, 0 ft], length: 44 ft, depth: 24 ft, pitch: 6:12,
       planes: {front: {id: HS, title: "front, south"}, back: {id: HN, title: "back, north"},
                left: {id: HW, title: "west end"}, right: {id: HE, title: "east side"}}}
    - {form: wing, id: WING, joins: MAIN, side: front, starts: 20 ft, width: 24 ft, out: 16 ft,
       planes: {left: {id: WW, title: "wing, west"}, right: {id: HE, title: "east side"}, end: {id: WS, title: "wing end"}}}
covering:
  areas: [{id: A1, plane: HS}, {id: A2, plane: WW, outline: [[0 ft, 0 ft], [9 ft, 0 ft], [9 ft, 6 ft], [0 ft, 6 ft]]}]
  shingle: {kind: laminated, exposure: 5-5/8 in}
  nail: {length: 1-3/4 in, shank: 0.120 in, head: 3/8 in}
  nails_each: 6
details:
  - {id: V1, kind: valley, where: front, plane: HS, at: [24 ft, 4 ft], state: new, style: closed-cut}
"""


def geometry_of(text: str) -> dict[str, Any]:
    """Return a roof that is written as in ``job.yaml``, in plan as a packet's copy has it."""
    return geometry_of_record(yaml.load(HEAD + text, yaml.BaseLoader))


def geometry_of_record(typed: dict[str, Any]) -> dict[str, Any]:
    """Return the roof of a whole record in plan."""
    record = JobRecord.model_validate(typed)
    made = plan(record, make_figures(record, Library.load([ROOT / "shared"])))
    assert made is not None
    return asdict(made)
