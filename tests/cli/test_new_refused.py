"""``packet new`` where it refuses: nothing is made, nothing that is there is touched, and it says why."""

import re
from pathlib import Path
from typing import Any

import pytest

from packet.cli.new import HABITS
from tests.cli.conftest import Run
from tests.support.new_job import confirmed, flags, left_over, text_of
from tests.support.terminal import nobody, types


@pytest.fixture(autouse=True)
def _nobody(monkeypatch: pytest.MonkeyPatch) -> None:
    nobody(monkeypatch)


@pytest.mark.parametrize("habit", HABITS)
def test_a_habit_that_the_office_has_not_can_not_be_confirmed(new_office: Path, run: Run, habit: str) -> None:
    ran = run(new_office, "new", *flags(), *confirmed(habit))
    assert ran.code == 2
    assert f"no usual {habit}" in ran.err
    assert left_over(new_office) == []


def test_a_terminal_closed_midway_leaves_nothing(
    new_office: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    types(monkeypatch, "26-042", "12 Marsh Road")
    ran = run(new_office, "new")
    assert ran.code == 130
    assert left_over(new_office) == []


@pytest.mark.parametrize(
    ("name", "word", "says"),
    [
        ("street", "12 Marsh\nkind: recover", "an invisible character stands here (U+000A)"),
        ("town", "a\tb", "U+0009"),
        ("state", "a\x1b[31m", "U+001B"),
        ("street", "\u202eabc", "U+202E"),
        ("street", "", "nothing was given for street"),
        ("town", "x" * 201, "accepted: at most 200 characters"),
        ("time-zone", "Mars/Base", "not the name of a time zone"),
        ("kind", "pach", 'Did you mean "patch"?'),
    ],
)
def test_an_answer_that_the_record_does_not_take_makes_nothing(
    new_office: Path, run: Run, name: str, word: str, says: str
) -> None:
    ran = run(new_office, "new", *flags(**{name.replace("-", "_"): word}))
    assert ran.code == 2
    assert f"--{name}: " in ran.err
    assert says in ran.err
    assert "Traceback" not in ran.err
    assert left_over(new_office) == []


@pytest.mark.parametrize(
    "number",
    [
        "CON",
        "con.txt",
        "LPT1",
        "Nul",
        "26/42",
        "26\\42",
        "..",
        ".26",
        "26.",
        "a:b",
        "a*b",
        'a"b',
        "a|b",
        "<a>",
        "-26",
        "x" * 61,
    ],
)
def test_a_number_that_is_no_folders_name_everywhere_is_refused(
    new_office: Path, run: Run, number: str
) -> None:
    ran = run(new_office, "new", *flags(number=None), f"--number={number}")
    assert ran.code == 2
    assert "can't be the name of a folder" in ran.err
    assert left_over(new_office) == []


def test_every_wrong_flag_is_said_at_once(new_office: Path, run: Run) -> None:
    ran = run(new_office, "new", *flags(number="CON", time_zone="x", kind="y"))
    assert re.findall(r"^(?:Error: )?(--[a-z-]+): ", ran.err, re.MULTILINE) == [
        "--number",
        "--time-zone",
        "--kind",
    ]


@pytest.mark.parametrize("there", ["26-042a", "26-042A"])
def test_a_job_that_is_there_is_not_touched(new_office: Path, run: Run, there: str) -> None:
    folder = new_office / "jobs" / there
    folder.mkdir()
    (folder / "job.yaml").write_text("mine", encoding="utf-8")
    ran = run(new_office, "new", *flags(number="26-042a"))
    assert ran.code == 2
    assert f'the job "{there}" is there already' in ran.err
    assert [path.name for path in folder.iterdir()] == ["job.yaml"]
    assert (folder / "job.yaml").read_text(encoding="utf-8") == "mine"


def test_a_job_made_meanwhile_is_not_touched(
    new_office: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    from packet.starting import job

    def slowly(*arguments: Any) -> Any:
        (new_office / "jobs" / "26-042").mkdir()
        (new_office / "jobs" / "26-042" / "job.yaml").write_text("mine", encoding="utf-8")
        return assembled(*arguments)

    assembled = job.assemble
    monkeypatch.setattr(job, "assemble", slowly)
    ran = run(new_office, "new", *flags())
    assert ran.code == 2
    assert text_of(new_office) == "mine"
    assert left_over(new_office) == ["26-042"]


@pytest.mark.parametrize("fails", ["photos.yaml", "job.yaml"])
def test_a_disk_that_is_full_leaves_nothing(
    new_office: Path, run: Run, monkeypatch: pytest.MonkeyPatch, fails: str
) -> None:
    real = Path.write_text

    def full(self: Path, *arguments: Any, **more: Any) -> int:
        if self.name == fails:
            real(self, "half", encoding="utf-8")
            raise OSError(28, "No space left on device")
        return real(self, *arguments, **more)

    monkeypatch.setattr(Path, "write_text", full)
    ran = run(new_office, "new", *flags())
    assert ran.code == 2
    assert "jobs/26-042: error[not-writable]: this can't be written: no space left on device" in ran.err
    assert left_over(new_office) == []


def test_a_card_with_a_mistake_is_said_before_anything_is_asked(
    new_office: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    (new_office / "shared" / "office.yaml").write_text("name: A\naddress:\nphone: 1\n", encoding="utf-8")
    types(monkeypatch, "26-042")
    ran = run(new_office, "new")
    assert ran.code == 2
    assert "shared/office.yaml:2:9: error[card-empty]" in ran.err
    assert "Job number" not in ran.err


def test_a_usual_code_that_nobody_knows_is_refused_at_its_line(usual_office: Path, run: Run) -> None:
    card = usual_office / "shared" / "office.yaml"
    card.write_text(
        card.read_text(encoding="utf-8").replace("code: irc-2021", "code: irc-1066"), encoding="utf-8"
    )
    line = card.read_text(encoding="utf-8").splitlines().index("  code: irc-1066") + 1
    ran = run(usual_office, "new", *flags())
    assert ran.code == 2
    assert f"shared/office.yaml:{line}:9: error[unknown-code]" in ran.err


def test_outside_an_office_it_says_how_to_begin_one(tmp_path: Path, run: Run) -> None:
    ran = run(tmp_path, "new", *flags())
    assert ran.code == 2
    assert 'make one with "packet start"' in ran.err
