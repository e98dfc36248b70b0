"""New deck laid out on its framing: pieces, nails to the schedule, cut-outs and their reasons."""

import pytest

from packet.closeout.model import Closeout
from packet.figures.deck_parts import DeckPiece
from tests.support.office import Office

#: A gable 40 ft by 24 ft at 9:12, so that the slope is 15 ft; trusses every 2 ft from the left rake.
GABLE = """
job: {number: 26-041, kind: section, status: closed}
property: {street: 4 Reed Lane, town: Tern Point, state: South Carolina, time_zone: America/New_York}
cause: {what: Rot at the eave.}
roof:
  eave_height: 9 ft
  forms:
    - {id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 40 ft, depth: 24 ft, pitch: 9:12, planes: {front: {id: GS}, back: {id: GN}}}
  framing: {member: 2x8 rafter, spacing: 24 in oc, width: 1-1/2 in, lines: [{plane: GS, first: 0 ft}]}
deck:
  panel: {product: plywood, thickness: 15/32 in, span_rating: 32/16, width: 4 ft, length: 8 ft}
  nail: {size: 2-1/2 x 0.131, shank: smooth}
  edge_spacing: 6 in
  field_spacing: 12 in
  sheets:
    - {id: S1, plane: GS, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}
    - {id: S2, plane: GS, at: [8 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}
"""


@pytest.fixture
def gable(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "gable", GABLE)


def pieces(closeout: Closeout) -> dict[str, DeckPiece]:
    assert closeout.deck_plan
    return {piece.id: piece for plane in closeout.deck_plan.planes for piece in plane.pieces}


def nails(closeout: Closeout, id: str) -> float:
    return float(closeout.figures[pieces(closeout)[id].nails].value)


def test_whole_sheets_take_the_nails_of_the_spacing_measured(gable: Office) -> None:
    closeout = gable.closeout()
    # 24 in framing, 6 and 12 in: 2 rows of 9 and 3 of 5
    assert (nails(closeout, "S1"), nails(closeout, "S2")) == (33, 33)
    assert closeout.figures["deck.nails"].value == 66
    assert closeout.figures["deck.laid_area"].value == 64


def test_a_rule_that_may_decide_governs_the_layout(gable: Office) -> None:
    """IRC 2021 Table R602.3(1), items 31 and 32, as restated: 6 and 6 in; so the layout has 5 rows of 9."""
    closeout = gable.added("basis: {code: irc-2021, authority: town}").closeout()
    assert closeout.deck_plan
    assert (closeout.deck_plan.by_rule, closeout.deck_plan.field) == (True, "rule.irc-2021-deck-field")
    assert nails(closeout, "S1") == 45


def test_without_any_spacing_nothing_is_placed(gable: Office) -> None:
    text = gable.text.replace("  edge_spacing: 6 in\n  field_spacing: 12 in\n", "")
    closeout = gable.write(text).closeout()
    assert pieces(closeout)["S1"].nails == ""
    assert "deck.nails" not in closeout.figures
    assert closeout.figures["sheet.S1.laid"].value == 32


def test_framing_measured_one_by_one_carries_its_own_rows(gable: Office) -> None:
    lines = "[{plane: GS, at: [0 ft, 1 ft 11 in, 4 ft 1 in, 8 ft]}]"
    closeout = gable.changed("roof.framing.lines", lines).closeout()
    # rows at both ends, and at 1 ft 11 in and 4 ft 1 in between: 2 of 9 and 2 of 5
    assert nails(closeout, "S1") == 28
    assert pieces(closeout)["S1"].bearings == 4


def test_nails_stand_closer_at_a_gable_end_as_measured(gable: Office) -> None:
    closeout = gable.changed("deck.gable_spacing", "4 in").closeout()
    # the row on the rake takes 13 nails at 4 in instead of 9; the second sheet is away from it
    assert (nails(closeout, "S1"), nails(closeout, "S2")) == (37, 33)


def test_wood_below_the_eave_edge_takes_a_row(gable: Office) -> None:
    closeout = gable.changed(
        "roof.framing.lines", "[{plane: GS, first: 0 ft, level_wood: [0 ft]}]"
    ).closeout()
    # 95.25 in at 6 in: 17 more nails
    assert nails(closeout, "S1") == 50
    assert closeout.deck_plan
    assert [plane.level_wood for plane in closeout.deck_plan.planes] == [(0.0,)]


def test_a_sheet_past_the_rake_is_cut_and_says_where(gable: Office) -> None:
    closeout = gable.changed("deck.sheets.S1.at", "[-2 ft, 0 ft]").closeout()
    piece = pieces(closeout)["S1"]
    assert closeout.figures["sheet.S1.laid"].value == 24
    assert [float(closeout.figures[id].value) for id in piece.cuts[0]] in ([2, 4, 2, 0], [2, 0, 2, 4])


def test_the_takeoff_counts_the_nails_placed(gable: Office) -> None:
    line = next(item for item in gable.closeout().takeoff if item.use == "deck nails")
    assert gable.closeout().figures[line.net].value == 66


CUT = """  cut_outs:
    - id: CO1
      plane: GS
      rot: {at: [5 ft, 1 ft], along: 6 in, up: 6 in}
      cut: {at: [4 ft, 0 ft], along: 4 ft, up: 2 ft}
      edges: on the center of a rafter
"""


def test_a_cut_out_says_how_far_each_side_went_and_why(gable: Office) -> None:
    closeout = gable.write(gable.text + CUT).closeout()
    assert closeout.deck_plan
    item = closeout.deck_plan.planes[0].cut_outs[0]
    assert item.asked == ((4, 0), (8, 2))
    told = [(step.side, step.reason, float(closeout.figures[step.added].value)) for step in item.steps]
    assert told == [
        ("left", "sound_framing", 1),
        ("right", "sound_framing", 0.5),
        ("right", "two_spans", 2),
        ("lower", "strip_left", 1),
        ("upper", "least_width", 0.5),
    ]
    assert not [finding for finding in closeout.findings if finding.code == "cut-out-short"]


def test_less_cut_than_the_rule_leads_to_is_found(gable: Office) -> None:
    office = gable.write(gable.text + CUT.replace("along: 4 ft, up: 2 ft", "along: 2 ft, up: 2 ft"))
    closeout = office.closeout()
    found = next(finding for finding in closeout.findings if finding.code == "cut-out-short")
    assert found.words == {"sides": "right"}
    assert [(id, closeout.figures[id].value) for id in found.figures] == [("cut_out.CO1.short_right", 2)]


def test_a_cut_short_on_every_side_says_how_far_on_each(gable: Office) -> None:
    cut = CUT.replace(
        "cut: {at: [4 ft, 0 ft], along: 4 ft, up: 2 ft}", "cut: {at: [5 ft, 1 ft], along: 6 in, up: 6 in}"
    )
    closeout = gable.write(gable.text + cut).closeout()
    found = next(finding for finding in closeout.findings if finding.code == "cut-out-short")
    assert found.words == {"sides": "left, right, lower, upper"}
    assert [float(closeout.figures[id].value) for id in found.figures] == [1, 2.5, 1, 0.5]


def test_a_piece_smaller_than_a_panel_was_cut_square_first(gable: Office) -> None:
    assert not any(piece.trimmed for piece in pieces(gable.closeout()).values())
    gable.changed("deck.sheets.S2.along", "6 ft")
    assert [piece.trimmed for piece in pieces(gable.closeout()).values()] == [False, True]


def test_a_panel_turned_is_still_whole_and_an_offcut_never_is(gable: Office) -> None:
    turned = gable.changed("deck.sheets.S2.along", "4 ft").changed("deck.sheets.S2.up", "8 ft")
    assert not pieces(turned.closeout())["S2"].trimmed
    gable.changed(
        "deck.sheets.S2",
        "{id: S2, plane: GS, at: [8 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot, cut_from: S1}",
    )
    assert pieces(gable.closeout())["S2"].trimmed


def test_a_rotten_rafter_carries_no_edge(gable: Office) -> None:
    office = gable.write(gable.text + CUT)
    closeout = office.changed("roof.framing.lines", "[{plane: GS, first: 0 ft, unsound: [4 ft]}]").closeout()
    assert closeout.deck_plan
    assert closeout.deck_plan.planes[0].cut_outs[0].asked[0][0] == 2


@pytest.mark.parametrize(
    ("path", "value", "code", "place"),
    [
        ("deck.sheets.S2.at", "[7 ft, 0 ft]", "sheets-overlap", "deck.sheets.S2.at"),
        ("deck.sheets.S2.at", "[60 ft, 0 ft]", "sheet-outside-plane", "deck.sheets.S2.at"),
        (
            "deck.cut_outs.CO1.rot.at",
            "[39 ft 9 in, 0 ft]",
            "cut-out-outside-plane",
            "deck.cut_outs.CO1.rot.at",
        ),
    ],
)
def test_deck_off_its_plane_is_refused_at_its_line(
    gable: Office, path: str, value: str, code: str, place: str
) -> None:
    office = gable.write(gable.text + CUT).changed(path, value)
    line, column = office.place(place)
    assert ("job.yaml", code, line, column) in office.places()


def test_cut_outs_that_overlap_are_refused(gable: Office) -> None:
    second = CUT.split("cut_outs:\n")[1].replace("CO1", "CO2")
    office = gable.write(gable.text + CUT + second)
    assert {problem.code for problem in office.problems()} == {"cut-outs-overlap"}


@pytest.mark.parametrize(
    ("path", "value", "finding"),
    [
        ("roof.framing.spacing", "48 in", "framing-too-wide:PANEL"),
        ("deck.nail.size", "1-1/4 x 0.113", "nail-too-short:DECK"),
        ("roof.framing.species", "Southern Pin", "species-unknown:FRAMING"),
        ("roof.framing.lines", "[{plane: GS, at: [3 ft, 40 ft]}]", "sheet-without-bearing:S1"),
    ],
)
def test_what_does_not_carry_is_found(gable: Office, path: str, value: str, finding: str) -> None:
    assert finding not in gable.finding_ids()
    assert finding in gable.changed(path, value).finding_ids()


def test_a_panel_of_no_known_kind_is_refused_at_its_line(gable: Office) -> None:
    problem = next(iter(gable.changed("deck.panel.product", "plywod").problems()))
    assert (problem.code, problem.line, problem.column) == ("not-one-of", *gable.place("deck.panel.product"))
    assert (problem.values["accepted"], problem.values["nearest"]) == (
        "plywood, OSB, composite panel",
        "plywood",
    )


def test_a_damaged_truss_is_left_to_its_engineer(gable: Office) -> None:
    damaged = gable.changed("roof.framing.damage", "Top chord split.")
    assert "truss-damaged:FRAMING" not in damaged.finding_ids()
    assert "truss-damaged:FRAMING" in damaged.changed("roof.framing.kind", "trusses").finding_ids()


NEAR_EDGES = """
code: our-strips
title: Our own nailing near edges
edition: "2026"
whose: practice
source: arma-nails
rows:
  our-strips-spacing: {asks: deck.nail.near_edges_spacing, kind: at_most, value: 4, unit: in, locator: page 1, checked: seen}
  our-strips-width: {asks: deck.nail.near_edges_width, kind: at_least, value: 48, unit: in, locator: page 1, checked: seen}
"""


def test_rows_stand_closer_near_the_eave_where_a_rule_asks_it(gable: Office) -> None:
    gable.file("shared/codes/our-strips.yaml", NEAR_EDGES.lstrip())
    closeout = gable.added("basis: {code: irc-2021, authority: town, practices: [our-strips]}").closeout()
    # both sheets lie within 4 ft of the eave: 5 rows of 13 at 4 in
    assert (nails(closeout, "S1"), nails(closeout, "S2")) == (65, 65)


def test_away_from_every_edge_rows_stand_as_usual(gable: Office) -> None:
    gable.file("shared/codes/our-strips.yaml", NEAR_EDGES.lstrip())
    gable.changed("deck.sheets.S2.at", "[16 ft, 5 ft]")
    closeout = gable.added("basis: {code: irc-2021, authority: town, practices: [our-strips]}").closeout()
    # from 5 ft to 9 ft up a slope of 15 ft, and 16 ft from the rake: 5 rows of 9 at 6 in
    assert nails(closeout, "S2") == 45


def test_boards_take_their_nails_at_each_rafter(gable: Office) -> None:
    board = "{id: B1, plane: GN, where: eave, size: 1x6, width: 5-1/2 in, pieces: 6, length: 48 ft, nails_each_bearing: 2, why: rot}"
    closeout = gable.changed("deck.boards", f"[{board}]").closeout()
    # 48 ft over rafters 24 in apart: 24 spaces and one more bearing a board, two nails at each
    assert closeout.figures["board.B1.bearings"].value == 30
    assert closeout.figures["boards.nails"].value == 60


def test_panels_laid_tight_are_a_measure_too(gable: Office) -> None:
    """Panel makers' text: 1/8 in at edges and ends: seen."""
    gable.added("basis: {code: irc-2021, practices: [apa-panels], authority: town}")
    gable.changed("deck.gap", "0 in")
    result = gable.result("deck-panel-gap")
    assert (result.word, result.parts[0].answer.value) == ("differs", 0)
    assert gable.changed("deck.gap", "1/8 in").result("deck-panel-gap").word == "not_recorded"  # no photo


def test_a_gap_that_no_panel_has_is_refused(gable: Office) -> None:
    assert gable.changed("deck.gap", "2 ft").places() == [
        ("job.yaml", "out-of-range", *gable.place("deck.gap"))
    ]
