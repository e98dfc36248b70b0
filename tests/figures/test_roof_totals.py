"""Totals of sections and the roof: gross, net and in plan; heights; and that cutting a plane in two changes none."""

import math
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path

import pytest

from packet.closeout.model import Closeout
from packet.figure import Figure
from packet.record.forms import parts
from tests.conftest import SMALLEST
from tests.figures.test_forms_on_pages import DEMO_FORMS, GABLE, HIP, WING, with_roof
from tests.support.office import Office

F = Fraction

#: 14 ft of run at 5 in 12 is 15 ft 2 in up the slope.
PLANE_SQ_FT = 48 * 14 * 13 / 12
SECTIONS = (
    "  sections: [{id: FRONT, title: front, planes: [GS]}, {id: ALL, title: house, planes: [GN, GS]}]\n"
)


def value(figures: Mapping[str, Figure], id: str) -> float:
    return float(figures[id].value)


def opening(id: str, plane: str, along: str, up: str) -> str:
    return f"{{id: {id}, plane: {plane}, what: chimney, at: [10 ft, 2 ft], along: {along}, up: {up}}}"


def test_a_section_has_the_totals_of_its_planes(tmp_path: Path) -> None:
    figures = with_roof(tmp_path, f"[{GABLE}]", SECTIONS).closeout().figures
    for id, planes in (("section.FRONT", 1), ("section.ALL", 2), ("roof", 2)):
        assert value(figures, f"{id}.plan_area") == planes * 48 * 14
        assert value(figures, f"{id}.area") == pytest.approx(planes * PLANE_SQ_FT)
        assert value(figures, f"{id}.squares") == pytest.approx(planes * PLANE_SQ_FT / 100)
    working = figures["section.ALL.area"].working
    assert working
    assert [term.origin.ref for term in working.terms] == ["plane.GN.area", "plane.GS.area"]


def test_net_is_gross_without_the_large_openings(tmp_path: Path) -> None:
    """40 and 35 sq ft come off; 29 sq ft do not, whatever stands beside them."""
    openings = ", ".join(
        [
            opening("O1", "GS", "8 ft", "5 ft"),
            opening("O2", "GS", "7 ft", "5 ft"),
            opening("O3", "GS", "5 ft 9-5/8 in", "5 ft"),
            opening("O4", "GN", "2 ft", "3 ft"),
        ]
    )
    figures = with_roof(tmp_path, f"[{GABLE}]", f"  openings: [{openings}]\n{SECTIONS}").closeout().figures
    assert value(figures, "section.FRONT.gross_area") == pytest.approx(PLANE_SQ_FT)
    assert value(figures, "section.FRONT.area") == pytest.approx(PLANE_SQ_FT - 75)
    assert value(figures, "roof.gross_area") == pytest.approx(2 * PLANE_SQ_FT)
    assert value(figures, "roof.area") == pytest.approx(2 * PLANE_SQ_FT - 75)
    assert value(figures, "roof.gross_squares") == pytest.approx(2 * PLANE_SQ_FT / 100)
    assert value(figures, "roof.squares") == pytest.approx((2 * PLANE_SQ_FT - 75) / 100)
    assert value(figures, "roof.plan_area") == 48 * 28
    assert figures["plane.GS.net_area"].sources
    assert "plane.GN.net_area" not in figures


# Heights

PORCH = (
    "  planes: [{id: CUPOLA, title: cupola, shape: rectangle, lower: 6 ft, run: 4 ft, pitch: 6:12, facing: south,"
    " at: [20 ft, 8 ft]%s}]\n"
)


@pytest.mark.parametrize(
    ("own", "ridge_ft", "named"),
    [
        (", eave_height: 13 ft", 10 + F(35, 6), "roof.eave_height"),
        (", eave_height: 13 ft 10 in", 10 + F(35, 6), "roof.eave_height"),
        (", eave_height: 13 ft 11 in", 13 + F(11, 12) + 2, "roof.planes.CUPOLA.eave_height"),
    ],
)
def test_a_plane_with_an_eave_of_its_own_may_be_the_highest(
    tmp_path: Path, own: str, ridge_ft: Fraction, named: str
) -> None:
    """The gable tops out at 15 ft 10 in; the cupola 2 ft above its own eave."""
    figures = with_roof(tmp_path, f"[{GABLE}]", PORCH % own).closeout().figures
    assert figures["roof.ridge_height"].value == ridge_ft
    working = figures["roof.ridge_height"].working
    assert working
    assert next(t.origin.ref for t in working.terms if t.symbol == "eave_height_ft") == named
    assert figures["roof.mean_height"].value == (10 + ridge_ft) / 2


# One plane or two

TYPED = SMALLEST + "roof:\n  eave_height: 10 ft\n  planes:\n"
ENTRY = (
    "    - {{id: {id}, title: x, shape: rectangle, lower: {lower} in, run: {run} in, pitch: {pitch},"
    " facing: south, at: [{east} in, {north} in]{height}}}\n"
)


def typed(folder: Path, *planes: Mapping[str, object]) -> Closeout:
    text = "".join(ENTRY.format(**{"height": "", **plane}) for plane in planes)
    return Office(folder / "office", TYPED + text).closeout()


@pytest.mark.parametrize("cut_in", [1, F(1, 16), 100, F(4001, 16), 479])
@pytest.mark.parametrize("pitch", ["2:12", "6-1/2:12", "17:12"])
def test_cutting_a_plane_in_two_changes_no_total(tmp_path: Path, cut_in: Fraction, pitch: str) -> None:
    """A plane of 480 by 150 in, cut up the slope."""
    shared = {"run": 150, "pitch": pitch, "north": 0}
    whole = typed(tmp_path / "whole", {"id": "A", "lower": 480, "east": 0, **shared}).figures
    left = {"id": "A", "lower": float(cut_in), "east": 0, **shared}
    right = {"id": "B", "lower": float(480 - cut_in), "east": float(cut_in), **shared}
    halves = typed(tmp_path / "halves", left, right).figures
    rise = {"2:12": 2, "6-1/2:12": 6.5, "17:12": 17}[pitch]
    assert value(whole, "roof.area") == pytest.approx(500 * math.sqrt(1 + (rise / 12) ** 2), rel=1e-12)
    for id in ("area", "gross_area", "plan_area", "squares", "ridge_height", "mean_height"):
        assert value(halves, f"roof.{id}") == pytest.approx(value(whole, f"roof.{id}"), rel=1e-12), id


def test_an_outline_has_the_figures_of_the_shape_it_draws(tmp_path: Path) -> None:
    """A trapezoid of 20 and 32 ft over 12 ft of run at 9 in 12, taped corner by corner 15 ft up the slope."""
    head = f"{SMALLEST}roof:\n  eave_height: 10 ft\n  planes:\n    - {{id: A, title: x, pitch: 9:12, facing: south, at: [0 ft, 0 ft], "
    edges = "  edges:\n    - {{id: V, kind: valley, sides: [A.{}]}}\n    - {{id: T, kind: ridge, sides: [A.{}]}}\n"
    taped = "shape: trapezoid, lower: 20 ft, upper: 32 ft, upper_starts: 0 ft, run: 12 ft}\n" + edges.format(
        "right", "upper"
    )
    drawn = (
        "shape: outline, outline: [[0 ft, 0 ft], [20 ft, 0 ft], [32 ft, 15 ft], [0 ft, 15 ft]]}\n"
        + edges.format(2, 3)
    )
    for name, text in (("taped", taped), ("drawn", drawn)):
        closeout = Office(tmp_path / name, head + text).closeout()
        figures = closeout.figures
        assert value(figures, "plane.A.area") == pytest.approx(26 * 15), name
        assert value(figures, "plane.A.plan_area") == pytest.approx(26 * 12), name
        assert value(figures, "edge.V.length") == pytest.approx(math.sqrt(144 + 225)), name
        assert value(figures, "edge.T.length") == 32, name
        assert value(figures, "roof.ridge_height") == pytest.approx(10 + 9), name
        assert closeout.geometry
        assert closeout.geometry.planes[0].outline == (
            (0, 0),
            (20, 0),
            (32, pytest.approx(12)),
            (0, pytest.approx(12)),
        )


# Terms that a form gives

HIP_CORNERS = {
    "HS": [(0, 0), (48, 0), (34, 14), (14, 14)],
    "HN": [(0, 0), (48, 0), (34, 14), (14, 14)],
    "HE": [(0, 0), (28, 0), (14, 14)],
    "HW": [(0, 0), (28, 0), (14, 14)],
}
#: The demo house: a valley from (20, 0) to (32, 12), a hip from (32, 12) to (44, 24).
L_CORNERS = {
    "MS": [(0, 0), (20, 0), (32, 12), (0, 12)],
    "MN": [(0, 0), (44, 0), (44, 12), (12, 12)],
    "WW": [(0, 0), (16, 0), (16, 12), (-12, 12)],
    "WE": [(0, 0), (40, 0), (28, 12), (0, 12)],
}
#: A wing of 16 ft, 9 ft out, 6 ft from the corner of the hip: its ridge runs 8 ft in.
T_CORNERS = {
    **HIP_CORNERS,
    "HS": [(0, 0), (6, 0), (14, 8), (22, 0), (48, 0), (34, 14), (14, 14)],
    "WW": [(0, 0), (9, 0), (9, 8), (-8, 8)],
    "WE": [(0, 0), (9, 0), (17, 8), (0, 8)],
}

#: Lowest edge, upper edge and run [ft]; the front of the T has the wing's notch and is no trapezoid.
HIP_TRAPEZOIDS = {"HS": (48, 20, 14), "HN": (48, 20, 14), "HE": (28, 0, 14), "HW": (28, 0, 14)}
L_TRAPEZOIDS = {"MS": (20, 32, 12), "MN": (44, 32, 12), "WW": (16, 28, 12), "WE": (40, 28, 12)}
T_TRAPEZOIDS = {
    "HN": (48, 20, 14), "HE": (28, 0, 14), "HW": (28, 0, 14), "WW": (9, 17, 8), "WE": (9, 17, 8),
}  # fmt: skip


@pytest.mark.parametrize(
    ("forms", "corners", "trapezoids"),
    [
        (f"[{HIP}]", HIP_CORNERS, HIP_TRAPEZOIDS),
        (DEMO_FORMS, L_CORNERS, L_TRAPEZOIDS),
        (f"[{HIP}, {WING}]", T_CORNERS, T_TRAPEZOIDS),
    ],
    ids=["hip", "L", "T"],
)
def test_a_number_that_a_form_gives_is_a_measure_or_corner_of_its_plane(
    tmp_path: Path,
    forms: str,
    corners: Mapping[str, list[tuple[int, int]]],
    trapezoids: Mapping[str, tuple[int, int, int]],
) -> None:
    """Corners by hand; the plane is the figure's own, or the first of the planes an edge is named after.

    A plane that is a trapezoid or a triangle has both level edges and the run, any other its corners.
    """
    closeout = with_roof(tmp_path, forms).closeout()
    assert closeout.record.roof
    known = {form.id: {plane.id for _, plane in parts(form)} for form in closeout.record.roof.forms}
    seen = set()
    for figure in closeout.figures.values():
        terms = [t for t in figure.working.terms if t.origin.kind == "form"] if figure.working else []
        if not terms:
            continue
        seen.add(figure.id)
        kind, id, *_ = figure.id.split(".")
        if figure.id == "roof.ridge_height":
            assert [(t.symbol, t.value) for t in terms] == [
                ("run_ft", max(run for c in corners.values() for _, run in c))
            ]
            continue
        plane = id.split("-")[0]
        assert {t.origin.ref for t in terms} <= {form for form, planes in known.items() if plane in planes}
        if kind == "plane" and plane in trapezoids:
            level = zip(("lower_ft", "upper_ft", "run_ft"), trapezoids[plane], strict=True)
            assert [(t.symbol, t.value) for t in terms] == list(level), figure.id
            continue
        points = list(zip(terms[::2], terms[1::2], strict=True))
        assert all(u.symbol[1:] in (run.symbol[1:], run.symbol[3:]) for u, run in points)
        values = [(u.value, run.value) for u, run in points]
        if kind == "plane":
            assert values == corners[plane], figure.id
        else:
            sides = {
                frozenset(s)
                for s in zip(corners[plane], (*corners[plane][1:], corners[plane][0]), strict=True)
            }
            assert frozenset(values) in sides, figure.id
    assert {f"plane.{plane}.{of}" for plane in corners for of in ("area", "plan_area")} <= seen
    assert len([id for id in seen if id.startswith("edge.")]) >= 9
