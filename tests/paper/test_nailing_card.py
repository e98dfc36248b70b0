"""The crew's nailing card: a page in English, a page in Spanish, each by the rules that may decide."""

from pathlib import Path
from typing import Any

import pikepdf
import pytest
import yaml

from tests.conftest import SMALLEST
from tests.paper.conftest import Paper, papers
from tests.support.office import Office, as_yaml, demo_text

MM = 72 / 25.4

PLANNED = """\
job: {number: 26-041, kind: section, status: planned}
property: {street: 5 Plover Court, town: Pellam Reach, state: South Carolina, time_zone: America/New_York}
basis: {code: irc-2021, authority: Town of Pellam Reach}
roof:
  eave_height: 9 ft
  planes:
    - {id: MS, title: front, shape: rectangle, lower: 24 ft, run: 12 ft, pitch: 6:12, facing: south, at: [0 ft, 0 ft]}
deck:
  panel: {product: plywood, thickness: 15/32 in, width: 4 ft, length: 8 ft}
  sheets:
    - {id: S1, plane: MS, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: soft underfoot}
"""


@pytest.fixture(scope="module")
def nailing(demo_papers: dict[str, Paper]) -> Paper:
    return demo_papers["nailing-card"]


def card_of(root: Path, record: str) -> Paper:
    return papers(Office(root / "office", record).root)["nailing-card"]


def demo_record() -> dict[str, Any]:
    record: dict[str, Any] = yaml.load(demo_text(), Loader=yaml.BaseLoader)  # noqa: S506 - text stays text
    return record


def test_it_is_one_letter_page_a_language(nailing: Paper) -> None:
    assert len(nailing.pages) == 2
    assert {tuple(map(float, page.mediabox)) for page in nailing.pdf.pages} == {(0, 0, 612, 792)}
    assert nailing.smallest_letters() >= 6.4


def test_the_english_page_says_what_holds_what_by_whose_rule(nailing: Paper) -> None:
    page = nailing.pages[0]
    for said in (
        "Nailing card 18 Heron Lane, Pellam Reach. Job 26-041. Office: Pike and Gannet Roofing, 843-555-0142",
        "Framing 2x8 rafter, Southern Pine, 24 in on center",
        "NAIL 2 3/8 in × 0.113 in ring shank, hot-dip galvanized",
        "PANEL EDGES at most 6 in The law here*",
        "FIELD at most 6 in The law here*",
        "3/8 in from every panel edge. At a joint each panel has a row of its own",
        "A penny size names no nail.",
        "NAILS A SHINGLE at least 6 The maker's printed instructions",
        "SPOTS A SHINGLE at least 4 Our own practice",
        "one new nail for every two of them",
        "Open soffit? Nail points show below.",
        "BEFORE UNDERLAYMENT: Deck replaced S1, S2, S3, S4; Deck nail;",
        "BEFORE SHINGLES: Underlayment, laps;",
        "Stay clear of power lines, ladder too",
        "Local safety rules come before this card.",
        "* Read in a restatement: confirm against the adopted text.",
    ):
        assert said in page, said


def test_a_rule_that_may_not_decide_sends_the_crew_to_the_office(nailing: Paper) -> None:
    page = nailing.pages[0]
    assert "ALONG LAPS 6 in written down for this job; ask the office: rule not verified" in page
    assert "Drip edge SPACING 10 in written down for this job; ask the office: rule not verified" in page
    assert "at most 36 in" not in page  # common practice decides nothing
    assert "at most 12 in" not in page  # a remembered row neither


def test_the_spanish_page_says_the_same_and_by_whom_it_was_written(nailing: Paper) -> None:
    page = nailing.pages[1]
    for said in (
        "Tarjeta de clavado 18 Heron Lane, Pellam Reach. Trabajo 26-041.",
        "CLAVO 2 3/8 pulg. × 0.113 pulg. anillado (ring shank)",
        "ORILLAS DEL TABLERO no más de 6 pulg. La ley de aquí*",
        "EN MEDIO no más de 6 pulg. La ley de aquí*",
        "CLAVOS POR TEJA por lo menos 6 Instrucciones impresas del fabricante",
        "pregunte a la oficina: regla sin verificar",
        "¿Alero abierto por abajo?",
        "ANTES DE QUE LO TAPE EL FIELTRO: Tablero cambiado S1, S2, S3, S4;",
        "Lejos de los cables de luz, también la escalera",
        "Esta página la escribimos nosotros, no un traductor de oficio.",
    ):
        assert said in page, said
    for english in (
        "Deck panels",
        "Panel edges",
        "ask the office",
        "at most",
        "The law here",
        "Underlayment,",
    ):
        assert english not in page, english


def test_the_spanish_page_is_read_aloud_in_spanish(nailing: Paper) -> None:
    languages = {str(element.Lang) for element in nailing.structure() if "/Lang" in element}
    assert any(language.startswith("es") for language in languages), languages


def test_a_planned_job_with_little_in_it_has_a_card(tmp_path: Path) -> None:
    page = card_of(tmp_path, PLANNED).pages[0]
    assert "5 Plover Court" in page
    assert (
        "NAIL one of 2 1/2 in × 0.131 in smooth shank; 2 3/8 in × 0.113 in ring shank The law here*" in page
    )
    assert "PANEL EDGES at most 6 in The law here*" in page
    assert "Underlayment ALONG LAPS ask the office; nothing is written down yet" in page


def test_a_job_without_a_deck_says_what_to_do_before_one_is_opened(tmp_path: Path) -> None:
    card = card_of(tmp_path, SMALLEST)
    assert len(card.pages) == 2
    assert (
        "If the deck is opened, ask the office for nail and spacing before the first nail." in card.pages[0]
    )
    assert "Each sheet; the deck nails at an edge and between;" in card.pages[0]
    assert "pregunte a la oficina por el clavo y la distancia" in card.pages[1]


def test_what_differs_from_its_rule_stops_the_crew(tmp_path: Path) -> None:
    office = Office(tmp_path / "office", demo_text())
    office.changed("deck.edge_spacing", "8 in").changed("deck.nail.size", "2 x 0.113")
    page = papers(office.root)["nailing-card"].pages[0]
    stop = "What is written down differs from this rule: stop and ask the office."
    assert f"PANEL EDGES at most 6 in The law here* {stop}" in page
    assert f"NAIL 2 in × 0.113 in ring shank, hot-dip galvanized {stop}" in page


def test_a_damaged_truss_stops_the_crew_in_both_languages(tmp_path: Path) -> None:
    office = Office(tmp_path / "office", demo_text())
    office.changed("roof.framing.kind", "trusses").changed("roof.framing.damage", "Top chord split.")
    pages = papers(office.root)["nailing-card"].pages
    assert "Damaged truss Top chord split. Stop there. A truss is not cut" in pages[0]
    assert "Armadura (truss) dañada Top chord split. Pare ahí." in pages[1]


def test_the_longest_record_still_fits(tmp_path: Path) -> None:
    record = demo_record()
    long = "W" * 199 + "!"
    record["property"]["street"] = record["property"]["town"] = long
    record["deck"]["nail"]["finish"] = record["dry_in"]["fasteners"]["kind"] = long
    record["covering"]["starter"] = record["covering"]["nail"]["finish"] = long
    record["tie_in"]["cement"] = record["roof"]["framing"]["member"] = long
    record["dry_in"]["sealed_deck"] = {"way": "tape on the joints", "product": long, "width": "4 in"}
    record["dry_in"]["ice_barrier"] = {"product": long, "up_slope": "6 ft"}
    board = {
        "plane": "MS",
        "where": "x",
        "size": "1x6",
        "width": "5-1/2 in",
        "pieces": "2",
        "length": "9 ft",
        "why": "rot",
    }
    record["deck"]["boards"] = [
        {
            **board,
            "id": f"BD{n}",
            "nails_each_bearing": str(n % 9 + 1),
            "nail": {"size": "2-1/2 x 0.131", "shank": "smooth", "finish": long},
        }
        for n in range(60)
    ]
    record["deck"]["renailed"] = {
        "planes": ["MN"],
        "nail": {"size": "2-1/2 x 0.131", "shank": "smooth", "finish": long},
    }
    card = card_of(tmp_path, as_yaml(record))
    assert len(card.pages) == 2
    for page in range(2):
        for run in card.runs(page):
            assert 15.9 * MM <= run.left <= 612 - 16 * MM
            assert 11 * MM <= run.up <= 792 - 11 * MM


def test_an_offices_own_language_prints_a_page_of_its_own(tmp_path: Path) -> None:
    office = Office(tmp_path / "office", SMALLEST)
    office.file("shared/words/pl.yaml", "card: {language: Polski, title: Karta dla ekipy}\n")
    office.file("shared/words/de.yaml", "kinds: {patch: Ausbesserung}\n")
    pages = papers(office.root)["nailing-card"].pages
    assert [page.split(" 18 Heron")[0] for page in pages] == [
        "Nailing card",
        "Tarjeta de clavado",
        "Karta dla ekipy",
    ]


def test_it_prints_in_greys_alone(nailing: Paper) -> None:
    """No colour tells anything: each that is used is near grey."""
    colours: set[tuple[float, ...]] = set()
    for page in nailing.pdf.pages:
        for step in pikepdf.parse_content_stream(page):
            if str(step.operator) in ("rg", "RG", "sc", "SC", "scn", "SCN"):
                colours.add(tuple(float(str(part)) for part in step.operands))
    assert colours
    assert [colour for colour in colours if max(colour) - min(colour) > 0.15] == []
