"""An old deck nailed again: what asks for it, the way the old fastener selects, nails counted by hand."""

from collections.abc import Callable

import pytest

from packet.closeout.model import Closeout
from packet.figures.renailing import Renailing
from tests.support.office import Office
from tests.support.yamltext import with_value

WHOLE, BETWEEN = "whole deck nailed again", "ring shank nails added between"

#: A gable 40 ft by 24 ft at 9:12: two planes of 40 ft by 15 ft, 600 sq ft each, on 24 in framing.
GABLE = """
job: {number: 26-041, kind: re-roof, status: closed}
property: {street: 4 Reed Lane, town: Tern Point, state: Florida, built: 1988, time_zone: America/New_York}
cause: {what: Worn out.}
roof:
  eave_height: 9 ft
  forms:
    - {id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 40 ft, depth: 24 ft, pitch: 9:12, planes: {front: {id: GS}, back: {id: GN}}}
  framing: {member: 2x8 rafter, spacing: 24 in oc}
  old: {deck: 1/2 in plywood, deck_nail: 2-1/2 x 0.131, deck_fastener: smooth nails}
deck:
  renailed:
    planes: [GN]
    way: ring shank nails added between
    nail: {size: 2-3/8 x 0.113, shank: ring}
    old_edge_spacing: 6 in
    old_field_spacing: 12 in
    sheet_length: 8 ft
    sheet_width: 4 ft
    edge_spacing: 6 in
    field_spacing: 6 in
"""
#: The same house with an old deck of boards 6 in center to center, nailed again at each rafter.
BOARDS = (
    GABLE[: GABLE.index("    way:")]
    + """    nail: {size: 2-1/2 x 0.131, shank: smooth}
    boards: {apart: 6 in, nails_each_bearing: 2}
"""
)
FLORIDA = "basis: {code: fbc-existing-2017, authority: town, wind_speed: 100 mph, wind_kind: ultimate}"
OLDER_SHEET = "basis: {code: irc-2018, programs: [ibhs-high-wind-older], authority: town}"


@pytest.fixture
def gable(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "gable", GABLE)


def again(office: Office) -> Renailing:
    found = office.closeout().renailing
    assert found
    return found


def value(closeout: Closeout, id: str) -> float:
    return float(closeout.figures[id].value)


def test_nails_go_between_the_old_ones(gable: Office) -> None:
    closeout = gable.closeout()
    # ends stand at 6 in already; three supports between, each with four spaces of 12 in: 12 a sheet
    assert value(closeout, "renailed.each") == 12
    # 600 sq ft are 18.75 sheets
    assert value(closeout, "renailed.GN.nails") == value(closeout, "renailed.nails") == 225
    assert again(gable).planes == (("GN", "renailed.GN.nails"),)


def test_where_old_nails_do_not_count_the_sheet_is_nailed_as_a_new_one(gable: Office) -> None:
    closeout = gable.changed("deck.renailed.way", WHOLE).closeout()
    # five rows of nine a sheet: 18.75 sheets of 45 are 843.75
    assert (value(closeout, "renailed.each"), value(closeout, "renailed.nails")) == (45, 844)


@pytest.mark.parametrize(
    ("path", "typed", "each", "nails"),
    [
        ("roof.framing.spacing", "16 in oc", 20, 375),  # five supports between
        ("deck.renailed.field_spacing", "4 in", 24, 450),  # each space of 12 in takes two
        ("deck.renailed.old_edge_spacing", "8 in", 24, 450),  # six spaces on each end take one
        ("deck.renailed.old_field_spacing", "6 in", 0, 0),
        ("deck.renailed.sheet_length", "6 ft", 8, 200),  # two supports between; 25 sheets of 24 sq ft
        ("deck.renailed.sheet_width", "2 ft", 6, 225),  # two spaces a row; 37.5 sheets of 16 sq ft
    ],
)
def test_each_measure_counts(gable: Office, path: str, typed: str, each: int, nails: int) -> None:
    closeout = gable.changed(path, typed).closeout()
    assert (value(closeout, "renailed.each"), value(closeout, "renailed.nails")) == (each, nails)


def test_every_plane_has_its_own_nails(gable: Office) -> None:
    closeout = gable.changed("deck.renailed.planes", "[GN, GS]").closeout()
    assert (value(closeout, "renailed.GS.nails"), value(closeout, "renailed.nails")) == (225, 450)
    assert value(closeout, "renailed.area") == 1200


def test_new_sheets_and_boards_are_no_old_deck(gable: Office) -> None:
    sheet = "[{id: S1, plane: GN, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}]"
    closeout = gable.changed("deck.sheets", sheet).closeout()
    # 600 less 32 are 17.75 sheets of 12
    assert (value(closeout, "renailed.area"), value(closeout, "renailed.nails")) == (568, 213)
    boards = "[{id: B1, plane: GN, where: eave, size: 1x6, width: 6 in, pieces: 8, length: 64 ft, why: rot}]"
    closeout = gable.changed("deck.boards", boards).closeout()
    # 64 ft of 6 in more: 536 sq ft are 16.75 sheets
    assert (value(closeout, "renailed.area"), value(closeout, "renailed.nails")) == (536, 201)


def test_of_a_plane_worked_in_part_only_that_part_was_bare(gable: Office) -> None:
    part = "{areas: [{id: A1, plane: GN, outline: [[0 ft, 0 ft], [16 ft, 0 ft], [16 ft, 10 ft], [0 ft, 10 ft]]}]}"
    closeout = gable.added(f"covering: {part}").closeout()
    # 160 sq ft are five sheets
    assert (value(closeout, "renailed.area"), value(closeout, "renailed.nails")) == (160, 60)
    whole = gable.changed("covering.areas", "[{id: A1, plane: GN}]").closeout()
    assert value(whole, "renailed.nails") == 225


def test_the_old_sheets_are_as_large_as_the_new_panel_where_nothing_else_is_recorded(gable: Office) -> None:
    text = GABLE.replace("    sheet_length: 8 ft\n    sheet_width: 4 ft\n", "")
    panel = "{product: plywood, thickness: 15/32 in, width: 4 ft, length: 8 ft}"
    closeout = gable.write(with_value(text, "deck.panel", panel)).closeout()
    assert value(closeout, "renailed.nails") == 225
    working = closeout.figures["renailed.each"].working
    assert working
    assert {"deck.panel.length", "deck.panel.width"} < {term.origin.ref for term in working.terms}


Change = Callable[[str], str]


def without(*lines: str) -> Change:
    def change(text: str) -> str:
        for line in lines:
            assert text.count(line) == 1
            text = text.replace(line, "")
        return text

    return change


@pytest.mark.parametrize(
    ("change", "missing"),
    [
        (without("    old_edge_spacing: 6 in\n"), ("old_spacing",)),
        (without("    old_field_spacing: 12 in\n"), ("old_spacing",)),
        (without("    sheet_width: 4 ft\n"), ("old_panel",)),
        (without("  framing: {member: 2x8 rafter, spacing: 24 in oc}\n"), ("framing",)),
        (without("    field_spacing: 6 in\n"), ("spacing",)),
        (without("    way: ring shank nails added between\n"), ("renailed_way",)),
    ],
)
def test_what_is_not_recorded_is_never_guessed(
    gable: Office, change: Change, missing: tuple[str, ...]
) -> None:
    closeout = gable.write(change(GABLE)).closeout()
    assert closeout.renailing
    assert (closeout.renailing.nails, closeout.renailing.missing) == ("", missing)
    assert not [id for id in closeout.figures if id.startswith("renailed.")]


def test_a_whole_nailing_needs_no_old_spacing(gable: Office) -> None:
    text = without("    old_edge_spacing: 6 in\n", "    old_field_spacing: 12 in\n")(GABLE)
    assert again(gable.write(text.replace(BETWEEN, WHOLE))).missing == ()


def test_smooth_8d_nails_count_at_110_mph_or_less(gable: Office) -> None:
    """Florida, an inspector's answer of 2018, seen (secondary): ring shank added so that no gap exceeds 6 in."""
    text = without("    way: ring shank nails added between\n")(GABLE)
    found = again(gable.write(text).added(FLORIDA))
    assert (found.way, found.by_rule) == (BETWEEN, True)
    assert [limit.row for limit in found.branches] == ["fbc-existing-2017-renail-way-8d-weak-wind"]
    # the rule's 6 in govern, not the 4 in measured
    tighter = gable.changed("deck.renailed.field_spacing", "4 in").closeout()
    assert value(tighter, "renailed.nails") == 225
    assert again(gable).field == "rule.fbc-existing-2017-renail-field"


@pytest.mark.parametrize(
    ("old", "row"),
    [
        ("{deck_fastener: staples}", "fbc-existing-2017-renail-way-staples"),
        ("{deck_fastener: smooth nails, deck_nail: 2 x 0.113}", "fbc-existing-2017-renail-way-6d"),
    ],
)
def test_staples_and_6d_ask_the_whole_deck_whatever_was_done(gable: Office, old: str, row: str) -> None:
    """Same answer: a complete new nailing. The count is the rule's; that less was done the result says."""
    office = gable.added(FLORIDA).changed("roof.old", old).added("covering: {areas: [{id: A1, plane: GN}]}")
    found = again(office)
    assert (found.way, found.by_rule) == (WHOLE, True)
    assert [limit.row for limit in found.branches if limit.decides] == [row]
    assert value(office.closeout(), "renailed.nails") == 844
    assert office.result("renailed-way").word == "differs"


def test_a_deck_nailed_again_answers_for_its_way_before_anything_covers_it(gable: Office) -> None:
    """Staples ask the whole deck: seen (secondary). The record says nails between, and has no covering yet."""
    gable.added(FLORIDA).changed("roof.old", "{deck_fastener: staples}")
    assert "covering" not in gable.text
    assert gable.result("renailed-way").word == "differs"
    assert gable.changed("deck.renailed.way", WHOLE).result("renailed-way").word != "differs"


def test_a_way_that_is_more_than_the_rule_asks_is_counted_as_done(gable: Office) -> None:
    found = again(gable.added(FLORIDA).changed("deck.renailed.way", WHOLE))
    assert (found.way, found.by_rule) == (WHOLE, False)


def test_a_branch_that_was_not_read_decides_nothing(gable: Office) -> None:
    """FBC Existing Building 2017, Table 706.7.1.2: what ring shank nails ask was not read."""
    office = gable.added(FLORIDA).changed("roof.old.deck_fastener", "ring shank nails")
    found = again(office)
    assert (found.way, found.by_rule) == (BETWEEN, False)
    assert not any(limit.decides for limit in found.branches)


def test_the_older_high_wind_sheet_asks_the_whole_deck_over_nails_nobody_knows(gable: Office) -> None:
    """New-roof requirement sheet, condition 1: seen. 8d ring shank, 6 in everywhere: 844 nails."""
    office = gable.added(OLDER_SHEET).changed("roof.old", "{deck_fastener: not known}")
    assert (again(office).way, again(office).by_rule) == (WHOLE, True)
    assert value(office.closeout(), "renailed.nails") == 844


@pytest.mark.parametrize(
    ("path", "typed", "word", "facts"),
    [
        ("property.built", "1988", "asked", ("kind_of_work", "house_built")),
        ("property.built", "2003", "cannot_tell", ("house_permit_date",)),
        ("property.permit_date", "2002-02-28", "asked", ("kind_of_work", "house_built")),
        ("job.kind", "recover", "not_asked", ("kind_of_work",)),
        ("job.kind", "patch", "not_asked", ("kind_of_work",)),
    ],
)
def test_what_settles_whether_it_is_asked(
    gable: Office, path: str, typed: str, word: str, facts: tuple[str, ...]
) -> None:
    """Florida asks it of houses permitted before March 2002 whose covering is replaced: seen (secondary)."""
    (trigger,) = again(gable.added(FLORIDA).changed(path, typed)).triggers
    assert (trigger.word, trigger.facts, trigger.decides) == (word, facts, True)


def test_a_house_of_the_later_era_is_not_asked_and_both_its_facts_say_why(gable: Office) -> None:
    gable.added(FLORIDA).changed("property.built", "2003").changed("property.permit_date", "2002-11-04")
    (trigger,) = again(gable).triggers
    assert (trigger.word, trigger.facts) == ("not_asked", ("house_built", "house_permit_date"))


def test_a_record_that_no_rule_speaks_of_and_nothing_nailed_again_has_no_such_part(
    job_office: Office,
) -> None:
    assert job_office.closeout().renailing is None


def test_a_rule_alone_is_told_before_anything_was_nailed(gable: Office) -> None:
    start = GABLE.index("\ndeck:")
    found = again(gable.write(GABLE[:start]).added(FLORIDA))
    assert (found.triggers[0].word, found.way, found.planes) == ("asked", "", ())
    assert found.branches[0].decides


def test_the_order_holds_the_nails_of_the_old_deck(gable: Office) -> None:
    goods = "bought: [{id: N, item: ring shank nails, use: deck nails, unit: box, pieces_each: 200}]"
    (line,) = [line for line in gable.added(goods).closeout().takeoff if line.use == "deck nails"]
    closeout = gable.closeout()
    assert (value(closeout, line.net), value(closeout, line.to_buy)) == (225, 2)
    assert line.planes == ("GN",)


@pytest.mark.parametrize("typed", ["6", "8d", "0 in"])
def test_an_old_spacing_without_a_unit_or_of_nothing_is_refused_at_its_line(
    gable: Office, typed: str
) -> None:
    gable.changed("deck.renailed.old_edge_spacing", typed)
    (problem,) = gable.problems()
    assert (problem.line, problem.column) == gable.place("deck.renailed.old_edge_spacing")


@pytest.fixture
def boards(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "boards", BOARDS)


def test_old_boards_take_their_nails_at_each_rafter(boards: Office) -> None:
    closeout = boards.closeout()
    # 15 ft of slope are 30 courses, over 20 spaces of 24 in: 600 bearings
    assert value(closeout, "renailed.nails") == 1200
    assert "renailed.each" not in closeout.figures
    assert (
        value(boards.changed("deck.renailed.boards.nails_each_bearing", "3").closeout(), "renailed.nails")
        == 1800
    )


def test_old_boards_without_framing_are_not_counted(boards: Office) -> None:
    boards.replaced("  framing: {member: 2x8 rafter, spacing: 24 in oc}\n", "")
    assert again(boards).missing == ("framing",)
    assert again(boards).nails == ""


def test_old_boards_answer_at_each_rafter_and_not_by_panel_edges(boards: Office) -> None:
    assert boards.result("renailed-spacing").reason == "boards_renailed"
    assert boards.result("deck-board-nails").parts[0].answer.value == 2


def test_the_least_of_new_and_old_boards_answers(boards: Office) -> None:
    boards.write(
        boards.text
        + "  boards: [{id: B1, plane: GN, where: eave, size: 1x6, width: 6 in, pieces: 1, length: 8 ft, nails_each_bearing: 3, why: rot}]\n"
    )
    assert boards.result("deck-board-nails").parts[0].answer.value == 2
    assert (
        boards.changed("deck.boards.0.nails_each_bearing", "1")
        .result("deck-board-nails")
        .parts[0]
        .answer.value
        == 1
    )


@pytest.mark.parametrize("name", ["edge_spacing", "field_spacing", "old_edge_spacing", "sheet_length"])
def test_a_measure_of_panels_beside_boards_is_refused_at_its_line(boards: Office, name: str) -> None:
    boards.write(boards.text + f"    {name}: 6 in\n")
    assert [(code, line) for _, code, line, _ in boards.places()] == [
        ("boards-nailed-as-panels", len(boards.text.splitlines()))
    ]
