"""The takeoff: every line's need, what to buy for it, and what was laid."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from packet.calc.fasteners import POUNDS, pounds
from packet.calc.takeoff import (
    DISPOSAL_WEIGHT,
    ROLL_SHEET,
    TO_BUY,
    TONS,
    WITH_ALLOWANCE,
    disposal_weight,
    roll_sheet,
    to_buy,
    tons,
    with_allowance,
)
from packet.figure import FigureSet, Source, Term, term
from packet.figures.takeoff import covers, deck, joints, metal, sheets
from packet.figures.takeoff.ground import Ground
from packet.figures.takeoff.planes import planes_of
from packet.record.goods import Bought
from packet.record.job import JobRecord
from packet.reference import Library
from packet.uses import Use

LAID_COVERS = "laid * gives_each"
LAID_OVER = "covers - net"

Gives = Callable[[Ground, Use, str], Term | None]


@dataclass(frozen=True)
class TakeoffLine:
    """One line of the takeoff; a figure that could not be computed is "".

    Attributes:
        use: What the goods are for.
        net: Figure of the need by measure and rule.
        need: Figure of the need with its allowance; the net where none is recorded.
        gives: Figure or wrapper's figure of what one unit gives.
        to_buy: Figure of whole units to buy.
        planned: Figure of what was ordered.
        laid: Figure of the units laid.
        covers: Figure of what the laid units make, in the unit of the need.
        goods: Lines bought for it.
        unit: Unit they are bought in; "" where lines differ or there is none.
        pounds: Figure of what the nails needed weigh; "" where no count to the pound is known.
        planes: Planes it is for.
        missing: What it lacks, as keys of words.
    """

    use: Use
    net: str
    need: str
    gives: str
    to_buy: str
    planned: str
    laid: str
    covers: str
    goods: tuple[str, ...]
    unit: str
    pounds: str
    planes: tuple[str, ...]
    missing: tuple[str, ...]


def _of_product(name: str) -> Gives:
    """Return what one unit gives by a figure of its wrapper or product sheet."""

    def gives(ground: Ground, use: Use, unit: str) -> Term | None:
        return ground.gives(use, name, "gives_each")

    return gives


def _one_piece(ground: Ground, use: Use, unit: str) -> Term | None:
    """A bundle or box holds what its wrapper says; a piece is a piece where nothing else is said of it."""
    printed = ground.gives(use, "pieces_each", "gives_each")
    if printed is None and unit == "piece" and ground.missing[-1] == "pieces_each":
        ground.missing.pop()
        return term("gives_each", 1, "piece", "unit", "piece")
    return printed


def _nails(ground: Ground, use: Use, unit: str) -> Term | None:
    """Nails are bought by the pound or by the box."""
    return ground.gives(use, "nails_a_pound" if unit == "lb" else "pieces_each", "gives_each")


def _sheet_of_roll(ground: Ground, use: Use, unit: str) -> Term | None:
    """A roll gives its length less one end lap, by its width."""
    length = ground.gives(use, "length_ft", "roll_length_ft")
    width = ground.gives(use, "width_in", "roll_width_in")
    dry_in = ground.record.dry_in
    if dry_in and dry_in.end_lap:
        lap: Term | None = ground.figures.as_term("end_lap_in", "dry_in.end_lap", dry_in.end_lap.inches, "in")
    else:
        lap = ground.by_rule("underlayment.end_lap", "end_lap_in", "in")
    if lap is None:
        ground.missing.append("end_lap")
    if length is None or width is None or lap is None:
        return None
    if lap.value >= 12 * length.value:
        ground.missing.append("lap_too_large")
        return None
    value = roll_sheet(length.value, width.value, lap.value)
    ground.computed(
        "takeoff.underlayment.gives", value, "sq_ft", ROLL_SHEET, [length, lap, width], decimals=1
    )
    return ground.figures.as_term("gives_each", "takeoff.underlayment.gives")


#: Each line of the takeoff in the order a roof is built: its need, and what one unit of the goods gives.
LINES: Mapping[Use, tuple[Callable[[Ground], str], Gives]] = {
    "deck panels": (deck.deck_panels, _of_product("cover_sq_ft")),
    "deck nails": (deck.deck_nails, _nails),
    "deck clips": (deck.deck_clips, _one_piece),
    "joint tape": (joints.joint_tape, _of_product("length_ft")),
    "ice barrier": (sheets.ice_barrier, _of_product("length_ft")),
    "underlayment": (sheets.underlayment, _sheet_of_roll),
    "cap nails": (sheets.cap_nail_count, _of_product("pieces_each")),
    "drip edge": (metal.drip_edge, _one_piece),
    "valley lining": (metal.valley_lining, _of_product("length_ft")),
    "step flashing": (metal.step_flashing, _one_piece),
    "pipe boots": (metal.pipe_boots, _one_piece),
    "starter": (covers.starter, _of_product("length_ft")),
    "shingles": (covers.shingle_area, _of_product("cover_sq_ft")),
    "ridge vent": (covers.ridge_vent, _of_product("length_ft")),
    "caps": (covers.cap_pieces, _one_piece),
    "roofing nails": (covers.roofing_nail_count, _nails),
    "cement": (covers.cement, _of_product("spots_each")),
}

#: Lines of nails, which have a weight beside their count.
NAILS: frozenset[Use] = frozenset({"deck nails", "cap nails", "roofing nails"})

#: Lines whose need is that of the areas worked on; the others count sheets, details, vents or spots.
ON_AREAS: frozenset[Use] = frozenset(
    {
        "joint tape",
        "ice barrier",
        "underlayment",
        "cap nails",
        "drip edge",
        "valley lining",
        "starter",
        "shingles",
        "caps",
        "roofing nails",
    }
)


def take_off(record: JobRecord, library: Library, figures: FigureSet) -> tuple[TakeoffLine, ...]:
    """Return every line of the takeoff that the job has, and add its figures.

    A line is there when its need could be computed, or goods were bought for it. Before the work a line whose
    need wants a fact more is there too, so that nobody forgets to buy it.
    """
    _disposal(record, library, figures)
    lines = (_line(use, record, library, figures) for use in LINES)
    planned = record.job.status == "planned"
    return tuple(line for line in lines if line.net or line.goods or (planned and line.missing))


def _line(use: Use, record: JobRecord, library: Library, figures: FigureSet) -> TakeoffLine:
    ground = Ground(record, library, figures)
    needed, gives_of = LINES[use]
    net = needed(ground)
    goods = ground.goods(use)
    if goods and use in ON_AREAS and not net and not ground.missing and not ground.areas:
        ground.missing.append("areas")
    need = _with_allowance(ground, use, net, goods)
    units = {line.unit for line in goods}
    unit = units.pop() if len(units) == 1 else ""
    if goods and not unit:
        ground.missing.append("one_unit")
    ground.sources.clear()
    gives = gives_of(ground, use, unit) if goods and unit else None
    buy = ""
    if need and gives and gives.value > 0:
        terms = [figures.as_term("need", need), gives]
        count = to_buy(terms[0].value, gives.value)
        buy = ground.computed(f"takeoff.{key(use)}.to_buy", count, unit, TO_BUY, terms)
    laid = _sum(ground, use, unit, "laid", goods)
    covers_id = ""
    if laid and gives and net:
        terms = [figures.as_term("laid", laid), gives]
        value, figure = terms[0].value * gives.value, figures.by_id[net]
        decimals = 0 if Fraction(value) == int(value) else 1
        id = f"takeoff.{key(use)}.covers"
        covers_id = ground.computed(id, value, figure.unit, LAID_COVERS, terms, decimals=decimals)
        made = [figures.as_term("covers", covers_id), figures.as_term("net", net)]
        over, decimals = made[0].value - made[1].value, max(decimals, figure.decimals)
        ground.computed(f"takeoff.{key(use)}.over", over, figure.unit, LAID_OVER, made, decimals=decimals)
    return TakeoffLine(
        use=use,
        net=net,
        need=need,
        gives=gives.origin.ref if gives and gives.origin.kind == "figure" else "",
        to_buy=buy,
        planned=_sum(ground, use, unit, "planned", goods),
        laid=laid,
        covers=covers_id,
        goods=tuple(line.id for line in goods),
        unit=unit,
        pounds=_pounds(ground, use, need),
        planes=planes_of(use, ground),
        missing=tuple(dict.fromkeys(ground.missing)),
    )


def key(use: Use) -> str:
    """Return a use as part of a figure's id."""
    return use.replace(" ", "-")


def _with_allowance(ground: Ground, use: Use, net: str, goods: tuple[Bought, ...]) -> str:
    """Return the need with the largest allowance recorded for it; the net where there is none."""
    line = max(
        (line for line in goods if line.allowance),
        key=lambda line: line.allowance.percent if line.allowance else 0,
        default=None,
    )
    if not net or line is None or line.allowance is None:
        return net
    if line.allowance.source:
        entry = ground.library.document(line.allowance.source)
        source = Source(line.allowance.source, entry.document, entry.edition, "", "office")
        ground.sources.append(source)
    figure = ground.figures.by_id[net]
    terms = [
        ground.figures.as_term("net", net),
        ground.figures.as_term("percent", f"bought.{line.id}.allowance.percent"),
    ]
    value = with_allowance(terms[0].value, line.allowance.percent)
    id, decimals = f"takeoff.{key(use)}.need", max(1, figure.decimals)
    return ground.computed(id, value, figure.unit, WITH_ALLOWANCE, terms, decimals=decimals)


def _pounds(ground: Ground, use: Use, need: str) -> str:
    """Return what the nails needed weigh, where wrapper or product sheet says how many make a pound.

    Nails bought by box or coil are weighed too: a supplier may sell them either way.
    """
    if use not in NAILS or not need or not ground.stated(use, "nails_a_pound"):
        return ""
    # a weight that can't be told leaves nothing out of the line
    missing = list(ground.missing)
    ground.sources.clear()
    each = ground.gives(use, "nails_a_pound")
    ground.missing[:] = missing
    if each is None or not each.value:
        return ""
    nails = ground.figures.as_term("nails", need)
    weight = pounds(nails.value, each.value)
    return ground.computed(f"takeoff.{key(use)}.pounds", weight, "lb", POUNDS, [nails, each], decimals=1)


def _sum(ground: Ground, use: Use, unit: str, name: str, goods: tuple[Bought, ...]) -> str:
    """Return the sum of one figure over the lines of a use; "" where a line does not have it."""
    ids = [f"bought.{line.id}.{name}" for line in goods]
    if not ids or not unit or any(ground.figures.get(id) is None for id in ids):
        return ""
    if len(ids) == 1:
        return ids[0]
    return ground.add_up(f"takeoff.{key(use)}.{name}", unit, ids, decimals=2)


def _disposal(record: JobRecord, library: Library, figures: FigureSet) -> None:
    """Add the weight of the old covering that came off, by its layers."""
    old = record.roof.old if record.roof else None
    if old is None or not old.weighs_as or not old.layers or not figures.get("work.area"):
        return
    row = library.table("covering_weights").lookup(covering=old.weighs_as)
    terms = [
        figures.as_term("squares", "work.squares"),
        figures.as_term("layers", "roof.old.layers"),
        term("lb_a_square", row.number("lb_a_square"), "lb", "table", "covering_weights"),
    ]
    weight = disposal_weight(terms[0].value, old.layers, terms[2].value)
    figures.computed("disposal.weight", weight, "lb", DISPOSAL_WEIGHT, terms, sources=[row.source])
    load = figures.as_term("weight_lb", "disposal.weight")
    figures.computed("disposal.tons", tons(weight), "ton", TONS, [load], decimals=1)
