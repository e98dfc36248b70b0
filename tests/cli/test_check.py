"""``packet check``: 0 nothing due is open, 1 something is, 2 a bad record."""

import shutil
from collections.abc import Callable
from typing import Any

import pytest

from tests.cli.conftest import Run
from tests.support.office import Office, copy_job

Shoot = Callable[..., dict[str, Any]]

#: What the demo record needs a photo of, stage by stage, to have nothing open but what the test leaves open.
PROVES = {
    "deck": ["S1", "S2", "S3", "S4", "deck-nail", "deck-nail-edge-spacing", "deck-nail-field-spacing"],
    "dried-in": ["underlayment-laps", "underlayment-fastening", "valley-lining"],
    "edges": ["drip-edge-fastening", "sidewall-flashing"],
    "covering": ["shingle-nails", "shingle-wind-class", "hand-seal", "underside"],
}
#: Damage wants two views, from before the work.
DAMAGE = ("wide", "close")
BEFORE = "2026:03:09 09:10:00"


@pytest.fixture
def proven(job_office: Office, shoot: Shoot) -> Office:
    entries = [shoot(f"P{n}", stage, *ids) for n, (stage, ids) in enumerate(PROVES.items(), 1)]
    entries += [
        shoot(f"D{n}", "before", "damage-as-found", taken=BEFORE, view=view) for n, view in enumerate(DAMAGE)
    ]
    reason = "drip-edge-fastening: the nails were driven and covered before a photo was taken"
    return job_office.replaced(f"not_recorded:\n  {reason}\n", "").log(*entries)


def test_a_job_with_nothing_open_exits_0(proven: Office, run: Run) -> None:
    ran = run(proven.root, "check")
    assert (ran.code, ran.out, ran.err) == (0, "26-041: nothing due is open\n", "")


def test_a_due_open_item_exits_1_and_is_named(proven: Office, run: Run) -> None:
    ran = run(proven.changed("deck.edge_spacing", "8 in").root, "check", "26-041")
    assert ran.code == 1
    first, item = ran.out.splitlines()
    assert first == "26-041: 1 open"
    assert item == (
        "  Deck nails, spacing at panel edges: differs from the rule (8 in; at most 6 in by International Residential"
        " Code, 2021, Table R602.3(1), items 31 and 32) [deck-nail-edge-spacing]"
    )


def test_each_nail_a_rule_accepts_is_named_by_length_and_shank(proven: Office, run: Run) -> None:
    """IRC 2021 Table R602.3(1), items 31 and 32, as restated: an 8d common nail, or the ring shank nail RSRS-01."""
    out = run(proven.changed("deck.nail.size", "2-3/8 x 0.099").root, "check", "26-041").out
    assert (
        "Deck nail: differs from the rule (2 3/8 in × 0.099 in; one of 2 1/2 in × 0.131 in or 2 3/8 in × 0.113 in by"
        in out
    )


def test_an_item_without_proof_says_what_is_missing(job_office: Office, run: Run) -> None:
    out = run(job_office.root, "check").out
    assert "Deck nail: not recorded (no photo shows it from before it was covered) [deck-nail]" in out


def test_an_open_item_shows_its_reason(job_office: Office, run: Run) -> None:
    assert "before a photo was taken) [drip-edge-fastening]" in run(job_office.root, "check").out


def test_an_unexplained_finding_is_open_until_it_is_explained(proven: Office, run: Run) -> None:
    proven.changed("bought.SHINGLES.delivered", "4")
    ran = run(proven.root, "check")
    assert (ran.code, ran.out.count("[laid-below-need:SHINGLES]")) == (1, 1)
    proven.added("explained: {'laid-below-need:SHINGLES': two bundles came from the truck}")
    assert run(proven.root, "check").code == 0


def test_findings_carry_their_words_and_the_first_shows_how_one_is_explained(
    proven: Office, run: Run
) -> None:
    proven.added("punch_list: [{id: X1, what: gutter strap}, {id: X2, what: paint}]")
    lines = run(proven.root, "check").out.splitlines()
    assert lines[0] == "26-041: 2 open"
    assert [line.partition(": ")[2] for line in lines[1:5:2]] == [
        "X1 (gutter strap) [punch-open:X1]",
        "X2 (paint) [punch-open:X2]",
    ]
    assert [line.partition(" at ")[2] for line in lines[2:5:2]] == [
        "punch_list[0]. Write done_on, or say why it stays open.",
        "punch_list[1]. Write done_on, or say why it stays open.",
    ]
    assert lines[5] == '  Explain one in job.yaml:  explained: {"punch-open:X1": "…"}'
    proven.added('explained: {"punch-open:X1": "ordered", "punch-open:X2": "after the frost"}')
    assert run(proven.root, "check").out == "26-041: nothing due is open\n"


def test_what_is_not_due_yet_is_not_open(job_office: Office, run: Run) -> None:
    assert run(job_office.changed("job.status", "planned").root, "check").code == 0


def test_a_bad_record_exits_2_with_its_place(job_office: Office, run: Run) -> None:
    job_office.changed("deck.edge_spacing", "6")
    line, column = job_office.place("deck.edge_spacing")
    ran = run(job_office.root, "check")
    assert ran.code == 2
    assert ran.err.startswith(f"jobs/26-041/job.yaml:{line}:{column}: error[no-unit]: ")
    assert ran.err.rstrip().endswith("1 error in 1 file.")


def test_a_bad_job_does_not_hide_the_others(proven: Office, run: Run) -> None:
    copy_job(proven, "26-042")
    proven.changed("deck.edge_spacing", "6")
    ran = run(proven.root, "check")
    assert ran.code == 2
    assert ran.out == "26-042: nothing due is open\n"
    assert "jobs/26-041/job.yaml" in ran.err


def test_problems_of_all_jobs_come_in_one_run(job_office: Office, run: Run) -> None:
    job_office.changed("deck.edge_spacing", "6")
    copy_job(job_office, "26-042")
    ran = run(job_office.root, "check")
    assert [line.split(":")[0] for line in ran.err.splitlines() if "error[" in line] == [
        "jobs/26-041/job.yaml",
        "jobs/26-042/job.yaml",
    ]


def test_quiet_prints_problems_alone(proven: Office, run: Run) -> None:
    assert run(proven.root, "check", "--quiet").out == ""
    proven.changed("deck.edge_spacing", "8 in")
    ran = run(proven.root, "check", "-q")
    assert (ran.code, ran.out, ran.err) == (1, "", "")
    ran = run(proven.changed("deck.edge_spacing", "8").root, "check", "-q")
    assert (ran.code, ran.out) == (2, "")
    assert "no-unit" in ran.err


@pytest.mark.parametrize("name", ["26-041", "jobs/26-041", "jobs/26-041/"])
def test_a_job_is_named_by_number_or_by_path(proven: Office, run: Run, name: str) -> None:
    assert run(proven.root, "check", name).code == 0


def test_a_job_named_twice_is_checked_once(proven: Office, run: Run) -> None:
    assert run(proven.root, "check", "26-041", "jobs/26-041").out.count("26-041:") == 1


def test_the_office_is_found_from_a_folder_below_it(proven: Office, run: Run) -> None:
    assert run(proven.job, "check").code == 0


@pytest.mark.parametrize("name", ["26-014", "../..", "/", "", "nowhere"])
def test_a_name_that_is_no_job_exits_2(proven: Office, run: Run, name: str) -> None:
    ran = run(proven.root, "check", name)
    assert ran.code == 2
    assert "error[no-such-job]" in ran.err
    assert "26-041" in ran.err


def test_a_folder_that_is_no_office_exits_2(proven: Office, run: Run) -> None:
    ran = run(proven.root.parent, "check")
    assert (ran.code, ran.out) == (2, "")
    assert "error[not-an-office]" in ran.err


def test_an_office_without_jobs_exits_2(proven: Office, run: Run) -> None:
    shutil.rmtree(proven.job)
    ran = run(proven.root, "check")
    assert ran.code == 2
    assert "error[no-jobs]" in ran.err


def test_what_is_still_to_be_measured_is_listed_with_its_ids_before_it_is_covered(
    proven: Office, run: Run
) -> None:
    proven.changed("job.status", "under way").changed("dates", "{started: 2026-03-16}")
    ran = run(proven.replaced("  fastener_spacing: 10 in\n", "").root, "check")
    assert "To measure and photograph before it is covered:" in ran.out
    assert "Edges and flashing: Drip edge, spacing of nails [drip-edge-fastening]" in ran.out


def test_parts_this_kind_of_work_is_asked_for_are_named_when_they_are_not_written(
    proven: Office, run: Run
) -> None:
    blocks = [block for block in proven.text.split("\n\n") if not block.startswith(("tested:", "warranty:"))]
    ran = run(proven.write("\n\n".join(blocks)).root, "check")
    assert "  Not written: how the cure was tested; warranties" in ran.out
    assert ran.code == 0


def test_a_whole_closed_record_has_nothing_left_to_write(proven: Office, run: Run) -> None:
    ran = run(proven.root, "check")
    assert "Not written" not in ran.out
    assert "To measure" not in ran.out


def test_the_part_that_was_not_written_is_named(proven: Office, run: Run) -> None:
    ran = run(proven.replaced("  end_lap: 6 in\n", "").root, "check")
    assert "Underlayment, laps: not recorded (not written down: end lap) [underlayment-laps]" in ran.out
