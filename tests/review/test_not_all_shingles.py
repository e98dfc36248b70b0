"""Low slopes, lots, boards: what counts as shingled, and what a late photo is."""

from collections.abc import Callable
from typing import Any

import pytest

from tests.review.test_more_of_the_roof import BOARD, roof
from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]

CAP_SHEET = "[{id: LS1, plane: WW, product: cap sheet}]"


def test_shingles_and_bundles_are_counted_without_the_low_slope(job_office: Office) -> None:
    """102.6 and 36.9 sq ft, with 15 percent 118 and 42.5, by bundles of 32.8."""
    whole = job_office.closeout().figures
    part = job_office.changed("covering.low_slope", CAP_SHEET).closeout().figures
    assert part["work.area"].value == whole["work.area"].value
    assert (
        part["work.shingled_area"].value == part["area.A1.area"].value == part["takeoff.shingles.net"].value
    )
    assert (whole["takeoff.shingles.to_buy"].value, part["takeoff.shingles.to_buy"].value) == (4, 2)
    pieces = "takeoff.roofing-nails.pieces"
    assert part[pieces].value < whole[pieces].value


@pytest.mark.parametrize(("cover", "bundles"), [("32.8", 4), ("33.3", None)])
def test_two_lots_of_one_shingle_need_one_number_of_bundles_and_two_wrappers_none(
    job_office: Office, cover: str, bundles: int | None
) -> None:
    lot = f"{{id: MORE, item: shingle, use: shingles, unit: bundle, cover_each: {cover} sq ft}}"
    job_office.write(job_office.text.replace("bought:\n", f"bought:\n  - {lot}\n", 1))
    figures = job_office.closeout().figures
    found = figures.get("takeoff.shingles.to_buy")
    assert (found.value if found else None) == bundles


def test_a_sheet_shown_only_after_it_was_covered_says_so(job_office: Office, shoot: Shoot) -> None:
    late = shoot("P01", "deck", proves=["S1"], taken_at="2026-03-19T09:00:00")
    found = shoot("P02", "stripped", proves=["S1"], taken_at="2026-03-16T09:00:00")
    result = job_office.log(late, found).result("deck-sheets", "S1")
    assert (result.word, result.late, result.why_not_proven) == (
        "not_recorded",
        ("P01",),
        "photo_from_another_time",
    )


@pytest.mark.parametrize(
    ("nails", "word"), [("nails_each_bearing: 2", "not_verified"), ("gap: 1/8 in", "not_recorded")]
)
def test_board_nails_are_asked_and_common_practice_decides_nothing(
    job_office: Office, shoot: Shoot, nails: str, word: str
) -> None:
    roof(job_office, deck__boards=BOARD.replace("why: rot", f"{nails}, why: rot"))
    photo = shoot("P01", "deck", proves=["deck-board-nails"], taken_at="2026-03-17T08:00:00")
    assert job_office.log(photo).result("deck-board-nails").word == word


BOOT = "{id: B9, kind: pipe boot, where: back slope, plane: MN, at: [12 ft, 6 ft], state: new}"


def test_a_new_pipe_boot_wants_a_photo(job_office: Office, shoot: Shoot) -> None:
    job_office.write(job_office.text.replace("\ncovering:", f"  - {BOOT}\n\ncovering:", 1))
    assert (job_office.result("new-details", "B9").word, job_office.result("new-details", "B9").open) == (
        "not_recorded",
        True,
    )
    photo = shoot("P01", "covering", "B9", taken="2026:03:18 10:00:00")
    assert job_office.log(photo).result("new-details", "B9").word == "meets"


def test_the_fewest_nails_of_any_board_decide(job_office: Office) -> None:
    one, two = (BOARD.replace("why: rot", f"nails_each_bearing: {n}, why: rot")[1:-1] for n in (3, 2))
    roof(job_office, deck__boards=f"[{one}, {two.replace('BD1', 'BD2')}]")
    assert job_office.result("deck-board-nails").parts[0].answer.value == 2


def test_vents_without_free_area_make_no_share(job_office: Office) -> None:
    roof(job_office).added(
        "ventilation: {attic_area: 900 sq ft, vents: [{id: VT1, what: louver, place: high, state: new, pieces: 2, free_sq_in_each: 0}]}"
    )
    assert "ventilation.high_of_all" not in job_office.closeout().figures


def test_a_photo_of_another_stage_of_the_work_is_not_called_missing(job_office: Office, shoot: Shoot) -> None:
    job_office.write(job_office.text.replace("\ncovering:", f"  - {BOOT}\n\ncovering:", 1))
    felt, before = shoot("P01", "dried-in", "B9", taken="2026:03:17 10:00:00"), shoot("P02", "before", "B9")
    result = job_office.log(felt, before).result("new-details", "B9")
    assert (result.late, result.why_not_proven) == (("P01",), "photo_from_another_time")


def test_a_photo_whose_time_nobody_knows_is_not_said_to_be_of_another_time(
    job_office: Office, shoot: Shoot
) -> None:
    lost = shoot("P01", "deck", "S1", taken="")
    result = job_office.log(lost).result("deck-sheets", "S1")
    assert (result.late, result.why_not_proven) == (("P01",), "photo_without_time")
    late = shoot("P02", "deck", "S1", taken="2026:03:18 10:00:00")
    assert job_office.log(lost, late).result("deck-sheets", "S1").why_not_proven == "photo_from_another_time"
