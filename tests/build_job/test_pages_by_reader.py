"""A page for each reader: questions in the reader's order, answers that link, and no table of another page."""

import re
from pathlib import Path

import pytest

from packet.closeout.assemble import assemble
from packet.closeout.model import Closeout
from packet.closeout.redact import redact
from packet.site.pages import make_pages
from packet.text import load_words
from packet.workspace import Workspace
from tests.support.office import ROOT, Office

READER_PAGES = ("homeowner", "adjuster", "inspector")


def pages(closeout: Closeout) -> dict[str, str]:
    words = load_words(Workspace(ROOT).shared_folders())
    made = make_pages(redact(closeout, "outside"), Workspace(ROOT).template_folders(), words)
    return {page.name: page.body for page in made}


@pytest.fixture(scope="module")
def demo_pages(demo: Closeout) -> dict[str, str]:
    return pages(demo)


def asked(body: str) -> list[str]:
    return re.findall(r'<h2 id="([a-z-]+)">', body)


def test_each_reader_finds_the_questions_in_its_own_order(demo_pages: dict[str, str]) -> None:
    assert asked(demo_pages["homeowner"]) == [
        "fixed",
        "wrong",
        "done",
        "left",
        "promised",
        "whom",
        "after",
        "next",
    ]
    assert asked(demo_pages["adjuster"]) == [
        "cause", "fixed", "condition", "how-much", "new-deck", "old-deck", "changed", "asked", "needed", "shown", "open", "papers",
    ]  # fmt: skip
    assert asked(demo_pages["inspector"]) == [
        "permit", "needed", "nails", "held", "differs", "unread", "visits", "days", "open",
    ]  # fmt: skip


@pytest.mark.parametrize("name", READER_PAGES)
def test_no_reader_page_repeats_a_table(demo_pages: dict[str, str], name: str) -> None:
    assert "<table" not in demo_pages[name]


def test_every_answer_that_goes_on_elsewhere_links_to_it(demo_pages: dict[str, str]) -> None:
    for page in ("warranty-and-care", "scope", "photos"):
        assert f'href="{page}.html' in demo_pages["homeowner"]
    for page in ("quantities", "code-basis", "photos", "scope", "inspections"):
        assert f'href="{page}.html' in demo_pages["adjuster"]
    for page in ("fasteners", "code-basis", "inspections", "sources"):
        assert f'href="{page}.html' in demo_pages["inspector"]


def test_the_front_page_leads_to_each_reader(demo_pages: dict[str, str]) -> None:
    for name in READER_PAGES:
        assert f'href="{name}.html"' in demo_pages["index"]


def test_is_it_fixed_comes_first_and_says_so_when_it_is_not(
    demo_pages: dict[str, str], demo: Closeout
) -> None:
    first = demo_pages["homeowner"].split("<h2")[1]
    assert "Not everything could be shown" in first
    assert "Hose on the valley" in re.sub(r"&#(\d+);", lambda m: chr(int(m[1])), first)


@pytest.mark.parametrize("kind", ["patch", "section", "re-roof", "recover"])
@pytest.mark.parametrize("status", ["planned", "under way", "closed"])
def test_the_least_record_of_any_kind_and_status_makes_every_page(
    tmp_path: Path, kind: str, status: str
) -> None:
    cause = "" if status == "planned" else "cause: {what: A nail.}\n"
    record = (
        f"job: {{number: 26-041, kind: {kind}, status: {status}}}\n"
        "property: {street: 1 Reed Row, town: Pellam Reach, state: South Carolina, time_zone: America/New_York}\n"
        f"{cause}"
    )
    made = pages(Office(tmp_path, record).closeout())
    gap = 'class="gap"'
    asks_tests = status == "closed" and kind in ("patch", "section")
    assert (gap in made["homeowner"].split("<h2")[1]) is asks_tests
    if status == "planned":
        assert not any(
            gap in made[name] for name in ("index", "homeowner", "scope", "quantities", "inspections")
        )


def test_the_adjuster_sees_each_new_sheet_its_photo_and_what_held_the_old_deck() -> None:
    made = pages(assemble(Workspace(ROOT), ROOT / "jobs" / "26-052")[0])["adjuster"]
    assert asked(made)[4:6] == ["new-deck", "old-deck"]
    sheets, old = made.split("<h2")[5:7]
    assert re.findall(r"<dt>(S\d)</dt>.*?photos\.html#(P\d\d)", sheets, re.DOTALL) == [
        ("S1", "P16"), ("S2", "P16"), ("S3", "P24"),
    ]  # fmt: skip
    assert "smooth nails" in old
    assert "whole deck nailed again" in old
    assert "Asked here" in old
    assert "code-basis.html#r-renailed-way" in old


def test_the_adjuster_sees_what_showed_the_cure_and_that_papers_came_in_time() -> None:
    made = pages(assemble(Workspace(ROOT), ROOT / "jobs" / "26-052")[0])["adjuster"]
    answers = dict(zip(asked(made), made.split("<h2")[1:], strict=True))
    assert "Dry everywhere after two hours of rain" in answers["fixed"]
    assert "photos.html#stage-done" in answers["fixed"]
    assert "Permit before the work: days in order" in answers["needed"]


def test_the_adjuster_sees_which_rules_were_not_read_well_enough_to_decide() -> None:
    """Else nothing that differs, and nothing that lacks proof, would read as if all had met its rule."""
    made = pages(assemble(Workspace(ROOT), ROOT / "jobs" / "26-052")[0])
    rows = dict(zip(asked(made["adjuster"]), made["adjuster"].split("<h2")[1:], strict=True))["asked"]
    of_inspector = dict(zip(asked(made["inspector"]), made["inspector"].split("<h2")[1:], strict=True))[
        "unread"
    ]
    unread = re.findall(r"code-basis\.html#r-[\w-]+", of_inspector)
    assert "code-basis.html#r-renailed-way" in unread
    assert [row for row in re.findall(r"code-basis\.html#r-[\w-]+", rows) if row in unread] == unread


def test_an_old_deck_left_alone_says_what_holds_it_and_that_nothing_asks_more(
    demo_pages: dict[str, str],
) -> None:
    old = dict(zip(asked(demo_pages["adjuster"]), demo_pages["adjuster"].split("<h2")[1:], strict=True))[
        "old-deck"
    ]
    assert "No rule this job rests on asks it" in old
    assert "not recorded" not in old
    assert "scope.html#old-roof" in old
