"""All figures of a record, topic after topic; a later topic may use what an earlier one made."""

from collections.abc import Callable

from packet.figure import FigureSet
from packet.figures.air import air_figures
from packet.figures.eaves import eaves_figures
from packet.figures.goods import goods_figures
from packet.figures.measured import measured_figures
from packet.figures.points import point_figures
from packet.figures.roof import roof_figures
from packet.figures.wind import wind_figures
from packet.figures.work import work_figures
from packet.record.job import JobRecord
from packet.reference import Library

TOPICS: tuple[Callable[[JobRecord, Library, FigureSet], None], ...] = (
    measured_figures,
    roof_figures,
    wind_figures,
    work_figures,
    point_figures,
    air_figures,
    eaves_figures,
    goods_figures,
)


def make_figures(record: JobRecord, library: Library) -> FigureSet:
    """Return every figure of a record but the limits of rules."""
    figures = FigureSet()
    for topic in TOPICS:
        topic(record, library, figures)
    return figures
