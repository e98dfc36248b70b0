"""Old framing measured member by member: the widest space under a sheet is what its panel has to span."""

import pytest

from tests.build_job.test_deck_pages import page
from tests.figures.test_deck import GABLE
from tests.support.office import Office

#: Under S1, from 0 to 8 ft: 24, 33, 15 and 24 in; under S2, from 8 to 16 ft: 24 in each.
BY_MEMBER = "[{plane: GS, at: [0 ft, 2 ft, 4 ft 9 in, 6 ft, 8 ft, 10 ft, 12 ft, 14 ft, 16 ft]}]"


@pytest.fixture
def old(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "old", GABLE).changed("roof.framing.lines", BY_MEMBER)


def test_each_sheet_has_the_widest_of_its_own_spaces(old: Office) -> None:
    figures = old.closeout().figures
    assert [figures[f"sheet.{id}.widest_space"].value for id in ("S1", "S2")] == [33, 24]


def test_regular_framing_has_no_space_of_its_own(tmp_path) -> None:  # type: ignore[no-untyped-def]
    assert not [
        id for id in Office(tmp_path / "new", GABLE).closeout().figures if id.endswith("widest_space")
    ]


def test_a_space_beyond_the_rating_is_found_though_the_usual_spacing_is_not(old: Office) -> None:
    """A 32/16 panel under S1 spans 33 in at one place; the usual spacing of the record is 24 in."""
    assert old.finding_ids() == {"space-too-wide:S1"}
    assert old.changed("deck.panel.span_rating", "40/20").finding_ids() == set()


def test_boards_below_carry_the_panel_between_members(old: Office) -> None:
    assert old.changed("deck.over_boards", "{laid: side by side, thickness: 3/4 in}").finding_ids() == set()


def test_the_widest_space_tells_whether_edges_want_support(old: Office) -> None:
    """15/32 in, 32/16: 28 in bare, 32 in held. 30 in wants support where 24 in does not."""
    edges = old.changed("roof.framing.lines", BY_MEMBER.replace("4 ft 9 in", "4 ft 6 in")).closeout()
    assert edges.deck_plan
    assert edges.deck_plan.edges
    assert (edges.deck_plan.edges.wanted, edges.deck_plan.edges.spacing) == (True, "sheet.S1.widest_space")
    text = page(edges, "scope")
    assert (
        "The widest space under a new sheet, measured member by member, is 30 in. Its long edges want" in text
    )


def test_where_some_sheets_lie_on_regular_framing_its_spacing_counts_too(old: Office) -> None:
    even = "[{plane: GS, at: [0 ft, 16 in, 32 in, 4 ft, 64 in, 80 in, 8 ft]}]"
    old.changed("roof.framing.lines", even).replaced(
        "{id: S2, plane: GS, at: [8 ft, 0 ft]", "{id: S2, plane: GN, at: [8 ft, 0 ft]"
    )
    plan = old.closeout().deck_plan
    assert plan
    assert plan.edges
    assert plan.edges.spacing == "roof.framing.spacing"


@pytest.mark.parametrize(("rating", "found"), [("20 oc", set()), ("24 o.c.", set()), ("thick", {"PANEL"})])
def test_a_floor_panels_stamp_can_be_read_and_a_word_can_not(
    old: Office, rating: str, found: set[str]
) -> None:
    unread = {f"span-rating-unread:{subject}" for subject in found}
    assert old.changed("deck.panel.span_rating", rating).finding_ids() == unread
