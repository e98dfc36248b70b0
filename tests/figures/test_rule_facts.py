"""Facts that rules depend on, from the record: the zone of a nailing table, the width of a chimney, the framing."""

from fractions import Fraction

import pytest

from packet.figure import FigureSet
from packet.figures.make import make_figures
from packet.figures.rules import facts, limits
from packet.record.load import read_record
from packet.reference import Library
from packet.workspace import packaged
from tests.figures.test_deck import GABLE
from tests.support.office import Office

T325D = (
    "basis: {code: irc-2018, practices: [apa-t325d], authority: town, wind_speed: 120 mph, wind_kind: nominal,"
    " exposure: B}"
)


@pytest.fixture
def gable(tmp_path) -> Office:  # type: ignore[no-untyped-def]
    return Office(tmp_path / "gable", GABLE)


@pytest.fixture(scope="module")
def library() -> Library:
    return Library.load([packaged("shared")])


def known(office: Office, library: Library) -> tuple[dict[str, object], FigureSet]:
    read, problems = read_record(office.job)
    assert read, problems
    record = read.value
    figures = make_figures(record, library)
    return facts(record, figures, library), figures


@pytest.mark.parametrize(("zone", "apart"), [("zone-1", 12), ("zone-2", 6), ("zone-3", 4)])
def test_a_zone_written_down_selects_the_cell_of_the_nailing_table(
    gable: Office, zone: str, apart: int
) -> None:
    """APA T325D (2005), 120 mph nominal: seen (secondary)."""
    gable.added(T325D).changed("roof.framing.species", "Southern Pine").changed("basis.roof_zone", zone)
    closeout = gable.closeout()
    assert closeout.deck_plan
    assert closeout.deck_plan.field == f"rule.apa-t325d-field-120-{zone}"
    assert closeout.figures[closeout.deck_plan.field].value == apart


def test_without_a_zone_no_cell_of_it_decides(gable: Office) -> None:
    gable.added(T325D).changed("roof.framing.species", "Southern Pine")
    closeout = gable.closeout()
    assert closeout.deck_plan
    assert closeout.deck_plan.field == "deck.field_spacing"
    row = next(result for result in closeout.results if result.requirement == "deck-nail-field-spacing")
    lacking = {fact for part in row.parts for limit in part.limits for fact in limit.missing}
    assert lacking == {"roof_zone"}


def test_the_widest_new_chimney_tells_of_a_cricket(gable: Office, library: Library) -> None:
    """IRC 2015 R903.2.2, wider than 30 in: seen (secondary). The one left as found is not asked."""
    detail = "kind: chimney, where: ridge, state: {}, width: {}"
    chimneys = [("new", "28 in"), ("new", "32 in"), ("left as found", "40 in")]
    entries = [f"{{id: CH{n}, {detail.format(*each)}}}" for n, each in enumerate(chimneys, 1)]
    found, figures = known(gable.added(f"details: [{', '.join(entries)}]"), library)
    assert found["chimney_width_in"] == 32
    (limit,) = limits("chimney.cricket", ["irc-2015"], found, library, figures)
    assert limit.decides
    gable.changed("details.CH2.width", "30 in")
    found, figures = known(gable, library)
    assert limits("chimney.cricket", ["irc-2015"], found, library, figures) == ()


def test_a_rule_on_the_framing_sees_the_widest_space_under_a_sheet(gable: Office, library: Library) -> None:
    assert known(gable, library)[0]["frame_spacing_in"] == 24
    gable.changed("roof.framing.lines", "[{plane: GS, at: [0 ft, 31 in, 5 ft, 8 ft, 10 ft, 12 ft, 16 ft]}]")
    assert known(gable, library)[0]["frame_spacing_in"] == Fraction(48)
