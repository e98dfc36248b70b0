"""How the record answers: small functions from a record to one answer."""

from collections.abc import Callable
from typing import Any

from shapely import LineString, box

from packet import units
from packet.calc.ventilation import attic_to_vents as vent_ratio
from packet.figures.air import free_area, open_vents
from packet.figures.eaves import reach_in, steepest
from packet.figures.rules import Limit, maker_limit
from packet.figures.shapes import feet, roof_shape
from packet.record.air import Ventilation
from packet.record.job import JobRecord
from packet.record.wood import DeckNail
from packet.review.model import Answer

#: A panel this near a rake lies on the framing of the gable end [ft].
AT_RAKE_FT = 1 / 12

#: The widest strip along edges in which a rule read so far asks closer nails [ft].
NEAR_EDGE_FT = 4.0

Ask = Callable[[JobRecord], Answer]
Applies = Callable[[JobRecord], str]


def at(record: JobRecord, path: str) -> Any:
    """Return the value at a dotted path of the record, or None where a part is absent."""
    value: Any = record
    for name in path.split("."):
        value = getattr(value, name, None)
        if value is None:
            return None
    return value


def measure(path: str) -> Ask:
    """Answer with a length in inches."""

    def answer(record: JobRecord) -> Answer:
        length: units.Length | None = at(record, path)
        return Answer(length.inches, (path,)) if length is not None else Answer()

    return answer


def count(path: str) -> Ask:
    """Answer with a count."""

    def answer(record: JobRecord) -> Answer:
        number: int | None = at(record, path)
        return Answer(number, (path,)) if number is not None else Answer()

    return answer


def words(path: str) -> Ask:
    """Answer with words as typed."""

    def answer(record: JobRecord) -> Answer:
        text: str | None = at(record, path)
        return Answer(text, text=text) if text is not None else Answer()

    return answer


def nail(path: str) -> Ask:
    """Answer with a deck nail: length, shank and kind of shank; never a penny name."""

    def answer(record: JobRecord) -> Answer:
        found: DeckNail | None = at(record, path)
        if found is None:
            return Answer()
        figures = (f"{path}.size.length", f"{path}.size.shank")
        return Answer((found.size.length_in, found.size.shank_in, found.shank), figures, found.shank)

    return answer


def of_new_details(kind: str, name: str) -> Ask:
    """Answer with a length of the new details of one kind: the least of them, since the least decides."""

    def answer(record: JobRecord) -> Answer:
        details = [detail for detail in record.details if detail.kind == kind and detail.state == "new"]
        given = [(value, d.id) for d in details if (value := getattr(d, name)) is not None]
        if not details or len(given) < len(details):
            return Answer()
        value, id = min(given, key=lambda pair: pair[0].inches)
        return Answer(value.inches, (f"details.{id}.{name}",))

    return answer


def board_nails(record: JobRecord) -> Answer:
    """Answer with the nails in a board at each rafter: the least of all; one left out answers nothing."""
    boards = record.deck.boards if record.deck else ()
    given = [(board.nails_each_bearing, board.id) for board in boards if board.nails_each_bearing is not None]
    if not boards or len(given) < len(boards):
        return Answer()
    least, id = min(given)
    return Answer(least, (f"deck.boards.{id}.nails_each_bearing",))


def edges_held_by(record: JobRecord) -> Answer:
    """Answer with what holds the long edges of the panels between the framing."""
    held = record.deck.edges_held_by if record.deck else None
    return Answer(held, text=held) if held else Answer()


def nail_in_deck(record: JobRecord) -> Answer:
    """Answer with what the shingle nail has below the covering."""
    length, above = at(record, "covering.nail.length"), at(record, "covering.above_deck")
    if length is None or above is None:
        return Answer()
    return Answer(length.inches - above.inches, ("covering.nail.in_deck",))


def wind_class(record: JobRecord) -> Answer:
    """Answer with test and class as the wrapper reads, ``ASTM D7158 Class H``."""
    test, name = at(record, "covering.shingle.wind_test"), at(record, "covering.shingle.wind_class")
    if not test or not name:
        return Answer()
    text = f"{test} Class {name}"
    return Answer(text, text=text)


def barrier_reach(record: JobRecord) -> Answer:
    """Answer with how far inside the outside face of the wall the taped ice barrier reaches."""
    barrier, plane = at(record, "dry_in.ice_barrier"), steepest(record)
    reach = reach_in(barrier, plane) if barrier and plane else None
    return Answer(reach, ("ice_barrier.reach",)) if reach is not None else Answer()


def attic_to_vents(record: JobRecord) -> Answer:
    """Answer with the attic there is for each of free vent area; one unknown line leaves it unknown."""
    attic: Ventilation | None = record.ventilation
    if attic is None or attic.attic_area is None:
        return Answer()
    areas = [free_area(vent) for vent in open_vents(attic)]
    known = [area for area in areas if area is not None]
    if len(known) < len(areas) or not sum(known):
        return Answer()
    ratio = vent_ratio(attic.attic_area.square_feet, sum(known))
    return Answer(ratio, ("ventilation.ratio",))


def listed(record: JobRecord) -> Answer:
    """Answer that the thing is in the record; its photos do the rest."""
    return Answer(True)


def listed_once(path: str) -> Ask:
    """Answer that a part of the record is there."""
    return lambda record: Answer(True) if at(record, path) else Answer()


def maker_nails(record: JobRecord) -> Limit | None:
    """Return the maker's printed number of nails."""
    maker = at(record, "covering.maker")
    if maker is None or maker.nails_each is None:
        return None
    return maker_limit(maker.nails_each, "covering.maker.nails_each", maker.printed_on)


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
    """Apply when the covering came off a deck that stayed."""
    return "" if at(record, "covering.areas") else "nothing_covered"


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
