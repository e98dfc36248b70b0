"""Deck of many sheets, laid out and drawn: ``python -m tests.bench.deck`` prints how long it takes."""

from collections.abc import Callable, Mapping
from dataclasses import asdict
from statistics import median
from time import process_time
from typing import Any, TypeVar

import yaml

from packet.drawings.deck_plan import deck_plans
from packet.figure import FigureSet
from packet.figures.deck import deck_plan
from packet.figures.make import make_figures
from packet.figures.plan import plan
from packet.record.job import JobRecord
from packet.reference import Library
from packet.text import load_words
from tests.support.office import ROOT

Made = TypeVar("Made")

PLANES, SHEETS, RUNS = 12, 40, 9

#: Most that is aimed at for layout and wide drawings of ``SHEETS`` sheets on ``PLANES`` planes [s].
AIM_S = 0.2

#: Each plane is 24 ft long; three sheets of a course and the next course half a sheet over.
PLACES = [("0 ft", "0 ft"), ("8 ft", "0 ft"), ("16 ft", "0 ft"), ("4 ft", "4 ft"), ("12 ft", "4 ft")]


def record_of(planes: int, sheets: int, spacing: str = "3 in") -> JobRecord:
    """Return a record with sheets dealt out to planes: 16 in framing, nails at one spacing."""
    roof = [
        {
            "id": f"P{number}",
            "title": f"plane {number}",
            "shape": "rectangle",
            "lower": "24 ft",
            "run": "14 ft",
            "pitch": "6:12",
            "facing": "south",
            "at": [f"{30 * number} ft", "0 ft"],
        }
        for number in range(planes)
    ]
    laid = [
        {
            "id": f"S{number}",
            "plane": f"P{number % planes}",
            "at": list(PLACES[number // planes]),
            "along": "8 ft",
            "up": "4 ft",
            "why": "rot",
        }
        for number in range(sheets)
    ]
    lines = [{"plane": plane["id"], "first": "0 ft"} for plane in roof]
    data = {
        "job": {"number": "26-001", "kind": "re-roof", "status": "closed"},
        "property": {"street": "1 Sedge Court", "town": "Pellam Reach", "state": "South Carolina"}
        | {"time_zone": "America/New_York"},
        "cause": {"what": "The covering was worn out."},
        "roof": {
            "eave_height": "9 ft",
            "planes": roof,
            "framing": {"member": "2x8 rafter", "spacing": "16 in oc", "width": "1-1/2 in", "lines": lines},
        },
        "deck": {
            "panel": {"product": "plywood", "thickness": "15/32 in", "width": "4 ft", "length": "8 ft"},
            "edge_spacing": spacing,
            "field_spacing": spacing,
            "sheets": laid,
        },
    }
    text = yaml.safe_dump(data)
    return JobRecord.model_validate(yaml.load(text, yaml.BaseLoader))


def copy_of(record: JobRecord, library: Library) -> dict[str, Any]:
    """Return what drawings of the deck see of a copy."""
    figures = make_figures(record, library)
    deck = deck_plan(record, library, figures)
    geometry = plan(record, figures)
    return {
        "deck_plan": asdict(deck) if deck else None,
        "geometry": asdict(geometry) if geometry else None,
        "figures": {id: asdict(figure) for id, figure in figures.by_id.items()},
    }


def measure(planes: int, sheets: int, library: Library, words: Mapping[str, str]) -> dict[str, float]:
    """Return nails, and the median processor times of layout and drawings, warm [s]."""
    record = record_of(planes, sheets)
    figures = make_figures(record, library)
    copy = copy_of(record, library)
    layout_s, _ = _warm(lambda: deck_plan(record, library, FigureSet(dict(figures.by_id))))
    wide_s, drawn = _warm(lambda: deck_plans(copy, words))
    narrow_s, _ = _warm(lambda: deck_plans(copy, words, narrow=True))
    return {
        "nails": float(copy["figures"]["deck.nails"]["value"]),
        "layout_s": layout_s,
        "wide_s": wide_s,
        "narrow_s": narrow_s,
        "kib": sum(len(text) for text in drawn.values()) / len(drawn) / 1024,
    }


def _warm(work: Callable[[], Made]) -> tuple[float, Made]:
    made, times = work(), []
    for _ in range(RUNS):
        begun = process_time()
        made = work()
        times.append(process_time() - begun)
    return median(times), made


def main() -> None:
    """Measure and print the table; the last lines show whether time goes with the number of nails."""
    library, words = Library.load([ROOT / "shared"]), load_words([ROOT / "shared"])["drawing"]
    print("planes sheets  nails  layout  drawn wide  narrow   both [s]  us a nail  KiB each")
    for planes, sheets in ((PLANES, SHEETS), (3, 10), (6, 20), (24, 80)):
        found = measure(planes, sheets, library, words)
        both = found["layout_s"] + found["wide_s"]
        print(
            f"{planes:6} {sheets:6} {found['nails']:6.0f} {found['layout_s']:7.3f} {found['wide_s']:11.3f}"
            f" {found['narrow_s']:7.3f} {both:10.3f} {both / found['nails'] * 1e6:10.1f} {found['kib']:9.1f}"
        )
        if sheets == SHEETS:
            verdict = "meets" if both <= AIM_S else "MISSES"
            print(f"       layout and wide drawings: {both:.3f} s, aim {AIM_S} s: {verdict}")


if __name__ == "__main__":
    main()
