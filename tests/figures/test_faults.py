"""What is wrong with the shape of a roof: one problem each, at its line and column, all at once."""

from collections.abc import Callable
from pathlib import Path

import pytest

from packet.problems import Problem
from tests.figures.test_forms_on_pages import DEMO_FORMS, GABLE, HIP, WING, with_roof
from tests.support.office import Office

Change = Callable[[Office], Office]
BOWTIE = "[[0 ft, 0 ft], [5 ft, 4 ft], [5 ft, 0 ft], [0 ft, 6 ft]]"
WIDE = "[[0 ft, 0 ft], [33 ft, 0 ft], [33 ft, 4 ft], [0 ft, 4 ft]]"
LINE = "[[0 ft, 0 ft], [5 ft, 0 ft], [3 ft, 0 ft]]"
#: Both halves are 8 sq ft, one of them the other way round: the shoelace sum is nothing.
EVEN_BOWTIE = "[[0 ft, 0 ft], [8 ft, 4 ft], [8 ft, 0 ft], [0 ft, 4 ft]]"
#: Half a square inch, and no side of it crosses another.
SPECK = "[[0 ft, 0 ft], [1 in, 0 ft], [1 in, 1 in]]"
OUTLINED = (
    "{id: PL, title: porch, shape: outline, pitch: 4:12, facing: south, at: [0 ft, -40 ft],"
    " outline: [[0 ft, 0 ft], [8 ft, 0 ft], [8 ft, 6 ft], [0 ft, 6 ft]]}"
)


def set_to(path: str, value: str) -> Change:
    return lambda office: office.changed(path, value)


def with_porch(office: Office) -> Office:
    """Add a plane taped corner by corner to the demo roof, clear of the house."""
    return office.replaced("    - {id: DR, title:", f"    - {OUTLINED}\n    - {{id: DR, title:")


#: A wing on the other side of the house, whose right plane lies in one plane with the left of the first.
ACROSS = WING.replace("id: WING", "id: ACROSS").replace(
    "side: front, starts: 6 ft", "side: back, starts: 26 ft"
)
ACROSS = ACROSS.replace("left: {id: WW}, right: {id: WE}", "left: {id: AL}, right: {id: WW}")


GARAGE = "{id: GARAGE, form: gable, front: south, at: [-18 ft, 8 ft], length: 18 ft, depth: 16 ft, pitch: 5:12, planes: {front: {id: GF}, back: {id: GN}}}"


def porch(path: str, value: str) -> Change:
    return lambda office: with_porch(office).changed(f"roof.planes.PL.{path}", value)


#: What is written, the code, the path that is pointed at, and what is named.
SLIPS: dict[str, tuple[Change, str, str, str]] = {
    "area that crosses itself": (
        set_to("covering.areas.A1.outline", BOWTIE),
        "outline-crosses",
        "covering.areas.A1.outline",
        "A1",
    ),
    "area that crosses itself in two halves": (
        set_to("covering.areas.A1.outline", EVEN_BOWTIE),
        "outline-crosses",
        "covering.areas.A1.outline",
        "A1",
    ),
    "area of half a square inch": (
        set_to("covering.areas.A2.outline", SPECK),
        "outline-empty",
        "covering.areas.A2.outline",
        "A2",
    ),
    "two areas on each other": (
        set_to("covering.areas", "[{id: A1, plane: MS}, {id: A2, plane: MS}]"),
        "areas-overlap",
        "covering.areas.A2.plane",
        "A2",
    ),
    "area that holds nothing": (
        set_to("covering.areas.A2.outline", LINE),
        "outline-empty",
        "covering.areas.A2.outline",
        "A2",
    ),
    "area past its plane": (
        set_to("covering.areas.A1.outline", WIDE),
        "area-outside-plane",
        "covering.areas.A1.outline",
        "A1",
    ),
    "plane that crosses itself": (
        porch("outline", BOWTIE),
        "outline-crosses",
        "roof.planes.PL.outline",
        "PL",
    ),
    "plane that holds nothing": (
        porch("outline", LINE),
        "outline-empty",
        "roof.planes.PL.outline",
        "PL",
    ),
    "plane over another": (porch("at", "[2 ft, 3 ft]"), "planes-overlap", "roof.planes.PL.at", "PL"),
    "sides that do not meet": (
        set_to("roof.edges.E1.sides", "[MS.right, WW.right]"),
        "edge-apart",
        "roof.edges.E1.sides",
        "MS.right and WW.right",
    ),
    "length taped of no edge": (
        lambda office: office.changed("roof.taped", "{MS-WW: 18 ft}"),
        "unknown-edge",
        "roof.taped.MS-WW",
        "MS-WW",
    ),
}


def only(office: Office) -> Problem:
    (problem,) = office.problems()
    return problem


@pytest.mark.parametrize(("change", "code", "path", "found"), SLIPS.values(), ids=SLIPS.keys())
def test_a_wrong_shape_is_told_at_its_place(
    job_office: Office, change: Change, code: str, path: str, found: str
) -> None:
    problem = only(change(job_office))
    key = code == "unknown-edge"
    assert (problem.code, problem.found) == (code, found)
    assert (problem.line, problem.column) == job_office.place(path, key=key)


@pytest.mark.parametrize(
    ("north", "overlaps"), [("-5 ft 8 in", False), ("-5 ft 4 in", False), ("-5 ft", True)]
)
def test_planes_may_overlap_by_the_error_of_two_tapes(job_office: Office, north: str, overlaps: bool) -> None:
    """The porch runs 6 / sqrt(1 + 1/9) = 5.69 ft: 0.02, 0.36 and 0.69 ft deep into the front slope."""
    with_porch(job_office).changed("roof.planes.PL.at", f"[2 ft, {north}]")
    if overlaps:
        problem = only(job_office)
        assert (problem.code, problem.values["other"]) == ("planes-overlap", "MS")
        assert problem.values["area"] == "5.5 sq ft"  # 8 ft by 0.692 ft
    else:
        assert job_office.closeout()


def test_a_plane_at_a_height_of_its_own_may_stand_over_another(job_office: Office) -> None:
    office = porch("at", "[2 ft, 3 ft]")(job_office).changed("roof.planes.PL.eave_height", "14 ft")
    assert "plane.PL.area" in office.closeout().figures


def test_a_dormer_lies_in_its_opening_and_not_past_it(job_office: Office) -> None:
    assert job_office.closeout()
    problem = only(job_office.changed("roof.openings.O1.along", "8 ft"))
    assert (problem.code, problem.found) == ("planes-overlap", "DR")


@pytest.mark.parametrize(("at", "apart"), [("[20 ft, 2 in]", None), ("[20 ft, 4 in]", "0.33 ft")])
def test_sides_of_one_edge_may_be_as_far_apart(job_office: Office, at: str, apart: str | None) -> None:
    """Two inches are the error of two taped ends; four are not."""
    job_office.changed("roof.planes.WW.at", at)
    if apart is None:
        assert job_office.closeout()
    else:
        problems = job_office.problems()
        assert {problem.code for problem in problems} == {"edge-apart"}
        assert {problem.values["apart"] for problem in problems} == {apart}
        assert {problem.at for problem in problems} == {"roof.edges[0].sides", "roof.edges[3].sides"}


def test_every_wrong_shape_of_a_file_is_told_at_once(job_office: Office) -> None:
    """Not only the first, and beside what other checks find."""
    office = with_porch(job_office).changed("roof.planes.PL.at", "[2 ft, 3 ft]")
    office.changed("covering.areas.A1.outline", WIDE).changed("covering.areas.A2.outline", BOWTIE)
    office.changed("roof.edges.E1.sides", "[MS.right, WW.right]")
    office.changed("dates.finished", "2026-03-16")
    expected = {
        "planes-overlap": "roof.planes.PL.at",
        "area-outside-plane": "covering.areas.A1.outline",
        "outline-crosses": "covering.areas.A2.outline",
        "edge-apart": "roof.edges.E1.sides",
        "dates-out-of-order": "dates.finished",
    }
    assert office.places() == sorted(
        ("job.yaml", code, *office.place(path)) for code, path in expected.items()
    )


# Forms

L_FORMS = f"[{HIP}, {WING.replace('starts: 6 ft', 'starts: 32 ft')}]"


def pieces(old: str, new: str, forms: str = f"[{HIP}, {WING}]") -> str:
    assert forms.count(old) == 1
    return forms.replace(old, new)


#: Forms, the code, the path that is pointed at, and what is named.
FORMS: dict[str, tuple[str, str, str, str]] = {
    "wing at a gable": (
        f"[{GABLE}, {WING.replace('side: front', 'side: left')}]",
        "wing-side",
        "roof.forms.WING.side",
        "left",
    ),
    "wing past the eave": (
        pieces("starts: 6 ft", "starts: 33 ft"),
        "wing-past-eave",
        "roof.forms.WING.side",
        "front",
    ),
    "wing above the ridge": (
        pieces("width: 16 ft", "width: 29 ft"),
        "wing-too-high",
        "roof.forms.WING.side",
        "front",
    ),
    "one plane for two roofs that stand apart": (
        f"[{GABLE}, {GARAGE}]",
        "plane-of-two-roofs",
        "roof.forms.GARAGE.planes.back.id",
        "GN",
    ),
    "one id for two planes that do not meet": (
        f"[{GABLE}, {WING}, {ACROSS}]",
        "plane-in-pieces",
        "roof.forms.WING.planes.left.id",
        "WW",
    ),
    "one plane under two ids": (L_FORMS, "planes-are-one", "roof.forms.WING.planes.right.id", "WE"),
    "one id for two planes": (
        pieces("right: {id: WE}", "right: {id: HE}"),
        "not-one-plane",
        "roof.forms.MAIN.planes.right.id",
        "HE",
    ),
}


@pytest.mark.parametrize(("forms", "code", "path", "found"), FORMS.values(), ids=FORMS.keys())
def test_a_form_that_makes_no_roof_is_told_at_its_place(
    tmp_path: Path, forms: str, code: str, path: str, found: str
) -> None:
    office = with_roof(tmp_path, forms)
    problem = only(office)
    assert (problem.code, problem.found) == (code, found)
    assert (problem.line, problem.column) == office.place(path)


def test_a_wing_within_another_is_told_to_stand_across_it(tmp_path: Path) -> None:
    inner = (
        WING.replace("WING", "INNER").replace("WW", "IW").replace("WE", "IE").replace("width: 16", "width: 8")
    )
    office = with_roof(tmp_path, f"[{HIP}, {WING}, {inner}]")
    problem = only(office)
    assert (problem.code, problem.found, problem.values["other"]) == ("wings-overlap", "INNER", "WING")
    assert (problem.line, problem.column) == office.place("roof.forms.INNER.starts")
    assert office.changed("roof.forms.INNER.starts", "22 ft").closeout()  # beside it, on the one hand
    office.changed("roof.forms.WING.starts", "14 ft").changed("roof.forms.INNER.starts", "6 ft")
    assert office.closeout()  # and on the other


def test_a_wing_that_fits_nowhere_is_not_said_to_stand_across_another_as_well(tmp_path: Path) -> None:
    inner = (
        WING.replace("WING", "INNER")
        .replace("WW", "IW")
        .replace("WE", "IE")
        .replace("side", "pitch: 60:12, side")
    )
    office = with_roof(tmp_path, f"[{HIP}, {inner}, {WING}]")
    assert office.places() == [("job.yaml", "wing-too-high", *office.place("roof.forms.INNER.side"))]
    office = with_roof(tmp_path / "turned", f"[{HIP}, {WING}, {inner}]")
    assert office.places() == [("job.yaml", "wing-too-high", *office.place("roof.forms.INNER.side"))]


def test_of_two_wings_on_one_side_the_wrong_one_is_named_and_two_wrong_ones_both(tmp_path: Path) -> None:
    other = (
        WING.replace("WING", "OTHER")
        .replace("WW", "OW")
        .replace("WE", "OE")
        .replace("starts: 6", "starts: 40")
    )
    office = with_roof(tmp_path, f"[{HIP}, {WING}, {other}]")
    assert office.places() == [("job.yaml", "wing-past-eave", *office.place("roof.forms.OTHER.side"))]
    office.changed("roof.forms.WING.pitch", '"20:12"')
    assert office.places() == sorted(
        [
            ("job.yaml", "wing-past-eave", *office.place("roof.forms.OTHER.side")),
            ("job.yaml", "wing-too-high", *office.place("roof.forms.WING.side")),
        ]
    )


def test_forms_apart_are_each_told(tmp_path: Path) -> None:
    """A gable with a wing at its end, and an L whose corner plane has two names."""
    second = (
        L_FORMS[1:-1]
        .replace("MAIN", "FAR")
        .replace("WING", "ELL")
        .replace("at: [0 ft, 0 ft]", "at: [99 ft, 0 ft]")
    )
    first = f"{GABLE}, {WING.replace('side: front', 'side: left').replace('WW', 'XW').replace('WE', 'XE')}"
    office = with_roof(tmp_path, f"[{first}, {second}]")
    assert office.places() == sorted(
        [
            ("job.yaml", "planes-are-one", *office.place("roof.forms.ELL.planes.right.id")),
            ("job.yaml", "wing-side", *office.place("roof.forms.WING.side")),
        ]
    )


def test_a_length_taped_of_no_edge_of_a_form_is_told_with_the_edges_there_are(tmp_path: Path) -> None:
    office = with_roof(tmp_path, f"[{GABLE}]", "  taped: {GS-GN: 48 ft, GS-RIDGE: 48 ft}\n")
    problem = only(office)
    assert (problem.code, problem.found) == ("unknown-edge", "GS-RIDGE")
    assert problem.values["accepted"].split(", ")[:2] == ["GS-EAVE", "GS-RAKE-1"]
    assert (problem.line, problem.column) == office.place("roof.taped.GS-RIDGE", key=True)


PORCH = "  planes: [{id: PO, title: porch, shape: rectangle, lower: 10 ft, run: 6 ft, pitch: 3:12, facing: south, at: [4 ft, -6 ft]}]\n"


@pytest.mark.parametrize(
    ("side", "known"), [("GS.1", True), ("GS.4", True), ("GS.5", False), ("GS.0", False)]
)
def test_a_side_of_a_form_is_named_by_its_number(tmp_path: Path, side: str, known: bool) -> None:
    """A porch that meets the main eave, side 1 of its plane, may be one edge with it."""
    edge = f"  edges: [{{id: PE, kind: pitch break, sides: [{side}]}}]\n"
    office = with_roof(tmp_path, f"[{GABLE}]", PORCH + edge)
    if known:
        length = {"GS.1": 48, "GS.4": 14 * 13 / 12}[side]
        assert float(office.closeout().figures["edge.PE.length"].value) == pytest.approx(length)
    else:
        problem = only(office)
        assert (problem.code, problem.found) == ("unknown-side", side)
        assert (problem.line, problem.column) == office.place("roof.edges.PE.sides")


@pytest.mark.parametrize("side", ["GS.lower", "GS"])
def test_a_side_of_a_form_without_its_number_is_answered_with_how_they_are_numbered(
    tmp_path: Path, side: str
) -> None:
    edge = f"  edges: [{{id: PE, kind: pitch break, sides: [PO.upper, {side}]}}]\n"
    office = with_roof(tmp_path, f"[{GABLE}]", PORCH + edge)
    problem = only(office)
    assert (problem.code, problem.found) == ("unknown-id", side)
    numbered = "a side of GS by number, counterclockwise from its lowest edge, as GS.1"
    assert problem.values["accepted"] == numbered
    assert (problem.line, problem.column) == office.place("roof.edges.PE.sides.1")


def test_a_taped_edge_may_not_take_the_name_of_an_edge_of_a_form(tmp_path: Path) -> None:
    edge = "  edges: [{id: GS-EAVE, kind: pitch break, sides: [PO.upper]}]\n"
    office = with_roof(tmp_path, f"[{GABLE}]", PORCH + edge)
    assert office.places() == [("job.yaml", "duplicate-id", *office.place("roof.edges.GS-EAVE.id"))]


def test_a_taped_plane_over_a_form_is_told_at_the_taped_one(tmp_path: Path) -> None:
    office = with_roof(tmp_path, f"[{GABLE}]", PORCH).changed("roof.planes.PO.at", "[4 ft, -5 ft]")
    problem = only(office)
    assert (problem.code, problem.found) == ("planes-overlap", "PO")
    assert (problem.values["other"], problem.values["area"]) == ("GS", "10.0 sq ft")
    assert (problem.line, problem.column) == office.place("roof.planes.PO.at")


def test_where_a_form_is_wrong_what_rests_on_it_waits(job_office: Office) -> None:
    """Its planes are not known, so that an area on one of them can't be held against it."""
    start = job_office.text.index("  planes:\n    - {id: MS,")
    end = job_office.text.index("    - {id: DR, title: dormer roof")
    wrong = DEMO_FORMS.replace("width: 24 ft", "width: 25 ft")
    job_office.write(f"{job_office.text[:start]}  forms: {wrong}\n  planes:\n{job_office.text[end:]}")
    start, end = (
        job_office.text.index("    - {id: E1, kind: valley"),
        job_office.text.index("    - {id: E13,"),
    )
    job_office.write(job_office.text[:start] + job_office.text[end:])
    job_office.changed("covering.areas.A1.outline", WIDE).changed("covering.areas.A2.outline", BOWTIE)
    assert job_office.places() == sorted(
        [
            ("job.yaml", "outline-crosses", *job_office.place("covering.areas.A2.outline")),
            ("job.yaml", "wing-past-eave", *job_office.place("roof.forms.WING.side")),
        ]
    )
