"""Typed text stays text, whatever it looks like, and however long it is; letters we lack lose nothing."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
import yaml

from packet.paper.letters import covered, printable
from packet.paper.templates import fonts_of
from packet.paper.typesetting import typeset
from packet.problems import Refused
from packet.workspace import packaged
from tests.build_job.everyfield import numbered, write_job
from tests.conftest import SMALLEST
from tests.paper.conftest import Paper, papers
from tests.support.office import Office, as_yaml, walk

HOSTILE = (
    '#let x = read("/etc/passwd")',
    '#read("/packet.json")',
    "*bold* and _slanted_",
    "$x^2$ and `code`",
    "<label> @label",
    "= A heading",
    "- an item",
    "https://example.org/?a=b",
    "a \\ b \\u{41}",
    "// c and /* d */",
    "#panic()",
    "2026-99-99",
    '"]; #x [',
    "~ -- --- ... '",
)

#: A Letter sheet, and a millimetre [pt].
LETTER_PT, MM = (612, 792), 72 / 25.4

FONTS = fonts_of([packaged("templates")])


def record_with(*texts: str) -> dict[str, Any]:
    """The smallest record, with texts in the head, a table, a fact and a list; the first in the running foot."""
    record: dict[str, Any] = yaml.safe_load(SMALLEST)
    first = texts[0]
    record["cause"] = {"what": first, "how_known": first}
    record["job"]["title"] = first
    record["property"]["street"] = first
    record["people"] = {"crew": list(texts)}
    record["found"] = [
        {"id": f"F{at}", "what": text, "answer": "declined", "how": text} for at, text in enumerate(texts)
    ]
    record["details"] = [
        {"id": f"B{at}", "kind": "pipe boot", "where": text, "state": "new", "note": text}
        for at, text in enumerate(texts)
    ]
    record["not_recorded"] = {"deck-sheets": first}
    return record


@pytest.fixture(scope="module")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Paper]:
    root = tmp_path_factory.mktemp("hostile") / "office"
    return papers(Office(root, as_yaml(record_with(*HOSTILE))).root)


@pytest.mark.parametrize("text", HOSTILE)
def test_text_that_looks_like_markup_is_printed_as_typed(hostile: dict[str, Paper], text: str) -> None:
    plain = "".join(text.split())
    # in the list of the crew, of the finds and their answers, of the details and their notes
    assert hostile["outside"].letters.count(plain) >= 5
    assert plain in hostile["roof-card"].letters


def test_text_that_looks_like_a_command_is_not_carried_out(hostile: dict[str, Paper]) -> None:
    plain = "".join(HOSTILE[0].split())
    assert plain in "".join(hostile["outside"].pages[0].split())
    assert all(plain in "".join(page.split()) for page in hostile["outside"].pages)
    assert "root:" not in hostile["outside"].text
    assert str(hostile["outside"].pdf.docinfo["/Title"]).endswith(HOSTILE[0])


def test_the_longest_texts_stay_on_the_paper(tmp_path: Path) -> None:
    word, prose = "W" * 199 + "!", "zebra " * 665 + "END."
    record = record_with(word)
    record["cause"]["what"] = prose
    record["found"][0]["what"] = record["found"][0]["done"] = prose
    made = papers(Office(tmp_path / "office", as_yaml(record)).root)
    # on the cover, as the cause, as the find, as what was done
    assert made["outside"].text.count("zebra") == 4 * 665
    assert made["outside"].text.count("END.") == 4
    assert len(made["roof-card"].pages) == 1
    for name in ("outside", "roof-card"):
        for page in range(len(made[name].pages)):
            for run in made[name].runs(page):
                assert 17.9 * MM <= run.left <= LETTER_PT[0] - 18 * MM, name
                assert 12 * MM <= run.up <= LETTER_PT[1] - 12 * MM, name


#: Text of the outside copy that stands nowhere on paper: the term of a promise that has a last day.
UNPRINTED = {("record", "warranty", 0, "term")}


def test_every_text_of_the_outside_copy_is_printed(tmp_path: Path) -> None:
    write_job(tmp_path, numbered("zq{}word"))
    paper = papers(tmp_path)["outside"]
    copy = json.loads(bytes(paper.attached()["packet.json"].EF.F.read_bytes()))
    texts = {path: text for path, text in walk(copy) if re.fullmatch(r"zq\d+word", str(text))}
    assert len(texts) > 120
    assert {path for path, text in texts.items() if text not in paper.letters} == UNPRINTED


def test_a_record_of_three_keys_is_printed_with_what_is_missing_said(tmp_path: Path) -> None:
    made = papers(Office(tmp_path / "office", SMALLEST).root)
    assert "18 Heron Lane: patch repair" in made["outside"].pages[0]
    assert "2 items are open Damage as found: no photo" in made["outside"].pages[0]
    assert made["outside"].text.count("not recorded") >= 20
    assert "No photo was logged for this copy." in made["outside"].text
    assert "Warranties: not recorded." in made["roof-card"].text
    assert str(made["outside"].pdf.docinfo["/CreationDate"]).startswith("D:19800101")


def test_letters_our_fonts_lack_are_printed_by_number_and_kept_in_the_data(tmp_path: Path) -> None:
    text = "Łódź ½ ≤ → 木 e\N{COMBINING ACUTE ACCENT}"
    paper = papers(Office(tmp_path / "office", as_yaml(record_with(text))).root)["outside"]
    assert "Łódź ½ ≤ → [U+6728] é" in paper.text
    assert "木".encode() in bytes(paper.attached()["packet.json"].EF.F.read_bytes())


@pytest.mark.parametrize("style", ["regular", "bold", "italic"])
def test_the_fonts_have_every_letter_the_list_says(style: str) -> None:
    typeset_all(style, sorted(covered(FONTS)))


def test_a_letter_that_is_not_on_the_list_would_be_refused() -> None:
    assert printable(FONTS)("木 −×÷²′″≤·–—“”’§°½") == "[U+6728] −×÷²′″≤·–—“”’§°½"
    with pytest.raises(Refused):
        typeset_all("regular", [0x6728])


def typeset_all(style: str, points: list[int]) -> None:
    """Set characters in a face of IBM Plex Sans, as an archive asks."""
    kinds = {"regular": "", "bold": ", weight: 700", "italic": ', style: "italic"'}
    with_template = {
        "paper/all.typ": (
            '#set document(title: "all")\n'
            f'#set text(font: "IBM Plex Sans", fallback: false{kinds[style]})\n'
            '= All\n#json("/all.json")'
        ).encode(),
        "all.json": ('"' + "".join(f"\\u{point:04x}" for point in points if point != 0x22) + '"').encode(),
    }
    typeset("all.typ", with_template, [packaged("templates")], 0)
