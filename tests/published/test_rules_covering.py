"""Underlayment, drip edge, starter, shingles, caps and flashing; expected values typed here."""

from fractions import Fraction

import pytest

from packet.reference import Library
from packet.workspace import packaged
from tests.published.rows import applies, one, told

READ = ["irc-2015", "irc-2018"]


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.mark.parametrize(
    ("asks", "value"),
    [
        ("drip_edge.below_deck", Fraction(1, 4)),
        ("drip_edge.on_deck", 2),
        ("drip_edge.order_eave", ("under the underlayment",)),
        ("drip_edge.order_rake", ("over the underlayment",)),
        ("drip_edge.at_eaves", None),
        ("drip_edge.at_rakes", None),
    ],
)
def test_drip_edge(library: Library, asks: str, value: object) -> None:
    """IRC R905.2.8.5 as a roof-edge metal maker quotes it: seen (secondary); 2021 and 2024 not read."""
    for code in READ:
        assert told(one(library, code, asks)) == (value, "seen_secondary", True)
    for code in ("irc-2021", "irc-2024"):
        assert told(one(library, code, asks)) == (value, "memory", False)


def test_the_navy_nails_drip_edge_3_in_back_at_most(library: Library) -> None:
    """NAVEDTRA 14045, sample shingle specification: seen."""
    assert told(one(library, "navy-shingle-spec", "drip_edge.nail_from_edge")) == (3, "seen", True)


@pytest.mark.parametrize(("rise", "layers"), [(2, 2), (3.99, 2), (4, 1), (12, 1)])
def test_underlayment_layers(library: Library, rise: float, layers: int) -> None:
    """City of St. Peter handout and Navy manuals for the IRC; IBC 1507.2.2: seen (secondary)."""
    for code in ("irc-2015", "irc-2018", "irc-2021"):
        row = one(library, code, "underlayment.layers", slope_rise_in_12=rise)
        assert told(row) == (layers, "seen_secondary", True)
    assert applies(library, "irc-2021", "underlayment.layers", slope_rise_in_12=1.5) is False


def test_caps_of_underlayment_are_1_in_at_140_mph(library: Library) -> None:
    """IBC 2018, Table 1507.1.1(3): seen; IRC 2018 by its same layout: seen (secondary)."""
    assert told(one(library, "ibc-2018", "underlayment.fastening.cap", wind_ultimate_mph=140)) == (
        1, "seen", True,
    )  # fmt: skip
    row = one(library, "irc-2018", "underlayment.fastening.cap", wind_ultimate_mph=140)
    assert told(row) == (1, "seen_secondary", True)
    assert applies(library, "irc-2018", "underlayment.fastening.cap", wind_ultimate_mph=139) is False


@pytest.mark.parametrize(("width", "asked"), [(30, False), (30.5, True), (None, None)])
def test_a_chimney_wider_than_30_in_has_a_cricket(
    library: Library, width: float | None, asked: bool | None
) -> None:
    """IRC R903.2.2 by inspectors' and roofers' pages on the 2003 and 2015 codes: seen (secondary)."""
    assert applies(library, "irc-2015", "chimney.cricket", chimney_width_in=width) is asked
    if asked:
        assert one(library, "irc-2015", "chimney.cricket", chimney_width_in=width).may_decide
        assert not one(library, "irc-2021", "chimney.cricket", chimney_width_in=width).may_decide


def test_a_cap_is_held_by_two_nails_through_the_deck(library: Library) -> None:
    """IBC 2018 1507.2.6, two an individual shingle: seen; IRC 2018 and 2021: seen (secondary)."""
    assert told(one(library, "ibc-2018", "cap.nails", slope_rise_in_12=6)) == (2, "seen", True)
    for code in ("irc-2018", "irc-2021"):
        assert told(one(library, code, "cap.nails", slope_rise_in_12=6)) == (2, "seen_secondary", True)
        thick = one(library, code, "cap.nail.penetration", panel_thickness_in=0.75)
        thin = one(library, code, "cap.nail.penetration", panel_thickness_in=Fraction(15, 32))
        assert (thick.value, thin.value) == (Fraction(3, 4), Fraction(15, 32))


def test_metals_of_shingle_nails(library: Library) -> None:
    """IBC 1507.2.5: galvanized or stainless steel, aluminum, copper: seen there, restated for the IRC."""
    metals = ("galvanized steel", "stainless steel", "aluminum", "copper")
    for code in ("ibc-2018", "irc-2018", "irc-2021"):
        assert told(one(library, code, "shingle_nail.metal")) == (metals, "seen_secondary", True)


@pytest.mark.parametrize(
    ("asks", "kind", "facts", "value", "mark"),
    [
        ("shingle_nail.from_end", "at_least", {}, 1, "seen_secondary"),
        ("shingle_nail.from_joint", "at_least", {}, 2, "memory"),
        ("shingle.offset", "at_least", {"shingle_kind": "three-tab"}, 6, "seen_secondary"),
        ("shingle.offset", "at_least", {"shingle_kind": "laminated"}, 4, "memory"),
        ("starter.width", "at_least", {}, 7, "seen"),
        ("step_flashing.overlap", "at_least", {}, 2, "seen"),
        ("step_flashing.nailed_to", "one_of", {}, ("deck",), "seen"),
    ],
)
def test_placing_shingles(
    library: Library, asks: str, kind: str, facts: dict[str, object], value: object, mark: str
) -> None:
    """Inspectors' forum, law journal, trade journals, each with its own mark."""
    row = one(library, "shingle-placement", asks, **facts)
    assert (row.kind, *told(row)) == (kind, value, mark, mark != "memory")


def test_shingles_reach_a_quarter_to_three_eighths_past_the_metal(library: Library) -> None:
    """NAVEDTRA 14044, p. 117: seen."""
    rows = library.rows(["shingle-placement"], "shingle.overhang", {})
    assert {(row.kind, row.value) for row in rows} == {
        ("at_least", Fraction(1, 4)),
        ("at_most", Fraction(3, 8)),
    }


def test_the_starter_bonds_to_the_metal(library: Library) -> None:
    """Louisiana extension: bonded to the drip edge: seen; 2025 standard, fully adhered: seen (secondary)."""
    assert told(one(library, "lsu-hurricane", "starter.held")) == (("bonded to the drip edge",), "seen", True)
    program = one(library, "ibhs-high-wind-2025", "starter.held")
    assert told(program) == (("fully adhered",), "seen_secondary", True)


def test_ways_to_seal_a_florida_deck(library: Library) -> None:
    """Fact sheet on the 7th edition, June 2020: seen (secondary); R908.7.2 for the hurricane zone: seen."""
    row = one(
        library,
        "fbcr-2020",
        "sealed_deck.way",
        kind_of_work="re-roof",
        house_built=2010,
        house_permit_date=None,
    )
    assert told(row) == (
        ("tape on the joints", "self-adhered sheet", "two layers of underlayment"), "seen_secondary", True,
    )  # fmt: skip
    zone = one(library, "fbc-hvhz", "sealed_deck.way", kind_of_work="re-roof", wind_zone="hvhz")
    assert told(zone) == (
        ("tape on the joints", "approved No. 30 felt or synthetic with nails and tin tabs"), "seen", True,
    )  # fmt: skip
    assert applies(library, "fbc-hvhz", "sealed_deck.way", kind_of_work="recover", wind_zone="hvhz") is False


def test_four_nails_outside_the_hurricane_zone(library: Library) -> None:
    """Florida roofing contractors' association, 2019: not under 4: seen, of the editions before 2023."""
    assert told(one(library, "fbcr-2020", "shingle.nails")) == (4, "seen", True)
    assert told(one(library, "fbcr-2023", "shingle.nails")) == (4, "seen_secondary", True)
