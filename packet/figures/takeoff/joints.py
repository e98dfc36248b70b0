"""Tape on the joints of the deck."""

from packet.calc.takeoff import JOINTS_TO_TAPE, joints_to_tape
from packet.figure import Term
from packet.figures.shapes import feet, outline_ft
from packet.figures.takeoff.ground import Ground
from packet.record.layers import WorkedArea


def joint_tape(ground: Ground) -> str:
    """Return the joints of the deck under the work, where they are taped."""
    deck, sealed = ground.record.deck, ground.record.dry_in.sealed_deck if ground.record.dry_in else None
    if sealed is None or sealed.way != "tape on the joints" or not ground.areas:
        return ""
    if deck is None or deck.panel is None:
        ground.missing.append("panel")
        return ""
    panel = [
        ground.figures.as_term("sheet_width_ft", "deck.panel.width", feet(deck.panel.width), "ft"),
        ground.figures.as_term("sheet_length_ft", "deck.panel.length", feet(deck.panel.length), "ft"),
    ]
    parts = []
    for area in ground.areas:
        around = _perimeter(ground, area)
        if around is None:
            ground.missing.append("edges")
            return ""
        size = ground.figures.as_term("area_sq_ft", f"area.{area.id}.area")
        value = joints_to_tape(size.value, around.value, panel[0].value, panel[1].value)
        terms, id = [size, *panel, around], f"takeoff.joint-tape.{area.id}"
        parts.append(ground.computed(id, value, "ft_in", JOINTS_TO_TAPE, terms))
    return ground.add_up("takeoff.joint-tape.net", "ft_in", parts)


def _perimeter(ground: Ground, area: WorkedArea) -> Term | None:
    """Return the length around an area; of a whole plane only where all of its edges are known."""
    id = f"takeoff.joint-tape.{area.id}.perimeter"
    if area.outline is None:
        plane = ground.plane(area)
        edges = [edge for edge in ground.shape.edges if any(side == plane.id for side, _ in edge.sides)]
        if not plane.form and len(edges) < len(plane.level):
            return None
        parts = [f"edge.{edge.id}.length" for edge in edges]
        return ground.figures.as_term("perimeter_ft", ground.add_up(id, "ft_in", parts))
    corners, at = outline_ft(area.outline), f"covering.areas.{area.id}.outline"
    terms = [
        ground.figures.as_term(f"{name}{n}", f"{at}.{n - 1}.{axis}", corner[axis], "ft")
        for n, corner in enumerate(corners, 1)
        for axis, name in enumerate("uv")
    ]
    pairs = [(n, n % len(corners) + 1) for n in range(1, len(corners) + 1)]
    formula = " + ".join(f"sqrt((u{b} - u{a}) ** 2 + (v{b} - v{a}) ** 2)" for a, b in pairs)
    around = sum(
        (
            float(corners[b - 1][0] - corners[a - 1][0]) ** 2
            + float(corners[b - 1][1] - corners[a - 1][1]) ** 2
        )
        ** 0.5
        for a, b in pairs
    )
    return ground.figures.as_term("perimeter_ft", ground.computed(id, around, "ft_in", formula, terms))
