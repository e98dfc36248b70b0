"""The fastener schedule on paper says what the page says."""

from pathlib import Path

import pytest

from tests.figures.test_boards import GABLE as BOARDS
from tests.paper.conftest import papers
from tests.support.office import Office, demo_text


@pytest.fixture(scope="module")
def letters(tmp_path_factory: pytest.TempPathFactory) -> str:
    office = Office(tmp_path_factory.mktemp("schedule") / "office", demo_text())
    for path, typed in (
        ("job.kind", "section"),
        ("roof.soffit", "open"),
        ("basis.roof_zone", "zone-2"),
        ("deck.heads", "overdriven"),
        ("deck.field_spacing", "12 in"),
        ("drip_edge.fasteners", "1-1/4 in x 0.120 in roofing nails"),
        ("details.C1.fasteners", "one nail in the upper corner of each piece"),
    ):
        office.changed(path, typed)
    office.added(
        "ways_out: [{requirement: deck-nail-field-spacing, kind: accepted, text: Twelve let stand.}]"
    )
    return papers(office.root)["outside"].letters


@pytest.mark.parametrize(
    "part",
    [
        "atmost6inThelawhere:InternationalResidentialCode,2021,TableR602.3(1),items31and32",
        "Acceptedbytheofficial:Twelveletstand.",
        "heads:driventoodeep",
        "Naildriventoodeep:Upto1/16indeep:itcounts.",
        "1-1/4inx0.120inroofingnails",
        "onenailintheuppercornerofeachpiece",
        "Thesoffitisopen.",
        "Pointsoftheshinglenailshowbelowthedeckby:21/32in",
        "bythedrawingbesidethenailingtable:zone2",
        "8′×4′15/32inplywood",
    ],
)
def test_it_stands_on_paper(letters: str, part: str) -> None:
    assert part in letters


def test_boards_show_their_nails_on_paper(tmp_path: Path) -> None:
    letters = papers(Office(tmp_path / "office", BOARDS).root)["outside"].letters
    assert "2nailsineachboardateachrafter60nails" in letters
