"""Nails to the pound, waste, and pounds by board feet."""

from fractions import Fraction

import pytest

from packet.calc.deck.boards import board_feet, framing_nail_pounds, nails_each_bearing
from packet.calc.fasteners import pounds
from packet.calc.takeoff import with_allowance
from packet.reference import Library
from packet.workspace import packaged

F = Fraction


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


WIRE = {2: 854, 3: 540, 4: 300, 5: 270, 6: 170, 8: 100, 10: 65, 12: 60, 16: 50, 20: 30}


@pytest.mark.parametrize("penny", WIRE)
def test_common_wire_nails_to_the_pound(library: Library, penny: int) -> None:
    """Older trade list of common wire nails: seen, every row; a pound of them weighs a pound."""
    row = library.table("nails_per_pound").lookup(nail=f"{penny}d common", source="wire-nail-list")
    assert (row.number("per_pound"), row.source.checked) == (WIRE[penny], "seen")
    assert pounds(WIRE[penny] * 3, row.number("per_pound")) == 3


@pytest.mark.parametrize(("nail", "count"), [("8d common", 106), ("10d common", 69), ("16d common", 49)])
def test_the_usual_modern_counts_are_from_memory(library: Library, nail: str, count: int) -> None:
    """Usual modern figures: not read; 5 to 15 percent from the older list."""
    table = library.table("nails_per_pound")
    row = table.lookup(nail=nail, source="common-practice")
    assert (row.number("per_pound"), row.source.checked) == (count, "memory")
    old = table.lookup(nail=nail, source="wire-nail-list").number("per_pound")
    assert abs(count - old) / old < F(15, 100)


ROOFING = {
    "0.75": 348,
    "0.875": 306,
    "1": 272,
    "1.25": 218,
    "1.5": 186,
    "1.75": 152,
    "2": 144,
    "2.5": 114,
    "3": 92,
}


@pytest.mark.parametrize("length", ROOFING)
def test_roofing_nails_to_the_pound(library: Library, length: str) -> None:
    """Nail data sheet to ASTM F1667-05, 11 gage, 0.120 shank, 7/16 head: seen, every row."""
    table = library.table("roofing_nails")
    row = table.lookup(length_in=F(length))
    assert (row.number("per_pound"), row.source.checked) == (ROOFING[length], "seen")


def test_the_subcourse_s_own_example_by_counting(library: Library) -> None:
    """Army subcourse EN0069: 30 joints a table, two nails each, 100 tables; 20 percent waste; 74 to the pound.

    The text works it to 7,200 nails; they weigh 97.3 lb.
    """
    waste = library.table("nail_waste").lookup(nail="common wire nails").number("percent")
    count = library.table("nails_per_pound").lookup(nail="10d common", source="army-en0069")
    nails = with_allowance(100 * 30 * nails_each_bearing(6), waste)
    assert (waste, count.number("per_pound"), nails) == (20, 74, 7200)
    assert round(float(pounds(int(nails), count.number("per_pound"))), 1) == 97.3


def test_the_subcourse_s_own_example_by_board_feet(library: Library) -> None:
    """Army subcourse EN0069: 1.67 x 10 = 16.7 lb to the thousand, 6,300 board feet: 105.21 lb.

    The text finds its formula 8.25 percent above the count with waste: 105 to 97.
    """
    assert framing_nail_pounds(10, 1000) == F("16.7")
    assert framing_nail_pounds(10, 6300) == F("105.21")
    assert round(100 * (105 / 97 - 1), 2) == 8.25
    by_count = 7200 / library.table("nails_per_pound").lookup(nail="10d common", source="army-en0069").number(
        "per_pound"
    )
    assert round(float(framing_nail_pounds(10, 6300))), round(float(by_count)) == (105, 97)


@pytest.mark.parametrize(("width_in", "nails"), [(6, 2), (8, 2), (10, 3), (12, 3)])
def test_nails_for_each_joint_by_width(width_in: int, nails: int) -> None:
    """Army subcourse EN0069: two for material up to 8 in wide, three for wider: seen."""
    assert nails_each_bearing(width_in) == nails


def test_board_feet_of_the_subcourse() -> None:
    """Army subcourse EN5155, 1-5: eight pieces 1 x 4, 14 ft long, are 37-1/3 board feet: seen."""
    assert board_feet(1, 4, 8 * 14) == 37 + F(1, 3)


def test_board_feet_of_a_girder() -> None:
    """An older carpentry textbook: 6 x 8, 16 ft, is 64 board feet: seen."""
    assert board_feet(6, 8, 16) == 64
