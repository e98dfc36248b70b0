"""Whole roofs in a record: their planes, edges and places come out as when each plane is taped."""

import math
from collections import defaultdict
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path

import pytest

from packet.closeout.model import Closeout
from packet.figure import Figure
from packet.text import figure_text, load_words
from packet.workspace import packaged
from tests.conftest import SMALLEST
from tests.support.office import Office, demo_text

F = Fraction
FLOAT = 1e-9

GABLE = "{id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 48 ft, depth: 28 ft, pitch: 5:12, planes: {front: {id: GS}, back: {id: GN, title: back of the house}}}"
HIP = "{id: MAIN, form: hip, front: south, at: [0 ft, 0 ft], length: 48 ft, depth: 28 ft, pitch: 6:12, planes: {front: {id: HS}, right: {id: HE}, back: {id: HN}, left: {id: HW}}}"
SHED = "{id: MAIN, form: shed, front: south, at: [0 ft, 0 ft], length: 20 ft, depth: 12 ft, pitch: 3:12, top: headwall, planes: {front: {id: SH}}}"
WING = "{id: WING, form: wing, joins: MAIN, side: front, starts: 6 ft, width: 16 ft, out: 9 ft, planes: {left: {id: WW}, right: {id: WE}}}"

#: The demo house by its form: the planes MS, MN, WW and WE are taped one by one in the record.
DEMO_FORMS = """\
[{id: MAIN, form: hip, front: south, at: [0 ft, 0 ft], length: 44 ft, depth: 24 ft, pitch: 6:12, gable_end: left,
      planes: {front: {id: MS, title: "front, south"}, back: {id: MN}, right: {id: WE}}},
     {id: WING, form: wing, joins: MAIN, side: front, starts: 20 ft, width: 24 ft, out: 16 ft,
      planes: {left: {id: WW}, right: {id: WE}}}]"""


def with_roof(folder: Path, forms: str, more: str = "") -> Office:
    return Office(folder / "office", f"{SMALLEST}roof:\n  eave_height: 10 ft\n  forms: {forms}\n{more}")


def value(figures: Mapping[str, Figure], id: str) -> float:
    return float(figures[id].value)


def edge_lengths(closeout: Closeout) -> dict[str, list[float]]:
    assert closeout.geometry
    found: dict[str, list[float]] = defaultdict(list)
    for edge in closeout.geometry.edges:
        found[edge.kind].append(edge.length_ft)
    return {kind: sorted(each) for kind, each in found.items()}


def test_a_gable_by_hand(tmp_path: Path) -> None:
    """14 ft of run at 5 in 12: 13 up the slope for 12, and 5 ft 10 in of rise."""
    figures = with_roof(tmp_path, f"[{GABLE}]").closeout().figures
    assert value(figures, "plane.GS.area") == pytest.approx(48 * 14 * 13 / 12, rel=FLOAT)
    assert value(figures, "plane.GN.plan_area") == 48 * 14
    assert value(figures, "roof.gross_area") == pytest.approx(1456, rel=FLOAT)
    assert value(figures, "edge.GS-GN.length") == 48
    assert value(figures, "edges.rake.length") == pytest.approx(4 * 14 * 13 / 12, rel=FLOAT)
    assert value(figures, "edges.eave.length") == 96
    assert figures["roof.ridge_height"].value == 10 + F(35, 6)
    assert figures["roof.mean_height"].value == 10 + F(35, 12)


def test_edges_are_named_after_the_planes_that_meet(tmp_path: Path) -> None:
    closeout = with_roof(tmp_path, f"[{HIP}, {WING}]").closeout()
    assert closeout.geometry
    assert {edge.id: edge.kind for edge in closeout.geometry.edges} == {
        "HS-EAVE-1": "eave",
        "HS-EAVE-2": "eave",
        "HE-EAVE": "eave",
        "HN-EAVE": "eave",
        "HW-EAVE": "eave",
        "WW-EAVE": "eave",
        "WE-EAVE": "eave",
        "WW-RAKE": "rake",
        "WE-RAKE": "rake",
        "HS-HE": "hip",
        "HS-HW": "hip",
        "HN-HE": "hip",
        "HN-HW": "hip",
        "HS-HN": "ridge",
        "WW-WE": "ridge",
        "HS-WW": "valley",
        "HS-WE": "valley",
    }


def test_the_demo_house_is_the_same_by_its_form_and_plane_by_plane(tmp_path: Path) -> None:
    typed = Office(tmp_path / "typed", demo_text()).closeout()
    office = Office(tmp_path / "forms", demo_text())
    start, end = (
        office.text.index("  planes:\n    - {id: MS,"),
        office.text.index("    - {id: DR, title: dormer roof"),
    )
    office.write(f"{office.text[:start]}  forms: {DEMO_FORMS}\n  planes:\n{office.text[end:]}")
    start, end = office.text.index("    - {id: E1, kind: valley"), office.text.index("    - {id: E13,")
    closeout = office.write(office.text[:start] + office.text[end:]).closeout()
    assert typed.geometry
    assert closeout.geometry
    for plane in ("MS", "MN", "WW", "WE"):
        for of in ("area", "plan_area"):
            id = f"plane.{plane}.{of}"
            assert value(closeout.figures, id) == pytest.approx(value(typed.figures, id), rel=FLOAT)
    totals = [
        "roof.area",
        "roof.gross_area",
        "roof.plan_area",
        "roof.ridge_height",
        "roof.mean_height",
        "work.share",
    ]
    for id in (*totals, *(f"edges.{kind}.length" for kind in ("eave", "rake", "ridge", "hip", "valley"))):
        assert value(closeout.figures, id) == pytest.approx(value(typed.figures, id), rel=FLOAT), id
    assert edge_lengths(closeout) == {kind: pytest.approx(each) for kind, each in edge_lengths(typed).items()}
    for mine, other in ((closeout.geometry, typed.geometry), (typed.geometry, closeout.geometry)):
        seen = {plane.id: set(plane.outline) for plane in other.planes}
        assert {plane.id: set(plane.outline) for plane in mine.planes} == seen
    assert {p.id: (p.facing, p.pitch, p.worked, p.part_worked) for p in closeout.geometry.planes} == {
        p.id: (p.facing, p.pitch, p.worked, p.part_worked) for p in typed.geometry.planes
    }
    assert closeout.geometry.areas == typed.geometry.areas
    assert closeout.geometry.marks == typed.geometry.marks


FRONTS = {
    "south": ("south", "east", "north", "west"),
    "south-west": ("south-west", "south-east", "north-east", "north-west"),
    "west": ("west", "south", "east", "north"),
    "north-west": ("north-west", "south-west", "south-east", "north-east"),
    "north": ("north", "west", "south", "east"),
    "north-east": ("north-east", "north-west", "south-west", "south-east"),
    "east": ("east", "north", "west", "south"),
    "south-east": ("south-east", "north-east", "north-west", "south-west"),
}


@pytest.mark.parametrize("front", FRONTS)
def test_turning_the_house_changes_no_area_and_no_length(tmp_path: Path, front: str) -> None:
    """Its planes look the other way, in the same order: front, right, back, left."""
    closeout = with_roof(tmp_path, f"[{HIP.replace('front: south', f'front: {front}')}, {WING}]").closeout()
    still = with_roof(tmp_path / "still", f"[{HIP}, {WING}]").closeout()
    assert {id: f.value for id, f in closeout.figures.items()} == {
        id: f.value for id, f in still.figures.items()
    }
    assert closeout.geometry
    assert still.geometry
    facing = {plane.id: plane.facing for plane in closeout.geometry.planes}
    assert tuple(facing[id] for id in ("HS", "HE", "HN", "HW")) == FRONTS[front]
    assert (facing["WW"], facing["WE"]) == (FRONTS[front][3], FRONTS[front][1])
    for plane, same in zip(closeout.geometry.planes, still.geometry.planes, strict=True):
        for (ax, ay), (bx, by) in zip(plane.outline, same.outline, strict=True):
            assert math.hypot(ax, ay) == pytest.approx(math.hypot(bx, by), abs=1e-9)  # turned about "at"
    assert edge_lengths(closeout) == {kind: pytest.approx(each) for kind, each in edge_lengths(still).items()}


def test_the_place_of_a_form_moves_all_of_it(tmp_path: Path) -> None:
    moved = (
        with_roof(tmp_path, f"[{GABLE.replace('[0 ft, 0 ft]', '[-3 ft, 7 ft 6 in]')}]").closeout().geometry
    )
    assert moved
    assert [plane.outline for plane in moved.planes] == [
        ((-3, 7.5), (45, 7.5), (45, 21.5), (-3, 21.5)),
        ((45, 35.5), (-3, 35.5), (-3, 21.5), (45, 21.5)),
    ]


@pytest.mark.parametrize(
    ("length", "shown", "depth", "half_ft"),
    [
        ("41 ft 7-5/16 in", "41′ 7 5/16″", "23 ft 11-1/16 in", F(4593, 384)),
        ("30 ft 1/16 in", "30′ 1/16″", "20 ft 15/16 in", F(3855, 384)),
        ("600 in", "50′", "19.5 ft", F(39, 4)),
    ],
)
def test_a_taped_measure_comes_back_as_it_was_taped(
    tmp_path: Path, length: str, shown: str, depth: str, half_ft: Fraction
) -> None:
    form = GABLE.replace("48 ft", length).replace("28 ft", depth)
    figures = with_roof(tmp_path, f"[{form}]").closeout().figures
    words = load_words([packaged("shared")])
    for id in ("edge.GS-EAVE.length", "edge.GN-EAVE.length", "edge.GS-GN.length"):
        assert figure_text(vars(figures[id]), words) == shown
    working = figures["plane.GS.area"].working
    assert working
    assert [term.value for term in working.terms if term.symbol == "run_ft"] == [half_ft]


def test_a_shed_against_a_wall_has_a_headwall_and_a_free_one_a_ridge(tmp_path: Path) -> None:
    wall = with_roof(tmp_path / "wall", f"[{SHED}]").closeout()
    free = with_roof(tmp_path / "free", f"[{SHED.replace('headwall', 'ridge')}]").closeout()
    assert edge_lengths(wall)["headwall"] == [20]
    assert "ridge" not in edge_lengths(wall)
    assert edge_lengths(free)["ridge"] == [20]
    assert value(wall.figures, "plane.SH.area") == pytest.approx(20 * 12 * math.sqrt(17) / 4, rel=FLOAT)


def test_each_plane_takes_the_pitch_that_is_its_own(tmp_path: Path) -> None:
    """A hip end, the sides, a wing that has its own and one that has the main roof's."""
    form = HIP.replace("pitch: 6:12", "pitch: 6:12, end_pitch: 8:12")
    steeper = WING.replace("out: 9 ft", "out: 9 ft, pitch: 7:12")
    like = WING.replace("WING", "BACK").replace("front", "back").replace("WW", "BW").replace("WE", "BE")
    figures = with_roof(tmp_path, f"[{form}, {steeper}, {like}]").closeout().figures
    origins = {
        plane: next(t.origin.ref for t in figures[f"plane.{plane}.area"].working.terms if t.symbol == "rise")  # type: ignore[union-attr]
        for plane in ("HS", "HE", "WW", "BE")
    }
    assert origins == {
        "HS": "roof.forms.MAIN.pitch",
        "HE": "roof.forms.MAIN.end_pitch",
        "WW": "roof.forms.WING.pitch",
        "BE": "roof.forms.MAIN.pitch",
    }
    # the ends reach 7 ft of rise after 10 ft 6 in; the wing's ridge, 4 ft 8 in high, runs 9 ft 4 in in
    assert value(figures, "plane.HE.plan_area") == pytest.approx(28 * 10.5 / 2, rel=FLOAT)
    assert value(figures, "plane.WW.plan_area") == pytest.approx((9 + 9 + 28 / 3) / 2 * 8, rel=FLOAT)
    assert value(figures, "plane.BE.plan_area") == pytest.approx((9 + 17) / 2 * 8, rel=FLOAT)


def test_an_edge_of_a_form_as_taped_is_held_against_the_computed_one(tmp_path: Path) -> None:
    """The hip runs 14 ft at 6 in 12: 14 x sqrt(2.25) = 21 ft."""
    taped = "  taped: {HS-HE: 20 ft 9-1/2 in, HS-HW: 21 ft 2 in, HW-EAVE: 27 ft 8 in}\n"
    closeout = with_roof(tmp_path, f"[{HIP}]", taped).closeout()
    assert value(closeout.figures, "edge.HS-HE.length") == pytest.approx(21, rel=FLOAT)
    assert [(f.id, f.figures) for f in closeout.findings] == [
        ("edge-length:HW-EAVE", ("edge.HW-EAVE.length", "roof.taped.HW-EAVE"))
    ]


def test_two_forms_stand_side_by_side(tmp_path: Path) -> None:
    shed = SHED.replace("MAIN", "LEAN").replace("[0 ft, 0 ft]", "[60 ft, 0 ft]")
    figures = with_roof(tmp_path, f"[{GABLE}, {shed}]").closeout().figures
    assert value(figures, "roof.plan_area") == 48 * 28 + 20 * 12


@pytest.mark.parametrize(
    ("main", "wing", "expected"),
    [
        ("{id: WE, title: east}", "{id: WE}", "east"),
        ("{id: WE}", "{id: WE, title: wing}", "wing"),
        ("{id: WE, title: a}", "{id: WE, title: b}", "a"),
    ],
)
def test_a_plane_of_two_forms_has_the_title_that_either_gives_it(
    tmp_path: Path, main: str, wing: str, expected: str
) -> None:
    forms = DEMO_FORMS.replace("{id: WE}}},", f"{main}}}}},").replace("{id: WE}}}]", f"{wing}}}}}]")
    closeout = with_roof(tmp_path, forms).closeout()
    assert closeout.geometry
    assert {plane.title for plane in closeout.geometry.planes if plane.id == "WE"} == {expected}
    working = closeout.figures["plane.WE.area"].working
    assert working
    assert {term.origin.ref for term in working.terms} == {"MAIN", "roof.forms.MAIN.pitch"}


@pytest.mark.parametrize("front", ["south", "north-west"])
def test_a_plane_without_a_title_is_called_by_the_way_it_looks(tmp_path: Path, front: str) -> None:
    form = GABLE.replace("front: south", f"front: {front}")
    geometry = with_roof(tmp_path, f"[{form}]").closeout().geometry
    assert geometry
    assert [(plane.id, plane.title) for plane in geometry.planes] == [
        ("GS", front),
        ("GN", "back of the house"),
    ]
