"""Findings of slopes: shingles on a slope that the ordinary rules do not reach."""

from collections.abc import Iterator

from packet.figure import FigureSet
from packet.figures.rules import shingled_planes
from packet.record.job import JobRecord
from packet.reference import Library
from packet.review.model import Finding


def slope_findings(record: JobRecord, library: Library, figures: FigureSet) -> Iterator[Finding]:
    """Yield a finding for each plane under shingles that is too flat or too steep, with the rule's limit.

    It is no mistake of the record: a roof is what it is, and the page says which rule then applies.
    """
    table = library.table("shingle_slopes")
    least, most = table.lookup(what="least"), table.lookup(what="most")
    for plane in shingled_planes(record):
        for code, row, wrong in (
            ("slope-too-flat", least, plane.rise < least.number("rise_in_12")),
            ("slope-too-steep", most, plane.rise > most.number("rise_in_12")),
        ):
            if wrong:
                id = f"limit.{code}"
                if not figures.get(id):
                    limit = row.number("rise_in_12")
                    figures.measured(id, limit, "pitch", "table.shingle_slopes", sources=[row.source])
                yield Finding(code, plane.id, (plane.pitch, id))
