"""Access and safety of one house: ladders by eave height, falls, old paint and old coverings."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from packet.calc import access as calc
from packet.calc.slope import ridge_height
from packet.figure import FigureSet, Number, Source, Term, term
from packet.figures.shapes import PlacedPlane, RoofShape, feet, roof_shape
from packet.record.job import JobRecord
from packet.record.roof import Roof
from packet.reference import Library

#: Roof edges a ladder is not set against: what lies below them is roof or wall, not ground.
EAVE = "eave"


@dataclass(frozen=True)
class AccessFact:
    """What a published rule says; its sentence is a word under ``access.says`` and its id.

    Attributes:
        id: Stable id.
        value: The number; None where it is words alone.
        unit: Unit of the number; "" without one.
        decimals: Places shown.
        source: Where it was read.
    """

    id: str
    value: Number | None
    unit: str
    decimals: int
    source: Source


@dataclass(frozen=True)
class Landing:
    """Eaves of one height, at which a ladder stands.

    Attributes:
        eave: Figure of the eave's height.
        planes: Planes that end there.
        working: Figure of the length from foot to eave.
        foot: Figure of the distance of the foot.
        rails: Figure of the length of rail that is needed.
        size: Figure of the least size of a two-section ladder; "" above what the rule prints.
        fall: Where on these planes fall protection is asked by height.
    """

    eave: str
    planes: tuple[str, ...]
    working: str
    foot: str
    rails: str
    size: str
    fall: calc.FallWord


@dataclass(frozen=True)
class Access:
    """What to know before a ladder goes up.

    Attributes:
        landings: Eaves by height, the highest first.
        steep: Planes that are steep in the words of the fall rules.
        low: Planes that are not.
        lead: What the rule on old paint asks here.
        asbestos: What is known of asbestos in what is taken off.
        facts: What published rules say, by topic in a fixed order.
    """

    landings: tuple[Landing, ...]
    steep: tuple[str, ...]
    low: tuple[str, ...]
    lead: calc.LeadWord
    asbestos: calc.AsbestosWord
    facts: tuple[AccessFact, ...]


def access(record: JobRecord, library: Library, figures: FigureSet) -> Access:
    """Return access and safety of the house, and add the figures of its ladders.

    Args:
        record: The job record.
        library: Published rules.
        figures: The record's figures; takes those of the ladders.
    """
    facts = {id: _fact(id, library) for id in library.access_facts()}
    planes = roof_shape(record.roof).planes.values() if record.roof else ()
    steep = tuple(plane.id for plane in planes if calc.is_steep(plane.rise, _number(facts["steep-over"])))
    return Access(
        landings=_landings(record.roof, facts, library, figures) if record.roof else (),
        steep=steep,
        low=tuple(plane.id for plane in planes if plane.id not in steep),
        lead=_lead(record, facts),
        asbestos=calc.asbestos_word(
            record.property.built,
            _number(facts["asbestos-built-before"]),
            test=record.property.asbestos_test,
            left_in_place=record.job.kind == "recover",
        ),
        facts=tuple(facts.values()),
    )


def _fact(id: str, library: Library) -> AccessFact:
    entry = library.access_facts()[id]
    decimals = 0 if entry.value is None or entry.value.denominator == 1 else 2
    return AccessFact(id, entry.value, entry.unit or "", decimals, library.access_source(entry))


def _number(fact: AccessFact) -> Number:
    assert fact.value is not None, fact.id  # noqa: S101 - a packaged fact that is a number; a test holds it
    return fact.value


def _lead(record: JobRecord, facts: Mapping[str, AccessFact]) -> calc.LeadWord:
    paint = record.property.paint_disturbed
    areas = None
    if paint:
        areas = tuple(area.square_feet if area else Fraction(0) for area in (paint.outside, paint.inside))
    return calc.lead_word(
        record.property.built,
        _number(facts["lead-built-before"]),
        areas,  # type: ignore[arg-type]
        (_number(facts["lead-outside"]), _number(facts["lead-inside"])),
        taken_out=bool(paint and paint.taken_out != "none"),
    )


# Ladders


def _landings(
    roof: Roof, facts: Mapping[str, AccessFact], library: Library, figures: FigureSet
) -> tuple[Landing, ...]:
    """Return a landing for each eave height, the highest first."""
    shape = roof_shape(roof)
    by_height: dict[Fraction, list[PlacedPlane]] = {}
    for plane in _with_eaves(shape):
        by_height.setdefault(feet(plane.eave_height or roof.eave_height), []).append(plane)
    return tuple(
        _landing(height, by_height[height], roof, facts, library, figures)
        for height in sorted(by_height, reverse=True)
    )


def _with_eaves(shape: RoofShape) -> Iterable[PlacedPlane]:
    """Return planes that end at an eave; of a plane without any edge recorded it is taken to be so."""
    bounded = {plane for edge in shape.edges for plane, _ in edge.sides}
    ends = {plane for edge in shape.edges if edge.kind == EAVE for plane, _ in edge.sides}
    return [plane for plane in shape.planes.values() if plane.id in ends or plane.id not in bounded]


def _landing(
    height_ft: Fraction,
    planes: list[PlacedPlane],
    roof: Roof,
    facts: Mapping[str, AccessFact],
    library: Library,
    figures: FigureSet,
) -> Landing:
    own = planes[0] if all(plane.eave_height for plane in planes) else None
    eave = f"roof.planes.{own.id}.eave_height" if own else "roof.eave_height"
    at = f"access.{own.id if own else 'roof'}"
    height = figures.as_term("eave_height_ft", eave, height_ft, "ft")
    share = _of_fact("share", facts["ladder-foot-share"], figures)
    above = _of_fact("above_ft", facts["ladder-above-landing"], figures)
    set_out, past = [facts["ladder-foot-share"].source], [facts["ladder-above-landing"].source]

    working = calc.working_length(height.value, share.value)
    terms = [height, share]
    figures.computed(f"{at}.working", working, "ft", calc.WORKING_LENGTH, terms, decimals=1, sources=set_out)
    along = figures.as_term("working_ft", f"{at}.working")
    foot = calc.foot_distance(along.value, share.value)
    figures.computed(
        f"{at}.foot", foot, "ft", calc.FOOT_DISTANCE, [share, along], decimals=1, sources=set_out
    )
    rails = calc.rail_length(height.value, above.value, share.value)
    terms = [height, above, share]
    figures.computed(
        f"{at}.rails", rails, "ft", calc.RAIL_LENGTH, terms, decimals=1, sources=[*past, *set_out]
    )
    top = max(ridge_height(height_ft, max(run for _, run in plane.level), plane.rise) for plane in planes)
    return Landing(
        eave=eave,
        planes=tuple(plane.id for plane in planes),
        working=f"{at}.working",
        foot=f"{at}.foot",
        rails=f"{at}.rails",
        size=_size(at, library, figures),
        fall=calc.fall_word(height_ft, top, _number(facts["fall-height"])),
    )


def _of_fact(symbol: str, fact: AccessFact, figures: FigureSet) -> Term:
    """Return a fact as a term; it becomes a figure the first time."""
    id = f"access.{fact.id}"
    if figures.get(id) is None:
        value, source = _number(fact), [fact.source]
        figures.measured(id, value, fact.unit, "table.access", decimals=fact.decimals, sources=source)
    return figures.as_term(symbol, id)


def _size(at: str, library: Library, figures: FigureSet) -> str:
    """Add the least size of a two-section ladder, by the overlap its own size asks; "" past the table."""
    rails = figures.as_term("rails_ft", f"{at}.rails")
    for row in library.table("ladder_overlap").rows:
        size = calc.two_section_size(rails.value, row.number("overlap_ft"))
        if size <= row.number("size_ft"):
            overlap = term("overlap_ft", row.number("overlap_ft"), "ft", "table", row.table)
            terms, sources = [rails, overlap], [row.source]
            figures.computed(f"{at}.size", size, "ft", calc.TWO_SECTION_SIZE, terms, sources=sources)
            return f"{at}.size"
    return ""
