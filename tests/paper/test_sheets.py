"""What stands on the sheets of the demo job."""

import json
import re
from itertools import pairwise
from pathlib import Path

import pikepdf
import pytest

from tests.conftest import SMALLEST
from tests.paper.conftest import Paper, papers
from tests.support.office import Office

#: Sheets of the packet, in order, as their heads read.
SHEETS = (
    "Scope of work",
    "Code basis",
    "What is not documented",
    "Fastener schedule",
    "Quantities",
    "Photo log",
    "Inspections",
    "Warranty and care",
    "Sources and limits",
)

#: A millimetre [pt].
MM = 72 / 25.4


def test_every_page_is_a_signed_letter_sheet(outside: Paper) -> None:
    count = len(outside.pages)
    for number, page in enumerate(outside.pages, 1):
        assert re.search(rf"JOB.*26-041.*{number} of {count}\b", page), number
        assert "March 18, 2026" in page
        assert "Pike and Gannet Roofing" in page
        assert page.startswith("CLOSEOUT PACKET 26-041, REVISION 1, COPY FOR THE HOMEOWNER"), number
    assert {tuple(map(float, page.mediabox)) for page in outside.pdf.pages} == {(0, 0, 612, 792)}
    assert 20 <= count <= 45


def test_a_small_job_is_a_thin_packet(tmp_path: Path) -> None:
    """Sheets follow each other; each on a page of its own would make fourteen pages."""
    pages = papers(Office(tmp_path / "office", SMALLEST).root)["outside"].pages
    assert len(pages) <= 10
    assert sum("Scope of work What we found" in page for page in pages) == 1


def test_photos_and_workings_are_leafed_through_by_themselves(outside: Paper) -> None:
    """They begin in the upper part of a page, whatever ends there; other sheets begin where there is room."""
    begins = {
        name: next(
            run.up / 792
            for run in outside.runs(outside.page_of_sheet(name) - 1)
            if run.text.strip() == name and run.up < 792 - 20 * MM
        )
        for name in SHEETS
    }
    assert {name for name, up in begins.items() if up > 0.55} >= {"Photo log", "Sources and limits"}
    assert any(up < 0.5 for up in begins.values())


def test_two_pages_lead_to_the_scope(outside: Paper) -> None:
    front = outside.pages[:2]
    assert "Contents" in front[1]
    assert any("Scope of work What we found" in page for page in outside.pages[1:3])


def test_the_cover_says_what_leaked_what_was_done_and_what_is_open(outside: Paper) -> None:
    cover = outside.pages[0]
    assert "18 Heron Lane: the leak at the dormer valley is closed" in cover
    assert "COPY FOR THE HOMEOWNER" in cover
    assert "A brown ring on the dining-room ceiling" in cover
    assert "Attic and ceiling stayed dry" in cover
    assert "1 item is open Drip edge, spacing of nails: no photo from before it was covered," in cover
    assert "Roof plan Drawn from measurements, not a survey." in cover


def test_the_contents_name_every_sheet_with_its_page(outside: Paper) -> None:
    contents = next(page for page in outside.pages if "Contents" in page)
    for name in SHEETS:
        begins = outside.page_of_sheet(name)
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
    for name in ("outside", "roof-card", "nailing-card"):
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
        "1 1/2 in, shank 0.120 in; 6 nails in each shingle",
        "Exposure laid 5 5/8 in",
        "ASTM D7158, class H",
        "Framing 2x8 rafter",
        "Not touched back, north (MN)",
        "New Valley V1",
        "Left as found Pipe boot B1",
        "step only on framing; the ceiling between does not carry you",
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


def test_a_count_of_nails_is_no_measure(outside: Paper) -> None:
    assert "6 nails in each shingle" in outside.text
    assert not re.search(r"\b6 in each", outside.text)


def test_no_line_ends_inside_a_number_or_before_its_unit(outside: Paper) -> None:
    ends = [
        (line, after)
        for page in outside.lines
        for line, after in pairwise(page)
        if re.search(r"=\s*$", line)
        or re.match(r"\s*=", after)
        or (re.search(r"\d\s*$", line) and re.match(r"\s*(\d+/\d+\b|sq ft|bundles?|squares)", after))
    ]
    assert ends == []


def test_an_id_breaks_only_behind_a_sign(outside: Paper) -> None:
    """The long ids of the index stand in narrow columns; each piece of one ends with a sign."""
    ids = [id for id, figure in json.loads(outside.data())["figures"].items() if len(id) > 26]
    assert len(ids) > 20
    index = " ".join(outside.pages[outside.page_of_sheet("Sources and limits") - 1 :])
    for id in ids:
        assert re.search(re.sub(r"(?<=[._-])(?=\w)", " ?", re.escape(id).replace("\\-", "-")), index), id


def test_each_reader_starts_with_what_is_open_and_what_differs(outside: Paper) -> None:
    start = " ".join(outside.pages[:2])
    assert start.count("What is still open? page 1") == 3
    assert len(re.findall(r"What is not documented, and why\? page \d+", start)) == 2
    assert "Rows where what was installed differs from the rule: none" in start
    assert "This packet says nothing about what a policy covers or pays." in start


def test_hold_points_are_one_table_with_a_row_for_each_stage(outside: Paper) -> None:
    held = outside.text[outside.text.index("Afterwards only the photo can show it.") :]
    assert "Deck Deck replaced, S1 underlayment" in held
    assert "Covering Nails in each shingle the next course" in held
    assert held.index("Deck replaced, S1") < held.index("Edges and flashing") < held.index("Covering Nails")
    assert outside.text.index(" Papers ") < outside.text.index(" Hold points ")


def test_places_on_a_plane_are_explained_where_they_stand(outside: Paper) -> None:
    assert outside.text.count("Places count along the lowest edge of a plane from its left end") == 1


def test_a_root_stands_apart_from_its_bracket_and_quotes_are_straight(outside: Paper) -> None:
    assert "square root of (" in outside.text
    assert "square root of(" not in outside.text
    assert "It is no engineer's certificate" in outside.text


def test_letters_are_no_smaller_than_can_be_read(outside: Paper) -> None:
    """Nothing below 6.4 pt, the drawing's letters among it."""
    assert outside.smallest_letters() >= 6.4


def test_a_caution_that_goes_on_overleaf_is_named_there_again(tmp_path: Path) -> None:
    office = Office(tmp_path / "office", SMALLEST)
    office.file(
        "templates/paper/sections/photos.typ",
        '#import "../lib.typ": *\n#caution[#for n in range(90) [Beware #n. #parbreak()]]\n',
    )
    warned = [page for page in papers(office.root)["outside"].pages if "Beware" in page]
    assert len(warned) == 3
    assert all("CAUTION" in page for page in warned)


def test_care_is_never_parted_from_its_source(outside: Paper) -> None:
    for page in outside.pages:
        body = page.partition("THE ADJUSTER AND THE INSPECTOR ")[2]
        assert not re.match(r"(Algae and moss|Advice to homeowners|Maintenance pages)", body)
