"""Other deck rules that were read: codes, programs, advice; expected values typed here."""

from fractions import Fraction

import pytest

from packet.reference import Library
from packet.workspace import packaged
from tests.published.rows import applies, nails, one, told

HALF_INCH = {"panel_thickness_in": Fraction(15, 32)}


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.mark.parametrize(
    ("code", "asks", "facts", "value"),
    [
        # IRC 2015 R803.2 on an insurers' page: panel standards; Exposure 1 for an exposed underside.
        ("irc-2015", "deck.panel.standard", {}, ("DOC PS 1", "DOC PS 2", "CSA O437", "CSA O325")),
        ("irc-2015", "deck.panel.bond", {}, ("Exposure 1", "Exterior")),
        # IBC 2018 2304.8.2 in a compilation of wind provisions.
        ("ibc-2018", "deck.panel.bond", {}, ("Exposure 1", "Exterior")),
        # FEMA 499 fact sheet 18 and P-499 fact sheet 7.1.
        ("fema-coastal", "deck.panel.thickness", {}, Fraction(15, 32)),
        ("fema-coastal", "deck.panel.bond", {}, ("Exposure 1",)),
        ("fema-coastal", "deck.panel.gap", {}, Fraction(1, 8)),
        ("fema-coastal", "deck.piece.length", {}, 48),
        ("fema-coastal", "deck.nail.length", {}, Fraction(5, 2)),
        ("fema-coastal", "deck.nail.shank_kind", {"wind_nominal_mph": 111}, ("ring",)),
        ("fema-coastal", "deck.fastener", {}, ("nails",)),
        ("fema-coastal", "deck.nail.apart", {}, 3),
        # Panel makers' text; E30V p. 62.
        ("apa-panels", "deck.nail.from_edge", {}, Fraction(3, 8)),
        ("apa-panels", "deck.piece.width", {}, 24),
        (
            "apa-panels",
            "deck.panel.edge_support",
            {"edges_want_support": "yes"},
            ("clips", "tongue and groove", "blocking"),
        ),
        # Older sheets and advice of the program's publisher.
        ("ibhs-hurricane-2012", "deck.panel.thickness", {}, Fraction(7, 16)),
        ("ibhs-advice-2004", "deck.nail.gable_spacing", {}, 4),
        ("ibhs-advice-2004", "deck.nail.field_spacing", {}, 6),
        ("ibhs-advice-2004", "deck.nail.shank_kind", {}, ("ring",)),
        ("ibhs-high-wind-older", "deck.nail.length", {}, Fraction(19, 8)),
        ("ibhs-high-wind-older", "deck.nail.shank", {}, Fraction("0.113")),
        ("ibhs-high-wind-older", "deck.nail.shank_kind", {}, ("ring",)),
        # Rhode Island Appendix AA, 2019 text and later rule text.
        ("ri-2019-aa", "deck.nail.near_edges_width", {"mean_roof_height_ft": 30}, 48),
        (
            "ri-2019-aa",
            "deck.panel.near_edges_support",
            {"mean_roof_height_ft": 30},
            ("blocking, 2x3", "tongue and groove, 5/8 in"),
        ),
    ],
)
def test_a_deck_rule_that_was_read(
    library: Library, code: str, asks: str, facts: dict[str, object], value: object
) -> None:
    """Each in the document named beside it: seen."""
    assert told(one(library, code, asks, **facts)) == (value, "seen", True)


def test_the_panel_makers_gap_is_an_eighth_over_rafters_and_over_boards(library: Library) -> None:
    """Panel makers' text; P300C (January 2006) for panels over spaced boards: seen."""
    rows = library.rows(["apa-panels"], "deck.panel.gap", {})
    assert [told(row) for row in rows] == [(Fraction(1, 8), "seen", True)] * 2


def test_thick_panels_take_8d_ring_or_10d_common(library: Library) -> None:
    """Panel makers' text, over 1 in thick: seen."""
    nail = one(library, "apa-panels", "deck.nail", panel_thickness_in=1.125)
    assert nails(nail) == {(2.5, 0.131, "ring"), (3.0, 0.148, "smooth")}
    assert library.rows(["apa-panels"], "deck.nail", {"panel_thickness_in": 1}) == []


@pytest.mark.parametrize(
    ("speeds", "hurricane", "high_wind"),
    [
        ({"wind_ultimate_mph": 116}, True, False),
        ({"wind_ultimate_mph": 115, "wind_nominal_mph": 89}, False, True),
        ({"wind_nominal_mph": 91}, True, None),
        ({"wind_nominal_mph": 90}, None, None),
    ],
)
def test_which_path_of_the_2019_program_applies(
    library: Library, speeds: dict[str, object], hurricane: bool | None, high_wind: bool | None
) -> None:
    """Technical summaries of 2019 and 2015: over 115 ultimate or 90 nominal the hurricane path: seen."""
    match = library.match(["ibhs-high-wind-2019"], "program.path", speeds)
    word = {row.id: True for row in match.rows} | {item.row.id: None for item in match.cannot_tell}
    assert word.get("ibhs-high-wind-2019-hurricane", False) is hurricane
    assert word.get("ibhs-high-wind-2019-high-wind", False) is high_wind
    assert all(row.checked == "seen" for row in match.rows)


def test_rhode_islands_nail_depends_on_the_date_of_the_text(library: Library) -> None:
    """Appendix AA of 2019: 8d; rule text 510-RICR-00-00-2.29: 8d ring shank: seen."""
    low = {"mean_roof_height_ft": 33}
    assert one(library, "ri-2019-aa", "deck.nail.shank_kind", **low).value == ("smooth", "ring")
    later = [row for row in library.rows(["ri-rules-aa"], "deck.nail.shank_kind", low)]
    assert [row.value for row in later if row.code == "ri-rules-aa"] == [("ring",)]
    assert applies(library, "ri-2019-aa", "deck.nail.shank_kind", mean_roof_height_ft=34) is False


@pytest.mark.parametrize("code", ["fbcr-2007", "fbcr-2010", "fbcr-2014", "fbcr-2017"])
def test_florida_decks_of_2007_to_2017_are_ring_shank_at_6_and_6(library: Library, code: str) -> None:
    """FBC Residential R803.2.3.1, by an open set of hurricane loss rules: seen (secondary)."""
    for asks, value in (
        ("deck.nail.shank_kind", ("ring",)),
        ("deck.nail.edge_spacing", 6),
        ("deck.nail.field_spacing", 6),
    ):
        assert told(one(library, code, asks)) == (value, "seen_secondary", True)


def test_older_florida_decks(library: Library) -> None:
    """CABO 1995, 2001 FBC Table 2306.1 and 2322.2.5, by the same rules: seen (secondary)."""
    assert one(library, "cabo-1995", "deck.nail.field_spacing").value == 12
    elsewhere = [row.value for row in library.rows(["fbc-2001"], "deck.nail.field_spacing", {})]
    zone = library.rows(["fbc-2001"], "deck.nail.field_spacing", {"wind_zone": "hvhz"})
    assert elsewhere == [12]
    assert min(row.value for row in zone if isinstance(row.value, Fraction)) == 6


def test_florida_ring_shank_nails_are_named_from_2020_and_for_which_deck_is_from_memory(
    library: Library,
) -> None:
    """FBC 7th edition on: RSRS-01, -03, -04 on a page quoting the code: seen (secondary)."""
    for code in ("fbcr-2020", "fbcr-2023"):
        assert told(one(library, code, "deck.nail.shank_kind")) == (("ring",), "seen_secondary", True)
        thin = one(library, code, "deck.nail", **HALF_INCH)
        thick = one(library, code, "deck.nail", panel_thickness_in=Fraction(19, 32))
        assert nails(thin) == {(2.375, 0.113, "ring")}
        assert nails(thick) == {(2.5, 0.131, "ring"), (3.0, 0.12, "ring")}
        assert not thin.may_decide
        assert not thick.may_decide


def test_one_cell_of_the_florida_thickness_table_was_read(library: Library) -> None:
    """FBC Residential 2023, Table R803.2.2, 175 mph, Exposure C, by a discussion: seen (secondary)."""
    row = one(library, "fbcr-2023", "deck.panel.thickness", wind_ultimate_mph=175, exposure="C")
    assert told(row) == (Fraction(23, 32), "seen_secondary", True)
    for facts in ({"wind_ultimate_mph": 174, "exposure": "C"}, {"wind_ultimate_mph": 175, "exposure": "B"}):
        other = one(library, "fbcr-2023", "deck.panel.thickness", **facts)
        assert (other.value, other.may_decide) == (None, False)


def test_irc_2012_deck_is_nailed_6_and_12(library: Library) -> None:
    """IRC through 2015, Table R602.3(1), by public framing notes: seen (secondary)."""
    assert nails(one(library, "irc-2012", "deck.nail", **HALF_INCH)) == {(2.5, 0.131, "smooth")}
    for asks, value in (("deck.nail.edge_spacing", 6), ("deck.nail.field_spacing", 12)):
        assert told(one(library, "irc-2012", asks, **HALF_INCH)) == (value, "seen_secondary", True)


@pytest.mark.parametrize(
    ("code", "facts", "spacing"),
    [
        ("irc-2009", {"wind_nominal_mph": 111}, 6),
        ("irc-2012", {"wind_ultimate_mph": 131}, 6),
        ("irc-2018", {"wind_ultimate_mph": 131}, 6),
        ("irc-2021", {"wind_ultimate_mph": 131, "exposure": "B"}, 4),
        ("irc-2021", {"wind_ultimate_mph": 111, "exposure": "C"}, 4),
        ("irc-2024", {"wind_ultimate_mph": 111, "exposure": "C"}, 4),
    ],
)
def test_the_strip_of_the_wind_footnote_is_shown_and_never_decides(
    library: Library, code: str, facts: dict[str, object], spacing: int
) -> None:
    """IRC Table R602.3(1), wind footnote of every edition: from memory."""
    assert told(one(library, code, "deck.nail.near_edges_spacing", **facts)) == (spacing, "memory", False)
    assert told(one(library, code, "deck.nail.near_edges_width", **facts)) == (48, "memory", False)


@pytest.mark.parametrize(
    ("name", "edge", "field", "uplift"), [("A", 6, 12, 55), ("B", 6, 12, 103), ("C", 6, 6, 182)]
)
def test_deck_attachment_classes(library: Library, name: str, edge: int, field: int, uplift: int) -> None:
    """Florida mitigation form OIR-B1-1802, glossary; rafters 24 in: seen."""
    row = library.table("deck_attachment_classes").lookup(**{"class": name})
    cells = (row.number("edge_in"), row.number("field_in"), row.number("uplift_psf"))
    assert (*cells, row.source.checked) == (edge, field, uplift, "seen")


def test_ibc_2018_points_to_a_table_that_was_not_printed(library: Library) -> None:
    """IBC 2018 2304.10.1 in the compilation: cells of Table 2304.10.1 are not there."""
    for asks in ("deck.nail", "deck.nail.edge_spacing", "deck.nail.field_spacing"):
        row = one(library, "ibc-2018", asks)
        assert (row.value, row.may_decide) == (None, False)
