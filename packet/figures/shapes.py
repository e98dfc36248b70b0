"""Planes and edges of the roof with their place in plan, whether taped one by one or computed from a form."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from packet.calc import form_edges, forms, geometry
from packet.calc.geometry import SIDES
from packet.calc.plan import WORDS, Place, PlacedSide, bearing, level_to_plan, place, placed_side
from packet.calc.polygon import Outline, rectangle_at
from packet.calc.polygon import Point as Corner
from packet.record.forms import AnyForm, HipForm, ShedForm, StandingForm, WingForm, parts
from packet.record.planes import AnyPlane, Outlined, Point, Rectangle, Triangle
from packet.record.roof import Edge, Opening, Roof
from packet.units import Length


@dataclass(frozen=True)
class PlacedPlane:
    """A plane with its corners and its place in plan.

    Attributes:
        id: Plane.
        title: What the crew calls it.
        facing: Compass word of the way it looks.
        rise: Rise in 12 [in].
        pitch: Path of its pitch in the record.
        level: Corners along the lowest edge, then level run [ft].
        slope: The same corners along the lowest edge, then up the slope [ft].
        place: Where it lies in plan.
        taped: The record's plane; None when a form gives it.
        form: Id of the form; "" when it was taped.
        eave_height: Height of its lowest edge above the ground, where the record gives its own.
    """

    id: str
    title: str
    facing: str
    rise: Fraction
    pitch: str
    level: Outline
    slope: Outline
    place: Place
    taped: AnyPlane | None = None
    form: str = ""
    eave_height: Length | None = None

    def side(self, name: str) -> tuple[Corner, Corner] | None:
        """Return both ends of a side by its name or number, along the lowest edge and level run [ft]."""
        number = self.side_names().get(name)
        return None if number is None else (self.level[number], self.level[(number + 1) % len(self.level)])

    def side_names(self) -> Mapping[str, int]:
        """Return the number of the corner at which each side starts, by the side's name."""
        if self.taped is None or isinstance(self.taped, Outlined):
            return {str(number + 1): number for number in range(len(self.level))}
        names = [name for name in SIDES if name != "upper" or len(self.level) == 4]
        return {name: number for number, name in enumerate(names)}

    def on_slope(self, corner: Corner) -> Corner:
        """Return a corner as level run on the slope [ft]."""
        return geometry.slope_outline((corner,), self.rise)[0]


@dataclass(frozen=True)
class RoofEdge:
    """An edge of the roof, counted once.

    Attributes:
        id: Edge.
        kind: Kind of edge.
        sides: Plane and both ends on it, along its lowest edge and level run [ft], for each plane it bounds.
        measured: Path of its length as taped; "" when it was not.
        names: Names of its sides in the record, as ``MS.right``; none when a form gives it.
        form: Id of the form; "" when it was taped.
    """

    id: str
    kind: str
    sides: tuple[tuple[str, tuple[Corner, Corner]], ...]
    measured: str = ""
    names: tuple[str, ...] = ()
    form: str = ""


@dataclass(frozen=True)
class RoofShape:
    """All planes by id, and all edges."""

    planes: Mapping[str, PlacedPlane]
    edges: tuple[RoofEdge, ...]

    def placed(self, edge: RoofEdge, side: int = 0) -> PlacedSide:
        """Return an edge in plan with its true length, as one of its planes has it."""
        plane_id, (start, end) = edge.sides[side]
        plane = self.planes[plane_id]
        return placed_side(start, end, plane.place, plane.rise)


def feet(length: Length) -> Fraction:
    """Return a length in feet, exact."""
    return length.inches / 12


def outline_ft(points: Sequence[Point]) -> Outline:
    """Return corners of the record in feet on the slope."""
    return tuple((feet(u), feet(v)) for u, v in points)


def opening_outline_ft(opening: Opening) -> Outline:
    """Return the corners of an opening in feet on the slope."""
    return rectangle_at(*outline_ft((opening.at,))[0], feet(opening.along), feet(opening.up))


def roof_shape(roof: Roof) -> RoofShape:
    """Return planes and edges of a roof.

    Raises:
        NotAForm: The measures of a form do not make a roof; ``forms_of`` tells which.
    """
    return _roof_shape(roof.forms, roof.planes, roof.edges, tuple(roof.taped))


@lru_cache(maxsize=64)
def _roof_shape(
    all_forms: tuple[AnyForm, ...],
    planes: tuple[AnyPlane, ...],
    edges: tuple[Edge, ...],
    taped: tuple[str, ...],
) -> RoofShape:
    known: dict[str, PlacedPlane] = {}
    found: list[RoofEdge] = []
    for group in groups(all_forms):
        of_group, its_edges = _form_shape(group, frozenset(taped))
        known |= of_group
        found += its_edges
    known |= {plane.id: _taped(plane) for plane in planes}
    found += [edge for entry in edges if (edge := _edge(entry, known))]
    return RoofShape(known, tuple(found))


def _taped(plane: AnyPlane) -> PlacedPlane:
    rise = plane.pitch.rise_in_12
    if isinstance(plane, Outlined):
        slope = outline_ft(plane.outline)
        level = geometry.level_from_slope(slope, rise)
    else:
        level = geometry.level_outline(taped_shape(plane))
        slope = geometry.slope_outline(level, rise)
    at = place(outline_ft((plane.at,))[0], plane.facing)
    pitch = f"roof.planes.{plane.id}.pitch"
    return PlacedPlane(
        plane.id,
        plane.title,
        plane.facing,
        rise,
        pitch,
        level,
        slope,
        at,
        taped=plane,
        eave_height=plane.eave_height,
    )


def taped_shape(plane: AnyPlane) -> geometry.Shape:
    """Return a plane with level lower and upper edges as a trapezoid.

    Raises:
        TypeError: The plane is an outline of points.
    """
    if isinstance(plane, Outlined):
        raise TypeError(plane.shape)
    lower, run, rise = feet(plane.lower), feet(plane.run), plane.pitch.rise_in_12
    if isinstance(plane, Rectangle):
        return geometry.rectangle(lower, run, rise)
    if isinstance(plane, Triangle):
        return geometry.triangle(lower, feet(plane.top_at), run, rise)
    return geometry.Shape(lower, feet(plane.upper), feet(plane.upper_starts), run, rise)


def _edge(edge: Edge, known: Mapping[str, PlacedPlane]) -> RoofEdge | None:
    """Return a taped edge; None when it names a side that is not there, which ``record.checks`` reports."""
    sides = []
    for name in edge.sides:
        plane_id, _, side_name = name.partition(".")
        side = known[plane_id].side(side_name) if plane_id in known else None
        if side is None:
            return None
        sides.append((plane_id, side))
    measured = f"roof.edges.{edge.id}.measured" if edge.measured else ""
    return RoofEdge(edge.id, edge.kind, tuple(sides), measured, edge.sides)


# Forms


def groups(all_forms: Sequence[AnyForm]) -> tuple[tuple[AnyForm, ...], ...]:
    """Return each standing form with the wings that join it."""
    wings = [form for form in all_forms if isinstance(form, WingForm)]
    return tuple(
        (form, *(wing for wing in wings if wing.joins == form.id))
        for form in all_forms
        if not isinstance(form, WingForm)
    )


def blocks(group: Sequence[AnyForm]) -> list[forms.Block]:
    """Return the blocks of a standing form and its wings.

    Raises:
        NotAForm: A wing has no eave to join, reaches past it, or stands too high.
    """
    standing = group[0]
    assert not isinstance(standing, WingForm)  # noqa: S101 - groups start with a standing form
    ids = {name: plane.id for name, plane in parts(standing)}
    rise = standing.pitch.rise_in_12
    end_rise = standing.end_pitch.rise_in_12 if isinstance(standing, HipForm) and standing.end_pitch else rise
    rises = {side: end_rise if side in ("left", "right") else rise for side in ids}
    main = forms.block(feet(standing.length), feet(standing.depth), rises, ids)  # type: ignore[arg-type]
    made = [main]
    for wing in group[1:]:
        assert isinstance(wing, WingForm)  # noqa: S101
        wing_rise = wing.pitch.rise_in_12 if wing.pitch else rise
        wing_ids: dict[str, str] = {name: plane.id for name, plane in parts(wing)}
        measures = (feet(wing.starts), feet(wing.width), feet(wing.out))
        made.append(forms.wing(main, wing.side, *measures, wing_rise, wing_ids))
    return made


def _form_shape(
    group: Sequence[AnyForm], taped: frozenset[str]
) -> tuple[dict[str, PlacedPlane], Iterator[RoofEdge]]:
    standing: StandingForm = group[0]  # type: ignore[assignment]
    made = blocks(group)
    planes = forms.planes(made)
    front = place(outline_ft((standing.at,))[0], standing.front)
    # Of a plane that two forms share, the standing form says the pitch, and either may say the title.
    named = {plane.id: form for form in reversed(group) for _, plane in parts(form)}
    titles = {p.id: p.title for form in reversed(group) for _, p in parts(form) if p.title}
    known = {}
    for plane in planes:
        form = named[plane.id]
        looks = bearing(front.bearing_deg + forms.TURNS[plane.side])
        known[plane.id] = PlacedPlane(
            plane.id,
            titles.get(plane.id, WORDS[int(looks)]),
            WORDS[int(looks)],
            plane.rise,
            _pitch(form, standing, plane),
            plane.level,
            geometry.slope_outline(plane.level, plane.rise),
            Place(level_to_plan(front, *plane.origin), looks),
            form=form.id,
        )
    return known, _form_edges(form_edges.edges(planes, made), known, taped, standing)


def _pitch(form: AnyForm, standing: StandingForm, plane: forms.FormPlane) -> str:
    """Return the path of the pitch that a plane of a form has."""
    if isinstance(form, WingForm):
        return f"roof.forms.{form.id if form.pitch else standing.id}.pitch"
    at_end = isinstance(form, HipForm) and form.end_pitch and plane.side in ("left", "right")
    return f"roof.forms.{form.id}.{'end_pitch' if at_end else 'pitch'}"


def _form_edges(
    edges: Sequence[form_edges.FormEdge],
    known: Mapping[str, PlacedPlane],
    taped: frozenset[str],
    standing: StandingForm,
) -> Iterator[RoofEdge]:
    """Yield the edges of a form: named after the two planes that meet, or the plane and what its side is."""
    kinds = [_kind(edge, standing) for edge in edges]
    names = [
        "-".join(edge.planes) if len(edge.planes) > 1 else f"{edge.planes[0]}-{kind.upper()}"
        for edge, kind in zip(edges, kinds, strict=True)
    ]
    count, seen = Counter(names), Counter[str]()
    for edge, kind, name in zip(edges, kinds, names, strict=True):
        seen[name] += 1
        id = f"{name}-{seen[name]}" if count[name] > 1 else name
        measured = f"roof.taped.{id}" if id in taped else ""
        yield RoofEdge(id, kind, edge.sides, measured, form=known[edge.planes[0]].form)


def _kind(edge: form_edges.FormEdge, standing: StandingForm) -> str:
    free_top = edge.kind == "ridge" and len(edge.planes) == 1
    return standing.top if free_top and isinstance(standing, ShedForm) else edge.kind
