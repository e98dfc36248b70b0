"""What is already on the sheet, so that no label covers another."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Generic, TypeVar

from packet.drawings.flat import Polygon, Segment, bounds, crosses, do_overlap, meeting
from packet.drawings.svg import Point

#: Clear space around a label [px].
GAP_PX = 2.0

#: Side of a cell of an index [px]: a label lies in one to four.
_CELL_PX = 64.0

#: Least x, least y, greatest x, greatest y.
Bounds = tuple[float, float, float, float]
Box = tuple[Point, ...]
Shape = TypeVar("Shape", bound=Sequence[Point])


class Index(Generic[Shape]):
    """Outlines or lines by place: what lies near is found without asking all of them."""

    def __init__(self, shapes: Iterable[Shape] = (), cell_px: float = _CELL_PX) -> None:
        self._cell_px = cell_px
        self.all: list[Shape] = []
        self._bounds: list[Bounds] = []
        self._cells: dict[tuple[int, int], list[int]] = {}
        for shape in shapes:
            self.add(shape)

    def add(self, shape: Shape) -> None:
        """Add an outline or a line."""
        around, number = bounds(shape), len(self.all)
        self.all.append(shape)
        self._bounds.append(around)
        for cell in self._reached(around):
            self._cells.setdefault(cell, []).append(number)

    def near(self, around: Bounds, gap: float = 0.0) -> list[Shape]:
        """Return what has bounds that come within a gap of these, in the order in which it was added."""
        left, top, right, low = around[0] - gap, around[1] - gap, around[2] + gap, around[3] + gap
        cells = [self._cells[cell] for cell in self._reached((left, top, right, low)) if cell in self._cells]
        if not cells:
            return []
        numbers = cells[0] if len(cells) == 1 else sorted(set().union(*cells))
        found = []
        for number in numbers:
            a, b, c, d = self._bounds[number]
            if a <= right and left <= c and b <= low and top <= d:
                found.append(self.all[number])
        return found

    def _reached(self, around: Bounds) -> list[tuple[int, int]]:
        left, top, right, low = (int(edge // self._cell_px) for edge in around)
        return [(column, row) for column in range(left, right + 1) for row in range(top, low + 1)]


@dataclass
class Taken:
    """Room taken so far.

    Attributes:
        boxes: Labels, dots and rings, as convex outlines.
        lines: Lines of the roof and of dimensions that a label should not stand on.
        leaders: Leaders; they may cross lines but not labels or one another.
    """

    boxes: Index[Box] = field(default_factory=Index)
    lines: Index[Segment] = field(default_factory=Index)
    leaders: Index[Segment] = field(default_factory=Index)

    def add(self, boxes: Iterable[Box]) -> None:
        """Take the room of labels."""
        for box in boxes:
            self.boxes.add(box)

    def add_lines(self, lines: Iterable[Segment]) -> None:
        """Take the room of lines."""
        for line in lines:
            self.lines.add(line)

    def is_free(self, box: Polygon, *, over_lines: bool = False, gap: float = GAP_PX) -> bool:
        """Return whether a box covers no label and no leader, and no line unless ``over_lines``."""
        around = bounds(box)
        if any(do_overlap(box, other, gap) for other in self.boxes.near(around, gap)):
            return False
        if any(crosses(box, line) for line in self.leaders.near(around)):
            return False
        return over_lines or not any(crosses(box, line) for line in self.lines.near(around))

    def is_clear(self, leader: Segment, but: Polygon = ()) -> bool:
        """Return whether a leader crosses no other leader and no label but those that touch a box."""
        around = bounds(leader)
        return not any(
            crosses(box, leader) and not (but and do_overlap(box, but)) for box in self.boxes.near(around)
        ) and all(meeting(leader, other) is None for other in self.leaders.near(around))
