"""``packet rules``: the rows a job rests on, whether they decide, and what to do about each."""

import json
import re
from typing import Any

import pytest
import yaml

from packet.closeout.assemble import assemble
from packet.closeout.rests_on import Step
from packet.workspace import Workspace
from tests.cli.conftest import Run
from tests.support.office import ROOT, Office

DEMOS = ("26-041", "26-052", "26-067")
FIELD = "irc-2021-deck-field"
READING = f"""\
row: {FIELD}
value: 6
section: Table R602.3(1), item 31, second printing
authority: Town of Pellam Reach, building office
read_by: Tam Oduya
read_on: 2026-02-11
"""


def rows_of(run: Run, office: Office, number: str = "26-041") -> dict[str, dict[str, Any]]:
    ran = run(office.root, "rules", number, "--json")
    assert (ran.code, ran.err) == (0, "")
    return {row["row"]: row for row in json.loads(ran.out)}


def steps(row: dict[str, Any]) -> list[Step]:
    return [step["step"] for step in row["to_do"]]


def block(out: str, row: str) -> list[str]:
    """Return the lines of one row as printed, from its name on."""
    lines = out.splitlines()
    at = next(number for number, line in enumerate(lines) if line.endswith(f"[{row}]"))
    end = next(n for n in range(at, len(lines)) if lines[n].startswith("    To do: "))
    return [line.strip() for line in lines[at - 1 : end + 1]]


@pytest.mark.parametrize("number", DEMOS)
def test_every_limit_of_every_result_is_listed_once(run: Run, number: str) -> None:
    workspace = Workspace(ROOT)
    closeout, _ = assemble(workspace, workspace.jobs / number)
    limits = {limit.row: limit for r in closeout.results for part in r.parts for limit in part.limits}
    ran = run(ROOT, "rules", number, "--json")
    rows = json.loads(ran.out)
    listed = {row["row"]: row for row in rows}
    assert ran.code == 0
    assert len(rows) == len(listed)
    assert set(limits) <= set(listed)
    for id, limit in limits.items():
        assert listed[id]["decides"] is limit.decides
        assert listed[id]["missing"] == list(limit.missing)
        assert listed[id]["to_do"]


@pytest.mark.parametrize("number", DEMOS)
def test_a_demo_job_prints_its_rules_plain_and_by_whose_they_are(run: Run, number: str) -> None:
    ran = run(ROOT, "rules", number)
    assert (ran.code, ran.err) == (0, "")
    assert "\x1b" not in ran.out
    assert re.match(
        rf"{number}: \d+ rules: \d+ may decide, \d+ of them from a restatement; \d+ may not", ran.out
    )
    headings = [line for line in ran.out.splitlines() if line in WHOSE]
    assert headings == [line for line in WHOSE if line in headings]
    assert headings[0] == WHOSE[0]


WHOSE = (
    "The law here",
    "The maker's printed instructions",
    "A program the house is in",
    "Our own practice",
)


def test_a_rule_from_a_restatement_decides_and_is_to_be_confirmed(job_office: Office, run: Run) -> None:
    assert block(run(job_office.root, "rules", "26-041").out, FIELD) == [
        "Deck nails, spacing on supports between: at most 6 in",
        f"International Residential Code, 2021, Table R602.3(1), items 31 and 32 [{FIELD}]",
        "from a restatement: confirm against the adopted text; decides a result here",
        "12 in before this edition. Read in three separate restatements, not in the code itself.",
        "To do: hold it against the adopted text: Table R602.3(1), items 31 and 32",
    ]


def test_where_it_was_read_stands_apart_from_whose_rule_it_is(job_office: Office, run: Run) -> None:
    job_office.changed("basis.code", "irc-2018")
    lines = block(run(job_office.root, "rules", "26-041").out, "irc-2018-drip-fasteners")
    assert lines[1] == "International Residential Code, 2018, R905.2.8.5 [irc-2018-drip-fasteners]"
    assert lines[3].startswith("Read in: On the edge: drip edge requirements")


def test_a_rule_from_memory_is_to_be_read_and_its_file_is_printed(job_office: Office, run: Run) -> None:
    out = run(job_office.root, "rules", "26-041").out
    lines = block(out, "irc-2021-drip-fasteners")
    assert lines[2] == "not read again for this packet; does not decide"
    assert lines[-1] == (
        "To do: read R905.2.8.5 in the adopted text and fill in shared/readings/irc-2021-drip-fasteners.yaml"
    )
    file = out.partition("# shared/readings/irc-2021-drip-fasteners.yaml\n")[2].partition("\n\n")[0]
    assert list(yaml.safe_load(file).items()) == [
        ("row", "irc-2021-drip-fasteners"),
        ("value", None),
        ("section", None),
        ("authority", None),
        ("read_by", None),
        ("read_on", None),
    ]
    assert "a number: in" in file
    assert "Town of Pellam Reach, building office" in file


def test_a_printed_file_left_empty_is_refused_and_filled_in_it_lifts_the_row(
    job_office: Office, run: Run
) -> None:
    id = "irc-2021-drip-fasteners"
    assert not rows_of(run, job_office)[id]["decides"]
    out = run(job_office.root, "rules", "26-041").out
    file = out.partition(f"# shared/readings/{id}.yaml\n")[2].partition("\n\n")[0]
    job_office.file(f"shared/readings/{id}.yaml", file)
    refused = run(job_office.root, "rules", "26-041")
    assert (refused.code, refused.out) == (2, "")
    assert f"shared/readings/{id}.yaml:" in refused.err
    filled = {"value": "12", "section": "R905.2.8.5", "authority": "Town of Pellam Reach",
              "read_by": "Tam Oduya", "read_on": "2026-02-11"}  # fmt: skip
    for name, value in filled.items():
        file = re.sub(rf"^{name}:  #", f"{name}: {value}  #", file, flags=re.M)
    job_office.file(f"shared/readings/{id}.yaml", file)
    row = rows_of(run, job_office)[id]
    assert (row["decides"], row["mark"], row["value"], row["section"]) == (True, "office", 12.0, "R905.2.8.5")
    assert (row["read_by"], row["read_on"], steps(row), row["reading_file"]) == (
        "Tam Oduya", "2026-02-11", ["nothing"], None,
    )  # fmt: skip


def test_a_reading_says_who_read_it_and_when(job_office: Office, run: Run) -> None:
    job_office.file("shared/readings/deck-field.yaml", READING)
    lines = block(run(job_office.root, "rules", "26-041").out, FIELD)
    assert lines[1].endswith(f"Table R602.3(1), item 31, second printing [{FIELD}]")
    assert lines[2] == (
        "read by Tam Oduya on February 11, 2026, Town of Pellam Reach, building office; decides a result here"
    )
    assert lines[-1] == "To do: nothing"


def test_common_practice_can_not_be_read_up_and_has_no_file(job_office: Office, run: Run) -> None:
    out = run(job_office.root, "rules", "26-041").out
    lines = block(out, "trade-practice-nails")
    assert lines[1] == "Common practice of the trade, no published source [trade-practice-nails]"
    assert lines[-1] == "To do: nothing to read, nobody publishes it; it decides nothing"
    assert "# shared/readings/trade-practice" not in out


def test_a_superseded_rule_names_what_took_its_place(job_office: Office, run: Run) -> None:
    row = rows_of(run, job_office)["trade-practice-felt-36-between"]
    assert (row["decides"], steps(row), row["reading_file"]) == (False, ["superseded"], None)
    assert row["to_do"][0]["says"].startswith("nothing, it is superseded: An old code rule, replaced in 2015")


def test_a_fact_the_record_lacks_is_named(job_office: Office, run: Run) -> None:
    job_office.changed("basis.code", "irc-2018").replaced("  wind_speed: 130 mph\n", "")
    row = rows_of(run, job_office)["irc-2018-underlayment-laps"]
    assert (row["decides"], row["missing"], steps(row)) == (False, ["wind_ultimate_mph"], ["tell", "confirm"])
    assert row["to_do"][0]["says"] == "can't be told until the record says: ultimate wind speed"
    unread = rows_of(run, job_office)["irc-2018-wind-class-above-194"]
    assert (steps(unread), unread["value"]) == (["tell", "read"], None)


def test_the_makers_number_asks_nothing_more(job_office: Office, run: Run) -> None:
    row = rows_of(run, job_office)["covering.maker.nails_each"]
    assert (row["whose"], row["value"], row["decides"], steps(row)) == ("maker", 6.0, True, ["nothing"])
    assert row["document"] == "bundle wrapper, panel for high wind"


def test_a_rule_that_was_read_in_the_text_itself_asks_nothing_more(job_office: Office, run: Run) -> None:
    row = rows_of(run, job_office)["arma-hand-seal-laminated"]
    assert (row["mark"], row["value"], row["decides"], steps(row)) == ("seen", 4.0, True, ["nothing"])


def test_nails_and_words_are_written_out(job_office: Office, run: Run) -> None:
    out = run(job_office.root, "rules", "26-041").out
    assert block(out, "irc-2021-deck-nail")[0] == (
        "Deck nail: one of 2 1/2 × 0.131 in smooth shank or 2 3/8 × 0.113 in ring shank"
    )
    assert rows_of(run, job_office)["irc-2021-deck-nail"]["value"] == [
        {"length_in": 2.5, "shank_in": 0.131, "shank": "smooth"},
        {"length_in": 2.375, "shank_in": 0.113, "shank": "ring"},
    ]
    assert block(out, "irc-2021-wind-class-155")[0] == (
        "Shingles, wind class: one of ASTM D7158 Class G or ASTM D7158 Class H"
    )


def test_a_value_put_into_a_working_is_listed_with_its_figure(run: Run) -> None:
    rows = {row["row"]: row for row in json.loads(run(ROOT, "rules", "26-067", "--json").out)}
    assert "ice-barrier" in rows["irc-2018-ice-inside-wall"]["used_by"]
    assert any("." in name for name in rows["irc-2018-ice-inside-wall"]["used_by"])
    cold = rows["irc-2018-vents-cold"]
    assert (cold["decides"], steps(cold)) == (False, ["not_here"])


def test_quiet_leaves_the_files_out(job_office: Office, run: Run) -> None:
    whole, short = (
        run(job_office.root, "rules", "26-041").out,
        run(job_office.root, "rules", "26-041", "-q").out,
    )
    assert whole.startswith(short.rstrip("\n"))
    assert "\nrow: " in whole
    assert "\nrow: " not in short


def test_a_job_without_a_basis_rests_on_the_makers_number_alone(job_office: Office, run: Run) -> None:
    blocks = [text for text in job_office.text.split("\n\n") if not text.startswith("basis:")]
    ran = run(job_office.write("\n\n".join(blocks)).root, "rules", "26-041")
    assert ran.code == 0
    first, second, *rest = ran.out.splitlines()
    assert first == "26-041: 1 rule: 1 may decide, 0 of them from a restatement; 0 may not"
    assert second.startswith("The record names no code: write basis.code")
    assert [line for line in rest if line in WHOSE] == ["The maker's printed instructions"]


def test_a_bad_record_exits_2_and_lists_nothing(job_office: Office, run: Run) -> None:
    ran = run(job_office.changed("deck.edge_spacing", "8").root, "rules", "26-041")
    assert (ran.code, ran.out) == (2, "")
    assert "error[no-unit]" in ran.err
    assert run(job_office.root, "rules", "26-999").code == 2
    assert run(job_office.root, "rules").code == 2
