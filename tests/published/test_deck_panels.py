"""Spans, edge support, clips, sizes and gaps of deck panels."""

from fractions import Fraction

import pytest

from packet.calc.deck.cutout import CutRule
from packet.calc.deck.edge_support import (
    TWO_CLIPS_FROM_IN,
    FramingTooWide,
    SpanRating,
    clips_in_span,
    clips_needed,
    clips_on_edge,
    edge_support_needed,
    span_rating,
)
from packet.calc.deck.nails import EDGE_DISTANCE_FT
from packet.reference import Library, NotInTable
from packet.workspace import packaged

F = Fraction


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


LOW_SLOPE = {
    "15/32 32/16": (24, 1),
    "19/32 40/20": (32, 1),
    "23/32 48/24": (48, 2),
    "7/8 60/32": (60, 2),
    "19/32 20 oc": (24, 1),
    "23/32 24 oc": (32, 1),
    "7/8 32 oc": (48, 2),
}


@pytest.mark.parametrize("panel", LOW_SLOPE)
def test_clips_of_low_slope_panels_follow_from_the_spacing(library: Library, panel: str) -> None:
    """APA E30V (2011), Table 31, p. 62, roofs under 2:12: seen, every row."""
    table = library.table("deck_panels_low_slope")
    row = table.lookup(panel=panel, slope_rise_in_12=F(3, 2))
    spacing, clips = LOW_SLOPE[panel]
    assert (row.number("support_spacing_in"), row.number("clips")) == (spacing, clips)
    assert clips_in_span(row.number("support_spacing_in")) == clips
    assert len(table.rows) == len(LOW_SLOPE)


def test_two_clips_from_48_in(library: Library) -> None:
    """APA E30V (2011), p. 62: two, evenly spaced, where supports stand 48 in or more apart: seen."""
    row = library.table("deck_distances").lookup(what="two clips in a span from")
    assert row.number("distance_in") == TWO_CLIPS_FROM_IN == 48
    assert [clips_in_span(spacing) for spacing in (24, F(767, 16), 48, 60)] == [1, 1, 2, 2]


@pytest.mark.parametrize(
    ("rating", "roof", "floor"), [("32/16", 32, 16), ("40/20", 40, 20), ("60/32", 60, 32), ("48/24", 48, 24)]
)
def test_the_left_number_is_the_roof_s(rating: str, roof: int, floor: int) -> None:
    """APA text on span ratings: widest roof support spacing, then widest floor support spacing: seen."""
    assert span_rating(rating) == SpanRating(roof, floor)


@pytest.mark.parametrize(
    ("rating", "thickness", "supported", "bare"),
    [
        ("24/0", "3/8", 24, 20),
        ("24/16", "7/16", 24, 24),
        ("32/16", "15/32", 32, 28),
        ("40/20", "19/32", 40, 32),
    ],
)
def test_spans_with_and_without_edge_support(
    library: Library, rating: str, thickness: str, supported: int, bare: int
) -> None:
    """A panel maker's load sheet, p. 2, restating the panel association's table; the stamp's left number is its limit."""
    row = library.table("deck_panels").lookup(span_rating=rating)
    with_support, without = row.number("with_edge_support_in"), row.number("without_edge_support_in")
    assert (row.number("thickness_in"), with_support, without) == (F(thickness), supported, bare)
    assert row.source.checked == "seen_secondary"
    assert span_rating(rating).roof_in == with_support
    assert clips_needed(bare, without, with_support) == 0
    if bare < supported:
        assert edge_support_needed(supported, without, with_support)
    with pytest.raises(FramingTooWide):
        edge_support_needed(supported + 1, without, with_support)


def test_one_clip_a_span_on_a_sheet_at_24_in() -> None:
    """APA E30V (2011), p. 62: one midway between supports: seen; an 8 ft sheet has four spans."""
    assert clips_on_edge(8, 24, clips_in_span(24)) == 4


def test_nails_stand_three_eighths_from_the_panel_s_edge(library: Library) -> None:
    """Panel association's text: 3/8 in: seen. The layout of nails takes that distance."""
    assert library.row("apa-panels-from-edge").value == F(3, 8)
    assert pytest.approx(float(F(3, 8))) == 12 * EDGE_DISTANCE_FT


def test_least_sizes_of_a_new_piece(library: Library) -> None:
    """Two spans (E30V p. 62), 24 in wide (panel association's text), 4 ft long (FEMA 499 sheet 18): seen."""
    rule = CutRule()
    assert library.row("apa-panels-width").value == 24 == 12 * rule.least_up_ft
    assert library.row("fema-coastal-piece").value == 48 == 12 * rule.least_along_ft
    assert rule.spans == 2


@pytest.mark.parametrize(
    ("what", "distance", "source"),
    [
        ("panel off its size by at most", "1/8", "panel-size-answer"),  # questions and answers, trade journal
        ("panel commonly cut short by", "1/16", "panel-size-answer"),
        ("panel over spaced boards at least", "5/16", "apa-p300c"),  # APA P300C (January 2006)
        ("spaced boards on center at most", "12", "apa-p300c"),
        ("more nails can split at or under", "4", "overdriven-note"),  # an engineer's note
        ("two clips in a span from", "48", "apa-e30v"),
    ],
)
def test_distances(library: Library, what: str, distance: str, source: str) -> None:
    """Each from the source named beside it: seen."""
    table = library.table("deck_distances")
    row = table.lookup(what=what)
    assert (row.number("distance_in"), row.source.id, row.source.checked) == (F(distance), source, "seen")
    assert len(table.rows) == 6


def test_a_panel_cut_short_leaves_the_gap_only_in_part(library: Library) -> None:
    """The trade journal's 1/16 in against the panel association's gap of 1/8 in: seen."""
    short = library.table("deck_distances").lookup(what="panel commonly cut short by").number("distance_in")
    assert short == library.row("apa-panels-gap").value / 2


def test_gap_is_the_same_in_both_documents(library: Library) -> None:
    """Panel association's text and FEMA 499 sheet 18: 1/8 in: seen."""
    assert library.row("apa-panels-gap").value == library.row("fema-coastal-panel-gap").value == F(1, 8)


@pytest.mark.parametrize(
    ("speed", "zone", "field"),
    [
        (90, "zone-1", 12),
        (90, "zone-2", 12),
        (90, "zone-3", 12),
        (120, "zone-1", 12),
        (120, "zone-2", 6),
        (120, "zone-3", 4),
        (150, "zone-1", 6),
        (150, "zone-2", 4),
        (150, "zone-3", 3),
        (120, "gable-overhang-zone-2", 6),
        (120, "gable-overhang-zone-3", 4),
        (150, "gable-overhang-zone-2", 4),
        (150, "gable-overhang-zone-3", 3),
    ],
)
def test_nailing_by_wind_speed_and_zone(library: Library, speed: int, zone: str, field: int) -> None:
    """APA T325D (2005), two restatements, every cell that was read: seen (secondary). Edges are 6 in in all."""
    row = library.table("apa_deck_nailing").lookup(
        wind_nominal_mph=speed,
        zone=zone,
        exposure="B",
        mean_roof_height_ft=35,
        panel_thickness_in=F(5, 8),
        frame_spacing_in=24,
    )
    assert (row.number("edge_in"), row.number("field_in")) == (6, field)
    assert row.source.checked == "seen_secondary"


@pytest.mark.parametrize("zone", ["gable-overhang-zone-2", "gable-overhang-zone-3"])
def test_gable_overhangs_at_90_mph_were_not_read(library: Library, zone: str) -> None:
    """The same table: the restatements print no such cell, and the wall zones do not stand in."""
    row = library.table("apa_deck_nailing").lookup(
        wind_nominal_mph=90,
        zone=zone,
        exposure="B",
        mean_roof_height_ft=35,
        panel_thickness_in=F(1, 2),
        frame_spacing_in=16,
    )
    with pytest.raises(NotInTable, match="no cell of this speed was read"):
        row.number("field_in")


def test_stainless_fasteners_near_the_ocean(library: Library) -> None:
    """FEMA P-55 Vol. II, 11.5.7, and the metal roof sheet of P-499: within 3,000 ft of the shore: seen.

    It is said of wood shingle and metal roofs, and nothing is said of what stands farther away.
    """
    table = library.table("salt_water")
    for distance in (0, 450, 3000):
        row = table.lookup(shore_ft=distance)
        assert (row.word("metal"), row.source.checked) == ("stainless steel", "seen")
        assert row.word("said_of") == "wood shingle and metal roofs"
    with pytest.raises(NotInTable):
        table.lookup(shore_ft=3001)
