"""Cement under hand-sealed shingles: spots by the bulletins, and what a cartridge holds."""

from fractions import Fraction

import pytest

from packet.calc.cement import (
    bead_length,
    cartridge_volume,
    cement_on_area,
    seal_spots,
    spots_in_cartridge,
)
from packet.calc.takeoff import to_buy

F = Fraction

#: The common cartridge, 10.1 fl oz.
CARTRIDGE_CU_IN = cartridge_volume(F(101, 10))


def test_a_cartridge_holds_18_23_cubic_inches() -> None:
    """Derived: 1 fl oz is 1.8047 cu in."""
    assert float(cartridge_volume(1)) == pytest.approx(1.8047, abs=0.00005)
    assert float(CARTRIDGE_CU_IN) == pytest.approx(18.23, abs=0.005)


@pytest.mark.parametrize(("bead_in", "length_ft"), [(F(1, 4), 30.9), (F(3, 8), 13.8), (F(1, 2), 7.7)])
def test_a_round_bead_from_one_cartridge(bead_in: Fraction, length_ft: float) -> None:
    """Derived; a published coverage by a standard was not found."""
    assert float(bead_length(CARTRIDGE_CU_IN, bead_in)) == pytest.approx(length_ft, abs=0.05)


def test_a_cartridge_gives_185_spots_of_a_quarter_s_size() -> None:
    """ARMA (seen): a spot about the size of a quarter, 1 in; 1/8 in thick and nothing lost, derived."""
    assert spots_in_cartridge(CARTRIDGE_CU_IN, 1, F(1, 8)) == 185


def test_thicker_spots_are_fewer() -> None:
    """Derived: twice as thick is half as many, and a part of a spot is no spot."""
    assert spots_in_cartridge(CARTRIDGE_CU_IN, 1, F(1, 4)) == 92


def test_46_laminated_shingles_fit_one_cartridge_and_47_take_two() -> None:
    """ARMA (seen): four spots a laminated shingle; 184 spots of 185, and 188."""
    assert to_buy(seal_spots(46, 4), 185) == 1
    assert to_buy(seal_spots(47, 4), 185) == 2


@pytest.mark.parametrize(("spots_a_tab", "spots"), [(2, 60), (1, 30)])
def test_american_and_canadian_bulletins_differ_on_three_tab(spots_a_tab: int, spots: int) -> None:
    """ARMA, slopes greater than 21:12: two a tab; CASMA bulletin 11 and an Ontario note: one (all seen).

    Ten strips are thirty tabs. The record names the number used; for an American job the program holds it
    against ARMA's two.
    """
    assert seal_spots(10 * 3, spots_a_tab) == spots


def test_every_freed_shingle_is_sealed_again() -> None:
    """Bond rule (ARMA, seen): after any bond is broken. One shingle and two courses above it, derived count.

    One damaged laminated shingle frees itself, two above and three above those.
    """
    assert seal_spots(1 + 2 + 3, 4) == 24


def test_cement_of_a_low_slope_is_half_a_liter_a_square_meter() -> None:
    """Note to the Ontario code (seen): about 0.5 L to the square meter; a square is 9.29 sq m."""
    assert float(cement_on_area(100, F(1, 2))) == pytest.approx(4.645, abs=0.0005)
    assert cement_on_area(0, F(1, 2)) == 0
