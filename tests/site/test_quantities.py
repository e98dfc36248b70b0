"""The quantities page: how large, what it takes, what came, what was laid, and what proves it."""

import ast
import html
import re
from pathlib import Path
from typing import Any

import pytest

from packet import figures
from packet.closeout.redact import redact
from packet.figures.takeoff.ground import UNITS
from packet.site.pages import make_pages
from packet.text import load_words
from packet.workspace import Workspace
from tests.support.office import ROOT, Office
from tests.support.pictures import picture
from tests.support.planned import PLANNED

WORDS = load_words(Workspace(ROOT).shared_folders())

LAID = """\
bought:
  - id: SH
    item: laminated shingle
    use: shingles
    unit: bundle
    cover_each: 32.8 sq ft
    planned: 36
    allowance: {percent: 10 %, why: "Valleys.", source: building-estimating-textbook}
    deliveries:
      - {id: DL1, on: 2026-04-13, ticket: T-30551, quantity: 30, lot: L-1}
      - {id: DL2, on: 2026-04-15, quantity: 6}
    returned: 2
    left: 1
    scrap: 1-1/2
  - {id: ST, item: starter strip, use: starter, unit: bundle, length_each: 105 ft, delivered: 1, scrap: 3/8,
     allowance: {percent: 5 %, why: "Two corners."}}
  - {id: HOOD, item: fan hood, unit: piece, delivered: 1}
"""


@pytest.fixture
def laid(tmp_path: Path) -> Office:
    """A closed job of 1,000 sq ft: 36 - 2 - 1 - 1-1/2 = 31-1/2 bundles of 32.8 sq ft make 1,033.2 sq ft."""
    office = Office(tmp_path / "office", PLANNED.replace("status: planned", "status: closed") + LAID)
    return office.added("cause: {what: A nail backed out.}")


def page(office: Office, name: str = "quantities", reader: Any = "office") -> str:
    copy = redact(office.closeout(), reader)
    made = make_pages(copy, office.workspace.template_folders(), WORDS)
    return html.unescape(next(page.body for page in made if page.name == name))


def text_of(markup: str) -> str:
    """Return what is read, without the workings that are folded."""
    shown = re.sub(r"<details.*?</details>", "", markup, flags=re.DOTALL)
    return " ".join(re.sub(r"<[^>]+>", " ", shown).split())


def row(body: str, head: str, start: str) -> str:
    """Return the text of the row that begins with some words, below a head."""
    below = body[body.index(f'<h2 id="{head}"') :]
    rows = [text_of(found) for found in re.findall(r"<tr.*?</tr>", below, re.DOTALL)]
    return next(found for found in rows if found.startswith(start))


def test_the_whole_comes_first_then_need_then_goods_then_places(laid: Office) -> None:
    heads = re.findall(r'<h2 id="([\w-]+)"', page(laid))
    assert heads == [
        "amounts", "takeoff", "goods", "held", "other-goods", "deliveries", "areas", "planes", "edges",
        "who-says-so",
    ]  # fmt: skip


def test_the_roof_is_told_in_feet_and_in_squares(laid: Office) -> None:
    body = page(laid)
    assert row(body, "amounts", "Whole roof, gross") == "Whole roof, gross 1,000.0 sq ft 10.00 squares"
    assert row(body, "amounts", "Whole roof, in plan") == "Whole roof, in plan 800.0 sq ft"


def test_a_line_of_the_takeoff_holds_need_allowance_and_what_to_buy(laid: Office) -> None:
    found = row(page(laid), "takeoff", "Shingles")
    assert found.startswith(
        "Shingles laminated shingle 1,000.0 sq ft with allowance: 1,100.0 sq ft 10 % : Valleys."
    )
    assert "Estimating in Building Construction" in found
    assert "34 bundles A" in found


def test_an_allowance_without_a_source_is_the_offices_own(laid: Office) -> None:
    assert "5 % : Two corners. the office's own figure 1 bundle" in row(page(laid), "takeoff", "Starter")


def test_what_came_is_told_as_a_crew_says_it(laid: Office) -> None:
    body = page(laid)
    assert row(body, "goods", "laminated shingle") == (
        "laminated shingle 36 bundles 36 bundles 2 bundles 1 bundle 1 1/2 bundles 31 1/2 bundles"
    )
    assert row(body, "goods", "starter strip").endswith("3/8 bundle 5/8 bundle")


def test_goods_without_a_use_stand_by_themselves(laid: Office) -> None:
    body = page(laid)
    first = body[body.index('id="goods"') : body.index('id="held"')]
    assert "fan hood" not in first
    assert row(body, "other-goods", "fan hood").startswith("fan hood 1 piece")


def test_what_was_laid_is_held_against_the_need(laid: Office) -> None:
    found = row(page(laid), "held", "Shingles")
    assert found.startswith("Shingles 31 1/2 bundles 1,033.2 sq ft 1,000.0 sq ft")


def test_the_difference_is_a_figure_with_a_sign(laid: Office) -> None:
    """Laid makes 1,033.2 sq ft; with sixteen bundles fewer 508.4."""
    assert row(page(laid), "held", "Shingles").endswith("33.2 sq ft")
    laid.replaced("quantity: 30", "quantity: 14")
    assert row(page(laid), "held", "Shingles").endswith("\N{MINUS SIGN}491.6 sq ft")


def test_the_openings_that_are_left_in_are_told_with_their_source(laid: Office) -> None:
    said = text_of(page(laid))
    assert "Openings are taken off from 30 sq ft on; smaller ones are left in" in said
    assert "Estimating in Building Construction, edition not stated, ch. 14, p. 181" in said


def test_a_delivery_names_its_ticket_and_lot_or_says_that_they_are_missing(laid: Office) -> None:
    body = page(laid)
    assert (
        row(body, "deliveries", "DL1") == "DL1 laminated shingle April 13, 2026 T-30551 30 bundles L-1 none"
    )
    assert row(body, "deliveries", "DL2").endswith("not recorded 6 bundles not recorded none")


def test_a_line_links_its_planes_and_the_photos_of_its_goods_and_deliveries(laid: Office) -> None:
    for id in ("P01", "P02", "P03"):
        picture(laid.job / "photos" / f"{id}.jpg")
    entry = {"stage": "covering", "shows": "Shown.", "readers": ["outside", "office"]}
    laid.log(
        {"id": "P01", "file": "photos/P01.jpg", "proves": ["SH"], **entry},
        {"id": "P02", "file": "photos/P02.jpg", "proves": ["DL2"], **entry},
        {"id": "P03", "file": "photos/P03.jpg", "proves": ["ST"], **entry, "readers": ["office"]},
    )
    body = page(laid)
    line = re.search(r'<tr id="t-shingles">.*?</tr>', body, re.DOTALL)
    assert line
    assert re.findall(r'href="(photos\.html#\w+|quantities\.html#\w+)"', line[0]) == [
        "quantities.html#A", "photos.html#P01", "photos.html#P02",
    ]  # fmt: skip
    assert '<tr id="A">' in body
    assert "P03" in row(body, "takeoff", "Starter")
    assert "P03" not in row(page(laid, reader="outside"), "takeoff", "Starter")


def test_what_a_line_lacks_is_said_in_plain_words(laid: Office) -> None:
    laid.replaced("    cover_each: 32.8 sq ft\n", "")
    found = row(page(laid), "takeoff", "Shingles")
    assert "not computed: the wrapper's cover is not recorded" in found


def test_a_need_beside_no_goods_says_that_none_are_written_down(laid: Office) -> None:
    laid.write(laid.text[: laid.text.index("bought:")] + "cause: {what: A nail backed out.}\n")
    assert "40′ not computed: no goods are written down for it A" in row(page(laid), "takeoff", "Starter")


def test_too_much_laid_is_told_with_its_tolerance(laid: Office) -> None:
    laid.replaced("quantity: 6", "quantity: 26")
    found = row(page(laid), "findings", "More was laid")
    assert "1,689.2 sq ft ; 1,100.0 sq ft ; asked when it is over by more than 15 % of the need" in found
    front = page(laid, "index")
    assert "or than one bought unit where that is more" in front


def test_too_little_laid_is_told_with_its_tolerance(laid: Office) -> None:
    laid.replaced("quantity: 30", "quantity: 20")
    found = row(page(laid), "findings", "What was laid makes less")
    assert "705.2 sq ft ; 1,000.0 sq ft ; asked when it is short by more than 5 % of the need" in found


def test_goods_that_do_not_agree_are_linked_from_their_line(laid: Office) -> None:
    laid.replaced("quantity: 30", "quantity: 20")
    link = re.compile(r'<tr id="t-shingles">.*?<a href="#(f-[^"]+)">([^<]+)</a>.*?</tr>', re.DOTALL)
    found = link.search(page(laid))
    assert found
    assert (found[1], found[2]) == ("f-laid-below-need-SH", "less was laid than it takes")
    laid.added('explained: {"laid-below-need:SH": "Six bundles came from the truck."}')
    body = page(laid)
    found = link.search(body)
    assert found
    assert found[2] == "less was laid than it takes, explained"
    target = re.search(rf'<tr id="{found[1]}">.*?</tr>', body, re.DOTALL)
    assert target
    assert "Six bundles came from the truck." in text_of(target[0])
    assert body.count("f-laid-below-need-SH") == 2


def test_a_line_that_agrees_links_to_no_finding(laid: Office) -> None:
    assert 'href="#f-' not in page(laid)


def test_what_is_left_to_the_allowance_is_said_beside_the_takeoff(laid: Office) -> None:
    said = text_of(page(laid))
    assert "nails of starter, edge metal and flashing in the roofing nails" in said
    assert "corners in the drip edge" in said


def test_a_number_of_a_sum_says_what_it_is_of(laid: Office) -> None:
    """Two eaves of 40 ft and 10 ft get starter: each part of the sum names its own."""
    laid.replaced(
        "  edges: [",
        "  edges: [{id: E2, kind: rake, sides: [A.left]}, ",
    ).replaced("covering: {", "covering: {starter_along: [eave, rake], ")
    body = page(laid)
    line = re.search(r'<tr id="t-starter">.*?</tr>', body, re.DOTALL)
    assert line
    terms = [
        " ".join(re.sub(r"<[^>]+>", " ", item).split())
        for item in re.findall("<li>(.*?)</li>", line[0], re.DOTALL)
    ]
    assert {
        "part 1 25 ft computed in this packet , Rake E2",
        "part 2 40 ft computed in this packet , Eave E1",
    } <= set(terms)


def test_a_number_of_no_thing_shows_its_id(laid: Office) -> None:
    line = re.search(r'<tr id="t-shingles">.*?</tr>', page(laid), re.DOTALL)
    assert line
    shown = re.sub(r"<[^>]+>", " ", line[0])
    assert "computed in this packet , takeoff.shingles.net" in " ".join(shown.split())
    assert "job record , bought.SH.allowance.percent" in " ".join(shown.split())


@pytest.mark.parametrize(
    ("planned", "says"), [("36", ""), ("33", "order 1 more"), ("33-3/4", "order 1/4 more")]
)
def test_the_order_list_marks_an_order_that_falls_short(laid: Office, planned: str, says: str) -> None:
    """1,100 sq ft by 32.8 are 34 bundles."""
    laid.replaced("status: closed", "status: under way").replaced("planned: 36", f"planned: {planned}")
    body = page(laid, "order-list")
    assert "Need with allowance" in body
    assert re.findall(r'<span class="gap why">(order [^<]*)</span>', body) == ([says] if says else [])
    laid.replaced("status: under way", "status: closed")
    assert "order 1" not in text_of(page(laid, "order-list"))


def test_before_goods_have_come_nothing_is_called_missing(laid: Office) -> None:
    laid.replaced("status: closed", "status: planned").replaced("delivered: 1, scrap: 3/8", "planned: 1")
    found = row(page(laid), "goods", "starter strip")
    assert "not recorded yet" in found


def test_every_reason_a_line_may_give_has_words() -> None:
    """Keys are read from the program's own text: what it puts on a list of what is missing."""
    used = set(UNITS)
    for path in (Path(figures.__file__).parent / "takeoff").glob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and ast.unparse(node.func).endswith("missing.append"):
                used |= {arg.value for arg in node.args if isinstance(arg, ast.Constant)}
            elif isinstance(node, ast.Assign) and "missing[" in ast.unparse(node.targets[0]):
                used |= {node.value.value} if isinstance(node.value, ast.Constant) else set()
    assert {"lap", "spacing", "one_kind"} <= used
    assert used <= set(WORDS["takeoff.missing"])
