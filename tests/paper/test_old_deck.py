"""An old deck nailed again, and panels over boards, on paper."""

from pathlib import Path

from tests.figures.test_boards import GABLE as BOARDS
from tests.figures.test_boards import PANELS
from tests.figures.test_renailing import BOARDS as OLD_BOARDS
from tests.figures.test_renailing import FLORIDA, GABLE
from tests.paper.conftest import papers
from tests.support.office import Office


def test_trigger_branch_and_count_stand_on_paper(tmp_path: Path) -> None:
    goods = "bought: [{id: N, item: coil, use: deck nails, unit: box, pieces_each: 200, nails_a_pound: 150}]"
    found = papers(Office(tmp_path / "office", GABLE).added(FLORIDA).added(goods).root)
    letters = found["outside"].letters
    for part in (
        "Askedhere,bykindofwork:newroofcovering;yearthehousewasbuilt:1988.",
        "olddeckheldbysmooth8dnails,110mphorless",
        "Oldnailsapart6inatpaneledges,12inonsupportsbetween",
        "GN:225nails",
        "Nailsononeoldsheet12nails",
        "nailsadded:225nails",
        "Olddecknailedagain600.0sqft",
        "byweight:11/2lb",
    ):
        assert part in letters, part
    assert "byweight:11/2lb" in found["office"].letters


def test_a_missing_old_spacing_is_said_on_paper(tmp_path: Path) -> None:
    text = GABLE.replace("    old_field_spacing: 12 in\n", "")
    letters = papers(Office(tmp_path / "office", text).root)["outside"].letters
    assert "notrecorded:thespacingoftheoldnails,whichcounthere,isnotrecorded" in letters


def test_panels_over_boards_stand_on_paper(tmp_path: Path) -> None:
    letters = papers(Office(tmp_path / "office", BOARDS.rstrip() + PANELS).root)["outside"].letters
    for part in (
        "spacedonpurpose,gap5in,81/2in[6]centertocenter",
        "Nailintheframing19/32in",
        "throughtheoldboardsintotheframing",
        "Nailsgothroughpanelandboardintotheframing.",
    ):
        assert part in letters, part


def test_old_boards_nailed_again_stand_on_paper(tmp_path: Path) -> None:
    letters = papers(Office(tmp_path / "office", OLD_BOARDS).root)["outside"].letters
    for part in (
        "Boards,centertocenter6inCountedby2nailsineachboardateachrafter",
        "2nailsineachboardateachrafternailsadded:1,200nails",
    ):
        assert part in letters, part
