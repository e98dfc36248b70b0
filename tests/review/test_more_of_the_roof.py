"""Vents, ice barrier, sealed joints, an old deck nailed again, boards, low slopes: asked, proven, decided."""

from collections.abc import Callable
from typing import Any

import pytest

from packet.review.model import Result
from tests.support.office import Office
from tests.support.records import fits_any_pitch

Shoot = Callable[..., dict[str, Any]]

VENTS = """\
ventilation:
  attic_area: 1500 sq ft
  climate_zone: 3
  vents:
    - {id: VT1, what: ridge vent, place: high, state: new, length: 20 ft, free_sq_in_each: 18, below_top: 3 in}
    - {id: VT2, what: soffit strip, place: low, state: new, length: 40 ft, free_sq_in_each: 9}
"""
RENAILED = "{planes: [MS], nail: {size: 2-3/8 x 0.113, shank: ring}, edge_spacing: 6 in, field_spacing: 6 in}"
BOARD = (
    "[{id: BD1, plane: MS, where: at the eave, size: 1x6, width: 5-1/2 in, thickness: 3/4 in,"
    " pieces: 6, length: 54 ft, why: rot}]"
)
OLDER, NEWER = "ibhs-high-wind-older", "ibhs-high-wind-2025"


def roof(office: Office, kind: str = "re-roof", **changes: str) -> Office:
    """Make the demo job another kind of work, with changes by path; dots are written as two underscores."""
    office.changed("job.kind", kind)
    for path, text in changes.items():
        office.changed(path.replace("__", "."), text)
    return office


def vented(office: Office, code: str = "irc-2021") -> Office:
    return roof(office, basis__code=code).added(VENTS)


def word_of(office: Office, requirement: str) -> tuple[str, str]:
    result = office.result(requirement)
    return result.word, result.reason


def missing(result: Result) -> set[str]:
    return {fact for part in result.parts for limit in part.limits for fact in limit.missing}


# Ventilation


@pytest.mark.parametrize(
    ("kind", "with_vents", "expected"),
    [
        ("re-roof", False, ("not_recorded", "")),
        ("section", False, ("does_not_apply", "no_ventilation_recorded")),
        ("section", True, ("not_recorded", "")),
    ],
)
def test_vents_are_asked_of_a_new_roof_and_elsewhere_when_they_are_recorded(
    job_office: Office, kind: str, with_vents: bool, expected: tuple[str, str]
) -> None:
    office = roof(job_office, kind)
    assert word_of(office.added(VENTS) if with_vents else office, "attic-ventilation") == expected


def test_a_patch_is_not_asked_about_vents(job_office: Office) -> None:
    asked = {result.requirement for result in job_office.added(VENTS).closeout().results}
    assert "attic-ventilation" not in asked


@pytest.mark.parametrize("stage", ["deck", "dried-in", "covering", "done"])
def test_vents_stay_visible_to_the_end(job_office: Office, shoot: Shoot, stage: str) -> None:
    taken = "2026:03:18 10:00:00" if stage == "done" else "2026:03:17 10:00:00"
    vented(job_office).log(shoot("P1", stage, "attic-ventilation", taken=taken))
    result = job_office.result("attic-ventilation")
    assert (result.word, result.parts[0].governing) == ("meets", "irc-2021-vents-mild")
    assert (result.evidence, result.hidden_by) == (("P1",), "nothing")


def test_vents_are_due_when_the_job_is_closed(job_office: Office) -> None:
    result = vented(job_office).result("attic-ventilation")
    assert (result.open, result.why_not_proven) == (True, "no_photo_at_all")
    job_office.changed("job.status", "under way")
    assert not job_office.result("attic-ventilation").due


@pytest.mark.parametrize(
    ("path", "text", "expected"),
    [
        ("ventilation.vents.VT1.below_top", "3 ft 1 in", "differs"),  # too far down to count as high
        ("ventilation.vents.VT2.length", "39 ft", "differs"),  # 711 sq in, and 720 asked
        ("ventilation.vents.VT2.state", "closed", "differs"),
        ("ventilation.attic_area", "760 sq ft", "differs"),  # 1 to 152, and high is 99 percent of 1/300
        ("ventilation.attic_area", "750 sq ft", "meets"),  # 1 to 150
        ("ventilation.vents.VT2.length", "41 ft", "meets"),
    ],
)
def test_area_and_split_decide_between_the_ratios(
    job_office: Office, shoot: Shoot, path: str, text: str, expected: str
) -> None:
    vented(job_office).changed(path, text).log(shoot("P1", "covering", "attic-ventilation"))
    assert job_office.result("attic-ventilation").word == expected


def test_a_cold_zone_wants_the_retarder_too(job_office: Office, shoot: Shoot) -> None:
    vented(job_office).changed("ventilation.climate_zone", "6")
    job_office.log(shoot("P1", "covering", "attic-ventilation"))
    unknown = job_office.result("attic-ventilation")
    assert (unknown.word, missing(unknown)) == ("differs", {"vapor_retarder"})
    assert unknown.parts[0].governing == "irc-2021-vents"
    job_office.changed("ventilation.vapor_retarder", "class II")
    assert job_office.result("attic-ventilation").parts[0].governing == "irc-2021-vents-cold"


def test_an_unknown_zone_is_named_and_1_to_150_holds(job_office: Office, shoot: Shoot) -> None:
    vented(job_office).replaced("  climate_zone: 3\n", "")
    result = job_office.log(shoot("P1", "covering", "attic-ventilation")).result("attic-ventilation")
    assert (result.word, result.parts[0].governing) == ("differs", "irc-2021-vents")
    assert "climate_zone" in missing(result)
    assert job_office.closeout().figures["ventilation.required"].value == 1440


@pytest.mark.parametrize(("length", "expected"), [("40 ft", "not_verified"), ("120 ft", "meets")])
def test_where_the_exception_was_not_read_1_to_150_confirms_and_does_not_accuse(
    job_office: Office, shoot: Shoot, length: str, expected: str
) -> None:
    vented(job_office, "irc-2018").changed("ventilation.vents.VT2.length", length)
    result = job_office.log(shoot("P1", "covering", "attic-ventilation")).result("attic-ventilation")
    assert (result.word, result.open) == (expected, False)


def test_an_unmet_condition_of_an_exception_that_was_not_read_leaves_the_rule_its_teeth(
    job_office: Office, shoot: Shoot
) -> None:
    vented(job_office, "irc-2018").changed("ventilation.vents.VT1.below_top", "4 ft")
    result = job_office.log(shoot("P1", "covering", "attic-ventilation")).result("attic-ventilation")
    assert result.word == "differs"


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (", free_sq_in_each: 9", ""),
        (", length: 40 ft", ""),
    ],
    ids=["no area printed", "neither count nor run"],
)
def test_a_line_of_unknown_area_leaves_the_whole_unanswered(job_office: Office, old: str, new: str) -> None:
    vented(job_office).replaced(old, new)
    result = job_office.result("attic-ventilation")
    assert (result.word, result.why_not_proven) == ("not_recorded", "no_value")
    assert "ventilation.total" not in job_office.closeout().figures


def test_an_exception_the_office_read_itself_takes_the_place_of_1_to_150(
    job_office: Office, shoot: Shoot
) -> None:
    vented(job_office, "irc-2018").log(shoot("P1", "covering", "attic-ventilation"))
    job_office.file(
        "shared/readings/irc-2018-vents-mild.yaml",
        "row: irc-2018-vents-mild\nvalue: 300\nsection: R806.2\nauthority: the town\n"
        "read_by: Dov Marrick\nread_on: 2026-03-02\n",
    )
    result = job_office.result("attic-ventilation")
    assert (result.word, result.parts[0].governing) == ("meets", "irc-2018-vents-mild")
    assert job_office.closeout().figures["ventilation.required"].value == 720


TOWN = """\
code: pellam-2026
title: Pellam Reach building ordinance
edition: "2026"
whose: law
source: pellam-ordinance
rows:
  pellam-2026-vents:
    asks: ventilation.ratio
    kind: at_most
    value: 150
    unit: to_one
    eased_by: [pellam-2026-vent-split]
    locator: Section 3
    checked: seen
  pellam-2026-vents-split:
    asks: ventilation.ratio
    kind: at_most
    value: 300
    unit: to_one
    when: {vent_high_share_percent: {at_least: 40}}
    locator: Section 3
    checked: seen
"""


def test_a_rule_eased_by_a_row_that_is_not_there_is_refused(job_office: Office) -> None:
    job_office.file("shared/codes/pellam-2026.yaml", TOWN)
    job_office.file("shared/sources.yaml", 'pellam-ordinance: {document: Ordinance, edition: "2026"}\n')
    (problem,) = job_office.problems()
    assert (problem.code, problem.line, problem.found) == ("unknown-row", 12, "pellam-2026-vent-split")
    assert problem.values["nearest"] == "pellam-2026-vents-split"


# Ice barrier

BARRIER = "{product: self-adhered sheet, up_slope: 41 in, overhang: 12 in}"


def test_an_ice_barrier_that_is_not_recorded_is_not_asked(job_office: Office) -> None:
    assert word_of(roof(job_office), "ice-barrier") == ("does_not_apply", "no_ice_barrier")


@pytest.mark.parametrize(
    ("pitch", "taped", "overhang", "expected"),
    [
        ("6:12", "41 in", "12 in", "meets"),  # 40.2 in asked
        ("6:12", "40 in", "12 in", "differs"),
        ("9:12", "45 in", "12 in", "meets"),  # 5 in up for 4 level: 36 level, 24 inside, to the hair
        ("9:12", "44-7/8 in", "12 in", "differs"),
        ("9:12", "35 in", "1 in", "differs"),  # 27 inside the wall, but under 36 in up a steep slope
        ("7:12", "35 in", "1 in", "meets"),
    ],
)
def test_an_ice_barrier_reaches_inside_the_wall_line(
    job_office: Office, shoot: Shoot, pitch: str, taped: str, overhang: str, expected: str
) -> None:
    roof(fits_any_pitch(job_office), dry_in__ice_barrier=BARRIER, roof__planes__WW__pitch=pitch)
    job_office.changed("roof.planes.MS.pitch", pitch).changed("dry_in.ice_barrier.up_slope", taped)
    job_office.changed("dry_in.ice_barrier.overhang", overhang)
    result = job_office.log(shoot("P1", "dried-in", "ice-barrier")).result("ice-barrier")
    assert result.word == expected


def test_the_2024_edition_asks_no_least_depth(job_office: Office, shoot: Shoot) -> None:
    barrier = BARRIER.replace("41 in", "35 in").replace("12 in", "1 in")
    roof(fits_any_pitch(job_office), basis__code="irc-2024", dry_in__ice_barrier=barrier)
    job_office.changed("roof.planes.WW.pitch", "9:12").changed("roof.planes.MS.pitch", "9:12")
    result = job_office.log(shoot("P1", "dried-in", "ice-barrier")).result("ice-barrier")
    assert [part.asks for part in result.parts] == ["ice_barrier.inside_wall"]
    assert result.word == "meets"


def test_an_ice_barrier_without_its_overhang_is_not_recorded(job_office: Office) -> None:
    roof(job_office, dry_in__ice_barrier="{product: sheet, up_slope: 6 ft}")
    assert job_office.result("ice-barrier").why_not_proven == "no_value"


# Sealed deck


def test_sealing_is_asked_where_a_program_asks_it(job_office: Office) -> None:
    assert word_of(roof(job_office), "sealed-deck") == ("does_not_apply", "no_rule_asks_it")
    assert word_of(job_office.changed("basis.programs", f"[{NEWER}]"), "sealed-deck") == ("not_recorded", "")


@pytest.mark.parametrize(
    ("way", "stage", "shows"),
    [
        ("tape on the joints", "deck", True),
        ("tape on the joints", "dried-in", False),
        ("self-adhered sheet", "dried-in", True),
        ("self-adhered sheet", "deck", False),
        ("two layers of underlayment", "dried-in", True),
    ],
)
def test_each_way_of_sealing_shows_until_the_next_layer(
    job_office: Office, shoot: Shoot, way: str, stage: str, shows: bool
) -> None:
    roof(job_office, basis__programs=f"[{NEWER}]", dry_in__sealed_deck=f"{{way: {way}}}", dry_in__layers="2")
    result = job_office.log(shoot("P1", stage, "sealed-deck")).result("sealed-deck")
    assert result.word == ("meets" if shows else "not_recorded")
    assert result.hidden_by == ("dried-in" if way.startswith("tape") else "covering")
    assert result.parts[0].limits[0].caution


def test_sealing_nobody_asked_for_is_shown_and_not_judged(job_office: Office, shoot: Shoot) -> None:
    roof(job_office, dry_in__sealed_deck="{way: tape on the joints}")
    assert job_office.log(shoot("P1", "deck", "sealed-deck")).result("sealed-deck").word == "not_verified"


# An old deck nailed again


@pytest.mark.parametrize(
    ("program", "spacing", "expected"),
    [
        (OLDER, "6 in", "meets"),
        (OLDER, "7 in", "differs"),
        (NEWER, "4 in", "not_verified"),
        (NEWER, "12 in", "not_verified"),
        ("", "12 in", "not_verified"),
    ],
)
def test_old_nailing_is_held_against_programs_alone(
    job_office: Office, shoot: Shoot, program: str, spacing: str, expected: str
) -> None:
    """The adopted code's schedule is for new deck: 12 in differs from it, and it is not asked."""
    roof(job_office, basis__programs=f"[{program}]", deck__renailed=RENAILED)
    job_office.changed("deck.renailed.field_spacing", spacing)
    result = job_office.log(shoot("P1", "deck", "renailed-spacing")).result("renailed-spacing")
    assert result.word == expected
    assert not any(limit.whose == "law" for part in result.parts for limit in part.limits)


@pytest.mark.parametrize(
    ("nail", "expected"),
    [("{size: 2-3/8 x 0.113, shank: ring}", "meets"), ("{size: 2-1/2 x 0.131, shank: smooth}", "differs")],
)
def test_old_deck_takes_the_programs_nail(job_office: Office, shoot: Shoot, nail: str, expected: str) -> None:
    roof(job_office, basis__programs=f"[{OLDER}]", deck__renailed=RENAILED, deck__renailed__nail=nail)
    result = job_office.log(shoot("P1", "deck", "renailed-nail")).result("renailed-nail")
    assert (result.word, result.parts[0].answer.figures) == (
        expected,
        ("deck.renailed.nail.size.length", "deck.renailed.nail.size.shank"),
    )


def test_a_law_that_asks_for_it_decides(job_office: Office, shoot: Shoot) -> None:
    roof(job_office, basis__code="fbcr-2017", deck__renailed=RENAILED)
    photos = shoot("P1", "deck", "renailed-nail", "renailed-spacing")
    assert job_office.log(photos).result("renailed-spacing").word == "meets"
    assert job_office.result("renailed-nail").word == "not_verified"  # length and shank were not read
    assert job_office.changed("deck.renailed.edge_spacing", "8 in").result("renailed-spacing").open


def test_no_old_deck_nailed_again_is_said(job_office: Office) -> None:
    assert word_of(roof(job_office), "renailed-nail") == ("does_not_apply", "no_deck_renailed")


# Boards


def test_boards_want_photos_and_no_panel_nailing(job_office: Office, shoot: Shoot) -> None:
    start, end = job_office.text.index("deck:\n  panel"), job_office.text.index("dry_in:")
    job_office.write(f"{job_office.text[:start]}deck: {{boards: {BOARD}}}\n\n{job_office.text[end:]}")
    job_office.log(shoot("P1", "deck", "BD1"))
    assert job_office.result("deck-sheets", "BD1").word == "meets"
    for requirement in ("deck-nail", "deck-nail-edge-spacing", "deck-nail-field-spacing"):
        assert word_of(job_office, requirement) == ("does_not_apply", "no_panels_laid")
    known = job_office.closeout().figures
    assert known["boards.length"].value == 54
    assert float(known["boards.area"].value) == 24.75


def test_boards_beside_panels_leave_the_panels_asked(job_office: Office) -> None:
    job_office.changed("deck.boards", BOARD)
    subjects = {r.subject for r in job_office.closeout().results if r.requirement == "deck-sheets"}
    assert subjects == {"S1", "S2", "S3", "S4", "BD1"}
    assert job_office.result("deck-nail").word == "not_recorded"


# Low slopes

LOW = "[{id: L1, plane: DR, product: cap sheet}]"
PORCH = "    - {id: A3, plane: DR, outline: [[0 ft, 0 ft], [10 ft, 0 ft], [10 ft, 8 ft], [0 ft, 8 ft]]}\n"


@pytest.mark.parametrize(("low_slope", "lap"), [("[]", 19), (LOW, 2)])
def test_a_low_slope_covering_does_not_set_the_rules_for_shingles(
    job_office: Office, low_slope: str, lap: int
) -> None:
    """The dormer roof of 3:12 asks 19 in of lap under shingles, and none when a cap sheet covers it."""
    job_office.replaced("    - {id: A2,", f"{PORCH}    - {{id: A2,").changed("covering.low_slope", low_slope)
    head_lap = job_office.result("underlayment-laps").parts[0]
    assert [limit.value for limit in head_lap.limits] == [lap]


def test_a_roof_without_shingles_is_not_asked_about_them(job_office: Office) -> None:
    start, end = job_office.text.index("    - {id: A1,"), job_office.text.index("  shingle: {")
    job_office.write(f"{job_office.text[:start]}{PORCH}  low_slope: {LOW}\n{job_office.text[end:]}")
    assert word_of(job_office, "shingle-nails") == ("does_not_apply", "only_low_slope")


# Exposure


@pytest.mark.parametrize(
    ("exposure", "expected", "why"),
    [("B", "meets", ""), ("C", "meets", ""), ("D", "not_verified", "exposure B and C alone")],
)
def test_a_wind_class_is_judged_in_exposure_b_and_c_alone(
    job_office: Office, shoot: Shoot, exposure: str, expected: str, why: str
) -> None:
    job_office.changed("basis.exposure", exposure).log(shoot("P1", "covering", "shingle-wind-class"))
    result = job_office.result("shingle-wind-class")
    assert (result.word, result.open) == (expected, False)
    assert any(why in limit.note for limit in result.parts[0].limits)


def test_a_weak_class_in_exposure_d_is_not_said_to_differ(job_office: Office, shoot: Shoot) -> None:
    job_office.changed("basis.exposure", "D").changed("covering.shingle.wind_class", "A")
    job_office.log(shoot("P1", "covering", "shingle-wind-class"))
    assert job_office.result("shingle-wind-class").word == "not_verified"
    assert job_office.changed("basis.exposure", "C").result("shingle-wind-class").word == "differs"
