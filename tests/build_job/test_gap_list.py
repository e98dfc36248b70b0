"""The list of what is not documented: each thing with its reason, nothing left out, the same on paper."""

import re
from collections.abc import Callable
from typing import Any

import pytest

from packet.closeout.model import Closeout
from packet.review.expected import absent
from packet.text import load_words
from packet.workspace import Workspace
from tests.build_job.test_code_basis_rows import bodies, text_of
from tests.support.office import ROOT, Office
from tests.support.pictures import picture

Shoot = Callable[..., dict[str, Any]]


def part(body: str, id: str) -> str:
    """Return the markup under a head, up to the next one."""
    found = re.search(rf'<h2 id="{id}">.*?(?=<h2 |<dl class="title-block")', body, re.DOTALL)
    return found[0] if found else ""


def gaps(office: Office) -> str:
    return bodies(office.closeout())["not-documented"]


def test_every_row_without_record_or_proof_is_listed_with_its_reason(demo: Closeout) -> None:
    body = part(bodies(demo)["not-documented"], "unshown")
    missing = [result for result in demo.results if result.word == "not_recorded" and result.due]
    assert missing
    assert body.count("<tr>") == len(missing) + 1
    for result in missing:
        assert f'href="code-basis.html#r-{result.requirement}' in body
    assert (
        "Drip edge, spacing of nails no photo shows it from before it was covered In the contractor's words:"
        " the nails were driven and covered before a photo was taken 10 in measured or counted"
        in text_of(body)
    )


def test_what_no_row_asks_for_stands_there_with_its_reason(job_office: Office) -> None:
    assert part(gaps(job_office), "besides") == ""
    job_office.added("undocumented: [{what: Two holes closed with plywood., why: The felt went on.}]")
    assert "Two holes closed with plywood. In the contractor's words: The felt went on." in text_of(
        part(gaps(job_office), "besides")
    )


def test_a_row_that_is_proven_is_not_listed(job_office: Office, shoot: Shoot) -> None:
    line = "Nails in each shingle no photo shows it from before it was covered"
    assert line in text_of(part(gaps(job_office), "unshown"))
    job_office.log(
        {**shoot("P60", "covering", "shingle-nails", taken="2026:03:18 09:00:00"), "readers": ["outside"]}
    )
    assert "Nails in each shingle" not in text_of(part(gaps(job_office), "unshown"))


def test_a_photo_of_another_time_is_shown_beside_the_gap(job_office: Office, shoot: Shoot) -> None:
    photo = shoot("P60", "done", "shingle-nails", taken="2026:03:18 18:00:00")
    job_office.log({**photo, "readers": ["outside", "office"]})
    text = text_of(part(gaps(job_office), "unshown"))
    assert "Nails in each shingle its photos were taken at another stage or after it was covered" in text
    assert "Photos of another time, or of none, which prove nothing here P60" in text


@pytest.mark.parametrize("kind", ["patch", "section", "re-roof", "recover"])
@pytest.mark.parametrize("status", ["under way", "closed"])
def test_every_part_that_was_asked_for_and_is_absent_is_named(
    small_office: Office, kind: str, status: str
) -> None:
    small_office.changed("job.kind", kind).changed("job.status", status)
    closeout = small_office.closeout()
    body = bodies(closeout)["not-documented"]
    names = load_words(Workspace(ROOT).shared_folders())["record_parts"]
    missing = absent(closeout.record)
    assert len(missing) >= 3
    lines = [text_of(line) for line in re.findall(r"<li>.*?</li>", part(body, "missing-parts"), re.DOTALL)]
    for path in missing:
        name = names[path] if isinstance(names[path], str) else names[path]["self"]
        assert f"{name}: nothing was written down" in lines
    dates = 4 if status == "closed" else 0
    assert len(lines) == len(missing) + dates


def test_a_part_that_is_there_is_not_named(small_office: Office) -> None:
    assert "crew: nothing was written down" in text_of(gaps(small_office))
    small_office.added("people: {crew: [Tam Oduya]}")
    assert "crew: nothing was written down" not in text_of(gaps(small_office))


def test_single_facts_of_the_code_basis_and_the_days_are_named(job_office: Office) -> None:
    lines = text_of(part(gaps(job_office), "missing-parts"))
    assert "wind exposure" not in lines
    job_office.write(re.sub(r"(?m)^  (exposure|finished): .*\n", "", job_office.text))
    lines = text_of(part(gaps(job_office), "missing-parts"))
    assert "wind exposure : nothing was written down" in lines
    assert "day it was finished : nothing was written down" in lines


def test_a_photo_without_a_time_is_named(small_office: Office) -> None:
    picture(small_office.job / "photos" / "P01.jpg", taken="")
    entry = {"id": "P01", "file": "photos/P01.jpg", "stage": "done", "shows": "Done.", "readers": ["outside"]}
    small_office.log(entry)
    line = text_of(part(gaps(small_office), "without-time"))
    assert line.endswith("P01 , Done. neither the camera nor anybody says when it was taken")
    small_office.log({**entry, "taken_at": "2026-03-18T16:00:00"})
    assert "without-time" not in gaps(small_office)


def test_facts_that_do_not_agree_are_listed_until_somebody_explains(job_office: Office) -> None:
    job_office.write(re.sub(r"(?m)^explained:.*\n", "", job_office.text))
    job_office.added("detached: [{id: DT1, what: gutter, by: our crew, state: not yet}]")
    body = part(gaps(job_office), "unexplained")
    assert "Taken off for the work and not set again, DT1" in text_of(body)
    assert 'href="quantities.html#f-not-reset-DT1"' in body
    job_office.added('explained: {"not-reset:DT1": The owner wants a new one.}')
    assert "not-reset-DT1" not in gaps(job_office)


def test_a_rule_that_was_not_read_stands_apart_with_its_source(demo: Closeout) -> None:
    body = bodies(demo)["not-documented"]
    apart = text_of(part(body, "unread"))
    assert "Valley lining The law here: International Residential Code, 2021," in apart
    assert "(not read again for this packet)" in apart
    assert "Valley lining" not in text_of(part(body, "unshown"))


def test_no_word_of_the_contractor_is_lost(job_office: Office) -> None:
    job_office.changed("not_recorded", '{"drip-edge-fastening": forgot, "house-number": no access}')
    body = gaps(job_office)
    listed = text_of(part(body, "unshown"))
    assert "In the contractor's words: forgot" in listed
    assert "no access" in listed or "The right house: no access" in text_of(part(body, "said"))


def test_what_is_not_due_is_no_gap(job_office: Office) -> None:
    job_office.changed("job.status", "under way")
    job_office.write(re.sub(r"(?m)^  (dried_in|finished): .*\n", "", job_office.text))
    body = gaps(job_office)
    assert "Nails in each shingle" in text_of(part(body, "not-due"))
    assert "Nails in each shingle" not in text_of(part(body, "unshown"))


def test_an_inspection_that_cannot_be_told_says_what_is_missing(small_office: Office) -> None:
    body = part(gaps(small_office), "untold")
    untold = [duty for duty in small_office.closeout().duties if duty.word == "cannot_tell"]
    assert untold
    assert body.count("<li>") == len(untold)
    assert f'href="inspections.html#need-{untold[0].id}"' in body


def test_every_page_of_a_reader_leads_to_the_list(demo: Closeout) -> None:
    pages = bodies(demo)
    for name in ("index", "code-basis"):
        assert 'href="not-documented.html"' in pages[name]
