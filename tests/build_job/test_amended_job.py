"""A job under a local amendment: which rule governs, and whose amendment it is, on the page and on paper."""

import re
from html import unescape
from pathlib import Path

import pytest

from packet.closeout.redact import redact
from packet.site.pages import make_pages
from packet.text import load_words
from tests.cli.conftest import Run
from tests.cli.conftest import run as run
from tests.paper.conftest import papers
from tests.support.office import Office

WHO = "Town of Pellam Reach, building office"
AMENDMENT = f"""\
code: pellam-2026
title: Pellam Reach building ordinance
edition: "2026"
whose: law
amends: irc-2021
rows:
  pellam-2026-field:
    asks: deck.nail.field_spacing
    kind: at_most
    value: 8
    unit: in
    when: {{wind_ultimate_mph: {{at_most: 140}}}}
    locator: Section 3
    authority: {WHO}
    checked: seen
drops:
  irc-2021-deck-nail: {{locator: Section 9, authority: "{WHO}"}}
"""
BY = f"Superseded: Pellam Reach building ordinance, 2026, Section 3, {WHO}"


@pytest.fixture
def amended(job_office: Office) -> Office:
    """The demo job under the ordinance, its nails 7 in apart in the field."""
    job_office.file("shared/codes/pellam-2026.yaml", AMENDMENT)
    return job_office.changed("basis.code", "pellam-2026").changed("deck.field_spacing", "7 in")


def test_the_looser_rule_governs_by_its_authority(amended: Office) -> None:
    (part,) = amended.result("deck-nail-field-spacing").parts
    assert (part.governing, part.word) == ("pellam-2026-field", "not_recorded"), "no photo shows it here"
    assert {limit.row: limit.decides for limit in part.limits if limit.whose == "law"} == {
        "pellam-2026-field": True,
        "irc-2021-deck-field": False,
    }
    amended.changed("basis.code", "irc-2021")
    assert amended.result("deck-nail-field-spacing").word == "differs"


def test_what_the_edition_asks_beside_it_still_governs(amended: Office) -> None:
    (part,) = amended.result("deck-nail-edge-spacing").parts
    assert part.governing == "irc-2021-deck-edge"


def test_a_dropped_row_decides_no_longer(amended: Office) -> None:
    (part,) = amended.changed("deck.nail.size", "2 x 0.113").result("deck-nail").parts
    assert (part.governing, part.word) == ("", "not_recorded")
    assert amended.changed("basis.code", "irc-2021").result("deck-nail").word == "differs"


def test_the_page_says_whose_amendment_it_is(amended: Office) -> None:
    words = load_words(amended.workspace.shared_folders())
    copy = redact(amended.closeout(), "outside")
    pages = {page.name: page.body for page in make_pages(copy, amended.workspace.template_folders(), words)}
    body = unescape(pages["code-basis"])
    row = body.partition('<tr id="r-deck-nail-field-spacing"')[2].partition("</tr>")[0]
    text = " ".join(re.sub(r"<[^>]+>", " ", row).split())
    assert "at most 8 in The law here: Pellam Reach building ordinance" in text
    assert f"Amendment of: {WHO}" in text
    assert BY in text


def test_paper_says_whose_amendment_it_is(amended: Office) -> None:
    text = re.sub(r"\s+", " ", papers(amended.root)["outside"].text)
    assert f"Amendment of {WHO}" in text.replace("Amendment of: ", "Amendment of ")


def test_the_list_of_rules_says_whose_amendment_it_is(amended: Office, run: Run) -> None:
    lines = run(amended.root, "rules", "26-041", "-q").out.splitlines()
    at = next(n for n, line in enumerate(lines) if line.endswith("[pellam-2026-field]"))
    assert f"    Amendment of: {WHO}" in lines[at : at + 5]
    edition = next(n for n, line in enumerate(lines) if line.endswith("[irc-2021-deck-field]"))
    assert any("nothing, it is superseded: Pellam Reach" in line for line in lines[edition : edition + 5])


def test_an_amendment_that_loosens_in_silence_stops_the_job(amended: Office, tmp_path: Path) -> None:
    text = AMENDMENT.replace(f"    authority: {WHO}\n", "")
    path = amended.file("shared/codes/pellam-2026.yaml", text)
    assert [(p.code, p.file, p.line) for p in amended.problems()] == [("amendment-loosens", path, 10)]
