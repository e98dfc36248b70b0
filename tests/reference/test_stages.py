"""Stages in the order of the work: what covers each, and which of the record's days bound its photos."""

from packet.reference import Library

#: Stage, the stage that covers it, the day it can first be seen, the day it can last be seen.
STAGES = [
    ("before", "stripped", None, "started"),
    ("stripped", "deck", "started", "dried_in"),
    ("deck", "dried-in", "started", "dried_in"),
    ("dried-in", "covering", "started", "finished"),
    ("edges", "covering", "started", "finished"),
    ("covering", "done", "started", "finished"),
    ("done", None, "finished", None),
]


def test_each_stage_is_bounded_by_the_days_its_layer_lay_open(library: Library) -> None:
    found = [(each.id, each.hidden_by, each.earliest, each.latest) for each in library.stages()]
    assert found == STAGES


def test_a_stage_is_covered_by_a_later_one(library: Library) -> None:
    order = [stage.id for stage in library.stages()]
    for stage in library.stages():
        assert stage.hidden_by is None or order.index(stage.hidden_by) > order.index(stage.id)
