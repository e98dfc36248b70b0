"""Deck boards side by side, spaced on purpose, and under new panels; counted by hand."""

import pytest

from packet.closeout.model import Closeout
from tests.support.office import Office

#: Two planes of 600 sq ft on 24 in framing; 1x4 boards, 3-1/2 in wide, spaced by 5 in.
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
  boards:
    - {id: B1, plane: GN, where: eave, size: 1x4 pine, width: 3-1/2 in, thickness: 3/4 in, pieces: 6, length: 48 ft, laid: spaced, gap: 5 in, nails_each_bearing: 2, why: rot}
"""
PANELS = """
  panel: {product: plywood, thickness: 15/32 in, span_rating: 32/16, width: 4 ft, length: 8 ft}
  nail: {size: 2-1/2 x 0.131, shank: ring}
  edge_spacing: 6 in
  field_spacing: 12 in
  sheets: [{id: S1, plane: GS, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}]
  over_boards: {laid: spaced, thickness: 3/4 in, width: 3-1/2 in, gap: 5 in}
"""
SHINGLES = (
    "covering: {areas: [{id: A1, plane: GN}], shingle: {kind: laminated, width: 36 in, exposure: 5 in}}"
)


@pytest.fixture
def gable(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "gable", GABLE)


@pytest.fixture
def over(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "over", GABLE[: GABLE.index("  boards:")].rstrip() + PANELS)


def value(closeout: Closeout, id: str) -> float:
    return float(closeout.figures[id].value)


def test_spaced_boards_make_more_roof_than_their_wood(gable: Office) -> None:
    closeout = gable.closeout()
    # 48 ft at 8-1/2 in center to center are 34 sq ft; of wood they are 14
    assert (value(closeout, "board.B1.apart"), value(closeout, "boards.area")) == (8.5, 34)
    side = gable.changed("deck.boards.B1.laid", "side by side").closeout()
    assert value(side, "boards.area") == 14
    assert "board.B1.apart" not in side.figures


def test_spaced_boards_have_the_feet_and_nails_of_any_boards(gable: Office) -> None:
    closeout = gable.closeout()
    # 48 ft on 24 in are 24 spaces, and one bearing more a board: 30, two nails each
    assert (value(closeout, "boards.length"), value(closeout, "boards.nails")) == (48, 60)


def test_without_its_gap_a_spaced_deck_has_no_area(gable: Office) -> None:
    closeout = gable.replaced(", gap: 5 in", "").closeout()
    assert not {"board.B1.area", "boards.area"} & closeout.figures.keys()
    assert value(closeout, "boards.nails") == 60


@pytest.mark.parametrize("gap", ["1/8 in", "5 in", "20 in"])
def test_a_gap_on_purpose_is_no_finding(gable: Office, gap: str) -> None:
    assert gable.changed("deck.boards.B1.gap", gap).finding_ids() == set()


def test_shingles_want_a_deck_without_gaps(gable: Office) -> None:
    """IBC 2018 1507.2.1: solid sheathing: seen."""
    assert gable.added(SHINGLES).finding_ids() == {"boards-bare:B1"}
    side = gable.changed("deck.boards.B1.laid", "side by side")
    assert side.finding_ids() == set()


def test_panels_over_them_make_it_whole(gable: Office) -> None:
    sheet = "[{id: S1, plane: GN, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}]"
    assert "boards-bare:B1" not in gable.added(SHINGLES).changed("deck.sheets", sheet).finding_ids()


def test_a_covering_that_is_no_shingle_asks_nothing_of_boards(gable: Office) -> None:
    assert gable.added("covering: {areas: [{id: A1, plane: GN}]}").finding_ids() == set()


def test_the_nails_of_boards_are_bought(gable: Office) -> None:
    goods = "bought: [{id: N, item: 8d, use: deck nails, product: deck-nails-8d-common, unit: lb}]"
    closeout = gable.added(goods).closeout()
    (line,) = [line for line in closeout.takeoff if line.use == "deck nails"]
    # 60 nails at 100 to the pound
    assert (value(closeout, line.net), value(closeout, line.pounds), value(closeout, line.to_buy)) == (
        60,
        0.6,
        1,
    )
    assert line.planes == ("GN",)


def test_boards_whose_nails_nobody_counted_leave_the_order_open(gable: Office) -> None:
    goods = "bought: [{id: N, item: 8d, use: deck nails, unit: lb, nails_a_pound: 100}]"
    closeout = gable.added(goods).replaced(", nails_each_bearing: 2", "").closeout()
    (line,) = [line for line in closeout.takeoff if line.use == "deck nails"]
    assert (line.net, line.to_buy, line.missing) == ("", "", ("board_nails",))


def test_a_nail_through_panel_and_board_reaches_the_rest(over: Office) -> None:
    closeout = over.closeout()
    # 2-1/2 less 15/32 and 24/32: 80/32 - 39/32
    assert value(closeout, "over_boards.above_framing") == 39 / 32
    assert value(closeout, "over_boards.nail_in_framing") == 41 / 32
    assert over.finding_ids() == set()


def test_a_nail_long_enough_for_the_panel_can_be_too_short_for_both(over: Office) -> None:
    over.changed("deck.nail.size", "2 x 0.113")
    (finding,) = over.closeout().findings
    # 2 less 39/32 are 25/32: under an inch; through the panel alone it would be 1-17/32
    assert finding.id == "nail-too-short:DECK"
    assert "deck.over_boards.thickness" in finding.figures
    start, end = over.text.index("  over_boards:"), len(over.text)
    assert over.write(over.text[:start] + over.text[end:]).finding_ids() == set()


def test_rows_of_panels_over_boards_follow_the_rafters(over: Office) -> None:
    # 24 in framing, 6 and 12 in: 2 rows of 9 and 3 of 5, as without the boards
    assert value(over.closeout(), "deck.nails") == 33


def test_boards_carry_a_panel_that_the_rafters_alone_would_not(over: Office) -> None:
    over.changed("deck.panel.span_rating", "16/0")
    assert over.finding_ids() == set()
    start = over.text.index("  over_boards:")
    assert over.write(over.text[:start]).finding_ids() == {"framing-too-wide:PANEL"}


@pytest.mark.parametrize(
    ("gap", "found"), [("8-1/2 in", set()), ("8-9/16 in", {"boards-too-far-apart:DECK"})]
)
def test_the_published_text_goes_as_far_as_12_in_on_center(over: Office, gap: str, found: set[str]) -> None:
    """APA P300C (2006), panels over spaced boards: 12 in on center at most: seen."""
    assert over.changed("deck.over_boards.gap", gap).finding_ids() == found


@pytest.mark.parametrize(
    ("thickness", "found"), [("5/16 in", set()), ("9/32 in", {"panel-thin-over-boards:DECK"})]
)
def test_the_published_text_starts_at_panels_of_5_16(over: Office, thickness: str, found: set[str]) -> None:
    """APA P300C (2006), panels over spaced boards: 5/16 in at least: seen."""
    over.replaced("span_rating: 32/16, ", "").changed("deck.panel.thickness", thickness)
    assert over.finding_ids() == found


def test_boards_side_by_side_have_no_such_limits(over: Office) -> None:
    over.changed("deck.over_boards.laid", "side by side").changed("deck.over_boards.gap", "1/8 in")
    assert (
        over.replaced("span_rating: 32/16, ", "").changed("deck.panel.thickness", "9/32 in").finding_ids()
        == set()
    )


def test_boards_below_without_a_thickness_are_refused_at_their_line(over: Office) -> None:
    over.replaced("thickness: 3/4 in, width: 3-1/2 in, gap: 5 in}", "gap: 5 in}")
    (problem,) = over.problems()
    assert problem.at == "deck.over_boards.thickness"
    assert problem.line == over.place("deck.over_boards")[0]
