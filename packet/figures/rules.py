"""Limits: what the rules ask of this job, each from one of the four places."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from packet.figure import Figure, FigureSet, Source, term
from packet.figures.panel_span import edge_facts, widest_spacing
from packet.figures.shapes import PlacedPlane, roof_shape
from packet.record.air import Ventilation
from packet.record.job import JobRecord
from packet.reference import CodeRow, Library
from packet.reference.models import Whose
from packet.reference.vocabulary import Kind, Nail

Value = Fraction | tuple[str, ...] | tuple[Nail, ...] | None

#: Unit of a limit's figure, where it differs from the row's.
_UNITS = {"each": "count"}
ADDED = "limit + base"


@dataclass(frozen=True)
class Limit:
    """One limit.

    Attributes:
        row: Id of the row, or the record's path for what the maker printed.
        whose: Law, maker, program or practice.
        kind: At most, at least, one of, present.
        value: Number, accepted words or nails; None when it was not read.
        figures: Ids of the figures that show it.
        words: Accepted words, when it is words.
        source: Where it was read.
        decides: True when it may decide a result.
        caution: True when it decides from a restatement.
        superseded: What took its place; "" when it stands.
        missing: Facts without which it can't be told whether it applies.
        note: Plain note; "" for none.
        may_accuse: False when a rule that was not read asks less here: then keeping this one is enough, and
            missing it shows nothing.
        authority: Who adopted it, where an amendment names them; "" otherwise.
    """

    row: str
    whose: Whose
    kind: Kind
    value: Value
    figures: tuple[str, ...]
    words: tuple[str, ...]
    source: Source
    decides: bool
    caution: bool = False
    superseded: str = ""
    missing: tuple[str, ...] = ()
    note: str = ""
    may_accuse: bool = True
    authority: str = ""


def code_ids(record: JobRecord) -> tuple[str, ...]:
    """Return the ids of the codes, programs and guides the record names, the adopted code first."""
    basis = record.basis
    return (basis.code, *basis.programs, *basis.practices) if basis else ()


def facts(record: JobRecord, figures: FigureSet, library: Library) -> dict[str, object]:
    """Return what is known of the job that a rule may depend on; an unknown fact is left out."""
    covering, deck, dry_in = record.covering, record.deck, record.dry_in
    rises = [plane.rise for plane in shingled_planes(record)]
    known: dict[str, object] = {
        "exposure": record.basis.exposure if record.basis else None,
        "slope_rise_in_12": min(rises, default=None),
        "steepest_rise_in_12": max(rises, default=None),
        "panel_thickness_in": _panel_thickness(record),
        "shingle_kind": covering.shingle.kind if covering and covering.shingle else None,
        "valley_kind": next(
            (d.valley for d in record.details if d.kind == "valley" and d.state == "new"), None
        ),
        "underlayment_layers": Fraction(dry_in.layers) if dry_in and dry_in.layers is not None else None,
        "permit_date": record.basis.permit_date if record.basis else None,
        "mean_roof_height_ft": _value(figures, "roof.mean_height"),
        "kind_of_work": record.job.kind,
        "work_begun": record.dates.started,
        "house_built": record.property.built,
        "house_permit_date": record.property.permit_date,
        "wind_zone": record.basis.wind_zone if record.basis else None,
        "roof_zone": record.basis.roof_zone if record.basis else None,
        "chimney_width_in": _chimney_width(record),
        "frame_spacing_in": spacing[1] if (spacing := widest_spacing(record)) else None,
        "old_fastener": record.roof.old.deck_fastener if record.roof and record.roof.old else None,
        "frame_gravity": _frame_gravity(record, library),
        **edge_facts(record, library),
    }
    if record.roof and record.roof.old and record.roof.old.deck_nail:
        known |= {
            "old_nail_length_in": record.roof.old.deck_nail.length_in,
            "old_nail_shank_in": record.roof.old.deck_nail.shank_in,
        }
    if deck and deck.nail:
        known |= {
            "nail_length_in": deck.nail.size.length_in,
            "nail_shank_in": deck.nail.size.shank_in,
            "nail_shank": deck.nail.shank,
        }
    if record.basis and record.basis.wind_speed:
        known[f"wind_{record.basis.wind_kind}_mph"] = record.basis.wind_speed.mph
        known.setdefault("wind_nominal_mph", _value(figures, "basis.wind_nominal"))
    if record.ventilation:
        known |= {
            "climate_zone": record.ventilation.climate_zone,
            "vapor_retarder": record.ventilation.vapor_retarder,
            "vent_high_share_percent": _high_share(record.ventilation, figures),
            "vent_high_below_top_ft": _value(figures, "ventilation.high_below_top"),
            "vent_high_above_eaves_ft": _value(figures, "ventilation.high_above_eaves"),
        }
    return {name: value for name, value in known.items() if value is not None}


def _high_share(attic: Ventilation, figures: FigureSet) -> object:
    """Return the share of the required area that is high; open vents that are all low give none of it."""
    low = [vent.place == "low" for vent in attic.vents if vent.state != "closed"]
    return Fraction(0) if low and all(low) else _value(figures, "ventilation.high_share")


def _frame_gravity(record: JobRecord, library: Library) -> Fraction | None:
    """Return the specific gravity of the framing, where its species is one of the table's."""
    framing = record.roof.framing if record.roof else None
    table = library.table("specific_gravity")
    if framing is None or framing.species not in table.words("species"):
        return None
    return table.lookup(species=framing.species).number("specific_gravity")


def _chimney_width(record: JobRecord) -> Fraction | None:
    """Return the width of the widest chimney that got new flashing, of those that were measured."""
    widths = [d.width for d in record.details if d.kind == "chimney" and d.state == "new"]
    return max((width.inches for width in widths if width), default=None)


def _value(figures: FigureSet, id: str) -> object:
    figure = figures.get(id)
    return Fraction(figure.value) if figure else None


def shingled_planes(record: JobRecord) -> tuple[PlacedPlane, ...]:
    """Return the planes that rules for shingles look at: those worked on, less those of a low-slope covering.

    Where no area is given, the planes of new deck stand for them, and without those every plane.
    """
    covering, deck = record.covering, record.deck
    planes = tuple(roof_shape(record.roof).planes.values()) if record.roof else ()
    low = {entry.plane for entry in covering.low_slope} if covering else set()
    areas = {area.plane for area in covering.areas} if covering else set()
    wood = {sheet.plane for sheet in deck.sheets} | {board.plane for board in deck.boards} if deck else set()
    worked = areas or wood or {plane.id for plane in planes}
    return tuple(plane for plane in planes if plane.id in worked - low)


def _panel_thickness(record: JobRecord) -> Fraction | None:
    """Return the thickness of the deck under the work: the new panel's, or the least of boards and old."""
    deck, old = record.deck, record.roof.old if record.roof else None
    if deck and deck.panel:
        return deck.panel.thickness.inches
    wood = [board.thickness for board in deck.boards] if deck else []
    wood.append(old.deck_thickness if old else None)
    return min((thickness.inches for thickness in wood if thickness), default=None)


def limits(
    asks: str, codes: Iterable[str], known: Mapping[str, object], library: Library, figures: FigureSet
) -> tuple[Limit, ...]:
    """Return what the named codes ask of one thing, and add the figures that show it.

    Args:
        asks: What is limited.
        codes: Ids of codes, programs and guides.
        known: Facts of the job.
        library: Published rules.
        figures: Takes the figures of the limits.
    """
    found = library.match(codes, asks, known)
    sure = [_limit(row, library, figures) for row in found.rows]
    open_rows = [_limit(item.row, library, figures, missing=item.missing) for item in found.cannot_tell]
    return (*sure, *open_rows)


def maker_limit(value: int, figure: str, printed_on: str) -> Limit:
    """Return the maker's printed number of nails as a limit; the record names where it is printed."""
    source = Source("maker", printed_on, "", "", "office")
    return Limit(figure, "maker", "at_least", Fraction(value), (figure,), (), source, decides=True)


def _limit(row: CodeRow, library: Library, figures: FigureSet, *, missing: tuple[str, ...] = ()) -> Limit:
    source = library.source(row)
    return Limit(
        row=row.id,
        whose=row.whose,
        kind=row.kind,
        value=row.value,
        figures=_shown(row, source, figures, missing),
        words=row.value if row.form == "words" and row.value else (),  # type: ignore[arg-type]
        source=source,
        decides=row.may_decide and not missing,
        caution=row.caution and not missing,
        superseded=row.superseded,
        missing=missing,
        note=" ".join(part for part in (row.note, row.reason) if part),
        may_accuse=not row.in_doubt,
        authority=row.authority,
    )


def _shown(row: CodeRow, source: Source, figures: FigureSet, missing: tuple[str, ...]) -> tuple[str, ...]:
    """Add the figures of a row's numbers, once, and return their ids."""
    id = f"rule.{row.id}"
    if isinstance(row.value, Fraction):
        if not figures.get(id):
            _number(id, row, source, figures, missing)
        return (id,)
    ids: list[str] = []
    for number, nail in enumerate(row.value or (), 1):
        if isinstance(nail, Nail):
            for name, value in (("length", nail.length_in), ("shank", nail.shank_in)):
                ids.append(f"{id}.{number}.{name}")
                if not figures.get(ids[-1]):
                    figures.add(
                        Figure(
                            ids[-1], value, "in", 3 if name == "shank" else 0, origin=id, sources=(source,)
                        )
                    )
    return tuple(ids)


def _number(id: str, row: CodeRow, source: Source, figures: FigureSet, missing: tuple[str, ...]) -> None:
    value = Fraction(row.value)  # type: ignore[arg-type]
    unit = _UNITS.get(row.unit, row.unit)
    base = figures.get("deck.panel.thickness") if row.added_to and not missing else None
    if base is None:
        figures.add(Figure(id, value, unit, 0, origin=id, sources=(source,)))
        return
    added = term("limit", value - Fraction(base.value), unit, "rule", row.id)
    terms = [added, figures.as_term("base", base.id)]
    figures.computed(id, value, unit, ADDED, terms, sources=[source])
