"""How much of each edge lies along the work: a whole plane, a part of one, both sides, neither."""

from pathlib import Path

import pytest

from packet.closeout.model import Closeout
from tests.figures.test_forms_on_pages import GABLE, HIP, with_roof
from tests.support.office import Office, demo_text

#: 14 ft of run at 6 in 12.
RAFTER_FT = 15.652476


def worked(closeout: Closeout) -> dict[str, float]:
    found = {id: float(f.value) for id, f in closeout.figures.items() if id.endswith(".worked")}
    return {id.split(".")[1]: value for id, value in found.items()}


def with_areas(folder: Path, *areas: str, form: str = HIP) -> Closeout:
    return with_roof(folder, f"[{form}]", f"covering: {{areas: [{', '.join(areas)}]}}\n").closeout()


def part(plane: str, *corners: str, id: str = "A1") -> str:
    return f"{{id: {id}, plane: {plane}, outline: [{', '.join(f'[{corner}]' for corner in corners)}]}}"


def test_of_a_plane_worked_whole_every_edge_is_worked(tmp_path: Path) -> None:
    assert worked(with_areas(tmp_path, "{id: A1, plane: HS}")) == {
        "HS-EAVE": 48,
        "HS-HE": pytest.approx(21),
        "HS-HW": pytest.approx(21),
        "HS-HN": 20,
    }


def test_the_working_of_a_whole_edge_is_its_length(tmp_path: Path) -> None:
    figure = with_areas(tmp_path, "{id: A1, plane: HS}").figures["edge.HS-EAVE.worked"]
    assert figure.working
    assert [(term.symbol, term.origin.ref) for term in figure.working.terms] == [
        ("edge_ft", "edge.HS-EAVE.length")
    ]
    assert figure.unit == "ft_in"


def test_of_an_outline_the_sides_on_the_edge_are_worked(tmp_path: Path) -> None:
    """From 4 to 13 ft along the eave; the other sides lie on the plane."""
    area = part("HS", "4 ft, 0 ft", "13 ft, 0 ft", "20 ft, 6 ft", "20 ft, 6 ft 3 in", "5 ft, 5 ft")
    closeout = with_areas(tmp_path, area)
    assert worked(closeout) == {"HS-EAVE": 9}
    working = closeout.figures["edge.HS-EAVE.worked"].working
    assert working
    assert {term.symbol: term.origin.ref for term in working.terms} == {
        "u1": "covering.areas.A1.outline.0.0",
        "v1": "covering.areas.A1.outline.0.1",
        "u2": "covering.areas.A1.outline.1.0",
        "v2": "covering.areas.A1.outline.1.1",
    }


def test_a_side_that_does_not_reach_the_edge_is_not_worked(tmp_path: Path) -> None:
    """Half an inch is the error of the tape; an inch is not."""
    near = part("HS", "20 ft, 3/8 in", "30 ft, 3/8 in", "30 ft, 5 ft", "20 ft, 5 ft")
    off = part("HS", "20 ft, 1 in", "30 ft, 1 in", "30 ft, 5 ft", "20 ft, 5 ft")
    assert worked(with_areas(tmp_path / "near", near)) == {"HS-EAVE": 10}
    assert worked(with_areas(tmp_path / "off", off)) == {}


def test_a_sloping_edge_is_worked_along_the_slope(tmp_path: Path) -> None:
    """From the corner 7 ft level up the hip, half of its 21 ft; the slope is 7 x 1.118034 ft."""
    area = part("HS", "0 ft, 0 ft", "10 ft, 0 ft", "7 ft, 7 ft 9-15/16 in")
    assert worked(with_areas(tmp_path, area)) == {"HS-EAVE": 10, "HS-HW": pytest.approx(10.5, abs=0.005)}


def test_two_stretches_of_one_edge_are_added(tmp_path: Path) -> None:
    """Of one outline with a notch at the eave, and of two areas of one plane."""
    corners = ("4 ft, 0 ft", "10 ft, 0 ft", "10 ft, 3 ft", "12 ft, 3 ft", "12 ft, 0 ft", "17 ft, 0 ft")
    notched = part("HS", *corners, "17 ft, 3 ft 4 in", "6 ft, 3 ft 4 in")
    assert worked(with_areas(tmp_path / "one", notched)) == {"HS-EAVE": 11}
    more = part("HS", "30 ft, 0 ft", "32 ft 6 in, 0 ft", "31 ft, 2 ft", id="A2")
    assert worked(with_areas(tmp_path / "two", notched, more)) == {"HS-EAVE": 13.5}


def test_where_both_planes_were_worked_the_longer_stretch_counts(tmp_path: Path) -> None:
    """16 ft of the ridge on one side and 7 on the other: one ridge of 16 ft, not of 23."""
    top = f"{RAFTER_FT} ft"
    south = part("GS", "10 ft, 10 ft", "26 ft, 10 ft", f"26 ft, {top}", f"10 ft, {top}")
    north = part("GN", f"30 ft, {top}", f"23 ft, {top}", "23 ft, 9 ft", id="A2")
    closeout = with_areas(tmp_path, south, north, form=GABLE.replace("5:12", "6:12"))
    assert {id: float(f.value) for id, f in closeout.figures.items() if ".worked" in id} == {
        "edge.GS-GN.worked.1": 16,
        "edge.GS-GN.worked.2": 7,
        "edge.GS-GN.worked": 16,
    }
    working = closeout.figures["edge.GS-GN.worked"].working
    assert working
    assert working.formula == "max(side_1, side_2)"


def test_a_plane_worked_whole_counts_before_a_part_of_its_neighbor(tmp_path: Path) -> None:
    north = part("HN", "14 ft, 15 ft 7-13/16 in", "14 ft, 10 ft", "20 ft, 15 ft 7-13/16 in", id="A2")
    found = worked(with_areas(tmp_path, "{id: A1, plane: HS}", north))
    assert found["HS-HN"] == 20
    assert "HN-EAVE" not in found


def test_without_an_area_no_edge_is_worked(tmp_path: Path) -> None:
    assert worked(with_roof(tmp_path, f"[{HIP}]").closeout()) == {}
    assert worked(with_roof(tmp_path / "more", f"[{HIP}]", "covering: {areas: []}\n").closeout()) == {}


def test_an_edge_of_a_plane_that_was_not_worked_has_no_figure(tmp_path: Path) -> None:
    found = worked(with_areas(tmp_path, "{id: A1, plane: HW}"))
    assert found.keys() == {"HW-EAVE", "HS-HW", "HN-HW"}


def test_the_demo_patch_worked_along_its_eaves_and_valley(tmp_path: Path) -> None:
    """4 ft of the front eave, 5 of the wing's; the valley from the foot to 9 ft up the slope, 12 ft 1 in."""
    found = worked(Office(tmp_path / "demo", demo_text()).closeout())
    assert (found["E5"], found["E7"]) == (4, 5)
    assert found["E1"] == pytest.approx(((8 + 5 / 96) ** 2 + 81) ** 0.5, rel=1e-9)
    assert found.keys() == {"E1", "E5", "E7"}
