"""What is already on the sheet, so that no label covers another."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from packet.drawings.flat import Polygon, Segment, bounds, crosses, do_overlap, meeting
from packet.drawings.svg import Point

#: Clear space around a label [px].
GAP_PX = 2.0

#: Least x, least y, greatest x, greatest y.
Bounds = tuple[float, float, float, float]


@dataclass
class Taken:
    """Room taken so far.

    Attributes:
        boxes: Labels, dots and rings, as convex outlines.
        lines: Lines of the roof and of dimensions that a label should not stand on.
        leaders: Leaders; they may cross lines but not labels or one another.
    """

    boxes: list[tuple[Point, ...]] = field(default_factory=list)
    lines: list[Segment] = field(default_factory=list)
    leaders: list[Segment] = field(default_factory=list)
    _bounds: list[Bounds] = field(init=False, repr=False)  # of each box; asked for a million times a drawing

    def __post_init__(self) -> None:
        self._bounds = [bounds(box) for box in self.boxes]

    def add(self, boxes: Iterable[tuple[Point, ...]]) -> None:
        """Take the room of labels."""
        for box in boxes:
            self.boxes.append(box)
            self._bounds.append(bounds(box))

    def is_free(self, box: Polygon, *, over_lines: bool = False, gap: float = GAP_PX) -> bool:
        """Return whether a box covers no label and no leader, and no line unless ``over_lines``."""
        left, top, right, low = bounds(box)
        for other, (a, b, c, d) in zip(self.boxes, self._bounds, strict=True):
            if (
                a - gap < right
                and left < c + gap
                and b - gap < low
                and top < d + gap
                and do_overlap(box, other, gap)
            ):
                return False
        lines = self.leaders if over_lines else [*self.leaders, *self.lines]
        for line in lines:
            (ax, ay), (bx, by) = line
            beside = (ax < left and bx < left) or (ax > right and bx > right)
            beside = beside or (ay < top and by < top) or (ay > low and by > low)
            if not beside and crosses(box, line):
                return False
        return True

    def is_clear(self, leader: Segment) -> bool:
        """Return whether a leader crosses no label and no other leader."""
        return not any(crosses(box, leader) for box in self.boxes) and all(
            meeting(leader, other) is None for other in self.leaders
        )
