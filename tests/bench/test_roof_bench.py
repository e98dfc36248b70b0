"""The benchmark of the roof itself: its roofs have the planes they say, and its table the lines it should."""

import pytest

from packet.record.job import JobRecord
from packet.reference import Library
from packet.text import load_words
from tests.bench.build import ROOT
from tests.bench.cut_up import cut_up
from tests.bench.roof import SIZES, STEPS, line, measured


@pytest.mark.parametrize("planes", SIZES)
def test_a_cut_up_roof_has_so_many_planes_and_every_one_is_covered(planes: int) -> None:
    record = JobRecord.model_validate(cut_up(planes))
    assert record.roof is not None
    assert record.covering is not None
    assert len(record.roof.plane_ids) == planes
    assert sorted(area.plane for area in record.covering.areas) == sorted(record.roof.plane_ids)


def test_a_line_of_the_table_has_each_step_their_sum_and_the_aim() -> None:
    library, words = Library.load([ROOT / "shared"]), load_words([ROOT / "shared"])["drawing"]
    found = measured(12, library, words, rounds=1)
    assert set(found) == set(STEPS)
    assert all(taken > 0 for taken in found.values())
    even = dict.fromkeys(STEPS, 9.0)
    assert line(12, even).split() == ["12", *["9.0"] * 5, "45.0", "3.8", "aim", "50:", "meets"]
    assert line(24, even).split() == ["24", *["9.0"] * 5, "45.0", "1.9"]
