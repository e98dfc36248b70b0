"""Records of small roofs whose takeoff is worked by hand in the tests; measures are chosen to be easy."""

#: What every record has before its roof.
HEAD = """\
job: {number: 26-041, kind: re-roof, status: closed}
property: {street: 5 Sedge Court, town: Pellam Reach, state: South Carolina, time_zone: America/New_York, built: 2004}
cause: {what: The covering was worn out.}
basis: {code: irc-2021, authority: the town, wind_speed: 117 mph, exposure: C}
"""

#: A gable roof, every line of the takeoff but a valley's; each line bought says what one unit gives.
GABLE = (
    HEAD
    + """\
roof:
  eave_height: 10 ft
  forms:
    - {id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 40 ft, depth: 24 ft, pitch: 6:12, planes: {front: {id: GS}, back: {id: GN}}}
  framing: {member: 2x8 rafter, spacing: 24 in oc}
  old: {covering: three-tab shingle, layers: 2, weighs_as: three-tab}
deck:
  panel: {product: plywood, thickness: 15/32 in, width: 4 ft, length: 8 ft}
  nail: {size: 2-3/8 x 0.113, shank: ring}
  edge_spacing: 6 in
  field_spacing: 12 in
  sheets:
    - {id: S1, plane: GS, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}
  renailed: {planes: [GN], way: whole deck nailed again, nail: {size: 2-3/8 x 0.113, shank: ring}, edge_spacing: 6 in, field_spacing: 12 in}
dry_in:
  layers: 1
  head_lap: 4 in
  end_lap: 6 in
  fasteners: {kind: 1 in plastic cap nail, at_laps: 6 in, between: 12 in}
  sealed_deck: {way: tape on the joints}
drip_edge: {metal: 0.019 in aluminum, lap: 3 in}
details:
  - {id: B1, kind: pipe boot, where: back slope, plane: GN, state: new}
  - {id: B2, kind: pipe boot, where: back slope, plane: GN, state: reused}
  - {id: C1, kind: sidewall, where: chase, plane: GS, state: new, length: 9 ft}
  - {id: C2, kind: sidewall, where: chase, plane: GS, state: new, length: 4 ft}
  - {id: C3, kind: sidewall, where: chase, plane: GS, state: reused, length: 4 ft}
covering:
  areas:
    - {id: A1, plane: GS}
    - {id: A2, plane: GN}
  shingle: {kind: laminated, width: 36 in, exposure: 5 in}
  starter_along: [eave, rake]
  nails_each: 4
tie_in: {shingles_sealed: 22, spots_each: 4}
ventilation:
  vents:
    - {id: VT1, what: ridge vent, place: high, state: new, length: 38 ft, free_sq_in_each: 18}
    - {id: VT2, what: ridge vent, place: high, state: reused, length: 2 ft, free_sq_in_each: 18}
    - {id: VT3, what: soffit strip, place: low, state: new, length: 80 ft, free_sq_in_each: 9}
bought:
  - {id: PANELS, item: plywood, use: deck panels, unit: sheet, cover_each: 32 sq ft}
  - {id: DECK-NAILS, item: ring shank nails, use: deck nails, unit: box, pieces_each: 500}
  - {id: TAPE, item: tape, use: joint tape, unit: roll, length_each: 75 ft}
  - {id: FELT, item: felt, use: underlayment, unit: roll, width_each: 36 in, length_each: 72 ft}
  - {id: CAP-NAILS, item: cap nails, use: cap nails, unit: box, pieces_each: 1000}
  - {id: DRIP, item: drip edge, use: drip edge, unit: piece, length_each: 10 ft}
  - {id: STEP, item: step flashing, use: step flashing, unit: box, pieces_each: 17}
  - {id: BOOT, item: pipe boot, use: pipe boots, unit: piece}
  - {id: STARTER, item: starter strip, use: starter, unit: bundle, length_each: 105 ft}
  - {id: SHINGLES, item: shingle, use: shingles, unit: bundle, cover_each: 33.3 sq ft, allowance: {percent: 10 %, why: rakes}}
  - {id: RIDGE-VENT, item: ridge vent, use: ridge vent, unit: piece, length_each: 4 ft}
  - {id: CAPS, item: caps, use: caps, unit: bundle, pieces_each: 30}
  - {id: NAILS, item: roofing nails, use: roofing nails, product: roofing-nails-1-1-2, unit: lb}
  - {id: CEMENT, item: cement, use: cement, product: cement-10-1-oz, unit: tube}
"""
)

#: A gable roof with a wing in the middle of its front: two valleys of 12 ft, two ridges.
TEE = (
    HEAD
    + """\
roof:
  eave_height: 10 ft
  forms:
    - {id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 40 ft, depth: 24 ft, pitch: 6:12, planes: {front: {id: GS}, back: {id: GN}}}
    - {id: WING, form: wing, joins: MAIN, side: front, starts: 12 ft, width: 16 ft, out: 10 ft, planes: {left: {id: WW}, right: {id: WE}}}
dry_in: {head_lap: 4 in, end_lap: 6 in}
drip_edge: {metal: 0.019 in aluminum, lap: 3 in}
covering:
  areas:
    - {id: A1, plane: GS}
    - {id: A2, plane: GN}
    - {id: A3, plane: WW}
    - {id: A4, plane: WE}
  shingle: {kind: laminated, width: 36 in, exposure: 5 in}
  nails_each: 4
bought:
  - {id: VALLEY, item: valley metal, use: valley lining, unit: roll, length_each: 12 ft}
  - {id: CAPS, item: caps, use: caps, unit: bundle, pieces_each: 30}
  - {id: DRIP, item: drip edge, use: drip edge, unit: piece, length_each: 10 ft}
  - {id: FELT, item: felt, use: underlayment, unit: roll, width_each: 36 in, length_each: 72 ft}
"""
)

#: A porch under shingles at 3 in 12, its top at a wall, a wall along its left side too.
PORCH = (
    HEAD
    + """\
roof:
  eave_height: 10 ft
  planes:
    - {id: PO, title: porch, shape: rectangle, lower: 20 ft, run: 10 ft, pitch: 3:12, facing: south, at: [0 ft, 0 ft]}
  edges:
    - {id: E1, kind: eave, sides: [PO.lower]}
    - {id: E2, kind: rake, sides: [PO.right]}
    - {id: E3, kind: headwall, sides: [PO.upper]}
    - {id: E4, kind: sidewall, sides: [PO.left]}
dry_in:
  head_lap: 4 in
  end_lap: 6 in
  fasteners: {kind: 1 in plastic cap nail, at_laps: 6 in, between: 12 in}
covering:
  areas: [{id: A1, plane: PO}]
  shingle: {kind: laminated, width: 36 in, exposure: 5 in}
bought:
  - {id: FELT, item: felt, use: underlayment, unit: roll, width_each: 36 in, length_each: 72 ft}
  - {id: CAP-NAILS, item: cap nails, use: cap nails, unit: box, pieces_each: 1000}
"""
)

#: A patch of 10 by 9 ft at the eave of a plane that is 15 ft up a slope of 9 in 12.
PATCH = (
    HEAD.replace("re-roof", "patch")
    + """\
roof:
  eave_height: 10 ft
  planes:
    - {id: MS, title: front, shape: rectangle, lower: 30 ft, run: 12 ft, pitch: 9:12, facing: south, at: [0 ft, 0 ft]}
  edges:
    - {id: E1, kind: eave, sides: [MS.lower]}
    - {id: E2, kind: rake, sides: [MS.left]}
    - {id: E3, kind: ridge, sides: [MS.upper]}
  old: {layers: 1, weighs_as: heavy laminated}
deck:
  panel: {product: plywood, thickness: 15/32 in, width: 4 ft, length: 8 ft}
dry_in:
  head_lap: 4 in
  end_lap: 6 in
  fasteners: {kind: 1 in plastic cap nail, at_laps: 6 in, between: 12 in}
  sealed_deck: {way: tape on the joints}
covering:
  areas:
    - {id: A1, plane: MS, outline: [[4 ft, 0 ft], [14 ft, 0 ft], [14 ft, 9 ft], [4 ft, 9 ft]]}
  shingle: {kind: laminated, width: 36 in, exposure: 5 in}
  nails_each: 4
bought:
  - {id: SHINGLES, item: shingle, use: shingles, unit: bundle, cover_each: 30 sq ft}
  - {id: TAPE, item: tape, use: joint tape, unit: roll, length_each: 75 ft}
  - {id: FELT, item: felt, use: underlayment, unit: roll, width_each: 36 in, length_each: 72 ft}
  - {id: CAP-NAILS, item: cap nails, use: cap nails, unit: box, pieces_each: 1000}
"""
)


def with_lines(record: str, *lines: str) -> str:
    """Return a record with lines bought after those it has, each as a flow mapping."""
    return record.rstrip("\n") + "".join(f"\n  - {line}" for line in lines) + "\n"


def bought_alone(record: str, *lines: str) -> str:
    """Return a record with these lines bought and no others."""
    return with_lines(record[: record.index("\nbought:\n")] + "\nbought:\n", *lines).replace("\n\n", "\n")
