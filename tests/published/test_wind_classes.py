"""Wind classes of shingles and speed conversions, each beside its source."""

import math
from fractions import Fraction

import pytest

from packet.reference import Library, NotInTable
from packet.workspace import packaged


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


@pytest.mark.parametrize(
    ("speed", "word"),
    [(85, "D"), (116, "D"), (117, "G"), (130, "G"), (155, "G"), (155.5, "H"), (156, "H"), (194, "H")],
)
def test_class_by_ultimate_speed(library: Library, speed: float, word: str) -> None:
    """Makers' association, Using ASTM D7158 where standard conditions do not apply: seen."""
    row = library.table("wind_classes").lookup(wind_ultimate_mph=speed, exposure="B", mean_roof_height_ft=13)
    assert row.word("class") == word
    assert row.source.checked == "seen"


@pytest.mark.parametrize(("speed", "word"), [(90, "D"), (91, "G"), (120, "G"), (121, "H"), (150, "H")])
def test_class_by_the_older_nominal_speed(library: Library, speed: int, word: str) -> None:
    """Makers' association, press release of 28 Nov 2005: D 90, G 120, H 150 mph gust; seen."""
    table = library.table("wind_classes_nominal")
    assert table.lookup(wind_nominal_mph=speed, exposure="C", mean_roof_height_ft=60).word("class") == word


@pytest.mark.parametrize(
    ("speed", "exposure", "height"), [(195, "B", 13), (130, "D", 13), (130, "B", 60.1), (130, "C", None)]
)
def test_no_class_is_named_outside_the_validity(
    library: Library, speed: int, exposure: str, height: float | None
) -> None:
    """ASTM D7158-24a, significance and use: Exposure B or C, mean roof height 60 ft or less; seen."""
    with pytest.raises(NotInTable):
        library.table("wind_classes").lookup(
            wind_ultimate_mph=speed, exposure=exposure, mean_roof_height_ft=height
        )


def test_old_and_new_class_limits_agree_through_the_code_s_conversion(library: Library) -> None:
    """Nominal = ultimate x sqrt(0.6), IBC 2018 Eq. 16-33: 116, 155, 194 give 90, 120, 150; derived."""
    new = [row.number("wind_ultimate_mph") for row in library.table("wind_classes").rows]
    old = [row.number("wind_nominal_mph") for row in library.table("wind_classes_nominal").rows]
    assert [round(float(speed) * math.sqrt(0.6)) for speed in new] == [int(speed) for speed in old]


@pytest.mark.parametrize("code", ["irc-2018", "irc-2021"])
@pytest.mark.parametrize(
    ("speed", "classes"),
    [(100, "DGH"), (116, "DGH"), (116.5, "GH"), (130, "GH"), (155, "GH"), (160, "H"), (194, "H")],
)
def test_code_rows_accept_a_class_and_every_stronger_one(
    library: Library, code: str, speed: float, classes: str
) -> None:
    """IRC R905.2.4.1 asks for the class; its limits by the makers' association: seen (secondary)."""
    facts = {"wind_ultimate_mph": speed, "exposure": "B", "mean_roof_height_ft": 13}
    (row,) = library.rows([code], "shingle.wind_class", facts)
    assert row.value == tuple(f"ASTM D7158 Class {letter}" for letter in classes)
    assert (row.may_decide, row.caution) == (True, True)


@pytest.mark.parametrize("code", ["irc-2018", "irc-2021"])
@pytest.mark.parametrize(
    ("facts", "why"),
    [
        ({"exposure": "D"}, "exposure B and C alone"),
        ({"mean_roof_height_ft": 61}, "a mean roof height of 60 ft"),
        ({"wind_ultimate_mph": 195}, "194 mph ultimate"),
    ],
)
def test_code_rows_decide_nothing_outside_the_validity(
    library: Library, code: str, facts: dict[str, object], why: str
) -> None:
    """ASTM D7158-24a, significance and use: seen. Out there the association's own method applies."""
    here = {"wind_ultimate_mph": 130, "exposure": "B", "mean_roof_height_ft": 13, **facts}
    (row,) = library.rows([code], "shingle.wind_class", here)
    assert (row.value, row.may_decide) == (None, False)
    assert why in row.reason
    assert library.match([code], "shingle.wind_class", here).cannot_tell == ()


@pytest.mark.parametrize(
    ("ultimate", "nominal"),
    [(100, 78), (110, 85), (120, 93), (130, 101), (150, 116), (160, 124), (180, 139), (190, 147), (200, 155)],
)
def test_ultimate_to_nominal(library: Library, ultimate: int, nominal: int) -> None:
    """IBC 2018, Table 1609.3.1, compilation of wind provisions, p. 26: seen. 100 is printed 78."""
    row = library.table("ultimate_to_nominal").lookup(wind_ultimate_mph=ultimate)
    assert row.number("wind_nominal_mph") == nominal
    assert abs(ultimate * math.sqrt(0.6) - nominal) < (1 if ultimate == 100 else 0.5)


@pytest.mark.parametrize(("mile", "gust"), [(70, 85), (80, 100), (100, 120), (110, 130), (150, 170)])
def test_fastest_mile_to_gust(library: Library, mile: int, gust: int) -> None:
    """IBC 2000, Table 1609.3.1, as set out by structural engineers: seen (secondary)."""
    row = library.table("fastest_mile").lookup(fastest_mile_mph=mile)
    assert (row.number("gust_mph"), row.source.checked) == (gust, "seen_secondary")


@pytest.mark.parametrize(
    ("speed", "zone", "edge", "field"),
    [
        (90, "zone-3", 6, 12),
        (120, "zone-2", 6, 6),
        (120, "zone-3", 6, 4),
        (150, "zone-1", 6, 6),
        (150, "zone-3", 6, 3),
    ],
)
def test_apa_deck_nailing_by_nominal_speed(
    library: Library, speed: int, zone: str, edge: int, field: int
) -> None:
    """APA T325D (2005), two restatements: seen (secondary); Exposure B, 35 ft, 24 in framing."""
    place = {
        "exposure": "B",
        "mean_roof_height_ft": 30,
        "panel_thickness_in": Fraction(15, 32),
        "frame_spacing_in": 24,
    }
    table = library.table("apa_deck_nailing")
    row = table.lookup(wind_nominal_mph=speed, zone=zone, **place)
    assert (row.number("edge_in"), row.number("field_in")) == (edge, field)
    with pytest.raises(NotInTable):
        table.lookup(wind_nominal_mph=speed, zone=zone, **{**place, "exposure": "C"})
    with pytest.raises(NotInTable):
        table.lookup(wind_nominal_mph=105, zone=zone, **place)
