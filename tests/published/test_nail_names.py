"""Nails by name, length and shank, and what a penny number leaves open, typed here beside their source."""

from fractions import Fraction

import pytest

from packet.calc.deck.nail_names import NamedNail, identifies_one, names_of, sold_as
from packet.reference import Library, NotInTable
from packet.reference.table import TableRow
from packet.workspace import packaged

F = Fraction


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


def named(row: TableRow) -> NamedNail:
    penny = row.cells["penny"]
    return NamedNail(
        row.word("nail"),
        row.number("length_in"),
        row.number("shank_in"),
        row.word("shank"),
        None if penny is None else int(penny),
    )


@pytest.fixture(scope="module")
def nails(library: Library) -> tuple[NamedNail, ...]:
    return tuple(named(row) for row in library.table("nail_sizes").rows)


@pytest.mark.parametrize(
    ("size", "kind", "names"),
    [
        # panel maker's note citing the NDS
        (("2", "0.113"), "smooth", {"6d common"}),
        (("2.5", "0.131"), "smooth", {"8d common"}),
        (("2.5", "0.113"), "smooth", {"8d box"}),
        (("3", "0.128"), "smooth", {"10d box"}),
        # a city's plan sheet
        (("3", "0.148"), "smooth", {"10d common"}),
        (("3.5", "0.162"), "smooth", {"16d common"}),
        # a regional retrofit slide: one nail, three names
        (("2.375", "0.113"), "smooth", {"8d cooler", "8d gun nail 0.113", "8d sinker"}),
        (("2.375", "0.131"), "smooth", {"8d gun nail 0.131"}),
        # trade column of 2014
        (("2", "0.099"), "smooth", {"6d box"}),
        (("1.875", "0.092"), "smooth", {"6d sinker"}),
        # size notes on roof sheathing ring shank nails
        (("2.375", "0.113"), "ring", {"RSRS-01"}),
        (("2.5", "0.131"), "ring", {"RSRS-03"}),
        (("3", "0.120"), "ring", {"RSRS-04"}),
        # 8d by Birmingham gage, as one web table prints it: no nail of the standard
        (("2.5", "0.134"), "smooth", set()),
    ],
)
def test_a_size_and_its_names(
    nails: tuple[NamedNail, ...], size: tuple[str, str], kind: str, names: set[str]
) -> None:
    """Nail sizes, each from the source named beside it: seen; the sinkers of 8d and up from memory."""
    assert set(names_of(F(size[0]), F(size[1]), kind, nails)) == names


def test_everything_that_is_sold_as_8d(nails: tuple[NamedNail, ...]) -> None:
    """Retrofit slide and panel maker's note: gun strips called 8d are 2-3/8 in long, 0.131 or 0.113 thick."""
    eights = sold_as(8, nails)
    assert {nail.size for nail in eights} == {
        (F(5, 2), F("0.131"), "smooth"),
        (F(5, 2), F("0.113"), "smooth"),
        (F(19, 8), F("0.131"), "smooth"),
        (F(19, 8), F("0.113"), "smooth"),
        (F(19, 8), F("0.113"), "ring"),
        (F(5, 2), F("0.131"), "ring"),
    }
    assert len(eights) == 8


@pytest.mark.parametrize(("penny", "sizes"), [(6, 3), (8, 6), (10, 3), (16, 2)])
def test_no_penny_number_of_the_list_identifies_a_nail(
    nails: tuple[NamedNail, ...], penny: int, sizes: int
) -> None:
    """The retrofit slide and the trade column say it in words: seen."""
    assert len({nail.size for nail in sold_as(penny, nails)}) == sizes
    assert not identifies_one(penny, nails)


def test_rsrs_04_has_no_penny_number_that_was_read(library: Library) -> None:
    """Size notes on ring shank nails: seen; none of them calls it by a penny."""
    with pytest.raises(NotInTable, match="penny number"):
        library.table("nail_sizes").lookup(nail="RSRS-04").number("penny")


@pytest.mark.parametrize(
    ("nail", "mark", "source"),
    [
        ("8d common", "seen", "osb-nail-note"),
        ("8d cooler", "seen", "retrofit-slides"),
        ("6d box", "seen", "wall-bracing-column"),
        ("RSRS-01", "seen", "rsrs-notes"),
        ("8d sinker", "memory", "astm-f1667-17"),
        ("16d sinker", "memory", "astm-f1667-17"),
    ],
)
def test_each_nail_names_who_says_so(library: Library, nail: str, mark: str, source: str) -> None:
    """Marks and sources of the rows themselves."""
    row = library.table("nail_sizes").lookup(nail=nail)
    assert (row.source.checked, row.source.id) == (mark, source)


PENNIES = {
    2: "1",
    3: "1.25",
    4: "1.5",
    5: "1.75",
    6: "2",
    7: "2.25",
    8: "2.5",
    9: "2.75",
    10: "3",
    12: "3.25",
    16: "3.5",
    20: "4",
    30: "4.5",
    40: "5",
    50: "5.5",
    60: "6",
}


@pytest.mark.parametrize("penny", PENNIES)
def test_length_by_penny(library: Library, penny: int) -> None:
    """Trade list of penny lengths, 2d to 60d: seen, every row."""
    table = library.table("penny_lengths")
    assert table.lookup(penny=penny).number("length_in") == F(PENNIES[penny])
    assert len(table.rows) == len(PENNIES)


def test_common_and_box_nails_have_the_length_of_their_penny_and_gun_nails_do_not(library: Library) -> None:
    """Both lists side by side: seen."""
    lengths = library.table("penny_lengths")
    for row in library.table("nail_sizes").rows:
        kind = row.word("nail").split()[-1]
        if kind in ("common", "box"):
            assert row.number("length_in") == lengths.lookup(penny=row.number("penny")).number("length_in")
        if kind in ("cooler", "sinker") or "gun" in row.word("nail"):
            assert row.number("length_in") < lengths.lookup(penny=row.number("penny")).number("length_in")


def test_box_against_common(library: Library) -> None:
    """NDS commentary: box nails have a thinner shank (seen), and a bigger head below 10d, equal from 10d to 16d.

    The rule on heads is seen; the diameters it is held against are from memory.
    """
    sizes, heads = library.table("nail_sizes"), library.table("nail_heads")
    for penny in (6, 8, 10):
        box, common = (sizes.lookup(nail=f"{penny}d {kind}") for kind in ("box", "common"))
        assert box.number("shank_in") < common.number("shank_in")
        assert box.number("length_in") == common.number("length_in")
    head = {row.word("nail"): row.number("head_in") for row in heads.rows}
    assert head["8d box"] > head["8d common"]
    assert (head["10d box"], head["16d box"]) == (head["10d common"], head["16d common"])
    assert {row.source.checked for row in heads.rows} == {"memory"}


def test_rings_of_rsrs_01(library: Library) -> None:
    """Size notes on ring shank nails: 1-1/2 in on RSRS-01, seen; the other two were not printed."""
    rings = library.table("ring_lengths")
    assert rings.lookup(nail="RSRS-01").number("ring_in") == F(3, 2)
    for nail in ("RSRS-03", "RSRS-04"):
        with pytest.raises(NotInTable, match="not printed"):
            rings.lookup(nail=nail).number("ring_in")


def test_a_10d_box_nail_gages_the_gap_between_panels(library: Library) -> None:
    """Panel association's text: 1/8 in, for which the shank of a 10d box nail serves: seen."""
    shank = library.table("nail_sizes").lookup(nail="10d box").number("shank_in")
    gap = library.row("apa-panels-gap").value
    assert gap == F(1, 8)
    assert abs(shank - F(1, 8)) < F(1, 64)


def test_shingle_nails_of_the_data_sheet_meet_the_code_text(library: Library) -> None:
    """Code text: shank 12 gage, 0.105 in, head 3/8 in; data sheet to F1667-05: 0.120 and 7/16: seen."""
    for row in library.table("roofing_nails").rows:
        assert row.number("shank_in") == F("0.120") >= F("0.105")
        assert row.number("head_in") == F(7, 16) >= F(3, 8)
