"""Each case is a job as somebody might write it; what must come of it is reasoned in its first lines.

A case holds ``record`` (job.yaml), ``photos`` (id, stage and what they prove; each gets a small picture with the
time ``taken``, or none where the time was lost), and ``expect``: words of results and duties, days, what is
open, findings, the next hold point, or the problem and the text it points at.
"""

import re
import textwrap
from pathlib import Path
from typing import Any

import pytest
import yaml

from packet.review.holds import next_hold
from tests.support.office import Office
from tests.support.pictures import picture

HERE = Path(__file__).parent
CASES = sorted(HERE.glob("*.yaml"))


def record_of(text: str) -> str:
    """Return the record as it was typed: a general YAML reader would take the key ``on`` for a truth."""
    found = re.search(r"^record:\n((?:  .*\n)+)", text, re.MULTILINE)
    assert found, "a case holds a record"
    return textwrap.dedent(found[1])


def office_of(text: str, case: dict[str, Any], folder: Path) -> Office:
    office = Office(folder / "office", record_of(text))
    entries = []
    for photo in case.get("photos", []):
        entry = {"shows": f"Photo {photo['id']}.", "file": f"photos/{photo['id']}.jpg", **photo}
        taken = entry.pop("taken", "")
        picture(
            office.job / entry["file"], taken=taken, offset=entry.get("offset", "-04:00") if taken else ""
        )
        entries.append(entry)
    return office.log(*entries) if entries else office


def results(office: Office) -> dict[str, str]:
    return {
        f"{result.requirement}:{result.subject}" if result.subject else result.requirement: result.word
        for result in office.closeout().results
    }


def test_there_are_twenty_cases_or_more() -> None:
    assert len(CASES) >= 20


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_case(path: Path, tmp_path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    case = yaml.safe_load(text)
    expect = case["expect"]
    assert expect, "a case that expects nothing shows nothing"
    office = office_of(text, case, tmp_path)
    if "problem" in expect:
        told = expect["problem"]
        found = office.problems()
        assert [(problem.code, problem.line) for problem in found] == [
            (
                told["code"],
                office.place(told["at"], key=told.get("key", False), file=told.get("file", "job.yaml"))[0],
            )
        ]
        return
    closeout = office.closeout()
    words = results(office)
    assert {name: words.get(name) for name in expect.get("results", {})} == expect.get("results", {})
    assert not set(expect.get("not_asked", ())) & {result.requirement for result in closeout.results}
    if "open" in expect:
        assert sorted(
            f"{r.requirement}:{r.subject}" if r.subject else r.requirement for r in closeout.results if r.open
        ) == sorted(expect["open"])
    found = {duty.id: duty.word for duty in closeout.duties}
    assert {name: found.get(name) for name in expect.get("duties", {})} == expect.get("duties", {})
    days = {check.key: check.word for duty in closeout.duties for check in duty.days}
    assert {name: days.get(name) for name in expect.get("days", {})} == expect.get("days", {})
    if "findings" in expect:
        assert sorted(finding.id for finding in closeout.findings) == sorted(expect["findings"])
    standings = {item.approval: item.word for item in closeout.approvals}
    assert {name: standings.get(name) for name in expect.get("approvals", {})} == expect.get("approvals", {})
    if "next" in expect:
        point = next_hold(closeout.holds)
        assert (point.before if point else None) == expect["next"]["before"]
        waiting = [item.requirement for item in point.unmet] if point else []
        assert [name for name in waiting if name in expect["next"]["waits"]] == expect["next"]["waits"]
    if "asked" in expect:
        asked = {result.requirement for result in closeout.results if result.word != "does_not_apply"}
        low, high = expect["asked"]
        assert low <= len(asked) <= high, sorted(asked)
