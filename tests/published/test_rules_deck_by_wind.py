"""Deck nailing by nominal speed and zone, as rows: printed cells alone, and nothing between them."""

import pytest

from packet.reference import Library
from packet.workspace import packaged
from tests.published.rows import applies, one, told

PLACE: dict[str, object] = {
    "exposure": "B",
    "mean_roof_height_ft": 35,
    "panel_thickness_in": 0.625,
    "frame_spacing_in": 24,
    "frame_gravity": 0.42,
}


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


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
    ],
)
def test_printed_cells(library: Library, speed: int, zone: str, field: int) -> None:
    """APA T325D (2005), by two restatements: seen (secondary); rows and table hold the same cells."""
    facts = {**PLACE, "wind_nominal_mph": speed, "roof_zone": zone}
    assert told(one(library, "apa-t325d", "deck.nail.field_spacing", **facts)) == (
        field, "seen_secondary", True,
    )  # fmt: skip
    assert told(one(library, "apa-t325d", "deck.nail.edge_spacing", **facts)) == (6, "seen_secondary", True)
    valid = {name: value for name, value in PLACE.items() if name != "frame_gravity"}
    cell = library.table("apa_deck_nailing").lookup(wind_nominal_mph=speed, zone=zone, **valid)
    assert (cell.number("edge_in"), cell.number("field_in")) == (6, field)


@pytest.mark.parametrize("speed", [89, 91, 105, 119.5, 121, 149, 151, 170])
@pytest.mark.parametrize("zone", ["zone-1", "zone-3"])
def test_between_and_beyond_them_neither_neighbor_stands_in(
    library: Library, speed: float, zone: str
) -> None:
    """The table prints speeds between 90, 120 and 150 that were not read: no row from them, and none above."""
    facts = {**PLACE, "wind_nominal_mph": speed, "roof_zone": zone}
    for asks in ("deck.nail.field_spacing", "deck.nail.edge_spacing"):
        row = one(library, "apa-t325d", asks, **facts)
        assert (row.value, row.may_decide) == (None, False)
        assert row.reason


@pytest.mark.parametrize(
    ("fact", "value"),
    [
        ("exposure", "C"),
        ("mean_roof_height_ft", 35.1),
        ("panel_thickness_in", 0.75),
        ("frame_spacing_in", 32),
        ("frame_gravity", 0.36),
    ],
)
def test_outside_its_conditions_it_asks_nothing(library: Library, fact: str, value: object) -> None:
    """Basis of the table: panels 5/8 in, framing 24 in, G 0.42, 35 ft, Exposure B: seen."""
    facts = {**PLACE, "wind_nominal_mph": 120, "roof_zone": "zone-2"}
    assert applies(library, "apa-t325d", "deck.nail.field_spacing", **facts) is True
    assert applies(library, "apa-t325d", "deck.nail.field_spacing", **{**facts, fact: value}) is False
    assert applies(library, "apa-t325d", "deck.nail.field_spacing", **{**facts, fact: None}) is None


def test_an_ultimate_speed_never_enters_it(library: Library) -> None:
    facts = {**PLACE, "wind_ultimate_mph": 120, "roof_zone": "zone-2"}
    assert applies(library, "apa-t325d", "deck.nail.field_spacing", **facts) is None


def test_the_tables_nails_and_the_cells_of_which_the_kind_was_not_read(library: Library) -> None:
    """Basis: 8d common 0.131 x 2-1/2 or ring shank 0.135 x 2-1/2: seen; which cells want ring: not read."""
    assert told(one(library, "apa-t325d", "deck.nail.length", **PLACE)) == (2.5, "seen", True)
    shank = one(library, "apa-t325d", "deck.nail.shank", **PLACE)
    assert (float(shank.value), shank.checked) == (0.131, "seen")  # type: ignore[arg-type]
    kind = one(library, "apa-t325d", "deck.nail.shank_kind", **PLACE, wind_nominal_mph=120)
    assert (kind.value, kind.may_decide) == (None, False)
