"""Changing one dimension of a demo job changes exactly the lines it should, and nothing else."""

from functools import cache
from pathlib import Path

import pytest

from packet.text import load_words
from packet.workspace import packaged
from tests.support.office import NUMBER, ROOT
from tests.support.takeoff import TakenOff, taken_off
from tests.support.yamltext import with_value

#: What each case says: the job, the path changed, its new value.
Change = tuple[str, str, str]
HIP, PATCH = "26-052", "26-041"


@cache
def text_of(job: str) -> str:
    record = Path(ROOT, "jobs", job, "job.yaml").read_text(encoding="utf-8")
    return with_value(record, "job.number", NUMBER)


@cache
def before(job: str) -> TakenOff:
    return taken_off(text_of(job))


def changed(change: Change) -> set[str]:
    """Return what a change of one value changes.

    Lines of the takeoff are named by line and total (``caps.net``); planes, edges and areas by their ids;
    everything else by its figure. The parts of a line are left out: their sum is the net.
    """
    job, path, value = change
    old, new = before(job).figures, taken_off(with_value(text_of(job), path, value)).figures
    ids = [id for id in {**old, **new} if id not in old or id not in new or old[id].value != new[id].value]
    assert [id for id in ids if id.startswith(path)], f"{path} is no figure"
    return {name for id in ids if not id.startswith(path) and (name := group(id))}


#: Totals of a line of the takeoff.
TOTALS = ("net", "need", "to_buy", "gives", "covers")


def group(id: str) -> str:
    """Return the name a changed figure goes by; "" for a part of a line."""
    first, _, rest = id.partition(".")
    if first == "takeoff":
        line, _, name = rest.partition(".")
        return f"{line}.{name}" if name in TOTALS else ""
    if first == "renailed":
        return first
    return f"{first} {rest.partition('.')[0]}" if first in ("plane", "edge", "area") else id


#: What follows from the size of the roof, and from that of the work.
ROOF = {"roof.area", "roof.squares", "roof.gross_area", "roof.gross_squares"}
WORK = {"work.area", "work.squares", "disposal.weight", "disposal.tons", "shingles.net", "shingles.need"}
WORK |= {"roofing-nails.net", "underlayment.net"}
OLD_DECK = {"renailed", "deck-nails.net"}
TAPE = {"joint-tape.net", "joint-tape.need"}
HEIGHTS = {"roof.ridge_height", "roof.mean_height"}
EVERY_PLANE = {f"plane {id}" for id in ("HS", "HN", "HE", "HW")} | {f"area A{n}" for n in range(1, 5)}
HIPS = {f"edge {id}" for id in ("HS-HE", "HS-HW", "HN-HE", "HN-HW")}

CASES: dict[Change, set[str]] = {
    # the long planes, their eaves and the ridge; ends and hips stay, and so do the heights
    (HIP, "roof.forms.MAIN.length", "50 ft"): {
        "plane HS", "plane HN", "area A1", "area A2", "edge HS-EAVE", "edge HN-EAVE", "edge HS-HN",
        "edges.eave.length", "edges.ridge.length", "roof.plan_area", *ROOF, *WORK, *TAPE,
        "shingles.to_buy", "joint-tape.to_buy", "caps.net", "cap-nails.net", *OLD_DECK, "starter.net",
        "drip-edge.net", "drip-edge.to_buy",
    },
    # every plane; of the edges not the eaves of the long planes
    (HIP, "roof.forms.MAIN.depth", "32 ft"): {
        *EVERY_PLANE, *HIPS, "edge HE-EAVE", "edge HW-EAVE", "edge HS-HN",
        "edges.eave.length", "edges.ridge.length", "edges.hip.length", "roof.plan_area", *ROOF, *WORK, *TAPE,
        *HEIGHTS, "ventilation.high_above_eaves",
        "shingles.to_buy", "joint-tape.to_buy", "caps.net", "cap-nails.net", *OLD_DECK, "starter.net",
        "drip-edge.net", "drip-edge.to_buy", "underlayment.to_buy",
    },
    # what lies level stays: eaves, ridge, plan, and the metal along them
    (HIP, "roof.forms.MAIN.pitch", "8:12"): {
        *EVERY_PLANE, *HIPS, "edges.hip.length", *ROOF, *WORK, *TAPE, *HEIGHTS, "ventilation.high_above_eaves",
        "shingles.to_buy", "joint-tape.to_buy", "caps.net", "cap-nails.net", *OLD_DECK,
    },
    # a shingle's size counts nails and caps; the wrapper's cover is what bundles go by
    (HIP, "covering.shingle.exposure", "5 in"): {"roofing-nails.net", "caps.net"},
    (HIP, "covering.shingle.width", "36 in"): {"roofing-nails.net"},
    (HIP, "covering.nails_each", "4"): {"roofing-nails.net"},
    (HIP, "dry_in.head_lap", "8 in"): {"underlayment.net", "underlayment.to_buy", "cap-nails.net"},
    (HIP, "dry_in.end_lap", "12 in"): {"underlayment.gives", "underlayment.covers"},
    (HIP, "dry_in.layers", "2"): {"underlayment.net", "underlayment.to_buy"},
    (HIP, "dry_in.fasteners.at_laps", "4 in"): {"cap-nails.net", "cap-nails.to_buy"},
    (HIP, "bought.DRIP-EDGE.length_each", "8 ft"): {"drip-edge.net", "drip-edge.to_buy"},
    (HIP, "drip_edge.lap", "12 in"): {"drip-edge.net", "drip-edge.to_buy"},
    (HIP, "bought.SHINGLES.allowance.percent", "15 %"): {"shingles.need", "shingles.to_buy"},
    (HIP, "bought.SHINGLES.cover_each", "25 sq ft"): {
        "shingles.to_buy", "shingles.covers", "bought.SHINGLES.cover",
    },
    (HIP, "bought.SHINGLES.scrap", "5"): {
        "bought.SHINGLES.laid", "bought.SHINGLES.cover", "shingles.covers",
    },
    (HIP, "bought.SHINGLES.deliveries.DL2.quantity", "23"): {
        "bought.SHINGLES.delivered", "bought.SHINGLES.laid", "bought.SHINGLES.cover", "shingles.covers",
    },
    (HIP, "bought.SHINGLES.planned", "50"): set(),
    # the tape is held against the computed length; it computes nothing
    (HIP, "roof.taped.HS-HE", "20 ft 9 in"): set(),
    # nails of two sizes are bought apart: they make no one need
    (HIP, "deck.nail.size", "2-3/8 x 0.120"): {"deck-nails.net", "deck-nails.to_buy", "deck-nails.covers"},
    (HIP, "deck.panel.thickness", "19/32 in"): set(),
    (HIP, "covering.nail.shank", "0.105 in"): set(),
    (HIP, "covering.nail.length", "1-3/4 in"): {"covering.nail.in_deck"},
    (HIP, "ventilation.vents.VT1.length", "22 ft"): {
        "ridge-vent.net", "ridge-vent.to_buy", "vent.VT1.area", "ventilation.high", "ventilation.total",
        "ventilation.ratio", "ventilation.high_share", "ventilation.high_of_all",
    },
    (HIP, "roof.old.layers", "2"): {"disposal.weight", "disposal.tons"},
    (HIP, "deck.edge_spacing", "6 in"): {"deck-nails.net"},
    (HIP, "deck.renailed.field_spacing", "6 in"): OLD_DECK,
    (HIP, "roof.framing.spacing", "16 in oc"): {*OLD_DECK, "deck-nails.to_buy"},
    (HIP, "deck.panel.length", "10 ft"): {*OLD_DECK, *TAPE},
    # 28 sq ft less of new deck is 28 more of old
    (HIP, "deck.sheets.S1.along", "1 ft"): {"sheet.S1.area", "deck.area", "deck-panels.net", *OLD_DECK},
    (HIP, "roof.eave_height", "10 ft"): HEIGHTS,
    # of the patch's house: a plane that was not worked on
    (PATCH, "roof.planes.MN.lower", "45 ft"): {
        "plane MN", "edge E6", "edge E10", "edges.eave.length", "edges.rake.length",
        "roof.plan_area", *ROOF, "work.share",
    },
    # the outline is taped on the slope: a pitch changes the plane and not the work on it
    (PATCH, "roof.planes.MS.pitch", "7:12"): {
        "plane MS", "edge E1", "edge E9", "edges.valley.length", "edges.rake.length", *ROOF, *HEIGHTS, "work.share",
    },
    (PATCH, "covering.areas.A1.outline.0.0", "15 ft"): {
        "area A1", "edge E5", *WORK, "work.share", "starter.net",
    },
    (PATCH, "roof.openings.O1.along", "11 ft"): {
        "opening.O1.area", "plane MS", "roof.area", "roof.squares", "work.share",
    },
    (PATCH, "details.C1.length", "6 ft"): {"step-flashing.net", "step-flashing.to_buy"},
    (PATCH, "details.C1.pieces", "12"): set(),
    (PATCH, "details.V1.lining_width", "24 in"): set(),
    (PATCH, "roof.edges.E1.measured", "17 ft 11 in"): set(),
    (PATCH, "covering.shingle.exposure", "5 in"): {
        "roofing-nails.net", "step-flashing.net", "step-flashing.to_buy",
    },
    (PATCH, "bought.STRIP.length_each", "6 ft"): {"valley-lining.to_buy", "valley-lining.covers"},
    (PATCH, "tie_in.spots_each", "9"): {"cement.net", "cement.to_buy"},
    (PATCH, "drip_edge.length", "10 ft"): set(),
}  # fmt: skip


@pytest.mark.parametrize("change", CASES, ids=lambda change: " ".join(change))
def test_one_dimension_changes_exactly_its_lines(change: Change) -> None:
    assert changed(change) == CASES[change]


def test_the_cases_reach_every_line_of_both_jobs() -> None:
    """A line that no case moved would be a line no dimension is known to move; boots are counted."""
    for job in (HIP, PATCH):
        lines = {line.use.replace(" ", "-") for line in before(job).lines if line.net} - {"pipe-boots"}
        reached = {
            name.partition(".")[0] for case, names in CASES.items() if case[0] == job for name in names
        }
        unmoved = {"deck-panels", "deck-nails", "cap-nails", "drip-edge"} if job == PATCH else set()
        assert lines - reached <= unmoved


@pytest.mark.parametrize("job", [HIP, PATCH])
def test_every_symbol_of_a_working_has_its_word(job: str) -> None:
    words = load_words([packaged("shared")])
    symbols = {
        term.symbol.rstrip("0123456789").rstrip("_")
        for figure in before(job).figures.values()
        for term in (figure.working.terms if figure.working else ())
    }
    assert symbols <= words["symbols"].keys()
