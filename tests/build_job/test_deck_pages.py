"""The sheet register, the cut list, the cut-outs and the fastener schedule, as a reader finds them on the pages."""

import json
from html.parser import HTMLParser

import pytest

from packet.closeout.model import Closeout
from packet.closeout.redact import redact
from packet.site.pages import make_pages
from packet.text import load_words
from packet.workspace import Workspace
from tests.conftest import SMALLEST
from tests.support.office import ROOT, Office


class _Text(HTMLParser):
    """The text of a page without its workings; ends of cells and paragraphs are spaces."""

    def __init__(self) -> None:
        super().__init__()
        self.parts: list[str] = []
        self.inside = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.inside += tag == "details"
        self.parts.append(" " if tag in ("p", "td", "th", "div", "li", "dt", "dd", "span", "a") else "")

    def handle_endtag(self, tag: str) -> None:
        self.inside -= tag == "details"

    def handle_data(self, data: str) -> None:
        self.parts.append("" if self.inside else data)


def page(office: Office | Closeout, name: str) -> str:
    """The text of a page of the outside copy."""
    closeout = office.closeout() if isinstance(office, Office) else office
    copy = json.loads(json.dumps(redact(closeout, "outside")))
    words = load_words(Workspace(ROOT).shared_folders())
    body = next(
        page.body for page in make_pages(copy, Workspace(ROOT).template_folders(), words) if page.name == name
    )
    reader = _Text()
    reader.feed(body)
    text = " ".join("".join(reader.parts).split())
    return text.replace(" ,", ",").replace(" .", ".").replace(" ;", ";").replace(" :", ":")


def test_the_register_has_a_row_a_sheet_with_what_was_laid_and_why(job_office: Office) -> None:
    scope = page(job_office, "scope")
    assert (
        "S1 whole sheet opened MS 16′ along, 0″ up the slope 8′ × 4′ 15/32 in plywood 23.2 sq ft rot beside the valley"
        " price agreed in F1 members: 5 44 nails" in scope
    )
    assert "New deck, its pieces before they were cut to the roof 120.0 sq ft" in scope
    assert "New deck as laid, after cutting 78.2 sq ft" in scope
    assert "Deck nails by the schedule 161 nails" in scope
    assert "6 in at panel edges, 6 in on supports between as the rule asks that governs here" in scope


def test_photos_before_and_after_stand_apart(demo: Closeout) -> None:
    scope = page(demo, "scope")
    assert "price agreed in F1 members: 5 44 nails P07 P13 S2" in scope
    assert "members: 5 45 nails P08 P14 S4" in scope


def test_a_rule_kept_and_photographed_says_so_in_its_layer(demo: Closeout) -> None:
    text = page(demo, "fasteners")
    assert (
        "at panel edges: at most 6 in The law here: International Residential Code, 2021, Table R602.3(1), items 31 and"
        " 32 (from a restatement: confirm against the adopted text) meets the rule" in text
    )
    assert "meets the rule P16 P17 P18 Underlayment" in text


def test_an_offcut_names_its_sheet_and_no_whole_one_is_opened_for_it(job_office: Office) -> None:
    job_office.replaced(
        "along: 6 ft, up: 4 ft, why: rot at",
        "along: 6 ft, up: 4 ft, cut_from: S1, product: 19/32 in plywood, why: rot at",
    )
    scope = page(job_office, "scope")
    assert "S2 offcut of S1 MS 22′ along, 4′ up the slope 6′ × 4′ 19/32 in plywood" in scope
    assert scope.count("whole sheet opened") == 3


def test_a_price_agreed_in_a_paper_of_the_office_says_where_that_is(job_office: Office) -> None:
    job_office.replaced(
        "rot beside the valley, agreed: F1}\n    - {id: S2",
        "rot beside the valley, agreed: D1}\n    - {id: S2",
    )
    assert "price agreed in D1, a paper in the office's copy" in page(job_office, "scope")


@pytest.mark.parametrize(
    "sentence",
    [
        "S1: cut straight from 4′ along the lower edge from the left to 7′ 6 15/16″ along the upper edge from the left."
        " Corners that stay: lower left, upper left.",
        "S2: cut square to 6′ × 4′; cut straight from 1′ 6 15/16″ along the lower edge from the left",
        "then from 2′ along the upper edge from the left to 2′ from the left edge and 5 11/16″ up from the lower edge,"
        " on to 5 11/16″ up the left edge. Corners that stay: lower left.",
        "S3: cut straight from 3′ 10 15/16″ up the left edge to 3′ 6″ along the lower edge from the left."
        " Corners that stay: lower right, upper right, upper left.",
    ],
)
def test_the_cut_list_is_in_a_carpenters_words(job_office: Office, sentence: str) -> None:
    assert sentence in page(job_office, "scope")


def test_a_sheet_that_meets_no_line_is_laid_whole(job_office: Office) -> None:
    job_office.replaced("{id: S1, plane: MS, at: [16 ft, 0 ft]", "{id: S1, plane: MS, at: [8 ft, 0 ft]")
    assert "S1: laid whole." in page(job_office, "scope")


def test_a_cut_out_gives_a_reason_for_every_inch(job_office: Office) -> None:
    scope = page(job_office, "scope")
    assert "Cut-out CO1, plane MS Rot as found 5′ × 40 in 16′ 8″ along, 0″ up the slope" in scope
    assert "Left side moved 8″ to the center of the next sound member" in scope
    assert "Right side moved 4″ to the center of the next sound member" in scope
    assert (
        "Cut out 8′ × 4′ 16′ along, 0″ up the slope Edges carried Broken on the center of a rafter" in scope
    )
    assert "Less than the rule adds" not in scope


def test_reasons_name_what_was_read_for_them(job_office: Office) -> None:
    job_office.replaced(
        "rot: {at: [16 ft 8 in, 0 ft], along: 5 ft, up: 3 ft 4 in}",
        "rot: {at: [16 ft 8 in, 0 ft], along: 6 in, up: 6 in}",
    )
    scope = page(job_office, "scope")
    assert (
        "over two spans at least: strength axis across the supports, over two or more spans (APA, Engineered Wood"
        in scope
    )
    assert "narrower than 24 in: span tables are for panels at least that wide (APA text on panels" in scope


def test_less_cut_than_the_rule_adds_is_said_where_the_cut_out_stands(job_office: Office) -> None:
    job_office.replaced(
        "cut: {at: [16 ft, 0 ft], along: 8 ft, up: 4 ft}",
        "cut: {at: [16 ft 8 in, 0 ft], along: 5 ft, up: 4 ft}",
    )
    scope = page(job_office, "scope")
    assert "Less than the rule adds Less was cut out than the rule leads to" in scope


def test_a_nailer_and_the_beside_way_are_told(job_office: Office) -> None:
    job_office.replaced(
        "edges: on the center of a rafter", "edges: beside a rafter, on a nailer\n      nailer: R1"
    )
    scope = page(job_office, "scope")
    assert "Cut beside a rafter; a nailer fastened to it carries the old edge. R1" in scope
    assert "past the member to its far face" in scope


def test_the_schedule_has_a_row_for_every_layer_and_strip(demo: Closeout) -> None:
    text = page(demo, "fasteners")
    for said in (
        "New deck 2 3/8 in × 0.113 in ring shank hot-dip galvanized 6 in at panel edges, 6 in on supports between",
        "at panel edges: at most 6 in The law here: International Residential Code, 2021, Table R602.3(1), items 31 and"
        " 32 (from a restatement: confirm against the adopted text) meets the rule",
        "Underlayment 1 in plastic cap nail 6 in along laps, 12 in between laps along laps, between laps: rule not verified here",
        "Starter new shingles with the exposed part cut off",
        "Shingles 1 1/2 in, shank 0.120 in, head 7/16 in hot-dip galvanized 6 nails in each shingle nails a shingle: at least 6"
        " The maker's printed instructions: bundle wrapper, panel for high wind (stated by the office) meets the rule",
        "Valley V1 closed-cut over a self-adhered sheet width: rule not verified here",
        "Old shingles sealed by hand asphalt roof cement, ASTM D4586 4 spots of cement on each shingle",
        "The deck nails of this packet are counted and drawn at 6 in at panel edges",
        "Whether the soffit is open is not recorded. Where it is, nail points show from below",
    ):
        assert said in text, said


def test_a_way_out_stands_in_its_layer_beside_the_word(job_office: Office) -> None:
    job_office.changed("deck.field_spacing", "12 in").added(
        "ways_out: [{requirement: deck-nail-field-spacing, kind: accepted, on: 2026-03-17,"
        " by: town building inspector, text: Twelve inches let stand on the north rafters.}]"
    )
    text = page(job_office, "fasteners")
    assert (
        "differs from the rule Accepted by the official, March 17, 2026, town building inspector:"
        " Twelve inches let stand on the north rafters." in text
    )


def test_what_holds_edge_metal_and_details_stands_in_their_layers(job_office: Office) -> None:
    assert "Drip edge not recorded 0.019 in aluminum 10 in" in page(job_office, "fasteners")
    job_office.changed("drip_edge.fasteners", "1-1/4 in x 0.120 in roofing nails")
    job_office.changed("details.C1.fasteners", "one nail in the upper corner of each piece")
    text = page(job_office, "fasteners")
    assert "Drip edge 1-1/4 in x 0.120 in roofing nails 0.019 in aluminum 10 in" in text
    assert "Sidewall C1 one nail in the upper corner of each piece 0.019 in aluminum" in text


def test_heads_driven_too_deep_are_told_with_the_nails_of_the_deck(job_office: Office) -> None:
    job_office.changed("job.kind", "section").changed("deck.heads", "overdriven")
    text = page(job_office, "fasteners")
    assert "6 in on supports between heads: driven too deep nail: one of" in text
    assert "heads: rule not verified here; no photo from before it was covered" in text
    assert "Nail driven too deep: Up to 1/16 in deep: it counts." in text
    job_office.changed("deck.heads", "flush")
    text = page(job_office, "fasteners")
    assert "heads: flush nail: one of" in text
    assert "Nail driven too deep" not in text


def test_an_open_soffit_says_how_far_nail_points_show(job_office: Office) -> None:
    """1-1/2 in of nail, 3/8 in above the deck, 15/32 in of panel: 21/32 in stand out below."""
    job_office.changed("roof.soffit", "open")
    text = page(job_office, "fasteners")
    assert "The soffit is open." in text
    assert "Points of the shingle nail show below the deck by: 21/32 in" in text
    assert "Open soffit Nail points show below." in page(job_office, "nailing-card")
    assert "Alero abierto por abajo Ahí se ven" in page(job_office, "nailing-card")


def test_a_closed_soffit_is_no_question_to_the_crew(job_office: Office) -> None:
    assert "Open soffit?" in page(job_office, "nailing-card")
    job_office.changed("roof.soffit", "closed")
    assert "The soffit is closed." in page(job_office, "fasteners")
    assert "soffit" not in page(job_office, "nailing-card")


def test_a_zone_of_a_nailing_table_is_told_beside_the_schedule(job_office: Office) -> None:
    assert "Wind zone of the roof" not in page(job_office, "fasteners")
    job_office.changed("basis.roof_zone", "zone-2")
    assert "by the drawing beside the nailing table: zone 2" in page(job_office, "fasteners")


def test_the_card_asks_for_rows_at_a_gable_end_only_where_a_new_panel_lies_there(job_office: Office) -> None:
    assert "Gable ends" not in page(job_office, "nailing-card")
    job_office.replaced("{id: S1, plane: MS, at: [16 ft, 0 ft]", "{id: S1, plane: MS, at: [0 ft, 0 ft]")
    assert "Gable ends ask the office: rule not verified" in page(job_office, "nailing-card")


def test_the_card_asks_for_photos_of_the_new_work(job_office: Office) -> None:
    card = page(job_office, "nailing-card")
    assert "Before underlayment: Deck replaced S1, S2, S3, S4" in card
    assert "Before new deck" not in card
    assert "Damage as found" not in card


def test_rows_at_gable_ends_stand_in_the_schedule_once_they_are_measured(job_office: Office) -> None:
    assert "Framing at gable ends" not in page(job_office, "fasteners")
    job_office.changed("deck.gable_spacing", "4 in")
    text = page(job_office, "fasteners")
    assert "Framing at gable ends, rows closer together 2 3/8 in × 0.113 in ring shank 4 in" in text
    assert "4 in on the framing at gable ends" in text


def test_a_layout_without_a_rule_says_that_the_tape_gave_its_spacing(job_office: Office) -> None:
    job_office.changed("basis.code", "irc-2018")
    text = page(job_office, "fasteners")
    counted = text[text.index("counted and drawn at") :][:200]
    assert "as measured with the tape, for want of a rule that may decide" in counted


def test_a_damaged_truss_says_what_stops_and_who_decides(job_office: Office) -> None:
    job_office.changed("roof.framing.damage", "Top chord split.")
    assert "Damage to the framing as found: Top chord split." in page(job_office, "scope")
    assert "A truss is damaged" not in page(job_office, "fasteners")
    job_office.changed("roof.framing.kind", "trusses")
    for name in ("scope", "fasteners"):
        text = page(job_office, name)
        assert "A truss is damaged: Top chord split." in text
        assert "its engineer or its maker decides in writing" in text


def test_a_job_without_a_deck_has_a_schedule_and_a_card_all_the_same(small_office: Office) -> None:
    assert "Layer by layer" not in page(small_office, "fasteners")
    card = page(small_office, "nailing-card")
    assert "If the deck is opened, ask the office for nail and spacing before the first nail." in card
    assert "Si se abre el tablero, pregunte a la oficina" in card


def test_the_card_on_the_page_says_what_the_card_on_paper_says(job_office: Office) -> None:
    card = page(job_office, "nailing-card")
    for said in (
        "Nail 2 3/8 in × 0.113 in ring shank, hot-dip galvanized",
        "Panel edges at most 6 in The law here*",
        "Along laps 6 in written down for this job; ask the office: rule not verified",
        "Before underlayment: Deck replaced S1, S2, S3, S4; Deck nail;",
        "Tarjeta de clavado",
        "Orillas del tablero no más de 6 pulg. La ley de aquí*",
        "Antes de que lo tape el fieltro: Tablero cambiado S1, S2, S3, S4;",
    ):
        assert said in card, said


def test_boards_nailed_alike_stand_in_one_row_of_the_card(tmp_path_factory: pytest.TempPathFactory) -> None:
    board = "plane: MS, where: x, size: 1x6, width: 5-1/2 in, pieces: 2, length: 9 ft, why: rot"
    nail = "nail: {size: 2-1/2 x 0.131, shank: smooth}"
    rows = [f"    - {{id: BD{n}, {board}, {nail}, nails_each_bearing: {2 + (n == 3)}}}" for n in range(1, 13)]
    record = SMALLEST + "\n".join(
        [
            "roof:",
            "  eave_height: 9 ft",
            "  planes:",
            "    - {id: MS, title: f, shape: rectangle, lower: 24 ft, run: 12 ft, pitch: 6:12, facing: south, at: [0 ft, 0 ft]}",
            "deck:",
            "  boards:",
            *rows,
            "",
        ]
    )
    card = page(Office(tmp_path_factory.mktemp("boards") / "office", record), "nailing-card")
    assert (
        "Deck boards BD1, BD2, BD4, BD5, BD6, BD7, BD8, BD9 … Nail 2 1/2 in × 0.131 in smooth shank" in card
    )
    assert "Deck boards BD3 Nail" in card
    assert card.count("Deck boards BD") == 2


def test_boards_nailed_alike_stand_in_one_row_of_the_schedule(job_office: Office) -> None:
    board = "{{id: {id}, plane: MS, where: eave, size: 1x6, width: 6 in, pieces: 1, length: 8 ft, nails_each_bearing: {n}, why: rot}}"
    rows = ", ".join(board.format(id=id, n=n) for id, n in (("BD1", 2), ("BD2", 3), ("BD3", 2)))
    job_office.changed("deck.boards", f"[{rows}]")
    text = page(job_office, "fasteners")
    assert "Deck boards BD1, BD3" in text
    assert "Deck boards BD2" in text
    assert "Deck boards BD1 " not in text
