"""Smooth nails in withdrawal, by the species and the nail of the tables."""

import pytest

from packet.calc.deck.withdrawal import smooth_withdrawal, ultimate_withdrawal
from packet.reference import Library, NotInTable
from packet.workspace import packaged


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.mark.parametrize(
    ("species", "held"),
    [
        ("Southern Pine", (35.0, 45.8, 50.2, 40.6)),
        ("Douglas Fir-Larch", (27.6, 36.1, 39.5, 32.0)),
        ("Hem-Fir", (18.9, 24.8, 27.1, 21.9)),
        ("Spruce-Pine-Fir (S)", (12.1, 15.9, 17.4, 14.1)),
    ],
)
def test_smooth_nails_by_species(library: Library, species: str, held: tuple[float, ...]) -> None:
    """NDS 2018, Eq. 12.2-3 (an open program citing it: seen), gravity by Table 12.3.3A (seen, secondary).

    The values are derived from the equation, in lb per in, before factors.
    """
    gravity = library.table("specific_gravity").lookup(species=species).number("specific_gravity")
    for name, value in zip(("6d common", "10d common", "16d common", "8d common"), held, strict=True):
        shank = library.table("nail_sizes").lookup(nail=name).number("shank_in")
        assert round(smooth_withdrawal(gravity, shank), 1) == value


def test_the_forest_laboratory_s_ultimate_is_five_times_the_reference(library: Library) -> None:
    """USDA FPL technical note 236: 6,900 G^2.5 D, of which the NDS takes a fifth: seen."""
    assert ultimate_withdrawal(1, 1) == 6900
    assert smooth_withdrawal(1, 1) == 6900 / 5


SPECIES = {
    "Southern Pine": "0.55",
    "Mixed Southern Pine": "0.51",
    "Spruce-Pine-Fir": "0.42",
    "Spruce-Pine-Fir (S)": "0.36",
    "Western Hemlock": "0.47",
    "Eastern Hemlock": "0.41",
    "Northern Pine": "0.42",
    "Eastern Softwoods": "0.38",
    "Northern Species": "0.35",
    "Red Oak": "0.67",
    "Douglas Fir-Larch": "0.50",
    "Douglas Fir-Larch (N)": "0.49",
    "Douglas Fir-South": "0.46",
    "Hem-Fir": "0.43",
    "Hem-Fir (N)": "0.46",
    "Ponderosa Pine": "0.43",
    "Redwood": "0.37",
    "Western Cedars": "0.36",
    "Western Woods": "0.36",
    "Yellow Poplar": "0.43",
    "White Oak": "0.73",
}


def test_gravity_of_every_species(library: Library) -> None:
    """NDS 2018, Table 12.3.3A, by an open data file that cites it: seen (secondary), every row."""
    table = library.table("specific_gravity")
    assert {
        row.word("species"): f"{float(row.number('specific_gravity')):.2f}" for row in table.rows
    } == SPECIES
    assert {row.source.checked for row in table.rows} == {"seen_secondary"}


def test_a_species_that_is_not_printed_is_refused(library: Library) -> None:
    """The same table: nothing stands in for a wood that it does not list."""
    with pytest.raises(NotInTable, match="species"):
        library.table("specific_gravity").lookup(species="Balsa")
