"""The office's card: what stands on packets, what is usual, and what is the office's alone."""

import html
from collections.abc import Iterator
from typing import Any

import pytest
import yaml

from packet.build import build
from packet.closeout.redact import redact
from packet.fields import readers_of
from packet.problems import Refused
from packet.readers import READERS
from packet.record.load import read_office
from packet.record.office import Office as OfficeCard
from packet.record.office import Usual, UsualUnderlayment
from tests.support.office import NUMBER, Office

USUAL: dict[str, Any] = {
    "deck_nail": {"size": "3-1/4 x 0.131", "shank": "smooth", "finish": "quietfinish"},
    "underlayment": {
        "product": "quietfelt",
        "standard": "quietstandard",
        "fasteners": {"kind": "quietcap", "at_laps": "5-1/16 in", "between": "11-1/16 in"},
    },
    "drip_edge": "quietmetal",
    "shingle_nail": {"length": "1-7/16 in", "shank": "0.121 in", "head": "13/32 in"},
    "town": "Quiettown",
    "county": "Quietcounty",
    "state": "Quietstate",
    "time_zone": "America/Phoenix",
    "code": "quietcode",
    "authority": "Quietauthority",
}


def texts(value: Any) -> Iterator[str]:
    if isinstance(value, dict):
        for item in value.values():
            yield from texts(item)
    else:
        yield value


#: Texts that stand nowhere but in the habits.
TELLING = [text for text in texts(USUAL) if text != "smooth"]


@pytest.fixture
def with_habits(job_office: Office) -> Office:
    card = yaml.safe_load((job_office.root / "shared" / "office.yaml").read_text(encoding="utf-8"))
    job_office.file("shared/office.yaml", yaml.safe_dump({**card, "usual": USUAL}, sort_keys=False))
    return job_office


def test_habits_are_read_into_what_they_are(with_habits: Office) -> None:
    usual = read_office(with_habits.workspace.office_file).value.usual
    assert usual is not None
    assert usual.deck_nail is not None
    assert (usual.deck_nail.size.text, usual.deck_nail.shank) == ("3-1/4 x 0.131", "smooth")
    assert usual.underlayment is not None
    assert usual.underlayment.fasteners is not None
    assert usual.underlayment.fasteners.at_laps.text == "5-1/16 in"
    assert (usual.drip_edge, usual.time_zone) == ("quietmetal", "America/Phoenix")


def test_the_examples_here_name_every_habit() -> None:
    assert USUAL.keys() == Usual.model_fields.keys()
    assert USUAL["underlayment"].keys() == UsualUnderlayment.model_fields.keys()


def test_habits_are_the_offices_alone() -> None:
    infos = [OfficeCard.model_fields["usual"], *Usual.model_fields.values()]
    infos += UsualUnderlayment.model_fields.values()
    assert {readers_of(info) for info in infos} == {("office",)}


def test_no_habit_is_in_the_outside_copy(with_habits: Office) -> None:
    outside, office = (redact(with_habits.closeout(), reader) for reader in READERS)
    assert "usual" not in outside["office"]
    assert office["office"]["usual"]["drip_edge"] == "quietmetal"
    assert [text for text in TELLING if text in str(outside)] == []
    assert [text for text in TELLING if text not in str(office)] == []


def test_no_habit_is_on_a_page_of_any_copy(with_habits: Office) -> None:
    built = build(with_habits.workspace, with_habits.job)
    pages = [page for page in built.folder.rglob("*.html") if page.is_file()]
    assert len(pages) > 10
    for page in pages:
        shown = html.unescape(page.read_text(encoding="utf-8"))
        assert [text for text in TELLING if text in shown] == []


def test_a_habit_is_checked_like_the_record_it_goes_to(with_habits: Office) -> None:
    path = with_habits.workspace.office_file
    text = path.read_text(encoding="utf-8")
    for old, new, code in (
        ("3-1/4 x 0.131", "8d", "penny-size"),
        ("America/Phoenix", "Phoenix", "bad-time-zone"),
        ("drip_edge: quietmetal", "drip_egde: quietmetal", "unknown-key"),
    ):
        assert text.count(old) == 1
        path.write_text(text.replace(old, new), encoding="utf-8")
        assert [problem.code for problem in with_habits.problems()] == [code]


@pytest.mark.parametrize("key", ["name", "address", "phone"])
def test_what_a_packet_needs_can_not_stay_empty(job_office: Office, key: str) -> None:
    card = {"name": "A", "address": "B", "phone": "C", key: ""}
    text = "".join(f"{name}: {value}\n" for name, value in card.items())
    path = job_office.file("shared/office.yaml", f"{text}email:\n")
    with pytest.raises(Refused) as refused:
        read_office(path)
    (problem,) = refused.value.problems
    assert (problem.code, problem.at, problem.line) == ("card-empty", key, list(card).index(key) + 1)


def test_a_number_that_is_not_the_folders_name_is_refused_at_its_place(job_office: Office) -> None:
    office = job_office.changed("job.number", "26-014")
    (problem,) = office.problems()
    assert (problem.code, problem.found, problem.values["folder"]) == (
        "job-number-not-folder",
        "26-014",
        NUMBER,
    )
    assert (problem.line, problem.column) == office.place("job.number")


@pytest.mark.parametrize(
    ("folder", "number"),
    [("26-041A", "26-041a"), ("U\N{COMBINING DIAERESIS}ber", "\xdcber"), ("1.10", "1.10")],
)
def test_a_number_is_its_folders_name_as_disks_tell_names_apart(
    job_office: Office, folder: str, number: str
) -> None:
    office = job_office.changed("job.number", number)
    office.job = office.job.rename(office.job.with_name(folder))
    assert office.closeout().record.job.number == number
