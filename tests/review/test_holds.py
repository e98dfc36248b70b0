"""Hold points: in the order of the work, what waits, what was missed, and what may still come."""

from collections.abc import Callable
from typing import Any

from packet.review.holds import HoldItem, next_hold
from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]
ORDER = ["stripped", "deck", "dried-in", "edges", "covering", "done", "closing"]


def item(office: Office, requirement: str, subject: str = "") -> HoldItem:
    found = [
        item
        for point in office.closeout().holds
        for item in point.items
        if (item.requirement, item.subject) == (requirement, subject)
    ]
    assert len(found) == 1, f"{len(found)} items for {requirement} {subject}"
    return found[0]


def under_way(office: Office) -> Office:
    """The deck lies open: nothing is dried in."""
    return office.changed("job.status", "under way").changed("dates", "{started: 2026-03-16}")


def test_points_stand_in_the_order_of_the_work(job_office: Office) -> None:
    before = [point.before for point in job_office.closeout().holds]
    assert before == sorted(before, key=ORDER.index)


def test_while_the_deck_lies_open_its_nails_wait_before_dry_in(job_office: Office, shoot: Shoot) -> None:
    office = under_way(job_office).log(
        shoot("P1", "before", "damage-as-found", taken="2026:03:09 09:00:00", view="wide"),
        shoot("P2", "before", "damage-as-found", taken="2026:03:09 09:01:00", view="close"),
    )
    point = next_hold(office.closeout().holds)
    assert point is not None
    assert point.before == "dried-in"
    assert "deck-nail" in [item.requirement for item in point.unmet]


def test_a_shown_thing_is_met_and_the_next_one_waits(job_office: Office, shoot: Shoot) -> None:
    office = under_way(job_office).log(shoot("P1", "deck", "deck-nail"))
    assert item(office, "deck-nail").state == "met"
    assert item(office, "deck-nail-edge-spacing").state == "waiting"


def test_what_was_hidden_unshown_is_missed_and_waits_no_longer(job_office: Office) -> None:
    office = job_office.changed("job.status", "under way").changed(
        "dates", "{started: 2026-03-16, dried_in: 2026-03-17}"
    )
    assert item(office, "deck-nail").state == "missed"
    point = next_hold(office.closeout().holds)
    assert point is not None
    assert point.before == "covering"


def test_a_value_that_differs_is_shown_by_its_photo(job_office: Office, shoot: Shoot) -> None:
    office = under_way(job_office).changed("deck.edge_spacing", "8 in")
    assert item(office, "deck-nail-edge-spacing").state == "waiting"
    assert (
        item(office.log(shoot("P1", "deck", "deck-nail-edge-spacing")), "deck-nail-edge-spacing").state
        == "met"
    )


def test_a_closed_job_waits_for_nothing(job_office: Office) -> None:
    assert next_hold(job_office.closeout().holds) is None


def test_a_planned_job_hears_of_everything_its_kind_may_ask(small_office: Office) -> None:
    office = small_office.changed("job", "{number: 26-041, kind: re-roof, status: planned}")
    sheets = item(office, "deck-sheets")
    assert (sheets.only_if, sheets.state) == ("no_deck_replaced", "waiting")
    point = next_hold(office.closeout().holds)
    assert point is not None
    assert all(not entry.only_if for entry in point.unmet)


def test_an_item_says_what_its_picture_has_in_it(job_office: Office) -> None:
    assert item(job_office, "damage-as-found").views == ("wide", "close")
    assert item(job_office, "deck-nail").in_frame == ("ruler", "label")


def test_the_office_alone_hears_of_the_payment(job_office: Office) -> None:
    from packet.closeout.redact import redact

    job_office.changed("job.kind", "re-roof").changed("documents.D6.proves", "[]")
    closeout = job_office.changed("not_recorded.paid", "on its way").closeout()
    names: dict[str, set[str]] = {}
    for reader in ("outside", "office"):
        copy = redact(closeout, reader)
        held = {item["requirement"] for point in copy["holds"] for item in point["items"]}
        results = {result["requirement"] for result in copy["results"]}
        names[reader] = {
            where
            for where, there in (
                ("result", "paid" in results),
                ("hold", "paid" in held),
                ("reason", "paid" in copy["record"]["not_recorded"]),
            )
            if there
        }
    assert names == {"outside": set(), "office": {"result", "hold", "reason"}}
