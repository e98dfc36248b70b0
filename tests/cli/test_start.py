"""``packet start``: an office's folder, made or completed, and no file ever changed."""

import io
import json
import os
import re
import sys
from pathlib import Path, PurePosixPath

import pytest
import yaml

from packet.schema import MODELS, schema_of
from tests.cli.conftest import Run
from tests.support.terminal import nobody, types

CARD = ("--name", "Pike & Gannet", "--address", "4 Slipway Road #3", "--phone", "843-555-0142")
FOLDERS = ("jobs", "shared", "templates")
FILES = (
    "shared/office.yaml",
    "templates/README.md",
    ".gitignore",
    ".vscode/settings.json",
    ".schemas/job.schema.json",
    ".schemas/photos.schema.json",
    ".schemas/office.schema.json",
)


@pytest.fixture(autouse=True)
def _nobody(monkeypatch: pytest.MonkeyPatch) -> None:
    nobody(monkeypatch)


def read(path: Path) -> dict[str, object]:
    value: dict[str, object] = yaml.safe_load(path.read_text(encoding="utf-8"))
    return value


def test_an_office_is_made_with_every_part_and_said(tmp_path: Path, run: Run) -> None:
    ran = run(tmp_path, "start", "north/my office", *CARD)
    assert (ran.code, ran.err) == (0, "")
    office = tmp_path / "north" / "my office"
    assert all((office / name).is_dir() for name in FOLDERS)
    assert all((office / name).is_file() for name in FILES)
    made = re.findall(r"^  made +(\S+)$", ran.out, re.MULTILINE)
    assert made == [*(f"{name}/" for name in FOLDERS), *FILES]
    assert ran.out.rstrip().endswith('Next: cd "north/my office", then packet new')
    assert sorted(made) == sorted(
        path.relative_to(office).as_posix() + ("/" if path.is_dir() else "")
        for path in office.rglob("*")
        if path.parent == office and path.name in FOLDERS or path.is_file()
    )


def test_what_was_given_is_on_the_card_as_typed(tmp_path: Path, run: Run) -> None:
    run(tmp_path, "start", "o", *CARD)
    card = read(tmp_path / "o" / "shared" / "office.yaml")
    assert card == {"name": "Pike & Gannet", "address": "4 Slipway Road #3", "phone": "843-555-0142"}


@pytest.mark.parametrize(
    "word", ["no", "12:30", "#30", "null", "a: b", "'x\" \\", "Überdach 屋根", "- x", "{a}"]
)
def test_a_typed_name_stays_the_text_it_was(tmp_path: Path, run: Run, word: str) -> None:
    assert run(tmp_path, "start", "o", "--name", word).code == 0
    assert read(tmp_path / "o" / "shared" / "office.yaml")["name"] == word


def test_a_card_left_empty_is_refused_once_a_line_and_nothing_else(tmp_path: Path, run: Run) -> None:
    ran = run(tmp_path, "start", "o")
    assert "Next: fill in name, address, phone in o/shared/office.yaml, then cd o, then packet new" in ran.out
    job = tmp_path / "o" / "jobs" / "26-042"
    job.mkdir()
    (job / "job.yaml").write_text(
        "job: {number: 26-042, kind: patch, status: planned}\n"
        "property: {street: 1 A, town: B, state: C, time_zone: America/New_York}\n",
        encoding="utf-8",
    )
    lines = (tmp_path / "o" / "shared" / "office.yaml").read_text(encoding="utf-8").splitlines()
    for command in ("check", "build"):
        ran = run(tmp_path / "o", command)
        assert ran.code == 2
        found = re.findall(
            r"^shared/office\.yaml:(\d+):\d+: error\[card-empty\]: (.+)$", ran.err, re.MULTILINE
        )
        assert [lines[int(line) - 1] for line, _ in found] == ["name:", "address:", "phone:"]
        assert ran.err.count("error[") == 3
        assert "for example Pike and Gannet Roofing" in ran.err


def test_a_terminal_is_asked_and_enter_leaves_an_answer_for_later(
    tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    types(monkeypatch, "Pike and Gannet", "", "843-555-0142")
    ran = run(tmp_path, "start", "o")
    assert ran.err.count("(Enter: later)") == 3
    assert read(tmp_path / "o" / "shared" / "office.yaml") == {
        "name": "Pike and Gannet",
        "address": None,
        "phone": "843-555-0142",
    }
    assert "Next: fill in address in o/shared/office.yaml" in ran.out


def test_answers_that_are_piped_are_not_read_and_that_is_said(
    tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO("Pike and Gannet\n4 Slipway Road\n843-555-0142\n"))
    ran = run(tmp_path, "start", "o", "--phone", "843-555-0142")
    assert ran.code == 0
    assert ran.err == (
        "Nothing was asked and nothing read, for this is no terminal: give --name, --address, "
        "or fill in name, address in o/shared/office.yaml.\n"
    )
    assert read(tmp_path / "o" / "shared" / "office.yaml")["name"] is None
    assert run(tmp_path, "start", "o").err == ""


def test_what_a_flag_gives_is_not_asked(tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    types(monkeypatch, "4 Slipway Road")
    ran = run(tmp_path, "start", "o", "--name", "Pike", "--phone", "1")
    assert "Postal address" in ran.err
    assert "Telephone" not in ran.err
    assert read(tmp_path / "o" / "shared" / "office.yaml")["address"] == "4 Slipway Road"


@pytest.mark.parametrize(
    ("flag", "word", "says"),
    [
        ("--name", "two\nlines", "U+000A"),
        ("--phone", "1\u202e2", "U+202E"),
        ("--address", "x" * 201, "at most 200 characters"),
        ("--name", "  ", "nothing was given for name"),
    ],
)
def test_a_flag_that_the_card_does_not_take_makes_nothing(
    tmp_path: Path, run: Run, flag: str, word: str, says: str
) -> None:
    ran = run(tmp_path, "start", "o", flag, word)
    assert ran.code == 2
    assert says in ran.err
    assert f"{flag}: " in ran.err
    assert not (tmp_path / "o").exists()


def test_a_second_start_completes_and_changes_no_file(tmp_path: Path, run: Run) -> None:
    office = tmp_path / "o"
    run(tmp_path, "start", "o", *CARD)
    (office / "shared" / "office.yaml").write_text("name: Mine\n", encoding="utf-8")
    (office / "templates" / "README.md").unlink()
    (office / "jobs").rmdir()
    before = {path: path.read_bytes() for path in office.rglob("*") if path.is_file()}
    ran = run(tmp_path, "start", "o", "--name", "Other")
    assert ran.code == 0
    assert re.findall(r"^  made +(\S+)$", ran.out, re.MULTILINE) == ["jobs/", "templates/README.md"]
    assert re.findall(r"^  left as it was (\S+)$", ran.out, re.MULTILINE) == [
        name for name in FILES if name != "templates/README.md"
    ]
    assert {path: path.read_bytes() for path in before} == before
    assert "what was given for it was not written" in ran.out
    assert "fill in address, phone in" in ran.out


def test_a_second_start_does_not_ask_for_a_card_that_is_there(
    tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    run(tmp_path, "start", "o")
    types(monkeypatch)
    assert run(tmp_path, "start", "o").code == 0


def test_a_schema_of_another_version_is_left_and_said(tmp_path: Path, run: Run) -> None:
    run(tmp_path, "start", "o", *CARD)
    old = tmp_path / "o" / ".schemas" / "job.schema.json"
    old.write_text("{}", encoding="utf-8")
    ran = run(tmp_path, "start", "o")
    assert ".schemas/job.schema.json: from another version; delete" in ran.out
    assert ".schemas/office.schema.json: from another" not in ran.out
    assert old.read_text(encoding="utf-8") == "{}"
    old.unlink()
    assert "from another version" not in run(tmp_path, "start", "o").out
    assert json.loads(old.read_text(encoding="utf-8")) == schema_of("job")


def test_the_editor_settings_lead_each_file_to_its_schema(tmp_path: Path, run: Run) -> None:
    run(tmp_path, "start", "o", *CARD)
    office = tmp_path / "o"
    settings = json.loads((office / ".vscode" / "settings.json").read_text(encoding="utf-8"))
    files = {
        "job": "jobs/26-042/job.yaml",
        "photos": "jobs/26-042/photos.yaml",
        "office": "shared/office.yaml",
    }
    assert len(settings["yaml.schemas"]) == len(MODELS)
    for schema, pattern in settings["yaml.schemas"].items():
        assert schema.startswith("./")
        assert "\\" not in schema
        kind = schema.removeprefix("./.schemas/").removesuffix(".schema.json")
        assert json.loads((office / schema).read_text(encoding="utf-8")) == schema_of(kind)
        assert [name for name, file in files.items() if PurePosixPath(file).match(pattern)] == [kind]


def test_the_card_names_its_schema_on_its_first_line(tmp_path: Path, run: Run) -> None:
    run(tmp_path, "start", "o")
    card = tmp_path / "o" / "shared" / "office.yaml"
    first = card.read_text(encoding="utf-8").splitlines()[0]
    schema = re.fullmatch(r"# yaml-language-server: \$schema=(\S+)", first)
    assert schema
    assert json.loads((card.parent / schema[1]).read_text(encoding="utf-8")) == schema_of("office")


def test_every_line_of_the_card_holds_when_it_is_uncommented(tmp_path: Path, run: Run) -> None:
    run(tmp_path, "start", "o", *CARD)
    card = tmp_path / "o" / "shared" / "office.yaml"
    first, *lines = card.read_text(encoding="utf-8").splitlines()
    card.write_text("\n".join([first, *(re.sub(r"^# ", "", line) for line in lines), ""]), encoding="utf-8")
    value = read(card)
    assert set(value) == {"name", "address", "phone", "license", "hours", "email", "usual"}
    usual = value["usual"]
    assert isinstance(usual, dict)
    assert set(usual) == {
        "deck_nail", "underlayment", "drip_edge", "shingle_nail", "town", "county", "state", "time_zone",
        "code", "authority",
    }  # fmt: skip
    ran = run(tmp_path / "o", "check")
    assert "error[no-jobs]" in ran.err
    assert "Next: cd o, then packet new" in run(tmp_path, "start", "o").out


def test_the_codes_named_on_the_card_are_laws_that_ship(tmp_path: Path, run: Run) -> None:
    run(tmp_path, "start", "o")
    text = (tmp_path / "o" / "shared" / "office.yaml").read_text(encoding="utf-8")
    named = re.search(r"come with the program: (.+)\.$", text, re.MULTILINE)
    assert named
    codes = named[1].split(", ")
    assert {"irc-2021", "fbcr-2023"} <= set(codes)
    assert not {"trade-practice", "arma-nails", "ibhs-high-wind-2025"} & set(codes)


def test_the_page_of_the_templates_note_works_as_it_is_written(tmp_path: Path, run: Run) -> None:
    office = tmp_path / "o"
    run(tmp_path, "start", "o", *CARD)
    note = (office / "templates" / "README.md").read_text(encoding="utf-8")
    page = "\n".join(line[4:] for line in note.splitlines() if line.startswith("    ") or not line)
    assert "default:pages/sources.md.j2" in page
    (office / "templates" / "pages").mkdir()
    (office / "templates" / "pages" / "sources.md.j2").write_text(page, encoding="utf-8")
    flags = ("--street", "1 A", "--town", "B", "--state", "C", "--time-zone", "America/New_York")
    assert run(office, "new", "--number", "26-042", *flags, "--kind", "patch").code == 0
    assert run(office, "build", "26-042").code == 0
    built = (office / "out" / "26-042" / "outside" / "sources.html").read_text(encoding="utf-8")
    assert "Ask us for a printed copy." in built


def test_an_office_that_can_not_be_written_is_refused(tmp_path: Path, run: Run) -> None:
    (tmp_path / "o").write_text("a file", encoding="utf-8")
    ran = run(tmp_path, "start", "o")
    assert ran.code == 2
    assert "error[not-writable]" in ran.err
    assert (tmp_path / "o").read_text(encoding="utf-8") == "a file"


def test_half_a_file_is_taken_away(tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    write = Path.write_bytes

    def full(self: Path, data: bytes) -> int:
        if "office.yaml" not in self.name:
            return write(self, data)
        write(self, data[: len(data) // 2])
        raise OSError(28, os.strerror(28))

    with monkeypatch.context() as patch:
        patch.setattr(Path, "write_bytes", full)
        ran = run(tmp_path, "start", "o")
    assert ran.code == 2
    assert "no space left on device" in ran.err
    assert not list((tmp_path / "o" / "shared").iterdir())
    assert run(tmp_path, "start", "o").code == 0
    assert (tmp_path / "o" / "shared" / "office.yaml").is_file()


def test_quiet_prints_nothing(tmp_path: Path, run: Run) -> None:
    ran = run(tmp_path, "start", "o", "--quiet")
    assert (ran.code, ran.out, ran.err) == (0, "", "")
    assert (tmp_path / "o" / "shared" / "office.yaml").is_file()
