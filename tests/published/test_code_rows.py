"""Code rows beside the document each was read in, with its mark; expected values are typed here."""

from fractions import Fraction

import pytest

from packet.reference import CodeRow, Library
from packet.reference.checks import COMMON_PRACTICE
from packet.workspace import packaged
from tests.published.rows import one

HALF_INCH_CLASS = {"panel_thickness_in": Fraction(15, 32)}
COMMON_8D = (Fraction("2.5"), Fraction("0.131"), "smooth")
RSRS_01 = (Fraction("2.375"), Fraction("0.113"), "ring")


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


def nails(row: CodeRow) -> set[tuple[Fraction, Fraction, str]]:
    assert isinstance(row.value, tuple)
    return {(nail.length_in, nail.shank_in, nail.shank) for nail in row.value}  # type: ignore[union-attr]


def test_irc_2009_deck_is_nailed_6_and_12_with_8d_common(library: Library) -> None:
    """IRC 2009, Table R602.3(1), items 32 to 34, in a scan of a city permit file: seen."""
    edge = one(library, "irc-2009", "deck.nail.edge_spacing", **HALF_INCH_CLASS)
    field = one(library, "irc-2009", "deck.nail.field_spacing", **HALF_INCH_CLASS)
    nail = one(library, "irc-2009", "deck.nail", **HALF_INCH_CLASS)
    assert (edge.value, field.value, nails(nail)) == (6, 12, {COMMON_8D})
    assert {edge.checked, field.checked, nail.checked} == {"seen"}


def test_irc_2009_thick_panels_take_10d_common_or_8d_deformed(library: Library) -> None:
    """IRC 2009, Table R602.3(1), 1-1/8 to 1-1/4 in, same scan: seen."""
    nail = one(library, "irc-2009", "deck.nail", panel_thickness_in=1.125)
    assert nails(nail) == {(3, Fraction("0.148"), "smooth"), (Fraction("2.5"), Fraction("0.131"), "ring")}


def test_irc_2015_deck_is_nailed_6_and_12(library: Library) -> None:
    """IRC 2015, Table R602.3(1), by public framing notes: seen (secondary)."""
    field = one(library, "irc-2015", "deck.nail.field_spacing", **HALF_INCH_CLASS)
    assert (field.value, field.checked, field.may_decide, field.caution) == (12, "seen_secondary", True, True)


def test_irc_2018_deck_rows_were_not_read_and_decide_nothing(library: Library) -> None:
    """IRC 2018, Table R602.3(1): from memory, in every roof row."""
    for asks in ("deck.nail", "deck.nail.edge_spacing", "deck.nail.field_spacing"):
        row = one(library, "irc-2018", asks, **HALF_INCH_CLASS)
        assert (row.checked, row.may_decide) == ("memory", False)


def test_irc_2021_deck_is_nailed_6_and_6(library: Library) -> None:
    """IRC 2021, Table R602.3(1), items 31 and 32, by three restatements: seen (secondary)."""
    edge = one(library, "irc-2021", "deck.nail.edge_spacing", **HALF_INCH_CLASS)
    field = one(library, "irc-2021", "deck.nail.field_spacing", **HALF_INCH_CLASS)
    nail = one(library, "irc-2021", "deck.nail", **HALF_INCH_CLASS)
    assert (edge.value, field.value, nails(nail)) == (6, 6, {COMMON_8D, RSRS_01})
    assert {edge.checked, field.checked, nail.checked} == {"seen_secondary"}
    assert "items 31 and 32" in library.source(field).locator


def test_irc_2021_thick_panels_keep_6_and_12(library: Library) -> None:
    """IRC 2021, Table R602.3(1), panels 1-1/8 to 1-1/4 in, by a restatement: seen (secondary)."""
    assert one(library, "irc-2021", "deck.nail.field_spacing", panel_thickness_in=1.25).value == 12


def test_between_the_printed_panel_rows_there_is_no_rule(library: Library) -> None:
    """IRC Table R602.3(1) prints nothing between 1 in and 1-1/8 in: nothing is made up."""
    assert library.rows(["irc-2021"], "deck.nail.field_spacing", {"panel_thickness_in": 1.0625}) == []


@pytest.mark.parametrize(
    ("code", "facts", "spacing"),
    [
        ("irc-2018", {"wind_ultimate_mph": 130}, 6),
        ("irc-2018", {"wind_ultimate_mph": 131}, 4),
        ("irc-2021", {"wind_ultimate_mph": 131, "exposure": "B"}, 4),
        ("irc-2021", {"wind_ultimate_mph": 111, "exposure": "C"}, 4),
    ],
)
def test_the_wind_footnote_is_shown_and_never_decides(
    library: Library, code: str, facts: dict[str, object], spacing: int
) -> None:
    """IRC Table R602.3(1), wind footnote of every edition: from memory."""
    row = one(library, code, "deck.nail.gable_spacing", **facts)
    assert (row.value, row.checked, row.may_decide) == (spacing, "memory", False)


def test_irc_2024_drops_the_36_in_ice_barrier_rule(library: Library) -> None:
    """Code officials' comparison of R905.1.2, 2015 to 2024: seen (secondary)."""
    for code in ("irc-2015", "irc-2018", "irc-2021"):
        assert one(library, code, "ice_barrier.up_slope", steepest_rise_in_12=8).value == 36
        assert library.rows([code], "ice_barrier.up_slope", {"steepest_rise_in_12": 7.5}) == []
    assert library.rows(["irc-2024"], "ice_barrier.up_slope", {"steepest_rise_in_12": 12}) == []


@pytest.mark.parametrize("code", ["irc-2015", "irc-2018", "irc-2021", "irc-2024"])
def test_the_ice_barrier_reaches_24_in_inside_the_exterior_wall_line(library: Library, code: str) -> None:
    """IRC R905.1.2 by the code officials' comparison: seen (secondary); the datum is in the locator."""
    row = one(library, code, "ice_barrier.inside_wall")
    assert (row.value, row.checked) == (24, "seen_secondary")
    assert "exterior wall line, measured level" in row.locator


@pytest.mark.parametrize(
    ("code", "mark"), [("irc-2018", "seen"), ("irc-2015", "seen"), ("irc-2021", "memory")]
)
def test_sidewall_flashing_is_4_by_4(library: Library, code: str, mark: str) -> None:
    """IRC R905.2.8.3, 2018 p. 462 and a permit packet's page of 2012/2015 wording: seen; carried to 2021."""
    height, width = (
        one(library, code, "sidewall_flashing.height"),
        one(library, code, "sidewall_flashing.width"),
    )
    assert (height.value, width.value, height.checked, width.checked) == (4, 4, mark, mark)


def test_valley_linings_are_24_in_open_and_36_in_closed(library: Library) -> None:
    """IRC R905.2.8.2, page of 2012/2015 wording in a permit packet: seen."""
    assert one(library, "irc-2015", "valley_lining.width", valley_kind="open").value == 24
    assert one(library, "irc-2015", "valley_lining.width", valley_kind="closed").value == 36
    assert library.rows(["irc-2015"], "valley_lining.width", {}) == []


@pytest.mark.parametrize("code", ["irc-2015", "irc-2018", "irc-2021", "ibc-2018"])
def test_drip_edge_laps_2_in_and_is_nailed_at_12(library: Library, code: str) -> None:
    """IRC R905.2.8.5 and IBC 1507.2.8.3, by a trade association's review of June 2019: seen (secondary)."""
    lap, nails_at = one(library, code, "drip_edge.lap"), one(library, code, "drip_edge.fastener_spacing")
    assert (lap.kind, lap.value, nails_at.kind, nails_at.value) == ("at_least", 2, "at_most", 12)
    # The 2021 text was not read, and nothing is carried over from an older edition.
    mark = "memory" if code == "irc-2021" else "seen_secondary"
    assert lap.checked == nails_at.checked == mark


def test_the_navy_nails_drip_edge_at_10(library: Library) -> None:
    """NAVEDTRA 14045, sample shingle specification: seen; practice, not law."""
    row = one(library, "navy-shingle-spec", "drip_edge.fastener_spacing")
    assert (row.value, row.whose, row.checked) == (10, "practice", "seen")


def test_underlayment_at_140_mph_is_held_on_a_12_and_6_grid(library: Library) -> None:
    """IBC 2018, Table 1507.1.1(3), asphalt shingles: seen."""
    assert one(library, "ibc-2018", "underlayment.fastening.between", wind_ultimate_mph=140).value == 12
    assert one(library, "ibc-2018", "underlayment.fastening.at_laps", wind_ultimate_mph=140).value == 6
    below = one(library, "ibc-2018", "underlayment.fastening.between", wind_ultimate_mph=139)
    assert (below.kind, below.value) == ("present", None)
    assert library.rows(["ibc-2018"], "underlayment.fastening.between", {}) == []


def test_the_140_mph_split_is_not_carried_over_to_irc_2021(library: Library) -> None:
    """IRC 2021, Table R905.1.1(3): splits by whether wind design is required; cells not read."""
    for speed in (90, 130, 140, 180):
        row = one(library, "irc-2021", "underlayment.fastening.between", wind_ultimate_mph=speed)
        assert (row.value, row.may_decide) == (None, False)
        assert row.reason


@pytest.mark.parametrize(("rise", "lap"), [(2, 19), (3.99, 19), (4, 2), (6, 2)])
def test_underlayment_head_laps(library: Library, rise: float, lap: int) -> None:
    """City of St. Peter re-roofing handout and NAVEDTRA 14044/14045, for the IRC: seen (secondary)."""
    assert one(library, "irc-2021", "underlayment.head_lap", slope_rise_in_12=rise).value == lap
    assert one(library, "irc-2021", "underlayment.end_lap").value == 4


def test_below_2_in_12_no_shingle_underlayment_rule_applies(library: Library) -> None:
    """IBC 1507.2.2: shingles are for 2:12 and steeper; no row answers below."""
    assert library.rows(["irc-2021"], "underlayment.head_lap", {"slope_rise_in_12": 1.5}) == []


def test_four_nails_a_strip_shingle(library: Library) -> None:
    """IRC 2018, R905.2.6, p. 462, and IBC 2018, 1507.2.6: seen. Over 21:12 only the maker's method counts."""
    for code in ("irc-2018", "ibc-2018"):
        row = one(library, code, "shingle.nails", slope_rise_in_12=6)
        assert (row.value, row.checked) == (4, "seen")
        assert library.rows([code], "shingle.nails", {"slope_rise_in_12": 21.5}) == []


def test_six_nails_in_the_high_velocity_hurricane_zone(library: Library) -> None:
    """Florida roofing contractors' association, four nails or six, 2019: seen."""
    assert one(library, "fbc-hvhz", "shingle.nails", wind_zone="hvhz").value == 6


def test_shingle_nail_of_12_gage_with_a_3_8_in_head(library: Library) -> None:
    """IBC 1507.2.5 (later than 2018) and a copy of IRC R905.2.5: seen (secondary) for IRC 2021."""
    assert one(library, "irc-2021", "shingle_nail.shank").value == Fraction("0.105")
    assert one(library, "irc-2021", "shingle_nail.head").value == Fraction("0.375")
    assert one(library, "irc-2021", "shingle_nail.penetration", panel_thickness_in=0.75).value == Fraction(
        "0.75"
    )
    thin = one(library, "irc-2021", "shingle_nail.penetration", panel_thickness_in=Fraction(15, 32))
    assert thin.value == Fraction(15, 32)


def test_shingle_nail_shows_an_eighth_below_a_thin_deck(library: Library) -> None:
    """Makers' association, nail application bulletin: seen."""
    row = one(library, "arma-nails", "shingle_nail.penetration", panel_thickness_in=Fraction(1, 2))
    assert (row.value, row.whose) == (Fraction("0.625"), "practice")


@pytest.mark.parametrize(("kind", "spots", "mark"), [("laminated", 4, "seen"), ("three-tab", 6, "derived")])
def test_hand_seal_spots_by_the_american_bulletin(library: Library, kind: str, spots: int, mark: str) -> None:
    """Makers' association, slopes greater than 21:12: 4 a laminated shingle, 2 a tab; seen, 3 x 2 derived."""
    row = one(library, "arma-hand-seal", "hand_seal.spots", shingle_kind=kind)
    assert (row.value, row.checked, row.may_decide) == (spots, mark, True)


def test_the_older_high_wind_sheet_is_met_by_6_in_and_the_2025_standard_is_not(library: Library) -> None:
    """Voluntary high-wind home standard: earlier sheet seen; 2025 edition, 4.2.2, seen (secondary)."""
    for asks in ("deck.nail.edge_spacing", "deck.nail.field_spacing"):
        assert one(library, "ibhs-high-wind-older", asks).value == 6
        assert one(library, "ibhs-high-wind-2025", asks).value == 4
    assert nails(one(library, "ibhs-high-wind-2025", "deck.nail")) == {RSRS_01}
    assert one(
        library, "ibhs-high-wind-older", "deck.panel.thickness", frame_spacing_in=24
    ).value == Fraction(7, 16)
    assert one(
        library, "ibhs-high-wind-older", "deck.panel.thickness", frame_spacing_in=16
    ).value == Fraction(3, 8)


def test_a_2007_re_nailing_with_0_131_in_is_not_short(library: Library) -> None:
    """Roofing Advisory Committee minutes, 24 Feb 2009, DCA09-DEC-025: seen."""
    assert one(library, "fbcr-2007", "deck.nail.shank").value == Fraction("0.131")


def test_the_florida_spacing_table_that_was_not_read_stays_empty(library: Library) -> None:
    """FBC Residential 2020 and 2023, Table R803.2.3.1: not seen."""
    for code in ("fbcr-2020", "fbcr-2023"):
        for asks in ("deck.nail.edge_spacing", "deck.nail.field_spacing"):
            row = one(library, code, asks)
            assert (row.value, row.may_decide) == (None, False)


def test_rhode_island_nails_gable_ends_at_4(library: Library) -> None:
    """Rhode Island one- and two-family code 2019, Appendix AA: seen."""
    assert one(library, "ri-2019-aa", "deck.nail.gable_spacing", mean_roof_height_ft=33).value == 4
    panel = one(library, "ri-2019-aa", "deck.panel.thickness", mean_roof_height_ft=33)
    assert panel.value == Fraction(7, 16)
    assert library.rows(["ri-2019-aa"], "deck.nail.gable_spacing", {"mean_roof_height_ft": 34}) == []


def test_louisiana_extension_nails_gable_ends_at_4_and_the_rest_at_6(library: Library) -> None:
    """Louisiana State University AgCenter, hurricane-hardy roof: seen; practice, not law."""
    assert one(library, "lsu-hurricane", "deck.nail.gable_spacing").value == 4
    assert one(library, "lsu-hurricane", "deck.nail.field_spacing").value == 6


# The trade's own facts: common practice, no published source. Shown beside the rules, never deciding.

INLAND = {"wind_zone": "inland-1"}


@pytest.mark.parametrize(
    ("asks", "facts", "kind", "value"),
    [
        ("deck.nail.gable_spacing", INLAND, "at_most", 4),
        ("deck.nail.edge_spacing", INLAND, "at_most", 6),
        ("deck.nail.field_spacing", INLAND, "at_most", 6),
        ("deck.nail.length", INLAND, "at_least", Fraction("2.5")),
        ("deck.nail.shank", INLAND, "at_least", Fraction("0.131")),
        ("deck.nail.finish", {}, "one_of", ("galvanized",)),
        ("underlayment.fastening.between", {}, "at_most", 36),
        ("underlayment.fastening.at_laps", {}, "at_most", 36),
        ("starter.nail.into", {}, "one_of", ("solid-wood",)),
        ("shingle_nail.line", {"shingle_kind": "laminated"}, "one_of", ("through-both-layers",)),
        ("shingle_nail.set", {}, "one_of", ("flush",)),
        ("shingle.nails", {}, "at_least", 4),
        ("shingle_nail.over_joint", {}, "one_of", ("clear",)),
        ("roof_bracket.nail.length", {}, "at_least", Fraction("3.5")),
        ("roof_bracket.nail.into", {}, "one_of", ("rafter",)),
        ("hand_seal.spot_spacing", {}, "at_most", 6),
    ],
)
def test_a_fact_of_the_trade_is_kept_and_never_decides(
    library: Library, asks: str, facts: dict[str, object], kind: str, value: object
) -> None:
    """Common practice, no published source."""
    row = one(library, "trade-practice", asks, **facts)
    assert (row.kind, row.value) == (kind, value)
    assert (row.checked, row.locator, row.whose) == ("common_practice", COMMON_PRACTICE, "practice")
    assert not row.may_decide


def test_starter_nails_stand_1_to_2_and_a_half_inches_from_the_edge(library: Library) -> None:
    """Common practice, no published source."""
    rows = library.rows(["trade-practice"], "starter.nail.from_edge", {})
    assert {(row.kind, row.value) for row in rows} == {("at_least", 1), ("at_most", Fraction("2.5"))}
    assert not any(row.may_decide for row in rows)


def test_the_trade_spacing_is_for_inland_windstorm_zones_alone(library: Library) -> None:
    """Common practice, no published source: unknown or seaward places get no such row."""
    assert library.rows(["trade-practice"], "deck.nail.gable_spacing", {"wind_zone": "seaward"}) == []
    assert library.rows(["trade-practice"], "deck.nail.gable_spacing", {}) == []


def test_a_16d_nail_is_3_and_a_half_inches(library: Library) -> None:
    """Common practice for the bracket nail; the length of 16d is in the published penny list."""
    bracket = one(library, "trade-practice", "roof_bracket.nail.length").value
    assert bracket == library.table("penny_lengths").lookup(penny=16).number("length_in")


def test_the_36_in_felt_rule_never_makes_a_140_mph_job_meet(library: Library) -> None:
    """Superseded: IRC before 2015, R905.2.7.2, by web copies; replaced by the 12 in and 6 in grid."""
    facts = {"wind_ultimate_mph": 140, "wind_nominal_mph": 110}
    rows = library.rows(["irc-2018", "irc-2009", "trade-practice"], "underlayment.fastening.between", facts)
    assert {(row.code, row.value) for row in rows} == {
        ("irc-2018", 12),
        ("irc-2009", 36),
        ("trade-practice", 36),
    }
    deciding = [row for row in rows if row.may_decide]
    assert [(row.code, row.value) for row in deciding] == [("irc-2018", 12)]
    assert all(row.superseded for row in rows if row.value == 36)


def test_no_practice_row_without_a_source_decides_and_no_superseded_row_does(library: Library) -> None:
    """Over every row there is: memory, common practice, superseded rules and cells not read never decide."""
    rows = library.all_rows(library.code_ids())
    silent = [
        row
        for row in rows
        if row.checked in ("memory", "common_practice")
        or row.superseded
        or (row.value is None and row.kind != "present")
    ]
    assert len(silent) > 30
    assert not any(row.may_decide for row in silent)
    assert all(row.may_decide for row in rows if row not in silent)
