"""What is not documented, who says so, and the way between rows, photos, papers and numbers, on paper."""

import json
import re
from pathlib import Path

import pytest

from packet.review.expected import absent
from packet.text import load_words
from packet.workspace import Workspace
from tests.conftest import SMALLEST
from tests.paper.conftest import Paper, papers
from tests.support.office import ROOT, Office

LEAD = "Each line says what was asked and is not documented"


def listed(paper: Paper) -> str:
    """The sheet of what is not documented."""
    return paper.text[paper.text.index(LEAD) :].partition("Spacings are what the tape showed")[0]


def test_every_gap_of_the_copy_stands_on_its_sheet(outside: Paper) -> None:
    words = load_words(Workspace(ROOT).shared_folders())
    copy = json.loads(outside.data())
    missing = [r for r in copy["results"] if r["word"] == "not_recorded" and r["due"]]
    assert missing
    for result in missing:
        assert words["requirements"][result["requirement"]] in listed(outside)
    assert "In the contractor's words: the nails were driven and covered before a photo was taken" in listed(
        outside
    )
    assert "Valley lining The law here: International Residential Code, 2021," in listed(outside)


@pytest.mark.parametrize("status", ["under way", "closed"])
def test_parts_that_are_absent_are_named(tmp_path: Path, status: str) -> None:
    names = load_words(Workspace(ROOT).shared_folders())["record_parts"]
    office = Office(tmp_path / "office", SMALLEST).changed("job.status", status)
    record = office.closeout().record
    text = papers(office.root)["outside"].text
    for path in absent(record):
        name = names[path] if isinstance(names[path], str) else names[path]["self"]
        assert f"{name}: nothing was written down" in text, path
    assert "crew: nothing was written down" in text


def test_the_cover_begins_with_what_is_open_and_leads_to_every_gap(outside: Paper) -> None:
    cover = outside.pages[0]
    opened = cover.index("1 item is open Drip edge, spacing of nails")
    assert opened < cover.index("A brown ring on the dining-room ceiling")
    assert re.search(
        r"Everything that is not documented, with its reason: What is not documented, page \d+", cover
    )


def test_who_says_so_is_told_once_and_led_to_from_the_quantities(outside: Paper) -> None:
    assert outside.text.count("Five kinds of statements stand in this packet") == 1
    quantities = outside.text[outside.text.index("Measured values are those of the tape") :][:500]
    assert re.search(r"Who says so page \d+", quantities)
    assert "nobody measured that number" in outside.text


def test_a_row_says_who_took_its_photos_and_a_photo_names_its_rows(outside: Paper) -> None:
    rows = outside.text[outside.text.index("Row by row") : outside.text.index(LEAD)]
    assert "Asked by: inspector, adjuster" in rows
    assert "taken by Dov Marrick" in rows
    assert "6 in measured or counted" in rows
    log = outside.text[outside.text.index("Photos are whole and uncropped") :]
    assert "Evidence for: Deck nails, spacing at panel edges" in log


def test_a_paper_is_evidence_on_paper_too(tmp_path: Path) -> None:
    office = Office(tmp_path / "office", SMALLEST).changed("job.kind", "re-roof")
    office.added(
        "basis: {code: irc-2021, authority: Tern Point building office, permit: TP-1, permit_date: 2026-03-01}\n"
        "inspections: [{id: I1, on: 2026-03-30, what: final, by: town inspector, result: passed}]\n"
        "documents:\n"
        "  - {id: D71, kind: permit, title: Notice that the permit is closed, date: 2026-04-22,\n"
        "     party: town office, proves: [permit-closed], readers: [outside, office]}"
    )
    text = papers(office.root)["outside"].text
    row = text[text.index("Permit closed Asked by") :][:400]
    assert "recorded, with a paper or a photo" in row
    assert "Notice that the permit is closed paper, town office, April 22, 2026" in row
    assert "Notice that the permit is closed Evidence for: Permit closed" in text


def test_what_no_row_asks_for_is_on_paper_with_its_reason(tmp_path: Path) -> None:
    office = Office(tmp_path / "office", SMALLEST)
    office.added("undocumented: [{what: Two holes closed with plywood., why: The felt went on.}]")
    letters = papers(office.root)["outside"].letters
    assert "Twoholesclosedwithplywood.Inthecontractor'swords:Thefeltwenton." in letters.replace("’", "'")
