"""Work of the drawing grows as the roof does: what is counted does not depend on the machine."""

from collections import Counter
from typing import Any

import pytest

from packet.drawings import flat, layout, taken
from packet.drawings.roof_plan import roof_plan
from tests.bench.cut_up import cut_up
from tests.drawings.formed import geometry_of_record

#: How many times the work a plane takes may grow from 24 planes to 48, both of which fill the sheet: fuller, so that
#: a label has a few more neighbours. Asking all others would make it twice as much.
MOST_TIMES = 1.7


def held_a_plane(planes: int, words: Any, narrow: bool, monkeypatch: pytest.MonkeyPatch) -> float:
    """Return how often two things on the sheet were held against each other, for each plane."""
    geometry, counted = geometry_of_record(cut_up(planes)), Counter[str]()
    layout.site.cache_clear()
    with monkeypatch.context() as patched:
        for name in ("do_overlap", "crosses", "meeting"):
            real = getattr(flat, name)

            def counting(*given: Any, real: Any = real, name: str = name) -> Any:
                counted[name] += 1
                return real(*given)

            patched.setattr(taken, name, counting)
        roof_plan(geometry, words, narrow=narrow)
    assert counted["do_overlap"] > planes
    return sum(counted.values()) / planes


@pytest.mark.parametrize("narrow", [False, True], ids=["wide", "narrow"])
def test_a_plane_of_a_large_roof_takes_little_more_work(
    narrow: bool, words: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    few, many = (held_a_plane(planes, words, narrow, monkeypatch) for planes in (24, 48))
    assert many <= MOST_TIMES * few
