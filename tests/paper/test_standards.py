"""What an archive and a reader aloud ask of a PDF, read off the file by another program than wrote it."""

import hashlib
import json
import re
import shutil
from pathlib import Path

import pikepdf
import pytest

from packet.closeout.redact import redact
from packet.readers import Reader
from tests.paper.conftest import Paper, demo_office, papers
from tests.support.office import NUMBER

PDFA, PDFUA = "http://www.aiim.org/pdfa/ns/id/", "http://www.aiim.org/pdfua/ns/id/"
ALL = ("outside", "office", "roof-card", "nailing-card")


@pytest.mark.parametrize("name", ALL)
def test_it_says_that_it_is_for_archives_and_for_readers_aloud(
    demo_papers: dict[str, Paper], name: str
) -> None:
    with demo_papers[name].pdf.open_metadata() as meta:
        assert (meta[f"{{{PDFA}}}part"], meta[f"{{{PDFA}}}conformance"]) == ("3", "A")
        assert meta[f"{{{PDFUA}}}part"] == "1"
    root = demo_papers[name].pdf.Root
    assert root.MarkInfo.Marked
    assert str(root.Lang).startswith("en")
    assert root.ViewerPreferences.DisplayDocTitle
    assert [str(intent.S) for intent in root.OutputIntents] == ["/GTS_PDFA1"]


@pytest.mark.parametrize("name", ALL)
def test_every_font_is_embedded_and_is_ours(demo_papers: dict[str, Paper], name: str) -> None:
    fonts = {
        (str(font.BaseFont), "/FontFile2" in font.FontDescriptor or "/FontFile3" in font.FontDescriptor)
        for font in demo_papers[name].pdf.objects
        if isinstance(font, pikepdf.Dictionary) and "/FontDescriptor" in font
    }
    assert fonts
    assert {embedded for _, embedded in fonts} == {True}
    assert {family.partition("+")[2].partition("-")[0] for family, _ in fonts} <= {
        "IBMPlexSans",
        "IBMPlexSansCond",
        "IBMPlexMono",
    }


def test_every_picture_has_words_for_those_who_do_not_see_it(outside: Paper) -> None:
    figures = [element for element in outside.structure() if element.S == "/Figure"]
    words = [str(element.get("/Alt", "")) for element in figures]
    assert len(figures) == 35  # the roof, two planes of new deck and 32 photos
    assert all(words)
    assert "The house from the street, number 18." in words
    assert sum(text.startswith("Roof seen from above. Worked on: front, south (MS)") for text in words) == 1


def test_tables_have_heads_and_headings_come_in_order(outside: Paper) -> None:
    kinds = [str(element.S) for element in outside.structure()]
    assert kinds.count("/Table") >= 15
    assert kinds.count("/TH") >= 4 * kinds.count("/Table") // 2
    assert kinds.count("/H1") == 10
    assert kinds.count("/H2") > 20


def test_the_title_tells_the_job_and_whose_copy_it_is(demo_papers: dict[str, Paper]) -> None:
    titles = {name: str(paper.pdf.docinfo["/Title"]) for name, paper in demo_papers.items()}
    assert titles == {
        "outside": "Closeout packet 26-041, 18 Heron Lane",
        "office": "Closeout packet 26-041, 18 Heron Lane, office copy",
        "roof-card": "Roof card 26-041, 18 Heron Lane",
        "nailing-card": "Nailing card 26-041, 18 Heron Lane",
    }
    assert str(demo_papers["roof-card"].pdf.docinfo["/Subject"]).startswith("One page for the attic hatch")


def test_the_date_is_the_last_day_the_record_tells_of(outside: Paper) -> None:
    """Finished on March 18, seen by the inspector on March 20; the promises end in 2029."""
    assert str(outside.pdf.docinfo["/CreationDate"]).startswith("D:20260320")


def test_the_head_of_a_page_is_not_read_aloud_again(outside: Paper) -> None:
    """It stands on every page but the first, marked as no part of the text."""
    heads = [
        re.findall(
            rb"/Artifact<<[^>]*/Subtype/Header[^>]*>>BDC(.*?)EMC", page.Contents.read_bytes(), re.DOTALL
        )
        for page in outside.pdf.pages
    ]
    assert [b"Tj" in head or b"TJ" in head for head, *_ in heads] == [False] + [True] * (len(heads) - 1)


@pytest.mark.parametrize("reader", ["outside", "office"])
def test_the_data_of_the_copy_is_attached_as_it_is(
    demo_papers: dict[str, Paper], demo_root: Path, reader: Reader
) -> None:
    from packet.closeout.assemble import assemble
    from packet.workspace import Workspace

    files = demo_papers[reader].attached()
    assert list(files) == ["packet.json"]
    file = files["packet.json"]
    assert (str(file.AFRelationship), str(file.EF.F.Subtype)) == ("/Data", "/application/json")
    closeout, _ = assemble(Workspace(demo_root), demo_root / "jobs" / NUMBER)
    content = bytes(file.EF.F.read_bytes())
    assert json.loads(content) == json.loads(json.dumps(redact(closeout, reader)))
    assert content.startswith(b'{\n "access"')


def test_the_attached_data_are_the_bytes_a_build_publishes(outside: Paper, demo_root: Path) -> None:
    from packet.build import build
    from packet.workspace import Workspace

    built = build(Workspace(demo_root), demo_root / "jobs" / NUMBER)
    published = (built.folder / "outside" / "packet.json").read_bytes()
    assert bytes(outside.attached()["packet.json"].EF.F.read_bytes()) == published
    assert sorted(path.suffix for path in (demo_root / "out").glob("*.pdf")) == [".pdf"] * 4


def test_two_offices_with_one_record_print_the_same_bytes(
    demo_papers: dict[str, Paper], demo_root: Path, tmp_path: Path
) -> None:
    other = demo_office(tmp_path / "another place")
    shutil.copytree(demo_root / "out" / ".cache", other / "out" / ".cache")  # photos take longest
    again = papers(other)
    digests = [
        {name: hashlib.sha256(paper.content).hexdigest() for name, paper in made.items()}
        for made in (demo_papers, again)
    ]
    assert digests[0] == digests[1]
    assert len(set(digests[0].values())) == 4
