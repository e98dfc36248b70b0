"""``packet products``: which sheets there are, what they are for and what they say."""

import json
from pathlib import Path
from typing import get_args

import pytest

from packet.uses import Use
from tests.cli.conftest import Run
from tests.support.office import ROOT, Office

FELT = """\
product: our-felt
title: No. 30 felt, 36 in x 60 ft
use: underlayment
unit: roll
source: {id: our-wrappers, locator: "roll bought on March 2, 2026"}
checked: office
figures: {width_in: 36, length_ft: 60, cover_sq_ft: {value: null, reason: the wrapper does not say it}}
"""
HOOD = (
    FELT.replace("our-felt", "hood").replace("use: underlayment\n", "").replace("unit: roll", "unit: piece")
)
SOURCES = 'our-wrappers: {document: Wrappers kept in the office, edition: "2026"}\n'


@pytest.fixture
def stocked(small_office: Office) -> Office:
    small_office.file("shared/products/our-felt.yaml", FELT)
    small_office.file("shared/products/hood.yaml", HOOD)
    small_office.file("shared/sources.yaml", SOURCES)
    return small_office


def ids(out: str) -> list[str]:
    return [
        line.strip().partition(":")[0] for line in out.splitlines() if line[:3].strip() and line[0] == " "
    ]


def test_every_sheet_is_listed_once(stocked: Office, run: Run) -> None:
    ran = run(stocked.root, "products")
    assert (ran.code, ran.err) == (0, "")
    packaged = {path.stem for path in (ROOT / "shared" / "products").glob("*.yaml")}
    assert len(packaged) > 20
    assert sorted(ids(ran.out)) == sorted(packaged | {"our-felt", "hood"})


def test_uses_come_in_the_order_a_roof_is_built_and_sheets_without_one_last(
    stocked: Office, run: Run
) -> None:
    found = [sheet["use"] for sheet in json.loads(run(stocked.root, "products", "--json").out)]
    order = [*get_args(Use), None]
    assert found == sorted(found, key=order.index)
    assert found[-1] is None
    out = run(stocked.root, "products").out
    last = out[out.index("Of no line of the takeoff") :]
    assert {"hood", "soffit-strip"} <= set(ids(last))
    assert "felt-30" not in last


def test_a_sheet_shows_its_figures_with_unit_and_mark_and_what_it_lacks(stocked: Office, run: Run) -> None:
    out = run(stocked.root, "products", "underlayment").out
    assert out.splitlines()[0] == "Underlayment"
    own = out[out.index("  our-felt") :].splitlines()[:4]
    assert own == [
        "  our-felt: No. 30 felt, 36 in x 60 ft; bought by the roll; the office's sheet",
        "    length_ft: 60 ft (stated by the office)",
        "    width_in: 36 in (stated by the office)",
        "    cover_sq_ft: not on the sheet (the wrapper does not say it)",
    ]
    assert "  felt-30: No. 30 asphalt felt, 36 in x 72 ft; bought by the roll\n" in out
    assert "    length_ft: 72 ft (read in the text itself)\n" in out


@pytest.mark.parametrize(
    "typed", [("roofing", "nails"), ("roofing nails",), ("roofing-nails",), ("Roofing Nails",)]
)
def test_a_use_may_be_typed_with_spaces_or_hyphens(stocked: Office, run: Run, typed: tuple[str, ...]) -> None:
    ran = run(stocked.root, "products", *typed, "-q")
    assert ran.code == 0
    assert "roofing-nails-1-1-4" in ran.out.splitlines()
    assert all(id.startswith("roofing-nails-") for id in ran.out.splitlines())


def test_a_use_that_is_none_is_refused_with_those_there_are(stocked: Office, run: Run) -> None:
    ran = run(stocked.root, "products", "rofing", "nails")
    assert (ran.code, ran.out) == (2, "")
    assert 'Did you mean "roofing nails"?' in ran.err
    assert all(use in ran.err for use in get_args(Use))


def test_json_holds_numbers_units_marks_and_places(stocked: Office, run: Run) -> None:
    sheets = {sheet["id"]: sheet for sheet in json.loads(run(stocked.root, "products", "--json").out)}
    own = sheets["our-felt"]
    assert (own["own"], own["use"], own["unit"]) == (True, "underlayment", "roll")
    assert own["figures"]["length_ft"] == {
        "value": 60.0,
        "unit": "ft",
        "mark": "office",
        "document": "Wrappers kept in the office",
        "edition": "2026",
        "locator": "roll bought on March 2, 2026",
    }
    assert own["missing"] == {"cover_sq_ft": "the wrapper does not say it"}
    assert sheets["felt-30"]["own"] is False


def test_a_sheet_that_is_wrong_is_told_with_its_place(stocked: Office, run: Run) -> None:
    stocked.file("shared/products/our-felt.yaml", FELT.replace("length_ft: 60", "length_ft: 6000"))
    ran = run(stocked.root, "products")
    assert ran.code == 2
    assert "shared/products/our-felt.yaml:7:" in ran.err
    assert "out-of-range" in ran.err


def test_it_wants_an_office(tmp_path: Path, run: Run) -> None:
    ran = run(tmp_path, "products")
    assert ran.code == 2
    assert "error[not-an-office]" in ran.err
