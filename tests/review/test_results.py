"""Results of the demo record with photos: proof, lateness, rules by mark, ways out, what is open."""

from collections.abc import Callable
from typing import Any

import pytest

from packet.review.catalogue import BY_ID
from packet.review.model import Part
from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]
EDGE, LAP = "deck-nail-edge-spacing", "drip-edge-fastening"

TOWN = """\
code: pellam-2026
title: Pellam Reach building ordinance
edition: "2026"
whose: {whose}
source: pellam-ordinance
rows:
  pellam-2026-edge:
    asks: deck.nail.edge_spacing
    kind: at_most
    value: {value}
    unit: in
    locator: Section 3
    checked: {checked}
"""
SOURCES = 'pellam-ordinance: {document: Building ordinance of Pellam Reach, edition: "2026"}\n'


def with_town(
    office: Office, value: str, checked: str = "seen", whose: str = "law", more: str = ""
) -> Office:
    """Add a rule of the town for nails at panel edges, and leave the other rules out."""
    rows = TOWN.format(value=value, checked=checked, whose=whose)
    office.file("shared/codes/pellam-2026.yaml", rows + more)
    office.file("shared/sources.yaml", SOURCES)
    return office.changed("basis.code", "pellam-2026").changed("basis.practices", "[]")


def part(office: Office) -> Part:
    return office.result(EDGE).parts[0]


# Proof


def test_a_value_that_meets_with_a_photo_in_time_meets(job_office: Office, shoot: Shoot) -> None:
    result = job_office.log(shoot("P1", "deck", EDGE)).result(EDGE)
    assert (result.word, result.evidence, result.late, result.open) == ("meets", ("P1",), (), False)


def test_a_value_that_meets_without_a_photo_is_not_recorded(job_office: Office) -> None:
    result = job_office.result(EDGE)
    assert (result.word, result.why_not_proven, result.open) == ("not_recorded", "no_photo", True)


def test_a_value_that_differs_differs_with_a_photo_or_without(job_office: Office, shoot: Shoot) -> None:
    job_office.changed("deck.edge_spacing", "6-1/2 in")
    without = job_office.result(EDGE)
    with_photo = job_office.log(shoot("P1", "deck", EDGE)).result(EDGE)
    assert (without.word, with_photo.word) == ("differs", "differs")
    assert (without.open, with_photo.open) == (True, True)


def test_a_photo_without_a_value_is_not_recorded(job_office: Office, shoot: Shoot) -> None:
    job_office.replaced("  edge_spacing: 6 in\n", "").log(shoot("P1", "deck", EDGE))
    result = job_office.result(EDGE)
    assert (result.word, result.why_not_proven) == ("not_recorded", "no_value")


def test_a_photo_of_something_else_proves_nothing(job_office: Office, shoot: Shoot) -> None:
    result = job_office.log(shoot("P1", "deck", "deck-nail", "S1")).result(EDGE)
    assert (result.word, result.evidence, result.late) == ("not_recorded", (), ())


@pytest.mark.parametrize("stage", ["before", "stripped", "dried-in", "covering", "done"])
def test_a_photo_of_another_stage_is_no_proof(job_office: Office, shoot: Shoot, stage: str) -> None:
    result = job_office.log(shoot("P1", stage, EDGE)).result(EDGE)
    assert (result.word, result.evidence, result.late) == ("not_recorded", (), ("P1",))
    assert result.why_not_proven == "photo_from_another_time"


@pytest.mark.parametrize(
    ("taken", "proves"),
    [
        ("2026:03:15 23:59:59", False),
        ("2026:03:16 00:00:00", True),
        ("2026:03:17 23:59:59", True),
        ("2026:03:18 00:00:00", False),
        ("", False),
    ],
    ids=["before the roof was opened", "first moment", "last moment", "after it was covered", "no time"],
)
def test_a_photo_counts_only_between_opening_and_covering(
    job_office: Office, shoot: Shoot, taken: str, proves: bool
) -> None:
    result = job_office.log(shoot("P1", "deck", EDGE, taken=taken)).result(EDGE)
    assert result.word == ("meets" if proves else "not_recorded")
    assert (result.evidence, result.late) == ((("P1",), ()) if proves else ((), ("P1",)))


def test_a_late_photo_beside_one_in_time_is_named_and_does_no_harm(job_office: Office, shoot: Shoot) -> None:
    late = shoot("P2", "deck", EDGE, taken="2026:03:20 08:00:00")
    result = job_office.log(shoot("P1", "deck", EDGE), late).result(EDGE)
    assert (result.word, result.evidence, result.late) == ("meets", ("P1",), ("P2",))


def test_the_logs_time_decides_where_the_camera_was_wrong(job_office: Office, shoot: Shoot) -> None:
    entry = shoot("P1", "deck", EDGE, taken="2019:01:01 00:00:00", taken_at="2026-03-16T10:00:00")
    office = job_office.log(entry)
    assert office.result(EDGE).word == "meets"
    assert office.finding_ids() == {"photo-time:P1"}


def test_each_sheet_needs_a_photo_of_its_own(job_office: Office, shoot: Shoot) -> None:
    job_office.log(shoot("P1", "deck", "S1", "S2"), shoot("P2", "deck", "deck-sheets"))
    words = {subject: job_office.result("deck-sheets", subject).word for subject in ("S1", "S2", "S3", "S4")}
    assert words == {"S1": "meets", "S2": "meets", "S3": "not_recorded", "S4": "not_recorded"}


# Rules by mark


@pytest.mark.parametrize("mark", ["seen", "derived"])
def test_a_rule_that_was_read_decides(job_office: Office, shoot: Shoot, mark: str) -> None:
    office = with_town(job_office, "4", mark).log(shoot("P1", "deck", EDGE))
    assert (part(office).word, part(office).limits[0].caution) == ("differs", False)
    assert part(office.changed("deck.edge_spacing", "4 in")).word == "meets"


def test_a_restatement_decides_with_a_caution(job_office: Office, shoot: Shoot) -> None:
    office = with_town(job_office, "4", "seen_secondary").log(shoot("P1", "deck", EDGE))
    assert (part(office).word, part(office).limits[0].caution) == ("differs", True)
    assert part(office.changed("deck.edge_spacing", "4 in")).word == "meets"


@pytest.mark.parametrize("mark", ["memory", "common_practice"])
@pytest.mark.parametrize("spacing", ["4 in", "8 in"])
def test_a_rule_from_memory_or_practice_never_decides(
    job_office: Office, shoot: Shoot, mark: str, spacing: str
) -> None:
    office = with_town(job_office, "4", mark)
    if mark == "common_practice":
        rows = TOWN.format(value="4", checked=mark, whose="practice")
        rows = rows.replace("Section 3", "common practice, no published source")
        office.file("shared/codes/pellam-2026.yaml", rows)
    office.changed("deck.edge_spacing", spacing).log(shoot("P1", "deck", EDGE))
    result = office.result(EDGE)
    assert (result.word, result.parts[0].governing, result.open) == ("not_verified", "", False)


def test_a_rule_from_memory_without_a_photo_is_not_recorded(job_office: Office) -> None:
    assert with_town(job_office, "4", "memory").result(EDGE).word == "not_recorded"


@pytest.mark.parametrize("spacing", ["4 in", "8 in"])
def test_a_superseded_rule_never_decides(job_office: Office, shoot: Shoot, spacing: str) -> None:
    office = with_town(job_office, "6", more="    superseded: replaced by the ordinance of 2027\n")
    office.changed("deck.edge_spacing", spacing).log(shoot("P1", "deck", EDGE))
    assert office.result(EDGE).word == "not_verified"
    assert part(office).limits[0].superseded


def test_a_row_the_office_read_itself_decides(job_office: Office, shoot: Shoot) -> None:
    office = with_town(job_office, "4", "memory").log(shoot("P1", "deck", EDGE))
    assert office.result(EDGE).word == "not_verified"
    office.file(
        "shared/readings/pellam-2026-edge.yaml",
        "row: pellam-2026-edge\nvalue: 6\nsection: Section 3\nauthority: the town\n"
        "read_by: Dov Marrick\nread_on: 2026-03-02\n",
    )
    assert office.result(EDGE).word == "meets"
    assert part(office).limits[0].source.checked == "office"


def test_a_rule_whose_condition_is_unknown_does_not_decide(job_office: Office, shoot: Shoot) -> None:
    office = with_town(job_office, "4", more="    when: {exposure: {is: C}}\n").log(shoot("P1", "deck", EDGE))
    assert part(office).limits == ()
    office.replaced("  exposure: B\n", "")
    assert (part(office).limits[0].missing, part(office).word) == (("exposure",), "not_verified")


def test_what_a_record_without_a_code_rests_on_is_not_verified(job_office: Office, shoot: Shoot) -> None:
    start = job_office.text.index("basis:")
    end = job_office.text.index("found:")
    job_office.write(job_office.text[:start] + job_office.text[end:]).log(shoot("P1", "deck", EDGE))
    assert job_office.result(EDGE).word == "not_verified"


# Whose rule


def test_the_makers_tighter_number_governs_over_the_law(job_office: Office, shoot: Shoot) -> None:
    job_office.changed("covering.nails_each", "4").log(shoot("P1", "covering", "shingle-nails"))
    result = job_office.result("shingle-nails")
    whose = {limit.row: f"{limit.whose}: {limit.value}" for limit in result.parts[0].limits}
    assert result.word == "differs"
    assert result.parts[0].governing == "covering.maker.nails_each"
    assert whose["irc-2021-shingle-nails"] == "law: 4"
    assert whose["covering.maker.nails_each"] == "maker: 6"


def test_the_law_governs_over_a_looser_number_of_the_maker(job_office: Office, shoot: Shoot) -> None:
    job_office.changed("covering.nails_each", "3").changed("covering.maker.nails_each", "2")
    result = job_office.log(shoot("P1", "covering", "shingle-nails")).result("shingle-nails")
    assert (result.word, result.parts[0].governing) == ("differs", "irc-2021-shingle-nails")


def test_of_two_details_the_lesser_flashing_decides(job_office: Office) -> None:
    job_office.replaced(
        "  - {id: K1,",
        "  - {id: C2, kind: sidewall, where: west wall, state: new, flashing_height: 3 in,"
        " flashing_width: 4 in}\n"
        "  - {id: K1,",
    )
    height = job_office.result("sidewall-flashing").parts[0].answer
    assert (height.value, height.figures) == (3, ("details.C2.flashing_height",))


def test_a_new_detail_without_a_measure_leaves_the_question_unanswered(job_office: Office) -> None:
    job_office.replaced(
        "  - {id: K1,", "  - {id: C2, kind: sidewall, where: west wall, state: new}\n  - {id: K1,"
    )
    assert job_office.result("sidewall-flashing").why_not_proven == "no_value"


# Which requirements are asked


@pytest.mark.parametrize(
    ("part_of_record", "requirement", "reason"),
    [
        ("tie_in", "hand-seal", "no_tie_in"),
        ("details", "valley-lining", "no_new_valley"),
        ("deck", "deck-nail", "no_deck_replaced"),
        ("covering", "shingle-nails", "nothing_covered"),
    ],
)
def test_what_was_not_touched_does_not_apply(
    job_office: Office, part_of_record: str, requirement: str, reason: str
) -> None:
    without = [block for block in job_office.text.split("\n\n") if not block.startswith(f"{part_of_record}:")]
    result = job_office.write("\n\n".join(without)).result(requirement)
    assert (result.word, result.reason, result.open) == ("does_not_apply", reason, False)


@pytest.mark.parametrize(("kind", "least", "most"), [("patch", 8, 12), ("re-roof", 30, 40)])
def test_a_patch_is_asked_for_less_than_a_roof(job_office: Office, kind: str, least: int, most: int) -> None:
    results = job_office.changed("job.kind", kind).closeout().results
    asked = {result.requirement for result in results if result.word != "does_not_apply"}
    assert least <= len({id for id in asked if kind in BY_ID[id].kinds}) <= most


def test_old_shingles_are_asked_about_only_where_new_ones_meet_them(job_office: Office) -> None:
    asked = {result.requirement for result in job_office.changed("job.kind", "recover").closeout().results}
    assert "hand-seal" not in asked


# Due and open


@pytest.mark.parametrize(
    ("status", "dried_in", "due"),
    [
        ("planned", "2026-03-17", False),
        ("under way", "2026-03-17", True),
        ("under way", None, False),
        ("closed", "2026-03-17", True),
        ("closed", None, True),
    ],
)
def test_due_once_the_job_has_passed_what_hides_it(
    job_office: Office, status: str, dried_in: str | None, due: bool
) -> None:
    job_office.changed("job.status", status)
    if dried_in is None:
        job_office.replaced("  dried_in: 2026-03-17\n", "")
    result = job_office.result(EDGE)
    assert (result.word, result.due, result.open) == ("not_recorded", due, due)


def test_the_covering_is_not_due_while_the_deck_is(job_office: Office) -> None:
    job_office.changed("job.status", "under way").replaced("  finished: 2026-03-18\n", "")
    assert job_office.result(EDGE).due
    assert not job_office.result("shingle-nails").due


def test_a_reason_for_not_recording_is_shown_and_closes_nothing(job_office: Office) -> None:
    result = job_office.result(LAP)
    assert result.reason == "the nails were driven and covered before a photo was taken"
    assert (result.word, result.open) == ("not_recorded", True)


def test_a_reason_may_be_given_for_one_sheet(job_office: Office) -> None:
    job_office.changed("not_recorded.deck-sheets:S3", "forgot")
    assert job_office.result("deck-sheets", "S3").reason == "forgot"
    assert job_office.result("deck-sheets", "S4").reason == ""


# Ways out


@pytest.mark.parametrize("kind", ["corrected", "accepted", "explained"])
def test_a_way_out_stands_beside_a_value_that_differs(job_office: Office, kind: str) -> None:
    job_office.changed("deck.edge_spacing", "8 in").added(
        f"ways_out: [{{requirement: {EDGE}, kind: {kind}, text: nails added between}}]"
    )
    result = job_office.result(EDGE)
    assert (result.word, result.way_out, result.open) == ("differs", 0, False)


def test_a_way_out_does_not_close_what_was_not_recorded(job_office: Office) -> None:
    job_office.added(f"ways_out: [{{requirement: {EDGE}, kind: explained, text: trust us}}]")
    result = job_office.result(EDGE)
    assert (result.word, result.way_out, result.open) == ("not_recorded", None, True)


def test_a_way_out_of_another_requirement_changes_nothing(job_office: Office) -> None:
    job_office.changed("deck.edge_spacing", "8 in").added(
        "ways_out: [{requirement: deck-nail, kind: explained, text: looked at}]"
    )
    assert job_office.result(EDGE).open
