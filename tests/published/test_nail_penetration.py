"""How far published nails reach through published panels."""

from fractions import Fraction

import pytest

from packet.calc.deck.reach import least_deck_nail, penetration, ringed_penetration
from packet.reference import Library, NotInTable
from packet.workspace import packaged

F = Fraction


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.mark.parametrize(
    ("nail", "least", "panel"),
    [("6d common", "5/4", "5/16"), ("8d common", "11/8", "3/8"), ("10d common", "3/2", "15/32")],
)
def test_least_penetration_where_the_deck_is_a_diaphragm(
    library: Library, nail: str, least: str, panel: str
) -> None:
    """APA E30V (2011), Table 38, p. 69, and for 8d and 10d TT-045B (October 2007): seen."""
    row = library.table("deck_nail_penetration").lookup(nail=nail)
    assert (row.number("least_in"), row.number("panel_in")) == (F(least), F(panel))
    assert row.source.checked == "seen"
    length = library.table("nail_sizes").lookup(nail=nail).number("length_in")
    assert length > least_deck_nail(row.number("panel_in"), row.number("least_in"))


def test_for_a_ring_shank_nail_no_least_penetration_was_read(library: Library) -> None:
    """The same table speaks of common nails alone: nothing is decided for another."""
    with pytest.raises(NotInTable):
        library.table("deck_nail_penetration").lookup(nail="RSRS-01")


def test_an_8d_common_nail_reaches_just_far_enough_through_the_thickest_panel(library: Library) -> None:
    """E30V Table 38 and the nail list: 2-1/2 in is exactly 1-1/8 in and 1-3/8 in."""
    row = library.table("deck_nail_penetration").lookup(nail="8d common")
    assert least_deck_nail(F(9, 8), row.number("least_in")) == F(5, 2)
    assert penetration(F(5, 2), F(5, 4)) < row.number("least_in")


@pytest.mark.parametrize(
    ("nail", "panel", "reach"),
    [
        # IRC 2021, Table R602.3(1), items 31 and 32 (restated): 8d common or RSRS-01, panels 3/8 to 1 in
        ("8d common", "3/8", "17/8"),
        ("8d common", "1", "3/2"),
        ("RSRS-01", "1", "11/8"),
        # voluntary high-wind home standard, 2025 (restated): RSRS-01 through 7/16 in
        ("RSRS-01", "7/16", "31/16"),
        # Florida, thick decks: RSRS-04 through 19/32 in
        ("RSRS-04", "19/32", "77/32"),
    ],
)
def test_published_nails_through_published_panels(
    library: Library, nail: str, panel: str, reach: str
) -> None:
    """Penetration is the length less everything above the framing (course slides on the NDS): seen."""
    length = library.table("nail_sizes").lookup(nail=nail).number("length_in")
    assert penetration(length, F(panel)) == F(reach)


def test_of_rsrs_01_the_rings_reach_in_whole_up_to_a_panel_of_seven_eighths(library: Library) -> None:
    """Size notes, rings 1-1/2 in, and course slides, ringed length only: seen."""
    ring = library.table("ring_lengths").lookup(nail="RSRS-01").number("ring_in")
    assert ringed_penetration(F(19, 8), F(7, 8), ring) == F(3, 2)
    assert ringed_penetration(F(19, 8), F(29, 32), ring) == F(47, 32)


def test_the_smallest_nail_of_the_coastal_guide_is_an_8d_by_length(library: Library) -> None:
    """FEMA 499, sheet 18 (2005): 8d x 2-1/2 in: seen; a gun nail called 8d is shorter."""
    least = library.row("fema-coastal-nail-length").value
    lengths = library.table("nail_sizes")
    assert least == F(5, 2) == lengths.lookup(nail="8d common").number("length_in")
    assert lengths.lookup(nail="8d gun nail 0.131").number("length_in") < least


def test_a_1_in_board_over_a_panel_wants_more_than_an_8d(library: Library) -> None:
    """APA P300C: panels of 5/16 in or more nailed through 1 in boards (3/4 in dressed) to the rafters: seen."""
    panel = (
        library.table("deck_distances").lookup(what="panel over spaced boards at least").number("distance_in")
    )
    least = library.table("deck_nail_penetration").lookup(nail="8d common").number("least_in")
    assert panel == F(5, 16)
    assert least_deck_nail(panel + F(3, 4), least) == F(39, 16) < F(5, 2)
    assert least_deck_nail(F(15, 32) + F(3, 4), least) == F(83, 32) > F(5, 2)
