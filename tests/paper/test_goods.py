"""The takeoff on paper, and the order list, which only the office's copy holds."""

from pathlib import Path

import pytest

from tests.paper.conftest import Paper, papers
from tests.support.office import Office
from tests.support.planned import GOODS, PLANNED


@pytest.fixture(scope="module")
def planned(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Paper]:
    """A roof that is planned, with goods to order."""
    root = tmp_path_factory.mktemp("planned") / "office"
    return papers(Office(root, PLANNED + GOODS).root)


def test_a_line_of_the_takeoff_is_whole_in_both_copies(planned: dict[str, Paper]) -> None:
    for reader in ("outside", "office"):
        text = planned[reader].text
        assert "What the roof takes" in text
        assert "Valleys, and short courses." in text
        assert "the office's own figure" in text.replace("\u2019", "'")
        for part in ("1,000.0sqft", "withallowance:1,125.0sqft", "35bundles"):
            assert part in planned[reader].letters


def test_the_order_list_is_a_sheet_of_the_offices_alone(planned: dict[str, Paper]) -> None:
    assert "Order list" not in planned["outside"].text
    office = planned["office"]
    first = office.page_of_sheet("Order list")
    assert office.page_of_sheet("Quantities") <= first <= office.page_of_sheet("Photo log")
    assert any("What this roof takes, rounded up to whole units" in page for page in office.pages)


def test_what_a_line_lacks_is_said_on_paper(tmp_path: Path) -> None:
    record = PLANNED + GOODS.replace(", cover_each: 32.8 sq ft", "")
    found = papers(Office(tmp_path / "office", record).root)
    for reader in ("outside", "office"):
        assert "not computed: the wrapper's cover is not recorded" in found[reader].text.replace(
            "\u2019", "'"
        )


def test_an_order_that_falls_short_is_marked_and_a_sum_names_its_parts(tmp_path: Path) -> None:
    record = PLANNED.replace("edges: [", "edges: [{id: E2, kind: rake, sides: [A.left]}, ")
    record = record.replace("covering: {", "covering: {starter_along: [eave, rake], ")
    found = papers(Office(tmp_path / "office", record + GOODS.replace("planned: 36", "planned: 33")).root)
    assert "order2more" in found["office"].letters
    assert "NEEDWITHALLOWANCE" in found["office"].letters
    assert "order2more" not in found["outside"].letters
    assert "lesswasorderedthantobuy" in found["outside"].letters
    assert "part1(RakeE2)=25ft" in found["office"].letters
    assert "part2(EaveE1)=40ft" in found["office"].letters


def test_parts_of_a_bundle_are_written_as_a_crew_says_them(outside: Paper) -> None:
    assert "41/2bundles" in outside.letters
    assert "4.50" not in outside.letters


def test_laid_is_held_against_the_need(outside: Paper) -> None:
    """26-041: 4-1/2 bundles of 32.8 sq ft on 102.6 sq ft."""
    assert "Laid, held against the need" in outside.text
    assert "147.6sqft" in outside.letters
