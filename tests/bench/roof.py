"""The benchmark of the roof: ``python -m tests.bench.roof`` prints milliseconds, warm, best of several rounds.

Measured are all figures of a record, the takeoff among them, the roof in plan, and its two drawings. Nothing is
asserted about time: a machine may be busy. What does not depend on the machine, how often labels are held
against the sheet, is counted in ``tests/drawings/test_linear.py``.
"""

import os
from collections.abc import Callable, Iterator
from dataclasses import asdict
from time import perf_counter
from typing import Any

from packet.drawings import layout
from packet.drawings.roof_plan import roof_plan
from packet.figures import shapes
from packet.figures.make import make_figures
from packet.figures.plan import plan
from packet.figures.takeoff import take_off
from packet.record.job import JobRecord
from packet.reference import Library
from packet.text import load_words
from tests.bench.build import ROOT
from tests.bench.cut_up import cut_up

SIZES = (3, 6, 12, 24, 48)
ROUNDS = 9

#: What is aimed at for a roof of twelve planes [ms].
AIM_PLANES, AIM_MS = 12, 50.0

STEPS = ("figures", "takeoff", "plan", "wide", "narrow")


def steps_ms(record: JobRecord, library: Library, words: Any) -> dict[str, float]:
    """Return how long each step takes, with nothing kept from the last time [ms]."""
    shapes._roof_shape.cache_clear()
    layout.site.cache_clear()
    made: dict[str, Any] = {}

    def steps() -> Iterator[tuple[str, Callable[[], Any]]]:
        yield "figures", lambda: make_figures(record, library)
        yield "takeoff", lambda: take_off(record, library, made["figures"])
        yield "plan", lambda: asdict(plan(record, made["figures"]))  # type: ignore[arg-type]
        yield "wide", lambda: roof_plan(made["plan"], words)
        yield "narrow", lambda: roof_plan(made["plan"], words, narrow=True)

    taken = {}
    for name, work in steps():
        begun = perf_counter()
        made[name] = work()
        taken[name] = 1000 * (perf_counter() - begun)
    return taken


def measured(planes: int, library: Library, words: Any, rounds: int = ROUNDS) -> dict[str, float]:
    """Return the best time of each step for a cut-up roof of so many planes [ms]."""
    record = JobRecord.model_validate(cut_up(planes))
    times = [steps_ms(record, library, words) for _ in range(rounds)]
    return {name: min(one[name] for one in times) for name in STEPS}


def line(planes: int, found: dict[str, float]) -> str:
    """Return one line of the table."""
    whole = sum(found.values())
    cells = "".join(f"{found[name]:9.1f}" for name in STEPS)
    aim = ""
    if planes == AIM_PLANES:
        aim = f"  aim {AIM_MS:g}: {'meets' if whole <= AIM_MS else 'MISSES'}"
    return f"{planes:6}{cells}{whole:9.1f}{whole / planes:11.1f}{aim}"


def main() -> None:
    """Measure and print the table."""
    library, words = Library.load([ROOT / "shared"]), load_words([ROOT / "shared"])["drawing"]
    print(f"milliseconds, best of {ROUNDS} rounds; load of the machine {os.getloadavg()[0]:.1f}")
    print("planes" + "".join(f"{name:>9}" for name in (*STEPS, "all")) + f"{'each plane':>11}")
    for planes in SIZES:
        print(line(planes, measured(planes, library, words)), flush=True)


if __name__ == "__main__":
    main()
