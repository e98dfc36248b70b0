"""What is wrong with lines bought: one clear error each, at its line and column, all at once."""

from pathlib import Path

import pytest

from packet.located import read_catalogue
from packet.problems import Problem, message
from packet.workspace import packaged
from tests.support.office import Office
from tests.support.small_roofs import GABLE, PATCH, PORCH, bought_alone, with_lines

CATALOGUE = read_catalogue(packaged("shared") / "words" / "problems.yaml")

OWN_SOURCES = "yard-wrapper:\n  document: Wrapper of the shingle in our yard\n  edition: 2026\n"
OWN = """\
product: {id}
title: goods of our yard
use: {use}
unit: {unit}
source: {{id: yard-wrapper, locator: "wrapper, side panel"}}
checked: office
figures: {figures}
"""


@pytest.fixture
def office(tmp_path: Path) -> Office:
    return Office(tmp_path / "goods", PATCH)


def with_own(office: Office, id: str, use: str, unit: str, figures: str) -> Office:
    """Add a product sheet of the office's own."""
    office.file("shared/sources.yaml", OWN_SOURCES)
    office.file(f"shared/products/{id}.yaml", OWN.format(id=id, use=use, unit=unit, figures=figures))
    return office


def only(office: Office, code: str, path: str) -> Problem:
    """Return the one problem there is, which has a code and stands at a path."""
    (problem,) = office.problems()
    assert (problem.code, (problem.line, problem.column)) == (code, office.place(path))
    return problem


def shingles(more: str) -> str:
    return f"{{id: A, item: shingle, use: shingles, cover_each: 30 sq ft, {more}}}"


def test_an_unknown_product_is_refused_with_the_nearest_one(office: Office) -> None:
    office.write(bought_alone(PATCH, shingles("unit: bundle, product: laminated-metrik")))
    problem = only(office, "unknown-product", "bought.A.product")
    assert (problem.found, problem.values["nearest"]) == ("laminated-metrik", "laminated-metric")


def test_an_unknown_product_like_no_other_is_told_which_fit(office: Office) -> None:
    office.write(bought_alone(PATCH, shingles("unit: bundle, product: zzzzzzz")))
    problem = only(office, "unknown-product", "bought.A.product")
    assert problem.values["accepted"] == "laminated-metric, three-tab-english"
    office.write(bought_alone(PATCH, "{id: A, item: x, unit: bundle, product: zzzzzzz}"))
    assert "felt-30" in only(office, "unknown-product", "bought.A.product").values["accepted"]


def test_a_product_may_be_bought_for_another_use_than_its_usual_one(office: Office) -> None:
    """A self-adhered roll is usually an ice barrier; here it lines a valley."""
    line = "{id: A, item: sheet, use: valley lining, unit: roll, product: self-adhered-200}"
    (lining,) = [
        item
        for item in office.write(bought_alone(PATCH, line)).closeout().takeoff
        if item.use == "valley lining"
    ]
    assert (lining.goods, lining.missing) == (("A",), ())


def test_a_product_counted_in_another_unit_is_refused_at_the_unit(office: Office) -> None:
    office.write(bought_alone(PATCH, shingles("unit: piece, product: laminated-metric")))
    assert only(office, "product-unit", "bought.A.unit").values["accepted"] == "bundle"


@pytest.mark.parametrize(
    ("source", "nearest"), [("building-estimating-textbok", "building-estimating-textbook"), ("zzzzzzz", "")]
)
def test_an_allowance_of_an_unknown_source_is_refused(office: Office, source: str, nearest: str) -> None:
    line = shingles(f"unit: bundle, allowance: {{percent: 10 %, why: a wall, source: {source}}}")
    office.write(bought_alone(PATCH, line))
    problem = only(office, "unknown-source", "bought.A.allowance.source")
    assert problem.values["nearest"] == nearest


@pytest.mark.parametrize(("laid", "refused"), [("5 in", False), ("5-1/16 in", True)])
def test_an_exposure_larger_than_the_piece_allows_is_refused_where_it_was_typed(
    office: Office, laid: str, refused: bool
) -> None:
    with_own(office, "ours", "shingles", "bundle", "{most_exposure_in: 5}")
    office.write(bought_alone(PATCH, shingles("unit: bundle, product: ours")))
    office.changed("covering.shingle.exposure", laid)
    if refused:
        problem = only(office, "exposure-too-large", "covering.shingle.exposure")
        assert problem.values["accepted"] == "at most 5 in, by the product sheet ours"
    else:
        assert office.finding_ids() == set()


def test_two_lines_of_the_piece_refuse_the_exposure_once(office: Office) -> None:
    with_own(office, "ours", "shingles", "bundle", "{most_exposure_in: 4}")
    line = shingles("unit: bundle, product: ours")
    office.write(bought_alone(PATCH, line, line.replace("id: A", "id: B")))
    only(office, "exposure-too-large", "covering.shingle.exposure")


@pytest.mark.parametrize(("laid", "refused"), [("6 in", False), ("6-5/8 in", False), ("6-11/16 in", True)])
def test_a_remembered_limit_refuses_nothing_but_half_the_height_of_the_piece_does(
    office: Office, laid: str, refused: bool
) -> None:
    """The greatest exposure of the sheet is remembered; that a piece is 13-1/4 in high was read."""
    office.write(bought_alone(PATCH, shingles("unit: bundle, product: laminated-metric")))
    office.changed("covering.shingle.exposure", laid)
    if refused:
        problem = only(office, "exposure-too-large", "covering.shingle.exposure")
        assert problem.values["accepted"] == "at most 6-5/8 in, by the product sheet laminated-metric"
    else:
        assert office.finding_ids() == set()


def test_a_product_without_the_figure_its_line_needs_is_refused_with_the_key_to_write(office: Office) -> None:
    line = "{id: A, item: shingle, use: shingles, unit: bundle, product: laminated-metric}"
    problem = only(office.write(bought_alone(PATCH, line)), "figure-needed", "bought.A.product")
    told = (problem.values["figure"], problem.values["use"], problem.values["key"])
    assert told == ("cover_sq_ft", "shingles", "cover_each")


def test_the_wrapper_gives_what_the_product_does_not(office: Office) -> None:
    line = shingles("unit: bundle, product: laminated-metric")
    assert office.write(bought_alone(PATCH, line)).finding_ids() == set()


def test_of_two_lines_only_the_one_that_lacks_the_figure_is_refused(office: Office) -> None:
    lacks = "{id: B, item: shingle, use: shingles, unit: bundle, product: laminated-metric}"
    office.write(bought_alone(PATCH, shingles("unit: bundle, product: laminated-metric"), lacks))
    only(office, "figure-needed", "bought.B.product")


def test_goods_without_a_product_lack_a_figure_without_being_refused(office: Office) -> None:
    office.write(bought_alone(PATCH, "{id: A, item: shingle, use: shingles, unit: bundle}"))
    assert office.closeout().takeoff


def test_caps_nails_are_not_asked_for_the_width_of_the_felt(office: Office) -> None:
    line = "{id: A, item: cap nails, use: cap nails, unit: box, pieces_each: 100, product: cap-nails}"
    office.write(bought_alone(PATCH, line))
    (caps,) = [line for line in office.closeout().takeoff if line.use == "cap nails"]
    assert caps.missing == ("underlayment_width",)


def test_caps_are_counted_by_the_exposure_their_sheet_gives(office: Office) -> None:
    """480 in of ridge at 6 in, and one more."""
    with_own(office, "ours", "caps", "bundle", "{exposure_in: 6, pieces_each: 30}")
    alone = "{id: CAPS, item: caps, use: caps, unit: bundle, product: ours}"
    figures = office.write(bought_alone(GABLE, alone)).closeout().figures
    assert figures["takeoff.caps.net"].value == 81
    assert figures["takeoff.caps.to_buy"].value == 3


def test_caps_of_which_one_line_has_its_own_exposure_are_not_counted_by_the_shingle(office: Office) -> None:
    with_own(office, "ours", "caps", "bundle", "{exposure_in: 6, pieces_each: 30}")
    text = with_lines(GABLE, "{id: MORE, item: caps, use: caps, unit: bundle, product: ours}")
    (caps,) = [line for line in office.write(text).closeout().takeoff if line.use == "caps"]
    assert (caps.net, caps.missing) == ("", ("exposure_in",))


@pytest.mark.parametrize(
    ("went", "first", "sum"),
    [
        ("returned: 1, left: 1, scrap: 1-1/8", "returned", "3-1/8"),
        ("returned: 0, left: 2, scrap: 1-1/2", "left", "3-1/2"),
        ("scrap: 4", "scrap", "4"),
    ],
)
@pytest.mark.parametrize(
    "came",
    [
        "delivered: 2-7/8",
        "deliveries: [{id: D1, on: 2026-04-13, quantity: 7/8}, {id: D2, on: 2026-04-14, quantity: 2}]",
    ],
)
def test_more_went_than_came_is_refused_at_the_first_that_went(
    office: Office, came: str, went: str, first: str, sum: str
) -> None:
    office.write(bought_alone(PATCH, shingles(f"unit: bundle, {came}, {went}")))
    problem = only(office, "more-went-than-came", f"bought.A.{first}")
    assert (problem.found, problem.values["came"]) == (sum, "2-7/8")


BARRIER = "{id: R, item: membrane, use: ice barrier, unit: roll, product: self-adhered-200}"


@pytest.mark.parametrize(
    ("path", "too_much", "fits", "of"),
    [
        ("dry_in.head_lap", "36 in", "35-7/8 in", "36 in, which a piece of FELT"),
        ("dry_in.end_lap", "72 ft", "71 ft", "864 in, which a piece of FELT"),
        ("drip_edge.lap", "10 ft", "9 ft", "120 in, which a piece of DRIP"),
        ("dry_in.ice_barrier.lap", "36 in", "6 in", "36 in, which a piece of R"),
    ],
)
def test_a_lap_that_leaves_nothing_of_the_piece_is_refused_where_it_was_typed(
    office: Office, path: str, too_much: str, fits: str, of: str
) -> None:
    office.write(with_lines(GABLE, BARRIER))
    office.changed("dry_in.ice_barrier", "{product: membrane, up_slope: 6 ft, lap: 3 in}")
    problem = only(office.changed(path, too_much), "out-of-range", path)
    assert (problem.found, problem.values["accepted"]) == (too_much, f"less than {of} is")
    assert office.changed(path, fits).closeout().takeoff


@pytest.mark.parametrize(("lap", "refused"), [("71 ft", False), ("72 ft", True)])
def test_the_length_of_a_product_sheet_bounds_the_lap_too(office: Office, lap: str, refused: bool) -> None:
    """Felt of 72 ft by its sheet."""
    office.write(bought_alone(PATCH, "{id: F, item: felt, use: underlayment, unit: roll, product: felt-30}"))
    office.changed("dry_in.end_lap", lap)
    if refused:
        only(office, "out-of-range", "dry_in.end_lap")
    else:
        assert office.closeout().takeoff


def test_a_published_lap_that_leaves_nothing_of_a_narrow_roll_is_said_on_its_line(office: Office) -> None:
    """Sheets lie double on the porch, lapped 19 in; nobody typed that lap."""
    office.write(PORCH.replace("width_each: 36 in", "width_each: 19 in"))
    missing = {line.use: line.missing for line in office.closeout().takeoff}
    assert missing["underlayment"] == missing["cap nails"] == ("lap_too_large",)


def test_a_bundle_of_nothing_and_a_shingle_without_nails_are_refused(office: Office) -> None:
    office.write(GABLE).changed("bought.CAPS.pieces_each", "0").changed("covering.nails_each", "0")
    places = [office.place(path) for path in ("bought.CAPS.pieces_each", "covering.nails_each")]
    assert office.places() == sorted(("job.yaml", "out-of-range", *place) for place in places)


def test_all_used_up_is_no_mistake(office: Office) -> None:
    office.write(bought_alone(PATCH, shingles("unit: bundle, delivered: 3, returned: 1, left: 1, scrap: 1")))
    assert office.finding_ids() == {"laid-below-need:A"}


@pytest.mark.parametrize(("typed", "refused"), [("4", True), ("3", False)])
def test_deliveries_that_do_not_come_to_what_was_typed_are_refused(
    office: Office, typed: str, refused: bool
) -> None:
    two = "deliveries: [{id: D1, on: 2026-04-13, quantity: 1}, {id: D2, on: 2026-04-14, quantity: 2}]"
    office.write(bought_alone(PATCH, shingles(f"unit: bundle, delivered: {typed}, {two}")))
    if refused:
        assert only(office, "out-of-range", "bought.A.delivered").values["accepted"].startswith("3,")
    else:
        assert office.finding_ids() == set()


def test_deliveries_and_goods_share_one_set_of_ids(office: Office) -> None:
    two = "deliveries: [{id: A, on: 2026-04-13, quantity: 3}]"
    office.write(bought_alone(PATCH, shingles(f"unit: bundle, {two}")))
    only(office, "duplicate-id", "bought.A.deliveries.0.id")


def test_every_mistake_of_the_goods_comes_at_once(office: Office) -> None:
    with_own(office, "ours", "shingles", "bundle", "{most_exposure_in: 4}")
    office.write(
        bought_alone(
            PATCH,
            "{id: A, item: s, use: shingles, unit: bundle, product: ours, cover_each: 30 sq ft}",
            "{id: B, item: felt, use: underlayment, unit: roll, product: felt-31}",
            "{id: D, item: metal, use: drip edge, unit: bundle, product: drip-edge-10}",
            "{id: E, item: vent, unit: piece, allowance: {percent: 5 %, why: x, source: no-such-text}}",
        )
    )
    found = [(code, line, column) for _, code, line, column in office.places()]
    assert found == sorted(
        [
            ("exposure-too-large", *office.place("covering.shingle.exposure")),
            ("product-unit", *office.place("bought.D.unit")),
            ("unknown-product", *office.place("bought.B.product")),
            ("unknown-source", *office.place("bought.E.allowance.source")),
        ]
    )


@pytest.mark.parametrize(
    "line",
    [
        "{id: A, item: s, use: shingles, unit: bundle, product: laminated-metric}",
        shingles("unit: piece, product: laminated-metric"),
        shingles("unit: bundle, product: laminated-metrik"),
        shingles("unit: bundle, product: zzzzzzz"),
    ],
)
def test_every_problem_says_what_was_found_and_what_to_write(office: Office, line: str) -> None:
    (problem,) = office.write(bought_alone(PATCH, line)).problems()
    says, write = message(problem, CATALOGUE)
    assert problem.found in says
    assert write
    assert not set("{[") & set(says + write)
