"""The installed program in an office outside the checkout does what the checkout does."""

import json
from pathlib import Path

import pytest

from packet import __version__
from packet.cli.main import COMMANDS
from tests.packaging.conftest import Program, run
from tests.support.office import ROOT
from tests.support.pictures import picture

#: An office's page that adds to the packaged one.
OWN_PAGE = """{% extends "default:pages/sources.md.j2" %}
{% block body %}
{{ super() }}

Ask at the desk.
{% endblock %}
"""

FIND = "import packet, packet.workspace as w; print(packet.__file__); print(w.packaged('{}'))"


@pytest.mark.parametrize("name", ["shared", "templates"])
def test_data_is_found_inside_the_package_when_installed(
    environment: Path, tmp_path: Path, name: str
) -> None:
    shown = run([str(environment / "python"), "-c", FIND.format(name)], tmp_path).stdout.splitlines()
    package = Path(shown[0]).parent
    assert environment.parent in package.parents
    assert not package.is_relative_to(ROOT)
    assert Path(shown[1]) == package / f"_{name}"
    assert any(Path(shown[1]).rglob("*.*"))


@pytest.mark.parametrize("name", ["shared", "templates"])
def test_data_is_found_beside_the_package_in_a_checkout(checkout: Program, name: str) -> None:
    shown = run([checkout.start[0], "-c", FIND.format(name)], checkout.folder).stdout.splitlines()
    assert Path(shown[0]).parent == checkout.folder / "packet"
    assert Path(shown[1]) == checkout.folder / name


def test_installed_and_checkout_check_alike(installed: Program, checkout: Program) -> None:
    ours, theirs = installed.run("check", "26-041", code=None), checkout.run("check", "26-041", code=None)
    assert (ours.returncode, ours.stdout) == (theirs.returncode, theirs.stdout)
    assert ours.returncode in (0, 1), ours.stderr
    assert "26-041" in ours.stdout


def test_installed_and_checkout_build_the_same_bytes(installed: Program, checkout: Program) -> None:
    ours, theirs = installed.built(), checkout.built()
    assert {"outside/index.html", "office/index.html"} <= set(ours)
    assert sorted(ours) == sorted(theirs)
    assert [name for name in ours if ours[name] != theirs[name]] == []
    shipped = {path.name for path in installed.folder.iterdir()}
    assert shipped == {"jobs", "shared", "out"}


def test_the_installed_program_knows_that_nothing_changed(installed: Program) -> None:
    installed.run("build")
    assert "unchanged" in installed.run("build").stdout


def test_installed_figures_are_the_checkouts(installed: Program, checkout: Program) -> None:
    shown = [
        json.loads(program.run("figures", "26-041", "--json").stdout) for program in (installed, checkout)
    ]
    assert shown[0]
    assert shown[0] == shown[1]


def test_help_and_version_work_where_there_is_no_office(environment: Path, tmp_path: Path) -> None:
    program = Program((str(environment / "packet"),), tmp_path)
    shown = " ".join(program.run("--help").stdout.split())
    assert all(name in shown and line in shown for name, line in COMMANDS.items())
    assert __version__ in program.run("--version").stdout
    for name in COMMANDS:
        assert f"Example: packet {name}" in program.run(name, "--help").stdout


@pytest.mark.parametrize("kind", ["job", "photos", "office"])
def test_schema_works_where_there_is_no_office(environment: Path, tmp_path: Path, kind: str) -> None:
    shown = Program((str(environment / "packet"),), tmp_path).run("schema", "--of", kind).stdout
    assert json.loads(shown)["properties"]


def test_a_bad_record_is_explained_by_the_words_in_the_wheel(office: Program) -> None:
    record = office.folder / "jobs" / "26-041" / "job.yaml"
    record.write_text(record.read_text(encoding="utf-8") + "\nrooof: yes\n", encoding="utf-8")
    refused = office.run("build", code=2)
    assert "job.yaml" in refused.stderr
    assert "rooof" in refused.stderr
    assert "Traceback" not in refused.stderr
    assert not (office.folder / "out" / "26-041").exists()


def test_an_offices_own_words_and_page_stand_over_the_packaged_ones(
    installed: Program, office: Program
) -> None:
    words = office.folder / "shared" / "words"
    words.mkdir()
    (words / "en.yaml").write_text("results: {meets: quite in order}\n", encoding="utf-8")
    pages = office.folder / "templates" / "pages"
    pages.mkdir(parents=True)
    (pages / "sources.md.j2").write_text(OWN_PAGE, encoding="utf-8")
    plain, own = installed.built(), office.built()
    for reader in ("outside", "office"):
        assert b"Ask at the desk." in own[f"{reader}/sources.html"]
        assert b"Ask at the desk." not in plain[f"{reader}/sources.html"]
        assert b'id="is-not"' in own[f"{reader}/sources.html"]
    reworded = {name for name, data in own.items() if name.endswith(".html") and b"quite in order" in data}
    assert reworded
    assert not any(b"quite in order" in data for data in plain.values())
    assert own["outside/assets/stylesheets/1-type.css"] == plain["outside/assets/stylesheets/1-type.css"]


def test_the_wheel_goes_from_an_empty_folder_to_what_is_handed_on(environment: Path, tmp_path: Path) -> None:
    start = (str(environment / "packet"),)
    card = ("--name", "Reed Roofing", "--address", "1 Dock Street", "--phone", "843-555-0199")
    Program(start, tmp_path).run("start", "office", *card)
    office = Program(start, tmp_path / "office")
    place = ("--town", "Pellam Reach", "--state", "South Carolina", "--time-zone", "America/New_York")
    office.run("new", "--number", "26-001", "--street", "5 Plover Court", "--kind", "patch", *place)
    picture(tmp_path / "phone" / "one.jpg", taken="2026:03:16 08:12:30")
    office.run("photos", "26-001", str(tmp_path / "phone"))
    office.run("check")
    for command in ("build", "zip", "pdf"):
        office.run(command)
    made = {path.name for path in (office.folder / "out").iterdir() if not path.name.startswith(".")}
    assert made == {
        "26-001",
        "26-001-outside.zip",
        "26-001-outside.pdf",
        "26-001-office.pdf",
        "26-001-roof-card.pdf",
        "26-001-nailing-card.pdf",
    }
