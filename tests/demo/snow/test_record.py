"""The demo job under way shows its gaps: what is due and open, what is not due yet, and which photo proves nothing."""

from datetime import date
from pathlib import Path

import pytest

from packet.closeout.assemble import assemble
from packet.closeout.model import Closeout
from packet.workspace import Workspace

ROOT = Path(__file__).resolve().parents[3]
JOB = ROOT / "jobs" / "26-067"


@pytest.fixture(scope="module")
def closeout() -> Closeout:
    return assemble(Workspace(ROOT), JOB)[0]


def test_only_two_places_of_board_are_open(closeout: Closeout) -> None:
    """B1 was photographed in time; B2 was covered first, and B3's photo has lost its time."""
    boards = {result.subject: result for result in closeout.results if result.requirement == "deck-sheets"}
    assert {id for id, result in boards.items() if result.open} == {"B2", "B3"}
    assert boards["B1"].word == "meets"
    assert "P18" in boards["B1"].evidence
    assert boards["B2"].evidence == boards["B3"].evidence == ()
    opened = [(result.requirement, result.subject) for result in closeout.results if result.open]
    assert opened == [("deck-sheets", "B2"), ("deck-sheets", "B3")]


#: What the old roof showed, and the photos of it from before it was covered.
AS_FOUND = {
    "house-number": ("P31",),
    "before-planes:GN": ("P03",),
    "before-planes:GK": ("P32",),
    "before-planes:PR": ("P33",),
    "damage-as-found": ("P10", "P11"),
    "pitch-and-size": ("P06",),
    "old-layers": ("P34",),
    "old-deck-fastener": ("P35",),
    "old-deck-thickness": ("P36",),
    "bad-sheets:B1": ("P37", "P11"),
    "bad-sheets:B2": ("P37", "P38"),
    "bad-sheets:B3": ("P37", "P39"),
    "framing-spacing": ("P20",),
}


def test_the_old_roof_was_photographed_as_it_was_found(closeout: Closeout) -> None:
    """B2 and B3 too: only their new boards lack a photo."""
    asked = [result for result in closeout.results if result.word != "does_not_apply"]
    found = {
        f"{result.requirement}:{result.subject}" if result.subject else result.requirement: result
        for result in asked
    }
    assert {name: found[name].evidence for name in AS_FOUND} == AS_FOUND
    assert {found[name].word for name in AS_FOUND} == {"meets"}


def test_no_two_facts_of_the_record_disagree(closeout: Closeout) -> None:
    assert closeout.findings == ()


def test_what_shingles_hide_is_not_due_before_they_are_laid(closeout: Closeout) -> None:
    waiting = {result.requirement: result for result in closeout.results}
    for name in ("underlayment-laps", "underlayment-fastening", "drip-edge-fastening", "shingle-wind-class"):
        assert (waiting[name].word, waiting[name].due, waiting[name].open) == ("not_recorded", False, False)
    assert closeout.record.dates.finished is None
    assert not closeout.record.warranty


def test_the_barrier_reaches_further_than_is_asked(closeout: Closeout) -> None:
    """6 ft up a 9:12 slope is 57.6 in level; the eave takes 12 of them."""
    assert float(closeout.figures["ice_barrier.reach"].value) == pytest.approx(45.6)
    barrier = next(result for result in closeout.results if result.requirement == "ice-barrier")
    assert barrier.word == "meets"
    assert barrier.evidence == ("P23", "P24")


def test_planes_meet_and_no_length_of_eave_is_counted_twice(closeout: Closeout) -> None:
    """34 ft in front, 20 ft beside the porch, 14 ft of porch."""
    assert float(closeout.figures["edges.eave.length"].value) == pytest.approx(68)
    assert float(closeout.figures["work.area"].value) == pytest.approx(651.9, abs=0.1)


def test_one_photo_has_no_time_and_one_was_taken_after_its_boards_were_covered(closeout: Closeout) -> None:
    photos = {photo.id: photo for photo in closeout.photos}
    assert [id for id, photo in photos.items() if photo.taken_at is None] == ["P21"]
    late = photos["P30"]
    assert late.stage == "deck"
    assert late.taken_at is not None
    assert late.taken_at.date() == date(2026, 4, 23) > (closeout.record.dates.dried_in or date.max)


def test_the_photos_of_the_job_are_small() -> None:
    sizes = [path.stat().st_size for path in (JOB / "photos").iterdir()]
    assert len(sizes) == 39
    assert sum(sizes) <= 39 * 73_000
