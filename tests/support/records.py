"""Records of other houses than the demo's."""

#: A hip roof of 40 by 24 ft with unlike pitches, a chimney, a skylight and a porch; nothing measured is whole.
HIP_ROOF = """\
job: {number: 26-077, kind: re-roof, status: closed}
property: {street: 5 Sedge Court, town: Pellam Reach, state: South Carolina, time_zone: America/New_York, built: 2004}
cause: {what: The covering was worn out.}
roof:
  eave_height: 10 ft 3-1/2 in
  planes:
    - {id: HS, title: south, shape: trapezoid, lower: 40 ft, upper: 16 ft, upper_starts: 12 ft, run: 12 ft, pitch: 7:12, facing: south, at: [0 ft, 0 ft]}
    - {id: HN, title: north, shape: trapezoid, lower: 40 ft, upper: 16 ft, upper_starts: 12 ft, run: 12 ft, pitch: 7:12, facing: north, at: [40 ft, 24 ft]}
    - {id: HW, title: west, shape: triangle, lower: 24 ft, top_at: 12 ft, run: 12 ft, pitch: 7:12, facing: west, at: [0 ft, 24 ft]}
    - {id: HE, title: east, shape: triangle, lower: 24 ft, top_at: 12 ft, run: 12 ft, pitch: 7:12, facing: east, at: [40 ft, 0 ft]}
    - {id: PORCH, title: porch, shape: rectangle, lower: 12 ft 7 in, run: 6 ft 1-1/2 in, pitch: 2-1/2:12, facing: south, at: [10 ft, -6 ft 1-1/2 in]}
  openings:
    - {id: CHIM, plane: HN, what: chimney, at: [18 ft, 6 ft], along: 6 ft 2 in, up: 5 ft 3 in}
    - {id: SKY, plane: HN, what: skylight, at: [8 ft, 4 ft], along: 22-1/2 in, up: 46-1/2 in}
  edges:
    - {id: H1, kind: hip, sides: [HS.left, HW.right], measured: 18 ft 4 in}
    - {id: H2, kind: hip, sides: [HS.right, HE.left]}
    - {id: H3, kind: hip, sides: [HN.left, HE.right]}
    - {id: H4, kind: hip, sides: [HN.right, HW.left]}
    - {id: R1, kind: ridge, sides: [HS.upper, HN.upper]}
    - {id: L1, kind: eave, sides: [HW.lower]}
    - {id: P1, kind: rake, sides: [PORCH.left]}
    - {id: P2, kind: rake, sides: [PORCH.right]}
    - {id: P3, kind: headwall, sides: [PORCH.upper]}
  framing: {member: 2x6 rafter, spacing: 16 oc}
basis: {code: irc-2021, practices: [arma-hand-seal], authority: the town, wind_speed: 117 mph, exposure: C}
deck:
  panel: {product: OSB, thickness: 7/16 in, width: 4 ft, length: 8 ft}
  nail: {size: 2-1/2 x 0.131, shank: smooth}
  edge_spacing: 6 in
  field_spacing: 5-1/2 in
  sheets:
    - {id: D1, plane: HW, at: [4 ft, 0 ft], along: 7 ft 11-3/4 in, up: 3 ft 10-1/8 in, why: rot}
    - {id: D2, plane: HE, at: [4 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}
covering:
  areas:
    - {id: A1, plane: HW, outline: [[0 ft, 0 ft], [12 ft, 13 ft 10-1/2 in], [24 ft, 0 ft]]}
    - {id: A2, plane: PORCH, outline: [[0 ft, 0 ft], [12 ft 7 in, 0 ft], [12 ft 7 in, 6 ft 3 in], [0 ft, 6 ft 3 in]]}
  shingle: {kind: three-tab, width: 36 in, exposure: 5 in}
  nail: {length: 1-3/4 in, shank: 0.105 in, head: 3/8 in}
  nails_each: 4
  above_deck: 0.31 in
tie_in: {shingles_sealed: 17, spots_each: 6}
bought:
  - {id: B1, item: three-tab shingle, unit: bundle, delivered: 9, scrap: 1/3, cover_each: 33.3 sq ft}
"""
