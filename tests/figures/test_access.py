"""Access and safety of one house: a ladder for each height of eaves, and what its year and its work ask."""

from pathlib import Path

import pytest

from packet.closeout.assemble import assemble
from packet.closeout.model import Closeout
from packet.workspace import Workspace
from tests.conftest import SMALLEST
from tests.support.office import ROOT, Office
from tests.support.small_roofs import GABLE
from tests.support.yamltext import with_value

#: A house whose eaves stand at 9 ft, and a porch of its own height, 7 ft deep.
PORCH = (
    SMALLEST
    + """\
roof:
  eave_height: 9 ft
  forms:
    - {id: MAIN, form: gable, front: south, at: [0 ft, 0 ft], length: 40 ft, depth: 24 ft, pitch: 6:12,
       planes: {front: {id: MS}, back: {id: MN}}}
  planes:
    - {id: PORCH, title: porch, shape: rectangle, lower: 14 ft, run: 7 ft, pitch: 3:12, facing: south, at: [4 ft, -7 ft],
       eave_height: 7 ft}
  edges:
    - {id: PE, kind: eave, sides: [PORCH.lower]}
    - {id: PW, kind: headwall, sides: [PORCH.upper]}
    - {id: PL, kind: rake, sides: [PORCH.left]}
    - {id: PR, kind: rake, sides: [PORCH.right]}
"""
)


def office(tmp_path: Path, text: str) -> Office:
    return Office(tmp_path / "office", text)


def numbers(closeout: Closeout, *ids: str) -> list[float]:
    return [round(float(closeout.figures[id].value), 2) for id in ids]


def test_the_demo_house_has_one_ladder(demo: Closeout) -> None:
    """9 ft 2 in: sqrt(15/16) is 0.968246; 9.1667 / 0.968246 is 9.467, a quarter 2.367, 12.1667 / 0.968246 12.566."""
    (landing,) = demo.access.landings
    ids = (landing.working, landing.foot, landing.rails, landing.size)
    assert numbers(demo, *ids) == [9.47, 2.37, 12.57, 16]
    assert landing.eave == "roof.eave_height"
    assert landing.fall == "everywhere"


def test_a_porch_at_a_height_of_its_own_has_a_ladder_of_its_own(tmp_path: Path) -> None:
    """The house's eave at 9 ft comes first, then the porch's at 7 ft: 7 / 0.968246 is 7.23, 10 / 0.968246 10.33."""
    closeout = office(tmp_path, PORCH).closeout()
    house, porch = closeout.access.landings
    assert (house.eave, porch.eave) == ("roof.eave_height", "roof.planes.PORCH.eave_height")
    assert porch.planes == ("PORCH",)
    assert "PORCH" not in house.planes
    assert numbers(closeout, porch.working, porch.rails) == [7.23, 10.33]
    assert {porch.fall, house.fall} == {"everywhere"}
    assert closeout.access.low == ("PORCH",)


def test_the_line_of_a_fall_lies_up_the_slope_of_a_low_porch(tmp_path: Path) -> None:
    """A porch at 5 ft, 7 ft deep at 3:12, ends at 6 ft 9 in."""
    closeout = office(tmp_path, PORCH.replace("eave_height: 7 ft", "eave_height: 5 ft")).closeout()
    assert [landing.fall for landing in closeout.access.landings] == ["everywhere", "above_a_line"]


def test_a_plane_that_ends_on_another_roof_gets_no_ladder() -> None:
    closeout, _ = assemble(Workspace(ROOT), ROOT / "jobs" / "26-067")
    (landing,) = closeout.access.landings
    assert landing.planes == ("GS", "GN", "PR")


@pytest.mark.parametrize(
    ("height", "size"),
    # 31.9 ft: 34.9 / 0.968246 is 36.05 and with 3 ft over 36, so 4 ft and 41; 56 ft: 60.9 is past the printed sizes
    [("28 ft", 36), ("32 ft", 41), ("44 ft", 54), ("56 ft", None)],
)
def test_the_overlap_follows_the_size_of_the_ladder(tmp_path: Path, height: str, size: int | None) -> None:
    closeout = office(tmp_path, with_value(GABLE, "roof.eave_height", height)).closeout()
    (landing,) = closeout.access.landings
    assert (closeout.figures[landing.size].value if landing.size else None) == size


def test_without_a_roof_there_is_no_ladder_and_the_year_is_asked(small_office: Office) -> None:
    found = small_office.closeout().access
    assert (found.landings, found.steep, found.low) == ((), (), ())
    assert (found.lead, found.asbestos) == ("ask_year", "ask_year")


@pytest.mark.parametrize(
    ("paint", "word"),
    [
        ("{}", "minor"),
        ("{outside: 20 sq ft, inside: 6 sq ft}", "minor"),
        ("{outside: 20.5 sq ft}", "certified_firm"),
        ("{inside: 7 sq ft}", "certified_firm"),
        ("{outside: 2 sq ft, taken_out: windows or painted parts}", "certified_firm"),
    ],
)
def test_painted_surface_is_held_against_the_limits(small_office: Office, paint: str, word: str) -> None:
    small_office.changed("property.built", "1948")
    assert small_office.closeout().access.lead == "ask_areas"
    assert small_office.changed("property.paint_disturbed", paint).closeout().access.lead == word


def test_a_test_comes_before_the_year_and_a_recover_leaves_the_old_covering(small_office: Office) -> None:
    small_office.changed("property.built", "1948")
    assert small_office.closeout().access.asbestos == "suspect"
    assert small_office.changed("job.kind", "recover").closeout().access.asbestos == "left_in_place"
    small_office.changed("property.asbestos_test", "found")
    assert small_office.closeout().access.asbestos == "tested_found"


def test_a_word_that_is_no_answer_is_refused_at_its_place(small_office: Office) -> None:
    small_office.changed("property.paint_disturbed", "{taken_out: fascia}")
    assert [(problem.code, problem.at) for problem in small_office.problems()] == [
        ("not-one-of", "property.paint_disturbed.taken_out")
    ]
