"""Ids that the deck names: a nailer, the sheet an offcut comes from, where a price was agreed."""

import pytest

from tests.support.office import Office

RECORD = """
job: {number: 26-041, kind: section, status: under way}
property: {street: 4 Reed Lane, town: Tern Point, state: South Carolina, time_zone: America/New_York}
cause: {what: Rot at the eave.}
found: [{id: F1, what: Rot under the felt., answer: agreed, on: 2026-03-16, how: telephone}]
framing: [{id: R1, part: nailer, what: A nailer set beside the rafter.}]
documents: [{id: D1, kind: other, title: Price of a sheet}]
roof:
  eave_height: 9 ft
  forms:
    - {id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 40 ft, depth: 24 ft, pitch: 9:12, planes: {front: {id: GS}, back: {id: GN}}}
deck:
  cut_outs:
    - id: CO1
      plane: GS
      rot: {at: [5 ft, 1 ft], along: 6 in, up: 6 in}
      edges: beside a rafter, on a nailer
      nailer: R1
  sheets:
    - {id: S1, plane: GS, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot, agreed: F1}
    - {id: S2, plane: GS, at: [8 ft, 0 ft], along: 4 ft, up: 4 ft, why: rot, cut_from: S1, agreed: D1}
"""


@pytest.fixture
def office(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "office", RECORD)


def test_ids_that_are_there_are_taken(office: Office) -> None:
    assert [sheet.agreed for sheet in office.closeout().record.deck.sheets] == ["F1", "D1"]  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("deck.cut_outs.CO1.nailer", "R9"),
        ("deck.cut_outs.CO1.nailer", "S1"),
        ("deck.sheets.S2.cut_from", "S9"),
        ("deck.sheets.S2.cut_from", "S2"),
        ("deck.sheets.S1.agreed", "F9"),
        ("deck.sheets.S1.agreed", "S2"),
    ],
)
def test_an_id_of_nothing_is_refused_at_its_line(office: Office, path: str, value: str) -> None:
    line, column = office.changed(path, value).place(path)
    assert office.places() == [("job.yaml", "unknown-id", line, column)]
