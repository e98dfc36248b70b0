"""Dimensions of a deck nailing plan: pieces, their place from the plane's corner, the framing."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise
from typing import Any

from packet.drawings.deck.framing import SAME_FT, Member, regular_in
from packet.drawings.deck.view import View, box
from packet.drawings.dimensions import dimension_lines
from packet.drawings.flat import Segment, bounds
from packet.drawings.lettering import STYLES, Lettered, width_px
from packet.drawings.svg import Element, Point, element, line
from packet.units import feet_and_inches, tape_text

#: First dimension line from the view, on each side, and step to the next [px].
_FIRST: Mapping[str, float] = {"below": 38.0, "above": 22.0, "left": 18.0}
_STEP = 26.0
#: Gap before an extension line, its end beyond the line, height of the text's middle above the line [px].
_GAP, _BEYOND, _TEXT_ABOVE = 4.0, 4.0, 9.0
#: Least room beside a text inside its dimension, and before a text that stands after it [px].
_BESIDE, _AFTER = 3.0, 8.0
#: Half the height of the break in a line that goes on beyond the view [px].
_BREAK = 4.0
_DIM = STYLES["dim"]


@dataclass(frozen=True)
class Extent:
    """The rectangle around one piece, as laid; what a dimension shows [ft]."""

    id: str
    left: float
    low: float
    right: float
    high: float
    corners: tuple[Point, ...]


@dataclass(frozen=True)
class Measure:
    """A dimension in its place [px]; ``broken`` is the end that goes on beyond the view."""

    line: Segment
    extensions: tuple[Segment, ...]
    text: Lettered | None
    broken: int | None = None

    def draw(self) -> Element:
        """Return the dimension."""
        ticked = [end for number, end in enumerate(self.line) if number != self.broken]
        parts = dimension_lines(self.line, self.extensions, ticked)
        if self.broken is not None:
            x, y = self.line[self.broken]
            level = abs(self.line[0][1] - self.line[1][1]) < 0.01
            dx, dy = (_BREAK / 2, _BREAK) if level else (_BREAK, _BREAK / 2)
            parts.append(line((x - dx, y + dy), (x + dx, y - dy), class_="extension"))
        return element("g", [*parts, *([self.text.draw()] if self.text else [])], class_="dimension")

    @property
    def points(self) -> list[Point]:
        """Everything it reaches [px]."""
        text = self.text.box if self.text else ()
        return [*self.line, *(end for one in self.extensions for end in one), *text]


def extents(plane: Mapping[str, Any]) -> list[Extent]:
    """Return what is to be dimensioned: the pieces, or the cut-outs of a plane without pieces."""
    shapes = [(piece["id"], piece["outlines"]) for piece in plane["pieces"] if piece["outlines"]]
    shapes = shapes or [(cut["id"], [box(cut["made"] or cut["asked"])]) for cut in plane["cut_outs"]]
    found = []
    for id, outlines in shapes:
        corners = tuple((float(u), float(v)) for outline in outlines for u, v in outline)
        left, low, right, high = bounds(corners)
        found.append(Extent(id, left, low, right, high, corners))
    return found


def courses(found: Sequence[Extent]) -> list[list[Extent]]:
    """Return pieces by course, from the eave up; those that start at one height lie in one course."""
    rows: list[list[Extent]] = []
    for one in sorted(found, key=lambda one: (one.low, one.left)):
        if rows and abs(rows[-1][0].low - one.low) < SAME_FT:
            rows[-1].append(one)
        else:
            rows.append([one])
    return rows


@dataclass
class Chains:
    """Dimension lines side by side, farther out from level to level."""

    view: View
    words: Mapping[str, str]
    outline: Sequence[Point]
    levels: dict[str, int] = field(default_factory=lambda: {"below": 0, "above": 0, "left": 0})

    def along(self, course: Sequence[Extent], side: str) -> Iterator[Measure]:
        """Yield the dimensions of one course along the eave, and its place from the left end."""
        marks = _marks((one.left, one.right) for one in course)
        at = {mark: self._outer(course, 0, mark, side) for mark in marks}
        yield from self._chain(marks, at, side, 0, self.view.left, self.view.right)

    def up(self, found: Sequence[Extent]) -> Iterator[Measure]:
        """Yield the dimensions of all pieces up the slope, and their place from the eave."""
        marks = _marks((one.low, one.high) for one in found)
        at = {mark: self._outer(found, 1, mark, "left") for mark in marks}
        yield from self._chain(marks, at, "left", 1, self.view.low, self.view.high)

    def framing(
        self, members: Sequence[Member], lines: Sequence[float], crossed: Sequence[float]
    ) -> Iterator[Measure]:
        """Yield the spacing of the framing: once where it is regular, else from member to member.

        Args:
            members: Framing in view.
            lines: Centers of all members of the plane [ft].
            crossed: Where lines of the dimensions farther out come through [ft].
        """
        shown = [member for member in members if self.view.left <= member.at <= self.view.right]
        pairs = list(pairwise(shown))
        if not pairs:
            return
        if regular_in(lines) is None:
            for first, second in pairs:
                yield self._spacing(first, second, "{spacing}", after=False)
        else:
            through = [self.view.point((at, 0))[0] for at in crossed]
            tried = [self._spacing(*pair, self.words["deck_spacing"], after=True) for pair in pairs]
            yield min(tried, key=lambda one: self._trouble(one, through))
        self.levels["above"] += 1

    def _spacing(self, first: Member, second: Member, text: str, *, after: bool) -> Measure:
        spacing = tape_text(Fraction(round((second.at - first.at) * 192), 16)) + "\u2033"
        ends = [
            (self.view.point((member.at, 0))[0], min(y for _, (_, y) in member.faces))
            for member in (first, second)
        ]
        return self._measure(ends[0], ends[1], "above", 0, text.format(spacing=spacing), after=after)

    def _trouble(self, one: Measure, through: Sequence[float]) -> tuple[int, float, float]:
        """Return how badly a dimension stands: lines through its text, past the view's end, far off."""
        left, _, right, _ = bounds(one.text.box) if one.text else (0.0,) * 4
        over = max(0.0, right - self.view.size_px[0])
        far = sum(abs(start[1] - end[1]) for start, end in one.extensions)
        return sum(left - 2 < x < right + 2 for x in through), over, far

    def _chain(
        self, marks: list[float], at: dict[float, Point], side: str, axis: int, first: float, last: float
    ) -> Iterator[Measure]:
        """Yield a chain of dimensions, with the corner of the plane in it where the view shows it."""
        from_text = self.words["deck_from_left" if axis == 0 else "deck_from_eave"]
        in_view = first - SAME_FT <= 0 <= last + SAME_FT
        within = marks[0] + SAME_FT < 0 < marks[-1] - SAME_FT
        if within and not any(abs(mark) < SAME_FT for mark in marks):
            # The corner lies beside a piece, not before it: the piece's end is measured from it, nearer than
            # the piece itself, as the shorter of two.
            near = next(mark for mark in marks if mark > 0)
            length = _length(near)
            text = length if side == "below" else from_text.format(length=length)
            yield self._measure(self._corner(side, inside=True), at[near], side, axis, text, after=True)
            self.levels[side] += 1
        chain = list(marks)
        if in_view and not marks[0] - SAME_FT <= 0 <= marks[-1] + SAME_FT:
            at[0.0] = self._corner(side, inside=False)
            chain = sorted([0.0, *marks])
        for start, end in pairwise(chain):
            yield self._measure(at[start], at[end], side, axis, _length(end - start))
        self.levels[side] += 1
        if not in_view and not marks[0] <= 0 <= marks[-1]:
            yield self._from_beyond(marks, at, side, axis, from_text, first, last)
            self.levels[side] += 1

    def _corner(self, side: str, *, inside: bool) -> Point:
        """Return where the line from the plane's lower left corner starts [px]; above, it spares the deck."""
        if side != "above":
            return self.view.point((0, 0))
        rake = [v for u, v in self.outline if abs(u) < SAME_FT]
        return self.view.point((0, self.view.high if inside else min(self.view.high, max(rake, default=0.0))))

    def _from_beyond(
        self,
        marks: Sequence[float],
        at: Mapping[float, Point],
        side: str,
        axis: int,
        text: str,
        first: float,
        last: float,
    ) -> Measure:
        """Return the place of the first piece from a corner that the view does not show."""
        near, end, broken = (marks[0], first, 0) if marks[0] > 0 else (marks[-1], last, 1)
        outside = self.view.point((end, 0) if axis == 0 else (0, end))
        start, stop = (outside, at[near]) if broken == 0 else (at[near], outside)
        said = text.format(length=_length(abs(near)))
        return self._measure(start, stop, side, axis, said, after=True, broken=broken)

    def _measure(
        self,
        start: Point,
        end: Point,
        side: str,
        axis: int,
        text: str,
        *,
        after: bool = False,
        broken: int | None = None,
    ) -> Measure:
        """Return a dimension from point to point on a side's present level."""
        width, height = self.view.size_px
        off = _FIRST[side] + _STEP * self.levels[side]
        place = {"below": height + off, "above": -off, "left": -off}[side]
        way = 1 if side == "below" else -1
        ends: list[Point] = []
        extensions: list[Segment] = []
        for number, point in enumerate((start, end)):
            on_line = (point[0], place) if axis == 0 else (place, point[1])
            ends.append(on_line)
            if number != broken:
                gap = (point[0], point[1] + way * _GAP) if axis == 0 else (point[0] + way * _GAP, point[1])
                far = (point[0], place + way * _BEYOND) if axis == 0 else (place + way * _BEYOND, point[1])
                extensions.append((gap, far))
        measure_line = (ends[0], ends[1])
        return Measure(measure_line, tuple(extensions), _text(text, measure_line, axis, after=after), broken)

    def _outer(self, found: Sequence[Extent], axis: int, mark: float, side: str) -> Point:
        """Return the corner at a mark that lies nearest to the side of its dimension [px]."""
        here = [
            corner for one in found for corner in one.corners if abs(corner[axis] - mark) < SAME_FT
        ]  # Every mark is some corner's place.
        pick = max if side == "above" else min
        return self.view.point(pick(here, key=lambda corner: corner[1 - axis]))


def _marks(spans: Iterable[tuple[float, float]]) -> list[float]:
    """Return both ends of all spans in order, ends at one place once."""
    kept: list[float] = []
    for mark in sorted(end for span in spans for end in span):
        if not kept or mark - kept[-1] > SAME_FT:
            kept.append(mark)
    return kept


def _text(text: str, measure_line: Segment, axis: int, *, after: bool) -> Lettered | None:
    """Return the lettering of a dimension: over its line, after it, or None where there is no room."""
    (ax, ay), (bx, by) = measure_line
    wide, long = width_px(text, _DIM), abs(bx - ax) + abs(by - ay)
    turned = 0.0 if axis == 0 else -90.0
    middle = ((ax + bx) / 2, (ay + by) / 2)
    if wide + 2 * _BESIDE <= long:
        raised = (middle[0], middle[1] - _TEXT_ABOVE) if axis == 0 else (middle[0] - _TEXT_ABOVE, middle[1])
        return Lettered(text, _DIM, raised, turned)
    if not after:
        return None
    beyond = (max(ax, bx) + _AFTER + wide / 2, ay) if axis == 0 else (ax, min(ay, by) - _AFTER - wide / 2)
    return Lettered(text, _DIM, beyond, turned)


def _length(length_ft: float) -> str:
    return feet_and_inches(Fraction(length_ft) * 12)
