"""``packet check`` says where the fact behind a finding stands, and what to do about it."""

from collections.abc import Callable
from typing import Any

import pytest

from packet.text import load_words
from packet.workspace import packaged
from tests.cli.conftest import Run
from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]

GABLE = """
job: {number: 26-041, kind: section, status: under way}
property: {street: 4 Reed Lane, town: Tern Point, state: South Carolina, time_zone: America/New_York}
cause: {what: Rot at the eave.}
roof:
  eave_height: 9 ft
  forms:
    - {id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 40 ft, depth: 24 ft, pitch: 9:12, planes: {front: {id: GS}, back: {id: GN}}}
  framing: {kind: rafters, member: 2x8 rafter, spacing: 24 in oc, lines: [{plane: GS, first: 0 ft}]}
deck:
  panel: {product: plywood, thickness: 15/32 in, span_rating: 32/16, width: 4 ft, length: 8 ft}
  nail: {size: 2-1/2 x 0.131, shank: smooth}
  edge_spacing: 6 in
  field_spacing: 12 in
  cut_outs:
    - id: CO1
      plane: GS
      rot: {at: [5 ft, 1 ft], along: 6 in, up: 6 in}
      cut: {at: [4 ft, 0 ft], along: 4 ft, up: 2 ft}
      edges: on the center of a rafter
  sheets:
    - {id: S1, plane: GS, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot}
"""


@pytest.fixture
def gable(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "gable", GABLE)


def below(out: str, id: str) -> str:
    """Return the line below a finding."""
    lines = out.splitlines()
    return lines[next(n for n, line in enumerate(lines) if line.endswith(f"[{id}]")) + 1]


@pytest.mark.parametrize(
    ("path", "value", "id", "place", "write"),
    [
        (
            "roof.framing.species",
            "Southern Pin",
            "species-unknown:FRAMING",
            "roof.framing.species",
            "grade stamp",
        ),
        ("roof.framing.spacing", "48 in", "framing-too-wide:PANEL", "roof.framing.spacing", "span rating"),
        ("deck.nail.size", "1-1/4 x 0.113", "nail-too-short:DECK", "deck.nail.size", "length and shank"),
        (
            "roof.framing.lines",
            "[{plane: GS, at: [3 ft, 40 ft]}]",
            "sheet-without-bearing:S1",
            "deck.sheets.S1.at",
            "roof.framing.lines",
        ),
        (
            "deck.cut_outs.CO1.cut",
            "{at: [4 ft, 0 ft], along: 2 ft, up: 2 ft}",
            "cut-out-short:CO1",
            "deck.cut_outs.CO1.cut",
            "measures of the cut",
        ),
        (
            "deck.sheets",
            "[{id: S1, plane: GS, at: [0 ft, 0 ft], along: 4 ft, up: 8 ft, why: rot}]",
            "strength-along-rafters:S1",
            "deck.sheets.S1.along",
            "along and up",
        ),
        ("deck.panel.span_rating", "heavy", "span-rating-unread:PANEL", "deck.panel.span_rating", "20 oc"),
        (
            "roof.framing.lines",
            "[{plane: GS, at: [0 ft, 2 ft, 4 ft 9 in, 8 ft, 10 ft, 12 ft, 14 ft, 16 ft]}]",
            "space-too-wide:S1",
            "deck.sheets.S1.at",
            "roof.framing.lines",
        ),
        (
            "deck.sheets",
            "[{id: S1, plane: GS, at: [0 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot},"
            " {id: S2, plane: GS, at: [8 ft, 0 ft], along: 8 ft, up: 4 ft, why: rot},"
            " {id: S3, plane: GS, at: [0 ft, 4 ft], along: 8 ft, up: 4 ft, why: rot},"
            " {id: S4, plane: GS, at: [8 ft, 4 ft], along: 8 ft, up: 4 ft, why: rot}]",
            "ends-in-line:GS",
            "deck.sheets.S2.at",
            "places of the sheets",
        ),
    ],
)
def test_a_finding_of_the_deck_names_its_line_and_what_to_write(
    gable: Office, run: Run, path: str, value: str, id: str, place: str, write: str
) -> None:
    ran = run(gable.changed(path, value).root, "check")
    line, column = gable.place(place)
    told = below(ran.out, id)
    assert told.startswith(f"    jobs/26-041/job.yaml:{line}:{column} at ")
    assert write in told
    assert ran.code == 1


def test_a_damaged_truss_names_its_line_and_leaves_it_to_the_engineer(gable: Office, run: Run) -> None:
    gable.changed("roof.framing.damage", "Top chord split.").changed("roof.framing.kind", "trusses")
    told = below(run(gable.root, "check").out, "truss-damaged:FRAMING")
    line, column = gable.place("roof.framing.damage")
    assert told == (
        f"    jobs/26-041/job.yaml:{line}:{column} at roof.framing.damage."
        " Leave it to the truss engineer; then say whose letter decided, and when."
    )


def test_a_species_without_a_near_name_is_shown_beside_all_names(gable: Office, run: Run) -> None:
    out = run(gable.changed("roof.framing.species", "Zzzz").root, "check").out
    assert "FRAMING (Zzzz; Southern Pine, Mixed Southern Pine, Spruce-Pine-Fir" in out
    assert "White Oak) [species-unknown:FRAMING]" in out


def test_a_finding_of_a_photo_names_its_line_in_the_log(job_office: Office, run: Run, shoot: Shoot) -> None:
    job_office.log(shoot("P1", "deck", plane="MS", pin=["99 ft", "2 ft"]))
    told = below(run(job_office.root, "check").out, "pin-off-plane:P1")
    assert told.startswith("    jobs/26-041/photos.yaml:2:")
    assert " at photos[0].pin. " in told


def test_an_edge_of_a_form_is_named_where_it_was_taped(gable: Office, run: Run) -> None:
    told = below(run(gable.changed("roof.taped", "{GS-GN: 44 ft}").root, "check").out, "edge-length:GS-GN")
    assert " at roof.taped.GS-GN. " in told


def test_each_finding_has_words_for_what_to_do() -> None:
    words = load_words([packaged("shared")])
    assert set(words["findings_to_do"]) == set(words["findings"])
