"""Forms that lack a plane, name one too many or join nothing, at the place to edit."""

from pathlib import Path

import pytest

from packet.problems import Problem
from tests.figures.test_forms_on_pages import GABLE, HIP, SHED, WING, with_roof
from tests.support.office import Office


def only(office: Office) -> Problem:
    (problem,) = office.problems()
    return problem


@pytest.mark.parametrize(
    ("form", "found", "accepted"),
    [
        (HIP.replace("right: {id: HE}, ", ""), "right", "front, right, back, left"),
        (HIP.replace(", left: {id: HW}", ""), "left", "front, right, back, left"),
        (HIP.replace("pitch: 6:12", "pitch: 6:12, gable_end: left"), "left", "front, right, back"),
        (HIP.replace("pitch: 6:12", "pitch: 6:12, gable_end: right"), "right", "front, back, left"),
    ],
)
def test_a_hip_names_a_plane_for_each_eave_and_none_for_its_gable(
    tmp_path: Path, form: str, found: str, accepted: str
) -> None:
    office = with_roof(tmp_path, f"[{form}]")
    problem = only(office)
    assert (problem.code, problem.found, problem.values["accepted"]) == ("form-planes", found, accepted)
    assert (problem.line, problem.column) == office.place("roof.forms.MAIN.planes")


@pytest.mark.parametrize("gabled", ["left", "right"])
def test_a_hip_with_a_gable_end_needs_no_plane_there(tmp_path: Path, gabled: str) -> None:
    other = {"left": ", left: {id: HW}", "right": "right: {id: HE}, "}[gabled]
    form = HIP.replace(other, "").replace("pitch: 6:12", f"pitch: 6:12, gable_end: {gabled}")
    closeout = with_roof(tmp_path, f"[{form}]").closeout()
    assert closeout.figures["edges.rake.length"].value == pytest.approx(2 * 14 * 1.118034, rel=1e-6)
    assert closeout.figures["edge.HS-HN.length"].value == 48 - 14


def test_a_gable_has_no_plane_at_its_ends(tmp_path: Path) -> None:
    office = with_roof(tmp_path, f"[{GABLE.replace('front: {id: GS}', 'front: {id: GS}, left: {id: GW}')}]")
    problem = only(office)
    assert (problem.code, problem.at) == ("unknown-key", "roof.forms[0].planes.left")


@pytest.mark.parametrize(("joins", "accepted"), [("WING", "MAIN"), ("GS", "MAIN"), ("OTHER", "MAIN")])
def test_a_wing_joins_a_form_that_stands_by_itself(tmp_path: Path, joins: str, accepted: str) -> None:
    office = with_roof(tmp_path, f"[{GABLE}, {WING.replace('MAIN', joins)}]")
    problem = only(office)
    assert (problem.code, problem.found, problem.values["accepted"]) == ("wing-joins", joins, accepted)
    assert (problem.line, problem.column) == office.place("roof.forms.WING.joins")


def test_a_wing_alone_joins_nothing(tmp_path: Path) -> None:
    assert only(with_roof(tmp_path, f"[{WING}]")).values["accepted"] == "none"


@pytest.mark.parametrize("name", ["pitch", "end_pitch"])
def test_a_flat_form_is_taped_plane_by_plane(tmp_path: Path, name: str) -> None:
    office = with_roof(tmp_path, f"[{HIP}]").changed(f"roof.forms.MAIN.{name}", '"0:12"')
    assert office.places() == [("job.yaml", "out-of-range", *office.place(f"roof.forms.MAIN.{name}"))]


def test_a_flat_wing_is_refused_too(tmp_path: Path) -> None:
    office = with_roof(tmp_path, f"[{GABLE}, {WING}]").changed("roof.forms.WING.pitch", '"0:12"')
    assert office.places() == [("job.yaml", "out-of-range", *office.place("roof.forms.WING.pitch"))]


def test_a_roof_has_a_form_or_a_plane(tmp_path: Path) -> None:
    office = with_roof(tmp_path, "[]")
    assert [problem.code for problem in office.problems()] == ["roof-without-planes"]


@pytest.mark.parametrize(
    ("more", "path"),
    [
        ("found: [{id: GS, what: rot, answer: not asked}]\n", "found.0.id"),
        ("found: [{id: MAIN, what: rot, answer: not asked}]\n", "found.0.id"),
        ("found: [{id: GN, what: rot, answer: not asked}]\n", "found.0.id"),
    ],
)
def test_what_a_form_names_is_not_named_again(tmp_path: Path, more: str, path: str) -> None:
    office = with_roof(tmp_path, f"[{GABLE}]", more)
    assert office.places() == [("job.yaml", "duplicate-id", *office.place(path))]


def test_a_section_may_name_planes_of_a_form_and_no_other(tmp_path: Path) -> None:
    section = "  sections: [{id: SEC1, title: house, planes: [GS, GX]}]\n"
    office = with_roof(tmp_path, f"[{GABLE}]", section)
    problem = only(office)
    assert (problem.code, problem.found, problem.values["accepted"]) == ("unknown-id", "GX", "GN, GS")
    assert (problem.line, problem.column) == office.place("roof.sections.SEC1.planes.1")
    figures = office.changed("roof.sections.SEC1.planes", "[GS]").closeout().figures
    assert figures["section.SEC1.plan_area"].value == 48 * 14


def test_a_shed_says_what_its_top_is(tmp_path: Path) -> None:
    office = with_roof(tmp_path, f"[{SHED.replace(', top: headwall', '')}]")
    assert [(problem.code, problem.values["key"]) for problem in office.problems()] == [("missing", "top")]


def test_a_refused_form_is_not_said_to_be_missing_as_well(tmp_path: Path) -> None:
    office = with_roof(tmp_path, f"[{GABLE.replace('pitch: 5:12', 'pitch: steep')}, {WING}]")
    assert office.places() == [("job.yaml", "bad-pitch", *office.place("roof.forms.MAIN.pitch"))]


def test_mistakes_of_two_forms_are_told_at_once(tmp_path: Path) -> None:
    bad = HIP.replace(", left: {id: HW}", "")
    office = with_roof(
        tmp_path,
        f"[{bad}, {WING.replace('MAIN', 'NONE')}]",
        "found: [{id: HS, what: rot, answer: not asked}]\n",
    )
    assert sorted(problem.code for problem in office.problems()) == [
        "duplicate-id",
        "form-planes",
        "wing-joins",
    ]
