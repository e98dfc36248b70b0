"""What one field cannot know is refused at the line and column to edit."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.support.office import Office
from tests.support.records import HIP_ROOF

Change = Callable[[Office], Office]


def set_to(path: str, value: str) -> Change:
    return lambda office: office.changed(path, value)


def with_part(text: str) -> Change:
    return lambda office: office.added(text)


#: What is typed wrongly, the code, and the path of the value that is pointed at.
SLIPS: dict[str, tuple[Change, str, str]] = {
    "opening named as a plane": (set_to("roof.openings.0.id", "MS"), "duplicate-id", "roof.openings.0.id"),
    "id shared by unlike things": (set_to("documents.0.id", "S1"), "duplicate-id", "documents.0.id"),
    "edge named as a plane": (set_to("roof.edges.3.id", "DR"), "duplicate-id", "roof.edges.3.id"),
    "sheet on no plane": (set_to("deck.sheets.S2.plane", "MX"), "unknown-id", "deck.sheets.S2.plane"),
    "detail on no plane": (set_to("details.C1.plane", "XX"), "unknown-id", "details.C1.plane"),
    "area on no plane": (set_to("covering.areas.A1.plane", "ZZ"), "unknown-id", "covering.areas.A1.plane"),
    "opening in no plane": (set_to("roof.openings.0.plane", "ZZ"), "unknown-id", "roof.openings.0.plane"),
    "edge of no plane": (set_to("roof.edges.E1.sides.1", "XX.left"), "unknown-id", "roof.edges.E1.sides.1"),
    "edge of no side": (set_to("roof.edges.E5.sides.0", "MS.front"), "unknown-id", "roof.edges.E5.sides.0"),
    "edge without side": (set_to("roof.edges.E5.sides.0", "MS"), "unknown-id", "roof.edges.E5.sides.0"),
    "started before looked at": (
        set_to("dates.started", "2026-03-08"),
        "dates-out-of-order",
        "dates.started",
    ),
    "finished before dried in": (
        set_to("dates.finished", "2026-03-16"),
        "dates-out-of-order",
        "dates.finished",
    ),
    "cover off before it was on": (
        with_part(
            "temporary: [{id: T1, where: deck, what: tarp, put_on: 2026-03-16, taken_off: 2026-03-15}]"
        ),
        "dates-out-of-order",
        "temporary.T1.taken_off",
    ),
    "set again before it came off": (
        with_part("detached: [{id: DT1, what: gutter, off: 2026-03-16, reset: 2026-03-15, state: replaced}]"),
        "dates-out-of-order",
        "detached.DT1.reset",
    ),
    "point done before it was seen": (
        with_part("punch_list: [{id: PL1, what: scuff, on: 2026-03-18, done_on: 2026-03-17}]"),
        "dates-out-of-order",
        "punch_list.PL1.done_on",
    ),
    "boards on no plane": (
        set_to(
            "deck.boards",
            "[{id: BD1, plane: XX, where: eave, size: 1x6, width: 5 in, pieces: 1, length: 9 ft, why: rot}]",
        ),
        "unknown-id",
        "deck.boards.BD1.plane",
    ),
    "nailed again on no plane": (
        set_to("deck.renailed", "{planes: [MS, XX]}"),
        "unknown-id",
        "deck.renailed.planes.1",
    ),
    "low slope on no plane": (
        set_to("covering.low_slope", "[{id: LS1, plane: XX, product: cap sheet}]"),
        "unknown-id",
        "covering.low_slope.LS1.plane",
    ),
    "vents in pieces and in feet": (
        with_part(
            "ventilation: {vents: [{id: VT1, what: strip, place: low, state: new, pieces: 4, length: 8 ft}]}"
        ),
        "vent-counted-twice",
        "ventilation.vents.VT1.length",
    ),
    "call named as a detail": (
        with_part("callbacks: [{id: V1, on: 2026-05-02, told: A drip., ours: not known yet}]"),
        "duplicate-id",
        "callbacks.V1.id",
    ),
    "promise ends before it starts": (
        set_to("warranty.W1.until", "2026-03-17"),
        "dates-out-of-order",
        "warranty.W1.until",
    ),
    "top left of the plane": (
        set_to("roof.planes.MS.upper_starts", "-32 ft"),
        "out-of-range",
        "roof.planes.MS.upper_starts",
    ),
    "top right of the plane": (
        set_to("roof.planes.MS.upper_starts", "20 ft"),
        "out-of-range",
        "roof.planes.MS.upper_starts",
    ),
    "more used than came": (
        set_to("bought.SHINGLES.left", "50"),
        "more-went-than-came",
        "bought.SHINGLES.returned",
    ),
    "went back but never came": (
        lambda office: office.replaced("planned: 20, delivered: 20, returned: 9", "planned: 20, returned: 9"),
        "goods-never-came",
        "bought.STEP.returned",
    ),
}


@pytest.mark.parametrize(("change", "code", "path"), SLIPS.values(), ids=SLIPS.keys())
def test_a_slip_is_refused_at_its_place(job_office: Office, change: Change, code: str, path: str) -> None:
    office = change(job_office)
    assert office.places() == [("job.yaml", code, *office.place(path))]


def test_the_demo_record_has_no_fault(job_office: Office) -> None:
    assert job_office.closeout().record.job.number == "26-041"


def test_days_are_compared_across_one_that_is_missing(job_office: Office) -> None:
    office = job_office.replaced("  dried_in: 2026-03-17\n", "").changed("dates.finished", "2026-03-15")
    assert office.places() == [("job.yaml", "dates-out-of-order", *office.place("dates.finished"))]


def test_days_that_fall_together_are_in_order(job_office: Office) -> None:
    for day in ("looked_at", "started", "dried_in", "finished"):
        job_office.changed(f"dates.{day}", "2026-03-16")
    assert job_office.closeout().record.dates.finished


def test_the_peak_of_a_triangle_stands_over_its_lowest_edge(tmp_path: Path) -> None:
    office = Office(tmp_path / "hip", HIP_ROOF).changed("roof.planes.HW.top_at", "24 ft 1 in")
    assert office.places() == [("job.yaml", "out-of-range", *office.place("roof.planes.HW.top_at"))]


def test_a_triangle_has_no_upper_side(tmp_path: Path) -> None:
    office = Office(tmp_path / "hip", HIP_ROOF).changed("roof.edges.L1.sides.0", "HW.upper")
    assert office.places() == [("job.yaml", "unknown-id", *office.place("roof.edges.L1.sides.0"))]


def test_planes_named_in_a_record_without_a_roof_are_unknown(small_office: Office) -> None:
    office = small_office.added("details: [{id: V1, kind: valley, where: front, state: new, plane: MS}]")
    assert office.places() == [("job.yaml", "unknown-id", *office.place("details.0.plane"))]


def test_every_fault_of_a_record_is_told_at_once(job_office: Office) -> None:
    wanted = []
    for change, _, _ in SLIPS.values():
        change(job_office)
    for _, code, path in SLIPS.values():
        wanted.append(("job.yaml", code, *job_office.place(path)))
    assert set(wanted) == set(job_office.places())


def test_openings_larger_than_their_plane_are_refused_at_the_one_too_many(job_office: Office) -> None:
    """The front slope is 26 ft by 13 ft 5 in, 349 sq ft; the dormer takes 89 of them, another opening 169.

    Each lies in the plane; only their sum is more than it has.
    """
    vent = "{id: %s, plane: MS, what: vent, at: [1 ft, 0 ft], along: %s, up: 13 ft}"
    dormer = job_office.text.splitlines()[job_office.place("roof.openings.O1")[0] - 1]
    job_office.replaced(dormer, f"{dormer}\n    - {vent % ('O2', '13 ft')}\n    - {vent % ('O3', '8 ft')}")
    assert job_office.places() == [("job.yaml", "out-of-range", *job_office.place("roof.openings.O3.along"))]
    job_office.changed("roof.openings.O3.along", "6 ft")
    assert job_office.closeout()


@pytest.mark.parametrize(
    ("side", "sides"),
    [
        ("MS.front", "one of the sides of MS: MS.lower, MS.right, MS.upper, MS.left"),
        ("MS", "one of the sides of MS: MS.lower, MS.right, MS.upper, MS.left"),
        (
            "XX.left",
            "a plane (DR, MN, MS, WE, WW) and one of its sides (lower, right, upper, left), as MS.right",
        ),
    ],
)
def test_a_side_that_is_not_there_is_answered_with_the_sides_of_its_plane(
    job_office: Office, side: str, sides: str
) -> None:
    (problem,) = job_office.changed("roof.edges.E5.sides.0", side).problems()
    assert (problem.code, problem.values["accepted"]) == ("unknown-id", sides)


def test_a_triangle_is_said_to_have_three_sides(tmp_path: Path) -> None:
    (problem,) = Office(tmp_path / "hip", HIP_ROOF).changed("roof.edges.L1.sides.0", "HW.upper").problems()
    assert problem.values["accepted"] == "one of the sides of HW: HW.lower, HW.right, HW.left"


@pytest.mark.parametrize(("exposure", "refused"), [("1-7/8 in", True), ("2 in", False), ("12-1/8 in", True)])
def test_an_exposure_is_one_that_a_shingle_can_have(job_office: Office, exposure: str, refused: bool) -> None:
    job_office.changed("covering.shingle.exposure", exposure)
    if refused:
        place = job_office.place("covering.shingle.exposure")
        assert job_office.places() == [("job.yaml", "out-of-range", *place)]
    else:
        assert job_office.closeout()
