"""Openings lie in their plane, and no part of a plane is worked on in two areas."""

from pathlib import Path

import pytest

from tests.figures.test_faults import only
from tests.figures.test_forms_on_pages import GABLE, with_roof


@pytest.mark.parametrize(
    ("at", "along", "outside"),
    [
        ("[43 ft, 2 ft]", "5 ft 3 in", False),
        ("[43 ft, 2 ft]", "5 ft 4 in", True),
        ("[-4 in, 2 ft]", "5 ft", True),
        ("[4 ft, -4 in]", "5 ft", True),
        ("[4 ft, 12 ft 2 in]", "5 ft", False),
        ("[4 ft, 12 ft 6 in]", "5 ft", True),
    ],
)
def test_an_opening_lies_in_its_plane_but_for_the_error_of_the_tape(
    tmp_path: Path, at: str, along: str, outside: bool
) -> None:
    """A slope of 48 ft by 15 ft 2 in, an opening 3 ft up it."""
    opening = f"{{id: SKY, plane: GS, what: skylight, at: {at}, along: {along}, up: 3 ft}}"
    office = with_roof(tmp_path, f"[{GABLE}]", f"  openings: [{opening}]\n")
    if outside:
        problem = only(office)
        assert (problem.code, problem.found) == ("opening-outside-plane", "SKY")
        assert problem.values["plane"] == "GS"
        assert (problem.line, problem.column) == office.place("roof.openings.SKY.at")
    else:
        assert office.closeout()


WHOLE = "{{id: {}, plane: GS}}"
PART = "{{id: {}, plane: GS, outline: [[{} ft, 0 ft], [{} ft, 0 ft], [{} ft, 6 ft], [{} ft, 6 ft]]}}"


def part(id: str, left: float, right: float) -> str:
    """Return an area 6 ft up the front slope."""
    return PART.format(id, left, right, right, left)


@pytest.mark.parametrize(
    ("first", "second", "overlap"),
    [
        (WHOLE.format("A"), WHOLE.format("B"), True),
        (WHOLE.format("A"), part("B", 2, 8), True),
        (part("A", 2, 8), WHOLE.format("B"), True),
        (part("A", 2, 8), part("B", 4, 6), True),
        (part("A", 2, 8), part("B", 7.25, 12), True),
        (part("A", 2, 8), part("B", 7.75, 12), False),
        (part("A", 2, 8), part("B", 8, 12), False),
        (WHOLE.format("A"), WHOLE.format("B").replace("GS", "GN"), False),
    ],
)
def test_no_part_of_a_plane_is_worked_on_in_two_areas(
    tmp_path: Path, first: str, second: str, overlap: bool
) -> None:
    """Outlines beside each other may overlap by the error of two tapes; a whole plane shares all."""
    office = with_roof(tmp_path, f"[{GABLE}]", f"covering: {{areas: [{first}, {second}]}}\n")
    if overlap:
        problem = only(office)
        assert (problem.code, problem.found, problem.values["other"]) == ("areas-overlap", "B", "A")
        assert (problem.line, problem.column) == office.place("covering.areas.B.plane")
    else:
        assert office.closeout()
