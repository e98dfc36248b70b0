"""``packet new``: a commented record that holds as it is, and habits only where they were confirmed."""

import html
import json
import re
import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

from packet.cli.new import HABITS
from packet.reading import read_model
from packet.record.job import JobRecord
from packet.starting.answers import KINDS
from packet.starting.habits import HABITS as KNOWN_HABITS
from packet.yamlread import read_yaml
from tests.cli.conftest import Ran, Run
from tests.support.new_job import confirmed, flags, left_over, record_of, text_of
from tests.support.office import DEMO_JOB
from tests.support.terminal import nobody, types

#: What each habit puts into the record.
PUTS: Mapping[str, tuple[str, Any]] = {
    "code": ("basis", {"code": "irc-2021", "authority": "Town of Pellam Reach, building office"}),
    "deck-nail": (
        "deck",
        {"nail": {"size": "2-3/8 x 0.113", "shank": "ring", "finish": "hot-dip galvanized"}},
    ),
    "underlayment": (
        "dry_in",
        {
            "product": "#30 felt",
            "standard": "ASTM D226 Type II",
            "fasteners": {"kind": "cap nail", "at_laps": "6 in", "between": "12 in"},
        },
    ),
    "drip-edge": ("drip_edge", {"metal": "0.019 in aluminum"}),
    "shingle-nail": ("covering", {"nail": {"length": "1-1/2 in", "shank": "0.120 in", "head": "3/8 in"}}),
}


@pytest.fixture(autouse=True)
def _nobody(monkeypatch: pytest.MonkeyPatch) -> None:
    nobody(monkeypatch)


def blocks(text: str) -> dict[str, list[int]]:
    """Return the numbers of the lines of each commented block, by its key."""
    found: dict[str, list[int]] = {}
    for number, line in enumerate(text.splitlines()):
        if match := re.match(r"(# )?([a-z_]+):(?! \$schema)", line):
            found[match[2]] = [number] if match[1] else []
        elif line.startswith("#   "):
            next(reversed(found.values())).append(number)
    return {key: numbers for key, numbers in found.items() if numbers}


def uncommented(text: str, *keys: str) -> str:
    lines, known = text.splitlines(), blocks(text)
    for number in (number for key in keys for number in known[key]):
        lines[number] = lines[number].removeprefix("# ")
    return "\n".join([*lines, ""])


def test_a_job_is_made_checked_and_the_next_step_said(new_office: Path, run: Run) -> None:
    ran = run(new_office, "new", *flags())
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.splitlines() == [
        "26-042: made jobs/26-042/job.yaml, jobs/26-042/photos.yaml, jobs/26-042/photos",
        "26-042: nothing due is open",
        "Next: open jobs/26-042/job.yaml; packet check 26-042; packet build 26-042",
    ]
    assert record_of(new_office) == {
        "job": {"number": "26-042", "kind": "patch", "status": "planned"},
        "property": {
            "street": "12 Marsh Road",
            "town": "Pellam Reach",
            "state": "South Carolina",
            "time_zone": "America/New_York",
        },
    }
    assert (new_office / "jobs" / "26-042" / "photos").is_dir()
    assert read_yaml(new_office / "jobs" / "26-042" / "photos.yaml").value == {"photos": []}
    assert left_over(new_office) == ["26-042"]


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("habits", [(), HABITS], ids=["none confirmed", "all confirmed"])
def test_a_planned_job_of_every_kind_checks_and_is_short(
    usual_office: Path, run: Run, kind: str, habits: tuple[str, ...]
) -> None:
    (usual_office / ".schemas").mkdir()
    (usual_office / ".schemas" / "job.schema.json").write_text("{}", encoding="utf-8")
    ran = run(usual_office, "new", *flags(kind=kind), "--county", "Kestrel County", *confirmed(*habits))
    assert ran.code == 0
    assert run(usual_office, "check", "26-042").code == 0
    text = text_of(usual_office)
    assert 25 <= len(text.splitlines()) <= 50
    assert max(map(len, text.splitlines())) <= 140


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("habits", [(), ("deck-nail", "shingle-nail"), HABITS], ids=["none", "two", "all"])
def test_every_block_holds_when_it_is_uncommented(
    usual_office: Path, run: Run, kind: str, habits: tuple[str, ...]
) -> None:
    run(usual_office, "new", *flags(kind=kind), *confirmed(*habits))
    text, path = text_of(usual_office), usual_office / "jobs" / "26-042" / "job.yaml"
    keys = list(blocks(text))
    needs_roof = {"deck", "covering"}
    for key in keys:
        with_roof = ("roof",) if key in needs_roof else ()
        path.write_text(uncommented(text, *with_roof, key), encoding="utf-8")
        assert run(usual_office, "check", "26-042").code == 0, (key, path.read_text(encoding="utf-8"))
        assert key in record_of(usual_office)
    path.write_text(re.sub(r"^# ", "", text, flags=re.MULTILINE), encoding="utf-8")
    assert run(usual_office, "check", "26-042").code == 0
    assert set(record_of(usual_office)) >= {
        "dates",
        "roof",
        "basis",
        "deck",
        "dry_in",
        "drip_edge",
        "details",
        "covering",
    }
    assert run(usual_office, "build", "26-042").code == 0


@pytest.mark.parametrize(
    ("kind", "first", "last"),
    [
        ("patch", ["complaint", "cause"], "tested"),
        ("section", ["complaint", "cause"], "tested"),
        ("re-roof", ["cause"], "clean_up"),
        ("recover", ["cause"], "clean_up"),
    ],
)
def test_the_blocks_stand_in_the_order_of_the_work(
    new_office: Path, run: Run, kind: str, first: list[str], last: str
) -> None:
    run(new_office, "new", *flags(kind=kind))
    keys = list(blocks(text_of(new_office)))
    tie_in = ["tie_in"] if kind in ("patch", "section") else []
    middle = [
        "dates",
        "basis",
        "roof",
        "deck",
        "dry_in",
        "drip_edge",
        "details",
        "covering",
        "found",
        *tie_in,
    ]
    assert keys == [*first, *middle, last, "inspections", "bought", "warranty"]


def test_a_block_left_as_it_is_written_reads_as_a_question_and_not_as_work(
    new_office: Path, run: Run
) -> None:
    run(new_office, "new", *flags())
    path = new_office / "jobs" / "26-042" / "job.yaml"
    path.write_text(uncommented(text_of(new_office), "cause"), encoding="utf-8")
    assert record_of(new_office)["cause"]["what"] == "Why it leaks, in plain words."


@pytest.mark.parametrize("habit", HABITS)
def test_a_confirmed_habit_alone_is_a_live_line(usual_office: Path, run: Run, habit: str) -> None:
    ran = run(usual_office, "new", *flags(), *confirmed(habit))
    key, value = PUTS[habit]
    record = record_of(usual_office)
    assert record.keys() == {"job", "property", key}
    assert record[key] == value
    text = text_of(usual_office)
    assert len(re.findall("## confirmed for this job", text)) == 1
    assert len(re.findall("## usual here, not confirmed for this job", text)) == len(HABITS) - 1
    assert ran.out.count(": confirmed for this job") == 1
    assert ran.out.count(": a remark, not confirmed") == len(HABITS) - 1


def test_nothing_usual_is_taken_for_granted_in_a_script(usual_office: Path, run: Run) -> None:
    assert run(usual_office, "new", *flags()).code == 0
    assert record_of(usual_office).keys() == {"job", "property"}
    remarks = re.findall(r"^# .*?(#30 felt|0\.019 in aluminum|cap nail)", text_of(usual_office), re.MULTILINE)
    assert remarks == ["#30 felt", "cap nail", "0.019 in aluminum"]
    ran = run(usual_office, "new", *flags(number="26-043", town=None, state=None, time_zone=None))
    assert ran.code == 2
    assert "Give --town, --state, --time-zone;" in ran.err
    assert left_over(usual_office) == ["26-042"]


def test_the_flag_knows_every_habit() -> None:
    assert tuple(habit.id for habit in KNOWN_HABITS) == HABITS


def test_a_terminal_is_asked_everything_and_offered_what_is_usual(
    usual_office: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    types(monkeypatch, "26-042", "12 Marsh Road", "", "", "", "", "patch", "n", "y", "", "y", "no")
    ran = run(usual_office, "new")
    assert ran.code == 0
    assert "Town or city [Usualtown]" in ran.err
    for question in (
        "Code irc-2021, Town of Pellam Reach, building office",
        "Deck nail 2-3/8 x 0.113, ring shank, hot-dip galvanized",
        "Underlayment #30 felt, ASTM D226 Type II, cap nail, 6 in at laps, 12 in between them",
        "Drip edge 0.019 in aluminum",
        "Shingle nail 1-1/2 in, 0.120 in shank, 3/8 in head",
    ):
        assert f"{question}: on this job? [y/N]" in ran.err
    record = record_of(usual_office)
    assert record["property"] == {
        "street": "12 Marsh Road",
        "town": "Usualtown",
        "county": "Usualcounty",
        "state": "Usualstate",
        "time_zone": "America/Chicago",
    }
    assert record.keys() == {"job", "property", "deck", "drip_edge"}


def test_a_bad_answer_is_explained_and_asked_again(
    new_office: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    (new_office / "jobs" / "26-041").mkdir()
    types(
        monkeypatch,
        *("26/42", "26-041", "26-042", "", "12 Marsh Road", "Town", "", "State", "Eastern", "America/Denver"),
        *("roof", "re-roof"),
    )
    ran = run(new_office, "new")
    assert ran.code == 0
    said = re.findall(r"Error: (.+?)\. ", ran.err)
    assert said == [
        '"26/42" can\'t be the name of a folder on every computer, because a stroke parts folders',
        'the job "26-041" is there already, and nothing was changed',
        '"Eastern" is not the name of a time zone',
        '"roof" is not one of the words that "kind" accepts',
    ]
    assert record_of(new_office)["property"]["time_zone"] == "America/Denver"
    assert "county" not in record_of(new_office)["property"]


def test_what_flags_give_is_not_asked(new_office: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    types(monkeypatch, "12 Marsh Road", "")
    ran = run(new_office, "new", *flags(street=None))
    assert ran.code == 0
    assert re.findall(r"^(.+?): ", ran.err, re.MULTILINE) == ["House number and street"]
    assert record_of(new_office)["property"]["street"] == "12 Marsh Road"


@pytest.mark.parametrize(
    "word",
    [
        "#30 felt",
        "no",
        "12:30",
        "1.10",
        "null",
        "~",
        'O\'Hara "Bud" Lane',
        "a: b #c",
        "C:\\x",
        "- x, [y]",
        "Überweg 7 屋",
    ],
)
def test_a_typed_answer_stays_the_text_it_was(new_office: Path, run: Run, word: str) -> None:
    ran = run(new_office, "new", *flags(street=word, town=word, state=word), "--county", word)
    assert ran.code == 0
    place = record_of(new_office)["property"]
    assert {place[name] for name in ("street", "town", "county", "state")} == {word}
    assert yaml.safe_load(text_of(new_office))["property"]["street"] == word


@pytest.mark.parametrize(
    "number", ["26", "1.10", "26-042 b", "console", "N°7 Überweg", "#12", "no", "x" * 60]
)
def test_a_number_that_is_a_folders_name_is_the_jobs_name(new_office: Path, run: Run, number: str) -> None:
    assert run(new_office, "new", *flags(number=number)).code == 0
    assert record_of(new_office, number)["job"]["number"] == number
    assert run(new_office, "check", number).code == 0


def test_a_number_typed_with_its_accents_apart_names_the_folder_with_them_together(
    new_office: Path, run: Run
) -> None:
    """Some keyboards and disks take letters with accents apart; one job must not have two names."""
    assert run(new_office, "new", *flags(number="U\u0308berweg")).code == 0
    assert [path.name for path in (new_office / "jobs").iterdir()] == ["\u00dcberweg"]


def test_quiet_prints_nothing(new_office: Path, run: Run) -> None:
    ran = run(new_office, "new", "--quiet", *flags())
    assert (ran.code, ran.out, ran.err) == (0, "", "")


def test_an_office_made_by_hand_gets_no_line_for_an_editor_it_has_not(new_office: Path, run: Run) -> None:
    run(new_office, "new", *flags())
    for name in ("job.yaml", "photos.yaml"):
        assert "$schema" not in (new_office / "jobs" / "26-042" / name).read_text(encoding="utf-8")


def test_a_habit_on_several_lines_stays_on_one(usual_office: Path, run: Run) -> None:
    card = usual_office / "shared" / "office.yaml"
    text = card.read_text(encoding="utf-8")
    card.write_text(
        text.replace("drip_edge: 0.019 in aluminum", "drip_edge: |\n    0.019 in\n    job: aluminum"),
        encoding="utf-8",
    )
    assert run(usual_office, "new", *flags()).code == 0
    assert 'metal: "0.019 in job: aluminum"' in text_of(usual_office)
    assert record_of(usual_office).keys() == {"job", "property"}


def walked(run: Run, folder: Path, *arguments: str) -> Ran:
    ran = run(folder, *arguments)
    assert ran.code == 0, ran.err
    return ran


def test_a_stranger_starts_an_office_and_has_a_first_packet(tmp_path: Path, run: Run) -> None:
    card = ("--name", "Pike and Gannet", "--address", "4 Slipway Road", "--phone", "843-555-0142")
    walked(run, tmp_path, "start", "office", *card)
    office = tmp_path / "office"
    walked(run, office, "new", *flags())
    job = office / "jobs" / "26-042"
    for name, kind in (("job.yaml", "job"), ("photos.yaml", "photos")):
        first = (job / name).read_text(encoding="utf-8").splitlines()[0]
        schema = job / first.removeprefix("# yaml-language-server: $schema=")
        assert (
            json.loads(schema.read_text(encoding="utf-8"))["title"]
            == {"job": "JobRecord", "photos": "PhotoLog"}[kind]
        )
    assert "nothing due is open" in walked(run, office, "check", "26-042").out
    built = walked(run, office, "build", "26-042").out
    assert "out/26-042/outside/index.html" in built
    front = html.unescape((office / "out" / "26-042" / "outside" / "index.html").read_text(encoding="utf-8"))
    assert "26-042" in front
    assert "Pike" in front
    assert read_model(job / "job.yaml", JobRecord).value.cause is None


def test_the_entry_in_the_photo_log_holds_when_it_is_uncommented(new_office: Path, run: Run) -> None:
    run(new_office, "new", *flags())
    log = new_office / "jobs" / "26-042" / "photos.yaml"
    shutil.copy(DEMO_JOB / "photos" / "P01.jpg", log.parent / "photos" / "P01.jpg")
    text = log.read_text(encoding="utf-8")
    assert text.count("photos: []") == 1
    log.write_text(
        re.sub(r"^# ", "", text.replace("photos: []", "photos:"), flags=re.MULTILINE), encoding="utf-8"
    )
    assert run(new_office, "check").code == 0
    assert [entry["id"] for entry in read_yaml(log).value["photos"]] == ["P01"]
