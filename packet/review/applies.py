"""When a requirement applies, and to which parts of the work one by one."""

from collections.abc import Callable

from shapely import LineString, box

from packet.figures.shapes import feet, roof_shape
from packet.record.job import JobRecord
from packet.review.answers import at

#: A panel this near a rake lies on the framing of the gable end [ft].
AT_RAKE_FT = 1 / 12

#: The widest strip along edges in which a rule read so far asks closer nails [ft].
NEAR_EDGE_FT = 4.0

#: Details with a requirement of their own; a kick-out is seen with its wall.
ASKED_BY_KIND = frozenset({"valley", "sidewall", "kick-out"})

#: Returns "" when a requirement applies, else the key of the reason why not.
Applies = Callable[[JobRecord], str]


def always(record: JobRecord) -> str:
    """Apply to every job."""
    return ""


def when_recorded(path: str, reason: str) -> Applies:
    """Apply when the record has something at a path."""
    return lambda record: "" if at(record, path) else reason


def when_covered(record: JobRecord) -> str:
    """Apply when shingles were laid: an area was covered on a plane that has no low-slope covering."""
    if not at(record, "covering.areas"):
        return "nothing_covered"
    low = {entry.plane for entry in at(record, "covering.low_slope")}
    return "" if any(area.plane not in low for area in at(record, "covering.areas")) else "only_low_slope"


def when_panels(record: JobRecord) -> str:
    """Apply when panels of new deck were laid; boards are nailed by other rules."""
    if at(record, "deck.sheets"):
        return ""
    return "no_panels_laid" if at(record, "deck.boards") else "no_deck_replaced"


def when_boards_nailed(record: JobRecord) -> str:
    """Apply when new boards were laid, or old ones nailed again."""
    return "" if at(record, "deck.boards") or at(record, "deck.renailed.boards") else "no_boards_laid"


def when_panels_renailed(record: JobRecord) -> str:
    """Apply when an old deck of panels was nailed again; boards have no panel edges."""
    if not at(record, "deck.renailed"):
        return "no_deck_renailed"
    return "boards_renailed" if at(record, "deck.renailed.boards") else ""


def when_panels_at_a_rake(record: JobRecord) -> str:
    """Apply when a new panel lies on the framing of a gable end."""
    reason = when_panels(record)
    if reason or record.roof is None:
        return reason or "no_panel_at_a_rake"
    shape = roof_shape(record.roof)
    rakes = {
        (plane, float(ends[0][0]))
        for edge in shape.edges
        if edge.kind == "rake"
        for plane, ends in edge.sides
        if ends[0][0] == ends[1][0]
    }
    sheets = [
        (s.plane, float(feet(s.at[0])), float(feet(s.at[0]) + feet(s.along)))
        for s in at(record, "deck.sheets")
    ]
    near = any(
        plane == of and left - AT_RAKE_FT <= u <= right + AT_RAKE_FT
        for of, left, right in sheets
        for plane, u in rakes
    )
    return "" if near else "no_panel_at_a_rake"


def when_panels_near_an_edge(record: JobRecord) -> str:
    """Apply when a new panel reaches into the strip along an eave, a ridge or a rake."""
    reason = when_panels(record)
    if reason or record.roof is None:
        return reason or "no_panel_near_an_edge"
    shape = roof_shape(record.roof)
    for edge in shape.edges:
        for plane, ends in edge.sides if edge.kind in ("eave", "ridge", "rake") else ():
            line = LineString([tuple(map(float, shape.planes[plane].on_slope(end))) for end in ends])
            for sheet in at(record, "deck.sheets"):
                left, low = (float(feet(measure)) for measure in sheet.at)
                reached = box(left, low, left + float(feet(sheet.along)), low + float(feet(sheet.up)))
                if sheet.plane == plane and reached.distance(line) < NEAR_EDGE_FT:
                    return ""
    return "no_panel_near_an_edge"


def when_old_deck_bare(record: JobRecord) -> str:
    """Apply when the covering came off a deck that stayed; one that was nailed again lay bare."""
    return "" if at(record, "covering.areas") or at(record, "deck.renailed") else "nothing_covered"


def when_wood(record: JobRecord) -> str:
    """Apply when new deck was laid, of panels or of boards."""
    return "" if at(record, "deck.sheets") or at(record, "deck.boards") else "no_deck_replaced"


def when_vents(record: JobRecord) -> str:
    """Apply to every new covering, and to other work when the vents are in the record."""
    if record.job.kind == "re-roof":
        return ""
    return "" if record.ventilation else "no_ventilation_recorded"


def when_new(kind: str, reason: str) -> Applies:
    """Apply when a detail of a kind is new."""
    return lambda record: "" if any(d.kind == kind and d.state == "new" for d in record.details) else reason


def when_permit(record: JobRecord) -> str:
    """Apply where the work has a permit, or nobody wrote why it has none."""
    return "no_permit_asked" if at(record, "basis.no_permit") else ""


def when_left(record: JobRecord) -> str:
    """Apply where goods were left with the owner."""
    return "" if any(line.left for line in record.bought) else "nothing_left"


def new_deck(record: JobRecord) -> tuple[str, ...]:
    """Return the sheets and the boards of new deck; each wants a photo of its own."""
    if record.deck is None:
        return ()
    return (*(sheet.id for sheet in record.deck.sheets), *(board.id for board in record.deck.boards))


def other_details(record: JobRecord) -> tuple[str, ...]:
    """Return the new details that no requirement of their own asks for."""
    return tuple(d.id for d in record.details if d.state == "new" and d.kind not in ASKED_BY_KIND)


def worked_planes(record: JobRecord) -> tuple[str, ...]:
    """Return the planes that were stripped and covered again, each once."""
    return tuple(dict.fromkeys(area.plane for area in at(record, "covering.areas") or ()))


def has_edge(kind: str) -> Callable[[JobRecord], bool]:
    """Return whether a roof has an edge of a kind; one whose edges nobody wrote down may have any."""

    def there(record: JobRecord) -> bool:
        edges = roof_shape(record.roof).edges if record.roof else ()
        return not edges or any(edge.kind == kind for edge in edges)

    return there
