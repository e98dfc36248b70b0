"""The order list as a file: read back as a spreadsheet would, and with names that try to be worked out."""

import csv
import io
from typing import Any

import pytest

from packet.closeout.orderlist import as_text, order_csv, order_lines
from packet.closeout.redact import redact
from packet.text import load_words
from packet.workspace import Workspace
from tests.support.office import ROOT, Office
from tests.support.planned import BEGUN, GOODS

HEADS = [
    "For", "Item", "Product sheet", "To buy", "Unit", "Ordered", "Need with allowance", "Unit of the need",
    "Weight of the nails (lb)", "Allowance (%)", "Reason of the allowance", "Note",
]  # fmt: skip


@pytest.fixture
def begun(tmp_path: Any) -> Office:
    return Office(tmp_path / "office", BEGUN + GOODS)


def copy_of(office: Office) -> dict[str, Any]:
    return redact(office.closeout(), "office")


def rows_of(office: Office) -> list[list[str]]:
    """Return the cells of the file, read back from its bytes."""
    content = order_csv(copy_of(office), load_words(Workspace(ROOT).shared_folders()))
    return list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline=""), strict=True))


def test_each_line_is_a_row_below_heads_in_words(begun: Office) -> None:
    """1,000 sq ft and an eighth is 1,125 sq ft: 34.3 bundles of 32.8; 40 ft of eave is one bundle of 105 ft."""
    why = "Valleys, and short courses."
    assert rows_of(begun) == [
        HEADS,
        ["Starter", "starter strip", "", "1", "bundle", "", "40", "ft", "", "", "", ""],
        ["Shingles", "laminated shingle", "", "35", "bundles", "36", "1125", "sq ft", "", "12.5", why, ""],
        ["", "fan hood", "", "", "pieces", "2", "", "", "", "", "", ""],
    ]


def test_the_file_is_utf_8_by_its_mark_with_lines_as_rfc_4180_asks(begun: Office) -> None:
    begun.replaced("fan hood", "Lüfterhaube 4″")
    content = order_csv(copy_of(begun), load_words(Workspace(ROOT).shared_folders()))
    assert content.startswith(b"\xef\xbb\xbfFor,Item,")
    assert content.count(b"\r\n") == content.count(b"\n") == 4
    assert "Lüfterhaube 4″" in content.decode("utf-8-sig")


def test_numbers_are_plain(begun: Office) -> None:
    begun.replaced("lower: 40 ft", "lower: 400 ft").replaced("cover_each: 32.8 sq ft", "cover_each: 1 sq ft")
    row = rows_of(begun)[2]
    assert (row[3], row[6]) == ("11250", "11250")


@pytest.mark.parametrize(
    "name", ["=1+1", "+1", "-1", "@SUM(A1)", "  =1+1", "=cmd|' /C calc'!A0", "＝1+1", "－1"]
)
def test_a_name_that_a_spreadsheet_would_work_out_stays_text(begun: Office, name: str) -> None:
    quoted = name.replace("'", "''")
    begun.replaced("item: fan hood", f"item: '{quoted}'")
    begun.replaced("item: laminated shingle", f"item: '{quoted}'")
    rows = rows_of(begun)
    typed = name.strip()
    assert [rows[3][1].removeprefix("'").strip(), rows[2][1].removeprefix("'").strip()] == [typed, typed]
    assert {row[1][0] for row in rows[2:]} == {"'"}


@pytest.mark.parametrize("start", ["\t", "\r", "\n", "=", "+", "-", "@"])
def test_every_sign_that_begins_a_formula_is_held(start: str) -> None:
    assert as_text(f"{start}1") == f"'{start}1"


def test_a_reason_is_held_like_a_name(begun: Office) -> None:
    begun.replaced("Valleys, and short courses.", "=2*3")
    assert rows_of(begun)[2][10] == "'=2*3"


def test_commas_and_quotation_marks_come_back_as_typed(begun: Office) -> None:
    begun.replaced("item: fan hood", """item: 'hood, 4" round, "low"'""")
    assert rows_of(begun)[3][1] == 'hood, 4" round, "low"'


def test_a_line_says_what_it_lacks(begun: Office) -> None:
    begun.replaced(", cover_each: 32.8 sq ft", "").replaced(", length_each: 105 ft", "")
    starter, shingles, _ = rows_of(begun)[1:]
    assert (shingles[3], shingles[6], shingles[11]) == (
        "", "1125", "not computed: the wrapper's cover is not recorded",
    )  # fmt: skip
    assert starter[11] == "not computed: the length of one is not recorded"


def test_a_need_without_goods_and_goods_without_a_need_say_so(begun: Office) -> None:
    begun.write(BEGUN + "bought: [{id: B, item: pipe boot, use: pipe boots, unit: piece, planned: 3}]\n")
    notes = {row[0]: row[11] for row in rows_of(begun)[1:]}
    assert notes == {
        "Pipe boots": "not computed: nothing measured in the record asks for it",
        "Starter": "not computed: no goods are written down for it",
        "Shingles": "not computed: no goods are written down for it",
    }


def test_two_items_for_one_use_are_bought_as_one(begun: Office) -> None:
    begun.added(
        "  - {id: SH2, item: same shingle, use: shingles, unit: bundle, cover_each: 32.8 sq ft, planned: 4}"
    )
    row = next(row for row in rows_of(begun) if row[0] == "Shingles")
    assert (row[1], row[3], row[5]) == ("laminated shingle; same shingle", "35", "40")


def test_a_record_with_little_in_it_has_an_empty_list(small_office: Office) -> None:
    assert order_lines(copy_of(small_office)) == ()
    assert rows_of(small_office) == [HEADS]
