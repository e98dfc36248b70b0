"""Which rows the layout of a record has: take one kind away and a test here fails."""

import pytest

from packet.closeout.model import Closeout
from packet.figures.deck_parts import DeckPiece
from tests.support.office import Office

#: A gable 40 ft by 24 ft at 9:12: the slope is 15 ft. Trusses every 2 ft from the left rake.
GABLE = """
job: {number: 26-041, kind: section, status: closed}
property: {street: 4 Reed Lane, town: Tern Point, state: South Carolina, time_zone: America/New_York}
cause: {what: Rot at the eave.}
roof:
  eave_height: 9 ft
  forms:
    - {id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 40 ft, depth: 24 ft, pitch: 9:12, planes: {front: {id: GS}, back: {id: GN}}}
  framing: {member: 2x8 rafter, spacing: 24 in oc, lines: [{plane: GS, first: 0 ft}]}
deck:
  panel: {product: plywood, thickness: 15/32 in, span_rating: 32/16, width: 4 ft, length: 8 ft}
  nail: {size: 2-1/2 x 0.131, shank: smooth}
  edge_spacing: 6 in
  field_spacing: 12 in
  sheets:
    - {id: S1, plane: GS, at: [16 ft, 4 ft], along: 8 ft, up: 4 ft, why: rot}
"""

STRIPS = """
code: {code}
title: Our own nailing near edges
edition: "2026"
whose: practice
source: arma-nails
rows:
  {code}-spacing: {{asks: deck.nail.near_edges_spacing, kind: at_most, value: 4, unit: in, locator: page 1, checked: seen}}
  {code}-width: {{asks: deck.nail.near_edges_width, kind: at_least, value: {width_in}, unit: in, locator: page 1, checked: seen}}
"""


@pytest.fixture
def gable(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "gable", GABLE)


def piece(closeout: Closeout) -> DeckPiece:
    assert closeout.deck_plan
    return closeout.deck_plan.planes[0].pieces[0]


def rows(closeout: Closeout) -> list[tuple[str, float, int]]:
    """Return kind, place along the eave and nails of each row, left to right and up."""
    placed = sorted(piece(closeout).rows, key=lambda row: (round(row.start[0], 3), row.start[1]))
    return [(row.kind, round(row.start[0], 2), row.count) for row in placed]


def with_strips(gable: Office, width_in: int = 48, *more: int) -> Office:
    codes = []
    for width in (width_in, *more):
        codes.append(f"our-strips-{width}")
        text = STRIPS.format(code=codes[-1], width_in=width)
        gable.file(f"shared/codes/{codes[-1]}.yaml", text.lstrip())
    return gable.added(f"basis: {{code: irc-2009, authority: town, practices: [{', '.join(codes)}]}}")


def test_away_from_the_edges_nothing_stands_closer(gable: Office) -> None:
    """IRC 2009 Table R602.3(1): 6 and 12 in."""
    assert rows(with_strips(gable).closeout()) == [
        ("end", 16.03, 9),
        ("field", 18, 5),
        ("field", 20, 5),
        ("field", 22, 5),
        ("end", 23.97, 9),
    ]


@pytest.mark.parametrize(
    ("at", "low_ft", "kinds"),
    [
        ("[16 ft, 0 ft]", 0, {"closer"}),  # along the eave
        ("[16 ft, 11 ft]", 11, {"closer"}),  # along the ridge
    ],
)
def test_rows_stand_closer_along_eave_and_ridge(
    gable: Office, at: str, low_ft: float, kinds: set[str]
) -> None:
    closeout = with_strips(gable.changed("deck.sheets.S1.at", at)).closeout()
    # 47.25 in at 4 in: 13 nails on each of five rafters, ends and field alike
    assert {count for _, _, count in rows(closeout)} == {13}
    assert {kind for kind, x, _ in rows(closeout) if 17 < x < 23} == kinds
    assert min(row.start[1] for row in piece(closeout).rows) == pytest.approx(low_ft + 0.03125)


@pytest.mark.parametrize(("left_ft", "first"), [(0, 0.03), (32, 32.03)])
def test_rows_stand_closer_along_both_rakes_as_far_as_the_strip_is_wide(
    gable: Office, left_ft: int, first: float
) -> None:
    """On the left rake the strip ends on the rafter at 4 ft; on the right it starts on the one at 36 ft."""
    closeout = with_strips(gable.changed("deck.sheets.S1.at", f"[{left_ft} ft, 4 ft]"), 42).closeout()
    counts = [count for _, _, count in rows(closeout)]
    assert counts == ([13, 13, 5, 5, 9] if left_ft == 0 else [9, 5, 5, 13, 13])
    assert rows(closeout)[0][1] == first


def test_of_two_widths_the_wider_holds(gable: Office) -> None:
    """Rules of 24 in and 60 in: from the eave to 5 ft. The sheet from 4 ft to 8 ft has a foot of it."""
    closeout = with_strips(gable, 24, 60).closeout()
    on_one = [(kind, count) for kind, at, count in rows(closeout) if at == 20]
    # 11-5/8 in at 4 in: 4 nails; 35-5/8 in at 12 in: 3 more
    assert on_one == [("closer", 4), ("field", 3)]


def test_the_tightest_of_two_rules_gives_the_spacing(gable: Office) -> None:
    """IRC 2009 asks 12 in in the field, IRC 2021 6 in; the older code governs the house, a guide asks more."""
    rule = (
        "code: our-six\ntitle: Our own field spacing\nedition: '2026'\nwhose: practice\nsource: arma-nails\nrows:\n"
        "  our-six-field: {asks: deck.nail.field_spacing, kind: at_most, value: 6, unit: in, locator: p 1, checked: seen}\n"
    )
    gable.file("shared/codes/our-six.yaml", rule)
    closeout = gable.added("basis: {code: irc-2009, authority: town, practices: [our-six]}").closeout()
    assert [count for _, _, count in rows(closeout)] == [9, 9, 9, 9, 9]
    assert closeout.deck_plan
    assert closeout.deck_plan.field == "rule.our-six-field"


@pytest.mark.parametrize(
    ("left_ft", "counts"),
    [(0, [13, 5, 5, 5, 9]), (32, [9, 5, 5, 5, 13]), (16, [9, 5, 5, 5, 9])],
)
@pytest.mark.parametrize("up_ft", [0, 11])
def test_the_framing_of_both_gable_ends_is_nailed_closer_over_its_whole_length(
    gable: Office, left_ft: int, counts: list[int], up_ft: int
) -> None:
    gable.changed("deck.gable_spacing", "4 in")
    closeout = gable.changed("deck.sheets.S1.at", f"[{left_ft} ft, {up_ft} ft]").closeout()
    assert [count for _, _, count in rows(closeout)] == counts


def test_framing_starts_where_it_was_taped(gable: Office) -> None:
    """First rafter at 1 ft: both ends of the sheet hang between rafters and have no row."""
    closeout = gable.changed("roof.framing.lines", "[{plane: GS, first: 1 ft}]").closeout()
    assert rows(closeout) == [("field", 17, 5), ("field", 19, 5), ("field", 21, 5), ("field", 23, 5)]


@pytest.mark.parametrize(
    ("width", "last"), [("1-1/2 in", ("field", 22.0, 5)), ("3-1/2 in", ("end", 23.95, 9))]
)
def test_a_wider_member_still_carries_an_end_off_its_center(
    gable: Office, width: str, last: tuple[str, float, int]
) -> None:
    """The sheet ends an inch short of the center line: its row, 1-3/8 in off it, hits the wider member alone."""
    gable.changed("roof.framing.width", width)
    closeout = gable.changed("deck.sheets.S1.along", "7 ft 11 in").closeout()
    found = rows(closeout)[-1]
    assert (found[0], found[2]) == (last[0], last[2])


def test_an_opening_in_a_sheet_is_cut_out_and_nailed_around(gable: Office) -> None:
    """A skylight between two rafters, 2 ft long: no nails in it, its edges at 6 in."""
    closeout = gable.changed(
        "roof.openings",
        "[{id: O1, plane: GS, what: skylight, at: [18 ft 3/4 in, 5 ft], along: 22-1/2 in, up: 2 ft}]",
    ).closeout()
    on_trimmers = [row for row in rows(closeout) if 17.5 < row[1] < 20.5]
    # 24-3/4 in between the corners: 5 spaces at 6 in, the first nail shared with the row below
    assert on_trimmers == [
        ("field", 18.0, 2),
        ("field", 18.0, 1),
        ("end", 18.03, 5),
        ("end", 19.97, 5),
        ("field", 20.0, 2),
        ("field", 20.0, 1),
    ]
    assert closeout.figures["sheet.S1.nails"].value == 9 + 8 + 8 + 5 + 9
    assert closeout.figures["sheet.S1.laid"].value == pytest.approx(32 - 1.875 * 2)
