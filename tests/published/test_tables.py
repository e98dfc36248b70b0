"""Cells of published tables, typed here beside their source."""

from fractions import Fraction

import pytest

from packet.reference import Library, NotInTable
from packet.workspace import packaged


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.mark.parametrize(
    ("nail", "length", "shank", "kind", "mark"),
    [
        ("6d common", "2", "0.113", "smooth", "seen"),
        ("8d common", "2.5", "0.131", "smooth", "seen"),
        ("10d common", "3", "0.148", "smooth", "seen"),
        ("16d common", "3.5", "0.162", "smooth", "seen"),
        ("8d box", "2.5", "0.113", "smooth", "seen"),
        ("10d box", "3", "0.128", "smooth", "seen"),
        ("8d cooler", "2.375", "0.113", "smooth", "seen"),
        ("RSRS-01", "2.375", "0.113", "ring", "seen"),
        ("RSRS-03", "2.5", "0.131", "ring", "seen"),
        ("RSRS-04", "3", "0.120", "ring", "seen"),
        ("16d sinker", "3.25", "0.148", "smooth", "memory"),
    ],
)
def test_nail_sizes(library: Library, nail: str, length: str, shank: str, kind: str, mark: str) -> None:
    """A panel maker's note citing the NDS, RSRS notes quoting ASTM F1667-17: seen; sinkers from memory."""
    row = library.table("nail_sizes").lookup(nail=nail)
    assert (row.number("length_in"), row.number("shank_in")) == (Fraction(length), Fraction(shank))
    assert (row.word("shank"), row.source.checked) == (kind, mark)


def test_four_nails_are_called_8d_and_no_two_of_them_are_alike(library: Library) -> None:
    """The same note: a penny size alone does not identify a nail."""
    eights = [
        library.table("nail_sizes").lookup(nail=name)
        for name in ("8d common", "8d box", "8d cooler", "RSRS-03")
    ]
    assert len({(row.number("length_in"), row.number("shank_in"), row.word("shank")) for row in eights}) == 4


@pytest.mark.parametrize(
    ("penny", "length"),
    [(2, "1"), (6, "2"), (8, "2.5"), (9, "2.75"), (10, "3"), (12, "3.25"), (16, "3.5"), (60, "6")],
)
def test_penny_lengths(library: Library, penny: int, length: str) -> None:
    """Trade list of penny lengths, 2d to 60d: seen."""
    assert library.table("penny_lengths").lookup(penny=penny).number("length_in") == Fraction(length)


def test_there_is_no_11_penny_nail(library: Library) -> None:
    """The same list: 11d is not printed, and nothing is put between 10d and 12d."""
    with pytest.raises(NotInTable):
        library.table("penny_lengths").lookup(penny=11)


def test_head_diameters_are_from_memory(library: Library) -> None:
    """ASTM F1667 dimension tables: not read; the mark says so in every row."""
    table = library.table("nail_heads")
    assert table.lookup(nail="8d common").number("head_in") == Fraction("0.281")
    assert {row.source.checked for row in table.rows} == {"memory"}


@pytest.mark.parametrize(
    ("nail", "source", "count"),
    [
        ("8d common", "wire-nail-list", 100),
        ("8d common", "common-practice", 106),
        ("10d common", "wire-nail-list", 65),
        ("10d common", "army-en0069", 74),
        ("10d common", "common-practice", 69),
        ("16d common", "wire-nail-list", 50),
        ("2d common", "wire-nail-list", 854),
    ],
)
def test_nails_per_pound_by_the_list_used(library: Library, nail: str, source: str, count: int) -> None:
    """Older wire nail list and Army subcourse EN0069: seen; usual modern figures from memory."""
    row = library.table("nails_per_pound").lookup(nail=nail, source=source)
    assert row.number("per_pound") == count
    assert row.source.checked == ("memory" if source == "common-practice" else "seen")


@pytest.mark.parametrize(
    ("length", "count"), [("0.75", 348), ("1", 272), ("1.25", 218), ("1.5", 186), ("1.75", 152), ("3", 92)]
)
def test_roofing_nails_per_pound(library: Library, length: str, count: int) -> None:
    """Nail data sheet to ASTM F1667-05, 11 gage, 0.120 shank, 7/16 head: seen."""
    row = library.table("roofing_nails").lookup(length_in=Fraction(length))
    assert (row.number("per_pound"), row.number("shank_in")) == (count, Fraction("0.120"))
    assert row.number("head_in") == Fraction(7, 16)


@pytest.mark.parametrize(
    ("roll", "length", "area", "single", "double"),
    [("No. 15 felt", 144, 432, 4, 2), ("No. 30 felt", 72, 216, 2, 1)],
)
def test_felt_rolls(library: Library, roll: str, length: int, area: int, single: int, double: int) -> None:
    """Asphalt Shingles Field Guide, trade journal: seen."""
    row = library.table("roll_goods").lookup(roll=roll)
    assert (row.number("width_in"), row.number("length_ft"), row.number("area_sq_ft")) == (36, length, area)
    assert (row.number("squares_single"), row.number("squares_double")) == (single, double)


def test_self_adhered_rolls(library: Library) -> None:
    """Article on roll sizes: 36 in by 66.7 ft (200 sq ft) or 75 ft (225 sq ft): seen (secondary)."""
    table = library.table("roll_goods")
    short, long = (table.lookup(roll=f"self-adhered, {area} sq ft") for area in (200, 225))
    assert round(float(short.number("length_ft")), 1) == 66.7
    assert (long.number("length_ft"), short.number("area_sq_ft"), long.number("area_sq_ft")) == (75, 200, 225)
    with pytest.raises(NotInTable, match="cover after laps not read"):
        short.number("squares_single")


def test_drip_edge_comes_in_8_and_10_ft_pieces(library: Library) -> None:
    """Household estimating note: seen (secondary)."""
    table = library.table("drip_edge_piece")
    assert [row.number("piece_ft") for row in table.rows] == [8, 10]
    with pytest.raises(NotInTable):
        table.lookup(piece_ft=12)


def test_low_slope_panels(library: Library) -> None:
    """APA E30V (2011), Table 31, p. 62, under 2:12: seen."""
    table = library.table("deck_panels_low_slope")
    row = table.lookup(panel="15/32 32/16", slope_rise_in_12=1)
    assert (row.number("support_spacing_in"), row.number("clips")) == (24, 1)
    assert table.lookup(panel="7/8 60/32", slope_rise_in_12=1.9).number("clips") == 2
    with pytest.raises(NotInTable):
        table.lookup(panel="15/32 32/16", slope_rise_in_12=2)


@pytest.mark.parametrize(
    ("species", "g"),
    [
        ("Southern Pine", "0.55"),
        ("Douglas Fir-Larch", "0.50"),
        ("Spruce-Pine-Fir", "0.42"),
        ("White Oak", "0.73"),
    ],
)
def test_specific_gravity(library: Library, species: str, g: str) -> None:
    """NDS 2018, Table 12.3.3A, by an open data file that cites it: seen (secondary)."""
    assert library.table("specific_gravity").lookup(species=species).number("specific_gravity") == Fraction(g)


@pytest.mark.parametrize(
    ("finding", "added"),
    [
        ("sixteenth-or-less", 0),
        ("one-fifth-or-fewer", 0),
        ("more-than-one-fifth", 1),
        ("beyond-an-eighth", 1),
    ],
)
def test_overdriven_nails(library: Library, finding: str, added: int) -> None:
    """APA TT-012 as restated: one added nail for every two overdriven, or none: seen (secondary)."""
    row = library.table("overdriven_remedy").lookup(finding=finding)
    assert row.number("added_for_each_two") == added


@pytest.mark.parametrize(
    ("shingle", "source", "spots", "per"),
    [
        ("laminated", "arma-hand-seal", 4, "shingle"),
        ("three-tab", "arma-hand-seal", 2, "tab"),
        ("three-tab", "casma-11", 1, "tab"),
    ],
)
def test_seal_spots(library: Library, shingle: str, source: str, spots: int, per: str) -> None:
    """American bulletin on slopes over 21:12 and Canadian Bulletin 11 (June 2019): seen; they differ."""
    row = library.table("seal_spots").lookup(shingle=shingle, source=source)
    assert (row.number("spots_each"), row.word("per"), row.source.id) == (spots, per, source)


@pytest.mark.parametrize(
    ("source", "datum"),
    [
        ("irc-forum-ice", "exterior-wall-line"),
        ("arma-ice-dams", "interior-wall-line"),
        ("nrca-ice-2008", "interior-wall-line"),
        ("mil-hdbk-1001-5a", "interior-wall-line"),
    ],
)
def test_ice_barrier_reach_names_its_datum(library: Library, source: str, datum: str) -> None:
    """IRC R905.1.2 (restated), makers' bulletin, NRCA April 2008, MIL-HDBK-1001/5A: 24 in, two lines."""
    row = library.table("ice_barrier_reach").lookup(source=source)
    assert (row.number("reach_in"), row.word("datum")) == (24, datum)
