"""Copies by reader: each leaf goes to the readers it declares, and to nobody else."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from packet.closeout.model import Closeout
from packet.closeout.redact import redact
from packet.fields import Strict, everyone
from packet.photos.log import LoggedPhoto
from packet.readers import READERS, Reader
from packet.record.job import JobRecord
from packet.record.office import Office as OfficeCard
from tests.support.filled import EVERYONE, Filler, Readers
from tests.support.office import Office, as_yaml
from tests.support.pictures import picture

FIXED: Mapping[str, Any] = {
    "job.number": "26-041",
    "property.time_zone": "America/New_York",
    "roof.forms.id": lambda filler, path, readers: f"FORM{path[2]}",
    "roof.forms.joins": "FORM0",
    "roof.forms.gable_end": lambda filler, path, readers: None,  # this hip roof has both of its ends
    "roof.taped": {"ID-2-EAVE": "48 ft"},
    "roof.planes.id": lambda filler, path, readers: f"PL{path[2]}",
    "roof.planes.outline": [["0 ft", "0 ft"], ["4 ft", "0 ft"], ["0 ft", "4 ft"]],
    "roof.sections.planes": ["PL0", "ID-1"],
    "roof.edges.id": "E1",
    "roof.edges.sides": ["PL0.lower"],
    "roof.openings.plane": "PL0",
    "roof.framing.lines.plane": "PL0",
    "deck.cut_outs.plane": "PL0",
    "deck.sheets.id": "S1",
    "deck.sheets.plane": "PL0",
    "deck.boards.plane": "PL0",
    "deck.renailed.planes": ["PL0"],
    "covering.low_slope.plane": "PL0",
    "details.plane": "PL0",
    "covering.areas.plane": "PL0",
    "covering.areas.outline": [["0 ft", "0 ft"], ["4 ft", "0 ft"], ["0 ft", "4 ft"]],
    "ventilation.vents.length": lambda filler, path, readers: None,  # these are counted in pieces
    "deck.renailed.boards": lambda filler, path, readers: None,  # this old deck is of panels
    "dry_in.ice_barrier.edges": ["E1"],
    "basis.code": "irc-2021",
    "basis.no_permit": lambda filler, path, readers: None,  # a permit stands in its place
    "roof.old.deck_fastener": "smooth nails",
    "basis.programs": ["ibhs-high-wind-2025"],
    "basis.practices": ["arma-hand-seal", "trade-practice"],
    "bought.use": "shingles",
    "bought.product": "three-tab-english",
    "bought.allowance.source": "building-estimating-textbook",
    "bought.delivered": "30",
    "bought.returned": "1",
    "bought.left": "1",
    "bought.scrap": "1",
    "roof.worked_before.on": "2025-12-01",
    "roof.worked_before.section": lambda filler, path, readers: None,
    "inspections.stages": ["deck"],
    "inspections.corrections.photo": "P1",
    "inspections.corrections.requirement": "deck-nail",
    "inspections.corrections.seen_at": lambda filler, path, readers: None,
    "permissions.document": lambda filler, path, readers: None,
    "approvals.document": lambda filler, path, readers: None,
    "approvals.goods": lambda filler, path, readers: None,
    "code_items.code": "irc-2021",
    "code_items.figure": "work.area",
    "code_items.photos_found": ["P0"],
    "code_items.photos_built": ["P1"],
    "documents.proves": lambda filler, path, readers: ["deck-nail"],  # two lists, not one twice
    "ways_out.requirement": "deck-nail",
    "ways_out.photo": "P1",
    "explained": lambda filler, path, readers: {"edge-length:E1": filler.canary(readers)},
    "not_recorded": lambda filler, path, readers: {"deck-nail": filler.canary(readers)},
    "office.usual.time_zone": "America/New_York",
    "photo.id": "P0",
    "photo.plane": "PL0",
    "photo.proves": ["deck-nail", "S1"],
    "photo.file": lambda filler, path, readers: f"photos/{filler.canary(readers)}.jpg",
}


@dataclass(frozen=True)
class Filled:
    closeout: Closeout
    readers_of: Mapping[str, Readers]


@pytest.fixture(scope="module")
def filled(tmp_path_factory: pytest.TempPathFactory) -> Filled:
    """An office with every leaf filled, one photo for everyone and one for the office."""
    filler = Filler(FIXED)
    record = filler.model(JobRecord, (), EVERYONE, None)
    office = Office(Path(tmp_path_factory.mktemp("canaries")) / "office", as_yaml(record))
    office.file("shared/office.yaml", as_yaml(filler.model(OfficeCard, ("office",), EVERYONE, None)))
    entries = [
        {**filler.model(LoggedPhoto, ("photo",), EVERYONE, own), "id": id}
        for id, own in (("P0", EVERYONE), ("P1", frozenset({"office"})))
    ]
    for entry in entries:
        picture(office.job / entry["file"], taken="2026:03:16 08:12:30")
    return Filled(office.log(*entries).closeout(), filler.readers_of)


def letters(text: str) -> str:
    return "".join(letter for letter in text if letter.isalnum())


@pytest.mark.parametrize("reader", READERS)
def test_a_copy_holds_the_canaries_declared_for_its_reader_and_no_other(
    filled: Filled, reader: Reader
) -> None:
    text = letters(json.dumps(redact(filled.closeout, reader), ensure_ascii=False))
    found = {canary for canary in filled.readers_of if letters(canary) in text}
    assert found == {canary for canary, readers in filled.readers_of.items() if reader in readers}


def test_the_canaries_are_many_and_some_are_the_offices_alone(filled: Filled) -> None:
    private = [canary for canary, readers in filled.readers_of.items() if readers == {"office"}]
    assert len(filled.readers_of) > 100
    assert len(private) > 10
    assert any(canary.startswith("USD") for canary in private)


def test_what_names_the_owner_and_the_money_is_the_offices_alone(demo: Closeout) -> None:
    outside, office = (json.dumps(redact(demo, reader)) for reader in READERS)
    owner = ("Lenore Asprey", "843-555-0107", "asprey@example.org")
    for private in (*owner, "3,940.00", "agreed price", '"D4"'):
        assert private in office
        assert private not in outside


def test_a_reader_gets_no_key_for_what_it_may_not_have(demo: Closeout) -> None:
    record = redact(demo, "outside")["record"]
    assert "money" not in record
    assert "owner" not in record["people"]
    assert record["people"]["crew"] == ["Dov Marrick", "Tam Oduya"]


def test_the_office_gets_the_whole_record(demo: Closeout) -> None:
    record = redact(demo, "office")["record"]
    assert record.keys() == JobRecord.model_fields.keys()
    assert record["money"]["contract"] == "USD 3,940.00"


class Widened(JobRecord):
    """A record with a key somebody added without saying who may read it."""

    secret: str = "canary9999bird"


class Inner(Strict):
    told: str = everyone()
    kept: str = "canary9998bird"


class Nested(JobRecord):
    part: Inner = everyone(Inner(told="canary9997bird"))


@dataclass(frozen=True)
class Loose:
    """A type nobody has told the copies about."""

    word: str = "canary9996bird"


class Holding(JobRecord):
    loose: Loose = everyone(Loose())


def copies(closeout: Closeout, kind: type[JobRecord]) -> dict[Reader, str]:
    values = {name: getattr(closeout.record, name) for name in JobRecord.model_fields}
    widened = closeout.model_copy(update={"record": kind.model_construct(**values)})
    return {reader: json.dumps(redact(widened, reader)) for reader in READERS}


@pytest.mark.parametrize(
    ("kind", "word", "readers"),
    [
        (Widened, "canary9999bird", {"office"}),
        (Nested, "canary9998bird", {"office"}),
        (Nested, "canary9997bird", {"office", "outside"}),
        (Holding, "canary9996bird", {"office"}),
    ],
)
def test_an_undeclared_leaf_is_the_offices_alone(
    demo: Closeout, kind: type[JobRecord], word: str, readers: set[str]
) -> None:
    assert {reader for reader, text in copies(demo, kind).items() if word in text} == readers


def test_a_photo_of_the_offices_is_counted_outside_but_never_named(filled: Filled) -> None:
    outside, office = redact(filled.closeout, "outside"), redact(filled.closeout, "office")
    assert [photo["id"] for photo in outside["photos"]] == ["P0"]
    assert [photo["id"] for photo in office["photos"]] == ["P0", "P1"]
    nail = {
        reader: next(result for result in copy["results"] if result["requirement"] == "deck-nail")
        for reader, copy in (("outside", outside), ("office", office))
    }
    seen = {reader: len(result["evidence"] + result["late"]) for reader, result in nail.items()}
    elsewhere = {r: result["evidence_elsewhere"] + result["late_elsewhere"] for r, result in nail.items()}
    assert (seen, elsewhere) == ({"outside": 1, "office": 2}, {"outside": 1, "office": 0})
    assert outside["record"]["ways_out"][0]["photo"] is None
    assert office["record"]["ways_out"][0]["photo"] == "P1"
    hidden = next(photo for photo in office["photos"] if photo["id"] == "P1")
    assert hidden["original_sha256"][:8] + ".jpg" in json.dumps(office)
    assert '"P1"' not in json.dumps(outside)


@pytest.mark.parametrize("reader", READERS)
def test_a_copy_is_plain_json_and_says_whose_it_is(demo: Closeout, reader: Reader) -> None:
    copy = redact(demo, reader)
    assert json.loads(json.dumps(copy, allow_nan=False)) == copy
    assert (copy["packet"]["reader"], copy["packet"]["format"], copy["packet"]["version"]) == (
        reader,
        "roof-closeout-packet",
        1,
    )


@pytest.mark.parametrize("reader", READERS)
def test_every_cited_place_is_among_the_sources(demo: Closeout, reader: Reader) -> None:
    copy = redact(demo, reader)
    keys = ("document", "edition", "locator", "checked")
    listed = {tuple(source[key] for key in keys) for source in copy["sources"]}
    assert len(listed) == len(copy["sources"])
    cited = [source for figure in copy["figures"].values() for source in figure["sources"]]
    cited += [
        limit["source"] for result in copy["results"] for part in result["parts"] for limit in part["limits"]
    ]
    cited += [note["source"] for note in copy["care"]]
    cited += [rule["source"] for duty in copy["duties"] for rule in duty["rules"]]
    assert {tuple(source[key] for key in keys) for source in cited} == listed


def test_no_copy_is_changed_by_making_another(demo: Closeout) -> None:
    first = json.dumps(redact(demo, "outside"))
    redact(demo, "office")
    assert json.dumps(redact(demo, "outside")) == first
