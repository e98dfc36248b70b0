"""Wording: a typed note that says what a packet does not say gives a finding; words of somebody else give none."""

import html
import json
import re
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from packet.cli.check import job_documents, open_items
from packet.closeout.assemble import assemble
from packet.closeout.redact import redact
from packet.readers import READERS
from packet.reference import Library
from packet.review.places import finding_place
from packet.review.wording import own_words_avoided
from packet.site.escaping import ref
from packet.site.pages import make_pages
from packet.text import load_words
from packet.workspace import Workspace, packaged
from tests.build_job.everyfield import Place, job_of, write_job
from tests.support.office import NUMBER, ROOT, Office

Shoot = Callable[..., dict[str, Any]]

WORDS = load_words([packaged("shared")])
FILES = Library.load([packaged("shared")]).avoided()
PROMISE = "It withstands 150 mph."
PLAIN = "Name the test and the class as the wrapper prints them, such as ASTM D7158, class H"

#: Fields that repeat a name, or what a person, a paper or a label said.
QUOTED = {
    ("JobRecord", "complaint"),
    ("House", "street"), ("House", "town"), ("House", "county"), ("House", "state"),
    ("People", "crew"), ("Found", "how"), ("Callback", "told"), ("Correction", "asked"),
    ("Panel", "span_rating"), ("Panel", "bond"),
    ("DryIn", "standard"), ("IceBarrier", "standard"), ("SealedDeck", "standard"),
    ("Shingle", "made_by"), ("Shingle", "color"), ("Shingle", "lot"),
    ("Shingle", "wind_test"), ("Shingle", "wind_class"),
    ("MakerSays", "printed_on"), ("Vent", "printed_on"), ("LowSlope", "made_by"),
    ("Delivery", "ticket"), ("Delivery", "lot"), ("Bought", "lot"),
    ("Basis", "authority"), ("Basis", "authority_phone"), ("Basis", "permit"),
    ("Document", "title"), ("Document", "party"),
    ("Promise", "by"), ("Promise", "covers"), ("Promise", "leaves_out"), ("Promise", "term"),
    ("Promise", "transfers"), ("Promise", "claim"),
    ("WayOut", "by"),
    ("Permission", "title"), ("Permission", "number"), ("Permission", "by"),
    ("Approval", "product"), ("Approval", "number"), ("Approval", "by"),
    ("CodeItem", "section"), ("CodeItem", "authority"),
}  # fmt: skip

#: Texts that only the office's copy carries.
OFFICES_OWN = {("Person", "name"), ("Person", "phone"), ("Person", "email"), ("Money", "note")}


def text_of(markup: str) -> str:
    return html.unescape(" ".join(re.sub(r"<[^>]+>", " ", markup).split()))


def wording(office: Office) -> dict[str, dict[str, str]]:
    return {f.subject: dict(f.words) for f in office.closeout().findings if f.code == "wording"}


@pytest.mark.parametrize("job", ["26-041", "26-052", "26-067"])
def test_the_demo_jobs_say_nothing_of_it(job: str) -> None:
    closeout, _ = assemble(Workspace(ROOT), ROOT / "jobs" / job)
    assert [finding.id for finding in closeout.findings if finding.code == "wording"] == []


def test_a_note_shows_what_was_written_what_it_does_and_the_plain_way(job_office: Office) -> None:
    job_office.changed("found.F1.done", '"Sheets S1 to S4 replaced. It  withstands\\n 150 mph."')
    assert wording(job_office) == {
        "found.F1.done": {
            "phrase_01": f"“withstands 150 mph” promises what weather will not do. {PLAIN}",
        }
    }


def test_several_phrases_of_one_text_are_one_finding_that_shows_each_once(job_office: Office) -> None:
    said = "It holds at 130 mph, it withstands 150 mph, and the insurer must pay for it."
    job_office.changed("summary", said)
    assert wording(job_office)["summary"] == {
        "phrase_01": f"“holds at 130 mph” promises what weather will not do. {PLAIN}",
        "phrase_02": f"“withstands 150 mph” promises what weather will not do. {PLAIN}",
        "phrase_03": "“insurer must pay” argues for payment. Say what the rule asks, what was built, and where it is shown",
    }


@pytest.mark.parametrize(
    ("path", "subject"),
    [
        ("summary", "summary"),
        ("cause.what", "cause.what"),
        ("job.title", "job.title"),
        ("tested.result", "tested.result"),
        ("found.F2.offered", "found.F2.offered"),
        ("deck.sheets.S1.why", "deck.sheets.S1.why"),
        ("bought.SHINGLES.allowance.why", "bought.SHINGLES.allowance.why"),
        ("not_recorded.drip-edge-fastening", "not_recorded.drip-edge-fastening"),
    ],
)
def test_the_subject_is_the_place_and_the_place_has_its_line(
    job_office: Office, path: str, subject: str
) -> None:
    job_office.changed(path, PROMISE)
    (finding,) = (f for f in job_office.closeout().findings if f.code == "wording")
    assert (finding.subject, finding.id) == (subject, f"wording:{subject}")
    found = finding_place(finding, job_documents(job_office.job))
    assert found is not None
    document, loc = found
    assert (document.path.name, document.place(loc)) == ("job.yaml", job_office.place(path))


def test_a_correction_without_an_id_goes_by_its_number(job_office: Office) -> None:
    job_office.changed("inspections.I1.corrections", f"[{{asked: Two nails., done: {PROMISE}}}]")
    assert list(wording(job_office)) == ["inspections.I1.corrections.0.done"]


def test_a_caption_goes_by_its_photo_and_has_its_line_in_the_log(job_office: Office, shoot: Shoot) -> None:
    job_office.changed("punch_list", "[{id: P1, what: Scuffed., done: Mended., done_on: 2026-03-19}]")
    job_office.log(shoot("P1", "done", taken="2026:03:18 10:00:00", shows="A hurricane-proof ridge."))
    (finding,) = (f for f in job_office.closeout().findings if f.code == "wording")
    assert (finding.subject, finding.words["phrase_01"].split("” ")[0]) == ("P1", "“hurricane-proof")
    found = finding_place(finding, job_documents(job_office.job))
    assert found is not None
    assert (found[0].path.name, found[1]) == ("photos.yaml", ("photos", 0, "shows"))


def test_check_names_line_path_words_and_what_to_do(job_office: Office) -> None:
    job_office.changed("found.F1.done", PROMISE)
    items = open_items(job_office.closeout(), WORDS, job_documents(job_office.job))
    (item,) = (item for item in items if "[wording:found.F1.done]" in item)
    line, column = job_office.place("found.F1.done")
    head, below = item.split("\n")
    assert head.startswith("A note says what this packet does not say")
    assert f"(“withstands 150 mph” promises what weather will not do. {PLAIN})" in head
    assert re.search(rf"job\.yaml:{line}:{column} at found\[0\]\.done\. Write it plainly, ", below)


@pytest.mark.parametrize("reader", READERS)
def test_every_copy_shows_it_on_its_pages_and_explained_it_is_no_longer_open(
    job_office: Office, reader: Any
) -> None:
    job_office.changed("found.F1.done", PROMISE)

    def pages() -> dict[str, str]:
        copy = redact(job_office.closeout(), reader)
        made = make_pages(copy, job_office.workspace.template_folders(), WORDS)
        return {page.name: text_of(page.body) for page in made}

    shown = pages()
    assert "“withstands 150 mph” promises what weather will not do." in shown["quantities"]
    assert "A note says what this packet does not say" in shown["index"]
    job_office.added('explained: {"wording:found.F1.done": "The wrapper says so in these words."}')
    shown = pages()
    assert "The wrapper says so in these words." in shown["quantities"]
    assert "A note says what this packet does not say" not in shown["index"]


# Words of somebody else


@pytest.fixture(scope="module")
def filled(tmp_path_factory: pytest.TempPathFactory) -> tuple[Any, dict[str, Any], Path]:
    """A job whose every text promises a wind speed, its wording findings, and its folder."""
    root = tmp_path_factory.mktemp("promises")
    texts = write_job(root, lambda place: PROMISE)
    record = root / "jobs" / NUMBER / "job.yaml"
    data = json.loads(record.read_text(encoding="utf-8"))
    data["basis"].pop("no_permit", None)  # a permit and a reason for having none: only one may stand
    texts.fields.pop(("record", "basis", "no_permit"), None)
    record.write_text(json.dumps(data), encoding="utf-8")
    closeout, _ = assemble(*job_of(root))
    return texts, {f.subject: f for f in closeout.findings if f.code == "wording"}, root / "jobs" / NUMBER


def subject_of(place: Place) -> str:
    """Return the subject of a filled place: the photo's id, or the place in the record."""
    if place[0] == "photos":
        return str(place[1])
    return ".".join(re.sub(r"[^A-Za-z0-9_-]", "-", str(step)) for step in place[1:])


def test_every_text_that_goes_out_is_looked_at_unless_it_is_somebody_elses(filled: Any) -> None:
    texts, found, _ = filled
    expected = set()
    for place, (model, name) in texts.fields.items():
        if place[0] == "record" and not {(model, name)} & (QUOTED | OFFICES_OWN):
            expected.add(subject_of(place))
        if (model, name) == ("LoggedPhoto", "shows") and place[1] == "P01":
            expected.add("P01")
    assert len(expected) > 60
    assert set(found) == expected
    asked = {(model, name) for place, (model, name) in texts.fields.items() if place[0] == "record"}
    assert QUOTED - asked == set(), "a field that is listed here and not there any more"


def test_every_text_that_is_found_has_its_own_place_in_a_file(filled: Any) -> None:
    texts, found, job = filled
    documents = job_documents(job)
    places = [finding_place(finding, documents) for finding in found.values()]
    assert all(places)
    assert len({(place[0].path, place[1]) for place in places if place}) == len(found)
    assert {place[0].at(place[1]) for place in places if place} == {PROMISE}


def test_every_finding_can_be_an_anchor(filled: Any) -> None:
    _, found, _ = filled
    assert [subject for subject in found if str(ref(subject)) != subject] == []


@pytest.mark.parametrize(
    "text",
    [
        'The wrapper reads "withstands 150 mph" in red.',
        "The wrapper reads “withstands 150 mph” in red.",
        "The wrapper reads 'withstands 150 mph' in red.",
        "The wrapper reads ‘withstands 150 mph’, in red.",
        "The owner asked: 'isn't it covered by the owner's policy?'",
    ],
)
def test_what_stands_in_quotation_marks_is_let_stand(text: str) -> None:
    assert own_words_avoided(text, FILES) == ()
    assert len(own_words_avoided(re.sub("[\"“”'‘’]", "", text), FILES)) == 1


@pytest.mark.parametrize(
    "text",
    [
        'Nails 6" apart, it withstands 150 mph, 4" at edges.',
        "A run of 12' withstands 150 mph at 8' too.",
        "The owner's roof withstands 150 mph, the maker's says.",
        '"It withstands 150 mph.',
        'It "withstands" 150 mph.',
    ],
)
def test_inches_feet_and_apostrophes_are_no_quotation_marks(text: str) -> None:
    assert len(own_words_avoided(text, FILES)) == 1


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(st.text(alphabet=st.sampled_from("ab 6\"'“”‘’.,-"), max_size=60))
def test_text_before_and_after_a_quotation_does_not_open_it(text: str) -> None:
    """A pair of marks of its own always closes: what is inside is let stand, whatever comes after it."""
    assert own_words_avoided(f"“it withstands 150 mph” {text}", FILES) == ()
    assert len(own_words_avoided(f"it withstands 150 mph. {text}", FILES)) == 1


# What does not go out


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("money.note", PROMISE),
        ("ways_out", f"[{{requirement: paid, kind: explained, text: {PROMISE}}}]"),
        ("not_recorded", f"{{paid: {PROMISE}}}"),
    ],
)
def test_what_only_the_office_reads_is_not_looked_at(job_office: Office, path: str, value: str) -> None:
    job_office.changed("documents.D6.proves", "[]")  # else there is nothing to give a reason for
    assert wording(job_office.changed(path, value)) == {}


def test_a_photo_of_the_offices_copy_is_not_looked_at_nor_what_explains_it(
    job_office: Office, shoot: Shoot
) -> None:
    clock = {"taken_at": "2026-03-16T10:15:01", "readers": ["office"]}
    job_office.log(shoot("P1", "deck", shows=PROMISE, **clock))
    job_office.added(f'explained: {{"photo-time:P1": "{PROMISE}"}}')
    assert wording(job_office) == {}
    job_office.log(shoot("P1", "deck", shows=PROMISE, taken_at=clock["taken_at"]))
    assert set(wording(job_office)) == {"P1", "explained.photo-time-P1"}


def test_a_photo_that_waits_for_its_stage_is_not_looked_at(job_office: Office, shoot: Shoot) -> None:
    entry = shoot("P1", "deck", shows=PROMISE)
    del entry["stage"]
    assert wording(job_office.log(entry)) == {}


def test_what_explains_a_wording_may_repeat_it(job_office: Office) -> None:
    job_office.changed("summary", PROMISE).added(f'explained: {{"wording:summary": "{PROMISE}"}}')
    (finding,) = (f for f in job_office.closeout().findings if f.code == "wording")
    assert (finding.subject, finding.explanation) == ("summary", PROMISE)


@pytest.mark.parametrize("status", ["planned", "under way", "closed"])
def test_it_is_never_refused_whatever_the_job_has_come_to(job_office: Office, status: str) -> None:
    job_office.changed("job.status", status).changed("summary", PROMISE)
    assert set(wording(job_office)) == {"summary"}


def test_an_offices_own_phrases_are_looked_for_too(job_office: Office) -> None:
    job_office.file(
        "shared/words/avoid.yaml",
        "groups:\n  ours:\n    title: is not how we speak\n    source: own-advice\n    locator: ours\n"
        "    checked: office\n    phrases:\n      good: {says: [good as new], plainly: Say what was changed}\n",
    )
    job_office.changed("summary", "The roof is good as new.")
    assert wording(job_office) == {
        "summary": {
            "phrase_01": "“good as new” is not how we speak. Say what was changed",
        }
    }


def test_a_hostile_record_full_of_it_is_looked_through_in_time() -> None:
    start = time.perf_counter()
    for unit in ("withstands ", "the insurer ", "'a ", '"a" ', "covered by ", "policy, "):
        own_words_avoided((unit * 4000)[:4000], FILES)
    assert time.perf_counter() - start < 5
