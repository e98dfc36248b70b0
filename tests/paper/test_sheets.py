"""What stands on the sheets of the demo job."""

import re

import pikepdf
import pytest

from tests.paper.conftest import Paper

#: Sheets of the packet, in order, as their heads read.
SHEETS = (
    "Scope of work",
    "Code basis",
    "Fastener schedule",
    "Quantities",
    "Photo log",
    "Inspections",
    "Warranty and care",
    "Sources and limits",
)


def test_every_page_is_a_signed_letter_sheet(outside: Paper) -> None:
    count = len(outside.pages)
    for number, page in enumerate(outside.pages, 1):
        assert re.search(rf"JOB.*26-041.*{number} of {count}\b", page), number
        assert "March 18, 2026" in page
        assert "Pike and Gannet Roofing" in page
    assert {tuple(map(float, page.mediabox)) for page in outside.pdf.pages} == {(0, 0, 612, 792)}
    assert 20 <= count <= 45


def test_the_cover_says_what_leaked_what_was_done_and_what_is_open(outside: Paper) -> None:
    cover = outside.pages[0]
    assert "18 Heron Lane: the leak at the dormer valley is closed" in cover
    assert "COPY FOR THE HOMEOWNER" in cover
    assert "A brown ring on the dining-room ceiling" in cover
    assert "Attic and ceiling stayed dry" in cover
    assert "1 item is open Drip edge, spacing of nails: not recorded" in cover
    assert "Roof plan Drawn from measurements, not a survey." in cover


def test_the_contents_name_every_sheet_with_its_page(outside: Paper) -> None:
    contents = next(page for page in outside.pages if "Contents" in page)
    for name in SHEETS:
        begins = next(at for at, page in enumerate(outside.pages, 1) if f"INSPECTOR {name} " in page)
        assert re.search(rf"{name}[ .]*{begins}\b", contents), (name, begins)


def test_every_photo_stands_there_once_with_its_caption(outside: Paper, office: Paper) -> None:
    for paper, count in ((outside, 32), (office, 33)):
        shown = [image.objgen for page in range(len(paper.pages)) for image in paper.images(page)]
        assert len(shown) == len(set(shown)) == count
    log = outside.text[outside.text.index("Photos are whole and uncropped") :]
    for number in range(1, 34):
        captioned = re.findall(rf"P{number:02}, March \d+, 2026, \d+:\d\d \(UTC−04:00\)", log)
        assert len(captioned) == (0 if number == 33 else 1), number
    stages = [log.index(f" {name} ") for name in ("Before the work", "Stripped", "Dried in", "Covering")]
    assert stages == sorted(stages)


def test_a_photo_keeps_its_whole_shape(outside: Paper) -> None:
    images = [image for page in range(len(outside.pages)) for image in outside.images(page)]
    sizes = {(int(image.Width), int(image.Height)) for image in images}
    assert sizes == {(900, 675), (675, 900)}


def test_a_value_leads_to_its_working_by_number(outside: Paper) -> None:
    noted = re.search(r"Area worked on 102\.6 sq ft ?\[(\d+)\]", outside.text)
    assert noted
    workings = outside.text[outside.text.index("Every computed number of this packet, once") :]
    assert re.search(rf"\b{noted[1]} work\.area 102\.6 sq ft part 1 \+ part 2 36\.0", workings)


def test_links_lead_to_places_inside(outside: Paper) -> None:
    links = [
        note for page in outside.pdf.pages for note in page.get("/Annots", ()) if note.Subtype == "/Link"
    ]
    assert len(links) > 200
    for link in links:
        action = link.get("/A", pikepdf.Dictionary())
        assert "/URI" not in action
        assert "/Dest" in link or action.get("/S") == "/GoTo"
        assert str(link.get("/Contents", "")) != "" or "/StructParent" in link


def test_the_drawing_is_of_lines_and_letters(outside: Paper) -> None:
    assert "dormer roof" in outside.pages[0]
    assert not outside.images(0)


@pytest.mark.parametrize("private", ["843-555-0107", "asprey@example.org", "Asprey", "3,940.00", "4,612.00"])
def test_what_is_the_offices_alone_is_in_its_copy_only(demo_papers: dict[str, Paper], private: str) -> None:
    plain = re.sub(r"\W", "", private)
    for name in ("outside", "roof-card"):
        assert plain not in re.sub(r"\W", "", demo_papers[name].text)
        assert private.encode() not in demo_papers[name].written
    assert private in demo_papers["office"].text
    assert private.encode() in demo_papers["office"].written


def test_the_file_is_small(outside: Paper, card: Paper) -> None:
    assert len(outside.content) < 15_000_000 * 31 / 60
    assert len(card.content) < 200_000


def test_the_roof_card_is_one_page_with_what_the_next_roofer_asks(card: Paper) -> None:
    assert len(card.pages) == 1
    for said in (
        "18 Heron Lane",
        "laminated, wet slate",
        "L-27F-0318",
        "1 1/2 in, shank 0.12 in; 6 in each shingle",
        "No. 30 felt, ASTM D226 Type II",
        "Dov Marrick, Tam Oduya",
        "March 16, 2026",
        "26-0388, Town of Pellam Reach",
        "until March 18, 2029",
        "limited, see the maker's paper",
        "843-555-0142",
        "kept by the contractor under job 26-041",
    ):
        assert said in card.text, said
