"""What a figure is of: title or kind of the thing, beside its id."""

import pytest

from packet.closeout.redact import redact
from packet.closeout.things import thing_of, things
from packet.text import load_words
from packet.workspace import Workspace
from tests.support.office import ROOT, Office


@pytest.mark.parametrize(
    ("ref", "name"),
    [
        ("plane.MS.net_area", "front, south MS"),
        ("edge.E1.worked", "Valley E1"),
        ("area.A1.area", "Area A1"),
        ("sheet.S2.area", "Sheet S2"),
        ("opening.O1.area", "dormer O1"),
        ("takeoff.step-flashing.V1", "Valley V1"),
        ("takeoff.drip-edge.E1", "Valley E1"),
        ("takeoff.underlayment.MS.open", "front, south MS"),
        ("work.area", ""),
        ("takeoff.shingles.net", ""),
        ("edge.E1.worked.1", ""),
        ("edge.NONE.worked", ""),
        ("plane", ""),
    ],
)
def test_a_figure_is_named_after_its_thing(job_office: Office, ref: str, name: str) -> None:
    words = load_words(Workspace(ROOT).shared_folders())
    assert thing_of(ref, things(redact(job_office.closeout(), "outside"), words)) == name


def test_a_plane_that_is_called_by_its_id_is_named_once() -> None:
    assert thing_of("plane.GS.area", {"GS": "GS"}) == "GS"


def test_a_record_without_a_roof_names_nothing(small_office: Office) -> None:
    words = load_words(Workspace(ROOT).shared_folders())
    assert things(redact(small_office.closeout(), "office"), words) == {}
