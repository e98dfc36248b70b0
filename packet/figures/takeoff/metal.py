"""Drip edge, valley lining, step flashing and pipe boots."""

from packet.calc.takeoff import (
    DRIP_EDGE_PIECES,
    STEP_FLASHING_PIECES,
    drip_edge_pieces,
    step_flashing_pieces,
)
from packet.figure import Term, term
from packet.figures.shapes import feet
from packet.figures.takeoff.ground import Ground


def drip_edge(ground: Ground) -> str:
    """Return the pieces of edge metal along eaves and rakes of the work, run by run with laps."""
    edges = ground.edges("eave", "rake")
    if not edges:
        return ""
    piece, lap = ground.gives("drip edge", "length_ft", "piece_ft"), _lap(ground)
    if lap is None:
        ground.missing.append("lap")
    if piece is None or lap is None or not ground.leaves_some(lap, piece):
        return ""
    parts = []
    for edge in edges:
        length = ground.worked("length_ft", edge)
        count = drip_edge_pieces(length.value, piece.value, lap.value)
        id, terms = f"takeoff.drip-edge.{edge.id}", [length, lap, piece]
        parts.append(ground.computed(id, count, "piece", DRIP_EDGE_PIECES, terms))
    return ground.add_up("takeoff.drip-edge.net", "piece", parts)


def _lap(ground: Ground) -> Term | None:
    """Return the lap of pieces: as measured, else as the rules ask it at least [ft]."""
    edge = ground.record.drip_edge
    if edge and edge.lap:
        return ground.figures.as_term("lap_ft", "drip_edge.lap", feet(edge.lap), "ft")
    asked = ground.by_rule("drip_edge.lap", "lap_in", "in")
    if asked is None:
        return None
    id = ground.computed("takeoff.drip-edge.lap", asked.value, "in", asked.symbol, [asked])
    return ground.figures.as_term("lap_ft", id, asked.value / 12, "ft")


def valley_lining(ground: Ground) -> str:
    """Return the valleys of the work, end to end; laps of a lining in pieces are an allowance."""
    edges = ground.edges("valley")
    if not edges:
        return ""
    return ground.add_up("takeoff.valley-lining.net", "ft_in", [f"edge.{edge.id}.worked" for edge in edges])


def step_flashing(ground: Ground) -> str:
    """Return the pieces along new sidewalls: one a course and one at the top, wall by wall."""
    covering = ground.record.covering
    walls = [item for item in ground.record.details if item.kind == "sidewall" and item.state == "new"]
    if not walls or not covering or not covering.shingle:
        return ""
    if any(wall.length is None for wall in walls):
        ground.missing.append("wall_length")
        return ""
    laid = covering.shingle.exposure.inches
    exposure = ground.figures.as_term("exposure_in", "covering.shingle.exposure", laid, "in")
    parts = []
    for wall in walls:
        length_ft = feet(wall.length)  # type: ignore[arg-type]
        length = ground.figures.as_term("length_ft", f"details.{wall.id}.length", length_ft, "ft")
        count = step_flashing_pieces(length.value, exposure.value)
        id = f"takeoff.step-flashing.{wall.id}"
        parts.append(ground.computed(id, count, "piece", STEP_FLASHING_PIECES, [length, exposure]))
    return ground.add_up("takeoff.step-flashing.net", "piece", parts)


def pipe_boots(ground: Ground) -> str:
    """Return the new pipe boots, counted one by one."""
    boots = [item for item in ground.record.details if item.kind == "pipe boot" and item.state == "new"]
    if not boots:
        return ""
    terms = [
        term(f"piece_{n}", 1, "piece", "record", f"details.{boot.id}") for n, boot in enumerate(boots, 1)
    ]
    formula = " + ".join(item.symbol for item in terms)
    return ground.computed("takeoff.pipe-boots.net", len(boots), "piece", formula, terms)
