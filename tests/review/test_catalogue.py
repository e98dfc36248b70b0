"""The catalogue: every row of what has to be proven on a roof is there, and the kind of work picks from it."""

from collections.abc import Callable
from typing import Any

import pytest

from packet.review.catalogue import BY_ID, CATALOGUE
from packet.review.model import NEVER_HIDDEN
from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]

#: What readers of closeout papers ask to see, row by row, with the stage that shows it and the one that hides it.
#: Rows as collected from forms, statutes and inspectors' lists; the sources stand in shared/requirements.yaml.
ROWS: dict[str, tuple[tuple[str, ...], str, str]] = {
    "right house": (("house-number",), "before", NEVER_HIDDEN),
    "condition before, every plane": (("before-planes",), "before", "stripped"),
    "damage as found": (("damage-as-found",), "before", "deck"),
    "pitch and size": (("pitch-and-size",), "before", NEVER_HIDDEN),
    "existing layers": (("old-layers",), "before", "deck"),
    "old nails or staples": (("old-deck-fastener",), "stripped", "deck"),
    "deck thickness, type": (("old-deck-thickness",), "stripped", "dried-in"),
    "each bad sheet": (("bad-sheets",), "stripped", "deck"),
    "each new sheet": (("deck-sheets", "deck-panel"), "deck", "dried-in"),
    "right nail": (("deck-nail", "renailed-nail"), "deck", "dried-in"),
    "deck nail spacing": (
        ("deck-nail-edge-spacing", "deck-nail-field-spacing", "renailed-spacing"),
        "deck",
        "dried-in",
    ),
    "heads flush": (("deck-heads-flush",), "deck", "dried-in"),
    "frame spacing, ties to the walls": (("framing-spacing", "roof-to-wall-ties"), "stripped", "dried-in"),
    "sealed seams": (("sealed-deck",), "deck", "covering"),
    "underlayment": (
        ("underlayment-type", "underlayment-laps", "underlayment-fastening"),
        "dried-in",
        "covering",
    ),
    "ice barrier": (("ice-barrier",), "dried-in", "covering"),
    "drip edge": (("drip-edge-lap", "drip-edge-fastening", "drip-edge-order"), "edges", "covering"),
    "starter": (("starter",), "edges", "done"),
    "step flashing": (("sidewall-flashing",), "edges", "covering"),
    "other details": (("new-details",), "edges", NEVER_HIDDEN),
    "vents": (("attic-ventilation",), "deck", NEVER_HIDDEN),
    "product, color, lot, class": (("shingle-label", "shingle-wind-class"), "covering", "done"),
    "nails in a shingle": (("shingle-nails", "shingle-nail"), "covering", "done"),
    "joint with the old roof": (("hand-seal",), "covering", "done"),
    "new against old": (("new-beside-old",), "covering", NEVER_HIDDEN),
    "finished planes": (("finished-planes",), "done", NEVER_HIDDEN),
    "underside": (("underside",), "covering", NEVER_HIDDEN),
    "site clean": (("clean-up",), "done", NEVER_HIDDEN),
    "permit closed": (("permit-closed",), "done", NEVER_HIDDEN),
    "left over": (("left-with-owner",), "done", NEVER_HIDDEN),
    "paid": (("paid",), "done", NEVER_HIDDEN),
    "suppliers released": (("releases",), "done", NEVER_HIDDEN),
}


@pytest.mark.parametrize("row", ROWS)
def test_every_row_has_its_requirements_at_its_stage(row: str) -> None:
    ids, shown_at, hidden_by = ROWS[row]
    for id in ids:
        assert (BY_ID[id].shown_at, BY_ID[id].hidden_by) == (shown_at, hidden_by), id


def test_a_patch_is_asked_for_a_dozen_kinds_of_things_and_a_re_roof_for_far_more() -> None:
    asked = {kind: [r.id for r in CATALOGUE if kind in r.kinds] for kind in ("patch", "re-roof")}
    assert len(asked["patch"]) <= 16
    assert len(asked["re-roof"]) >= 40


def test_nothing_is_both_asked_and_only_judged_when_answered() -> None:
    assert [r.id for r in CATALOGUE if r.kinds & r.if_answered] == []


BEFORE = "2026:03:09 09:10:00"


def test_a_patch_is_not_asked_for_the_old_fastener_until_somebody_shows_it(
    job_office: Office, shoot: Shoot
) -> None:
    asked = {result.requirement for result in job_office.closeout().results}
    assert "old-deck-fastener" not in asked
    shown = shoot("P1", "stripped", "old-deck-fastener", taken="2026:03:16 09:00:00")
    assert job_office.log(shown).result("old-deck-fastener").word == "meets"


def test_a_value_a_patch_is_not_asked_for_is_judged_once_it_is_written(job_office: Office) -> None:
    assert job_office.result("drip-edge-fastening").word == "not_recorded"
    job_office.changed("drip_edge.fastener_spacing", "null")
    assert "drip-edge-fastening" not in {result.requirement for result in job_office.closeout().results}


@pytest.mark.parametrize(("views", "word"), [(("wide",), "not_recorded"), (("close", "wide"), "meets")])
def test_damage_wants_a_wide_view_and_a_close_one(
    job_office: Office, shoot: Shoot, views: tuple[str, ...], word: str
) -> None:
    photos = [
        shoot(f"P{n}", "before", "damage-as-found", taken=BEFORE, view=view) for n, view in enumerate(views)
    ]
    result = job_office.log(*photos).result("damage-as-found")
    assert result.word == word
    assert result.why_not_proven == ("no_close_photo" if word == "not_recorded" else "")


def re_roof(office: Office) -> Office:
    return office.changed("job.kind", "re-roof")


def test_each_worked_plane_wants_its_own_photo_before_and_after(job_office: Office, shoot: Shoot) -> None:
    log = [
        shoot("P1", "before", "before-planes", taken=BEFORE, plane="MS"),
        shoot("P2", "done", "finished-planes", taken="2026:03:18 16:00:00", plane="WW"),
    ]
    office = re_roof(job_office).log(*log)
    words = {(r.requirement, r.subject): r.word for r in office.closeout().results}
    assert words["before-planes", "MS"] == "meets"
    assert words["before-planes", "WW"] == "not_recorded"
    assert words["finished-planes", "MS"] == "not_recorded"
    assert words["finished-planes", "WW"] == "meets"


def test_a_sheet_is_shown_bad_before_it_is_shown_new(job_office: Office, shoot: Shoot) -> None:
    office = re_roof(job_office).log(
        shoot("P1", "stripped", "S1", taken="2026:03:16 09:00:00", view="wide"),
        shoot("P2", "stripped", "S1", taken="2026:03:16 09:01:00", view="close"),
        shoot("P3", "deck", "S2"),
    )
    words = {(r.requirement, r.subject): r.word for r in office.closeout().results}
    assert (words["bad-sheets", "S1"], words["deck-sheets", "S1"]) == ("meets", "not_recorded")
    assert (words["bad-sheets", "S2"], words["deck-sheets", "S2"]) == ("not_recorded", "meets")


def test_a_paper_closes_the_permit_and_a_visit_without_a_paper_does_not(job_office: Office) -> None:
    office = re_roof(job_office).changed("documents.4.proves", "[]")  # the town's notice, taken away
    assert office.result("permit-closed").why_not_proven == "no_paper"
    office.changed("documents.1.proves", "[permit-closed]")
    result = office.result("permit-closed")
    assert (result.word, result.papers) == ("meets", ("D2",))


def test_a_failed_final_visit_closes_no_permit(job_office: Office) -> None:
    office = re_roof(job_office).changed("documents.1.proves", "[permit-closed]")
    office.changed("inspections.1.result", "failed")
    assert office.result("permit-closed").why_not_proven == "no_value"


def test_a_job_without_a_permit_has_none_to_close(job_office: Office) -> None:
    permit = "  permit: 26-0388\n  permit_date: 2026-03-12\n"
    office = re_roof(job_office).replaced(permit, "  no_permit: The town asks for none.\n")
    assert office.result("permit-closed").reason == "no_permit_asked"


def test_heads_through_the_panel_are_told_and_not_judged_by_a_rule_nobody_read(
    job_office: Office, shoot: Shoot
) -> None:
    office = re_roof(job_office).changed("deck.heads", "flush").log(shoot("P1", "deck", "deck-heads-flush"))
    assert office.result("deck-heads-flush").word == "not_verified"


def test_ties_are_asked_for_only_where_they_were_seen(job_office: Office, shoot: Shoot) -> None:
    assert job_office.result("roof-to-wall-ties").reason == "no_ties_seen"
    office = job_office.changed(
        "roof.ties", "[{id: TIE1, where: front wall, kind: clip, nails: 3, state: left as found}]"
    )
    assert office.result("roof-to-wall-ties").word == "not_recorded"
    shown = shoot("P1", "stripped", "roof-to-wall-ties", taken="2026:03:16 09:00:00")
    assert office.log(shown).result("roof-to-wall-ties").word == "meets"


@pytest.mark.parametrize(
    ("requirement", "path", "value"),
    [
        ("old-layers", "roof.old.layers", "null"),
        ("old-deck-thickness", "roof.old.deck_thickness", "null"),
        ("starter", "covering.starter", "null"),
        ("shingle-label", "covering.shingle.color", "null"),
        ("clean-up", "clean_up.magnet", "null"),
        ("paid", "money.paid", "null"),
        ("releases", "documents", "[]"),
    ],
)
def test_what_was_not_written_down_is_not_recorded(
    job_office: Office, requirement: str, path: str, value: str
) -> None:
    office = re_roof(job_office).changed(path, value)
    assert office.result(requirement).why_not_proven == "no_value"


def test_a_roof_without_rakes_is_asked_for_the_metal_of_its_eaves_alone(job_office: Office) -> None:
    asked = {part.asks for part in re_roof(job_office).result("drip-edge-order").parts}
    assert asked == {"drip_edge.order_eave", "drip_edge.order_rake"}
    text = job_office.text
    for edge in ("E9", "E10", "E11", "E12", "E14", "E15"):
        text = "\n".join(line for line in text.splitlines() if f"id: {edge}," not in line)
    asked = {part.asks for part in job_office.write(text).result("drip-edge-order").parts}
    assert asked == {"drip_edge.order_eave"}
