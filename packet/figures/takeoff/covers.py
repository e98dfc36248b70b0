"""Shingles, starter, caps, their nails, ridge vent and cement."""

from packet.calc.cement import SEAL_SPOTS, seal_spots
from packet.calc.fasteners import ROOFING_NAILS, roofing_nails
from packet.calc.takeoff import CAPS, SHINGLES, caps, shingles
from packet.figure import term
from packet.figures.roof import add_up
from packet.figures.takeoff.ground import Ground
from packet.figures.work import shingled_area

NAILS_OF_BOTH = "pieces * nails_each + caps * nails_a_cap"


def shingle_area(ground: Ground) -> str:
    """Return the area shingles cover; starter and caps are lines of their own."""
    shingled = shingled_area(ground.record)
    if not shingled:
        return ""
    area = ground.figures.as_term("area_sq_ft", shingled)
    return ground.computed("takeoff.shingles.net", area.value, "sq_ft", area.symbol, [area], decimals=1)


def starter(ground: Ground) -> str:
    """Return the edges along the work that get a starter."""
    covering = ground.record.covering
    planes = [area.plane for area in ground.shingled]
    edges = ground.edges(*covering.starter_along, planes=planes) if covering and planes else []
    return _length(ground, "takeoff.starter.net", [edge.id for edge in edges])


def cap_pieces(ground: Ground) -> str:
    """Return the cap pieces on hips and ridges along the work, each line by itself."""
    planes = [area.plane for area in ground.shingled]
    edges = ground.edges("hip", "ridge", planes=planes) if planes else []
    if not edges:
        return ""
    covering = ground.record.covering
    exposure = ground.gives("caps", "exposure_in")
    if exposure is None:
        if ground.stated("caps", "exposure_in"):
            return ""
        ground.missing.clear()
        # caps cut from the shingle are laid at its exposure
        if not covering or not covering.shingle:
            ground.missing.append("shingle")
            return ""
        laid = covering.shingle.exposure.inches
        exposure = ground.figures.as_term("exposure_in", "covering.shingle.exposure", laid, "in")
    parts = []
    for edge in edges:
        length = ground.worked("length_ft", edge)
        count = caps(length.value, exposure.value)
        parts.append(ground.computed(f"takeoff.caps.{edge.id}", count, "piece", CAPS, [length, exposure]))
    return ground.add_up("takeoff.caps.net", "piece", parts)


def roofing_nail_count(ground: Ground) -> str:
    """Return the nails of the shingles, at the number counted on an open course, and two for each cap."""
    covering, figures = ground.record.covering, ground.figures
    shingle = covering.shingle if covering else None
    shingled = shingled_area(ground.record)
    if not covering or not shingled:
        return ""
    if not shingle:
        ground.missing.append("shingle")
        return ""
    if shingle.width is None:
        ground.missing.append("shingle_width")
    if not covering.nails_each:
        ground.missing.append("nails_each")
    if shingle.width is None or not covering.nails_each:
        return ""
    width, exposure = shingle.width.inches, shingle.exposure.inches
    count = shingles(figures.by_id[shingled].value, width, exposure)
    terms = [
        figures.as_term("area_sq_ft", shingled),
        figures.as_term("width_in", "covering.shingle.width", width, "in"),
        figures.as_term("exposure_in", "covering.shingle.exposure", exposure, "in"),
    ]
    pieces = ground.computed("takeoff.roofing-nails.pieces", count, "piece", SHINGLES, terms)
    own = [figures.as_term("pieces", pieces), figures.as_term("nails_each", "covering.nails_each")]
    id, nails = "takeoff.roofing-nails.net", roofing_nails(count, covering.nails_each)
    capped = figures.get("takeoff.caps.net")
    if capped is None:
        return ground.computed(id, nails, "nail", ROOFING_NAILS, own)
    row = ground.library.table("cap_nails").lookup(what="cap")
    ground.sources.append(row.source)
    each = term("nails_a_cap", row.number("nails_each"), "nail", "table", "cap_nails")
    terms = [*own, figures.as_term("caps", capped.id), each]
    return ground.computed(id, nails + capped.value * each.value, "nail", NAILS_OF_BOTH, terms)


def ridge_vent(ground: Ground) -> str:
    """Return the length of new vents high on the roof that run in feet."""
    attic = ground.record.ventilation
    vents = (
        [vent for vent in attic.vents if vent.state == "new" and vent.place == "high" and vent.length]
        if attic
        else []
    )
    if not vents:
        return ""
    add_up(
        ground.figures,
        "takeoff.ridge-vent.net",
        "ft_in",
        [f"ventilation.vents.{vent.id}.length" for vent in vents],
    )
    return "takeoff.ridge-vent.net"


def cement(ground: Ground) -> str:
    """Return the spots of cement where new shingles meet old."""
    tie_in = ground.record.tie_in
    if not tie_in or not tie_in.shingles_sealed or not tie_in.spots_each:
        return ""
    terms = [
        ground.figures.as_term("pieces", "tie_in.shingles_sealed"),
        ground.figures.as_term("spots_each", "tie_in.spots_each"),
    ]
    spots = seal_spots(tie_in.shingles_sealed, tie_in.spots_each)
    return ground.computed("takeoff.cement.net", spots, "spot", SEAL_SPOTS, terms)


def _length(ground: Ground, id: str, edges: list[str]) -> str:
    if not edges:
        return ""
    add_up(ground.figures, id, "ft_in", [f"edge.{edge}.worked" for edge in edges])
    return id
