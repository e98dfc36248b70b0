"""Vents, ice barrier and boards computed by hand beside the program."""

import math

import pytest

from packet.closeout.model import Closeout
from packet.text import figure_text, load_words
from packet.workspace import packaged
from tests.figures.conftest import VENTS
from tests.support.office import Office
from tests.support.records import fits_any_pitch

#: Hand sums are carried to four figures.
BY_HAND = 5e-4


@pytest.mark.parametrize(
    ("id", "expected"),
    [
        ("vent.VT1.area", 31.5 * 18),
        ("vent.VT2.area", 6 * 50),
        ("vent.VT3.area", 64 * 9),
        ("ventilation.high", 567 + 300),
        ("ventilation.low", 576),
        ("ventilation.total", 1443),
        ("ventilation.ratio", 1296 * 144 / 1443),
        ("ventilation.required_150", 1244.16),
        ("ventilation.required_300", 622.08),
        ("ventilation.required", 1244.16),
        ("ventilation.high_share", 100 * 867 / 622.08),
        ("ventilation.high_of_all", 100 * 867 / 1443),
        ("ventilation.high_below_top", 2.5),
        ("ventilation.high_above_eaves", 6 - 2.5),
        ("ice_barrier.needed", 38 * math.sqrt(1 + 0.25)),
        ("ice_barrier.reach", 60 / math.sqrt(1.25) - 14),
        ("board.BD1.area", 54 * 5.5 / 12),
        ("board.BD2.area", 13 * 7.25 / 12),
        ("boards.length", 67),
        ("boards.area", 54 * 5.5 / 12 + 13 * 7.25 / 12),
    ],
)
def test_figure_matches_the_hand_sum(winter: Closeout, id: str, expected: float) -> None:
    assert float(winter.figures[id].value) == pytest.approx(expected, rel=BY_HAND)


def test_closed_vents_count_nothing(winter: Closeout) -> None:
    assert "vent.VT4.area" not in winter.figures
    assert "VT4" not in str(winter.figures["ventilation.total"].working)


def test_depths_of_a_slope_are_written_to_a_tenth_of_an_inch(winter: Closeout) -> None:
    words = load_words([packaged("shared")])
    shown = [
        figure_text(vars(winter.figures[id]), words) for id in ("ice_barrier.needed", "ice_barrier.reach")
    ]
    assert shown == ["42.5 in", "39.7 in"]


def test_a_steep_roof_takes_the_least_depth_into_its_working(cold: Office) -> None:
    fits_any_pitch(cold).changed("roof.planes.MS.pitch", "9:12").changed(
        "dry_in.ice_barrier.overhang", "1 in"
    )
    needed = cold.closeout().figures["ice_barrier.needed"]
    assert needed.working
    assert {term.symbol: term.origin.ref for term in needed.working.terms} == {
        "least_in": "irc-2021-ice-up-slope",
        "overhang_in": "dry_in.ice_barrier.overhang",
        "inside_in": "irc-2021-ice-inside-wall",
        "rise": "roof.planes.MS.pitch",
    }
    assert needed.value == 36
    assert [source.id for source in needed.sources] == ["irc-forum-ice", "irc-forum-ice"]


def test_the_steepest_of_the_covered_planes_decides_the_depth(cold: Office) -> None:
    fits_any_pitch(cold).changed("roof.planes.MN.pitch", "12:12")  # not worked on
    assert float(cold.closeout().figures["ice_barrier.needed"].value) == pytest.approx(42.49, abs=0.005)
    cold.changed("roof.planes.WW.pitch", "7:12")
    steeper = 38 * math.sqrt(1 + (7 / 12) ** 2)
    assert float(cold.closeout().figures["ice_barrier.needed"].value) == pytest.approx(steeper)


@pytest.mark.parametrize("part", ["  attic_area: 1296 sq ft\n", VENTS[VENTS.index("  vents:") :]])
def test_without_area_or_vents_there_is_no_ratio(cold: Office, part: str) -> None:
    figures = cold.replaced(part, "").closeout().figures
    assert not {"ventilation.ratio", "ventilation.high_share"} & figures.keys()


def test_only_low_vents_are_known_to_give_no_high_share(cold: Office) -> None:
    for vent in ("VT1", "VT2"):
        cold.changed(f"ventilation.vents.{vent}.place", "low")
    cold.changed("job.kind", "re-roof")
    limits = cold.result("attic-ventilation").parts[0].limits
    assert [(limit.row, limit.missing) for limit in limits] == [("irc-2021-vents", ())]


def test_every_symbol_unit_and_total_has_its_words(winter: Closeout) -> None:
    words = load_words([packaged("shared")])
    for figure in winter.figures.values():
        assert figure.unit in words["units"], figure.id
        for term in figure.working.terms if figure.working else ():
            assert term.unit in words["units"], figure.id
            name = term.symbol.rstrip("0123456789").rstrip("_")
            assert name in words["symbols"], (figure.id, term.symbol)
    for id in winter.figures:
        if id.startswith(("ventilation.", "ice_barrier.", "boards.")) and winter.figures[id].working:
            assert words[f"amounts.{id}"]
