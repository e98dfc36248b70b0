"""Each finding, once brought about and once explained."""

from collections.abc import Callable
from typing import Any

import pytest

from packet.review.findings import CHECKS
from packet.text import load_words
from packet.workspace import packaged
from tests.support.office import Office

Shoot = Callable[..., dict[str, Any]]


def taped(office: Office, shoot: Shoot) -> Office:
    return office.changed("roof.edges.E1.measured", "17 ft 9 in")


def steeper_beside(office: Office, shoot: Shoot) -> Office:
    """The hip E2 still meets in plan, and is longer on the back slope than on the wing."""
    return office.changed("roof.planes.MN.pitch", "6-1/2:12")


def late_clock(office: Office, shoot: Shoot) -> Office:
    return office.log(shoot("P1", "deck", taken_at="2026-03-16T10:15:01"))


def short(office: Office, shoot: Shoot) -> Office:
    return office.changed("bought.SHINGLES.delivered", "4")


def plenty(office: Office, shoot: Shoot) -> Office:
    return office.changed("bought.SHINGLES.delivered", "9")


def ordered_short(office: Office, shoot: Shoot) -> Office:
    return office.changed("bought.SHINGLES.planned", "3").changed("job.status", "under way")


def too_early(office: Office, shoot: Shoot) -> Office:
    return office.changed("found.F1.covered_on", "2026-03-15")


def far_pin(office: Office, shoot: Shoot) -> Office:
    return office.log(shoot("P1", "deck", plane="MS", pin=["99 ft", "2 ft"]))


def dormer_over_deck(office: Office, shoot: Shoot) -> Office:
    """Raise the dormer's roof on a level of its own, and leave out the opening below it."""
    office.changed("roof.planes.DR.eave_height", "11 ft 2 in")
    lines = office.text.splitlines(keepends=True)
    kept = [line for line in lines if not line.startswith(("  openings:", "    - {id: O1,"))]
    assert len(kept) == len(lines) - 2
    return office.write("".join(kept))


def set_to(path: str, value: str) -> Callable[[Office, Shoot], Office]:
    return lambda office, shoot: office.changed(path, value)


def added(text: str) -> Callable[[Office, Shoot], Office]:
    return lambda office, shoot: office.added(text)


def dormer_shingled(pitch: str) -> Callable[[Office, Shoot], Office]:
    """Lay a square foot of shingles, clear of every edge, on the dormer's roof, which has a pitch of its own."""
    area = "    - {id: A3, plane: DR, outline: [[2 ft, 2 ft], [3 ft, 2 ft], [3 ft, 3 ft], [2 ft, 3 ft]]}\n"
    return lambda office, shoot: office.replaced("    - {id: A2,", f"{area}    - {{id: A2,").changed(
        "roof.planes.DR.pitch", pitch
    )


def spaced_boards_shingled(office: Office, shoot: Shoot) -> Office:
    """Lay boards with gaps on purpose on the back slope, and a square foot of shingles over them."""
    area = (
        "    - {id: A3, plane: MN, outline: [[20 ft, 4 ft], [21 ft, 4 ft], [21 ft, 5 ft], [20 ft, 5 ft]]}\n"
    )
    boards = (
        "{id: BD1, plane: MN, where: ridge, size: 1x4, width: 3-1/2 in, pieces: 2, length: 16 ft,"
        " laid: spaced, gap: 3-1/2 in, why: rot}"
    )
    return office.replaced("    - {id: A2,", f"{area}    - {{id: A2,").changed("deck.boards", f"[{boards}]")


def thin_over_boards(office: Office, shoot: Shoot) -> Office:
    boards = "{laid: spaced, thickness: 3/4 in, width: 3-1/2 in, gap: 8-1/2 in}"
    return office.changed("deck.over_boards", boards).changed("deck.panel.thickness", "1/4 in")


def tall_sheet(office: Office, shoot: Shoot) -> Office:
    return office.changed("deck.sheets.S1.along", "4 ft").changed("deck.sheets.S1.up", "8 ft")


def joints_on_one_rafter(office: Office, shoot: Shoot) -> Office:
    """Two courses, each of two sheets that meet 22 ft along."""
    more = (
        "    - {id: S5, plane: MS, at: [22 ft, 0 ft], along: 2 ft, up: 4 ft, why: rot, cut_from: S1}\n"
        "    - {id: S6, plane: MS, at: [18 ft, 4 ft], along: 4 ft, up: 4 ft, why: rot, cut_from: S1}\n"
    )
    office.changed("deck.sheets.S1.along", "6 ft").changed("bought.PANELS.delivered", "5")
    return office.replaced("    - {id: S2, plane: MS,", f"{more}    - {{id: S2, plane: MS,")


def damaged_truss(office: Office, shoot: Shoot) -> Office:
    return office.changed("roof.framing.kind", "trusses").changed("roof.framing.damage", "Top chord split.")


def corrected_before(office: Office, shoot: Shoot) -> Office:
    office.log(shoot("P1", "deck", taken="2026:03:16 18:00:00"))
    return office.changed("inspections.I1.corrections", "[{asked: Two nails more., photo: P1}]")


def no_certificate(office: Office, shoot: Shoot) -> Office:
    """A coastal job applied for in time and seen under way, whose certificate nobody has."""
    office.changed("property.state", "Texas").changed("property.county", "Galveston County")
    office.changed("inspections.I1.purpose", "windstorm")
    return office.added("permissions: [{id: AP1, kind: windstorm application, applied_on: 2026-03-10}]")


def late_permit(office: Office, shoot: Shoot) -> Office:
    return office.changed("basis.permit_date", "2026-03-17")


def way_out(text: str, **changes: str) -> Callable[[Office, Shoot], Office]:
    """Return what writes a way out for a field spacing of 8 in, which differs from the 6 in asked."""

    def change(office: Office, shoot: Shoot) -> Office:
        office.log(shoot("P1", "deck", taken="2026:03:16 18:00:00"))
        for path, value in changes.items():
            office.changed(path.replace("__", "."), value)
        return office.added(f"ways_out: [{{requirement: deck-nail-field-spacing, {text}}}]")

    return change


EIGHT = {"deck__field_spacing": "8 in"}
ON = "temporary: [{id: T1, where: open deck, what: tarp, put_on: 2026-03-16}]"
OFF = "detached: [{id: DR1, what: gutter, state: not yet}]"
ENDED = "approvals: [{id: PA1, product: shingle, number: N-1, by: office, valid_until: 2026-03-17}]"
POINT = "punch_list: [{id: PL1, what: Scuffed shingle.}]"

CASES: dict[str, Callable[[Office, Shoot], Office]] = {
    "edge-length:E1": taped,
    "edge-sides:E2": steeper_beside,
    "planes-stacked:DR": dormer_over_deck,
    "slope-too-flat:DR": dormer_shingled("1-15/16:12"),
    "slope-too-steep:DR": dormer_shingled("21-1/16:12"),
    "cut-out-short:CO1": set_to("deck.cut_outs.CO1.cut.along", "5 ft"),
    "sheet-without-bearing:S3": set_to(
        "roof.framing.lines", "[{plane: MS, first: 0 ft}, {plane: WW, at: [-6 ft, -4 ft, 4 ft]}]"
    ),
    "framing-too-wide:PANEL": set_to("deck.panel.span_rating", "20/0"),
    "span-rating-unread:PANEL": set_to("deck.panel.span_rating", "heavy"),
    "space-too-wide:S1": set_to(
        "roof.framing.lines",
        "[{plane: MS, at: [16 ft, 18 ft 3 in, 21 ft, 24 ft, 26 ft, 28 ft]}, {plane: WW, first: 6 in}]",
    ),
    "strength-along-rafters:S1": tall_sheet,
    "ends-in-line:MS": joints_on_one_rafter,
    "nail-too-short:DECK": set_to("deck.nail.size", "1-1/4 x 0.113"),
    "boards-bare:BD1": spaced_boards_shingled,
    "boards-too-far-apart:DECK": set_to(
        "deck.over_boards", "{laid: spaced, thickness: 3/4 in, width: 3-1/2 in, gap: 8-9/16 in}"
    ),
    "panel-thin-over-boards:DECK": thin_over_boards,
    "species-unknown:FRAMING": set_to("roof.framing.species", "Southern Pin"),
    "truss-damaged:FRAMING": damaged_truss,
    "place-off-plane:B1": set_to("details.B1.at", "[60 ft, 6 ft]"),
    "pin-off-plane:P1": far_pin,
    "photo-time:P1": late_clock,
    "laid-below-need:SHINGLES": short,
    "laid-above-need:SHINGLES": plenty,
    "ordered-below-need:SHINGLES": ordered_short,
    "permission-late:F1": too_early,
    "cover-still-on:T1": added(ON),
    "not-reset:DR1": added(OFF),
    "punch-open:PL1": added(POINT),
    "approval-not-valid:PA1": added(ENDED),
    "correction-photo-early:I1": corrected_before,
    "paper-missing:windstorm-certificate": no_certificate,
    "paper-out-of-order:permit": late_permit,
    "way-out-bare:deck-nail-field-spacing": way_out("kind: corrected, text: Nails added.", **EIGHT),
    "way-out-photo-early:deck-nail-field-spacing": way_out(
        "kind: corrected, on: 2026-03-17, photo: P1, text: Nails added.", **EIGHT
    ),
    "way-out-of-nothing:deck-nail-field-spacing": way_out(
        "kind: accepted, on: 2026-03-17, by: building office, text: Let stand."
    ),
    "wording:found.F1.done": set_to("found.F1.done", "Four sheets. It withstands 150 mph."),
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
    assert len(CHECKS) == 7  # besides those of goods, of wood, of slopes and of papers


def test_a_plane_on_a_level_of_its_own_over_its_opening_is_no_finding(job_office: Office) -> None:
    assert job_office.changed("roof.planes.DR.eave_height", "11 ft 2 in").finding_ids() == set()


def test_an_opening_elsewhere_does_not_make_room_for_a_plane(job_office: Office) -> None:
    job_office.changed("roof.planes.DR.eave_height", "11 ft 2 in")
    assert job_office.changed("roof.openings.O1.at", "[1 ft, 2 ft]").finding_ids() == {"planes-stacked:DR"}


@pytest.mark.parametrize(
    ("at", "lower", "found"),
    [
        ("[6 ft, -6 ft]", "10 ft", False),
        ("[6 ft, -5 ft 10 in]", "10 ft", True),
        ("[6 ft, -4 ft 1 in]", "4 ft", False),
        ("[6 ft, -3 ft 11 in]", "4 ft", True),
    ],
)
def test_a_roof_may_hang_over_another_by_an_overhang(
    job_office: Office, shoot: Shoot, at: str, lower: str, found: bool
) -> None:
    """8 ft deep: a strip of 2 ft is one, 26 in is not; 15.7 sq ft are, 16.3 are not."""
    office = dormer_over_deck(job_office, shoot).changed("roof.planes.DR.at", at)
    office.changed("roof.planes.DR.lower", lower)
    assert office.finding_ids() == ({"planes-stacked:DR"} if found else set())


def test_a_plane_over_two_others_is_one_finding_that_names_both(job_office: Office, shoot: Shoot) -> None:
    """The dormer's roof across the ridge; a row of the page, its anchor and its explanation go by the plane."""
    office = dormer_over_deck(job_office, shoot).changed("roof.planes.DR.at", "[14 ft, 8 ft]")
    (finding,) = office.closeout().findings
    assert (finding.id, finding.words) == ("planes-stacked:DR", {"others": "MS, MN"})


@pytest.mark.parametrize("pitch", ["2:12", "21:12"])
def test_shingles_on_the_last_slope_that_a_rule_allows_are_no_finding(
    job_office: Office, shoot: Shoot, pitch: str
) -> None:
    assert dormer_shingled(pitch)(job_office, shoot).finding_ids() == set()


def test_a_slope_that_was_not_shingled_is_no_finding(job_office: Office) -> None:
    assert job_office.changed("roof.planes.DR.pitch", "1:12").finding_ids() == set()


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
    """Whole bundles are bought, but what was laid covers by the square foot: 3.25 of 32.8 are 106.6."""
    figures = job_office.changed("bought.SHINGLES.delivered", "5-3/4").closeout().figures
    assert (figures["bought.SHINGLES.laid"].value, figures["takeoff.shingles.to_buy"].value) == (3.25, 4)
    assert job_office.finding_ids() == set()


@pytest.mark.parametrize(
    ("answer", "agreed", "covered", "late"),
    [
        ("agreed", "2026-03-16", "2026-03-16", False),
        ("agreed", "2026-03-17", "2026-03-16", True),
        ("declined", "2026-03-17", "2026-03-16", False),
        ("not asked", "2026-03-17", "2026-03-16", True),
    ],
)
def test_what_was_covered_was_agreed_by_then(
    job_office: Office, answer: str, agreed: str, covered: str, late: bool
) -> None:
    job_office.changed("found.F1.answer", answer).changed("found.F1.on", agreed)
    job_office.changed("found.F1.covered_on", covered)
    assert job_office.finding_ids() == ({"permission-late:F1"} if late else set())


def test_what_was_only_seen_and_covered_again_needed_no_leave(job_office: Office) -> None:
    job_office.changed("found.F1.answer", "not asked").changed("found.F1.covered_on", "2026-03-17")
    job_office.replaced("    done: Sheets S1 to S4 replaced, rafter stiffened.\n", "")
    assert job_office.finding_ids() == set()


def test_late_leave_shows_both_days(job_office: Office, shoot: Shoot) -> None:
    (finding,) = CASES["permission-late:F1"](job_office, shoot).closeout().findings
    assert finding.words == {"agreed": "2026-03-16", "covered": "2026-03-15"}


@pytest.mark.parametrize("text", [ON, OFF, POINT])
def test_a_job_that_goes_on_may_still_have_it_open(job_office: Office, text: str) -> None:
    job_office.added(text)
    assert len(job_office.finding_ids()) == 1
    assert job_office.changed("job.status", "under way").finding_ids() == set()


@pytest.mark.parametrize(
    "text",
    [
        ON.replace("2026-03-16", "2026-03-16, taken_off: 2026-03-17"),
        OFF.replace("not yet", "set as it was"),
        POINT.replace("shingle.", "shingle., done_on: 2026-03-19"),
    ],
)
def test_what_was_brought_to_an_end_is_no_finding(job_office: Office, text: str) -> None:
    assert job_office.added(text).finding_ids() == set()


def test_an_explanation_of_nothing_is_refused_with_the_nearest_id(job_office: Office) -> None:
    job_office.changed("roof.edges.E1.measured", "17 ft 9 in")
    job_office.added('explained: {"edge-lenght:E1": taped over the gutter}')
    (problem,) = job_office.problems()
    assert (problem.code, problem.found, problem.values["nearest"]) == (
        "unknown-finding",
        "edge-lenght:E1",
        "edge-length:E1",
    )
    assert (problem.line, problem.column) == job_office.place("explained.edge-lenght:E1", key=True)


def test_an_explanation_that_outlived_its_finding_is_refused(job_office: Office) -> None:
    job_office.added('explained: {"edge-length:E1": taped over the gutter}')
    assert [problem.code for problem in job_office.problems()] == ["unknown-finding"]


@pytest.mark.parametrize("id", ["correction-photo-early:I1", "way-out-photo-early:deck-nail-field-spacing"])
def test_the_day_of_a_photo_that_may_be_the_offices_is_not_told(
    job_office: Office, shoot: Shoot, id: str
) -> None:
    found = {finding.id: finding for finding in CASES[id](job_office, shoot).closeout().findings}
    days = " ".join(found[id].words.values())
    assert days
    assert "2026-03-16" not in days
