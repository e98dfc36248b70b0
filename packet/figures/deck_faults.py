"""What is wrong with new deck on its plane: sheets off it or over each other, cut-outs that overlap."""

from collections.abc import Iterator, Sequence

from shapely.geometry.base import BaseGeometry

from packet.calc.polygon import Outline, overlapping, polygon, rectangle_at
from packet.figures.shapes import RoofShape, feet, outline_ft
from packet.record.checks import Fault
from packet.record.job import JobRecord
from packet.record.wood import Patch, Sheet

#: Sheets are taped on a slope: an overlap no deeper than this is the tape's [ft].
DEEP_FT = 0.125

#: A sheet may stick out past its plane, where it is cut; less of it on the plane than this is a slip [sq ft].
LEAST_ON_PLANE_SQ_FT = 0.25


def deck_faults(record: JobRecord, shape: RoofShape) -> Iterator[Fault]:
    """Yield every sheet that is not on its plane, and every pair of sheets or cut-outs over each other."""
    deck = record.deck
    if deck is None:
        return
    for index, sheet in enumerate(deck.sheets):
        plane = shape.planes.get(sheet.plane)
        if plane and polygon(plane.slope).intersection(polygon(_rect(sheet))).area < LEAST_ON_PLANE_SQ_FT:
            yield Fault(
                "sheet-outside-plane", ("deck", "sheets", index, "at"), sheet.id, {"plane": sheet.plane}
            )
    for index, item in enumerate(deck.cut_outs):
        plane = shape.planes.get(item.plane)
        for name, patch in (("rot", item.rot), ("cut", item.cut)):
            if plane and patch and not _around(plane.slope).covers(polygon(_rect(patch))):
                loc = ("deck", "cut_outs", index, name, "at")
                yield Fault("cut-out-outside-plane", loc, item.id, {"plane": item.plane})
    yield from _over_each_other("sheets", "sheets-overlap", [(s.id, s.plane, _rect(s)) for s in deck.sheets])
    cuts = [(item.id, item.plane, _rect(item.cut or item.rot)) for item in deck.cut_outs]
    yield from _over_each_other("cut_outs", "cut-outs-overlap", cuts)


def _over_each_other(name: str, code: str, entries: Sequence[tuple[str, str, Outline]]) -> Iterator[Fault]:
    for plane in dict.fromkeys(plane for _, plane, _ in entries):
        here = [(index, id, outline) for index, (id, of, outline) in enumerate(entries) if of == plane]
        for first, second, area in overlapping([outline for _, _, outline in here], [], DEEP_FT):
            index, id, _ = here[second]
            values = {"other": here[first][1], "area": f"{area:.1f} sq ft"}
            yield Fault(code, ("deck", name, index, "at"), id, values)


def _rect(item: Sheet | Patch) -> Outline:
    return rectangle_at(*outline_ft((item.at,))[0], feet(item.along), feet(item.up))


def _around(outline: Outline) -> BaseGeometry:
    """Return the rectangle around a plane, a little wider: rot and cuts are taped as rectangles."""
    return polygon(outline).envelope.buffer(DEEP_FT, join_style="mitre")
