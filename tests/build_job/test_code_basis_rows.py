"""Every row of the code basis: under its stage, with who asks, whose rule, what shows it, and the way back to it."""

import html
import re
from collections.abc import Callable
from functools import cache
from typing import Any

import pytest

from packet.closeout.model import Closeout
from packet.closeout.redact import redact
from packet.readers import Reader
from packet.review.answers import listed
from packet.review.catalogue import CATALOGUE
from packet.site.filters import make_filters
from packet.site.pages import make_pages
from packet.site.templating import make_environment
from packet.text import load_words
from packet.workspace import Workspace
from tests.support.office import ROOT, Office

Shoot = Callable[..., dict[str, Any]]

RESULTS_TYP = ROOT / "templates" / "paper" / "results.typ"


def bodies(closeout: Closeout, reader: Reader = "outside") -> dict[str, str]:
    """Return the pages of a copy by name, entities resolved."""
    words = load_words(Workspace(ROOT).shared_folders())
    made = make_pages(redact(closeout, reader), Workspace(ROOT).template_folders(), words)
    return {page.name: html.unescape(page.body) for page in made}


def text_of(markup: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", markup).split())


def row(body: str, anchor: str) -> str:
    """Return the markup of one row."""
    found = re.search(rf'<tr id="{anchor}".*?</tr>', body, re.DOTALL)
    assert found, anchor
    return found[0]


def anchor_of(result: dict[str, Any]) -> str:
    return "-".join(filter(None, ("r", result["requirement"], result["subject"])))


@pytest.fixture(scope="module")
def demo_pages(demo: Closeout) -> dict[str, str]:
    return bodies(demo)


def test_every_row_stands_once_under_the_stage_that_shows_it(
    demo: Closeout, demo_pages: dict[str, str]
) -> None:
    asked = [r for r in redact(demo, "outside")["results"] if r["word"] != "does_not_apply"]
    found: list[tuple[str, str]] = []
    for part in re.split(r'<tr class="group">', demo_pages["code-basis"])[1:]:
        stage = re.search(r'id="rows-([\w-]+)"', part)
        assert stage
        found += [(stage[1], anchor) for anchor in re.findall(r'<tr id="(r-[^"]+)"', part)]
    anchors = {anchor_of(result): result["shown_at"] for result in asked}
    assert len(asked) > 10
    assert len(found) == len(anchors)
    assert {anchor: stage for stage, anchor in found} == anchors
    order = list(demo.stages)
    assert [order.index(stage) for stage, _ in found] == sorted(order.index(stage) for stage, _ in found)


def test_a_row_says_what_is_required_whose_rule_its_source_and_who_asks(demo_pages: dict[str, str]) -> None:
    text = text_of(row(demo_pages["code-basis"], "r-deck-nail-edge-spacing"))
    for said in (
        "Asked by: inspector, adjuster",
        "at most 6 in",
        "The law here: International Residential Code, 2021, Table R602.3(1), items 31 and 32",
        "6 in measured or counted",
        "meets the rule",
        "taken by",
    ):
        assert said in text, said


def test_what_no_rule_limits_says_whose_wish_it_is(demo_pages: dict[str, str]) -> None:
    text = text_of(row(demo_pages["code-basis"], "r-damage-as-found"))
    assert "photographed Our own practice; no rule here sets a limit what its photos show" in text


def test_the_fastener_schedule_leads_to_the_rows_and_repeats_none(demo_pages: dict[str, str]) -> None:
    assert 'href="code-basis.html#r-deck-nail-edge-spacing"' in demo_pages["fasteners"]
    assert 'id="r-' not in demo_pages["fasteners"]


@cache
def macros() -> Any:
    words = load_words(Workspace(ROOT).shared_folders())
    environment = make_environment(Workspace(ROOT).template_folders(), words, filters=make_filters(words))
    return environment.get_template("macros/results.j2").module


def of_typst(name: str) -> set[str]:
    found = re.search(rf"#let {name} = \((.*?)\)", RESULTS_TYP.read_text(encoding="utf-8"), re.DOTALL)
    assert found
    return set(re.findall(r'"([^"]+)"', found[1]))


def test_what_a_picture_or_a_paper_answers_is_what_the_catalogue_says() -> None:
    papers = {item.id for item in CATALOGUE if item.papers}
    assert papers == {"permit-closed", "paid", "releases"}
    assert set(macros().by_paper) == of_typst("by-paper") == papers
    entries = {"deck.sheets", "details"}  # these stand in the record, each with its measures
    pictures = {q.asks for item in CATALOGUE for q in item.questions if q.answer is listed} - entries
    assert set(macros().pictured) == of_typst("pictured") == pictures


def test_photo_and_row_lead_to_each_other(demo: Closeout, demo_pages: dict[str, str]) -> None:
    copy = redact(demo, "outside")
    pairs = 0
    for result in copy["results"]:
        anchor = anchor_of(result)
        for photo in result["evidence"]:
            assert f'href="photos.html#{photo}"' in row(demo_pages["code-basis"], anchor)
            figure = re.search(
                rf'<figure class="photo" id="{photo}">.*?</figure>', demo_pages["photos"], re.DOTALL
            )
            assert figure
            assert f'href="code-basis.html#{anchor}"' in figure[0]
            pairs += 1
    assert pairs > 15


def test_a_number_leads_back_to_its_rows(demo_pages: dict[str, str]) -> None:
    typed = row(demo_pages["sources"], r"w-deck\.edge_spacing")
    assert 'Used in: <a href="code-basis.html#r-deck-nail-edge-spacing">' in typed
    assert "Used in" not in row(demo_pages["sources"], r"w-work\.area")


PAPER = """documents:
  - {id: D71, kind: permit, title: Notice that the permit is closed, date: 2026-04-22, party: town office,
     proves: [permit-closed], readers: [%s]}
inspections: [{id: I1, on: 2026-03-30, what: final, by: town inspector, result: passed}]
"""


def with_paper(office: Office, readers: str) -> Office:
    kept = re.sub(r"(?ms)^(documents|inspections|permissions):.*?(?=^\w)", "", office.text)
    return office.write(kept).added(PAPER % readers)


def test_a_paper_stands_as_evidence_and_its_row_leads_back(job_office: Office) -> None:
    pages = bodies(with_paper(job_office, "outside, office").closeout())
    text = row(pages["code-basis"], "r-permit-closed")
    assert '<a href="inspections.html#D71">Notice that the permit is closed</a>' in text
    assert "paper, town office, April 22, 2026" in text_of(text)
    assert "recorded, with a paper" in text_of(text)
    assert "none" not in text_of(text)
    assert 'Evidence for: <a href="code-basis.html#r-permit-closed">' in row(pages["inspections"], "D71")


def test_a_withheld_paper_is_counted_and_not_named(job_office: Office) -> None:
    pages = bodies(with_paper(job_office, "office").closeout())
    text = text_of(row(pages["code-basis"], "r-permit-closed"))
    assert "1 in the office's copy" in text
    assert not any("Notice that the permit is closed" in body for body in pages.values())


WAYS = {
    "corrected": ("{kind: corrected, on: 2026-03-16, photo: P60, text: Nails added between.}", "Corrected, March 16, 2026: Nails added between. P60"),
    "accepted": ("{kind: accepted, on: 2026-03-18, by: building office note 26-11, text: Left as it is.}", "Accepted by the official, March 18, 2026, building office note 26-11: Left as it is."),
    "explained": ("{kind: explained, text: The member is split.}", "Explained: The member is split."),
}  # fmt: skip


@pytest.mark.parametrize("kind", WAYS)
def test_a_way_out_stands_beside_differs_and_never_instead(
    job_office: Office, shoot: Shoot, kind: str
) -> None:
    way, said = WAYS[kind]
    job_office.log({**shoot("P60", "deck", "deck-nail"), "readers": ["outside", "office"]})
    job_office.changed("deck.edge_spacing", "9 in")
    pages = bodies(job_office.closeout())
    assert "Deck nails, spacing at panel edges differs from the rule" in text_of(front_open(pages["index"]))

    job_office.added("ways_out: [" + way.replace("{", "{requirement: deck-nail-edge-spacing, ") + "]")
    pages = bodies(job_office.closeout())
    text = text_of(row(pages["code-basis"], "r-deck-nail-edge-spacing"))
    assert "differs from the rule " + said in text
    assert "Deck nails, spacing at panel edges" not in text_of(front_open(pages["index"]))
    assert "Deck nails, spacing at panel edges " + said in text_of(pages["inspector"])
    if kind == "corrected":
        photo = re.search(r'id="P60">.*?</figure>', pages["photos"], re.DOTALL)
        assert photo
        assert 'Shows how it was settled: <a href="code-basis.html#r-deck-nail-edge-spacing">' in photo[0]


def front_open(body: str) -> str:
    found = re.search(r'<section class="open-items.*?</section>', body, re.DOTALL)
    assert found
    return found[0]


def test_the_front_page_begins_with_what_is_open(demo: Closeout, demo_pages: dict[str, str]) -> None:
    index = demo_pages["index"]
    before = index[: index.index('<section class="open-items')]
    title = "18 Heron Lane: the leak at the dormer valley is closed"
    assert text_of(re.sub(r'<p class="label">.*?</p>', "", before)) == f"# {title}"
    assert index.index('<section class="open-items') < index.index('class="lead"')
    open_results = [result for result in demo.results if result.open]
    assert open_results
    items = re.findall(r"<li>.*?</li>", front_open(index), re.DOTALL)
    assert len(items) == len(open_results) + sum(not finding.explanation for finding in demo.findings)
    for item in items:
        assert re.search(r'<span>\S.*<a href="(code-basis|quantities)\.html#[\w-]+"', item), item
    assert 'href="not-documented.html"' in index


def test_the_filter_offers_what_there_is_and_waits_for_its_script(
    demo: Closeout, demo_pages: dict[str, str]
) -> None:
    body = demo_pages["code-basis"]
    bar = re.search(r'<div class="row-filter" hidden.*?</div>', body, re.DOTALL)
    assert bar
    offered = re.findall(r'<option value="([\w-]+)" id="([^"]+)">', bar[0])
    rows = re.findall(r'data-result="([\w_]+)"( data-open="open")? data-asked-by="([^"]+)"', body)
    assert len(rows) == body.count('<tr id="r-')
    results = {result for result, _, _ in rows} | {"open" for _, is_open, _ in rows if is_open}
    readers = {reader for _, _, asked in rows for reader in asked.split()}
    assert {value for value, id in offered if id == f"result={value}"} == results
    assert {value for value, id in offered if id == f"asked-by={value}"} == readers
    assert {"open", "meets", "not_verified", "not_recorded"} <= results
    assert {"inspector", "adjuster", "homeowner"} <= readers


@pytest.mark.parametrize("name", ["code-basis", "quantities"])
def test_who_says_so_is_told_where_numbers_stand(
    demo: Closeout, demo_pages: dict[str, str], name: str
) -> None:
    body = demo_pages[name]
    text = text_of(body[body.index('id="who-says-so"') :])
    for kind in (
        "Seen by a person",
        "Measured or counted by a person",
        "Computed by the program",
        "Said by a person",
        "Said by a paper",
    ):
        assert kind in text
    for photo in demo.photos:
        if "outside" in photo.readers and photo.taken_by:
            assert photo.taken_by in text


def test_how_an_answer_is_known_stands_beside_it(job_office: Office) -> None:
    body = bodies(job_office.closeout())["code-basis"]
    assert "measured or counted" in text_of(row(body, "r-valley-lining"))
    wind = text_of(row(body, "r-shingle-wind-class"))
    assert "ASTM D7158 Class H as written down" in wind
    assert "computed" not in wind
