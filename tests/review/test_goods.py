"""Goods held against the need: what was laid once the job is closed, what was ordered before."""

import json
from pathlib import Path

import pytest

from packet.closeout.redact import redact
from packet.readers import READERS, Reader
from tests.support.office import Office
from tests.support.small_roofs import PATCH, bought_alone

#: A line of shingles for the 90 sq ft of the patch.
LINE = "{{id: {}, item: shingle, use: shingles, unit: bundle, cover_each: {} sq ft{}}}"
EXACT = "allowance: {percent: 10 %, why: a wall}"


@pytest.fixture
def office(tmp_path: Path) -> Office:
    return Office(tmp_path / "goods", PATCH)


def bought(office: Office, *more: str, cover: str = "30") -> Office:
    """Write the patch with shingles alone bought, a line for each text."""
    lines = [LINE.format(id, cover, text and f", {text}") for id, text in zip("ABC", more, strict=False)]
    return office.write(bought_alone(PATCH, *lines))


@pytest.mark.parametrize(
    ("laid", "found"),
    [
        # 5 percent below 90 sq ft are 85.5, which are 2.85 of 30
        ("3", set()),
        ("2.85", set()),
        ("2.849", {"laid-below-need:A"}),
        ("0", {"laid-below-need:A"}),
        # 15 percent above are 103.5; one bundle above are 120, which is more
        ("3.46", set()),
        ("4", set()),
        ("4.001", {"laid-above-need:A"}),
    ],
)
def test_what_was_laid_is_near_the_need_or_a_finding(office: Office, laid: str, found: set[str]) -> None:
    assert bought(office, f"delivered: {laid}").finding_ids() == found


@pytest.mark.parametrize(("laid", "found"), [("20.7", set()), ("20.701", {"laid-above-need:A"})])
def test_of_small_units_the_percent_counts(office: Office, laid: str, found: set[str]) -> None:
    """103.5 sq ft are 20.7 of 5; one more than 18 would be 19."""
    assert bought(office, f"delivered: {laid}", cover="5").finding_ids() == found


@pytest.mark.parametrize(
    ("laid", "found"),
    [("2.85", set()), ("2.84", {"laid-below-need:A"}), ("4.3", set()), ("4.301", {"laid-above-need:A"})],
)
def test_below_is_below_the_net_need_and_above_is_above_it_with_its_allowance(
    office: Office, laid: str, found: set[str]
) -> None:
    """Net 90, with a tenth 99, and one bundle above that 129: 4.3 of 30."""
    assert bought(office, f"delivered: {laid}, {EXACT}").finding_ids() == found


def test_what_went_back_stayed_or_was_thrown_away_was_not_laid(office: Office) -> None:
    assert bought(office, "delivered: 5, returned: 1, left: 1/2, scrap: 1/2").finding_ids() == set()
    assert bought(office, "delivered: 5, returned: 1, left: 1/2, scrap: 1").finding_ids() == {
        "laid-below-need:A"
    }


def test_two_lines_of_one_use_are_judged_together(office: Office) -> None:
    assert bought(office, "delivered: 2", "delivered: 1").finding_ids() == set()
    assert bought(office, "delivered: 2", "delivered: 1/2").finding_ids() == {"laid-below-need:A-B"}


def test_a_line_that_nobody_could_count_is_not_judged(office: Office) -> None:
    lines = (LINE.format("A", "30", ", delivered: 1/2"), LINE.format("B", "33", ", delivered: 1/2"))
    assert office.write(bought_alone(PATCH, *lines)).finding_ids() == set()


def test_a_finding_names_cover_and_need(office: Office) -> None:
    (below,) = bought(office, f"delivered: 2, {EXACT}").closeout().findings
    assert below.figures == ("takeoff.shingles.covers", "takeoff.shingles.net")
    (above,) = bought(office, f"delivered: 9, {EXACT}").closeout().findings
    assert above.figures == ("takeoff.shingles.covers", "takeoff.shingles.need")


@pytest.mark.parametrize("status", ["planned", "under way"])
@pytest.mark.parametrize(("planned", "found"), [("2", {"ordered-below-need:A"}), ("3", set()), ("9", set())])
def test_an_order_is_held_against_what_there_is_to_buy_until_the_job_is_closed(
    office: Office, status: str, planned: str, found: set[str]
) -> None:
    bought(office, f"planned: {planned}, delivered: 1/2").changed("job.status", status)
    assert office.finding_ids() == found


def test_a_closed_job_is_asked_what_was_laid_and_not_what_was_ordered(office: Office) -> None:
    assert bought(office, "planned: 1, delivered: 3").finding_ids() == set()


def test_before_anything_was_ordered_there_is_nothing_to_find(office: Office) -> None:
    assert bought(office, EXACT).changed("job.status", "under way").finding_ids() == set()
    assert bought(office, EXACT).finding_ids() == set()


@pytest.mark.parametrize(
    ("status", "line", "id"),
    [
        ("closed", "delivered: 2", "laid-below-need:A"),
        ("closed", "delivered: 9", "laid-above-need:A"),
        ("under way", "planned: 2", "ordered-below-need:A"),
    ],
)
def test_an_explanation_stands_beside_the_finding_and_does_not_remove_it(
    office: Office, status: str, line: str, id: str
) -> None:
    bought(office, line).changed("job.status", status).added(f'explained: {{"{id}": from the truck}}')
    assert [(f.id, f.explanation) for f in office.closeout().findings] == [(id, "from the truck")]


def test_the_tolerance_is_a_figure_pages_can_state(office: Office) -> None:
    figures = bought(office, "delivered: 3").closeout().figures
    assert figures["tolerance.laid_below_the_need"].value == 5
    assert figures["tolerance.laid_above_the_need"].value == 15


@pytest.mark.parametrize("reader", READERS)
def test_a_copys_takeoff_names_only_figures_that_the_copy_has(office: Office, reader: Reader) -> None:
    deliveries = "deliveries: [{id: D1, on: 2026-04-13, ticket: T-1, quantity: 3}, {id: D2, on: 2026-04-14, quantity: 1}]"
    bought(office, f"planned: 4, {deliveries}, {EXACT}")
    copy = redact(office.closeout(), reader)
    (line,) = [line for line in copy["takeoff"] if line["use"] == "shingles"]
    named = {line[name] for name in ("net", "need", "gives", "to_buy", "planned", "laid", "covers")}
    assert "" not in named
    stated = {"tolerance.laid_below_the_need", "tolerance.laid_above_the_need"}
    assert named | stated <= copy["figures"].keys()


def test_money_of_the_goods_papers_stays_with_the_office(office: Office) -> None:
    bought(office, "planned: 4, delivered: 9").added(
        "money: {contract: 'USD 7,313.13'}\n"
        "documents: [{id: D9, kind: receipt, title: canary-yard-receipt, date: 2026-04-13, party: owner}]"
    )
    outside, inside = (json.dumps(redact(office.closeout(), reader)) for reader in ("outside", "office"))
    for private in ("7,313.13", "canary-yard-receipt"):
        assert private in inside
        assert private not in outside
    assert "laid-above-need" in outside
