"""A page may be named for some readers: other copies are numbered without it, and hold no file of it."""

from pathlib import Path
from typing import Any

import pytest

from packet.build import build
from packet.closeout.redact import redact
from packet.problems import Refused
from packet.site.pages import files_beside, listed_pages, make_pages
from packet.text import Words, load_words
from packet.workspace import Workspace, packaged
from tests.support.office import ROOT, Office
from tests.support.planned import GOODS, PLANNED


@pytest.fixture
def planned(tmp_path: Path) -> Office:
    return Office(tmp_path / "office", PLANNED + GOODS)


@pytest.fixture(scope="module")
def words() -> Words:
    return load_words(Workspace(ROOT).shared_folders())


def names(copy: dict[str, Any], office: Office, words: Words) -> list[str]:
    return [page.name for page in make_pages(copy, office.workspace.template_folders(), words)]


def test_the_order_list_stands_in_the_offices_copy_alone(planned: Office, words: Words) -> None:
    closeout = planned.closeout()
    outside, office = (names(redact(closeout, reader), planned, words) for reader in ("outside", "office"))
    assert "order-list" not in outside
    assert [name for name in office if name != "order-list"] == outside
    assert office[office.index("order-list") - 1] == "quantities"


def test_pages_are_numbered_within_their_copy(planned: Office, words: Words) -> None:
    for reader, count in (("outside", 14), ("office", 15)):
        made = make_pages(
            redact(planned.closeout(), reader),  # type: ignore[arg-type]
            planned.workspace.template_folders(),
            words,
        )
        for number, page in enumerate(made, 1):
            assert f"<dd>{number} of {count}</dd>" in page.body


def test_the_file_is_made_of_the_same_copy_as_its_page(planned: Office) -> None:
    folder = build(planned.workspace, planned.job).folder
    assert not (folder / "outside" / "order-list.csv").exists()
    assert not (folder / "outside" / "order-list.html").exists()
    page = (folder / "office" / "order-list.html").read_text(encoding="utf-8")
    assert 'href="order-list.csv"' in page
    lines = (folder / "office" / "order-list.csv").read_text(encoding="utf-8-sig").splitlines()
    assert any(line.startswith("Shingles,laminated shingle,,35,bundles,36,1125,sq ft") for line in lines)


def test_an_offices_own_list_may_leave_the_page_out_and_its_file_goes_too(
    planned: Office, words: Words
) -> None:
    own = "pages: [{name: index, title: pages.index}, {name: scope, title: pages.scope}]\n"
    planned.file("templates/pages/pages.yaml", own)
    copy = redact(planned.closeout(), "office")
    assert files_beside(copy, planned.workspace.template_folders(), words) == {}
    assert names(copy, planned, words) == ["index", "scope"]


def test_a_reader_that_is_none_is_refused_at_its_line(planned: Office) -> None:
    own = "pages:\n  - {name: index, title: pages.index}\n  - {name: scope, title: pages.scope, readers: [town]}\n"
    planned.file("templates/pages/pages.yaml", own)
    with pytest.raises(Refused) as refused:
        listed_pages(planned.workspace.template_folders())
    (problem,) = refused.value.problems
    assert (problem.file.name, problem.line, problem.found) == ("pages.yaml", 3, "town")


def test_a_page_without_readers_is_everyones() -> None:
    listed = listed_pages([packaged("templates")])
    assert {page.name: page.readers for page in listed if page.name != "order-list"} == {
        page.name: ("outside", "office") for page in listed if page.name != "order-list"
    }
