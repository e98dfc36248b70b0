"""Cement under hand-sealed pieces: spots, and what a cartridge gives."""

from fractions import Fraction

from packet.calc.domain import above_zero, zero_or_more
from packet.figure import Number
from packet.units import round_up

CARTRIDGE_VOLUME = "fl_oz * 231 / 128"
SPOTS_IN_CARTRIDGE = "floor(4 * volume_cu_in / (3.1416 * across_in ** 2 * thick_in))"
BEAD_LENGTH = "volume_cu_in / (3 * 3.1416 * bead_in ** 2)"
CEMENT_ON_AREA = "area_sq_ft * 0.09290304 * liters_a_sq_m"
SEAL_SPOTS = "pieces * spots_each"

#: The circle as it is printed in the formulas, so that a reader can work them again by hand.
PI = Fraction(31_416, 10_000)

#: Square meters to the square foot.
SQ_M_A_SQ_FT = Fraction(9_290_304, 100_000_000)


def seal_spots(pieces: int, spots_each: int) -> int:
    """Return the cement spots under hand-sealed pieces.

    Source: ARMA, slopes greater than 21:12: four spots under a laminated shingle, two under each tab of a
    three-tab strip. The piece is the shingle for the first and the tab for the second.

    Args:
        pieces: Shingles, or tabs of three-tab shingles, sealed by hand [piece], 0 or more.
        spots_each: Spots under each [spot/piece], above 0.

    Returns:
        Spots [spot].

    Raises:
        OutOfRange: A value is out of range.

    Example:
        >>> seal_spots(22, 4)
        88
    """
    zero_or_more(pieces=pieces)
    above_zero(spots_each=spots_each)
    return pieces * spots_each


def cartridge_volume(fl_oz: Number) -> Number:
    """Return the volume of a cartridge.

    Source: definition; a US gallon is 231 cu in and 128 fl oz.

    Args:
        fl_oz: Contents as printed [fl oz], above 0.

    Returns:
        Volume [cu in], exact when the input is.

    Raises:
        OutOfRange: The value is not above 0.

    Example:
        >>> round(float(cartridge_volume(Fraction(101, 10))), 2)
        18.23
    """
    above_zero(fl_oz=fl_oz)
    return fl_oz * Fraction(231, 128)


def spots_in_cartridge(volume_cu_in: Number, across_in: Number, thick_in: Number) -> int:
    """Return the round spots of cement a cartridge gives, nothing lost.

    Source: house rule; volume over that of a flat round spot, whole spots. No published coverage was found.

    Args:
        volume_cu_in: Contents of the cartridge [cu in], above 0.
        across_in: Spot across [in], above 0.
        thick_in: Thickness of a spot [in], above 0.

    Returns:
        Whole spots [spot].

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> spots_in_cartridge(cartridge_volume(Fraction(101, 10)), 1, Fraction(1, 8))
        185
    """
    above_zero(volume_cu_in=volume_cu_in, across_in=across_in, thick_in=thick_in)
    spots = Fraction(4) * volume_cu_in / (PI * across_in * across_in * thick_in)
    return -round_up(-spots)


def bead_length(volume_cu_in: Number, bead_in: Number) -> Number:
    """Return the length of a round bead a cartridge gives, nothing lost.

    Source: house rule; volume over the section of the bead, in feet. No published coverage was found.

    Args:
        volume_cu_in: Contents of the cartridge [cu in], above 0.
        bead_in: Bead across [in], above 0.

    Returns:
        Length [ft], exact when the inputs are.

    Raises:
        OutOfRange: A value is not above 0.

    Example:
        >>> round(float(bead_length(cartridge_volume(Fraction(101, 10)), Fraction(1, 4))), 1)
        30.9
    """
    above_zero(volume_cu_in=volume_cu_in, bead_in=bead_in)
    return Fraction(1) * volume_cu_in / (3 * PI * bead_in * bead_in)


def cement_on_area(area_sq_ft: Number, liters_a_sq_m: Number) -> Number:
    """Return the cement that joins two layers over an area.

    Source: definition; area times rate, and 0.09290304 sq m to the square foot. A note to a Canadian code
    gives about half a liter a square meter.

    Args:
        area_sq_ft: Cemented area [sq ft], 0 or more.
        liters_a_sq_m: Cement on a square meter [L/sq m], 0 or more.

    Returns:
        Cement [L], exact when the inputs are.

    Raises:
        OutOfRange: A value is below 0.

    Example:
        >>> round(float(cement_on_area(100, Fraction(1, 2))), 2)
        4.65
    """
    zero_or_more(area_sq_ft=area_sq_ft, liters_a_sq_m=liters_a_sq_m)
    return area_sq_ft * SQ_M_A_SQ_FT * liters_a_sq_m
