"""``packet requirements``: the whole catalogue, and how one job answers it."""

import json
from collections.abc import Callable
from typing import Any

import pytest

from packet.review.catalogue import CATALOGUE
from packet.workspace import Workspace
from tests.cli.conftest import Run
from tests.support.office import ROOT, Office

Shoot = Callable[..., dict[str, Any]]
DEMOS = ("26-041", "26-052", "26-067")
STAGES = ["Before the work", "Stripped", "Deck", "Dried in", "Edges and flashing", "Covering", "Done"]


def block(out: str, id: str, subject: str = "") -> list[str]:
    """Return the lines of one requirement as printed, from its title on."""
    lines = out.splitlines()
    named = f" {subject} [{id}]" if subject else f"[{id}]"
    at = next(n for n, line in enumerate(lines) if named in line and line.startswith("  "))
    end = next((n for n in range(at + 1, len(lines)) if not lines[n].startswith("    ")), len(lines))
    return [line.strip() for line in lines[at:end]]


def judged(run: Run, office: Office, id: str, subject: str = "") -> dict[str, Any]:
    ran = run(office.root, "requirements", "26-041", "--json")
    assert (ran.code, ran.err) == (0, "")
    found = [r for r in json.loads(ran.out)["requirements"] if (r["id"], r["subject"]) == (id, subject)]
    assert len(found) == 1
    row: dict[str, Any] = found[0]
    return row


# The catalogue


def test_every_requirement_is_listed_once_in_the_order_of_the_work(run: Run) -> None:
    ran = run(ROOT, "requirements")
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.startswith(f"{len(CATALOGUE)} requirements, each under the stage that shows it\n")
    assert [line for line in ran.out.splitlines() if line in STAGES] == STAGES
    listed = json.loads(run(ROOT, "requirements", "--json").out)
    assert sorted(row["id"] for row in listed) == sorted(requirement.id for requirement in CATALOGUE)
    for row in listed:
        assert block(ran.out, row["id"])[0] == f"{row['title']} [{row['id']}]"


def test_a_requirement_says_who_asks_when_and_after_which_source(run: Run) -> None:
    lines = block(run(ROOT, "requirements").out, "deck-nail-edge-spacing")
    assert lines[:5] == [
        "Deck nails, spacing at panel edges [deck-nail-edge-spacing]",
        "Asked of: patch repair, one roof section, new roof covering, new covering over the old",
        "Does not apply while: no deck was replaced",
        "Hidden by: underlayment",
        "Asked by: inspector, adjuster",
    ]
    assert lines[5].startswith("What is asked: at panel edges; limited by ")
    assert " rows of law, " in lines[5]
    assert lines[6] == "A photo shows: tape, permit number"
    assert lines[7].endswith(", deck nailing (read in the text itself)")


def test_what_is_judged_only_when_it_is_answered_or_ruled_says_so(run: Run) -> None:
    out = run(ROOT, "requirements").out
    assert block(out, "starter")[1:3] == [
        "Asked of: one roof section, new roof covering, new covering over the old",
        "Judged where the record or a photo answers it: patch repair",
    ]
    assert "Asked where a rule the job rests on limits it, or the record answers it" in block(
        out, "deck-panel-gap"
    )
    assert "Judged one by one: each sheet and each place of new boards" in block(out, "deck-sheets")
    assert "A paper proves it as well as a photo" in block(out, "paid")
    assert "A photo shows: wide view, close view, tape" in block(out, "damage-as-found")
    assert "Hidden by: shingles (the way it was done decides when)" in block(out, "sealed-deck")


def test_a_reason_that_holds_for_some_kinds_of_work_names_them(run: Run) -> None:
    assert (
        "Does not apply while: the vents of the attic are not recorded "
        "(one roof section, new covering over the old)"
    ) in block(run(ROOT, "requirements").out, "attic-ventilation")


def test_limits_come_from_four_places(run: Run) -> None:
    rows = {row["id"]: row for row in json.loads(run(ROOT, "requirements", "--json").out)}
    (nails,) = rows["shingle-nails"]["questions"]
    assert nails["rows"]["law"] > 3
    assert "the maker's printed number" in " ".join(block(run(ROOT, "requirements").out, "shingle-nails"))
    assert rows["underside"]["questions"][0]["rows"] == {}
    assert "What is asked: underside; no row limits it" in block(run(ROOT, "requirements").out, "underside")
    assert rows["deck-nail"]["source"]["mark"] == "seen"


def test_an_amendment_of_the_office_counts_among_the_rows(job_office: Office, run: Run) -> None:
    def rows() -> int:
        listed = json.loads(run(job_office.root, "requirements", "--json").out)
        found: int = next(r for r in listed if r["id"] == "valley-lining")["questions"][0]["rows"]["law"]
        return found

    before = rows()
    job_office.file(
        "shared/codes/pellam-2026.yaml",
        'code: pellam-2026\ntitle: Ordinance\nedition: "2026"\nwhose: law\namends: irc-2021\nrows:\n'
        "  pellam-2026-valley:\n    asks: valley_lining.width\n    kind: at_least\n    value: 40\n    unit: in\n"
        "    locator: Section 2\n    checked: seen\n",
    )
    assert rows() == before + 1


def test_quiet_prints_one_line_a_requirement(run: Run) -> None:
    lines = [line for line in run(ROOT, "requirements", "-q").out.splitlines() if line.startswith(" ")]
    assert len(lines) == len(CATALOGUE)


# One job


@pytest.mark.parametrize("number", DEMOS)
def test_every_result_of_a_demo_job_is_listed(run: Run, number: str) -> None:
    from packet.closeout.assemble import assemble

    workspace = Workspace(ROOT)
    closeout, _ = assemble(workspace, workspace.jobs / number)
    ran = run(ROOT, "requirements", number)
    assert (ran.code, ran.err) == (0, "")
    assert "\x1b" not in ran.out
    data = json.loads(run(ROOT, "requirements", number, "--json").out)
    assert [(r["id"], r["subject"], r["word"], r["open"]) for r in data["requirements"]] == [
        (r.requirement, r.subject, r.word, r.open) for r in closeout.results
    ]
    assert {r["id"] for r in data["requirements"]} | set(data["not_asked"]) == {r.id for r in CATALOGUE}
    assert f"{sum(r.open for r in closeout.results)} of them open" in ran.out.splitlines()[0]


def test_a_row_says_limit_answer_result_and_proof(job_office: Office, shoot: Shoot, run: Run) -> None:
    job_office.log(shoot("P17", "deck", "deck-nail-field-spacing"))
    lines = block(run(job_office.root, "requirements", "26-041").out, "deck-nail-field-spacing")
    assert lines == [
        "Deck nails, spacing in the field [deck-nail-field-spacing]: meets the rule",
        "Recorded: 6 in",
        "at most 6 in; The law here: International Residential Code, 2021, Table R602.3(1), items 31 and 32 "
        "[irc-2021-deck-field]",
        "from a restatement: confirm against the adopted text; decides a result here",
        "at most 6 in; Our own practice: Common practice of the trade, no published source "
        "[trade-practice-field]",
        "common practice, no published source; does not decide",
        "Photos: P17",
        "Due",
    ]


def test_what_differs_and_is_open_says_so_and_its_way_out_stands_beside(job_office: Office, run: Run) -> None:
    job_office.changed("deck.field_spacing", "7 in")
    row = judged(run, job_office, "deck-nail-field-spacing")
    assert (row["word"], row["due"], row["open"], row["way_out"]) == ("differs", True, True, None)
    (question,) = row["questions"]
    assert question["recorded"] == "7 in"
    assert (question["limits"][0]["row"], question["limits"][0]["state"]) == (
        "irc-2021-deck-field",
        "governs",
    )
    assert (question["limits"][0]["value"], question["limits"][0]["unit"]) == (6.0, "in")
    job_office.added(
        "ways_out: [{requirement: deck-nail-field-spacing, kind: explained, text: Nails added between.}]"
    )
    lines = block(run(job_office.root, "requirements", "26-041").out, "deck-nail-field-spacing")
    assert lines[-2:] == ["Explained: Nails added between.", "Due"]


def test_a_reason_of_the_record_and_one_of_ours_are_told(job_office: Office, run: Run) -> None:
    out = run(job_office.root, "requirements", "26-041").out
    assert block(out, "drip-edge-fastening")[-2:] == [
        "Why not recorded: the nails were driven and covered before a photo was taken",
        "Due, and open",
    ]
    assert block(out, "deck-nail")[-2] == "Why not recorded: no photo shows it from before it was covered"


def test_what_does_not_apply_says_why(job_office: Office, run: Run) -> None:
    out = run(job_office.root, "requirements", "26-041").out
    assert (
        "  Ties of the roof to the walls [roof-to-wall-ties]: "
        "no tie of the roof to the walls was seen or made better"
    ) in out.partition("\nDoes not apply\n")[2].splitlines()
    row = judged(run, job_office, "roof-to-wall-ties")
    assert (row["applies"], row["reason"]) == (
        False,
        "no tie of the roof to the walls was seen or made better",
    )


def test_proof_that_this_kind_of_work_is_not_asked_for_is_told_and_not_refused(
    job_office: Office, shoot: Shoot, run: Run
) -> None:
    job_office.log(shoot("P7", "deck", "deck-heads-flush"), shoot("P8", "deck", "deck-nail"))
    ran = run(job_office.root, "requirements", "26-041")
    assert ran.code == 0
    assert ran.out.partition("Shown, though this kind of work is not asked for it\n")[2].splitlines() == [
        "  Deck nails, heads flush [deck-heads-flush]: P7"
    ]
    data = json.loads(run(job_office.root, "requirements", "26-041", "--json").out)
    assert data["shown_unasked"] == {"deck-heads-flush": ["P7"]}


def test_work_under_way_has_rows_that_are_not_due(run: Run) -> None:
    out = run(ROOT, "requirements", "26-067").out
    assert block(out, "shingle-nails")[0] == "Nails in each shingle [shingle-nails]: not due yet"
    assert block(out, "shingle-nails")[-1] == "Not due yet"
    assert block(out, "house-number")[0].endswith(": recorded, with a photo")


def test_a_bad_record_or_an_unknown_job_exits_2(job_office: Office, run: Run) -> None:
    assert run(job_office.root, "requirements", "26-999").code == 2
    ran = run(job_office.changed("deck.edge_spacing", "8").root, "requirements", "26-041")
    assert (ran.code, ran.out) == (2, "")
    assert "error[no-unit]" in ran.err
