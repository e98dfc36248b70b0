"""Each finding, once brought about and once explained."""

from collections.abc import Callable
from typing import Any

import pytest

from packet.review.findings import CHECKS
from packet.text import load_words
from packet.workspace import packaged
from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]
BOWTIE = "[[0 ft, 0 ft], [5 ft, 0 ft], [0 ft, 4 ft], [5 ft, 4 ft]]"
WIDE = "[[0 ft, 0 ft], [33 ft, 0 ft], [33 ft, 4 ft], [0 ft, 4 ft]]"


def taped(office: Office, shoot: Shoot) -> Office:
    return office.changed("roof.edges.E1.measured", "17 ft 9 in")


def moved(office: Office, shoot: Shoot) -> Office:
    return office.changed("roof.planes.DR.at", "[14 ft, 5 ft]").changed(
        "roof.edges.E16.sides", "[DR.upper, MS.upper]"
    )


def crossed(office: Office, shoot: Shoot) -> Office:
    return office.changed("covering.areas.A1.outline", BOWTIE)


def outside(office: Office, shoot: Shoot) -> Office:
    return office.changed("covering.areas.A1.outline", WIDE).changed("bought.SHINGLES.delivered", "40")


def late_clock(office: Office, shoot: Shoot) -> Office:
    return office.log(shoot("P1", "deck", taken_at="2026-03-16T10:15:01"))


def short(office: Office, shoot: Shoot) -> Office:
    return office.changed("bought.SHINGLES.delivered", "4")


CASES: dict[str, Callable[[Office, Shoot], Office]] = {
    "edge-length:E1": taped,
    "edge-sides:E16": moved,
    "area-crosses:A1": crossed,
    "area-outside-plane:A1": outside,
    "photo-time:P1": late_clock,
    "laid-below-need:SHINGLES": short,
}


def test_the_demo_record_agrees_with_itself(job_office: Office) -> None:
    assert job_office.finding_ids() == set()


@pytest.mark.parametrize("id", CASES)
def test_a_disagreement_is_found(job_office: Office, shoot: Shoot, id: str) -> None:
    found = {finding.id: finding for finding in CASES[id](job_office, shoot).closeout().findings}
    assert found.keys() == {id}
    assert found[id].explanation == ""
    assert set(found[id].figures) <= job_office.closeout().figures.keys()


@pytest.mark.parametrize("id", CASES)
def test_a_finding_carries_the_records_explanation_and_stays(
    job_office: Office, shoot: Shoot, id: str
) -> None:
    office = CASES[id](job_office, shoot).added(f'explained: {{"{id}": seen and let stand}}')
    assert [(f.id, f.explanation) for f in office.closeout().findings] == [(id, "seen and let stand")]


def test_every_finding_there_is_has_a_case_and_words() -> None:
    words = load_words([packaged("shared")])
    assert {id.partition(":")[0] for id in CASES} == set(words["findings"])
    assert len(CHECKS) == 5


@pytest.mark.parametrize(
    ("measured", "found"),
    [("18 ft 2 in", False), ("17 ft 10 in", False), ("18 ft 2-1/4 in", True), ("17 ft 9-3/4 in", True)],
)
def test_a_taped_edge_may_be_off_by_a_hundredth_or_two_inches(
    job_office: Office, measured: str, found: bool
) -> None:
    ids = job_office.changed("roof.edges.E1.measured", measured).finding_ids()
    assert ids == ({"edge-length:E1"} if found else set())


def test_a_photo_with_the_cameras_own_time_in_its_log_agrees(job_office: Office, shoot: Shoot) -> None:
    office = job_office.log(shoot("P1", "deck", taken_at="2026-03-16T10:15:00"))
    assert office.finding_ids() == set()


def test_a_finding_shows_both_values(job_office: Office, shoot: Shoot) -> None:
    office = late_clock(job_office, shoot)
    assert office.closeout().findings[0].words == {
        "log": "2026-03-16T10:15:01",
        "camera": "2026-03-16T10:15:00",
    }
    office = taped(job_office, shoot)
    finding = next(f for f in office.closeout().findings if f.code == "edge-length")
    assert finding.figures == ("edge.E1.length", "roof.edges.E1.measured")


def test_a_record_without_a_roof_or_photos_has_no_finding(small_office: Office) -> None:
    closeout = small_office.closeout()
    assert not closeout.findings
    assert not closeout.photos


def test_a_part_of_a_bundle_can_cover_a_small_patch(job_office: Office) -> None:
    """Whole bundles are bought, but what was laid covers by the square foot."""
    enough = job_office.changed(
        "bought.SHINGLES.delivered", "5-3/4"
    )  # 3.25 laid, 106.6 sq ft; 4 by the bundle
    figures = enough.closeout().figures
    assert figures["bought.SHINGLES.laid"].value < figures["bought.SHINGLES.needed"].value
    assert enough.finding_ids() == set()
