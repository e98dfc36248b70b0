"""A roof that is measured and planned, with goods to order for it."""

#: A plane of 40 ft by 25 ft on the slope (run 20 ft at 9:12), planned and not begun.
PLANNED = """\
job: {number: 26-041, kind: re-roof, status: planned}
property: {street: 18 Heron Lane, town: Pellam Reach, state: South Carolina, time_zone: America/New_York}
roof:
  eave_height: 9 ft
  planes: [{id: A, title: front, shape: rectangle, lower: 40 ft, run: 20 ft, pitch: 9:12, facing: south, at: [0 ft, 0 ft]}]
  edges: [{id: E1, kind: eave, sides: [A.lower]}]
covering: {areas: [{id: A1, plane: A}]}
"""

#: The same roof when its work has begun: the list holds what the record can count.
BEGUN = PLANNED.replace("status: planned", "status: under way") + "cause: {what: Worn out.}\n"

GOODS = """\
bought:
  - {id: SH, item: laminated shingle, use: shingles, unit: bundle, cover_each: 32.8 sq ft, planned: 36,
     allowance: {percent: 12.5 %, why: "Valleys, and short courses."}}
  - {id: ST, item: starter strip, use: starter, unit: bundle, length_each: 105 ft}
  - {id: HOOD, item: fan hood, unit: piece, planned: 2}
"""
