"""An old deck nailed again, boards, and panels over boards, as a reader finds them on the pages."""

from pathlib import Path

import pytest

from tests.build_job.test_deck_pages import page
from tests.figures.test_boards import GABLE as BOARDS
from tests.figures.test_boards import PANELS
from tests.figures.test_renailing import BOARDS as OLD_BOARDS
from tests.figures.test_renailing import FLORIDA, GABLE
from tests.support.office import Office


@pytest.fixture
def gable(tmp_path: Path) -> Office:
    return Office(tmp_path / "gable", GABLE)


@pytest.fixture
def over(tmp_path: Path) -> Office:
    return Office(tmp_path / "over", BOARDS.rstrip() + PANELS)


def test_what_asks_for_it_stands_with_the_facts_that_settle_it(gable: Office) -> None:
    scope = page(gable.added(FLORIDA), "scope")
    asked = "Asked here, by kind of work: new roof covering; year the house was built: 1988."
    assert f"Old deck nailed again Asked or not {asked} The law here, as restated in:" in scope
    assert (
        "What held the old deck smooth nails 2 1/2 in × 0.131 in What that selects one of ring shank" in scope
    )
    assert "706.7.1, old deck held by smooth 8d nails, 110 mph or less (from a restatement" in scope


@pytest.mark.parametrize(
    ("path", "typed", "says"),
    [
        ("job.kind", "recover", "Not asked here, by kind of work: new covering over the old."),
        (
            "property.built",
            "2003",
            "It can't be told here, without date of the permit the house was built under.",
        ),
    ],
)
def test_why_it_is_not_asked_or_can_not_be_told(gable: Office, path: str, typed: str, says: str) -> None:
    assert says in page(gable.added(FLORIDA).changed(path, typed), "scope")


def test_a_house_permitted_later_shows_its_days(gable: Office) -> None:
    gable.added(FLORIDA).changed("property.built", "2003").changed("property.permit_date", "2002-11-04")
    assert (
        "Not asked here, by year the house was built: 2003; date of the permit the house was built under:"
        " November 4, 2002." in page(gable, "scope")
    )


def test_the_count_stands_on_scope_schedule_and_quantities(gable: Office) -> None:
    scope = page(gable, "scope")
    assert "Old nails apart 6 in at panel edges, 12 in on supports between" in scope
    assert (
        "Planes GN: 225 nails Nails on one old sheet 12 nails Nails added to the old deck, by the schedule 225 nails"
        in scope
    )
    assert "6 in on supports between nails added: 225 nails" in page(gable, "fasteners")
    quantities = page(gable, "quantities")
    assert (
        "Old deck nailed again 600.0 sq ft Nails added to the old deck, by the schedule 225 nails"
        in quantities
    )
    assert "Deck nails 225 nails" in quantities


def test_a_count_that_lacks_the_old_spacing_says_so(gable: Office) -> None:
    gable.replaced("    old_edge_spacing: 6 in\n", "")
    lacks = "not recorded: the spacing of the old nails, which count here, is not recorded"
    assert f"by the schedule {lacks}" in page(gable, "scope")
    assert f"nails added: {lacks}" in page(gable, "fasteners")
    assert "Old nails apart not recorded at panel edges" in page(gable, "scope")


def test_a_rule_on_it_is_told_before_anything_was_nailed(gable: Office) -> None:
    text = GABLE[: GABLE.index("\ndeck:")].replace("status: closed", "status: planned")
    scope = page(gable.write(text).added(FLORIDA), "scope")
    assert "Old deck nailed again Asked or not Asked here, by kind of work: new roof covering" in scope
    assert "Counted as" not in scope


def test_a_job_without_any_of_it_has_no_such_part(job_office: Office) -> None:
    assert "Old deck nailed again" not in page(job_office, "scope")


def test_spaced_boards_are_told_from_boards_with_gaps(over: Office) -> None:
    spaced = "3 1/2 in wide, 3/4 in thick; spaced on purpose, gap 5 in, 8 1/2 in center to center"
    assert f"B1 GN, eave 1x4 pine {spaced}" in page(over, "scope")
    over.changed("deck.boards.B1.laid", "side by side").changed("deck.boards.B1.gap", "1/8 in")
    assert "1x4 pine 3 1/2 in wide, 3/4 in thick; side by side; widest gap 1/8 in 48′" in page(over, "scope")


def test_boards_show_their_nails_at_each_rafter_and_by_the_schedule(over: Office) -> None:
    """48 ft on 24 in framing are 24 spaces; 6 boards end once more each: 30 bearings of 2 nails."""
    boards = BOARDS.replace("deck:", "deck:\n  gap: 1/8 in")
    assert "in boards: 6 2 nails in each board at each rafter 60 nails rot" in page(
        over.write(boards), "scope"
    )


def test_spaced_boards_without_their_gap_show_it_as_missing(over: Office) -> None:
    over.replaced("laid: spaced, gap: 5 in, nails", "laid: spaced, nails")
    assert "spaced on purpose, gap not recorded 48′" in page(over, "scope")


def test_panels_over_boards_say_what_the_nail_goes_through(over: Office) -> None:
    scope = page(over, "scope")
    assert (
        "Panels over old boards Old boards below 3 1/2 in wide, 3/4 in thick; spaced on purpose, gap 5 in,"
        " 8 1/2 in center to center Nail in the framing 1 9/32 in Nails go through panel and board" in scope
    )
    assert (
        "inland, up to 100 mph, Exposure B (panel association, P300C, 2006; read in the text itself)" in scope
    )
    assert "ring shank, through the old boards into the framing" in page(over, "fasteners")
    assert "Over old boards: nail through panel and board into the framing." in page(over, "nailing-card")
    assert "Sobre tablas viejas: clave por el tablero" in page(over, "nailing-card")


def test_over_boards_side_by_side_no_published_text_stands(over: Office) -> None:
    over.changed("deck.over_boards.laid", "side by side")
    scope = page(over, "scope")
    assert "common practice, no published source" in scope
    assert "P300C" not in scope


def test_panels_on_rafters_say_nothing_of_boards(job_office: Office) -> None:
    for name in ("scope", "fasteners", "nailing-card"):
        assert "old boards" not in page(job_office, name)


def test_nails_by_the_box_show_their_weight(gable: Office) -> None:
    gable.added(
        "bought: [{id: N, item: coil, use: deck nails, unit: box, pieces_each: 200, nails_a_pound: 150}]"
    )
    assert "Deck nails coil 225 nails by weight: 1 1/2 lb none recorded 2 boxes" in page(gable, "quantities")


def test_old_boards_nailed_again_stand_on_scope_schedule_and_card(tmp_path: Path) -> None:
    office = Office(tmp_path / "boards", OLD_BOARDS)
    scope = page(office, "scope")
    assert "Boards, center to center 6 in Counted by 2 nails in each board at each rafter" in scope
    assert "Counted as" not in scope
    assert "2 nails in each board at each rafter nails added: 1,200 nails" in page(office, "fasteners")
    card = page(office, "nailing-card")
    assert "Nails at each rafter 2" in card
    assert "Clavos en cada viga 2" in card
