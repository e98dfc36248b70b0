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

#: A re-roof on the coast before anybody opened the roof: most of what a sheet may ask for, none of it shown.
COAST = """\
job: {number: 27-001, kind: re-roof, status: planned}
property: {street: 4 Marsh Lane, town: Pellam Reach, county: Nueces County, state: Texas, built: 1955, time_zone: America/Chicago}
dates: {started: 2026-12-07}
people: {crew: [Ana Pell, Joss Wick]}
basis: {code: irc-2018, authority: Pellam Reach building office, authority_phone: 361-555-0170, wind_speed: 150 mph, wind_zone: seaward}
roof:
  eave_height: 10 ft
  forms:
    - {id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 40 ft, depth: 24 ft, pitch: 7:12, planes: {front: {id: F}, back: {id: B}}}
  framing: {member: 2x6 rafter, spacing: 24 in oc}
deck:
  panel: {product: plywood, thickness: 15/32 in, span_rating: 32/16, width: 4 ft, length: 8 ft}
  nail: {size: 2-3/8 x 0.113, shank: ring}
  edge_spacing: 4 in
  field_spacing: 4 in
drip_edge: {metal: 0.019 in aluminum, fastener_spacing: 4 in}
covering: {areas: [{id: A1, plane: F}, {id: A2, plane: B}], nail: {length: 1-1/2 in, shank: 0.120 in, head: 3/8 in}, nails_each: 6}
"""
