"""``packet plan``: what it makes, what it says is not written yet, and how it exits."""

import re
from html import unescape
from pathlib import Path

import pytest

from packet import planning
from packet.site.plan import QUESTIONS
from packet.text import load_words
from packet.workspace import packaged
from packet.yamlread import read_yaml
from tests.cli.conftest import Run
from tests.conftest import SMALLEST
from tests.support.office import Office, copy_job
from tests.support.planned import BEGUN, COAST, GOODS, PLANNED

PAGES = ("index", "to-buy", "nailing-card", "hold-points", "permits", "access-and-safety", "crew", "sources")

#: A house in the demo's state, planned, with a roof and goods, built before the years that old paint asks by.
OLD = (PLANNED + GOODS).replace("state: South Carolina,", "state: South Carolina, built: 1948,")


@pytest.fixture
def planned(tmp_path: Path) -> Office:
    """A job that is planned and no more."""
    return Office(tmp_path / "office", OLD)


def made(office: Office) -> Path:
    return office.root / "out" / "26-041-plan"


def text_of(page: Path) -> str:
    """What a page says, without its tags."""
    body = page.read_text(encoding="utf-8").split("<article", 1)[1].split("</article>", 1)[0]
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", body)).split())


def test_it_makes_every_page_and_says_what_is_not_written_yet(planned: Office, run: Run) -> None:
    ran = run(planned.root, "plan", "26-041")
    assert (ran.code, ran.err) == (0, "")
    first, *rest = ran.out.splitlines()
    assert re.fullmatch(r"26-041: planned, pages: 8 in \d+\.\d s", first)
    assert rest[-2:] == ["  out/26-041-plan/index.html", "  out/26-041-plan/crew.html"]
    assert "  not written yet: The day the work begins" in rest
    assert "  not written yet: The adopted code, and who enforces it" in rest
    assert "  not written yet: Painted surface that the work disturbs, outside and inside" in rest
    assert {path.stem for path in made(planned).glob("*.html")} == set(PAGES)
    assert not (made(planned) / "packet.json").exists()


def test_the_front_page_lists_them_with_the_page_that_lacks_them(planned: Office, run: Run) -> None:
    run(planned.root, "plan")
    front = text_of(made(planned) / "index.html")
    assert "The work is planned and has not begun." in front
    assert "Still to be written down" in front
    assert "The year the house was built" not in front
    assert "Whether the old covering and felt were tested for asbestos ( Access and safety )" in front
    planned.changed("property.asbestos_test", "none found")
    run(planned.root, "plan")
    assert "tested for asbestos" not in text_of(made(planned) / "index.html")


def test_what_to_buy_is_the_order_list_with_its_file(planned: Office, run: Run) -> None:
    run(planned.root, "plan")
    page = text_of(made(planned) / "to-buy.html")
    assert "Shingles laminated shingle 35 bundles 36 bundles 1,125.0 sq ft" in page
    assert (made(planned) / "order-list.csv").read_bytes().startswith(b"\xef\xbb\xbf")


def test_what_was_not_ordered_is_asked_until_each_line_says_it(tmp_path: Path, run: Run) -> None:
    planned = Office(tmp_path / "begun", BEGUN + GOODS)
    asked = "  not written yet: How much of the list was ordered"
    assert asked in run(planned.root, "plan").out
    planned.changed("bought.1.planned", "2")
    assert asked not in run(planned.root, "plan").out
    planned.replaced("fan hood, unit: piece, planned: 2", "fan hood, unit: piece")
    assert asked in run(planned.root, "plan").out


def test_the_permit_the_record_names_stands_as_the_reason(run: Run, job_office: Office) -> None:
    run(job_office.root, "plan")
    page = text_of(made(job_office) / "permits.html")
    assert re.search(r"Building permit needed The record names permit \S+", page)


def test_the_ladder_of_this_house_stands_on_the_page_and_leads_to_its_working(
    planned: Office, run: Run
) -> None:
    """10 ft: 10 / 0.968246 is 10.3, a quarter 2.6; 13 / 0.968246 is 13.4, and with 3 ft of overlap 17."""
    planned.changed("roof.eave_height", "10 ft")
    run(planned.root, "plan")
    page = text_of(made(planned) / "access-and-safety.html")
    assert "10′ 2.6 ft 10.3 ft 13.4 ft 17 ft" in page
    assert "1926.1053(b)(5)(i)" in page
    assert "They are not fall protection." in page
    assert "Built 1948 . The house is old enough for the federal rule on lead paint." in page
    html = (made(planned) / "access-and-safety.html").read_text(encoding="utf-8")
    assert 'href="sources.html#w-access.roof.foot"' in html
    assert 'id="w-access.roof.foot"' in (made(planned) / "sources.html").read_text(encoding="utf-8")


def test_hold_points_stand_in_the_order_of_the_work_with_their_pictures(planned: Office, run: Run) -> None:
    run(planned.root, "plan")
    page = text_of(made(planned) / "hold-points.html")
    order = [
        "Before the old roof comes off", "Before new deck goes on", "Before the underlayment goes on",
        "Before the shingles go on", "Before the next course covers it", "Before the job is closed",
    ]  # fmt: skip
    places = [page.find(head) for head in order]
    assert -1 not in places[2:]
    assert [place for place in places if place >= 0] == sorted(place for place in places if place >= 0)
    assert "One open course: nails of one shingle, numbered, tape from its end." in page
    assert "Two people. One holds the tape on the mark" in page


def test_no_page_claims_that_anything_was_shown(run: Run, job_office: Office) -> None:
    """The demo job is closed and its holds are met or missed; the sheet says neither."""
    run(job_office.root, "plan")
    words = load_words([packaged("shared")])
    for name in PAGES[:-1]:
        page = text_of(made(job_office) / f"{name}.html")
        assert "P01" not in page
        for word in ("meets the rule", words["results.not_recorded"], "Open items"):
            assert word not in page, (name, word)
    assert "the work is finished" in text_of(made(job_office) / "index.html")


def test_the_owner_and_money_are_not_on_a_crews_phone(run: Run, job_office: Office) -> None:
    run(job_office.root, "plan")
    found = "".join(path.read_text(encoding="utf-8") for path in made(job_office).rglob("*.html"))
    assert "Lenore Asprey" not in found
    assert "555-0107" not in found
    assert "USD" not in found


def test_the_crew_reads_all_of_it_in_both_languages(planned: Office, run: Run) -> None:
    run(planned.root, "plan")
    page = text_of(made(planned) / "crew.html")
    assert "English: Pictures" in page
    assert "Español: Fotos" in page
    assert "Antes de que se pongan las tejas" in page
    assert "Amárrese antes de pisar el techo." in page
    assert (
        "La casa es bastante vieja para la regla federal del plomo en la pintura. Pregunte a la oficina antes de romper pintura."
        in page
    )


#: Words a template reads in the language it prints.
SAID = re.compile(r"\bsaid\.((?:plan|access|in_frame|shots)(?:\.[a-z_]+)*)(?:\[\"([a-z]+)\"\])?")


def test_every_word_the_crew_reads_is_in_spanish() -> None:
    english, spanish = (
        read_yaml(packaged("shared") / "words" / f"{name}.yaml").value for name in ("en", "es")
    )
    read = set()
    for name in ("parts.j2", "crew.md.j2"):
        read |= set(SAID.findall((packaged("templates") / "plan" / name).read_text(encoding="utf-8")))
    assert len(read) > 30
    for path, last in sorted(read):
        here, there = english, spanish
        for part in filter(None, (*path.split("."), last)):
            assert part in there, f"{path} {last}"
            here, there = here[part], there[part]
        if isinstance(here, dict):
            assert set(here) <= set(there) or path == "access", path
            assert here != there, path
        elif here:
            assert here != there, path


def test_every_question_has_its_sentence_and_its_page() -> None:
    words = load_words([packaged("shared")])
    assert {question.id for question in QUESTIONS} == set(words["plan.questions"])
    assert {question.page for question in QUESTIONS} <= set(PAGES)


def test_two_runs_give_the_same_bytes(planned: Office, run: Run) -> None:
    def files() -> dict[str, bytes]:
        folder = made(planned)
        return {
            str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()
        }

    run(planned.root, "plan")
    first = files()
    run(planned.root, "plan")
    assert files() == first


def test_a_packet_and_the_sheet_lie_beside_each_other(planned: Office, run: Run) -> None:
    assert run(planned.root, "build").code == 0
    assert run(planned.root, "plan").code == 0
    assert run(planned.root, "build").code == 0
    assert (planned.root / "out" / "26-041" / "outside" / "index.html").is_file()
    assert (made(planned) / "index.html").is_file()


def test_a_bad_record_leaves_the_earlier_sheet_whole(planned: Office, run: Run) -> None:
    run(planned.root, "plan")
    before = (made(planned) / "index.html").read_bytes()
    planned.changed("property.built", "old")
    ran = run(planned.root, "plan")
    assert ran.code == 2
    assert "job.yaml:" in ran.err
    assert (made(planned) / "index.html").read_bytes() == before


def test_a_bad_template_of_the_office_is_refused_with_its_line(planned: Office, run: Run) -> None:
    planned.file(
        "templates/plan/permits.md.j2", '{% extends "plan/sheet.j2" %}\n{% block body %}\n{{ nothing }}\n'
    )
    ran = run(planned.root, "plan")
    assert ran.code == 2
    assert "permits.md.j2:" in ran.err
    assert not made(planned).exists()


def test_a_file_of_somebody_else_is_not_taken_away(planned: Office, run: Run) -> None:
    run(planned.root, "plan")
    (made(planned) / "notes.txt").write_text("mine", encoding="utf-8")
    ran = run(planned.root, "plan")
    assert ran.code == 2
    assert (made(planned) / "notes.txt").read_text(encoding="utf-8") == "mine"


def test_a_full_disk_is_said_and_no_fault_of_the_program(
    planned: Office, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(folder: Path, into: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(planning, "_up", full)
    ran = run(planned.root, "plan")
    assert ran.code == 2
    assert "no space left on device" in ran.err
    assert not made(planned).exists()


def test_all_jobs_are_meant_where_none_is_named(planned: Office, run: Run) -> None:
    copy_job(planned, "26-042")
    ran = run(planned.root, "plan", "--quiet")
    assert (ran.code, ran.out) == (0, "")
    assert (planned.root / "out" / "26-042-plan" / "crew.html").is_file()


def test_a_job_with_the_least_of_a_record_gets_its_sheet(tmp_path: Path, run: Run) -> None:
    office = Office(tmp_path / "least", SMALLEST.replace("status: closed", "status: planned"))
    assert run(office.root, "plan").code == 0
    assert "The height of the eave is not written yet." in text_of(made(office) / "access-and-safety.html")
    assert "The order list is empty" in text_of(made(office) / "to-buy.html")


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_reason_why_a_picture_is_not_asked_says_when_it_is(language: str) -> None:
    """A roof tells more once it is open, so the sheet says what would bring the picture back."""
    words = {
        name: read_yaml(packaged("shared") / "words" / f"{name}.yaml").value for name in ("en", language)
    }
    assert set(words[language]["plan"]["only_where"]) == set(words["en"]["reasons"])


def test_a_picture_the_record_does_not_ask_for_yet_says_when_it_does(planned: Office, run: Run) -> None:
    run(planned.root, "plan")
    page = text_of(made(planned) / "crew.html")
    assert "Only if deck is replaced:" in page
    assert "Deck panel : The stamp on the panel." in page
    assert "Solo si se cambia tablero:" in page


def test_the_card_gives_what_the_job_goes_by_where_that_is_stricter_than_the_rule(
    tmp_path: Path, run: Run
) -> None:
    """IRC 2018 R905.2.6 asks four nails a shingle at least; six are written down, and the crew drives six."""
    office = Office(tmp_path / "coast", COAST.replace("27-001", "26-041"))
    run(office.root, "plan")
    card = text_of(made(office) / "nailing-card.html")
    assert "Nails a shingle 6 written down for this job ; at least 4 The law here" in card
    assert "Spacing 4 in written down for this job ; at most 12 in" in card
    office.changed("covering.nails_each", "4")
    run(office.root, "plan")
    assert "Nails a shingle at least 4 The law here" in text_of(made(office) / "nailing-card.html")


def test_permits_say_what_is_to_be_asked_for_and_what_would_change_the_answer(
    tmp_path: Path, run: Run
) -> None:
    office = Office(tmp_path / "coast", COAST.replace("27-001", "26-041"))
    asked = "  not written yet: Papers to ask for before the work, such as an application"
    assert asked in run(office.root, "plan").out
    page = text_of(made(office) / "permits.html")
    assert "Application before the work: not written yet" in page
    assert "Not needed where this holds: An inspector saw the work under way." in page
    assert "Pellam Reach building office: 361-555-0170" in page
    office.added("permissions: [{id: AP1, kind: windstorm application, applied_on: 2026-11-18}]")
    assert asked not in run(office.root, "plan").out
