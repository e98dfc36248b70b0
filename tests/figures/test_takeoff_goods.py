"""What one unit of the goods gives, what to buy by it, what was laid, and what a line lacks."""

import math
from typing import get_args

import pytest

from packet.uses import Use
from tests.support.small_roofs import GABLE, HEAD, PATCH, bought_alone, with_lines
from tests.support.takeoff import TakenOff, taken_off
from tests.support.yamltext import with_value

PLANE_SQ_FT = 40 * math.sqrt(12**2 + 6**2)
FELT = "{id: FELT, item: felt, use: underlayment, unit: roll, product: felt-30}"
SHINGLES = "{{id: {}, item: shingle, use: shingles, unit: {}, cover_each: {} sq ft{}}}"


def patch_with(*lines: str) -> TakenOff:
    """Return the takeoff of the patch of 90 sq ft with some lines bought."""
    return taken_off(bought_alone(PATCH, *lines))


def shingles(id: str, cover: str = "30", more: str = "", unit: str = "bundle") -> str:
    return SHINGLES.format(id, unit, cover, more)


def test_a_product_sheet_says_what_the_wrapper_does_not() -> None:
    """Felt of 36 in by 72 ft, 6 in of it lapped: 90 sq ft * 36 / 32 by 214.5."""
    found = patch_with(FELT)
    assert found.net("underlayment") == 101.25
    assert (found.value("takeoff.underlayment.gives"), found.to_buy("underlayment")) == (214.5, 1)
    working = found.figures["takeoff.underlayment.gives"].working
    assert working
    origins = {term.symbol: (term.origin.kind, term.origin.ref) for term in working.terms}
    assert origins["roll_width_in"] == ("product", "felt-30.width_in")
    assert "jlc-field-guide" in {source.id for source in found.figures["takeoff.underlayment.gives"].sources}


def test_the_wrapper_comes_before_the_product_sheet() -> None:
    """A wrapper of 48 in: shown as 44, and a roll gives 71.5 ft by 4."""
    found = patch_with(FELT.replace("roll,", "roll, width_each: 48 in,"))
    assert float(found.net("underlayment")) == pytest.approx(90 * 48 / 44)
    assert found.value("takeoff.underlayment.gives") == 286
    assert found.figures["takeoff.underlayment.MS"].sources == ()


@pytest.mark.parametrize(
    ("unit", "more", "buys"),
    [
        ("piece", "", 34),
        ("piece", "pieces_each: 2, ", 17),
        ("box", "pieces_each: 33, ", 2),
        ("box", "pieces_each: 34, ", 1),
    ],
)
def test_a_piece_is_a_piece_unless_the_wrapper_holds_more(unit: str, more: str, buys: int) -> None:
    """34 pieces of step flashing."""
    line = f"{{id: STEP, item: step flashing, use: step flashing, {more}unit: {unit}}}"
    assert taken_off(bought_alone(GABLE, line)).to_buy("step flashing") == buys


def test_a_box_whose_wrapper_says_nothing_gives_nothing_to_buy() -> None:
    found = taken_off(bought_alone(GABLE, "{id: STEP, item: step, use: step flashing, unit: box}"))
    assert (found.line("step flashing").to_buy, found.missing("step flashing")) == ("", ("pieces_each",))


def test_nails_are_bought_by_the_box_or_by_the_pound() -> None:
    """288 nails: by 150 in a box 2, by 165 to the pound 2; a box is not read by the pound."""
    nails = "{{id: N, item: nails, use: roofing nails, product: roofing-nails-1-1-2, {}}}"
    assert patch_with(nails.format("unit: lb")).to_buy("roofing nails") == 2
    assert patch_with(nails.format("unit: box, pieces_each: 150")).to_buy("roofing nails") == 2
    assert patch_with(nails.format("unit: box, pieces_each: 144")).to_buy("roofing nails") == 2
    assert patch_with(nails.format("unit: box, pieces_each: 143")).to_buy("roofing nails") == 3


def test_two_lines_of_one_cover_are_bought_and_laid_together() -> None:
    """3 and 1-1/2 of 30 sq ft; 90 sq ft take 3."""
    found = patch_with(
        shingles("A", more=", planned: 3, delivered: 3"),
        shingles("B", more=", planned: 1, delivered: 2, left: 1/2"),
    )
    line = found.line("shingles")
    assert (line.goods, line.unit, line.missing) == (("A", "B"), "bundle", ())
    assert (found.to_buy("shingles"), found.value(line.planned)) == (3, 4)
    assert (found.value(line.laid), found.value(line.covers)) == (4.5, 135)


def test_two_lines_of_different_covers_have_no_common_count() -> None:
    found = patch_with(shingles("A", "30", ", delivered: 2"), shingles("B", "33", ", delivered: 2"))
    line = found.line("shingles")
    assert (line.net, line.to_buy, line.covers) == ("takeoff.shingles.net", "", "")
    assert line.missing == ("one_kind",)


def test_a_line_that_does_not_say_its_cover_is_not_taken_for_its_neighbour() -> None:
    bare = "{id: B, item: shingle, use: shingles, unit: bundle, delivered: 2}"
    line = patch_with(shingles("A", "30", ", delivered: 2"), bare).line("shingles")
    assert (line.to_buy, line.covers, line.missing) == ("", "", ("cover_sq_ft",))


def test_goods_of_two_units_are_not_added() -> None:
    found = patch_with(
        shingles("A", more=", planned: 2, delivered: 2"),
        shingles("B", more=", planned: 2, delivered: 2", unit="piece"),
    )
    line = found.line("shingles")
    assert (line.unit, line.to_buy, line.planned, line.laid, line.covers) == ("", "", "", "", "")
    assert line.missing == ("one_unit",)


def test_the_larger_of_two_allowances_counts_whichever_comes_first() -> None:
    small = shingles("A", more=", allowance: {percent: 5 %, why: a}")
    large = shingles("B", more=", allowance: {percent: 20 %, why: b}")
    for lines in ((small, large), (large, small)):
        assert patch_with(*lines).need("shingles") == 108


def test_what_was_laid_covers_by_what_one_gives() -> None:
    """5 came, 1 back, 1/2 left, 1/4 thrown away: 3-1/4 of 30 sq ft."""
    more = ", planned: 4, delivered: 5, returned: 1, left: 1/2, scrap: 1/4"
    found = patch_with(shingles("A", more=more))
    line = found.line("shingles")
    assert (line.laid, line.planned) == ("bought.A.laid", "bought.A.planned")
    assert (found.value(line.laid), found.value(line.covers)) == (3.25, 97.5)
    assert found.figures[line.covers].unit == "sq_ft"


@pytest.mark.parametrize(
    ("typed", "laid", "formula"),
    [
        ("", 5, "delivered"),
        (", left: 1/2", 4.5, "delivered - left"),
        (", scrap: 1/4, returned: 1", 3.75, "delivered - returned - scrap"),
        (", returned: 0, left: 0, scrap: 0", 5, "delivered - returned - left - scrap"),
    ],
)
def test_what_was_laid_rests_on_what_was_typed_and_on_nothing_else(
    typed: str, laid: float, formula: str
) -> None:
    found = patch_with(shingles("A", more=f", delivered: 5{typed}"))
    figure = found.figures["bought.A.laid"]
    assert figure.working
    assert (figure.value, figure.working.formula) == (laid, formula)
    names = formula.split(" - ")
    assert [(term.symbol, term.origin.ref) for term in figure.working.terms] == [
        (name, f"bought.A.{name}") for name in names
    ]
    amounts = {f"bought.A.{name}" for name in ("returned", "left", "scrap")} & found.figures.keys()
    assert amounts == {f"bought.A.{name}" for name in names[1:]}


def test_a_piece_that_is_bought_by_the_piece_says_so_in_the_working() -> None:
    line = "{id: STEP, item: step flashing, use: step flashing, unit: piece}"
    working = taken_off(bought_alone(GABLE, line)).figures["takeoff.step-flashing.to_buy"].working
    assert working
    (gives,) = [term for term in working.terms if term.symbol == "gives_each"]
    assert (gives.value, gives.unit, gives.origin.kind, gives.origin.ref) == (1, "piece", "unit", "piece")


def test_deliveries_are_added_up() -> None:
    more = ", deliveries: [{id: D1, on: 2026-04-13, quantity: 3}, {id: D2, on: 2026-04-15, quantity: 1-1/2}], left: 1"
    found = patch_with(shingles("A", more=more))
    assert (found.value("bought.A.delivered"), found.value("bought.A.laid")) == (4.5, 3.5)
    working = found.figures["bought.A.delivered"].working
    assert working
    assert [term.origin.ref for term in working.terms] == [
        "bought.A.deliveries.D1.quantity",
        "bought.A.deliveries.D2.quantity",
    ]


def test_before_anything_came_nothing_was_laid() -> None:
    line = patch_with(shingles("A", more=", planned: 4")).line("shingles")
    assert (line.planned, line.laid, line.covers) == ("bought.A.planned", "", "")


#: What a line lacks when a part of the record is left out, by what is taken away.
LACKS: list[tuple[Use, str, str, tuple[str, ...]]] = [
    ("deck nails", "  framing: {member: 2x8 rafter, spacing: 24 in oc}\n", "", ("framing",)),
    (
        "deck nails",
        "  panel: {product: plywood, thickness: 15/32 in, width: 4 ft, length: 8 ft}\n",
        "",
        ("panel", "old_panel"),
    ),
    ("deck nails", "  field_spacing: 12 in\n", "", ("spacing",)),
    (
        "joint tape",
        "  panel: {product: plywood, thickness: 15/32 in, width: 4 ft, length: 8 ft}\n",
        "",
        ("panel",),
    ),
    ("joint tape", ", length_each: 75 ft}", "}", ("length_ft",)),
    ("underlayment", "width_each: 36 in, ", "", ("width_in",)),
    ("underlayment", ", length_each: 72 ft}", "}", ("length_ft",)),
    ("cap nails", "width_each: 36 in, ", "", ("underlayment_width",)),
    ("cap nails", ", pieces_each: 1000}", "}", ("pieces_each",)),
    ("drip edge", ", length_each: 10 ft}", "}", ("length_ft",)),
    ("step flashing", "state: new, length: 4 ft}", "state: new}", ("wall_length",)),
    ("starter", ", length_each: 105 ft}", "}", ("length_ft",)),
    ("shingles", ", cover_each: 33.3 sq ft", "", ("cover_sq_ft",)),
    ("ridge vent", ", length_each: 4 ft}", "}", ("length_ft",)),
    ("caps", ", pieces_each: 30}", "}", ("pieces_each",)),
    ("caps", "  shingle: {kind: laminated, width: 36 in, exposure: 5 in}\n", "", ("shingle",)),
    ("roofing nails", "width: 36 in, exposure", "exposure", ("shingle_width",)),
    ("roofing nails", "  nails_each: 4\n", "", ("nails_each",)),
    ("roofing nails", "product: roofing-nails-1-1-2, ", "", ("nails_a_pound",)),
    ("cement", "product: cement-10-1-oz, ", "", ("spots_each",)),
]


@pytest.mark.parametrize(("use", "old", "new", "missing"), LACKS)
def test_a_line_says_what_it_lacks(use: Use, old: str, new: str, missing: tuple[str, ...]) -> None:
    assert GABLE.count(old) == 1
    found = taken_off(GABLE.replace(old, new))
    assert found.missing(use) == missing
    assert found.line(use).to_buy == ""


#: Lines whose need is that of the areas worked on.
ON_AREAS = {
    "joint tape", "ice barrier", "underlayment", "cap nails", "drip edge", "valley lining", "starter",
    "shingles", "caps", "roofing nails",
}  # fmt: skip


@pytest.mark.parametrize("use", get_args(Use))
def test_goods_of_the_areas_say_that_no_area_is_recorded_and_others_do_not(use: Use) -> None:
    """Neither sheets nor details nor vents are recorded here: an area would not help with those."""
    goods = f"{{id: X, item: goods, use: {use}, unit: box, planned: 2}}"
    line = taken_off(with_lines(f"{HEAD}bought:\n", goods)).line(use)
    assert (line.net, line.planned) == ("", "bought.X.planned")
    assert ("areas" in line.missing) is (use in ON_AREAS)


def test_without_areas_the_goods_of_a_known_roof_say_so() -> None:
    areas = "  areas:\n    - {id: A1, plane: GS}\n    - {id: A2, plane: GN}\n"
    assert GABLE.count(areas) == 1
    found = taken_off(GABLE.replace(areas, ""))
    assert {line.use for line in found.lines if line.missing} == ON_AREAS - {"ice barrier", "valley lining"}
    assert found.missing("shingles") == ("areas",)
    assert "areas" not in {name for line in taken_off(GABLE).lines for name in line.missing}


def test_a_barrier_without_a_lap_says_so() -> None:
    text = with_value(GABLE, "dry_in.ice_barrier", "{product: membrane, up_slope: 6 ft}")
    line = (
        "{id: BARRIER, item: membrane, use: ice barrier, unit: roll, width_each: 36 in, length_each: 60 ft}"
    )
    assert taken_off(with_lines(text, line)).missing("ice barrier") == ("lap",)


def test_goods_whose_need_is_not_known_stay_in_the_takeoff() -> None:
    """No valley was worked on, yet a lining came."""
    line = patch_with(
        "{id: V, item: metal, use: valley lining, unit: roll, length_each: 50 ft, delivered: 1}"
    ).line("valley lining")
    assert (line.net, line.need, line.to_buy, line.goods, line.laid) == ("", "", "", ("V",), "bought.V.laid")
