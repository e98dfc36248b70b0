"""Old paint and a test for asbestos, as a reader finds them on the pages and on paper."""

from pathlib import Path

import pytest

from tests.build_job.test_deck_pages import page
from tests.paper.conftest import papers
from tests.support.office import Office

PAINT = "{outside: 12 sq ft, taken_out: windows or painted parts}"


@pytest.fixture
def old_house(small_office: Office) -> Office:
    small_office.changed("property.paint_disturbed", PAINT)
    return small_office.changed("property.asbestos_test", "none found")


def test_they_stand_on_the_scope(old_house: Office) -> None:
    scope = page(old_house, "scope")
    assert "Painted surface disturbed outside 12 sq ft Inside, the most in one room none" in scope
    assert "Replaced or torn out windows or painted parts" in scope
    assert "Tested for asbestos none was found in what was sampled" in scope


def test_a_record_without_them_says_nothing_of_them(small_office: Office) -> None:
    assert "Old paint" not in page(small_office, "scope")


def test_they_stand_on_paper(old_house: Office, tmp_path: Path) -> None:
    text = " ".join(papers(old_house.root)["outside"].text.split())
    assert "Painted surface disturbed outside" in text
    assert "12 sq ft" in text
    assert "windows or painted parts" in text
    assert "none was found in what was sampled" in text
